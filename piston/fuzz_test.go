package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Whatever the readings, a groove is answered or refused: no panic, no
// outcome that contradicts the clearances beside it, and never a thicker ring.
func FuzzGroove(f *testing.F) {
	f.Add(int64(76_200_000), int64(101_600_000), uint8(2), uint8(1), int64(1_470_000_000), int64(1_478_000_000), int64(1_490_000_000), int64(70_000_000))
	f.Add(int64(-1<<63), int64(1<<62), uint8(0), uint8(2), int64(0), int64(-1), int64(1<<61), int64(1<<63-1))
	f.Fuzz(func(t *testing.T, lo, hi int64, loEnd, hiEnd uint8, used, freshLo, freshHi, limit int64) {
		c, err := tolerance.NewInterval(units.Length(lo), tolerance.End(loEnd), units.Length(hi), tolerance.End(hiEnd))
		if err != nil {
			return
		}
		fresh, err := tolerance.Between(units.Length(freshLo), units.Length(freshHi))
		if err != nil {
			return
		}
		g := Groove{Where: "x", Stations: []tolerance.Bracket{c}, Limits: tolerance.Spec{Wear: tolerance.AtMost(units.Length(limit))},
			UsedHeight: tolerance.Exactly(units.Length(used)), NewHeight: fresh, NewWidth: fresh}
		r, err := g.Assess()
		if err != nil {
			return
		}
		switch r.NewRing.Outcome {
		case RingRestores:
			require.True(t, r.NewRing.Greatest.Within(g.Limits.Wear.Interval()))
		case RingStillOut:
			require.Equal(t, tolerance.Above, g.Limits.Wear.Judge(r.NewRing.Greatest))
		case RingTooTight, RingUneven:
			t.Fatal("a greatest limit alone can't make a ring too tight")
		}
		require.LessOrEqual(t, r.Wear.LeastPercent, r.Wear.GreatestPercent)
		if r.Finding.Standing == tolerance.CantTell {
			require.Equal(t, MeasureAgain, r.Remedy)
		}
	})
}
