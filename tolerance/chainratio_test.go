package tolerance

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseRatio(t *testing.T) {
	for _, c := range []struct {
		text string
		want Ratio
		back string // what is written; empty: the text
	}{
		{"1", Ratio{1, 1}, ""},
		{"-1", Ratio{-1, 1}, ""},
		{"+1", Ratio{1, 1}, "1"},
		{"−2", Ratio{-2, 1}, "-2"},
		{"0", Ratio{0, 1}, ""},
		{"-0", Ratio{0, 1}, "0"},
		{"0.0005", Ratio{1, 2000}, ""},
		{".0005", Ratio{1, 2000}, "0.0005"},
		{"0,0005", Ratio{1, 2000}, "0.0005"},
		{"0,125", Ratio{1, 8}, "0.125"},
		{"1,5", Ratio{3, 2}, "1.5"},
		{"1.000", Ratio{1, 1}, "1"},
		{"3/2", Ratio{3, 2}, "1.5"},
		{"-4/6", Ratio{-2, 3}, "-2/3"},
		{"15 %", Ratio{3, 20}, "0.15"},
		{"-0.5%", Ratio{-1, 200}, "-0.005"},
		{" 1/3 ", Ratio{1, 3}, "1/3"},
		{"9223372036854775807", Ratio{math.MaxInt64, 1}, ""},
		{"9223372036854775807/9223372036854775806", Ratio{math.MaxInt64, math.MaxInt64 - 1}, ""},
		{"0.000000000000000001", Ratio{1, 1e18}, ""},
		{"1/9223372036854775807", Ratio{1, math.MaxInt64}, ""},
		{"1/2305843009213693952", Ratio{1, 1 << 61}, ""}, // finite, of 61 places
		{"9007199254740993/4", Ratio{9007199254740993, 4}, "2251799813685248.25"},
		{"9223372036854775807/2", Ratio{math.MaxInt64, 2}, ""}, // its decimal has 20 digits
	} {
		r, err := ParseRatio(c.text)
		require.NoError(t, err, c.text)
		require.Equal(t, c.want, r, c.text)
		if c.back == "" {
			c.back = c.text
		}
		require.Equal(t, c.back, r.String())
		b, err := r.MarshalText()
		require.NoError(t, err)
		var back Ratio
		require.NoError(t, back.UnmarshalText(b))
		require.Equal(t, r, back)
	}
	for _, c := range []struct {
		text string
		kind error
	}{
		{"", ErrSyntax}, {"-", ErrSyntax}, {"one", ErrSyntax}, {"1.", ErrSyntax}, {"1.2.3", ErrSyntax}, {"1/", ErrSyntax},
		{"/2", ErrSyntax}, {"1.5/2", ErrSyntax}, {"1/2/3", ErrSyntax}, {"1/-2", ErrSyntax}, {"1/3 %", ErrSyntax}, {"%", ErrSyntax},
		{"1e-3", ErrSyntax}, {"--1", ErrSyntax}, {"1 2", ErrSyntax}, {"NaN", ErrSyntax}, {"Inf", ErrSyntax}, {"0x10", ErrSyntax},
		{"1,234", ErrAmbiguous}, {"12,345", ErrAmbiguous},
		{"1/0", ErrRange}, {"9223372036854775808", ErrRange}, {"1/9223372036854775808", ErrRange}, {"0.0000000000000000001", ErrRange},
		{"0.00000000000000001 %", ErrRange}, {strings.Repeat("9", 5000), ErrRange}, {strings.Repeat("ä", 100), ErrSyntax},
	} {
		r, err := ParseRatio(c.text)
		require.ErrorIs(t, err, c.kind, c.text)
		require.Zero(t, r)
		var e *RatioError
		require.ErrorAs(t, err, &e)
		require.LessOrEqual(t, len(e.Input), 64)
		require.NotEmpty(t, e.Error())
		r = Ratio{1, 1}
		require.Error(t, r.UnmarshalText([]byte(c.text)))
		require.Equal(t, Ratio{1, 1}, r)
	}
}

func TestNewRatio(t *testing.T) {
	r, err := NewRatio(-6, -4)
	require.NoError(t, err)
	require.Equal(t, Ratio{3, 2}, r)
	r, err = NewRatio(0, -4)
	require.NoError(t, err)
	require.Equal(t, Whole(0), r)
	for _, c := range [][2]int64{{1, 0}, {math.MinInt64, 1}, {1, math.MinInt64}} {
		_, err := NewRatio(c[0], c[1])
		require.ErrorIs(t, err, ErrRange)
	}
	require.False(t, Whole(math.MinInt64).Valid())
}

// What is no ratio says so, and multiplies nothing.
func TestRatio_zero(t *testing.T) {
	for _, r := range []Ratio{{}, {1, 0}, {math.MinInt64, 1}, {1, math.MinInt64}} {
		require.False(t, r.Valid())
		require.Zero(t, r.Sign())
		require.True(t, math.IsNaN(r.Float()))
		require.Equal(t, "no ratio", r.String())
		_, err := r.MarshalText()
		require.ErrorIs(t, err, ErrRange)
	}
	require.Equal(t, 1, Ratio{-1, -2}.Sign())
	require.Equal(t, -1, Ratio{1, -2}.Sign())
	require.Equal(t, 0, Ratio{0, 1}.Sign())
	require.Equal(t, "-0.5", Ratio{2, -4}.String(), "in lowest terms, whatever it holds")
	require.Equal(t, -0.5, Ratio{2, -4}.Float())
}

// Text is read back as the same fraction; math/big is the judge.
func TestRatio_asBig(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for range 5000 {
		num, den := r.Int64()>>r.IntN(63)-1<<r.IntN(20), 1+r.Int64()>>r.IntN(63)
		if r.IntN(2) == 0 {
			den = []int64{1, 2, 4, 5, 10, 16, 1000, 25, 3125, 1 << 20}[r.IntN(10)]
		}
		x, err := NewRatio(num, den)
		require.NoError(t, err)
		want := big.NewRat(num, den)
		require.Zero(t, want.Cmp(big.NewRat(x.Num, x.Den)))
		require.Equal(t, want.Num().Int64(), x.Num)
		text, ok := new(big.Rat).SetString(x.String())
		require.True(t, ok)
		require.Zero(t, want.Cmp(text), "%v", x)
		back, err := ParseRatio(x.String())
		require.NoError(t, err)
		require.Equal(t, x, back)
		f, _ := want.Float64()
		require.InEpsilon(t, 1+math.Abs(f), 1+math.Abs(x.Float()), 1e-15)
	}
}

func FuzzParseRatio(f *testing.F) {
	for _, s := range []string{"1", "-3/2", "0.0005", "15 %", "1,234", "0,5", "1/0", "−.25"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := ParseRatio(s)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		require.True(t, r.Valid())
		back, err := ParseRatio(r.String())
		require.NoError(t, err)
		require.Equal(t, r, back)
	})
}
