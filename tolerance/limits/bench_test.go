package limits

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

var (
	sinkLimits Limits
	sinkFit    Fit
	sinkBand   tolerance.Band
	sinkGrade  Grade
	sinkLength units.Length
	sinkList   []Limits
	sinkBytes  []byte
)

func BenchmarkLimits(b *testing.B) {
	nominal := 25 * units.Millimetre
	h7, p7, pair := MustParseClass("H7"), MustParseClass("P7"), MustParsePair("H7/g6")
	for _, op := range []struct {
		name string
		run  func()
	}{
		{"At/hole", func() { sinkLimits, _ = h7.At(nominal) }},
		{"At/delta", func() { sinkLimits, _ = p7.At(nominal) }},
		{"Pair.At", func() { sinkFit, _ = pair.At(nominal) }},
		{"Band", func() { sinkBand = sinkLimits.Band() }},
		{"Grade.Tolerance", func() { sinkLength, _ = IT7.Tolerance(nominal) }},
		{"GradeWithin", func() { sinkGrade, _ = GradeWithin(nominal, 20*units.Micrometre) }},
		{"ParseLimits", func() { sinkLimits, _ = ParseLimits("25 H7") }},
		{"Parse", func() { sinkFit, _ = Parse("50 H7/g6") }},
		{"AppendText", func() { sinkBytes, _ = sinkFit.AppendText(sinkBytes[:0]) }},
		{"Mating", func() { sinkList, _ = Mating(sinkFit.Hole(), tolerance.MustBetween(0, 50*units.Micrometre)) }},
	} {
		b.Run("lib=tenthou/op="+op.name, func(b *testing.B) {
			sinkLimits, _ = h7.At(nominal)
			sinkFit, _ = pair.At(2 * nominal)
			b.ReportAllocs()
			for b.Loop() {
				op.run()
			}
		})
	}
}

func TestAllocations(t *testing.T) {
	nominal, pair := 25*units.Millimetre, MustParsePair("P7/js6")
	buf := make([]byte, 0, 64)
	sinkFit, _ = pair.At(nominal) // a zero Fit's bands are an error, which allocates
	for name, run := range map[string]func(){
		"At":          func() { sinkLimits, _ = pair.Hole.At(nominal) },
		"Pair.At":     func() { sinkFit, _ = pair.At(nominal) },
		"Band":        func() { sinkBand = sinkFit.Hole().Band() },
		"Kind":        func() { sinkLength = sinkFit.MaxClearance() * units.Length(sinkFit.Kind()) },
		"Tolerance":   func() { sinkLength, _ = IT7.Tolerance(nominal) },
		"GradeWithin": func() { sinkGrade, _ = GradeWithin(nominal, 20*units.Micrometre) },
		"ParseLimits": func() { sinkLimits, _ = ParseLimits("⌀25.4 mm H7") },
		"ParseBand":   func() { sinkBand, _ = ParseBand("1 in H7") },
		"Parse":       func() { sinkFit, _ = Parse("50 H7/g6") },
		"AppendText":  func() { sinkBytes, _ = sinkFit.AppendText(buf[:0]) },
		"All": func() {
			for l := range All(nominal, Shaft) {
				sinkLimits = l
			}
		},
	} {
		require.Zero(t, testing.AllocsPerRun(100, run), name)
	}
}
