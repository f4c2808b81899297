package tolerance_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleBandOf_Convert() {
	b := tolerance.MustParseBand("11 ±0.3 mm")
	near, _ := b.Convert(units.InInches, tolerance.ByTolerance, tolerance.ConvertNearest)
	inside, _ := b.Convert(units.InInches, tolerance.ByTolerance, tolerance.ConvertInward)
	fmt.Println("nearest:", near, "gives away", near.LowerGives, "at the lower limit")
	fmt.Println("inward: ", inside)
	// Output:
	// nearest: 0.421–0.445 in gives away 0.0066 mm at the lower limit
	// inward:  0.422–0.444 in
}

func ExamplePlacesByTolerance() {
	n, _ := tolerance.PlacesByTolerance(units.MustParseLength("0.04 mm"), units.InInches)
	fmt.Println("0.03–0.07 mm in inches to", n, "places")
	// Output: 0.03–0.07 mm in inches to 5 places
}

func ExampleDesignColumn() {
	metric, _ := tolerance.ParsePrinted("146.0754–146.1262 mm")
	inch, _ := tolerance.ParsePrinted("5.7510–5.7530 in")
	design, ok := tolerance.DesignColumn(metric, inch)
	fmt.Println(design, ok)
	// Output: 5.7510–5.7530 in true
}
