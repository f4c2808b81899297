package uncertainty

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SampleOf is the results of a simulation of a quantity, in order. Results
// beyond 2⁵³ quanta (lengths over 9 m) are held to 53 bits.
type SampleOf[Q units.Quantity] struct{ sample Sample }

// JoinOf is [Join] for quantities.
func JoinOf[Q units.Quantity](parts ...SampleOf[Q]) (SampleOf[Q], error) {
	plain := make([]Sample, len(parts))
	for i, p := range parts {
		plain[i] = p.sample
	}
	s, err := Join(plain...)
	return SampleOf[Q]{s}, err
}

// Len is the number of trials.
func (s SampleOf[Q]) Len() int { return s.sample.Len() }

// Mean is the arithmetic mean to the nearest quantum, out of range for an
// empty sample.
func (s SampleOf[Q]) Mean() Q { return quanta[Q](s.sample.Mean()) }

// StandardDeviation is the standard uncertainty that the simulation gives, to
// the nearest quantum, out of range for fewer than two trials.
func (s SampleOf[Q]) StandardDeviation() Q { return quanta[Q](s.sample.StandardDeviation()) }

// Quantile is what a part p of the trials lies below. Errors as for
// [Sample.Quantile].
func (s SampleOf[Q]) Quantile(p float64) (Q, error) {
	v, err := s.sample.Quantile(p)
	return quanta[Q](v), err
}

// QuantileBounds are what the quantile would lie between in 95 of 100
// simulations of this length. Errors as for [Sample.Quantile].
func (s SampleOf[Q]) QuantileBounds(p float64) (tolerance.Interval[Q], error) {
	return span[Q](s.sample.QuantileBounds(p))
}

// Symmetric is the interval that covers a part p of the trials and leaves as
// many below as above. Errors as for [Sample.Quantile].
func (s SampleOf[Q]) Symmetric(p float64) (tolerance.Interval[Q], error) {
	return span[Q](s.sample.Symmetric(p))
}

// Shortest is the shortest interval that covers a part p of the trials.
// Errors as for [Sample.Quantile].
func (s SampleOf[Q]) Shortest(p float64) (tolerance.Interval[Q], error) {
	return span[Q](s.sample.Shortest(p))
}

func span[Q units.Quantity](lo, hi float64, err error) (tolerance.Interval[Q], error) {
	if err != nil {
		return tolerance.Interval[Q]{}, err
	}
	return tolerance.NewInterval(quanta[Q](lo), tolerance.Closed, quanta[Q](hi), tolerance.Closed)
}

// Conformance is the part of the trials that lies within the band, its ends
// open or closed as they are. A band that asks nothing is an [ErrNoLimit], an
// empty sample an [ErrEmpty], a band out of range an [ErrRange].
func (s SampleOf[Q]) Conformance(b tolerance.BandOf[Q]) (float64, error) {
	if err := checkBand("conformance", b, 0); err != nil {
		return 0, err
	}
	if s.Len() == 0 {
		return 0, refuse("conformance", "", "results", 0, ErrEmpty, "a simulation's results")
	}
	in := 1.0
	if hi, end := b.Upper(); end != tolerance.Absent {
		in = s.sample.Below(float64(hi), end == tolerance.Closed)
	}
	if lo, end := b.Lower(); end != tolerance.Absent {
		in -= s.sample.Below(float64(lo), end == tolerance.Open)
	}
	return max(0, in), nil
}

// Text says in unit u what came out: mean, standard deviation and the
// shortest interval that covers 95 %.
func (s SampleOf[Q]) Text(u units.Unit[Q]) string {
	i, err := s.Shortest(0.95)
	if err != nil {
		return "no trials"
	}
	deviation := s.sample.StandardDeviation() / quantaIn(u)
	places := u.Places()
	if deviation > 0 {
		places = placesFor(deviation, u)
	}
	dst, _ := units.Append(nil, s.Mean(), units.Style[Q]{Unit: u, Places: places})
	if math.IsNaN(deviation) {
		return string(dst) + ", of one trial"
	}
	dst = appendUncertainty(append(dst, ", standard deviation "...), deviation, places)
	return fmt.Sprintf("%s %s; 95 %% lie in %s; %d trials", dst, u.Symbol(), i.Text(u, places), s.Len())
}

// String is [SampleOf.Text] in the first unit of the quantity.
func (s SampleOf[Q]) String() string { return s.Text(units.Unit[Q](0)) }
