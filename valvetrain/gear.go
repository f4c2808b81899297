package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// GearBacklash is the backlash of a pair of gears at the pitch circle, from a dial
// gauge set square to an arm or a spoke at another radius while the gear is rocked
// and its mate held still: reading × pitch radius/dial radius.
//
// Why: gear and arm turn by one angle, and at any radius the way is angle × radius.
// A dial on the teeth themselves reads at the pitch radius as near as its contact
// is set there; on an arm twice as long it reads twice the backlash.
func GearBacklash[N tolerance.Number[N]](reading, pitchRadius, dialRadius N) N {
	return reading.MulDiv(pitchRadius, dialRadius)
}

// GearReading is what the dial reads for a backlash at the pitch circle: the
// inverse of [GearBacklash].
func GearReading[N tolerance.Number[N]](backlash, pitchRadius, dialRadius N) N {
	return backlash.MulDiv(dialRadius, pitchRadius)
}

// GearSquare is what a dial's reading would be with its plunger along the movement,
// from the reading with the plunger at an angle to it: reading/cos δ, δ in radians
// from the tangent. A dial set askew reads too little.
func GearSquare[R tolerance.Real[R]](reading, off R) R { return reading.Quo(off.Cos()) }

// GearAngle is the angle, in degrees, that a gear can be rocked by for a backlash at
// its pitch circle: 180·j/(π·r), in one unit of length. The mate, held still, has
// an angle of its own by its own radius.
func GearAngle[R tolerance.Real[R]](backlash, pitchRadius R) R {
	return backlash.Const(180).Mul(backlash).Quo(backlash.Const(math.Pi).Mul(pitchRadius))
}

// GearBacklashForAngle is the backlash at the pitch circle that lets a gear be
// rocked by so many degrees: the inverse of [GearAngle].
func GearBacklashForAngle[R tolerance.Real[R]](degrees, pitchRadius R) R {
	return degrees.Mul(degrees.Const(math.Pi)).Mul(pitchRadius).Quo(degrees.Const(180))
}

// GearGap is the gap between the flanks of two teeth, square to them, which is what
// a feeler blade measures: j·cos α·cos β, with the backlash j at the pitch circle,
// the pressure angle α of the teeth, square to them, and the helix angle β, 0 for
// straight teeth. Angles in radians. At 20° the blade finds 6 % less than the dial.
//
// Why: an involute's flanks move apart along the line of action, which touches the
// base circle: for straight teeth by the angle times the base radius r·cos α. On
// a helix the plane square to the teeth leans by β from that of rotation.
func GearGap[R tolerance.Real[R]](backlash, pressure, helix R) R {
	return backlash.Mul(pressure.Cos()).Mul(helix.Cos())
}

// GearBacklashForGap is the backlash at the pitch circle from the gap that a blade
// finds between the flanks: the inverse of [GearGap].
func GearBacklashForGap[R tolerance.Real[R]](gap, pressure, helix R) R {
	return gap.Quo(pressure.Cos().Mul(helix.Cos()))
}

// GearPitchRadius is a gear's pitch radius from its number of teeth and the
// distance of the two shafts: distance × teeth/(teeth + mate's teeth).
func GearPitchRadius[N tolerance.Number[N]](distance N, teeth, mate int) N {
	if teeth < 1 || mate < 1 || teeth > gearTeethMost || mate > gearTeethMost {
		return distance.Scale(1, 0)
	}
	return distance.Scale(int64(teeth), int64(teeth)+int64(mate))
}

// gearTeethMost is more than any gear has.
const gearTeethMost = 10_000
