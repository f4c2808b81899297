package tolerance

import "github.com/tenthou/tenthou/units"

// A BandOf is what is allowed of a quantity: a least, a greatest, or both.
// "max 0.10", "less than 0.10" and "renew at 0.10 or more" differ where a
// reading stands on the limit, so each end is open or closed. The zero band
// asks nothing: it judges everything Undecided. Bands compare with ==.
type BandOf[Q units.Quantity] struct{ limits Interval[Q] }

// A Band is what is allowed of a length.
type Band = BandOf[units.Length]

// NewBand makes a band from its ends, as [NewInterval] does.
func NewBand[Q units.Quantity](lo Q, loEnd End, hi Q, hiEnd End) (BandOf[Q], error) {
	i := interval(lo, loEnd, hi, hiEnd)
	switch err := i.check().(type) {
	case nil:
		return BandOf[Q]{i}, nil
	case *OrderError:
		err.What = "band"
		return BandOf[Q]{}, err
	default:
		return BandOf[Q]{}, &RangeError{Op: "band"}
	}
}

// Between allows from lo to hi, both included.
func Between[Q units.Quantity](lo, hi Q) (BandOf[Q], error) { return NewBand(lo, Closed, hi, Closed) }

// MustBetween is [Between] for constants and tables; it panics on an error.
func MustBetween[Q units.Quantity](lo, hi Q) BandOf[Q] {
	b, err := Between(lo, hi)
	if err != nil {
		panic(err)
	}
	return b
}

// AtMost allows hi and less.
func AtMost[Q units.Quantity](hi Q) BandOf[Q] { return BandOf[Q]{interval(0, Absent, hi, Closed)} }

// LessThan allows less than hi: renew at hi or more.
func LessThan[Q units.Quantity](hi Q) BandOf[Q] { return BandOf[Q]{interval(0, Absent, hi, Open)} }

// AtLeast allows lo and more.
func AtLeast[Q units.Quantity](lo Q) BandOf[Q] { return BandOf[Q]{interval(lo, Closed, 0, Absent)} }

// MoreThan allows more than lo.
func MoreThan[Q units.Quantity](lo Q) BandOf[Q] { return BandOf[Q]{interval(lo, Open, 0, Absent)} }

// Lower is the least allowed. The value at an absent end is 0.
func (b BandOf[Q]) Lower() (Q, End) { return b.limits.Lower() }

// Upper is the greatest allowed. The value at an absent end is 0.
func (b BandOf[Q]) Upper() (Q, End) { return b.limits.Upper() }

// Interval is the band as the interval of what it allows, for arithmetic.
func (b BandOf[Q]) Interval() Interval[Q] { return b.limits }

// BandFrom is the band that allows what lies in i.
func BandFrom[Q units.Quantity](i Interval[Q]) BandOf[Q] { return BandOf[Q]{i} }

// IsZero reports whether the band asks nothing.
func (b BandOf[Q]) IsZero() bool { return b.limits.IsZero() }

// InRange reports whether the band can be judged against.
func (b BandOf[Q]) InRange() bool { return b.limits.InRange() }

// Allows reports whether q, exactly, is allowed.
func (b BandOf[Q]) Allows(q Q) bool { return b.Judge(Exactly(q)) == Within }

// Judge says how x lies to the band: Within where all of x is allowed, Below
// or Above where none of it is, else Undecided. A band that asks nothing, and
// an x or a band out of range, give Undecided; [Assess] says why.
func (b BandOf[Q]) Judge(x Interval[Q]) Verdict {
	l := &b.limits
	if l.loEnd == Absent && l.hiEnd == Absent {
		return Undecided
	}
	if !x.InRange() || !l.InRange() {
		return Undecided
	}
	within := true
	if l.hiEnd != Absent {
		if x.loEnd != Absent && (x.lo > l.hi || x.lo == l.hi && (l.hiEnd == Open || x.loEnd == Open)) {
			return Above
		}
		within = x.hiEnd != Absent && (x.hi < l.hi || x.hi == l.hi && (l.hiEnd == Closed || x.hiEnd == Open))
	}
	if l.loEnd != Absent {
		if x.hiEnd != Absent && (x.hi < l.lo || x.hi == l.lo && (l.loEnd == Open || x.hiEnd == Open)) {
			return Below
		}
		within = within && x.loEnd != Absent && (x.lo > l.lo || x.lo == l.lo && (l.loEnd == Closed || x.loEnd == Open))
	}
	if within {
		return Within
	}
	return Undecided
}

// lower and upper are the band's two sides, each a band of its own.
func (b BandOf[Q]) lower() BandOf[Q] { b.limits.hi, b.limits.hiEnd = 0, Absent; return b }
func (b BandOf[Q]) upper() BandOf[Q] { b.limits.lo, b.limits.loEnd = 0, Absent; return b }

// Sides holds the verdicts on the least and on the greatest of several
// readings: the least against the lower limit, the greatest against the
// upper. Both can fail.
type Sides struct {
	Least    Verdict `json:"least"`    // Within, Below or Undecided
	Greatest Verdict `json:"greatest"` // Within, Above or Undecided
}

// JudgeAll judges several stations of one part: the least of them against the
// lower limit and the greatest against the upper. A side on which nothing is
// asked is Within, if the other side asks something. No stations give
// Undecided.
func (b BandOf[Q]) JudgeAll(stations ...Interval[Q]) Sides {
	if len(stations) == 0 || b.IsZero() {
		return Sides{}
	}
	least, greatest := Extremes(stations...)
	return b.judgeSides(least, greatest)
}

func (b BandOf[Q]) judgeSides(least, greatest Interval[Q]) Sides {
	if b.IsZero() || !least.InRange() || !greatest.InRange() || !b.InRange() {
		return Sides{}
	}
	s := Sides{Within, Within}
	if b.limits.loEnd != Absent {
		s.Least = b.lower().Judge(least)
	}
	if b.limits.hiEnd != Absent {
		s.Greatest = b.upper().Judge(greatest)
	}
	return s
}

// Extremes are the intervals of the least and of the greatest of several
// readings. Of no readings nothing is known.
func Extremes[Q units.Quantity](stations ...Interval[Q]) (least, greatest Interval[Q]) {
	if len(stations) == 0 {
		return least, greatest
	}
	least, greatest = stations[0], stations[0]
	for _, s := range stations[1:] {
		least, greatest = least.Min(s), greatest.Max(s)
	}
	return least, greatest
}

// Difference is where two bands part: what one accepts and the other rejects.
type Difference[Q units.Quantity] struct {
	OnlyFirst, OnlySecond []Interval[Q] // at most two each, from the least
}

// Same reports whether the two bands accept the same.
func (d Difference[Q]) Same() bool { return len(d.OnlyFirst) == 0 && len(d.OnlySecond) == 0 }

// Compare tells where two bands part, such as a manual's two columns: of
// 0.03–0.07 mm and 0.0012–0.0028 in the first alone accepts
// [0.03 mm, 0.03048 mm), the second alone (0.07 mm, 0.07112 mm].
func Compare[Q units.Quantity](first, second BandOf[Q]) Difference[Q] {
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
