package uncertainty_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func number(value, u float64) uncertainty.Dual {
	return must(uncertainty.NewDual("x", value, "", uncertainty.NormalShape, u))
}

// Derivatives against difference quotients of the same formula in float64.
func TestDual_derivatives(t *testing.T) {
	for _, at := range []float64{0.3, 1.1, 2.5} {
		const h = 1e-3
		d := number(at, h)
		f := func(k float64) float64 { return float64(travel(tolerance.Float(at + k*h))) }
		slope := (8*(f(1)-f(-1)) - (f(2) - f(-2))) / (12 * h)
		y := travel(d)
		require.Equal(t, float64(travel(tolerance.Float(at))), y.Value(), "one formula, the same number")
		relative(t, slope, y.Sensitivity(d.Sources()[0]), 1e-8)
		relative(t, math.Abs(slope)*h, y.StandardUncertainty(), 1e-8)
	}
}

// travel is a formula with every operation of Real in it.
func travel[R tolerance.Real[R]](angle R) R {
	throw, rod := angle.Const(45), angle.Const(150)
	across := throw.Mul(angle.Sin())
	along := rod.Mul(rod).Sub(across.Mul(across)).Sqrt()
	return throw.Add(rod).Sub(throw.Mul(angle.Cos()).Add(along)).Add(across.Atan2(along)).Quo(angle)
}

func TestDual_kinks(t *testing.T) {
	for _, c := range []struct {
		what string
		got  uncertainty.Dual
		kink bool
	}{
		{"quotient by what may be zero", number(1, 0).Quo(number(0.3, 0.1)), true},
		{"quotient by what can't", number(1, 0).Quo(number(0.31, 0.1)), false},
		{"product of two that may be zero", number(0, 1).Mul(number(1, 1)), true},
		{"product of one that may be zero", number(0, 1).Mul(number(9, 1)), false},
		{"product with an exact zero", uncertainty.ExactlyReal(0).Mul(number(0, 1)), false},
		{"root near zero", number(0.2, 0.1).Sqrt(), true},
		{"root far from zero", number(2, 0.1).Sqrt(), false},
		{"root of an exact zero", uncertainty.ExactlyReal(0).Sqrt(), false},
		{"sine at its crest", number(1.55, 0.1).Sin(), true},
		{"sine on its slope", number(0, 0.1).Sin(), false},
		{"cosine at its crest", number(0.1, 0.1).Cos(), true},
		{"cosine on its slope", number(1.5, 0.1).Cos(), false},
		{"direction from near the origin", number(0.1, 0.1).Atan2(number(0.1, 0.1)), true},
		{"direction from an exact axis", uncertainty.ExactlyReal(0).Atan2(number(0.1, 0.1)), true},
		{"direction along the negative axis", number(0.1, 0.1).Atan2(number(-5, 0.1)), true},
		{"direction along the positive axis", number(0.1, 0.1).Atan2(number(5, 0.1)), false},
	} {
		require.Equal(t, c.kink, c.got.NearKink(), c.what)
		require.True(t, c.got.InRange(), c.what)
		require.Equal(t, c.kink, c.got.Add(number(5, 0.1)).Sub(number(1, 0)).NearKink(), "the mark stays: "+c.what)
	}
}

func TestDual_outOfRangeSticks(t *testing.T) {
	good, one := number(2, 0.1), uncertainty.ExactlyReal(1)
	for _, bad := range []uncertainty.Dual{
		good.Quo(uncertainty.ExactlyReal(0)), number(-1, 0.1).Sqrt(), uncertainty.ExactlyReal(0).Atan2(uncertainty.ExactlyReal(0)),
		uncertainty.ExactlyReal(math.MaxFloat64).Mul(good), uncertainty.ExactlyReal(math.NaN()), uncertainty.ExactlyReal(math.Inf(1)),
		number(0, 0.1).Sqrt(), // it has no first order
		number(math.MaxFloat64, 1e300).Add(number(math.MaxFloat64, 1e300)),
	} {
		require.False(t, bad.InRange())
		require.True(t, math.IsNaN(bad.StandardUncertainty()))
		require.True(t, math.IsNaN(float64(bad.Freedom())))
		require.True(t, math.IsNaN(uncertainty.CorrelationReal(good, bad)))
		for _, got := range []uncertainty.Dual{
			bad.Add(good), good.Add(bad), bad.Sub(bad), good.Sub(bad), bad.Mul(good), good.Mul(bad), bad.Mul(uncertainty.ExactlyReal(0)),
			bad.Quo(good), good.Quo(bad), one.Quo(bad).Quo(one), bad.Sqrt(), bad.Sin(), bad.Cos(), bad.Atan2(one), one.Atan2(bad),
		} {
			require.False(t, got.InRange())
		}
		require.True(t, bad.Const(1).InRange())
	}
}

func TestDual_shares(t *testing.T) {
	x := number(3, 0.1)
	require.Equal(t, 0.0, x.Sub(x).StandardUncertainty())
	require.Empty(t, x.Quo(x).Sources())
	require.Equal(t, 1.0, x.Quo(x).Value())
	require.Equal(t, 0.0, x.Sensitivity(nil))
	require.Equal(t, 0.0, uncertainty.ExactlyReal(2).StandardUncertainty())
	require.Equal(t, uncertainty.Infinite(), x.Freedom())
	y := must(uncertainty.NewDual("y", 1, "", uncertainty.NormalShape, 0.1, 7))
	require.InDelta(t, 7, float64(y.Mul(y).Freedom()), 1e-12)

	// A source of a quantity is the same in every unit: volume = area·height.
	h := must(uncertainty.Normal("height", 80*mm, 10*um))
	same := h.Real(units.InMillimetres).Sub(h.Real(units.InInches).Mul(uncertainty.ExactlyReal(25.4)))
	require.InDelta(t, 0, same.StandardUncertainty(), 1e-16)
	s := h.Sources()[0]
	relative(t, 1/25.4, h.Real(units.InInches).Sensitivity(s), 1e-15)
	require.Equal(t, 1.0, h.Sensitivity(s))
	require.Equal(t, 0.0, h.Sensitivity(nil))
	require.Equal(t, []any{"height", "mm", uncertainty.NormalShape, 0.01}, []any{s.Name(), s.Unit(), s.Shape(), s.StandardUncertainty()})
	require.Equal(t, uncertainty.Infinite(), s.Freedom())
}

// A contribution so small or so great that its square leaves the range of
// float64 still counts.
func TestDual_extremes(t *testing.T) {
	for _, scale := range []float64{1e-200, 1e-160, 1, 1e160, 1e200} {
		sum := number(0, 3*scale).Add(number(0, 4*scale))
		relative(t, 5*scale, sum.StandardUncertainty(), 1e-14)
	}
}
