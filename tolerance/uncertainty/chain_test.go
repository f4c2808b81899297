package uncertainty_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// chainOf reads "10.0 10.1 1 n 3.0 / 4.0 4.06 -1.5 r", in millimetres.
func chainOf(t testing.TB, text string) (c tolerance.Chain) {
	t.Helper()
	for link := range strings.SplitSeq(text, " / ") {
		f := strings.Fields(link)
		l := tolerance.Link{
			Band:        tolerance.MustParseBand(f[0] + "–" + f[1] + " mm"),
			Sensitivity: must(tolerance.ParseRatio(f[2])),
			Scatter: map[string]tolerance.Scatter{
				"n": tolerance.NormalScatter, "r": tolerance.RectangularScatter, "t": tolerance.TriangularScatter, "u": tolerance.UShapedScatter,
			}[f[3]],
		}
		if len(f) > 4 {
			l.Sigmas = must(strconv.ParseFloat(f[4], 64))
		}
		c.Links = append(c.Links, l)
	}
	return c
}

const fiveLinks = "210 210.1 1 n 3 / 40 40.02 -1 n 3 / 140 140.06 -1 r / 30 30.04 -1 t / 1 1.02 1 u"

// Mean and standard deviation are the root-sum-square's, within what the
// trials scatter, and as many lie in the worst case as with numpy's numbers.
func TestSimulateChain_reference(t *testing.T) {
	vectors.Load(t, "reference/chain_montecarlo.txt").Each(t, func(t *testing.T, v vectors.Case) {
		v.Ignore("mean", "deviation") // which the root-sum-square is tested with
		c := chainOf(t, v.Text("links"))
		s, err := uncertainty.SimulateChain(uncertainty.Trials(7, 400_000), c)
		require.NoError(t, err)
		n := float64(s.Len())
		root, err := c.RootSumSquare(1)
		require.NoError(t, err)
		sd := float64(root.Each)
		require.InDelta(t, float64(root.Centre), float64(s.Mean()), 4*sd/math.Sqrt(n))
		require.InDelta(t, sd, float64(s.StandardDeviation()), 4*sd/math.Sqrt(n), "a kurtosis of 3 or less")

		worst, err := c.WorstCase()
		require.NoError(t, err)
		within, err := s.Conformance(tolerance.BandFrom(worst))
		require.NoError(t, err)
		p, off, ok := strings.Cut(v.Text("within_worst"), " ± ")
		require.True(t, ok)
		want, slack := must(strconv.ParseFloat(p, 64)), must(strconv.ParseFloat(off, 64))
		require.InDelta(t, want, within, slack+4*math.Sqrt(max(want*(1-want), 1/n)/n))
	})
}

func TestSimulateChain_published(t *testing.T) {
	vectors.Load(t, "published/chain_jcgm101.txt").Each(t, func(t *testing.T, v vectors.Case) {
		l := tolerance.Link{Sensitivity: tolerance.Whole(1)}
		require.NoError(t, l.Scatter.UnmarshalText([]byte(v.Text("scatter"))))
		if l.Scatter == tolerance.NormalScatter {
			l.Band, l.Sigmas = tolerance.MustBetween(-3*mm, 3*mm), 3
		} else {
			l.Band = tolerance.MustBetween(-1_732_050_808*pm, 1_732_050_808*pm)
		}
		s, err := uncertainty.SimulateChain(uncertainty.Trials(11, 2_000_000), tolerance.Chain{Links: []tolerance.Link{l, l, l, l}})
		require.NoError(t, err)
		i, err := s.Shortest(0.95)
		require.NoError(t, err)
		w, _ := i.Width()
		v.Near("each_way", w.Float(units.InMillimetres)/2)
	})
}

// Parts run apart and joined are the whole, to the last digit; another seed is
// another sample.
func TestSimulateChain_blocks(t *testing.T) {
	c := chainOf(t, fiveLinks)
	all := uncertainty.Trials(3, 70_000)
	whole, err := uncertainty.SimulateChain(all, c)
	require.NoError(t, err)
	var parts []uncertainty.SampleOf[units.Length]
	for _, b := range all.Split(3) {
		parts = append(parts, must(uncertainty.SimulateChain(b, c)))
	}
	joined, err := uncertainty.JoinOf(parts[2], parts[0], parts[1])
	require.NoError(t, err)
	require.Equal(t, whole.Len(), joined.Len())
	for _, p := range []float64{0.0001, 0.025, 0.5, 0.95, 0.9999} {
		require.Equal(t, must(whole.Quantile(p)), must(joined.Quantile(p)))
		require.Equal(t, must(whole.Shortest(p)), must(joined.Shortest(p)))
	}
	require.Equal(t, whole.Mean(), joined.Mean())
	other := must(uncertainty.SimulateChain(uncertainty.Trials(4, 70_000), c))
	require.NotEqual(t, whole.Mean(), other.Mean())
}

// Scatters with bounds never leave the worst case, and reach far into it.
func TestSimulateChain_bounded(t *testing.T) {
	c := chainOf(t, "20 20.3 1 t / 7 7.2 -1.5 u / 3 3.1 2 r")
	s := must(uncertainty.SimulateChain(uncertainty.Trials(5, 200_000), c))
	worst := must(c.WorstCase())
	all, err := s.Conformance(tolerance.BandFrom(worst))
	require.NoError(t, err)
	require.Equal(t, 1.0, all)
	shortest := must(s.Shortest(0.9973))
	require.True(t, shortest.Within(worst))
	w, _ := shortest.Width()
	most, _ := worst.Width()
	require.Greater(t, 10*w, 7*most)
	root := must(c.RootSumSquare(3))
	require.True(t, root.Beyond, "three standard deviations of a U-shape reach past its bounds")
}

// Three rectangular lots of ±50, ±40 and ±30 µm: beyond ±80 µm lies twice the
// corner of a box 100 × 80 × 60 that is cut off at 40 from it, 2·40³/6 of 480 000.
func TestSimulateChain_corner(t *testing.T) {
	c := chainOf(t, "0 0.1 1 r / 0 0.08 -1 r / 0 0.06 1 r")
	s := must(uncertainty.SimulateChain(uncertainty.Trials(6, 1_000_000), c))
	got, err := s.Conformance(tolerance.MustParseBand("-0.04–0.12 mm"))
	require.NoError(t, err)
	const want = 1 - 2*40.0*40*40/6/480_000
	require.InDelta(t, want, got, 4*math.Sqrt(want*(1-want)/1e6))
}

// The chain's formula read with estimates propagates to what the
// root-sum-square adds up: two ways to one standard deviation.
func TestClosingSize_estimates(t *testing.T) {
	c := chainOf(t, "210 210.1 1 n 2 / 40 40.02 -1/2 r / 30 30.04 -2 t / 1 1.02 1 u")
	var sizes []uncertainty.Estimate
	for i, of := range []func(string, units.Length, units.Length, ...uncertainty.Freedom) (uncertainty.Estimate, error){
		nil, uncertainty.Rectangular[units.Length], uncertainty.Triangular[units.Length], uncertainty.UShaped[units.Length],
	} {
		band := c.Links[i].Band.Interval()
		middle, _ := band.Middle()
		width, _ := band.Width()
		e, err := uncertainty.Estimate{}, error(nil)
		if of == nil {
			e, err = uncertainty.Normal("link", middle, width/4)
		} else {
			e, err = of("link", middle, width/2)
		}
		require.NoError(t, err)
		sizes = append(sizes, e)
	}
	closing, err := tolerance.ClosingSize(c, sizes...)
	require.NoError(t, err)
	root := must(c.RootSumSquare(1))
	require.Equal(t, root.Centre, closing.Value())
	require.InDelta(t, float64(root.Each), float64(closing.StandardUncertainty()), 1)
}

func TestSimulateChain_refuses(t *testing.T) {
	good := chainOf(t, fiveLinks)
	some := uncertainty.Trials(1, 1)
	_, err := uncertainty.SimulateChain(uncertainty.Blocks{From: 2, To: 1}, good)
	require.ErrorIs(t, err, uncertainty.ErrBlocks)
	_, err = uncertainty.SimulateChain(uncertainty.Blocks{}, good)
	require.ErrorIs(t, err, uncertainty.ErrBlocks)
	_, err = uncertainty.SimulateChain(some, tolerance.Chain{})
	require.ErrorIs(t, err, tolerance.ErrLinks)
	with := func(change func(*tolerance.Link)) tolerance.Chain {
		c := tolerance.Chain{Links: append([]tolerance.Link(nil), good.Links...)}
		change(&c.Links[2])
		return c
	}
	_, err = uncertainty.SimulateChain(some, with(func(l *tolerance.Link) { l.Scatter = tolerance.ScatterUnstated }))
	require.ErrorIs(t, err, tolerance.ErrScatter)
	_, err = uncertainty.SimulateChain(some, with(func(l *tolerance.Link) { l.Band = tolerance.MustParseBand("max 1 mm") }))
	require.ErrorIs(t, err, tolerance.ErrNoLimit)
	var e *tolerance.ChainError
	require.ErrorAs(t, err, &e)
	require.Equal(t, 2, e.Link)
}

func BenchmarkSimulateChain(b *testing.B) {
	c := chainOf(b, fiveLinks)
	normal := chainOf(b, "210 210.1 1 n 3 / 40 40.02 -1 n 3 / 140 140.06 -1 n 3 / 30 30.04 -1 n 3 / 1 1.02 1 n 3")
	million := uncertainty.Trials(1, 1_000_000)
	run := func(name string, blocks uncertainty.Blocks, c tolerance.Chain) {
		b.Run("lib=uncertainty/op="+name, func(b *testing.B) {
			for b.Loop() {
				s, err := uncertainty.SimulateChain(blocks, c)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := s.Shortest(0.95); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	run("chain5normal1e6", million, normal)
	run("chain5mixed1e6", million, c)
	run("chain5normal5e5", million.Split(2)[0], normal)
}
