package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// exactLength is a length that was given as exact.
func exactLength(s string) tolerance.Bracket { return tolerance.Exactly(units.MustParseLength(s)) }

func exactVolume(s string) cylinder.VolumeBracket {
	return tolerance.Exactly(units.MustParseVolume(s))
}

func ExampleDisplacement() {
	v, _ := cylinder.Displacement(exactLength("68 mm"), exactLength("75 mm"), 4)
	fmt.Println(v.Text(units.InCubicCentimetres, 1))
	middle, _ := v.Middle()
	fmt.Println(middle.Text(units.InCubicCentimetres, 1))

	// As measured: to a hundredth, and half a millimetre of stroke unknown.
	bore, _ := tolerance.ParseBracket("68.02 ±0.01 mm")
	stroke, _ := tolerance.ParseBracket("75 ±0.25 mm")
	v, _ = cylinder.Displacement(bore, stroke, 4)
	fmt.Println(v.Text(units.InCubicCentimetres, 1))

	_, err := cylinder.Displacement(exactLength("68 mm"), exactLength("0 mm"), 4)
	fmt.Println(err)
	// Output:
	// (1089.5 cm³, 1089.6 cm³)
	// 1089.5 cm³
	// (1086.1 cm³, 1094.2 cm³)
	// cylinder: stroke 0 mm is not above 0
}

// The same formula, written out. The trade's 0.785 would give 28.26 in³.
func ExampleSweptVolume() {
	v := cylinder.SweptVolume(working.GivenReal("bore", "D", 3, "in"), working.GivenReal("stroke", "S", 4, "in")).
		Named("swept volume", "V", "in³")
	s, _ := working.SolveReal(v, working.RealStyle{Places: 2})
	fmt.Print(s.Text())
	fmt.Printf("with 0.785: %.2f in³\n", 0.785*3*3*4)
	// Output:
	// swept volume = (π ÷ 4) × bore² × stroke
	// V = (π ÷ 4) × D² × S
	//   = (π ÷ 4) × (3 in)² × 4 in
	//   ≈ 28.27 in³
	// with 0.785: 28.26 in³
}

// The uncertainty of a swept volume, from those of bore and stroke.
func ExampleSweptVolume_uncertainty() {
	bore, _ := uncertainty.NewDual("bore", 8.6, "cm", uncertainty.RectangularShape, 0.001)
	stroke, _ := uncertainty.NewDual("stroke", 8.6, "cm", uncertainty.RectangularShape, 0.01)
	v := cylinder.SweptVolume(bore, stroke)
	fmt.Printf("%.2f cm³ ± %.2f cm³ standard\n", v.Value(), v.StandardUncertainty())
	// Output: 499.56 cm³ ± 0.34 cm³ standard
}

func ExampleStrokeOf() {
	// 1275 cm³ of three cylinders with a bore of 80 mm.
	fmt.Printf("%.2f cm\n", cylinder.StrokeOf(tolerance.Float(1275.0/3), tolerance.Float(8)))
	// Output: 8.46 cm
}

func ExampleBoreOf() {
	fmt.Printf("%.3f cm\n", cylinder.BoreOf(tolerance.Float(1275.0/3), tolerance.Float(8.455)))
	// Output: 8.000 cm
}

func ExampleCylinderVolumeBracket() {
	// The space over a piston that stops 0.3 mm below the block face, and what
	// one takes away that stands 0.1 mm above it.
	below, _ := tolerance.ParseBracket("0.30 ±0.02 mm")
	fmt.Println(cylinder.CylinderVolumeBracket(exactLength("86 mm"), below).Text(units.InCubicCentimetres, 2))
	fmt.Println(cylinder.CylinderVolumeBracket(exactLength("86 mm"), exactLength("-0.1 mm")).Text(units.InCubicCentimetres, 2))
	// Output:
	// (1.62 cm³, 1.86 cm³)
	// (-0.59 cm³, -0.58 cm³)
}
