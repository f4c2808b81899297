package piston

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// Against roots found on the sizes at temperature, by mpmath.
func TestPinHeat_reference(t *testing.T) {
	vectors.Load(t, "reference/piston_pin_heat.txt").Each(t, func(t *testing.T, c vectors.Case) {
		h := PinHeat{Hole: at(c.Text("hole") + " mm"), Pin: at(c.Text("pin") + " mm"), MeasuredAt: skirtCelsius(c.Float("measured_at")),
			HoleMetal: Metal{PerK: c.Float("hole_expansion") * 1e-6}, PinMetal: Metal{PerK: c.Float("pin_expansion") * 1e-6}}
		hole, pin, gap := skirtDegrees(c.Float("hole_at")), skirtDegrees(c.Float("pin_at")), mm(c.Text("gap"))

		clear, err := h.ClearanceAt(hole, pin)
		require.NoError(t, err)
		c.Near("clearance", skirtLower(clear).Float(units.InMillimetres))
		c.Near("clearance", skirtUpper(clear).Float(units.InMillimetres))
		require.LessOrEqual(t, skirtUpper(clear)-skirtLower(clear), 4*units.Picometre)

		heat, err := h.HoleLeast(gap, pin)
		require.NoError(t, err)
		c.Near("heat", heat.Float(units.InCelsius))
		back, err := h.ClearanceAt(tolerance.Exactly(heat), pin)
		require.NoError(t, err)
		require.InDelta(t, float64(gap), float64(skirtLower(back)), 20, "undone to 20 pm: 1e-9 K of slack")

		chill, err := h.PinMost(gap, hole)
		if c.Has("chill") {
			require.NoError(t, err)
			c.Near("chill", chill.Float(units.InCelsius))
		} else {
			require.ErrorContains(t, err, "absolute zero")
		}

		type f = tolerance.Float
		at := c.Float("measured_at")
		cold := PinColdClearance(millimetres(gap), millimetres(skirtLower(h.Pin)), f(h.HoleMetal.PerK), f(c.Float("hole_at")-at), f(h.PinMetal.PerK), f(c.Float("pin_at")-at))
		c.Near("cold", float64(cold))
	})
}

// Every inverse undoes the formula to 1e-10 of what it finds.
func TestPinHot_inverses(t *testing.T) {
	type f = tolerance.Float
	r := rand.New(rand.NewPCG(14, 1))
	for range 2000 {
		c, d := f(-0.06+0.1*r.Float64()), f(12+50*r.Float64())
		ah, ap := f(10e-6+12e-6*r.Float64()), f(10e-6+3e-6*r.Float64())
		rh, rp := f(5+250*r.Float64()), f(5+100*r.Float64())
		hot := PinHotClearance(c, d, ah, rh, ap, rp)
		require.InDelta(t, float64(c), float64(PinColdClearance(hot, d, ah, rh, ap, rp)), 1e-13)
		require.InEpsilon(t, float64(rh), float64(PinHoleRise(hot, c, d, ah, ap, rp)), 1e-9)
		require.InEpsilon(t, float64(rp), float64(PinRise(hot, c, d, ah, rh, ap)), 1e-9)
	}
	require.False(t, PinHoleRise(f(0), -0.02, 25, 0, 1e-5, 0).InRange())
	require.False(t, PinHotClearance(f(math.NaN()), 25, 1e-5, 10, 1e-5, 10).InRange())
	g := working.GivenReal
	x := PinHoleRise(g("assembly gap", "g", 0.03, "mm"), g("clearance", "c", -0.024, "mm"), g("pin", "d", 22.002, "mm"), g("rod expansion", "α", 11.7e-6, "1/K"),
		g("pin expansion", "β", 11.7e-6, "1/K"), g("pin rise", "T", 0, "K"))
	s, err := working.SolveReal(x.Named("rise", "R", "K"), working.RealStyle{Places: 1})
	require.NoError(t, err)
	// By hand: 0.054/(21.978 · 11.7e-6) = 210.0.
	require.Contains(t, s.Text(), "210.0 K")
	gap, err := uncertainty.NewDual("gap", 0.03, "mm", uncertainty.Shape(0), 0.001)
	require.NoError(t, err)
	e := uncertainty.ExactlyReal
	u := PinHoleRise(gap, e(-0.024), e(22.002), e(11.7e-6), e(11.7e-6), e(0))
	require.InEpsilon(t, gap.StandardUncertainty()/(21.978*11.7e-6), u.StandardUncertainty(), 1e-12)
}

// Brackets hold every case, and the temperatures are safe for each of them.
func TestPinHeat_holdsEveryCase(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 1))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	for range 200 {
		p0 := units.Length(1.5e10 + r.Float64()*2e10)
		p1 := p0 + units.Length(r.Int64N(5e6))
		h0 := p0 + units.Length(r.Int64N(6e7)) - 4e7
		h1 := h0 + units.Length(r.Int64N(5e6))
		h := PinHeat{Hole: ends(h0, tolerance.Closed, h1, tolerance.Closed), Pin: ends(p0, tolerance.Closed, p1, tolerance.Closed), MeasuredAt: units.Reference,
			HoleMetal: Metal{PerK: between(11e-6, 22e-6), PerKError: 0.5e-6}, PinMetal: Metal{PerK: between(11e-6, 13e-6), PerKError: 0.5e-6}}
		a0, b0 := between(-20, 250), between(-78, 40)
		a1, b1 := a0+between(0, 20), b0+between(0, 20)
		ht, err := tolerance.NewInterval(skirtCelsius(a0), tolerance.Closed, skirtCelsius(a1), tolerance.Closed)
		require.NoError(t, err)
		pt, err := tolerance.NewInterval(skirtCelsius(b0), tolerance.Closed, skirtCelsius(b1), tolerance.Closed)
		require.NoError(t, err)
		got, err := h.ClearanceAt(ht, pt)
		require.NoError(t, err)
		gap := units.Length(r.Int64N(4e7))
		heat, errHeat := h.HoleLeast(gap, pt)
		chill, errChill := h.PinMost(gap, ht)
		for range 50 {
			hole, pin := between(float64(h0), float64(h1))/1e9, between(float64(p0), float64(p1))/1e9
			a := between(h.HoleMetal.PerK-0.5e-6, h.HoleMetal.PerK+0.5e-6)
			s := between(h.PinMetal.PerK-0.5e-6, h.PinMetal.PerK+0.5e-6)
			of := func(ht, pt float64) float64 { return 1e9 * (hole*(1+a*(ht-20)) - pin*(1+s*(pt-20))) }
			x := of(between(a0, a1), between(b0, b1))
			require.LessOrEqual(t, float64(skirtLower(got)), x)
			require.GreaterOrEqual(t, float64(skirtUpper(got)), x)
			if errHeat == nil {
				require.GreaterOrEqual(t, of(heat.Float(units.InCelsius), between(b0, b1)), float64(gap)-1)
			}
			if errChill == nil {
				require.GreaterOrEqual(t, of(between(a0, a1), chill.Float(units.InCelsius)), float64(gap)-1)
			}
		}
	}
}

func pinHeat() PinHeat {
	steel, _ := MetalOf("carbon steel")
	return PinHeat{Hole: at("21.978 ±0.001 mm"), Pin: at("22.002 ±0.001 mm"), MeasuredAt: units.Reference, HoleMetal: steel, PinMetal: steel}
}

func TestPinHeat_refuses(t *testing.T) {
	a, b := skirtDegrees(250), skirtDegrees(20)
	for want, change := range map[string]func(*PinHeat){
		"hole 0 mm is not above 0 mm":       func(h *PinHeat) { h.Hole = at("0 mm") },
		"hole (0 mm, 1 mm] is not above 0":  func(h *PinHeat) { h.Hole, h.Pin = at("(0 mm, 1 mm]"), at("(0 mm, 1 mm]") },
		"pin -1 mm":                         func(h *PinHeat) { h.Pin = at("-1 mm") },
		"pin 0.866 mm is not near the hole": func(h *PinHeat) { h.Pin = at("0.866 mm") },
		"it has no greatest value":          func(h *PinHeat) { h.Pin = at("[22 mm, ∞)") },
		"hole expansion 11.7":               func(h *PinHeat) { h.HoleMetal.PerK = 11.7 },
		"pin expansion 0":                   func(h *PinHeat) { h.PinMetal = Metal{} },
		"temperature measured at":           func(h *PinHeat) { h.MeasuredAt = units.OutOfRange[units.Temperature]() },
	} {
		h := pinHeat()
		change(&h)
		_, err := h.ClearanceAt(a, b)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
		_, err = h.HoleLeast(0, b)
		require.ErrorContains(t, err, want)
		_, err = h.PinMost(0, a)
		require.ErrorContains(t, err, want)
	}
	h := pinHeat()
	bad := skirtBetween("[20 °C, ∞)")
	_, err := h.ClearanceAt(bad, b)
	require.ErrorContains(t, err, "hole temperature")
	_, err = h.ClearanceAt(a, bad)
	require.ErrorContains(t, err, "pin temperature")
	_, err = h.HoleLeast(0, bad)
	require.ErrorContains(t, err, "pin temperature")
	_, err = h.PinMost(0, bad)
	require.ErrorContains(t, err, "hole temperature")
	for _, gap := range []units.Length{-1, 5 * units.Millimetre} {
		_, err = h.HoleLeast(gap, b)
		require.ErrorContains(t, err, "assembly gap")
	}
	_, err = h.PinMost(units.Millimetre, b)
	require.ErrorContains(t, err, "absolute zero")
	tiny := pinHeat()
	tiny.Pin, tiny.Hole = at("(0 mm, 1 mm]"), at("[0.9 mm, 1 mm]")
	_, err = tiny.ClearanceAt(a, b)
	require.Error(t, err)
	tiny.Pin, tiny.Hole = at("(0 mm, 0.001 mm]"), at("(0 mm, ∞)")
	_, err = tiny.ClearanceAt(a, b)
	require.ErrorContains(t, err, "hole")
	far := h
	far.Hole, far.Pin = tolerance.Exactly(units.Length(2e18)), tolerance.Exactly(units.Length(2e18))
	_, err = far.ClearanceAt(skirtDegrees(1000), b)
	require.NoError(t, err, "2000 km of pin: still a length")
	h.Hole = at("[21.978 mm, ∞)")
	c, err := h.ClearanceAt(a, b)
	require.NoError(t, err)
	_, end := c.Upper()
	require.Equal(t, tolerance.Absent, end)
}

func FuzzPinHeat(f *testing.F) {
	f.Add(int64(21_978_000_000), int64(22_002_000_000), int64(3e7), 11.7e-6, 11.7e-6, 0.0, int64(20), int64(230), int64(20))
	f.Add(int64(1), int64(1<<62), int64(-1), 1e-320, math.Inf(1), math.NaN(), int64(-1<<62), int64(1<<62), int64(0))
	f.Fuzz(func(t *testing.T, hole, pin, gap int64, ah, ap, e float64, at, ht, pt int64) {
		degree := units.Temperature(units.CELSIUS)
		h := PinHeat{Hole: tolerance.Exactly(units.Length(hole)), Pin: tolerance.Exactly(units.Length(pin)), MeasuredAt: units.Temperature(at) * degree,
			HoleMetal: Metal{PerK: ah, PerKError: e}, PinMetal: Metal{PerK: ap, PerKError: e}}
		a, b := tolerance.Exactly(units.Temperature(ht)*degree), tolerance.Exactly(units.Temperature(pt)*degree)
		if x, err := h.ClearanceAt(a, b); err == nil {
			require.True(t, x.InRange())
		}
		if x, err := h.HoleLeast(units.Length(gap), b); err == nil {
			require.True(t, x.InRange())
		}
		if x, err := h.PinMost(units.Length(gap), a); err == nil {
			require.True(t, x.InRange())
		}
	})
}

func BenchmarkPinHeat(b *testing.B) {
	b.Run("lib=tenthou/op=holetemperature", func(b *testing.B) {
		b.ReportAllocs()
		h, at := pinHeat(), skirtDegrees(20)
		for b.Loop() {
			if _, err := h.HoleLeast(30*units.Micrometre, at); err != nil {
				b.Fatal(err)
			}
		}
	})
}
