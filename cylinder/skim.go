package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SkimNeeded is the least skim that cleans up a face: how far it departs from
// flat, plus the stock that the cutter must take at the lowest place to leave
// a fresh surface all over.
func SkimNeeded[N tolerance.Number[N]](departure, stock N) N { return departure.Add(stock) }

// HeightLeft is what a part's height still has above the least that is allowed
// once so much is taken off; below zero where the skim goes past it.
func HeightLeft[N tolerance.Number[N]](height, off, least N) N { return height.Sub(off).Sub(least) }

// SkimLeft is what may still be taken off where the manual limits the total
// ever removed: that, less what was taken before and now.
func SkimLeft[N tolerance.Number[N]](most, before, off N) N { return most.Sub(before).Sub(off) }

// RoundUpTo is the least multiple of the step that is not below l: what to
// set a machine to. A step of zero or less leaves l as it is.
func RoundUpTo(l, step units.Length) units.Length {
	if step <= 0 || !l.InRange() || !step.InRange() {
		return l
	}
	up := l
	if rest := l % step; rest > 0 {
		up += step - rest
	} else {
		up -= rest // towards zero, which is up
	}
	return up
}

// A FaceSkim is what there is to plan a skim of a head or a block from.
type FaceSkim struct {
	Departure tolerance.Bracket // from flat: the worst there is
	Stock     units.Length      // least cut at the lowest place; common practice is 0.02 to 0.05 mm
	Step      units.Length      // of the machine's feed; 0 for none

	// The limit, either as a height or as metal removed in all. Both may be
	// given; then both count.
	Height      tolerance.Bracket // as measured now; zero where there is no limit of height
	LeastHeight units.Length      // the least allowed
	MostOff     units.Length      // the most that may ever be taken off; 0 where there is no such limit
	OffBefore   tolerance.Bracket // what was taken off before; zero for none
}

// A SkimPlan is what follows. Verdict is that of what is left against "at
// least 0": Below where the part would be too low, Undecided where that can't
// be told, or where no limit was given.
type SkimPlan struct {
	Off     units.Length      `json:"off"`              // what to take off: enough for the worst that the departure may be
	Height  tolerance.Bracket `json:"height,omitzero"`  // of the part afterwards, where it was measured
	Left    tolerance.Bracket `json:"left,omitzero"`    // what may then still come off; below zero where it is too much
	Verdict tolerance.Verdict `json:"verdict,omitzero"` // whether the part keeps to its limit
	Limited bool              `json:"limited"`          // whether any limit was given
}

// Plan is the skim that cleans up the face whatever the departure is within
// its bracket, rounded up to the machine's step, and what it leaves of the
// limit. It fails with an [InputError] where the departure may be below zero
// or isn't bounded above (a thicker blade would bound it), where stock or step
// are below zero, and where a height is missing its limit or the other way
// round.
func (s FaceSkim) Plan() (SkimPlan, error) {
	if err := s.check(); err != nil {
		return SkimPlan{}, err
	}
	worst, _ := s.Departure.Upper()
	p := SkimPlan{Off: RoundUpTo(SkimNeeded(worst, s.Stock), s.Step)}
	off := tolerance.Exactly(p.Off)
	if !s.Height.IsZero() {
		p.Height = s.Height.Sub(off)
		p.Left, p.Limited = HeightLeft(s.Height, off, tolerance.Exactly(s.LeastHeight)), true
	}
	if s.MostOff > 0 {
		left := SkimLeft(tolerance.Exactly(s.MostOff), orNothing(s.OffBefore), off)
		if p.Limited {
			left = left.Min(p.Left)
		}
		p.Left, p.Limited = left, true
	}
	if p.Limited {
		p.Verdict = tolerance.AtLeast(units.Length(0)).Judge(p.Left)
	}
	return p, nil
}

func (s FaceSkim) check() error {
	lo, _ := s.Departure.Lower()
	_, hiEnd := s.Departure.Upper()
	switch {
	case !s.Departure.InRange() || lo < 0 || hiEnd == tolerance.Absent:
		return &InputError{"departure from flat", s.Departure.String(), "0 or more, and bounded above: try a thicker blade"}
	case s.Stock < 0 || !s.Stock.InRange():
		return &InputError{"stock", s.Stock.String(), "0 or more"}
	case s.Step < 0 || !s.Step.InRange():
		return &InputError{"step", s.Step.String(), "0 or more"}
	case s.MostOff < 0 || !s.MostOff.InRange():
		return &InputError{"most to take off", s.MostOff.String(), "0 or more"}
	case s.Height.IsZero() && s.LeastHeight != 0:
		return &InputError{"height", "(not given)", "measured, where a least height is given"}
	case !s.Height.IsZero() && (s.LeastHeight <= 0 || !s.LeastHeight.InRange()):
		return &InputError{"least height", s.LeastHeight.String(), "above 0, where the height is given"}
	case !s.OffBefore.IsZero() && s.MostOff == 0:
		return &InputError{"most to take off", "(not given)", "given, where something was taken off before"}
	}
	if !s.Height.IsZero() {
		if err := aboveZero("height", s.Height); err != nil {
			return err
		}
		h, _ := bothEnds(s.Height)
		if quarter := s.LeastHeight.Scale(1, 4); h.hi < s.LeastHeight.Sub(quarter) || h.lo > s.LeastHeight.Add(quarter) {
			return &InputError{"height", s.Height.String(), "within a quarter of the least height " + s.LeastHeight.String() + ": is one of them in another unit?"}
		}
	}
	return notNegative("taken off before", s.OffBefore)
}
