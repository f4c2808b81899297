package units

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

// The 64 binary fractions of an inch.
func TestFractions_published(t *testing.T) {
	vectors.Load(t, "published/fractions64.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l := MustParseLength(c.Text("fraction") + " in")
		require.Equal(t, l, MustParseLength(c.Text("inch")+" in"))
		require.Equal(t, l, MustParseLength(c.Text("mm")+" mm"))
		require.Equal(t, c.Text("mm")+" mm", l.String())
		require.Equal(t, c.Text("inch")+" in", l.Text(InInches, AllPlaces))
		w, err := ParseWritten[Length](c.Text("fraction") + " in")
		require.NoError(t, err)
		require.Equal(t, c.Text("fraction")+" in", w.String())
		for col, rule := range map[string]Rounding{"mm4_even": NearestEven, "mm4_away": NearestAway} {
			text, _ := l.Append(nil, Style[Length]{Places: 4, Rounding: rule, Bare: true})
			require.Equal(t, c.Text(col), string(text))
			round, _ := l.Round(InMillimetres, 4, rule)
			require.Equal(t, MustParseLength(c.Text(col)+" mm"), round)
		}
	})
}

// Worked roundings, to even and half up.
func TestRounding_published(t *testing.T) {
	vectors.Load(t, "published/rounding.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l := MustParseLength(c.Text("value"))
		u, err := ParseUnit[Length](c.Text("unit"))
		require.NoError(t, err)
		rule := NearestEven
		if c.Choice("rule", "even", "away") == "away" {
			rule = NearestAway
		}
		text, _ := l.Append(nil, Style[Length]{Unit: u, Places: c.Int("places"), Rounding: rule, Bare: true})
		require.Equal(t, c.Text("expected"), string(text))
	})
}

func TestConversions_published(t *testing.T) {
	vectors.Load(t, "published/conversions.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l := MustParseLength(c.Text("value"))
		u, err := ParseUnit[Length](c.Text("unit"))
		require.NoError(t, err)
		text, exact := l.Append(nil, Style[Length]{Unit: u, Places: c.Int("places"), Bare: true})
		require.Equal(t, c.Text("expected"), string(text))
		require.Equal(t, c.Bool("exact"), exact)
	})
}

// One of each unit in another, and the fixed points of the temperature scales.
func TestFactors_published(t *testing.T) {
	vectors.Load(t, "published/factors.txt").Each(t, func(t *testing.T, c vectors.Case) {
		table := tableNamed(c.Text("quantity"))
		v, err := table.parse(c.Text("value"), noUnit)
		require.NoError(t, err)
		u, _, kind := table.lookup(c.Text("unit"))
		require.NoError(t, kind)
		if c.Bool("exact") {
			again, err := table.parse(c.Text("expected")+" "+c.Text("unit"), noUnit)
			require.NoError(t, err)
			require.Equal(t, v, again)
		}
		c.Near("expected", table.float(v, uint8(u)))
	})
}

// Dual-marked feeler blades: the millimetres beside the inch figure are
// rounded, and going back from them is not the blade.
func TestBladePairs(t *testing.T) {
	vectors.Load(t, "practice/bladepairs.txt").Each(t, func(t *testing.T, c vectors.Case) {
		blade := MustParseLength(c.Text("inch"))
		require.Equal(t, MustParseLength(c.Text("mm")+" mm"), blade)
		for col, rule := range map[string]Rounding{"mm3_even": NearestEven, "mm3_away": NearestAway} {
			mark, exact := blade.Round(InMillimetres, 3, rule)
			require.Equal(t, MustParseLength(c.Text(col)+" mm"), mark)
			require.Equal(t, exact, mark == blade)
			if c.Bool("marked") { // the common markings are the same by either rule
				require.Equal(t, c.Text("mm3_even"), c.Text(col))
			}
		}
	})
}

// Readings as a shop sees them, each rule at work on them.
func TestConversions_reference(t *testing.T) {
	ruleOf := map[string]Rounding{"even": NearestEven, "away": NearestAway, "floor": Down, "ceil": Up}
	for c := range vectors.Load(t, "reference/conversions.txt").All(t) {
		u, err := ParseUnit[Length](c.Text("unit"))
		require.NoError(t, err)
		for col, rule := range ruleOf {
			got, exact := Length(c.Int64("pm")).Append(nil, Style[Length]{Unit: u, Places: c.Int("places"), Rounding: rule, Bare: true})
			require.Equal(t, c.Text(col), string(got), "%s %s", c.Where(), col)
			require.Equal(t, c.Bool("exact"), exact, c.Where())
		}
	}
}

// Values computed by a units library on exact fractions.
func TestQuantities_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/quantities.txt").All(t) {
		table := tableNamed(c.Text("quantity"))
		v, err := table.parse(c.Text("value"), noUnit)
		require.NoError(t, err, c.Where())
		u, _, kind := table.lookup(c.Text("unit"))
		require.NoError(t, kind)
		for col, rule := range map[string]Rounding{"even": NearestEven, "away": NearestAway, "floor": Down, "ceil": Up} {
			got, exact := table.append(nil, v, uint8(u), c.Int("places"), rule, bare)
			require.Equal(t, c.Text(col), string(got), "%s %s", c.Where(), col)
			require.Equal(t, c.Bool("exact"), exact, c.Where())
		}
	}
}
