package units

import (
	"math"
	"math/big"
	"math/bits"
	"strconv"

	"github.com/shopspring/decimal"
)

// decimal hands v over, rounded to places. Out of range it is the count of
// quanta in the unit, which nobody takes for a measurement as they might 0.
func (t *table) decimal(v int64, unit uint8, places int, r Rounding) (decimal.Decimal, bool) {
	u := t.unit(unit)
	if !t.inRange(v) {
		return decimal.New(v, 0).DivRound(decimal.New(u.quanta, 0), placesMax), false
	}
	if places > placesMax {
		places = placesMax
	} else if places < 0 {
		places = u.finite
		if n, ok := t.places(v, unit); ok {
			places = n
		}
	}
	v -= u.zero
	whole, frac, exact := split(magnitude(v), u, places, r, v < 0)
	n := new(big.Int).SetUint64(whole)
	n.Mul(n, new(big.Int).SetUint64(pow10[places])).Add(n, new(big.Int).SetUint64(frac))
	if v < 0 {
		n.Neg(n)
	}
	return decimal.NewFromBigInt(n, int32(-places)), exact
}

// decimalPlaces bounds what FromDecimal looks at, so that a huge exponent
// costs nothing.
const decimalPlaces = 60

// FromDecimal is d units of u. A value between two quanta is an error, as in
// the parsers, and so are more than 60 decimal places: nothing is rounded on
// the way in. The errors are [RangeError]s.
func FromDecimal[Q Quantity](d decimal.Decimal, u Unit[Q]) (Q, error) {
	t := tableOf[Q]()
	row := t.unit(uint8(u))
	n, exp := d.Coefficient(), int64(d.Exponent())
	digits := int64(n.BitLen()) * 30103 / 100_000 // |n| is at least 10^digits/2
	fail := func(kind error) (Q, error) {
		text, want := "of more than 40 digits", "within "+t.rangeText(limit)
		if kind == ErrTooFine {
			want = "a whole number of quanta: every multiple of " + t.finest(row) + " is one"
		}
		if digits < 40 {
			text = n.String() + "·10^" + strconv.FormatInt(exp, 10) + " " + row.symbol
		}
		return 0, &RangeError{Quantity: t.quantity, Op: "decimal", Value: text, Kind: kind, Want: want}
	}
	switch {
	case n.Sign() == 0:
		exp = 0
	case digits+exp >= 20:
		return fail(ErrRange)
	case exp < -decimalPlaces:
		return fail(ErrTooFine)
	}
	v := new(big.Int).Mul(n, big.NewInt(row.quanta))
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(max(exp, -exp)), nil)
	if exp >= 0 {
		v.Mul(v, ten)
	} else if _, rem := v.QuoRem(v, ten, new(big.Int)); rem.Sign() != 0 {
		return fail(ErrTooFine)
	}
	v.Add(v, big.NewInt(row.zero))
	if !v.IsInt64() || !t.inRange(v.Int64()) {
		return fail(ErrRange)
	}
	return Q(v.Int64()), nil
}

// float is v in a unit: correctly rounded while v is below 2^53 quanta, else
// within one unit in the last place.
func (t *table) float(v int64, unit uint8) float64 {
	if !t.inRange(v) {
		return math.NaN()
	}
	u := t.unit(unit)
	return float64(v-u.zero) / float64(u.quanta)
}

// Nearest is the quantity nearest to x units of u, ties to even. It is for
// readings that arrive as float64, from a sensor or a spreadsheet: the only
// way in that rounds, and at most by half a quantum. Not-a-number,
// infinities and values out of range are a [RangeError].
func Nearest[Q Quantity](x float64, u Unit[Q]) (Q, error) {
	t := tableOf[Q]()
	row := t.unit(uint8(u))
	fail := func() (Q, error) {
		return 0, &RangeError{Quantity: t.quantity, Op: "nearest", Value: strconv.FormatFloat(x, 'g', -1, 64) + " " + row.symbol,
			Kind: ErrRange, Want: "a finite number within " + t.rangeText(limit)}
	}
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return fail()
	}
	frac, exp := math.Frexp(math.Abs(x))
	m := uint64(frac * (1 << 53)) // exact
	exp -= 53
	hi, lo := bits.Mul64(m, uint64(row.quanta))
	var v uint64
	size := bits.Len64(lo)
	if hi != 0 {
		size = 64 + bits.Len64(hi)
	}
	switch {
	case m == 0 || exp < -127:
	case size+exp > 62:
		return fail()
	case exp >= 0:
		v = lo << exp
	default:
		v = shiftEven(hi, lo, uint(-exp))
	}
	q := int64(v)
	if x < 0 {
		q = -q
	}
	q += row.zero
	if !t.inRange(q) {
		return fail()
	}
	return Q(q), nil
}

// shiftEven is (hi,lo)/2^n to the nearest whole number, ties to even, for n
// from 1 to 127 and a result below 2^63.
func shiftEven(hi, lo uint64, n uint) (v uint64) {
	var rest uint64 // the part shifted out, left-aligned, with a sticky bit
	switch {
	case n < 64:
		v = lo>>n | hi<<(64-n)
		rest = lo << (64 - n)
	case n == 64:
		v, rest = hi, lo
	default:
		v = hi >> (n - 64)
		rest = hi<<(128-n) | lo>>(n-64)
		if lo<<(128-n) != 0 {
			rest |= 1
		}
	}
	if rest > 1<<63 || rest == 1<<63 && v&1 == 1 {
		v++
	}
	return v
}
