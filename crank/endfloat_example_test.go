package crank_test

import (
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleEndFloat() {
	fmt.Println(crank.EndFloat(millimetres("0.31"), millimetres("0.12")))
	// Output: 0.19 mm
}

func ExampleEndFloatOf() {
	fmt.Println(crank.EndFloatOf(millimetres("30.10"), millimetres("25.30"), millimetres("2.31"), millimetres("2.31")))
	// Output: 0.18 mm
}

func ExampleThrustJournal() {
	fmt.Println(crank.ThrustJournal(millimetres("0.18"), millimetres("25.30"), millimetres("2.31"), millimetres("2.31")))
	// Output: 30.1 mm
}

func ExampleThrustTotal() {
	fmt.Println(crank.ThrustTotal(inches(".118"), inches(".117")).Text(units.InInches, 3))
	// Output: 0.235 in
}

// Steps 16 to 18 of the published choice: .020 in measured over washers worn to
// .235 in, both sides, is .011 in over two new ones of .122 in.
func ExampleEndFloatWith() {
	fmt.Println(crank.EndFloatWith(inches(".020"), inches(".235"), inches(".244")).Text(units.InInches, 3))
	// Output: 0.011 in
}

func ExampleThrustTotalFor() {
	fmt.Println(crank.ThrustTotalFor(millimetres("0.40"), millimetres("4.60"), millimetres("0.14")))
	// Output: 4.86 mm
}

func ExampleThrustOversize() {
	fmt.Println(crank.ThrustOversize(millimetres("0.40"), millimetres("0.14")), "on each side")
	// Output: 0.13 mm on each side
}

func ExampleEndFloatWithOversize() {
	fmt.Println(crank.EndFloatWithOversize(millimetres("0.40"), millimetres("0.13")))
	// Output: 0.14 mm
}

func ExampleThrustShift() {
	fmt.Println("forward by", crank.ThrustShift(millimetres("0.25"), millimetres("0.125")))
	// Output: forward by 0.0625 mm
}

func ExampleThrustMatch() {
	fmt.Println(crank.ThrustMatch(millimetres("2.31"), millimetres("2.32")))
	// Output: 0.01 mm
}

func ExampleThrustSide() {
	fmt.Println(crank.ThrustSide(millimetres("2.31"), millimetres("2.32")))
	// Output: 2.32 mm
}

// Between blades: .007 in went in, .008 in didn't.
func ExampleEndFloatCheck_Assess() {
	f, err := crank.EndFloatCheck{
		Where: "main 3", Readings: []tolerance.Bracket{bracketOf("[.007 in, .008 in)")},
		Limits: tolerance.Spec{New: tolerance.MustParseBand("0.004–0.011 in"), Wear: tolerance.MustParseBand("max 0.018 in")},
	}.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Standing)
	// Output: as new
}

func ExamplePublishedThrustTable() {
	for _, s := range crank.PublishedThrustTable().Steps {
		fmt.Println(s.Float.Text(units.InInches, 3), "→", s.Name)
	}
	// Output:
	// less than 0.016 in → standard
	// 0.017–0.026 in → .005 in oversize
	// 0.027–0.036 in → .010 in oversize
	// more than 0.036 in → replace the crankshaft
}

// The table says nothing of what lies between .016 and .017 in.
func ExampleThrustTable_Choose() {
	table := crank.PublishedThrustTable()
	c, err := table.Choose(bracketOf(".0165 in"), tolerance.Exactly(table.Total))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Decided, c.Gap)
	for _, p := range c.Picks {
		fmt.Println(p.Step.Name, "would leave", p.Float.Text(units.InInches, 4))
	}
	// Output:
	// false true
	// standard would leave [0.0165 in, 0.0225 in]
	// .005 in oversize would leave [0.0065 in, 0.0125 in]
}

func thrustExample() crank.ThrustFit {
	return crank.ThrustFit{
		Float: bracketOf("0.40 mm"), Front: []tolerance.Bracket{bracketOf("2.31 mm"), bracketOf("2.32 mm")}, Rear: []tolerance.Bracket{bracketOf("2.28 mm"), bracketOf("2.28 mm")},
		Match: tolerance.Spec{New: tolerance.MustParseBand("max 0.005 mm")}, Limits: tolerance.Spec{New: tolerance.MustParseBand("0.08–0.20 mm")},
	}
}

func ExampleThrustFit_Sides() {
	sides, err := thrustExample().Sides()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range sides {
		fmt.Println(f.Where, f.Greatest, f.Standing)
	}
	// Output:
	// front 0.01 mm outside the new-part band
	// rear 0 mm as new
}

func ExampleThrustFit_In() {
	in, err := thrustExample().In()
	fmt.Println(in, err)
	// Output: 4.6 mm <nil>
}

func ExampleThrustFit_Options() {
	f := thrustExample()
	options, err := f.Options(
		crank.ThrustWasher{Name: "standard", Thickness: bracketOf("2.310 mm")},
		crank.ThrustWasher{Name: "+0.125", Thickness: bracketOf("2.435 mm")},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	best := options[0]
	fmt.Println(best.Front, "in front and", best.Rear, "behind leave", best.Float, f.Serves(best))
	// Output: +0.125 in front and +0.125 behind leave 0.13 mm true
}

func ExampleThrustFit_Serves() {
	f := thrustExample()
	options, err := f.Options(crank.ThrustWasher{Name: "standard", Thickness: bracketOf("2.310 mm")})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(options[0].Float, f.Serves(options[0]))
	// Output: 0.38 mm false
}
