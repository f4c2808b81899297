package units_test

import (
	"fmt"

	"github.com/tenthou/tenthou/units"
)

// Ring side clearance from groove and ring, beside a limit in inches.
func ExampleLength() {
	groove, ring := units.MustParseLength("1.52 mm"), units.MustParseLength("1.478 mm")
	clearance := groove.Sub(ring)
	limit := units.MustParseLength(".0028 in")
	fmt.Println(clearance.Dual(3, 4), "of", limit.Dual(3, 4))
	fmt.Println(clearance.Compare(limit))
	// Output:
	// 0.042 mm (≈.0017 in) of ≈0.071 mm (.0028 in)
	// -1
}

// Degrees, minutes and seconds are held to a millionth of a second.
func ExampleAngle() {
	a := units.MustParseAngle("30° 15′").Add(15 * units.Arcminute)
	fmt.Println(a, a.TextDMS(0), a.Scale(1, 3).Text(units.InDegrees, 3))
	// Output: 30.5° 30°30′00″ 10.167°
}

// Compression ratio: swept and clearance volume over clearance volume, as in
// a cylinder of 20 cm by 25 cm with 1570 cm³ of clearance.
func ExampleVolume() {
	swept := units.CylinderVolume(20*units.Centimetre, 25*units.Centimetre)
	clearance := units.MustParseVolume("1570 cm³")
	fmt.Println(swept.Text(units.InCubicCentimetres, 2))
	whole := swept.Add(clearance).Float(units.InCubicCentimetres)
	fmt.Printf("%.4f\n", whole/clearance.Float(units.InCubicCentimetres))
	// Output:
	// 7853.98 cm³
	// 6.0025
}

// What to take off a piston to bring it to the lightest of the set.
func ExampleMass() {
	heavy, light := units.MustParseMass("18 1/8 oz"), units.MustParseMass("512.5 g")
	off := heavy.Sub(light)
	fmt.Println(heavy.Text(units.InGrams, 2), off.Text(units.InGrams, 2))
	round, exact := off.Round(units.InGrams, 1, units.Down)
	fmt.Println(round, exact)
	// Output:
	// 513.84 g 1.34 g
	// 1.3 g false
}

// A valve spring's loads at two heights.
func ExampleForce() {
	seat, open := units.MustParseForce("76.56 lbf"), units.MustParseForce("173.44 lbf")
	fmt.Println(open.Sub(seat).Text(units.InPoundsForce, 2))
	fmt.Println(seat.Text(units.InNewtons, 1), seat.Text(units.InKilogramsForce, 2))
	// Output:
	// 96.88 lbf
	// 340.6 N 34.73 kgf
}

// The lowest cylinder as a share of the highest.
func ExamplePressure() {
	highest, lowest := units.MustParsePressure("160 psi"), units.MustParsePressure("136 psi")
	fmt.Printf("%.0f %%\n", 100*lowest.Float(units.InPSI)/highest.Float(units.InPSI))
	fmt.Println(lowest.Text(units.InBar, 1), lowest.Text(units.InKilopascals, 0))
	// Output:
	// 85 %
	// 9.4 bar 938 kPa
}

func ExampleSpringRate() {
	k := units.MustParseSpringRate("70 lbf/in")
	fmt.Println(k.Text(units.InNewtonsPerMillimetre, 2), k.Scale(2, 1))
	// Output: 12.26 N/mm 140 lbf/in
}

func ExampleTemperatureDifference() {
	d := 60 * units.Kelvin
	fmt.Println(d, d.Text(units.InFahrenheitDegrees, 0), d.Add(-10*units.FahrenheitDegree).Text(units.InFahrenheitDegrees, 0))
	// Output: 60 K 108 F° 98 F°
}

// Two temperatures are not added; a difference is added to one.
func ExampleTemperature() {
	shop := units.MustParseTemperature("68 °F")
	fmt.Println(shop == units.Reference, shop.Add(5*units.Kelvin), shop.Text(units.InKelvin, 2))
	// Output: true 25 °C 293.15 K
}

func ExampleUnit() {
	for _, u := range []units.Unit[units.Length]{units.InMillimetres, units.InInches, units.InThou, units.InMicrometres} {
		fmt.Println(units.MustParseLength(".0025 in").Text(u, units.AllPlaces))
	}
	// Output:
	// 0.0635 mm
	// 0.0025 in
	// 2.5 thou
	// 63.5 µm
}

func ExampleStyle() {
	style := units.Style[units.Length]{Unit: units.InInches, Places: 3, Rounding: units.Up, Sign: true, Point: true, Bare: true}
	text, exact := units.MustParseLength("0.07 mm").Append(nil, style)
	fmt.Println(string(text), exact)
	// Output: +.003 false
}

// A manual's limit keeps the places it was printed with.
func ExampleWritten() {
	w, err := units.ParseWritten[units.Length]("0,070 mm")
	fmt.Println(w, w.Value, w.Places, w.Unit, err)
	// Output: 0.070 mm 0.07 mm 3 mm <nil>
}
