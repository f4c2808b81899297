package tolerance_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
)

// pistonTravel is how far the piston of a slider-crank without offset has
// come from top dead centre: r + l − (r cos θ + √(l² − r² sin² θ)).
func pistonTravel[R tolerance.Real[R]](throw, rod, angle R) R {
	across := throw.Mul(angle.Sin())
	along := rod.Mul(rod).Sub(across.Mul(across)).Sqrt()
	return throw.Add(rod).Sub(throw.Mul(angle.Cos()).Add(along))
}

func ExampleReal() {
	// A crank throw of 3 in with a rod of 12 in, 19° after top dead centre.
	travel := pistonTravel[tolerance.Float](3, 12, 19*math.Pi/180)
	fmt.Printf("%.4f in\n", float64(travel))
	// Output: 0.2033 in
}

func ExampleFloat_InRange() {
	ratio := tolerance.Float(1).Quo(0)
	fmt.Println(ratio.InRange(), tolerance.Float(1).Quo(ratio).InRange())
	// Output: false false
}

// TM 5-6115-593-34, injection timing page, prints 0.2032 in for 19° with rods
// of 12 in (its Table 1-2); the throw of 3 in is half the stroke of 6 in, which
// is from memory. The exact value is 0.203258 in: the print is cut, not
// rounded, so the check allows one unit of its last place.
func TestReal_published(t *testing.T) {
	require.InDelta(t, 0.2032, float64(pistonTravel[tolerance.Float](3, 12, 19*math.Pi/180)), 1e-4)
}

// Each operation is the correctly rounded one: judged by exact fractions.
func TestFloat_roundsOnce(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	pick := func() tolerance.Float {
		return tolerance.Float(math.Ldexp(rng.Float64()-0.5, rng.IntN(80)-40))
	}
	judge := func(got tolerance.Float, want *big.Rat) {
		t.Helper()
		nearest, _ := want.Float64()
		require.Equal(t, nearest, float64(got))
	}
	rat := func(f tolerance.Float) *big.Rat { return new(big.Rat).SetFloat64(float64(f)) }
	for range 2000 {
		f, g, h := pick(), pick(), pick()
		judge(f.Add(g), rat(f).Add(rat(f), rat(g)))
		judge(f.Sub(g), rat(f).Sub(rat(f), rat(g)))
		judge(f.Mul(g), rat(f).Mul(rat(f), rat(g)))
		judge(f.Quo(g), rat(f).Quo(rat(f), rat(g)))
		// Not fused: the product is rounded before the sum.
		p := f.Mul(g)
		judge(f.Mul(g).Add(h), rat(p).Add(rat(p), rat(h)))
		root := new(big.Float).SetPrec(200).SetFloat64(math.Abs(float64(f)))
		nearest, _ := root.Sqrt(root).Float64()
		require.Equal(t, nearest, math.Abs(float64(max(f, -f).Sqrt())))
	}
}

func TestFloat_known(t *testing.T) {
	one := tolerance.Float(1)
	require.InDelta(t, 0.5, float64(tolerance.Float(math.Pi/6).Sin()), 1e-15)
	require.InDelta(t, 0.5, float64(tolerance.Float(math.Pi/3).Cos()), 1e-15)
	for _, c := range []struct{ y, x, want float64 }{
		{0, 1, 0}, {1, 1, math.Pi / 4}, {1, 0, math.Pi / 2}, {0, -1, math.Pi}, {-1, -1, -3 * math.Pi / 4},
	} {
		require.InDelta(t, c.want, float64(tolerance.Float(c.y).Atan2(tolerance.Float(c.x))), 1e-15)
	}
	s := tolerance.Float(0.5)
	require.InDelta(t, math.Pi/6, float64(s.Atan2(one.Sub(s.Mul(s)).Sqrt())), 1e-15, "the arcsine of the documentation")
	require.Equal(t, tolerance.Float(2.5), one.Const(2.5))
}

// Out of range sticks, through every operation and in every place.
func TestFloat_outOfRangeSticks(t *testing.T) {
	one := tolerance.Float(1)
	for _, bad := range []tolerance.Float{
		one.Quo(0), tolerance.Float(0).Quo(0), tolerance.Float(-1).Sqrt(), tolerance.Float(0).Atan2(0),
		tolerance.Float(math.MaxFloat64).Mul(2), tolerance.Float(-math.MaxFloat64).Sub(math.MaxFloat64),
		tolerance.Float(math.Inf(1)), tolerance.Float(math.Inf(-1)), tolerance.Float(math.NaN()),
	} {
		require.False(t, bad.InRange())
		for _, got := range []tolerance.Float{
			bad.Add(1), one.Add(bad), bad.Sub(bad), one.Sub(bad), bad.Mul(0), one.Mul(bad), bad.Quo(2), one.Quo(bad),
			bad.Sqrt(), bad.Sin(), bad.Cos(), bad.Atan2(1), one.Atan2(bad),
		} {
			require.False(t, got.InRange(), "%v", bad)
		}
		require.True(t, bad.Const(2).InRange(), "a constant takes nothing of the receiver")
	}
	require.True(t, tolerance.Float(math.MaxFloat64).InRange())
	require.True(t, tolerance.Float(0).InRange())
}

func TestFloat_allocatesNothing(t *testing.T) {
	require.Zero(t, testing.AllocsPerRun(100, func() { _ = pistonTravel[tolerance.Float](3, 12, 0.3) }))
}

func FuzzFloat(f *testing.F) {
	f.Add(3.0, 12.0, 0.3)
	f.Add(0.0, 0.0, 0.0)
	f.Add(math.Inf(1), 1.0, math.MaxFloat64)
	f.Fuzz(func(t *testing.T, a, b, c float64) {
		x, y, z := tolerance.Float(a), tolerance.Float(b), tolerance.Float(c)
		in := x.InRange() && y.InRange() && z.InRange()
		travel := pistonTravel(x, y, z)
		if !in {
			require.False(t, travel.InRange())
			return
		}
		if travel.InRange() && x >= 0 && y >= x {
			// Between the dead centres, as far as rounding goes.
			slack := 1e-7 * (x + y)
			require.GreaterOrEqual(t, travel, -slack)
			require.LessOrEqual(t, travel, 2*x+slack)
		}
	})
}

func BenchmarkReal(b *testing.B) {
	b.Run("lib=tolerance/op=slidercrank", func(b *testing.B) {
		x := tolerance.Float(0.3)
		for b.Loop() {
			x = pistonTravel(3, 12, x).Mul(0).Add(0.3)
		}
		require.True(b, x.InRange())
	})
	b.Run("lib=float64/op=slidercrank", func(b *testing.B) {
		x := 0.3
		for b.Loop() {
			a := 3 * math.Sin(x)
			x = (15-(3*math.Cos(x)+math.Sqrt(144-a*a)))*0 + 0.3
		}
		require.Equal(b, 0.3, x)
	})
}
