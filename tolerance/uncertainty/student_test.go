package uncertainty_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// The distribution and its quantile undo each other, wherever expansions,
// fractions and the normal distribution take over from one another.
func TestStudentT_undone(t *testing.T) {
	const u = units.Length(1 << 45)
	for _, f := range []uncertainty.Freedom{1, 2.5, 29.9, 30.1, 999, 9.99e4, 1.01e5, 3e6, 1e12, 1e300, uncertainty.Infinite()} {
		e := must(uncertainty.Normal("x", 0, u, f))
		for _, tail := range []float64{0.4999999, 0.4, 0.2501, 0.2499, 0.1, 0.025, 1e-3, 1e-5, 1e-8, 1e-12} {
			q := must(uncertainty.StudentT(tail, f))
			at := q * float64(u)
			if math.Abs(at) > 1<<60 {
				continue
			}
			below := must(uncertainty.Conformance(e, tolerance.AtMost(units.Length(at))))
			relative(t, tail, below, 1e-10)
			above := must(uncertainty.Conformance(e, tolerance.AtLeast(units.Length(-at))))
			relative(t, tail, above, 1e-10)
		}
	}
}

func TestStudentT_far(t *testing.T) {
	// Two degrees of freedom have a quantile in closed form: with a = 2p − 1,
	// t = a·√(2/(1 − a²)); for a tiny p that is −1/√(2p).
	for _, p := range []float64{1e-20, 1e-100, 1e-300} {
		relative(t, -1/math.Sqrt(2*p), must(uncertainty.StudentT(p, 2)), 1e-12)
		// And one degree: the Cauchy distribution, −1/(πp).
		relative(t, -1/(math.Pi*p), must(uncertainty.StudentT(p, 1)), 1e-12)
	}
	require.True(t, math.IsInf(must(uncertainty.StudentT(1e-300, 0.1)), -1), "beyond what a float64 holds")
	// More freedom brings a quantile in, down to the normal one.
	for _, p := range []float64{1e-300, 1e-50, 1e-10, 0.01, 0.3} {
		last := math.Inf(-1)
		for f := uncertainty.Freedom(1); f < 1e9; f *= 1.5 {
			q := must(uncertainty.StudentT(p, f))
			require.Greater(t, q, last, "%v %v", p, f)
			last = q
		}
		require.GreaterOrEqual(t, must(uncertainty.StudentT(p, uncertainty.Infinite())), last)
	}
	// So far out that nothing is left.
	for _, f := range []uncertainty.Freedom{1e3, 1e5, 1e7, uncertainty.Infinite()} {
		e := must(uncertainty.Normal("x", 0, 1*pm, f))
		require.Equal(t, 1.0, must(uncertainty.Conformance(e, tolerance.AtMost(units.Length(1<<60)))))
		require.InDelta(t, 0, must(uncertainty.Conformance(e, tolerance.AtLeast(units.Length(1<<60)))), 1e-300)
	}
}
