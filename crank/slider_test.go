package crank

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

type float = tolerance.Float

func radians(deg float64) float { return float(deg / 180 * math.Pi) }
func degrees(x float) float64   { return float64(x) * 180 / math.Pi }

func sliderOf(c vectors.Case) Slider[float] {
	return Slider[float]{Throw: float(c.Float("throw")), Rod: float(c.Float("rod")), Offset: float(c.Float("offset"))}
}

// The printed pairs of a government manual, and fractions of the stroke that
// were recomputed independently.
func TestPistonPositionPublished(t *testing.T) {
	vectors.Load(t, "published/crank_slider.txt").Each(t, func(t *testing.T, c vectors.Case) {
		throw, rod := float(c.Float("throw")), float(c.Float("rod"))
		x := PistonPosition(throw, rod, radians(c.Float("angle")))
		if c.Has("position") {
			c.Near("position", float64(x))
			s := Slider[float]{Throw: throw, Rod: rod}
			c.Near("inverse", degrees(s.AngleAfterTop(float(c.Float("from")))))
		} else {
			c.Ignore("from", "inverse")
		}
		if c.Has("fraction") {
			c.Near("fraction", float64(x/(2*throw)))
		}
	})
}

// Handbooks that work with the two-term series print other numbers than the
// exact ones; both are known.
func TestSeriesDiffers(t *testing.T) {
	vectors.Load(t, "published/crank_slider_series.txt").Each(t, func(t *testing.T, c vectors.Case) {
		throw, rod := float(c.Float("throw")), float(c.Float("rod"))
		s := Slider[float]{Throw: throw, Rod: rod}
		omega := c.Float("rpm") * math.Pi / 30
		var series, exact float64
		switch a := radians(c.Float("angle")); c.Choice("what", "speed", "acceleration", "peak") {
		case "speed":
			series, exact = float64(SeriesSpeed(throw, rod, a))*omega, float64(s.Speed(a))*omega
		case "acceleration":
			series, exact = float64(SeriesAcceleration(throw, rod, a))*omega*omega, float64(s.Acceleration(a))*omega*omega
		case "peak":
			series, exact = degrees(seriesPeak(throw, rod)), degrees(float(zeroAcceleration(s.Curve(), 0, math.Pi)))
		}
		c.Near("printed", series)
		c.Near("series", series)
		c.Near("exact", exact)
		require.Greater(t, math.Abs(series-exact), 0.0005*math.Abs(exact))
	})
}

// seriesPeak is where the series' acceleration is zero: 2k·c² + c − k = 0 with
// c = cos θ and k = throw/rod.
func seriesPeak(throw, rod float) float {
	k := float64(throw / rod)
	return float(math.Acos((-1 + math.Sqrt(1+8*k*k)) / (4 * k)))
}

func TestSliderReference(t *testing.T) {
	vectors.Load(t, "reference/crank_slider.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s, a := sliderOf(c), radians(c.Float("angle"))
		size := float64(s.Throw + s.Rod)
		require.InDelta(t, c.Float("position"), float64(s.Position(a)), 2e-15*size)
		// The nearer the rod to its shortest, the steeper.
		steep := float64((s.Throw + s.Rod) / (s.Rod - s.Throw - max(s.Offset, -s.Offset)))
		require.InDelta(t, c.Float("speed"), float64(s.Speed(a)), 2e-15*size*steep)
		require.InDelta(t, c.Float("acceleration"), float64(s.Acceleration(a)), 4e-15*size*steep*steep)
		require.InEpsilon(t, c.Float("stroke"), float64(s.Stroke()), 2e-15*steep)
		require.InDelta(t, c.Float("top"), degrees(s.TopAngle()), 1e-13)
		require.InDelta(t, c.Float("bottom"), degrees(s.BottomAngle()), 1e-12)
		if s.Offset == 0 {
			require.InDelta(t, c.Float("position"), float64(PistonPosition(s.Throw, s.Rod, a)), 2e-15*size)
		}
	})
}

func TestSliderPeaksReference(t *testing.T) {
	vectors.Load(t, "reference/crank_slider_peaks.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := sliderOf(c)
		bottom := float64(s.BottomAngle())
		down, up := float(zeroAcceleration(s.Curve(), 0, bottom)), float(zeroAcceleration(s.Curve(), bottom, 2*math.Pi))
		require.InDelta(t, c.Float("down"), degrees(down), 1e-9)
		require.InDelta(t, c.Float("up"), degrees(up), 1e-9)
		require.InEpsilon(t, c.Float("downspeed"), float64(s.Speed(down)), 1e-13)
		require.InEpsilon(t, c.Float("upspeed"), float64(s.Speed(up)), 1e-13)
		x := float(c.Float("position"))
		require.InDelta(t, c.Float("after"), degrees(s.AngleAfterTop(x)), 1e-11)
		require.InDelta(t, c.Float("before"), degrees(s.AngleBeforeTop(x)), 1e-11)
	})
}

func sliderSizes(seed uint64, n int, offset bool) func(func(Slider[float])) {
	rnd := rand.New(rand.NewPCG(seed, 3))
	return func(yield func(Slider[float])) {
		for range n {
			throw := 15 + 80*rnd.Float64()
			s := Slider[float]{Throw: float(throw), Rod: float(throw * (1.4 + 4*rnd.Float64()))}
			if offset {
				s.Offset = float(throw * 0.35 * (2*rnd.Float64() - 1))
			}
			yield(s)
		}
	}
}

// Without offset: the stroke at 180°, half the stroke between 60° and 120°
// whatever the rod, and alike before and after top dead centre.
func TestPistonPositionIdentities(t *testing.T) {
	sliderSizes(1, 500, false)(func(s Slider[float]) {
		r := float64(s.Throw)
		x := func(deg float64) float64 { return float64(PistonPosition(s.Throw, s.Rod, radians(deg))) }
		require.InDelta(t, 2*r, x(180), 1e-12)
		require.InDelta(t, r, x(120)-x(60), 1e-12)
		for _, d := range []float64{1, 33, 90, 141.5} {
			require.InDelta(t, x(d), x(-d), 1e-12)
			require.InDelta(t, x(180-d)-x(d), 2*r*math.Cos(d*math.Pi/180), 1e-12)
			require.InDelta(t, x(d), float64(s.Position(radians(d))), 1e-12)
		}
		require.InEpsilon(t, 2*r, float64(s.Stroke()), 1e-15)
		require.InDelta(t, r*(1+r/float64(s.Rod)), float64(s.Acceleration(0)), 1e-11)
		require.InDelta(t, -r*(1-r/float64(s.Rod)), float64(s.Acceleration(math.Pi)), 1e-11)
		// The cubic whose root is sin² of the angle of the greatest speed.
		n2 := float64(s.Rod/s.Throw) * float64(s.Rod/s.Throw)
		u := math.Pow(math.Sin(zeroAcceleration(s.Curve(), 0, math.Pi)), 2)
		require.InDelta(t, 0, (u*u*u-n2*u*u-n2*n2*u+n2*n2)/(n2*n2), 1e-12)
	})
}

func TestSliderWithOffset(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 3))
	sliderSizes(2, 500, true)(func(s Slider[float]) {
		bottom, stroke := s.BottomAngle(), s.Stroke()
		require.InDelta(t, 0, float64(s.Position(0)), 1e-12)
		require.InDelta(t, 0, float64(s.Speed(0)), 1e-11)
		require.InDelta(t, float64(stroke), float64(s.Position(bottom)), 1e-11)
		require.InDelta(t, 0, float64(s.Speed(bottom)), 1e-9)
		require.Greater(t, stroke, 2*s.Throw, "an offset lengthens the stroke")
		// Turned round, the engine is its own mirror image.
		mirror := Slider[float]{s.Throw, s.Rod, -s.Offset}
		a := float(rnd.Float64() * 6)
		require.InDelta(t, float64(s.Position(a)), float64(mirror.Position(-a)), 1e-11)
		require.InDelta(t, float64(s.Position(a)), float64(s.PositionOfThrow(s.TopHeight(), a+s.TopAngle())), 1e-11)
		// Each inverse undoes its forward, and the piston passes nowhere twice
		// between the dead centres.
		x := float(rnd.Float64()) * stroke
		require.InDelta(t, float64(x), float64(s.Position(s.AngleAfterTop(x))), 1e-11)
		require.InDelta(t, float64(x), float64(s.Position(-s.AngleBeforeTop(x))), 1e-11)
		require.InDelta(t, float64(s.AngleAfterTop(x)-s.AngleBeforeTop(x)), float64(2*s.StopSkew(x)), 1e-13)
		require.Less(t, s.AngleAfterTop(x), bottom)
		require.Zero(t, s.AngleAfterTop(0)+s.AngleBeforeTop(0))
		require.False(t, s.AngleAfterTop(stroke*1.01).InRange())
		require.False(t, s.AngleAfterTop(-0.01).InRange())
	})
	short := Slider[float]{50, 40, 0}
	require.False(t, short.Position(math.Pi/2).InRange())
	require.False(t, PistonPosition[float](50, 40, math.Pi/2).InRange())
}

// The acceleration changes its sign once between the dead centres, which is
// what the search rests on.
func TestOnePeakEachWay(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 3))
	for range 300 {
		offset := 0.9 * (2*rnd.Float64() - 1)
		s := Slider[float]{1, float(1 + math.Abs(offset) + math.Exp(-9+11*rnd.Float64())), float(offset)}
		c, bottom := s.Curve(), float64(s.BottomAngle())
		for _, way := range [][2]float64{{0, bottom}, {bottom, 2 * math.Pi}} {
			changes, last := 0, c.Acceleration(float(way[0])) > 0
			for i := 1; i < 720; i++ {
				now := c.Acceleration(float(way[0]+(way[1]-way[0])*float64(i)/720)) > 0
				if now != last {
					changes++
				}
				last = now
			}
			require.Equal(t, 1, changes, "%+v", s)
		}
	}
}

// Speed and acceleration over the derivative reading are consistent with it:
// the sensitivity of the position to the angle is the speed, and of the speed
// the acceleration.
func TestSliderDerivatives(t *testing.T) {
	angle, err := uncertainty.NewDual("angle", 0.7, "rad", uncertainty.NormalShape, 0.001)
	require.NoError(t, err)
	exactly := uncertainty.ExactlyReal
	s := Slider[uncertainty.Dual]{exactly(43), exactly(143.5), exactly(0.8)}
	f := Slider[float]{43, 143.5, 0.8}
	source := angle.Sources()[0]
	require.InDelta(t, float64(f.Speed(0.7)), s.Position(angle).Sensitivity(source), 1e-11)
	require.InDelta(t, float64(f.Acceleration(0.7)), s.Speed(angle).Sensitivity(source), 1e-11)
	require.InDelta(t, float64(f.Position(0.7)), s.Position(angle).Value(), 1e-12)
	rod, err := uncertainty.NewDual("rod", 143.5, "mm", uncertainty.NormalShape, 0.05)
	require.NoError(t, err)
	x := PistonPosition(exactly(43), rod, exactly(1.2))
	// dx/dl = 1 − l/√(l² − r² sin² θ)
	q := 43 * math.Sin(1.2)
	require.InDelta(t, 0.05*math.Abs(1-143.5/math.Sqrt(143.5*143.5-q*q)), x.StandardUncertainty(), 1e-12)
}

func TestSliderWorking(t *testing.T) {
	g := working.GivenReal
	x := PistonPosition(g("throw", "r", 3, "in"), g("rod", "l", 12, "in"), g("crank angle", "θ", 19*math.Pi/180, "rad")).Named("piston below top dead centre", "x", "in")
	s, err := working.SolveReal(x, working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "≈ 0.2033 in") // 0.203258: manual prints 0.2032, truncated
	full := Slider[working.RealTerm]{g("throw", "r", 43, "mm"), g("rod", "l", 143.5, "mm"), g("offset", "e", 0.8, "mm")}
	for _, term := range []working.RealTerm{full.Position(g("angle", "φ", 1, "rad")), full.Speed(g("angle", "φ", 1, "rad")), full.Acceleration(g("angle", "φ", 1, "rad")), full.AngleAfterTop(g("position", "x", 20, "mm")), full.BottomAngle()} {
		_, err := working.SolveReal(term.Named("answer", "a", ""), working.RealStyle{Places: 3})
		require.NoError(t, err)
	}
}

func TestStrokeAndThrow(t *testing.T) {
	require.Equal(t, 86*units.Millimetre, SliderStroke(43*units.Millimetre))
	require.Equal(t, 43*units.Millimetre, SliderThrow(86*units.Millimetre))
	b, err := tolerance.PlusMinus(43*units.Millimetre, 10*units.Micrometre)
	require.NoError(t, err)
	w, _ := SliderStroke(b).Width()
	require.Equal(t, 40*units.Micrometre, w)
	e, err := uncertainty.Normal("throw", 43*units.Millimetre, 5*units.Micrometre)
	require.NoError(t, err)
	require.InDelta(t, float64(10*units.Micrometre), float64(SliderStroke(e).StandardUncertainty()), 1)
	term := SliderStroke(working.Given("throw", "r", 43*units.Millimetre)).Named("stroke", "S")
	s, err := working.Solve(term, units.Style[units.Length]{Unit: units.InMillimetres, Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "= 86.0 mm")
	require.Equal(t, float(1.75), RodRatio[float](150.5, 86))
	require.Equal(t, float(150.5), RodOfRatio[float](1.75, 86))
}

func TestMeanPistonSpeedPublished(t *testing.T) {
	vectors.Load(t, "published/crank_pistonspeed.txt").Each(t, func(t *testing.T, c vectors.Case) {
		v := MeanPistonSpeed(float(c.Float("stroke")), float(c.Float("rpm")))
		c.Near("speed", float64(v)*c.Float("per"))
		require.InEpsilon(t, c.Float("rpm"), float64(RPMForMeanSpeed(v, float(c.Float("stroke")))), 1e-15)
		require.InEpsilon(t, c.Float("stroke"), float64(StrokeForMeanSpeed(v, float(c.Float("rpm")))), 1e-15)
	})
}

func TestSliderAllocatesNothing(t *testing.T) {
	s := Slider[float]{43, 143.5, 0.8}
	c := s.Curve()
	require.Zero(t, testing.AllocsPerRun(100, func() {
		sinkFloat = c.Position(1) + c.Speed(1) + c.Acceleration(1) + s.AngleAfterTop(20) + s.Stroke()
	}))
	full := SliderCrank{43 * units.Millimetre, 143_500 * units.Micrometre, 0}
	require.Zero(t, testing.AllocsPerRun(100, func() { sinkMotion, _ = full.At(units.Degree, 3000) }))
}

var (
	sinkFloat  float
	sinkMotion PistonMotion
)

func BenchmarkSlider(b *testing.B) {
	s := Slider[float]{43, 143.5, 0.8}
	curve := s.Curve()
	angle := float(0)
	next := func() float {
		if angle += 0.01; angle > 6 {
			angle = 0
		}
		return angle
	}
	b.Run("lib=tenthou/op=position", func(b *testing.B) {
		for b.Loop() {
			sinkFloat = curve.Position(next())
		}
	})
	b.Run("lib=tenthou/op=inline", func(b *testing.B) {
		for b.Loop() {
			sinkFloat = PistonPosition(s.Throw, s.Rod, next())
		}
	})
	b.Run("lib=tenthou/op=speed", func(b *testing.B) {
		for b.Loop() {
			sinkFloat = curve.Speed(next())
		}
	})
	b.Run("lib=tenthou/op=acceleration", func(b *testing.B) {
		for b.Loop() {
			sinkFloat = curve.Acceleration(next())
		}
	})
	b.Run("lib=tenthou/op=angle", func(b *testing.B) {
		for b.Loop() {
			sinkFloat = s.AngleAfterTop(10 * next())
		}
	})
	b.Run("lib=math/op=inline", func(b *testing.B) {
		for b.Loop() {
			sin, cos := math.Sincos(float64(next()))
			sinkFloat = float(43 + 143.5 - 43*cos - math.Sqrt(143.5*143.5-43*43*sin*sin))
		}
	})
	full := SliderCrank{43 * units.Millimetre, 143_500 * units.Micrometre, 800 * units.Micrometre}
	b.Run("lib=tenthou/op=motion", func(b *testing.B) {
		for b.Loop() {
			sinkMotion, _ = full.At(units.Degree, 3000)
		}
	})
	b.Run("lib=tenthou/op=peaks", func(b *testing.B) {
		for b.Loop() {
			sinkMotion, _, _ = full.Peaks(3000)
		}
	})
}
