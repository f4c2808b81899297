package working

import (
	"math"
	"math/big"
)

// rootBits is the precision of a square root that is no fraction.
const rootBits = 256

// transcend works out the operations of real numbers. A sine, a cosine or a
// direction is that of package math for the nearest float64s; nil is no
// number.
func transcend(o op, args []*big.Rat) *big.Rat {
	switch o {
	case opMul:
		return new(big.Rat).Mul(args[0], args[1])
	case opQuo:
		if args[1].Sign() == 0 {
			return nil
		}
		return new(big.Rat).Quo(args[0], args[1])
	case opSqrt:
		return root(args[0])
	}
	x, _ := args[0].Float64()
	switch o {
	case opSin:
		return fraction(math.Sin(x))
	case opCos:
		return fraction(math.Cos(x))
	}
	if args[0].Sign() == 0 && args[1].Sign() == 0 {
		return nil
	}
	abscissa, _ := args[1].Float64()
	return fraction(math.Atan2(x, abscissa))
}

// fraction is x exactly; nil where it is no number.
func fraction(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }

// root is the square root of v: exact where that is a fraction.
func root(v *big.Rat) *big.Rat {
	if v.Sign() < 0 {
		return nil
	}
	num, den := new(big.Int).Sqrt(v.Num()), new(big.Int).Sqrt(v.Denom())
	exact := new(big.Rat).SetFrac(num, den)
	if new(big.Rat).Mul(exact, exact).Cmp(v) == 0 {
		return exact
	}
	f := new(big.Float).SetPrec(rootBits).SetRat(v)
	r, _ := f.Sqrt(f).Rat(nil)
	return r
}
