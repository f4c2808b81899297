package limits_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/limits"
	"github.com/tenthou/tenthou/units"
)

// A manual prints a bore as 25.000–25.021 mm.
func ExampleNamed() {
	classes, err := limits.Named(25*units.Millimetre, limits.Hole, tolerance.MustParseBand("25.000–25.021 mm"))
	fmt.Println(classes, err)
	// Output: [25 H7] <nil>
}

// Which classes may a shaft be ground to that a manual gives as 24.975–24.995 mm?
func ExampleWithin() {
	classes, err := limits.Within(25*units.Millimetre, limits.Shaft, tolerance.MustParseBand("24.975–24.995 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(classes[0], classes[0].Band())
	// Output: 25 g6 24.98–24.993 mm
}

// A pin reads 21.994 to 21.997 mm: the finest class that it keeps for certain.
func ExampleHolding() {
	pin := tolerance.MustParseBand("21.994–21.997 mm").Interval()
	classes, err := limits.Holding(22*units.Millimetre, limits.Shaft, pin)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(classes[0], classes[0].Band())
	// Output: 22 h4 21.994–22 mm
}

// What shafts press into 30 H7 with 0.020 to 0.060 mm of interference?
func ExampleMating() {
	band := tolerance.MustBetween(-60*units.Micrometre, -20*units.Micrometre)
	shafts, err := limits.Mating(limits.MustParseLimits("30 H7"), band)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(shafts[0], shafts[0].Band())
	// Output: 30 t6 30.041–30.054 mm
}

func ExampleAll() {
	for l := range limits.All(25*units.Millimetre, limits.Hole) {
		if l.LowerDeviation() == 0 && l.Tolerance() >= 20*units.Micrometre && l.Tolerance() <= 50*units.Micrometre {
			fmt.Println(l)
		}
	}
	// Output:
	// 25 H7
	// 25 H8
}

func ExamplePreferred() {
	for _, p := range limits.Preferred(limits.Hole) {
		f, err := p.At(25 * units.Millimetre)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(f, f.Describe())
	}
	// Output:
	// 25 H11/c11 clearance 0.11 to 0.37 mm
	// 25 H9/d9 clearance 0.065 to 0.169 mm
	// 25 H8/f7 clearance 0.02 to 0.074 mm
	// 25 H7/g6 clearance 0.007 to 0.041 mm
	// 25 H7/h6 clearance 0 to 0.034 mm
	// 25 H7/k6 up to 0.019 mm clearance, up to 0.015 mm interference
	// 25 H7/n6 up to 0.006 mm clearance, up to 0.028 mm interference
	// 25 H7/p6 interference 0.001 to 0.035 mm
	// 25 H7/s6 interference 0.014 to 0.048 mm
	// 25 H7/u6 interference 0.027 to 0.061 mm
}

func ExampleParseGrade() {
	g, err := limits.ParseGrade("IT7")
	if err != nil {
		fmt.Println(err)
		return
	}
	width, err := g.Tolerance(25 * units.Millimetre)
	fmt.Println(g, width, err)
	// Output: IT7 0.021 mm <nil>
}

func ExampleGrade_Tolerance() {
	for _, size := range []units.Length{50 * units.Millimetre, 50*units.Millimetre + units.Micrometre} {
		width, err := limits.IT7.Tolerance(size)
		fmt.Println(size, width, err)
	}
	// Output:
	// 50 mm 0.025 mm <nil>
	// 50.001 mm 0.03 mm <nil>
}

// A band of 0.020 mm at 25 mm asks for a process of this grade.
func ExampleGradeWithin() {
	fmt.Println(limits.GradeWithin(25*units.Millimetre, 20*units.Micrometre))
	// Output: IT6 <nil>
}

// Parts that vary by 0.015 mm at 25 mm are good for this grade.
func ExampleGradeHolding() {
	fmt.Println(limits.GradeHolding(25*units.Millimetre, 15*units.Micrometre))
	// Output: IT7 <nil>
}
