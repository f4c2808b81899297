package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// endPair are both ends of an interval that has them.
type endPair[Q units.Quantity] struct {
	lo, hi       Q
	loEnd, hiEnd tolerance.End
}

// turned has the ends the other way round.
func (l endPair[Q]) turned() endPair[Q] { return endPair[Q]{l.hi, l.lo, l.hiEnd, l.loEnd} }

// bothEnds are those of an interval that has both and is in range.
func bothEnds[Q units.Quantity](i tolerance.Interval[Q]) (l endPair[Q], ok bool) {
	l.lo, l.loEnd = i.Lower()
	l.hi, l.hiEnd = i.Upper()
	return l, i.InRange() && l.loEnd != tolerance.Absent && l.hiEnd != tolerance.Absent
}

// spanOf is the interval between ends that may be out of range, and then it is.
func spanOf[Q units.Quantity](lo Q, loEnd tolerance.End, hi Q, hiEnd tolerance.End) tolerance.Interval[Q] {
	i, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	return i
}

// hullOf is the least interval that holds i and j.
func hullOf[Q units.Quantity](i, j tolerance.Interval[Q]) tolerance.Interval[Q] {
	least, greatest := i.Min(j), i.Max(j)
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	if !least.InRange() || !greatest.InRange() {
		return least.Add(greatest)
	}
	return spanOf(lo, loEnd, hi, hiEnd)
}

// surelyBelow reports whether every value of i lies below every one of j.
func surelyBelow[Q units.Quantity](i, j tolerance.Interval[Q]) bool {
	return tolerance.BandFrom(j).Judge(i) == tolerance.Below
}

// orNothing is i, or exactly nothing where it was not given.
func orNothing[Q units.Quantity](i tolerance.Interval[Q]) tolerance.Interval[Q] {
	if i.IsZero() {
		return tolerance.Exactly(Q(0))
	}
	return i
}

// quantaAs reads the quanta of one quantity as those of another, for a scale that
// crosses the two.
func quantaAs[P, Q units.Quantity](i tolerance.Interval[Q]) tolerance.Interval[P] {
	l, ok := bothEnds(i)
	if !ok {
		return tolerance.Exactly(units.OutOfRange[P]())
	}
	return spanOf(P(l.lo), l.loEnd, P(l.hi), l.hiEnd)
}

// aboveZero refuses what isn't known on both sides or may not be above zero.
func aboveZero[Q units.Quantity](field string, i tolerance.Interval[Q]) error {
	return bounded(field, i, true)
}

// notNegative refuses what isn't known on both sides or may be below zero;
// what was not given is nothing.
func notNegative[Q units.Quantity](field string, i tolerance.Interval[Q]) error {
	if i.IsZero() {
		return nil
	}
	return bounded(field, i, false)
}

func bounded[Q units.Quantity](field string, i tolerance.Interval[Q], positive bool) error {
	l, ok := bothEnds(i)
	switch {
	case !i.InRange():
		return &InputError{field, i.String(), "within range"}
	case i.IsZero():
		return &InputError{field, "(not given)", "a size above 0"}
	case !ok:
		return &InputError{field, i.String(), "known on both sides"}
	case positive && (l.lo < 0 || l.lo == 0 && l.loEnd == tolerance.Closed):
		return &InputError{field, i.String(), "above 0"}
	case l.lo < 0:
		return &InputError{field, i.String(), "0 or more"}
	}
	return nil
}
