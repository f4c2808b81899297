package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// around is q ± width quanta, rounded outward; out of range where either is.
func around[Q units.Quantity](q Q, width float64) tolerance.Interval[Q] {
	w := math.Ceil(width)
	if !(w <= 1<<61) || !units.InRange(q) {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	i, err := tolerance.NewInterval(q-Q(w), tolerance.Closed, q+Q(w), tolerance.Closed)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	return i
}
