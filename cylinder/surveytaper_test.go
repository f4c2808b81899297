package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

// With readings missing the steepest direction need not be the one that tapers
// most: 0.030 over 100 mm is 0.030 for each 100 mm, 0.020 over 50 mm 0.040. Each
// is read to ±1.5 µm twice, so ±3 and ±6 µm for each 100 mm.
func TestBoreSurvey_steepest(t *testing.T) {
	s := surveyOf(dial, `
		0.030 -
		0.015 0.020
		0.000 0.000`)
	for i := range s.Levels {
		s.Levels[i].Depth = units.Length(10+50*i) * units.Millimetre
	}
	r := inspect(t, s, BoreLimits{TaperPer: 100 * units.Millimetre})
	require.Equal(t, boreAt("[0.027 mm, 0.033 mm]"), r.Taper[TaperAlong].Value)
	require.Equal(t, 0, r.Taper[TaperAlong].At.Heading)
	require.Equal(t, boreAt("[0.034 mm, 0.046 mm]"), r.Taper[TaperPerLength].Value)
	require.Equal(t, 1, r.Taper[TaperPerLength].At.Heading)
	// Less steep, and less sure: it may be the steepest still.
	s.Readings[3].Shown = 14 * units.Micrometre // 28 ±6 against 30 ±3 for each 100 mm
	r = inspect(t, s, BoreLimits{TaperPer: 100 * units.Millimetre})
	require.Equal(t, boreAt("[0.027 mm, 0.034 mm]"), r.Taper[TaperPerLength].Value)
	require.Equal(t, 1, r.Taper[TaperPerLength].At.Heading)
}
