package instrument

import "github.com/tenthou/tenthou/tolerance"

// ZeroError is the zero error of an instrument: what it reads on a standard,
// minus the standard's size. Above zero the instrument reads high.
func ZeroError[N tolerance.Number[N]](reading, standard N) N { return reading.Sub(standard) }

// WithoutZeroError is a reading with the zero error taken off.
func WithoutZeroError[N tolerance.Number[N]](reading, zeroError N) N { return reading.Sub(zeroError) }

// FromSetting is the size of a part that an instrument shows as a deviation from
// the standard that it was set to zero on: a dial bore gauge in a cylinder.
func FromSetting[N tolerance.Number[N]](standard, deviation N) N { return standard.Add(deviation) }

// AtReference is the size of a part at 20 °C, by the formula of the package
// documentation. All lengths are in one unit, whichever; the expansions of scale,
// standard and part are plain numbers, [Expansion]s: 0 at 20 °C.
func AtReference[R tolerance.Real[R]](reading, onStandard, standard, scale, ofStandard, part R) R {
	one := reading.Const(1)
	shown := reading.Sub(onStandard).Mul(one.Add(scale))
	return standard.Mul(one.Add(ofStandard)).Add(shown).Quo(one.Add(part))
}

// Expansion is how much longer a body is than at 20 °C, as a part of its length:
// the coefficient per kelvin times the kelvins above 20 °C.
func Expansion[R tolerance.Real[R]](perKelvin, above R) R { return perKelvin.Mul(above) }

// Growth is how much a size grows with a rise in temperature: size × coefficient
// per kelvin × kelvins. It is in the unit of the size.
func Growth[R tolerance.Real[R]](size, perKelvin, rise R) R { return size.Mul(perKelvin).Mul(rise) }

// ClearanceGrowth is how much a clearance grows when hole and shaft of one size
// get warmer, each by its own rise: below zero it closes. It is in the unit of
// the size.
func ClearanceGrowth[R tolerance.Real[R]](size, holePerKelvin, holeRise, shaftPerKelvin, shaftRise R) R {
	return size.Mul(holePerKelvin.Mul(holeRise).Sub(shaftPerKelvin.Mul(shaftRise)))
}
