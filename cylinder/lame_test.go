package cylinder

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
)

type lameFloat = tolerance.Float

func lameRing(other, modulus, poisson float64) PressedRing[lameFloat] {
	return PressedRing[lameFloat]{lameFloat(other), lameFloat(modulus), lameFloat(poisson)}
}

// The general case of two materials, against a boundary-value problem solved
// without any closed form.
func TestLame_boundaryValues(t *testing.T) {
	vectors.Load(t, "reference/cylinder_liner_lame.txt").Each(t, func(t *testing.T, c vectors.Case) {
		joint, delta := lameFloat(c.Float("joint")), lameFloat(c.Float("interference"))
		liner := lameRing(c.Float("bore"), c.Float("liner_modulus"), c.Float("liner_poisson"))
		block := lameRing(c.Float("outside"), c.Float("block_modulus"), c.Float("block_poisson"))
		p := LinerPressure(delta, joint, liner, block)
		c.Near("pressure", float64(p))
		c.Near("block_stress", float64(BlockHoopStress(p, joint, block.Other)))
		c.Near("outside_stress", float64(BlockOutsideStress(p, joint, block.Other)))
		c.Near("liner_stress", float64(LinerHoopStress(p, joint, liner.Other)))
		c.Near("bore_stress", float64(LinerBoreStress(p, joint, liner.Other)))
		c.Near("closing", float64(LinerBoreClosing(p, joint, liner)))
		require.InEpsilon(t, float64(delta), float64(LinerInterferenceFor(p, joint, liner, block)), 1e-13)
	})
}

// The published press-fit example, one material, and its temperature put right.
func TestLame_published(t *testing.T) {
	vectors.Load(t, "published/cylinder_liner_worked.txt").Each(t, func(t *testing.T, c vectors.Case) {
		joint, d := lameFloat(c.Float("joint")), lameFloat(c.Float("difference"))
		for _, poisson := range []float64{0, 0.25, 0.3} { // cancels
			liner, block := lameRing(c.Float("inside"), c.Float("modulus"), poisson), lameRing(c.Float("outside"), c.Float("modulus"), poisson)
			c.Near("pressure", float64(LinerPressure(d, joint, liner, block)))
		}
		a := lameFloat(c.Float("expansion") * 1e-6)
		c.Near("rise", float64(BlockRiseFor(0, joint, d, a, a, 0)))
		c.Near("printed_rise", float64(BlockRiseFor(0, lameFloat(c.Float("printed_on")), d, a, a, 0)))
	})
}

// With equal materials it is the published formula; thick walls and a solid
// shaft go to their limits; and each inverse undoes its formula.
func TestLame_properties(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 1))
	for range 500 {
		d := 40 + 100*r.Float64()
		in, out := d*(0.5+0.45*r.Float64()), d*(1.05+r.Float64())
		e, nu, delta := 7e4+14e4*r.Float64(), 0.45*r.Float64(), 0.001+0.1*r.Float64()
		liner, block := lameRing(in, e, nu), lameRing(out, e, nu)
		p := float64(LinerPressure(lameFloat(delta), lameFloat(d), liner, block))
		ko, ki := (out*out+d*d)/(out*out-d*d), (d*d+in*in)/(d*d-in*in)
		require.InEpsilon(t, e*delta/(d*(ko+ki)), p, 1e-11)

		softer := block
		softer.Modulus /= 2
		require.Less(t, float64(LinerPressure(lameFloat(delta), lameFloat(d), liner, softer)), p, "a softer block holds less")
		require.Greater(t, float64(LinerPressure(lameFloat(delta), lameFloat(d), liner, lameRing(out*2, e, nu))), p, "a thicker block holds more")
		require.InEpsilon(t, 1, float64(LinerSpread(lameFloat(d), 0)), 1e-15)

		mu, l := 0.05+0.2*r.Float64(), 50+100*r.Float64()
		f := LinerPressForce(lameFloat(mu), lameFloat(d), lameFloat(l), lameFloat(p))
		require.InEpsilon(t, mu*math.Pi*d*l*p, float64(f), 1e-13)
		require.InEpsilon(t, p, float64(LinerPressureFromForce(f, lameFloat(mu), lameFloat(d), lameFloat(l))), 1e-13)
		require.InEpsilon(t, mu, float64(LinerFriction(f, lameFloat(d), lameFloat(l), lameFloat(p))), 1e-13)
	}
	// By hand: 90 mm joint, 0.05 mm; iron 11.4 and alloy 21.5 millionths, both
	// 80 K warmer: 0.05 + 90 · (11.4 − 21.5)·10⁻⁶ · 80 = −0.02272.
	require.InDelta(t, -0.02272, float64(LinerInterferenceWarm(lameFloat(0.05), lameFloat(90), lameFloat(11.4e-6), lameFloat(80), lameFloat(21.5e-6), lameFloat(80))), 1e-12)
}

// What no number answers to stays out of range.
func TestLame_outOfRange(t *testing.T) {
	require.False(t, LinerPressure(lameFloat(0.1), 0, lameRing(50, 1e5, 0.3), lameRing(90, 1e5, 0.3)).InRange())
	require.False(t, LinerPressure(lameFloat(0.1), 60, lameRing(50, 1e5, 0.3), lameRing(60, 1e5, 0.3)).InRange(), "no wall")
	require.False(t, LinerPressure(lameFloat(math.NaN()), 60, lameRing(50, 1e5, 0.3), lameRing(90, 1e5, 0.3)).InRange())
	require.False(t, BlockRiseFor(lameFloat(0), 60, 0.1, 0, 1e-5, 0).InRange())
}

// The same formula writes its working, and carries uncertainty.
func TestLame_otherReadings(t *testing.T) {
	g := working.GivenReal
	liner := PressedRing[working.RealTerm]{g("liner bore", "d", 300, "mm"), g("liner modulus", "E₁", 2e5, "N/mm²"), g("Poisson's ratio of the liner", "ν₁", 0.3, "")}
	block := PressedRing[working.RealTerm]{g("outside", "D₂", 500, "mm"), g("block modulus", "E₂", 2e5, "N/mm²"), g("Poisson's ratio of the block", "ν₂", 0.3, "")}
	p := LinerPressure(g("interference", "δ", 0.2, "mm"), g("joint", "D", 400, "mm"), liner, block).Named("contact pressure", "p", "N/mm²")
	s, err := working.SolveReal(p, working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "12.3047 N/mm²")

	delta, err := uncertainty.NewDual("interference", 0.2, "mm", uncertainty.Shape(0), 0.01)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	u := LinerPressure(delta, x(400), PressedRing[uncertainty.Dual]{x(300), x(2e5), x(0.3)}, PressedRing[uncertainty.Dual]{x(500), x(2e5), x(0.3)})
	// Pressure is in proportion to the interference.
	require.InEpsilon(t, delta.StandardUncertainty()/0.2, u.StandardUncertainty()/u.Value(), 1e-12)
}

func TestLame_allocatesNothing(t *testing.T) {
	liner, block := lameRing(92, 1.1e5, 0.26), lameRing(110, 7e4, 0.33)
	require.Zero(t, testing.AllocsPerRun(100, func() { lameSink = LinerPressure(0.05, 96, liner, block) }))
}

var lameSink lameFloat

func FuzzLinerPressure(f *testing.F) {
	f.Add(0.05, 96.0, 92.0, 110.0, 1.1e5, 7e4, 0.26, 0.33)
	f.Add(math.Inf(1), 0.0, -1.0, math.NaN(), 0.0, 1e308, -5.0, 7.0)
	f.Fuzz(func(t *testing.T, delta, d, in, out, el, eb, nl, nb float64) {
		p := LinerPressure(lameFloat(delta), lameFloat(d), lameRing(in, el, nl), lameRing(out, eb, nb))
		// What is a liner in a block has a pressure of the interference's sign.
		sane := func(x, lo, hi float64) bool { return x >= lo && x <= hi }
		if sane(delta, 1e-6, 1) && sane(in, 10, 500) && sane(d, in+0.5, 600) && sane(out, d+0.5, 1000) && sane(el, 1e4, 1e6) && sane(eb, 1e4, 1e6) && sane(nl, 0, 0.49) && sane(nb, 0, 0.49) {
			require.True(t, p.InRange())
			require.Greater(t, float64(p), 0.0)
			require.InEpsilon(t, delta, float64(LinerInterferenceFor(p, lameFloat(d), lameRing(in, el, nl), lameRing(out, eb, nb))), 1e-12)
		}
	})
}

func BenchmarkLinerPressure(b *testing.B) {
	b.Run("lib=tenthou/op=pressure", func(b *testing.B) {
		b.ReportAllocs()
		liner, block := lameRing(92, 1.1e5, 0.26), lameRing(110, 7e4, 0.33)
		for b.Loop() {
			lameSink = LinerPressure(0.05, 96, liner, block)
		}
	})
	b.Run("lib=float64/op=pressure", func(b *testing.B) {
		b.ReportAllocs()
		d, in, out := 96.0, 92.0, 110.0
		for b.Loop() {
			ko, ki := (out*out+d*d)/(out*out-d*d), (d*d+in*in)/(d*d-in*in)
			lameSink = lameFloat(0.05 / d / ((ko+0.33)/7e4 + (ki-0.26)/1.1e5))
		}
	})
}
