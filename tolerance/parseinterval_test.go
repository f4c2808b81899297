package tolerance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An intervalTexts is an interval and what is read as it.
type intervalTexts struct {
	lo    units.Length
	loEnd End
	hi    units.Length
	hiEnd End
	text  string // as printed
	same  []string
}

func intervalsAsWritten() []intervalTexts {
	const a, b = units.Length(63_500_000), units.Length(76_200_000) // .0025 in and .003 in
	return []intervalTexts{
		{a, Closed, b, Open, "[0.0635 mm, 0.0762 mm)", []string{
			"[ 0.0635 mm , 0.0762 mm )", "[0.0635 mm; 0.0762 mm)", "[0,0635 mm; 0,0762 mm)", "[0,0635 mm, 0,0762 mm)", "[0.0635 mm,0.0762 mm)",
			"[.0025 in, .003 in)", `[.0025", .003")`, "[.0025, .003 in)", "[.0025 in, .003)", "[0.0635\u00a0mm,\t0.0762\u2009mm)"}},
		{a, Open, b, Closed, "(0.0635 mm, 0.0762 mm]", nil},
		{a, Closed, b, Closed, "[0.0635 mm, 0.0762 mm]", []string{"0.06985 ±0.00635 mm", "0.06985 mm +/- 6.35 µm"}},
		{a, Open, b, Open, "(0.0635 mm, 0.0762 mm)", nil},
		{a, Closed, a, Closed, "0.0635 mm", []string{".0025 in", "[.0025 in, .0025 in]", " 63.5 µm ", "0.0635 ±0 mm"}},
		{a, Closed, 0, Absent, "[0.0635 mm, ∞)", []string{"[.0025 in; +∞)", "[.0025 in,∞)"}},
		{a, Open, 0, Absent, "(0.0635 mm, ∞)", nil},
		{0, Absent, b, Open, "(−∞, 0.0762 mm)", []string{"(-∞, .003 in)", "(-∞;.003 in)", "(−∞,.003 in)"}},
		{0, Absent, b, Closed, "(−∞, 0.0762 mm]", nil},
		{0, Absent, 0, Absent, "(−∞, ∞)", []string{"(-∞,+∞)"}},
		{-b, Closed, -a, Open, "[-0.0762 mm, -0.0635 mm)", []string{"[−0.0762 mm, −0.0635 mm)"}},
		{0, Closed, b, Open, "[0 mm, 0.0762 mm)", []string{"[0, 0.0762 mm)"}},
	}
}

func TestParseInterval(t *testing.T) {
	for _, c := range intervalsAsWritten() {
		want, err := NewInterval(c.lo, c.loEnd, c.hi, c.hiEnd)
		require.NoError(t, err)
		require.Equal(t, c.text, want.String())
		for _, text := range append(c.same, c.text) {
			got, err := ParseBracket(text)
			require.NoError(t, err, text)
			require.Equal(t, want, got, text)
		}
	}
	seat, err := ParseInterval[units.Angle]("[44° 30′, 45° 30′]")
	require.NoError(t, err)
	require.Equal(t, "[44.5°, 45.5°]", seat.String())
	warm, err := ParseInterval[units.Temperature]("68 ±9 °F")
	require.NoError(t, err)
	require.Equal(t, "[15 °C, 25 °C]", warm.String())
}

func intervalRefusals() []refusal {
	const forms = `not understood; write it as "0.07 mm", "73.02 ±0.005 mm", "[0.0635 mm, 0.0762 mm)" or "[0.5 mm, ∞)"`
	return []refusal{
		{"", ErrSyntax, `tolerance: interval "": ` + forms},
		{"[", ErrSyntax, `tolerance: interval "[": ` + forms},
		{"(", ErrSyntax, `tolerance: interval "(": ` + forms},
		{"[]", ErrSyntax, `tolerance: interval "[]": ` + forms},
		{"()", ErrSyntax, `tolerance: interval "()": ` + forms},
		{"[,)", ErrSyntax, `tolerance: interval "[,)": ` + forms},
		{"[1 mm)", ErrSyntax, `tolerance: interval "[1 mm)": ` + forms},
		{"[1 mm, 2 mm", ErrSyntax, `tolerance: interval "[1 mm, 2 mm", at byte 10: ` + forms},
		{"[1,2 mm)", ErrSyntax, `tolerance: interval "[1,2 mm)": ` + forms}, // one number, or two
		{"[−∞, 1 mm)", ErrSyntax, `tolerance: interval "[−∞, 1 mm)": not understood; a round bracket beside ∞`},
		{"(1 mm, ∞]", ErrSyntax, `tolerance: interval "(1 mm, ∞]": not understood; a round bracket beside ∞`},
		{"(∞, 1 mm)", ErrSyntax, `tolerance: interval "(∞, 1 mm)", at byte 1: not understood; `},
		{"0.05–0.07 mm", ErrSyntax, `tolerance: interval "0.05–0.07 mm": not understood; limits are written so; write what was measured as "[0.05 mm, 0.07 mm]" or "0.06 ±0.01 mm"`},
		{"max 0.07 mm", ErrSyntax, `tolerance: interval "max 0.07 mm": not understood; limits are written so; `},
		{"(−∞, 1 xx)", units.ErrUnknownUnit, `tolerance: interval "(−∞, 1 xx)", at byte 11: unknown unit; `},
		{"[1 xx, ∞)", units.ErrUnknownUnit, `tolerance: interval "[1 xx, ∞)", at byte 3: unknown unit; `},
		{"[2 mm, 1 mm)", ErrOrder, `tolerance: interval "[2 mm, 1 mm)": nothing lies between the ends; the least comes first`},
		{"[1 mm, 1 mm)", ErrOrder, `tolerance: interval "[1 mm, 1 mm)": nothing lies between the ends; the least comes first`},
		{"[1, 2)", units.ErrNoUnit, `tolerance: interval "[1, 2)", at byte 5: no unit; `},
		{"0.07", units.ErrNoUnit, `tolerance: interval "0.07", at byte 4: no unit; `},
		{"1 mm ±-1 mm", ErrSyntax, `tolerance: interval "1 mm ±-1 mm", at byte 7: not understood; what follows ± has no sign`},
		{"100 m ±1 m", ErrRange, `tolerance: interval "100 m ±1 m": out of range; the range is ±100 m`},
	}
}

func TestParseInterval_refuses(t *testing.T) {
	for _, c := range intervalRefusals() {
		_, err := ParseBracket(c.text)
		require.True(t, strings.HasPrefix(err.Error(), c.want), "%v", err) // package units says the rest
		require.ErrorIs(t, err, c.kind)
	}
}

// What is marshalled is read back over the whole range, beyond what a person
// may write.
func TestText_wide(t *testing.T) {
	for _, i := range []Bracket{
		{}, bracket("0.07 mm"), bracket("(−∞, 1 mm]"), Exactly(units.Length(1 << 61)), Exactly(-units.Length(1 << 61)),
		AtLeast(-units.Length(1<<61 - 1)).Interval(), MustBetween(-units.Length(1<<61), 1<<61).Interval(), MustBetween(150*units.Metre, 200*units.Metre).Interval(),
	} {
		text, err := i.MarshalText()
		require.NoError(t, err)
		var j Bracket
		require.NoError(t, j.UnmarshalText(text))
		require.Equal(t, i, j)
		b := BandFrom(i)
		text, err = b.MarshalText()
		require.NoError(t, err)
		var c Band
		require.NoError(t, c.UnmarshalText(text))
		require.Equal(t, b, c)
		var p Printed
		require.NoError(t, p.UnmarshalText(text))
		require.Equal(t, b, p.BandOf)
	}
	var b Band
	require.ErrorIs(t, b.UnmarshalText([]byte("200000000000 µm or more")), ErrAmbiguous)
	require.ErrorIs(t, b.UnmarshalText([]byte("150–200 m")), ErrRange) // written by a person
	require.ErrorIs(t, b.UnmarshalText([]byte("1–3000000000000 mm")), ErrRange)
	require.Error(t, new(Bracket).UnmarshalText([]byte("[")))
	require.Error(t, new(Printed).UnmarshalText([]byte("[")))
	require.NoError(t, b.UnmarshalText([]byte("150000 mm ±50000 mm")))
}

func FuzzParseInterval(f *testing.F) {
	for _, s := range []string{"", "[", "(", "0.07 mm", "[.0025 in, .003 in)", "(−∞, ∞)", "[0,5; 0,6 mm]", "73.02 ±0.005 mm", "(-∞,1 mm]", "[1 mm, +∞)", "1/64 in", "[5–6 mm)", "100 m ±0 m", "[1 mm,∞)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		i, err := ParseBracket(s)
		if err != nil {
			require.Zero(t, i)
			require.LessOrEqual(t, len(err.Error()), 600)
			return
		}
		again, err := ParseBracket(i.String())
		require.NoError(t, err, i.String())
		require.Equal(t, i, again)
		require.True(t, i.InRange())
	})
}

func FuzzParseBand(f *testing.F) {
	for _, s := range []string{"0.03–0.07 mm", "max 0.10 mm", "renew at .004\" or more", "73.00 +0.03/−0.01 mm", "2.5 ±0.02 mm", "min 0.03 mm, less than 0.07 mm", "no limit", "1/2-3/4 in", "-0.02--0.01 mm", "30 0/-0.02 mm", "over 1 and up to 2 mm", "0.10 mm or more", "±", "-", "0/", "1 +0/0 ft 3 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		b, err := ParseBand(s)
		if err != nil {
			require.Zero(t, b)
			require.LessOrEqual(t, len(err.Error()), 600)
			return
		}
		again, err := ParseBand(b.String())
		require.NoError(t, err, b.String())
		require.Equal(t, b, again)
		angle, err := ParseBandOf[units.Angle](s)
		if err == nil {
			again, err := ParseBandOf[units.Angle](angle.String())
			require.NoError(t, err, angle.String())
			require.Equal(t, angle, again)
		}
	})
}

func FuzzParsePrinted(f *testing.F) {
	for _, s := range []string{"0.030–0.070 mm", "max 0.10 mm", "70–90 thou", "73.00 +0.03/−0.01 mm", " 1/64 –  1/32 in", "NO LIMIT", "min 0.03, max .003 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := ParsePrinted(s)
		if err != nil {
			require.Zero(t, p)
			return
		}
		b, err := ParseBand(s)
		require.NoError(t, err)
		require.Equal(t, b, p.BandOf)
		again, err := ParsePrinted(p.String())
		require.NoError(t, err, p.String())
		require.Equal(t, p, again)
		if lo, end := p.Lower(); end != Absent && p.Least != (units.Written[units.Length]{}) {
			require.Equal(t, lo, p.Least.Value)
		}
		if hi, end := p.Upper(); end != Absent && p.Greatest != (units.Written[units.Length]{}) {
			require.Equal(t, hi, p.Greatest.Value)
		}
	})
}
