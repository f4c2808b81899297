package inspection_test

import (
	"testing"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

var (
	sinkSlips    []inspection.Slip
	sinkDecision inspection.Decision
	sinkReading  inspection.Reading
)

func BenchmarkInspection(b *testing.B) {
	limit := inspection.Limit{New: printed("0.03–0.07 mm"), NewAlso: printed(".0012–.0028 in"), Wear: printed("max 0.15 mm"), WearAlso: printed("max .006 in")}
	set := []inspection.Reading{reading("86.012 mm"), reading("86.013 mm"), reading("86.015 mm"), reading("86.018 mm"), reading("86.02 mm"), reading("86.01 mm"), reading("86.01 mm"), reading("86.01 mm")}
	decisions := []inspection.Decision{{Action: inspection.ReUse}, {Action: inspection.ReconditionTo}, {}, {Action: inspection.ReUse}}
	text := []byte("86.012 ±0.002 mm")
	for _, op := range []struct {
		name string
		run  func()
	}{
		{"limit", func() { sinkSlips = limit.Proofread(sinkSlips[:0], "limits.x", "x") }},
		{"readings", func() { sinkSlips = inspection.ProofreadReadings(sinkSlips[:0], nil, nil, set) }},
		{"worst", func() { sinkDecision = inspection.Worst(decisions...) }},
		{"reading", func() { _ = sinkReading.UnmarshalText(text) }},
	} {
		b.Run("lib=tenthou/op="+op.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				op.run()
			}
		})
	}
}
