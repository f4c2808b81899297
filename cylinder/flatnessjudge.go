package cylinder

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A LineReport is one line judged.
type LineReport struct {
	Name      string            `json:"name"`      // the line's
	Direction Direction         `json:"direction"` // the line's
	Seat      Seat              `json:"seat"`      // how the straight-edge lay
	Departure tolerance.Bracket `json:"departure"` // from straight
	Finding   tolerance.Finding `json:"finding"`   // of the gap against the limit for the direction
}

// A LocalReport is one local limit judged.
type LocalReport struct {
	Over    units.Length      `json:"over"`    // the limit's length
	Finding tolerance.Finding `json:"finding"` // of every gap that bounds it
}

// A FaceReport is what a straight-edge says of a face.
type FaceReport struct {
	Lines   []LineReport  `json:"lines"`           // those that were measured over their length
	Local   []LocalReport `json:"local,omitempty"` // in the order of the limits
	Governs []string      `json:"governs"`         // the line with the least margin, or all those that may have it
	// Worst is the greatest departure of a line from straight. The face's
	// departure from flat is no less, and may be more: that of a twist is twice
	// what its diagonals show, and edges and ends show nothing of it.
	Worst tolerance.Bracket `json:"worst"`
	// CornerOff is how far one corner lies off the plane of the other three. It
	// and Flatness are known only where all of [SixLines] were measured in
	// their order and each says whether the straight-edge rested or rocked. The
	// bows are taken to be in the lines' middles.
	CornerOff tolerance.Bracket  `json:"cornerOff,omitzero"`
	Flatness  tolerance.Bracket  `json:"flatness,omitzero"` // how far the face departs from flat at nine points
	Tunnel    tolerance.Finding  `json:"tunnel,omitzero"`   // of the cam tunnel, where it was measured
	Standing  tolerance.Standing `json:"standing"`          // of the face: the worst of lines and local limits
	Doubts    []FaceDoubt        `json:"doubts,omitempty"`  // what the straight-edge left open
	Remedy    FaceRemedy         `json:"remedy"`            // what follows
	Next      string             `json:"next"`              // what to do next, in words
}

// Assess judges a face: each line by the limit for its direction, each local
// limit by every gap that says something about it, and what follows. Where the
// straight-edge rocks on a line, its departure is judged, not one end's gap.
//
// A gap under a long straight-edge is never less than that under a shorter one
// at the same place, since the shorter one can sink further: so a whole-line
// gap is an upper bound for a local limit, and one under a shorter
// straight-edge than the limit's a lower bound.
//
// It fails with an [InputError] where no line was measured, where a line has
// no direction, and for a gap below zero or a length below zero, and as
// [tolerance.Assess] does where limits contradict each other.
func (f Face) Assess() (FaceReport, error) {
	if err := f.check(); err != nil {
		return FaceReport{}, err
	}
	var r FaceReport
	var departures []tolerance.Bracket
	for _, l := range f.Lines {
		gaps := l.whole()
		if len(gaps) == 0 {
			continue
		}
		line := LineReport{Name: l.Name, Direction: l.Direction, Seat: l.Seat, Departure: l.Departure()}
		if l.Seat == Rocks {
			gaps = []tolerance.Bracket{line.Departure}
		}
		var err error
		if line.Finding, err = tolerance.Assess("gap under the straight-edge", l.Name, f.Limits.of(l.Direction), gaps...); err != nil {
			return FaceReport{}, err
		}
		if l.Seat == Rocks && line.Finding.Standing == tolerance.CantTell && !line.Finding.Spec.IsZero() {
			line.Finding.Settle = "rock the straight-edge until the gaps under its two ends are alike, and try the blades there: that gap is the hump"
		}
		r.Lines, departures = append(r.Lines, line), append(departures, line.Departure)
	}
	_, r.Worst = tolerance.Extremes(departures...)
	for _, limit := range f.Limits.Local {
		finding, err := f.local(limit)
		if err != nil {
			return FaceReport{}, err
		}
		r.Local = append(r.Local, LocalReport{limit.Over, finding})
	}
	r.Governs = governs(r.Lines)
	r.twist(f.Lines)
	r.stand()
	r.Doubts = f.doubts()
	return r, f.decide(&r)
}

func (f Face) check() error {
	measured := false
	for _, l := range f.Lines {
		if int(l.Direction) >= len(directionNames) || l.Direction == NoDirection {
			return &InputError{"direction of " + l.Name, l.Direction.String(), "lengthwise, across or diagonal"}
		}
		if int(l.Seat) >= len(seatNames) {
			return &InputError{"seat on " + l.Name, fmt.Sprint(uint8(l.Seat)), "rests, rocks or unsaid"}
		}
		if l.Seat == Rests && (l.endsTried() || !l.Ends[0].IsZero() || !l.Ends[1].IsZero()) {
			return &InputError{"end gaps of " + l.Name, "given", "left out where the straight-edge rests at both ends"}
		}
		for _, g := range l.Gaps {
			if g.Over < 0 || !g.Over.InRange() {
				return &InputError{"straight-edge on " + l.Name, g.Over.String(), "0 mm (the whole line) or more"}
			}
		}
		for _, g := range append(l.whole(), l.short()...) {
			lo, end := g.Lower()
			if !g.InRange() || end == tolerance.Absent || lo < 0 {
				return &InputError{"gap on " + l.Name, g.String(), "0 mm or more"}
			}
			measured = true
		}
	}
	if !measured {
		return &InputError{"lines measured", "none", "one at least: lay the straight-edge along both edges, both ends and both diagonals"}
	}
	for _, limit := range f.Limits.Local {
		if limit.Over <= 0 || !limit.Over.InRange() {
			return &InputError{"length of a local limit", limit.Over.String(), "above 0 mm"}
		}
	}
	return nil
}

// short are the gaps under a straight-edge shorter than the line.
func (l Line) short() (gaps []tolerance.Bracket) {
	for _, g := range l.Gaps {
		if g.Over != 0 {
			gaps = append(gaps, g.Gap)
		}
	}
	return gaps
}

// local judges one local limit by all gaps that bound it.
func (f Face) local(limit LocalLimit) (tolerance.Finding, error) {
	var stations []tolerance.Bracket
	tried := false
	for _, l := range f.Lines {
		for _, g := range l.Gaps {
			switch {
			case g.Over == limit.Over:
				stations, tried = append(stations, g.Gap), true
			case g.Over == 0 || g.Over > limit.Over:
				stations = append(stations, anyUpTo(g.Gap))
			default:
				stations = append(stations, anyFrom(g.Gap))
			}
		}
		for _, e := range l.Ends {
			if !e.IsZero() {
				stations = append(stations, anyUpTo(e))
			}
		}
	}
	finding, err := tolerance.Assess("gap within "+limit.Over.String(), f.Where, limit.Limit, stations...)
	if err == nil && finding.Standing == tolerance.CantTell && !tried && !limit.Limit.IsZero() {
		finding.Settle = "lay a straight-edge of " + limit.Over.String() + " along the lines where the gap is greatest, and try the blades under it"
	}
	return finding, err
}

// governs are the lines that no other is sure to have less margin than; where
// no limits are given, those that none is sure to depart more than.
func governs(lines []LineReport) (names []string) {
	margin := func(l LineReport) tolerance.Bracket { return l.Finding.Margin }
	limited := func(l LineReport) bool { return !l.Finding.Spec.IsZero() }
	any := false
	for _, l := range lines {
		any = any || limited(l)
	}
	if !any {
		margin = func(l LineReport) tolerance.Bracket { return tolerance.Exactly(units.Length(0)).Sub(l.Departure) }
		limited = func(LineReport) bool { return true }
	}
	for i, l := range lines {
		least := limited(l)
		for j, o := range lines {
			if i != j && limited(o) && surelyBelow(margin(o), margin(l)) {
				least = false
			}
		}
		if least {
			names = append(names, l.Name)
		}
	}
	return names
}

// twist works out the nine points, where every line says how its straight-edge
// lay.
func (r *FaceReport) twist(lines []Line) {
	b, ok := SixBows(lines)
	if !ok {
		return
	}
	r.CornerOff = CornerOffPlane(b.FirstDiagonal, b.SecondDiagonal)
	h := NineHeights(b)
	spread := h[0][0].Spread(h[0][1], h[0][2], h[1][0], h[1][1], h[1][2], h[2][0], h[2][1], h[2][2])
	// The corners alone depart by half of what one lies off the others' plane,
	// and no line departs more than the face.
	least := r.Worst.Max(r.CornerOff.Scale(1, 2))
	lo, loEnd := least.Lower()
	hi, hiEnd := spread.Upper()
	r.Flatness = spanOf(lo, loEnd, hi, hiEnd)
}

// SixBows are the bows of the six lines in the order of [SixLines], from their
// departures: a hump where the straight-edge rocks, a hollow where it rests.
// ok is false where lines are missing, in another order, or don't say.
func SixBows(lines []Line) (b Bows[tolerance.Bracket], ok bool) {
	six := SixLines()
	if len(lines) != len(six) {
		return b, false
	}
	into := [...]*tolerance.Bracket{&b.Left, &b.Right, &b.Front, &b.Rear, &b.FirstDiagonal, &b.SecondDiagonal}
	for i, l := range lines {
		if l.Direction != six[i].Direction || l.Seat == SeatUnsaid || len(l.whole()) == 0 {
			return Bows[tolerance.Bracket]{}, false
		}
		*into[i] = l.Departure()
		if l.Seat == Rests {
			*into[i] = tolerance.Exactly(units.Length(0)).Sub(*into[i])
		}
	}
	return b, true
}

// stand is the worst standing of lines and local limits; what can't be told
// counts unless another is worse than it may be.
func (r *FaceReport) stand() {
	worst, open := tolerance.CantTell, false
	count := func(s tolerance.Standing) {
		worst, open = max(worst, s), open || s == tolerance.CantTell
	}
	for _, l := range r.Lines {
		count(l.Finding.Standing)
	}
	for _, l := range r.Local {
		count(l.Finding.Standing)
	}
	if open && worst < tolerance.OutsideNewBand {
		worst = tolerance.CantTell
	}
	r.Standing = worst
}

// lineList joins names for a sentence.
func lineList(names []string) string { return strings.Join(names, "; ") }
