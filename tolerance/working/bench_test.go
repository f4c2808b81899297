package working_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// sideClearance is the formula that everything is timed on.
func sideClearance[N tolerance.Number[N]](groove, ring N) N { return groove.Sub(ring) }

// gap is longer: the end gap that a ring has in a bore of another size.
func gap[N tolerance.Number[N]](ringGap, gauge, bore N) N {
	return ringGap.Add(bore.Sub(gauge).ScalePi(1, 1))
}

var (
	lengthSink units.Length
	termSink   working.Term
	realSink   working.RealTerm
	floatSink  tolerance.Float
	textSink   []byte
	sink       working.Solution
)

func grooveAndRing() (groove, ring working.Term) {
	return working.Given("groove width", "w", 1560*units.Micrometre), working.Given("ring height", "h", 1505*units.Micrometre)
}

func BenchmarkFormula(b *testing.B) {
	groove, ring := 1560*units.Micrometre, 1505*units.Micrometre
	wide, high := grooveAndRing()
	b.Run("lib=length/op=sideclearance", func(b *testing.B) {
		for b.Loop() {
			lengthSink = sideClearance(groove, ring)
		}
	})
	b.Run("lib=term/op=sideclearance", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			termSink = sideClearance(wide, high)
		}
	})
	b.Run("lib=length/op=gap", func(b *testing.B) {
		for b.Loop() {
			lengthSink = gap(ring, groove, groove)
		}
	})
	b.Run("lib=term/op=gap", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			termSink = gap(high, wide, wide)
		}
	})
	bore, stroke := working.GivenReal("bore", "b", 86, "mm"), working.GivenReal("stroke", "s", 86, "mm")
	b.Run("lib=float/op=sweptvolume", func(b *testing.B) {
		for b.Loop() {
			floatSink = sweptVolume(tolerance.Float(86), 86)
		}
	})
	b.Run("lib=realterm/op=sweptvolume", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			realSink = sweptVolume(bore, stroke)
		}
	})
}

func BenchmarkSolve(b *testing.B) {
	c := sideClearance(grooveAndRing()).Named("side clearance", "c")
	volume := sweptVolume(working.GivenReal("bore", "b", 86, "mm"), working.GivenReal("stroke", "s", 86, "mm"))
	b.Run("op=sideclearance/unit=mm", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink, _ = working.Solve(c, units.Style[units.Length]{Places: 3})
		}
	})
	b.Run("op=sideclearance/unit=in", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink, _ = working.Solve(c, units.Style[units.Length]{Unit: units.InInches, Places: 4})
		}
	})
	b.Run("op=sweptvolume", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink, _ = working.SolveReal(volume, working.RealStyle{Places: 0})
		}
	})
	s, err := working.Solve(c, units.Style[units.Length]{Places: 3})
	require.NoError(b, err)
	b.Run("op=text", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			textSink = s.AppendText(textSink[:0])
		}
	})
	b.Run("op=markdown", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			textSink = s.AppendMarkdown(textSink[:0])
		}
	})
}

func BenchmarkMark(b *testing.B) {
	c := sideClearance(grooveAndRing())
	for b.Loop() {
		_, _ = working.Mark(c, "0.55 mm", 500*units.Nanometre)
	}
}
