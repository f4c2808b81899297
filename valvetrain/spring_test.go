package valvetrain

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

func springN(s string) LoadBracket {
	i, err := tolerance.ParseInterval[units.Force](s)
	if err != nil {
		panic(err)
	}
	return i
}

func springBand(s string) tolerance.SpecOf[units.Force] {
	b, err := tolerance.ParseBandOf[units.Force](s)
	if err != nil {
		panic(err)
	}
	return tolerance.SpecOf[units.Force]{New: b}
}

func springWear(s string) tolerance.SpecOf[units.Force] {
	return tolerance.SpecOf[units.Force]{Wear: springBand(s).New}
}

// A lbf/in of a rate, an inch of a length, a lbf of a load.
const psiMPa = 4.4482216152605 / 645.16

// Textbook springs to their printed digits, in the units they are printed in.
func TestSpringPublished(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "published/valvetrain_springs.txt").Each(t, func(t *testing.T, c vectors.Case) {
		G, d, D, n, k := f(c.Float("shear")), f(c.Float("wire")), f(c.Float("mean")), f(c.Float("active")), f(c.Float("rate"))
		if c.Is("found", "rate") {
			c.Near("rate", float64(SpringRateOfCoil(G, d, D, n)))
		} else {
			c.Near("active", float64(SpringActiveFor(G, d, D, k)))
			require.InEpsilon(t, float64(k), float64(SpringRateOfCoil(G, d, D, n)), 1e-4)
		}
		_ = c.Text("found")
		// Each inverse undoes it.
		k = SpringRateOfCoil(G, d, D, n)
		require.InEpsilon(t, float64(n), float64(SpringActiveFor(G, d, D, k)), 1e-14)
		require.InEpsilon(t, float64(d), float64(SpringWireFor(G, D, n, k)), 1e-14)
		require.InEpsilon(t, float64(G), float64(SpringShearFor(d, D, n, k)), 1e-14)
	})
}

// Two valve springs of manuals, with wire, coils and measured loads: the load by
// the coil's rate from the middle free length is in what the manual allows, and
// agrees with the recomputed value; so do rate and load as brackets.
func TestManualSprings(t *testing.T) {
	vectors.Load(t, "published/valvetrain_springloads.txt").Each(t, func(t *testing.T, c vectors.Case) {
		type f = tolerance.Float
		in := func(col string) units.Length { return stemLen(c.Text(col) + " in") }
		lbf := func(col string) units.Force { return units.MustParseForce(c.Text(col) + " lbf") }
		total, err := tolerance.ParseRatio(c.Text("total"))
		require.NoError(t, err)
		coil := SpringCoil{Form: Cylindrical, Ends: SquaredGround, Wire: tolerance.Exactly(in("wire")),
			Outside: inputSpan(in("outside_least"), in("outside_greatest")), Total: total, ShearMPa: 11.5e6 * psiMPa}
		k, err := coil.Rate()
		require.NoError(t, err)
		middle, _ := coil.Outside.Middle()
		solid, err := coil.Solid()
		require.NoError(t, err)
		least, _ := inputEnds(solid)
		require.Less(t, least, in("height"), "a spring isn't loaded below its solid height")
		mean := SpringMeanDiameter(middle, in("wire")).Float(units.InInches)
		n, err := coil.Active()
		require.NoError(t, err)
		rate := SpringRateOfCoil(f(11.5e6), f(c.Float("wire")), f(mean), f(n.Float()))
		kLo, kHi := springEnds(k)
		perInch := float64(units.PoundForcePerInch)
		require.LessOrEqual(t, float64(kLo), float64(rate)*perInch*(1+1e-12))
		require.GreaterOrEqual(t, float64(kHi), float64(rate)*perInch*(1-1e-12))
		free := (c.Float("free_least") + c.Float("free_greatest")) / 2
		load := SpringLoadAt(rate, f(free), f(c.Float("height")))
		c.Near("middle", float64(load))
		require.InEpsilon(t, c.Float("height"), float64(SpringHeightFor(rate, f(free), load)), 1e-14)
		require.InEpsilon(t, free, float64(SpringFreeFor(rate, load, f(c.Float("height")))), 1e-14)
		force, err := units.Nearest(float64(load), units.InPoundsForce)
		require.NoError(t, err)
		band, err := tolerance.Between(lbf("load_least"), lbf("load_greatest"))
		require.NoError(t, err)
		require.Equal(t, tolerance.Within, band.Judge(tolerance.Exactly(force)))
	})
}

// The manuals' own middle loads give 230.5 and 217.1 lbf/in.
func TestManualSpringRates(t *testing.T) {
	for _, c := range []struct{ seat, open, want string }{{"77 lbf", "171.5 lbf", "230.5"}, {"48 lbf", "137 lbf", "217.1"}} {
		k, err := SpringRateBetween(SpringReading{stemAt("1.492 in"), springN(c.seat)}, SpringReading{stemAt("1.082 in"), springN(c.open)})
		require.NoError(t, err)
		lo, hi := springEnds(k)
		require.LessOrEqual(t, hi-lo, units.SpringRate(1), "exact to the quantum")
		require.Equal(t, c.want+" lbf/in", lo.Text(units.InPoundsForcePerInch, 1))
	}
}

// An integral along the wire, and straight lines through readings within their
// errors, are the judge.
func TestSpringReference(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "reference/valvetrain_spring.txt").Each(t, func(t *testing.T, c vectors.Case) {
		v := func(col string) f { return f(c.Float(col)) }
		require.InEpsilon(t, c.Float("rate"), float64(SpringRateOfCoil(v("shear"), v("wire"), v("mean"), v("active"))), 1e-13)
		require.InEpsilon(t, c.Float("shear_part"), float64(SpringShearPart(SpringIndex(v("mean"), v("wire")))), 1e-13)
		mm := func(col string) tolerance.Bracket { return stemAt(c.Text(col) + " ±" + c.Text("eh") + " mm") }
		a := SpringReading{mm("h1"), springN(c.Text("f1") + " ±" + c.Text("ef") + " N")}
		b := SpringReading{mm("h2"), springN(c.Text("f2") + " ±" + c.Text("ef") + " N")}
		h := stemAt(c.Text("h") + " mm")
		k, err := SpringRateBetween(b, a) // in any order
		require.NoError(t, err)
		lo, hi := springEnds(k)
		require.InEpsilon(t, c.Float("k_least"), lo.Float(units.InNewtonsPerMillimetre), 1e-13)
		require.InEpsilon(t, c.Float("k_greatest"), hi.Float(units.InNewtonsPerMillimetre), 1e-13)
		load, err := SpringLoadFrom(a, b, h)
		require.NoError(t, err)
		fLo, fHi := springEnds(load)
		require.InEpsilon(t, c.Float("f_least"), fLo.Float(units.InNewtons), 1e-12)
		require.InEpsilon(t, c.Float("f_greatest"), fHi.Float(units.InNewtons), 1e-12)
		require.InEpsilon(t, float64(SpringLoadBetween(v("f1"), v("h1"), v("f2"), v("h2"), v("h"))),
			float64(SpringLoadAt(SpringRateOfLoads(v("f1"), v("h1"), v("f2"), v("h2")), SpringFreeFor(SpringRateOfLoads(v("f1"), v("h1"), v("f2"), v("h2")), v("f1"), v("h1")), v("h"))), 1e-12)
		if fLo < 0 {
			return // it is loose there
		}
		// The height for that load holds the height again.
		back, err := SpringHeightFrom(a, b, load)
		require.NoError(t, err)
		m, _ := h.Middle()
		require.True(t, back.Contains(m))
	})
}

// From memory (Wahl; Bergsträsser), at the index 6: 23/20 + 0.1025 and 26/21.
func TestSpringFactors(t *testing.T) {
	type f = tolerance.Float
	require.InEpsilon(t, 1.2525, float64(WahlFactor(f(6))), 1e-14)
	require.InEpsilon(t, 26.0/21, float64(BergstrasserFactor(f(6))), 1e-14)
	for c := 4.0; c <= 12; c += 0.5 {
		require.InEpsilon(t, float64(WahlFactor(f(c))), float64(BergstrasserFactor(f(c))), 0.02)
	}
	require.InEpsilon(t, 6, float64(SpringIndex(f(30), f(5))), 1e-15)
	require.InEpsilon(t, 1.0/72, float64(SpringShearPart(f(6))), 1e-14)
	// By hand: 8·300·30/(π·125) = 183.346.
	s := SpringStress(f(300), f(30), f(5), f(1))
	require.InEpsilon(t, 183.3464944, float64(s), 1e-9)
	require.InEpsilon(t, 300, float64(SpringLoadForStress(s, f(30), f(5), f(1))), 1e-14)
}

// 1/16 in over 2 in is 1.79°.
func TestSpringLean(t *testing.T) {
	type f = tolerance.Float
	lean := SpringLean(f(1.0/16), f(2))
	require.InDelta(t, 1.79, float64(lean)*180/math.Pi, 0.005)
	require.InEpsilon(t, 1.0/16, float64(SpringOffSquare(lean, f(2))), 1e-14)
}

func TestSpringHeights(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 8))
	n := func() units.Length { return units.Length(r.Int64N(1e11)) }
	for range 500 {
		a, b, c := n(), n(), n()
		margin := CoilBindMargin(a, b, c)
		require.Equal(t, b, LiftToMargin(a, margin, c))
		require.Equal(t, margin, SpringOpenHeight(a, b)-c)
		require.Equal(t, b, InstalledWithShim(a, SpringShimFor(a, b)))
		require.Equal(t, a-b, InnerHeight(a, b))
	}
}

func TestSpringReadingRefuses(t *testing.T) {
	a, b := SpringReading{stemAt("40 mm"), springN("250 N")}, SpringReading{stemAt("30 mm"), springN("700 N")}
	for _, c := range []struct {
		spoil func(a, b *SpringReading)
		says  string
	}{
		{func(a, b *SpringReading) { a.Height = stemAt("0 mm") }, "height"}, {func(a, b *SpringReading) { a.Load = springN("-1 N") }, "0 N or more"},
		{func(a, b *SpringReading) { a.Load = LoadBracket{} }, "load"}, {func(a, b *SpringReading) { a.Height = stemAt("30 ±1 mm") }, "apart"},
		{func(a, b *SpringReading) { a.Load = springN("700 N") }, "above that at"}, {func(a, b *SpringReading) { a.Height = stemAt("30.000000001 mm") }, "rate within range"},
	} {
		x, y := a, b
		c.spoil(&x, &y)
		_, err := SpringRateBetween(x, y)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
		if c.says != "rate within range" {
			_, err = SpringLoadFrom(x, y, stemAt("35 mm"))
			require.ErrorIs(t, err, ErrInput)
			_, err = SpringHeightFrom(x, y, springN("400 N"))
			require.ErrorIs(t, err, ErrInput)
		}
	}
	_, err := SpringLoadFrom(a, b, stemAt("-1 mm"))
	require.ErrorIs(t, err, ErrInput)
	_, err = SpringLoadFrom(a, b, stemAt("9 m"))
	require.ErrorIs(t, err, ErrInput)
	_, err = SpringHeightFrom(a, b, springN("-1 N"))
	require.ErrorIs(t, err, ErrInput)
	a.Load, b.Load = springN("250 N"), springN("250.00000000001 N")
	_, err = SpringHeightFrom(a, b, springN("9 kN"))
	require.ErrorIs(t, err, ErrInput)
}

func TestSpringWorkingAndUncertainty(t *testing.T) {
	g := working.GivenReal
	k := SpringRateOfCoil(g("shear modulus", "G", 84000, "N/mm²"), g("wire", "d", 5, "mm"), g("mean diameter", "D", 30, "mm"), g("active coils", "n", 15, "")).
		Named("rate", "k", "N/mm")
	s, err := working.SolveReal(k, working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "16.2037")
	// One per cent of the wire is four of the rate.
	x := uncertainty.ExactlyReal
	d, err := uncertainty.NewDual("wire", 5, "mm", uncertainty.NormalShape, 0.05)
	require.NoError(t, err)
	require.InEpsilon(t, 0.04*16.2037, SpringRateOfCoil(x(84000), d, x(30), x(15)).StandardUncertainty(), 1e-5)
	m := CoilBindMargin(working.Given("installed height", "h", stemLen("40 mm")), working.Given("lift", "l", stemLen("11 mm")), working.Given("solid height", "s", stemLen("26.5 mm"))).
		Named("margin", "m")
	w, err := working.Solve(m, units.Style[units.Length]{Unit: units.InMillimetres, Places: 1})
	require.NoError(t, err)
	require.Contains(t, w.Text(), "m = h − l − s")
	require.Contains(t, w.Text(), "= 2.5 mm")
}

func BenchmarkSpring(b *testing.B) {
	b.Run("lib=tenthou/op=rate", func(b *testing.B) {
		b.ReportAllocs()
		x, y := SpringReading{stemAt("40 mm"), springN("250 N")}, SpringReading{stemAt("30 mm"), springN("700 N")}
		for b.Loop() {
			if _, err := SpringRateBetween(x, y); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=load", func(b *testing.B) {
		b.ReportAllocs()
		x, y, h := SpringReading{stemAt("40 mm"), springN("250 N")}, SpringReading{stemAt("30 mm"), springN("700 N")}, stemAt("35 mm")
		for b.Loop() {
			if _, err := SpringLoadFrom(x, y, h); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=inspect", func(b *testing.B) {
		b.ReportAllocs()
		s := springOuter()
		for b.Loop() {
			if _, err := s.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
