package form_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// Heights of a block face along its length, in millimetres.
var edge = []form.Point{{X: 0, Y: 0.000}, {X: 80, Y: 0.021}, {X: 160, Y: 0.034}, {X: 240, Y: 0.038}, {X: 320, Y: 0.029}, {X: 400, Y: 0.010}}

func ExampleMinimumZoneLines() {
	s, err := form.MinimumZoneLines(edge)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("STRt %.4f\n", s.STRt())
	for _, c := range s.Contacts() {
		fmt.Printf("at %v, upper line: %t\n", edge[c.Index].X, c.Outer)
	}
	// Output:
	// STRt 0.0320
	// at 0, upper line: false
	// at 240, upper line: true
	// at 400, upper line: false
}

func ExampleLeastSquaresLine() {
	s, err := form.LeastSquaresLine(edge)
	fmt.Printf("STRt %.4f = STRp %.4f + STRv %.4f, STRq %.4f %v\n", s.STRt(), s.STRp(), s.STRv(), s.STRq(), err)
	// Output:
	// STRt 0.0325 = STRp 0.0149 + STRv 0.0176, STRq 0.0129 <nil>
}

func ExampleEndPointLine() {
	s, err := form.EndPointLine(edge)
	fmt.Printf("above %.4f, below %.4f %v\n", s.Above, s.Below, err)
	fmt.Printf("at 160: %.4f\n", s.Deviation(edge[2]))
	// Output:
	// above 0.0320, below 0.0000 <nil>
	// at 160: 0.0300
}

func ExampleLine() {
	for _, kind := range []form.LineKind{form.LSLI, form.MZLI, form.EndPoint} {
		s, err := form.Line(kind, edge)
		fmt.Printf("%v %.4f %v\n", kind, s.STRt(), err)
	}
	// Output:
	// LSLI 0.0325 <nil>
	// MZLI 0.0320 <nil>
	// end-point line 0.0320 <nil>
}

func ExampleStraightness_Parallelism() {
	datum, err := form.LeastSquaresLine([]form.Point{{X: 0}, {X: 100, Y: 0.01}, {X: 200, Y: 0.02}})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := datum.Parallelism([]form.Point{{X: 0, Y: 50}, {X: 100, Y: 50.01}, {X: 200, Y: 50.05}})
	fmt.Printf("%.3f %v\n", p, err)
	// Output:
	// 0.030 <nil>
}

func ExampleHeights_Straightness() {
	um := units.Micrometre
	face := form.Heights{Step: 80 * units.Millimetre, Heights: []units.Length{0, 21 * um, 34 * um, 38 * um, 29 * um, 10 * um}}
	s, err := face.Straightness(form.MZLI)
	fmt.Println(s.STRt, err)
	// Output:
	// 0.032 mm <nil>
}

func ExampleHeightsFromTilts() {
	arcsec := units.Arcsecond
	heights, err := form.HeightsFromTilts(4*units.Inch, []units.Angle{0, -1 * arcsec, -2 * arcsec})
	for _, h := range heights {
		fmt.Println(h.Text(units.InMicroinches, 1))
	}
	fmt.Println(err)
	// Output:
	// 0.0 µin
	// 0.0 µin
	// -19.4 µin
	// -58.2 µin
	// <nil>
}

// Heights of a head's face in millimetres at four corners and the middle.
var face = []form.Point3{{X: 0, Y: 0, Z: 0.00}, {X: 400, Y: 0, Z: 0.02}, {X: 0, Y: 150, Z: 0.03}, {X: 400, Y: 150, Z: 0.01}, {X: 200, Y: 75, Z: 0.05}}

func ExampleMinimumZonePlanes() {
	f, err := form.MinimumZonePlanes(face)
	fmt.Printf("FLTt %.4f %v\n", f.FLTt(), err)
	// Output:
	// FLTt 0.0450 <nil>
}

func ExampleLeastSquaresPlane() {
	f, err := form.LeastSquaresPlane(face)
	fmt.Printf("FLTt %.4f = FLTp %.4f + FLTv %.4f, FLTq %.4f %v\n", f.FLTt(), f.FLTp(), f.FLTv(), f.FLTq(), err)
	// Output:
	// FLTt 0.0450 = FLTp 0.0280 + FLTv 0.0170, FLTq 0.0166 <nil>
}

func ExampleThreePointPlane() {
	f, err := form.ThreePointPlane(face, 0, 1, 2)
	fmt.Printf("the fourth corner stands at %.3f %v\n", f.Deviation(face[3]), err)
	// Output:
	// the fourth corner stands at -0.040 <nil>
}

func ExamplePlane() {
	for _, kind := range []form.PlaneKind{form.LSPL, form.MZPL, form.ThreePoints} {
		f, err := form.Plane(kind, face)
		fmt.Printf("%v: %.4f %v\n", kind, f.FLTt(), err)
	}
	// Output:
	// LSPL: 0.0450 <nil>
	// MZPL: 0.0450 <nil>
	// plane through three points: 0.0650 <nil>
}

func ExampleFlatness_Parallelism() {
	f, err := form.LeastSquaresPlane(face)
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := f.Parallelism([]form.Point3{{X: 0, Y: 0, Z: 120}, {X: 400, Y: 0, Z: 120.03}, {X: 0, Y: 150, Z: 120.01}})
	fmt.Printf("%.3f %v\n", p, err)
	// Output:
	// 0.030 <nil>
}

func ExampleGrid_Flatness() {
	um := units.Micrometre
	g := form.Grid{StepX: 100 * units.Millimetre, StepY: 75 * units.Millimetre, Columns: 3, Heights: []units.Length{
		0, 30 * um, 20 * um,
		15 * um, 50 * um, 20 * um,
		30 * um, 40 * um, 10 * um,
	}}
	f, err := g.Flatness(form.MZPL)
	fmt.Println(f.FLTt, err)
	// Output:
	// 0.045 mm <nil>
}

func ExampleGrid_Points() {
	points, err := form.Grid{StepX: units.Millimetre, StepY: units.Millimetre, Columns: 2, Heights: make([]units.Length, 4)}.Points()
	fmt.Println(points[3].X == 1e9, err)
	// Output:
	// true <nil>
}
