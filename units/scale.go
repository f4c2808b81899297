package units

import "math/bits"

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

// share is x·a/(a+b), rounded once.
func share(x, a, b int64, r Rounding) int64 {
	sum := addChecked(a, b)
	if !ok(sum) {
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

// isTemperature tells the one quantity that has no multiples and no sums:
// twice 20 °C is not 40 °C.
func isTemperature[Q Quantity]() bool {
	_, is := any(Q(0)).(Temperature)
	return is
}

// OutOfRange is the value that every operation gives that leaves the range.
// It stays out of range through further operations, and nothing judges,
// prints or encodes it. Ask [InRange] rather than compare with it: other
// values are out of range too.
func OutOfRange[Q Quantity]() Q { return outOfRange }

// InRange reports whether q is within ±2^61 quanta (and, for a temperature,
// not below absolute zero).
func InRange[Q Quantity](q Q) bool {
	return ok(int64(q)) && (!isTemperature[Q]() || temperatures.inRange(int64(q)))
}

// ScaleRound is q·num/den rounded once by the rule. Exact where the result
// is a whole number of quanta. A zero den gives a value out of range, and so
// does any [Temperature], which has no multiples.
func ScaleRound[Q Quantity](q Q, num, den int64, r Rounding) Q {
	if isTemperature[Q]() {
		return outOfRange
	}
	return Q(mulDiv(int64(q), num, den, r))
}

// ScalePiRound is q·π·num/den rounded once by the rule: the result is the
// correctly rounded one, since π is held to as many places as that takes.
// A zero den gives a value out of range, and so does any [Temperature].
func ScalePiRound[Q Quantity](q Q, num, den int64, r Rounding) Q {
	if isTemperature[Q]() {
		return outOfRange
	}
	return Q(scalePi(int64(q), num, den, r))
}

// MulDivRound is q·mul/div rounded once by the rule, mul and div being of
// one quantity: a length times the ratio of two others. A zero div gives a
// value out of range, and so does any [Temperature].
func MulDivRound[Q, R Quantity](q Q, mul, div R, r Rounding) Q {
	if isTemperature[Q]() || isTemperature[R]() || !ok(int64(mul)) || !ok(int64(div)) {
		return outOfRange
	}
	return Q(mulDiv(int64(q), int64(mul), int64(div), r))
}

// ShareRound is x·a/(a+b) rounded once by the rule. Where a+b is zero or
// leaves the range, the result is out of range, and so it is for any
// [Temperature].
func ShareRound[Q Quantity](x, a, b Q, r Rounding) Q {
	if isTemperature[Q]() {
		return outOfRange
	}
	return Q(share(int64(x), int64(a), int64(b), r))
}
