package uncertainty

import "math"

// mostValues bounds the work of the range factors.
const mostValues = 1000

func checkValues(n int) error {
	switch {
	case n < 2:
		return refuse("range factor", "", "values", n, ErrTooFew, "at least 2")
	case n > mostValues:
		return refuse("range factor", "", "values", n, ErrRange, "at most 1000")
	}
	return nil
}

// The trapezium rule with this step is exact to rounding for the bells here.
const (
	bellStep  = 0.1
	bellReach = 90 // steps to either side
)

// RangeFactor is d₂: the mean range of n normal values with a standard
// deviation of 1, by which the mean of many ranges is divided. 1.128 for 2,
// 1.693 for 3. Fewer than two values, and more than a thousand, are an
// [ErrTooFew] and an [ErrRange].
func RangeFactor(n int) (float64, error) {
	if err := checkValues(n); err != nil {
		return 0, err
	}
	// ∫(1 − Φⁿ − (1 − Φ)ⁿ)dx (Tippett 1925).
	mean := 0.0
	for i := -bellReach; i <= bellReach; i++ {
		x := bellStep * float64(i)
		mean += bellStep * (1 - math.Pow(normalCDF(x), float64(n)) - math.Pow(normalCDF(-x), float64(n)))
	}
	return mean, nil
}

// SingleRangeFactor is d₂* for one range of n values: the root of the mean
// square of the range, by which a single range is divided. 1.414 for 2, 1.912
// for 3, 3.179 for 10. Errors as for [RangeFactor].
func SingleRangeFactor(n int) (float64, error) {
	if err := checkValues(n); err != nil {
		return 0, err
	}
	// The mean square of the range W is ∫2w(1 − F)dw with the part of ranges
	// below w F(w) = n∫φ(x)(Φ(x + w) − Φ(x))ⁿ⁻¹dx.
	var below, above, weight [2*bellReach + 1]float64
	for i := range weight {
		x := bellStep * float64(i-bellReach)
		below[i], above[i] = normalCDF(x), normalCDF(-x)
		weight[i] = float64(n) * bellStep * math.Exp(-x*x/2) / math.Sqrt(2*math.Pi)
	}
	square := integrate(func(w float64) float64 {
		part := 0.0
		for i := range weight {
			// Φ(x + w) − Φ(x), from whichever end keeps its digits.
			x := bellStep * float64(i-bellReach)
			d := normalCDF(x+w) - below[i]
			if x > 0 {
				d = above[i] - normalCDF(-x-w)
			}
			part += weight[i] * power(d, n-1)
		}
		return 2 * w * (1 - part)
	}, []float64{0, 1, 2, 4, 6, 9, 16})
	return math.Sqrt(square), nil
}

// power is x to the whole power n > 0.
func power(x float64, n int) float64 {
	p := 1.0
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			p *= x
		}
		x *= x
	}
	return p
}
