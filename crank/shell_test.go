package crank

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Nip, gap and interference against mpmath.
func TestShellNipReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/crank_shell_nip.txt").All(t) {
		a, b, d := units.Length(c.Int64("a")), units.Length(c.Int64("b")), units.Length(c.Int64("d"))
		nipA, nipB := ShellNip(a, d), ShellNip(b, d)
		c.Near("nip_a", float64(nipA))
		c.Near("nip_b", float64(nipB))
		gap := NipGap(nipA, nipB)
		c.Near("gap", float64(gap))
		c.Near("interference", float64(NipInterference(gap, d)))
		require.Equal(t, a, HalfPeriphery(nipA, d))
		require.Equal(t, nipA, NipOfGap(gap, nipB))
		require.InDelta(t, float64(gap), float64(NipGapOf(NipInterference(gap, d))), 3)
	}
}

func TestShellsOfManual(t *testing.T) {
	vectors.Load(t, "published/crank_shell_manual.txt").Each(t, func(t *testing.T, c vectors.Case) {
		a, b := units.MustParseLength(c.Text("first")), units.MustParseLength(c.Text("second"))
		want := units.MustParseLength(c.Text("expected"))
		switch c.Choice("rule", "spread", "wall") {
		case "spread":
			require.Equal(t, want, FreeSpread(a, b))
			require.Equal(t, a, FreeWidth(want, b))
		case "wall":
			require.Equal(t, want, WallByBall(a, b))
			require.Equal(t, a, BallReading(want, b))
		}
	})
}

func TestShellSurveyCheck(t *testing.T) {
	l := ShellLimits{
		Wall: tolerance.Spec{New: tolerance.MustParseBand("1.995–2.005 mm")}, Variation: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.006 mm")},
		Spread: tolerance.Spec{New: tolerance.MustParseBand("0.3–1.2 mm")}, Gap: tolerance.Spec{New: tolerance.MustParseBand("0.10–0.20 mm")},
	}
	s := ShellSurvey{Where: "main 3", Ball: journalAt("6 ±0.001 mm"), Upper: oilAt("8.001 mm", "7.999 mm"), Lower: oilAt("8.000 mm"),
		Housing: journalAt("64.005 ±0.002 mm"), FreeUpper: journalAt("64.6 ±0.05 mm"), FreeLower: journalAt("64.5 ±0.05 mm"), Gap: journalAt("[0.15 mm, 0.18 mm)")}
	r, err := s.Check(&l)
	require.NoError(t, err)
	require.Equal(t, journalAt("[1.998 mm, 2 mm]"), r.Walls[0].Least)
	require.Equal(t, journalAt("0.002 mm"), r.Variations[0].Least, "the ball drops out")
	require.Empty(t, r.Variations[1].Measure, "one reading tells nothing of variation")
	require.Equal(t, journalAt("[0.543 mm, 0.647 mm]"), r.Spreads[0].Least)
	require.Equal(t, tolerance.Usable, r.Worst, "variation has a wear limit alone")
	lo, hi := journalEnds(r.Interference)
	// 0.15/π and 0.18/π.
	require.InDelta(t, 0.0477465, lo.Float(units.InMillimetres), 1e-7)
	require.InDelta(t, 0.0572958, hi.Float(units.InMillimetres), 1e-7)
	require.Contains(t, r.Next, "within the limits")

	next := func(change func(*ShellSurvey), limits ShellLimits) ShellReport {
		c := s
		change(&c)
		r, err := c.Check(&limits)
		require.NoError(t, err)
		return r
	}
	require.Contains(t, next(func(s *ShellSurvey) { s.Gap = journalAt("0.05 mm") }, l).Next, "too little nip")
	require.Contains(t, next(func(s *ShellSurvey) { s.Gap = journalAt("[0.25 mm, ∞)") }, l).Next, "too much nip")
	require.Contains(t, next(func(s *ShellSurvey) { s.Gap = journalAt("[0.09 mm, 0.12 mm)") }, l).Next, "can't be told yet")
	loose := next(func(s *ShellSurvey) { s.FreeLower = journalAt("63.9 mm") }, l)
	require.Equal(t, []string{"lower"}, loose.Loose)
	require.Contains(t, loose.Next, "is not used")
	worn := next(func(s *ShellSurvey) { s.Upper = oilAt("8.001 mm", "7.990 mm") }, l)
	require.Equal(t, tolerance.PastWearLimit, worn.Worst)
	require.Contains(t, worn.Next, "never file")
	require.Contains(t, next(func(*ShellSurvey) {}, ShellLimits{}).Next, "no limits are given")
	bare := next(func(s *ShellSurvey) { *s = ShellSurvey{Upper: oilAt("2 mm")} }, l)
	require.Equal(t, journalAt("2 mm"), bare.Walls[0].Least)
	require.True(t, next(func(s *ShellSurvey) { *s = ShellSurvey{Gap: s.Gap} }, l).Interference.IsZero())
}

func TestShellSurveyRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		s    ShellSurvey
		want string
	}{
		"nothing":    {ShellSurvey{Where: "rod 1"}, "rod 1, shells (nothing measured)"},
		"no housing": {ShellSurvey{FreeLower: journalAt("64 mm")}, "housing bore (not given)"},
		"ball":       {ShellSurvey{Ball: journalAt("6 mm"), Lower: oilAt("8 mm", "5 mm")}, "lower shell, reading 2 5 mm is not above the ball"},
		"open":       {ShellSurvey{Upper: oilAt("[2 mm, ∞)")}, "upper shell, reading 1"},
		"gap":        {ShellSurvey{Gap: journalAt("-0.1 mm")}, "gap -0.1 mm is not measured, from 0 mm"},
		"free":       {ShellSurvey{Housing: journalAt("64 mm"), FreeUpper: journalAt("-64 mm")}, "upper free width"},
	} {
		_, err := c.s.Check(&ShellLimits{})
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	bad := tolerance.Spec{New: tolerance.MustParseBand("1–3 mm"), Wear: tolerance.MustParseBand("max 2 mm")}
	s := ShellSurvey{Upper: oilAt("2 mm", "2 mm"), Gap: journalAt("0.1 mm"), Housing: journalAt("64 mm"), FreeUpper: journalAt("65 mm")}
	for _, l := range []ShellLimits{{Wall: bad}, {Variation: bad}, {Spread: bad}, {Gap: bad}} {
		_, err := s.Check(&l)
		require.Error(t, err)
	}
}
