package crank_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// Fuel injection at 19° before top dead centre, on an engine of 6 in stroke
// with 12 in rods: TM 5-6115-593-34 has the piston 0.2032 in down.
func ExamplePistonPosition() {
	x := crank.PistonPosition(
		working.GivenReal("throw", "r", 3, "in"),
		working.GivenReal("rod", "l", 12, "in"),
		working.GivenReal("crank angle", "θ", 0.331613, "rad")).
		Named("piston below top dead centre", "x", "in")
	s, _ := working.SolveReal(x, working.RealStyle{Places: 4, Bare: true})
	fmt.Print(s.Text())
	// Output:
	// piston below top dead centre = throw + rod − throw × cosine of (crank angle) − square root of ((rod − throw × sine of (crank angle)) × (rod + throw × sine of (crank angle)))
	// x = r + l − r × cos(θ) − √((l − r × sin(θ)) × (l + r × sin(θ)))
	//   = 3 + 12 − 3 × cos(0.331613) − √((12 − 3 × sin(0.331613)) × (12 + 3 × sin(0.331613)))
	//   ≈ 0.2033 in
}

// A tenth of a millimetre of doubt about the rod hardly moves the piston.
func ExampleSlider_Position() {
	rod, _ := uncertainty.NewDual("rod", 143.5, "mm", uncertainty.RectangularShape, 0.1)
	exactly := uncertainty.ExactlyReal
	s := crank.Slider[uncertainty.Dual]{Throw: exactly(43), Rod: rod, Offset: exactly(0.8)}
	x := s.Position(exactly(math.Pi / 2))
	fmt.Printf("%.3f mm, u = %.4f mm\n", x.Value(), x.StandardUncertainty())
	// Output: 49.662 mm, u = 0.0028 mm
}

// A curve is for many angles of one sliderEngine.
func ExampleSlider_Curve() {
	curve := crank.Slider[tolerance.Float]{Throw: 43, Rod: 143.5}.Curve()
	for deg := 0; deg <= 180; deg += 60 {
		a := tolerance.Float(float64(deg) * math.Pi / 180)
		fmt.Printf("%3d° %6.2f mm\n", deg, curve.Position(a))
	}
	// Output:
	//   0°   0.00 mm
	//  60°  26.42 mm
	// 120°  69.42 mm
	// 180°  86.00 mm
}

func ExampleSliderCurve_Position() {
	s := crank.Slider[tolerance.Float]{Throw: 43, Rod: 143.5, Offset: 0.8}
	a := tolerance.Float(1)
	fmt.Println(s.Curve().Position(a) == s.Position(a))
	// Output: true
}

func ExampleSliderCurve_Speed() {
	c := crank.Slider[tolerance.Float]{Throw: 43, Rod: 143.5}.Curve()
	// 3000 r/min are 100π rad/s.
	fmt.Printf("%.2f m/s\n", c.Speed(math.Pi/2)*100*math.Pi/1000)
	// Output: 13.51 m/s
}

func ExampleSliderCurve_Acceleration() {
	c := crank.Slider[tolerance.Float]{Throw: 43, Rod: 143.5}.Curve()
	omega := tolerance.Float(100 * math.Pi)
	fmt.Printf("%.0f m/s² at the top, %.0f at the bottom\n", c.Acceleration(0)*omega*omega/1000, c.Acceleration(math.Pi)*omega*omega/1000)
	// Output: 5516 m/s² at the top, -2972 at the bottom
}

func ExampleSlider_PositionOfThrow() {
	s := crank.Slider[tolerance.Float]{Throw: 43, Rod: 143.5, Offset: 0.8}
	fmt.Printf("%.3f mm\n", s.PositionOfThrow(s.TopHeight(), math.Pi/2+s.TopAngle()))
	// Output: 49.662 mm
}

func ExampleSlider_TopHeight() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 1}
	fmt.Printf("%.4f mm\n", s.TopHeight())
	// Output: 179.9972 mm
}

func ExampleSlider_BottomHeight() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 1}
	fmt.Printf("%.4f mm\n", s.BottomHeight())
	// Output: 99.9950 mm
}

// A desaxé engine has a stroke of more than twice the throw.
func ExampleSlider_Stroke() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 10}
	fmt.Printf("%.3f mm\n", s.Stroke())
	// Output: 80.223 mm
}

func ExampleSlider_TopAngle() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 10}
	fmt.Printf("%.2f° after upright\n", s.TopAngle()*180/math.Pi)
	// Output: -3.18° after upright
}

func ExampleSlider_BottomAngle() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 10}
	fmt.Printf("%.2f° down, the rest up\n", s.BottomAngle()*180/math.Pi)
	// Output: 177.45° down, the rest up
}

func ExampleSlider_Speed() {
	s := crank.Slider[tolerance.Float]{Throw: 0.3, Rod: 1.5} // metres
	fmt.Printf("%.4f m/s\n", s.Speed(40*math.Pi/180)*180*math.Pi/30)
	// Output: 4.1964 m/s
}

func ExampleSlider_Acceleration() {
	s := crank.Slider[tolerance.Float]{Throw: 0.3, Rod: 1.5} // metres
	omega := tolerance.Float(180 * math.Pi / 30)
	fmt.Printf("%.3f m/s²\n", s.Acceleration(40*math.Pi/180)*omega*omega)
	// Output: 85.599 m/s²
}

func ExampleSlider_AngleAfterTop() {
	s := crank.Slider[tolerance.Float]{Throw: 3, Rod: 12} // inches
	fmt.Printf("%.4f°\n", s.AngleAfterTop(0.2032)*180/math.Pi)
	// Output: 18.9972°
}

func ExampleSlider_AngleBeforeTop() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 1}
	fmt.Printf("%.3f° before, %.3f° after\n", s.AngleBeforeTop(5)*180/math.Pi, s.AngleAfterTop(5)*180/math.Pi)
	// Output: 25.615° before, 25.597° after
}

func ExampleSlider_StopSkew() {
	s := crank.Slider[tolerance.Float]{Throw: 40, Rod: 140, Offset: 1}
	fmt.Printf("%.4f°\n", s.StopSkew(5)*180/math.Pi)
	// Output: -0.0091°
}

// The handbook's two-term series against the exact position, at 90° with a rod
// of 1.5 strokes.
func ExampleSeriesPosition() {
	exact := crank.PistonPosition[tolerance.Float](40, 120, math.Pi/2)
	series := crank.SeriesPosition[tolerance.Float](40, 120, math.Pi/2)
	fmt.Printf("%.3f mm, not %.3f mm\n", exact, series)
	// Output: 46.863 mm, not 46.667 mm
}

func ExampleSeriesSpeed() {
	fmt.Printf("%.4f m/s\n", crank.SeriesSpeed[tolerance.Float](0.3, 1.5, 40*math.Pi/180)*180*math.Pi/30)
	// Output: 4.1918 m/s
}

func ExampleSeriesAcceleration() {
	omega := tolerance.Float(180 * math.Pi / 30)
	fmt.Printf("%.3f m/s²\n", crank.SeriesAcceleration[tolerance.Float](0.3, 1.5, 40*math.Pi/180)*omega*omega)
	// Output: 85.356 m/s²
}

func ExampleSliderStroke() {
	fmt.Println(crank.SliderStroke(43*units.Millimetre), crank.SliderStroke(3*units.Inch))
	// Output: 86 mm 152.4 mm
}

func ExampleSliderThrow() {
	fmt.Println(crank.SliderThrow(86 * units.Millimetre))
	// Output: 43 mm
}

func ExampleRodRatio() {
	fmt.Printf("%.2f\n", crank.RodRatio[tolerance.Float](143.5, 86))
	// Output: 1.67
}

func ExampleRodOfRatio() {
	fmt.Printf("%.1f mm\n", crank.RodOfRatio[tolerance.Float](1.75, 86))
	// Output: 150.5 mm
}

func ExampleMeanPistonSpeed() {
	fmt.Printf("%.1f m/s\n", crank.MeanPistonSpeed[tolerance.Float](140, 2400))
	// Output: 11.2 m/s
}

func ExampleRPMForMeanSpeed() {
	fmt.Printf("%.0f r/min\n", crank.RPMForMeanSpeed[tolerance.Float](11.2, 140))
	// Output: 2400 r/min
}

func ExampleStrokeForMeanSpeed() {
	fmt.Printf("%.0f mm\n", crank.StrokeForMeanSpeed[tolerance.Float](11.2, 2400))
	// Output: 140 mm
}

var sliderEngine = crank.SliderCrank{Throw: 43 * units.Millimetre, Rod: 143_500 * units.Micrometre, Offset: 800 * units.Micrometre}

func ExampleSliderCrank_At() {
	m, _ := sliderEngine.At(90*units.Degree, 3000)
	fmt.Printf("%s down, %.2f m/s, %.0f m/s²\n", m.Position.Text(units.InMillimetres, 3), m.SpeedMPS, m.AccelerationMPS2)
	_, err := sliderEngine.At(90*units.Degree, 0)
	fmt.Println(err)
	// Output:
	// 49.662 mm down, 13.53 m/s, -1342 m/s²
	// crank: speed 0 r/min is not above 0 r/min and at most a million
}

func ExampleSliderCrank_PositionAt() {
	x, _ := sliderEngine.PositionAt(-15 * units.Degree)
	fmt.Println(x.Text(units.InMillimetres, 3))
	// Output: 1.897 mm
}

func ExampleSliderCrank_Check() {
	fmt.Println(crank.SliderCrank{Throw: 43 * units.Millimetre, Rod: 43 * units.Millimetre}.Check())
	// Output: crank: rod 43 mm is not longer than half the stroke and the offset together, 43 mm, so that the crank goes round
}

func ExampleSliderCrank_Float() {
	fmt.Println(sliderEngine.Float().Rod)
	// Output: 143.5
}

func ExampleSliderCrank_String() {
	fmt.Println(sliderEngine)
	// Output: throw 43 mm, rod 143.5 mm, offset 0.8 mm
}

func ExampleSliderCrank_Stroke() {
	s, _ := sliderEngine.Stroke()
	fmt.Println(s.Text(units.InMillimetres, 4))
	// Output: 86.0015 mm
}

func ExampleSliderCrank_DeadCentres() {
	top, bottom, _ := sliderEngine.DeadCentres()
	fmt.Println(top.Text(units.InDegrees, 2), bottom.Text(units.InDegrees, 2))
	// Output: -0.25° 179.79°
}

func ExampleSliderCrank_AnglesFor() {
	after, before, _ := sliderEngine.AnglesFor(2 * units.Millimetre)
	fmt.Println(after.Text(units.InDegrees, 2), "after,", before.Text(units.InDegrees, 2), "before")
	// Output: 15.40° after, 15.41° before
}

func ExampleSliderCrank_StopError() {
	late, _ := sliderEngine.StopError(2 * units.Millimetre)
	fmt.Println(late.Text(units.InDegrees, 4))
	// Output: -0.0027°
}

func ExampleSliderCrank_Peaks() {
	down, up, _ := sliderEngine.Peaks(3000)
	fmt.Printf("down %.2f m/s at %s, up %.2f m/s at %s\n", down.SpeedMPS, down.Angle.Text(units.InDegrees, 1), -up.SpeedMPS, up.Angle.Text(units.InDegrees, 1))
	// Output: down 14.13 m/s at 74.5°, up 14.08 m/s at 285.4°
}

func ExampleSliderCrank_MeanSpeedMPS() {
	v, _ := sliderEngine.MeanSpeedMPS(3000)
	fmt.Printf("%.2f m/s\n", v)
	// Output: 8.60 m/s
}

func ExamplePistonPositionBracket() {
	throw, _ := tolerance.ParseBracket("43 ±0.02 mm")
	rod, _ := tolerance.ParseBracket("143.5 ±0.05 mm")
	angle, _ := tolerance.ParseInterval[units.Angle]("19 ±0.5°")
	x, _ := crank.PistonPositionBracket(throw, rod, angle)
	fmt.Println(x.Text(units.InMillimetres, 3))
	// Output: [2.870 mm, 3.189 mm]
}

func ExamplePistonAngleBracket() {
	throw, _ := tolerance.ParseBracket("43 ±0.02 mm")
	rod, _ := tolerance.ParseBracket("143.5 ±0.05 mm")
	down, _ := tolerance.ParseBracket("3 ±0.01 mm")
	a, _ := crank.PistonAngleBracket(throw, rod, down)
	fmt.Println(a.Text(units.InDegrees, 2))
	// Output: [18.87°, 18.96°]
}

func ExampleSliderStrokeBracket() {
	throw, _ := tolerance.ParseBracket("43 ±0.02 mm")
	rod, _ := tolerance.ParseBracket("143.5 ±0.05 mm")
	offset, _ := tolerance.ParseBracket("0.8 ±0.1 mm")
	s, _ := crank.SliderStrokeBracket(throw, rod, offset)
	fmt.Println(s.Text(units.InMillimetres, 4))
	// Output: [85.9611 mm, 86.0419 mm]
}
