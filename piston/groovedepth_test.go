package piston

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// A land of 85.40 mm, a root of 77.60 mm and a ring of 3.60 mm, by hand: depth
// 3.90, flush 0.30, and in a bore of 86.00 mm 0.60.
func TestRingBack(t *testing.T) {
	depth := GrooveDepth(mm("85.40"), mm("77.60"))
	require.Equal(t, mm("3.90"), depth)
	require.Equal(t, mm("0.30"), RingBackClearance(depth, mm("3.60")))
	require.Equal(t, mm("0.60"), RingBackRunning(mm("86.00"), mm("77.60"), mm("3.60")))
	r := rand.New(rand.NewPCG(3, 5))
	for range 1000 {
		land, root, thick := units.Length(r.Int64N(2e11)), units.Length(r.Int64N(2e11)), units.Length(r.Int64N(1e10))
		d := GrooveDepth(land, root)
		require.LessOrEqual(t, (GrooveRoot(land, d) - root).Abs(), units.Picometre, "undone to a quantum")
		require.Equal(t, thick, RingThicknessFor(d, RingBackClearance(d, thick)), "undone")
		// What the bore's clearance on one side adds.
		bore := land + 2*units.Length(r.Int64N(1e8))
		require.LessOrEqual(t, (RingBackClearance(d, thick) + (bore-land)/2 - RingBackRunning(bore, root, thick)).Abs(), units.Picometre)
	}
	e, err := uncertainty.Normal("land", mm("85.40"), mm("0.01"))
	require.NoError(t, err)
	require.Equal(t, mm("0.005"), GrooveDepth(e, uncertainty.Exactly(mm("77.60"))).StandardUncertainty())
	done, err := working.Solve(RingBackRunning(working.Given("bore", "D", mm("86")), working.Given("root", "R", mm("77.6")), working.Given("thickness", "a", mm("3.6"))).Named("back clearance", "c"),
		units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, done.Text(), "c = (D − R) ÷ 2 − a")
}

func TestAssessRingBack(t *testing.T) {
	limits := tolerance.Spec{New: band("0.2–0.6 mm")}
	f, err := AssessRingBack("piston 1, top groove", limits, []tolerance.Bracket{at("3.90 ±0.02 mm"), at("3.85 ±0.02 mm")}, []tolerance.Bracket{at("3.60 ±0.01 mm"), at("3.60 ±0.01 mm")})
	require.NoError(t, err)
	require.Equal(t, at("[0.22 mm, 0.28 mm]"), f.Least)
	require.Equal(t, tolerance.AsNew, f.Standing)
	for want, c := range map[string][2]string{
		"stands proud of its land": {"3.5 mm", "3.6 mm"}, "groove depth 0 mm": {"0 mm", "3.6 mm"}, "ring thickness -1 mm": {"3.5 mm", "-1 mm"},
	} {
		_, err := AssessRingBack("x", limits, []tolerance.Bracket{at(c[0])}, []tolerance.Bracket{at(c[1])})
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
	}
	_, err = AssessRingBack("x", limits, nil, []tolerance.Bracket{at("1 mm")})
	require.ErrorContains(t, err, "at every place alike")
	// Readings that allow a ring that stands proud keep the sign.
	c, err := MeasureRingBack(at("3.60 ±0.02 mm"), at("3.60 ±0.01 mm"))
	require.NoError(t, err)
	require.Equal(t, at("[-0.03 mm, 0.03 mm]"), c)
}

func recut() GrooveRecut {
	return GrooveRecut{
		Where: "piston 2, top groove", Width: at("2.085 ±0.005 mm"), Cut: mm("0.10"), RingHeight: band("1.978–1.990 mm"), Clearance: band("0.03–0.07 mm"),
		Land: at("5.00 ±0.02 mm"), LeastLand: mm("4.20"),
		Spacers: []Spacer{{"1.00 mm", band("0.990–1.000 mm")}, {"0.10 mm", band("0.095–0.105 mm")}, {"0.60 mm", band("0.590–0.600 mm")}},
	}
}

// The thinnest spacer for which the worn groove comes clean, by hand: a ring of
// 1.978 to 1.990 with 0.03 to 0.07 and a spacer of 0.590 to 0.600 asks for
// 1.990 + 0.03 + 0.600 = 2.620 to 1.978 + 0.07 + 0.590 = 2.638 mm; the worn
// groove needs 2.19 at the most. One of 0.10 ends at 2.143: not clean.
func TestChooseSpacer(t *testing.T) {
	c, err := ChooseSpacer(recut())
	require.NoError(t, err)
	require.Equal(t, 1, c.Chosen)
	require.Equal(t, "0.10 mm", c.Fits[0].Name, "from the thinnest")
	require.Equal(t, tolerance.Below, c.Fits[0].CleansUp)
	require.Equal(t, band("2.620–2.638 mm"), c.Fits[1].Width)
	require.True(t, c.Fits[1].Fits())
	require.Contains(t, c.Next, "re-cut the groove to 2.62")
	// The widest one takes 3.02 − 2.08 = 0.94 mm of a land of 4.98: 4.04 is left.
	require.Equal(t, tolerance.Below, c.Fits[2].LandLeft)

	for _, x := range []struct {
		name   string
		change func(*GrooveRecut)
		chosen int
		next   string
	}{
		{"land not measured", func(g *GrooveRecut) { g.Land = tolerance.Bracket{} }, -1, "measure the land: spacer 0.60 mm may do"},
		{"land in doubt", func(g *GrooveRecut) { g.LeastLand = mm("4.45") }, -1, "more closely"},
		{"land too thin", func(g *GrooveRecut) { g.LeastLand = mm("4.9") }, -1, "renew the piston"},
		{"tolerances too wide", func(g *GrooveRecut) { g.Clearance = band("0.03–0.04 mm") }, -1, "renew the piston"},
		{"worn too far", func(g *GrooveRecut) { g.Width = at("3.5 mm") }, -1, "renew the piston"},
	} {
		g := recut()
		x.change(&g)
		c, err := ChooseSpacer(g)
		require.NoError(t, err, x.name)
		require.Equal(t, x.chosen, c.Chosen, x.name)
		require.Contains(t, c.Next, x.next, x.name)
	}
	for want, change := range map[string]func(*GrooveRecut){
		"spacers none is not at least one":    func(g *GrooveRecut) { g.Spacers = nil },
		"groove width":                        func(g *GrooveRecut) { g.Width = at("[2 mm, ∞)") },
		"new ring height":                     func(g *GrooveRecut) { g.RingHeight = band("max 2 mm") },
		"side clearance wanted":               func(g *GrooveRecut) { g.Clearance = band("-0.1–0.2 mm") },
		"thickness of spacer \"1.00 mm\" min": func(g *GrooveRecut) { g.Spacers[0].Thickness = band("min 1 mm") },
		"cut -1 mm":                           func(g *GrooveRecut) { g.Cut = -units.Millimetre },
		"least land":                          func(g *GrooveRecut) { g.LeastLand = -1 },
		"land -1 mm":                          func(g *GrooveRecut) { g.Land = at("-1 mm") },
	} {
		g := recut()
		change(&g)
		_, err := ChooseSpacer(g)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
	}
}

// Whatever ring and spacer of their bands, in a groove cut to whatever width is
// allowed, has a clearance that is allowed; and one step beyond, some doesn't.
func TestChooseSpacer_everyRing(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 5))
	g := recut()
	c, err := ChooseSpacer(g)
	require.NoError(t, err)
	w := c.Fits[1].Width
	lo, _ := w.Lower()
	hi, _ := w.Upper()
	s := band("0.590–0.600 mm")
	s0, _ := s.Lower()
	s1, _ := s.Upper()
	h0, _ := g.RingHeight.Lower()
	h1, _ := g.RingHeight.Upper()
	pick := func(a, b units.Length) units.Length { return a + units.Length(r.Int64N(int64(b-a)+1)) }
	for range 2000 {
		width, ring, spacer := pick(lo, hi), pick(h0, h1), pick(s0, s1)
		clearance := SideClearance(width, ring) - spacer
		require.Equal(t, tolerance.Within, g.Clearance.Judge(tolerance.Exactly(clearance)))
		require.Equal(t, spacer, GrooveSpacer(GrooveRecutWidth(ring, clearance, spacer), ring, clearance), "undone")
	}
	require.Equal(t, tolerance.Below, g.Clearance.Judge(tolerance.Exactly(lo-1-h1-s1)))
	require.Equal(t, tolerance.Above, g.Clearance.Judge(tolerance.Exactly(hi+1-h0-s0)))
}

func BenchmarkGroove(b *testing.B) {
	b.Run("lib=tenthou/op=back", func(b *testing.B) {
		b.ReportAllocs()
		x, y, z := mm("86"), mm("77.6"), mm("3.6")
		for b.Loop() {
			sink = RingBackRunning(x, y, z)
		}
	})
	b.Run("lib=tenthou/op=spacer", func(b *testing.B) {
		b.ReportAllocs()
		g := recut()
		for b.Loop() {
			if _, err := ChooseSpacer(g); err != nil {
				b.Fatal(err)
			}
		}
	})
}
