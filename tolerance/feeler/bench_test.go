package feeler_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// The peers do the same work by the same steps on their own numbers, so the
// ratio is that of the numbers.

// eight trials on a 32-blade set, in no order.
var (
	benchIndex = [8]int{5, 0, 9, 2, 3, 7, 1, 4}
	benchFeel  = [8]feeler.Feel{4, 1, 4, 2, 4, 3, 1, 4}
)

func BenchmarkBracket(b *testing.B) {
	set := feeler.Imperial32()
	b.Run("lib=tenthou/op=bracket", func(b *testing.B) {
		b.ReportAllocs()
		var br tolerance.Bracket
		var err error
		for b.Loop() {
			var trials [8]feeler.Trial
			for i, k := range benchIndex {
				trials[i] = set.TrialAt(k, benchFeel[i])
			}
			br, err = feeler.Bracket(trials[:]...)
		}
		require.NoError(b, err)
		require.Equal(b, "[0.0635 mm, 0.0762 mm)", br.String())
	})
	b.Run("lib=tenthou/op=bracketbymarks", func(b *testing.B) {
		b.ReportAllocs()
		marks := [8]string{".005 in", ".0015 in", ".009 in", ".0025 in", ".003 in", ".007 in", ".002 in", ".004 in"}
		for b.Loop() {
			var trials [8]feeler.Trial
			for i, m := range marks {
				trials[i], _ = set.Trial(benchFeel[i], m)
			}
			_, _ = feeler.Bracket(trials[:]...)
		}
	})
	b.Run("lib=float64/op=bracket", func(b *testing.B) {
		b.ReportAllocs()
		thick := make([]float64, set.Len())
		for i := range thick {
			thick[i] = set.At(i).Thickness().Float(units.InMillimetres)
		}
		var lo, hi float64
		for b.Loop() {
			lo, hi = 0, math.Inf(1)
			for i, k := range benchIndex {
				if t := thick[k]; benchFeel[i].Entered() {
					lo = max(lo, t)
				} else {
					hi = min(hi, t)
				}
			}
		}
		require.Equal(b, []float64{0.0635, 0.0762}, []float64{lo, hi})
	})
	b.Run("lib=decimal/op=bracket", func(b *testing.B) {
		b.ReportAllocs()
		thick := make([]decimal.Decimal, set.Len())
		for i := range thick {
			thick[i], _ = set.At(i).Thickness().Decimal(units.InMillimetres, units.AllPlaces, units.NearestEven)
		}
		var lo, hi decimal.Decimal
		for b.Loop() {
			lo, hi = decimal.Zero, decimal.NewFromInt(1000)
			for i, k := range benchIndex {
				if t := thick[k]; benchFeel[i].Entered() {
					lo = decimal.Max(lo, t)
				} else {
					hi = decimal.Min(hi, t)
				}
			}
		}
		require.Equal(b, "0.0635 0.0762", lo.String()+" "+hi.String())
	})
}

// hardSet is 32 blades by micrometer, on no common grid but the picometre, and
// hardTarget a size among the totals of four that none of them makes up: every
// total of n blades ends in n picometres, the target in 500. So no search may
// stop early, and little can be left out.
func hardSet(tb testing.TB) feeler.Set {
	blades := make([]feeler.Blade, 32)
	for i := range blades {
		blades[i] = feeler.MustBlade(fmt.Sprint(500+31*i) + " µm")
		blades[i].Measured = units.Length(500_000_001+31_000_000*i) + units.Length(i*i*7919%1009*1000)
	}
	set, err := feeler.NewSet("hard", "invented", blades...)
	require.NoError(tb, err)
	return set
}

const hardTarget = 3_900_000_500 * units.Picometre

func BenchmarkStack(b *testing.B) {
	hard, marked := hardSet(b), feeler.Imperial32()
	for _, c := range []struct {
		op     string
		set    feeler.Set
		target units.Length
		most   int
	}{
		{"stack", hard, hardTarget, 4},
		{"stackmarked", marked, 1.234567 * units.MM, 4},
		{"stackofeight", hard, 2 * hardTarget, 8},
	} {
		b.Run("lib=tenthou/op="+c.op, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = c.set.Stack(c.target, c.most)
			}
		})
	}
	b.Run("lib=float64/op=stack", func(b *testing.B) {
		b.ReportAllocs()
		a := make([]float64, hard.Len())
		for i := range a {
			a[i] = hard.At(i).Thickness().Float(units.InMillimetres)
		}
		var best [4]int
		for b.Loop() {
			best = floatStack(a, 3.9000005)
		}
		requireSameStack(b, hard, best)
	})
	b.Run("lib=decimal/op=stack", func(b *testing.B) {
		b.ReportAllocs()
		a := make([]decimal.Decimal, hard.Len())
		for i := range a {
			a[i], _ = hard.At(i).Thickness().Decimal(units.InMillimetres, units.AllPlaces, units.NearestEven)
		}
		target := decimal.RequireFromString("3.9000005")
		var best [4]int
		for b.Loop() {
			best = decimalStack(a, target)
		}
		requireSameStack(b, hard, best)
	})
}

// floatStack is the best stack of four: each blade for the first two places, a
// sweep for the others. It leaves the bounds out, which make little difference
// here.
func floatStack(a []float64, target float64) (best [4]int) {
	miss := math.Inf(1)
	for i := len(a) - 1; i >= 3; i-- {
		for j := i - 1; j >= 2; j-- {
			want := target - a[i] - a[j]
			for k, l := j-1, 0; l < k; {
				off := a[k] + a[l] - want
				if m := math.Abs(off); m < miss {
					miss, best = m, [4]int{i, j, k, l}
				}
				if off > 0 {
					k--
				} else {
					l++
				}
			}
		}
	}
	return best
}

// decimalStack is [floatStack] in decimals.
func decimalStack(a []decimal.Decimal, target decimal.Decimal) (best [4]int) {
	miss := target
	for i := len(a) - 1; i >= 3; i-- {
		for j := i - 1; j >= 2; j-- {
			want := target.Sub(a[i]).Sub(a[j])
			for k, l := j-1, 0; l < k; {
				off := a[k].Add(a[l]).Sub(want)
				if m := off.Abs(); m.LessThan(miss) {
					miss, best = m, [4]int{i, j, k, l}
				}
				if off.IsPositive() {
					k--
				} else {
					l++
				}
			}
		}
	}
	return best
}

func requireSameStack(tb testing.TB, set feeler.Set, best [4]int) {
	st, err := set.Stack(hardTarget, 4)
	require.NoError(tb, err)
	require.Equal(tb, 4, st.Len())
	for i, k := range best {
		require.Equal(tb, set.At(k), st.At(i))
	}
}

func BenchmarkPlan(b *testing.B) {
	set, prior := feeler.Imperial32(), feeler.Uniform(0.15*units.MM)
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.10 mm")}
	b.Run("lib=tenthou/op=plan", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = feeler.Plan(set, spec, prior)
		}
	})
	b.Run("lib=tenthou/op=blindzones", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = feeler.BlindZones(set, spec, 4)
		}
	})
}

func BenchmarkFind(b *testing.B) {
	set := feeler.Imperial32()
	b.Run("lib=tenthou/op=find", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = set.Find("0.635 mm")
		}
	})
	text := set.Text()
	b.Run("lib=tenthou/op=parseset", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = feeler.ParseSet(text)
		}
	})
}
