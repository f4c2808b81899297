package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// mostPlaces is how many lines, places and levels a part may be read at, and
// mostStationsDoc how many readings one part of a document may ask for.
const (
	mostPlaces      = 64
	mostStationsDoc = 1024
)

// Validate refuses limits that can't be. Its errors are
// [inspection.PathError]s. What looks like a slip is none: it is listed in the
// report, before what rests on it.
func (l *Limits) Validate() error {
	if l.Schema != inspectSchema {
		return badAt("schema", "schema", strconv.Itoa(l.Schema), strconv.Itoa(inspectSchema))
	}
	if l.Cylinders < 1 || l.Cylinders > mostCylinders {
		return badAt("cylinders", "cylinders", strconv.Itoa(l.Cylinders), "from 1 to 64")
	}
	if err := l.checkBanks(); err != nil {
		return err
	}
	for _, part := range [...]struct {
		path  string
		given bool
		check func() error
	}{
		{"beforeStrip", l.Strip != nil, func() error { return l.Strip.check(l.Cylinders) }},
		{"blockFace", l.Face != nil, func() error { return l.Face.check() }},
		{"mainTunnel", l.Tunnel != nil, func() error { return l.Tunnel.check() }},
		{"bores", l.Bores != nil, func() error { return l.Bores.check(l.Cylinders) }},
		{"liners", l.Liners != nil, func() error { return l.Liners.check() }},
		{"boreFinish", l.Finish != nil, func() error { return l.Finish.check() }},
		{"head", l.Head != nil, func() error { return l.Head.check() }},
	} {
		if part.given {
			if err := part.check(); err != nil {
				return inspection.At(part.path, err)
			}
		}
	}
	return nil
}

func (l *Limits) checkBanks() error {
	if l.Banks == nil {
		return nil
	}
	var seen [mostCylinders + 1]bool
	n := 0
	for i, bank := range l.Banks {
		path := inspection.Index("banks", i)
		if len(bank) == 0 {
			return badAt(path, "bank", "(empty)", "one cylinder or more")
		}
		for k, c := range bank {
			if c < 1 || c > l.Cylinders || seen[c] {
				return badAt(inspection.Index(path, k), "cylinder", strconv.Itoa(c), "one from 1 to "+strconv.Itoa(l.Cylinders)+" that stands in no other place")
			}
			seen[c] = true
			n++
		}
	}
	if n != l.Cylinders {
		return badAt("banks", "cylinders in banks", strconv.Itoa(n), "all "+strconv.Itoa(l.Cylinders))
	}
	return nil
}

// limitOf refuses a limit that asks for less than can be, or for what is out of
// range.
func limitOf[Q units.Quantity](path string, l inspection.LimitOf[Q], least, most Q) error {
	for _, p := range [...]struct {
		field string
		band  tolerance.PrintedOf[Q]
	}{{"new", l.New}, {"newAlso", l.NewAlso}, {"wear", l.Wear}, {"wearAlso", l.WearAlso}} {
		lo, loEnd := p.band.Lower()
		hi, hiEnd := p.band.Upper()
		if !p.band.InRange() || loEnd != tolerance.Absent && (lo < least || lo > most) || hiEnd != tolerance.Absent && (hi < least || hi > most) {
			return badAt(path+"."+p.field, "limit", p.band.String(), "within what can be measured")
		}
	}
	return nil
}

// lengthLimits is limitOf for lengths from least to 10 m, by their paths.
func lengthLimits(least units.Length, list ...namedLimit) error {
	for _, n := range list {
		if err := limitOf(n.path, n.limit, least, largest); err != nil {
			return err
		}
	}
	return nil
}

type namedLimit struct {
	path  string
	limit inspection.Limit
}

func notBelowZero(path string, x units.Length) error {
	if x < 0 || x > largest {
		return badAt(path, path, x.String(), "0 mm or more, and at most 10 m")
	}
	return nil
}

func (l *LimitsStrip) check(cylinders int) error {
	const most = 500 * units.Bar
	if err := limitOf("compression", l.Compression, 0, most); err != nil {
		return err
	}
	if err := limitOf("difference", l.Difference, 0, most); err != nil {
		return err
	}
	if (l.compression() || l.leakage()) && cylinders < 2 {
		return badAt("compression", "cylinders", strconv.Itoa(cylinders), "2 or more: one has nothing to be compared with")
	}
	for _, p := range [...]struct {
		path          string
		percent, most int
	}{{"lowPercent", l.LowPercent, 100}, {"risePercent", l.RisePercent, 1000}, {"leakagePercent", l.Leakage, 100}, {"leakageDifferencePercent", l.LeakageDifference, 100}} {
		if p.percent < 0 || p.percent > p.most {
			return badAt(p.path, "percentage", strconv.Itoa(p.percent), "from 0 to "+strconv.Itoa(p.most))
		}
	}
	if l.GaugeError < 0 || l.GaugeError > most {
		return badAt("gaugeError", "error", l.GaugeError.String(), "0 or more")
	}
	return nil
}

func (l *LimitsFace) check() error {
	if err := lengthLimits(0, namedLimit{"overall", l.Overall}, namedLimit{"lengthwise", l.Lengthwise}, namedLimit{"across", l.Across},
		namedLimit{"diagonal", l.Diagonal}, namedLimit{"height", l.Height}); err != nil {
		return err
	}
	if len(l.Lines) > mostPlaces || len(l.Local) > mostPlaces || len(l.HeightAt) > mostPlaces {
		return badAt("lines", "places", strconv.Itoa(max(len(l.Lines), len(l.Local), len(l.HeightAt))), "64 at most")
	}
	for i, line := range l.Lines {
		if line.Direction < Lengthwise || line.Direction > Diagonal {
			return badAt(inspection.Index("lines", i)+".direction", "direction", line.Direction.String(), "lengthwise, across or diagonal")
		}
	}
	for i, local := range l.Local {
		path := inspection.Index("local", i)
		if local.Over <= 0 || local.Over > largest {
			return badAt(path+".over", "length of the straight-edge", local.Over.String(), "above 0 mm")
		}
		if err := lengthLimits(0, namedLimit{path + ".limit", local.Limit}); err != nil {
			return err
		}
	}
	if g := l.Grid; g != nil {
		switch {
		case g.Rows < 2 || g.Columns < 2 || g.Rows > mostPlaces || g.Columns > mostPlaces:
			return badAt("grid", "rows and columns", strconv.Itoa(g.Rows)+" and "+strconv.Itoa(g.Columns), "from 2 to 64")
		case g.Rows*g.Columns > mostStationsDoc:
			return badAt("grid", "stations", strconv.Itoa(g.Rows*g.Columns), "1024 at most")
		case g.StepLengthwise <= 0 || g.StepAcross <= 0 || g.StepLengthwise > largest || g.StepAcross > largest:
			return badAt("grid.stepLengthwise", "steps", g.StepLengthwise.String()+" and "+g.StepAcross.String(), "above 0 mm")
		case len(l.Local) > 0:
			return badAt("local", "local limits", strconv.Itoa(len(l.Local)), "left out where the face is read by heights: a short straight-edge judges them")
		}
		if err := notBelowZero("grid.error", g.Error); err != nil {
			return err
		}
		if err := lengthLimits(0, namedLimit{"grid.flatness", g.Flatness}); err != nil {
			return err
		}
	}
	if s := l.Skim; s != nil {
		for _, x := range [...]struct {
			path  string
			value units.Length
		}{{"skim.stock", s.Stock}, {"skim.step", s.Step}, {"skim.mostOff", s.MostOff}} {
			if err := notBelowZero(x.path, x.value); err != nil {
				return err
			}
		}
	}
	return notBelowZero("heightError", l.HeightError)
}

func (l *LimitsHead) check() error {
	if err := l.Face.check(); err != nil {
		return inspection.At("face", err)
	}
	if l.CamTunnel != nil {
		return lengthLimits(0, namedLimit{"camTunnel", *l.CamTunnel})
	}
	return nil
}

func (l *LimitsTunnel) check() error {
	if l.Mains < 1 || l.Mains > mostCylinders {
		return badAt("mains", "main bearings", strconv.Itoa(l.Mains), "from 1 to 64")
	}
	if n := len(l.Levels) * len(l.Directions); n == 0 || n > mostStationsDoc || len(l.Levels) > mostPlaces || len(l.Directions) > mostPlaces {
		return badAt("levels", "levels and directions", strconv.Itoa(len(l.Levels))+" and "+strconv.Itoa(len(l.Directions)), "one of each or more, 64 of each at most")
	}
	if err := lengthLimits(0, namedLimit{"size", l.Size}, namedLimit{"ovality", l.Ovality}, namedLimit{"taper", l.Taper}); err != nil {
		return err
	}
	if err := notBelowZero("error", l.Error); err != nil {
		return err
	}
	if u := l.Line; u != nil {
		if len(u.Places) != l.Mains || l.Mains < 3 {
			return badAt("line.places", "places", strconv.Itoa(len(u.Places)), "one for each main bearing, of which there are three or more")
		}
		for i, p := range u.Places {
			if p < -largest || p > largest || i > 0 && p <= u.Places[i-1] {
				return badAt(inspection.Index("line.places", i), "place", p.String(), "further along than the one before")
			}
		}
		if err := lengthLimits(0, namedLimit{"line.straight", u.Straight}, namedLimit{"line.neighbour", u.Neighbour}); err != nil {
			return err
		}
		if err := notBelowZero("line.error", u.Error); err != nil {
			return err
		}
	}
	if h := l.Hone; h != nil {
		if err := boreSize("finish", h.Finish); err != nil {
			return inspection.At("lineHone.finish", err)
		}
		return notBelowZero("lineHone.leastCut", h.LeastCut)
	}
	return nil
}

func (l *LimitsLiners) check() error {
	if len(l.Places) > mostPlaces {
		return badAt("places", "places", strconv.Itoa(len(l.Places)), "64 at most")
	}
	if err := lengthLimits(-mostProtrusion, namedLimit{"protrusion", l.Protrusion}); err != nil {
		return err
	}
	if err := lengthLimits(0, namedLimit{"step", l.Step}, namedLimit{"variation", l.Variation}); err != nil {
		return err
	}
	if l.StepFrom > MeanStep {
		return badAt("stepFrom", "step rule", "(unknown)", "worst places or means")
	}
	if _, err := shimStacks(l.Shims, l.mostShims()); err != nil {
		return inspection.At("shims", err)
	}
	return notBelowZero("error", l.Error)
}

// mostShims is how many shims may lie on one another: one where it isn't said.
func (l *LimitsLiners) mostShims() int {
	if l.MostShims == 0 {
		return 1
	}
	return l.MostShims
}

func (l *LimitsFinish) check() error {
	if l.Counted == HatchNotStated || l.Counted > HatchFromAxis {
		return badAt("counted", "cross-hatch", l.Counted.String(), "one of the four angles: a factor of two lies between them")
	}
	if l.Error < 0 || l.Error > 180*units.Degree {
		return badAt("error", "error", l.Error.String(), "0° or more")
	}
	return limitOf("crossHatch", l.CrossHatch, 0, 180*units.Degree)
}
