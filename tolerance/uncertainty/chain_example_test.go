package uncertainty_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// Three ways of closing one chain: what can be at worst, what three standard
// deviations hold, and what 99.73 % of assemblies drawn at random have.
func ExampleSimulateChain() {
	link := func(name, band string, sign int64) tolerance.Link {
		return tolerance.Link{Name: name, Band: tolerance.MustParseBand(band), Sensitivity: tolerance.Whole(sign), Scatter: tolerance.RectangularScatter}
	}
	c := tolerance.Chain{Links: []tolerance.Link{
		link("block height", "210.00 ±0.05 mm", 1),
		link("throw and rod", "179.50 ±0.04 mm", -1),
		link("compression height", "30.20 ±0.03 mm", -1),
	}}
	worst, _ := c.WorstCase()
	root, _ := c.RootSumSquare(3)
	s, err := uncertainty.SimulateChain(uncertainty.Trials(1, 1_000_000), c)
	if err != nil {
		fmt.Println(err)
		return
	}
	shortest, _ := s.Shortest(0.9973)
	within, _ := s.Conformance(tolerance.MustParseBand("0.22–0.38 mm"))
	fmt.Println("worst case     ", worst.Text(units.InMillimetres, 2))
	fmt.Println("root-sum-square", root.Within.Text(units.InMillimetres, 2))
	fmt.Println("simulated      ", shortest.Text(units.InMillimetres, 2))
	fmt.Printf("%.0f %% within 0.22–0.38 mm\n", 100*within)
	// Output:
	// worst case      [0.18 mm, 0.42 mm]
	// root-sum-square [0.17 mm, 0.43 mm]
	// simulated       [0.19 mm, 0.41 mm]
	// 96 % within 0.22–0.38 mm
}
