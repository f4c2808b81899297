package feeler

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Bracket is what the trials of one station say of its gap, the blades being
// taken for exact: [t, u), t the thickest that entered and u the thinnest that
// was tried and did not. A blade that was not tried bounds nothing, so that with
// none entered it is [0, u), with every one entered [t, ∞), and with none tried
// [0, ∞). The order of the trials doesn't matter.
//
// It fails with a [ContradictionError] where a blade entered and one not thicker
// did not, and with a [TrialError] for a thickness or a feel that is none.
func Bracket(trials ...Trial) (tolerance.Bracket, error) { return bracket(trials, false) }

// BracketWithErrors is [Bracket] with the errors of the blades allowed for: the
// gap is at least every t−e that entered and less than every u+e that did not.
// Trials that the errors can reconcile are no contradiction, unless they are of
// one blade: that went in or it didn't, however thick it is.
func BracketWithErrors(trials ...Trial) (tolerance.Bracket, error) { return bracket(trials, true) }

func bracket(trials []Trial, errors bool) (tolerance.Bracket, error) {
	lo, hi := units.Length(0), units.Length(0)
	in, out := -1, -1 // the trials that bound it
	for i := range trials {
		t := &trials[i]
		if t.Feel == Untried {
			continue
		}
		if t.Thickness <= 0 || t.Thickness > MaxStackThickness {
			return tolerance.Bracket{}, &TrialError{Index: i, Trial: *t, Kind: ErrThickness}
		}
		e := units.Length(0)
		if errors {
			if e = t.Error; e < 0 || e >= t.Thickness {
				return tolerance.Bracket{}, &TrialError{Index: i, Trial: *t, Kind: ErrThickness}
			}
		}
		switch t.Feel {
		case Free, Drag:
			if least := t.Thickness - e; in < 0 || least > lo {
				lo, in = least, i
			}
		case Forced, Refused:
			if most := t.Thickness + e; out < 0 || most < hi {
				hi, out = most, i
			}
		default:
			return tolerance.Bracket{}, &TrialError{Index: i, Trial: *t, Kind: ErrFeel}
		}
	}
	if out < 0 {
		return tolerance.NewInterval(lo, tolerance.Closed, 0, tolerance.Absent)
	}
	if lo >= hi {
		return tolerance.Bracket{}, &ContradictionError{Entered: trials[in], Refused: trials[out], Errors: errors}
	}
	if errors && in >= 0 {
		if err := sameBlade(trials); err != nil {
			return tolerance.Bracket{}, err
		}
	}
	return tolerance.HalfOpen(lo, hi)
}

// sameBlade looks for a blade that both entered and didn't. Blades are known
// apart by their marks, so two of one mark count as one.
func sameBlade(trials []Trial) error {
	for i := range trials {
		a := &trials[i]
		if !a.Feel.Entered() || a.Blade == "" {
			continue
		}
		for k := range trials {
			if b := &trials[k]; b.Feel >= Forced && b.Thickness == a.Thickness && b.Blade == a.Blade {
				return &ContradictionError{Entered: *a, Refused: *b, Errors: true}
			}
		}
	}
	return nil
}

// ForcedTrials are the trials in which a blade went in by force only. They count
// as refused, and belong on the record: never force a blade.
func ForcedTrials(trials ...Trial) []Trial {
	var forced []Trial
	for _, t := range trials {
		if t.Feel == Forced {
			forced = append(forced, t)
		}
	}
	return forced
}

// Inside are the blades of the set that lie inside the bracket, the thinnest
// first, one of each thickness: each of them, tried, narrows it whichever way
// it goes. In a bracket of [Bracket] none of them has been tried.
func (s Set) Inside(b tolerance.Bracket) []Blade { return s.inside(b, false) }

// InsideWithErrors is [Set.Inside] for a bracket of [BracketWithErrors]: the
// blades that narrow it whichever way they go even if they are off by their
// error.
func (s Set) InsideWithErrors(b tolerance.Bracket) []Blade { return s.inside(b, true) }

func (s Set) inside(b tolerance.Bracket, errors bool) []Blade {
	var in []Blade
	last := units.Length(0)
	for _, blade := range s.data().blades {
		t, e := blade.Thickness(), units.Length(0)
		if errors {
			e = blade.Error
		}
		if t != last && narrows(b, t, e) {
			in, last = append(in, blade), t
		}
	}
	return in
}

// narrows reports whether a blade of t ± e cuts something off the bracket
// whichever way it goes.
func narrows(b tolerance.Bracket, t, e units.Length) bool {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	return b.InRange() && (loEnd == tolerance.Absent || t-e > lo) && (hiEnd == tolerance.Absent || t+e < hi)
}
