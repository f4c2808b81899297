package cylinder

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// By hand: departure at most 0.0762, stock 0.03: 0.1062, to a step of 0.01
// 0.11. A height of 120.30 less 0.11 leaves 0.19 over 120.00.
func TestFaceSkimPlan(t *testing.T) {
	s := FaceSkim{Departure: parsedLength(t, "[0.0635 mm, 0.0762 mm)"), Stock: 30 * units.Micrometre, Step: 10 * units.Micrometre,
		Height: parsedLength(t, "120.30 mm"), LeastHeight: 120 * units.Millimetre}
	p, err := s.Plan()
	require.NoError(t, err)
	require.Equal(t, 110*units.Micrometre, p.Off)
	require.Equal(t, parsedLength(t, "120.19 mm"), p.Height)
	require.Equal(t, parsedLength(t, "0.19 mm"), p.Left)
	require.Equal(t, tolerance.Within, p.Verdict)

	// To the very limit is allowed, past it is not, across it can't be told.
	s.Height = parsedLength(t, "120.11 mm")
	p, err = s.Plan()
	require.NoError(t, err)
	require.Equal(t, tolerance.Within, p.Verdict)
	s.Height = parsedLength(t, "120.10 mm")
	p, err = s.Plan()
	require.NoError(t, err)
	require.Equal(t, tolerance.Below, p.Verdict)
	require.Equal(t, parsedLength(t, "-0.01 mm"), p.Left)
	s.Height = parsedLength(t, "120.11 ±0.01 mm")
	p, err = s.Plan()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, p.Verdict)

	// Both limits: the nearer counts. 0.040 in may come off in all (as
	// TM 5-3810-306-34, p. 4-12, has it), 0.9 mm is off: 0.116 less 0.11.
	s.Height = parsedLength(t, "120.30 mm")
	s.MostOff, s.OffBefore = units.MustParseLength("0.040 in"), parsedLength(t, "0.9 mm")
	p, err = s.Plan()
	require.NoError(t, err)
	require.Equal(t, parsedLength(t, "0.006 mm"), p.Left)

	// No limit at all is no pass.
	p, err = FaceSkim{Departure: parsedLength(t, "0.05 mm")}.Plan()
	require.NoError(t, err)
	require.Equal(t, SkimPlan{Off: 50 * units.Micrometre}, p)
	require.Equal(t, tolerance.Undecided, p.Verdict)
	// By what is taken off alone.
	p, err = FaceSkim{Departure: parsedLength(t, "0.05 mm"), MostOff: units.Millimetre}.Plan()
	require.NoError(t, err)
	require.Equal(t, parsedLength(t, "0.95 mm"), p.Left)
}

func TestFaceSkimRefuses(t *testing.T) {
	good := FaceSkim{Departure: parsedLength(t, "0.05 mm"), Height: parsedLength(t, "120 mm"), LeastHeight: 119 * units.Millimetre}
	for _, c := range []struct {
		spoil func(*FaceSkim)
		says  string
	}{
		{func(s *FaceSkim) { s.Departure = parsedLength(t, "-0.05 mm") }, "departure from flat -0.05 mm"},
		{func(s *FaceSkim) { s.Departure = parsedLength(t, "[0.05 mm, ∞)") }, "try a thicker blade"},
		{func(s *FaceSkim) { s.Stock = -1 }, "stock"},
		{func(s *FaceSkim) { s.Step = -1 }, "step"},
		{func(s *FaceSkim) { s.MostOff = -1 }, "most to take off"},
		{func(s *FaceSkim) { s.Height = tolerance.Bracket{} }, "height (not given)"},
		{func(s *FaceSkim) { s.LeastHeight = 0 }, "least height"},
		{func(s *FaceSkim) { s.OffBefore = parsedLength(t, "0.1 mm") }, "taken off before"},
		{func(s *FaceSkim) { s.Height = parsedLength(t, "0 mm") }, "height 0 mm"},
		{func(s *FaceSkim) { s.Height = parsedLength(t, "4.724 mm") }, "height 4.724 mm is not within a quarter of the least height 119 mm"}, // inches
		{func(s *FaceSkim) { s.Height = parsedLength(t, "1204 mm") }, "is one of them in another unit?"},
		{func(s *FaceSkim) { s.MostOff, s.OffBefore = 1, parsedLength(t, "-0.1 mm") }, "taken off before -0.1 mm"},
	} {
		s := good
		c.spoil(&s)
		_, err := s.Plan()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

func TestRoundUpTo(t *testing.T) {
	for _, c := range [][3]units.Length{{0, 10, 0}, {1, 10, 10}, {10, 10, 10}, {11, 10, 20}, {-1, 10, 0}, {-10, 10, -10}, {-11, 10, -10}, {7, 0, 7}, {7, -3, 7}, {7, units.OutOfRange[units.Length](), 7}} {
		require.Equal(t, c[2], RoundUpTo(c[0], c[1]), c)
	}
	require.False(t, RoundUpTo(units.OutOfRange[units.Length](), 10).InRange())
}

// The judge draws the tight side as it lies and looks for the angle.
func TestRetardReference(t *testing.T) {
	vectors.Load(t, "reference/cylinder_displacement_retard.txt").Each(t, func(t *testing.T, c vectors.Case) {
		pitch, err := units.ParseLength(c.Text("pitch") + " mm")
		require.NoError(t, err)
		down := parsedLength(t, c.Text("down")+" mm")
		r, err := RetardByTeeth(down, c.Int("teeth"), pitch)
		require.NoError(t, err)
		// Lowering over pitch radius, to the quantum of an angle.
		holds(t, c.Float("parallel"), r.Cam, float64(units.Degree), "cam")
		holds(t, 2*c.Float("parallel"), r.Crank, float64(units.Degree), "crank")

		f := func(x float64) tolerance.Float { return tolerance.Float(x) }
		p := PitchRadius(f(c.Float("pitch")), f(float64(c.Int("teeth"))))
		q := PitchRadius(f(c.Float("pitch")), f(float64(c.Int("crank"))))
		d := f(c.Float("down"))
		require.InEpsilon(t, c.Float("parallel"), float64(InDegrees(RetardRadians(d, p))), 1e-14)
		require.InEpsilon(t, float64(d), float64(LoweringFor(RetardRadians(d, p), p)), 1e-14)

		// By its radius, to 2⁻⁵⁰ and the quantum.
		l, err := units.Nearest(float64(p), units.InMillimetres)
		require.NoError(t, err)
		byRadius, err := RetardByRadius(down, tolerance.Exactly(l))
		require.NoError(t, err)
		m, _ := byRadius.Cam.Middle()
		require.InDelta(t, c.Float("parallel"), m.Float(units.InDegrees), 1e-7)

		// With the strand's inclination, within what it changes by while the
		// head comes down: δ·sin²φ/(C·cos φ) of the angle, at most a part in 10³.
		at := float64(InDegrees(RetardRadiansAt(d, p, StrandAngle(p, q, f(c.Float("centres"))))))
		require.InEpsilon(t, c.Float("exact"), at, 1e-3)
		require.LessOrEqual(t, math.Abs(c.Float("exact")), math.Abs(c.Float("parallel"))*(1+1e-12))
	})
}

func TestRetardBrackets(t *testing.T) {
	r, err := RetardByRadius(parsedLength(t, "[-0.1 mm, 0.2 mm]"), parsedLength(t, "[50 mm, 60 mm]"))
	require.NoError(t, err)
	lo, _ := r.Cam.Lower()
	hi, _ := r.Cam.Upper()
	require.InDelta(t, -0.1/50*180/math.Pi, lo.Float(units.InDegrees), 1e-8)
	require.InDelta(t, 0.2/50*180/math.Pi, hi.Float(units.InDegrees), 1e-8)
	r, err = RetardByRadius(parsedLength(t, "[-0.2 mm, -0.1 mm]"), parsedLength(t, "[50 mm, 60 mm]"))
	require.NoError(t, err)
	hi, _ = r.Cam.Upper()
	require.InDelta(t, -0.1/60*180/math.Pi, hi.Float(units.InDegrees), 1e-8)

	pitch := units.MustParseLength("9.525 mm")
	for _, err := range []error{
		second(RetardByTeeth(tolerance.Bracket{}, 40, pitch)), second(RetardByTeeth(parsedLength(t, "0.2 mm"), 0, pitch)),
		second(RetardByTeeth(parsedLength(t, "0.2 mm"), 40, 0)), second(RetardByTeeth(parsedLength(t, "0.2 mm"), 40, 2*units.Metre)),
		second(RetardByTeeth(parsedLength(t, "90 m"), 1, 1)),
		second(RetardByRadius(tolerance.Bracket{}, parsedLength(t, "50 mm"))), second(RetardByRadius(parsedLength(t, "0.2 mm"), parsedLength(t, "0 mm"))),
		second(RetardByRadius(parsedLength(t, "90 m"), parsedLength(t, "0.000001 mm"))),
	} {
		require.ErrorIs(t, err, ErrInput)
	}
}

func FuzzSkim(f *testing.F) {
	f.Add("[0.05 mm, 0.06 mm)", "120.3 mm", int64(30e6), int64(10e6), int64(120e9), int64(0))
	f.Fuzz(func(t *testing.T, departure, height string, stock, step, least, most int64) {
		d, err1 := tolerance.ParseBracket(departure)
		h, err2 := tolerance.ParseBracket(height)
		if err1 != nil || err2 != nil {
			return
		}
		p, err := FaceSkim{Departure: d, Height: h, Stock: units.Length(stock), Step: units.Length(step), LeastHeight: units.Length(least), MostOff: units.Length(most)}.Plan()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		if hi, _ := d.Upper(); p.Off.InRange() {
			require.GreaterOrEqual(t, p.Off, hi+units.Length(stock))
		} else {
			require.NotEqual(t, tolerance.Within, p.Verdict)
		}
	})
}
