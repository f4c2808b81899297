package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// The dial stands 20 mm beyond a guide that holds the stem over 50 mm.
func ExampleRockingClearance() {
	c := valvetrain.RockingClearance(90*units.Micrometre, 50*units.Millimetre, 20*units.Millimetre)
	fmt.Println(c)
	// Output: 0.05 mm
}

// With a bracket for the dial's travel, the bracket of the clearance.
func ExampleRockingClearance_bracket() {
	travel, _ := tolerance.PlusMinus(90*units.Micrometre, 9*units.Micrometre)
	exactly := tolerance.Exactly[units.Length]
	fmt.Println(valvetrain.RockingClearance(travel, exactly(50*units.Millimetre), exactly(20*units.Millimetre)))
	// Output: [0.045 mm, 0.055 mm]
}

// The same formula writes its working.
func ExampleRockingClearance_working() {
	c := valvetrain.RockingClearance(working.Given("travel", "R", 90*units.Micrometre), working.Given("engaged length", "L", 50*units.Millimetre),
		working.Given("dial beyond the guide", "h", 20*units.Millimetre)).Named("clearance", "c")
	s, _ := working.Solve(c, units.Style[units.Length]{Places: 2})
	fmt.Print(s.Text())
	// Output:
	// clearance = travel × engaged length ÷ (engaged length + 2 × dial beyond the guide)
	// c = R × L ÷ (L + 2 × h)
	//   = 0.09 mm × 50.00 mm ÷ (50.00 mm + 2 × 20.00 mm)
	//   = 0.05 mm
}

// Half the guide's length out, the dial shows twice the clearance.
func ExampleRockingTravel() {
	fmt.Println(valvetrain.RockingTravel(50*units.Micrometre, 50*units.Millimetre, 25*units.Millimetre))
	// Output: 0.1 mm
}

func ExampleRockingShortfall() {
	fmt.Println(valvetrain.RockingShortfall(100*units.Micrometre, 50*units.Millimetre, 25*units.Millimetre, 8*units.Millimetre))
	// Output: 0.000004 mm
}

func ExampleRockingSlope() {
	type f = tolerance.Float
	fmt.Printf("%.8f\n", valvetrain.RockingSlope(f(8.05), f(8), f(50)))
	// Output: 0.00099992
}

func ExampleRockingTravelExact() {
	type f = tolerance.Float
	fmt.Printf("%.6f mm\n", valvetrain.RockingTravelExact(f(8.05), f(8), f(50), f(20)))
	// Output: 0.089993 mm
}

func ExampleRockingClearanceExact() {
	type f = tolerance.Float
	fmt.Printf("%.6f mm\n", valvetrain.RockingClearanceExact(f(0.0899928), f(8), f(50), f(20)))
	// Output: 0.050000 mm
}

// Mouths of 0.04 and 0.10: the dial sees the near one, and h/L of both.
func ExampleRockingMouths() {
	fmt.Println(valvetrain.RockingMouths(40*units.Micrometre, 100*units.Micrometre, 50*units.Millimetre, 20*units.Millimetre))
	// Output: 0.096 mm
}

// What the formula for a straight guide makes of that: neither mouth.
func ExampleRockingMean() {
	m := valvetrain.RockingMean(40*units.Micrometre, 100*units.Micrometre, 50*units.Millimetre, 20*units.Millimetre)
	fmt.Println(m.Text(units.InMillimetres, 4))
	// Output: 0.0533 mm
}

func ExampleRockingNear() {
	fmt.Println(valvetrain.RockingNear(96*units.Micrometre, 100*units.Micrometre, 50*units.Millimetre, 20*units.Millimetre).Text(units.InMillimetres, 3))
	// Output: 0.040 mm
}

func ExampleRockingFar() {
	fmt.Println(valvetrain.RockingFar(96*units.Micrometre, 40*units.Micrometre, 50*units.Millimetre, 20*units.Millimetre))
	// Output: 0.1 mm
}

// Rocked twice, with the dial 20 and 40 mm out.
func ExampleRockingNearOfTwo() {
	fmt.Println(valvetrain.RockingNearOfTwo(96*units.Micrometre, 20*units.Millimetre, 152*units.Micrometre, 40*units.Millimetre))
	// Output: 0.04 mm
}

func ExampleRockingFarOfTwo() {
	fmt.Println(valvetrain.RockingFarOfTwo(96*units.Micrometre, 20*units.Millimetre, 152*units.Micrometre, 40*units.Millimetre, 50*units.Millimetre))
	// Output: 0.1 mm
}

// A narrow waist stops the stem before the far mouth does.
func ExampleRockingStations() {
	at := func(depth, clearance units.Length) valvetrain.RockingStation {
		return valvetrain.RockingStation{Depth: depth * units.Millimetre, Clearance: tolerance.Exactly(clearance * units.Micrometre)}
	}
	mouths, _ := valvetrain.RockingStations(20*units.Millimetre, at(0, 40), at(50, 100))
	waist, _ := valvetrain.RockingStations(20*units.Millimetre, at(0, 40), at(25, 20), at(50, 100))
	fmt.Println(mouths, waist)
	// Output: 0.096 mm 0.088 mm
}

func ExampleRocking_Inspect() {
	parse := func(s string) tolerance.Bracket { b, _ := tolerance.ParseBracket(s); return b }
	r, err := valvetrain.Rocking{
		Where: "exhaust 3", Travel: parse("0.09 ±0.01 mm"), Engaged: parse("50 mm"), Beyond: parse("20 mm"), Stem: parse("7.95 mm"),
		TravelLimits:    tolerance.Spec{Wear: tolerance.MustParseBand("max 0.20 mm")},
		ClearanceLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.10 mm")},
	}.Inspect()
	fmt.Println(err)
	fmt.Println(r.Travel.Standing)
	fmt.Println("mean of the mouths", r.Mean.Text(units.InMillimetres, 3), "far mouth", r.Far.Text(units.InMillimetres, 3))
	fmt.Println(r.Clearance.Standing)
	// Output:
	// <nil>
	// usable
	// mean of the mouths (0.044 mm, 0.056 mm) far mouth [0.000 mm, 0.251 mm]
	// can't tell
}
