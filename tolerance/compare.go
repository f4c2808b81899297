package tolerance

import "github.com/tenthou/tenthou/units"

// Difference is where two bands part: what one accepts and the other rejects.
type Difference[Q units.Quantity] struct {
	OnlyFirst, OnlySecond []Interval[Q] // at most two each, from the least
}

// Same reports whether the two bands accept the same.
func (d Difference[Q]) Same() bool { return len(d.OnlyFirst) == 0 && len(d.OnlySecond) == 0 }

// String is the difference in a sentence, in exact values.
func (d Difference[Q]) String() string {
	if d.Same() {
		return "both accept the same"
	}
	first, second := list(d.OnlyFirst), list(d.OnlySecond)
	switch {
	case second == "":
		return "the first alone accepts " + first
	case first == "":
		return "the second alone accepts " + second
	}
	return "the first alone accepts " + first + ", the second alone " + second
}

func list[Q units.Quantity](all []Interval[Q]) (s string) {
	for k, i := range all {
		if k > 0 {
			s += " and "
		}
		s += i.String()
	}
	return s
}

// Compare tells where two bands part, such as a manual's two columns: of
// 0.03–0.07 mm and 0.0012–0.0028 in the first alone accepts
// [0.03 mm, 0.03048 mm), the second alone (0.07 mm, 0.07112 mm]. A band that
// asks nothing accepts everything. Where a band is out of range, both stand
// whole in the answer: nothing of them is known to be the same.
func Compare[Q units.Quantity](first, second BandOf[Q]) Difference[Q] {
	if !first.InRange() || !second.InRange() {
		return Difference[Q]{[]Interval[Q]{first.limits}, []Interval[Q]{second.limits}}
	}
	return Difference[Q]{OnlyFirst: minus(first.limits, second.limits), OnlySecond: minus(second.limits, first.limits)}
}

// minus is what i holds and j doesn't.
func minus[Q units.Quantity](i, j Interval[Q]) (rest []Interval[Q]) {
	if j.loEnd != Absent {
		if low, ok := i.Intersect(Interval[Q]{hi: j.lo, hiEnd: other(j.loEnd)}); ok {
			rest = append(rest, low)
		}
	}
	if j.hiEnd != Absent {
		if high, ok := i.Intersect(Interval[Q]{lo: j.hi, loEnd: other(j.hiEnd)}); ok {
			rest = append(rest, high)
		}
	}
	return rest
}

func other(e End) End {
	if e == Open {
		return Closed
	}
	return Open
}
