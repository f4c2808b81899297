package units_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/units"
)

func ExampleParseAngle() {
	seat, err := units.ParseAngle("44° 30′")
	fmt.Println(seat, err)
	// Output: 44.5° <nil>
}

func ExampleMustParseAngle() {
	fmt.Println(units.MustParseAngle("20 arcmin"))
	// Output: 20′
}

// A third of a degree has no finite decimal in degrees, so its exact text is
// in minutes.
func ExampleAngle_String() {
	fmt.Println(units.Degree/3, units.Degree+units.Degree/3)
	// Output: 20′ 1° 20′
}

func ExampleAngle_TextDMS() {
	fmt.Println(units.MustParseAngle("44.5°").TextDMS(0))
	// Output: 44°30′00″
}

func ExampleAngle_Radians() {
	fmt.Printf("%.3f\n", math.Sin((30 * units.Degree).Radians()))
	// Output: 0.500
}

func ExampleAngleFromRadians() {
	a, err := units.AngleFromRadians(math.Atan2(1, 1))
	fmt.Println(a, err)
	// Output: 45° <nil>
}

// The duration of an inlet that opens 28° before top dead centre and closes
// 60° after bottom dead centre.
func ExampleAngle_Add() {
	fmt.Println((28 * units.Degree).Add(180 * units.Degree).Add(60 * units.Degree))
	// Output: 268°
}

// An interference angle of 1 degree between a 45 degree face and its seat.
func ExampleAngle_Sub() {
	fmt.Println((45 * units.Degree).Sub(44 * units.Degree))
	// Output: 1°
}

func ExampleParseVolume() {
	v, err := units.ParseVolume("45.0 cc")
	fmt.Println(v, err)
	// Output: 45 cm³ <nil>
}

func ExampleMustParseVolume() {
	fmt.Println(units.MustParseVolume("1 in³"))
	// Output: 16.387064 cm³
}

func ExampleVolume_Text() {
	fmt.Println(units.Litre.Text(units.InCubicInches, 2))
	// Output: 61.02 in³
}

// Clearance volume for a compression ratio of 8: a seventh of what is swept.
func ExampleVolume_Scale() {
	swept := units.CylinderVolume(68*units.Millimetre, 75*units.Millimetre)
	fmt.Println(swept.Scale(1, 8-1).Text(units.InCubicCentimetres, 3))
	// Output: 38.911 cm³
}

func ExampleParseMass() {
	m, err := units.ParseMass("1/4 oz")
	fmt.Println(m, err)
	// Output: 7.08738078125 g <nil>
}

func ExampleMustParseMass() {
	fmt.Println(units.MustParseMass("2 lb 4 oz") == units.MustParseMass("36 oz"))
	// Output: true
}

// Pistons matched within 1/4 oz.
func ExampleMass_Spread() {
	spread := units.MustParseMass("512.5 g").Spread(units.MustParseMass("515.0 g"), units.MustParseMass("519.0 g"))
	fmt.Println(spread, spread <= units.Ounce/4)
	// Output: 6.5 g true
}

func ExampleParseForce() {
	f, err := units.ParseForce("72 lbf")
	fmt.Println(f.Text(units.InNewtons, 1), err)
	_, err = units.ParseForce("72 lb")
	fmt.Println(err)
	// Output:
	// 320.3 N <nil>
	// units: force "72 lb", at byte 3: ambiguous; "lb" is a mass: for a load write "lbf"
}

func ExampleMustParseForce() {
	fmt.Println(units.MustParseForce("1 lbf"), units.MustParseForce("1 kgf"))
	// Output: 4.4482216152605 N 9.80665 N
}

func ExampleParsePressure() {
	p, err := units.ParsePressure("138 psi")
	fmt.Println(p.Text(units.InKilopascals, 1), err)
	// Output: 951.5 kPa <nil>
}

func ExampleMustParsePressure() {
	fmt.Println(units.MustParsePressure("1 kgf/cm²"), units.MustParsePressure("1 bar"))
	// Output: 98.0665 kPa 100 kPa
}

// One pound-force per square inch has no finite decimal in kilopascals; its
// exact text is in a unit that has one.
func ExamplePressure_String() {
	fmt.Println(units.PSI)
	fmt.Println(units.PSI.Text(units.InKilopascals, 6))
	// Output:
	// 1 psi
	// 6.894757 kPa
}

func ExampleParseSpringRate() {
	k, err := units.ParseSpringRate("230 lbf/in")
	fmt.Println(k.Text(units.InNewtonsPerMillimetre, 2), err)
	// Output: 40.28 N/mm <nil>
}

func ExampleMustParseSpringRate() {
	fmt.Println(units.MustParseSpringRate("1 kgf/mm"))
	// Output: 9.80665 N/mm
}

func ExampleSpringRate_Text() {
	fmt.Println(units.PoundForcePerInch.Text(units.InNewtonsPerMillimetre, 7))
	// Output: 0.1751268 N/mm
}

func ExampleParseTemperature() {
	for _, s := range []string{"68 °F", "212 °F", "-40 °F", "0 K"} {
		t, err := units.ParseTemperature(s)
		fmt.Println(t, err)
	}
	// Output:
	// 20 °C <nil>
	// 100 °C <nil>
	// -40 °C <nil>
	// -273.15 °C <nil>
}

func ExampleMustParseTemperature() {
	fmt.Println(units.MustParseTemperature("68 °F") == units.Reference)
	// Output: true
}

func ExampleTemperature_Text() {
	fmt.Println(units.AbsoluteZero.Text(units.InFahrenheit, 2))
	// Output: -459.67 °F
}

// 1 °F has no finite decimal in degrees Celsius.
func ExampleTemperature_String() {
	t := units.MustParseTemperature("1 °F")
	fmt.Println(t, t.Text(units.InCelsius, 2))
	// Output: 1 °F -17.22 °C
}

func ExampleTemperature_Add() {
	fmt.Println(units.Reference.Add(60 * units.Kelvin))
	fmt.Println(units.Reference.Add(-300 * units.Kelvin))
	// Output:
	// 80 °C
	// temperature out of range
}

func ExampleTemperature_Sub() {
	rise := units.MustParseTemperature("212 °F").Sub(units.Reference)
	fmt.Println(rise, rise.Text(units.InFahrenheitDegrees, 0))
	// Output: 80 K 144 F°
}

func ExampleParseTemperatureDifference() {
	d, err := units.ParseTemperatureDifference("9 F°")
	fmt.Println(d, err)
	// Output: 5 K <nil>
}

func ExampleMustParseTemperatureDifference() {
	fmt.Println(units.MustParseTemperatureDifference("60 K").Text(units.InFahrenheitDegrees, 0))
	// Output: 108 F°
}
