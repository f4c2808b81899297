package units

import "math/bits"

// π·2^318 in words of 64 bits, the most significant first: the last word is
// rounded down. A test computes it again from a published expansion.
var piWords = [5]uint64{
	0xc90fdaa22168c234, 0xc4c6628b80dc1cd1, 0x29024e088a67cc74, 0x020bbea63b139b22, 0x514a08798e3404dd,
}

// How near can a multiple of π come to a whole number or a half? A test
// follows the continued fraction of π: for whole q below 2^64, q·π stays more
// than 2^-67 from every whole number; for q below 2^126, more than 2^-131.
// So the whole part and the next binary place of a product are right when
// the product is: to 2^-126 with three words of π and a factor below 2^63,
// to 2^-192 with five words and a factor below 2^126 (beyond which every
// result is out of range). And since π is
// irrational, something always follows: there is no tie, and nothing exact
// but 0.

// scalePi is a·π·num/den rounded once.
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
		w := timesPi(hi, m)
		return roundPi(w[0]<<2|w[1]>>62, w[1]<<2|w[2]>>62, w[2]>>61&1, d, negative, r)
	}
	// m·π·2^190, its two upper words.
	h2, _ := bits.Mul64(m, piWords[2])
	h1, l1 := bits.Mul64(m, piWords[1])
	h0, l0 := bits.Mul64(m, piWords[0])
	_, c := bits.Add64(l1, h2, 0)
	w1, c := bits.Add64(l0, h1, c)
	w0 := h0 + c
	// Shift out 190 = 64 + 64 + 62 binary places.
	return roundPi(w0>>62, w0<<2|w1>>62, w1>>61&1, d, negative, r)
}

// roundPi divides by d and rounds once. The dividend is the whole number
// hi·2^64 + lo, half of half, and something that is above 0 and below a half.
func roundPi(hi, lo, half, d uint64, negative bool, r Rounding) int64 {
	if hi >= d {
		return outOfRange
	}
	q, rem := bits.Div64(hi, lo, d)
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
		up = rem+half >= d-rem // equality is above the half: something follows
	}
	if up {
		q++
	}
	return signedResult(q, negative)
}

// timesPi is the three upper words, most significant first, of the seven of
// (hi·2^64 + lo)·π·2^318.
func timesPi(hi, lo uint64) (w [3]uint64) {
	var all [7]uint64 // least significant first
	for j, m := range [2]uint64{lo, hi} {
		var carry uint64
		for i := range piWords {
			h, l := bits.Mul64(m, piWords[len(piWords)-1-i])
			var c uint64
			l, c = bits.Add64(l, all[i+j], 0)
			h += c
			all[i+j], c = bits.Add64(l, carry, 0)
			carry = h + c
		}
		all[j+len(piWords)] = carry
	}
	return [3]uint64{all[6], all[5], all[4]}
}
