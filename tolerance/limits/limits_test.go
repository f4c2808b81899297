package limits

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// checkLimits looks a class up in the least, the middle and the greatest size of
// a step.
func checkLimits(t *testing.T, c vectors.Case, class Class, upper, lower units.Length) {
	t.Helper()
	over, upTo := step(c)
	least := over
	if class.withheld() {
		least = max(over, units.Millimetre)
		if over < units.Millimetre {
			_, err := class.At(least)
			require.ErrorIs(t, err, ErrNotTabulated, c.Where())
		}
	}
	if over == 0 {
		least = max(least, -lower) // there is no 0.05 h11, which takes off 0.06 mm
	}
	for _, nominal := range []units.Length{least + units.Picometre, (least + upTo) / 2, upTo} {
		got, err := class.At(nominal)
		require.NoError(t, err, c.Where())
		require.Equal(t, nominal, got.Nominal())
		require.Equal(t, class, got.Class())
		require.Equal(t, upper, got.UpperDeviation(), "%s: %v", c.Where(), got)
		require.Equal(t, lower, got.LowerDeviation(), "%s: %v", c.Where(), got)
		require.Equal(t, nominal+upper, got.Greatest())
		require.Equal(t, nominal+lower, got.Least())
		require.Equal(t, upper-lower, got.Tolerance())
		require.Equal(t, tolerance.MustBetween(nominal+lower, nominal+upper), got.Band())
		from, to, ok := class.Range()
		require.True(t, ok && from <= max(over, least) && to >= upTo, "%s: range over %v to %v", c.Where(), from, to)
	}
}

// Every limit deviation on which at least two copies agree.
func TestLimitsArePublished(t *testing.T) {
	cases, agreeing := 0, map[int]int{}
	for c := range vectors.Load(t, "published/iso286_limits.txt").All(t) {
		class, err := ParseClass(c.Text("class"))
		require.NoError(t, err, c.Where())
		require.Equal(t, c.Text("class"), class.String())
		checkLimits(t, c, class, um(t, c, "upper"), um(t, c, "lower"))
		agreeing[len(c.Text("sources"))]++
		cases++
	}
	require.Equal(t, map[int]int{2: 3220, 3: 1609, 4: 669, 5: 196}, agreeing)
	require.Equal(t, 5694, cases)
}

// Those on which one copy has a misprint: ours is the figure, not the
// misprint.
func TestDisputedLimits(t *testing.T) {
	misprints := 0
	for c := range vectors.Load(t, "published/iso286_limits_disputed.txt").All(t) {
		class := MustParseClass(c.Text("class"))
		checkLimits(t, c, class, um(t, c, "upper"), um(t, c, "lower"))
		if upper, lower := c.Has("misprint_upper"), c.Has("misprint_lower"); upper && lower {
			require.False(t, um(t, c, "misprint_upper") == um(t, c, "upper") && um(t, c, "misprint_lower") == um(t, c, "lower"), c.Where())
			misprints++
		}
	}
	require.Equal(t, 190-3, misprints)
}

func TestExceptions(t *testing.T) {
	vectors.Load(t, "published/iso286_exceptions.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l, err := ParseLimits(c.Text("size"))
		require.NoError(t, err)
		require.Equal(t, um(t, c, "upper"), l.UpperDeviation())
		require.Equal(t, um(t, c, "lower"), l.LowerDeviation())
		require.Equal(t, c.Text("size"), l.String())
	})
}

// What the first edition of the standard had wrong and a corrigendum put right.
func TestCorrigendum(t *testing.T) {
	for c := range vectors.Load(t, "published/iso286_corrigendum.txt").All(t) {
		l, err := ParseLimits(c.Text("size"))
		require.NoError(t, err)
		got := l.UpperDeviation()
		if c.Choice("deviation", "upper", "lower") == "lower" {
			got = l.LowerDeviation()
		}
		require.Equal(t, um(t, c, "value"), got, c.Where())
		require.NotEqual(t, um(t, c, "printed"), got, c.Where())
	}
}

// Another national edition, which rounds the halves of JS7.
func TestAnotherEdition(t *testing.T) {
	rounded := 0
	for c := range vectors.Load(t, "published/iso286_jis_holes.txt").All(t) {
		class, upper, lower := MustParseClass(c.Text("class")), um(t, c, "upper"), um(t, c, "lower")
		if _, upTo := step(c); class.Deviation() == "JS" && upper == 7*units.Micrometre {
			half := 500 * units.Nanometre
			upper, lower, rounded = upper+half, lower-half, rounded+1
			require.Equal(t, "JS7 10 mm", class.String()+" "+upTo.String())
		}
		checkLimits(t, c, class, upper, lower)
	}
	require.Equal(t, 1, rounded)
}

// What the standard withholds: from the notes to its tables (see doc.go).
func TestWithheld(t *testing.T) {
	for _, c := range []struct {
		class      string
		over, upTo units.Length
	}{
		{"t6", 24 * units.Millimetre, 500 * units.Millimetre},
		{"T7", 24 * units.Millimetre, 500 * units.Millimetre},
		{"v7", 14 * units.Millimetre, 500 * units.Millimetre},
		{"V7", 14 * units.Millimetre, 500 * units.Millimetre},
		{"y7", 18 * units.Millimetre, 500 * units.Millimetre},
		{"Y7", 18 * units.Millimetre, 500 * units.Millimetre},
		{"cd8", 0, 10 * units.Millimetre},
		{"CD8", 0, 10 * units.Millimetre},
		{"ef7", 0, 10 * units.Millimetre},
		{"EF7", 0, 10 * units.Millimetre},
		{"fg6", 0, 10 * units.Millimetre},
		{"FG6", 0, 10 * units.Millimetre},
		{"j8", 0, 3 * units.Millimetre},
		{"K9", 0, 3 * units.Millimetre},
		{"a11", units.Millimetre, 500 * units.Millimetre},
		{"A11", units.Millimetre, 500 * units.Millimetre},
		{"b11", units.Millimetre, 500 * units.Millimetre},
		{"B11", units.Millimetre, 500 * units.Millimetre},
		{"N9", units.Millimetre, 500 * units.Millimetre},
		{"H14", units.Millimetre, 500 * units.Millimetre},
		{"js18", units.Millimetre, 500 * units.Millimetre},
		{"H13", 0, 500 * units.Millimetre},
		{"N8", 0, 500 * units.Millimetre},
		{"n9", 0, 500 * units.Millimetre},
		{"h01", 0, 500 * units.Millimetre},
		{"k3", 0, 500 * units.Millimetre},
		{"ZC18", units.Millimetre, 500 * units.Millimetre},
	} {
		class := MustParseClass(c.class)
		over, upTo, ok := class.Range()
		require.True(t, ok, c.class)
		require.Equal(t, c.over, over, c.class)
		require.Equal(t, c.upTo, upTo, c.class)
		if over > 0 {
			_, err := class.At(over)
			require.ErrorIs(t, err, ErrNotTabulated, c.class)
		}
		// Just above, some deviations leave no part.
		if _, err := class.At(over + units.Picometre); err != nil {
			require.ErrorIs(t, err, ErrSize, c.class)
		}
		_, err := class.At(max(over+units.Picometre, 2*units.Millimetre))
		require.NoError(t, err, c.class)
		_, err = class.At(upTo)
		require.NoError(t, err, c.class)
		_, err = class.At(upTo + units.Picometre)
		if upTo < 500*units.Millimetre {
			require.ErrorIs(t, err, ErrNotTabulated, c.class)
		} else {
			require.ErrorIs(t, err, ErrSize, c.class)
		}
	}
	for _, s := range []string{"J5", "J9", "j4", "j9", "K2", "M01", "N0", "P1", "ZC2"} {
		class := MustParseClass(s)
		_, _, ok := class.Range()
		require.False(t, ok, s)
		_, err := class.At(2 * units.Millimetre)
		require.ErrorIs(t, err, ErrNotTabulated, s)
	}
}

func TestZeroValues(t *testing.T) {
	require.True(t, Limits{}.IsZero())
	require.True(t, Limits{}.Band().IsZero())
	require.Zero(t, Limits{}.Greatest())
	require.True(t, Class{}.IsZero())
	require.Equal(t, "", Class{}.Deviation())
	require.Equal(t, "", Class{feature: 9}.Deviation())
	require.Equal(t, "", Class{feature: Hole, letter: letters}.Deviation())
	require.Equal(t, "no feature", Class{}.Feature().String())
	_, _, ok := Class{}.Range()
	require.False(t, ok)
	_, err := Class{}.At(25 * units.Millimetre)
	require.ErrorIs(t, err, ErrNotTabulated)
	require.EqualError(t, err, "limits: 25 mm: not tabulated; no class was given")
	require.Equal(t, "no limits no class no grade no fit no classes",
		Limits{}.String()+" "+Class{}.String()+" "+Grade(0).String()+" "+Fit{}.String()+" "+Pair{}.String())
	require.Equal(t, "no grade", Grade(99).String())
}
