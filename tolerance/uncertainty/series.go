package uncertainty

import (
	"math"
	"math/big"
	"math/bits"

	"github.com/tenthou/tenthou/units"
)

// A SeriesOf is repeated readings of one thing, in the order in which they
// were taken.
type SeriesOf[Q units.Quantity] struct {
	readings []Q
	sums     sums
}

// A Series is repeated readings of a length.
type Series = SeriesOf[units.Length]

// NewSeries holds readings, which are copied. Fewer than two are an
// [ErrTooFew]; a reading out of range is an [ErrRange].
//
// Sums are exact: whole numbers of quanta in as many bits as they take.
func NewSeries[Q units.Quantity](readings ...Q) (SeriesOf[Q], error) {
	const op = "repeated readings"
	if len(readings) < 2 {
		return SeriesOf[Q]{}, refuse(op, "", "readings", len(readings), ErrTooFew, "at least 2")
	}
	s := SeriesOf[Q]{readings: append([]Q(nil), readings...)}
	for i, q := range readings {
		if !units.InRange(q) {
			return SeriesOf[Q]{}, refuse(op, "", "reading", i+1, ErrRange, "a value in range")
		}
		s.sums.add(int64(q) - int64(readings[0]))
	}
	return s, nil
}

// Len is the number of readings.
func (s SeriesOf[Q]) Len() int { return len(s.readings) }

// At is the i-th reading, from 0. Outside the series it is out of range.
func (s SeriesOf[Q]) At(i int) Q {
	if i < 0 || i >= len(s.readings) {
		return units.OutOfRange[Q]()
	}
	return s.readings[i]
}

// Mean is the arithmetic mean, rounded once to the nearest quantum, ties to
// even; out of range for the zero series.
func (s SeriesOf[Q]) Mean() Q {
	if len(s.readings) == 0 {
		return units.OutOfRange[Q]()
	}
	m, _ := units.Mean(s.readings...) // they were checked
	return m
}

// MeanFloat is the mean in unit u, from the exact sum: correctly rounded but
// for the division, and not-a-number for the zero series.
func (s SeriesOf[Q]) MeanFloat(u units.Unit[Q]) float64 {
	if len(s.readings) == 0 {
		return math.NaN()
	}
	zero, _ := units.Nearest(0, u)
	// (n·(first − zero) + Σd)/(n·quanta in the unit)
	n := big.NewInt(int64(len(s.readings)))
	top := new(big.Int).Sub(big.NewInt(int64(s.readings[0])), big.NewInt(int64(zero)))
	top.Mul(top, n).Add(top, s.sums.total())
	bottom := new(big.Int).Mul(n, big.NewInt(int64(quantaIn(u))))
	m, _ := new(big.Rat).SetFrac(top, bottom).Float64()
	return m
}

// StandardDeviation is the experimental standard deviation of the readings
// (GUM 4.2.2), with n − 1, in unit u: to 15 digits, however close together
// the readings lie and however far from zero. Not-a-number for the zero
// series.
func (s SeriesOf[Q]) StandardDeviation(u units.Unit[Q]) float64 {
	return s.deviation() / quantaIn(u)
}

// deviation is the standard deviation in quanta.
func (s *SeriesOf[Q]) deviation() float64 {
	n := float64(len(s.readings))
	if n == 0 {
		return math.NaN()
	}
	return math.Sqrt(s.sums.squares(len(s.readings)) / (n * (n - 1)))
}

// StandardError is the standard deviation of the mean, s/√n (GUM 4.2.3), in
// unit u.
func (s SeriesOf[Q]) StandardError(u units.Unit[Q]) float64 {
	return s.StandardDeviation(u) / math.Sqrt(float64(len(s.readings)))
}

// Autocorrelation is the lag-1 autocorrelation coefficient: how much each
// reading takes after the one before it, −1 to 1. Far from 0, the readings
// drift or are not independent, and their standard error is too good
// (GUM 4.2.7): beyond ±2/√n is worth a look. Where all readings are the same
// it is 0.
func (s SeriesOf[Q]) Autocorrelation() float64 {
	n := len(s.readings)
	if n == 0 {
		return math.NaN()
	}
	below := s.sums.exactSquares(n)
	if below.Sign() == 0 {
		return 0
	}
	// n²·Σ(dᵢ − D)(dᵢ₊₁ − D) with D = S/n is Σ(n·dᵢ − S)(n·dᵢ₊₁ − S);
	// n²·Σ(dᵢ − D)² is n·(n·Σd² − S²).
	total, size := s.sums.total(), big.NewInt(int64(n))
	above, last, here := new(big.Int), new(big.Int), new(big.Int)
	for i, q := range s.readings {
		here.Mul(size, big.NewInt(int64(q)-int64(s.readings[0]))).Sub(here, total)
		if i > 0 {
			above.Add(above, last.Mul(last, here))
		}
		last, here = here, last
	}
	r, _ := new(big.Rat).SetFrac(above, below.Mul(below, size)).Float64()
	return r
}

// Estimate is the mean with the standard error as its uncertainty and n − 1
// degrees of freedom (GUM 4.2.3): a type A evaluation.
func (s SeriesOf[Q]) Estimate(name string) (EstimateOf[Q], error) {
	n := len(s.readings)
	if n < 2 {
		return EstimateOf[Q]{}, refuse("repeatability", name, "readings", n, ErrTooFew, "at least 2")
	}
	return s.pooled("repeatability", name, s.deviation(), Freedom(n-1))
}

func (s *SeriesOf[Q]) pooled(op, name string, deviation float64, freedom Freedom) (EstimateOf[Q], error) {
	first := units.Unit[Q](0)
	src, err := newSource(op, name, first.Symbol(), quantaIn(first), NormalShape, deviation/math.Sqrt(float64(len(s.readings))), []Freedom{freedom})
	if err != nil {
		return EstimateOf[Q]{}, err
	}
	return EstimateOf[Q]{value: s.Mean(), terms: oneTerm(src, 1)}, nil
}

// Repeatability is the mean of repeated readings with what their scatter says
// of it: the standard deviation over √n, with n − 1 degrees of freedom
// (GUM 4.2.3). The other sources of doubt, the instrument's among them, are
// not in it. Fewer than two readings are an [ErrTooFew], a reading out of
// range an [ErrRange].
func Repeatability[Q units.Quantity](name string, readings ...Q) (EstimateOf[Q], error) {
	s, err := NewSeries(readings...)
	if err != nil {
		return EstimateOf[Q]{}, err
	}
	return s.Estimate(name)
}

// PooledRepeatability is the mean of a few readings, one or more, with the
// standard deviation of a single reading that many earlier ones gave, and its
// degrees of freedom (GUM 4.2.4). Errors as for [Normal].
func PooledRepeatability[Q units.Quantity](name string, deviation Q, freedom Freedom, readings ...Q) (EstimateOf[Q], error) {
	const op = "pooled repeatability"
	if len(readings) == 0 {
		return EstimateOf[Q]{}, refuse(op, name, "readings", 0, ErrTooFew, "at least 1")
	}
	mean, err := units.Mean(readings...)
	if err != nil {
		return EstimateOf[Q]{}, refuse(op, name, "reading", "", ErrRange, "values in range")
	}
	return spread(op, name, mean, deviation, math.Sqrt(float64(len(readings))), NormalShape, []Freedom{freedom})
}

// sums are Σd in 128 bits and Σd² in 192, d being whole numbers below 2⁶².
type sums struct {
	hi, lo  uint64    // Σd, two's complement
	squared [3]uint64 // Σd², least significant first
}

func (s *sums) add(d int64) {
	var c uint64
	s.lo, c = bits.Add64(s.lo, uint64(d), 0)
	s.hi, _ = bits.Add64(s.hi, uint64(d>>63), c)
	m := uint64(max(d, -d))
	hi, lo := bits.Mul64(m, m)
	s.squared[0], c = bits.Add64(s.squared[0], lo, 0)
	s.squared[1], c = bits.Add64(s.squared[1], hi, c)
	s.squared[2] += c
}

func (s *sums) total() *big.Int {
	t := new(big.Int).SetInt64(int64(s.hi))
	return t.Add(t.Lsh(t, 64), new(big.Int).SetUint64(s.lo))
}

// exactSquares is n·Σd² − (Σd)², n times the sum of the squares about the mean.
func (s *sums) exactSquares(n int) *big.Int {
	v := new(big.Int)
	for i := 2; i >= 0; i-- {
		v.Lsh(v, 64).Add(v, new(big.Int).SetUint64(s.squared[i]))
	}
	t := s.total()
	return v.Mul(v, big.NewInt(int64(n))).Sub(v, t.Mul(t, t))
}

// squares is exactSquares to the nearest float64, without allocating where it
// fits in 128 bits, as that of readings of one thing does.
func (s *sums) squares(n int) float64 {
	m := uint64(n)
	top, low := bits.Mul64(s.squared[0], m)
	over, mid := bits.Mul64(s.squared[1], m)
	mid, carry := bits.Add64(mid, top, 0)
	t := s.lo
	if int64(s.hi) < 0 {
		t = -t
	}
	if s.squared[2] != 0 || over != 0 || carry != 0 || s.hi != uint64(int64(s.lo)>>63) {
		v, _ := new(big.Float).SetInt(s.exactSquares(n)).Float64()
		return v
	}
	hi, lo := bits.Mul64(t, t)
	low, borrow := bits.Sub64(low, lo, 0)
	mid, _ = bits.Sub64(mid, hi, borrow)
	return math.Ldexp(float64(mid), 64) + float64(low)
}
