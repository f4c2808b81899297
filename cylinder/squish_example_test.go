package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleSquish() {
	fmt.Println(cylinder.Squish(units.MustParseLength("-0.05 mm"), units.MustParseLength("1.20 mm")))
	// Output: 1.15 mm
}

func ExampleGasketForSquish() {
	fmt.Println(cylinder.GasketForSquish(units.MustParseLength("1 mm"), units.MustParseLength("-0.05 mm")))
	// Output: 1.05 mm
}

func ExampleDeckForSquish() {
	fmt.Println(cylinder.DeckForSquish(units.MustParseLength("1 mm"), units.MustParseLength("1.20 mm")))
	// Output: -0.2 mm
}

func ExampleSquishCheck_Assess() {
	c := cylinder.SquishCheck{
		Gasket: exactLength("1.20 mm"),
		Pistons: []cylinder.PistonDeck{
			{Where: "piston 1", Deck: cylinder.DeckBelow(exactLength("0.04 mm"))},
			{Where: "piston 2", Deck: cylinder.DeckAbove(exactLength("0.06 mm"))},
		},
		Limits: tolerance.Spec{New: tolerance.MustParseBand("1.00–1.30 mm")},
	}
	r, _ := c.Assess()
	fmt.Println(r.Highest, r.Finding.Least, r.Finding.Standing)
	// Output: [piston 2] 1.14 mm as new
}

func ExampleSquishCheck_Choose() {
	c := cylinder.SquishCheck{
		Pistons: []cylinder.PistonDeck{{Where: "piston 1", Deck: cylinder.DeckAbove(exactLength("0.35 mm"))}},
		Limits:  tolerance.Spec{New: tolerance.MustParseBand("1.00–1.15 mm")},
	}
	i, r, _ := c.Choose(exactLength("1.30 mm"), exactLength("1.40 mm"), exactLength("1.50 mm"))
	fmt.Println(i, r.Finding.Least)
	// Output: 1 1.05 mm
}
