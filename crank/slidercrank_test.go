package crank

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func sliderUnits(t testing.TB, c vectors.Case) SliderCrank {
	mm := func(col string) units.Length {
		l, err := units.Nearest(c.Float(col), units.InMillimetres)
		require.NoError(t, err)
		return l
	}
	return SliderCrank{mm("throw"), mm("rod"), mm("offset")}
}

func TestSliderCrankReference(t *testing.T) {
	vectors.Load(t, "reference/crank_slider.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := sliderUnits(t, c)
		angle := units.MustParseAngle(c.Text("angle") + "°")
		m, err := s.At(angle, 3000)
		require.NoError(t, err)
		omega := math.Pi * 100
		require.InDelta(t, c.Float("position"), m.Position.Float(units.InMillimetres), 2e-9)
		require.InDelta(t, c.Float("speed")*omega/1000, m.SpeedMPS, 1e-10)
		require.InDelta(t, c.Float("acceleration")*omega*omega/1000, m.AccelerationMPS2, 1e-7)
		require.InDelta(t, c.Float("position")/c.Float("stroke"), m.Fraction, 1e-13)
		stroke, err := s.Stroke()
		require.NoError(t, err)
		require.InDelta(t, c.Float("stroke"), stroke.Float(units.InMillimetres), 1e-9)
		top, bottom, err := s.DeadCentres()
		require.NoError(t, err)
		require.InDelta(t, c.Float("top"), top.Float(units.InDegrees), 1e-9)
		require.InDelta(t, c.Float("bottom"), bottom.Float(units.InDegrees), 1e-9)
		// Turns make no difference.
		again, err := s.At(angle-7*units.Turn, 3000)
		require.NoError(t, err)
		require.InDelta(t, float64(m.Position), float64(again.Position), 1)
		x, err := s.PositionAt(angle)
		require.NoError(t, err)
		require.Equal(t, m.Position, x)
	})
}

func TestSliderCrankPeaksReference(t *testing.T) {
	vectors.Load(t, "reference/crank_slider_peaks.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := sliderUnits(t, c)
		down, up, err := s.Peaks(30 / math.Pi)
		require.NoError(t, err)
		require.InDelta(t, c.Float("down"), down.Angle.Float(units.InDegrees), 1e-9)
		require.InDelta(t, c.Float("up"), up.Angle.Float(units.InDegrees), 1e-9)
		require.InEpsilon(t, c.Float("downspeed"), down.SpeedMPS*1000, 1e-13)
		require.InEpsilon(t, c.Float("upspeed"), up.SpeedMPS*1000, 1e-13)
		x, err := units.Nearest(c.Float("position"), units.InMillimetres)
		require.NoError(t, err)
		after, before, err := s.AnglesFor(x)
		require.NoError(t, err)
		require.InDelta(t, c.Float("after"), after.Float(units.InDegrees), 1e-9)
		require.InDelta(t, c.Float("before"), before.Float(units.InDegrees), 1e-9)
		skew, err := s.StopError(x)
		require.NoError(t, err)
		require.InDelta(t, (c.Float("after")-c.Float("before"))/2, skew.Float(units.InDegrees), 1e-9)
	})
}

func TestSliderCrankEnds(t *testing.T) {
	s := SliderCrank{43 * units.Millimetre, 143 * units.Millimetre, 0}
	after, before, err := s.AnglesFor(0)
	require.NoError(t, err)
	require.Zero(t, after)
	require.Zero(t, before)
	after, before, err = s.AnglesFor(86 * units.Millimetre)
	require.NoError(t, err)
	require.Equal(t, units.Turn/2, after)
	require.Equal(t, units.Turn/2, before)
	m, err := s.At(units.Turn/2, 1)
	require.NoError(t, err)
	require.Equal(t, 86*units.Millimetre, m.Position)
	v, err := s.MeanSpeedMPS(3000)
	require.NoError(t, err)
	require.InDelta(t, 8.6, v, 1e-12)
	offset := SliderCrank{43 * units.Millimetre, 143 * units.Millimetre, 9 * units.Millimetre}
	stroke, err := offset.Stroke()
	require.NoError(t, err)
	_, bottom, err := offset.DeadCentres()
	require.NoError(t, err)
	after, before, err = offset.AnglesFor(stroke)
	require.NoError(t, err)
	// A picometre off bottom dead centre is 0.0003° of the crank.
	require.InDelta(t, bottom.Float(units.InDegrees), after.Float(units.InDegrees), 5e-4)
	require.InDelta(t, 360, (after + before).Float(units.InDegrees), 1e-3)
	require.Equal(t, "throw 43 mm, rod 143 mm, offset 9 mm", offset.String())
}

func TestSliderCrankRefuses(t *testing.T) {
	mm := units.Millimetre
	good := SliderCrank{43 * mm, 143 * mm, 0}
	for _, c := range []struct {
		s    SliderCrank
		says string
	}{
		{SliderCrank{}, "throw 0 mm is not above 0 mm"},
		{SliderCrank{-43 * mm, 143 * mm, 0}, "throw -43 mm"},
		{SliderCrank{43 * mm, 0, 0}, "rod 0 mm is not above"},
		{SliderCrank{43 * mm, 43 * mm, 0}, "rod 43 mm is not longer than half the stroke and the offset together, 43 mm"},
		{SliderCrank{43 * mm, 50 * mm, -7 * mm}, "rod 50 mm"},
		{SliderCrank{43 * mm, 143 * mm, 11 * units.Metre}, "offset 11000 mm"},
		{SliderCrank{43 * mm, 20 * units.Metre, 0}, "rod 20000 mm"},
		{SliderCrank{units.OutOfRange[units.Length](), 143 * mm, 0}, "throw"},
	} {
		_, err := c.s.Stroke()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
		_, err = c.s.At(0, 1)
		require.Error(t, err)
		_, _, err = c.s.DeadCentres()
		require.Error(t, err)
		_, _, err = c.s.AnglesFor(mm)
		require.Error(t, err)
		_, err = c.s.StopError(mm)
		require.Error(t, err)
		_, _, err = c.s.Peaks(1)
		require.Error(t, err)
		_, err = c.s.MeanSpeedMPS(1)
		require.Error(t, err)
	}
	for _, rpm := range []float64{0, -1, math.NaN(), math.Inf(1), 1e7} {
		_, err := good.At(0, rpm)
		require.ErrorContains(t, err, "speed ")
		_, _, err = good.Peaks(rpm)
		require.ErrorIs(t, err, ErrInput)
		_, err = good.MeanSpeedMPS(rpm)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err := good.At(units.OutOfRange[units.Angle](), 1)
	require.ErrorContains(t, err, "crank angle")
	for _, x := range []units.Length{-1, 86*mm + 1} {
		_, _, err := good.AnglesFor(x)
		require.ErrorContains(t, err, "from 0 mm to the stroke, 86 mm")
	}
	require.False(t, sliderLength(float(math.Inf(1))).InRange())
	require.False(t, sliderAngle(float(math.NaN())).InRange())
}

// Every size that the brackets hold gives a position, an angle and a stroke
// that theirs hold; and they are tight.
func TestSliderBrackets(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 3))
	pick := func(lo, hi units.Length) units.Length { return lo + units.Length(rnd.Int64N(int64(hi-lo)+1)) }
	for range 400 {
		throw := pick(20*units.Millimetre, 60*units.Millimetre)
		rod := throw*3/2 + pick(0, 150*units.Millimetre)
		t1, r1 := throw+pick(0, 100*units.Micrometre), rod+pick(0, 100*units.Micrometre)
		a0 := units.Angle(rnd.Int64N(int64(units.Turn)/2)*2) - units.Turn/2
		a1 := min(a0+units.Angle(rnd.Int64N(int64(10*units.Degree))), units.Turn/2)
		angle, err := tolerance.NewInterval(a0, tolerance.Closed, a1, tolerance.Open)
		require.NoError(t, err)
		if a0 == a1 {
			continue
		}
		x, err := PistonPositionBracket(sliderSpan(throw, t1), sliderSpan(rod, r1), angle)
		require.NoError(t, err)
		x0, x1 := pick(0, 2*throw), units.Length(0)
		x1 = min(x0+pick(0, units.Millimetre), 2*throw)
		turns, err := PistonAngleBracket(sliderSpan(throw, t1), sliderSpan(rod, r1), sliderSpan(x0, x1))
		require.NoError(t, err)
		e0 := pick(-throw/4, throw/4)
		e1 := e0 + pick(0, units.Millimetre)
		stroke, err := SliderStrokeBracket(sliderSpan(throw, t1), sliderSpan(rod, r1), sliderSpan(e0, e1))
		require.NoError(t, err)
		for range 20 {
			s := SliderCrank{pick(throw, t1), pick(rod, r1), 0}
			a := a0 + units.Angle(rnd.Int64N(int64(a1-a0)))
			p, err := s.PositionAt(a)
			require.NoError(t, err)
			require.True(t, x.Contains(p), "%v %v %v", x, p, a)
			after, _, err := s.AnglesFor(pick(x0, x1))
			require.NoError(t, err)
			require.True(t, turns.Contains(after), "%v %v", turns, after)
			s.Offset = pick(e0, e1)
			l, err := s.Stroke()
			require.NoError(t, err)
			require.True(t, stroke.Contains(l), "%v %v", stroke, l)
		}
	}
	exact := tolerance.Exactly[units.Length]
	s := SliderCrank{43 * units.Millimetre, 143 * units.Millimetre, 0}
	x, err := PistonPositionBracket(exact(s.Throw), exact(s.Rod), tolerance.Exactly(units.Degree*30))
	require.NoError(t, err)
	w, _ := x.Width()
	require.LessOrEqual(t, w, 3*units.Picometre)
	stroke, err := SliderStrokeBracket(exact(s.Throw), exact(s.Rod), exact(0))
	require.NoError(t, err)
	require.Equal(t, exact(86*units.Millimetre), stroke)
	whole, err := PistonPositionBracket(exact(s.Throw), exact(s.Rod), tolerance.BandFrom(mustInterval(t, -units.Turn/2, units.Turn/2)).Interval())
	require.NoError(t, err)
	require.Equal(t, sliderSpan(0, 86*units.Millimetre), whole)
	all, err := PistonAngleBracket(exact(s.Throw), exact(s.Rod), whole)
	require.NoError(t, err)
	require.Equal(t, mustInterval(t, 0, units.Turn/2), all)
}

func mustInterval(t testing.TB, lo, hi units.Angle) tolerance.Interval[units.Angle] {
	i, err := tolerance.NewInterval(lo, tolerance.Closed, hi, tolerance.Closed)
	require.NoError(t, err)
	return i
}

func TestSliderBracketsRefuse(t *testing.T) {
	good, rod := sliderSpan(43*units.Millimetre, 43*units.Millimetre), sliderSpan(143*units.Millimetre, 144*units.Millimetre)
	angle := mustInterval(t, 0, units.Degree)
	for _, c := range []struct {
		throw, rod tolerance.Bracket
		says       string
	}{
		{tolerance.Bracket{}, rod, "throw"},
		{good, tolerance.AtLeast(units.Millimetre).Interval(), "rod"},
		{sliderSpan(0, units.Millimetre), rod, "above 0 mm"},
		{good, sliderSpan(43*units.Millimetre, 144*units.Millimetre), "longer than half the stroke"},
		{sliderSpan(units.Millimetre, 11*units.Metre), rod, "at most 10 m"},
		{sliderSpan(2, 1), rod, "throw"},
	} {
		_, err := PistonPositionBracket(c.throw, c.rod, angle)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
		_, err = PistonAngleBracket(c.throw, c.rod, good)
		require.ErrorIs(t, err, ErrInput)
		_, err = SliderStrokeBracket(c.throw, c.rod, good)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err := PistonPositionBracket(good, rod, mustInterval(t, 0, units.Turn))
	require.ErrorContains(t, err, "within 180°")
	_, err = PistonPositionBracket(good, rod, tolerance.Interval[units.Angle]{})
	require.ErrorContains(t, err, "crank angle")
	_, err = PistonAngleBracket(good, rod, sliderSpan(0, 87*units.Millimetre))
	require.ErrorContains(t, err, "least stroke, 86 mm")
	_, err = SliderStrokeBracket(good, rod, sliderSpan(0, 101*units.Millimetre))
	require.ErrorContains(t, err, "offset")
	_, err = SliderStrokeBracket(good, rod, tolerance.Bracket{})
	require.ErrorContains(t, err, "offset")
}

// No sizes make At, AnglesFor and Peaks disagree or panic.
func FuzzSliderCrank(f *testing.F) {
	f.Add(int64(43e9), int64(143e9), int64(8e8), int64(7e10), int64(2e10), 3000.0)
	f.Add(int64(1), int64(2), int64(0), int64(-1), int64(1), 1e-300)
	f.Fuzz(func(t *testing.T, throw, rod, offset, angle, position int64, rpm float64) {
		s := SliderCrank{units.Length(throw), units.Length(rod), units.Length(offset)}
		m, err := s.At(units.Angle(angle), rpm)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		stroke, err := s.Stroke()
		require.NoError(t, err)
		require.True(t, m.Position >= 0 && m.Position <= stroke+1, "%v of %v", m.Position, stroke)
		require.True(t, m.Fraction >= 0 && m.Fraction <= 1)
		_, _, err = s.Peaks(rpm)
		require.NoError(t, err)
		after, before, err := s.AnglesFor(units.Length(position))
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, after.InRange() && before.InRange() && after >= 0 && before >= 0, "%v %v", after, before)
		// Sizes of an engine undo each other; a rod that hardly clears is steep.
		if s.Throw > units.Millimetre && s.Rod < units.Metre && s.Rod-s.Throw-s.Offset.Abs() > units.Micrometre {
			back, err := s.PositionAt(after)
			require.NoError(t, err)
			require.InDelta(t, float64(position), float64(back), 20+float64(position)/1e8)
		}
	})
}
