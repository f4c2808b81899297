package tolerance

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/units"
)

func TestFit_published(t *testing.T) {
	vectors.Load(t, "published/fit_worked.txt").Each(t, func(t *testing.T, c vectors.Case) {
		hole, shaft := MustParseBand(c.Text("hole")), MustParseBand(c.Text("shaft"))
		least, greatest := units.MustParseLength(c.Text("least")), units.MustParseLength(c.Text("greatest"))
		f, err := FitBands(hole, shaft)
		require.NoError(t, err)
		require.Equal(t, MustBetween(least, greatest).Interval(), f.Clearance())
		got, ok := f.Least()
		require.True(t, ok)
		require.Equal(t, least, got)
		got, ok = f.Greatest()
		require.True(t, ok)
		require.Equal(t, greatest, got)
		mean, ok := f.Mean()
		require.True(t, ok)
		require.Equal(t, least+greatest, 2*mean)
		require.Equal(t, c.Choice("kind", "clearance", "transition", "interference"), f.Kind().String())

		// Back: with this clearance wanted, the shaft's limits ask for this hole.
		back, err := HoleBand(shaft, MustBetween(least, greatest))
		require.NoError(t, err)
		require.Equal(t, hole, back)
		back, err = ShaftBand(hole, MustBetween(least, greatest))
		require.NoError(t, err)
		require.Equal(t, shaft, back)
	})
}

func TestFitOf_Kind(t *testing.T) {
	for _, c := range []struct {
		hole, shaft string
		want        FitKind
		words       string
	}{
		{"10.00–10.02 mm", "9.98–10.00 mm", ClearanceFit, "clearance 0–0.04 mm"},
		{"9.98–10.00 mm", "10.00–10.02 mm", InterferenceFit, "interference 0–0.04 mm"},
		{"10.00–10.00 mm", "10.00–10.00 mm", ClearanceFit, "clearance 0 mm"},
		{"10.00–10.02 mm", "9.99–10.01 mm", TransitionFit, "from 0.01 mm interference to 0.03 mm clearance"},
		{"min 10 mm", "max 9.99 mm", ClearanceFit, "clearance min 0.01 mm"},
		{"max 10 mm", "min 10.01 mm", InterferenceFit, "interference min 0.01 mm"},
		{"more than 10 mm", "max 10 mm", ClearanceFit, "clearance more than 0 mm"},
		{"max 10 mm", "min 9.99 mm", UnknownFit, "clearance (−∞, 0.01 mm]"},
		{"min 10 mm", "max 10.01 mm", UnknownFit, "clearance [-0.01 mm, ∞)"},
		{"min 10 mm", "min 10 mm", UnknownFit, "clearance (−∞, ∞)"},
	} {
		f, err := FitBands(MustParseBand(c.hole), MustParseBand(c.shaft))
		require.NoError(t, err)
		require.Equal(t, c.want, f.Kind(), "%s / %s", c.hole, c.shaft)
		require.Equal(t, c.words, f.String())
	}
	// Two parts that exist: clearance, interference, or the readings don't tell.
	for _, c := range []struct {
		hole, shaft string
		want        FitKind
	}{
		{"10.01 ±0.002 mm", "10.00 ±0.002 mm", ClearanceFit},
		{"10.00 ±0.002 mm", "10.01 ±0.002 mm", InterferenceFit},
		{"10.00 ±0.002 mm", "10.00 ±0.002 mm", UnknownFit},
	} {
		hole, err := ParseBracket(c.hole)
		require.NoError(t, err)
		shaft, err := ParseBracket(c.shaft)
		require.NoError(t, err)
		f, err := FitSizes(hole, shaft)
		require.NoError(t, err)
		require.Equal(t, c.want, f.Kind())
	}
}

func TestFitKind_text(t *testing.T) {
	for k := UnknownFit; k <= InterferenceFit; k++ {
		b, err := k.MarshalText()
		require.NoError(t, err)
		var back FitKind
		require.NoError(t, back.UnmarshalText(b))
		require.Equal(t, k, back)
	}
	require.Equal(t, "can't tell", FitKind(99).String())
	k := TransitionFit
	require.ErrorIs(t, k.UnmarshalText([]byte("snug")), ErrSyntax)
	require.Equal(t, TransitionFit, k)
}

func TestFitOf_json(t *testing.T) {
	f, err := FitBands(MustParseBand("30.000–30.020 mm"), MustParseBand("29.982–29.995 mm"))
	require.NoError(t, err)
	b, err := json.Marshal(f)
	require.NoError(t, err)
	require.JSONEq(t, `{"hole":"[30 mm, 30.02 mm]","shaft":"[29.982 mm, 29.995 mm]"}`, string(b))
	var back Fit
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, f, back)
}

func TestFitOf_zero(t *testing.T) {
	var f Fit
	require.Equal(t, UnknownFit, f.Kind())
	require.Equal(t, Undecided, f.Judge(MustParseBand("min 0 mm")))
	_, ok := f.Mean()
	require.False(t, ok)
	_, ok = f.Least()
	require.False(t, ok)
	_, ok = f.Greatest()
	require.False(t, ok)
	_, _, ok = f.Outside(MustParseBand("min 0 mm"))
	require.False(t, ok)
	require.Equal(t, "clearance (−∞, ∞)", f.String())
	f.Hole = broken[units.Length]()
	require.Equal(t, UnknownFit, f.Kind())
	require.Equal(t, "clearance out of range", f.String())
}

func TestFitOf_Outside(t *testing.T) {
	f, err := FitBands(MustParseBand("10.00–10.03 mm"), MustParseBand("9.98–9.99 mm"))
	require.NoError(t, err) // clearance 0.01 to 0.05
	for _, c := range []struct {
		wanted, below, above string
		ok                   bool
		verdict              Verdict
	}{
		{"0.01–0.05 mm", "0 mm", "0 mm", true, Within},
		{"0.02–0.04 mm", "0.01 mm", "0.01 mm", true, Undecided},
		{"min 0.06 mm", "0.05 mm", "0 mm", true, Below},
		{"max 0.005 mm", "0 mm", "0.045 mm", true, Above},
		{"no limit", "0 mm", "0 mm", true, Undecided},
	} {
		w := MustParseBand(c.wanted)
		below, above, ok := f.Outside(w)
		require.Equal(t, c.ok, ok)
		require.Equal(t, units.MustParseLength(c.below), below, c.wanted)
		require.Equal(t, units.MustParseLength(c.above), above, c.wanted)
		require.Equal(t, c.verdict, f.Judge(w), c.wanted)
	}
	open, err := FitBands(MustParseBand("min 10 mm"), MustParseBand("max 9.99 mm"))
	require.NoError(t, err)
	_, _, ok := open.Outside(MustParseBand("max 1 mm"))
	require.False(t, ok)
	below, _, ok := open.Outside(MustParseBand("min 0.02 mm"))
	require.True(t, ok)
	require.Equal(t, units.MustParseLength("0.01 mm"), below)
	_, _, ok = open.Outside(BandFrom(broken[units.Length]()))
	require.False(t, ok)
}

func TestFit_refuses(t *testing.T) {
	some, none, bad := MustParseBand("10–11 mm"), Band{}, BandFrom(broken[units.Length]())
	far := BandFrom(Exactly(units.Length(1 << 61)))
	near := BandFrom(Exactly(units.Length(-1 << 61)))
	fit := func(hole, shaft Band) error { _, err := FitBands(hole, shaft); return err }
	sizes := func(hole, shaft Band) error { _, err := FitSizes(hole.limits, shaft.limits); return err }
	hole := func(shaft, wanted Band) error { _, err := HoleBand(shaft, wanted); return err }
	shaft := func(hole, wanted Band) error { _, err := ShaftBand(hole, wanted); return err }
	for _, c := range []struct {
		err  error
		kind error
		part string
	}{
		{fit(none, some), ErrNoLimit, "hole"},
		{fit(some, none), ErrNoLimit, "shaft"},
		{fit(some, bad), ErrRange, "shaft"},
		{fit(far, near), ErrRange, "clearance"},
		{sizes(none, some), ErrNoReading, "hole"},
		{sizes(bad, some), ErrRange, "hole"},
		{hole(none, some), ErrNoLimit, "shaft"},
		{hole(some, none), ErrNoLimit, "wanted clearance"},
		{hole(bad, some), ErrRange, "shaft"},
		{hole(some, bad), ErrRange, "wanted clearance"},
		{hole(far, far), ErrRange, "hole"},
		{hole(MustParseBand("min 9 mm"), MustParseBand("min 0 mm")), ErrNoLimit, "shaft"},
		{shaft(MustParseBand("min 9 mm"), MustParseBand("max 1 mm")), ErrNoLimit, "hole"},
		{shaft(none, some), ErrNoLimit, "hole"},
	} {
		require.ErrorIs(t, c.err, c.kind)
		var e *FitError
		require.ErrorAs(t, c.err, &e)
		require.Equal(t, c.part, e.Part)
		require.NotEmpty(t, e.Error())
	}
	warm := MustBetween(20*units.Temperature(units.Kelvin), 30*units.Temperature(units.Kelvin))
	_, err := FitBands(warm, warm)
	require.ErrorIs(t, err, ErrRange)
	_, err = HoleBand(warm, warm)
	require.ErrorIs(t, err, ErrRange)
}

func TestHoleBand_noRoom(t *testing.T) {
	_, err := HoleBand(MustParseBand("29.98–30.00 mm"), MustParseBand("0.010–0.025 mm"))
	require.ErrorIs(t, err, ErrNoRoom)
	require.EqualError(t, err, "tolerance: hole: no room: the others take 0.02 mm of the 0.015 mm wanted, 0.005 mm too much")
	// As wide as what is wanted leaves one hole, unless a limit is left out.
	b, err := HoleBand(MustParseBand("29.98–30.00 mm"), MustParseBand("0.010–0.030 mm"))
	require.NoError(t, err)
	require.Equal(t, BandFrom(Exactly(units.MustParseLength("30.01 mm"))), b)
	_, err = HoleBand(MustParseBand("29.98–30.00 mm"), MustParseBand("min 0.010 mm, less than 0.030 mm"))
	require.EqualError(t, err, "tolerance: hole: no room: the others take all of the 0.02 mm wanted")
	_, err = ShaftBand(MustParseBand("29.98–30.00 mm"), MustParseBand("0.010–0.025 mm"))
	require.EqualError(t, err, "tolerance: shaft: no room: the others take 0.02 mm of the 0.015 mm wanted, 0.005 mm too much")
}

// fitRandomBand has ends of every kind, among few values, so that they meet.
func fitRandomBand(r *rand.Rand) Band {
	for {
		b, err := NewBand(units.Length(r.IntN(9)), End(r.IntN(3)), units.Length(r.IntN(9)), End(r.IntN(3)))
		if err == nil && !b.IsZero() {
			return b
		}
	}
}

// What the inverse gives fits for certain, and anything more doesn't.
func TestHoleBand_certainAndWhole(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	gave := 0
	for range 20000 {
		part, wanted := fitRandomBand(r), fitRandomBand(r)
		hole, err := HoleBand(part, wanted)
		if err != nil {
			continue
		}
		gave++
		fits := func(hole Interval[units.Length]) bool { return Clearance(hole, part.limits).Within(wanted.limits) }
		require.True(t, fits(hole.limits), "%v in %v for %v", part, hole, wanted)
		for _, more := range fitWidened(hole.limits) {
			require.False(t, fits(more), "%v in %v for %v", part, more, wanted)
		}
		shaft, err := ShaftBand(part, wanted)
		if err != nil {
			continue
		}
		require.True(t, Clearance(part.limits, shaft.limits).Within(wanted.limits))
		for _, more := range fitWidened(shaft.limits) {
			require.False(t, Clearance(part.limits, more).Within(wanted.limits))
		}
	}
	require.Greater(t, gave, 2000)
}

// fitWidened moves each end out by as little as can be.
func fitWidened(i Bracket) (more []Bracket) {
	lo, hi := i, i
	switch i.loEnd {
	case Open:
		lo.loEnd = Closed
	case Closed:
		lo.loEnd, lo.lo = Open, lo.lo-1
	}
	switch i.hiEnd {
	case Open:
		hi.hiEnd = Closed
	case Closed:
		hi.hiEnd, hi.hi = Open, hi.hi+1
	}
	for _, m := range []Bracket{lo, hi} {
		if m != i {
			more = append(more, m)
		}
	}
	return more
}

// Of every hole and shaft that the bands allow the clearance lies between the
// least and the greatest, and the extremes are had.
func TestFitOf_holdsEveryPair(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	for range 2000 {
		lo, w := units.Length(r.Int64N(1e11)), units.Length(r.Int64N(1e8))
		lo2, w2 := lo-units.Length(r.Int64N(2e8)), units.Length(r.Int64N(1e8))
		f, err := FitBands(MustBetween(lo, lo+w), MustBetween(lo2, lo2+w2))
		require.NoError(t, err)
		hole, shaft := lo+units.Length(r.Int64N(int64(w)+1)), lo2+units.Length(r.Int64N(int64(w2)+1))
		require.True(t, f.Clearance().Contains(Clearance(hole, shaft)))
		require.Equal(t, hole, HoleSize(shaft, Clearance(hole, shaft)))
		require.Equal(t, shaft, ShaftSize(hole, Clearance(hole, shaft)))
		least, _ := f.Least()
		require.Equal(t, lo-(lo2+w2), least)
	}
}

func TestFit_allocatesNothing(t *testing.T) {
	hole, shaft, wanted := MustParseBand("30.000–30.020 mm"), MustParseBand("29.982–29.995 mm"), MustParseBand("0.005–0.040 mm")
	require.Zero(t, testing.AllocsPerRun(100, func() {
		f, _ := FitBands(hole, shaft)
		_, _ = f.Kind(), f.Judge(wanted)
		_, _ = HoleBand(shaft, wanted)
	}))
}

// Whatever the ends: no panic, and an inverse that fits for certain.
func FuzzFit(f *testing.F) {
	f.Add(int64(30_000_000_000), int64(30_020_000_000), int64(29_982_000_000), int64(29_995_000_000), uint8(0xaa))
	f.Add(int64(-1<<63), int64(1<<62), int64(1<<61), int64(-1<<61), uint8(0x9))
	f.Fuzz(func(t *testing.T, a, b, c, d int64, ends uint8) {
		first, err := NewBand(units.Length(a), End(ends&3), units.Length(b), End(ends>>2&3))
		if err != nil {
			return
		}
		second, err := NewBand(units.Length(c), End(ends>>4&3), units.Length(d), End(ends>>6))
		if err != nil {
			return
		}
		if fit, err := FitBands(first, second); err == nil {
			require.NotEmpty(t, fit.String())
			if v := fit.Judge(second); v == Within {
				below, above, ok := fit.Outside(second)
				require.True(t, ok && below == 0 && above == 0)
			}
		}
		if hole, err := HoleBand(first, second); err == nil {
			fit, err := FitBands(hole, first)
			if err == nil {
				require.Equal(t, Within, fit.Judge(second))
			}
		}
		if shaft, err := ShaftBand(first, second); err == nil {
			fit, err := FitBands(first, shaft)
			if err == nil {
				require.Equal(t, Within, fit.Judge(second))
			}
		}
	})
}

func BenchmarkFit(b *testing.B) {
	hole, shaft, wanted := MustParseBand("30.000–30.020 mm"), MustParseBand("29.982–29.995 mm"), MustParseBand("0.005–0.040 mm")
	b.Run("lib=tolerance/op=fit", func(b *testing.B) {
		for b.Loop() {
			f, err := FitBands(hole, shaft)
			if err != nil || f.Kind() != ClearanceFit || f.Judge(wanted) != Within {
				b.Fatal(f, err)
			}
		}
	})
	b.Run("lib=tolerance/op=holeband", func(b *testing.B) {
		for b.Loop() {
			if _, err := HoleBand(shaft, wanted); err != nil {
				b.Fatal(err)
			}
		}
	})
}
