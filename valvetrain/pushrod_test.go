package valvetrain

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Square at mid-lift wipes the least.
func TestSweepLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 9))
	for range 500 {
		arm, lift := units.Length(2e10+r.Int64N(4e10)), units.Length(1e9+r.Int64N(1.5e10))
		best, err := SweepWidth(arm, lift, 0)
		require.NoError(t, err)
		last := best
		for k := range 5 {
			mid := units.Length(k+1) * units.Millimetre / 2
			up, err := SweepWidth(arm, lift, mid)
			require.NoError(t, err)
			down, err := SweepWidth(arm, lift, -mid)
			require.NoError(t, err)
			require.InDelta(t, int64(up), int64(down), 1)
			require.Greater(t, up, last)
			last = up
		}
	}
	for _, bad := range [][3]units.Length{{0, 1, 0}, {units.Metre + 1, 1, 0}, {units.Millimetre, -1, 0}, {units.Millimetre, 3 * units.Millimetre, 0}, {units.Millimetre, units.Millimetre, units.Millimetre}} {
		_, err := SweepWidth(bad[0], bad[1], bad[2])
		require.ErrorIs(t, err, ErrInput)
	}
}

func tipContact() TipContact {
	return TipContact{Where: "inlet 2", Arm: stemAt("36 ±0.2 mm"), Lift: stemAt("12 ±0.1 mm"), Shut: stemAt("6 ±0.1 mm"),
		Tip: stemAt("7 mm"), Off: stemAt("-0.3 ±0.1 mm"), WidthLimits: stemWorn("max 1.2 mm"), EdgeLimits: stemWorn("min 1.0 mm")}
}

// By hand: 36 − √(36² − 6²) = 36 − √1260 = 0.503521; the contact goes outward by as much, from
// −0.3 to 0.2.
func TestTipContact(t *testing.T) {
	exact := tipContact()
	exact.Arm, exact.Lift, exact.Shut, exact.Off = stemAt("36 mm"), stemAt("12 mm"), stemAt("6 mm"), stemAt("-0.3 mm")
	r, err := exact.Inspect()
	require.NoError(t, err)
	lo, hi := inputEnds(r.Width.Least)
	require.InDelta(t, 0.503521, lo.Float(units.InMillimetres), 1e-6)
	require.InDelta(t, 0.503521, hi.Float(units.InMillimetres), 1e-6)
	require.True(t, r.Mid.Contains(0))
	least, _ := inputEnds(r.Edge.Least)
	require.InDelta(t, 3.5-0.3, least.Float(units.InMillimetres), 1e-6)
	require.Equal(t, tolerance.Usable, r.Width.Standing)
	require.Contains(t, r.Next, "none by this test")

	// The bracket holds every case.
	rnd := rand.New(rand.NewPCG(2, 9))
	for range 200 {
		c := tipContact()
		shut := units.Length(rnd.Int64N(24e9) - 8e9)
		lift := units.Length(6e9 + rnd.Int64N(8e9))
		c.Shut, c.Lift = inputSpan(shut, shut+3*units.Millimetre), inputSpan(lift, lift+2*units.Millimetre)
		r, err := c.Inspect()
		require.NoError(t, err)
		wLo, _ := inputEnds(r.Width.Least)
		_, wHi := inputEnds(r.Width.Greatest)
		eLo, _ := inputEnds(r.Edge.Least)
		for range 20 {
			s, l := shut+units.Length(rnd.Int64N(3e9+1)), lift+units.Length(rnd.Int64N(2e9+1))
			arm := units.Length(35.8e9) + units.Length(rnd.Int64N(4e8+1))
			w, err := SweepWidth(arm, l, SweepMidHeight(s, l))
			require.NoError(t, err)
			require.GreaterOrEqual(t, w, wLo-1)
			require.LessOrEqual(t, w, wHi+1)
			// Follow the contact through the lift.
			for k := range 11 {
				y := s - l*units.Length(k)/10
				at := SweepFrom(driveFloat(arm.Float(units.InMillimetres)), driveFloat(y.Float(units.InMillimetres)), driveFloat(s.Float(units.InMillimetres)))
				place := math.Abs(-0.3 + float64(at))
				require.LessOrEqual(t, eLo.Float(units.InMillimetres), 3.5-place+1e-9)
			}
		}
	}
	for _, c := range []struct {
		change func(*TipContact)
		next   string
	}{
		{func(c *TipContact) { c.Off = stemAt("3.4 mm") }, "run off"},
		{func(c *TipContact) { c.Shut = stemAt("12 mm") }, "raise the pivot"},
		{func(c *TipContact) { c.Shut = stemAt("0 mm") }, "lower the pivot"},
		{func(c *TipContact) { c.Shut = stemAt("6 ±5 mm") }, "more finely"},
		{func(c *TipContact) { c.WidthLimits = stemWorn("max 0.50 mm") }, "find out"},
		{func(c *TipContact) { c.EdgeLimits = stemWorn("min 3.15 mm") }, "find out"},
	} {
		x := tipContact()
		c.change(&x)
		r, err := x.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	contrary := tolerance.Spec{New: tolerance.MustParseBand("max 3 mm"), Wear: tolerance.MustParseBand("max 2 mm")}
	for _, spoil := range []func(*TipContact){
		func(c *TipContact) { c.Arm = stemAt("0 mm") }, func(c *TipContact) { c.Lift = stemAt("-1 mm") }, func(c *TipContact) { c.Tip = tolerance.Bracket{} },
		func(c *TipContact) { c.Shut = stemAt("40 mm") }, func(c *TipContact) { c.WidthLimits = contrary }, func(c *TipContact) { c.EdgeLimits = contrary },
	} {
		x := tipContact()
		spoil(&x)
		_, err := x.Inspect()
		require.ErrorIs(t, err, ErrInput)
	}
}

// By hand: a checking rod of 190 mm with 2.5 turns of 1 mm out is 192.5 mm; with
// 0.60 mm left at the valve and 0.15 wanted it lacks 0.45/1.5 = 0.30 mm.
func TestPushrod(t *testing.T) {
	rod := CheckingRodLength(stemLen("190 mm"), units.Millimetre, tolerance.Ratio{Num: 5, Den: 2})
	require.Equal(t, stemLen("192.5 mm"), rod)
	ratio := tolerance.Ratio{Num: 3, Den: 2}
	require.Equal(t, stemLen("192.8 mm"), PushrodForClearance(rod, stemLen("0.60 mm"), stemLen("0.15 mm"), ratio))
	require.Equal(t, stemLen("195 mm"), PushrodForPivot(stemLen("190 mm"), stemLen("3 mm"), ratio))

	p := Pushrod{Where: "exhaust 3", Checking: stemAt("192.5 ±0.01 mm"), Measured: stemAt("[0.60 mm, 0.65 mm)"), Wanted: tolerance.MustParseBand("0.10–0.30 mm"), Ratio: ratio}
	stock := []ShimPiece{{"193.2", stemAt("193.2 ±0.01 mm")}, {"192.8", stemAt("192.8 ±0.01 mm")}, {"192.7", stemAt("192.7 ±0.01 mm")}}
	c, err := p.Choose(stock)
	require.NoError(t, err)
	require.True(t, c.Ok)
	require.Equal(t, 1, c.Size)
	// 0.60 − (192.81 − 192.49)·1.5 = 0.12 and 0.65 − (192.79 − 192.51)·1.5 = 0.23.
	require.Equal(t, stemAt("[0.12 mm, 0.23 mm)"), c.After)
	require.True(t, stock[1].Thickness.Within(c.Needed))
	require.Contains(t, c.Next, "fit 192.8")

	none, err := p.Choose(stock[:1])
	require.NoError(t, err)
	require.Equal(t, -1, none.Size)
	require.Contains(t, none.Next, "wholly in")
	p.Measured = stemAt("[0.60 mm, 0.80 mm)")
	wide, err := p.Choose(stock)
	require.NoError(t, err)
	require.True(t, wide.Needed.IsZero())
	require.Contains(t, wide.Next, "more finely")

	// A plunger pressed in by 0.2 where 0.5 to 1.5 is wanted: 0.3 to 1.3 longer.
	h := Pushrod{Checking: stemAt("190 mm"), Measured: stemAt("0.2 mm"), Wanted: tolerance.MustParseBand("0.5–1.5 mm"), Preload: true}
	c, err = h.Choose([]ShimPiece{{"191", stemAt("191 mm")}, {"190.6", stemAt("190.6 mm")}})
	require.NoError(t, err)
	require.Equal(t, stemAt("[190.3 mm, 191.3 mm]"), c.Needed)
	require.Equal(t, stemAt("190.8 mm"), c.Ideal)
	require.Equal(t, 1, c.Size, "of two as near the shorter")
	require.Equal(t, stemAt("0.8 mm"), c.After)

	for _, spoil := range []func(*Pushrod){
		func(p *Pushrod) { p.Checking = stemAt("0 mm") }, func(p *Pushrod) { p.Measured = stemAt("[0 mm, ∞)") }, func(p *Pushrod) { p.Measured = stemAt("11 mm") },
		func(p *Pushrod) { p.Wanted = tolerance.MustParseBand("max 1 mm") }, func(p *Pushrod) { p.Ratio.Num = -1 }, func(p *Pushrod) { p.Checking = stemAt("2 m") },
	} {
		x := h
		spoil(&x)
		_, err := x.Choose(nil)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err = h.Choose([]ShimPiece{{"", stemAt("-1 mm")}})
	require.ErrorContains(t, err, "pushrod 1")
	_, err = h.Choose(make([]ShimPiece, 513))
	require.ErrorIs(t, err, ErrInput)
}

// The window holds exactly the rods that serve.
func TestPushrodWindow(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 3000 {
		span := func(at, w int64) tolerance.Bracket {
			a := at + r.Int64N(50)
			return inputSpan(units.Length(a), units.Length(a+r.Int64N(w)))
		}
		p := Pushrod{Checking: span(2000, 4), Measured: span(50, 8), Wanted: tolerance.BandFrom(inputSpan(60, units.Length(70+r.Int64N(40)))), Preload: r.IntN(2) == 0, Ratio: clearanceRatios[r.IntN(4)]}
		rod := span(1990, 5)
		c, err := p.Choose([]ShimPiece{{"rod", rod}})
		require.NoError(t, err)
		require.Equal(t, c.Ok, !c.Needed.IsZero() && rod.Within(c.Needed), "%+v %v %v", p, rod, c)
	}
}
