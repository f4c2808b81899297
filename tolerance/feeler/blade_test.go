package feeler_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// A dual-marked blade is one thickness: that of its first mark.
func TestBladeThickness(t *testing.T) {
	b := feeler.MustBlade(".003 in", "0.076 mm")
	require.Equal(t, units.Length(0.0762*units.MM), b.Thickness())
	require.True(t, b.Carries(0.076*units.MM))
	require.True(t, b.Carries(3*units.Thou))
	require.False(t, b.Carries(0.0761*units.MM))
	b.Measured = 0.0755 * units.MM
	require.Equal(t, units.Length(0.0755*units.MM), b.Thickness())
	require.Zero(t, feeler.Blade{}.Thickness())
	require.Empty(t, feeler.Blade{}.Marks())
	require.Equal(t, "", feeler.Blade{}.String())

	marks := b.Marks()
	marks[0].Value = mm
	require.Equal(t, ".003 in / 0.076 mm", b.MarkText(), "a change to the copy must not reach the blade")
}

func TestParseBlade(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{".0025 in / 0.064 mm", ".0025 in / 0.064 mm"},
		{"0.0025 in / 0,064mm", ".0025 in / 0.064 mm"},
		{` .0025" /  0.064 mm `, ".0025 in / 0.064 mm"},
		{"0.064 mm / .0025 in", "0.064 mm / .0025 in"},
		{"0.10 mm", "0.10 mm"},
		{"70 µm", "70 µm"},
		{"2.5 thou", "2.5 thou"},
		{"1/64 in / 0.397 mm", "1/64 in / 0.397 mm"},
		{"0.10 mm = 0.0985 mm", "0.10 mm = 0.0985 mm"},
		{"0.10 mm=.0039 in", "0.10 mm = 0.09906 mm"},
		{"0.10 mm ± 3 µm", "0.10 mm ± 0.003 mm"},
		{"0.10 mm +/- 0.003 mm", "0.10 mm ± 0.003 mm"},
		{".0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm", ".0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm"},
		{".010 in / 0.25 mm / 0.254 mm / 10 thou", ".010 in / 0.25 mm / 0.254 mm / 10 thou"},
	} {
		b, err := feeler.ParseBlade(c.in)
		require.NoError(t, err, c.in)
		require.Equal(t, c.want, b.String())
		again, err := feeler.ParseBlade(b.String())
		require.NoError(t, err)
		require.Equal(t, b, again)
		text, err := b.MarshalText()
		require.NoError(t, err)
		require.Equal(t, c.want, string(text))
	}
}

func TestParseBladeRefuses(t *testing.T) {
	for _, c := range []struct {
		in, field string
		kind      error
	}{
		{"", "", feeler.ErrSyntax},
		{"   ", "", feeler.ErrSyntax},
		{"0.07", "mark 1", units.ErrNoUnit},
		{".0025 in / 0.064", "mark 2", units.ErrNoUnit},
		{".0025 in/0.064 mm", "mark 1", feeler.ErrSyntax},
		{"NaN", "mark 1", units.ErrSyntax},
		{"1e400 mm", "mark 1", units.ErrSyntax},
		{"1/0 in", "mark 1", units.ErrSyntax},
		{"0.0000000000001 mm", "mark 1", units.ErrTooFine},
		{"０.07 mm", "mark 1", units.ErrSyntax},
		{"2.5 mil", "mark 1", units.ErrAmbiguous},
		{"0 mm", "mark 1", feeler.ErrThickness},
		{"-0.05 mm", "mark 1", feeler.ErrThickness},
		{"25.1 mm", "mark 1", feeler.ErrThickness},
		{"90 m", "mark 1", feeler.ErrThickness},
		{"0.0500000000 mm", "mark 1", feeler.ErrSyntax},
		{".0025 in / 0.64 mm", "mark 2", feeler.ErrMarks},
		{".006 in / 0.015 mm", "mark 2", feeler.ErrMarks},
		{".00015 in / 0.038 mm", "mark 2", feeler.ErrMarks},
		{".003 in / 0.76 mm", "mark 2", feeler.ErrMarks},
		{"1 mm / 1 mm / 1 mm / 1 mm / 1 mm", "marks", feeler.ErrSize},
		{"0.10 mm = x", "measured thickness", feeler.ErrSyntax},
		{"0.10 mm =", "measured thickness", feeler.ErrSyntax},
		{"0.10 mm = 0.0985", "measured thickness", units.ErrNoUnit},
		{"0.10 mm = 0 mm", "measured thickness", feeler.ErrThickness},
		{"0.10 mm = -0.1 mm", "measured thickness", feeler.ErrThickness},
		{"0.10 mm = 0.985 mm", "measured thickness", feeler.ErrThickness},
		{"0.10 mm = 0.049 mm", "measured thickness", feeler.ErrThickness},
		{"0.10 mm ± 0 mm", "error", feeler.ErrThickness},
		{"0.10 mm ± 0.1 mm", "error", feeler.ErrThickness},
		{"0.10 mm ± 3 ± 4 mm", "error", feeler.ErrSyntax},
		{"5 mm ± 1.1 mm", "error", feeler.ErrThickness},
		{"0.10 mm \xff", "", feeler.ErrSyntax},
		{strings.Repeat("7", 10<<20), "", feeler.ErrSyntax},
	} {
		b, err := feeler.ParseBlade(c.in)
		require.Equal(t, feeler.Blade{}, b)
		var e *feeler.InputError
		require.ErrorAs(t, err, &e, c.in)
		require.ErrorIs(t, err, c.kind, "%v", err)
		require.Equal(t, c.field, e.Field, "%v", err)
		require.LessOrEqual(t, len(e.Input), 64)
		require.Equal(t, len(c.in) > 64, e.Cut, "%v", err)
		require.Less(t, len(err.Error()), 500)
		require.Error(t, b.UnmarshalText([]byte(c.in)))
	}
	_, err := feeler.NewBlade()
	require.ErrorIs(t, err, feeler.ErrSyntax)
	_, err = feeler.Blade{}.MarshalText()
	require.ErrorIs(t, err, feeler.ErrSyntax)
	bad := feeler.MustBlade("0.1 mm")
	bad.Error = -units.Picometre
	_, err = bad.MarshalText()
	require.ErrorIs(t, err, feeler.ErrThickness)
	require.Panics(t, func() { feeler.MustBlade("0.1") })
}

// The errors say what to write instead.
func TestBladeErrorText(t *testing.T) {
	for in, want := range map[string]string{
		".0025 in / 0.64 mm":     `feeler: blade, mark 2 "0.64 mm": marks of one blade disagree; it is not the size .0025 in to its last place`,
		"0.10 mm = 0.985 mm":     `feeler: blade, measured thickness "0.985 mm": not a blade's thickness; it is more than half off the mark 0.10 mm`,
		".010 in ± 0.254 mm":     `feeler: blade, error ".01 in": not a blade's thickness; from 0 to 1 mm, and less than the thickness 0.254 mm`,
		strings.Repeat("é", 200): `feeler: blade "` + strings.Repeat("é", 32) + `"…: not written as expected; at most 256 bytes of UTF-8`,
	} {
		_, err := feeler.ParseBlade(in)
		require.EqualError(t, err, want)
	}
}

// A blade stands in documents, encoding/json's and the strict ones, as its text.
func TestBladeInJSON(t *testing.T) {
	type kit struct {
		Blades []feeler.Blade `json:"blades"`
	}
	want := kit{[]feeler.Blade{feeler.MustBlade(".0025 in", "0.064 mm"), feeler.MustBlade("0.1 mm")}}
	want.Blades[1].Error = 2 * units.Micrometre
	data, err := json.Marshal(want)
	require.NoError(t, err)
	require.JSONEq(t, `{"blades":[".0025 in / 0.064 mm","0.1 mm ± 0.002 mm"]}`, string(data))
	var a, b kit
	require.NoError(t, json.Unmarshal(data, &a))
	require.NoError(t, document.Decode(data, &b))
	same := cmp.Comparer(func(a, b feeler.Blade) bool { return a == b })
	require.Empty(t, cmp.Diff(want, a, same))
	require.Empty(t, cmp.Diff(want, b, same))
}
