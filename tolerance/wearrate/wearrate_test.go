package wearrate

import (
	"encoding/json"
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
