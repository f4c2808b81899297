package proofread_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// What one limit tells of the other: which column is suspected first. The right
// figures are worked by hand: 0.006 in = 0.1524 mm, 0.0008 in = 0.02032 mm,
// 0.008 in = 0.2032 mm, 0.0012 in = 0.03048 mm, 2.7528 in = 69.92112 mm, 2.7533 in = 69.93382 mm.
func TestLimits_suspect(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		// Out of order in one column.
		{"0.006–0.0008 in (0.15–0.20 mm)", "greatest: 0.20 mm is 0.0079 in: the 0.0008 in printed beside it looks a decimal place off; or the 0.20 mm should be 0.020 mm\n" +
			"the least, 0.006 in, is above the greatest, 0.0008 in: exchanged, or one of them is wrong"},
		{"0.15–0.020 mm (0.006–0.008 in)", "greatest: 0.008 in is 0.203 mm: the 0.020 mm printed beside it looks a decimal place off; or the 0.008 in should be 0.0008 in\n" +
			"the least, 0.15 mm, is above the greatest, 0.020 mm: exchanged, or one of them is wrong"},
		// Further apart in one column.
		{"0.015–0.20 mm (0.006–0.008 in)", "least: 0.006 in is 0.152 mm: the 0.015 mm printed beside it looks a decimal place off; or the 0.006 in should be 0.0006 in"},
		{"0.0006–0.008 in (0.15–0.20 mm)", "least: 0.15 mm is 0.0059 in: the 0.0006 in printed beside it looks a decimal place off; or the 0.15 mm should be 0.015 mm"},
		// Nothing amiss, and one-sided limits.
		{"2.7528–2.7533 in (69.921–69.934 mm)", "nothing amiss"},
		{"max 0.0028 in (0.7 mm)", "greatest: 0.7 mm is 0.0276 in: the 0.0028 in printed beside it looks a decimal place off; or the 0.7 mm should be 0.07 mm"},
		{"max 0.0028 in (0.07 mm)", "nothing amiss"},
		{"0.020 ±0.005 in (0.51 ±0.013 mm)", "tolerance: 0.005 in is 0.127 mm: the 0.013 mm printed beside it looks a decimal place off; or the 0.005 in should be 0.0005 in"},
		// Out of order in both, and nothing to choose by below nought.
		{"0.008–0.006 in (0.20–0.15 mm)", "the least, 0.008 in, is above the greatest, 0.006 in: exchanged, or one of them is wrong\n" +
			"the least, 0.20 mm, is above the greatest, 0.15 mm: exchanged, or one of them is wrong"},
		{"-0.006 – 0.008 in (-0.015 – 0.20 mm)", "least: -0.006 in is -0.152 mm: the -0.015 mm printed beside it looks a decimal place off; or the -0.006 in should be -0.0006 in"},
	} {
		l, err := proofread.ParseLimits(c.text)
		require.NoError(t, err)
		r, err := proofread.CheckLimits(l)
		require.NoError(t, err)
		require.Equal(t, c.want, r.String(), c.text)
	}
}

// 11 ± 0.3 mm is 0.421 26 to 0.444 88 in: 0.422 to 0.444 in inward (NIST and IEEE
// 268 as published), which three places of millimetres tell from nearest.
func TestLimits_inward(t *testing.T) {
	l, err := proofread.ParseLimits("10.700–11.300 mm (0.422–0.444 in)")
	require.NoError(t, err)
	r, err := proofread.CheckLimits(l)
	require.NoError(t, err)
	require.False(t, r.Flagged(), r.String())
	require.Equal(t, proofread.Inward, r.Results[0].Basis)
	require.Equal(t, "least: 10.700 mm and 0.422 in agree: rounded inward", r.Results[0].String())
	// Outward is no rule for limits.
	l, err = proofread.ParseLimits("10.700–11.300 mm (0.421–0.445 in)")
	require.NoError(t, err)
	r, err = proofread.CheckLimits(l)
	require.NoError(t, err)
	require.False(t, r.Flagged(), "that is to nearest")
	l, err = proofread.ParseLimits("1.950–1.966 in (49.6–49.8 mm)")
	require.NoError(t, err)
	r, err = proofread.CheckLimits(l)
	require.NoError(t, err)
	require.Len(t, r.Suspicions(), 2, "49.53 up to 49.6 and 49.9364 down to 49.8: more than a step")
}

func TestColumn_order(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"74.915 to 7.4935 in", "the least, 74.915 in, is above the greatest, 7.4935 in: the 74.915 in looks a decimal place off: 7.4915 in; or the 7.4935 in should be 74.935 in"},
		{"7.4915 to 74.935 in", "the least, 7.4915 in, and the greatest, 74.935 in, are a power of ten apart: the 74.935 in looks a decimal place off: 7.4935 in; or the 7.4915 in should be 74.915 in"},
		{"69.934 to 69.921 mm", "the least, 69.934 mm, is above the greatest, 69.921 mm: exchanged, or one of them is wrong"},
		{"0.02 to 0.20 mm", "nothing amiss"}, // ten times as much can be meant
		{"0.03 to 0.07 mm", "nothing amiss"},
		{"0.07 mm", "nothing amiss"},
		{"1/4 to 1/8 in", "the least, 1/4 in, is above the greatest, 1/8 in: exchanged, or one of them is wrong"},
	} {
		l, err := proofread.ParseColumn(c.text)
		require.NoError(t, err)
		r, err := proofread.CheckColumn(l)
		require.NoError(t, err)
		require.Equal(t, c.want, r.String(), c.text)
	}
}

func TestWear(t *testing.T) {
	for _, c := range []struct{ newPart, worn, kind, want string }{
		{"0.03–0.07 mm", "max 0.10 mm", "", "nothing amiss"},
		{"0.03–0.07 mm", "max 0.07 mm", "", "nothing amiss"},
		{"max 0.01 mm", "max 0.10 mm", "", "nothing amiss"}, // ten times as much can be meant
		{"54.98–55.00 mm", "min 54.95 mm", "", "nothing amiss"},
		{"55.00 ±0.02 mm", "min 54.95 mm", "", "nothing amiss"},
		{"55.00 ±0.02 mm", "min 54.99 mm", "new past wear", "a new part of 54.98 mm is past the wear limit of 54.99 mm: one of the two is wrong"},
		{"0.03–0.07 mm", "0.06 mm", "new past wear", "a new part of 0.07 mm is past the wear limit of 0.06 mm: one of the two is wrong"},
		{"0.03–0.07 mm", "0.04 mm", "new past wear", "a new part of 0.03 mm is past the wear limit of 0.04 mm: one of the two is wrong"},
		{"74.915 in", "7.4935 in", "decimal place", "a new part of 74.915 in is past the wear limit of 7.4935 in: the 74.915 in looks a decimal place off: 7.4915 in; or the 7.4935 in should be 74.935 in"},
		{"74.915–74.935 mm", "max 7.4950 mm", "decimal place", "a new part of 74.935 mm is past the wear limit of 7.4950 mm: the 7.4950 mm looks a decimal place off: 74.950 mm"},
		{"7.4915–74.935 mm", "max 74.950 mm", "decimal place", "the least, 7.4915 mm, and the greatest, 74.935 mm, are a power of ten apart: the 7.4915 mm looks a decimal place off: 74.915 mm; or the 74.935 mm should be 7.4935 mm"},
		{"0.03–0.07 mm", "max 0.010 mm", "decimal place", "a new part of 0.07 mm is past the wear limit of 0.010 mm: the 0.010 mm looks a decimal place off: 0.10 mm"},
		{"0.03–0.07 mm", "max 1.0 mm", "decimal place", "0.07 mm when new and 1.0 mm when worn are far apart: the 1.0 mm looks a decimal place off: 0.10 mm"},
		{"54.98–55.00 mm", "min 5.495 mm", "decimal place", "54.98 mm when new and 5.495 mm when worn are far apart: the 5.495 mm looks a decimal place off: 54.95 mm"},
		{"54.98–55.00 mm", "min 549.5 mm", "decimal place", "a new part of 54.98 mm is past the wear limit of 549.5 mm: the 549.5 mm looks a decimal place off: 54.95 mm"},
		{"73.00–73.02 mm", "max 37.10 mm", "digits transposed", "a new part of 73.02 mm is past the wear limit of 37.10 mm: the 37.10 mm looks like 73.10 mm with two digits exchanged"},
		{"54.98–55.00 mm", "min 55.49 mm", "digits transposed", "a new part of 54.98 mm is past the wear limit of 55.49 mm: the 55.49 mm looks like 54.59 mm with two digits exchanged"},
		{"73.00–73.02 mm", "max 2.880 mm", "wrong unit", "a new part of 73.02 mm is past the wear limit of 2.880 mm: the 2.880 mm looks like a figure in inches: 73.152 mm"},
		{"2.874–2.875 in", "max 73.152 in", "wrong unit", "2.875 in when new and 73.152 in when worn are far apart: the 73.152 in looks like a figure in millimetres: 2.880 in"},
		{"1/4 in", "max 1/8 in", "new past wear", "a new part of 1/4 in is past the wear limit of 1/8 in: one of the two is wrong"},
	} {
		n, err := proofread.ParseColumn(c.newPart)
		require.NoError(t, err)
		w, err := proofread.ParseColumn(c.worn)
		require.NoError(t, err)
		r, err := proofread.CheckWear(n, w)
		require.NoError(t, err)
		require.Equal(t, c.kind != "", r.Flagged(), "%s; %s: %s", c.newPart, c.worn, r)
		if c.kind != "" {
			require.Equal(t, c.kind, r.Suspicions()[0].Likeliest().Kind.String())
		}
		first, _, _ := strings.Cut(r.String(), "\n")
		require.Equal(t, c.want, first)
	}
	// The zero results agree in words too.
	n, _ := proofread.ParseColumn("0.03–0.07 mm")
	w, _ := proofread.ParseColumn("max 0.10 mm")
	r, err := proofread.CheckWear(n, w)
	require.NoError(t, err)
	require.Equal(t, "0.03 mm to 0.07 mm are in order", r.Results[0].String())
	require.Equal(t, "0.07 mm when new and 0.10 mm when worn go together", r.Results[1].String())
}

func TestLift(t *testing.T) {
	height, err := proofread.ParseColumn("37.2–37.3 mm")
	require.NoError(t, err)
	maximum, err := proofread.ParseColumn("max 37.3 mm")
	require.NoError(t, err)
	for _, c := range []struct {
		lift   string
		height proofread.Column
		want   string
	}{
		{"6.2–6.3 mm", proofread.Column{}, "nothing amiss"},
		{"6.2–6.3 mm", height, "nothing amiss"},
		{"19.0 mm", proofread.Column{}, "nothing amiss"},
		{"19.0 mm", height, "19.0 mm is too much for a lift: it looks like the height of the lobe"},
		{"18.6 mm", maximum, "nothing amiss"},
		{"18.65 mm", maximum, "18.65 mm is too much for a lift: it looks like the height of the lobe"},
		{"1.466 ±0.001 in", proofread.Column{}, "size: 1.466 in is too much for a lift: it looks like the height of the lobe"},
	} {
		lift, err := proofread.ParseColumn(c.lift)
		require.NoError(t, err)
		r, err := proofread.CheckLift(lift, c.height)
		require.NoError(t, err)
		require.Equal(t, c.want, r.String(), c.lift)
	}
	lift, _ := proofread.ParseColumn("6.2 mm")
	r, err := proofread.CheckLift(lift, proofread.Column{})
	require.NoError(t, err)
	require.Equal(t, "6.2 mm can be a lift", r.Results[0].String())
}

// π·0.001 in = 0.00314 in (TM 5-3805-261-34 gives 0.003 in of gap for 0.001 in of
// bore); the rest by hand.
func TestRatio(t *testing.T) {
	pi, two := proofread.Ratio{Num: 1, Den: 1, Pi: true}, proofread.Ratio{Num: 2, Den: 1}
	for _, c := range []struct {
		from, to string
		ratio    proofread.Ratio
		kind     proofread.Kind
		want     string
	}{
		{"0.001 in", "0.003 in", pi, proofread.NoSlip, "0.003 in follows from 0.001 in"},
		{"0.50 mm", "1.57 mm", pi, proofread.NoSlip, "1.57 mm follows from 0.50 mm"},
		{"0.010 in", "0.314 in", pi, proofread.DecimalPlace, "from 0.010 in follows 0.0314 in: the 0.314 in printed for that looks a decimal place off; or the 0.010 in should be 0.100 in"},
		{"0.500 mm", "0.500 mm", pi, proofread.FactorPi, "from 0.500 mm follows 1.571 mm: the 0.500 mm printed for that looks as if π was left out or taken twice"},
		{"0.500 mm", "4.935 mm", pi, proofread.FactorPi, "from 0.500 mm follows 1.571 mm: the 4.935 mm printed for that looks as if π was left out or taken twice"},
		{"0.0016 in", "0.0032 in", two, proofread.NoSlip, ""},
		{"0.0016 in", "0.0016 in", two, proofread.FactorTwo, "from 0.0016 in follows 0.0032 in: the 0.0016 in printed for that looks half what it should be; or the 0.0016 in should be 0.0008 in"},
		{"0.0016 in", "0.0064 in", two, proofread.FactorTwo, ""},
		{"25.15 mm", "50.03 mm", two, proofread.DigitsTransposed, ""},
		{"0.750 mm", "0.333 mm", proofread.Ratio{Num: 3, Den: 4}, proofread.WrongNumber, ""},
		{"12.0 mm", "73.7 mm", pi, proofread.DigitsTransposed, "from 12.0 mm follows 37.7 mm: the 73.7 mm printed for that looks like 37.7 mm with two digits exchanged"},
	} {
		from, to := written(t, c.from), written(t, c.to)
		r, err := proofread.CheckRatio(from, to, c.ratio)
		require.NoError(t, err)
		require.Equal(t, c.kind, r.Likeliest().Kind, "%s to %s by %s: %s", c.from, c.to, c.ratio, r)
		if c.want != "" {
			require.Equal(t, c.want, r.String())
		}
	}
	require.Equal(t, []string{"π", "2", "3/4", "3/4·π"}, []string{pi.String(), two.String(), proofread.Ratio{Num: 3, Den: 4}.String(), proofread.Ratio{Num: 3, Den: 4, Pi: true}.String()})
	for _, bad := range []proofread.Ratio{{}, {Num: 1}, {Num: -1, Den: 2}, {Num: 2_000_000_000, Den: 1}} {
		_, err := proofread.CheckRatio(written(t, "1 mm"), written(t, "2 mm"), bad)
		require.ErrorIs(t, err, proofread.ErrRatio)
		_, err = proofread.CheckRelated(pair(t, "1 mm (2 mm)"), pair(t, "1 mm (2 mm)"), bad)
		require.ErrorIs(t, err, proofread.ErrRatio)
	}
	_, err := proofread.CheckRatio(written(t, "90 m"), written(t, "90 m"), proofread.Ratio{Num: 1_000_000_000, Den: 1})
	require.ErrorIs(t, err, proofread.ErrRange)
	_, err = proofread.CheckRatio(written(t, "90 m"), written(t, "90 m"), proofread.Ratio{Num: 1, Den: 1_000_000_000})
	require.ErrorIs(t, err, proofread.ErrRange)
}

// Only the column that was converted back is named so.
func TestRelated(t *testing.T) {
	pi := proofread.Ratio{Num: 1, Den: 1, Pi: true}
	r, err := proofread.CheckRelated(pair(t, "0.03 mm (0.0012 in)"), pair(t, "0.08 mm (0.0031 in)"), pi)
	require.NoError(t, err)
	require.Len(t, r.Results, 4)
	require.Len(t, r.Suspicions(), 1)
	require.Equal(t, proofread.RoundedTwice, r.Suspicions()[0].Likeliest().Kind)
	require.Equal(t, "0.0031 in follows from 0.0010 in: the 0.0012 in printed for that was rounded twice, by way of 0.03 mm", r.String())

	r, err = proofread.CheckRelated(pair(t, "0.0010 in (0.025 mm)"), pair(t, "0.0031 in (0.080 mm)"), pi)
	require.NoError(t, err)
	require.False(t, r.Flagged(), r.String())

	// Both columns off alike: no rounding, and the pair itself isn't a slip.
	r, err = proofread.CheckRelated(pair(t, "0.0010 in (0.025 mm)"), pair(t, "0.0314 in (0.798 mm)"), pi)
	require.NoError(t, err)
	require.Len(t, r.Suspicions(), 2)
	require.Equal(t, proofread.DecimalPlace, r.Suspicions()[0].Likeliest().Kind)
	// One column off, and not by a conversion.
	r, err = proofread.CheckRelated(pair(t, "0.010 in (0.254 mm)"), pair(t, "0.031 in (7.98 mm)"), pi)
	require.NoError(t, err)
	require.Len(t, r.Suspicions(), 2)

	bad := units.Written[units.Length]{Value: units.OutOfRange[units.Length]()}
	_, err = proofread.CheckRelated(pair(t, "1 mm (2 mm)"), proofread.Pair{First: bad}, pi)
	require.ErrorIs(t, err, proofread.ErrRange)
}

func written(t *testing.T, text string) units.Written[units.Length] {
	t.Helper()
	w, err := units.ParseWritten[units.Length](text)
	require.NoError(t, err)
	return w
}

func pair(t *testing.T, text string) proofread.Pair {
	t.Helper()
	p, err := proofread.ParsePair(text)
	require.NoError(t, err)
	return p
}
