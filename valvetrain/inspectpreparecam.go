package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspectCam is what is asked of one camshaft.
type inspectCam struct {
	limits                                    *LimitsCamshaft
	journal, bearing, clear, runOut, endFloat inspectMeasure[units.Length]
	lobes                                     [2]inspectLobes // inlet, exhaust
	names                                     []string        // of the journals: "inlet camshaft, journal 2"
	journals                                  [][]string      // paths of the journals' findings
}

// inspectLobes is what is asked of a camshaft's lobes of one kind.
type inspectLobes struct {
	height, base, lift inspectMeasure[units.Length]
	names              []string   // "inlet camshaft, inlet lobe 3"
	paths              [][]string // of the lobes' findings
}

func (x *Inspector) prepareCams() {
	count := len(x.limits.Camshafts)
	for i := range x.limits.Camshafts {
		c := &x.limits.Camshafts[i]
		at := inspection.Index("camshafts", i)
		of := func(field, name, limit, with string, parts int) inspectAsk {
			return inspectAsk{inspection.StepCamshaft, "camshafts", field, name, with, at + "." + limit, count, parts}
		}
		cam := inspectCam{limits: c}
		n := c.Journals
		both := !c.Clearance.IsZero()
		cam.journal = prepareMeasure(x, of("journals", "camshaft journal", "journal", c.With, n), c.Journal, c.Error, leastSize, both, inspectRow("journals", "journal", "journal ", n)...)
		cam.bearing = prepareMeasure(x, of("journals", "camshaft bearing", "bearing", c.With, n), c.Bearing, c.Error, leastSize, both, inspectRow("journals", "bearing", "journal ", n)...)
		cam.clear = prepareMeasure(x, of("journals", "camshaft bearing clearance", "clearance", "", n), c.Clearance, 0, 0, false)
		cam.runOut = prepareMeasure(x, of("runOut", "run-out of the middle journal", "runOut", c.DialWith, 1), c.RunOut, c.DialError, 0, false, inspectOnly("runOut"))
		cam.endFloat = prepareMeasure(x, of("endFloat", "end float of the camshaft", "endFloat", c.DialWith, 1), c.EndFloat, c.DialError, 0, false, inspectOnly("endFloat"))
		for j := range n {
			cam.names = append(cam.names, x.write(c.Name, ", journal ", smallNumber(j+1)))
			cam.journals = append(cam.journals, x.pathsOf("camshafts", inspection.Index("journals", j), count))
		}
		for k, l := range [2]LimitsLobe{c.InletLobe, c.ExhaustLobe} {
			n := [2]int{c.InletLobes, c.ExhaustLobes}[k]
			kind := [2]string{"inlet", "exhaust"}[k]
			list := kind + "Lobes"
			lobes := &cam.lobes[k]
			lift := !l.Lift.IsZero()
			lobes.height = prepareMeasure(x, of(list, "lobe height", kind+"Lobe.height", c.With, n), l.Height, c.Error, leastSize, lift, inspectRow(list, "height", kind+" lobe ", n)...)
			lobes.base = prepareMeasure(x, of(list, "base circle of the lobe", kind+"Lobe.lift", c.With, n), inspection.Limit{}, c.Error, leastSize, lift, inspectRow(list, "base", kind+" lobe ", n)...)
			lobes.lift = prepareMeasure(x, of(list, "lobe lift", kind+"Lobe.lift", "", n), l.Lift, 0, 0, false)
			for j := range n {
				lobes.names = append(lobes.names, x.write(c.Name, ", ", kind, " lobe ", smallNumber(j+1)))
				lobes.paths = append(lobes.paths, x.pathsOf("camshafts", inspection.Index(list, j), count))
			}
		}
		x.cams = append(x.cams, cam)
	}
}

// inspectRow are the readings of a row of parts.
func inspectRow(list, field, name string, n int) []inspectSub {
	subs := make([]inspectSub, n)
	for i := range subs {
		subs[i] = inspectSub{list: list, index: i, field: field, name: name, count: true}
	}
	return subs
}
