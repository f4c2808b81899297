package form_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

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
