package valvetrain

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func headAngle(s string) tolerance.Interval[units.Angle] {
	i, err := tolerance.ParseInterval[units.Angle](s)
	if err != nil {
		panic(err)
	}
	return i
}

func valved() Valve {
	return Valve{Where: "inlet 2", Margin: []tolerance.Bracket{stemAt("1.30 ±0.02 mm"), stemAt("1.25 ±0.02 mm")},
		HeadRun: []tolerance.Bracket{stemAt("0 mm"), stemAt("0.03 mm"), stemAt("-0.01 mm")}, StemRun: []tolerance.Bracket{stemAt("0 mm"), stemAt("0.02 mm")},
		TipWear: stemAt("0.05 ±0.01 mm"), TipOff: stemAt("0.2 mm"), Length: stemAt("110.2 mm"), FaceAngle: headAngle("45° ±0.1°"),
		MarginLimits: stemWorn("min 1.0 mm"), HeadRunLimits: stemWorn("max 0.05 mm"), StemRunLimits: stemWorn("max 0.05 mm"),
		TipLimits: stemWorn("max 0.1 mm"), LengthLimits: stemWorn("min 110 mm"),
		AngleLimits: tolerance.SpecOf[units.Angle]{New: tolerance.MustBetween(units.Angle(44.5*units.DEG), units.Angle(45.5*units.DEG))}, TipMost: stemLen("0.5 mm")}
}

func TestValveInspect(t *testing.T) {
	r, err := valved().Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("[0.23 mm, 0.27 mm]"), r.GrindLeft)
	require.Equal(t, stemAt("0.3 mm"), r.TipLeft)
	require.Equal(t, tolerance.Within, r.TipGrind)
	require.Equal(t, stemAt("0.04 mm"), r.HeadRun.Greatest)
	require.Equal(t, stemAt("0.01 mm"), r.Bend)
	require.Equal(t, tolerance.Usable, r.Worst())
	require.Contains(t, r.Next, "cracks")

	for name, c := range map[string]struct {
		change func(*Valve)
		says   string
		worst  tolerance.Standing
	}{
		"thin margin":    {func(v *Valve) { v.Margin[1] = stemAt("0.9 mm") }, "renew the valve", tolerance.PastWearLimit},
		"sodium":         {func(v *Valve) { v.Margin[1] = stemAt("0.9 mm"); v.Sodium = true }, "never cut, drill or grind into it", tolerance.PastWearLimit},
		"bent":           {func(v *Valve) { v.StemRun[1] = stemAt("0.06 mm") }, "renew the valve", tolerance.PastWearLimit},
		"short":          {func(v *Valve) { v.Length = stemAt("109 mm") }, "renew the valve", tolerance.PastWearLimit},
		"run-out":        {func(v *Valve) { v.HeadRun[1] = stemAt("0.06 mm") }, "reface the valve", tolerance.PastWearLimit},
		"sodium run-out": {func(v *Valve) { v.HeadRun[1] = stemAt("0.06 mm"); v.Sodium = true }, "filled with sodium", tolerance.PastWearLimit},
		"angle":          {func(v *Valve) { v.FaceAngle = headAngle("44°") }, "reface the valve", tolerance.OutsideNewBand},
		"tip":            {func(v *Valve) { v.TipWear = stemAt("0.12 mm") }, "grind the tip", tolerance.PastWearLimit},
		"tip too deep":   {func(v *Valve) { v.TipWear = stemAt("0.4 mm") }, "renew the valve", tolerance.PastWearLimit},
		"can't tell":     {func(v *Valve) { v.Margin[1] = stemAt("1.0 ±0.05 mm") }, "valve margin", tolerance.CantTell},
		"bare": {func(v *Valve) {
			*v = Valve{Margin: v.Margin[:1], MarginLimits: tolerance.Spec{New: tolerance.MustParseBand("1.2–1.5 mm")}}
		}, "cracks", tolerance.AsNew},
		"no limits": {func(v *Valve) { *v = Valve{Margin: v.Margin[:1]} }, "cracks", tolerance.CantTell},
	} {
		v := valved()
		c.change(&v)
		r, err := v.Inspect()
		require.NoError(t, err, name)
		require.Contains(t, r.Next, c.says, name)
		require.Equal(t, c.worst, r.Worst(), name)
	}
}

func TestValveRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Valve)
		says  string
	}{
		{func(v *Valve) { *v = Valve{} }, "none"},
		{func(v *Valve) { v.Margin[0] = stemAt("-1 mm") }, "valve margin"},
		{func(v *Valve) { v.HeadRun = v.HeadRun[:1] }, "two or more"},
		{func(v *Valve) { v.TipWear = stemAt("-1 mm") }, "wear of the tip"},
		{func(v *Valve) { v.FaceAngle = headAngle("90°") }, "between 0° and 90°"},
		{func(v *Valve) { v.FaceAngle = headAngle("0°") }, "between 0° and 90°"},
		{func(v *Valve) { v.TipMost = -1 }, "most off the tip"},
		{func(v *Valve) { v.MarginLimits.New = tolerance.MustParseBand("min 0.5 mm") }, "limits of the valve margin"},
		{func(v *Valve) {
			v.AngleLimits.Wear = tolerance.MustBetween(units.Angle(44.9*units.DEG), units.Angle(45.1*units.DEG))
		}, "limits of the angle"},
	} {
		v := valved()
		c.spoil(&v)
		_, err := v.Inspect()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
	// Without a most, how much of the tip is left isn't known.
	v := valved()
	v.TipMost = 0
	r, err := v.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.TipGrind)
	v.TipMost, v.TipOff = stemLen("0.5 mm"), tolerance.Bracket{}
	r, err = v.Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("0.5 mm"), r.TipLeft)
}

// A cut of 0.1 square to a cone of 45° is 0.1·√2 along the stem; at 60° from the
// square plane it is twice the cut.
func TestGrind(t *testing.T) {
	type f = tolerance.Float
	require.InEpsilon(t, 0.1*math.Sqrt2, float64(GrindAlong(f(0.1), f(math.Pi/4))), 1e-14)
	require.InEpsilon(t, 0.2, float64(GrindAlong(f(0.1), f(math.Pi/3))), 1e-14)
	require.InEpsilon(t, 0.1, float64(GrindSquare(GrindAlong(f(0.1), f(0.7)), f(0.7))), 1e-14)
}
