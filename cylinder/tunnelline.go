package cylinder

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SaddleOffset is how far one saddle stands off the straight line through two
// others, by their heights and their places along the tunnel: above it (toward
// where heights count) more than zero. Places are exact; each height enters
// once, so a bracket is as tight as can be. It doesn't matter how the bar or
// datum that the heights are read from is tilted.
func SaddleOffset[N tolerance.Number[N]](a, b, c N, atA, atB, atC units.Length) N {
	whole := int64(atC - atA)
	return b.Sub(a.Scale(int64(atC-atB), whole)).Sub(c.Scale(int64(atB-atA), whole))
}

// SaddleStep is the step between neighbouring saddles: the difference of their
// heights. It holds only where the heights are read from a datum that is
// parallel to the tunnel.
func SaddleStep[N tolerance.Number[N]](a, b N) N { return a.Sub(b).Abs() }

// SaddleHeight is the height of a saddle under a straight-edge, or a ground
// bar, laid along the line, from the gap that a blade finds: as much below the
// edge. The edge rests on the two highest saddles, so a gap shows that a
// saddle is low, never that one is high.
func SaddleHeight[N tolerance.Number[N]](edge, gap N) N { return edge.Sub(gap) }

// A Saddle is one height along the tunnel.
type Saddle struct {
	Where  string            // "main 3"
	At     units.Length      // its place along the tunnel
	Height tolerance.Bracket // from the datum; under an edge, the gap below zero
}

// A TunnelLine is the line of saddles, in order from one end.
type TunnelLine struct {
	Saddles   []Saddle       // three or more, each further along than the one before
	Straight  tolerance.Spec // of the whole line: the least zone that holds it
	Neighbour tolerance.Spec // of one saddle off the line through its neighbours
	Step      tolerance.Spec // of the heights of two neighbours
	Level     bool           // the datum is parallel to the tunnel, so that steps count
}

// A TunnelLineReport is what follows for a line of saddles.
type TunnelLineReport struct {
	// Straightness is the height of the lowest zone between two parallel lines
	// that holds every saddle (minimum zone, in the plane of the heights). Of
	// brackets the greatest end is exact, the least a bound.
	Straightness tolerance.Finding `json:"straightness"`
	// From is the first of the three saddles that make it what it is.
	From   string `json:"from"`
	Middle string `json:"middle"` // the one off the line through the other two
	To     string `json:"to"`     // the last of the three
	// Offsets are those of the inner saddles from their neighbours' line,
	// above or below it.
	Offsets []tolerance.Bracket `json:"offsets"`
	// Neighbours judge their amounts.
	Neighbours []tolerance.Finding `json:"neighbours"`
	Steps      []tolerance.Finding `json:"steps,omitempty"` // where Level
}

const mostSaddles = 64

// mostOffset is far more than any saddle stands off its line.
const mostOffset = 10 * units.Millimetre

// Assess judges the line. The zone is that of the best line, by the theorem of
// alternation: the line nearest to all saddles is nearest to some three of
// them, so the zone is the greatest [SaddleOffset] of any three.
func (l TunnelLine) Assess() (TunnelLineReport, error) {
	if err := l.check(); err != nil {
		return TunnelLineReport{}, err
	}
	var r TunnelLineReport
	zone := tolerance.Exactly(units.Length(0))
	worst := -units.Picometre
	s := l.Saddles
	for i := range s {
		for j := i + 1; j < len(s); j++ {
			for k := j + 1; k < len(s); k++ {
				o := s[j].offset(s[i], s[k]).Abs()
				zone = zone.Max(o)
				if m, ok := o.Middle(); ok && m > worst {
					worst, r.From, r.Middle, r.To = m, s[i].Where, s[j].Where, s[k].Where
				}
			}
		}
	}
	if lo, _ := zone.Lower(); lo > mostOffset {
		return TunnelLineReport{}, linerError("height at "+r.Middle, zone.String()+" off the line of "+clip(r.From)+" and "+clip(r.To), "within 10 mm of it: is one of them in another unit?")
	}
	var err error
	if r.Straightness, err = linerAssess("alignment of the tunnel", s[0].Where+" to "+s[len(s)-1].Where, l.Straight, zone); err != nil {
		return TunnelLineReport{}, err
	}
	for j := 1; j < len(s)-1; j++ {
		o := s[j].offset(s[j-1], s[j+1])
		f, err := linerAssess("offset from the neighbours' line", s[j].Where, l.Neighbour, o.Abs())
		if err != nil {
			return TunnelLineReport{}, err
		}
		r.Offsets, r.Neighbours = append(r.Offsets, o), append(r.Neighbours, f)
	}
	for j := 1; l.Level && j < len(s); j++ {
		f, err := linerAssess("step between saddles", s[j-1].Where+" to "+s[j].Where, l.Step, SaddleStep(s[j-1].Height, s[j].Height))
		if err != nil {
			return TunnelLineReport{}, err
		}
		r.Steps = append(r.Steps, f)
	}
	return r, nil
}

func (s Saddle) offset(a, c Saddle) tolerance.Bracket {
	return SaddleOffset(a.Height, s.Height, c.Height, a.At, s.At, c.At)
}

func (l TunnelLine) check() error {
	if n := len(l.Saddles); n < 3 || n > mostSaddles {
		return linerError("saddles", fmt.Sprint(n), fmt.Sprintf("from 3 to %d: two always lie on a line", mostSaddles))
	}
	if !l.Level && !l.Step.IsZero() {
		return linerError("step limit", l.Step.New.String(), "usable: steps need heights from a datum parallel to the tunnel")
	}
	for i, s := range l.Saddles {
		if linerRead("height", s.Height) != nil { // named in full only where it is needed
			return linerRead("height at "+s.Where, s.Height)
		}
		if !s.At.InRange() || i > 0 && s.At <= l.Saddles[i-1].At {
			return linerError("place of "+s.Where, s.At.String(), "further along than the one before")
		}
	}
	return nil
}
