package piston

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func skirtCelsius(x float64) units.Temperature {
	t, err := units.Nearest(x, units.InCelsius)
	if err != nil {
		panic(err)
	}
	return t
}

func skirtDegrees(x float64) tolerance.Interval[units.Temperature] {
	return tolerance.Exactly(skirtCelsius(x))
}

func skirtBetween(s string) tolerance.Interval[units.Temperature] {
	i, err := tolerance.ParseInterval[units.Temperature](s)
	if err != nil {
		panic(err)
	}
	return i
}

func skirtLower[Q units.Quantity](i tolerance.Interval[Q]) Q { lo, _ := i.Lower(); return lo }
func skirtUpper[Q units.Quantity](i tolerance.Interval[Q]) Q { hi, _ := i.Upper(); return hi }

// Against roots found on the sizes at temperature, by mpmath.
func TestSkirtHeat_reference(t *testing.T) {
	vectors.Load(t, "reference/piston_skirt_heat.txt").Each(t, func(t *testing.T, c vectors.Case) {
		h := SkirtHeat{Bore: at(c.Text("bore") + " mm"), Clearance: at(c.Text("clearance") + " mm"), MeasuredAt: skirtCelsius(c.Float("measured_at")),
			BoreMetal: Metal{PerK: c.Float("bore_expansion") * 1e-6}, SkirtMetal: Metal{PerK: c.Float("skirt_expansion") * 1e-6}}
		b, s, hot := skirtDegrees(c.Float("bore_at")), skirtDegrees(c.Float("skirt_at")), mm(c.Text("hot"))

		left, err := h.ClearanceAt(b, s)
		require.NoError(t, err)
		c.Near("left", skirtLower(left).Float(units.InMillimetres))
		c.Near("left", skirtUpper(left).Float(units.InMillimetres))
		require.LessOrEqual(t, skirtUpper(left)-skirtLower(left), 4*units.Picometre)

		most, err := h.SkirtMost(hot, b)
		require.NoError(t, err)
		c.Near("most", most.Float(units.InCelsius))
		back, err := h.ClearanceAt(b, tolerance.Exactly(most))
		require.NoError(t, err)
		require.InDelta(t, float64(hot), float64(skirtLower(back)), 20, "undone to 20 pm: 1e-9 K of slack")

		together, ok, err := h.TogetherMost(hot)
		require.NoError(t, err)
		require.Equal(t, c.Has("together"), ok, "without it, warming opens the clearance")
		if ok {
			c.Near("together", together.Float(units.InCelsius))
		}

		cold, err := h.ColdFor(hot, b, s)
		require.NoError(t, err)
		c.Near("cold", cold.Float(units.InMillimetres))

		type f = tolerance.Float
		rise := c.Float("skirt_at") - c.Float("measured_at")
		warm := SkirtBoreRiseFor(millimetres(hot), millimetres(skirtLower(h.Clearance)), millimetres(skirtLower(h.Bore)), f(h.BoreMetal.PerK), f(h.SkirtMetal.PerK), f(rise))
		c.Near("warm", float64(warm)+c.Float("measured_at"))
	})
}

// The worked changes of clearance, and package instrument's formula beside.
func TestSkirtHotClearance_practice(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "practice/piston_heat.txt").Each(t, func(t *testing.T, c vectors.Case) {
		d, o, or := f(c.Float("size")), f(c.Float("outer")*1e-6), f(c.Float("outer_rise"))
		i, ir := f(c.Float("inner")*1e-6), f(c.Float("inner_rise"))
		got := float64(SkirtHotClearance(0, d, o, or, i, ir))
		if c.Choice("part", "skirt", "pin") == "pin" {
			got = float64(PinHotClearance(0, d, o, or, i, ir))
		}
		c.Near("growth", got)
		require.InDelta(t, float64(instrument.ClearanceGrowth(d, o, or, i, ir)), got, 1e-15)
	})
}

// Every inverse undoes the formula to 1e-12 of what it finds.
func TestSkirtHot_inverses(t *testing.T) {
	type f = tolerance.Float
	r := rand.New(rand.NewPCG(7, 1))
	for range 2000 {
		c, d := f(0.01+0.3*r.Float64()), f(40+100*r.Float64())
		ab, as := f(9e-6+12e-6*r.Float64()), f(9e-6+15e-6*r.Float64())
		rb, rs := f(5+150*r.Float64()), f(5+250*r.Float64())
		hot := SkirtHotClearance(c, d, ab, rb, as, rs)
		require.InDelta(t, float64(c), float64(SkirtColdClearance(hot, d, ab, rb, as, rs)), 1e-13)
		require.InEpsilon(t, float64(rs), float64(SkirtRiseFor(hot, c, d, ab, rb, as)), 1e-10)
		require.InEpsilon(t, float64(rb), float64(SkirtBoreRiseFor(hot, c, d, ab, as, rs)), 1e-10)
		alike := SkirtHotClearance(c, d, ab, rb, as, rb)
		if together := SkirtRiseTogether(alike, c, d, ab, as); math.Abs(float64(as-ab)) > 1e-6 {
			require.InEpsilon(t, float64(rb), float64(together), 1e-9)
		}
		// Heat alone does nothing to bodies that don't warm.
		require.Equal(t, c, SkirtHotClearance(c, d, ab, 0, as, 0))
	}
	require.False(t, SkirtRiseTogether(f(0), 0.1, 90, 0, 0).InRange(), "nothing expands")
	require.False(t, SkirtRiseFor(f(0), 0.1, 90, 1e-5, 10, 0).InRange())
	require.False(t, SkirtHotClearance(f(math.NaN()), 90, 1e-5, 10, 2e-5, 10).InRange())
}

// Brackets hold every case that readings, coefficients and temperatures allow,
// and the temperatures and clearances that follow are safe for each of them.
func TestSkirtHeat_holdsEveryCase(t *testing.T) {
	type f = tolerance.Float
	r := rand.New(rand.NewPCG(8, 1))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	for range 200 {
		c0, d0 := units.Length(3e7+r.Int64N(2e8)), units.Length(5e10+r.Int64N(5e10))
		c1, d1 := c0+units.Length(r.Int64N(2e7)), d0+units.Length(r.Int64N(2e7))
		h := SkirtHeat{Bore: ends(d0, tolerance.Closed, d1, tolerance.Closed), Clearance: ends(c0, tolerance.Closed, c1, tolerance.Closed), MeasuredAt: units.Reference,
			BoreMetal: Metal{PerK: between(10e-6, 22e-6), PerKError: 0.5e-6}, SkirtMetal: Metal{PerK: between(11e-6, 23e-6), PerKError: 0.5e-6}}
		b0, s0 := between(-20, 150), between(-20, 300)
		b1, s1 := b0+between(0, 30), s0+between(0, 30)
		bt, err := tolerance.NewInterval(skirtCelsius(b0), tolerance.Closed, skirtCelsius(b1), tolerance.Closed)
		require.NoError(t, err)
		st, err := tolerance.NewInterval(skirtCelsius(s0), tolerance.Closed, skirtCelsius(s1), tolerance.Closed)
		require.NoError(t, err)
		got, err := h.ClearanceAt(bt, st)
		require.NoError(t, err)
		hot := units.Length(r.Int64N(int64(c0)))
		most, errMost := h.SkirtMost(hot, bt)
		together, ok, err := h.TogetherMost(hot)
		require.NoError(t, err)
		cold, err := h.ColdFor(hot, bt, st)
		require.NoError(t, err)
		for range 50 {
			d, c := between(float64(d0), float64(d1))/1e9, between(float64(c0), float64(c1))/1e9
			ab := between(h.BoreMetal.PerK-0.5e-6, h.BoreMetal.PerK+0.5e-6)
			as := between(h.SkirtMetal.PerK-0.5e-6, h.SkirtMetal.PerK+0.5e-6)
			b, s := between(b0, b1), between(s0, s1)
			x := 1e9 * float64(SkirtHotClearance(f(c), f(d), f(ab), f(b-20), f(as), f(s-20)))
			require.LessOrEqual(t, float64(skirtLower(got)), x)
			require.GreaterOrEqual(t, float64(skirtUpper(got)), x)
			if errMost == nil {
				x := 1e9 * float64(SkirtHotClearance(f(c), f(d), f(ab), f(b-20), f(as), f(most.Float(units.InCelsius)-20)))
				require.GreaterOrEqual(t, x, float64(hot)-1)
			}
			if ok {
				rise := f(together.Float(units.InCelsius) - 20)
				x := 1e9 * float64(SkirtHotClearance(f(c), f(d), f(ab), rise, f(as), rise))
				require.GreaterOrEqual(t, x, float64(hot)-1)
			}
			x = 1e9 * float64(SkirtHotClearance(millimetres(cold), f(d), f(ab), f(b-20), f(as), f(s-20)))
			require.GreaterOrEqual(t, x, float64(hot)-1)
		}
	}
}

func skirtHeat() SkirtHeat {
	iron, _ := MetalOf("grey iron")
	alloy, _ := MetalOf("piston alloy 4032")
	return SkirtHeat{Bore: at("86.000 ±0.002 mm"), Clearance: at("0.050 ±0.004 mm"), MeasuredAt: units.Reference, BoreMetal: iron, SkirtMetal: alloy}
}

func TestSkirtHeat_refuses(t *testing.T) {
	b, s := skirtDegrees(90), skirtDegrees(150)
	for want, change := range map[string]func(*SkirtHeat){
		"bore 0 mm is not above 0 mm":       func(h *SkirtHeat) { h.Bore = at("0 mm") },
		"bore (0 mm, 1 mm] is not above":    func(h *SkirtHeat) { h.Bore = at("(0 mm, 1 mm]") },
		"it has no greatest value":          func(h *SkirtHeat) { h.Bore = at("[86 mm, ∞)") },
		"it has no least value":             func(h *SkirtHeat) { h.Clearance = at("(−∞, 0.05 mm]") },
		"it is an interference":             func(h *SkirtHeat) { h.Clearance = at("-0.02 mm") },
		"is all in its right unit?":         func(h *SkirtHeat) { h.Clearance = at("50 mm") },
		"bore expansion 11.4 ±0 per K":      func(h *SkirtHeat) { h.BoreMetal.PerK = 11.4 },
		"skirt expansion NaN":               func(h *SkirtHeat) { h.SkirtMetal.PerK = math.NaN() },
		"skirt expansion 1.94e-05 ±-1e-06":  func(h *SkirtHeat) { h.SkirtMetal.PerKError = -1e-6 },
		"bore expansion 0 ±0":               func(h *SkirtHeat) { h.BoreMetal = Metal{} },
		"temperature measured at":           func(h *SkirtHeat) { h.MeasuredAt = units.OutOfRange[units.Temperature]() },
		"measured at 2000 °C is not from a": func(h *SkirtHeat) { h.MeasuredAt = skirtCelsius(2000) },
	} {
		h := skirtHeat()
		change(&h)
		_, err := h.ClearanceAt(b, s)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
		_, err = h.SkirtMost(0, b)
		require.ErrorContains(t, err, want)
		_, err = h.ColdFor(0, b, s)
		require.ErrorContains(t, err, want)
		if h.MeasuredAt == units.Reference {
			_, _, err = h.TogetherMost(0)
			require.ErrorContains(t, err, want)
		}
	}
	h := skirtHeat()
	none := tolerance.Interval[units.Temperature]{}
	for _, bad := range []tolerance.Interval[units.Temperature]{none, skirtBetween("[20 °C, ∞)"), skirtDegrees(1001), tolerance.Exactly(units.OutOfRange[units.Temperature]())} {
		_, err := h.ClearanceAt(bad, s)
		require.ErrorContains(t, err, "bore temperature")
		_, err = h.ClearanceAt(b, bad)
		require.ErrorContains(t, err, "skirt temperature")
		_, err = h.SkirtMost(0, bad)
		require.ErrorContains(t, err, "bore temperature")
		_, err = h.ColdFor(0, b, bad)
		require.ErrorContains(t, err, "skirt temperature")
	}
	_, err := tolerance.ParseInterval[units.Temperature]("-300 °C")
	require.Error(t, err, "below absolute zero is refused where it is read")
	for _, hot := range []units.Length{-1, 20 * units.Millimetre} {
		_, err = h.SkirtMost(hot, b)
		require.ErrorContains(t, err, "hot clearance")
		_, err = h.ColdFor(hot, b, s)
		require.ErrorContains(t, err, "hot clearance")
		_, _, err = h.TogetherMost(hot)
		require.ErrorContains(t, err, "hot clearance")
	}
	_, _, err = h.TogetherMost(60 * units.Micrometre)
	require.ErrorContains(t, err, "at most what there may be when cold")
	// A bore that shrinks in the cold further than a piston can.
	h.SkirtMetal.PerK = 1e-6
	_, err = h.SkirtMost(mm("0.045"), skirtDegrees(-200))
	require.ErrorContains(t, err, "absolute zero")
}

// A clearance of which only the least is known leaves the hot one open above;
// one kind of metal for both never closes by warming together.
func TestSkirtHeat_open(t *testing.T) {
	h := skirtHeat()
	h.Clearance = at("[0.127 mm, ∞)")
	c, err := h.ClearanceAt(skirtDegrees(90), skirtDegrees(150))
	require.NoError(t, err)
	_, end := c.Upper()
	require.Equal(t, tolerance.Absent, end)
	h.SkirtMetal = h.BoreMetal
	_, ok, err := h.TogetherMost(0)
	require.NoError(t, err)
	require.False(t, ok)
}

// The same formulas write their working and carry uncertainty.
func TestSkirtHotClearance_otherReadings(t *testing.T) {
	g := working.GivenReal
	c := SkirtHotClearance(g("cold clearance", "c", 0.05, "mm"), g("bore", "D", 86, "mm"), g("bore expansion", "α₁", 11.4e-6, "1/K"),
		g("bore rise", "T₁", 70, "K"), g("skirt expansion", "α₂", 19.4e-6, "1/K"), g("skirt rise", "T₂", 100, "K"))
	s, err := working.SolveReal(c.Named("hot clearance", "h", "mm"), working.RealStyle{Places: 4})
	require.NoError(t, err)
	// By hand: 0.05·1.00194 + 86·(0.000798 − 0.00194) = 0.050097 − 0.098212.
	require.Contains(t, s.Text(), "0.0481 mm")

	bore, err := uncertainty.NewDual("skirt expansion", 19.4e-6, "1/K", uncertainty.Shape(0), 0.5e-6)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	u := SkirtHotClearance(x(0.05), x(86), x(11.4e-6), x(70), bore, x(100))
	// The sensitivity is −skirt·rise = −(86 − 0.05)·100.
	require.InEpsilon(t, 8595*bore.StandardUncertainty(), u.StandardUncertainty(), 1e-12)
}

// Textbook values are the printed ones (status P), the others from memory.
func TestMetals(t *testing.T) {
	printed := map[string]float64{"ductile iron 60-40-18": 11.2, "ductile iron 80-55-06": 10.6, "cast aluminium 356.0": 21.5,
		"aluminium 2024": 22.9, "aluminium 6061": 23.6, "leaded tin bronze C93200": 18.0}
	for _, m := range Metals() {
		got, ok := MetalOf(m.Name)
		require.True(t, ok)
		require.Equal(t, m, got)
		require.NoError(t, m.check("piston"))
		if want, ok := printed[m.Name]; ok {
			require.InDelta(t, want, m.PerK*1e6, 1e-9)
			require.Equal(t, textbook, m.Source)
			delete(printed, m.Name)
		} else {
			require.Equal(t, fromMemory, m.Source)
		}
	}
	require.Empty(t, printed)
	_, ok := MetalOf("cheese")
	require.False(t, ok)
}

func FuzzSkirtHeat(f *testing.F) {
	f.Add(int64(86e9), int64(5e7), int64(10), 11.4e-6, 19.4e-6, 0.5e-6, int64(20), int64(90), int64(200), int64(1e7))
	f.Add(int64(1), int64(-1), int64(1<<60), 1e-320, math.Inf(1), math.NaN(), int64(-1<<60), int64(1<<60), int64(0), int64(-5))
	f.Fuzz(func(t *testing.T, bore, c, width int64, ab, as, e float64, at, bt, st, hot int64) {
		b, err := tolerance.NewInterval(units.Length(bore), tolerance.Closed, units.Length(bore).Add(units.Length(width)), tolerance.Closed)
		if err != nil {
			b = tolerance.Exactly(units.Length(bore))
		}
		degree := units.Temperature(units.CELSIUS)
		h := SkirtHeat{Bore: b, Clearance: tolerance.Exactly(units.Length(c)), MeasuredAt: units.Temperature(at) * degree,
			BoreMetal: Metal{PerK: ab, PerKError: e}, SkirtMetal: Metal{PerK: as, PerKError: e}}
		tb, ts := tolerance.Exactly(units.Temperature(bt)*degree), tolerance.Exactly(units.Temperature(st)*degree)
		if x, err := h.ClearanceAt(tb, ts); err == nil {
			require.True(t, x.InRange())
		}
		if x, err := h.SkirtMost(units.Length(hot), tb); err == nil {
			require.True(t, x.InRange())
		}
		if x, ok, err := h.TogetherMost(units.Length(hot)); err == nil && ok {
			require.True(t, x.InRange())
		}
		if x, err := h.ColdFor(units.Length(hot), tb, ts); err == nil {
			require.True(t, x.InRange())
		}
	})
}
