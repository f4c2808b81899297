package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// Whatever is spread however, the values come out in order: judged by the
// standard library's sort.
func TestNewSample_orders(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 7))
	for name, draw := range map[string]func() float64{
		"uniform": rng.Float64, "normal": rng.NormFloat64, "cubed": func() float64 { x := rng.NormFloat64(); return x * x * x },
		"far tails": func() float64 { return 1 / (rng.Float64() - 0.5) }, "few values": func() float64 { return float64(rng.IntN(3)) },
		"one value": func() float64 { return 7 }, "whole range": func() float64 { return (rng.Float64() - 0.5) * math.MaxFloat64 * 2 },
		"two heaps": func() float64 { return float64(rng.IntN(2))*1e300 + rng.Float64() }, "signed zeros": func() float64 { return math.Copysign(0, rng.NormFloat64()) },
		"tiny": func() float64 { return 5e-324 * float64(rng.IntN(100)) },
	} {
		for _, n := range []int{1, 2, 23, 24, 25, 199, 200, 201, 5000, 30_000} {
			x := make([]float64, n)
			for i := range x {
				x[i] = draw()
			}
			s := must(uncertainty.NewSample(x))
			slices.Sort(x)
			for i := 0; i < n; i += 1 + n/50 {
				require.Equal(t, x[i], must(s.Quantile((float64(i)+0.5)/float64(n))), "%s, %d", name, n)
			}
		}
	}
	// What the caller has stays as it was.
	x := []float64{3, 1, 2}
	must(uncertainty.NewSample(x))
	require.Equal(t, []float64{3, 1, 2}, x)
}

// By hand, from the definitions of JCGM 101, 7.7.
func TestSample(t *testing.T) {
	s := must(uncertainty.NewSample([]float64{10, 1, 2, 3, 4, 5, 6, 7, 8, 30}))
	require.Equal(t, 10, s.Len())
	require.InDelta(t, 7.6, s.Mean(), 1e-15)
	require.InDelta(t, math.Sqrt(626.4/9), s.StandardDeviation(), 1e-13) // 1204 − 10·7.6²
	for p, want := range map[float64]float64{0.05: 1, 0.1: 1, 0.11: 2, 0.5: 5, 0.9: 10, 0.91: 30, 0.99: 30} {
		require.Equal(t, want, must(s.Quantile(p)), "%v", p)
	}
	// p·M = 5: from the r-th to the (r+5)-th, r = (10 − 5 + 1)/2 = 3.
	lo, hi, err := s.Symmetric(0.5)
	require.NoError(t, err)
	require.Equal(t, []float64{3, 8}, []float64{lo, hi})
	lo, hi, err = s.Shortest(0.5)
	require.NoError(t, err)
	require.Equal(t, []float64{1, 6}, []float64{lo, hi}, "the lowest of the shortest")
	lo, hi, _ = s.Shortest(0.9)
	require.Equal(t, []float64{1, 30}, []float64{lo, hi})
	lo, hi, _ = s.Shortest(0.01)
	require.Equal(t, lo, hi)
	lo, hi, _ = s.Symmetric(0.999)
	require.Equal(t, []float64{1, 30}, []float64{lo, hi})
	require.Equal(t, []float64{0, 0.3, 0.4, 0.9, 1}, []float64{s.Below(0, true), s.Below(4, false), s.Below(4, true), s.Below(20, true), s.Below(30, true)})

	for _, p := range []float64{0, 1, -1, math.NaN()} {
		_, err := s.Quantile(p)
		refused(t, err, uncertainty.ErrProbability)
		_, _, err = s.Shortest(p)
		refused(t, err, uncertainty.ErrProbability)
		_, _, err = s.Symmetric(p)
		refused(t, err, uncertainty.ErrProbability)
		_, _, err = s.QuantileBounds(p)
		refused(t, err, uncertainty.ErrProbability)
	}
}

func TestSample_empty(t *testing.T) {
	var s uncertainty.Sample
	require.True(t, math.IsNaN(s.Mean()) && math.IsNaN(s.StandardDeviation()))
	require.Zero(t, s.Below(0, true))
	_, err := s.Quantile(0.5)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.Join()
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.Join(s, s)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.NewSample(nil)
	refused(t, err, uncertainty.ErrEmpty)
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		_, err = uncertainty.NewSample([]float64{1, bad})
		refused(t, err, uncertainty.ErrNotFinite)
	}
	one := must(uncertainty.NewSample([]float64{4}))
	require.Equal(t, 4.0, one.Mean())
	require.True(t, math.IsNaN(one.StandardDeviation()))
	require.Equal(t, 2, must(uncertainty.Join(one, s, one)).Len())

	var q uncertainty.SampleOf[units.Length]
	require.False(t, q.Mean().InRange())
	require.False(t, q.StandardDeviation().InRange())
	require.Equal(t, "no trials", q.String())
	_, err = q.Conformance(tolerance.AtMost(mm))
	refused(t, err, uncertainty.ErrEmpty)
	_, err = q.Conformance(tolerance.Band{})
	refused(t, err, uncertainty.ErrNoLimit)
	_, err = q.Shortest(0.5)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.JoinOf(q)
	refused(t, err, uncertainty.ErrEmpty)
}

func TestSampleOf_text(t *testing.T) {
	in := []uncertainty.Estimate{must(uncertainty.Normal("x", 10*mm, 20*um))}
	s := must(uncertainty.Simulate(uncertainty.Trials(1, 100_000), in, func(x []units.Length) units.Length { return x[0] }))
	require.Regexp(t, `^10\.000 mm, standard deviation 0\.020 mm; 95 % lie in \[9\.96\d mm, 10\.0\d\d mm\]; 100000 trials$`, s.String())
	bounds := must(s.QuantileBounds(0.975))
	width, _ := bounds.Width()
	require.Less(t, width, um)
	require.True(t, bounds.Contains(must(s.Quantile(0.975))))
	exact := must(uncertainty.Simulate(uncertainty.Trials(1, 1), in, func([]units.Length) units.Length { return mm }))
	require.Equal(t, "1.000000000 mm, standard deviation 0.000000000 mm; 95 % lie in 1.000000000 mm; 10000 trials", exact.String())
	require.Equal(t, 1.0, must(exact.Conformance(tolerance.AtMost(mm))))
	require.Equal(t, 0.0, must(exact.Conformance(tolerance.LessThan(mm))))
	require.Equal(t, 0.0, must(exact.Conformance(tolerance.MoreThan(mm))))
}

// The layers of the ziggurat are those of a high-precision calculation.
func TestStream_layers(t *testing.T) {
	for c := range vectors.Load(t, "reference/uncertainty_ziggurat.txt").All(t) {
		require.Equal(t, c.Float("edge"), uncertainty.Edges[c.Int("layer")], c.Where())
	}
}

// The mass in bins against the distribution's: Pearson's χ² at a level that
// one stream in a million would miss.
func TestStream_fits(t *testing.T) {
	const n, bins = 1_000_000, 200
	cdf := map[uncertainty.Shape]func(z float64) float64{
		uncertainty.NormalShape:      func(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) },
		uncertainty.RectangularShape: func(z float64) float64 { return 0.5 + z/(2*math.Sqrt(3)) },
		uncertainty.TriangularShape: func(z float64) float64 {
			a := math.Sqrt(6)
			if z > 0 {
				return 1 - (1-z/a)*(1-z/a)/2
			}
			return (1 + z/a) * (1 + z/a) / 2
		},
		uncertainty.UShape: func(z float64) float64 { return 1 - math.Acos(z/math.Sqrt2)/math.Pi },
	}
	for shape, f := range cdf {
		s := uncertainty.Blocks{Seed: 1}.Stream(3)
		x := make([]float64, n)
		s.Fill(x, shape, uncertainty.Infinite())
		var count [bins]float64
		for _, z := range x {
			count[min(bins-1, int(f(z)*bins))]++
		}
		chi := 0.0
		for _, c := range count {
			chi += (c - n/bins) * (c - n/bins) / (n / bins)
		}
		// 199 degrees of freedom: mean 199, standard deviation 20.
		require.True(t, chi > 110 && chi < 305, "%v: %v", shape, chi)
	}
	// The normal tail, that few draws reach: the lowest layer's begins at 3.65.
	s := uncertainty.Blocks{Seed: 2}.Stream(0)
	x := make([]float64, 100_000)
	limits := []float64{2, 3, 3.7, 4, 4.5}
	beyond, positive := make([]float64, len(limits)), make([]float64, len(limits))
	const draws = 20_000_000
	for range draws / len(x) {
		s.Fill(x, uncertainty.NormalShape, uncertainty.Infinite())
		for _, v := range x {
			for i := 0; i < len(limits) && math.Abs(v) > limits[i]; i++ {
				beyond[i]++
				if v > 0 {
					positive[i]++
				}
			}
		}
	}
	for i, z := range limits {
		want := math.Erfc(z/math.Sqrt2) * draws
		require.InDelta(t, want, beyond[i], 4*math.Sqrt(want), "beyond %v", z)
		require.InDelta(t, want/2, positive[i], 4*math.Sqrt(want/2), "above %v", z)
	}
}

func TestStream(t *testing.T) {
	// The zero stream is block 0 of seed 0.
	var zero uncertainty.Stream
	a, b := make([]float64, 100), make([]float64, 100)
	zero.Fill(a, uncertainty.NormalShape, uncertainty.Infinite())
	uncertainty.Blocks{}.Stream(0).Fill(b, uncertainty.NormalShape, 0)
	require.Equal(t, a, b, "degrees of freedom of none are infinite")
	// Neighbouring blocks and seeds have nothing in common.
	seen := map[float64]bool{}
	for seed := range uint64(20) {
		for block := range 20 {
			uncertainty.Blocks{Seed: seed}.Stream(block).Fill(a, uncertainty.RectangularShape, uncertainty.Infinite())
			for _, v := range a {
				require.False(t, seen[v])
				seen[v] = true
			}
		}
	}
	require.Zero(t, testing.AllocsPerRun(10, func() { zero.Fill(a, uncertainty.NormalShape, 3) }))
}
