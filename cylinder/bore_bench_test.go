package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// fourBores is a block as surveyed: 4 bores × 6 levels × 2 directions.
func fourBores() ([]BoreSurvey, BoreLimits) {
	table := `
		0.042 0.030
		0.036 0.028
		0.031 0.024
		0.026 0.021
		0.022 0.018
		0.018 0.015`
	var bores []BoreSurvey
	for range 4 {
		s := surveyOf(dial, table)
		for i := range s.Levels {
			s.Levels[i].Depth = units.Length(i+1) * 20 * units.Millimetre
		}
		s.Finished = tolerance.Exactly(86 * units.Millimetre)
		bores = append(bores, s)
	}
	return bores, BoreLimits{
		Size:       boreWorn("max 86.10 mm"),
		OutOfRound: boreWorn("max 0.05 mm"),
		Taper:      boreWorn("max 0.05 mm"),
		Wear:       boreWorn("max 0.10 mm"),
		TaperPer:   100 * units.Millimetre,
	}
}

var (
	boreReports []BoreReport
	boreFloats  [3]float64
)

func TestInspectBores_allocatesNothing(t *testing.T) {
	bores, l := fourBores()
	dst, err := InspectBores(nil, bores, &l)
	require.NoError(t, err)
	for i := range dst {
		require.Equal(t, tolerance.Usable, dst[i].Worst(&l))
	}
	require.Zero(t, testing.AllocsPerRun(100, func() {
		if dst, err = InspectBores(dst, bores, &l); err != nil {
			t.Fatal(err)
		}
	}))
}

func BenchmarkInspectBores(b *testing.B) {
	bores, l := fourBores()
	b.Run("lib=tenthou/op=survey4x6x2", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			var err error
			if boreReports, err = InspectBores(boreReports, bores, &l); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=float64/op=survey4x6x2", func(b *testing.B) {
		b.ReportAllocs()
		readings := make([][6][2]float64, 4)
		for k := range bores {
			for i, r := range bores[k].Readings {
				readings[k][i/2][i%2] = r.Shown.Float(units.InMillimetres)
			}
		}
		for b.Loop() {
			for k := range readings {
				greatest, least, round := readings[k][0][0], readings[k][0][0], 0.0
				var top, low [2]float64
				for i, row := range readings[k] {
					for j, v := range row {
						greatest, least = max(greatest, v), min(least, v)
						if i == 0 {
							top[j], low[j] = v, v
						}
						top[j], low[j] = max(top[j], v), min(low[j], v)
					}
					round = max(round, max(row[0], row[1])-min(row[0], row[1]))
				}
				boreFloats = [3]float64{greatest + 86, round, max(top[0]-low[0], top[1]-low[1])}
			}
		}
	})
}
