package tolerance

import "math"

// Real is what a formula that crosses quantities is written in: a volume, a
// ratio, a slider-crank, a stress. A function over Real[R] is one formula
// with several readings: called with a [Float] it gives the number, with a
// number that carries its derivatives the propagated uncertainty, with a
// working term the written-out solution.
//
// Its values are plain numbers in coherent units, which the formula's
// documentation names; a formula that stays within one quantity is better
// written over [Number], which is exact. Angles are in radians.
//
// A result that no number answers to (a division by zero, the root of a
// negative number, the direction of a point from itself, more than a float64
// holds) is out of range and stays so through further operations.
//
// Add, Sub, Mul and Quo are sum, difference, product and quotient.
type Real[R any] interface {
	Add(R) R
	Sub(R) R
	Mul(R) R
	Quo(R) R
	// Sqrt is the square root.
	Sqrt() R
	// Sin is the sine of the receiver in radians.
	Sin() R
	// Cos is the cosine of the receiver in radians.
	Cos() R
	// Atan2 is the direction, from −π to π, of the point that has the
	// receiver as its ordinate y and the argument as its abscissa x. With
	// it, arctan t is t.Atan2(t.Const(1)) and arcsin s is
	// s.Atan2(t.Const(1).Sub(s.Mul(s)).Sqrt()).
	Atan2(x R) R
	// Const is v as a constant of the formula; the receiver lends its kind
	// alone, not its value.
	Const(v float64) R
}

// Float reads a formula over [Real] as float64 arithmetic. Add, Sub, Mul, Quo
// and Sqrt round once each, to nearest, the same on every machine: none is
// fused with another. Sin, Cos and Atan2 are package math's, within one unit
// in the last place or so.
//
// Out of range is not-a-number or an infinity, and stays out of range: what
// is divided by an infinity is not quietly 0.
type Float float64

// InRange reports whether f is a number: neither not-a-number nor infinite.
func (f Float) InRange() bool { return f-f == 0 }

// Add is f + g.
func (f Float) Add(g Float) Float { return Float(f + g) }

// Sub is f − g.
func (f Float) Sub(g Float) Float { return Float(f - g) }

// Mul is f·g. The conversion keeps the compiler from fusing it with a sum
// that follows.
func (f Float) Mul(g Float) Float { return Float(f * g) }

// Quo is f/g; where g is zero or out of range it is not-a-number.
func (f Float) Quo(g Float) Float {
	if g == 0 || !g.InRange() {
		return Float(math.NaN())
	}
	return Float(f / g)
}

// Sqrt is the square root of f, not-a-number where f is negative.
func (f Float) Sqrt() Float { return Float(math.Sqrt(float64(f))) }

// Sin is the sine of f radians.
func (f Float) Sin() Float { return Float(math.Sin(float64(f))) }

// Cos is the cosine of f radians.
func (f Float) Cos() Float { return Float(math.Cos(float64(f))) }

// Atan2 is the direction of the point (x, f) in radians, from −π to π;
// not-a-number for the point (0, 0), which lies in none, and where f or x is
// out of range.
func (f Float) Atan2(x Float) Float {
	if f == 0 && x == 0 || !f.InRange() || !x.InRange() {
		return Float(math.NaN())
	}
	return Float(math.Atan2(float64(f), float64(x)))
}

// Const is v.
func (f Float) Const(v float64) Float { return Float(v) }
