package cylinder

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestBoreRidge(t *testing.T) {
	s := surveyOf(dial, "0.042 0.030\n0.018 0.015")
	s.Ridge = Ridge{boreAt("0.06 mm"), RidgePerSide}
	l := BoreLimits{Ridge: boreWorn("max 0.10 mm"), RidgeCounted: RidgeOnDiameter}
	r := inspect(t, s, l)
	require.Equal(t, boreAt("0.12 mm"), r.Ridge.Value)
	require.Equal(t, tolerance.PastWearLimit, r.Standing[MeasureRidge])
	l.RidgeCounted = RidgePerSide
	require.Equal(t, tolerance.Usable, inspect(t, s, l).Standing[MeasureRidge], "0.06 per side, as the limit is counted")
	s.Ridge.Counted = RidgeOnDiameter
	l.RidgeCounted = RidgeOnDiameter
	require.Equal(t, tolerance.Usable, inspect(t, s, l).Standing[MeasureRidge])
	require.Equal(t, boreLen("0.06 mm"), RidgeSided(RidgeDiametral(boreLen("0.06 mm"))))
	require.Equal(t, boreLen("0.06 mm"), RidgeFromSizes(boreLen("86.10 mm"), boreLen("86.04 mm")))
}

// What would settle an undecided bore: a better ring, a better gauge, or
// nothing, worked out by hand from ±2.5 common and ±1.5 µm own.
func TestBoreSurvey_finding(t *testing.T) {
	s := surveyOf(dial, "0.042 0.030\n0.018 0.015")
	for _, c := range []struct {
		measure BoreMeasure
		limit   string
		want    string
	}{
		{MeasureSize, "max 86.045 mm", "it reads 0.003 mm from the limit, and is known to ±0.004 mm, of which ±0.0025 mm is the gauge's setting: make that good to less than ±0.0015 mm"},
		{MeasureSize, "max 86.043 mm", "it reads 0.001 mm from the limit, and is known to ±0.004 mm: read again with a gauge good to less than ±0.001 mm"},
		{MeasureSize, "max 86.042 mm", "it reads on the limit itself"},
		{MeasureSize, "min 86.014 mm", "it reads 0.001 mm from the limit"},
		{MeasureOutOfRound, "max 0.014 mm", "it reads 0.002 mm from the limit, and is known to ±0.003 mm: read again with a gauge good to less than ±0.001 mm"},
		{MeasureSize, "max 86.10 mm", ""},
	} {
		l := BoreLimits{}
		*map[BoreMeasure]*tolerance.Spec{MeasureSize: &l.Size, MeasureOutOfRound: &l.OutOfRound}[c.measure] = boreWorn(c.limit)
		r := inspect(t, s, l)
		f, err := s.Finding(&l, &r, c.measure)
		require.NoError(t, err)
		require.Equal(t, r.Standing[c.measure], f.Standing)
		if c.want == "" {
			require.Empty(t, f.Settle)
		} else {
			require.Equal(t, tolerance.CantTell, f.Standing)
			require.Contains(t, f.Settle, c.want)
		}
	}
	// Of a wear the size last finished to may be what is in doubt: ±5, ±9 and
	// ±6 µm beside the ±4 of the gauge.
	for finished, want := range map[string]string{
		"[86.000 mm, 86.010 mm]": "it reads 0.007 mm from the limit, and is known to ±0.009 mm, of which ±0.0025 mm is the gauge's setting: make that good to less than ±0.0005 mm",
		"[85.996 mm, 86.014 mm]": "it reads 0.007 mm from the limit, and is known to ±0.013 mm, of which ±0.009 mm is the size last finished to: gauge the bore below the ring travel",
		"[85.999 mm, 86.011 mm]": "known to ±0.01 mm: read again with a gauge good to less than ±0.001 mm",
	} {
		s.Finished = boreAt(finished)
		l := BoreLimits{Wear: boreWorn("max 0.044 mm")} // it reads 0.037
		r := inspect(t, s, l)
		f, err := s.Finding(&l, &r, MeasureWear)
		require.NoError(t, err)
		require.Contains(t, f.Settle, want)
	}
	// Every measure has a finding, or says that too little was read for it.
	l := BoreLimits{Taper: boreWorn("max 0.1 mm"), TaperPer: units.Inch}
	s.Finished = boreAt("86 mm")
	s.Ridge = Ridge{boreAt("0.02 mm"), RidgeOnDiameter}
	r := inspect(t, s, l)
	for _, m := range BoreMeasures() {
		for rule := range TaperRule(taperRules) {
			l.TaperRule = rule
			f, err := s.Finding(&l, &r, m)
			if m == MeasureTaper && rule == TaperPerLength {
				require.ErrorIs(t, err, tolerance.ErrNoReading)
				continue
			}
			require.NoError(t, err)
			require.Contains(t, f.Measure, m.String())
			require.True(t, strings.HasPrefix(f.Where, "cylinder 1"))
		}
	}
	s.Where = ""
	l.TaperRule = TaperAlong
	f, err := s.Finding(&l, &r, MeasureTaper)
	require.NoError(t, err)
	require.Equal(t, "along the crank", f.Where)
	_, err = s.Finding(&l, &r, 99)
	require.Error(t, err)
}
