package piston

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func mm(s string) units.Length { return units.MustParseLength(s + " mm") }

func at(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func band(s string) tolerance.Band { return tolerance.MustParseBand(s) }

// Generic service text (published check values, part B, 1.4): groove width =
// ring width + measured side clearance; ring 1.985, clearance 0.055 → 2.040 mm.
func TestGrooveWidthAsServiceTextsGiveIt(t *testing.T) {
	require.Equal(t, mm("2.040"), GrooveWidth(mm("0.055"), mm("1.985")))
	require.Equal(t, mm("0.055"), SideClearance(mm("2.040"), mm("1.985")))
	require.Equal(t, mm("1.985"), RingHeight(mm("2.040"), mm("0.055")))
}

// Each inverse undoes its forward formula to the quantum, and the two ways to
// a groove's wear agree, over random sizes.
func TestInversesUndoTheirFormulas(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 2000 {
		g, h, f := units.Length(r.Int64N(1e10)), units.Length(r.Int64N(1e10)), units.Length(r.Int64N(1e10))
		c := SideClearance(g, h)
		require.Equal(t, g, GrooveWidth(c, h))
		require.Equal(t, h, RingHeight(g, c))
		require.Equal(t, SideClearance(g, f), ClearanceWithRing(c, h, f), "another ring in the same groove")
		require.Equal(t, f, RingHeightFor(c, h, SideClearance(g, f)))
		require.Equal(t, GrooveWear(g, f), GrooveWearByClearance(c, h, f))
		require.Equal(t, RingWear(h, f), GrooveWear(f, h), "a ring loses what a groove gains")
		require.Equal(t, GrooveTaper(g, h), g-h)
		// The growth of the clearance is the wear of both.
		g0, h0 := units.Length(r.Int64N(1e10)), units.Length(r.Int64N(1e10))
		require.Equal(t, SideClearance(g, h)-SideClearance(g0, h0), GrooveWear(g, g0)+RingWear(h, h0))
	}
}

// GrooveShare against exact rationals.
func TestGrooveShareIsTheRatioOfTheWears(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	for range 1000 {
		w, a, b := r.Int64N(1e9), r.Int64N(1e8), 1+r.Int64N(1e8)
		got := GrooveShare(units.Length(w), units.Length(a), units.Length(b))
		want := big.NewRat(w, 1)
		want.Mul(want, big.NewRat(a, a+b))
		diff := new(big.Rat).Sub(new(big.Rat).SetInt64(int64(got)), want)
		require.LessOrEqual(t, diff.Abs(diff).Cmp(big.NewRat(1, 2)), 0)
	}
}

func TestMeasureSideClearance(t *testing.T) {
	c, err := MeasureSideClearance(at("1.56 mm"), at("1.5 mm"))
	require.NoError(t, err)
	require.Equal(t, at("0.06 mm"), c)

	c, err = MeasureSideClearance(at("1.560 ±0.005 mm"), at("1.500 ±0.002 mm"))
	require.NoError(t, err)
	require.Equal(t, at("[0.053 mm, 0.067 mm]"), c)

	// Errors that reach past zero: a ring that goes in has no less than nothing.
	c, err = MeasureSideClearance(at("1.502 ±0.005 mm"), at("1.500 ±0.005 mm"))
	require.NoError(t, err)
	require.Equal(t, at("[0 mm, 0.012 mm]"), c)

	for _, bad := range []struct{ groove, ring, want string }{
		{"1.5 mm", "1.52 mm", "piston: ring height 1.52 mm is not below groove width 1.5 mm"},
		{"1.5 mm", "1.5 mm", "piston: ring height 1.5 mm is not below groove width 1.5 mm"},
		{"-1.5 mm", "1.52 mm", "piston: groove width -1.5 mm is not above 0 mm"},
		{"0 mm", "1.52 mm", "piston: groove width 0 mm is not above 0 mm"},
		{"1.5 mm", "[−0.1 mm, 1 mm]", "piston: ring height [-0.1 mm, 1 mm] is not above 0 mm"},
		{"1.5 mm", "(−∞, 1 mm]", "piston: ring height (−∞, 1 mm] is not above 0 mm"},
	} {
		_, err := MeasureSideClearance(at(bad.groove), at(bad.ring))
		require.ErrorIs(t, err, ErrInput)
		require.EqualError(t, err, bad.want)
	}
	_, err = MeasureSideClearance(tolerance.Exactly(units.OutOfRange[units.Length]()), at("1 mm"))
	require.ErrorIs(t, err, ErrInput)
}

// Brackets hold every clearance that their ends allow: sampled.
func TestBracketReadingHoldsEveryCase(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	draw := func(lo int64) (tolerance.Bracket, func() units.Length) {
		a := lo + r.Int64N(1e6)
		w := 1 + r.Int64N(1e6)
		b, err := tolerance.NewInterval(units.Length(a), tolerance.Closed, units.Length(a+w), tolerance.Closed)
		require.NoError(t, err)
		return b, func() units.Length { return units.Length(a + r.Int64N(w+1)) }
	}
	for range 300 {
		c, cs := draw(0)
		h, hs := draw(1e9)
		f, fs := draw(1e9)
		with, height := ClearanceWithRing(c, h, f), RingHeightFor(c, h, f)
		share := GrooveShare(h, c, f)
		for range 20 {
			c, h, f := cs(), hs(), fs()
			require.True(t, with.Contains(ClearanceWithRing(c, h, f)))
			require.True(t, height.Contains(RingHeightFor(c, h, f)))
			require.True(t, share.Contains(GrooveShare(h, c, f)))
		}
	}
}

func TestFormulasAllocateNothing(t *testing.T) {
	g, h := mm("1.56"), mm("1.5")
	require.Zero(t, testing.AllocsPerRun(100, func() { sink = SideClearance(g, h) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { sink = GrooveShare(h, g, h) }))
	b := at("[1.5 mm, 1.6 mm]")
	require.Zero(t, testing.AllocsPerRun(100, func() { sinkBracket = ClearanceWithRing(b, b, b) }))
}

var (
	sink        units.Length
	sinkBracket tolerance.Bracket
	sinkFloat   float64
	sinkDecimal decimal.Decimal
)

func BenchmarkSideClearance(b *testing.B) {
	b.Run("lib=tenthou/op=difference", func(b *testing.B) {
		b.ReportAllocs()
		g, h := mm("1.56"), mm("1.5")
		for b.Loop() {
			sink = SideClearance(g, h)
		}
	})
	b.Run("lib=float64/op=difference", func(b *testing.B) {
		b.ReportAllocs()
		g, h := 1.56, 1.5
		for b.Loop() {
			sinkFloat = g - h
		}
	})
	b.Run("lib=decimal/op=difference", func(b *testing.B) {
		b.ReportAllocs()
		g, h := decimal.RequireFromString("1.56"), decimal.RequireFromString("1.5")
		for b.Loop() {
			sinkDecimal = g.Sub(h)
		}
	})
	b.Run("lib=tenthou/op=share", func(b *testing.B) {
		b.ReportAllocs()
		w, g, h := mm("0.05"), mm("0.04"), mm("0.02")
		for b.Loop() {
			sink = GrooveShare(w, g, h)
		}
	})
	b.Run("lib=float64/op=share", func(b *testing.B) {
		b.ReportAllocs()
		w, g, h := 0.05, 0.04, 0.02
		for b.Loop() {
			sinkFloat = w * g / (g + h)
		}
	})
	b.Run("lib=decimal/op=share", func(b *testing.B) {
		b.ReportAllocs()
		w, g, h := decimal.RequireFromString("0.05"), decimal.RequireFromString("0.04"), decimal.RequireFromString("0.02")
		for b.Loop() {
			sinkDecimal = w.Mul(g).Div(g.Add(h))
		}
	})
	b.Run("lib=tenthou/op=bracket", func(b *testing.B) {
		b.ReportAllocs()
		c, h, f := at("[0.0635 mm, 0.0762 mm)"), at("1.48 ±0.002 mm"), at("[1.478 mm, 1.49 mm]")
		for b.Loop() {
			sinkBracket = ClearanceWithRing(c, h, f)
		}
	})
	b.Run("lib=tenthou/op=groove", func(b *testing.B) {
		b.ReportAllocs()
		g := wornGroove()
		for b.Loop() {
			if _, err := g.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func wornGroove() Groove {
	return Groove{
		Where:      "piston 2, top groove",
		Stations:   []tolerance.Bracket{at("[0.0762 mm, 0.1016 mm)"), at("[0.0762 mm, 0.1016 mm)")},
		Limits:     tolerance.Spec{New: band("0.03–0.07 mm")},
		UsedHeight: at("1.470 ±0.002 mm"),
		NewHeight:  band("1.478–1.490 mm"),
		NewWidth:   band("1.520–1.540 mm"),
	}
}

// The numbers of an out-of-range operand stay out of range, in every formula.
func TestOutOfRangeStays(t *testing.T) {
	bad, one := units.OutOfRange[units.Length](), mm("1")
	for name, got := range map[string]units.Length{
		"SideClearance": SideClearance(bad, one), "GrooveWidth": GrooveWidth(one, bad), "RingHeight": RingHeight(bad, one),
		"GrooveWear": GrooveWear(one, bad), "GrooveWearByClearance": GrooveWearByClearance(one, bad, one),
		"RingWear": RingWear(bad, one), "GrooveShare": GrooveShare(one, one, -one), "ClearanceWithRing": ClearanceWithRing(one, one, bad),
		"RingHeightFor": RingHeightFor(bad, one, one), "GrooveTaper": GrooveTaper(one, bad),
	} {
		require.False(t, got.InRange(), name)
	}
}

func TestErrorsAreWhole(t *testing.T) {
	err := &InputError{"ring height", "1.52 mm", "below groove width 1.5 mm"}
	require.Empty(t, cmp.Diff(&InputError{Field: "ring height", Value: "1.52 mm", Want: "below groove width 1.5 mm"}, err))
	require.ErrorIs(t, err, ErrInput)
}
