package crank

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func TestRods_published(t *testing.T) {
	limits := RodLimits{
		Length: tolerance.Spec{New: tolerance.MustBetween(-2*units.Thou, 0)},
		Bend:   tolerance.Spec{New: tolerance.MustParseBand("max 0.004 in")},
	}
	passes := map[string]tolerance.Standing{"yes": tolerance.AsNew, "no": tolerance.OutsideNewBand}
	vectors.Load(t, "published/crank_rods_manual.txt").Each(t, func(t *testing.T, c vectors.Case) {
		right, left := lengthOf(c.Text("right")), lengthOf(c.Text("left"))
		length, bend := RodLength(right, left), RodBend(right, left)
		c.Near("length", length.Float(units.InThou))
		c.Near("bend", bend.Float(units.InThou))
		r, err := RodCheck{Where: "rod 1", Right: tolerance.Exactly(right), Left: tolerance.Exactly(left), Limits: limits}.Assess()
		require.NoError(t, err)
		require.Equal(t, passes[c.Choice("length_passes", "yes", "no")], r.Findings[0].Standing)
		require.Equal(t, passes[c.Choice("bend_passes", "yes", "no")], r.Findings[1].Standing)
		// And back.
		up, down := RodReadings(length, bend)
		require.ElementsMatch(t, []units.Length{right, left}, []units.Length{up, down})
	})
	// FAA-H-8083-32: the blade's thickness over the distance between the blocks,
	// .006 in over 6 in is .001 in in an inch.
	require.Equal(t, units.Thou, RodPer(6*units.Thou, 6*units.Inch, units.Inch))
	require.Equal(t, 6*units.Thou, RodPer(units.Thou, units.Inch, 6*units.Inch))
}

// Against geometry of two half circles.
func TestRodCapShift_reference(t *testing.T) {
	vectors.Load(t, "reference/crank_rod_capshift.txt").Each(t, func(t *testing.T, c vectors.Case) {
		a := tolerance.Float(c.Float("angle") * math.Pi / 180)
		c.Near("shift", float64(RodCapShiftByBore(tolerance.Float(c.Float("diameter")), tolerance.Float(c.Float("mirrored")), a)))
	})
	require.Equal(t, lengthOf("0.02 mm"), RodCapShift(lengthOf("0.03 mm"), lengthOf("-0.01 mm")))
}

func TestRods_inverses(t *testing.T) {
	big, small, gap := lengthOf("51.6 mm"), lengthOf("22 mm"), lengthOf("96.3 mm")
	c := RodCentres(gap, big, small)
	require.Equal(t, lengthOf("133.1 mm"), c) // 96.3 + 25.8 + 11
	require.Equal(t, gap, RodGap(c, big, small))
	require.Equal(t, c, RodCentresOver(RodOver(c, big, small), big, small))
	require.Equal(t, lengthOf("0.2 mm"), RodSideClearance(lengthOf("44.2 mm"), lengthOf("22 mm"), lengthOf("22 mm")))
	require.Equal(t, lengthOf("44 mm"), RodWidths(lengthOf("44.2 mm"), lengthOf("0.2 mm")))
	// A rod bent by 0.03 mm in a fixture out by 0.01: 0.04, turned −0.02.
	rod, fixture := RodTurned(lengthOf("0.04 mm"), lengthOf("-0.02 mm"))
	require.Equal(t, lengthOf("0.03 mm"), rod)
	require.Equal(t, lengthOf("0.01 mm"), fixture)
	require.Equal(t, lengthOf("0.05 mm"), RodTwist(lengthOf("0.02 mm"), lengthOf("-0.03 mm")))
	require.InDelta(t, math.Atan(0.0005), float64(RodAngle(tolerance.Float(0.05), 100)), 1e-15)
	free, tight := lengthOf("62.1 mm"), lengthOf("62.23 mm")
	require.Equal(t, tight, BoltTightened(free, BoltStretch(free, tight)))
	require.Equal(t, lengthOf("0.1 mm"), BoltGrowth(lengthOf("62 mm"), free))
	load := BoltLoad(tolerance.Float(0.13), 210000, BoltArea(tolerance.Float(8)), 55)
	require.InDelta(t, 0.13, float64(BoltStretchUnder(load, 210000, BoltArea(tolerance.Float(8)), 55)), 1e-15)
}

// OpenStax, College Physics, example 5.4: 62 kg on a bone of 40 cm and 2 cm
// radius, with 9·10⁹ N/m², shortens it by 2·10⁻⁵ m.
func TestBolt_published(t *testing.T) {
	s := BoltStretchUnder(tolerance.Float(62*9.80), 9000, BoltArea(tolerance.Float(40)), 400)
	require.Equal(t, 2.0, math.Round(float64(s)/1000*1e5))
}

func TestRods_otherReadings(t *testing.T) {
	require.Equal(t, floatOf("[-0.001 in, 0 in]"), RodLength(floatOf("0.001 ±0.0005 in"), floatOf("-0.002 ±0.0005 in")))
	require.Equal(t, floatOf("[0.002 in, 0.004 in]"), RodBend(floatOf("0.001 ±0.0005 in"), floatOf("-0.002 ±0.0005 in")))
	d := func(name string, v, e float64, unit string) uncertainty.Dual {
		x, err := uncertainty.NewDual(name, v, unit, uncertainty.RectangularShape, e)
		require.NoError(t, err)
		return x
	}
	shift := RodCapShiftByBore(d("one", 50, 0.002, "mm"), d("other", 50.02, 0.002, "mm"), uncertainty.ExactlyReal(0))
	require.InDelta(t, 0.01, shift.Value(), 1e-12)
	require.InDelta(t, 0.002/math.Sqrt(3)/math.Sqrt2, shift.StandardUncertainty(), 1e-12)

	length := RodLength(working.Given("right dial", "R", units.Thou), working.Given("left dial", "L", -2*units.Thou)).Named("length over the master", "l")
	s, err := working.Solve(length, units.Style[units.Length]{Unit: units.InInches, Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "−0.0005 in")

	stretch := BoltStretch(working.Given("free", "L₀", lengthOf("62.1 mm")), working.Given("tightened", "L₁", lengthOf("62.23 mm"))).Named("stretch", "δ")
	s, err = working.Solve(stretch, units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.13 mm")
}

func rodCheck() RodCheck {
	return RodCheck{
		Where: "rod 3", Right: floatOf("0.01 ±0.002 mm"), Left: floatOf("-0.03 ±0.002 mm"), Span: lengthOf("160 mm"),
		Twist: floatOf("[0.05 mm, 0.06 mm)"), TwistSpan: lengthOf("150 mm"), Master: floatOf("133.1 ±0.005 mm"), Stroke: lengthOf("76 mm"),
		Crankpin: floatOf("22.2 ±0.01 mm"), Widths: floatsOf("22 ±0.01 mm"),
		Limits: RodLimits{
			Length: tolerance.Spec{New: tolerance.MustBetween(-50*units.Micrometre, 50*units.Micrometre)}, BendPer: tolerance.Spec{New: tolerance.MustParseBand("max 0.03 mm")},
			TwistPer: tolerance.Spec{New: tolerance.MustParseBand("max 0.05 mm")}, Centres: tolerance.Spec{New: tolerance.MustParseBand("133.0–133.2 mm")},
			Side: tolerance.Spec{New: tolerance.MustParseBand("0.1–0.3 mm"), Wear: tolerance.MustParseBand("max 0.4 mm")},
		},
	}
}

// By hand: length −0.01, bend 0.04 ± 0.004 over 160 mm, so 0.025 over 100; twist
// 0.05 to 0.06 over 150, so 0.0333 to 0.04 over 100; side 0.2.
func TestRodCheck(t *testing.T) {
	r, err := rodCheck().Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Worst)
	require.Contains(t, r.Next, "within the limits")
	by := map[string]tolerance.Finding{}
	for _, f := range r.Findings {
		by[f.Measure] = f
	}
	require.Len(t, by, 7)
	require.Equal(t, floatOf("[-0.012 mm, -0.008 mm]"), by["length over the master"].Greatest)
	require.Equal(t, floatOf("[133.083 mm, 133.097 mm]"), by["distance between centres"].Greatest)
	require.Equal(t, floatOf("[0.0225 mm, 0.0275 mm]"), by["bend over 100 mm"].Greatest)
	hi, _ := by["twist over 100 mm"].Greatest.Upper()
	require.Equal(t, lengthOf("0.04 mm"), hi)
	require.Equal(t, floatOf("[0.18 mm, 0.22 mm]"), by["side clearance"].Greatest)
	_, err = json.Marshal(r)
	require.NoError(t, err)

	c := rodCheck()
	c.Limits.Per, c.Limits.BendPer = 50*units.Millimetre, tolerance.Spec{Wear: tolerance.MustParseBand("max 0.011 mm")}
	r, err = c.Assess()
	require.NoError(t, err)
	require.Equal(t, "bend over 50 mm", r.WorstAt)
	require.Contains(t, r.Next, "straighten it only where")
	c.CrackedCap = true
	r, err = c.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "cracked cap isn't straightened")
	c = rodCheck()
	c.Side = floatsOf("[0.38 mm, 0.41 mm)")
	r, err = c.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Worst)
	require.Contains(t, r.Next, "not a pass")
	c.Side = floatsOf("[0.5 mm, ∞)")
	r, err = c.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "side clearance is out of limits")
	c.Limits = RodLimits{}
	r, err = c.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "no limits were given")
}

func TestRodCheck_refuses(t *testing.T) {
	bad := tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	for _, c := range []struct {
		name, reason string
		spoil        func(*RodCheck)
	}{
		{"nothing", "readings none", func(c *RodCheck) { *c = RodCheck{Where: "rod 3"} }},
		{"one dial", "dials one of the two", func(c *RodCheck) { c.Left = tolerance.Bracket{} }},
		{"far", "right dial", func(c *RodCheck) { c.Right = floatOf("11 m") }},
		{"left far", "left dial", func(c *RodCheck) { c.Left = floatOf("[0 mm, ∞)") }},
		{"negative twist", "twist", func(c *RodCheck) { c.Twist = floatOf("-0.1 mm") }},
		{"no span", "span of the dials 0 mm", func(c *RodCheck) { c.Span = 0 }},
		{"no twist span", "span of the twist", func(c *RodCheck) { c.TwistSpan = 0 }},
		{"negative per", "span of the limits", func(c *RodCheck) { c.Limits.Per = -1 }},
		{"negative stroke", "stroke", func(c *RodCheck) { c.Stroke = -1 }},
		{"master", "master", func(c *RodCheck) { c.Master = floatOf("-133 mm") }},
		{"short rod", "above half the stroke of 300 mm", func(c *RodCheck) { c.Stroke = 300 * units.Millimetre }},
		{"no crankpin", "crankpin", func(c *RodCheck) { c.Crankpin = tolerance.Bracket{} }},
		{"five rods", "rods on the crankpin 5", func(c *RodCheck) { c.Widths = make([]tolerance.Bracket, 5) }},
		{"width", "width of a rod", func(c *RodCheck) { c.Widths = floatsOf("0 mm") }},
		{"pinched", "they pinch", func(c *RodCheck) { c.Widths = floatsOf("22.5 mm") }},
		{"side", "side clearance", func(c *RodCheck) { c.Side = floatsOf("-1 mm") }},
		{"limits", "", func(c *RodCheck) { c.Limits.Length = bad }},
	} {
		x := rodCheck()
		c.spoil(&x)
		_, err := x.Assess()
		require.Error(t, err, c.name)
		require.ErrorContains(t, err, c.reason, c.name)
	}
}

func rodBore() RodBore {
	return RodBore{
		Where: "rod 1, big end", Planes: []string{"front", "rear"}, Directions: []string{"in line", "60° left", "60° right"},
		Sizes: [][]tolerance.Bracket{
			floatsOf("51.612 ±0.001 mm", "51.606 ±0.001 mm", "51.605 ±0.001 mm"),
			floatsOf("51.610 ±0.001 mm", "51.605 ±0.001 mm", "51.604 ±0.001 mm"),
		},
		Size:    tolerance.Spec{New: tolerance.MustParseBand("51.600–51.615 mm")},
		Ovality: tolerance.Spec{New: tolerance.MustParseBand("max 0.010 mm")},
		Taper:   tolerance.Spec{New: tolerance.MustParseBand("max 0.005 mm")},
	}
}

func TestRodBore(t *testing.T) {
	r, err := rodBore().Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Worst)
	require.Equal(t, floatOf("[0.005 mm, 0.009 mm]"), r.Ovality[0].Greatest) // 0.007 ± 0.002
	require.Equal(t, floatOf("[0 mm, 0.004 mm]"), r.Taper[0].Greatest)
	require.Len(t, r.Ovality, 2)
	require.Len(t, r.Taper, 3)

	b := rodBore()
	b.Sizes[1][2] = tolerance.Bracket{}
	r, err = b.Assess()
	require.NoError(t, err)
	require.Equal(t, []string{"rear, 60° right"}, r.Missing)
	require.Equal(t, tolerance.CantTell, r.Worst, "a place that wasn't read is no pass")
	require.Contains(t, r.WorstAt, "which wasn't read")
	require.Len(t, r.Taper, 2)
	b.Sizes[0][0] = floatOf("51.618 mm")
	r, err = b.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.OutsideNewBand, r.Worst)
	require.Equal(t, "size, rod 1, big end", r.WorstAt)

	bad := tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	for name, spoil := range map[string]func(*RodBore){
		"no planes": func(b *RodBore) { b.Planes = nil },
		"rows":      func(b *RodBore) { b.Sizes = b.Sizes[:1] },
		"columns":   func(b *RodBore) { b.Sizes[0] = b.Sizes[0][:2] },
		"negative":  func(b *RodBore) { b.Sizes[0][0] = floatOf("-1 mm") },
		"one reading": func(b *RodBore) {
			b.Planes, b.Sizes, b.Directions = b.Planes[:1], [][]tolerance.Bracket{floatsOf("5 mm")}, b.Directions[:1]
		},
		"size limits":    func(b *RodBore) { b.Size = bad },
		"ovality limits": func(b *RodBore) { b.Ovality = bad },
		"taper limits":   func(b *RodBore) { b.Taper = bad },
	} {
		b := rodBore()
		spoil(&b)
		_, err := b.Assess()
		require.Error(t, err, name)
	}
}
