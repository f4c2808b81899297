package cylinder

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A VolumeBracket is what is known of a volume.
type VolumeBracket = tolerance.Interval[units.Volume]

// SweptVolume is what one piston sweeps: π/4·bore²·stroke, bore being the
// diameter. It is written over [tolerance.Real], for the working and the
// uncertainty: both in one unit, the result in its cube, so that centimetres
// give cm³. It serves a gasket's hole and a deck's height as well. With exact
// lengths [units.CylinderVolume] gives the correctly rounded volume, with
// brackets [CylinderVolumeBracket] the bracket.
//
// π/4 is 0.785398…: with the trade's 0.785 every volume comes out 0.051 % too
// small.
func SweptVolume[R tolerance.Real[R]](bore, stroke R) R {
	return bore.Const(math.Pi / 4).Mul(bore.Mul(bore)).Mul(stroke)
}

// StrokeOf is the stroke with which a bore sweeps the volume, or the height at
// which it holds it: the inverse of [SweptVolume].
func StrokeOf[R tolerance.Real[R]](swept, bore R) R {
	return swept.Quo(bore.Const(math.Pi / 4).Mul(bore.Mul(bore)))
}

// BoreOf is the bore with which a stroke sweeps the volume: the other inverse
// of [SweptVolume].
func BoreOf[R tolerance.Real[R]](swept, stroke R) R {
	return swept.Quo(swept.Const(math.Pi / 4).Mul(stroke)).Sqrt()
}

// Displacement is the swept volume of an engine, π/4·bore²·stroke times the
// number of cylinders, rounded outward once, to the quantum of volume
// (10⁻¹¹ cm³). Bore and stroke hold the errors of their measurement. It fails
// with an [InputError] where either is not above zero or not bounded on both
// sides, where there is no cylinder, and where the result leaves ±23 m³.
func Displacement(bore, stroke tolerance.Bracket, cylinders int) (VolumeBracket, error) {
	if err := aboveZero("bore", bore); err != nil {
		return VolumeBracket{}, err
	}
	if err := aboveZero("stroke", stroke); err != nil {
		return VolumeBracket{}, err
	}
	if cylinders < 1 {
		return VolumeBracket{}, &InputError{"number of cylinders", strconv.Itoa(cylinders), "1 or more"}
	}
	v := CylinderVolumeBracket(bore, stroke.Scale(int64(cylinders), 1))
	if !v.InRange() {
		return VolumeBracket{}, &InputError{"bore", bore.String(), "small enough for a volume within ±23 m³"}
	}
	return v, nil
}

// CylinderVolumeBracket holds π/4·bore²·height for every bore and height that
// the brackets allow, rounded outward to the quantum of volume. The volume
// grows with the height, and with the bore where the height is above zero; a
// height below zero, as where a piston stands proud, takes volume away. Where
// the bore may be below zero, where an end is absent, and where a volume
// leaves the range, the result is out of range.
func CylinderVolumeBracket(bore, height tolerance.Bracket) VolumeBracket {
	b, okB := bothEnds(bore)
	h, okH := bothEnds(height)
	if !okB || !okH || b.lo < 0 {
		return tolerance.Exactly(units.OutOfRange[units.Volume]())
	}
	least, greatest := b, b // the bores of the least and the greatest volume
	if h.lo < 0 {
		least = b.turned()
	}
	if h.hi < 0 {
		greatest = b.turned()
	}
	return spanOf(
		units.CylinderVolumeRound(least.lo, h.lo, units.Down), productEnd(least.lo == 0, least.loEnd, h.lo == 0, h.loEnd),
		units.CylinderVolumeRound(greatest.hi, h.hi, units.Up), productEnd(greatest.hi == 0, greatest.hiEnd, h.hi == 0, h.hiEnd))
}

// productEnd is the end of a bracket of volumes: with π in it, none but 0 is a
// whole number of quanta, so that what rounding moved outward is left out.
func productEnd(aZero bool, a tolerance.End, bZero bool, b tolerance.End) tolerance.End {
	if aZero && a == tolerance.Closed || bZero && b == tolerance.Closed {
		return tolerance.Closed
	}
	return tolerance.Open
}

// heightBracket holds every height at which a bore in the bracket, all of it
// above zero, holds a volume in the other: the inverse of
// [CylinderVolumeBracket], rounded outward to the picometre.
func heightBracket(volume VolumeBracket, bore tolerance.Bracket) tolerance.Bracket {
	v, okV := bothEnds(volume)
	b, okB := bothEnds(bore)
	if !okV || !okB || b.lo <= 0 {
		return tolerance.Exactly(units.OutOfRange[units.Length]())
	}
	least, greatest := b.hi, b.lo
	if v.lo < 0 {
		least = b.lo
	}
	if v.hi < 0 {
		greatest = b.hi
	}
	return spanOf(
		heightOf(v.lo, least, false), productEnd(v.lo == 0, v.loEnd, false, tolerance.Open),
		heightOf(v.hi, greatest, true), productEnd(v.hi == 0, v.hiEnd, false, tolerance.Open))
}

// heightOf is the height at which a bore above zero holds the volume: the
// greatest that holds no more or, rounded up, the least that holds no less.
func heightOf(volume units.Volume, bore units.Length, up bool) units.Length {
	switch {
	case !volume.InRange():
		return units.OutOfRange[units.Length]()
	case volume < 0:
		return -heightOf(-volume, bore, !up)
	}
	// A quantum of volume is 10¹⁹ cubic picometres. The guess is within 2⁻⁵⁰.
	guess := float64(volume) * 1e19 / (math.Pi / 4 * float64(bore) * float64(bore))
	if guess > 1<<60 {
		return units.OutOfRange[units.Length]()
	}
	// What is above the volume rounds up to more than it, and what reaches it
	// rounds down to no less: the volume is a whole number of quanta.
	beyond := func(h units.Length) bool {
		if up {
			v := units.CylinderVolumeRound(bore, h, units.Down)
			return !v.InRange() || v >= volume
		}
		v := units.CylinderVolumeRound(bore, h, units.Up)
		return !v.InRange() || v > volume
	}
	slack := units.Length(guess/(1<<48)) + 2
	below, first := max(units.Length(guess)-slack, -units.Picometre), units.Length(guess)+slack
	for first-below > units.Picometre {
		if middle := below + (first-below)/2; beyond(middle) {
			first = middle
		} else {
			below = middle
		}
	}
	if up {
		return first
	}
	return below
}
