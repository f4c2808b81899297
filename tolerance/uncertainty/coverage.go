package uncertainty

import "gonum.org/v1/gonum/mathext"

// StudentT is the quantile of Student's t: the value that a part p of its
// distribution lies below. Infinite degrees of freedom give the normal
// distribution's. To 12 digits, in the far tails too; beyond what a float64
// holds it is infinite.
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

// normal is the quantile of the standard normal distribution, by Wichura's
// algorithm AS 241 in terms of p itself: package math's goes by 1 − p, which
// has no digits left in the tail.
func normal(p float64) float64 { return mathext.NormalQuantile(p) }

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
