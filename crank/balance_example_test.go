package crank_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

type balanceNumber = tolerance.Float

func bobweightWeighed(s string) crank.BobweightMass {
	m, _ := tolerance.ParseInterval[units.Mass](s)
	return m
}

// One crankpin of a 90° V8, two rods on it.
func ExampleBobweightPin_Bobweight() {
	rod := crank.BobweightRod{
		BigEnd: bobweightWeighed("621.5 ±0.1 g"), Shells: bobweightWeighed("45 ±0.1 g"),
		SmallEnd: bobweightWeighed("230 ±0.1 g"), Piston: bobweightWeighed("510 ±0.1 g"), Pin: bobweightWeighed("129.5 ±0.1 g"), Rings: bobweightWeighed("52 ±0.1 g"),
	}
	b, _ := crank.BobweightPin{Rods: []crank.BobweightRod{rod, rod}, Oil: bobweightWeighed("4 g"), Factor: tolerance.Ratio{Num: 1, Den: 2}}.Bobweight()
	fmt.Println("rotating", b.Rotating)
	fmt.Println("reciprocating", b.Reciprocating)
	fmt.Println("bobweight", b.Bobweight)
	// Output:
	// rotating [1336.6 g, 1337.4 g]
	// reciprocating [1842.2 g, 1843.8 g]
	// bobweight [2257.7 g, 2259.3 g]
}

func ExampleBobweightOf() {
	half := tolerance.Ratio{Num: 1, Den: 2}
	b := crank.BobweightOf(working.Given("rotating mass", "R", 1333*units.Gram), working.Given("reciprocating mass", "P", 1847*units.Gram), half)
	s, _ := working.Solve(b.Named("bobweight", "B"), units.Style[units.Mass]{Unit: units.InGrams, Places: 1})
	fmt.Print(s.Text())
	// Output:
	// bobweight = rotating mass + reciprocating mass ÷ 2
	// B = R + P ÷ 2
	//   = 1333.0 g + 1847.0 g ÷ 2
	//   = 2256.5 g
}

func ExampleBobweightRotating() {
	fmt.Println(crank.BobweightRotating(2256*units.Gram, 1846*units.Gram, tolerance.Ratio{Num: 1, Den: 2}))
	// Output: 1333 g
}

func ExampleBobweightReciprocating() {
	fmt.Println(crank.BobweightReciprocating(2256*units.Gram, 1333*units.Gram, tolerance.Ratio{Num: 1, Den: 2}))
	// Output: 1846 g
}

func ExampleBobweightFactor() {
	fmt.Printf("%.2f\n", crank.BobweightFactor[balanceNumber](2256.5, 1333, 1847))
	// Output: 0.50
}

// Bevan's example: 180 lb rotate and 150 lb reciprocate, half of which is to be
// balanced at 6 in with a throw of 7.5 in.
func ExampleBalanceMass() {
	fmt.Printf("%.2f lb\n", crank.BalanceMass[balanceNumber](180, 150, 0.5, 7.5, 6))
	// Output: 318.75 lb
}

func ExampleBalanceFactorOf() {
	fmt.Printf("%.2f\n", crank.BalanceFactorOf[balanceNumber](318.75, 180, 150, 7.5, 6))
	// Output: 0.50
}

func ExampleBalanceForceN() {
	fmt.Printf("%.1f N\n", crank.BalanceForceN[balanceNumber](50, 0.15, 240, 2.0/3, math.Pi/3))
	// Output: 2846.8 N
}

func ExampleUnbalanceAllowedGMM() {
	u := crank.UnbalanceAllowedGMM(working.GivenReal("grade", "G", 6.3, "mm/s"), working.GivenReal("mass", "m", 20, "kg"), working.GivenReal("speed", "n", 6000, "/min"))
	s, _ := working.SolveReal(u.Named("permissible unbalance", "U", "g·mm"), working.RealStyle{Places: 1, Bare: true})
	fmt.Print(s.Text())
	// Output:
	// permissible unbalance = 1000 × grade × mass ÷ (π × speed ÷ 30)
	// U = 1000 × G × m ÷ (π × n ÷ 30)
	//   = 1000 × 6.3 × 20 ÷ (π × 6000 ÷ 30)
	//   ≈ 200.5 g·mm
}

func ExampleUnbalanceEccentricityUM() {
	fmt.Printf("%.3f µm\n", crank.UnbalanceEccentricityUM[balanceNumber](6.3, 6000))
	// Output: 10.027 µm
}

func ExampleUnbalanceGrade() {
	fmt.Printf("G %.2f\n", crank.UnbalanceGrade[balanceNumber](150, 20, 6000))
	// Output: G 4.71
}

func ExampleUnbalanceRPM() {
	fmt.Printf("%.0f r/min\n", crank.UnbalanceRPM[balanceNumber](150, 6.3, 20))
	// Output: 8021 r/min
}

func ExampleUnbalanceForceN() {
	fmt.Printf("%.1f N at 3000 r/min, %.1f N at 6000\n", crank.UnbalanceForceN[balanceNumber](100, 3000), crank.UnbalanceForceN[balanceNumber](100, 6000))
	// Output: 9.9 N at 3000 r/min, 39.5 N at 6000
}

// A rotor of 3600 kg at G 2.5 and 3000 r/min, its mass centre 1500 mm from
// bearing A and 900 mm from B.
func ExampleUnbalanceAt() {
	u := crank.UnbalanceAllowedGMM[balanceNumber](2.5, 3600, 3000)
	fmt.Printf("%.0f g·mm in A, %.0f in B\n", crank.UnbalanceAt(u, 1500, 0, 2400), crank.UnbalanceAt(u, 1500, 2400, 0))
	// Output: 10743 g·mm in A, 17905 in B
}

func ExampleUnbalanceGrades() {
	fmt.Println(crank.UnbalanceGrades()[:5])
	// Output: [0.4 1 2.5 6.3 16]
}

// What cancels in sum may still act as a couple.
func ExampleUnbalanceRotor_Assess() {
	r := crank.UnbalanceRotor{Mass: 20 * units.Kilogram, RPM: 6000, GradeMMPS: 6.3,
		BearingB: 400 * units.Millimetre, MassCentre: 200 * units.Millimetre,
		Readings: []crank.UnbalanceReading{
			{Where: "front", At: 50 * units.Millimetre, AmountGMM: 160, ErrorGMM: 5, Angle: 10 * units.Degree},
			{Where: "rear", At: 350 * units.Millimetre, AmountGMM: 160, ErrorGMM: 5, Angle: 190 * units.Degree},
		}}
	rep, _ := r.Assess()
	fmt.Printf("%.1f g·mm allowed in A, %.1f to %.1f there: %v\n", rep.A.AllowedGMM, rep.A.LeastGMM, rep.A.GreatestGMM, rep.A.Verdict)
	fmt.Println(rep.Next)
	// Output:
	// 100.3 g·mm allowed in A, 115.0 to 125.0 there: above
	// correct it: drill on the heavy side, less than reckoned, and spin the shaft again
}

var drillHoleShown = crank.DrillHole[balanceNumber]{Diameter: 12, Depth: 15, Point: 118 * math.Pi / 180}

func ExampleDrillHole_PointHeight() {
	fmt.Printf("%.3f mm\n", drillHoleShown.PointHeight())
	// Output: 3.605 mm
}

func ExampleDrillHole_DepthToPoint() {
	fmt.Printf("%.3f mm\n", drillHoleShown.DepthToPoint())
	// Output: 18.605 mm
}

func ExampleDrillHole_Volume() {
	fmt.Printf("%.1f mm³\n", drillHoleShown.Volume())
	// Output: 1832.4 mm³
}

func ExampleDrillHole_CentroidDepth() {
	fmt.Printf("%.3f mm\n", drillHoleShown.CentroidDepth())
	// Output: 8.123 mm
}

func ExampleDrillVolume() {
	fmt.Printf("%.1f mm³\n", crank.DrillVolume[balanceNumber](12, 15, 3.605))
	// Output: 1832.4 mm³
}

func ExampleDrillCentroidDepth() {
	fmt.Printf("%.3f mm\n", crank.DrillCentroidDepth[balanceNumber](15, 3.605))
	// Output: 8.123 mm
}

func ExampleDrillRimGMM() {
	fmt.Printf("%.1f g·mm\n", crank.DrillRimGMM[balanceNumber](7.85, 12))
	// Output: 4.0 g·mm
}

func ExampleDrillHole_MassG() {
	fmt.Printf("%.2f g\n", drillHoleShown.MassG(7.85))
	// Output: 14.38 g
}

func ExampleDrillHole_RadialGMM() {
	fmt.Printf("%.1f g·mm\n", drillHoleShown.RadialGMM(7.85, 80))
	// Output: 1033.9 g·mm
}

func ExampleDrillHole_RadialRimGMM() {
	fmt.Printf("%.1f g·mm\n", drillHoleShown.RadialRimGMM(7.85, 80))
	// Output: 1029.9 g·mm
}

func ExampleDrillHole_AxialGMM() {
	fmt.Printf("%.1f g·mm\n", drillHoleShown.AxialGMM(7.85, 80))
	// Output: 1150.7 g·mm
}

func ExampleDrillRadialDepth() {
	fmt.Printf("%.2f mm\n", crank.DrillRadialDepth(drillHoleShown.RadialGMM(7.85, 80), 7.85, 80, crank.DrillHole[balanceNumber]{Diameter: 12, Point: drillHoleShown.Point}))
	// Output: 15.00 mm
}

func ExampleDrillRimDepth() {
	fmt.Printf("%.2f mm\n", crank.DrillRimDepth(drillHoleShown.RadialRimGMM(7.85, 80), 7.85, 80, crank.DrillHole[balanceNumber]{Diameter: 12, Point: drillHoleShown.Point}))
	// Output: 15.00 mm
}

func ExampleDrillAxialDepth() {
	fmt.Printf("%.2f mm\n", crank.DrillAxialDepth(drillHoleShown.AxialGMM(7.85, 80), 7.85, 80, crank.DrillHole[balanceNumber]{Diameter: 12, Point: drillHoleShown.Point}))
	// Output: 15.00 mm
}

var drillingShown = crank.Drilling{Diameter: 12 * units.Millimetre, Point: 118 * units.Degree, Radius: 80 * units.Millimetre, Deepest: 25 * units.Millimetre, DensityGPerCM3: 7.85}

func ExampleDrilling_For() {
	h, _ := drillingShown.For(600)
	fmt.Println(h.ToPoint.Text(units.InMillimetres, 2), "to the point,", h.FullDiameter.Text(units.InMillimetres, 2), "of the full diameter")
	// Output: 11.42 mm to the point, 7.81 mm of the full diameter
}

// Twice as deep is less than twice as much.
func ExampleDrilling_Hole() {
	for _, depth := range []units.Length{12 * units.Millimetre, 24 * units.Millimetre} {
		h, _ := drillingShown.Hole(depth)
		fmt.Printf("%.1f g·mm, its mass centre at %s\n", h.UnbalanceGMM, h.CentreRadius.Text(units.InMillimetres, 2))
	}
	// Output:
	// 636.4 g·mm, its mass centre at 75.14 mm
	// 1322.5 g·mm, its mass centre at 69.16 mm
}

func ExampleDrilling_HoleOfFull() {
	h, _ := drillingShown.HoleOfFull(15 * units.Millimetre)
	fmt.Printf("%s to the point, %.1f g·mm\n", h.ToPoint.Text(units.InMillimetres, 3), h.UnbalanceGMM)
	// Output: 18.605 mm to the point, 1029.9 g·mm
}

func ExampleDrilling_Row() {
	row, _ := drillingShown.Row(2000, 25*units.Degree, 4)
	fmt.Println(len(row), "holes,", row[0].ToPoint.Text(units.InMillimetres, 2), "to the point each")
	// Output: 2 holes, 18.51 mm to the point each
}

func ExampleDrilling_Check() {
	bad := drillingShown
	bad.DensityGPerCM3 = 7850
	fmt.Println(bad.Check())
	// Output: crank: density 7850 g/cm³ is not from 0.5 to 25 g/cm³: steel has 7.85
}

func ExampleDrillRowFactor() {
	fmt.Printf("%.2f\n", crank.DrillRowFactor[balanceNumber](2, math.Pi/3))
	// Output: 1.73
}

func ExampleDrillWay_String() {
	fmt.Println(crank.DrillAxial)
	// Output: axial
}

func ExampleDrillWay_MarshalText() {
	text, _ := crank.DrillFlat.MarshalText()
	fmt.Println(string(text))
	// Output: flat
}

func ExampleDrillWay_UnmarshalText() {
	var w crank.DrillWay
	fmt.Println(w.UnmarshalText([]byte("axial")), w)
	// Output: <nil> axial
}

func ExampleDrillPlugGainG() {
	fmt.Printf("%.1f g\n", crank.DrillPlugGainG[balanceNumber](25, 20, 17, 7.85))
	// Output: 89.8 g
}

func ExampleDrillPlugGMM() {
	fmt.Printf("%.0f g·mm\n", crank.DrillPlugGMM[balanceNumber](25, 20, 75, 17, 7.85))
	// Output: 6737 g·mm
}

func ExampleDrillPlugLength() {
	fmt.Printf("%.2f mm\n", crank.DrillPlugLength[balanceNumber](5000, 25, 75, 17, 7.85))
	// Output: 14.84 mm
}

func ExampleDrillPlugDiameter() {
	fmt.Printf("%.2f mm\n", crank.DrillPlugDiameter[balanceNumber](5000, 20, 75, 17, 7.85))
	// Output: 21.54 mm
}
