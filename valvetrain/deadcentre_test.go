package valvetrain

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// A root finder on the rod's length is the judge of half-span and skew.
func TestDeadCentreReference(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "reference/valvetrain_deadcentre.txt").Each(t, func(t *testing.T, c vectors.Case) {
		r, l, e, x := c.Float("throw"), c.Float("rod"), c.Float("offset"), c.Float("fall")
		half, skew := c.Float("half"), c.Float("skew")
		require.InDelta(t, skew, float64(StopSkew(f(r), f(l), f(e), f(half))), 1e-15)
		if e == 0 {
			require.InDelta(t, half, float64(FallAngle(f(r), f(l), f(x))), 1e-15)
			require.InDelta(t, x, float64(PistonFall(f(r), f(l), f(half))), 1e-14)
		}
		// The ready-made curve has both contacts at that fall.
		k := newFallCurve(r, l, e)
		for _, side := range []float64{1, -1} {
			fall, _ := k.at(side*half - skew)
			require.InDelta(t, x, fall, 1e-12)
		}
		// And Inspect gives the skew: contacts that stand symmetrically about a
		// middle 3° after the wheel's zero.
		deg := func(rad float64) units.Angle {
			a, err := units.AngleFromRadians(rad)
			require.NoError(t, err)
			return a
		}
		mm := func(v float64) units.Length {
			d, err := units.Nearest(v, units.InMillimetres)
			require.NoError(t, err)
			return d
		}
		d := DeadCentre{Before: tolerance.Exactly(deg(half) - 3*units.Degree), After: tolerance.Exactly(deg(half) + 3*units.Degree), Throw: mm(r), Rod: mm(l), Offset: mm(e)}
		got, err := d.Inspect()
		require.NoError(t, err)
		middle, _ := got.Correction.Middle()
		require.InDelta(t, int64(3*units.Degree+deg(skew)), int64(middle), 3)
		require.InDelta(t, int64(deg(skew)), int64(got.Skew), 1)
	})
}

// Published check values, part B, 3.11: contacts at 21° and 15° make a
// half-span of 18° and the wheel 3° out; 0.050 in of equal drop at 1.5 and 6 in
// is 13.278°. And TM 5-6115-593-34: 0.2032 in at 3 and 12 in is about 19°.
func TestDeadCentrePublished(t *testing.T) {
	require.Equal(t, timingDeg("18"), StopHalfSpan(timingDeg("15"), timingDeg("21")))
	require.Equal(t, timingDeg("3"), StopCorrection(timingDeg("15"), timingDeg("21")))
	require.Equal(t, timingDeg("15"), StopBefore(timingDeg("18"), timingDeg("3")))
	require.Equal(t, timingDeg("21"), StopAfter(timingDeg("18"), timingDeg("3")))
	type f = tolerance.Float
	const rad = 3.14159265358979 / 180
	require.InDelta(t, 13.278, float64(FallAngle(f(1.5), f(6), f(0.05)))/rad, 5e-4)
	require.InDelta(t, 18.9972, float64(FallAngle(f(3), f(12), f(0.2032)))/rad, 5e-5)
	require.InDelta(t, 0.203258, float64(PistonFall(f(3), f(12), f(19*rad))), 5e-7)
	// The rod ratio is 4: in the first degree 0.0095 per cent of the stroke.
	require.InDelta(t, 9.52e-5, float64(PistonFall(f(1), f(4), f(rad)))/2, 5e-8)
}

func TestDeadCentreRoundTrip(t *testing.T) {
	type f = tolerance.Float
	r := rand.New(rand.NewPCG(3, 11))
	for range 1000 {
		throw := 20 + 40*r.Float64()
		rod := throw * (1.5 + 3*r.Float64())
		angle := 0.001 + 3.1*r.Float64()
		require.InDelta(t, angle, float64(FallAngle(f(throw), f(rod), PistonFall(f(throw), f(rod), f(angle)))), 1e-11)
		require.Zero(t, float64(StopSkew(f(throw), f(rod), f(0), f(angle))))
		require.InDelta(t, float64(StopSkew(f(throw), f(rod), f(1), f(angle))), -float64(StopSkew(f(throw), f(rod), f(-1), f(angle))), 1e-15)
	}
	require.False(t, FallAngle(f(1), f(4), f(3)).InRange())
	require.False(t, PistonFall(f(2), f(1), f(1)).InRange())
}

func deadStop() DeadCentre {
	return DeadCentre{Where: "cylinder 1", Before: timingRead("19 ±0.25°"), After: timingRead("25 ±0.25°")}
}

func TestDeadCentreInspect(t *testing.T) {
	r, err := deadStop().Inspect()
	require.NoError(t, err)
	require.Equal(t, timingRead("[2.75°, 3.25°]"), r.Correction)
	require.Equal(t, timingRead("[21.75°, 22.25°]"), r.HalfSpan)
	require.Empty(t, r.Notes)
	require.Contains(t, r.Next, "3.00° after the wheel's zero")
	require.Contains(t, r.Next, "both sides read 22.00°")

	d := deadStop()
	d.Before, d.After = d.After, d.Before
	d.Offsets = true
	r, err = d.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "3.00° before the wheel's zero")
	require.Contains(t, r.Notes[0], "breaks the symmetry")

	d = deadStop()
	d.Before, d.After = timingRead("10 ±0.5°"), timingRead("10 ±0.5°")
	r, err = d.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "none")
	require.Contains(t, r.Notes[0], "nearer than 15°")

	// A dial at 0.050 in both sides, 1.5 and 6 in.
	d = DeadCentre{Before: timingRead("12.3 ±0.1°"), After: timingRead("14.3 ±0.1°"), Throw: stemLen("1.5 in"), Rod: stemLen("6 in"), Fall: stemLen("0.05 in")}
	r, err = d.Inspect()
	require.NoError(t, err)
	require.InDelta(t, 13.278, r.Wanted.Float(units.InDegrees), 5e-4)
	require.Len(t, r.Notes, 1)
	d.After = timingRead("16 ±0.1°")
	r, err = d.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Notes[len(r.Notes)-1], "half-span of 13.28°, which the wheel doesn't show")

	// Beside the cylinder by 10 mm, at 22°, where the piston is 4.04 mm down: by
	// hand 10·4.03/(182.2·186.2) = 0.00119, 0.068°.
	d = deadStop()
	d.Throw, d.Rod, d.Offset = stemLen("43 mm"), stemLen("143.5 mm"), stemLen("10 mm")
	r, err = d.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Notes[0], "0.068")
	require.Contains(t, r.Next, "reads 22.07° before and 21.93° after")
}

func TestDeadCentreRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*DeadCentre)
		says  string
	}{
		{func(d *DeadCentre) { d.Before = tolerance.Interval[units.Angle]{} }, "contact before"},
		{func(d *DeadCentre) { d.After = timingRead("[1°, ∞)") }, "contact after"},
		{func(d *DeadCentre) { d.After = timingRead("181°") }, "within a half turn"},
		{func(d *DeadCentre) { d.Before = timingRead("-25°") }, "half-span"},
		{func(d *DeadCentre) { d.Before = timingRead("-30°") }, "half-span"},
		{func(d *DeadCentre) { d.Offset = 1 }, "throw and rod"},
		{func(d *DeadCentre) { d.Fall = 1 }, "throw and rod"},
		{func(d *DeadCentre) { d.Throw = 1 }, "rod 0 mm"},
		{func(d *DeadCentre) { d.Rod = 1 }, "throw 0 mm"},
		{func(d *DeadCentre) { d.Throw, d.Rod = stemLen("43 mm"), stemLen("43 mm") }, "rod 43 mm"},
		{func(d *DeadCentre) { d.Throw, d.Rod, d.Fall = stemLen("43 mm"), stemLen("143 mm"), stemLen("86 mm") }, "fall of the piston"},
		{func(d *DeadCentre) { d.Throw, d.Rod, d.Fall = stemLen("43 mm"), stemLen("143 mm"), -1 }, "fall of the piston"},
		{func(d *DeadCentre) { d.Throw, d.Rod, d.Offset = stemLen("43 mm"), stemLen("143 mm"), stemLen("11 m") }, "rod 143 mm"},
	} {
		d := deadStop()
		c.spoil(&d)
		_, err := d.Inspect()
		require.ErrorIs(t, err, ErrInput, c.says)
		require.ErrorContains(t, err, c.says)
	}
}

func TestDeadCentreWorkingAndUncertainty(t *testing.T) {
	s, err := working.Solve(StopCorrection(working.Given("before", "b", timingDeg("15")), working.Given("after", "a", timingDeg("21"))).Named("correction", "k"),
		units.Style[units.Angle]{Unit: units.InDegrees, Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "k = (a − b) ÷ 2")
	require.Contains(t, s.Text(), "3.0°")
	a, err := uncertainty.Normal("after", timingDeg("21"), timingDeg("0.6"))
	require.NoError(t, err)
	b, err := uncertainty.Normal("before", timingDeg("15"), timingDeg("0.8"))
	require.NoError(t, err)
	require.Equal(t, timingDeg("0.5"), StopCorrection(b, a).StandardUncertainty())

	// Near 0.05 in the wheel turns 13.278°: a fall known to 1 per cent gives about
	// half a per cent of the angle.
	x, err := uncertainty.NewDual("fall", 0.05, "in", uncertainty.NormalShape, 0.0005)
	require.NoError(t, err)
	k := uncertainty.ExactlyReal
	angle := FallAngle(k(1.5), k(6), x)
	require.InEpsilon(t, angle.Value()*0.005, angle.StandardUncertainty(), 0.01)
	w, err := working.SolveReal(PistonFall(working.GivenReal("throw", "r", 3, "in"), working.GivenReal("rod", "l", 12, "in"), working.GivenReal("angle", "θ", 0.33161255787892263, "rad")).
		Named("fall", "x", "in"), working.RealStyle{Places: 5})
	require.NoError(t, err)
	require.Contains(t, w.Text(), "0.20326")
}

func BenchmarkDeadCentre(b *testing.B) {
	b.Run("lib=tenthou/op=inspect", func(b *testing.B) {
		b.ReportAllocs()
		d := deadStop()
		for b.Loop() {
			if _, err := d.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=skew", func(b *testing.B) {
		b.ReportAllocs()
		type f = tolerance.Float
		var sink f
		for b.Loop() {
			sink = StopSkew(f(43), f(143.5), f(0.8), f(0.33))
		}
		_ = sink
	})
}

func FuzzDeadCentre(f *testing.F) {
	f.Add("19 ±0.25°", "25 ±0.25°", int64(43e9), int64(143e9), int64(8e8), int64(3e9))
	f.Add("19°", "-5°", int64(0), int64(0), int64(0), int64(0))
	f.Fuzz(func(t *testing.T, before, after string, throw, rod, offset, fall int64) {
		b, err := tolerance.ParseInterval[units.Angle](before)
		a, err2 := tolerance.ParseInterval[units.Angle](after)
		if err != nil || err2 != nil {
			return
		}
		r, err := DeadCentre{Before: b, After: a, Throw: units.Length(throw), Rod: units.Length(rod), Offset: units.Length(offset), Fall: units.Length(fall)}.Inspect()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, r.Correction.InRange())
	})
}
