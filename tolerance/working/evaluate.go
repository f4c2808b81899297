package working

import "math/big"

// piDecimals is π to 100 decimal places. A value that depends on π lies this
// near to a rounding boundary only by a chance of 1 in 10^60; where π cancels,
// it does so exactly in fractions.
const piDecimals = "3.1415926535897932384626433832795028841971693993751058209749445923078164062862089986280348253421170679"

var pi, _ = new(big.Rat).SetString(piDecimals)

// An evaluator works a line out in fractions.
type evaluator struct {
	// leaf is the size of what the line names, and nil for what is calculated
	// within it.
	leaf func(*node) *big.Rat
	// holds is whether v is what the node holds; nil where nobody asks.
	holds func(n *node, v *big.Rat) bool
	// rounded tells that an operation within the line gave something else.
	rounded bool
}

// value is n as an operand; nil where something is divided by zero.
func (e *evaluator) value(n *node) *big.Rat {
	if v := e.leaf(n); v != nil {
		return v
	}
	return e.calculate(n)
}

// calculate is n from its operands.
func (e *evaluator) calculate(n *node) *big.Rat {
	v := e.operate(n)
	if v != nil && e.holds != nil && !e.rounded {
		e.rounded = !e.holds(n, v)
	}
	return v
}

func (e *evaluator) operate(n *node) *big.Rat {
	var few [3]*big.Rat
	args := few[:0]
	for _, a := range n.args {
		v := e.value(a)
		if v == nil {
			return nil
		}
		args = append(args, v)
	}
	switch n.op {
	case opAdd:
		return new(big.Rat).Add(args[0], args[1])
	case opSub:
		return new(big.Rat).Sub(args[0], args[1])
	case opAbs:
		return new(big.Rat).Abs(args[0])
	case opMin, opMax, opSpread:
		least, greatest := args[0], args[0]
		for _, v := range args[1:] {
			if v.Cmp(least) < 0 {
				least = v
			}
			if v.Cmp(greatest) > 0 {
				greatest = v
			}
		}
		switch n.op {
		case opMin:
			return least
		case opMax:
			return greatest
		}
		return new(big.Rat).Sub(greatest, least)
	case opScale:
		return quotient(args[0], big.NewRat(n.num, 1), big.NewRat(n.den, 1))
	case opScalePi:
		v := quotient(args[0], big.NewRat(n.num, 1), big.NewRat(n.den, 1))
		return v.Mul(v, pi)
	case opMulDiv:
		return quotient(args[0], args[1], args[2])
	case opShare:
		return quotient(args[0], args[1], new(big.Rat).Add(args[1], args[2]))
	case opSame:
		return args[0]
	}
	return transcend(n.op, args)
}

// quotient is a·mul/div, and nil where div is zero.
func quotient(a, mul, div *big.Rat) *big.Rat {
	if div.Sign() == 0 {
		return nil
	}
	v := new(big.Rat).Mul(a, mul)
	return v.Quo(v, div)
}

// nearest is num/den to the nearest whole number, ties to even; den is above
// zero.
func nearest(num, den *big.Int) *big.Int {
	q, rem := new(big.Int).QuoRem(num, den, new(big.Int))
	twice := rem.Lsh(rem.Abs(rem), 1)
	if c := twice.Cmp(den); c > 0 || c == 0 && q.Bit(0) == 1 {
		if num.Sign() < 0 {
			return q.Sub(q, big.NewInt(1))
		}
		return q.Add(q, big.NewInt(1))
	}
	return q
}

func power10(n int) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil)
}
