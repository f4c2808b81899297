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
