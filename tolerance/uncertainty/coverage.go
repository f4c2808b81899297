package uncertainty

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// StudentT is the quantile of Student's t: the value that a part p of its
// distribution lies below. Infinite degrees of freedom give the normal
// distribution's. To about 13 digits.
//
// A p not between 0 and 1 is an [ErrProbability], degrees of freedom that
// aren't above zero an [ErrFreedom].
func StudentT(p float64, freedom Freedom) (float64, error) {
	if !(p > 0 && p < 1) {
		return 0, refuse("Student's t", "", "probability", p, ErrProbability, "")
	}
	if !(freedom > 0) {
		return 0, refuse("Student's t", "", "degrees of freedom", float64(freedom), ErrFreedom, "above 0, or infinite")
	}
	return studentT(p, float64(freedom)), nil
}

// normal is the quantile of the standard normal distribution.
func normal(p float64) float64 { return -math.Sqrt2 * math.Erfcinv(2*p) }

func studentT(p, v float64) float64 {
	tail := min(p, 1-p)
	var t float64
	switch {
	case p == 0.5:
		return 0
	case v > 1e5:
		// Cornish–Fisher: what is left out is below 1e-14 of z.
		z := -normal(tail)
		z3, z5 := z*z*z, z*z*z*z*z
		t = z + (z3+z)/(4*v) + (5*z5+16*z3+3*z)/(96*v*v)
	default:
		// With t, x = v/(v + t²) has a beta distribution, of which 2·tail
		// lies below x.
		x := mathext.InvRegIncBeta(v/2, 0.5, 2*tail)
		t = math.Sqrt(v * (1 - x) / x)
	}
	if p < 0.5 {
		return -t
	}
	return t
}

// studentCDF is the part of Student's t distribution below t.
func studentCDF(t, v float64) float64 {
	if v > 1e7 {
		return 0.5 * math.Erfc(-t/math.Sqrt2)
	}
	if math.IsInf(t, 0) {
		return 0.5 + math.Copysign(0.5, t)
	}
	tail := 0.5 * mathext.RegIncBeta(v/2, 0.5, v/(v+t*t))
	if t > 0 {
		return 1 - tail
	}
	return tail
}

// CoverageFactor is how many standard uncertainties reach to either side to
// cover a part p of the values: 2.92 for 99 % with 16 degrees of freedom
// (GUM G.3.2, G.6.4). Degrees of freedom are truncated to the next lower
// whole number first (GUM G.4.1), so below 1 they are an [ErrFreedom]. A p
// not between 0 and 1 is an [ErrProbability].
func CoverageFactor(p float64, freedom Freedom) (float64, error) {
	if !(p > 0 && p < 1) {
		return 0, refuse("coverage factor", "", "probability", p, ErrProbability, "")
	}
	if !(freedom >= 1) {
		return 0, refuse("coverage factor", "", "effective degrees of freedom", float64(freedom), ErrFreedom, "at least 1")
	}
	// The upper tail is (1−p)/2: taken there, not from the other end, so that
	// a p near 1 keeps its digits.
	return -studentT((1-p)/2, float64(freedom.Truncated())), nil
}
