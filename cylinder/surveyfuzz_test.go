package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// FuzzBoreSurvey: whatever the readings, a report whose parts agree or an
// error.
func FuzzBoreSurvey(f *testing.F) {
	f.Add([]byte{30, 31, 28, 25, 24, 20}, int64(86_000_000_000), int64(2_000_000), int64(0), uint8(2), uint8(63), int64(50_000_000))
	f.Add([]byte{255, 0, 128}, int64(0), int64(-1), int64(3), uint8(1), uint8(5), int64(-7))
	f.Add([]byte{9, 9, 9, 9}, int64(1)<<61, int64(1)<<61, int64(1)<<60, uint8(4), uint8(0), int64(1)<<62)
	f.Fuzz(func(t *testing.T, shown []byte, ring, ringError, step int64, headings, taken uint8, limit int64) {
		n := int(headings%6) + 1
		s := BoreSurvey{Gauge: instrument.Instrument{Step: units.Length(step), Setting: instrument.Setting{Standard: units.Length(ring), Error: units.Length(ringError)}}}
		for j := range n {
			s.Headings = append(s.Headings, units.Angle(j)*25*units.Degree)
		}
		for len(shown) >= n && len(s.Levels) < 50 {
			s.Levels = append(s.Levels, BoreLevel{})
			for j := range n {
				s.Readings = append(s.Readings, BoreReading{units.Length(shown[j]) * units.Micrometre, taken>>(j%8)&1 == 1})
			}
			shown = shown[n:]
		}
		l := BoreLimits{Size: tolerance.Spec{Wear: tolerance.AtMost(units.Length(limit))}, OutOfRound: tolerance.Spec{Wear: tolerance.AtMost(units.Length(limit))}}
		var r BoreReport
		if err := s.Inspect(&l, &r); err != nil {
			return
		}
		least, _ := bothOf(r.Least.Size)
		_, greatest := bothOf(r.Greatest.Size)
		lo, hi := bothOf(r.Mean)
		require.True(t, least <= lo && lo <= hi && hi <= greatest, "%v %v %v", r.Least.Size, r.Mean, r.Greatest.Size)
		for _, m := range BoreMeasures() {
			if f, err := s.Finding(&l, &r, m); err == nil {
				require.Equal(t, r.Standing[m], f.Standing)
			}
		}
		for _, note := range r.Notes {
			require.NotEmpty(t, note.Text(&s))
		}
		if r.Worst(&l) != tolerance.CantTell {
			require.False(t, l.Size.IsZero() && l.OutOfRound.IsZero())
		}
	})
}
