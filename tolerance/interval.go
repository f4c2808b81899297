package tolerance

import (
	"github.com/tenthou/tenthou/units"
)

// An End says what stands at one end of an [Interval] or [BandOf].
type End uint8

// The kinds of end. The zero value is Absent: nothing is known, or nothing is
// asked, on that side.
const (
	Absent End = iota
	Open       // the value itself is left out
	Closed     // the value itself belongs to it
)

// String is the kind of end in words.
func (e End) String() string {
	switch e {
	case Open:
		return "open"
	case Closed:
		return "closed"
	}
	return "absent"
}

// An Interval is what a measurement knows of a quantity: that it lies between
// two ends. A blade that enters and the next one that doesn't give
// [0.0635 mm, 0.0762 mm); a micrometer gives the reading ± its error.
//
// It is a stretch of the number line, values between two quanta included. The
// zero Interval has neither end and knows nothing. Intervals compare with ==.
// The arithmetic rounds outward, so that what comes out holds every value
// that what went in allows.
type Interval[Q units.Quantity] struct {
	lo, hi       Q // 0 at an absent end; both outOfRange, or neither
	loEnd, hiEnd End
}

// A Bracket is an interval of lengths.
type Bracket = Interval[units.Length]

// NewInterval makes an interval from its ends; the value at an absent end is
// ignored. It fails with an [OrderError] where the ends are the wrong way
// round or leave nothing between them, and with a [RangeError] where a value
// is out of range.
func NewInterval[Q units.Quantity](lo Q, loEnd End, hi Q, hiEnd End) (Interval[Q], error) {
	i := interval(lo, loEnd, hi, hiEnd)
	if err := i.check(); err != nil {
		return Interval[Q]{}, err
	}
	return i, nil
}

// interval makes an interval of ends in the right order, or a broken one
// where an end is out of range.
func interval[Q units.Quantity](lo Q, loEnd End, hi Q, hiEnd End) Interval[Q] {
	if loEnd != Open && loEnd != Closed {
		lo, loEnd = 0, Absent
	}
	if hiEnd != Open && hiEnd != Closed {
		hi, hiEnd = 0, Absent
	}
	if !units.InRange(lo) || !units.InRange(hi) {
		return broken[Q]()
	}
	return Interval[Q]{lo, hi, loEnd, hiEnd}
}

// outOfRange is both ends of an interval that left the range.
const outOfRange int64 = -1 << 63

// broken is the interval that left the range.
func broken[Q units.Quantity]() Interval[Q] {
	return Interval[Q]{Q(outOfRange), Q(outOfRange), Closed, Closed}
}

func (i Interval[Q]) check() error {
	switch {
	case !i.InRange():
		return &RangeError{Op: "interval"}
	case i.empty():
		return orderError("interval", i.lo, i.hi)
	}
	return nil
}

// empty reports whether the ends leave nothing between them.
func (i Interval[Q]) empty() bool {
	return i.loEnd != Absent && i.hiEnd != Absent && (i.lo > i.hi || i.lo == i.hi && (i.loEnd == Open || i.hiEnd == Open))
}

// Exactly is the interval that holds q alone; out of range where q is.
func Exactly[Q units.Quantity](q Q) Interval[Q] { return interval(q, Closed, q, Closed) }

// HalfOpen is [lo, hi): what a blade that enters and a thicker one that
// doesn't say of a gap.
func HalfOpen[Q units.Quantity](lo, hi Q) (Interval[Q], error) {
	return NewInterval(lo, Closed, hi, Open)
}

// PlusMinus is a reading with its error: [q−e, q+e]. A negative e is an
// [OrderError]. The error of a temperature counts as one from 0 °C.
func PlusMinus[Q units.Quantity](q, e Q) (Interval[Q], error) {
	return NewInterval(checkedSub(q, e), Closed, checkedAdd(q, e), Closed)
}

// Lower is the lower end. The value at an absent end is 0.
func (i Interval[Q]) Lower() (Q, End) { return i.lo, i.loEnd }

// Upper is the upper end. The value at an absent end is 0.
func (i Interval[Q]) Upper() (Q, End) { return i.hi, i.hiEnd }

// IsExact reports whether the interval holds one value alone.
func (i Interval[Q]) IsExact() bool {
	return i.loEnd == Closed && i.hiEnd == Closed && i.lo == i.hi
}

// IsZero reports whether the interval has neither end.
func (i Interval[Q]) IsZero() bool { return i.loEnd == Absent && i.hiEnd == Absent }

// InRange reports whether the interval can be judged, printed and encoded: an
// operation that left the range, or divided by zero, gives one that can't.
func (i Interval[Q]) InRange() bool { return i.lo != Q(outOfRange) }

// Contains reports whether q lies in the interval.
func (i Interval[Q]) Contains(q Q) bool { return Exactly(q).Within(i) }

// Within reports whether every value of i lies in j. Nothing lies in what is
// out of range, nor does that lie in anything.
func (i Interval[Q]) Within(j Interval[Q]) bool {
	return i.InRange() && j.InRange() && notBelow(i, j) && notAbove(i, j)
}

// notBelow: no value of i lies below j's lower end.
func notBelow[Q units.Quantity](i, j Interval[Q]) bool {
	return j.loEnd == Absent || i.loEnd != Absent && (i.lo > j.lo || i.lo == j.lo && (j.loEnd == Closed || i.loEnd == Open))
}

// notAbove: no value of i lies above j's upper end.
func notAbove[Q units.Quantity](i, j Interval[Q]) bool {
	return j.hiEnd == Absent || i.hiEnd != Absent && (i.hi < j.hi || i.hi == j.hi && (j.hiEnd == Closed || i.hiEnd == Open))
}

// allAbove: every value of i lies above j's upper end.
func allAbove[Q units.Quantity](i, j Interval[Q]) bool {
	return j.hiEnd != Absent && i.loEnd != Absent && (i.lo > j.hi || i.lo == j.hi && (j.hiEnd == Open || i.loEnd == Open))
}

// allBelow: every value of i lies below j's lower end.
func allBelow[Q units.Quantity](i, j Interval[Q]) bool {
	return j.loEnd != Absent && i.hiEnd != Absent && (i.hi < j.lo || i.hi == j.lo && (j.loEnd == Open || i.hiEnd == Open))
}

// Intersect is what i and j both allow. Where that is nothing, ok is false and
// the interval is out of range.
func (i Interval[Q]) Intersect(j Interval[Q]) (both Interval[Q], ok bool) {
	both = i
	if !notBelow(i, j) {
		both.lo, both.loEnd = j.lo, j.loEnd
	}
	if !notAbove(i, j) {
		both.hi, both.hiEnd = j.hi, j.hiEnd
	}
	if !i.InRange() || !j.InRange() || both.empty() {
		return broken[Q](), false
	}
	return both, true
}

// Width is the distance between the ends; ok is false where one is absent. Of
// temperatures, whose differences are another quantity, it is out of range.
func (i Interval[Q]) Width() (w Q, ok bool) {
	if i.loEnd == Absent || i.hiEnd == Absent {
		return 0, false
	}
	if isTemperature[Q]() {
		return Q(outOfRange), true
	}
	return checkedSub(i.hi, i.lo), true
}

// Middle is halfway between the ends, rounded to the nearest quantum, ties to
// even; ok is false where one is absent. It is a best estimate only where
// every value between them is as likely as any other.
func (i Interval[Q]) Middle() (m Q, ok bool) {
	switch {
	case i.loEnd == Absent || i.hiEnd == Absent:
		return 0, false
	case !i.InRange():
		return Q(outOfRange), true
	}
	sum := i.lo + i.hi // at most 2^62
	m = sum >> 1
	return m + sum&m&1, true // a half over goes up where m is odd
}

// limit is the greatest magnitude in range, the same as in package units.
const limit = 1 << 61

func inRange[Q units.Quantity](q Q) bool { return uint64(q)+limit <= 2*limit }

func checkedAdd[Q units.Quantity](a, b Q) Q {
	if inRange(a) && inRange(b) {
		return a + b
	}
	return Q(outOfRange)
}

func checkedSub[Q units.Quantity](a, b Q) Q {
	if inRange(a) && inRange(b) {
		return a - b
	}
	return Q(outOfRange)
}

// isTemperature tells the one quantity that has no sums and no multiples.
func isTemperature[Q units.Quantity]() bool {
	_, is := any(Q(0)).(units.Temperature)
	return is
}
