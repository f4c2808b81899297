package cylinder

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The judge unrolls the marks and takes the angle between them.
func TestCrossHatchReference(t *testing.T) {
	vectors.Load(t, "reference/cylinder_crosshatch_angles.txt").Each(t, func(t *testing.T, c vectors.Case) {
		h := Hone{
			Bore: mustMiddle(parsedLength(t, c.Text("bore")+" mm")), SpindleRPM: c.Float("spindle"),
			Travel: mustMiddle(parsedLength(t, c.Text("travel")+" mm")), Rate: CyclesPerMinute(c.Float("cycles")),
		}
		x, err := h.CrossHatch()
		require.NoError(t, err)
		require.InDelta(t, c.Float("included"), x.Included().Float(units.InDegrees), 5e-10)

		// Every inverse undoes it. The angle is held to 2.8·10⁻¹⁰ of a degree.
		rate, err := h.RateFor(x)
		require.NoError(t, err)
		require.InEpsilon(t, h.Rate.Strokes(), rate.Strokes(), 2e-10)
		rpm, err := h.SpindleFor(x)
		require.NoError(t, err)
		require.InEpsilon(t, h.SpindleRPM, rpm, 2e-10)
		travel, err := h.TravelFor(x)
		require.NoError(t, err)
		require.InEpsilon(t, float64(h.Travel), float64(travel), 2e-10)

		// As brackets: exactly known, and with the speed dropping by a tenth.
		r := HoneRange{Bore: tolerance.Exactly(h.Bore), Travel: tolerance.Exactly(h.Travel), SpindleRPM: [2]float64{h.SpindleRPM, h.SpindleRPM}, Rate: [2]StrokeRate{h.Rate, h.Rate}}
		i, err := r.Included()
		require.NoError(t, err)
		holds(t, c.Float("included"), i, float64(units.Degree), "included")
		r.SpindleRPM[0] *= 0.9
		wide, err := r.Included()
		require.NoError(t, err)
		require.True(t, i.Within(wide))
		slow := h
		slow.SpindleRPM *= 0.9
		steep, err := slow.CrossHatch()
		require.NoError(t, err)
		require.True(t, wide.Contains(steep.Included()))
	})
}

// 100 mm, 100 r/min, 150 mm at 40 cycles: 2·atan(12/31.4159) (derived); a
// stroke rate taken for a cycle rate gives nearly half of it.
func TestCrossHatchCyclesAndStrokes(t *testing.T) {
	h := Hone{Bore: 100 * units.Millimetre, SpindleRPM: 100, Travel: 150 * units.Millimetre, Rate: CyclesPerMinute(40)}
	x, err := h.CrossHatch()
	require.NoError(t, err)
	require.InDelta(t, 41.811, x.Included().Float(units.InDegrees), 0.0005)
	h.Rate = StrokesPerMinute(80)
	same, err := h.CrossHatch()
	require.NoError(t, err)
	require.Equal(t, x, same)
	h.Rate = StrokesPerMinute(40)
	half, err := h.CrossHatch()
	require.NoError(t, err)
	require.InDelta(t, 2*math.Atan(6/31.41592654)*180/math.Pi, half.Included().Float(units.InDegrees), 1e-6)
	// For 45° the axial speed is 13.0129 m/min (derived): 43.376 cycles.
	rate, err := h.RateFor(IncludedAngle(45 * units.Degree))
	require.NoError(t, err)
	require.InDelta(t, 13.0129, rate.Strokes()*0.150, 0.00005)
	require.Equal(t, "80 strokes (40 cycles) per minute", CyclesPerMinute(40).String())
	require.Equal(t, 40.0, StrokesPerMinute(80).Cycles())
}

func TestCrossHatchTargetsPublished(t *testing.T) {
	vectors.Load(t, "published/cylinder_crosshatch_targets.txt").Each(t, func(t *testing.T, c vectors.Case) {
		of := IncludedAngle
		if c.Choice("means", "included", "from axis") == "from axis" {
			of = AngleFromAxis
		}
		degrees := func(col string) units.Angle { return units.Angle(c.Int(col)) * units.Degree }
		require.Equal(t, degrees("included_least"), of(degrees("least")).Included())
		require.Equal(t, degrees("included_greatest"), of(degrees("greatest")).Included())
	})
}

// Every pair of names: each angle undoes the one that made it, and the four
// add up as their definitions say.
func TestCrossHatchNames(t *testing.T) {
	for a := units.Angle(2); a < units.Turn/4; a += units.Turn / 1441 * 2 {
		require.Equal(t, a, IncludedAngle(a).Included())
		require.Equal(t, a, HalfAngle(a).Half())
		require.Equal(t, a, AngleAboutAxis(a).AboutAxis())
		require.Equal(t, a, AngleFromAxis(a).FromAxis())
		x := HalfAngle(a)
		require.Equal(t, 2*a, x.Included())
		require.Equal(t, units.Turn/2, x.Included()+x.AboutAxis())
		require.Equal(t, units.Turn/4, x.Half()+x.FromAxis())
	}
	require.Equal(t, "45.00° included (22.50° from the way round; about the axis 135.00°, 67.50° from it)", IncludedAngle(45*units.Degree).String())
	require.Contains(t, IncludedAngle(units.OutOfRange[units.Angle]()).String(), "out of range")
	band := tolerance.MustBetween(40*units.Degree, 50*units.Degree)
	require.Equal(t, tolerance.Within, HalfAngle(22*units.Degree).Judge(band))
	require.Equal(t, tolerance.Below, HalfAngle(19*units.Degree).Judge(band))
	require.Equal(t, tolerance.Above, AngleAboutAxis(45*units.Degree).Judge(band))
}

func TestCrossHatchRefuses(t *testing.T) {
	good := Hone{Bore: 100 * units.Millimetre, SpindleRPM: 100, Travel: 150 * units.Millimetre, Rate: CyclesPerMinute(40)}
	for _, spoil := range []func(*Hone){
		func(h *Hone) { h.Bore = 0 }, func(h *Hone) { h.Travel = -1 }, func(h *Hone) { h.SpindleRPM = math.NaN() },
		func(h *Hone) { h.SpindleRPM = math.Inf(1) }, func(h *Hone) { h.Rate = StrokeRate{} }, func(h *Hone) { h.Rate = CyclesPerMinute(math.NaN()) },
		func(h *Hone) { h.Bore = units.OutOfRange[units.Length]() },
	} {
		h := good
		spoil(&h)
		_, err := h.CrossHatch()
		require.ErrorIs(t, err, ErrInput)
	}
	for _, a := range []units.Angle{0, -1, units.Turn / 2, units.OutOfRange[units.Angle]()} {
		require.ErrorIs(t, second(good.RateFor(IncludedAngle(a))), ErrInput)
		require.ErrorIs(t, second(good.SpindleFor(IncludedAngle(a))), ErrInput)
		require.ErrorIs(t, second(good.TravelFor(IncludedAngle(a))), ErrInput)
	}
	// An angle that would take a travel beyond any length.
	fast := good
	fast.SpindleRPM, fast.Rate, fast.Bore = 1e6, StrokesPerMinute(1e-6), 90*units.Metre
	require.ErrorIs(t, second(fast.TravelFor(IncludedAngle(units.Turn/2-1))), ErrInput)

	r := HoneRange{Bore: parsedLength(t, "100 mm"), Travel: parsedLength(t, "150 mm"), SpindleRPM: [2]float64{100, 110}, Rate: [2]StrokeRate{CyclesPerMinute(40), CyclesPerMinute(41)}}
	for _, spoil := range []func(*HoneRange){
		func(h *HoneRange) { h.Bore = tolerance.Bracket{} }, func(h *HoneRange) { h.Travel = parsedLength(t, "0 mm") },
		func(h *HoneRange) { h.SpindleRPM[1] = 0 }, func(h *HoneRange) { h.SpindleRPM[0] = 120 }, func(h *HoneRange) { h.Rate[0] = CyclesPerMinute(50) },
	} {
		h := r
		spoil(&h)
		require.ErrorIs(t, second(h.Included()), ErrInput)
	}
}

func FuzzCrossHatch(f *testing.F) {
	f.Add(int64(100e9), 100.0, int64(150e9), 40.0)
	f.Fuzz(func(t *testing.T, bore int64, rpm float64, travel int64, cycles float64) {
		h := Hone{units.Length(bore), rpm, units.Length(travel), CyclesPerMinute(cycles)}
		x, err := h.CrossHatch()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, x.Included() >= 0 && x.Included() <= units.Turn/2)
		if x.Included() < units.Degree || x.Included() > 179*units.Degree {
			return
		}
		rate, err := h.RateFor(x)
		require.NoError(t, err)
		require.InEpsilon(t, h.Rate.Strokes(), rate.Strokes(), 1e-7)
	})
}
