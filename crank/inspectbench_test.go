package crank

import "testing"

func BenchmarkInspect(b *testing.B) {
	l, d := inspectLimits(b), inspectReadings(b)
	in := l.Prepare()
	blank := l.Blank()
	limits, readings := []byte(inspectText(b, "limits")), []byte(inspectText(b, "readings"))
	for _, op := range []struct {
		name string
		run  func() error
	}{
		{"inspect", func() error { _, err := in.Inspect(&d); return err }},
		{"blank", func() error { _, err := in.Inspect(&blank); return err }},
		{"prepare", func() error { l.Prepare(); return nil }},
		{"readlimits", func() error { _, err := ReadLimits("x", limits); return err }},
		{"readreadings", func() error { _, err := ReadReadings("x", readings); return err }},
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
}
