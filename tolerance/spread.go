package tolerance

import "github.com/tenthou/tenthou/units"

// Spread holds the greatest less the least of every choice of one value from
// each interval; of one alone it is 0. The greatest and the least come from
// two different intervals, so one wide bracket among exact ones counts once.
func (i Interval[Q]) Spread(more ...Interval[Q]) Interval[Q] {
	if !i.InRange() || isTemperature[Q]() {
		return broken[Q]()
	}
	// Of those so far: the one that reaches highest, the one that reaches
	// lowest, the one that begins highest, the one that ends lowest.
	high, low, begins, ends := i, i, i, i
	r := Exactly(Q(0))
	for _, j := range more {
		if !j.InRange() {
			return broken[Q]()
		}
		for _, d := range [2]Interval[Q]{upTo(j, low), upTo(high, j)} {
			if !notAbove(d, r) {
				r.hi, r.hiEnd = d.hi, d.hiEnd
			}
		}
		if !notAbove(j, high) {
			high = j
		}
		if !notBelow(j, low) {
			low = j
		}
		if !notBelow(begins, j) {
			begins = j
		}
		if !notAbove(ends, j) {
			ends = j
		}
	}
	// Where one begins above the end of another, they differ by that at least,
	// and all others have values between the two; else one value may lie in
	// them all.
	if begins.loEnd != Absent && ends.hiEnd != Absent && begins.lo >= ends.hi {
		r.lo, r.loEnd = begins.lo-ends.hi, min(begins.loEnd, ends.hiEnd)
	}
	if !inRange(r.lo) || !inRange(r.hi) {
		return broken[Q]()
	}
	return r
}

// upTo has the upper end of i − j, and no lower one.
func upTo[Q units.Quantity](i, j Interval[Q]) Interval[Q] {
	d := Interval[Q]{hi: i.hi - j.lo, hiEnd: min(i.hiEnd, j.loEnd)}
	if d.hiEnd == Absent {
		d.hi = 0
	}
	return d
}
