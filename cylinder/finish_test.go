package cylinder

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// Bore bands: the edges by hand, and every size within serves every skirt.
func TestBoreBand(t *testing.T) {
	for _, c := range []struct{ skirt, clearance, want string }{
		{"85.95 ±0.002 mm", "0.04–0.06 mm", "85.992–86.008 mm"},
		{"85.95 mm", "0.05–0.05 mm", "86–86 mm"},
		{"85.95 ±0.002 mm", "max 0.06 mm", "max 86.008 mm"},
		{"85.95 ±0.002 mm", "min 0.04 mm", "min 85.992 mm"},
		{"85.95 ±0.02 mm", "0.04–0.06 mm", ""},
		{"[85.95 mm, ∞)", "0.04–0.06 mm", ""},
		{"[85.95 mm, ∞)", "max 0.06 mm", "max 86.01 mm"},
	} {
		band, ok := BoreBand(boreAt(c.skirt), tolerance.MustParseBand(c.clearance))
		require.Equal(t, c.want != "", ok, "%v", c)
		if ok {
			require.Equal(t, tolerance.MustParseBand(c.want), band)
		}
	}
	_, ok := BoreBand(boreAt("85 mm"), tolerance.Band{})
	require.False(t, ok)
	// An open skirt stands on no end, so the bore may.
	band, ok := BoreBand(boreAt("(85.94 mm, 85.96 mm)"), tolerance.MoreThan(boreLen("0.04 mm")))
	require.True(t, ok)
	require.Equal(t, tolerance.AtLeast(boreLen("86 mm")), band)
}

// By hand: an alloy piston at 30 °C, 19.4e-6, measures 85.95; at 20 °C it is
// 85.95/1.000194 = 85.933329; with 0.05, 85.983329 mm; an iron block at 26 °C,
// 11.4e-6, must then show 85.983329 × 1.0000684 = 85.989210 mm.
func TestFinishSizes(t *testing.T) {
	p := FinishPlan{
		Skirts: []tolerance.Bracket{boreAt("85.95 mm"), boreAt("85.96 ±0.001 mm")}, Clearance: boreLen("0.05 mm"), Honing: boreLen("0.06 mm"),
		Pistons: instrument.At(units.MustParseTemperature("30 °C"), 0, 19.4e-6, 0),
		Block:   instrument.At(units.MustParseTemperature("26 °C"), 0, 11.4e-6, 0),
	}
	s, err := FinishSizes(p)
	require.NoError(t, err)
	near := func(want float64, b tolerance.Bracket) {
		lo, hi := bothOf(b)
		require.InDelta(t, want, lo.Float(units.InMillimetres), 6e-7)
		require.InDelta(t, want, hi.Float(units.InMillimetres), 6e-7)
	}
	near(85.933329, s[0].Skirt)
	near(85.983329, s[0].Finish)
	near(85.923329, s[0].Rough)
	near(85.989210, s[0].FinishNow)
	near(85.929206, s[0].RoughNow)
	// At 20 °C all is exact, and now is the same.
	p.Pistons, p.Block = instrument.Thermal{}, instrument.Thermal{}
	s, err = FinishSizes(p)
	require.NoError(t, err)
	require.Equal(t, FinishSize{boreAt("85.95 mm"), boreAt("86 mm"), boreAt("85.94 mm"), boreAt("86 mm"), boreAt("85.94 mm")}, s[0])
	require.Equal(t, boreAt("[86.009 mm, 86.011 mm]"), s[1].Finish)

	for name, c := range map[string]struct {
		change func(*FinishPlan)
		want   string
	}{
		"no skirt":   {func(p *FinishPlan) { p.Skirts = nil }, "skirts (none)"},
		"skirt":      {func(p *FinishPlan) { p.Skirts = []tolerance.Bracket{boreAt("0 mm")} }, "skirt 1"},
		"clearance":  {func(p *FinishPlan) { p.Clearance = -1 }, "clearance"},
		"hone":       {func(p *FinishPlan) { p.Honing = -1 }, "honing stock"},
		"unit":       {func(p *FinishPlan) { p.Clearance = 20 * units.Millimetre }, "is all in its right unit?"},
		"piston hot": {func(p *FinishPlan) { p.Pistons.PerKelvin = 19.4 }, "coefficient"},
		"block hot":  {func(p *FinishPlan) { p.Block.PerKelvin = 11.4 }, "coefficient"},
	} {
		p := p
		c.change(&p)
		_, err := FinishSizes(p)
		require.ErrorContains(t, err, c.want, name)
	}
}

// The generic formulas hold every case of their brackets, and allocate nothing.
func TestBoreFormulas_brackets(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 1))
	draw := func(lo int64) (tolerance.Bracket, units.Length) {
		a, w := lo+r.Int64N(1e9), r.Int64N(1e6)
		return boreSpan(units.Length(a), units.Length(a+w)), units.Length(a + r.Int64N(w+1))
	}
	for range 1000 {
		d, dx := draw(86e9)
		w, wx := draw(0)
		v, vx := draw(0)
		c, cx := draw(0)
		h, hx := draw(0)
		require.True(t, LeastSizeOnAxis(d, w, c, h).Contains(LeastSizeOnAxis(dx, wx, cx, hx)))
		require.True(t, LeastSizeMoved(d, w, v, c, h).Contains(LeastSizeMoved(dx, wx, vx, cx, hx)))
		require.True(t, BoreShift(w, v).Contains(BoreShift(wx, vx)))
		require.True(t, WallCut(d, d, w, v).Contains(WallCut(dx, dx, wx, vx)))
		require.True(t, SizeForWallCut(c, d, w, v).Contains(SizeForWallCut(cx, dx, wx, vx)))
		require.True(t, TaperPer(w, d, h).Contains(TaperPer(wx, dx, hx)))
		lo, hi := LeastSizeByDiameters(d, d.Add(w), c, h)
		x, y := LeastSizeByDiameters(dx, dx+wx, cx, hx)
		require.True(t, lo.Contains(x) && hi.Contains(y))
	}
	d, w := 86*units.Millimetre, units.Millimetre
	require.Zero(t, testing.AllocsPerRun(100, func() { boreLength = LeastSizeOnAxis(d, w, w, w) + LeastSizeMoved(d, w, w, w, w) + BoreShift(w, d) }))
}
