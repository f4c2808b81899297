package valvetrain_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func ExampleValveMarginAfter() {
	fmt.Println(valvetrain.ValveMarginAfter(stemMM("1.3"), stemMM("0.15")))
	// Output: 1.15 mm
}

func ExampleValveGrindLeft() {
	fmt.Println(valvetrain.ValveGrindLeft(stemMM("1.3"), stemMM("1.0")))
	// Output: 0.3 mm
}

func ExampleValveMarginFor() {
	fmt.Println(valvetrain.ValveMarginFor(stemMM("1.0"), stemMM("0.15")))
	// Output: 1.15 mm
}

func ExampleValveMarginHalf() {
	fmt.Println(valvetrain.ValveMarginHalf(stemMM("1.5")))
	// Output: 0.75 mm
}

// Zero, +0.003, −0.002 and +0.003 in round one turn.
func ExampleValveRunOut() {
	fmt.Println(valvetrain.ValveRunOut(0, 3*units.Thou, -2*units.Thou, 3*units.Thou).Text(units.InInches, 3))
	// Output: 0.005 in
}

func ExampleValveBend() {
	fmt.Println(valvetrain.ValveBend(stemMM("0.05")))
	// Output: 0.025 mm
}

func ExampleValveShortening() {
	fmt.Println(valvetrain.ValveShortening(stemMM("110.5"), stemMM("110.2")))
	// Output: 0.3 mm
}

func ExampleValveTipLeft() {
	fmt.Println(valvetrain.ValveTipLeft(stemMM("0.5"), stemMM("0.2")))
	// Output: 0.3 mm
}

func ExampleValveTipWear() {
	fmt.Println(valvetrain.ValveTipWear(stemMM("0"), stemMM("-0.06")))
	// Output: 0.06 mm
}

// A tenth off a 45° face, square to it.
func ExampleGrindAlong() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", valvetrain.GrindAlong(f(0.1), f(math.Pi/4)))
	// Output: 0.1414 mm
}

func ExampleGrindSquare() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", valvetrain.GrindSquare(f(0.1414), f(math.Pi/4)))
	// Output: 0.1000 mm
}

func ExampleValve_Inspect() {
	r, err := valvetrain.Valve{
		Where: "inlet 2", Margin: []tolerance.Bracket{stemBracket("1.30 ±0.02 mm"), stemBracket("1.25 ±0.02 mm")}, MarginLimits: tolerance.Spec{Wear: tolerance.MustParseBand("min 1.0 mm")},
		StemRun: []tolerance.Bracket{stemBracket("0 mm"), stemBracket("0.06 mm")}, StemRunLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")},
		Sodium: true,
	}.Inspect()
	fmt.Println(err)
	fmt.Println("left to grind off, along the stem:", r.GrindLeft)
	fmt.Println(r.Worst())
	fmt.Println(r.Next)
	// Output:
	// <nil>
	// left to grind off, along the stem: [0.23 mm, 0.27 mm]
	// past the wear limit
	// renew the valve; it is filled with sodium: never cut, drill or grind into it, and get rid of it as its maker says
}

func ExampleValveReport_Worst() {
	var nothing valvetrain.ValveReport
	fmt.Println(nothing.Worst())
	// Output: can't tell
}
