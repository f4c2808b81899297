package form_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

func ExampleHarmonics() {
	radii, err := worn().Radii(units.InMicrometres)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := form.Harmonics(radii)
	if err != nil {
		fmt.Println(err)
		return
	}
	oval := s.Ovality()
	fmt.Printf("mean radius %.3f µm\n", s.Mean())
	fmt.Printf("oval by %.1f µm of radius, %.1f µm of diameter, long axis at %v\n",
		oval.Amplitude(), oval.OutOfRound(), oval.CrestAngle())
	// Output:
	// mean radius 43010.000 µm
	// oval by 10.0 µm of radius, 40.0 µm of diameter, long axis at 90°
}

func ExampleHarmonicsAt() {
	// Six readings where the bore could be reached.
	deg := units.Degree
	angles := []units.Angle{0, 40 * deg, 95 * deg, 170 * deg, 230 * deg, 300 * deg}
	var radii []float64
	for _, a := range angles {
		radii = append(radii, 43+0.01*math.Cos(2*a.Radians()))
	}
	s, err := form.HarmonicsAt(angles, radii, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4f %.4f\n", s.Mean(), s.Ovality().Amplitude())
	// Four at right angles don't tell an oval from a size.
	right := []units.Angle{0, 90 * deg, 180 * deg, 270 * deg, 360 * deg}
	_, err = form.HarmonicsAt(right, radii[:5], 2)
	fmt.Println(err)
	// Output:
	// 43.0000 0.0100
	// form: harmonics: angles don't serve; expected angles that tell the harmonics apart
}

// lobed is a profile off centre by 4, with three lobes of 2 µm.
func lobed() form.Spectrum {
	radii := make([]float64, 60)
	for i := range radii {
		t := 2 * math.Pi * float64(i) / 60
		radii[i] = 20_000 + 4*math.Cos(t-0.5) + 2*math.Cos(3*t)
	}
	s, _ := form.Harmonics(radii) // sixty numbers
	return s
}

func ExampleSpectrum_Eccentricity() {
	e := lobed().Eccentricity()
	fmt.Printf("%.2f µm towards %.2f rad, no part of roundness: %v\n", e.Amplitude(), e.Crest(), e.RONt())
	// Output:
	// 4.00 µm towards 0.50 rad, no part of roundness: 0
}

func ExampleSpectrum_Largest() {
	h := lobed().Largest(2, 15)
	fmt.Printf("%d lobes: RONt %.2f, out-of-round %.2f\n", h.Order, h.RONt(), h.OutOfRound())
	// Output:
	// 3 lobes: RONt 4.00, out-of-round 0.00
}

func ExampleSpectrum_Between() {
	s := lobed().Between(2, 15) // without eccentricity and roughness
	fmt.Printf("%.3f %.3f\n", s.At(0), s.At(math.Pi/3))
	// Output:
	// 20002.000 19998.000
}

func ExampleSpectrum_Radii() {
	for _, r := range lobed().Between(3, 3).Radii(6) {
		fmt.Printf("%.2f ", r)
	}
	// Output:
	// 20002.00 19998.00 20002.00 19998.00 20002.00 19998.00
}

func ExampleSpectrum_RootMeanSquare() {
	fmt.Printf("%.4f %.4f\n", lobed().RootMeanSquare(), math.Sqrt((4*4+2*2)/2.0))
	// Output:
	// 3.1623 3.1623
}

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

// barrel is a bore read at three levels, wider in the middle by 6 µm of radius,
// and its axis leans by 20 µm.
func barrel() form.Sections {
	s := form.Sections{Levels: []units.Length{0, 50 * units.Millimetre, 100 * units.Millimetre}}
	for _, level := range [...]struct{ wide, off float64 }{{0, -10}, {6, 0}, {0, 10}} {
		p := form.Profile{Nominal: 43 * units.Millimetre}
		for i := range 12 {
			d := level.wide + level.off*math.Cos(2*math.Pi*float64(i)/12)
			p.Deviations = append(p.Deviations, units.Length(math.Round(1000*d))*units.Nanometre)
		}
		s.Profiles = append(s.Profiles, p)
	}
	return s
}

func ExampleSections_Cylindricity() {
	for _, kind := range []form.CylinderKind{form.LSCY, form.MZCY} {
		c, err := barrel().Cylindricity(kind)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v %s, axis leans by %.4f\n", kind, c.CYLt.Length().Text(units.InMicrometres, 2), c.SlopeX)
	}
	// Output:
	// LSCY 6.00 µm, axis leans by 0.0002
	// MZCY 6.00 µm, axis leans by 0.0002
}

// tubePoints is a pin of 5 mm radius about an axis that leans, in millimetres.
func tubePoints() (points []form.Point3) {
	for i := range 24 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i%8) / 8)
		z := 10 * float64(i/8)
		points = append(points, form.Point3{X: 5*cos + 0.001*z, Y: 5 * sin, Z: z})
	}
	return points
}

func ExampleCylinder() {
	c, err := form.Cylinder(form.LSCY, tubePoints())
	fmt.Printf("%v: radius %.4f, leaning by %.4f %v\n", c.Kind, c.Radius, c.SlopeX, err)
	// Output:
	// LSCY: radius 5.0000, leaning by 0.0010 <nil>
}

func ExampleLeastSquaresCylinder() {
	_, err := form.LeastSquaresCylinder(tubePoints()[:8]) // one level has no axis
	fmt.Println(err)
	// Output:
	// form: cylinder: points in one line; expected points round the wall at two levels or more, the axis along Z
}

func ExampleMinimumZoneCylinders() {
	points := tubePoints()
	points[9].X += 0.004
	c, err := form.MinimumZoneCylinders(points)
	fmt.Printf("CYLt %.4f %v\n", c.CYLt(), err)
	// Output:
	// CYLt 0.0028 <nil>
}

func ExampleVBlock_Factor() {
	v := form.VBlock{Included: 90 * units.Degree}
	for _, n := range []int{2, 3, 5, 7} {
		f, err := v.Factor(n)
		fmt.Printf("%d lobes: %.2f %v\n", n, f, err)
	}
	// Output:
	// 2 lobes: 1.00 <nil>
	// 3 lobes: 2.00 <nil>
	// 5 lobes: 2.00 <nil>
	// 7 lobes: 0.00 <nil>
}

func ExampleVBlock_Table() {
	table, err := form.VBlock{Included: 60 * units.Degree}.Table(2, 6)
	fmt.Println("lobes  two-point  60° V")
	for _, line := range table {
		fmt.Printf("%5d %10.2f %6.2f\n", line.Lobes, line.TwoPoint, line.VBlock)
	}
	fmt.Println(err)
	// Output:
	// lobes  two-point  60° V
	//     2       2.00   0.00
	//     3       0.00   3.00
	//     4       2.00   0.00
	//     5       0.00   0.00
	//     6       2.00   3.00
	// <nil>
}

func ExampleVBlock_Hidden() {
	hidden, err := form.VBlock{Included: 90 * units.Degree}.Hidden(12, 0.5)
	fmt.Println("a 90° V that reads nothing doesn't rule out", hidden, "lobes", err)
	// Output:
	// a 90° V that reads nothing doesn't rule out [4 7 9 12] lobes <nil>
}

func ExampleVBlock_RONt() {
	r, err := form.VBlock{Included: 60 * units.Degree}.RONt(30*units.Micrometre, 3)
	fmt.Println(r, err)
	_, err = form.VBlock{Included: 60 * units.Degree}.RONt(30*units.Micrometre, 5)
	fmt.Println(err)
	// Output:
	// 0.01 mm on the radius <nil>
	// form: V-block, 5 lobes: lobes that this set-up doesn't show; expected another included angle, or a spindle
}

func ExampleVBlock_Swing() {
	// Three lobes of 2 µm, RONt 4 µm, and the eccentricity that a V doesn't see.
	swing, err := form.VBlock{Included: 60 * units.Degree}.Swing(lobed(), 360)
	fmt.Printf("%.3f %v\n", swing, err)
	// Output:
	// 12.000 <nil>
}

func ExampleVBlock_Reading() {
	r, err := form.VBlock{Included: 60 * units.Degree}.Reading(lobed(), 0)
	fmt.Printf("%.3f %v\n", r, err)
	// Output:
	// 6.000 <nil>
}

func ExampleTwoPointFactor() {
	even, _ := form.TwoPointFactor(2)
	odd, _ := form.TwoPointFactor(3)
	fmt.Println(even, odd)
	// Output:
	// 2 0
}
