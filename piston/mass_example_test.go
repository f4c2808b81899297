package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func gramsOf(s string) piston.MassBracket {
	b, err := tolerance.ParseInterval[units.Mass](s)
	if err != nil {
		panic(err)
	}
	return b
}

func ExampleMassSpread() {
	fmt.Println(piston.MassSpread(412*units.Gram, 415*units.Gram, 410*units.Gram))
	// Output: 5 g
}

func ExampleMassToRemove() {
	fmt.Println(piston.MassToRemove(415*units.Gram, 410*units.Gram))
	// Output: 5 g
}

func ExampleMassAfter() {
	fmt.Println(piston.MassAfter(415*units.Gram, 5*units.Gram))
	// Output: 410 g
}

func ExampleMassTotal() {
	fmt.Println(piston.MassTotal(412*units.Gram, 108*units.Gram, 38*units.Gram))
	// Output: 558 g
}

func ExampleMassOfPart() {
	fmt.Println(piston.MassOfPart(558*units.Gram, 108*units.Gram, 38*units.Gram))
	// Output: 412 g
}

func ExampleMassEndsOff() {
	fmt.Println(piston.MassEndsOff(gramsOf("600 ±0.5 g"), gramsOf("430 ±0.5 g"), gramsOf("170.2 ±0.5 g")))
	// Output: [-1.3 g, 1.7 g]
}

func ExampleMassOtherEnd() {
	fmt.Println(piston.MassOtherEnd(600*units.Gram, 430*units.Gram))
	// Output: 170 g
}

func ExampleMassCentre() {
	fmt.Println(piston.MassCentre[tolerance.Float](140, 450, 150), "mm from the big end's centre")
	// Output: 35 mm from the big end's centre
}

func ExampleMassSmallEnd() {
	fmt.Println(piston.MassSmallEnd[tolerance.Float](600, 35, 140), "g")
	// Output: 150 g
}

// The big end should lose 10 g, the small end nothing: because the pad lies
// beyond the big end's centre, less comes off it, and some off the small pad.
func ExampleMassPads() {
	big, small := piston.MassPads[tolerance.Float](10, 0, 140, 40, 30)
	fmt.Printf("%.2f g off the big pad, %.2f g off the small\n", float64(big), float64(small))
	// Output: 8.10 g off the big pad, 1.90 g off the small
}

func ExampleMassEndsCut() {
	big, small := piston.MassEndsCut[tolerance.Float](10, 0, 140, 40, 30)
	fmt.Printf("%.2f g off the big end, %.2f g off the small\n", float64(big), float64(small))
	// Output: 12.86 g off the big end, -2.86 g off the small
}

func ExampleMassSet_Assess() {
	s := piston.MassSet{
		Measure: "piston",
		Parts: []piston.MassPart{
			{Where: "piston 1", Mass: gramsOf("412.0 ±0.1 g")},
			{Where: "piston 2", Mass: gramsOf("415.0 ±0.1 g")},
			{Where: "piston 3", Mass: gramsOf("410.0 ±0.1 g")},
		},
		Spread:  tolerance.SpecOf[units.Mass]{New: tolerance.AtMost(4 * units.Gram)},
		MostOff: 3 * units.Gram,
	}
	r, _ := s.Assess()
	fmt.Println(r.Finding.Greatest, r.Finding.Standing, r.Lightest)
	for _, c := range r.Cuts {
		fmt.Println(c.Where, "at the least", c.Least, "to equal the lightest", c.ToLightest)
	}
	// Output:
	// [4.8 g, 5.2 g] outside the new-part band [piston 3]
	// piston 1 at the least 0 g to equal the lightest [1.8 g, 2.2 g]
	// piston 2 at the least 1.2 g to equal the lightest [4.8 g, 5.2 g]
	// piston 3 at the least 0 g to equal the lightest 0 g
}

// Each reading narrows the others down.
func ExampleMassRod_Ends() {
	r, _ := piston.MassRod{Where: "rod 1", Whole: gramsOf("600 g"), BigEnd: gramsOf("430 ±1 g"), SmallEnd: gramsOf("170.6 ±1 g")}.Ends()
	fmt.Println(r.BigEnd, r.SmallEnd)
	// Output: [429 g, 430.4 g] [169.6 g, 171 g]
}
