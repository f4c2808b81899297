package proofread_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// unflagged fails the test where the pair of texts is flagged.
func unflagged(t *testing.T, first, second string) {
	t.Helper()
	for _, text := range []string{first + " (" + second + ")", second + " (" + first + ")"} {
		p, err := proofread.ParsePair(text)
		require.NoError(t, err)
		r, err := proofread.CheckPair(p)
		require.NoError(t, err)
		if r.Flagged() || r.Basis == proofread.Apart {
			t.Fatalf("%s: %s", text, r)
		}
	}
}

// Every line of the computed conversions is a correct pair: a length and what
// it is rounded by either rule of ties.
func TestCorrect_referenceConversions(t *testing.T) {
	ran := 0
	for c := range vectors.Load(t, "reference/conversions.txt").All(t) {
		c.Ignore("exact", "places")
		unit := c.Text("unit")
		exact := c.Text("pm") + " pm"
		even, away := c.Text("even")+" "+unit, c.Text("away")+" "+unit
		floor, ceil := c.Text("floor")+" "+unit, c.Text("ceil")+" "+unit
		u, err := units.ParseUnit[units.Length](unit)
		require.NoError(t, err)
		if len(c.Text("pm")) > 14 || c.Int("places") > u.Places() { // the parser takes ±100 m and whole picometres
			continue
		}
		ran++
		unflagged(t, exact, even)
		unflagged(t, exact, away)
		// And a length that was cut off is not, where it is known to be converted.
		for _, cut := range []string{floor, ceil} {
			p, err := proofread.ParsePair(exact + " (" + cut + ")")
			require.NoError(t, err)
			r, err := proofread.CheckConversion(p, proofread.First)
			require.NoError(t, err)
			if right := cut == even || cut == away; right == r.Flagged() {
				t.Fatalf("%s (%s): %s", exact, cut, r)
			}
			if r.Flagged() && p.Second.Value != 0 {
				require.True(t, r.Likeliest().Kind.Mild() || digitsOf(cut) == 1, "%s (%s): %s", exact, cut, r)
			}
		}
	}
	t.Logf("%d conversions", ran)
	require.Greater(t, ran, 500)
}

// digitsOf counts a text's digits without the zeros before them.
func digitsOf(text string) (n int) {
	for _, c := range strings.TrimLeft(text, "-0.") {
		if c >= '0' && c <= '9' {
			n++
		}
	}
	return n
}

// The 64 fractions of an inch, to four places as published by both rules, and
// to fewer.
func TestCorrect_fractions(t *testing.T) {
	file := vectors.Load(t, "published/fractions64.txt")
	require.Len(t, file.Rows, 64)
	for c := range file.All(t) {
		fraction := c.Text("fraction") + " in"
		unflagged(t, fraction, c.Text("mm")+" mm")
		unflagged(t, fraction, c.Text("inch")+" in")
		unflagged(t, fraction, c.Text("mm4_even")+" mm")
		unflagged(t, fraction, c.Text("mm4_away")+" mm")
		unflagged(t, c.Text("inch")+" in", c.Text("mm4_even")+" mm")
		unflagged(t, c.Text("inch")+" in", c.Text("mm4_away")+" mm")
		exact := units.MustParseLength(c.Text("mm") + " mm")
		for places := range 4 {
			for _, rule := range []units.Rounding{units.NearestEven, units.NearestAway} {
				mm, _ := exact.Round(units.InMillimetres, places, rule)
				unflagged(t, fraction, mm.Text(units.InMillimetres, places))
			}
		}
	}
}

func TestCorrect_blades(t *testing.T) {
	for c := range vectors.Load(t, "practice/bladepairs.txt").All(t) {
		c.Ignore("marked")
		unflagged(t, c.Text("inch"), c.Text("mm")+" mm")
		unflagged(t, c.Text("inch"), c.Text("mm3_even")+" mm")
		unflagged(t, c.Text("inch"), c.Text("mm3_away")+" mm")
	}
}

// Published pairs that are right as they stand, millimetres to one place and
// half up, whose last two a rule of half to even would print otherwise.
func TestCorrect_published(t *testing.T) {
	for c := range vectors.Load(t, "published/rounding.txt").All(t) {
		c.Ignore("places", "rule")
		value, expected := c.Text("value"), c.Text("expected")+" "+c.Text("unit")
		unflagged(t, value, expected)
	}
}

// random is a length of an engine, of so many places in a unit.
func random(rng *rand.Rand, u units.Unit[units.Length], places int) units.Length {
	span := units.Length(1) * units.Millimetre
	for range rng.IntN(4) {
		span *= 10
	}
	v, _ := (1 + units.Length(rng.Int64N(int64(span)))).Round(u, places, units.NearestEven)
	return v
}

// Thousands of pairs, rounded to 1 to 5 places in either direction or from a
// third size, by either rule, raise none.
func TestCorrect_random(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 54))
	rules := []units.Rounding{units.NearestEven, units.NearestAway}
	for range 3000 {
		inPlaces, mmPlaces := 1+rng.IntN(5), 1+rng.IntN(5)
		rule, other := rules[rng.IntN(2)], rules[rng.IntN(2)]
		in := random(rng, units.InInches, inPlaces)
		mm, _ := in.Round(units.InMillimetres, mmPlaces, rule)
		unflagged(t, in.Text(units.InInches, inPlaces), mm.Text(units.InMillimetres, mmPlaces))

		mm = random(rng, units.InMillimetres, mmPlaces)
		in, _ = mm.Round(units.InInches, inPlaces, rule)
		unflagged(t, in.Text(units.InInches, inPlaces), mm.Text(units.InMillimetres, mmPlaces))

		third := random(rng, units.InMillimetres, 7)
		in, _ = third.Round(units.InInches, inPlaces, rule)
		mm, _ = third.Round(units.InMillimetres, mmPlaces, other)
		unflagged(t, in.Text(units.InInches, inPlaces), mm.Text(units.InMillimetres, mmPlaces))
	}
}

// Limits converted column by column, to nearest or inward, raise none either.
func TestCorrect_limits(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 54))
	for range 2000 {
		inPlaces, mmPlaces := 2+rng.IntN(3), 1+rng.IntN(3)
		least := random(rng, units.InInches, inPlaces)
		greatest := least + units.Length(1+rng.IntN(40))*units.Thou
		down, up := units.NearestEven, units.NearestEven
		switch rng.IntN(3) {
		case 0:
			down, up = units.NearestAway, units.NearestAway
		case 1:
			down, up = units.Up, units.Down
		}
		lo, _ := least.Round(units.InMillimetres, mmPlaces, down)
		hi, _ := greatest.Round(units.InMillimetres, mmPlaces, up)
		if lo > hi {
			continue // an inward result with nothing between is no pair
		}
		in := least.Text(units.InInches, inPlaces) + " to " + greatest.Text(units.InInches, max(inPlaces, 3))
		mm := lo.Text(units.InMillimetres, mmPlaces) + " to " + hi.Text(units.InMillimetres, mmPlaces)
		for _, text := range []string{in + " (" + mm + ")", mm + " (" + in + ")"} {
			l, err := proofread.ParseLimits(text)
			require.NoError(t, err)
			r, err := proofread.CheckLimits(l)
			require.NoError(t, err)
			if r.Flagged() {
				t.Fatalf("%s: %s", text, r)
			}
		}
	}
}
