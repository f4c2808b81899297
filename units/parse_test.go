package units

import (
	"errors"
	"fmt"
	"math/big"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// Lengths as people write them; what each is, by 1 in = 25.4 mm.
var acceptedLengths = []struct {
	in string
	pm int64
}{
	{"0.07 mm", 70_000_000},
	{"0,07 mm", 70_000_000},
	{"0.07mm", 70_000_000},
	{"  0.07  mm  ", 70_000_000},
	{"\t0.07\u00a0mm\u202f", 70_000_000},
	{"+0.07 mm", 70_000_000},
	{"-0.02 mm", -20_000_000},
	{"−0.02mm", -20_000_000},
	{"- 0.02 mm", -20_000_000},
	{"-0 mm", 0},
	{"0.070000000000000000000000000000000 mm", 70_000_000},
	{"000000000000000000000000000000000000.07 mm", 70_000_000},
	{"5. mm", 5_000_000_000},
	{"5, mm", 5_000_000_000},
	{",5 mm", 500_000_000},
	{"0,070 mm", 70_000_000},
	{"0,500 mm", 500_000_000},
	{"1,0000 mm", 1_000_000_000},
	{"1234,567 mm", 1_234_567_000_000},
	{"70 µm", 70_000_000},
	{"70 μm", 70_000_000},
	{"70 um", 70_000_000},
	{"70 micron", 70_000_000},
	{".0025 in", 63_500_000},
	{".0025\"", 63_500_000},
	{"0.0025″", 63_500_000},
	{"0.0025”", 63_500_000},
	{"0.0025''", 63_500_000},
	{"0.0025 in.", 63_500_000},
	{"0.0025 IN", 63_500_000},
	{"2.5 thou", 63_500_000},
	{"2500 µin", 63_500_000},
	{"1/64 in", 396_875_000},
	{"25/64\"", 9_921_875_000},
	{"3 25/64\"", 86_121_875_000},
	{"3-25/64 in", 86_121_875_000},
	{"3\u00a025/64 in", 86_121_875_000},
	{"-3 25/64 in", -86_121_875_000},
	{"89/64 in", 35_321_875_000},
	{"1/3 ft", 101_600_000_000},
	{"3/3 in", 25_400_000_000},
	{"0/3 in", 0},
	{"1/512 in", 49_609_375},
	{"5 ft 3 in", 1_600_200_000_000},
	{"5ft3in", 1_600_200_000_000},
	{"5 ft 3 1/2 in", 1_612_900_000_000},
	{"-5 ft 3,5 in", -1_612_900_000_000},
	{"7.2 cm", 72_000_000_000},
	{"100 m", 100_000_000_000_000},
	{"-100 m", -100_000_000_000_000},
	{"63500000 pm", 63_500_000},
	{"0.000000001 mm", 1},
	{"0.00000001 in", 254},
	{"0.000000005 in", 127},
}

func TestParseLength_accepts(t *testing.T) {
	for _, c := range acceptedLengths {
		got, err := ParseLength(c.in)
		require.NoError(t, err, "%q", c.in)
		require.Equal(t, Length(c.pm), got, "%q", c.in)
	}
}

var refusedLengths = []struct {
	in     string
	offset int
	kind   error
}{
	{"", 0, ErrSyntax},
	{"  ", 0, ErrSyntax},
	{"mm", 0, ErrSyntax},
	{"+", 1, ErrSyntax},
	{"-", 1, ErrSyntax},
	{" − ", 5, ErrSyntax},
	{"--5 mm", 1, ErrSyntax},
	{"+-5 mm", 1, ErrSyntax},
	{"–5 mm", 0, ErrSyntax}, // an en dash joins the ends of a band
	{"NaN", 0, ErrSyntax},
	{"Inf mm", 0, ErrSyntax},
	{"..", 0, ErrSyntax},
	{". mm", 0, ErrSyntax},
	{"1..2 mm", 2, ErrSyntax},
	{"1.2.3 mm", 3, ErrSyntax},
	{"1,000,000 mm", 5, ErrSyntax},
	{"1.000,5 mm", 5, ErrSyntax},
	{"1 000 mm", 2, ErrSyntax},
	{"1 2 mm", 2, ErrSyntax},
	{"1e400 mm", 1, ErrSyntax},
	{"1e-3 mm", 1, ErrSyntax},
	{"1E5", 1, ErrSyntax},
	{"0x10 mm", 1, ErrUnknownUnit},
	{"1_000 mm", 1, ErrUnknownUnit},
	{"1/0 in", 2, ErrSyntax},
	{"1//2 in", 2, ErrSyntax},
	{"1/ in", 2, ErrSyntax},
	{"/2 in", 0, ErrSyntax},
	{"1/2/3 in", 3, ErrSyntax},
	{"1/-2 in", 2, ErrSyntax},
	{"1 3/2 in", 2, ErrSyntax},
	{"1 2/2 in", 2, ErrSyntax},
	{"1/65536 in", 0, ErrSyntax},
	{"1234567890/2 in", 0, ErrSyntax},
	{"12345678901234 1/2 in", 0, ErrRange},
	{"1234567890 1/2 in", 0, ErrRange},
	{"0.5-1/64 in", 3, ErrSyntax},
	{"3--25/64 in", 1, ErrSyntax},
	{"3-4 mm", 1, ErrSyntax},
	{"0.03–0.07 mm", 4, ErrUnknownUnit},
	{"5", 1, ErrNoUnit},
	{"5 ", 2, ErrNoUnit},
	{"1/2", 3, ErrNoUnit},
	{"5 mm 3", 6, ErrNoUnit},
	{"5 parsec", 2, ErrUnknownUnit},
	{"5 Mm", 2, ErrUnknownUnit},
	{"5 mm x", 2, ErrUnknownUnit},
	{"5 mm\n", 2, ErrUnknownUnit},
	{"5 kg", 2, ErrUnknownUnit},
	{"1,000 mm", 1, ErrAmbiguous},
	{"-12,345 in", 3, ErrAmbiguous},
	{"2.5 mil", 4, ErrAmbiguous},
	{"3 tenths", 2, ErrAmbiguous},
	{"0.0000000000001 mm", 0, ErrTooFine},
	{"-0.0000000001 mm", 1, ErrTooFine},
	{"1/3 in", 0, ErrTooFine},
	{"1/1024 in", 0, ErrTooFine},
	{"0.5 pm", 0, ErrTooFine},
	{"1.00000000000000000000001 mm", 0, ErrTooFine},
	{"0." + strings.Repeat("0", 200) + "1 mm", 0, ErrTooFine},
	{"100.000000000001 m", 0, ErrRange},
	{"  -101 m", 2, ErrRange},
	{"9223372036854775808 m", 0, ErrRange},
	{"99999999999999999999999999 mm", 0, ErrRange},
	{"3 in 5 ft", 5, ErrSyntax},
	{"5 ft 12 in", 5, ErrSyntax},
	{"5.5 ft 3 in", 7, ErrSyntax},
	{"1/2 ft 3 in", 7, ErrSyntax},
	{"5 mm 3 mm", 5, ErrSyntax},
	{"５ mm", 0, ErrSyntax},
	{"0.０７ mm", 2, ErrUnknownUnit},
	{"½ in", 0, ErrSyntax},
	{"\xff5 mm", 0, ErrSyntax},
	{"5 \xffmm", 2, ErrSyntax},
	{"5 mm\x00", 2, ErrUnknownUnit},
	{strings.Repeat("1", 257), 256, ErrSyntax},
	{strings.Repeat("0", 10_000_000) + " mm", 256, ErrSyntax},
	{strings.Repeat("é", 5_000_000), 256, ErrSyntax},
}

func TestParseLength_refuses(t *testing.T) {
	for _, c := range refusedLengths {
		got, err := ParseLength(c.in)
		var e *ParseError
		require.ErrorAs(t, err, &e, "%.80q", c.in)
		require.ErrorIs(t, err, c.kind, "%.80q: %v", c.in, err)
		require.Equal(t, c.offset, e.Offset, "%.80q: %v", c.in, err)
		require.Zero(t, got)
		require.Equal(t, "length", e.Quantity)
		require.LessOrEqual(t, len(e.Input), 64)
		require.True(t, strings.HasPrefix(c.in, e.Input))
		require.Equal(t, len(c.in) > len(e.Input), e.Cut)
		require.NotEmpty(t, e.Want)
		require.Less(t, len(err.Error()), 600)
		require.True(t, utf8.ValidString(err.Error()))
		for _, other := range []error{ErrSyntax, ErrNoUnit, ErrUnknownUnit, ErrAmbiguous, ErrTooFine, ErrRange} {
			require.Equal(t, other == c.kind, errors.Is(err, other))
		}
		require.Panics(t, func() { MustParseLength(c.in) })
		if c.kind != ErrRange { // which differs: text is read back over the whole range
			var l Length
			if again := l.UnmarshalText([]byte(c.in)); len(c.in) <= 256 {
				require.Equal(t, err, again)
			} else {
				require.EqualError(t, again, err.Error())
			}
		}
	}
}

func TestParseError_text(t *testing.T) {
	_, err := ParseLength("2.5 mil")
	require.EqualError(t, err, `units: length "2.5 mil", at byte 4: ambiguous; "mil" is a thousandth of an inch to some and a millimetre to others: write "thou" or "mm"`)
	_, err = ParseLength("1/3 in")
	require.EqualError(t, err, `units: length "1/3 in", at byte 0: finer than the quantum; every multiple of 0.00000001 in is held exactly`)
	_, err = ParseLength("101 m")
	require.EqualError(t, err, `units: length "101 m", at byte 0: out of range; the range is ±100 m`)
	_, err = ParseTemperature("-300 °C")
	require.EqualError(t, err, `units: temperature "-300 °C", at byte 0: out of range; the range is -273.15 °C to 100 000 °C`)
	_, err = ParseAngle(strings.Repeat("1", 62) + "°5")
	require.EqualError(t, err, `units: angle "`+strings.Repeat("1", 62)+`°"…, at byte 0: out of range; the range is ±1 000 000°`)
	want := &ParseError{Quantity: "mass", Input: "3 gr", Offset: 2, Kind: ErrAmbiguous, Want: `"gr" is a grain to some and a gram to others: write "grain" or "g"`}
	_, err = ParseMass("3 gr")
	require.Equal(t, want, err)
}

// The clip keeps whole characters, and bytes that are none.
func TestClip(t *testing.T) {
	for in, want := range map[string]int{
		strings.Repeat("a", 64):              64,
		strings.Repeat("a", 65):              64,
		strings.Repeat("a", 63) + "µ":        63,
		strings.Repeat("a", 62) + "″b":       62,
		strings.Repeat("a", 61) + "😀bcd":     61,
		strings.Repeat("a", 60) + "😀bcd":     64,
		strings.Repeat("\x80", 80):           60,
		strings.Repeat("a", 64) + "\x80\x80": 63,
	} {
		text, cut := clip(in)
		require.Len(t, text, want, "%q", in)
		require.Equal(t, len(in) > want, cut)
	}
}

// Texts for every quantity: a number, a fraction, a sum, a slip.
var forms = []string{
	"0", "1", "-1", "+1", "−1", "7.5", ",5", "0,500", "1,500", "3 1/2", "3-1/2", "1/3", "22/7", "1e3", "--1", "..", "1//2",
	"12345678901234567", "0.0000000000000000000001", "999999", "8191.99999999999", "18446744073709551616",
	"4611686018427387904", "4611686018427387905", "23.99999999999999999999",
}

func (s suite[Q, P]) parsers(t *testing.T) {
	table := s.table()
	for _, form := range forms {
		s.fuzz(t, form)
		for i := range table.units {
			s.fuzz(t, form+" "+table.units[i].symbol)
		}
	}
	for i := range table.units {
		u := &table.units[i]
		for _, name := range append([]string{u.symbol}, u.names...) {
			s.fuzz(t, "1"+name)
			s.fuzz(t, " -7.5\u00a0"+name+"\t")
			s.fuzz(t, "1 "+name+" 1"+name)
		}
		for j := range table.units {
			for _, form := range []string{"0", "0.5", "11 1/2", "60", "1,500"} {
				s.fuzz(t, "1 "+u.symbol+" "+form+" "+table.units[j].symbol)
			}
		}
	}
	for name := range table.ambiguous {
		s.fuzz(t, "1 "+name)
	}
	for _, in := range []string{"", "x", "1 x", "1 \xff", strings.Repeat("1", 300)} {
		s.fuzz(t, in)
		_, err := s.parse(in)
		require.ErrorContains(t, err, "units: "+table.quantity+" ")
		require.Panics(t, func() { s.must(in) })
	}
	one := "1 " + table.units[0].symbol
	require.EqualValues(t, table.units[0].quanta, s.must(one))
	require.Equal(t, []int{-1, 0, 1}, []int{Q(1).Compare(2), Q(2).Compare(2), Q(2).Compare(1)})
}

// fuzz holds what the parsers say of a text to what the judge says.
func (s suite[Q, P]) fuzz(t *testing.T, text string) {
	t.Helper()
	table := s.table()
	j := judges[table.quantity]
	check := func(name string, got int64, err error, want *big.Rat, wantErr error) {
		t.Helper()
		if wantErr != nil {
			var e *ParseError
			require.ErrorAs(t, err, &e, "%s %q: want %v", name, text, wantErr)
			require.ErrorIs(t, err, wantErr, "%s %q: %v", name, text, err)
			require.True(t, 0 <= e.Offset && e.Offset <= len(text), "%v", err)
			require.LessOrEqual(t, len(e.Input), 64)
			return
		}
		require.NoError(t, err, "%s %q", name, text)
		require.Equal(t, want.RatString(), fmt.Sprint(got), "%s %q", name, text)
	}
	most := new(big.Rat).SetInt64(table.parseMax)
	want, wantErr := j.value(text, "", most)
	v, err := s.parse(text)
	check("parse", int64(v), err, want, wantErr)
	v, err = Parse[Q](text)
	check("Parse", int64(v), err, want, wantErr)
	slow, _, err := table.parseAny(text, noUnit, table.parseMax)
	check("parseAny", slow, err, want, wantErr)
	w, err := ParseWritten[Q](text)
	check("ParseWritten", int64(w.Value), err, want, wantErr)

	all, allErr := j.value(text, "", new(big.Rat).SetInt64(limit))
	v = 0
	err = P(&v).UnmarshalText([]byte(text))
	check("UnmarshalText", int64(v), err, all, allErr)

	for _, u := range s.units() {
		want, wantErr := j.value(text, u.Symbol(), most)
		v, err := ParseIn(text, u)
		check("ParseIn "+u.Symbol(), int64(v), err, want, wantErr)
		w, err := ParseWrittenIn(text, u)
		check("ParseWrittenIn "+u.Symbol(), int64(w.Value), err, want, wantErr)
	}
	if wantErr == nil {
		s.writtenAgain(t, w)
	}
	if allErr == nil {
		s.textAgain(t, v)
	}
}

func TestParsers(t *testing.T) { each(t, tester.parsers) }
