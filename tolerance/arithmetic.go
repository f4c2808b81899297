package tolerance

import "github.com/tenthou/tenthou/units"

// broken is the interval that left the range.
func broken[Q units.Quantity]() Interval[Q] { return Exactly(units.OutOfRange[Q]()) }

// settle gives broken for an interval with an end out of range.
func (i Interval[Q]) settle() Interval[Q] {
	if !i.InRange() {
		return broken[Q]()
	}
	return i
}

// both is the end of a sum: closed only if both are.
func both(a, b End) End { return min(a, b) }

// Add holds every sum of a value of i and one of j.
func (i Interval[Q]) Add(j Interval[Q]) Interval[Q] {
	return interval(checkedAdd(i.lo, j.lo), both(i.loEnd, j.loEnd), checkedAdd(i.hi, j.hi), both(i.hiEnd, j.hiEnd)).keep(i, j)
}

// Sub holds every difference of a value of i and one of j.
func (i Interval[Q]) Sub(j Interval[Q]) Interval[Q] {
	return interval(checkedSub(i.lo, j.hi), both(i.loEnd, j.hiEnd), checkedSub(i.hi, j.lo), both(i.hiEnd, j.loEnd)).keep(i, j)
}

// keep is the result unless it, i or j is out of range.
func (r Interval[Q]) keep(i, j Interval[Q]) Interval[Q] {
	if !i.InRange() || !j.InRange() {
		return broken[Q]()
	}
	return r.settle()
}

func (i Interval[Q]) neg() Interval[Q] { return Interval[Q]{-i.hi, -i.lo, i.hiEnd, i.loEnd} }

// Abs holds the magnitude of every value of i.
func (i Interval[Q]) Abs() Interval[Q] {
	switch {
	case !i.InRange():
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

// Spread holds the greatest less the least of every choice of one value from
// each interval. The two come from different intervals, so one wide bracket
// among exact ones counts once.
func (i Interval[Q]) Spread(more ...Interval[Q]) Interval[Q] {
	if !i.InRange() {
		return broken[Q]()
	}
	if len(more) == 0 {
		return Exactly(Q(0))
	}
	// The two highest and the two lowest ends, the greatest lower end and
	// the least upper end.
	high, low := [2]Interval[Q]{i}, [2]Interval[Q]{i}
	highAt, lowAt := 0, 0
	inner, outer := i, i // inner.lo is the greatest lower end, outer.hi the least upper end
	for k, j := range more {
		if !j.InRange() {
			return broken[Q]()
		}
		if !notAbove(j, high[0]) {
			high[1], high[0], highAt = high[0], j, k+1
		} else if k == 0 || !notAbove(j, high[1]) {
			high[1] = j
		}
		if !notBelow(j, low[0]) {
			low[1], low[0], lowAt = low[0], j, k+1
		} else if k == 0 || !notBelow(j, low[1]) {
			low[1] = j
		}
		if !notBelow(inner, j) {
			inner = j
		}
		if !notAbove(outer, j) {
			outer = j
		}
	}
	top := high[0].Sub(low[0])
	if highAt == lowAt {
		top = high[0].Sub(low[1])
		if other := high[1].Sub(low[0]); !notAbove(other, top) {
			top = other
		}
	}
	r := Interval[Q]{0, top.hi, Closed, top.hiEnd}
	if least := inner.Sub(outer); least.loEnd != Absent && least.lo >= 0 {
		r.lo, r.loEnd = least.lo, least.loEnd
	}
	if r.hiEnd != Absent && r.hi <= 0 {
		return Exactly(Q(0))
	}
	return r.settle()
}

// Scale holds every value of i times num/den, rounded outward.
func (i Interval[Q]) Scale(num, den int64) Interval[Q] {
	return i.scale(num, den, units.ScaleRound[Q])
}

// ScalePi holds every value of i times π·num/den, rounded outward.
func (i Interval[Q]) ScalePi(num, den int64) Interval[Q] {
	return i.scale(num, den, units.ScalePiRound[Q])
}

func (i Interval[Q]) scale(num, den int64, f func(Q, int64, int64, units.Rounding) Q) Interval[Q] {
	switch {
	case !i.InRange() || den == 0:
		return broken[Q]()
	case num == 0:
		return Exactly(Q(0))
	case (num < 0) != (den < 0):
		i = Interval[Q]{i.hi, i.lo, i.hiEnd, i.loEnd}
	}
	lo, loUp := f(i.lo, num, den, units.Down), f(i.lo, num, den, units.Up)
	hiDown, hi := f(i.hi, num, den, units.Down), f(i.hi, num, den, units.Up)
	// What rounding moved outward lies strictly inside.
	if lo != loUp {
		i.loEnd = min(i.loEnd, Open)
	}
	if hi != hiDown {
		i.hiEnd = min(i.hiEnd, Open)
	}
	return interval(lo, i.loEnd, hi, i.hiEnd).settle()
}
