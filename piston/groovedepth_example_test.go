package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleGrooveDepth() {
	fmt.Println(piston.GrooveDepth(units.MustParseLength("85.40 mm"), units.MustParseLength("77.60 mm")))
	// Output: 3.9 mm
}

func ExampleGrooveRoot() {
	fmt.Println(piston.GrooveRoot(units.MustParseLength("85.40 mm"), units.MustParseLength("3.90 mm")))
	// Output: 77.6 mm
}

// Below zero the ring stands proud of its land.
func ExampleRingBackClearance() {
	depth := units.MustParseLength("3.50 mm")
	fmt.Println(piston.RingBackClearance(depth, units.MustParseLength("3.20 mm")), piston.RingBackClearance(depth, units.MustParseLength("3.60 mm")))
	// Output: 0.3 mm -0.1 mm
}

func ExampleRingThicknessFor() {
	fmt.Println(piston.RingThicknessFor(units.MustParseLength("3.90 mm"), units.MustParseLength("0.30 mm")))
	// Output: 3.6 mm
}

func ExampleRingBackRunning() {
	fmt.Println(piston.RingBackRunning(units.MustParseLength("86.00 mm"), units.MustParseLength("77.60 mm"), units.MustParseLength("3.60 mm")))
	// Output: 0.6 mm
}

func ExampleMeasureRingBack() {
	_, err := piston.MeasureRingBack(ringBracket("3.50 ±0.02 mm"), ringBracket("3.60 ±0.01 mm"))
	fmt.Println(err)
	// Output: piston: back clearance [-0.13 mm, -0.07 mm] is not 0 mm or more: an interference, the ring stands proud of its land; clean the root, or it is the wrong ring
}

func ExampleAssessRingBack() {
	f, _ := piston.AssessRingBack("piston 1, top groove", tolerance.Spec{New: tolerance.MustParseBand("0.2–0.6 mm")},
		[]tolerance.Bracket{ringBracket("3.90 ±0.02 mm")}, []tolerance.Bracket{ringBracket("3.60 ±0.01 mm")})
	fmt.Println(f.Least, f.Standing)
	// Output: [0.27 mm, 0.33 mm] as new
}

func ExampleGrooveRecutWidth() {
	fmt.Println(piston.GrooveRecutWidth(units.MustParseLength("1.985 mm"), units.MustParseLength("0.050 mm"), units.MustParseLength("0.600 mm")))
	// Output: 2.635 mm
}

func ExampleGrooveSpacer() {
	fmt.Println(piston.GrooveSpacer(units.MustParseLength("2.635 mm"), units.MustParseLength("1.985 mm"), units.MustParseLength("0.050 mm")))
	// Output: 0.6 mm
}

func recutJob() piston.GrooveRecut {
	return piston.GrooveRecut{
		Where: "piston 2, top groove", Width: ringBracket("2.085 ±0.005 mm"), Cut: 100 * units.Micrometre,
		RingHeight: tolerance.MustParseBand("1.978–1.990 mm"), Clearance: tolerance.MustParseBand("0.03–0.07 mm"),
		Land: ringBracket("5.00 ±0.02 mm"), LeastLand: units.MustParseLength("4.20 mm"),
		Spacers: []piston.Spacer{{Name: "1.00 mm", Thickness: tolerance.MustParseBand("0.990–1.000 mm")}, {Name: "0.60 mm", Thickness: tolerance.MustParseBand("0.590–0.600 mm")}},
	}
}

func ExampleChooseSpacer() {
	c, err := piston.ChooseSpacer(recutJob())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range c.Fits {
		fmt.Println(f.Name, "cut to", f.Width, "cleans up:", f.CleansUp, "land left:", f.LandLeft)
	}
	fmt.Println(c.Next)
	// Output:
	// 0.60 mm cut to 2.62–2.638 mm cleans up: within land left: within
	// 1.00 mm cut to 3.02–3.038 mm cleans up: within land left: below
	// re-cut the groove to 2.62–2.638 mm and fit spacer 0.60 mm on the crown's side
}

func ExampleSpacerFit_Fits() {
	c, _ := piston.ChooseSpacer(recutJob())
	fmt.Println(c.Fits[0].Fits(), c.Fits[1].Fits())
	// Output: true false
}
