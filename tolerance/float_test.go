package tolerance_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What the same judgements would be worth in float64. The figures stand in
// the package comment; they are the same on every machine.

const inGrid = 100_000 // 0.0001 in to 10 in, by 0.0001 in

func inches(tenths int) float64 { return float64(tenths) / 1e4 }

func length(tenths int) units.Length { return units.Length(tenths) * units.Thou / 10 }

func TestFloat64_onTheUpperLimit(t *testing.T) {
	for _, c := range []struct {
		deviation int // in 0.0001 in
		rejected  string
	}{{5, "17.5 %"}, {10, "16.2 %"}, {20, "19.9 %"}} {
		wrong, ours := 0, 0
		for size := 1; size <= inGrid; size++ {
			if reading := inches(size + c.deviation); reading > inches(size)+inches(c.deviation) {
				wrong++
			}
			if !AtMost(length(size).Add(length(c.deviation))).Allows(length(size + c.deviation)) {
				ours++
			}
		}
		require.Zero(t, ours)
		require.Equal(t, c.rejected, share(wrong), "size + %g in", inches(c.deviation))
	}
}

func TestFloat64_clearanceOnTheLimit(t *testing.T) {
	wrong, ours, limit := 0, 0, AtMost(3*units.Thou)
	for ring := 1; ring <= inGrid; ring++ {
		if groove := inches(ring + 30); groove-inches(ring) > 0.0030 {
			wrong++
		}
		if limit.Judge(Exactly(length(ring+30)).Sub(Exactly(length(ring)))) != Within {
			ours++
		}
	}
	require.Zero(t, ours)
	require.Equal(t, "82.5 %", share(wrong))
}

func TestFloat64_thereAndBack(t *testing.T) {
	wrong, ours := 0, 0
	for k := 1; k <= inGrid; k++ {
		if mm := inches(k) * 25.4; mm/25.4 != inches(k) {
			wrong++
		}
		inMillimetres := length(k).Text(units.InMillimetres, units.AllPlaces)
		if units.MustParseLength(units.MustParseLength(inMillimetres).Text(units.InInches, 4)) != length(k) {
			ours++
		}
	}
	require.Zero(t, ours)
	require.Equal(t, "12.5 %", share(wrong))
}

func share(wrong int) string { return fmt.Sprintf("%.1f %%", 100*float64(wrong)/inGrid) }
