package uncertainty_test

import (
	"math"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

var quantiles = map[string]float64{"q5": 0.005, "q25": 0.025, "q50": 0.05, "q250": 0.25, "q500": 0.5, "q750": 0.75, "q950": 0.95, "q975": 0.975, "q995": 0.995}

// Quantiles of shapes and their sums against a general-purpose library: each
// within what the simulation says that other seeds would give.
func TestSimulateReal_reference(t *testing.T) {
	one := func(shape uncertainty.Shape, f ...uncertainty.Freedom) uncertainty.Dual {
		// width for a standard uncertainty of 1
		return must(uncertainty.NewDual("x", 0, "", shape, 1/shape.StandardUncertainty(1), f...))
	}
	normal, rectangular := uncertainty.NormalShape, uncertainty.RectangularShape
	add := func(x []tolerance.Float) (y tolerance.Float) {
		for _, v := range x {
			y = y.Add(v)
		}
		return y
	}
	for _, c := range []struct {
		id string
		in []uncertainty.Dual
		f  func(x []tolerance.Float) tolerance.Float
	}{
		{"normal", []uncertainty.Dual{one(normal)}, add},
		{"rectangular", []uncertainty.Dual{one(rectangular)}, add},
		{"triangular", []uncertainty.Dual{one(uncertainty.TriangularShape)}, add},
		{"u", []uncertainty.Dual{one(uncertainty.UShape)}, add},
		{"t4", []uncertainty.Dual{one(normal, 4)}, add},
		{"t2.5", []uncertainty.Dual{one(normal, 2.5)}, add},
		{"4 rectangular", []uncertainty.Dual{one(rectangular), one(rectangular), one(rectangular), one(rectangular)}, add},
		{"5 normal", []uncertainty.Dual{one(normal), one(normal), one(normal), one(normal), one(normal)}, add},
		{"normal + rectangular", []uncertainty.Dual{one(normal), one(rectangular)}, add},
		{"u + rectangular", []uncertainty.Dual{one(uncertainty.UShape), one(rectangular)}, add},
		{"|normal + 0.5|", []uncertainty.Dual{one(normal)}, func(x []tolerance.Float) tolerance.Float { return max(x[0]+0.5, -x[0]-0.5) }},
		{"greater of 2 normal", []uncertainty.Dual{one(normal), one(normal)}, func(x []tolerance.Float) tolerance.Float { return max(x[0], x[1]) }},
	} {
		t.Run(c.id, func(t *testing.T) {
			s := must(uncertainty.SimulateReal(uncertainty.Trials(20_081_108, 200_000), c.in, c.f))
			require.Equal(t, 200_000, s.Len())
			found := false
			for v := range vectors.Load(t, "reference/uncertainty_sums.txt").All(t) {
				for name, p := range quantiles {
					if v.ID != c.id {
						v.Ignore(name)
						continue
					}
					found = true
					lo, hi, err := s.QuantileBounds(p)
					require.NoError(t, err)
					// 108 bounds of 95 % can't all hold: twice as wide, they can.
					want, slack := v.Float(name), hi-lo
					require.True(t, want >= lo-slack && want <= hi+slack, "%v: %v not in %v to %v", name, want, lo, hi)
					got := must(s.Quantile(p))
					require.True(t, got >= lo && got <= hi)
				}
			}
			require.True(t, found)
		})
	}
}

// Exact quantities: a chain comes out as its root-sum-square, and a magnitude
// near zero as the folded normal distribution: mean √(2/π)·u, where first
// order says 0.
func TestSimulate(t *testing.T) {
	in := links(t, uncertainty.Normal[units.Length])
	s := must(uncertainty.Simulate(uncertainty.Trials(1, 200_000), in, chain5))
	relative(t, 20*math.Sqrt(5), s.StandardDeviation().Float(units.InMicrometres), 0.01)
	require.InDelta(t, 1_200+225_500-30_000-150_000-45_000, s.Mean().Float(units.InMicrometres), 0.5)

	a := must(uncertainty.Normal("a", 86*mm, 3*um))
	b := must(uncertainty.Normal("b", 86*mm, 4*um))
	require.True(t, outOfRound(a, b).NearKink())
	fold := must(uncertainty.Simulate(uncertainty.Trials(2, 200_000), []uncertainty.Estimate{a, b}, func(x []units.Length) units.Length { return outOfRound(x[0], x[1]) }))
	relative(t, 5*math.Sqrt(2/math.Pi), fold.Mean().Float(units.InMicrometres), 0.01)
	relative(t, 5*math.Sqrt(1-2/math.Pi), fold.StandardDeviation().Float(units.InMicrometres), 0.01)
	// All of the folded distribution's shortest interval starts at zero.
	i := must(fold.Shortest(0.95))
	lo, _ := i.Lower()
	hi, _ := i.Upper()
	require.Less(t, lo, 100*nm)
	relative(t, 5*1.959964, hi.Float(units.InMicrometres), 0.02)
	p := must(fold.Conformance(tolerance.AtMost(5 * um)))
	require.InDelta(t, 0.682689, p, 0.005)
	require.InDelta(t, 1-p, must(fold.Conformance(tolerance.MoreThan(5*um))), 1e-12)
	require.InDelta(t, 1, must(fold.Conformance(tolerance.AtLeast(units.Length(0)))), 0)
	require.InDelta(t, p, must(fold.Conformance(tolerance.MustBetween(-um, 5*um))), 1e-12)

	// What inputs share they share in every trial.
	ring := must(uncertainty.Rectangular("ring", 0, mm))
	same := must(uncertainty.Simulate(uncertainty.Trials(3, 1), []uncertainty.Estimate{a.Add(ring), a.Sub(ring)}, func(x []units.Length) units.Length { return x[0].Add(x[1]) }))
	require.LessOrEqual(t, same.StandardDeviation(), 7*um) // 2·3 µm, of the ring nothing
	require.Equal(t, uncertainty.BlockTrials, same.Len())
	// A draw is rounded to the nearest quantum: of ±1 pm a quarter goes to −1,
	// a half to 0, a quarter to +1.
	pico := must(uncertainty.Simulate(uncertainty.Trials(5, 100_000), []uncertainty.Estimate{must(uncertainty.Rectangular("x", 0, 1*pm))}, func(x []units.Length) units.Length { return x[0] }))
	require.InDelta(t, 0.25, must(pico.Conformance(tolerance.LessThan(units.Length(0)))), 0.01)
	require.InDelta(t, 0.25, must(pico.Conformance(tolerance.MoreThan(units.Length(0)))), 0.01)
	// Temperatures too.
	warm := must(uncertainty.Simulate(uncertainty.Trials(4, 1), []uncertainty.EstimateOf[units.Temperature]{celsius(20, 1)}, func(x []units.Temperature) units.Temperature { return x[0] }))
	require.InDelta(t, 20, warm.Mean().Float(units.InCelsius), 0.05)
}

// Blocks run in any order, in any parts, side by side: the same to the last
// digit.
func TestSimulate_blocks(t *testing.T) {
	in := links(t, uncertainty.Normal[units.Length], uncertainty.Rectangular[units.Length], uncertainty.UShaped[units.Length], uncertainty.Triangular[units.Length])
	whole := uncertainty.Blocks{Seed: 99, From: 0, To: 13}
	want := must(uncertainty.Simulate(whole, in, chain5))
	for parts := 1; parts <= 14; parts += 3 {
		split := whole.Split(parts)
		require.Len(t, split, min(parts, 13))
		samples := make([]uncertainty.SampleOf[units.Length], len(split))
		var group sync.WaitGroup
		for i, b := range split {
			group.Go(func() { samples[len(split)-1-i] = must(uncertainty.Simulate(b, in, chain5)) })
		}
		group.Wait()
		got := must(uncertainty.JoinOf(samples...))
		require.Equal(t, want.Len(), got.Len())
		require.Equal(t, want.String(), got.String())
		for _, p := range []float64{1e-5, 0.025, 0.5, 0.999} {
			require.Equal(t, must(want.Quantile(p)), must(got.Quantile(p)))
			require.Equal(t, must(want.Symmetric(p)), must(got.Symmetric(p)))
			require.Equal(t, must(want.Shortest(p)), must(got.Shortest(p)))
		}
	}
	// Another seed gives other numbers, another block too.
	other := must(uncertainty.Simulate(uncertainty.Blocks{Seed: 100, To: 1}, in, chain5))
	first := must(uncertainty.Simulate(uncertainty.Blocks{Seed: 99, To: 1}, in, chain5))
	second := must(uncertainty.Simulate(uncertainty.Blocks{Seed: 99, From: 1, To: 2}, in, chain5))
	require.NotEqual(t, first.Mean(), other.Mean())
	require.NotEqual(t, first.Mean(), second.Mean())
	// A block twice would count twice.
	_, err := uncertainty.JoinOf(first, second, first)
	refused(t, err, uncertainty.ErrBlocks)
	require.Equal(t, 20_000, must(uncertainty.JoinOf(first, other)).Len())
}

func TestBlocks(t *testing.T) {
	for n, want := range map[int]int{1: 10_000, 10_000: 10_000, 10_001: 20_000, 1_000_000: 1_000_000, 0: 0, -5: 0} {
		require.Equal(t, want, uncertainty.Trials(1, n).Len(), "%d", n)
	}
	for _, b := range []uncertainty.Blocks{{From: 3, To: 1}, {From: math.MinInt, To: math.MaxInt}, {To: math.MaxInt}} {
		require.Zero(t, b.Len())
	}
	require.Nil(t, uncertainty.Blocks{}.Split(3))
	require.Nil(t, uncertainty.Trials(1, 50_000).Split(0))
	next := 2
	for _, b := range (uncertainty.Blocks{Seed: 5, From: 2, To: 25}).Split(7) {
		require.Equal(t, uint64(5), b.Seed)
		require.Equal(t, next, b.From)
		require.Contains(t, []int{3, 4}, b.To-b.From)
		next = b.To
	}
	require.Equal(t, 25, next)
	in := links(t, uncertainty.Normal[units.Length])
	for _, b := range []uncertainty.Blocks{{}, {From: 3, To: 3}, {From: 3, To: 2}, {From: -1, To: 2}, {To: 10_001}, uncertainty.Trials(1, math.MaxInt)} {
		_, err := uncertainty.Simulate(b, in, chain5)
		refused(t, err, uncertainty.ErrBlocks)
	}
}

func TestSimulate_refuses(t *testing.T) {
	b := uncertainty.Trials(1, 1)
	good := links(t, uncertainty.Normal[units.Length])
	_, err := uncertainty.Simulate(b, nil, chain5)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.Simulate(b, good, nil)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.Simulate(b, []uncertainty.Estimate{good[0].Scale(1, 0)}, chain5)
	refused(t, err, uncertainty.ErrRange)
	_, err = uncertainty.SimulateReal(b, nil, func([]tolerance.Float) tolerance.Float { return 0 })
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.SimulateReal(b, []uncertainty.Dual{number(1, 1)}, nil)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.SimulateReal(b, []uncertainty.Dual{uncertainty.ExactlyReal(math.NaN())}, func([]tolerance.Float) tolerance.Float { return 0 })
	refused(t, err, uncertainty.ErrRange)
	// A formula that fails in some trials fails, and says in which.
	trials := 0
	_, err = uncertainty.Simulate(uncertainty.Blocks{From: 2, To: 3}, good, func(x []units.Length) units.Length {
		if trials++; trials == 4_322 {
			return units.OutOfRange[units.Length]()
		}
		return 0
	})
	refused(t, err, uncertainty.ErrRange)
	require.ErrorContains(t, err, "trial 24321")
	_, err = uncertainty.SimulateReal(b, []uncertainty.Dual{number(1, 1)}, func(x []tolerance.Float) tolerance.Float { return x[0].Sqrt() })
	refused(t, err, uncertainty.ErrRange)
	// An input so uncertain that it leaves its range.
	wild := must(uncertainty.Normal("wild", 0, units.Length(1<<61)))
	_, err = uncertainty.Simulate(b, []uncertainty.Estimate{wild}, func(x []units.Length) units.Length { return x[0] })
	refused(t, err, uncertainty.ErrRange)
}

// A million trials need the memory of their results a few times over, in few
// pieces, whatever the formula.
func TestSimulate_allocations(t *testing.T) {
	in := links(t, uncertainty.Normal[units.Length])
	require.Less(t, testing.AllocsPerRun(3, func() {
		_ = must(uncertainty.Simulate(uncertainty.Trials(1, 20_000), in, chain5))
	}), 60.0)
}
