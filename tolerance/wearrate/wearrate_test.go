package wearrate

import (
	"encoding/json"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func bandOf(c vectors.Case, column string) tolerance.Band {
	if !c.Has(column) {
		return tolerance.Band{}
	}
	return tolerance.MustParseBand(c.Text(column))
}

// Each row of the table in code is the row as transcribed from the manual.
func TestPublished_asPrinted(t *testing.T) {
	p, err := Published(TM10393064714P)
	require.NoError(t, err)
	require.NoError(t, p.Validate())
	rows := 0
	vectors.Load(t, "published/wearrate_rates.txt").Each(t, func(t *testing.T, c vectors.Case) {
		r, ok := p.Rule(c.Text("item"))
		require.True(t, ok)
		rows++
		ratio := func(column string) tolerance.Ratio {
			if !c.Has(column) {
				return tolerance.Ratio{}
			}
			x, err := tolerance.ParseRatio(c.Text(column))
			require.NoError(t, err)
			return x
		}
		require.Equal(t, ratio("per_inch"), r.Rate)
		require.Equal(t, ratio("times"), r.Times)
		plus := units.Length(0)
		if c.Has("inches") {
			plus = units.MustParseLength(c.Text("inches") + " in")
		}
		require.Equal(t, plus, r.Plus)
		require.Equal(t, map[string]Kind{"nothing": AtMost, "high": AboveNew, "low": BelowNew}[c.Choice("from", "nothing", "high", "low")], r.Kind)
	})
	require.Len(t, p.Rules, rows, "nothing that the table doesn't have")
}

func TestProfile_limits(t *testing.T) {
	vectors.Load(t, "published/wearrate_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		p, err := Published(c.Text("profile"))
		require.NoError(t, err)
		size := units.Length(0)
		if c.Has("size") {
			size = units.MustParseLength(c.Text("size"))
		}
		fresh := bandOf(c, "fresh")
		s, err := p.Spec(c.Text("item"), size, fresh)
		require.NoError(t, err)
		require.Equal(t, tolerance.Spec{New: fresh, Wear: tolerance.MustParseBand(c.Text("limit"))}, s)
	})
}

// V48 of the published vectors: new 2.000 in, used 1.939 in, 3.05 % short: replace.
func TestProfile_spring(t *testing.T) {
	p, err := Published(NAVEDTRA14076)
	require.NoError(t, err)
	s, err := p.Spec(ValveSpringFreeLength, 2*units.Inch, tolerance.Band{})
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, s.Stand(tolerance.Exactly(units.MustParseLength("1.939 in"))))
	require.Equal(t, tolerance.Usable, s.Stand(tolerance.Exactly(units.MustParseLength("1.940 in"))), "3 % is not more than 3 %")
}

func TestPublished(t *testing.T) {
	for _, name := range Names() {
		p, err := Published(name)
		require.NoError(t, err)
		require.NoError(t, p.Validate())
		require.Equal(t, name, p.Name)
		p.Rules[0].Item = "spoiled"
		again, err := Published(name)
		require.NoError(t, err)
		require.NotEqual(t, p, again, "each call gives a table of its own")
		b, err := json.Marshal(again)
		require.NoError(t, err)
		back, err := ParseProfile("p.json", b)
		require.NoError(t, err)
		require.Equal(t, again, back)
	}
	_, err := Published("default")
	require.ErrorIs(t, err, ErrUnknown)
	require.EqualError(t, err, `wearrate: "default", profile: not known; one of those that Names lists, or a profile of your own`)
	p, err := Published(TM10393064714P)
	require.NoError(t, err)
	_, err = p.Spec("ring gap", units.Inch, tolerance.Band{})
	require.EqualError(t, err, `wearrate: "ring gap", profile TM 10-3930-647-14&P: not known; an item that the profile has a rule for`)
}

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
		{with(func(r *Rule) { r.Plus = -1 }), units.Inch, fresh, ErrRule, "plus"},
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

func TestParseProfile(t *testing.T) {
	const head = `{"schema": 1, "name": "our shop", "source": "records", "rules": [`
	p, err := ParseProfile("shop.json", []byte(head+`
		{"item": "bore wear", "kind": "at most", "rate": "0.1 %", "of": "bore diameter"},
		{"item": "end float", "kind": "above the greatest new", "times": "3/2", "plus": "0.1 mm", "note": "old engines"}]}`))
	require.NoError(t, err)
	require.Equal(t, Profile{Schema: 1, Name: "our shop", Source: "records", Rules: []Rule{
		{Item: "bore wear", Kind: AtMost, Rate: ratio(1, 1000), Of: "bore diameter"},
		{Item: "end float", Kind: AboveNew, Times: ratio(3, 2), Plus: units.MustParseLength("0.1 mm"), Note: "old engines"},
	}}, p)
	s, err := p.Spec("end float", 0, tolerance.MustParseBand("0.05–0.10 mm"))
	require.NoError(t, err)
	require.Equal(t, tolerance.MustParseBand("max 0.25 mm"), s.Wear)

	row := func(s string) string { return head + s + "]}" }
	many := strings.Repeat(`{"item": "a", "kind": "at most", "plus": "1 mm"},`, MostRules)
	for _, c := range []struct {
		text string
		kind error
	}{
		{``, document.ErrEmpty},
		{`{"schema": 2}`, document.ErrSchema},
		{`{"schema": 1, "name": "a", "source": "b"}`, document.ErrMissing},
		{row(`{"item": "a", "kind": "at most", "plus": "1"}`), units.ErrNoUnit},
		{row(`{"item": "a", "kind": "at most", "rate": "fast"}`), tolerance.ErrSyntax},
		{row(`{"item": "a", "kind": "about", "plus": "1 mm"}`), ErrRule},
		{row(`{"item": "a", "kind": "at most", "pluss": "1 mm"}`), document.ErrUnknown},
		{row(`{"item": "a", "kind": "at most"}`), ErrRule},
		{row(`{"item": "a", "kind": "at most", "plus": "1 mm"}, {"item": "a", "kind": "at most", "plus": "1 mm"}`), ErrName},
		{row(many + `{"item": "b", "kind": "at most", "plus": "1 mm"}`), ErrRange},
		{row(``), ErrEmpty},
		{`{"schema": 1, "name": "", "source": "b", "rules": []}`, ErrName},
		{`{"schema": 1, "name": "a", "source": "", "rules": []}`, ErrName},
	} {
		p, err := ParseProfile("shop.json", []byte(c.text))
		require.ErrorIs(t, err, ErrDocument, "%.60s", c.text)
		require.ErrorIs(t, err, c.kind, "%.60s", c.text)
		require.Zero(t, p)
		var e *InputError
		require.ErrorAs(t, err, &e)
		require.Equal(t, "shop.json", e.Item)
	}
	require.ErrorIs(t, Profile{}.Validate(), ErrDocument)
	require.Equal(t, "x"+strings.Repeat("ä", 31), clip("x"+strings.Repeat("ä", 40)))
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

func FuzzParseProfile(f *testing.F) {
	p, err := Published(TM10393064714P)
	require.NoError(f, err)
	b, err := json.Marshal(p)
	require.NoError(f, err)
	f.Add(b)
	f.Add([]byte(`{"schema":1,"name":"a","source":"b","rules":[{"item":"c","kind":"at least","rate":"97 %","of":"d"}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := ParseProfile("p", data)
		if err != nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			return
		}
		b, err := json.Marshal(p)
		require.NoError(t, err)
		back, err := ParseProfile("p", b)
		require.NoError(t, err)
		require.Equal(t, p, back)
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
