package uncertainty

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An ExpandedOf is a result as it is reported: the value, its expanded
// uncertainty, and what that was made with (GUM 7.2.3). It is plain data.
type ExpandedOf[Q units.Quantity] struct {
	Value       Q       `json:"value"`                // of the result
	Standard    float64 `json:"standard"`             // combined standard uncertainty, in the first unit of the quantity
	Factor      float64 `json:"factor"`               // coverage factor k
	Uncertainty float64 `json:"uncertainty"`          // expanded, k·standard, in the same unit
	Probability float64 `json:"probability,omitzero"` // that the value ± Uncertainty covers; 0 where the factor was given
	Freedom     Freedom `json:"freedom"`              // effective, not truncated
	NearKink    bool    `json:"nearKink,omitzero"`    // see EstimateOf.NearKink
}

// Expanded is the result with the expanded uncertainty that covers a part p
// of the values, by Student's t with the effective degrees of freedom,
// truncated (GUM G.6.4). A p not between 0 and 1 is an [ErrProbability],
// effective degrees of freedom below 1 are an [ErrFreedom], and an estimate
// out of range is an [ErrRange].
func (e EstimateOf[Q]) Expanded(p float64) (ExpandedOf[Q], error) {
	if !e.InRange() {
		return ExpandedOf[Q]{}, refuse("expanded uncertainty", "", "estimate", "", ErrRange, "an estimate in range")
	}
	k, err := CoverageFactor(p, e.Freedom())
	if err != nil {
		return ExpandedOf[Q]{}, err
	}
	x := e.expanded(k)
	x.Probability = p
	return x, nil
}

// ExpandedBy is the result with the coverage factor given: 2 by custom, where
// the effective degrees of freedom are many. A factor that isn't above zero
// is an [ErrFactor], and an estimate out of range an [ErrRange].
func (e EstimateOf[Q]) ExpandedBy(k float64) (ExpandedOf[Q], error) {
	if !e.InRange() {
		return ExpandedOf[Q]{}, refuse("expanded uncertainty", "", "estimate", "", ErrRange, "an estimate in range")
	}
	if err := checkFactor("expanded uncertainty", k); err != nil {
		return ExpandedOf[Q]{}, err
	}
	return e.expanded(k), nil
}

func (e *EstimateOf[Q]) expanded(k float64) ExpandedOf[Q] {
	_, u := e.Float(0)
	return ExpandedOf[Q]{Value: e.value, Standard: u, Factor: k, Uncertainty: k * u, Freedom: e.Freedom(), NearKink: e.NearKink()}
}

func checkFactor(op string, k float64) error {
	if !(k > 0) || k-k != 0 {
		return refuse(op, "", "coverage factor", k, ErrFactor, "2, or another finite number above 0")
	}
	return nil
}

// Interval is the value ± the expanded uncertainty, rounded outward to the
// quantum.
func (x ExpandedOf[Q]) Interval() tolerance.Interval[Q] {
	return around(x.Value, x.Uncertainty*quantaIn(units.Unit[Q](0)))
}

// Text writes the result in unit u: "50.000838 mm ± 0.000093 mm, k = 2.92,
// 99 %". The uncertainty is rounded as [RoundUncertainty] does, the value to
// the same decimal place, ties to even.
func (x ExpandedOf[Q]) Text(u units.Unit[Q]) string {
	wide := x.Uncertainty * quantaIn(units.Unit[Q](0)) / quantaIn(u)
	if wide-wide != 0 || !units.InRange(x.Value) {
		return "out of range"
	}
	places := placesFor(wide, u)
	dst, _ := units.Append(make([]byte, 0, 96), x.Value, units.Style[Q]{Unit: u, Places: places})
	dst = appendUncertainty(append(dst, " ± "...), wide, places)
	dst = append(append(dst, ' '), u.Symbol()...)
	dst = strconv.AppendFloat(append(dst, ", k = "...), x.Factor, 'f', factorPlaces(x.Factor), 64)
	if x.Probability > 0 {
		dst = append(strconv.AppendFloat(append(dst, ", "...), 100*x.Probability, 'g', 4, 64), " %"...)
	}
	if x.NearKink {
		dst = append(dst, " (first order is not enough: simulate it)"...)
	}
	return string(dst)
}

// factorPlaces is 0 for a whole number, else 2.
func factorPlaces(k float64) int {
	if k == float64(int(k)) {
		return 0
	}
	return 2
}

// String is [ExpandedOf.Text] in the first unit of the quantity.
func (x ExpandedOf[Q]) String() string { return x.Text(units.Unit[Q](0)) }

// Bracket is the value ± k standard uncertainties, rounded outward to the
// quantum: what [tolerance.BandOf.Judge] takes. Out of range, and for a k
// that isn't finite or is negative, the interval is out of range.
func (e EstimateOf[Q]) Bracket(k float64) tolerance.Interval[Q] {
	if !(k >= 0) {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	return around(e.value, k*e.spread())
}
