package feeler_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func TestSetIsSortedAndKept(t *testing.T) {
	given := []feeler.Blade{feeler.MustBlade("0.3 mm"), feeler.MustBlade("0.1 mm"), feeler.MustBlade(".008 in", "0.203 mm")}
	set, err := feeler.NewSet(" mine ", "marks", given...)
	require.NoError(t, err)
	require.Equal(t, "mine", set.Name())
	require.Equal(t, "marks", set.Source())
	require.Equal(t, 3, set.Len())
	given[0] = feeler.MustBlade("9 mm")
	blades := set.Blades()
	blades[0] = feeler.MustBlade("8 mm")
	require.Equal(t, []feeler.Blade{feeler.MustBlade("0.1 mm"), feeler.MustBlade(".008 in", "0.203 mm"), feeler.MustBlade("0.3 mm")}, set.Blades())
	require.Equal(t, "mine: 3 blades, 0.1 mm to 0.3 mm", set.String())
	require.Equal(t, feeler.Blade{}, set.At(3))
	require.Equal(t, feeler.Blade{}, set.At(-1))
}

func TestZeroSet(t *testing.T) {
	var set feeler.Set
	require.Zero(t, set.Len())
	require.Equal(t, "no blades", set.String())
	require.Empty(t, set.Name()+set.Source()+set.Text())
	require.Empty(t, set.Blades())
	require.True(t, set.Equal(feeler.Set{}))
	require.False(t, set.Equal(feeler.Metric8()))
	_, err := set.Find("0.1 mm")
	require.ErrorIs(t, err, feeler.ErrNoBlade)
	require.EqualError(t, err, "feeler: no blade is marked 0.1 mm")
	_, err = set.FindLength(pm)
	require.ErrorIs(t, err, feeler.ErrNoBlade)
	data, err := json.Marshal(set)
	require.NoError(t, err)
	require.Equal(t, "null", string(data))
	require.NoError(t, json.Unmarshal(data, &set))
	again, err := set.WithErrors()
	require.ErrorIs(t, err, feeler.ErrEmpty)
	require.Zero(t, again.Len())
}

func TestSetRefuses(t *testing.T) {
	blade := feeler.MustBlade("0.1 mm")
	_, err := feeler.NewSet("", "")
	require.ErrorIs(t, err, feeler.ErrEmpty)
	_, err = feeler.NewSet("", "", make([]feeler.Blade, feeler.MaxBlades+1)...)
	require.ErrorIs(t, err, feeler.ErrSize)
	_, err = feeler.NewSet("", "", blade, feeler.Blade{})
	require.EqualError(t, err, "feeler: set, blade 2: not written as expected; a blade has at least one mark")
	off := blade
	off.Measured = -pm
	_, err = feeler.NewSet("", "", off)
	require.ErrorIs(t, err, feeler.ErrThickness)
	require.Contains(t, err.Error(), "blade 1, measured thickness")
	for _, name := range []string{"a\nb", "\x00", "\xff", strings.Repeat("x", 201)} {
		_, err = feeler.NewSet(name, "", blade)
		var e *feeler.InputError
		require.ErrorAs(t, err, &e)
		require.Equal(t, "name", e.Field)
		_, err = feeler.NewSet("", name, blade)
		require.ErrorAs(t, err, &e)
		require.Equal(t, "source", e.Field)
	}
}

// One mark on blades of different thickness is refused, on alike blades not.
func TestDuplicateMarks(t *testing.T) {
	inch, mm := feeler.MustBlade(".0025 in", "0.064 mm"), feeler.MustBlade("0.064 mm")
	_, err := feeler.NewSet("", "", inch, mm)
	var e *feeler.DuplicateError
	require.ErrorAs(t, err, &e)
	require.ErrorIs(t, err, feeler.ErrDuplicate)
	require.Equal(t, []feeler.Blade{inch, mm}, []feeler.Blade{e.First, e.Second})
	require.EqualError(t, err, "feeler: set: two blades of different thickness carry the mark 0.064 mm: .0025 in / 0.064 mm and 0.064 mm")

	set, err := feeler.NewSet("", "", inch, inch, feeler.MustBlade("0.0635 mm"))
	require.NoError(t, err)
	require.Equal(t, 3, set.Len())
	b, err := set.Find("0.064 mm")
	require.NoError(t, err)
	require.Equal(t, inch, b)

	// Measuring one of two alike blades leaves the mark to mean either.
	_, err = set.Measured("0.064 mm", 0.0631*units.MM, 0)
	require.ErrorAs(t, err, &e)
	require.Equal(t, "0.0631 mm", e.First.Thickness().String())
}

// Find goes by exact equality: with marks first, then with thicknesses.
func TestFindIsExact(t *testing.T) {
	set, err := feeler.Imperial26().Measured(".0025 in", 0.0631*units.MM, units.Micrometre)
	require.NoError(t, err)
	want := feeler.MustBlade(".0025 in", "0.064 mm")
	want.Measured, want.Error = 0.0631*units.MM, units.Micrometre
	for _, mark := range []string{".0025 in", "0.064 mm", "0.0631 mm", "63.1 µm", "0.0635 mm"} {
		b, err := set.Find(mark)
		require.NoError(t, err, mark)
		require.Equal(t, want, b)
	}
	i, err := set.Index(".0025 in")
	require.NoError(t, err)
	require.Equal(t, want, set.At(i))
	for _, mark := range []string{"0.0634 mm", "0.06 mm", "0.063 mm", "0.0636 mm", ".00251 in"} {
		i, err := set.Index(mark)
		require.ErrorIs(t, err, feeler.ErrNoBlade, mark)
		require.Equal(t, -1, i)
	}
	b, err := set.FindLength(0.0631 * units.MM)
	require.NoError(t, err)
	require.Equal(t, want, b)
	_, err = set.FindLength(0.61*units.MM + pm)
	require.EqualError(t, err, "feeler: no blade is marked 0.610000001 mm; nearest: .024 in / 0.610 mm or .025 in / 0.635 mm")
	_, err = set.FindLength(0.64 * units.MM)
	require.EqualError(t, err, "feeler: no blade is marked 0.64 mm; a decimal place away: .0025 in / 0.064 mm; nearest: .025 in / 0.635 mm")
}

func TestFindRefuses(t *testing.T) {
	set := feeler.Imperial26()
	for mark, kind := range map[string]error{
		"":                                units.ErrSyntax,
		"0.064":                           units.ErrNoUnit,
		"0.064 furlong":                   units.ErrUnknownUnit,
		"NaN":                             units.ErrSyntax,
		"1e400 mm":                        units.ErrSyntax,
		"0.0000000000001 mm":              units.ErrTooFine,
		"\xff\xfe":                        units.ErrSyntax,
		strings.Repeat("0.064 mm", 1<<20): units.ErrSyntax,
	} {
		_, err := set.Find(mark)
		var e *feeler.MarkError
		require.ErrorAs(t, err, &e)
		require.ErrorIs(t, err, feeler.ErrNoBlade)
		require.ErrorIs(t, err, kind)
		require.Empty(t, e.Decimal)
		require.Empty(t, e.Nearest)
		require.Less(t, len(err.Error()), 400)
	}
	for _, l := range []units.Length{0, -pm, units.OutOfRange[units.Length](), units.Length(1 << 61), 100 * units.Metre} {
		_, err := set.FindLength(l)
		var e *feeler.MarkError
		require.ErrorAs(t, err, &e)
		require.Empty(t, e.Nearest)
	}
}

func TestMeasured(t *testing.T) {
	set := feeler.Metric8()
	worn, err := set.Measured("0.20 mm", 0.198*units.MM, units.Micrometre)
	require.NoError(t, err)
	require.Equal(t, "0.2 mm", set.At(3).Thickness().String(), "the set itself stays")
	require.Equal(t, "0.20 mm = 0.198 mm ± 0.001 mm", worn.At(3).String())
	require.Equal(t, set.Name(), worn.Name())
	for _, c := range []struct {
		mark         string
		thickness, e units.Length
		kind         error
	}{
		{"0.21 mm", units.Millimetre, 0, feeler.ErrNoBlade},
		{"0.20 mm", 0, 0, feeler.ErrThickness},
		{"0.20 mm", -0.2 * units.MM, 0, feeler.ErrThickness},
		{"0.20 mm", 1.98 * units.MM, 0, feeler.ErrThickness},
		{"0.20 mm", units.OutOfRange[units.Length](), 0, feeler.ErrThickness},
		{"0.20 mm", units.Length(1 << 61), 0, feeler.ErrThickness},
		{"0.20 mm", 0.2 * units.MM, -pm, feeler.ErrThickness},
		{"0.20 mm", 0.2 * units.MM, 0.2 * units.MM, feeler.ErrThickness},
		{"0.20 mm", 0.2 * units.MM, units.OutOfRange[units.Length](), feeler.ErrThickness},
	} {
		_, err := set.Measured(c.mark, c.thickness, c.e)
		require.ErrorIs(t, err, c.kind, "%v", c)
	}
	_, err = set.Measured("0.20 mm", 1.98*units.MM, 0)
	require.EqualError(t, err, `feeler: set, blade 0.20 mm, measured thickness "1.98 mm": not a blade's thickness; it is more than half off the mark 0.20 mm`)
	// The order follows the thickness.
	swapped, err := set.Measured("0.20 mm", 0.26*units.MM, 0)
	require.NoError(t, err)
	require.Equal(t, "0.20 mm", swapped.At(4).MarkText())
}

func TestWithErrors(t *testing.T) {
	set, err := feeler.Metric8().Measured("0.10 mm", 0.099*units.MM, units.Micrometre)
	require.NoError(t, err)
	set, err = set.WithErrors(feeler.ErrorClass{UpTo: 0.1 * units.MM, Error: 3 * units.Micrometre}, feeler.ErrorClass{UpTo: units.Millimetre, Error: 5 * units.Micrometre})
	require.NoError(t, err)
	var got []string
	for _, b := range set.Blades() {
		got = append(got, b.Error.Text(units.InMicrometres, 0))
	}
	require.Equal(t, "3 µm,1 µm,5 µm,5 µm,5 µm,5 µm,5 µm,5 µm", strings.Join(got, ","))
	for _, c := range [][]feeler.ErrorClass{
		{},
		{{UpTo: 0.4 * units.MM}},
		{{UpTo: units.Millimetre}, {UpTo: units.Millimetre}},
		{{UpTo: 2 * units.Millimetre}, {UpTo: units.Millimetre}},
	} {
		_, err := feeler.Metric8().WithErrors(c...)
		require.ErrorIs(t, err, feeler.ErrClass)
	}
	for _, e := range []units.Length{-pm, 0.05 * units.MM, units.OutOfRange[units.Length]()} {
		_, err := feeler.Metric8().WithErrors(feeler.ErrorClass{UpTo: units.Millimetre, Error: e})
		require.ErrorIs(t, err, feeler.ErrThickness)
	}
}

// The tables written into the package are all that they say.
func TestStandardSets(t *testing.T) {
	counts := map[string]int{"metric 8": 8, "metric 13": 13, "metric 20": 20, "imperial 26": 26, "imperial 32": 32}
	for _, s := range feeler.StandardSets() {
		require.Equal(t, counts[s.Name()], s.Len())
		require.NotEmpty(t, s.Source())
		blades := s.Blades()
		require.True(t, slices.IsSortedFunc(blades, func(a, b feeler.Blade) int { return a.Thickness().Compare(b.Thickness()) }))
		require.Len(t, slices.Compact(blades), s.Len())
		delete(counts, s.Name())
	}
	require.Empty(t, counts)
}

// Errors without an input or a kind read well too.
func TestErrorTexts(t *testing.T) {
	require.Equal(t, "feeler: set", (&feeler.InputError{What: "set"}).Error())
	require.Equal(t, "feeler: set, line 3: x", (&feeler.InputError{What: "set", Line: 3, Err: errors.New("x")}).Error())
	_, err := feeler.Metric8().Find("5 mm")
	require.EqualError(t, err, "feeler: no blade is marked 5 mm; a decimal place away: 0.50 mm; nearest: 0.50 mm")
	_, err = feeler.Metric8().Find("0.12 mm")
	require.EqualError(t, err, "feeler: no blade is marked 0.12 mm; nearest: 0.10 mm or 0.15 mm")
}
