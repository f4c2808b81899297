package valvetrain_test

import "testing"

func BenchmarkInspect(b *testing.B) {
	l, r := readInspectDemo(b)
	x := l.Prepare()
	b.Run("lib=tenthou/op=prepared", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := x.Inspect(&r); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=prepare", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			l.Prepare()
		}
	})
	blank := l.Blank()
	b.Run("lib=tenthou/op=blank", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := x.Inspect(&blank); err != nil {
				b.Fatal(err)
			}
		}
	})
}
