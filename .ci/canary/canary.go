// Package canary holds what unitvet must refuse, line by line, with the real
// package units: if a type or a scale is renamed there, the check must not go
// blind without anyone seeing it.
package canary

import "github.com/tenthou/tenthou/units"

const (
	drill units.Length = 25 / 64 * units.IN // refused
	exact units.Length = 25.0 / 64 * units.IN
	bore               = 86 * units.Millimetre
	half               = 1 / 2 * units.Inch // refused
)

func lengths(a, b units.Length, n int) units.Length {
	_ = a * b                // refused
	_ = a * units.Millimetre // refused
	_ = units.Length(n) * units.Thou
	_ = a / b // refused
	_ = int64(a/b) > 2
	if a > 5 { // refused
		return 70 // refused
	}
	return 2*a + b/2 + 3*units.Thou
}

func others(
	angle units.Angle, volume units.Volume, mass units.Mass, force units.Force,
	pressure units.Pressure, rate units.SpringRate,
	temperature units.Temperature, difference units.TemperatureDifference,
) {
	_ = angle > 5       // refused
	_ = volume > 5      // refused
	_ = mass > 5        // refused
	_ = force > 5       // refused
	_ = pressure > 5    // refused
	_ = rate > 5        // refused
	_ = temperature > 5 // refused
	_ = difference > 5  // refused
}

func generic[Q units.Quantity](q Q) Q { return q * q } // refused
