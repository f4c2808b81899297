package crank

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func TestRunOut_otherReadings(t *testing.T) {
	require.Equal(t, floatOf("[0.04 mm, 0.06 mm]"), RunOut(floatOf("0 ±0.005 mm"), floatOf("0.05 ±0.005 mm")))
	require.Equal(t, lengthOf("0.015 mm"), SupportLine(lengthOf("0.01 mm"), lengthOf("0.03 mm"), lengthOf("100 mm"), lengthOf("300 mm")))
	// Beyond the second support by half the span: 0.03 + 0.01.
	require.Equal(t, lengthOf("0.04 mm"), SupportLine(lengthOf("0.01 mm"), lengthOf("0.03 mm"), lengthOf("300 mm"), lengthOf("-100 mm")))
	require.Equal(t, lengthOf("0.06 mm"), FaceRunOutAt(lengthOf("0.04 mm"), lengthOf("100 mm"), lengthOf("150 mm")))
	require.InDelta(t, 0.0002, float64(FaceTilt(tolerance.Float(0.04), tolerance.Float(100))), 1e-10)
	// A face that swings ±0.02 mm on a shaft that moved by 0.1 mm.
	require.Equal(t, lengthOf("0.02 mm"), FaceReading(lengthOf("0.12 mm"), lengthOf("0.08 mm")))
	require.Equal(t, lengthOf("0.1 mm"), FaceShift(lengthOf("0.12 mm"), lengthOf("0.08 mm")))

	var dials []uncertainty.Dual
	for i, v := range []float64{0, 5, 10, 5} {
		d, err := uncertainty.NewDual(fmt.Sprint("reading ", i), v, "µm", uncertainty.RectangularShape, 1)
		require.NoError(t, err)
		dials = append(dials, d)
	}
	cosine, sine := RunOutComponents(dials[0], dials[1:]...)
	u := RunOutOf(cosine, sine)
	require.InDelta(t, 10, u.Value(), 1e-12) // (0 − 10)/2 = −5, twice
	// r₀ − r₂ alone counts: √2/√3.
	require.InDelta(t, math.Sqrt(2.0/3), u.StandardUncertainty(), 1e-12)

	given := func(words, symbol string, v float64) working.RealTerm {
		return working.GivenReal(words, symbol, v, "mm")
	}
	wc, ws := RunOutComponents(given("at the mark", "r₀", 0), given("at 90°", "r₁", 0.005), given("at 180°", "r₂", 0.01), given("at 270°", "r₃", 0.005))
	s, err := working.SolveReal(RunOutOf(wc.Named("toward the mark", "x", "mm"), ws.Named("toward 90°", "y", "mm")).Named("run-out", "R", "mm"), working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.0100 mm")
}

func TestRunOutVector(t *testing.T) {
	v := RunOutVector{Cosine: 3e6, Sine: 4e6, Error: 1e6}
	require.Equal(t, floatOf("[0.004 mm, 0.006 mm]"), v.Bend())
	require.Equal(t, floatOf("[0.008 mm, 0.012 mm]"), v.RunOut())
	at, within := v.HighPoint()
	require.InDelta(t, 53.13010235, at.Float(units.InDegrees), 1e-8)
	require.InDelta(t, 11.53695903, within.Float(units.InDegrees), 1e-8) // arcsin 1/5
	at, within = RunOutVector{}.HighPoint()
	require.Zero(t, at)
	require.Equal(t, angleOf("180"), within)
	at, within = RunOutVector{Sine: -1, Error: 5}.HighPoint()
	require.Equal(t, angleOf("270"), at)
	require.Equal(t, angleOf("180"), within)
	require.Equal(t, floatOf("[0 mm, 0.000000006 mm]"), RunOutVector{Sine: -1, Error: 5}.Bend())
	require.False(t, RunOutVector{Cosine: math.MaxInt64}.Bend().InRange())
	least, between, most := (RunOutVector{Cosine: 1e6}).angleBetween(RunOutVector{Cosine: 1e6, Sine: -1})
	require.InDelta(t, 0, between.Float(units.InDegrees), 1e-4)
	require.InDelta(t, 0, most.Float(units.InDegrees), 1e-4)
	require.InDelta(t, 0, least.Float(units.InDegrees), 1e-4)
	_, between, _ = (RunOutVector{Cosine: 1, Sine: 1}).angleBetween(RunOutVector{Cosine: 1, Sine: -1})
	require.Equal(t, angleOf("90"), between)
}
