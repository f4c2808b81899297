package uncertainty_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// clearance is a formula as part packages write them.
func clearance[N tolerance.Number[N]](bore, piston N) N { return bore.Sub(piston) }

// outOfRound of two diameters at right angles.
func outOfRound[N tolerance.Number[N]](a, b N) N { return a.Sub(b).Abs() }

func BenchmarkEstimate(b *testing.B) {
	bore, err := uncertainty.Rectangular("bore gauge", 86_030*units.Micrometre, 4*units.Micrometre)
	require.NoError(b, err)
	piston, err := uncertainty.Normal("micrometer", 85_970*units.Micrometre, 2*units.Micrometre, 9)
	require.NoError(b, err)
	zero, err := uncertainty.Normal("zero", 0, 1*units.Micrometre)
	require.NoError(b, err)
	scale, err := uncertainty.Resolution("scale", 0, 1*units.Micrometre)
	require.NoError(b, err)
	four := bore.Add(piston).Add(zero).Add(scale)
	run := func(name string, f func() uncertainty.Estimate) {
		b.Run("lib=uncertainty/op="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				f()
			}
		})
	}
	run("clearance2", func() uncertainty.Estimate { return clearance(bore, piston) })
	run("outofround2", func() uncertainty.Estimate { return outOfRound(bore, piston) })
	run("share2", func() uncertainty.Estimate { return bore.Share(bore, piston) })
	run("muldiv2", func() uncertainty.Estimate { return bore.MulDiv(bore, piston) })
	run("spread2", func() uncertainty.Estimate { return bore.Spread(piston, bore, piston) })
	run("scalepi", func() uncertainty.Estimate { return bore.ScalePi(1, 4) })
	run("chain4", func() uncertainty.Estimate { return bore.Add(piston).Add(zero).Add(scale) })
	run("sub4", func() uncertainty.Estimate { return four.Sub(four) })
	run("max2", func() uncertainty.Estimate { return bore.Max(piston) })
	x, y := bore.Real(units.InMillimetres), piston.Real(units.InMillimetres)
	b.Run("lib=uncertainty/op=dualquo2", func(b *testing.B) {
		for b.Loop() {
			x.Mul(y).Quo(x.Add(y))
		}
	})
}

// chain5 is a chain of five links: a crank's throw and rod, a piston's height,
// a deck and a gasket.
func chain5(x []units.Length) units.Length {
	return x[4].Add(x[3]).Sub(x[2]).Sub(x[1]).Sub(x[0])
}

type constructor func(string, units.Length, units.Length, ...uncertainty.Freedom) (uncertainty.Estimate, error)

func links(tb testing.TB, shapes ...constructor) []uncertainty.Estimate {
	var all []uncertainty.Estimate
	for i, v := range []units.Length{45 * units.Millimetre, 150 * units.Millimetre, 30 * units.Millimetre, 225_500 * units.Micrometre, 1_200 * units.Micrometre} {
		e, err := shapes[i%len(shapes)]("link", v, 20*units.Micrometre)
		require.NoError(tb, err)
		all = append(all, e)
	}
	return all
}

func BenchmarkSimulate(b *testing.B) {
	in := links(b, uncertainty.Normal[units.Length])
	b.Run("lib=uncertainty/op=chain5of1e6", func(b *testing.B) {
		for b.Loop() {
			s, err := uncertainty.Simulate(uncertainty.Trials(1, 1_000_000), in, chain5)
			require.NoError(b, err)
			_, err = s.Shortest(0.95)
			require.NoError(b, err)
		}
	})
	b.Run("lib=uncertainty/op=chain5of1e6in2", func(b *testing.B) {
		for b.Loop() {
			parts := uncertainty.Trials(1, 1_000_000).Split(2)
			var s [2]uncertainty.SampleOf[units.Length]
			done := make(chan error)
			for i, p := range parts {
				go func() {
					var err error
					s[i], err = uncertainty.Simulate(p, in, chain5)
					done <- err
				}()
			}
			require.NoError(b, <-done)
			require.NoError(b, <-done)
			j, err := uncertainty.JoinOf(s[:]...)
			require.NoError(b, err)
			_, err = j.Shortest(0.95)
			require.NoError(b, err)
		}
	})
}

func BenchmarkStream(b *testing.B) {
	x := make([]float64, 1000)
	for name, shape := range map[string]uncertainty.Shape{"normal": uncertainty.NormalShape, "rectangular": uncertainty.RectangularShape, "triangular": uncertainty.TriangularShape, "u": uncertainty.UShape} {
		b.Run("lib=uncertainty/op=1000"+name, func(b *testing.B) {
			var s uncertainty.Stream
			for b.Loop() {
				s.Fill(x, shape, uncertainty.Infinite())
			}
		})
	}
	b.Run("lib=uncertainty/op=1000t4", func(b *testing.B) {
		var s uncertainty.Stream
		for b.Loop() {
			s.Fill(x, uncertainty.NormalShape, 4)
		}
	})
	b.Run("lib=math/rand/op=1000normal", func(b *testing.B) {
		r := rand.New(rand.NewPCG(1, 2))
		for b.Loop() {
			for i := range x {
				x[i] = r.NormFloat64()
			}
		}
	})
}

func BenchmarkOrder(b *testing.B) {
	x := make([]float64, 100_000)
	new(uncertainty.Stream).Fill(x, uncertainty.NormalShape, uncertainty.Infinite())
	b.Run("lib=uncertainty/op=sample100000", func(b *testing.B) {
		for b.Loop() {
			_, err := uncertainty.NewSample(x)
			require.NoError(b, err)
		}
	})
	b.Run("lib=slices/op=sample100000", func(b *testing.B) {
		for b.Loop() {
			slices.Sort(slices.Clone(x))
		}
	})
}

func BenchmarkStudentT(b *testing.B) {
	b.Run("lib=uncertainty/op=quantile16", func(b *testing.B) {
		for b.Loop() {
			_, err := uncertainty.StudentT(0.975, 16)
			require.NoError(b, err)
		}
	})
	b.Run("lib=gonum/op=quantile16", func(b *testing.B) {
		t := distuv.StudentsT{Sigma: 1, Nu: 16}
		for b.Loop() {
			t.Quantile(0.975)
		}
	})
}

func BenchmarkSeries(b *testing.B) {
	readings := make([]units.Length, 50)
	floats := make([]float64, 50)
	for i := range readings {
		readings[i] = 60*units.Millimetre + units.Length(i*i%17)*units.Micrometre
		floats[i] = readings[i].Float(units.InMillimetres)
	}
	b.Run("lib=uncertainty/op=deviation50", func(b *testing.B) {
		for b.Loop() {
			s, err := uncertainty.NewSeries(readings...)
			require.NoError(b, err)
			s.StandardDeviation(units.InMillimetres)
		}
	})
	b.Run("lib=gonum/op=deviation50", func(b *testing.B) {
		for b.Loop() {
			stat.MeanStdDev(floats, nil)
		}
	})
}

func BenchmarkDecide(b *testing.B) {
	e, err := uncertainty.Normal("gauge", 10_017*units.Micrometre, 20*units.Micrometre)
	require.NoError(b, err)
	t, err := uncertainty.Normal("gauge", 10_017*units.Micrometre, 20*units.Micrometre, 12)
	require.NoError(b, err)
	band := tolerance.MustBetween(9_950*units.Micrometre, 10_050*units.Micrometre)
	for name, e := range map[string]uncertainty.Estimate{"normal": e, "t": t} {
		b.Run("lib=uncertainty/op=decide"+name, func(b *testing.B) {
			for b.Loop() {
				_, err := uncertainty.Decide(uncertainty.ISO14253(), e, band)
				require.NoError(b, err)
			}
		})
	}
	b.Run("lib=uncertainty/op=globalrisks", func(b *testing.B) {
		for b.Loop() {
			_, err := uncertainty.RisksFor(10*units.Millimetre, 25*units.Micrometre, 20*units.Micrometre, band, band.Interval())
			require.NoError(b, err)
		}
	})
}

func BenchmarkStudy(b *testing.B) {
	s := publishedStudy(b)
	b.Run("lib=uncertainty/op=anova90", func(b *testing.B) {
		for b.Loop() {
			_, err := s.Analyse(units.InMillimetres, uncertainty.PoolUnlessPlain)
			require.NoError(b, err)
		}
	})
	b.Run("lib=uncertainty/op=range90", func(b *testing.B) {
		for b.Loop() {
			_, err := s.ByRange(units.InMillimetres)
			require.NoError(b, err)
		}
	})
}
