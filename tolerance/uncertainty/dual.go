package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// A Dual is a plain number that carries its first-order sensitivities to
// sources: it reads a formula over [tolerance.Real], where quantities are
// multiplied and divided, and gives the value and its propagated standard
// uncertainty (GUM 5.1.2) without a derivative written by hand. Its sources
// are the same as those of [EstimateOf], so what a length and a temperature
// share stays shared.
//
// Values are in coherent units, named by the formula. The zero Dual is
// exactly zero. Up to four sources are held without allocating.
type Dual struct {
	_     [0]func() // not comparable
	value float64
	terms terms
}

// ExactlyReal is v without any uncertainty.
func ExactlyReal(v float64) Dual { return Dual{value: v} }

// NewDual is a number with a source of its own, named and in the unit given:
// an expansion coefficient, a density, a modulus. width is the standard
// uncertainty of a normal shape, else the half-width of its spread. Degrees
// of freedom may follow; without them the width is taken as known.
//
// A negative width, one that isn't finite, and degrees of freedom that aren't
// above zero are an [InputError], as with the constructors of estimates.
func NewDual(name string, value float64, unit string, shape Shape, width float64, freedom ...Freedom) (Dual, error) {
	if value-value != 0 {
		return Dual{}, refuse("number", name, "value", value, ErrNotFinite, "a finite number")
	}
	s, err := newSource("number", name, unit, 1, shape, width, freedom)
	if err != nil {
		return Dual{}, err
	}
	return Dual{value: value, terms: oneTerm(s, 1)}, nil
}

// Value is the best estimate.
func (d Dual) Value() float64 { return d.value }

// StandardUncertainty is the combined standard uncertainty (GUM 5.1.2),
// not-a-number where the number is out of range.
func (d Dual) StandardUncertainty() float64 {
	u := d.terms.spread()
	if d.value-d.value != 0 || u-u != 0 {
		return math.NaN()
	}
	return u
}

// InRange reports whether the value and its uncertainty are finite.
func (d Dual) InRange() bool { return !math.IsNaN(d.StandardUncertainty()) }

// NearKink reports whether an operation on the way stood where first order
// tells too little, within three standard uncertainties: a division or a root
// near zero, a sine near its crest, a product of two factors that both may be
// zero, a direction from near the origin. The standard uncertainty is then
// doubtful: propagate the formula by [SimulateReal] instead.
func (d Dual) NearKink() bool { return d.terms.kink }

// Sources are the sources that the number depends on, in the order in which
// they came in.
func (d Dual) Sources() []*Source { return d.terms.sources() }

// Sensitivity is how far the value moves with s, to first order, for each
// unit of s (GUM 5.1.3). It is zero where the number doesn't depend on s.
func (d Dual) Sensitivity(s *Source) float64 {
	if s == nil {
		return 0
	}
	return d.terms.of(s) * s.size
}

// Freedom is the effective degrees of freedom of the standard uncertainty by
// the Welch–Satterthwaite formula (GUM G.4.1), not truncated; infinite where
// every source is taken as known, not-a-number out of range.
func (d Dual) Freedom() Freedom {
	if !d.InRange() {
		return Freedom(math.NaN())
	}
	return d.terms.freedom()
}

// CorrelationReal is the correlation coefficient of two numbers, from −1 to
// 1: how much they have in common. Where either has no uncertainty it is 0,
// and not-a-number where either is out of range.
func CorrelationReal(a, b Dual) float64 {
	return correlation(&a.terms, a.StandardUncertainty(), &b.terms, b.StandardUncertainty())
}

// nowhere is the number that left the range.
func nowhere() Dual { return Dual{value: math.NaN()} }

// The values are calculated as tolerance.Float calculates them.
type float = tolerance.Float

// settle gives d its value and marks it; nowhere if it left the range.
func (d *Dual) settle(v float, kink bool) {
	if !v.InRange() {
		*d = nowhere()
		return
	}
	d.value = float64(v)
	d.terms.kink = d.terms.kink || kink
}

func (d *Dual) near(distance float64) bool { return d.terms.n > 0 && near(distance, d.terms.spread()) }

// Add is d + o.
func (d Dual) Add(o Dual) (r Dual) {
	r.terms.sum(&d.terms, 1, &o.terms, 1)
	r.settle(float(d.value).Add(float(o.value)), false)
	return r
}

// Sub is d − o. What depends on one source in both cancels.
func (d Dual) Sub(o Dual) (r Dual) {
	r.terms.sum(&d.terms, 1, &o.terms, -1)
	r.settle(float(d.value).Sub(float(o.value)), false)
	return r
}

// Mul is d·o.
func (d Dual) Mul(o Dual) (r Dual) {
	r.terms.sum(&d.terms, o.value, &o.terms, d.value)
	r.settle(float(d.value).Mul(float(o.value)), d.near(d.value) && o.near(o.value))
	return r
}

// Quo is d/o. Where o is zero it is out of range.
func (d Dual) Quo(o Dual) (r Dual) {
	q := float(d.value).Quo(float(o.value))
	r.terms.sum(&d.terms, 1/o.value, &o.terms, -float64(q)/o.value)
	r.settle(q, o.near(o.value))
	return r
}

// Sqrt is the square root, out of range for a negative number. At zero it
// has no first order: the root of an uncertain zero is out of range too.
func (d Dual) Sqrt() (r Dual) {
	root := float(d.value).Sqrt()
	r.terms.take(&d.terms, 0.5/float64(root))
	r.settle(root, d.near(d.value))
	return r
}

// Sin is the sine of d radians.
func (d Dual) Sin() (r Dual) {
	slope := math.Cos(d.value)
	r.terms.take(&d.terms, slope)
	// |cos| is the sine of the distance from the crest, and not above it.
	r.settle(float(d.value).Sin(), d.near(slope))
	return r
}

// Cos is the cosine of d radians.
func (d Dual) Cos() (r Dual) {
	slope := math.Sin(d.value)
	r.terms.take(&d.terms, -slope)
	r.settle(float(d.value).Cos(), d.near(slope))
	return r
}

// Atan2 is the direction of the point (x, d) in radians, from −π to π. At the
// origin it is out of range.
func (d Dual) Atan2(x Dual) (r Dual) {
	far := math.Hypot(d.value, x.value)
	r.terms.sum(&d.terms, x.value/far/far, &x.terms, -d.value/far/far)
	// Near the negative x-axis the direction leaps from π to −π.
	leap := d.near(far) || x.near(far) || x.value < 0 && d.near(d.value)
	r.settle(float(d.value).Atan2(float(x.value)), leap)
	return r
}

// Const is v without any uncertainty.
func (d Dual) Const(v float64) Dual { return ExactlyReal(v) }
