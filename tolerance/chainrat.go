package tolerance

import (
	"math/big"

	"github.com/tenthou/tenthou/units"
)

// What the questions of a chain need of exact fractions.

func ratWhole[Q units.Quantity](q Q) *big.Rat { return new(big.Rat).SetInt64(int64(q)) }

func ratOf(r Ratio) *big.Rat { return big.NewRat(r.Num, r.Den) }

// ratSquare is the square of the number that a float64 is.
func ratSquare(k float64) *big.Rat {
	r := new(big.Rat).SetFloat64(k)
	return r.Mul(r, r)
}

// ratFloor is the greatest whole number not above r.
func ratFloor(r *big.Rat) *big.Int {
	return new(big.Int).Div(r.Num(), r.Denom()) // which is above zero
}

// ratCeil is the least whole number not below r.
func ratCeil(r *big.Rat) *big.Int {
	n := new(big.Int).Neg(r.Num())
	n.Div(n, r.Denom())
	return n.Neg(n)
}

// ratEven is the whole number nearest to r, a tie going to the even one.
func ratEven(r *big.Rat) *big.Int {
	down := ratFloor(r)
	over := new(big.Rat).Sub(r, new(big.Rat).SetInt(down))
	if c := over.Cmp(big.NewRat(1, 2)); c > 0 || c == 0 && down.Bit(0) == 1 {
		down.Add(down, big.NewInt(1))
	}
	return down
}

// plusRoot is p + √r as the whole numbers not above and not below it: over a
// common denominator the root is that of a whole number.
func plusRoot(p, r *big.Rat) (down, up *big.Int) {
	den := new(big.Int).Mul(p.Denom(), r.Denom())
	under := new(big.Int).Mul(r.Num(), r.Denom())
	under.Mul(under, p.Denom()).Mul(under, p.Denom())
	root := new(big.Int).Sqrt(under)
	num := new(big.Int).Mul(p.Num(), r.Denom())
	num.Add(num, root)
	down = ratFloor(new(big.Rat).SetFrac(num, den))
	if root.Mul(root, root).Cmp(under) != 0 {
		num.Add(num, big.NewInt(1))
	}
	return down, ratCeil(new(big.Rat).SetFrac(num, den))
}

// lessRoot is p − √r as the whole numbers not above and not below it.
func lessRoot(p, r *big.Rat) (down, up *big.Int) {
	up, down = plusRoot(new(big.Rat).Neg(p), r)
	return down.Neg(down), up.Neg(up)
}

// chainQuanta is n as a quantity, out of range where it doesn't fit.
func chainQuanta[Q units.Quantity](n *big.Int) Q {
	if !n.IsInt64() || !inRange(Q(n.Int64())) {
		return Q(outOfRange)
	}
	return Q(n.Int64())
}
