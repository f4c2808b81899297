package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func hone() cylinder.Hone {
	return cylinder.Hone{Bore: 100 * units.Millimetre, SpindleRPM: 100, Travel: 150 * units.Millimetre, Rate: cylinder.CyclesPerMinute(40)}
}

func ExampleHone_CrossHatch() {
	x, _ := hone().CrossHatch()
	fmt.Println(x)
	// Output: 41.81° included (20.91° from the way round; about the axis 138.19°, 69.09° from it)
}

func ExampleHone_RateFor() {
	rate, _ := hone().RateFor(cylinder.IncludedAngle(45 * units.Degree))
	fmt.Println(rate)
	// Output: 86.7527 strokes (43.3763 cycles) per minute
}

func ExampleHone_SpindleFor() {
	rpm, _ := hone().SpindleFor(cylinder.IncludedAngle(45 * units.Degree))
	fmt.Printf("%.1f r/min\n", rpm)
	// Output: 92.2 r/min
}

func ExampleHone_TravelFor() {
	l, _ := hone().TravelFor(cylinder.IncludedAngle(45 * units.Degree))
	fmt.Println(l.Text(units.InMillimetres, 1))
	// Output: 162.7 mm
}

// A text that asks for 60° about the axis means a much steeper mark than one
// that asks for 60° about the way round.
func ExampleAngleAboutAxis() {
	fmt.Println(cylinder.AngleAboutAxis(60 * units.Degree).Included())
	// Output: 120°
}

func ExampleIncludedAngle() {
	fmt.Println(cylinder.IncludedAngle(45 * units.Degree).FromAxis())
	// Output: 67.5°
}

func ExampleHalfAngle() {
	fmt.Println(cylinder.HalfAngle(22 * units.Degree).Included())
	// Output: 44°
}

func ExampleAngleFromAxis() {
	fmt.Println(cylinder.AngleFromAxis(45*units.Degree).Included(), cylinder.AngleFromAxis(45*units.Degree).AboutAxis())
	// Output: 90° 90°
}

func ExampleCrossHatch_Judge() {
	x, _ := hone().CrossHatch()
	fmt.Println(x.Judge(tolerance.MustBetween(40*units.Degree, 50*units.Degree)))
	// Output: within
}

func ExampleStrokesPerMinute() {
	fmt.Println(cylinder.StrokesPerMinute(80))
	// Output: 80 strokes (40 cycles) per minute
}

func ExampleCyclesPerMinute() {
	fmt.Println(cylinder.CyclesPerMinute(40).Strokes())
	// Output: 80
}

// Stroked by hand: 35 to 45 cycles, and the drill drops from 110 to 95 r/min.
func ExampleHoneRange_Included() {
	i, _ := cylinder.HoneRange{
		Bore: exactLength("100 mm"), Travel: exactLength("150 mm"), SpindleRPM: [2]float64{95, 110},
		Rate: [2]cylinder.StrokeRate{cylinder.CyclesPerMinute(35), cylinder.CyclesPerMinute(45)},
	}.Included()
	fmt.Println(i.Text(units.InDegrees, 1))
	// Output: [33.8°, 48.7°]
}

func ExampleCrossHatchRadians() {
	x := cylinder.CrossHatchRadians(
		working.GivenReal("bore", "D", 100, "mm"), working.GivenReal("spindle", "n", 100, "/min"),
		working.GivenReal("travel", "L", 150, "mm"), working.GivenReal("strokes", "s", 80, "/min")).Named("included angle", "θ", "rad")
	s, _ := working.SolveReal(x, working.RealStyle{Places: 3})
	fmt.Print(s.Text())
	// Output:
	// included angle = direction of (travel × strokes, π × bore × spindle) × 2
	// θ = atan2(L × s, π × D × n) × 2
	//   = atan2(150 mm × 80 /min, π × 100 mm × 100 /min) × 2
	//   ≈ 0.730 rad
}

func ExampleHoneStrokes() {
	fmt.Printf("%.1f per minute\n", cylinder.HoneStrokes(tolerance.Float(0.785398), 100, 100, 150))
	// Output: 86.8 per minute
}

func ExampleHoneSpindle() {
	fmt.Printf("%.1f per minute\n", cylinder.HoneSpindle(tolerance.Float(0.785398), 100, 150, 80))
	// Output: 92.2 per minute
}

func ExampleHoneTravel() {
	fmt.Printf("%.1f mm\n", cylinder.HoneTravel(tolerance.Float(0.785398), 100, 100, 80))
	// Output: 162.7 mm
}
