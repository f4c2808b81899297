package units

import (
	"math/big"
	"math/bits"
)

// The arithmetic here is on quanta. Anything that leaves the range, or
// divides by zero, gives outOfRange, and outOfRange stays what it is.

func ok(v int64) bool { return uint64(v)+limit <= 2*limit }

func addChecked(a, b int64) int64 {
	if ok(a) && ok(b) {
		return a + b // at most 2^62: seen as out of range by whatever is next
	}
	return outOfRange
}

func subChecked(a, b int64) int64 {
	if ok(a) && ok(b) {
		return a - b
	}
	return outOfRange
}

// mulDiv is a·b/c rounded once.
func mulDiv(a, b, c int64, r Rounding) int64 {
	if !ok(a) || c == 0 {
		return outOfRange
	}
	negative := (a < 0) != (b < 0) != (c < 0)
	den := magnitude(c)
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	var q, rem uint64
	if hi == 0 {
		q = lo / den
		rem = lo - q*den
	} else if hi < den {
		q, rem = bits.Div64(hi, lo, den)
	} else {
		return outOfRange
	}
	if q > limit {
		return outOfRange
	}
	return signedResult(r.roundQuo(q, rem, den, negative), negative)
}

func signedResult(m uint64, negative bool) int64 {
	switch {
	case m > limit:
		return outOfRange
	case negative:
		return -int64(m)
	}
	return int64(m)
}

// π·2^190, from the most significant word. A test computes it again from a
// published expansion.
var piWords = [3]uint64{0xc90fdaa22168c234, 0xc4c6628b80dc1cd1, 0x29024e088a67cc74}

// scalePi is a·π·num/den rounded once. π is irrational, so the product is
// never a tie and never whole, except 0. Held to 190 binary places against a
// product of at most 63 bits, the error of π is below 2^-126, and no multiple
// of π below 2^64 comes within 2^-80 of a whole number or a half (a test
// proves the bound by continued fraction): every rounding is right.
func scalePi(a, num, den int64, r Rounding) int64 {
	if !ok(a) || den == 0 {
		return outOfRange
	}
	if a == 0 || num == 0 {
		return 0
	}
	negative := (a < 0) != (num < 0) != (den < 0)
	d := magnitude(den)
	hi, m := bits.Mul64(magnitude(a), magnitude(num))
	if hi != 0 || m>>63 != 0 {
		return scalePiWide(a, num, den, r)
	}
	// m·π·2^190 in four words.
	h2, _ := bits.Mul64(m, piWords[2])
	h1, l1 := bits.Mul64(m, piWords[1])
	h0, l0 := bits.Mul64(m, piWords[0])
	_, c := bits.Add64(l1, h2, 0)
	w2, c := bits.Add64(l0, h1, c)
	w3 := h0 + c
	// Shift out 190 = 2·64 + 62 binary places: the whole part has at most 66
	// bits, and the first place after it decides the half.
	whole := w3<<2 | w2>>62
	top := w3 >> 62
	half := w2 >> 61 & 1
	if top >= d {
		return outOfRange
	}
	q, rem := bits.Div64(top, whole, d)
	if q > limit {
		return outOfRange
	}
	up := false
	switch r {
	case Down:
		up = negative
	case Up:
		up = !negative
	default:
		up = 2*rem+half >= d // something always follows, so equality is above the half
	}
	if up {
		q++
	}
	return signedResult(q, negative)
}

const piWidePlaces = 580

// π·2^580, for products wider than 63 bits.
var piWide, _ = new(big.Int).SetString("3243f6a8885a308d313198a2e03707344a4093822299f31d0082efa98ec4e6c89452821e638d01377be5466cf34e90c6cc0ac29b7c97c50dd3f84d5b5b54709179216d5d98979fb1bd", 16)

// scalePiWide is scalePi for products of up to 124 bits; it allocates.
func scalePiWide(a, num, den int64, r Rounding) int64 {
	p := new(big.Int).Mul(big.NewInt(a), big.NewInt(num))
	negative := p.Sign() < 0 != (den < 0)
	p.Abs(p).Mul(p, piWide)
	d := new(big.Int).SetUint64(magnitude(den))
	d.Lsh(d, piWidePlaces)
	q, rem := new(big.Int).QuoRem(p, d, new(big.Int))
	if q.BitLen() > 62 {
		return outOfRange
	}
	up := false
	switch r {
	case Down:
		up = negative
	case Up:
		up = !negative
	default:
		up = rem.Lsh(rem, 1).Cmp(d) > 0
	}
	m := q.Uint64()
	if up {
		m++
	}
	return signedResult(m, negative)
}

// share is x·a/(a+b), rounded once.
func share(x, a, b int64, r Rounding) int64 {
	sum := addChecked(a, b)
	if !ok(x) || !ok(sum) || sum == 0 {
		return outOfRange
	}
	return mulDiv(x, a, sum, r)
}

func absChecked(a int64) int64 {
	if a < 0 && ok(a) {
		return -a
	}
	return a
}

func minChecked(a, b int64) int64 {
	if !ok(a) || !ok(b) {
		return outOfRange
	}
	return min(a, b)
}

func maxChecked(a, b int64) int64 {
	if !ok(a) || !ok(b) {
		return outOfRange
	}
	return max(a, b)
}

// spread is the greatest less the least of a and more.
func spread[Q Quantity](a Q, more []Q) Q {
	least, greatest := int64(a), int64(a)
	for _, q := range more {
		if !ok(int64(q)) {
			return outOfRange
		}
		least, greatest = min(least, int64(q)), max(greatest, int64(q))
	}
	return Q(subChecked(greatest, least))
}

// OutOfRange is the value that every operation gives that leaves the range.
// It stays out of range through further operations, and nothing judges,
// prints or encodes it.
func OutOfRange[Q Quantity]() Q { return Q(outOfRange) }

// InRange reports whether q is within ±2^61 quanta (and, for a temperature,
// not below absolute zero).
func InRange[Q Quantity](q Q) bool { return tableOf[Q]().inRange(int64(q)) }

// ScaleRound is q·num/den rounded once by the rule. Exact where the result
// is a whole number of quanta.
func ScaleRound[Q Quantity](q Q, num, den int64, r Rounding) Q {
	return Q(mulDiv(int64(q), num, den, r))
}

// ScalePiRound is q·π·num/den rounded once by the rule: the result is the
// correctly rounded one, since π is held to as many places as that takes.
func ScalePiRound[Q Quantity](q Q, num, den int64, r Rounding) Q {
	return Q(scalePi(int64(q), num, den, r))
}

// MulDivRound is q·mul/div rounded once by the rule, mul and div being of
// one quantity: a length times the ratio of two others.
func MulDivRound[Q, R Quantity](q Q, mul, div R, r Rounding) Q {
	if !ok(int64(mul)) || !ok(int64(div)) {
		return outOfRange
	}
	return Q(mulDiv(int64(q), int64(mul), int64(div), r))
}

// ShareRound is x·a/(a+b) rounded once by the rule.
func ShareRound[Q Quantity](x, a, b Q, r Rounding) Q {
	return Q(share(int64(x), int64(a), int64(b), r))
}
