package uncertainty

import (
	"fmt"
	"math"
	"slices"
	"sort"
)

// A Sample is the results of a simulation, in order. It doesn't change.
type Sample struct {
	sorted []float64
	blocks []Blocks
}

// NewSample is a sample of values that the caller has drawn, for simulations
// that fill their numbers with [Stream.Fill]. The values are copied. None, and
// values that aren't finite, are an [ErrEmpty] and an [ErrNotFinite].
func NewSample(values []float64) (Sample, error) {
	if len(values) == 0 {
		return Sample{}, refuse("sample", "", "values", 0, ErrEmpty, "at least one")
	}
	for _, v := range values {
		if v-v != 0 {
			return Sample{}, refuse("sample", "", "value", v, ErrNotFinite, "finite numbers")
		}
	}
	s := Sample{sorted: slices.Clone(values)}
	order(s.sorted)
	return s, nil
}

// Join joins the samples of several parts of one simulation. The result is
// that of the whole, whatever the order. Samples that hold the same block of
// the same seed twice are an [ErrBlocks], nothing to join an [ErrEmpty].
func Join(parts ...Sample) (Sample, error) {
	var s Sample
	todo := make([][]float64, 0, len(parts))
	for _, p := range parts {
		for _, b := range p.blocks {
			for _, o := range s.blocks {
				if b.Seed == o.Seed && b.From < o.To && o.From < b.To {
					return Sample{}, refuse("join", "", "blocks", fmt.Sprintf("%d to %d", b.From, b.To), ErrBlocks, "each block once")
				}
			}
			s.blocks = append(s.blocks, b)
		}
		todo = append(todo, p.sorted)
	}
	// Two by two, so that each value moves as often as the number of parts
	// can be halved.
	for len(todo) > 1 {
		half := todo[:0:0]
		for i := 0; i+1 < len(todo); i += 2 {
			half = append(half, merge(todo[i], todo[i+1]))
		}
		if len(todo)%2 == 1 {
			half = append(half, todo[len(todo)-1])
		}
		todo = half
	}
	if len(todo) == 0 || len(todo[0]) == 0 {
		return Sample{}, refuse("join", "", "samples", len(parts), ErrEmpty, "at least one with values")
	}
	s.sorted = todo[0]
	return s, nil
}

// Len is the number of trials.
func (s Sample) Len() int { return len(s.sorted) }

// Mean is the arithmetic mean (JCGM 101, equation 16), not-a-number for an
// empty sample. It is summed in order, so it doesn't depend on how the
// simulation was divided.
func (s Sample) Mean() float64 {
	m, _ := s.moments()
	return m
}

// StandardDeviation is the standard uncertainty that the simulation gives
// (JCGM 101, equation 17), not-a-number for fewer than two trials.
func (s Sample) StandardDeviation() float64 {
	_, squares := s.moments()
	if len(s.sorted) < 2 {
		return math.NaN()
	}
	return math.Sqrt(squares / float64(len(s.sorted)-1))
}

// moments are the mean and the sum of the squares about it. Values are taken
// from the one in the middle, so that few digits cancel.
func (s Sample) moments() (mean, squares float64) {
	n := float64(len(s.sorted))
	if n == 0 {
		return math.NaN(), 0
	}
	middle := s.sorted[len(s.sorted)/2]
	total := 0.0
	for _, v := range s.sorted {
		d := v - middle
		total += d
		squares += float64(d * d)
	}
	return middle + total/n, max(0, squares-total*total/n)
}

// Quantile is what a part p of the trials lies below: the ⌈p·M⌉-th of the M
// results in order. A p not between 0 and 1 is an [ErrProbability], an empty
// sample an [ErrEmpty].
func (s Sample) Quantile(p float64) (float64, error) {
	if err := s.check(p); err != nil {
		return 0, err
	}
	n := len(s.sorted)
	return s.sorted[min(n-1, max(0, int(math.Ceil(p*float64(n)))-1))], nil
}

// QuantileBounds are what the quantile would lie between in 95 of 100
// simulations of this length: digits in which the two differ are of this seed
// and not of the formula. Errors as for [Sample.Quantile].
func (s Sample) QuantileBounds(p float64) (lo, hi float64, err error) {
	if err := s.check(p); err != nil {
		return 0, 0, err
	}
	// The number of trials below the quantile is binomial.
	n := float64(len(s.sorted))
	off := 1.96 * math.Sqrt(n*p*(1-p))
	at := func(k float64) float64 { return s.sorted[int(min(n-1, max(0, k)))] }
	return at(math.Floor(n*p-off) - 1), at(math.Ceil(n*p + off)), nil
}

// Symmetric is the interval that covers a part p of the trials and leaves as
// many below as above (JCGM 101, 7.7.2). Errors as for [Sample.Quantile].
func (s Sample) Symmetric(p float64) (lo, hi float64, err error) {
	if err := s.check(p); err != nil {
		return 0, 0, err
	}
	n := len(s.sorted)
	q := s.covered(p)
	r := (n - q + 1) / 2
	r = max(r, 1)
	return s.sorted[r-1], s.sorted[r+q-1], nil
}

// Shortest is the shortest interval that covers a part p of the trials (JCGM
// 101, 7.7.4), the lowest where several are equally short. Errors as for
// [Sample.Quantile].
func (s Sample) Shortest(p float64) (lo, hi float64, err error) {
	if err := s.check(p); err != nil {
		return 0, 0, err
	}
	q := s.covered(p)
	from := s.sorted[:len(s.sorted)-q]
	to := s.sorted[q:]
	best := 0
	for r, v := range from {
		if to[r]-v < to[best]-from[best] {
			best = r
		}
	}
	return from[best], to[best], nil
}

// covered is how many steps from one result in order to another cover p: p·M
// where that is whole, else the whole part of p·M + ½ (JCGM 101, 7.7.1); one
// less than all at most.
func (s Sample) covered(p float64) int {
	n := len(s.sorted)
	return min(n-1, int(math.Floor(p*float64(n)+0.5)))
}

func (s Sample) check(p float64) error {
	if !(p > 0 && p < 1) {
		return refuse("sample", "", "probability", p, ErrProbability, "")
	}
	if len(s.sorted) == 0 {
		return refuse("sample", "", "results", 0, ErrEmpty, "a simulation's results")
	}
	return nil
}

// Below is the part of the trials that lies below x, or at it where at says
// so. It is 0 for an empty sample.
func (s Sample) Below(x float64, at bool) float64 {
	n := len(s.sorted)
	if n == 0 {
		return 0
	}
	k := sort.Search(n, func(i int) bool { return s.sorted[i] > x || !at && s.sorted[i] == x })
	return float64(k) / float64(n)
}
