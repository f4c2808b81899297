package cylinder

import (
	"math/rand/v2"
	"testing"

	"github.com/tenthou/tenthou/units"
)

func BenchmarkOversize(b *testing.B) {
	d, w := 86*units.Millimetre, units.Millimetre/10
	b.Run("lib=tenthou/op=leastsize", func(b *testing.B) {
		for b.Loop() {
			boreLength = LeastSizeOnAxis(d, w, w, w)
		}
	})
	b.Run("lib=float64/op=leastsize", func(b *testing.B) {
		d, w := 86.0, 0.1
		for b.Loop() {
			boreFloats[0] = d + 2*(w+w) + w
		}
	})
	j := block("0.02 mm", "0.04 mm", "0.19 mm", "0.03 mm")
	j.Plan.Centring = MovedToBore
	b.Run("lib=tenthou/op=choice4", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			boreChoice, _ = ChooseOversize(&j)
		}
	})
	for _, n := range []int{100, 1000, 10_000} {
		r := rand.New(rand.NewPCG(18, 1))
		points := make([]wallPoint, n)
		for i := range points {
			x, y := unit(units.Angle(r.Int64N(int64(360 * units.Degree))))
			points[i] = wallPoint{x, y, float64(r.Int64N(1e8))}
		}
		b.Run("lib=tenthou/op=circle"+map[int]string{100: "100", 1000: "1000", 10_000: "10000"}[n], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				boreFloats[0] = leastCircle(43e9, points).over
			}
		})
	}
}
