package tolerance_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The three jobs that the others are compared with, on the same numbers: is a
// reading within 0.03–0.07 mm, groove less ring, and a length times the ratio
// of two others.
//
// lib=tenthou/bracket does the job on brackets, which the others can't.

// sideClearance is a formula over Number, and so is ratio.
func sideClearance[N Number[N]](groove, ring N) N { return groove.Sub(ring) }

func ratio[N Number[N]](x, a, b N) N { return x.MulDiv(a, b) }

var (
	verdictSink Verdict
	lengthSink  units.Length
	bracketSink Bracket
	decimalSink decimal.Decimal
	floatSink   float64
	boolSink    bool
)

func BenchmarkJudge(b *testing.B) {
	band, reading, exact := MustParseBand("0.03–0.07 mm"), bracket("[.0025 in, .003 in)"), Exactly(25*units.Thou/10)
	b.Run("lib=tenthou/op=judge", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			verdictSink = band.Judge(exact)
		}
	})
	b.Run("lib=tenthou-bracket/op=judge", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			verdictSink = band.Judge(reading)
		}
	})
	b.Run("lib=decimal/op=judge", func(b *testing.B) {
		lo, hi, x := decimal.RequireFromString("0.03"), decimal.RequireFromString("0.07"), decimal.RequireFromString("0.0635")
		b.ReportAllocs()
		for b.Loop() {
			boolSink = x.GreaterThanOrEqual(lo) && x.LessThanOrEqual(hi)
		}
	})
	b.Run("lib=float64/op=judge", func(b *testing.B) {
		lo, hi, x := 0.03, 0.07, 0.0635
		b.ReportAllocs()
		for b.Loop() {
			boolSink = x >= lo && x <= hi
		}
	})
}

func BenchmarkSideClearance(b *testing.B) {
	groove, ring := units.MustParseLength("1.570 mm"), units.MustParseLength("1.490 mm")
	b.Run("lib=tenthou/op=sideclearance", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			lengthSink = sideClearance(groove, ring)
		}
	})
	b.Run("lib=tenthou-bracket/op=sideclearance", func(b *testing.B) {
		g, r := bracket("1.570 ±0.002 mm"), bracket("1.490 ±0.002 mm")
		b.ReportAllocs()
		for b.Loop() {
			bracketSink = sideClearance(g, r)
		}
	})
	b.Run("lib=decimal/op=sideclearance", func(b *testing.B) {
		g, r := decimal.RequireFromString("1.570"), decimal.RequireFromString("1.490")
		b.ReportAllocs()
		for b.Loop() {
			decimalSink = g.Sub(r)
		}
	})
	b.Run("lib=float64/op=sideclearance", func(b *testing.B) {
		g, r := 1.570, 1.490
		b.ReportAllocs()
		for b.Loop() {
			floatSink = g - r
		}
	})
}

func BenchmarkMulDiv(b *testing.B) {
	x, num, den := units.MustParseLength("86.013 mm"), units.MustParseLength("3.4 mm"), units.MustParseLength("5.1 mm")
	b.Run("lib=tenthou/op=muldiv", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			lengthSink = ratio(x, num, den)
		}
	})
	b.Run("lib=tenthou-bracket/op=muldiv", func(b *testing.B) {
		i, j, k := bracket("86.013 ±0.003 mm"), bracket("3.4 ±0.1 mm"), bracket("5.1 ±0.1 mm")
		b.ReportAllocs()
		for b.Loop() {
			bracketSink = ratio(i, j, k)
		}
	})
	b.Run("lib=decimal/op=muldiv", func(b *testing.B) {
		i, j, k := decimal.RequireFromString("86.013"), decimal.RequireFromString("3.4"), decimal.RequireFromString("5.1")
		b.ReportAllocs()
		for b.Loop() {
			decimalSink = i.Mul(j).Div(k)
		}
	})
	b.Run("lib=float64/op=muldiv", func(b *testing.B) {
		i, j, k := 86.013, 3.4, 5.1
		b.ReportAllocs()
		for b.Loop() {
			floatSink = i * j / k
		}
	})
}

func BenchmarkParseBand(b *testing.B) {
	for name, text := range map[string]string{"op=parserange": "0.03–0.07 mm", "op=parsemax": "max 0.10 mm", "op=parsedeviations": "73.00 +0.03/-0.01 mm"} {
		b.Run("lib=tenthou/"+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, err := ParseBand(text)
				require.NoError(b, err)
			}
		})
	}
}

func BenchmarkAssess(b *testing.B) {
	s, x, y := spec("0.03–0.07 mm", "max 0.10 mm"), bracket("[.0025 in, .003 in)"), bracket("[.002 in, .0025 in)")
	var f Finding
	b.Run("lib=tenthou/op=assess", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			f, _ = Assess("side clearance", "piston 2", s, x, y)
		}
	})
	b.Run("lib=tenthou/op=findingtext", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = f.Text(units.InMillimetres, 4)
		}
	})
}

// What a finding keeps is all that it costs: the open limits and the words that
// say what would settle them.
func TestAllocations_findings(t *testing.T) {
	s := spec("0.03–0.07 mm", "max 0.10 mm")
	f, err := Assess("side clearance", "piston 2", s, bracket("[0.06 mm, 0.11 mm]"), bracket("[0.02 mm, 0.04 mm]"))
	require.NoError(t, err)
	require.Equal(t, "find out whether the greatest is more than 0.1 mm, and whether the least is less than 0.03 mm, and whether the greatest is more than 0.07 mm", f.Settle)
	for name, c := range map[string]struct {
		most     float64
		readings []Bracket
	}{
		"as new":    {0, []Bracket{bracket("0.05 mm"), bracket("[0.05 mm, 0.06 mm]")}},
		"past":      {0, []Bracket{bracket("0.12 mm")}},
		"undecided": {2, []Bracket{bracket("[.0025 in, .003 in)")}},
	} {
		require.LessOrEqual(t, testing.AllocsPerRun(100, func() { f, _ = Assess("side clearance", "piston 2", s, c.readings...) }), c.most, name)
	}
}

func TestAllocations(t *testing.T) {
	s, x, y := spec("0.03–0.07 mm", "max 0.10 mm"), bracket("[.0025 in, .003 in)"), bracket("[.002 in, .0025 in)")
	a, b, c := 86*units.Millimetre, 3*units.Millimetre, 5*units.Millimetre
	text := make([]byte, 0, 128)
	for name, f := range map[string]func(){
		"Judge":         func() { verdictSink = s.New.Judge(x) },
		"Allows":        func() { boolSink = s.New.Allows(a) },
		"JudgeAll":      func() { _ = s.New.JudgeAll(x, y) },
		"StandAll":      func() { _ = s.StandAll(x, y) },
		"Validate":      func() { _ = s.Validate() },
		"Sub of Length": func() { lengthSink = sideClearance(a, b) },
		"MulDiv of Length": func() {
			lengthSink = ratio(a, b, c)
		},
		"Sub":       func() { bracketSink = sideClearance(x, y) },
		"Add":       func() { bracketSink = x.Add(y) },
		"Abs":       func() { bracketSink = x.Abs() },
		"Min":       func() { bracketSink = x.Min(y).Max(x) },
		"Spread":    func() { bracketSink = x.Spread(y, x) },
		"Scale":     func() { bracketSink = x.Scale(3, 7) },
		"ScalePi":   func() { bracketSink = x.ScalePi(1, 4) },
		"MulDiv":    func() { bracketSink = ratio(x, y, x) },
		"Share":     func() { bracketSink = x.Share(x, y) },
		"Intersect": func() { bracketSink, boolSink = x.Intersect(y) },
		"HalfOpen":  func() { bracketSink, _ = HalfOpen(b, c) },
		"AppendText": func() {
			text, _ = x.AppendText(text[:0])
		},
	} {
		require.Zero(t, testing.AllocsPerRun(100, f), name)
	}
}

// The forms of an engine's document, read as a decoder gives them.
func BenchmarkUnmarshalText(b *testing.B) {
	var i Bracket
	var p Printed
	for _, op := range []struct{ name, text string }{
		{"exact", "86.012 mm"}, {"error", "86.012 ±0.002 mm"}, {"interval", "[0.0635 mm, 0.0762 mm)"}, {"interval-any", "[ .0025 in; .003 in)"},
	} {
		text := []byte(op.text)
		b.Run("lib=tenthou/op=bracket-"+op.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = i.UnmarshalText(text)
			}
		})
	}
	for _, op := range []struct{ name, text string }{
		{"range", "0.03–0.07 mm"}, {"max", "max 0.10 mm"}, {"deviations", "86.000 +0.02/-0.00 mm"}, {"size", "2.5 ±0.02 mm"}, {"range-any", "1/64–1/32 in"}, {"max-any", "Max: 0.10 mm"},
	} {
		text := []byte(op.text)
		b.Run("lib=tenthou/op=printed-"+op.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_ = p.UnmarshalText(text)
			}
		})
	}
}
