package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleGasketClearance() {
	fmt.Println(piston.GasketClearance(units.MustParseLength("1.40 mm"), units.MustParseLength("0.65 mm")))
	// Output: 0.75 mm
}

func ExampleGasketThicknessFor() {
	fmt.Println(piston.GasketThicknessFor(units.MustParseLength("0.80 mm"), units.MustParseLength("0.65 mm")))
	// Output: 1.45 mm
}

func ExampleGasketProtrusionFor() {
	fmt.Println(piston.GasketProtrusionFor(units.MustParseLength("0.80 mm"), units.MustParseLength("1.45 mm")))
	// Output: 0.65 mm
}

// gaskets is an invented table.
var gaskets = piston.GasketTable{
	{Mark: "1 notch", Protrusion: tolerance.MustParseBand("0.50–0.60 mm"), Thickness: tolerance.MustParseBand("1.25–1.35 mm")},
	{Mark: "2 notches", Protrusion: tolerance.MustParseBand("0.60–0.70 mm"), Thickness: tolerance.MustParseBand("1.35–1.45 mm")},
}

// The two rows share 0.60 mm: a reading on it can't tell which is meant.
func ExampleGasketTable_Faults() {
	faults, err := gaskets.Faults()
	for _, f := range faults {
		fmt.Println(f.Kind, f.First, f.Second, f.Where)
	}
	fmt.Println(err)
	// Output:
	// shared limit 1 notch 2 notches 0.6 mm
	// <nil>
}

func protrusion(first, second string) (p [2]tolerance.Bracket) {
	p[0], _ = tolerance.ParseBracket(first)
	p[1], _ = tolerance.ParseBracket(second)
	return p
}

func ExampleGasketCheck_Choose() {
	a, b := protrusion("0.58 ±0.005 mm", "0.57 ±0.005 mm"), protrusion("0.64 ±0.005 mm", "0.65 ±0.005 mm")
	c := piston.GasketCheck{Table: gaskets, Pistons: []piston.DeckPiston{
		{Where: "piston 1", First: a[0], Second: a[1]},
		{Where: "piston 2", First: b[0], Second: b[1]},
	}}
	r, _ := c.Choose()
	fmt.Println(r.Governs, r.Greatest)
	fmt.Println(r.Next)

	// Only a little less, and the readings reach into both rows.
	b = protrusion("0.600 ±0.005 mm", "0.604 ±0.005 mm")
	c.Pistons[1].First, c.Pistons[1].Second = b[0], b[1]
	r, _ = c.Choose()
	fmt.Println(r.Verdict)
	fmt.Println(r.Next)
	// Output:
	// [piston 2] [0.64 mm, 0.65 mm]
	// fit the gasket marked 2 notches; turn the engine by hand two full turns before it runs
	// undecided
	// no gasket is chosen: measure piston 2 more closely: the greatest protrusion [0.597 mm, 0.607 mm] may lie on either side of 0.6 mm
}

// 0.698 mm is there for certain; 0.70 mm isn't.
func ExampleGasketChoice_LeastClearance() {
	p := protrusion("0.648 ±0.004 mm", "0.648 ±0.004 mm")
	r, _ := piston.GasketCheck{Table: gaskets, Pistons: []piston.DeckPiston{{Where: "piston 1", First: p[0], Second: p[1]}}}.Choose()
	fmt.Println(r.LeastClearance(2), r.Contact)
	// Output: 0.69 mm clear of the head
}
