package wearrate

import (
	"encoding/json"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestRule_words(t *testing.T) {
	p, err := Published(TM10393064714P)
	require.NoError(t, err)
	for item, want := range map[string]string{
		CylinderBoreWear:     "cylinder bore wear: at most 0.001 × bore diameter",
		MainBearingClearance: "main bearing clearance: at most the greatest new + 0.0005 × journal diameter",
		MainJournalTaper:     "main journal taper: at most 2 × the greatest new",
		CrankshaftEndFloat:   "crankshaft end float: at most the greatest new + 0.127 mm",
		CamshaftJournal:      "camshaft journal: at least the least new − 0.0005 × camshaft journal diameter",
		ValveStemWear:        "valve stem wear: at most 0.0254 mm",
		ValveSeatWidth:       "valve seat width: at most 1.15 × width when new",
	} {
		r, ok := p.Rule(item)
		require.True(t, ok)
		require.Equal(t, want, r.String())
	}
	r := Rule{Item: "x", Kind: AtLeast, Rate: ratio(1, 2), Of: "d", Plus: units.Millimetre}
	require.Equal(t, "x: at least 0.5 × d + 1 mm", r.String())
	r.Kind = BelowNew
	require.Equal(t, "x: at least the least new − 0.5 × d − 1 mm", r.String())
	require.Empty(t, Kind(9).String())
	require.ErrorIs(t, new(Kind).UnmarshalText([]byte("about")), ErrRule)
	require.ErrorIs(t, new(Kind).UnmarshalText(nil), ErrRule)
}

// The limit is the exact one rounded inward, by no more than a quantum for
// each product; math/big is the judge.
func TestRule_inward(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	for range 5000 {
		rule := Rule{Item: "x", Of: "d", Kind: Kind(1 + r.IntN(4)), Rate: ratio(1+r.Int64N(99), 1+r.Int64N(9999)), Plus: units.Length(r.Int64N(1e9))}
		times := big.NewRat(1, 1)
		if rule.NeedsNew() && r.IntN(2) == 0 {
			rule.Times = ratio(2, 3)
			times.SetFrac64(2, 3)
		}
		size, lo := units.Length(1+r.Int64N(1e11)), units.Length(r.Int64N(1e11))
		fresh := tolerance.MustBetween(lo, lo+units.Length(r.Int64N(1e8)))
		limit, err := rule.limit(size, fresh)
		require.NoError(t, err)
		exact := big.NewRat(rule.Rate.Num, rule.Rate.Den)
		exact.Mul(exact, big.NewRat(int64(size), 1)).Add(exact, big.NewRat(int64(rule.Plus), 1))
		low, _ := fresh.Lower()
		high, _ := fresh.Upper()
		switch rule.Kind {
		case AboveNew:
			exact.Add(exact, times.Mul(times, big.NewRat(int64(high), 1)))
		case BelowNew:
			exact.Sub(times.Mul(times, big.NewRat(int64(low), 1)), exact)
		}
		inside := new(big.Rat).Sub(exact, big.NewRat(int64(limit), 1))
		if rule.least() {
			inside.Neg(inside)
		}
		require.GreaterOrEqual(t, inside.Sign(), 0, "inward")
		require.Negative(t, inside.Cmp(big.NewRat(2, 1)))
	}
}

func TestFormulas(t *testing.T) {
	rate, err := tolerance.ParseRatio("0.0005")
	require.NoError(t, err)
	journal := units.MustParseLength("2.500 in")
	require.Equal(t, units.MustParseLength("0.00125 in"), Allowance(journal, rate))
	require.Equal(t, journal, SizeFor(Allowance(journal, rate), rate))
	require.Equal(t, units.MustParseLength("0.00525 in"), GreatestWorn(units.MustParseLength("0.004 in"), journal, rate))
	require.Equal(t, units.MustParseLength("1.9955 in"), LeastWorn(units.MustParseLength("1.9965 in"), 2*units.Inch, rate))
	// With brackets: what is known of the size is kept.
	d, err := tolerance.PlusMinus(60*units.Millimetre, 2*units.Micrometre)
	require.NoError(t, err)
	require.Equal(t, "[0.029999 mm, 0.030001 mm]", Allowance(d, rate).String())
	got, err := Observed(units.MustParseLength("0.03 mm"), 60*units.Millimetre)
	require.NoError(t, err)
	require.Equal(t, rate, got)
	_, err = Observed(units.OutOfRange[units.Length](), units.Millimetre)
	require.ErrorIs(t, err, ErrRange)
	_, err = Observed(units.Millimetre, 0)
	require.ErrorIs(t, err, ErrSize)
}

func TestRule_refuses(t *testing.T) {
	good := Rule{Item: "x", Kind: AboveNew, Rate: ratio(1, 1000), Of: "d"}
	with := func(change func(*Rule)) Rule { r := good; change(&r); return r }
	fresh := tolerance.MustParseBand("0.01–0.02 mm")
	far := tolerance.BandFrom(tolerance.Exactly(units.OutOfRange[units.Length]()))
	for i, c := range []struct {
		rule  Rule
		size  units.Length
		fresh tolerance.Band
		kind  error
		field string
	}{
		{with(func(r *Rule) { r.Item = "" }), units.Inch, fresh, ErrName, "item"},
		{with(func(r *Rule) { r.Kind = 0 }), units.Inch, fresh, ErrRule, "kind"},
		{with(func(r *Rule) { r.Kind = 9 }), units.Inch, fresh, ErrRule, "kind"},
		{with(func(r *Rule) { r.Rate = ratio(-1, 2) }), units.Inch, fresh, ErrRule, "rate"},
		{with(func(r *Rule) { r.Rate = ratio(1, 0) }), units.Inch, fresh, ErrRule, "rate"},
		{with(func(r *Rule) { r.Of = "" }), units.Inch, fresh, ErrRule, "of"},
		{with(func(r *Rule) { r.Plus = -units.Picometre }), units.Inch, fresh, ErrRule, "plus"},
		{with(func(r *Rule) { r.Plus = units.OutOfRange[units.Length]() }), units.Inch, fresh, ErrRule, "plus"},
		{with(func(r *Rule) { r.Kind, r.Times = AtMost, ratio(2, 1) }), units.Inch, fresh, ErrRule, "times"},
		{with(func(r *Rule) { r.Times = ratio(-2, 1) }), units.Inch, fresh, ErrRule, "times"},
		{with(func(r *Rule) { r.Rate, r.Of = tolerance.Ratio{}, "" }), units.Inch, fresh, ErrRule, "rate"},
		{good, 0, fresh, ErrSize, "d"},
		{good, -units.Inch, fresh, ErrSize, "d"},
		{good, units.OutOfRange[units.Length](), fresh, ErrRange, "d"},
		{good, units.Inch, tolerance.Band{}, ErrNoLimit, "new-part band"},
		{good, units.Inch, tolerance.MustParseBand("min 0.01 mm"), ErrNoLimit, "new-part band"},
		{with(func(r *Rule) { r.Kind = BelowNew }), units.Inch, tolerance.MustParseBand("max 0.01 mm"), ErrNoLimit, "new-part band"},
		{good, units.Inch, far, ErrRange, "new-part band"},
		{with(func(r *Rule) { r.Times = ratio(math.MaxInt64, 1) }), units.Inch, fresh, ErrRange, "limit"},
		// A new part past the wear limit: one of the two is wrong.
		{with(func(r *Rule) { r.Kind = AtMost }), units.Millimetre, fresh, tolerance.ErrSpec, "new-part band"},
	} {
		s, err := c.rule.Spec(c.size, c.fresh)
		require.ErrorIs(t, err, c.kind, "case %d", i)
		require.Zero(t, s)
		var e *InputError
		require.ErrorAs(t, err, &e)
		require.Equal(t, c.field, e.Field, "case %d", i)
		require.True(t, strings.HasPrefix(e.Error(), "wearrate: "), e.Error())
	}
	_, err := good.Spec(0, fresh)
	require.EqualError(t, err, `wearrate: "x", d 0 mm: not a part's size; above 0 mm`)
}

func TestRule_allocatesNothing(t *testing.T) {
	r := Rule{Item: "x", Kind: AboveNew, Rate: ratio(1, 2000), Of: "d"}
	fresh := tolerance.MustParseBand("0.01–0.02 mm")
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = r.Spec(60*units.Millimetre, fresh) }))
}

// Whatever the rule and the size: limits that can be judged against, or a
// typed error.
func FuzzRule(f *testing.F) {
	f.Add(uint8(1), int64(1), int64(1000), int64(0), int64(0), int64(0), int64(100_000_000_000), int64(0), int64(0))
	f.Add(uint8(4), int64(1), int64(2000), int64(2), int64(1), int64(5), int64(60_000_000_000), int64(1), int64(2))
	f.Add(uint8(3), int64(math.MaxInt64), int64(-1), int64(math.MinInt64), int64(3), int64(1)<<61, int64(1)<<61, int64(-1)<<61, int64(1)<<61)
	f.Fuzz(func(t *testing.T, kind uint8, num, den, times, timesDen, plus, size, lo, hi int64) {
		r := Rule{Item: "x", Kind: Kind(kind), Rate: tolerance.Ratio{Num: num, Den: den}, Of: "d",
			Times: tolerance.Ratio{Num: times, Den: timesDen}, Plus: units.Length(plus)}
		fresh, err := tolerance.Between(units.Length(lo), units.Length(hi))
		if err != nil {
			fresh = tolerance.Band{}
		}
		require.NotEmpty(t, r.String())
		s, err := r.Spec(units.Length(size), fresh)
		if err != nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			return
		}
		require.NoError(t, s.Validate())
		require.Equal(t, fresh, s.New)
		require.False(t, s.Wear.IsZero())
	})
}

func BenchmarkRule(b *testing.B) {
	r := Rule{Item: "x", Kind: AboveNew, Rate: ratio(1, 2000), Of: "d"}
	fresh := tolerance.MustParseBand("0.01–0.02 mm")
	b.Run("lib=wearrate/op=spec", func(b *testing.B) {
		for b.Loop() {
			if _, err := r.Spec(60*units.Millimetre, fresh); err != nil {
				b.Fatal(err)
			}
		}
	})
	p, err := Published(TM10393064714P)
	require.NoError(b, err)
	data, err := json.Marshal(p)
	require.NoError(b, err)
	b.Run("lib=wearrate/op=parseprofile", func(b *testing.B) {
		for b.Loop() {
			if _, err := ParseProfile("p", data); err != nil {
				b.Fatal(err)
			}
		}
	})
}
