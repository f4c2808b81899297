package cylinder

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// Ratios are the least and the greatest compression ratio that the readings
// allow. Of exact readings the two differ by rounding alone, at most one part
// in 10¹⁴. They are rounded outward.
type Ratios struct {
	Least    float64 `json:"least"`    // rounded down
	Greatest float64 `json:"greatest"` // rounded up
}

// ratiosOf is 1 + swept/clearance, rounded outward. Each quotient has three
// roundings of 2⁻⁵³ and the sum one: 2⁻⁵⁰ covers them.
func ratiosOf(swept, clearance endPair[units.Volume]) Ratios {
	const slack = 1.0 / (1 << 50)
	return Ratios{
		Least:    (1 + float64(swept.lo)/float64(clearance.hi)) * (1 - slack),
		Greatest: (1 + float64(swept.hi)/float64(clearance.lo)) * (1 + slack),
	}
}

func (r Ratios) hull(o Ratios) Ratios {
	return Ratios{min(r.Least, o.Least), max(r.Greatest, o.Greatest)}
}

// Middle is halfway between the two.
func (r Ratios) Middle() float64 { return r.Least + (r.Greatest-r.Least)/2 }

// IsExact reports whether the two differ by rounding alone.
func (r Ratios) IsExact() bool { return r.Greatest-r.Least <= 1e-12*r.Greatest }

// Text writes the ratio to so many places, 0 to 9: an exact one to nearest,
// "9.77", others rounded outward, "9.70 to 9.85".
func (r Ratios) Text(places int) string {
	places = min(max(places, 0), 9)
	if r.IsExact() {
		return strconv.FormatFloat(r.Middle(), 'f', places, 64)
	}
	scale := math.Pow10(places)
	lo := math.Floor(r.Least*scale) / scale
	hi := math.Ceil(r.Greatest*scale) / scale
	return strconv.FormatFloat(lo, 'f', places, 64) + " to " + strconv.FormatFloat(hi, 'f', places, 64)
}

// String is the ratio to two places.
func (r Ratios) String() string { return r.Text(2) }
