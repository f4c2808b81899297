package tolerance_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// pm makes a band of ends in picometres; - for none.
func pm(t *testing.T, lo string, loEnd End, hi string, hiEnd End) Band {
	t.Helper()
	value := func(s string) units.Length {
		if s == "-" {
			return 0
		}
		return units.MustParseLength(s + " pm")
	}
	b, err := NewBand(value(lo), loEnd, value(hi), hiEnd)
	require.NoError(t, err)
	return b
}

// A bandTexts is a band in picometres and what is read as it.
type bandTexts struct {
	lo    string
	loEnd End
	hi    string
	hiEnd End
	texts []string
}

func bandsAsWritten() []bandTexts {
	const least, greatest, limit = "30000000", "70000000", "100000000" // 0.03, 0.07 and 0.10 mm
	return []bandTexts{
		{least, Closed, greatest, Closed, []string{
			"0.03–0.07 mm", "0.03—0.07 mm", "0.03-0.07 mm", "0.03−0.07 mm", "0.03~0.07 mm", "0.03…0.07 mm", "0.03...0.07 mm",
			"0.03 to 0.07 mm", "0.03 TO 0.07 MM", "0.03 mm–0.07 mm", "0.03 mm–0.07", "0.03mm-0.07mm", "0.03 mm - 0.07 mm", "0.03 - 0.07 mm",
			"0.03  –   0.07  mm", " 0.03\t–\n0.07 mm ", "0.03\u00a0–\u00a00.07\u00a0mm", "0.03\u202f–\u20090.07\u2007mm", "0.03 –0.07 mm", "0.03– 0.07mm",
			"0,03–0,07 mm", ".03-.07 mm", "30–70 µm", "30–70 μm", "30-70um", "30 µm – 0.07 mm", "+0.03–+0.07 mm",
			"0.05 ±0.02 mm", "0.05±0.02mm", "0.05 mm ±0.02", "0.05 mm ± 0.02 mm", "0.05 mm ± 20 µm", "0.05 +/- 0.02 mm", "0.05 +/−0.02 mm", "0.05 +-0.02 mm", "0,05 ±0,02 mm",
			"0.04 +0.03/-0.01 mm", "0.04 +0.03/−0.01 mm", "0.04+0.03/-0.01 mm", "0.04 mm +0.03/-0.01", "0.04 mm +0.03/-0.01 mm", "0.04 +0.03 mm/-0.01 mm", "0.04 mm +30/-10 µm",
			"0.04 -0.01/+0.03 mm", "0.04 -0.01 +0.03 mm", "0.04 +0.03 -0.01 mm", "0.04 + 0.03 / - 0.01 mm", "0,04 +0,03/-0,01 mm",
			"0.03 +0.04/0 mm", "0.03 +0.04/-0 mm", "0.03 +0.04 0 mm", "0.03 0/+0.04 mm", "0.03 +0.04/0.00 mm", "0.07 0/-0.04 mm", "0.07 0 -0.04 mm", "0.07 -0.00/-0.04 mm",
			"0.02 +0.05/+0.01 mm", "0.02 +0.01/+0.05 mm", "0.08 -0.01/-0.05 mm", "0.08 −0.01 −0.05 mm",
			"min 0.03 mm, max 0.07 mm", "max 0.07 mm, min 0.03 mm", "min 0.03, max 0.07 mm", "min 0.03 mm, max 0.07", "at least 0.03 and at most 0.07 mm", "≥0.03 mm, ≤0.07 mm",
			"0.03 mm min, 0.07 mm max",
		}},
		{"-", Absent, limit, Closed, []string{
			"max 0.10 mm", "max. 0.10 mm", "max.0.10 mm", "MAX 0.10 MM", "Max: 0.10 mm", "maximum 0.10 mm", "Maximum: 0.1 mm", "max0.10mm", "at most 0.10 mm", "up to 0.10 mm",
			"not more than 0.10 mm", "no more than 0.10 mm", "not over 0.10 mm", "≤ 0.10 mm", "≤0.10mm", "<=0.10 mm", "<= 0,10 mm", "max 100 µm",
			"0.10 mm max", "0.10 mm max.", "0.10 mm MAXIMUM", "max\u00a00.10\u00a0mm",
			"renew over 0.10 mm", "renew if over 0.10 mm", "Renew when more than 0.10 mm", "replace above 0.10 mm", "reject > 0.10 mm", "scrap if >0.10 mm",
		}},
		{"-", Absent, limit, Open, []string{
			"less than 0.10 mm", "Less Than 0.10 mm", "under 0.10 mm", "below 0.10 mm", "< 0.10 mm", "<0.10 mm",
			"renew at 0.10 mm or more", "Renew at 0.10 mm or over", "renew if 0.10 mm or above", "replace at 0.10 mm or more", "scrap at ≥ 0.10 mm", "reject if at least 0.10 mm", "renew 0.10 mm or more",
		}},
		{limit, Closed, "-", Absent, []string{
			"min 0.10 mm", "min. 0.10 mm", "minimum 0.10 mm", "at least 0.10 mm", "not less than 0.10 mm", "no less than 0.10 mm", "not under 0.10 mm", "≥ 0.10 mm", ">=0.10 mm",
			"0.10 mm min", "0.10 mm minimum", "renew under 0.10 mm", "replace when below 0.10 mm", "renew if < 0.10 mm",
		}},
		{limit, Open, "-", Absent, []string{
			"more than 0.10 mm", "over 0.10 mm", "above 0.10 mm", ">0.10 mm", "> 0.10 mm", "renew at 0.10 mm or less", "scrap at 0.10 mm or under", "renew if 0.10 mm or below", "reject if up to 0.10 mm",
		}},
		{least, Closed, greatest, Open, []string{"min 0.03 mm, less than 0.07 mm", "less than 0.07 mm, min 0.03 mm", "min 0.03 mm, renew at 0.07 mm or more"}},
		{least, Open, greatest, Closed, []string{"over 0.03 and up to 0.07 mm", "more than 0.03 mm, max 0.07 mm", "OVER 0.03 AND UP TO 0.07 MM"}},
		{"-", Absent, "-", Absent, []string{"no limit", "No Limit", " no  limit "}},
		// The inch is 25.4 mm: .0012 in is 30 480 000 pm, 1/64 in 396 875 000 pm.
		{"30480000", Closed, "71120000", Closed, []string{`.0012"-.0028"`, `.0012-.0028"`, ".0012-.0028 in", `0.0012"–0.0028"`, "0.0012 to 0.0028 inch", "1.2–2.8 thou", `0.0012″ – 0.0028″`, ".0012....0028 in", ".002 ±.0008 in"}},
		{"12700000000", Closed, "19050000000", Closed, []string{"1/2-3/4 in", "1/2 - 3/4 in", `1/2"–3/4"`, "5/8 ±1/8 in", "1/2 +1/4/0 in"}},
		{"0", Closed, "12700000000", Closed, []string{"0-1/2 in", "0–1/2 in"}},
		{"38100000000", Closed, "50800000000", Closed, []string{"1 1/2 – 2 in", "1-1/2–2 in", "1 1/2 to 2 in"}},
		{"1853803125000", Closed, "1854596875000", Closed, []string{"73 +1/64/-1/64 in", "73 ±1/64 in"}},
		{"-", Absent, "101600000", Open, []string{`renew at .004" or more`, `RENEW AT .004 IN OR MORE`}},
		// Below zero: a piston that stands proud of the block face.
		{"-20000000", Closed, "30000000", Closed, []string{"-0.02 to 0.03 mm", "−0.02 to 0.03 mm", "-0.02 - 0.03 mm", "-0.02–0.03 mm", "-0.02-0.03 mm", "-0.02…+0.03 mm", "-20 µm – 30 µm"}},
		{"-20000000", Closed, "-10000000", Closed, []string{"−0.02–−0.01 mm", "-0.02 to -0.01 mm", "-0.02--0.01 mm", "-0.02 - -0.01 mm", "0 -0.01/-0.02 mm", "0 −0.01/−0.02 mm"}},
		{"-20000000", Closed, "0", Closed, []string{"-0.02 to 0 mm", "-0.02 - 0 mm", "-0.02 - 0.00 mm", "0 +0/-0.02 mm", "0 0/-0.02 mm"}},
		{"0", Closed, "50000000", Closed, []string{"0–0.05 mm", "0 - 0.05 mm", "0-0.05 mm", "0.00–0.05 mm"}},
		{"70000000", Closed, "70000000", Closed, []string{"0.07–0.07 mm", "0.07 ±0 mm", "0.07 0/0 mm"}},
	}
}

func TestParseBand(t *testing.T) {
	for _, c := range bandsAsWritten() {
		want := pm(t, c.lo, c.loEnd, c.hi, c.hiEnd)
		for _, text := range c.texts {
			got, err := ParseBand(text)
			require.NoError(t, err, text)
			require.Equal(t, want, got, text)
			require.Equal(t, want, MustParseBand(text))
			again, err := ParseBand(got.String())
			require.NoError(t, err, got.String())
			require.Equal(t, want, again)
		}
	}
}

func TestParseBandOf(t *testing.T) {
	band := func(s string, err error) func(string, error) {
		return func(want string, wantErr error) {
			t.Helper()
			require.ErrorIs(t, err, wantErr)
			if err == nil {
				require.Equal(t, want, s)
			}
		}
	}
	force := func(s string) func(string, error) {
		b, err := ParseBandOf[units.Force](s)
		return band(b.Text(units.InPoundsForce, units.AllPlaces), err)
	}
	force("72–82 lbf")("72–82 lbf", nil)
	force("77 lbf ±5")("72–82 lbf", nil)
	force("min 72, max 82 lbf")("72–82 lbf", nil)

	rate := func(s string) func(string, error) {
		b, err := ParseBandOf[units.SpringRate](s)
		return band(b.Text(units.InPoundsForcePerInch, units.AllPlaces), err)
	}
	rate("250–260 lbf/in")("250–260 lbf/in", nil)
	rate("250 lbf/in - 260 lbf/in")("250–260 lbf/in", nil)
	rate("255 +5/-5 lbf/in")("250–260 lbf/in", nil)
	rate("255 lbf/in +5/-5")("250–260 lbf/in", nil)
	rate("min 250 lbf/in")("min 250 lbf/in", nil)

	angle := func(s string) func(string, error) {
		b, err := ParseBandOf[units.Angle](s)
		return band(b.String(), err)
	}
	angle("44–46°")("44°–46°", nil)
	angle("44°30′–45°30′")("44.5°–45.5°", nil)
	angle("44° 30′ ±15′")("44.25°–44.75°", nil)
	angle("45 deg +1/-0.5 deg")("44.5°–46°", nil)
	angle("max 30 min")("max 0.5°", nil)
	angle("44 deg min")("min 44°", nil)
	angle("30 min")("", units.ErrNoUnit)      // a least of 30, or 30 minutes of arc
	angle("44–45° 30′")("", units.ErrNoUnit)  // 44 degrees, or minutes
	angle("44° 30′–45")("", units.ErrNoUnit)  // likewise
	angle("44° 30′ ±15")("", units.ErrNoUnit) // likewise

	warm := func(s string) func(string, error) {
		b, err := ParseBandOf[units.Temperature](s)
		return band(b.String(), err)
	}
	warm("80–95 °C")("80–95 °C", nil)
	warm("176 °F to 203 °F")("80–95 °C", nil)
	warm("176 deg F - 203 deg F")("80–95 °C", nil)
	warm("20 ±2 °C")("18–22 °C", nil)
	warm("68 ±9 °F")("15–25 °C", nil) // 9 °F is a difference of 5 K
	warm("20 °C ±9 °F")("15–25 °C", nil)
	warm("20 °C ±5 K")("15–25 °C", nil)
	warm("68 +9/-18 °F")("10–25 °C", nil)
	warm("20 °C +9/-18 °F")("10–25 °C", nil)
	warm("-5–5 °C")("-5–5 °C", nil)
	warm("-273 ±1 °C")("", ErrRange)
	warm("-300–5 °C")("", ErrRange)

	pressure, err := ParseBandOf[units.Pressure]("1.2–1.4 bar")
	require.NoError(t, err)
	require.Equal(t, "120–140 kPa", pressure.String())
	volume, err := ParseBandOf[units.Volume]("41.5 ±0.5 cm3")
	require.NoError(t, err)
	require.Equal(t, "41–42 cm³", volume.String())
}

// A refusal is a text that is no band or no interval.
type refusal struct {
	text string
	kind error
	want string // of a band, what follows the quoted input; of an interval, how it begins
}

func bandRefusals() []refusal {
	const forms = `write a range ("0.03–0.07 mm"), a limit ("max 0.10 mm") or a size ("2.5 ±0.02 mm")`
	return []refusal{
		{"", ErrSyntax, ": not understood; " + forms},
		{" \t", ErrSyntax, ": not understood; " + forms},
		{"0.07", ErrSyntax, ": not understood; " + forms},
		{"banana", ErrSyntax, ": not understood; " + forms},
		{"NaN", ErrSyntax, ": not understood; " + forms},
		{"[", ErrSyntax, ": not understood; " + forms},
		{"-", ErrSyntax, ": not understood; " + forms},
		{"±", ErrSyntax, `: not understood; `},
		{"0.07 mm", ErrSyntax, `: not understood; one value is not a band: write "max …", "min …" or a range`},
		{"1-1/2 in", ErrSyntax, `: not understood; one value is not a band: write "max …", "min …" or a range`},
		{"0.07-0.03 mm", ErrOrder, ": nothing lies between the ends; the least comes first"},
		{"max 0.03 mm, min 0.07 mm", ErrOrder, ": nothing lies between the ends; the least comes first"},
		{"more than 5 mm, less than 5 mm", ErrOrder, ": nothing lies between the ends; the least comes first"},
		{"2.5 ±-0.02 mm", ErrSyntax, ", at byte 6: not understood; what follows ± has no sign"},
		{"2.5 ±+0.02 mm", ErrSyntax, ", at byte 6: not understood; what follows ± has no sign"},
		{"0.03–0.07", units.ErrNoUnit, ", at byte 11: no unit; "},
		{"max 5", units.ErrNoUnit, ", at byte 5: no unit; "},
		{"5–6 ft 3 in", units.ErrNoUnit, ", at byte 1: no unit; "},
		{"73 +0.03 mm/-0.001 in", units.ErrNoUnit, ", at byte 3: no unit; "},
		{"73 mm +30 µm/-0.01", units.ErrNoUnit, ", at byte 19: no unit; "},
		{"73 +0.03/-0.01", units.ErrNoUnit, ", at byte 3: no unit; "},
		{"max 5 furlong", units.ErrUnknownUnit, ", at byte 6: unknown unit; "},
		{"  max   5  furlong", units.ErrUnknownUnit, ", at byte 11: unknown unit; "},
		{"0.03\u00a0–\u00a00.07\u00a0xx", units.ErrUnknownUnit, ", at byte 17: unknown unit; "},
		{"5 furlong max", units.ErrUnknownUnit, ", at byte 2: unknown unit; "},
		{"max 0.07 mil", ErrAmbiguous, `, at byte 9: ambiguous; "mil" is a thousandth of an inch to some and a millimetre to others: write "thou" or "mm"`},
		{"1,000–1,200 mm", ErrAmbiguous, ", at byte 1: ambiguous; the comma may mark decimals or thousands: write a point, or no mark"},
		{"0.10 mm or more", ErrAmbiguous, `, at byte 8: ambiguous; is that allowed, or the reading to renew at? write "max …" or "min …", or "renew at … or more"`},
		{"0.10 mm or less", ErrAmbiguous, `, at byte 8: ambiguous; is that allowed, or the reading to renew at? write "max …" or "min …", or "renew at … or less"`},
		{"renew at 0.10 mm", ErrAmbiguous, `, at byte 9: ambiguous; say on which side, as "renew at 0.10 mm or more" or "renew under 0.03 mm"`},
		{"replace", ErrAmbiguous, `, at byte 7: ambiguous; say on which side, as "renew at 0.10 mm or more" or "renew under 0.03 mm"`},
		{"0.03 -0.07 mm", ErrAmbiguous, `, at byte 6: ambiguous; a range or a number below zero? write "0.03–0.07" or "0.03 to -0.07"`},
		{"0 −0.05 mm", ErrAmbiguous, `, at byte 5: ambiguous; a range or a number below zero? write "0.03–0.07" or "0.03 to -0.07"`},
		{"0.03-0.05-0.07 mm", ErrSyntax, `, at byte 9: not understood; `},
		{"min 5 mm, min 6 mm", ErrSyntax, `, at byte 10: not understood; write two one-sided limits as "min 0.03 mm, less than 0.07 mm"`},
		{"max 5 mm and max 6 mm", ErrSyntax, `, at byte 13: not understood; write two one-sided limits as "min 0.03 mm, less than 0.07 mm"`},
		{"min 5 mm, banana", ErrSyntax, `, at byte 10: not understood; write two one-sided limits as "min 0.03 mm, less than 0.07 mm"`},
		{"banana, min 5 mm", ErrSyntax, `: not understood; write two one-sided limits as "min 0.03 mm, less than 0.07 mm"`},
		{"min 5 mm, renew at 6 mm", ErrAmbiguous, `, at byte 19: ambiguous; say on which side, as "renew at 0.10 mm or more" or "renew under 0.03 mm"`},
		{"min 5 mm, max 6 xx", units.ErrUnknownUnit, ", at byte 16: unknown unit; "},
		{"30 +0.5/05 mm", ErrSyntax, ": not understood; " + forms},
		{"30 +0.5/0.2 mm", ErrSyntax, ": not understood; " + forms},
		{"xx +0.5/-0.2 mm", ErrSyntax, `: not understood; `},
		{"73 mm +0.03/-0.0000000000001", units.ErrTooFine, ", at byte 13: finer than the quantum; "},
		{"73 mm +0.03 xx/-0.01 mm", units.ErrUnknownUnit, ", at byte 12: unknown unit; "},
		{"maxi 0.1 mm", ErrSyntax, ": not understood; " + forms},
		{"max 0.0000000000001 mm", units.ErrTooFine, ", at byte 4: finer than the quantum; "},
		{"max 101 m", ErrRange, ", at byte 4: out of range; "},
		{"100 m ±100 m", ErrRange, ": out of range; the range is ±100 m"},
		{"0.03–1/0 in", ErrSyntax, ", at byte 9: not understood; a fraction's denominator is not 0"},
		{"max 1e400 mm", ErrSyntax, ", at byte 5: not understood; "},
		{"0.03–0.07 mm (0.0012–0.0028 in)", ErrSyntax, ", at byte 15: not understood; one band at a time: a second column in brackets is a band of its own, and Compare tells where the two part"},
		{"max １ mm", ErrSyntax, ", at byte 4: not understood; " + ``},
	}
}

func TestParseBand_refuses(t *testing.T) {
	for _, c := range bandRefusals() {
		_, err := ParseBand(c.text)
		require.Error(t, err, c.text)
		require.ErrorIs(t, err, c.kind, c.text)
		var e *ParseError
		require.True(t, errors.As(err, &e))
		require.Equal(t, "band", e.What)
		require.Equal(t, c.text, e.Input)
		require.LessOrEqual(t, e.Offset, len(c.text))
		require.True(t, strings.HasPrefix(err.Error(), "tolerance: band "+strconv.Quote(c.text)+c.want), "%v", err) // package units says the rest
	}
}

func TestParseBand_long(t *testing.T) {
	for _, text := range []string{strings.Repeat("9", 10_000_000), "max " + strings.Repeat("é", 200), "max" + strings.Repeat("é", 200), "max 0.1\xff mm", "\xff"} {
		_, err := ParseBand(text)
		require.ErrorIs(t, err, ErrSyntax)
		var e *ParseError
		require.True(t, errors.As(err, &e))
		require.LessOrEqual(t, len(e.Input), 64)
		require.Equal(t, len(e.Input) < len(text), e.Cut)
		require.True(t, strings.HasPrefix(text, e.Input))
		require.Contains(t, err.Error(), "at most 256 bytes of UTF-8 text")
		_, err = ParseBracket(text)
		require.ErrorIs(t, err, ErrSyntax)
	}
	require.Panics(t, func() { MustParseBand("0.07 mm") })
}
