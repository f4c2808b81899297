package cylinder

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The peers get the same sizes, and none of the checks.

func BenchmarkSweptVolume(b *testing.B) {
	bore, stroke := 86*units.Millimetre, 86*units.Millimetre
	b.Run("lib=tenthou/op=exact", func(b *testing.B) {
		for b.Loop() {
			_ = units.CylinderVolume(bore, stroke)
		}
	})
	wideBore, wideStroke := parsedLength(b, "86 ±0.01 mm"), parsedLength(b, "86 ±0.05 mm")
	b.Run("lib=tenthou/op=bracket", func(b *testing.B) {
		for b.Loop() {
			_ = CylinderVolumeBracket(wideBore, wideStroke)
		}
	})
	b.Run("lib=float64/op=exact", func(b *testing.B) {
		d, s := 86.0, 86.0
		for b.Loop() {
			_ = math.Pi / 4 * d * d * s
		}
	})
	b.Run("lib=decimal/op=exact", func(b *testing.B) {
		quarter := decimal.RequireFromString("0.7853981633974483096")
		d, s := decimal.NewFromInt(86), decimal.NewFromInt(86)
		for b.Loop() {
			_ = quarter.Mul(d).Mul(d).Mul(s).Round(11)
		}
	})
}

func BenchmarkCompression(b *testing.B) {
	exact := handBuild(b)
	loose := exact
	loose.Bore = parsedLength(b, "86 ±0.01 mm")
	wanted := tolerance.Ratio{Num: 21, Den: 2}
	b.Run("lib=tenthou/op=exact", func(b *testing.B) {
		for b.Loop() {
			_, _ = exact.Compression()
		}
	})
	b.Run("lib=tenthou/op=bracket", func(b *testing.B) {
		for b.Loop() {
			_, _ = loose.Compression()
		}
	})
	b.Run("lib=tenthou/op=gasket", func(b *testing.B) {
		for b.Loop() {
			_, _ = exact.GasketFor(wanted)
		}
	})
	b.Run("lib=float64/op=exact", func(b *testing.B) {
		d, s, k, g, t, h, p := 86.0, 86.0, 45e3, 87.5, 1.2, 0.3, 3e3
		for b.Loop() {
			_ = 1 + math.Pi/4*d*d*s/(k+math.Pi/4*g*g*t+math.Pi/4*d*d*h+p)
		}
	})
	b.Run("lib=decimal/op=exact", func(b *testing.B) {
		n := decimal.RequireFromString
		quarter, one := n("0.7853981633974483096"), n("1")
		d, s, k, g, t, h, p := n("86"), n("86"), n("45000"), n("87.5"), n("1.2"), n("0.3"), n("3000")
		for b.Loop() {
			area := quarter.Mul(d).Mul(d)
			_ = one.Add(area.Mul(s).Div(k.Add(quarter.Mul(g).Mul(g).Mul(t)).Add(area.Mul(h)).Add(p)))
		}
	})
}

func BenchmarkCrossHatch(b *testing.B) {
	h := Hone{Bore: 100 * units.Millimetre, SpindleRPM: 100, Travel: 150 * units.Millimetre, Rate: CyclesPerMinute(40)}
	b.Run("lib=tenthou/op=angle", func(b *testing.B) {
		for b.Loop() {
			_, _ = h.CrossHatch()
		}
	})
	b.Run("lib=float64/op=angle", func(b *testing.B) {
		d, n, l, s := 100.0, 100.0, 150.0, 80.0
		for b.Loop() {
			_ = 2 * math.Atan2(l*s, math.Pi*d*n)
		}
	})
}

func BenchmarkFace(b *testing.B) {
	f := Face{Where: "head", Lines: SixLines(), Limits: faceLimits}
	for i := range f.Lines {
		f.Lines[i].Seat, f.Lines[i].Gaps = Rests, []Gap{{Gap: parsedLength(b, "[0.02 mm, 0.03 mm)")}}
	}
	b.Run("lib=tenthou/op=sixlines", func(b *testing.B) {
		for b.Loop() {
			_, _ = f.Assess()
		}
	})
}

// What is done per cylinder, per setting or per search step allocates nothing.
func TestNoAllocations(t *testing.T) {
	build, wanted := handBuild(t), tolerance.Ratio{Num: 21, Den: 2}
	h := Hone{Bore: 100 * units.Millimetre, SpindleRPM: 100, Travel: 150 * units.Millimetre, Rate: CyclesPerMinute(40)}
	gap := parsedLength(t, "[0.02 mm, 0.03 mm)")
	for name, f := range map[string]func(){
		"volume":      func() { _ = CylinderVolumeBracket(build.Bore, build.Stroke) },
		"compression": func() { _, _ = build.Compression() },
		"gasket":      func() { _, _ = build.GasketFor(wanted) },
		"cross-hatch": func() { _, _ = h.CrossHatch() },
		"hump":        func() { _ = HumpBracket(gap, gap) },
		"heights":     func() { _ = NineHeights(Bows[units.Length]{FirstDiagonal: 5}) },
	} {
		require.Zero(t, testing.AllocsPerRun(100, f), name)
	}
}
