package form_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// Points of a crankpin in millimetres, as a coordinate measuring machine gives
// them.
var pin = []form.Point{{X: 24.004, Y: 0}, {X: 16.970, Y: 16.972}, {X: 0, Y: 24.003}, {X: -16.966, Y: 16.968},
	{X: -23.996, Y: 0}, {X: -16.969, Y: -16.965}, {X: 0, Y: -24.001}, {X: 16.973, Y: -16.971}}

func ExampleLeastSquaresCircle() {
	r, err := form.LeastSquaresCircle(pin)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("centre %.4f, %.4f, diameter %.4f, RONt %.4f\n", r.Centre.X, r.Centre.Y, 2*r.Radius, r.RONt())
	// Output:
	// centre 0.0042, 0.0002, diameter 47.9991, RONt 0.0053
}

func ExampleMinimumZoneCircles() {
	r, err := form.MinimumZoneCircles(pin)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("RONt %.4f, the least of all centres: %t\n", r.RONt(), r.Global)
	// Output:
	// RONt 0.0049, the least of all centres: true
}

func ExampleMaximumInscribedCircle() {
	r, err := form.MaximumInscribedCircle(pin)
	fmt.Printf("%.4f %v\n", 2*r.Radius, err)
	_, err = form.MaximumInscribedCircle(pin[:4])
	fmt.Println(err)
	// Output:
	// 47.9956 <nil>
	// form: circle: a partial arc has no greatest inscribed circle; expected points on more than half of a turn
}

func ExampleMinimumCircumscribedCircle() {
	r, err := form.MinimumCircumscribedCircle(pin)
	fmt.Printf("the ring that goes over: %.4f %v\n", 2*r.Radius, err)
	// Output:
	// the ring that goes over: 48.0040 <nil>
}

func ExampleCircle() {
	for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI, form.MCCI} {
		r, err := form.Circle(kind, pin)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: RONt %.4f = RONp %.4f + RONv %.4f, RONq %.4f\n", kind, r.RONt(), r.RONp(form.Shaft), r.RONv(form.Shaft), r.RONq())
	}
	// Output:
	// LSCI: RONt 0.0053 = RONp 0.0032 + RONv 0.0021, RONq 0.0017
	// MZCI: RONt 0.0049 = RONp 0.0025 + RONv 0.0025, RONq 0.0018
	// MICI: RONt 0.0062 = RONp 0.0062 + RONv 0.0000, RONq 0.0027
	// MCCI: RONt 0.0063 = RONp 0.0000 + RONv 0.0063, RONq 0.0034
}

func ExampleRoundness_Contacts() {
	r, err := form.MinimumZoneCircles(pin)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range r.Contacts() {
		fmt.Printf("point %d, outer %t, bears %.2f\n", c.Index+1, c.Outer, c.Weight)
	}
	// Output:
	// point 2, outer false, bears 0.50
	// point 3, outer true, bears 0.85
	// point 4, outer false, bears 0.50
	// point 7, outer true, bears 0.15
}

func ExampleRoundness_Lengths() {
	r, err := form.MinimumZoneCircles(pin)
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := r.Lengths(units.InMillimetres)
	fmt.Println(l.RONt.Length().Dual(4, 5), err)
	// Output:
	// ≈0.0049 mm (≈.00019 in) <nil>
}

func ExamplePolar() {
	for _, p := range form.Polar([]float64{10, 11, 10, 9}) {
		fmt.Println(p.X, p.Y)
	}
	// Output:
	// 10 0
	// 0 11
	// -10 0
	// 0 -9
}

func ExamplePolarAt() {
	points, err := form.PolarAt([]units.Angle{0, 60 * units.Degree, 200 * units.Degree}, []float64{10, 10, 10})
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := form.LeastSquaresCircle(points)
	fmt.Printf("%.6f %v\n", r.Radius, err)
	// Output:
	// 10.000000 <nil>
}
