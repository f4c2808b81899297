package tolerance_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// sameAsAny holds what is read as a plain form to what the reader of every form
// makes of it, and says as what it was read.
func sameAsAny[Q units.Quantity](t *testing.T, s string) (interval, band bool) {
	t.Helper()
	i, interval := PlainInterval[Q](s)
	b, band := PlainBand[Q](s)
	for _, wide := range []bool{false, true} {
		if interval {
			want, err := AnyInterval[Q](s, wide)
			require.NoError(t, err, s)
			require.Equal(t, want, i, s)
		}
		if band {
			want, err := AnyBand[Q](s, wide)
			require.NoError(t, err, s)
			require.Equal(t, want.BandOf, b.BandOf, s)
			require.Equal(t, want.Least, b.Least, s)
			require.Equal(t, want.Greatest, b.Greatest, s)
			require.Equal(t, want.String(), s) // what is kept of it is the text itself
		}
	}
	if !interval && i != (Interval[Q]{}) || !band && b != (PrintedOf[Q]{}) {
		t.Errorf("%q: %v, %v", s, i, b)
	}
	return interval, band
}

func sameAsAnyOfAll(t *testing.T, s string) {
	t.Helper()
	sameAsAny[units.Length](t, s)
	sameAsAny[units.Angle](t, s)
	sameAsAny[units.Volume](t, s)
	sameAsAny[units.Mass](t, s)
	sameAsAny[units.Force](t, s)
	sameAsAny[units.Pressure](t, s)
	sameAsAny[units.SpringRate](t, s)
	sameAsAny[units.Temperature](t, s)
	sameAsAny[units.TemperatureDifference](t, s)
}

// everyText is every text of the tests of parsing.
func everyText() (texts []string) {
	for _, c := range bandsAsWritten() {
		texts = append(texts, c.texts...)
	}
	for _, c := range intervalsAsWritten() {
		texts = append(append(texts, c.same...), c.text)
	}
	for _, c := range append(bandRefusals(), intervalRefusals()...) {
		texts = append(texts, c.text)
	}
	return append(texts, plainIntervals...)
}

// plainIntervals and plainBands are forms that documents are full of.
var (
	plainIntervals = []string{
		"86.012 mm", "-0.02 mm", "86 mm", "86. mm", ".0025 in", `.0025"`, "3.3859 inch", "25.5 µm", "25.5 um", "2.5 thou", "86.012mm",
		"86.012 ±0.002 mm", "86.012 mm ±0.002 mm", "86.012 mm ±2 µm", "86.012±0.002mm", "86.012 mm ± 0.002", "-0.02 ±0.01 mm",
		"[0.0635 mm, 0.0762 mm)", "(0.0635 mm, 0.0762 mm]", "[.0025, .003 in)", "[.0025 in, .003)", "[0.5 mm, ∞)", "(−∞, 0.5 mm)", "(−∞, 0.5 mm]", "(0.5 mm, ∞)", "(−∞, ∞)", "[1 mm, 1 mm]",
	}
	plainBands = []string{
		"0.03–0.07 mm", "0.03 – 0.07 mm", "0.03-0.07 mm", "0.03 - 0.07 mm", "0.03 to 0.07 mm", "0.03 mm–0.07 mm", "0.03 mm to 0.07 mm", ".0012–.0028 in", `.0012"–.0028"`, "-0.02–-0.01 mm", "-0.02 to 0.03 mm", "-0.02-0.03 mm",
		"max 0.10 mm", "min 0.03 mm", "less than 0.10 mm", "more than 0.03 mm", "0.10 mm max", "0.03 mm min", "max -0.02 mm",
		"2.5 ±0.02 mm", "2.5 mm ±0.02", "55.000 +0.02/-0.00 mm", "55.000 +0.02/0 mm", "55.000 0/-0.02 mm", "55 mm +0.02/-0.01", "55 mm 0/-0.02", "55.000+0.02/-0.01 mm", "55 -0.01/-0.03 mm", "55 -0.01 +0.03 mm", "55 +0.02 mm/-0.01 mm", "55 +0.02 mm/-0.01",
	}
)

// The ordinary forms are plain ones.
func TestPlain(t *testing.T) {
	for _, s := range plainIntervals {
		ok, _ := sameAsAny[units.Length](t, s)
		require.True(t, ok, s)
	}
	for _, s := range plainBands {
		_, ok := sameAsAny[units.Length](t, s)
		require.True(t, ok, s)
	}
	for _, s := range []string{"44–46°", "44° to 46°", "45 deg ±1", "30′–45′"} {
		_, ok := sameAsAny[units.Angle](t, s)
		require.True(t, ok, s)
	}
	for _, s := range []string{"250–260 lbf/in", "255 lbf/in +5/-5", "40.5 N/mm ±5 N/mm", "255 +5 lbf/in/-5 lbf/in"} {
		_, ok := sameAsAny[units.SpringRate](t, s)
		require.True(t, ok, s)
	}
	for _, s := range []string{"41.5 ±0.5 cm3", "41–42 cm³", "max 42 cc", "41 cm3 - 42 cm3"} {
		_, ok := sameAsAny[units.Volume](t, s)
		require.True(t, ok, s)
	}
	for s, c := range map[string]func(*testing.T, string) (bool, bool){
		"0.5 oz": sameAsAny[units.Mass], "72 lbf": sameAsAny[units.Force], "1.2 bar": sameAsAny[units.Pressure], "8.5 K": sameAsAny[units.TemperatureDifference],
	} {
		ok, _ := c(t, s)
		require.True(t, ok, s)
	}
	for _, s := range everyText() {
		sameAsAnyOfAll(t, s)
	}
	for _, s := range []string{ // left to the other reader
		"", " ", "-", ".", "5", "5 ", "mm", "5 mm ", " 5 mm", "5  mm", "0,5 mm", "1/64 in", "3-25/64 in", "5 ft 3 in", "0 mil", "+5 mm", "5 ±", "5 ±-1 mm", "5 mm ±0.0000000001", "0.0000000001 mm",
		"1234567890123456789 pm", "999999999999999999 mm", "101 m", "99 m ±2 m", "[", "(", "[]", "[1 mm", "[1 mm, ", "[1 mm, 2 mm", "[1 mm,2 mm]", "[−∞, 1 mm]", "(1 mm, ∞]", "[2 mm, 1 mm]", "[1 mm, 1 mm)", "[1, 2]", "[1 mm, 2 mm] ",
		"5–", "5 mm–", "2–1 mm", "1–2 mm max", "1–2", "1to 2 mm", "1 -2 mm", "1- 2 mm", "max", "max ", "max 5", "maxi 5 mm", "renew at 5 mm or more", "5 mm maximum", "5 max", "5 +", "5 +0.1", "5 +0.1 mm", "5 +0.1/", "5 +0.1/-", "5 +0.1/0.1 mm",
		"5 +0.1/-0.1", "5 mm +0.1/-0.1 in", "5+0.1 in/-0.1 mm", "50 m +51 m/0 m", "5 0.1/-0.1 mm", "5 1 mm", "no limit", "min 1 mm, max 2 mm",
	} {
		interval, band := sameAsAny[units.Length](t, s)
		require.False(t, interval || band, s)
	}
}

// The names of units are those of package units, and so is the greatest value
// taken.
func TestPlain_names(t *testing.T) {
	plainNames[units.Length](t, 11)
	plainNames[units.Angle](t, 5)
	plainNames[units.Volume](t, 7)
	plainNames[units.Mass](t, 5)
	plainNames[units.Force](t, 4)
	plainNames[units.Pressure](t, 4)
	plainNames[units.SpringRate](t, 4)
	plainNames[units.TemperatureDifference](t, 1)
	plainNames[units.Temperature](t, 0)
}

func plainNames[Q units.Quantity](t *testing.T, n int) {
	t.Helper()
	names, most := PlainNames[Q]()
	require.Len(t, names, n)
	for _, name := range names {
		ok, _ := sameAsAny[Q](t, "1.5 "+name)
		require.True(t, ok, name)
	}
	for _, q := range []Q{most, -most} {
		text, err := units.AppendText(nil, q)
		require.NoError(t, err)
		back, err := units.Parse[Q](string(text))
		if n > 0 {
			require.NoError(t, err)
			require.Equal(t, q, back)
		}
	}
	text, err := units.AppendText(nil, most+1)
	require.NoError(t, err)
	_, err = units.Parse[Q](string(text))
	require.Equal(t, n > 0, err != nil)
}

// Plain forms cost no memory but the text that is kept.
func TestPlain_allocations(t *testing.T) {
	var i Bracket
	var b Band
	var p Printed
	for _, s := range plainIntervals {
		text := []byte(s)
		require.Zero(t, testing.AllocsPerRun(100, func() { _ = i.UnmarshalText(text) }), s)
		require.Zero(t, testing.AllocsPerRun(100, func() { i, _ = ParseBracket(s) }), s)
	}
	for _, s := range plainBands {
		text := []byte(s)
		require.Zero(t, testing.AllocsPerRun(100, func() { _ = b.UnmarshalText(text) }), s)
		require.Zero(t, testing.AllocsPerRun(100, func() { b, _ = ParseBand(s) }), s)
		require.Zero(t, testing.AllocsPerRun(100, func() { p, _ = ParsePrinted(s) }), s)
		require.LessOrEqual(t, testing.AllocsPerRun(100, func() { _ = p.UnmarshalText(text) }), 1.0, s)
		require.Equal(t, s, p.String())
	}
}

// Pieces put together at random agree too, more often forms that are nearly
// plain than a fuzzer finds.
func TestPlain_composed(t *testing.T) {
	pieces := []string{
		"0", "5", "12.5", ".0025", "-0.02", "0.00", "-", "+", "/", "–", "±", " ", " ", " ", " to ", "[", "(", "]", ")", ", ", ",", "∞", "−∞", "−",
		"mm", "in", " mm", " in", `"`, "µm", "°", "′", " N/mm", "lbf/in", "max ", "min ", "less than ", "more than ", " max", " min", "to", ";", "+/-", "1/64",
	}
	r := rand.New(rand.NewPCG(1, 2))
	plain := 0
	for range 100_000 {
		var s strings.Builder
		for range 1 + r.IntN(8) {
			s.WriteString(pieces[r.IntN(len(pieces))])
		}
		interval, band := sameAsAny[units.Length](t, s.String())
		if interval || band {
			plain++
		}
		sameAsAny[units.Angle](t, s.String())
		sameAsAny[units.SpringRate](t, s.String())
	}
	require.Greater(t, plain, 250)
}

func FuzzPlain(f *testing.F) {
	for _, s := range append(everyText(), plainBands...) {
		f.Add(s)
	}
	f.Fuzz(sameAsAnyOfAll)
}
