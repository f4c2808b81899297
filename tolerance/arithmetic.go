package tolerance

import "github.com/tenthou/tenthou/units"

// Each operation gives the tightest interval that holds every result, its
// ends rounded outward to the quantum; an end is closed only where that very
// value can be had. What is out of range stays so. Temperatures, which have
// no sums and no multiples, go out of range in all but Min and Max.

// keep is the result unless it, i or j is out of range.
func (r Interval[Q]) keep(i, j Interval[Q]) Interval[Q] {
	if !i.InRange() || !j.InRange() || !inRange(r.lo) || !inRange(r.hi) {
		return broken[Q]()
	}
	return r
}

// sum is the interval of a sum's or difference's ends, each closed only if
// both that make it are. Of what is out of range they may have wrapped, which
// keep then sees to.
func sum[Q units.Quantity](lo Q, lo1, lo2 End, hi Q, hi1, hi2 End) Interval[Q] {
	if isTemperature[Q]() {
		return broken[Q]()
	}
	r := Interval[Q]{lo, hi, min(lo1, lo2), min(hi1, hi2)}
	if r.loEnd == Absent {
		r.lo = 0
	}
	if r.hiEnd == Absent {
		r.hi = 0
	}
	return r
}

// Add holds every sum of a value of i and one of j.
func (i Interval[Q]) Add(j Interval[Q]) Interval[Q] {
	return sum(i.lo+j.lo, i.loEnd, j.loEnd, i.hi+j.hi, i.hiEnd, j.hiEnd).keep(i, j)
}

// Sub holds every difference of a value of i and one of j.
func (i Interval[Q]) Sub(j Interval[Q]) Interval[Q] {
	return sum(i.lo-j.hi, i.loEnd, j.hiEnd, i.hi-j.lo, i.hiEnd, j.loEnd).keep(i, j)
}

func (i Interval[Q]) neg() Interval[Q] { return Interval[Q]{-i.hi, -i.lo, i.hiEnd, i.loEnd} }

// Abs holds the magnitude of every value of i.
func (i Interval[Q]) Abs() Interval[Q] {
	switch {
	case !i.InRange() || isTemperature[Q]():
		return broken[Q]()
	case i.loEnd != Absent && i.lo >= 0:
		return i
	case i.hiEnd != Absent && i.hi <= 0:
		return i.neg()
	}
	n := i.neg()
	if notAbove(n, i) {
		n = i
	}
	return Interval[Q]{0, n.hi, Closed, n.hiEnd}
}

// Min holds the lesser of every pair of a value of i and one of j.
func (i Interval[Q]) Min(j Interval[Q]) Interval[Q] {
	r := i
	if !notBelow(j, i) {
		r.lo, r.loEnd = j.lo, j.loEnd
	}
	if !notAbove(i, j) {
		r.hi, r.hiEnd = j.hi, j.hiEnd
	}
	return r.keep(i, j)
}

// Max holds the greater of every pair of a value of i and one of j.
func (i Interval[Q]) Max(j Interval[Q]) Interval[Q] {
	r := i
	if !notAbove(j, i) {
		r.hi, r.hiEnd = j.hi, j.hiEnd
	}
	if !notBelow(i, j) {
		r.lo, r.loEnd = j.lo, j.loEnd
	}
	return r.keep(i, j)
}

// Scale holds every value of i times num/den, rounded outward. A zero den
// gives an interval out of range.
func (i Interval[Q]) Scale(num, den int64) Interval[Q] {
	return i.scale(num, den, units.ScaleRound[Q])
}

// ScalePi holds every value of i times π·num/den, rounded outward. A zero den
// gives an interval out of range.
func (i Interval[Q]) ScalePi(num, den int64) Interval[Q] {
	return i.scale(num, den, units.ScalePiRound[Q])
}

func (i Interval[Q]) scale(num, den int64, times func(Q, int64, int64, units.Rounding) Q) Interval[Q] {
	switch {
	case !i.InRange() || den == 0 || isTemperature[Q]():
		return broken[Q]()
	case num == 0:
		return Exactly(Q(0))
	case (num < 0) != (den < 0):
		i = Interval[Q]{i.hi, i.lo, i.hiEnd, i.loEnd}
	}
	r := Interval[Q]{times(i.lo, num, den, units.Down), times(i.hi, num, den, units.Up), i.loEnd, i.hiEnd}
	// What rounding moved outward lies strictly inside.
	if r.loEnd == Closed && r.lo != times(i.lo, num, den, units.Up) {
		r.loEnd = Open
	}
	if r.hiEnd == Closed && r.hi != times(i.hi, num, den, units.Down) {
		r.hiEnd = Open
	}
	return r.keep(i, i)
}
