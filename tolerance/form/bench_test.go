package form_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/tenthou/tenthou/tolerance/form"
)

// bore is a profile of n points at the scale of an 86 mm bore, in µm: off
// centre, oval, three-lobed and rough.
func bore(n int) []form.Point {
	rng := rand.New(rand.NewPCG(1, uint64(n)))
	radii := make([]float64, n)
	for i := range radii {
		t := 2 * math.Pi * float64(i) / float64(n)
		radii[i] = 43_000 + 12*math.Cos(t-1) + 6*math.Cos(2*t-0.4) + 2*math.Cos(3*t) + 0.5*rng.NormFloat64()
	}
	return form.Polar(radii)
}

func BenchmarkCircle(b *testing.B) {
	for _, n := range []int{100, 360, 1000, 10_000} {
		points := bore(n)
		for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI, form.MCCI} {
			b.Run(fmt.Sprintf("lib=tenthou/op=%v/n=%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := form.Circle(kind, points); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
