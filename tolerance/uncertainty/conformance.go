package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Conformance is the probability that what was measured lies within the band,
// given the estimate (JCGM 106, 7.2 to 7.5): by the normal distribution, or
// with finite effective degrees of freedom by Student's t, which is wider.
// Whether the band's ends are open or closed makes no difference. Without any
// uncertainty it is 0 or 1.
//
// A band that asks nothing is an [ErrNoLimit]; an estimate or a band out of
// range an [ErrRange].
func Conformance[Q units.Quantity](e EstimateOf[Q], b tolerance.BandOf[Q]) (float64, error) {
	const op = "conformance probability"
	switch {
	case !e.InRange() || !b.InRange():
		return 0, refuse(op, "", "estimate or band", "", ErrRange, "values in range")
	case b.IsZero():
		return 0, refuse(op, "", "band", "", ErrNoLimit, "a limit")
	}
	in, _ := e.odds(b)
	return in, nil
}

// inside and outside are the parts of the distribution about y that lie in the
// band and not in it. Each is made of tails where it is small, so that it
// keeps its digits there.
func inside[Q units.Quantity](y Q, b tolerance.BandOf[Q], u, freedom float64) (in, out float64) {
	below, above := 0.0, 0.0 // the parts below and above the band
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	if loEnd != tolerance.Absent {
		below = studentCDF((float64(lo)-float64(y))/u, freedom)
	}
	if hiEnd != tolerance.Absent {
		above = studentCDF((float64(y)-float64(hi))/u, freedom)
	}
	switch {
	case above > 0.5:
		in = studentCDF((float64(hi)-float64(y))/u, freedom) - below
	case below > 0.5:
		in = studentCDF((float64(y)-float64(lo))/u, freedom) - above
	default:
		in = 1 - below - above
	}
	return max(in, 0), below + above
}

// AcceptanceInterval holds the readings that prove conformity with a
// probability of at least p, where the standard uncertainty of a reading is u
// (JCGM 106, 8.3.2): the band drawn in by a guard band at each limit. Where u
// is small against the band that is the one-sided factor times u, 1.65·u for
// p = 0.95 (ISO 14253-1:2017); where it isn't, a reading may be beyond either
// limit, and the guard band is wider. The ends are rounded inward.
//
// Where not even a reading in the middle of the band proves it, that is an
// [ErrNoZone]: the instrument can't decide this band. A band that asks
// nothing is an [ErrNoLimit], a negative u an [ErrUncertainty], a p not
// between 0.5 and 1 an [ErrProbability].
func AcceptanceInterval[Q units.Quantity](b tolerance.BandOf[Q], u Q, p float64) (tolerance.Interval[Q], error) {
	const op = "acceptance interval"
	var none tolerance.Interval[Q]
	if err := checkBand(op, b, u); err != nil {
		return none, err
	}
	if !(p >= 0.5 && p < 1) {
		return none, refuse(op, "", "probability", p, ErrProbability, "0.5 or more")
	}
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	s := float64(u)
	guard := -normal(1-p) * s
	if s > 0 && loEnd != tolerance.Absent && hiEnd != tolerance.Absent {
		half := (float64(hi) - float64(lo)) / 2
		conforms := func(guard float64) float64 {
			return 1 - normalCDF(-guard/s) - normalCDF((guard-2*half)/s)
		}
		if conforms(half) < p || guard > half {
			return none, refuse(op, "", "standard uncertainty", u, ErrNoZone, "less uncertainty, or a wider band")
		}
		// Nothing nearer than the one-sided guard band will do, and the
		// middle does: the first that does lies between.
		near, far := guard, half
		for range 100 {
			if g := (near + far) / 2; conforms(g) < p {
				near = g
			} else {
				far = g
			}
		}
		guard = far
	}
	g := quanta[Q](math.Ceil(guard))
	return drawn(b.Interval(), g)
}

// drawn is the interval drawn in by g at each end it has.
func drawn[Q units.Quantity](i tolerance.Interval[Q], g Q) (tolerance.Interval[Q], error) {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	if units.InRange(g) {
		if r, err := tolerance.NewInterval(lo+g, loEnd, hi-g, hiEnd); err == nil {
			return r, nil
		}
	}
	return tolerance.Interval[Q]{}, refuse("acceptance interval", "", "guard band", g, ErrNoZone, "less uncertainty, or a wider band")
}

// checkBand refuses what no rule can work with.
func checkBand[Q units.Quantity](op string, b tolerance.BandOf[Q], u Q) error {
	switch {
	case !b.InRange() || !units.InRange(u):
		return refuse(op, "", "band or uncertainty", "", ErrRange, "values in range")
	case b.IsZero():
		return refuse(op, "", "band", "", ErrNoLimit, "a limit")
	case u < 0:
		return refuse(op, "", "standard uncertainty", u, ErrUncertainty, "zero or more")
	}
	return nil
}

// normalCDF is the part of the standard normal distribution below z.
func normalCDF(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
