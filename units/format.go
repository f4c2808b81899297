package units

import "math/bits"

// A Rounding says which way a value goes that lies between two steps.
type Rounding uint8

// The rounding rules. Down and Up follow the number line: -0.07 rounded
// down to one place is -0.1.
const (
	NearestEven Rounding = iota // to the nearer step, ties to the even digit
	NearestAway                 // to the nearer step, ties away from zero
	Down                        // to the step below (towards −∞)
	Up                          // to the step above (towards +∞)
)

var roundingNames = [...]string{"nearest, ties to even", "nearest, ties away from zero", "down", "up"}

// String names the rule in words.
func (r Rounding) String() string {
	if int(r) >= len(roundingNames) {
		r = NearestEven
	}
	return roundingNames[r]
}

// AllPlaces asks for as many decimal places as show the value exactly, and
// no more. Where the unit has no finite decimal for it (0.07 mm in inches),
// the value is rounded to the most places that any value in it needs: 9 for
// inches.
const AllPlaces = -1

// placesMax is the most decimal places that are written.
const placesMax = 18

// A Style says how a quantity is written. The zero Style rounds to a whole
// number of the type's first unit, nearest, ties to even.
type Style[Q Quantity] struct {
	Unit     Unit[Q]  // to write it in
	Places   int      // 0 to 18, or AllPlaces
	Rounding Rounding // of what lies beyond those places
	Bare     bool     // leave the unit out
	Sign     bool     // write + before what is above zero
	Point    bool     // write .0025 for 0.0025, as inch tools are marked
}

const (
	bare = 1 << iota
	signed
	pointed
)

func (s Style[Q]) flags() (f int) {
	if s.Bare {
		f |= bare
	}
	if s.Sign {
		f |= signed
	}
	if s.Point {
		f |= pointed
	}
	return f
}

// roundQuo rounds q + r/d (a magnitude) by the rule.
func (r Rounding) roundQuo(q, rem, den uint64, negative bool) uint64 {
	up := false
	switch r {
	case NearestAway:
		up = rem >= den-rem
	case Down:
		up = negative
	case Up:
		up = !negative
	default:
		half := den - rem
		up = rem > half || rem == half && q&1 == 1
	}
	if rem != 0 && up {
		return q + 1
	}
	return q
}

// append writes v and tells whether what is written is exactly v.
func (t *table) append(dst []byte, v int64, unit uint8, places int, r Rounding, flags int) ([]byte, bool) {
	if !t.inRange(v) {
		return append(append(dst, t.quantity...), " out of range"...), false
	}
	u := t.unit(unit)
	v -= u.zero
	negative := v < 0
	m := uint64(v)
	if negative {
		m = -m
	}
	all := places < 0
	if all {
		places = u.finite
	} else if places > placesMax {
		places = placesMax
	}
	whole, frac, exact := split(m, u, places, r, negative)
	if all && exact {
		frac, places = trim(frac, places)
	}
	switch {
	case whole == 0 && frac == 0:
	case negative:
		dst = append(dst, '-')
	case flags&signed != 0:
		dst = append(dst, '+')
	}
	dst = appendNumber(dst, whole, frac, places, flags&pointed != 0 && places > 0)
	if flags&bare == 0 {
		dst = u.appendSymbol(dst)
	}
	return dst, exact
}

// trim drops trailing zeros from decimals of at most placesMax places.
func trim(frac uint64, places int) (uint64, int) {
	if frac == 0 {
		return 0, 0
	}
	for frac%1e8 == 0 {
		frac, places = frac/1e8, places-8
	}
	if frac%1e4 == 0 {
		frac, places = frac/1e4, places-4
	}
	if frac%100 == 0 {
		frac, places = frac/100, places-2
	}
	if frac%10 == 0 {
		frac, places = frac/10, places-1
	}
	return frac, places
}

// split rounds m quanta to places of unit u: whole units, and the decimals
// as a whole number.
func split(m uint64, u *unit, places int, r Rounding, negative bool) (whole, frac uint64, exact bool) {
	if places <= u.places {
		step := uint64(u.step[places])
		q, rem := m, uint64(0)
		if step != 1 {
			if q, rem = m/step, m%step; rem != 0 {
				q = r.roundQuo(q, rem, step, negative)
			}
		}
		p := pow10[places]
		if q < p {
			return 0, q, rem == 0
		}
		whole = q / p
		return whole, q - whole*p, rem == 0
	}
	size := uint64(u.quanta)
	whole, left := m/size, m%size
	hi, lo := bits.Mul64(left, pow10[places])
	q, rem := bits.Div64(hi, lo, size)
	q = r.roundQuo(q, rem, size, negative)
	if q == pow10[places] {
		return whole + 1, 0, rem == 0
	}
	return whole, q, rem == 0
}

const digitPairs = "00010203040506070809101112131415161718192021222324252627282930313233343536373839404142434445464748495051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"

// appendNumber writes whole.frac, frac being decimals of so many places. A
// whole part of 0 is left out where noZero says so.
func appendNumber(dst []byte, whole, frac uint64, places int, noZero bool) []byte {
	var buf [20 + 1 + placesMax]byte
	i := len(buf)
	if places > 0 {
		for n := places; n > 1; n -= 2 {
			q := frac / 100
			k := 2 * (frac - q*100)
			frac = q
			i -= 2
			buf[i], buf[i+1] = digitPairs[k], digitPairs[k+1]
		}
		if places%2 != 0 {
			i--
			buf[i] = '0' + byte(frac)
		}
		i--
		buf[i] = '.'
	}
	for whole >= 10 {
		q := whole / 100
		k := 2 * (whole - q*100)
		whole = q
		i -= 2
		buf[i], buf[i+1] = digitPairs[k], digitPairs[k+1]
		noZero = true // what is left is the first digit, if there is one
	}
	if whole != 0 || !noZero {
		i--
		buf[i] = '0' + byte(whole)
	}
	return append(dst, buf[i:]...)
}

func appendWhole(dst []byte, v uint64) []byte { return appendNumber(dst, v, 0, 0, false) }

// round is v at the given places of a unit; where the places reach beyond
// the quantum, v itself.
func (t *table) round(v int64, unit uint8, places int, r Rounding) (int64, bool) {
	if !t.inRange(v) {
		return outOfRange, false
	}
	u := t.unit(unit)
	off := v - u.zero
	if places < 0 {
		places = u.finite
	}
	if places > u.places {
		_, _, exact := split(magnitude(off), u, min(places, placesMax), NearestEven, false)
		return v, exact
	}
	step := uint64(u.step[places])
	m := magnitude(off)
	q, rem := m/step, m%step
	out := int64(r.roundQuo(q, rem, step, off < 0) * step)
	if off < 0 {
		out = -out
	}
	out += u.zero
	if !t.inRange(out) {
		return outOfRange, false
	}
	return out, rem == 0
}

// places is the least number of decimal places that shows v exactly.
func (t *table) places(v int64, unit uint8) (int, bool) {
	if !t.inRange(v) {
		return 0, false
	}
	u := t.unit(unit)
	most := u.finite
	_, frac, exact := split(magnitude(v-u.zero), u, most, NearestEven, false)
	if !exact {
		return 0, false
	}
	_, n := trim(frac, most)
	return n, true
}

func magnitude(v int64) uint64 {
	if v < 0 {
		return -uint64(v)
	}
	return uint64(v)
}
