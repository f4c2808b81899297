package piston

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func ringCelsius(x float64) tolerance.Interval[units.Temperature] {
	t, err := units.Nearest(x, units.InCelsius)
	if err != nil {
		panic(err)
	}
	return tolerance.Exactly(t)
}

// The hot gap, the ring's temperature at which it butts and the cold gap that
// prevents it, against a bent beam that keeps its middle line but for heat.
func TestRingHeat_reference(t *testing.T) {
	vectors.Load(t, "reference/piston_ringgap_heat.txt").Each(t, func(t *testing.T, c vectors.Case) {
		mm := func(col string) units.Length { return ringLength(t, c.Text(col)+" mm") }
		at, _ := ringCelsius(c.Float("measured_at")).Lower()
		h := RingHeat{Bore: tolerance.Exactly(mm("bore")), Gap: tolerance.Exactly(mm("gap")), Thickness: mm("thickness"), MeasuredAt: at,
			BoreMetal: Metal{PerK: c.Float("bore_expansion") * 1e-6}, RingMetal: Metal{PerK: c.Float("ring_expansion") * 1e-6}}
		bore, ring := ringCelsius(c.Float("bore_at")), ringCelsius(c.Float("ring_at"))

		hot, err := h.GapAt(bore, ring)
		require.NoError(t, err)
		lo, _ := hot.Lower()
		hi, _ := hot.Upper()
		c.Near("hot", lo.Float(units.InMillimetres))
		require.LessOrEqual(t, hi-lo, 4*units.Picometre)

		type f = tolerance.Float
		br, rr := f(c.Float("bore_at")-c.Float("measured_at")), f(c.Float("ring_at")-c.Float("measured_at"))
		gap, d := millimetres(mm("gap")), millimetres(mm("bore"))
		line := RingGapHot(gap, d, f(h.RingMetal.PerK), rr, f(h.BoreMetal.PerK), br)
		c.Near("line", float64(line))
		require.InDelta(t, float64(gap), float64(RingGapForHeat(line, d, f(h.RingMetal.PerK), rr, f(h.BoreMetal.PerK), br)), 1e-12, "undone")
		x := RingButtingRise(gap, d, f(h.RingMetal.PerK), f(h.BoreMetal.PerK), br)
		require.InDelta(t, 0, float64(RingGapHot(gap, d, f(h.RingMetal.PerK), x, f(h.BoreMetal.PerK), br)), 1e-12)
		require.InDelta(t, float64(br), float64(RingButtingBoreRise(gap, d, f(h.RingMetal.PerK), x, f(h.BoreMetal.PerK))), 1e-9, "undone")

		butts, err := h.ButtsAt(bore)
		require.NoError(t, err)
		c.Near("butts", butts.Float(units.InCelsius))
		there, err := h.GapAt(bore, tolerance.Exactly(butts))
		require.NoError(t, err)
		most, _ := there.Upper()
		require.InDelta(t, 0, float64(most), 30, "undone to 30 pm: 2e-9 K")

		need, err := h.ColdFor(0, bore, ring)
		require.NoError(t, err)
		c.Near("need", need.Float(units.InMillimetres))
	})
}

func ringHeat() RingHeat {
	iron, _ := MetalOf("grey iron")
	return RingHeat{Bore: at("86.000 ±0.005 mm"), Gap: at("[0.30 mm, 0.35 mm)"), Thickness: 3500 * units.Micrometre, MeasuredAt: units.Reference, BoreMetal: iron, RingMetal: iron}
}

// A ring 150 K hotter than its bore closes by π·100·10.8e-6·150 = 0.5089 mm
// (derived, published check values 3.8); the edges of its face by a little
// more.
func TestRingGapHot_hotterThanTheBore(t *testing.T) {
	closing := -float64(RingGapHot[tolerance.Float](0, 100, 10.8e-6, 150, 10.8e-6, 0))
	require.InDelta(t, 0.5089, closing, 0.00005)
	require.InDelta(t, 0.5089, float64(RingGapForHeat[tolerance.Float](0, 100, 10.8e-6, 150, 10.8e-6, 0))*(1+10.8e-6*150), 0.00005)
	h := RingHeat{Bore: at("100 mm"), Gap: at("0.5089 mm"), Thickness: 4 * units.Millimetre, MeasuredAt: units.Reference,
		BoreMetal: Metal{PerK: 10.8e-6}, RingMetal: Metal{PerK: 10.8e-6}}
	butts, err := h.ButtsAt(tolerance.Exactly(units.Reference))
	require.NoError(t, err)
	require.InDelta(t, 20+150*96.0/100, butts.Float(units.InCelsius), 0.3, "a ring of thickness butts 4 % sooner")
}

// Everything that is left open counts, to the dangerous side.
func TestRingHeat_worst(t *testing.T) {
	h := ringHeat()
	h.RingMetal.PerKError = 0.5e-6
	bore, err := tolerance.NewInterval[units.Temperature](100*units.CELSIUS, tolerance.Closed, 120*units.CELSIUS, tolerance.Closed)
	require.NoError(t, err)
	ring, err := tolerance.NewInterval[units.Temperature](200*units.CELSIUS, tolerance.Closed, 220*units.CELSIUS, tolerance.Closed)
	require.NoError(t, err)
	all, err := h.GapAt(bore, ring)
	require.NoError(t, err)
	butts, err := h.ButtsAt(bore)
	require.NoError(t, err)
	need, err := h.ColdFor(50*units.Micrometre, bore, ring)
	require.NoError(t, err)
	for _, gap := range []string{"0.30 mm", "0.349 mm"} {
		for _, d := range []string{"85.995 mm", "86.005 mm"} {
			for _, e := range []float64{10.9e-6, 11.9e-6} {
				for _, b := range []float64{100, 120} {
					for _, r := range []float64{200, 220} {
						one := h
						one.Gap, one.Bore, one.RingMetal = at(gap), at(d), Metal{PerK: e}
						got, err := one.GapAt(ringCelsius(b), ringCelsius(r))
						require.NoError(t, err)
						require.True(t, got.Within(all))
						sooner, err := one.ButtsAt(ringCelsius(b))
						require.NoError(t, err)
						require.LessOrEqual(t, butts, sooner)
						less, err := one.ColdFor(50*units.Micrometre, ringCelsius(b), ringCelsius(r))
						require.NoError(t, err)
						require.LessOrEqual(t, less, need)
						one.Gap = tolerance.Exactly(less)
						left, err := one.GapAt(ringCelsius(b), ringCelsius(r))
						require.NoError(t, err)
						lo, _ := left.Lower()
						require.InDelta(t, 50e6, float64(lo), 10)
					}
				}
			}
		}
	}
	// A ring whose thickness wasn't measured is taken for a thick one.
	thick, unknown := h, h
	thick.Thickness, unknown.Thickness = 4200*units.Micrometre, 0
	a, _ := thick.ButtsAt(bore)
	b, err := unknown.ButtsAt(bore)
	require.NoError(t, err)
	require.Less(t, b, a)

	open := ringHeat()
	open.Gap = at("[0.30 mm, ∞)")
	got, err := open.GapAt(bore, ring)
	require.NoError(t, err)
	_, end := got.Upper()
	require.Equal(t, tolerance.Absent, end)
}

func TestRingHeat_refuses(t *testing.T) {
	cold := tolerance.Exactly(units.Reference)
	for want, change := range map[string]func(*RingHeat){
		"bore -1 mm":                     func(h *RingHeat) { h.Bore = at("-1 mm") },
		"bore [86 mm, ∞) is not":         func(h *RingHeat) { h.Bore = at("[86 mm, ∞)") },
		"bore 11000 mm is not":           func(h *RingHeat) { h.Bore = at("11 m") },
		"end gap -0.1 mm is not 0 mm or": func(h *RingHeat) { h.Gap = at("-0.1 mm") },
		"an interference":                func(h *RingHeat) { h.Gap = at("(−∞, 1 mm]") },
		"end gap out of range":           func(h *RingHeat) { h.Gap = tolerance.Exactly(units.OutOfRange[units.Length]()) },
		"shorter than the way round":     func(h *RingHeat) { h.Gap = at("271 mm") },
		"ring thickness 40 mm":           func(h *RingHeat) { h.Thickness = 40 * units.Millimetre },
		"ring thickness -1 mm":           func(h *RingHeat) { h.Thickness = -units.Millimetre },
		"bore expansion 11.4":            func(h *RingHeat) { h.BoreMetal.PerK = 11.4 },
		"ring expansion NaN":             func(h *RingHeat) { h.RingMetal.PerK = math.NaN() },
		"temperature measured at":        func(h *RingHeat) { h.MeasuredAt = units.OutOfRange[units.Temperature]() },
	} {
		h := ringHeat()
		change(&h)
		_, err := h.ButtsAt(cold)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
		_, err = h.GapAt(cold, cold)
		require.ErrorContains(t, err, want)
		_, err = h.ColdFor(0, cold, cold)
		require.ErrorContains(t, err, want)
	}
	h := ringHeat()
	below := tolerance.Exactly(units.AbsoluteZero - 1)
	_, err := h.GapAt(below, cold)
	require.ErrorContains(t, err, "bore temperature")
	require.ErrorContains(t, err, "absolute zero")
	_, err = h.GapAt(cold, below)
	require.ErrorContains(t, err, "ring temperature")
	_, err = h.ButtsAt(below)
	require.ErrorContains(t, err, "absolute zero")
	_, err = h.ColdFor(-1, cold, cold)
	require.ErrorContains(t, err, "hot gap")
	_, err = h.ColdFor(20*units.Millimetre, cold, cold)
	require.ErrorContains(t, err, "small part")
	_, err = h.ColdFor(0, cold, below)
	require.ErrorContains(t, err, "absolute zero")
	h.RingMetal.PerK, h.Gap = 1e-300, at("1 mm")
	_, err = h.ButtsAt(cold)
	require.ErrorContains(t, err, "can be reached")
}

// The formulas in their other readings.
func TestRingGapHot_readings(t *testing.T) {
	g := working.GivenReal
	s, err := working.SolveReal(RingButtingRise(g("gap", "s", 0.3, "mm"), g("bore", "D", 86, "mm"), g("ring expansion", "α", 11.4e-6, "/K"),
		g("bore expansion", "γ", 11.4e-6, "/K"), g("bore's rise", "b", 100, "K")).Named("ring's rise", "r", "K"), working.RealStyle{Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "197.6 K") // by hand: 0.3 + 0.30800 over 269.877·11.4e-6
	gap, err := uncertainty.NewDual("gap", 0.3, "mm", uncertainty.NormalShape, 0.01)
	require.NoError(t, err)
	e := uncertainty.ExactlyReal
	rise := RingButtingRise(gap, e(86), e(11.4e-6), e(11.4e-6), e(100))
	_, u := rise.Value(), rise.StandardUncertainty()
	require.InDelta(t, 0.01/(269.877*11.4e-6), u, 0.01, "0.01 mm of gap is 3.3 K")
}

func TestRingHeat_allocations(t *testing.T) {
	h, g, bore, ring := ringHeat(), keystone(), ringCelsius(100), ringCelsius(200)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		sinkBracket, _ = h.GapAt(bore, ring)
		_, _ = h.ButtsAt(bore)
		sink, _ = h.ColdFor(0, bore, ring)
		sinkBracket, _ = g.Width()
	}))
}

func FuzzRingHeat(f *testing.F) {
	f.Add(int64(86e9), int64(3e8), int64(35e8), 11.4e-6, 11.4e-6, int64(20), int64(100), int64(200))
	f.Add(int64(1), int64(1<<62), int64(-1), 1e-320, 9.99e-4, int64(-1<<32), int64(1<<32), int64(0))
	f.Fuzz(func(t *testing.T, bore, gap, thick int64, ab, ar float64, at, bt, rt int64) {
		h := RingHeat{Bore: tolerance.Exactly(units.Length(bore)), Gap: tolerance.Exactly(units.Length(gap)), Thickness: units.Length(thick),
			MeasuredAt: units.Temperature(at) * units.CELSIUS, BoreMetal: Metal{PerK: ab}, RingMetal: Metal{PerK: ar}}
		b, r := tolerance.Exactly(units.Temperature(bt)*units.CELSIUS), tolerance.Exactly(units.Temperature(rt)*units.CELSIUS)
		if g, err := h.GapAt(b, r); err == nil {
			require.True(t, g.InRange())
		}
		if c, err := h.ColdFor(0, b, r); err == nil {
			require.True(t, c.InRange())
		}
		x, err := h.ButtsAt(b)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, x.InRange())
	})
}

func BenchmarkRingHeat(b *testing.B) {
	h, bore, ring := ringHeat(), ringCelsius(100), ringCelsius(200)
	b.Run("lib=tenthou/op=gap", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sinkBracket, _ = h.GapAt(bore, ring)
		}
	})
	b.Run("lib=tenthou/op=butts", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := h.ButtsAt(bore); err != nil {
				b.Fatal(err)
			}
		}
	})
}
