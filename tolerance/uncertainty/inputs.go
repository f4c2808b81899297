package uncertainty

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Each constructor here makes an estimate with a source of its own. To say
// that two readings share an error, give it a variable and use it twice.

// Normal is a value with the standard uncertainty that a certificate or an
// earlier evaluation gives. Degrees of freedom may follow; without them the
// uncertainty is taken as known.
//
// A negative uncertainty is an [ErrUncertainty], a value out of range an
// [ErrRange], degrees of freedom that aren't above zero an [ErrFreedom].
func Normal[Q units.Quantity](name string, value, standard Q, freedom ...Freedom) (EstimateOf[Q], error) {
	return spread("normal", name, value, standard, 1, NormalShape, freedom)
}

// NormalWithin is a value that lies within ±half of what is given with the
// probability p, and is likelier near it (GUM 4.3.4, 4.3.5): half with even
// odds, p = 0.5, makes 1.48·half. A p not between 0 and 1 is an
// [ErrProbability]; other errors as for [Normal].
func NormalWithin[Q units.Quantity](name string, value, half Q, p float64, freedom ...Freedom) (EstimateOf[Q], error) {
	if !(p > 0 && p < 1) {
		return EstimateOf[Q]{}, refuse("normal within", name, "probability", p, ErrProbability, "")
	}
	return spread("normal within", name, value, half, -normal((1-p)/2), NormalShape, freedom)
}

// Rectangular is a value that lies within ±half of what is given, all values
// alike (GUM 4.3.7): a permissible error of which nothing else is known, a
// drift between two calibrations. Errors as for [Normal].
func Rectangular[Q units.Quantity](name string, value, half Q, freedom ...Freedom) (EstimateOf[Q], error) {
	return spread("rectangular", name, value, half, 1, RectangularShape, freedom)
}

// Triangular is a value that lies within ±half of what is given, the nearer
// the likelier (GUM 4.3.9): the sum of two rectangular errors of ±half/2.
// Errors as for [Normal].
func Triangular[Q units.Quantity](name string, value, half Q, freedom ...Freedom) (EstimateOf[Q], error) {
	return spread("triangular", name, value, half, 1, TriangularShape, freedom)
}

// UShaped is a value that swings evenly between ±half of what is given, as
// the temperature of a room under a thermostat does (GUM H.1.3.4). Errors as
// for [Normal].
func UShaped[Q units.Quantity](name string, value, half Q, freedom ...Freedom) (EstimateOf[Q], error) {
	return spread("U-shaped", name, value, half, 1, UShape, freedom)
}

// Resolution is a reading on an instrument that shows whole steps: the value
// lies within half a step of it, which makes step/√12 (GUM F.2.2.1). Errors
// as for [Normal].
func Resolution[Q units.Quantity](name string, reading, step Q) (EstimateOf[Q], error) {
	return spread("resolution", name, reading, step, 2, RectangularShape, nil)
}

// Calibration is a value from a certificate that gives an expanded
// uncertainty and its coverage factor (GUM 4.3.3): U = 30 nm with k = 2 makes
// 15 nm. A factor that isn't above zero is an [ErrFactor]; other errors as
// for [Normal].
func Calibration[Q units.Quantity](name string, value, expanded Q, k float64, freedom ...Freedom) (EstimateOf[Q], error) {
	if !(k > 0) || k-k != 0 {
		return EstimateOf[Q]{}, refuse("calibration", name, "coverage factor", k, ErrFactor, "2, or what the certificate says")
	}
	return spread("calibration", name, value, expanded, k, NormalShape, freedom)
}

// Within is what a measurement knows that found an interval: the middle of
// it, all values between its ends alike. A blade of 0.10 mm that goes and one
// of 0.15 mm that doesn't make 0.125 mm with a standard uncertainty of
// 0.0144 mm. The middle is rounded to the quantum.
//
// An interval without one of its ends knows too little and is an
// [ErrNoLimit].
func Within[Q units.Quantity](name string, i tolerance.Interval[Q]) (EstimateOf[Q], error) {
	middle, ok := i.Middle()
	width, _ := i.Width()
	if !ok {
		return EstimateOf[Q]{}, refuse("within", name, "interval", i, ErrNoLimit, "an interval with both its ends")
	}
	return spread("within", name, middle, width, 2, RectangularShape, nil)
}

// spread makes an estimate whose source has the width over div.
func spread[Q units.Quantity](op, name string, value, width Q, div float64, shape Shape, freedom []Freedom) (EstimateOf[Q], error) {
	if !units.InRange(value) {
		return EstimateOf[Q]{}, refuse(op, name, "value", "", ErrRange, "a value in range")
	}
	first := units.Unit[Q](0)
	size := quantaIn(first)
	if width < 0 {
		return EstimateOf[Q]{}, refuse(op, name, "uncertainty", fmt.Sprintf("%v %s", float64(width)/size, first), ErrUncertainty, "zero or more")
	}
	if uint64(width) > 1<<61 {
		return EstimateOf[Q]{}, refuse(op, name, "uncertainty", "", ErrRange, "a value in range")
	}
	s, err := newSource(op, name, first.Symbol(), size, shape, float64(width)/div, freedom)
	if err != nil {
		return EstimateOf[Q]{}, err
	}
	return EstimateOf[Q]{value: value, terms: oneTerm(s, 1)}, nil
}
