package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleSkimNeeded() {
	fmt.Println(cylinder.SkimNeeded(units.MustParseLength("0.08 mm"), units.MustParseLength("0.03 mm")))
	// Output: 0.11 mm
}

func ExampleHeightLeft() {
	fmt.Println(cylinder.HeightLeft(units.MustParseLength("120.30 mm"), units.MustParseLength("0.11 mm"), units.MustParseLength("120 mm")))
	// Output: 0.19 mm
}

func ExampleSkimLeft() {
	fmt.Println(cylinder.SkimLeft(units.MustParseLength("0.040 in"), units.MustParseLength("0.025 in"), units.MustParseLength("0.010 in")).Text(units.InInches, 3))
	// Output: 0.005 in
}

func ExampleRoundUpTo() {
	fmt.Println(cylinder.RoundUpTo(units.MustParseLength("0.1062 mm"), units.MustParseLength("0.01 mm")))
	// Output: 0.11 mm
}

func ExampleFaceSkim_Plan() {
	gap, _ := tolerance.ParseBracket("[0.1016 mm, 0.127 mm)") // .004 in enters, .005 in doesn't
	p, _ := cylinder.FaceSkim{
		Departure: gap, Stock: 30 * units.Micrometre, Step: 10 * units.Micrometre,
		Height: exactLength("120.10 mm"), LeastHeight: units.MustParseLength("120 mm"),
	}.Plan()
	fmt.Println(p.Off, p.Left, p.Verdict)
	// Output: 0.16 mm -0.06 mm below
}

// A skim of 0.25 mm, and a camshaft driven by a chain of 9.525 mm pitch over 40
// teeth.
func ExampleRetardByTeeth() {
	r, _ := cylinder.RetardByTeeth(exactLength("0.25 mm"), 40, units.MustParseLength("9.525 mm"))
	fmt.Println(r.Cam.Text(units.InDegrees, 2), "of the camshaft,", r.Crank.Text(units.InDegrees, 2), "of the crankshaft")
	// Output: (0.23°, 0.24°) of the camshaft, (0.47°, 0.48°) of the crankshaft
}

func ExampleRetardByRadius() {
	r, _ := cylinder.RetardByRadius(exactLength("0.50 mm"), exactLength("50 mm"))
	fmt.Println(r.Cam.Text(units.InDegrees, 3))
	// Output: [0.572°, 0.573°]
}

func ExampleRetardRadians() {
	fmt.Printf("%.3f°\n", cylinder.InDegrees(cylinder.RetardRadians(tolerance.Float(0.5), 50)))
	// Output: 0.573°
}

// With the tight side inclined by what two sprockets of 2 to 1 give it.
func ExampleRetardRadiansAt() {
	angle := cylinder.StrandAngle(tolerance.Float(50), 25, 300)
	fmt.Printf("%.4f°\n", cylinder.InDegrees(cylinder.RetardRadiansAt(tolerance.Float(0.5), 50, angle)))
	// Output: 0.5710°
}

func ExampleStrandAngle() {
	fmt.Printf("%.2f°\n", cylinder.InDegrees(cylinder.StrandAngle(tolerance.Float(50), 25, 300)))
	// Output: 4.78°
}

func ExampleLoweringFor() {
	fmt.Printf("%.3f mm\n", cylinder.LoweringFor(tolerance.Float(0.01), 50))
	// Output: 0.500 mm
}

func ExamplePitchRadius() {
	fmt.Printf("%.2f mm\n", cylinder.PitchRadius(tolerance.Float(9.525), 40))
	// Output: 60.64 mm
}

func ExampleInDegrees() {
	fmt.Printf("%.4f\n", cylinder.InDegrees(tolerance.Float(0.01)))
	// Output: 0.5730
}
