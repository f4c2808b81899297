package tolerance

import (
	"math/big"
	"math/bits"

	"github.com/tenthou/tenthou/units"
)

// An exactSum adds sizes times ratios without rounding: whole quanta, and
// what is left over as a fraction below 1 for each size.
type exactSum[Q units.Quantity] struct {
	hi   int64 // the whole quanta in 128 bits
	lo   uint64
	rest *big.Rat // nil while there is none
	out  bool
}

// add adds q times s.
func (x *exactSum[Q]) add(q Q, s Ratio) {
	whole := units.ScaleRound(q, s.Num, s.Den, units.Down)
	if !inRange(q) || !inRange(whole) {
		x.out = true
		return
	}
	var carry uint64
	x.lo, carry = bits.Add64(x.lo, uint64(whole), 0)
	x.hi += int64(whole)>>63 + int64(carry)
	if num := leftOver(int64(q), s); num != 0 {
		if x.rest == nil {
			x.rest = new(big.Rat)
		}
		_, den := s.magnitudes()
		n, d := new(big.Int).SetUint64(num), new(big.Int).SetUint64(den)
		x.rest.Add(x.rest, new(big.Rat).SetFrac(n, d))
	}
}

// leftOver is the numerator, over the magnitude of s.Den, of what q·s is above
// the whole quanta below it.
func leftOver(q int64, s Ratio) uint64 {
	num, den := s.magnitudes()
	if den == 1 {
		return 0
	}
	hi, lo := bits.Mul64(uint64(max(q, -q))%den, num%den)
	_, rem := bits.Div64(hi, lo, den)
	if rem != 0 && (q < 0) != (s.Sign() < 0) {
		rem = den - rem
	}
	return rem
}

// round is the sum rounded once, and whether it stood there already.
func (x *exactSum[Q]) round(r units.Rounding) (sum Q, exact bool) {
	hi, lo := x.hi, x.lo
	exact = true
	if x.rest != nil {
		whole := ratFloor(x.rest)
		exact = x.rest.IsInt()
		if !exact && r == units.Up {
			whole.Add(whole, big.NewInt(1))
		}
		var carry uint64
		lo, carry = bits.Add64(lo, whole.Uint64(), 0) // at most one for each link
		hi += int64(carry)
	}
	v := Q(lo)
	if x.out || hi != int64(v)>>63 || !inRange(v) {
		return Q(outOfRange), false
	}
	return v, exact
}

// rat is the sum as a fraction.
func (x *exactSum[Q]) rat() *big.Rat {
	n := new(big.Int).Lsh(big.NewInt(x.hi), 64)
	n.Add(n, new(big.Int).SetUint64(x.lo))
	r := new(big.Rat).SetInt(n)
	if x.rest != nil {
		r.Add(r, x.rest)
	}
	return r
}
