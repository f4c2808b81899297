package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// An EstimateOf is a value with what is known of its uncertainty: the exact
// value of a quantity, and how far it moves, to first order, with each of the
// sources that it depends on. It reads a formula over [tolerance.Number].
//
// Since it knows what depends on what, x − x is exactly zero with no
// uncertainty, and an error that two readings share cancels in their
// difference. It has no order and doesn't compare with ==: whether one
// estimate is less than another, or within a limit, is for a decision rule
// ([Decide]).
//
// The zero EstimateOf is exactly zero. Up to four sources are held without
// allocating.
type EstimateOf[Q units.Quantity] struct {
	_     [0]func() // not comparable
	value Q
	terms terms
}

// An Estimate is an estimate of a length.
type Estimate = EstimateOf[units.Length]

// Exactly is q without any uncertainty.
func Exactly[Q units.Quantity](q Q) EstimateOf[Q] { return EstimateOf[Q]{value: q} }

// Value is the best estimate, exactly as calculated.
func (e EstimateOf[Q]) Value() Q { return e.value }

// StandardUncertainty is the combined standard uncertainty (GUM 5.1.2), to
// the nearest quantum; out of range where the estimate is. [EstimateOf.Float]
// gives it unrounded.
func (e EstimateOf[Q]) StandardUncertainty() Q { return quanta[Q](e.spread()) }

// Float is the value and its standard uncertainty as float64 in unit u, and
// not-a-number where the estimate is out of range.
func (e EstimateOf[Q]) Float(u units.Unit[Q]) (value, standard float64) {
	if !e.InRange() {
		return math.NaN(), math.NaN()
	}
	size := quantaIn(u)
	zero, _ := units.Nearest(0, u)
	return float64(e.value-zero) / size, e.spread() / size
}

// InRange reports whether the estimate can be judged and printed: an
// operation that left the range, or divided by zero, gives one that can't.
func (e EstimateOf[Q]) InRange() bool {
	u := e.terms.spread()
	return units.InRange(e.value) && u-u == 0
}

// spread is the standard uncertainty in quanta, not-a-number out of range.
func (e *EstimateOf[Q]) spread() float64 {
	u := e.terms.spread()
	if !units.InRange(e.value) || u-u != 0 {
		return math.NaN()
	}
	return u
}

// NearKink reports whether an operation on the way stood where first order
// tells too little, within three standard uncertainties: Abs near zero, Min,
// Max or Spread near a tie, a division near zero, a product of two factors
// that both may be zero. The standard uncertainty is then doubtful, and the
// result may be off-centre: propagate the formula by [Simulate] instead.
func (e EstimateOf[Q]) NearKink() bool { return e.terms.kink }

// Sources are the sources that the estimate depends on, in the order in which
// they came in.
func (e EstimateOf[Q]) Sources() []*Source { return e.terms.sources() }

// Sensitivity is how far the value moves with s, to first order (GUM 5.1.3):
// in the first unit of the quantity (mm for lengths) for each unit of s. It
// is zero where the estimate doesn't depend on s.
func (e EstimateOf[Q]) Sensitivity(s *Source) float64 {
	if s == nil {
		return 0
	}
	return e.terms.of(s) * s.size / quantaIn(units.Unit[Q](0))
}

// Freedom is the effective degrees of freedom of the standard uncertainty by
// the Welch–Satterthwaite formula (GUM G.4.1), not truncated; infinite where
// every source is taken as known, not-a-number out of range.
func (e EstimateOf[Q]) Freedom() Freedom {
	if !e.InRange() {
		return Freedom(math.NaN())
	}
	return e.terms.freedom()
}

// Correlation is the correlation coefficient of two estimates, from −1 to 1:
// how much they have in common. Where either has no uncertainty it is 0, and
// not-a-number where either is out of range. The two may be of different
// quantities.
func Correlation[P, Q units.Quantity](a EstimateOf[P], b EstimateOf[Q]) float64 {
	return correlation(&a.terms, a.spread(), &b.terms, b.spread())
}

func correlation(a *terms, ua float64, b *terms, ub float64) float64 {
	if ua == 0 || ub == 0 {
		return 0
	}
	r := covariance(a, b) / ua / ub
	return max(-1, min(1, r)) // rounding may lead past ±1
}

// Real is the estimate as a number in unit u, with the same sources, for
// formulas over [tolerance.Real].
func (e EstimateOf[Q]) Real(u units.Unit[Q]) Dual {
	v, _ := e.Float(u)
	if v != v {
		return nowhere()
	}
	return Dual{value: v, terms: e.terms.times(1 / quantaIn(u))}
}

// FromReal is d units of u as an estimate: the value to the nearest quantum,
// with the same sources. A value that isn't finite, or that the quantity
// can't hold, is a [units.RangeError].
func FromReal[Q units.Quantity](d Dual, u units.Unit[Q]) (EstimateOf[Q], error) {
	v, err := units.Nearest(d.value, u)
	if err != nil {
		return EstimateOf[Q]{}, err
	}
	e := EstimateOf[Q]{value: v, terms: d.terms.times(quantaIn(u))}
	if !e.InRange() {
		return EstimateOf[Q]{}, refuse("from real", "", "sensitivity", d.StandardUncertainty(), ErrNotFinite, "finite sensitivities")
	}
	return e, nil
}

// quanta is x to the nearest whole quantum, out of range where x is.
func quanta[Q units.Quantity](x float64) Q {
	if !(math.Abs(x) <= 1<<61) {
		return units.OutOfRange[Q]()
	}
	return Q(math.RoundToEven(x))
}
