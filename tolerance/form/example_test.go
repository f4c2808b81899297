package form_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// worn is a bore of 86 mm worn oval by 0.04 mm on the diameter along 90°, read
// at 24 angles.
func worn() form.Profile {
	p := form.Profile{Nominal: 43 * units.Millimetre}
	for i := range 24 {
		oval := -10 * math.Cos(2*2*math.Pi*float64(i)/24)
		p.Deviations = append(p.Deviations, units.Length(math.Round(1000*(10+oval)))*units.Nanometre)
	}
	return p
}

// An oval bore: what the standards call 0.02 the trade calls 0.04.
func Example_oval() {
	bore := worn()
	round, err := bore.Roundness(form.MZCI)
	if err != nil {
		fmt.Println(err)
		return
	}
	trade, err := bore.OutOfRound()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("RONt:", round.RONt)
	fmt.Println("out-of-round:", trade)
	// Output:
	// RONt: 0.02 mm on the radius
	// out-of-round: 0.04 mm on the diameter
}

func ExampleProfile_Roundness() {
	bore := worn()
	for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI, form.MCCI} {
		r, err := bore.Roundness(kind)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(kind, r.Diameter.Text(units.InMillimetres, 4), r.RONt.Length().Text(units.InMicrometres, 2))
	}
	// Output:
	// LSCI 86.0200 mm 20.00 µm
	// MZCI 86.0200 mm 20.00 µm
	// MICI 86.0000 mm 25.18 µm
	// MCCI 86.0400 mm 20.00 µm
}

func ExampleProfile_OutOfRound() {
	d, err := worn().OutOfRound()
	fmt.Println(d, err)
	_, err = form.Profile{Nominal: 43 * units.Millimetre, Deviations: make([]units.Length, 25)}.OutOfRound()
	fmt.Println(err)
	// Output:
	// 0.04 mm on the diameter <nil>
	// form: profile: readings don't match their places; expected an even number of readings, so that each has one opposite
}

func ExampleProfile_Radii() {
	radii, err := worn().Radii(units.InMillimetres)
	fmt.Println(radii[:3], err)
	// Output:
	// [43 43.00134 43.005] <nil>
}

func ExampleRoundnessLengths_RONp() {
	r, err := worn().Roundness(form.MICI)
	if err != nil {
		fmt.Println(err)
		return
	}
	// In a hole a peak points inward, and no point lies inside this circle.
	fmt.Println(r.RONp(form.Hole), r.RONv(form.Hole) == r.RONt)
	// Output:
	// 0 mm on the radius true
}

func ExampleRoundnessLengths_Contacts() {
	r, err := worn().Roundness(form.MZCI)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range r.Contacts() {
		fmt.Printf("reading %d at %d°, outer: %t\n", c.Index+1, 15*c.Index, c.Outer)
	}
	// Output:
	// reading 1 at 0°, outer: false
	// reading 7 at 90°, outer: true
	// reading 13 at 180°, outer: false
	// reading 19 at 270°, outer: true
}

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

func ExampleRadial_OutOfRoundIfEven() {
	fmt.Println(form.Radial(20 * units.Micrometre).OutOfRoundIfEven())
	fmt.Println(form.Diametral(40 * units.Micrometre).RONtIfEven())
	// Output:
	// 0.04 mm on the diameter
	// 0.02 mm on the radius
}

func ExampleDiametral_RONtAtLeast() {
	// A micrometer finds 0.04 mm between its greatest and least reading.
	fmt.Println(form.Diametral(40 * units.Micrometre).RONtAtLeast())
	// And nothing, which proves nothing: the part may have three lobes.
	fmt.Println(form.Diametral(0).RONtAtLeast())
	// Output:
	// [0.02 mm, ∞)
	// [0 mm, ∞)
}

func ExampleOutOfRound() {
	across, along := units.MustParseLength("86.06 mm"), units.MustParseLength("86.02 mm")
	fmt.Println(form.OutOfRound(across, along))

	// With the gauge's error of 0.005 mm.
	e := 5 * units.Micrometre
	a, _ := tolerance.PlusMinus(across, e)
	b, _ := tolerance.PlusMinus(along, e)
	fmt.Println(form.OutOfRound(a, b))
	// Output:
	// 0.04 mm
	// [0.03 mm, 0.05 mm]
}

func ExampleTaper() {
	top, middle, bottom := units.MustParseLength("86.06 mm"), units.MustParseLength("86.03 mm"), units.MustParseLength("86.01 mm")
	fmt.Println(form.Taper(top, middle, bottom))
	// Output:
	// 0.05 mm
}

func ExampleParallelSides() {
	fmt.Println(form.ParallelSides(units.MustParseLength("1.490 mm"), units.MustParseLength("1.487 mm"), units.MustParseLength("1.492 mm")))
	// Output:
	// 0.005 mm
}

func ExampleDiameters_Shown() {
	um := units.Micrometre
	bore := form.Diameters{Readings: [][]units.Length{ // along and across the crank
		{86_020 * um, 86_060 * um},
		{86_015 * um, 86_035 * um},
		{86_010 * um, 86_010 * um},
	}}
	s, err := bore.Shown()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("out-of-round", s.OutOfRound)
	fmt.Println("taper", s.Taper)
	fmt.Println("cylindricity", s.CYLt)
	// Output:
	// out-of-round [0.04 mm on the diameter 0.02 mm on the diameter 0 mm on the diameter]
	// taper [0.01 mm on the diameter 0.05 mm on the diameter]
	// cylindricity [0.025 mm, ∞)
}

func ExampleDiameters_Slopes() {
	um, mm := units.Micrometre, units.Millimetre
	bore := form.Diameters{
		Levels:   []units.Length{10 * mm, 60 * mm, 110 * mm}, // from the block face down
		Readings: [][]units.Length{{86_060 * um}, {86_035 * um}, {86_010 * um}},
	}
	slopes, err := bore.Slopes()
	fmt.Printf("%.4f mm per 100 mm %v\n", 100*slopes[0], err)
	// Output:
	// -0.0500 mm per 100 mm <nil>
}

func ExampleRoundnessFromDiameters() {
	um := units.Micrometre
	a, _ := tolerance.PlusMinus(86_060*um, 5*um)
	b, _ := tolerance.PlusMinus(86_020*um, 5*um)
	fmt.Println(form.RoundnessFromDiameters(a, b))
	fmt.Println(form.CylindricityFromDiameters(a, b))
	// Output:
	// [0.015 mm, ∞)
	// [0.015 mm, ∞)
}

func ExampleCylindricityFromDiameters() {
	um := units.Micrometre
	fmt.Println(form.CylindricityFromDiameters(tolerance.Exactly(86_060*um), tolerance.Exactly(86_010*um)))
	// Output:
	// [0.025 mm, ∞)
}
