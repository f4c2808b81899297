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
	switch {
	case !i.InRange():
		return BandOf[Q]{}, &RangeError{Op: "band"}
	case i.empty():
		return BandOf[Q]{}, orderError("band", lo, hi)
	}
	return BandOf[Q]{i}, nil
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

// Allows reports whether q, exactly, is allowed. A band that asks nothing
// can't say so of anything.
func (b BandOf[Q]) Allows(q Q) bool { return b.Judge(Exactly(q)) == Within }

// Judge says how x lies to the band: Within where all of x is allowed, Below
// or Above where none of it is, else Undecided. A band that asks nothing, and
// an x or a band out of range, give Undecided; [Assess] says why.
func (b BandOf[Q]) Judge(x Interval[Q]) Verdict {
	l := b.limits
	switch {
	case l.IsZero() || !l.InRange() || !x.InRange():
	case allAbove(x, l):
		return Above
	case allBelow(x, l):
		return Below
	case notBelow(x, l) && notAbove(x, l):
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
