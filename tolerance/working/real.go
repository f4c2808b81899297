package working

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// A RealTerm is a number of a formula that crosses quantities, and remembers
// how it was calculated: a reading of [tolerance.Real]. Its values are those
// of [tolerance.Float], operation by operation. What a number is measured in
// is text that lines show behind it: coherence of the units is for the
// formula, as it is with any float64. [SolveReal] writes the solution out.
//
// The zero term is the constant 0. Terms are immutable and safe to share.
type RealTerm struct{ n *node }

// GivenReal makes an input: its name in words, its symbol, its size, and the
// unit that the size is in, as "bore", "b", 86, "mm". Where a name is empty,
// the other stands for it; with neither, the input is a constant.
func GivenReal(words, symbol string, size float64, unit string) RealTerm {
	return RealTerm{}.Const(size).Named(words, symbol, unit)
}

// Named gives the term a name in words, a symbol, and the unit that it is in.
// A named term that is calculated gets lines of its own in the solution.
// With a unit alone, the answer or constant gets its unit.
func (t RealTerm) Named(words, symbol, unit string) RealTerm {
	n := *t.node().name(words, symbol)
	n.args = append(n.few[:0], n.args...)
	if unit = clean(unit); unit != "" {
		n.unit = unit
	}
	return RealTerm{&n}
}

func (t RealTerm) node() *node {
	if t.n == nil {
		return zero
	}
	return t.n
}

func (t RealTerm) float() tolerance.Float { return tolerance.Float(t.node().float()) }

// float is the value of a node of a RealTerm.
func (n *node) float() float64 { return math.Float64frombits(uint64(n.value)) }

// Value is the number, as [tolerance.Float] gives it.
func (t RealTerm) Value() float64 { return t.node().float() }

// InRange reports whether the term is a number.
func (t RealTerm) InRange() bool { return t.float().InRange() }

// String is the value, to as many digits as tell it from its neighbours, and
// its unit.
func (t RealTerm) String() string { return exactReal(t.node()) }

func realTerm(op op, value tolerance.Float, args ...*node) RealTerm {
	return RealTerm{operation(op, int64(math.Float64bits(float64(value))), args...)}
}

// Add is t + o.
func (t RealTerm) Add(o RealTerm) RealTerm {
	return realTerm(opAdd, t.float().Add(o.float()), t.node(), o.node())
}

// Sub is t − o.
func (t RealTerm) Sub(o RealTerm) RealTerm {
	return realTerm(opSub, t.float().Sub(o.float()), t.node(), o.node())
}

// Mul is t·o.
func (t RealTerm) Mul(o RealTerm) RealTerm {
	return realTerm(opMul, t.float().Mul(o.float()), t.node(), o.node())
}

// Quo is t/o, out of range where o is zero.
func (t RealTerm) Quo(o RealTerm) RealTerm {
	return realTerm(opQuo, t.float().Quo(o.float()), t.node(), o.node())
}

// Sqrt is the square root of t, out of range where t is negative.
func (t RealTerm) Sqrt() RealTerm { return realTerm(opSqrt, t.float().Sqrt(), t.node()) }

// Sin is the sine of t radians.
func (t RealTerm) Sin() RealTerm { return realTerm(opSin, t.float().Sin(), t.node()) }

// Cos is the cosine of t radians.
func (t RealTerm) Cos() RealTerm { return realTerm(opCos, t.float().Cos(), t.node()) }

// Atan2 is the direction of the point (x, t) in radians, from −π to π; out of
// range for the point (0, 0).
func (t RealTerm) Atan2(x RealTerm) RealTerm {
	return realTerm(opAtan2, t.float().Atan2(x.float()), t.node(), x.node())
}

// Const is v as a constant. Lines show π and its simple multiples by the
// sign, whole: [math.Pi], and it times 2, or divided by 2, 4 or 180.
func (t RealTerm) Const(v float64) RealTerm {
	return realTerm(opConstant, tolerance.Float(v))
}
