package tolerance

import (
	"fmt"

	"github.com/tenthou/tenthou/units"
)

// A SpecOf is what a manual gives for one measure: the band for new parts and
// the wear limit (service limit). Either may be missing.
type SpecOf[Q units.Quantity] struct {
	New        BandOf[Q] `json:"new,omitzero"`        // the band for new parts
	Wear       BandOf[Q] `json:"wear,omitzero"`       // the wear limit, in most manuals one-sided
	NewMating  Mating    `json:"newMating,omitzero"`  // the mating part that New is meant for
	WearMating Mating    `json:"wearMating,omitzero"` // the mating part that Wear is meant for
}

// A Spec is what a manual gives for a length.
type Spec = SpecOf[units.Length]

// IsZero reports whether neither limit is given.
func (s SpecOf[Q]) IsZero() bool { return s.New.IsZero() && s.Wear.IsZero() }

// Validate refuses, with a [SpecError], a band for new parts that reaches
// past the wear limit: one of the two was copied wrong.
func (s SpecOf[Q]) Validate() error {
	if !s.New.InRange() || !s.Wear.InRange() {
		return &RangeError{Op: "limits"}
	}
	if s.New.IsZero() || s.Wear.IsZero() {
		return nil
	}
	n, w := s.New.limits, s.Wear.limits
	low := n.loEnd != Absent && w.loEnd != Absent && !notBelow(n, w)
	high := n.hiEnd != Absent && w.hiEnd != Absent && !notAbove(n, w)
	// A least above the wear limit's greatest leaves no good part at all.
	if low || high || allAbove(n, w) || allBelow(n, w) {
		return &SpecError{New: s.New.String(), Wear: s.Wear.String()}
	}
	return nil
}

// A SpecError names a band for new parts that reaches past the wear limit.
type SpecError struct {
	New, Wear string // the two, exactly
}

func (e *SpecError) Error() string {
	return fmt.Sprintf("tolerance: the band for new parts, %s, reaches past the wear limit, %s", e.New, e.Wear)
}

// Unwrap gives [ErrSpec].
func (e *SpecError) Unwrap() error { return ErrSpec }

// Stand is the standing of a part of which x was measured. A wear limit
// speaks for its own side alone: a clearance below the new-part band is not
// made good by a greatest wear limit.
func (s SpecOf[Q]) Stand(x Interval[Q]) Standing { return s.StandAll(x) }

// StandAll is the standing of a part measured at several stations: the worst
// of them. Where a station's standing can't be told, the part's is known only
// if another is worse than whatever that one may be.
func (s SpecOf[Q]) StandAll(stations ...Interval[Q]) Standing {
	if len(stations) == 0 {
		return CantTell
	}
	least, greatest := Extremes(stations...)
	return s.stand(least, greatest)
}

func (s SpecOf[Q]) stand(least, greatest Interval[Q]) Standing {
	if s.IsZero() || !least.InRange() || !greatest.InRange() || !s.New.InRange() || !s.Wear.InRange() {
		return CantTell
	}
	n, w := s.New.limits, s.Wear.limits
	lowBest, lowWorst := s.side(w.loEnd != Absent, allBelow(least, n), !notBelow(least, n), allBelow(least, w), !notBelow(least, w))
	highBest, highWorst := s.side(w.hiEnd != Absent, allAbove(greatest, n), !notAbove(greatest, n), allAbove(greatest, w), !notAbove(greatest, w))
	switch best, worst := max(lowBest, highBest), max(lowWorst, highWorst); {
	case best == worst:
		return best
	case worst == Usable:
		return Usable
	}
	return CantTell
}

// side gives the best and the worst standing that an extreme may have on its
// side, from whether all of it and some of it lies past each limit there.
func (s SpecOf[Q]) side(hasWear, allNew, someNew, allWear, someWear bool) (best, worst Standing) {
	within, past := AsNew, OutsideNewBand
	if s.New.IsZero() {
		within = Usable
	}
	if hasWear {
		past = Usable
	}
	standing := func(pastNew, pastWear bool) Standing {
		switch {
		case pastWear:
			return PastWearLimit
		case pastNew:
			return past
		}
		return within
	}
	return standing(allNew, allWear), standing(someNew, someWear)
}
