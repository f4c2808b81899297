package piston

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func ringLength(t testing.TB, s string) units.Length {
	l, err := units.ParseLength(s)
	require.NoError(t, err)
	return l
}

// The changes that manuals print, one pair of which was rounded twice: its
// printed bore does not give its printed gap, and the bore that does is told.
func TestRingGapChange_published(t *testing.T) {
	vectors.Load(t, "published/piston_ringgap_changes.txt").Each(t, func(t *testing.T, c vectors.Case) {
		unit, name := units.InMillimetres, " mm"
		if c.Choice("unit", "in", "mm") == "in" {
			unit, name = units.InInches, " in"
		}
		bore := ringLength(t, c.Text("bore")+name)
		c.Near("exact", RingGapChange(bore).Float(unit))
		by := c.Choice("by", "rule", "wrong", "none")
		if by == "none" {
			require.False(t, c.Has("printed"))
			return
		}
		printed := ringLength(t, c.Text("printed")+name)
		places := map[string]int{"0.003": 3, "0.0031": 4, "0.08": 2}[c.Text("printed")]
		rounded, _ := units.Round(RingGapChange(bore), unit, places, units.NearestEven)
		switch by {
		case "rule":
			require.Equal(t, printed, RingGapChangeByRule(bore))
			require.InDelta(t, 0.0451, float64(RingGapRuleError(bore))/float64(RingGapChange(bore)), 0.0001, "3 for 1 falls short by 4.5 %")
		case "wrong":
			require.NotEqual(t, printed, rounded)
			once := BoreForRingGap(printed, 0, 0)
			require.Less(t, once, bore)
			short, _ := units.Round(once, units.InInches, 3, units.NearestEven)
			require.Equal(t, units.Thou, short, "the pair is really 0.001 in")
		}
	})
}

// The gap in another bore against exact rationals of a published expansion of
// π, to half a quantum; additive, odd, and undone by its inverses.
func TestRingGapInBore_exact(t *testing.T) {
	// π to 50 digits (OEIS A000796).
	pi, _ := new(big.Rat).SetString("3.14159265358979323846264338327950288419716939937510")
	half := big.NewRat(1, 2)
	near := func(want *big.Rat, got units.Length) bool {
		off := new(big.Rat).Sub(want, new(big.Rat).SetInt64(int64(got)))
		return off.Abs(off).Cmp(half) <= 0
	}
	r := rand.New(rand.NewPCG(5, 1))
	for range 3000 {
		a, b, c := units.Length(r.Int64N(2e11)), units.Length(r.Int64N(2e11)), units.Length(r.Int64N(2e11))
		g := units.Length(r.Int64N(2e9))
		x := new(big.Rat).SetInt64(int64(b - a))
		require.True(t, near(new(big.Rat).Mul(pi, x), RingGapChange(b-a)))
		require.True(t, near(new(big.Rat).Quo(x, pi), BoreForRingGap(b, a, 0)), "divided by π")
		require.True(t, near(new(big.Rat).Quo(x, new(big.Rat).Mul(pi, big.NewRat(2, 1))), RingFaceWear(b, a)))

		require.Equal(t, -RingGapChange(b-a), RingGapChange(a-b), "odd")
		direct, through := RingGapInBore(g, a, c), RingGapInBore(RingGapInBore(g, a, b), b, c)
		require.LessOrEqual(t, (direct - through).Abs(), units.Picometre, "additive to a quantum")
		require.Equal(t, direct, g+RingGapChange(c-a))
		require.Equal(t, c, BoreForRingGap(direct, g, a), "undone")
		require.Equal(t, RingGapInOversize(g, b), RingGapInBore(g, a, a+b))

		w := units.Length(r.Int64N(1e9))
		require.Equal(t, w, RingFaceWear(RingGapAfterFaceWear(g, w), g), "undone")
		require.LessOrEqual(t, (RingGapAfterFaceWear(g, w) - RingGapInBore(g, a, a+2*w)).Abs(), units.Picometre, "wear of the face as of the wall all round")
		require.Equal(t, g, a-RingStockToFile(a, g))
	}
	// The greatest and the least that are in range.
	for _, x := range []units.Length{1, -1, 1 << 61, -1 << 61, 1<<61 - 1} {
		q := new(big.Rat).Quo(new(big.Rat).SetInt64(int64(x)), pi)
		require.True(t, near(q, BoreForRingGap(x, 0, 0)))
	}
}

// piTop/piBottom is the last convergent of π within an int64, by the continued
// fraction of 60 digits; the next one's denominator is beyond any length's.
func TestRingGap_convergent(t *testing.T) {
	pi, _ := new(big.Rat).SetString("3.14159265358979323846264338327950288419716939937510582097494")
	h, k := [2]*big.Int{big.NewInt(0), big.NewInt(1)}, [2]*big.Int{big.NewInt(1), big.NewInt(0)}
	for x := pi; ; {
		a := new(big.Int).Quo(x.Num(), x.Denom())
		hn, kn := new(big.Int).Mul(a, h[1]), new(big.Int).Mul(a, k[1])
		h, k = [2]*big.Int{h[1], hn.Add(hn, h[0])}, [2]*big.Int{k[1], kn.Add(kn, k[0])}
		if !h[1].IsInt64() {
			break
		}
		x = new(big.Rat).Inv(new(big.Rat).Sub(x, new(big.Rat).SetInt(a)))
	}
	require.Equal(t, int64(piTop), h[0].Int64())
	require.Equal(t, int64(piBottom), k[0].Int64())
	// x/(m + 1/2) with x below 2^61 quanta has a denominator of 2m+1 < 2^62/π.
	require.Positive(t, k[1].Cmp(new(big.Int).SetUint64(1<<62)))
	require.Greater(t, int64(piTop), int64(1<<61), "no length is a multiple of it")
}

// The trade's usual sizes (derived, published check values 3.1).
func TestRingGap_tradeSizes(t *testing.T) {
	for bore, gap := range map[string]float64{"0.01 mm": 0.031416, "0.25 mm": 0.7854, "0.50 mm": 1.5708} {
		require.InDelta(t, gap, RingGapInOversize(0, ringLength(t, bore)).Float(units.InMillimetres), 0.00005)
	}
	require.InDelta(t, 0.09425, RingGapInOversize(0, 30*units.Thou).Float(units.InInches), 0.000005)
	// 4.000 in at 0.003 to 0.004 in per inch (common practice).
	for factor, want := range map[string]string{"any ring, at the least": "0.012 in", "top ring, road engine": "0.016 in"} {
		f, ok := RingGapFactorFor(factor)
		require.True(t, ok)
		require.Equal(t, "common practice", f.Source)
		require.Equal(t, ringLength(t, want), RingLeastGap(4*units.Inch, f.Factor))
	}
	for _, f := range RingGapFactors() {
		require.True(t, f.Factor.Valid())
		require.Contains(t, []string{"common practice", "from memory"}, f.Source)
	}
	_, ok := RingGapFactorFor("lawnmower")
	require.False(t, ok)
	require.False(t, RingLeastGap(4*units.Inch, tolerance.Ratio{}).InRange())
}

// Bores that aren't round, worn walls, rings out of square and the turning of
// the ring's ends, against arc lengths and a bent beam.
func TestRingGapBore_reference(t *testing.T) {
	vectors.Load(t, "reference/piston_ringgap_bore.txt").Each(t, func(t *testing.T, c vectors.Case) {
		a, b := ringLength(t, c.Text("a")+" mm"), ringLength(t, c.Text("b")+" mm")
		mm := func(l units.Length) float64 { return l.Float(units.InMillimetres) }
		what := c.Choice("what", "bore", "oval", "ellipse", "side", "arc", "tilt")
		if what != "bore" {
			c.Ignore("middle", "back")
		}
		if what != "bore" && what != "arc" {
			c.Ignore("c")
		}
		switch what {
		case "bore":
			thick := ringLength(t, c.Text("c")+" mm")
			opening := RingGapChange(b - a)
			face := RingOpeningAtFace(opening, b, thick)
			c.Near("face", mm(face))
			c.Near("middle", mm(opening))
			c.Near("back", mm(RingOpeningAtBack(opening, b, thick)))
			require.LessOrEqual(t, (RingClosingToButt(face, b, thick) - opening).Abs(), 2*units.Picometre, "undone")
		case "oval":
			c.Near("face", mm(RingOvalExcess(a, b)))
		case "ellipse":
			c.Near("face", mm(RingOvalExcess(a, b).Scale(1, 4)))
		case "side":
			c.Near("face", mm(RingGapOneSided(0, b)))
			arc := a.ScalePi(1, 2) // half the way round, worn by 2/π of the depth on average
			mean := b.Scale(2, 1).Scale(piBottom, piTop)
			require.InDelta(t, float64(2*b), float64(RingGapWornArc(0, mean, arc, a)), 3)
			// Two diameters at right angles tell 0.43 of the wear too little.
			two := RingGapChange(RingBoreDiameter(a+b, a) - a)
			require.InDelta(t, 2-math.Pi/2, float64(2*b-two)/float64(b), 1e-6)
		case "arc":
			c.Near("face", mm(RingGapWornArc(0, b, ringLength(t, c.Text("c")+" mm"), a)))
		case "tilt":
			c.Near("face", mm(RingTiltError(a, b)))
		}
	})
}

// The mean of n directions stands for the mean of all but for lobes of a
// multiple of 2n: diameters d + 2a·cos(kφ), by hand.
func TestRingBoreDiameter(t *testing.T) {
	const d, a = 86 * units.Millimetre, 50 * units.Micrometre
	at := func(k int, turn float64) units.Length {
		return d + units.Length(math.Round(float64(a)*2*math.Cos(float64(k)*turn)))
	}
	for _, phase := range []float64{0, 0.1, 0.5} {
		require.InDelta(t, float64(d), float64(RingBoreDiameter(at(2, phase), at(2, phase+math.Pi/2))), 2, "an oval, two directions")
		four := RingBoreDiameter(at(4, phase), at(4, phase+math.Pi/4), at(4, phase+math.Pi/2), at(4, phase+3*math.Pi/4))
		require.InDelta(t, float64(d), float64(four), 2, "four lobes, four directions")
	}
	require.Greater(t, RingBoreDiameter(at(4, 0), at(4, math.Pi/2))-d, a, "four lobes fool two directions")
	require.Equal(t, d, RingBoreDiameter(d))
}

// Every formula in every reading: the bracket holds the number, the estimate's
// value is it, and so is the term's.
func TestRingGap_readings(t *testing.T) {
	at := func(lo, hi int64) tolerance.Bracket {
		b, err := tolerance.NewInterval(units.Length(lo), tolerance.Closed, units.Length(hi), tolerance.Closed)
		require.NoError(t, err)
		return b
	}
	r := rand.New(rand.NewPCG(6, 1))
	for range 200 {
		g, d, e := 1e8+r.Int64N(1e9), 5e10+r.Int64N(1e11), 5e10+r.Int64N(1e11)
		i := [3]tolerance.Bracket{at(g, g+200+r.Int64N(1e7)), at(d, d+200+r.Int64N(1e8)), at(e, e+200+r.Int64N(1e8))}
		// Well inside, so that rounding to the nearest can't pass an open end.
		l := [3]units.Length{units.Length(g + 100), units.Length(d + 100), units.Length(e + 100)}
		require.True(t, RingGapInBore(i[0], i[1], i[2]).Contains(RingGapInBore(l[0], l[1], l[2])))
		require.True(t, BoreForRingGap(i[0], i[1], i[2]).Contains(BoreForRingGap(l[0], l[1], l[2])))
		require.True(t, RingFaceWear(i[0], i[1]).Contains(RingFaceWear(l[0], l[1])))
		require.True(t, RingGapRuleError(i[0]).Contains(RingGapRuleError(l[0])))
		require.True(t, RingBoreDiameter(i[1], i[2]).Contains(RingBoreDiameter(l[1], l[2])))
		require.True(t, RingOpeningAtFace(i[0], i[1], i[0]).Contains(RingOpeningAtFace(l[0], l[1], l[0])))
		require.True(t, RingOpeningAtBack(i[0], i[1], i[0]).Contains(RingOpeningAtBack(l[0], l[1], l[0])))
		require.True(t, RingClosingToButt(i[0], i[1], i[0]).Contains(RingClosingToButt(l[0], l[1], l[0])))
	}
	// π times the bore's uncertainty, and the gap's own: √(0.005² + 2·(π·0.002)²).
	gap, err := uncertainty.Normal("gap", ringLength(t, "0.35 mm"), ringLength(t, "0.005 mm"))
	require.NoError(t, err)
	from, err := uncertainty.Normal("lower bore", ringLength(t, "86.01 mm"), ringLength(t, "0.002 mm"))
	require.NoError(t, err)
	to, err := uncertainty.Normal("upper bore", ringLength(t, "86.11 mm"), ringLength(t, "0.002 mm"))
	require.NoError(t, err)
	top := RingGapInBore(gap, from, to)
	require.Equal(t, RingGapInBore(gap.Value(), from.Value(), to.Value()), top.Value())
	require.InDelta(t, math.Sqrt(0.005*0.005+2*math.Pow(math.Pi*0.002, 2)), float64(top.StandardUncertainty())/1e9, 1e-9)

	x := working.Given("gap", "s", ringLength(t, "0.35 mm"))
	term := RingGapInBore(x, working.Given("bore below", "A", ringLength(t, "86.01 mm")), working.Given("bore above", "B", ringLength(t, "86.11 mm"))).Named("gap above", "S")
	done, err := working.Solve(term, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, done.Text(), "S = s + π × (B − A)")
	require.Contains(t, done.Text(), "0.664 mm")
}

func TestRingGap_outOfRange(t *testing.T) {
	bad, one := units.OutOfRange[units.Length](), units.Millimetre
	for name, got := range map[string]units.Length{
		"change": RingGapChange(bad), "bore": RingGapInBore(one, bad, one), "for": BoreForRingGap(one, one, bad), "rule": RingGapChangeByRule(bad),
		"error": RingGapRuleError(bad), "wear": RingGapAfterFaceWear(one, bad), "face": RingFaceWear(bad, one), "oversize": RingGapInOversize(bad, one),
		"stock": RingStockToFile(one, bad), "mean": RingBoreDiameter(one, bad), "oval": RingOvalExcess(one, -one), "side": RingGapOneSided(one, bad),
		"arc": RingGapWornArc(one, one, one, 0), "tilt": RingTiltError(0, one), "opening": RingOpeningAtFace(one, one, one),
		"back": RingOpeningAtBack(one, one, one), "closing": RingClosingToButt(one, 0, one),
	} {
		require.False(t, got.InRange(), name)
	}
}

func TestRingGap_allocations(t *testing.T) {
	g, a, b := 350*units.Micrometre, 86*units.Millimetre, 86100*units.Micrometre
	require.Zero(t, testing.AllocsPerRun(100, func() {
		sink = RingGapInBore(g, a, b)
		sink = BoreForRingGap(g, a, b)
		sink = RingFaceWear(a, b)
		sink = RingOpeningAtFace(g, a, g)
		sink = RingBoreDiameter(a, b)
	}))
}

func BenchmarkRingGap(b *testing.B) {
	g, from, to := 350*units.Micrometre, 86*units.Millimetre, 86100*units.Micrometre
	b.Run("lib=tenthou/op=inbore", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink = RingGapInBore(g, from, to)
		}
	})
	b.Run("lib=float64/op=inbore", func(b *testing.B) {
		g, from, to := 0.35, 86.0, 86.1
		for b.Loop() {
			sinkFloat = g + math.Pi*(to-from)
		}
	})
	b.Run("lib=tenthou/op=borefor", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink = BoreForRingGap(from, g, to)
		}
	})
	b.Run("lib=tenthou/op=atface", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink = RingOpeningAtFace(g, from, g)
		}
	})
}
