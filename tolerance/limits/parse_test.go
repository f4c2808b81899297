package limits

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestParseLimits(t *testing.T) {
	for in, want := range map[string]string{
		"25 H7":            "25 H7",
		"25H7":             "25 H7",
		"  25  H7\t":       "25 H7",
		"25\u00a0mm H7":    "25 H7",
		"25 mm H7":         "25 H7",
		"25mm H7":          "25 H7",
		"25.4 h6":          "25.4 h6",
		"25,4 h6":          "25.4 h6",
		"⌀25 js6":          "25 js6",
		"Ø 25 js6":         "25 js6",
		"ø25JS6":           "25 JS6",
		"1 in H7":          "25.4 H7",
		`1" H7`:            "25.4 H7",
		`1"H7`:             "25.4 H7",
		"1 1/2 in zc11":    "38.1 zc11",
		"63/64 in H7":      "25.003125 H7",
		"2.5 cm H7":        "25 H7",
		"0.984 in CD8":     "", // over 10 mm
		"25 m6":            "25 m6",
		"25 mm m6":         "25 m6",
		"0.5 m H01":        "500 H01",
		"500 H0":           "500 H0",
		"0.000001 mm H01":  "0.000001 H01",
		"3.000000001 FG18": "3.000000001 FG18",
	} {
		l, err := ParseLimits(in)
		if want == "" {
			require.Error(t, err)
			continue
		}
		require.NoError(t, err, in)
		require.Equal(t, want, l.String(), in)
		again, err := ParseLimits(want)
		require.NoError(t, err)
		require.Equal(t, l, again)
		b, err := ParseBand(in)
		require.NoError(t, err)
		require.Equal(t, l.Band(), b)
	}
}

func TestParseFit(t *testing.T) {
	for in, want := range map[string]string{
		"50 H7/g6":        "50 H7/g6",
		"50H7/g6":         "50 H7/g6",
		" 50 mm H7 / g6 ": "50 H7/g6",
		"⌀50 JS7/js6":     "50 JS7/js6",
		"63/64 in H7/g6":  "25.003125 H7/g6",
		"2 in ZC8/zc7":    "50.8 ZC8/zc7",
	} {
		f, err := Parse(in)
		require.NoError(t, err, in)
		require.Equal(t, want, f.String(), in)
	}
}

func TestParseRefuses(t *testing.T) {
	long := strings.Repeat("⌀", 100)
	for _, c := range []struct {
		in   string
		kind error
		at   int // the place in the input; -1 for errors of the look-up
		want string
	}{
		{"", ErrSyntax, 0, "write a size and a class"},
		{"   ", ErrSyntax, 3, "write a size and a class"},
		{"25", ErrSyntax, 0, "write a size and a class"},
		{"H7", ErrSyntax, 0, "write a size and a class"},
		{"⌀ H7", ErrSyntax, 3, "write a size and a class"},
		{"25 mm", ErrSyntax, 3, "write a size and a class"},
		{"25 H", ErrGrade, 4, "after H a number"},
		{"25 H 7", ErrSyntax, 5, "write a size and a class"},
		{"25 7", ErrSyntax, 3, "write a size and a class"},
		{"50 Z99", ErrGrade, 4, "after Z a number from 01, 0, 1 to 18"},
		{"50 H07", ErrGrade, 4, "after H a number"},
		{"50 H001", ErrGrade, 4, "after H a number"},
		{"25 Q7", ErrDeviation, 3, "a hole has A to H"},
		{"25 Js7", ErrDeviation, 3, "write JS for a hole or js for a shaft"},
		{"25 cD8", ErrDeviation, 3, "write CD for a hole or cd for a shaft"},
		{"25mmH7", ErrDeviation, 2, "leave a blank before H"},
		{"25mmZC7", ErrDeviation, 2, "leave a blank before ZC"},
		{"25mmQ7", ErrDeviation, 2, "a hole has A to H"},
		{"25mmh7", ErrDeviation, 2, "a hole has A to H"},
		{"25 HH7", ErrDeviation, 3, "a hole has A to H"},
		{"25 l6", ErrDeviation, 3, "a hole has A to H"},
		{"0 H7", ErrSize, -1, "limits: 0 mm: nominal size out of range; the tables hold sizes over 0 up to and including 500 mm"},
		{"500.001 H7", ErrSize, -1, "limits: 500.001 mm: nominal size out of range"},
		{"-5 h6", ErrSize, -1, "limits: -5 mm: nominal size out of range"},
		{"0.05 h11", ErrSize, -1, "limits: 0.05 mm: nominal size out of range; the least size of h11 would be -0.01 mm"},
		{"101 m H7", units.ErrRange, 0, "write a size and a class"},
		{"25 H7g6", ErrSyntax, 0, "write a size and a class"},
		{"25 H7 g6", ErrSyntax, 0, "write a size and a class"},
		{"50 H7/g6", ErrSyntax, 5, "this is a fit"},
		{"50 h6/H7", ErrSyntax, 5, "this is a fit"},
		{"63/64 H7", ErrAmbiguous, 0, "a fraction must have its unit"},
		{"1 1/2 H7", ErrAmbiguous, 0, "a fraction must have its unit"},
		{"1,000 H7", units.ErrAmbiguous, 0, "write a size and a class"},
		{"1e3 H7", units.ErrSyntax, 0, "write a size and a class"},
		{"5 mil H7", units.ErrAmbiguous, 0, "write a size and a class"},
		{"0.0000000001 H7", units.ErrTooFine, 0, "write a size and a class"},
		{"20 t6", ErrNotTabulated, -1, "limits: t6 at 20 mm: not tabulated; t6 is for sizes over 24 up to and including 500 mm"},
		{"12 CD8", ErrNotTabulated, -1, "limits: CD8 at 12 mm: not tabulated; CD8 is for sizes over 0 up to and including 10 mm"},
		{"25 J9", ErrNotTabulated, -1, "limits: J9 at 25 mm: not tabulated; J has the grades IT6 to IT8"},
		{"25 j4", ErrNotTabulated, -1, "limits: j4 at 25 mm: not tabulated; j has the grades IT5 to IT7"},
		{"2 j9", ErrNotTabulated, -1, "limits: j9 at 2 mm: not tabulated; j has the grades IT5 to IT8"},
		{"20 T2", ErrNotTabulated, -1, "limits: T2 at 20 mm: not tabulated; T has the grades IT3 to IT18"},
		{"25 K9", ErrNotTabulated, -1, "limits: K9 at 25 mm: not tabulated; K9 is for sizes over 0 up to and including 3 mm"},
		{"1 a11", ErrNotTabulated, -1, "limits: a11 at 1 mm: not tabulated; a11 is for sizes over 1 up to and including 500 mm"},
		{"\xff H7", ErrSyntax, 0, "256 bytes of UTF-8"},
		{strings.Repeat(" ", 300), ErrSyntax, 0, "256 bytes of UTF-8"},
		{long + " H7", ErrSyntax, 0, "256 bytes of UTF-8"},
		{long[:120] + " H7", ErrSyntax, 3, "write a size and a class"},
	} {
		l, err := ParseLimits(c.in)
		require.Zero(t, l, c.in)
		require.ErrorIs(t, err, c.kind, c.in)
		require.ErrorContains(t, err, c.want, c.in)
		var parse *ParseError
		require.Equal(t, c.at >= 0, errors.As(err, &parse), c.in)
		if parse != nil {
			require.Equal(t, c.at, parse.Offset, c.in)
			require.Equal(t, "limits", parse.What)
			require.LessOrEqual(t, len(parse.Input), 64)
			require.True(t, strings.HasPrefix(c.in, parse.Input))
			require.Equal(t, len(c.in) > 64, parse.Cut)
			require.Equal(t, parse.Cut, strings.Contains(err.Error(), `"…`))
		}
		b, err2 := ParseBand(c.in)
		require.Equal(t, err, err2)
		require.True(t, b.IsZero())
		require.PanicsWithError(t, err.Error(), func() { MustParseLimits(c.in) })
		require.PanicsWithError(t, err.Error(), func() { MustParseBand(c.in) })
	}
}

func TestParseFitRefuses(t *testing.T) {
	for _, c := range []struct {
		in   string
		kind error
		want string
	}{
		{"", ErrSyntax, "write a size, the hole's class"},
		{"50", ErrSyntax, "write a size, the hole's class"},
		{"50 H7", ErrSyntax, "write a size, the hole's class"},
		{"50 h6/H7", ErrPair, `limits: fit "50 h6/H7", at byte 3: not a hole and a shaft; the hole comes first: H7/h6`},
		{"50 H7/H6", ErrPair, "not a hole and a shaft; a fit has one of each, as H7/g6"},
		{"50 g6/h6", ErrPair, "not a hole and a shaft; a fit has one of each"},
		{"H7/g6", ErrSyntax, "write a size, the hole's class"},
		{"50 H7/", ErrSyntax, "write a size, the hole's class"},
		{"50 /g6", ErrSyntax, "write a size, the hole's class"},
		{"50 H7//g6", ErrSyntax, "write a size, the hole's class"},
		{"50 H7/50 g6", ErrSyntax, "write a size, the hole's class"},
		{"50 H7/g6/f7", ErrPair, "not a hole and a shaft; a fit has one of each"},
		{"50 H7/g66", ErrGrade, "after g a number"},
		{"50 H77/g6", ErrGrade, "after H a number"},
		{"50 H7/q6", ErrDeviation, "a hole has A to H"},
		{"63/64 H7/g6", ErrAmbiguous, "a fraction must have its unit"},
		{"1/2 in H7", ErrSyntax, "write a size, the hole's class"},
		{"20 H7/t6", ErrNotTabulated, "t6 is for sizes over 24"},
		{"20 T7/h6", ErrNotTabulated, "T7 is for sizes over 24"},
		{"501 H7/h6", ErrSize, "nominal size out of range"},
		{"fifty H7/h6", units.ErrSyntax, "write a size, the hole's class"},
	} {
		f, err := Parse(c.in)
		require.Zero(t, f, c.in)
		require.ErrorIs(t, err, c.kind, c.in)
		require.ErrorContains(t, err, c.want, c.in)
		require.PanicsWithError(t, err.Error(), func() { MustParse(c.in) })
	}
}

func TestParseClassAndPair(t *testing.T) {
	for _, list := range [][letters]string{holeLetters, shaftLetters} {
		for l, deviation := range list {
			for g := IT01; g <= IT18; g++ {
				text := deviation + g.number()
				c, err := ParseClass(text)
				require.NoError(t, err)
				require.Equal(t, text, c.String())
				require.Equal(t, deviation, c.Deviation())
				require.Equal(t, g, c.Grade())
				require.Equal(t, uint8(l), c.letter)
				made, err := NewClass(deviation, g)
				require.NoError(t, err)
				require.Equal(t, c, made)
				require.Equal(t, deviation[0] < 'a', c.Feature() == Hole)
			}
		}
	}
	p, err := ParsePair(" H7 / g6 ")
	require.NoError(t, err)
	require.Equal(t, "H7/g6", p.String())
	for in, kind := range map[string]error{
		"": ErrSyntax, "7": ErrSyntax, "25 H7": ErrSyntax, "H": ErrGrade, "X": ErrGrade, "HJ7": ErrDeviation, "H7 7": ErrSyntax,
		"H19": ErrGrade, "L7": ErrDeviation, "ABC7": ErrDeviation, "ß7": ErrSyntax, "xyz": ErrSyntax,
	} {
		c, err := ParseClass(in)
		require.ErrorIs(t, err, kind, in)
		require.Zero(t, c)
		require.PanicsWithError(t, err.Error(), func() { MustParseClass(in) })
	}
	for in, kind := range map[string]error{
		"": ErrSyntax, "H7": ErrSyntax, "50 H7/g6": ErrSyntax, "g6/H7": ErrPair, "H7/g": ErrGrade, "H/g6": ErrGrade,
	} {
		p, err := ParsePair(in)
		require.ErrorIs(t, err, kind, in)
		require.Zero(t, p)
		require.PanicsWithError(t, err.Error(), func() { MustParsePair(in) })
	}
	for _, deviation := range []string{"", "Q", "HH", "HHH", "7", "H7", "Js", "é", "zd"} {
		_, err := NewClass(deviation, IT7)
		require.ErrorIs(t, err, ErrDeviation, deviation)
	}
}

// The band is for package tolerance to judge with, both limits included.
func TestBandJudges(t *testing.T) {
	band := MustParseBand("25 H7")
	require.Equal(t, "25–25.021 mm", band.String())
	for size, want := range map[string]tolerance.Verdict{
		"24.999999999 mm": tolerance.Below, "25 mm": tolerance.Within, "25.021 mm": tolerance.Within, "25.021000001 mm": tolerance.Above,
	} {
		require.Equal(t, want, band.Judge(tolerance.Exactly(units.MustParseLength(size))), size)
	}
}
