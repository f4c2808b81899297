package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// line is where a housing's place in the line stands in the readings.
func (t *tunnelReady) line(index int) string {
	if index < len(t.lines) {
		return t.lines[index]
	}
	return inspection.Index("mains", index) + ".line"
}

// lineUp judges the line that the housings make.
func (x *inspecting) lineUp(housings []housingSeen, t *tally) error {
	ready, l := x.in.tunnel, x.in.limits.Tunnel.Line
	if l == nil {
		return nil
	}
	instrument := with(l.With, "ground bar or straight-edge along the tunnel")
	line := TunnelLine{Straight: ready.straight.spec, Neighbour: ready.neighbour.spec, Saddles: make([]Saddle, 0, len(housings))}
	numbers := make([]int, 0, len(housings))
	for i := range housings {
		path := ready.line(housings[i].index)
		r := housings[i].m.Line
		if !r.Taken {
			x.miss(t, path, "height along the tunnel", ready.where[i], instrument, ready.straight.printed)
			if h := &housings[i].tally; h.missing == 0 { // it isn't wholly measured either
				h.missing, h.first = 1, "height along the tunnel, "+ready.where[i]
			}
			continue
		}
		r, err := r.Within(l.Error)
		if err != nil {
			return inspection.At(path, err)
		}
		height := r.Value
		if l.ByBlades {
			if lo, _ := height.Lower(); lo < 0 {
				return badAt(path, "gap", height.String(), "0 mm or more")
			}
			height = SaddleHeight(tolerance.Exactly(units.Length(0)), height)
		}
		t.taken++
		numbers = append(numbers, i)
		line.Saddles = append(line.Saddles, Saddle{Where: ready.where[i], At: l.Places[i], Height: height})
	}
	if len(line.Saddles) < 3 {
		return nil
	}
	report, err := line.Assess()
	if err != nil {
		return inspection.At("mains", err)
	}
	x.found(t, &ready.straight, &report.Straightness, "mains", report.From+", "+report.Middle+" and "+report.To)
	if len(numbers) != len(housings) {
		return nil // what stands beside one that wasn't read has no neighbours' line
	}
	for k := range report.Neighbours {
		x.found(t, &ready.neighbour, &report.Neighbours[k], ready.line(housings[k+1].index), "")
	}
	return nil
}
