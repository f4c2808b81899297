package form_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
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

// slope is a line of n heights in µm over mm: tilted, bowed and rough.
func slope(n int) []form.Point {
	rng := rand.New(rand.NewPCG(2, uint64(n)))
	points := make([]form.Point, n)
	for i := range points {
		u := float64(i) / float64(n)
		points[i] = form.Point{X: 400 * u, Y: 30*u + 40*u*(1-u) + 3*rng.NormFloat64()}
	}
	return points
}

// slab is a grid of heights in µm over mm: tilted, twisted, dished and rough.
func slab(rows, columns int) []form.Point3 {
	rng := rand.New(rand.NewPCG(3, uint64(rows*columns)))
	var points []form.Point3
	for r := range rows {
		for c := range columns {
			u, v := float64(c)/float64(columns), float64(r)/float64(rows)
			points = append(points, form.Point3{X: 400 * u, Y: 150 * v, Z: 30*u - 10*v + 20*u*v + 40*u*(1-u) + 3*rng.NormFloat64()})
		}
	}
	return points
}

func BenchmarkCircle(b *testing.B) {
	for _, n := range []int{100, 360, 1000, 10_000} {
		points := bore(n)
		for _, kind := range kinds {
			b.Run(fmt.Sprintf("lib=tenthou/op=%v/n=%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				var err error
				for b.Loop() {
					_, err = form.Circle(kind, points)
				}
				require.NoError(b, err)
			})
		}
	}
}

// A true oval is the worst case: two inscribed circles of one size, and a
// valley between them to be searched.
func BenchmarkCircle_oval(b *testing.B) {
	for _, n := range []int{24, 360} {
		radii := make([]float64, n)
		for i := range radii {
			radii[i] = 43_000 + 10*math.Cos(4*math.Pi*float64(i)/float64(n))
		}
		points := form.Polar(radii)
		b.Run(fmt.Sprintf("lib=tenthou/op=MICI/n=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			var err error
			for b.Loop() {
				_, err = form.Circle(form.MICI, points)
			}
			require.NoError(b, err)
		})
	}
}

func BenchmarkProfile(b *testing.B) {
	p := form.Profile{Nominal: 43 * mm}
	rng := rand.New(rand.NewPCG(4, 4))
	for range 360 {
		p.Deviations = append(p.Deviations, units.Length(rng.IntN(10_000_000)))
	}
	b.Run("lib=tenthou/op=roundness/n=360", func(b *testing.B) {
		b.ReportAllocs()
		var err error
		for b.Loop() {
			_, err = p.Roundness(form.MZCI)
		}
		require.NoError(b, err)
	})
	b.Run("lib=tenthou/op=outofround/n=360", func(b *testing.B) {
		b.ReportAllocs()
		var err error
		for b.Loop() {
			_, err = p.OutOfRound()
		}
		require.NoError(b, err)
	})
	radii, err := p.Radii(units.InMicrometres)
	require.NoError(b, err)
	b.Run("lib=tenthou/op=harmonics/n=360", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, err = form.Harmonics(radii)
		}
		require.NoError(b, err)
	})
}

func BenchmarkLine(b *testing.B) {
	for _, n := range []int{100, 1000, 10_000} {
		points := slope(n)
		for _, kind := range []form.LineKind{form.LSLI, form.MZLI} {
			b.Run(fmt.Sprintf("lib=tenthou/op=%v/n=%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				var err error
				for b.Loop() {
					_, err = form.Line(kind, points)
				}
				require.NoError(b, err)
			})
		}
	}
}

func BenchmarkPlane(b *testing.B) {
	for _, c := range [][2]int{{5, 20}, {10, 20}, {25, 40}, {100, 100}} {
		points := slab(c[0], c[1])
		for _, kind := range []form.PlaneKind{form.LSPL, form.MZPL} {
			b.Run(fmt.Sprintf("lib=tenthou/op=%v/n=%d", kind, len(points)), func(b *testing.B) {
				b.ReportAllocs()
				var err error
				for b.Loop() {
					_, err = form.Plane(kind, points)
				}
				require.NoError(b, err)
			})
		}
	}
}

func BenchmarkCylinder(b *testing.B) {
	for _, n := range []int{60, 360, 3600} {
		var points []form.Point3
		for level := range 6 {
			for _, p := range bore(n / 6) {
				points = append(points, form.Point3{X: p.X, Y: p.Y, Z: 20_000 * float64(level)})
			}
		}
		for _, kind := range []form.CylinderKind{form.LSCY, form.MZCY} {
			b.Run(fmt.Sprintf("lib=tenthou/op=%v/n=%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				var err error
				for b.Loop() {
					_, err = form.Cylinder(kind, points)
				}
				require.NoError(b, err)
			})
		}
	}
}

func BenchmarkVBlock(b *testing.B) {
	v := form.VBlock{Included: 72 * units.Degree}
	b.Run("lib=tenthou/op=factor", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = v.Factor(5)
		}
	})
}
