package tolerance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

func TestChain_allocatesNothing(t *testing.T) {
	c := chainOf(t, "210 210.1 1 n 3 / 40 40.02 -1 n 3 / 140 140.06 -1 r / 30 30.04 -1 t", units.InMillimetres)
	sizes := []units.Length{210 * units.Millimetre, 40 * units.Millimetre, 140 * units.Millimetre, 30 * units.Millimetre}
	require.Zero(t, testing.AllocsPerRun(100, func() {
		_, _ = c.WorstCase()
		_, _ = c.RootSumSquare(3)
		_, _ = ClosingSize(c, sizes...)
	}))
}

// Whatever the chain: answers or typed errors, and the worst case holds what
// the limits close to.
func FuzzChain(f *testing.F) {
	f.Add(int64(1), int64(9), int64(-3), int64(2), int64(-5), int64(70), int64(7), int64(5), uint8(1), 3.0, 3.0)
	f.Add(int64(-1<<61), int64(1<<61), int64(math.MaxInt64), int64(math.MaxInt64), int64(-1<<61), int64(1<<60), int64(-math.MaxInt64), int64(3), uint8(2), 0.001, 1000.0)
	f.Fuzz(func(t *testing.T, a, b, num, den, a2, b2, num2, den2 int64, scatter uint8, sigmas, k float64) {
		band := func(a, b int64) Band {
			x, err := Between(units.Length(min(a, b)), units.Length(max(a, b)))
			if err != nil {
				x = MustParseBand("1–2 mm")
			}
			return x
		}
		c := Chain{Links: []Link{
			{Band: band(a, b), Sensitivity: Ratio{num, den}, Scatter: Scatter(scatter), Sigmas: sigmas},
			{Band: band(a2, b2), Sensitivity: Ratio{num2, den2}, Scatter: RectangularScatter},
		}}
		worst, err := c.WorstCase()
		if err != nil {
			var e *ChainError
			require.ErrorAs(t, err, &e)
			return
		}
		var ends [2][]Bracket
		for i := range c.Links {
			l := c.Links[i].Band.limits
			ends[0], ends[1] = append(ends[0], Exactly(l.lo)), append(ends[1], Exactly(l.hi))
		}
		for _, e := range ends {
			at, err := ClosingSize(c, e...)
			require.NoError(t, err)
			// The formula rounds for each link, the worst case once.
			if at.InRange() {
				lo, hi := worst.lo-2*units.Picometre, worst.hi+2*units.Picometre
				require.True(t, at.lo >= lo && at.hi <= hi, "%v in %v", at, worst)
			}
		}
		if r, err := c.RootSumSquare(k); err == nil {
			require.LessOrEqual(t, r.Within.lo, r.Centre)
			require.GreaterOrEqual(t, r.Within.hi, r.Centre)
			require.GreaterOrEqual(t, r.Each, units.Length(0))
		}
		if x, err := c.RoomWorstCase(0, c.Links[1].Band); err == nil {
			c.Links[0].Band = x
			w, err := c.WorstCase()
			require.NoError(t, err)
			require.True(t, w.Within(c.Links[1].Band.limits))
		}
		_, _ = c.RoomRootSumSquare(0, k, c.Links[1].Band)
		_, _ = c.VarianceShares()
	})
}

func BenchmarkChain(b *testing.B) {
	c := chainOf(b, "210 210.1 1 n 3 / 40 40.02 -1 n 3 / 140 140.06 -1 r / 30 30.04 -1 t / 1 1.02 1 u", units.InMillimetres)
	wanted := MustParseBand("0.8–1.2 mm")
	b.Run("lib=tolerance/op=worstcase5", func(b *testing.B) {
		for b.Loop() {
			if _, err := c.WorstCase(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tolerance/op=rootsumsquare5", func(b *testing.B) {
		for b.Loop() {
			if _, err := c.RootSumSquare(3); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=mathbig/op=rootsumsquare5", func(b *testing.B) {
		for b.Loop() {
			c.exactRoot(3)
		}
	})
	b.Run("lib=tolerance/op=roomrootsumsquare5", func(b *testing.B) {
		for b.Loop() {
			if _, err := c.RoomRootSumSquare(2, 3, wanted); err != nil {
				b.Fatal(err)
			}
		}
	})
}
