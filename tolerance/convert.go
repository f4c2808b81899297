package tolerance

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/units"
)

// A ConvertRule says which way the limits of a converted band are rounded.
type ConvertRule uint8

// The two rules in use for converting toleranced dimensions. Nearest serves
// where a part just past the exact limit does no harm; inward where it must
// not be accepted.
const (
	ConvertNearest ConvertRule = iota // each limit to the nearer step, ties to even
	ConvertInward                     // the upper limit down, the lower limit up
)

// String names the rule.
func (r ConvertRule) String() string {
	if r == ConvertInward {
		return "inward"
	}
	return "nearest"
}

// ByTolerance in place of the number of places chooses it from the size of the
// total tolerance: see [PlacesByTolerance].
const ByTolerance = -2

// A ConversionOf is a band written in another unit, and what the rounding did.
type ConversionOf[Q units.Quantity] struct {
	From   BandOf[Q]     // as given, exactly
	To     BandOf[Q]     // with its limits rounded in Unit to Places
	Unit   units.Unit[Q] // the unit converted to
	Places int           // decimal places of the converted limits
	Rule   ConvertRule   // which way they were rounded
	// How far the rounding moved each limit outward (above zero: it gives
	// away, a part past the exact limit is accepted) or inward (below zero:
	// it takes).
	LowerGives, UpperGives Q
}

// A Conversion is a converted band of lengths.
type Conversion = ConversionOf[units.Length]

// String is the converted band in its unit and places.
func (c ConversionOf[Q]) String() string { return c.To.Text(c.Unit, c.Places) }

// Exact reports whether the rounding moved nothing.
func (c ConversionOf[Q]) Exact() bool { return c.LowerGives == 0 && c.UpperGives == 0 }

// ErrPlaces is the kind of a [ConvertError] for places that can't be.
var ErrPlaces = errors.New("places out of range")

// A ConvertError says why a band can't be converted.
type ConvertError struct {
	Band string // what was to be converted
	Unit string // to which unit
	Kind error  // ErrOrder, ErrNoLimit, ErrRange or ErrPlaces
	Want string // what was expected, in words
}

func (e *ConvertError) Error() string {
	return fmt.Sprintf("tolerance: convert %s to %s: %v; %s", e.Band, e.Unit, e.Kind, e.Want)
}

// Unwrap gives the kind.
func (e *ConvertError) Unwrap() error { return e.Kind }

// Convert writes the band in unit u with so many decimal places, from 0 to
// u.Places(), or as many as the total tolerance asks for ([ByTolerance], for
// lengths). An inward result with nothing between its limits is a
// [ConvertError], never a swapped band.
func (b BandOf[Q]) Convert(u units.Unit[Q], places int, rule ConvertRule) (ConversionOf[Q], error) {
	c := ConversionOf[Q]{From: b, Unit: u, Places: places, Rule: rule}
	fail := func(kind error, want string) (ConversionOf[Q], error) {
		return ConversionOf[Q]{}, &ConvertError{Band: b.String(), Unit: u.Symbol(), Kind: kind, Want: want}
	}
	l := b.limits
	switch {
	case b.IsZero():
		return fail(ErrNoLimit, "a band with at least one limit")
	case !b.InRange():
		return fail(ErrRange, "limits within the range of their type")
	}
	if places == ByTolerance {
		length, ok := any(l).(Bracket)
		if !ok {
			return fail(ErrPlaces, "the rule of the total tolerance is for lengths: give the places")
		}
		w, ok := length.Width()
		if !ok {
			return fail(ErrPlaces, "a band with one limit has no total tolerance: give the places")
		}
		n, ok := PlacesByTolerance(w, any(u).(units.Unit[units.Length]))
		if !ok {
			return fail(ErrPlaces, "a total tolerance from 0.00001 in to 1 in, or from 0.0005 mm to 50 mm, and millimetres or inches: else give the places")
		}
		c.Places = n
	}
	if c.Places < 0 || c.Places > u.Places() {
		return fail(ErrPlaces, fmt.Sprintf("0 to %d places in %s", u.Places(), u.Symbol()))
	}
	down, up := units.NearestEven, units.NearestEven
	if rule == ConvertInward {
		down, up = units.Down, units.Up
	}
	if l.loEnd != Absent {
		lo, exact := units.Round(l.lo, u, c.Places, up)
		c.LowerGives = checkedSub(l.lo, lo)
		if l.lo = lo; !exact && rule == ConvertInward {
			l.loEnd = Closed // the rounded limit lies inside the band
		}
	}
	if l.hiEnd != Absent {
		hi, exact := units.Round(l.hi, u, c.Places, down)
		c.UpperGives = checkedSub(hi, l.hi)
		if l.hi = hi; !exact && rule == ConvertInward {
			l.hiEnd = Closed
		}
	}
	switch err := l.check(); {
	case errors.Is(err, ErrRange):
		return fail(ErrRange, "limits that stay in range when rounded")
	case err != nil:
		return fail(ErrOrder, "the band is narrower than the step: give more places")
	}
	c.To = BandOf[Q]{l}
	return c, nil
}

// PlacesByTolerance chooses the decimal places of a converted limit from the
// total tolerance, so that rounding moves a limit by at most 2 per cent of the
// tolerance into millimetres and 2.6 per cent into inches: a tolerance from
// 0.001 in to less than 0.01 in gives millimetres to 0.001, one from 0.05 mm to
// less than 0.5 mm gives inches to 0.0001, and so on by powers of ten. ok is
// false outside the table (0.00001 in to 1 in, 0.0005 mm to 50 mm), and for
// units other than millimetres and inches.
//
// The table is that of IEEE Std 268 and ASTM SI 10 as remembered: from memory.
func PlacesByTolerance(total units.Length, to units.Unit[units.Length]) (places int, ok bool) {
	var least units.Length // the total tolerance from which the fewest places serve
	var most int
	switch to {
	case units.InMillimetres:
		least, places, most = units.Inch/10, 1, 5
	case units.InInches:
		least, places, most = 5*units.Millimetre, 2, 6
	default:
		return 0, false
	}
	if total >= 10*least {
		return 0, false
	}
	for ; total < least; places++ {
		if places == most {
			return 0, false
		}
		least /= 10
	}
	return places, true
}

// DesignColumn tells which of two columns of a manual is the one the part was
// designed in, and so governs: the one from which the other follows by
// rounding to the places it shows, where that doesn't hold the other way
// round; else the one that takes fewer decimal places of its unit. ok is false
// where both or neither do.
func DesignColumn(first, second Printed) (design Printed, ok bool) {
	toSecond, toFirst := follows(first, second), follows(second, first)
	if toSecond != toFirst {
		if toSecond {
			return first, true
		}
		return second, true
	}
	if !toSecond {
		return Printed{}, false
	}
	a, b := first.digits(), second.digits()
	if a == b || a == 0 || b == 0 { // 0: calculated, or nothing but zeros
		return Printed{}, false
	}
	if a < b {
		return first, true
	}
	return second, true
}

// follows reports whether to's limits are from's rounded to the places that to
// shows, by either rule of ties.
func follows(from, to Printed) bool {
	limit := func(x units.Length, xEnd End, y units.Length, yEnd End, w units.Written[units.Length]) bool {
		if xEnd != yEnd || xEnd == Absent {
			return xEnd == yEnd
		}
		if w == (units.Written[units.Length]{}) {
			return x == y // calculated from a size and its tolerance: no places to round to
		}
		even, _ := units.Round(x, w.Unit, int(w.Places), units.NearestEven)
		away, _ := units.Round(x, w.Unit, int(w.Places), units.NearestAway)
		return y == even || y == away
	}
	f, t := from.limits, to.limits
	return limit(f.lo, f.loEnd, t.lo, t.loEnd, to.Least) && limit(f.hi, f.hiEnd, t.hi, t.hiEnd, to.Greatest)
}

// digits counts the significant digits that both limits take in their units.
func (p PrintedOf[Q]) digits() (n int) {
	for _, w := range []units.Written[Q]{p.Least, p.Greatest} {
		text, _ := units.Append(nil, w.Value, units.Style[Q]{Unit: w.Unit, Places: units.AllPlaces, Bare: true})
		leading := true
		for _, c := range text {
			if c == '0' && leading || c == '.' || c == '-' {
				continue
			}
			leading = false
			n++
		}
	}
	return n
}
