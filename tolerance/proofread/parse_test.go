package proofread_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

func TestParsePair_reads(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"0.006 in (0.015 mm)", "0.006 in (0.015 mm)"},
		{" 3/32 in (3.2mm) ", "3/32 in (3.2 mm)"},
		{`.0025"(0,064 mm)`, "0.0025 in (0.064 mm)"},
		{"−0.555 in (-1.40 mm)", "-0.555 in (-1.40 mm)"},
		{"1 3/64\u00a0in ( 26.59 mm )", "1 3/64 in (26.59 mm)"},
	} {
		p, err := proofread.ParsePair(c.text)
		require.NoError(t, err)
		require.Equal(t, c.want, p.String())
	}
	p, err := proofread.ParsePairOf[units.Pressure]("30 psi (207 kPa)")
	require.NoError(t, err)
	require.Equal(t, "30 psi (207 kPa)", p.String())
}

func TestParse_refuses(t *testing.T) {
	for _, c := range []struct {
		text string
		kind error
		want string
	}{
		{"", proofread.ErrSyntax, `proofread: pair "": not written as expected; write it as "0.006 in (0.152 mm)"`},
		{"0.006 in", proofread.ErrSyntax, ""},
		{"0.006 in 0.152 mm)", proofread.ErrSyntax, ""},
		{"0.006 in (0.152 mm", proofread.ErrSyntax, ""},
		{"0.006 in (0.152 mm) each", proofread.ErrSyntax, ""},
		{"0.006 in ((0.152 mm))", proofread.ErrSyntax, ""},
		{"0.006 in (0.152)", units.ErrNoUnit, ""},
		{"0.006 (0.152 mm)", units.ErrNoUnit, ""},
		{"0.006 in (6 mil)", units.ErrAmbiguous, ""},
		{"0.006 in (0.152 kg)", units.ErrUnknownUnit, ""},
		{"1e3 in (25400 mm)", units.ErrSyntax, ""},
		{"200 m (7874 in)", units.ErrRange, ""},
		{"\xff in (1 mm)", proofread.ErrSyntax, ""},
		{strings.Repeat("0", 300) + " in (1 mm)", proofread.ErrSyntax, `proofread: pair "` + strings.Repeat("0", 64) + `"…: not written as expected; at most 256 bytes of UTF-8; write it as "0.006 in (0.152 mm)"`},
	} {
		_, err := proofread.ParsePair(c.text)
		require.ErrorIs(t, err, c.kind, c.text)
		var parse *proofread.ParseError
		require.True(t, errors.As(err, &parse), c.text)
		require.LessOrEqual(t, len(parse.Input), 64)
		if c.want != "" {
			require.EqualError(t, err, c.want)
		}
		_, err = proofread.ParseLimits(c.text)
		require.Error(t, err, c.text)
	}
	_, err := proofread.ParsePairIn("90 (x)", units.InDegrees, units.InDegrees)
	require.ErrorIs(t, err, units.ErrSyntax)
	_, err = proofread.ParsePairIn("90", units.InDegrees, units.InDegrees)
	require.ErrorIs(t, err, proofread.ErrSyntax)
	// A cut falls between characters.
	_, err = proofread.ParsePair(strings.Repeat("é", 100))
	require.ErrorContains(t, err, `"`+strings.Repeat("é", 32)+`"…`)
}

func TestParseColumn_reads(t *testing.T) {
	for _, c := range []struct {
		text string
		form proofread.Form
		want string
	}{
		{"0.006 in", proofread.One, "0.006 in"},
		{"3-25/64 in", proofread.One, "3 25/64 in"},
		{"0.03–0.07 mm", proofread.Range, "0.03 mm to 0.07 mm"},
		{"0.03 - 0.07 mm", proofread.Range, "0.03 mm to 0.07 mm"},
		{"74.915 to 7.4935 in", proofread.Range, "74.915 in to 7.4935 in"},
		{"74.915 in to 7.4935", proofread.Range, "74.915 in to 7.4935 in"},
		{"69.920-69.632 mm", proofread.Range, "69.920 mm to 69.632 mm"},
		{"0.07 − -0.02 mm", proofread.Range, "0.07 mm to -0.02 mm"},
		{"-0.02 – 0.07 mm", proofread.Range, "-0.02 mm to 0.07 mm"},
		{"max 0.10 mm", proofread.Maximum, "max 0.10 mm"},
		{"renew at 0.10 mm or more", proofread.Maximum, "max 0.10 mm"},
		{"0.030 in min", proofread.Minimum, "min 0.030 in"},
		{"0.020 ±0.005 in", proofread.Symmetric, "0.020 in ±0.005 in"},
		{"0.51 mm +/- 0.13", proofread.Symmetric, "0.51 mm ±0.13 mm"},
	} {
		got, err := proofread.ParseColumn(c.text)
		require.NoError(t, err, c.text)
		require.Equal(t, c.form, got.Form, c.text)
		require.Equal(t, c.want, got.String())
		back, err := proofread.ParseColumn(got.String())
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(got, back))
	}
	for _, text := range []string{"", "in", "0.03–", "no limit", "73.00 +0.03/-0.01 mm", "0.07–0.03", "0.07 – x mm", "0.5 ± mm", strings.Repeat("1", 257)} {
		_, err := proofread.ParseColumn(text)
		require.ErrorIs(t, err, proofread.ErrSyntax, text)
	}
	_, err := proofread.ParseColumn("73.00 +0.03/-0.01 mm")
	require.ErrorContains(t, err, "two limits, not a size with deviations")
}

func TestParseLimits_forms(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"max 0.10 mm (0.004 in)", "max 0.10 mm (max 0.004 in)"},
		{"0.10 mm (min 0.004 in)", "min 0.10 mm (min 0.004 in)"},
		{"0.020 ±0.005 in (0.51 ±0.13 mm)", "0.020 in ±0.005 in (0.51 mm ±0.13 mm)"},
	} {
		l, err := proofread.ParseLimits(c.text)
		require.NoError(t, err)
		require.Equal(t, c.want, l.String())
	}
	_, err := proofread.ParseLimits("0.03–0.07 mm (0.003 in)")
	require.ErrorIs(t, err, proofread.ErrForm)
	require.EqualError(t, err, `proofread: second column "0.003 in": the columns differ in form; as the first column: a range`)
	_, err = proofread.ParseLimits("max 0.10 mm (min 0.004 in)")
	require.ErrorIs(t, err, proofread.ErrForm)
	_, err = proofread.CheckLimits(proofread.Limits{First: proofread.Column{Form: proofread.Range}})
	require.ErrorIs(t, err, proofread.ErrForm)
}

func TestColumnFrom(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"0.03–0.07 mm", "0.03 mm to 0.07 mm"},
		{"less than 0.10 mm", "max 0.10 mm"},
		{"over 0.03 mm", "min 0.03 mm"},
		{"73.00 +0.03/-0.01 mm", ""},
		{"no limit", ""},
	} {
		p, err := tolerance.ParsePrinted(c.text)
		require.NoError(t, err)
		got, ok := proofread.ColumnFrom(p)
		require.Equal(t, c.want != "", ok)
		if ok {
			require.Equal(t, c.want, got.String())
		}
	}
}

// What the parser takes, the check takes; what it prints reads back; and an
// answer is one of the two: they agree, or there is a slip.
func FuzzPair(f *testing.F) {
	for _, text := range []string{
		"0.006 in (0.015 mm)", "3/32 in (3.2 mm)", "12.050 in (304.80 mm)", "-0.555 in (-1.40 mm)", "0 in (0 mm)", "0.000 in (0.24 mm)",
		"100 m (0.00000001 in)", "99999 mm (1 pm)", "1/65535 in (1 mm)", "5 ft 3 1/2 in (1.61 m)", "0.000000000 mm (5 nm)", "1/64 in (63/64 in)",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := proofread.ParsePair(text)
		if err != nil {
			require.ErrorIs(t, err, proofread.ErrSyntax)
			return
		}
		back, err := proofread.ParsePair(p.String())
		require.NoError(t, err, p)
		require.Empty(t, cmp.Diff(p, back))
		for _, design := range []proofread.Side{proofread.Neither, proofread.First, proofread.Second} {
			r, err := proofread.CheckConversion(p, design)
			require.NoError(t, err)
			require.Equal(t, r.Basis == proofread.Apart, r.Flagged(), "%s: %s", p, r)
			require.NotEmpty(t, r.String())
			for i, s := range r.Slips {
				require.NotEqual(t, design, s.In)
				require.NotEqual(t, proofread.NoSlip, s.Kind)
				require.NotEmpty(t, s.String())
				require.True(t, i == 0 || r.Slips[i-1].Rank <= s.Rank)
				require.True(t, s.Correct.Value.InRange())
			}
		}
		// The order of the columns is no matter.
		r, err := proofread.CheckPair(p)
		require.NoError(t, err)
		other, err := proofread.CheckPair(proofread.Pair{First: p.Second, Second: p.First})
		require.NoError(t, err)
		require.Equal(t, r.Flagged(), other.Flagged())
		if r.Flagged() {
			require.Equal(t, r.Slips[0].Rank, other.Slips[0].Rank, "%s: %s; %s", p, r, other)
		}
	})
}

func FuzzColumn(f *testing.F) {
	for _, text := range []string{"0.03–0.07 mm", "74.915 to 7.4935 in", "max 0.10 mm", "0.020 ±0.005 in", "69.920-69.632 mm", "100 m – 1 pm", "1/2–1/4 in"} {
		f.Add(text, "max 0.10 mm")
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		c, err := proofread.ParseColumn(a)
		if err != nil {
			require.ErrorIs(t, err, proofread.ErrSyntax)
			return
		}
		r, err := proofread.CheckColumn(c)
		require.NoError(t, err)
		require.NotEmpty(t, r.String())
		if c.Form == proofread.Range && c.A.Value > c.B.Value {
			require.True(t, r.Flagged())
		}
		d, err := proofread.ParseColumn(b)
		if err != nil {
			return
		}
		w, err := proofread.CheckWear(c, d)
		require.NoError(t, err)
		require.NotEmpty(t, w.String())
		l, err := proofread.CheckLimits(proofread.Limits{First: c, Second: d})
		require.True(t, err == nil || errors.Is(err, proofread.ErrForm))
		require.NotEmpty(t, l.String())
		lift, err := proofread.CheckLift(c, d)
		require.NoError(t, err)
		require.NotEmpty(t, lift.String())
		x, err := proofread.CheckRatio(c.A, d.A, proofread.Ratio{Num: 1, Den: 1, Pi: true})
		require.True(t, err == nil || errors.Is(err, proofread.ErrRange))
		require.NotEmpty(t, x.String())
	})
}
