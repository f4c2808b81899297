package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func mmOf(s string) units.Length { return units.MustParseLength(s + " mm") }

func bracketOf(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func ExampleDeckBelow() {
	fmt.Println(piston.DeckBelow(mmOf("220"), mmOf("86"), mmOf("144"), mmOf("32.7")))
	// Output: 0.3 mm
}

func ExampleDeckAbove() {
	fmt.Println(piston.DeckAbove(mmOf("245"), mmOf("96"), mmOf("150"), mmOf("47.65")))
	// Output: 0.65 mm
}

// To bring a crown that stops 0.30 mm below the face to 0.05 mm below it, with
// the same parts, the block is milled to:
func ExampleDeckBlockHeight() {
	fmt.Println(piston.DeckBlockHeight(mmOf("0.05"), mmOf("86"), mmOf("144"), mmOf("32.7")))
	// Output: 219.75 mm
}

func ExampleDeckCompressionHeight() {
	fmt.Println(piston.DeckCompressionHeight(mmOf("0.05"), mmOf("220"), mmOf("86"), mmOf("144")))
	// Output: 32.95 mm
}

func ExampleDeckRod() {
	fmt.Println(piston.DeckRod(mmOf("0.3"), mmOf("220"), mmOf("86"), mmOf("32.7")))
	// Output: 144 mm
}

func ExampleDeckStroke() {
	fmt.Println(piston.DeckStroke(mmOf("0.3"), mmOf("220"), mmOf("144"), mmOf("32.7")))
	// Output: 86 mm
}

func ExampleDeckRodCentres() {
	fmt.Println(piston.DeckRodCentres(mmOf("102"), mmOf("54"), mmOf("22")))
	// Output: 140 mm
}

func ExampleDeckRodBetween() {
	fmt.Println(piston.DeckRodBetween(mmOf("140"), mmOf("54"), mmOf("22")))
	// Output: 102 mm
}

func ExampleDeckOffsetDrop() {
	fmt.Printf("%.4f mm\n", float64(piston.DeckOffsetDrop[tolerance.Float](1, 144, 46)))
	// Output: 0.0026 mm
}

func ExampleDeckOffsetFor() {
	fmt.Printf("%.2f mm\n", float64(piston.DeckOffsetFor[tolerance.Float](0.0026316, 144, 46)))
	// Output: 1.00 mm
}

func ExampleDeckProtrusion() {
	fmt.Println(piston.DeckProtrusion(bracketOf("0.62 ±0.005 mm"), bracketOf("0.60 ±0.005 mm")))
	// Output: [0.605 mm, 0.615 mm]
}

func ExampleDeckTilt() {
	fmt.Println(piston.DeckTilt(mmOf("0.62"), mmOf("0.60")))
	// Output: 0.02 mm
}

func ExampleDeckPoint() {
	fmt.Println(piston.DeckPoint(mmOf("0.61"), mmOf("0.62")))
	// Output: 0.6 mm
}

func ExampleDeckOutOfSquare() {
	fmt.Println(piston.DeckOutOfSquare(mmOf("0.02"), mmOf("60"), mmOf("100")).Text(units.InMillimetres, 3))
	// Output: 0.033 mm
}

func ExampleDeckTiltAllowed() {
	fmt.Println(piston.DeckTiltAllowed(mmOf("0.05"), mmOf("60"), mmOf("100")))
	// Output: 0.03 mm
}

// Why the dial goes above the pin: rocked as far as 0.05 mm of clearance lets
// it, the crown moves by 16 nm there, and by 33 µm at the thrust side.
func ExampleDeckRockShift() {
	rock := piston.DeckRock[tolerance.Float](86.05, 86, 60)
	fmt.Printf("%.6f mm\n", float64(piston.DeckRockShift(45, 0, rock)))
	fmt.Printf("%.6f mm\n", float64(piston.DeckRockShift(45, 40, rock)))
	// Output:
	// -0.000016 mm
	// 0.033338 mm
}

func ExampleDeckRock() {
	fmt.Printf("%.6f rad\n", float64(piston.DeckRock[tolerance.Float](86.05, 86, 60)))
	// Output: 0.000834 rad
}

func ExampleDeckSpan() {
	fmt.Printf("%.3f mm\n", float64(piston.DeckSpan[tolerance.Float](86, 60, 0.000834)))
	// Output: 86.050 mm
}

func ExampleDeckSideOf() {
	fmt.Println(piston.DeckSideOf(bracketOf("0.65 ±0.01 mm")))
	fmt.Println(piston.DeckSideOf(bracketOf("0.00 ±0.01 mm")))
	// Output:
	// above the block face
	// not told from the block face
}

func ExampleDeckText() {
	fmt.Println(piston.DeckText(bracketOf("-0.3 mm"), 2))
	fmt.Println(piston.DeckText(bracketOf("0.00 ±0.01 mm"), 2))
	// Output:
	// 0.30 mm below the block face
	// from 0.01 mm below to 0.01 mm above the block face
}

func stack() piston.DeckStack {
	return piston.DeckStack{
		BlockHeight: bracketOf("245.00 ±0.02 mm"), Stroke: bracketOf("96.00 ±0.01 mm"),
		Rod: bracketOf("150.00 ±0.01 mm"), CompressionHeight: bracketOf("47.65 ±0.005 mm"),
	}
}

func ExampleDeckStack_Protrusion() {
	p, err := stack().Protrusion()
	fmt.Println(p, err)
	// Output: [0.61 mm, 0.69 mm] <nil>
}

func ExampleDeckStack_Chain() {
	r, _ := stack().Chain(tolerance.NormalScatter, 3).RootSumSquare(3)
	fmt.Println(r.Within.Text(units.InMillimetres, 3))
	// Output: [0.626 mm, 0.674 mm]
}

func ExampleDeckPiston_Protrusion() {
	mean, tilt, _ := piston.DeckPiston{Where: "piston 1", First: bracketOf("0.62 mm"), Second: bracketOf("0.60 mm")}.Protrusion()
	fmt.Println(mean, tilt)
	// Output: 0.61 mm 0.02 mm
}
