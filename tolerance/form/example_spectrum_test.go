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
