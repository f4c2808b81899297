package uncertainty

import (
	"math"
	"slices"

	"github.com/tenthou/tenthou/units"
)

// An OutlierOf is advice on a reading that stands apart from the rest. It is
// advice alone: look for what went wrong (a reading misread, dirt under the
// anvil), measure again, and leave nothing out because a test says so.
type OutlierOf[Q units.Quantity] struct {
	Index     int     `json:"index"`     // in the series, from 0
	Reading   Q       `json:"reading"`   // as it was read
	Statistic float64 `json:"statistic"` // how far it stands out
	Critical  float64 `json:"critical"`  // beyond which it stands out
	Suspect   bool    `json:"suspect"`   // whether it is beyond
}

// Grubbs tests the reading farthest from the mean by Grubbs' test
// (two-sided; ISO 5725-2, NIST/SEMATECH e-Handbook 1.3.5.17.1): its distance
// in standard deviations against what normal readings would exceed with the
// probability given, 0.05 by custom. It finds one outlier; two that stand
// together hide each other.
//
// Fewer than three readings are an [ErrTooFew], a significance not between 0
// and 1 an [ErrProbability].
func (s SeriesOf[Q]) Grubbs(significance float64) (OutlierOf[Q], error) {
	const op = "Grubbs' test"
	n := len(s.readings)
	if n < 3 {
		return OutlierOf[Q]{}, refuse(op, "", "readings", n, ErrTooFew, "at least 3")
	}
	critical, err := GrubbsCritical(n, significance)
	if err != nil {
		return OutlierOf[Q]{}, err
	}
	o := OutlierOf[Q]{Critical: critical, Reading: s.readings[0]}
	deviation := s.deviation()
	if deviation == 0 {
		return o, nil
	}
	total, _ := s.sums.total().Float64()
	mean := total / float64(n) // above the first reading
	for i, q := range s.readings {
		d := math.Abs(float64(int64(q)-int64(s.readings[0]))-mean) / deviation
		if d > o.Statistic {
			o.Index, o.Reading, o.Statistic = i, q, d
		}
	}
	o.Suspect = o.Statistic > critical
	return o, nil
}

// GrubbsCritical is the critical value of Grubbs' test, two-sided, for n
// readings (one-sided at 0.05 is two-sided at 0.10): (n − 1)/√n·√(t²/(n − 2 + t²)) with t the quantile of Student's t
// that significance/2n lies above, for n − 2 degrees of freedom. Errors as for
// [SeriesOf.Grubbs].
func GrubbsCritical(n int, significance float64) (float64, error) {
	if n < 3 {
		return 0, refuse("Grubbs' test", "", "readings", n, ErrTooFew, "at least 3")
	}
	if !(significance > 0 && significance < 1) {
		return 0, refuse("Grubbs' test", "", "significance", significance, ErrProbability, "0.05 by custom")
	}
	m := float64(n)
	t := studentT(significance/(2*m), m-2)
	return (m - 1) / math.Sqrt(m) * math.Sqrt(t*t/(m-2+t*t)), nil
}

// modifiedZLimit is the bound of Iglewicz and Hoaglin.
const modifiedZLimit = 3.5

// ModifiedZ lists the readings whose modified z-score is beyond 3.5 (Iglewicz
// and Hoaglin 1993; NIST/SEMATECH e-Handbook 1.3.5.17): 0.6745 times the
// distance from the median over the median of such distances. It doesn't mind
// several outliers. Where more than half of the readings are the same it
// can't tell, and lists none. Fewer than three readings are an [ErrTooFew].
func (s SeriesOf[Q]) ModifiedZ() ([]OutlierOf[Q], error) {
	n := len(s.readings)
	if n < 3 {
		return nil, refuse("modified z-score", "", "readings", n, ErrTooFew, "at least 3")
	}
	from := make([]float64, n)
	for i, q := range s.readings {
		from[i] = float64(int64(q) - int64(s.readings[0]))
	}
	middle := median(slices.Clone(from))
	for i := range from {
		from[i] = math.Abs(from[i] - middle)
	}
	scale := median(slices.Clone(from))
	if scale == 0 {
		return nil, nil
	}
	var out []OutlierOf[Q]
	for i, d := range from {
		if z := 0.6745 * d / scale; z > modifiedZLimit {
			out = append(out, OutlierOf[Q]{Index: i, Reading: s.readings[i], Statistic: z, Critical: modifiedZLimit, Suspect: true})
		}
	}
	return out, nil
}

// median sorts x and gives what lies in its middle.
func median(x []float64) float64 {
	slices.Sort(x)
	n := len(x)
	return (x[n/2] + x[(n-1)/2]) / 2
}
