package working

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Quantity is a quantity that formulas of [tolerance.Number] are written
// in: all those of package units but Temperature, which has no sums.
type Quantity[Q any] interface {
	units.Quantity
	tolerance.Number[Q]
}

// A TermOf is a value that remembers how it was calculated. It is a reading
// of [tolerance.Number]: a formula called with terms gives a term, and
// [Solve] writes out what happened in it. Its value comes from the very
// methods that the quantity itself has, so the working can't disagree with
// the number.
//
// The zero term is exactly 0. Terms are small, immutable, and safe to share.
type TermOf[Q Quantity[Q]] struct{ n *node }

// A Term is a length that remembers how it was calculated.
type Term = TermOf[units.Length]

// Given makes an input: its name in words, its symbol and its size, as
// "groove width", "w", 1.56 mm. Control characters and line breaks in the
// names become blanks. Where a name is empty, the other stands for it; with
// neither, the input is a constant, as [Exactly] makes it.
func Given[Q Quantity[Q]](words, symbol string, size Q) TermOf[Q] {
	return Exactly(size).Named(words, symbol)
}

// Exactly lifts a constant, which lines show as its size.
func Exactly[Q Quantity[Q]](q Q) TermOf[Q] {
	return TermOf[Q]{&node{op: opConstant, size: 1, value: int64(q)}}
}

// Named gives the term a name in words and a symbol. A named term that is
// calculated gets lines of its own in the solution, and later lines show it
// by its symbol and its number.
func (t TermOf[Q]) Named(words, symbol string) TermOf[Q] {
	return TermOf[Q]{t.node().name(words, symbol)}
}

func (t TermOf[Q]) node() *node {
	if t.n == nil {
		return zero
	}
	return t.n
}

// Value is the number, as the quantity's own methods give it.
func (t TermOf[Q]) Value() Q { return Q(t.node().value) }

// InRange reports whether the term can be judged, printed and written out.
func (t TermOf[Q]) InRange() bool { return units.InRange(t.Value()) }

// String is the exact value.
func (t TermOf[Q]) String() string { return fmt.Sprint(t.Value()) }

func term[Q Quantity[Q]](op op, value Q, args ...*node) TermOf[Q] {
	return TermOf[Q]{operation(op, int64(value), args...)}
}

// Add is t + o, exactly, or out of range.
func (t TermOf[Q]) Add(o TermOf[Q]) TermOf[Q] {
	return term(opAdd, t.Value().Add(o.Value()), t.node(), o.node())
}

// Sub is t − o, exactly, or out of range.
func (t TermOf[Q]) Sub(o TermOf[Q]) TermOf[Q] {
	return term(opSub, t.Value().Sub(o.Value()), t.node(), o.node())
}

// Abs is the magnitude of t.
func (t TermOf[Q]) Abs() TermOf[Q] { return term(opAbs, t.Value().Abs(), t.node()) }

// Min is the lesser of t and o.
func (t TermOf[Q]) Min(o TermOf[Q]) TermOf[Q] {
	return term(opMin, t.Value().Min(o.Value()), t.node(), o.node())
}

// Max is the greater of t and o.
func (t TermOf[Q]) Max(o TermOf[Q]) TermOf[Q] {
	return term(opMax, t.Value().Max(o.Value()), t.node(), o.node())
}

// Spread is the greatest less the least of t and more.
func (t TermOf[Q]) Spread(more ...TermOf[Q]) TermOf[Q] {
	const several = 16
	values := make([]Q, 0, several)
	args := append(make([]*node, 0, several), t.node())
	for _, m := range more {
		values, args = append(values, m.Value()), append(args, m.node())
	}
	return term(opSpread, t.Value().Spread(values...), args...)
}

// Scale is t·num/den, rounded once to the nearest quantum, ties to even. A
// zero den gives a term out of range.
func (t TermOf[Q]) Scale(num, den int64) TermOf[Q] {
	s := term(opScale, t.Value().Scale(num, den), t.node())
	s.n.num, s.n.den = num, den
	return s
}

// ScalePi is t·π·num/den, rounded once to the nearest quantum. A zero den
// gives a term out of range.
func (t TermOf[Q]) ScalePi(num, den int64) TermOf[Q] {
	s := term(opScalePi, t.Value().ScalePi(num, den), t.node())
	s.n.num, s.n.den = num, den
	return s
}

// MulDiv is t·mul/div, rounded once to the nearest quantum, ties to even. A
// zero div gives a term out of range.
func (t TermOf[Q]) MulDiv(mul, div TermOf[Q]) TermOf[Q] {
	return term(opMulDiv, t.Value().MulDiv(mul.Value(), div.Value()), t.node(), mul.node(), div.node())
}

// Share is the part t·part/(part+rest) of t, rounded once to the nearest
// quantum, ties to even. Where part+rest is zero it is out of range.
func (t TermOf[Q]) Share(part, rest TermOf[Q]) TermOf[Q] {
	return term(opShare, t.Value().Share(part.Value(), rest.Value()), t.node(), part.node(), rest.node())
}
