package uncertainty_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// Each against GUM 4.3 to the digit that the arithmetic gives.
func TestInputs(t *testing.T) {
	blade := must(tolerance.HalfOpen(100*um, 150*um))
	for _, c := range []struct {
		what  string
		e     uncertainty.Estimate
		value units.Length
		u     float64 // µm
		shape uncertainty.Shape
	}{
		{"normal", must(uncertainty.Normal("x", mm, 2*um)), mm, 2, uncertainty.NormalShape},
		{"normal within 95 %", must(uncertainty.NormalWithin("x", mm, 2*um, 0.95)), mm, 2 / 1.959963985, uncertainty.NormalShape},
		{"rectangular", must(uncertainty.Rectangular("x", mm, 2*um)), mm, 2 / math.Sqrt(3), uncertainty.RectangularShape},
		{"triangular", must(uncertainty.Triangular("x", mm, 2*um)), mm, 2 / math.Sqrt(6), uncertainty.TriangularShape},
		{"U-shaped", must(uncertainty.UShaped("x", mm, 2*um)), mm, 2 / math.Sqrt2, uncertainty.UShape},
		{"resolution", must(uncertainty.Resolution("x", mm, 2*um)), mm, 2 / math.Sqrt(12), uncertainty.RectangularShape},
		{"calibration", must(uncertainty.Calibration("x", mm, 2*um, 2.5)), mm, 0.8, uncertainty.NormalShape},
		// 0.10 mm goes and 0.15 mm doesn't: 0.125 ± 0.0144 mm.
		{"between blades", must(uncertainty.Within("gap", blade)), 125 * um, 14.43375673, uncertainty.RectangularShape},
		{"pooled", must(uncertainty.PooledRepeatability("x", 12*um, 20, mm, mm+2*um, mm+4*um, mm+2*um)), mm + 2*um, 6, uncertainty.NormalShape},
	} {
		require.Equal(t, c.value, c.e.Value(), c.what)
		_, u := c.e.Float(units.InMicrometres)
		relative(t, c.u, u, 1e-9)
		require.Len(t, c.e.Sources(), 1)
		require.Equal(t, c.shape, c.e.Sources()[0].Shape(), c.what)
	}
	// A value without uncertainty still has its source.
	exact := must(uncertainty.Rectangular("nothing", mm, 0))
	require.Len(t, exact.Sources(), 1)
	require.Equal(t, units.Length(0), exact.StandardUncertainty())
}

func TestInputs_refuse(t *testing.T) {
	out := units.OutOfRange[units.Length]()
	inf, nan := math.Inf(1), math.NaN()
	type F = uncertainty.Freedom
	open := tolerance.BandFrom(tolerance.Interval[units.Length]{}).Interval()
	one := func(e uncertainty.Estimate, err error) error {
		require.Equal(t, units.Length(0), e.Value())
		return err
	}
	two := func(d uncertainty.Dual, err error) error { require.Equal(t, 0.0, d.Value()); return err }
	for what, c := range map[string]struct {
		err, kind error
	}{
		"negative uncertainty":   {one(uncertainty.Normal("x", mm, -1*pm)), uncertainty.ErrUncertainty},
		"negative half-width":    {one(uncertainty.Rectangular("x", mm, -1*um)), uncertainty.ErrUncertainty},
		"negative triangle":      {one(uncertainty.Triangular("x", mm, -1*um)), uncertainty.ErrUncertainty},
		"negative swing":         {one(uncertainty.UShaped("x", mm, -1*um)), uncertainty.ErrUncertainty},
		"negative step":          {one(uncertainty.Resolution("x", mm, -1*um)), uncertainty.ErrUncertainty},
		"negative certificate":   {one(uncertainty.Calibration("x", mm, -1*um, 2)), uncertainty.ErrUncertainty},
		"zero factor":            {one(uncertainty.Calibration("x", mm, um, 0)), uncertainty.ErrFactor},
		"negative factor":        {one(uncertainty.Calibration("x", mm, um, -2)), uncertainty.ErrFactor},
		"factor not a number":    {one(uncertainty.Calibration("x", mm, um, nan)), uncertainty.ErrFactor},
		"factor infinite":        {one(uncertainty.Calibration("x", mm, um, inf)), uncertainty.ErrFactor},
		"zero freedom":           {one(uncertainty.Normal("x", mm, um, 0)), uncertainty.ErrFreedom},
		"negative freedom":       {one(uncertainty.Normal("x", mm, um, -3)), uncertainty.ErrFreedom},
		"two freedoms":           {one(uncertainty.Normal("x", mm, um, 3, 4)), uncertainty.ErrFreedom},
		"freedom not a number":   {one(uncertainty.Normal("x", mm, um, F(nan))), uncertainty.ErrNotFinite},
		"reliability of nothing": {one(uncertainty.Normal("x", mm, um, uncertainty.Reliability(0))), uncertainty.ErrNotFinite},
		"value out of range":     {one(uncertainty.Normal("x", out, um)), uncertainty.ErrRange},
		"width out of range":     {one(uncertainty.Normal("x", mm, units.Length(1<<62))), uncertainty.ErrRange},
		"interval without an end": {one(uncertainty.Within("x", open)),
			uncertainty.ErrNoLimit},
		"interval out of range":   {one(uncertainty.Within("x", tolerance.Exactly(out))), uncertainty.ErrRange},
		"no readings":             {one(uncertainty.Repeatability[units.Length]("x")), uncertainty.ErrTooFew},
		"one reading":             {one(uncertainty.Repeatability("x", mm)), uncertainty.ErrTooFew},
		"reading out of range":    {one(uncertainty.Repeatability("x", mm, out)), uncertainty.ErrRange},
		"no pooled readings":      {one(uncertainty.PooledRepeatability("x", um, 3)), uncertainty.ErrTooFew},
		"pooled out of range":     {one(uncertainty.PooledRepeatability("x", um, 3, out)), uncertainty.ErrRange},
		"pooled negative":         {one(uncertainty.PooledRepeatability("x", -um, 3, mm)), uncertainty.ErrUncertainty},
		"pooled without freedom":  {one(uncertainty.PooledRepeatability("x", um, 0, mm)), uncertainty.ErrFreedom},
		"zero probability":        {one(uncertainty.NormalWithin("x", mm, um, 0)), uncertainty.ErrProbability},
		"certainty":               {one(uncertainty.NormalWithin("x", mm, um, 1)), uncertainty.ErrProbability},
		"probability of none":     {one(uncertainty.NormalWithin("x", mm, um, nan)), uncertainty.ErrProbability},
		"mean of nothing":         {one(uncertainty.Mean[units.Length]()), uncertainty.ErrTooFew},
		"number not a number":     {two(uncertainty.NewDual("x", nan, "", uncertainty.NormalShape, 1)), uncertainty.ErrNotFinite},
		"number infinite":         {two(uncertainty.NewDual("x", inf, "", uncertainty.NormalShape, 1)), uncertainty.ErrNotFinite},
		"width not a number":      {two(uncertainty.NewDual("x", 1, "", uncertainty.NormalShape, nan)), uncertainty.ErrNotFinite},
		"width infinite":          {two(uncertainty.NewDual("x", 1, "", uncertainty.UShape, inf)), uncertainty.ErrNotFinite},
		"width negative":          {two(uncertainty.NewDual("x", 1, "", uncertainty.NormalShape, -1)), uncertainty.ErrUncertainty},
		"unknown shape":           {two(uncertainty.NewDual("x", 1, "", uncertainty.Shape(9), 1)), uncertainty.ErrSyntax},
		"one number":              {two(uncertainty.RepeatabilityReal("x", "N·m", 1)), uncertainty.ErrTooFew},
		"a reading not a number":  {two(uncertainty.RepeatabilityReal("x", "N·m", 1, nan)), uncertainty.ErrNotFinite},
		"squares beyond float64":  {two(uncertainty.RepeatabilityReal("x", "N·m", 1e300, -1e300)), uncertainty.ErrNotFinite},
		"readings beyond float64": {two(uncertainty.RepeatabilityReal("x", "N·m", math.MaxFloat64, -math.MaxFloat64)), uncertainty.ErrNotFinite},
	} {
		t.Run(what, func(t *testing.T) {
			t.Log(c.err)
			refused(t, c.err, c.kind)
		})
	}
	// What is quoted is cut to 64 bytes, whole characters.
	long := strings.Repeat("é", 100)
	_, err := uncertainty.Normal(long, mm, -1*um)
	require.Contains(t, err.Error(), strings.Repeat("é", 32)+"…")
	require.NotContains(t, err.Error(), strings.Repeat("é", 33))
	_, err = uncertainty.Normal("x"+long, mm, -1*um)
	require.Contains(t, err.Error(), `"x`+strings.Repeat("é", 31)+`…"`)
	_, err = uncertainty.Normal("micrometer", mm, -2*um)
	require.EqualError(t, err, `uncertainty: normal "micrometer": uncertainty -0.002 mm: negative uncertainty; zero or more`)
}

func TestWords(t *testing.T) {
	shapes := []uncertainty.Shape{uncertainty.NormalShape, uncertainty.RectangularShape, uncertainty.TriangularShape, uncertainty.UShape}
	for _, s := range shapes {
		var back uncertainty.Shape
		require.NoError(t, json.Unmarshal(must(json.Marshal(s)), &back))
		require.Equal(t, s, back)
	}
	for _, m := range []uncertainty.Manner{uncertainty.PlainAcceptance, uncertainty.GuardedAcceptance, uncertainty.GuardedRejection, uncertainty.Proof} {
		var back uncertainty.Manner
		require.NoError(t, json.Unmarshal(must(json.Marshal(m)), &back))
		require.Equal(t, m, back)
	}
	for _, d := range []uncertainty.Decision{uncertainty.NotDecided, uncertainty.Accept, uncertainty.Reject} {
		var back uncertainty.Decision
		require.NoError(t, json.Unmarshal(must(json.Marshal(d)), &back))
		require.Equal(t, d, back)
	}
	for _, g := range []uncertainty.GuardMethod{uncertainty.GuardRootSumSquare, uncertainty.GuardByUncertainty, uncertainty.GuardPastFour, uncertainty.GuardManagedRisk} {
		var back uncertainty.GuardMethod
		require.NoError(t, json.Unmarshal(must(json.Marshal(g)), &back))
		require.Equal(t, g, back)
	}
	require.Equal(t, "normal", uncertainty.Shape(9).String())
	require.Equal(t, "plain acceptance", uncertainty.Manner(9).String())
	require.Equal(t, "not decided", uncertainty.Decision(9).String())
	require.Equal(t, "root sum square", uncertainty.GuardMethod(9).String())
	var s uncertainty.Shape
	refused(t, s.UnmarshalText([]byte(strings.Repeat("x", 100))), uncertainty.ErrSyntax)
	var m uncertainty.Manner
	refused(t, m.UnmarshalText(nil), uncertainty.ErrSyntax)
	var d uncertainty.Decision
	refused(t, d.UnmarshalText([]byte("Accept")), uncertainty.ErrSyntax)
	var g uncertainty.GuardMethod
	refused(t, g.UnmarshalText([]byte("?")), uncertainty.ErrSyntax)
	require.InDelta(t, 2/math.Sqrt(3), uncertainty.RectangularShape.StandardUncertainty(2), 1e-15)
	require.Equal(t, 2.0, uncertainty.Shape(9).StandardUncertainty(2))
}

// Every unit of every quantity takes a value there and back.
func TestUnits(t *testing.T) {
	eachUnit[units.Length](t)
	eachUnit[units.Angle](t)
	eachUnit[units.Volume](t)
	eachUnit[units.Mass](t)
	eachUnit[units.Force](t)
	eachUnit[units.Pressure](t)
	eachUnit[units.SpringRate](t)
	eachUnit[units.Temperature](t)
	eachUnit[units.TemperatureDifference](t)
}

func eachUnit[Q units.Quantity](t *testing.T) {
	e := must(uncertainty.Normal("x", Q(int64(1_234_567_890_123)), Q(1_000_000)))
	seen := map[string]bool{}
	for u := units.Unit[Q](0); !seen[u.Symbol()]; u++ {
		seen[u.Symbol()] = true
		v, s := e.Float(u)
		require.False(t, math.IsNaN(v) || s <= 0, u.Symbol())
		b := must(e.Budget(u))
		relative(t, s, b.Lines[0].Contribution, 1e-14)
		require.Equal(t, u.Symbol(), b.Lines[0].Unit)
		back := must(uncertainty.FromReal(e.Real(u), u))
		require.InDelta(t, float64(e.Value()), float64(back.Value()), 1)
		relative(t, 1e6, float64(back.StandardUncertainty()), 1e-12)
		require.NotContains(t, e.Text(u), "range")
	}
}
