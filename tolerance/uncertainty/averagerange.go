package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// ByRange analyses a study by averages and ranges, in unit u: the method for
// pencil and paper. It can't tell the interaction of operators and parts from
// scatter, and uses less of what was measured than [StudyOf.Analyse].
//
// Repeatability is the mean range of the cells over d₂ of the trials;
// operators are the range of their means over d₂* of their number, less what
// repeatability puts into those means; parts are the range of theirs over
// d₂*. The factors are calculated for any number ([RangeFactor]), to more
// places than tables print. Errors as for [StudyOf.Analyse].
func (s StudyOf[Q]) ByRange(u units.Unit[Q]) (Components, error) {
	o, p, t, err := s.size("average and range")
	if err != nil {
		return Components{}, err
	}
	size := quantaIn(u)
	base := int64(s.Readings[0][0][0])
	var ranges float64
	operators, parts := make([]float64, o), make([]float64, p)
	for i := range o {
		for j := range p {
			cell := s.Readings[i][j]
			least, greatest := cell[0], cell[0]
			for _, q := range cell {
				least, greatest = min(least, q), max(greatest, q)
				d := float64(int64(q)-base) / size
				operators[i] += d / float64(p*t)
				parts[j] += d / float64(o*t)
			}
			ranges += float64(greatest-least) / size / float64(o*p)
		}
	}
	each, err := RangeFactor(t)
	if err != nil {
		return Components{}, err
	}
	ofOperators, err := SingleRangeFactor(o)
	if err != nil {
		return Components{}, err
	}
	ofParts, err := SingleRangeFactor(p)
	if err != nil {
		return Components{}, err
	}
	c := Components{
		Unit:          u.Symbol(),
		Repeatability: ranges / each,
		Parts:         width(parts) / ofParts,
	}
	between := width(operators) / ofOperators
	c.Operators = math.Sqrt(max(0, between*between-c.Repeatability*c.Repeatability/float64(p*t)))
	return c, nil
}

func width(x []float64) float64 {
	least, greatest := x[0], x[0]
	for _, v := range x {
		least, greatest = min(least, v), max(greatest, v)
	}
	return greatest - least
}

// RangeFactor is d₂: the mean range of n normal values with a standard
// deviation of 1, by which the mean of many ranges is divided. 1.128 for 2,
// 1.693 for 3. Fewer than two values, and more than a thousand, are an
// [ErrTooFew] and an [ErrRange].
func RangeFactor(n int) (float64, error) {
	mean, _, err := rangeMoments(n)
	return mean, err
}

// SingleRangeFactor is d₂* for one range of n values: the root of the mean
// square of the range, by which a single range is divided. 1.414 for 2, 1.912
// for 3, 3.179 for 10. Errors as for [RangeFactor].
func SingleRangeFactor(n int) (float64, error) {
	_, square, err := rangeMoments(n)
	return math.Sqrt(square), err
}

// rangeMoments are the mean and the mean square of the range W of n standard
// normal values: ∫(1 − F)dw and ∫2w(1 − F)dw with the part of ranges below w
// F(w) = n∫φ(x)(Φ(x + w) − Φ(x))ⁿ⁻¹dx (Tippett 1925).
func rangeMoments(n int) (mean, square float64, err error) {
	switch {
	case n < 2:
		return 0, 0, refuse("range factor", "", "values", n, ErrTooFew, "at least 2")
	case n > mostValues:
		return 0, 0, refuse("range factor", "", "values", n, ErrRange, "at most 1000")
	}
	beyond := func(w float64) float64 {
		// The trapezium rule is exact to rounding for such a bell.
		const step = 0.1
		part := 0.0
		for x := -9.0; x < 9; x += step {
			// Φ(x + w) − Φ(x), from whichever end keeps its digits.
			d := normalCDF(x+w) - normalCDF(x)
			if x > 0 {
				d = normalCDF(-x) - normalCDF(-x-w)
			}
			part += math.Exp(-x*x/2) * math.Pow(d, float64(n-1))
		}
		return 1 - float64(n)*part*step/math.Sqrt(2*math.Pi)
	}
	points := []float64{0, 1, 2, 4, 6, 9, 18}
	mean = integrate(beyond, points)
	square = integrate(func(w float64) float64 { return 2 * w * beyond(w) }, points)
	return mean, square, nil
}

// mostValues bounds the work of the range factors.
const mostValues = 1000
