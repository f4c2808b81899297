package cylinder

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func linerBrackets(texts ...string) (b []tolerance.Bracket) {
	for _, t := range texts {
		b = append(b, linerAt(t))
	}
	return b
}

func linerBank() WetLiners {
	return WetLiners{
		Liners: []WetLiner{
			{Where: "cylinder 1", Places: linerBrackets("0.03 mm", "0.04 mm")},
			{Where: "cylinder 2", Places: linerBrackets("0.11 mm", "0.12 mm"), Shim: linerAt("0.05 mm")},
			{Where: "cylinder 3", Places: linerBrackets("0.08 mm", "0.09 mm")},
		},
		Protrusion: tolerance.Spec{New: tolerance.MustParseBand("0.06–0.11 mm")},
		Step:       tolerance.Spec{New: tolerance.MustParseBand("max 0.04 mm")},
	}
}

func linerStock(sizes ...string) (s []StockShim) {
	for _, n := range sizes {
		s = append(s, StockShim{Name: n, Thickness: linerAt(n + " mm")})
	}
	return s
}

// Limits of published manuals, and readings on and past them.
func TestWetLiners_published(t *testing.T) {
	vectors.Load(t, "published/cylinder_liner_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		c.Ignore("source")
		spec := tolerance.Spec{New: tolerance.MustParseBand(c.Text("limits"))}
		in, out := linerAt(c.Text("within")), linerAt(c.Text("outside"))
		for reading, want := range map[tolerance.Bracket]tolerance.Standing{in: tolerance.AsNew, out: tolerance.OutsideNewBand} {
			w := WetLiners{Liners: []WetLiner{{Where: "1", Places: []tolerance.Bracket{reading}}}, Protrusion: spec}
			if c.Is("measure", "step") {
				w = WetLiners{Liners: []WetLiner{{Where: "1", Places: linerBrackets("0 in")}, {Where: "2", Places: []tolerance.Bracket{reading}}}, Step: spec}
			}
			r, err := w.Assess()
			require.NoError(t, err)
			require.Equal(t, want, r.Worst)
		}
	})
}

func TestWetLiners_assess(t *testing.T) {
	w := linerBank()
	w.Variation = tolerance.Spec{New: tolerance.MustParseBand("max 0.01 mm")}
	r, err := w.Assess()
	require.NoError(t, err)
	require.Len(t, r.Protrusions, 3)
	require.Len(t, r.Variations, 3)
	require.Equal(t, linerAt("0.01 mm"), r.Variations[0].Greatest)
	// From any place to any: 0.12 − 0.03 and 0.12 − 0.08.
	require.Equal(t, linerAt("0.09 mm"), r.Steps[0].Greatest)
	require.Equal(t, linerAt("0.04 mm"), r.Steps[1].Greatest)
	require.Equal(t, tolerance.OutsideNewBand, r.Worst)
	require.Equal(t, "liner protrusion, cylinder 1", r.WorstAt)

	w.Rule = MeanStep // 0.115 − 0.035, 0.115 − 0.085
	r, err = w.Assess()
	require.NoError(t, err)
	require.Equal(t, linerAt("0.08 mm"), r.Steps[0].Greatest)
	require.Equal(t, linerAt("0.03 mm"), r.Steps[1].Greatest)

	// One who can't be told is worse than one that is good, and better than one that is out.
	w.Liners = []WetLiner{{Where: "a", Places: linerBrackets("0.08 mm")}, {Where: "b", Places: linerBrackets("[0.05 mm, 0.07 mm)")}}
	w.Protrusion.Wear = tolerance.MustParseBand("0.03–0.2 mm")
	w.Variation = tolerance.Spec{}
	r, err = w.Assess()
	require.NoError(t, err)
	require.Equal(t, "liner protrusion, b", r.WorstAt)
	require.Contains(t, r.Protrusions[1].Settle, "a finer instrument")
	require.Empty(t, r.Variations, "read at one place each")
	w.Variation.New = tolerance.MustParseBand("max 0.01 mm")
	r, err = w.Assess()
	require.NoError(t, err)
	require.Equal(t, "variation of protrusion, a: read at one place", r.WorstAt)
	require.Equal(t, tolerance.CantTell, r.Worst)
	require.Equal(t, 4, linerRank(tolerance.PastWearLimit))
}

func TestWetLiners_formulas(t *testing.T) {
	r := rand.New(rand.NewPCG(43, 1))
	q := func() units.Length { return units.Length(r.Int64N(1e10)) }
	for range 500 {
		f, s, c, n := q(), q(), q(), q()
		p := LinerProtrusion(f, s, c)
		require.Equal(t, c, CounterboreDepth(f, s, p))
		require.Equal(t, f, LinerFlange(p, s, c))
		require.Equal(t, s, LinerShim(p, f, c))
		require.Equal(t, LinerProtrusion(f, n, c), ProtrusionWithShim(p, s, n))
		require.Equal(t, n, ShimForProtrusion(p, s, ProtrusionWithShim(p, s, n)))
		wanted := q()
		cut := CounterboreCut(p, s, n, wanted)
		require.Equal(t, wanted, LinerProtrusion(f, n, c+cut), "cut so much deeper it protrudes as wanted")
		require.Equal(t, LinerStep(p, wanted), LinerStep(wanted, p))
	}
}

func TestChooseShims(t *testing.T) {
	c, err := linerBank().ChooseShims(linerStock("0.02", "0.05", "0.10"), 1)
	require.NoError(t, err)
	require.True(t, c.Ok, c.Blocked)
	// By hand: 1 with 0.05 is 0.08–0.09, 2 with 0.02 is 0.08–0.09, 3 as it is.
	require.Equal(t, "cylinder 1: 0.05; cylinder 2: 0.02; cylinder 3: no shim", c.String())
	require.Equal(t, linerBrackets("0.01 mm", "0.01 mm"), c.Steps)
	require.Equal(t, linerAt("[0.03 mm, 0.07 mm]"), c.Needed[0])

	// 0.02 alone doesn't suit cylinder 1 for certain; two on one another do.
	c, err = linerBank().ChooseShims(linerStock("0.02"), 1)
	require.NoError(t, err)
	require.False(t, c.Ok)
	require.Equal(t, "no shim in stock suits cylinder 1: it needs [0.03 mm, 0.07 mm]", c.Blocked)
	c, err = linerBank().ChooseShims(linerStock("0.02"), 2)
	require.NoError(t, err)
	require.Equal(t, "cylinder 1: 0.02 and 0.02; cylinder 2: 0.02; cylinder 3: no shim", c.String())

	w := linerBank()
	w.Liners[1].Places = linerBrackets("0.2 mm") // over a shim of 0.05
	c, err = w.ChooseShims(linerStock("0.05"), 1)
	require.NoError(t, err)
	require.Contains(t, c.Blocked, "stands too high even without a shim, by 0.04 mm")
	w.Liners[1].Places = linerBrackets("0.02 mm", "0.09 mm")
	c, err = w.ChooseShims(linerStock("0.05"), 1)
	require.NoError(t, err)
	require.Contains(t, c.Blocked, "varies by more round its places")
	require.True(t, c.Needed[1].IsZero())

	w = linerBank()
	w.Step.New = tolerance.MustParseBand("max 0.005 mm")
	c, err = w.ChooseShims(linerStock("0.05", "0.02"), 1)
	require.NoError(t, err)
	require.Contains(t, c.Blocked, "no two shims that suit cylinder 1 and cylinder 2")

	w = linerBank()
	w.Protrusion = tolerance.Spec{Wear: tolerance.MustParseBand("min 0.06 mm")}
	w.Step = tolerance.Spec{}
	c, err = w.ChooseShims(linerStock("0.05"), 1)
	require.NoError(t, err)
	require.True(t, c.Ok)
	w.Liners[0].Places = linerBrackets("[0.03 mm, ∞)")
	c, err = w.ChooseShims(linerStock("0.05"), 1)
	require.NoError(t, err)
	require.True(t, c.Ok)
	w.Liners[0].Places = linerBrackets("(−∞, 0.03 mm)")
	c, err = w.ChooseShims(linerStock("0.05"), 1)
	require.NoError(t, err)
	require.False(t, c.Ok)
	w.Protrusion.Wear = tolerance.MustParseBand("max 0.06 mm")
	w.Liners[0].Places = linerBrackets("[0.03 mm, ∞)")
	c, err = w.ChooseShims(nil, 0)
	require.NoError(t, err)
	require.False(t, c.Ok)
	w.Liners = []WetLiner{{Where: "x", Places: linerBrackets("(−∞, 0.03 mm)")}}
	c, err = w.ChooseShims(nil, 0)
	require.NoError(t, err)
	require.True(t, c.Ok)
}

// The choice against every way to lay the shims: enumeration as the judge.
func TestChooseShims_enumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(44, 1))
	oks := 0
	for range 400 {
		n := 2 + r.IntN(3)
		w := WetLiners{Protrusion: tolerance.Spec{New: tolerance.MustBetween(60*units.Micrometre, units.Length(90+r.Int64N(60))*units.Micrometre)},
			Step: tolerance.Spec{New: tolerance.AtMost(units.Length(10+r.Int64N(40)) * units.Micrometre)}, Rule: StepRule(r.IntN(2))}
		var at [][]units.Length
		for i := range n {
			l := WetLiner{Where: fmt.Sprint(i + 1)}
			var places []units.Length
			for range 1 + r.IntN(3) {
				p := units.Length(20+r.Int64N(60)) * units.Micrometre
				if len(places) > 0 {
					p = places[0] + units.Length(r.Int64N(15))*units.Micrometre
				}
				places = append(places, p)
				l.Places = append(l.Places, tolerance.Exactly(p))
			}
			w.Liners, at = append(w.Liners, l), append(at, places)
		}
		stock := []units.Length{20 * units.Micrometre, 50 * units.Micrometre, 75 * units.Micrometre}
		var shims []StockShim
		for _, s := range stock {
			shims = append(shims, StockShim{Name: s.String(), Thickness: tolerance.Exactly(s)})
		}
		got, err := w.ChooseShims(shims, 1)
		require.NoError(t, err)

		lo, _ := w.Protrusion.New.Lower()
		hi, _ := w.Protrusion.New.Upper()
		most, _ := w.Step.New.Upper()
		bestWorst, bestSum := math.Inf(1), math.Inf(1)
		options := append([]units.Length{0}, stock...)
		way := make([]int, n)
		for {
			ok, worst, sum := true, 0.0, 0.0
			for i := range n {
				least, greatest, total := units.Length(math.MaxInt64), units.Length(0), 0.0
				for _, p := range at[i] {
					q := p + options[way[i]]
					least, greatest = min(least, q), max(greatest, q)
					total += float64(q)
				}
				ok = ok && least >= lo && greatest <= hi
				off := math.Abs(float64(least+greatest)-float64(lo+hi)) / 2
				worst, sum = max(worst, off), sum+off
				if i == 0 {
					continue
				}
				step, other := 0.0, 0.0
				for _, p := range at[i-1] {
					other += float64(p + options[way[i-1]])
					for _, q := range at[i] {
						step = max(step, math.Abs(float64(p+options[way[i-1]]-q-options[way[i]])))
					}
				}
				if w.Rule == MeanStep {
					step = math.Abs(total/float64(len(at[i])) - other/float64(len(at[i-1])))
				}
				ok = ok && step <= float64(most)+0.5
			}
			if ok && (worst < bestWorst || worst == bestWorst && sum < bestSum) {
				bestWorst, bestSum = worst, sum
			}
			k := 0
			for k < n && way[k] == len(options)-1 {
				way[k], k = 0, k+1
			}
			if k == n {
				break
			}
			way[k]++
		}
		require.Equal(t, !math.IsInf(bestWorst, 1), got.Ok, got.Blocked)
		if !got.Ok {
			continue
		}
		oks++
		worst, sum := 0.0, 0.0
		for _, p := range got.Picks {
			off := away(p.Least, p.Greatest, w.Protrusion.New)
			worst, sum = max(worst, off), sum+off
		}
		require.Equal(t, bestWorst, worst)
		require.InDelta(t, bestSum, sum, 1)
	}
	require.Greater(t, oks, 80)
}

func TestWetLiners_refuses(t *testing.T) {
	for want, change := range map[string]func(*WetLiners){
		"liners none":                   func(w *WetLiners) { w.Liners = nil },
		"step rule 9":                   func(w *WetLiners) { w.Rule = 9 },
		"protrusion of cylinder 1 none": func(w *WetLiners) { w.Liners[0].Places = nil },
		"protrusion of cylinder 3 (−∞":  func(w *WetLiners) { w.Liners[2].Places[1] = tolerance.Bracket{} },
		"protrusion of cylinder 1 86 mm is not within 10 mm": func(w *WetLiners) { w.Liners[0].Places[0] = linerAt("86 mm") },
		"shim under cylinder 2 11 mm":                        func(w *WetLiners) { w.Liners[1].Shim = linerAt("11 mm") },
		"shim under cylinder 2 -1 mm":                        func(w *WetLiners) { w.Liners[1].Shim = linerAt("-1 mm") },
		"reaches past":                                       func(w *WetLiners) { w.Protrusion.Wear = tolerance.MustParseBand("max 0.1 mm") },
	} {
		w := linerBank()
		change(&w)
		_, err := w.Assess()
		require.ErrorContains(t, err, want)
		if want != "reaches past" {
			_, err = w.ChooseShims(nil, 1)
			require.ErrorIs(t, err, ErrInput)
		}
	}
	w := linerBank()
	w.Variation = tolerance.Spec{New: tolerance.MustParseBand("max 2 mm"), Wear: tolerance.MustParseBand("max 1 mm")}
	_, err := w.Assess()
	require.ErrorContains(t, err, "reaches past")
	w = linerBank()
	w.Step.Wear = tolerance.MustParseBand("max 0.01 mm")
	_, err = w.Assess()
	require.ErrorContains(t, err, "reaches past")

	w = linerBank()
	for want, call := range map[string]func() (ShimChoice, error){
		"from 0 to 4":   func() (ShimChoice, error) { return w.ChooseShims(nil, 5) },
		"at most 10 mm": func() (ShimChoice, error) { return w.ChooseShims(linerStock("50"), 1) },
		"shim 0 0 mm":   func() (ShimChoice, error) { return w.ChooseShims(linerStock("0"), 1) },
		"few enough":    func() (ShimChoice, error) { return w.ChooseShims(make3000(), 1) },
		"limits none ": func() (ShimChoice, error) {
			w := linerBank()
			w.Protrusion = tolerance.Spec{}
			return w.ChooseShims(nil, 1)
		},
	} {
		_, err := call()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
	}
}

func make3000() (s []StockShim) {
	for range 3000 {
		s = append(s, StockShim{"x", linerAt("0.1 mm")})
	}
	return s
}

func FuzzWetLiners(f *testing.F) {
	f.Add(int64(3e7), int64(8e7), int64(5e7), int64(2e7), int64(6e7), int64(12e7), int64(4e7))
	f.Add(int64(-1<<63), int64(1<<62), int64(1<<61), int64(-1<<61), int64(0), int64(1<<63-1), int64(-1))
	f.Fuzz(func(t *testing.T, a, b, shim, stock, lo, hi, step int64) {
		band, err := tolerance.Between(units.Length(lo), units.Length(hi))
		if err != nil {
			return
		}
		x := func(v int64) tolerance.Bracket { return tolerance.Exactly(units.Length(v)) }
		w := WetLiners{Liners: []WetLiner{{"1", []tolerance.Bracket{x(a), x(b)}, x(shim)}, {"2", []tolerance.Bracket{x(b)}, x(0)}},
			Protrusion: tolerance.Spec{New: band}, Step: tolerance.Spec{New: tolerance.AtMost(units.Length(step))}}
		_, _ = w.Assess()
		c, err := w.ChooseShims([]StockShim{{"s", x(stock)}}, 2)
		if err != nil {
			return
		}
		if c.Ok {
			for _, p := range c.Picks {
				require.Equal(t, tolerance.Within, band.Judge(p.Least))
				require.Equal(t, tolerance.Within, band.Judge(p.Greatest))
			}
			for _, s := range c.Steps {
				require.Equal(t, tolerance.Within, w.Step.New.Judge(s))
			}
		} else {
			require.NotEmpty(t, c.Blocked)
		}
	})
}

func BenchmarkWetLiners(b *testing.B) {
	b.Run("lib=tenthou/op=assess", func(b *testing.B) {
		b.ReportAllocs()
		w := linerBank()
		for b.Loop() {
			if _, err := w.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=chooseshims", func(b *testing.B) {
		b.ReportAllocs()
		w, stock := linerBank(), linerStock("0.02", "0.05", "0.10")
		for b.Loop() {
			if _, err := w.ChooseShims(stock, 2); err != nil {
				b.Fatal(err)
			}
		}
	})
}
