package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

var (
	sinkReport  inspection.Report
	sinkOutcome Outcome
)

func BenchmarkInspect(b *testing.B) {
	l, r := demoLimits(b), demoReadings(b)
	in, blank := l.Prepare(), l.Blank()
	for _, op := range []struct {
		name string
		run  func() error
	}{
		{"inspect", func() (err error) { sinkReport, err = in.Inspect(&r); return err }},
		{"outcome", func() (err error) { sinkReport, sinkOutcome, err = in.Outcome(&r); return err }},
		{"blank", func() (err error) { sinkReport, err = in.Inspect(&blank); return err }},
		{"prepare", func() error { return l.Prepare().err }},
		{"validate", func() error { return r.Validate() }},
	} {
		b.Run("lib=tenthou/op="+op.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := op.run(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	data := demoFile(b, "readings.json")
	b.Run("lib=tenthou/op=read", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := ReadReadings("readings.json", data); err != nil {
				b.Fatal(err)
			}
		}
	})
	require.NotEmpty(b, sinkReport)
}
