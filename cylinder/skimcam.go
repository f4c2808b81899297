package cylinder

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The retard of a camshaft in the head, driven from below by a belt or a
// chain, when the head comes down: by a skim of head or block, or a thinner
// gasket.
//
// The tight side runs from the crankshaft's sprocket to the camshaft's without
// a tensioner, and its length there is what ties the two. Let the centres be C
// apart, the pitch radii r (camshaft) and q (crankshaft), and the strand
// inclined to the line of centres by φ, sin φ = (r − q)/C. From a fixed tooth
// of one to a fixed tooth of the other the way is a constant plus
//
//	P = (r − q)·φ + C·cos φ,   dP/dC = cos φ,
//
// since the terms with dφ cancel. Lowering the head by δ shortens the way by
// δ·cos φ; the slack gathers on the tight side until the crankshaft has turned
// further, and the camshaft is late by δ·cos φ/r radians. Strands are near
// enough parallel to the way down that δ/r is the usual figure: with a
// camshaft's sprocket of twice the crankshaft's and centres 12 q apart it is
// 0.35 % too much. Where an idler bends the tight side, φ is the angle between
// the way down and the strand as it reaches the camshaft.
//
// Where the next sprocket tooth is more than this away, only an adjustable
// sprocket or an offset key puts it right. With the camshaft in the block
// nothing turns; the push rods are then too long by δ.

// RetardRadians is how late a lowered camshaft is, in radians of the camshaft:
// lowering/pitch radius.
func RetardRadians[R tolerance.Real[R]](lowering, pitchRadius R) R { return lowering.Quo(pitchRadius) }

// RetardRadiansAt is [RetardRadians] where the tight side reaches the camshaft
// at an angle, in radians, to the way down: lowering·cos(angle)/pitch radius.
func RetardRadiansAt[R tolerance.Real[R]](lowering, pitchRadius, angle R) R {
	return lowering.Mul(angle.Cos()).Quo(pitchRadius)
}

// LoweringFor is how far a camshaft has come down that is so late, in radians
// of the camshaft. It undoes [RetardRadians].
func LoweringFor[R tolerance.Real[R]](retard, pitchRadius R) R { return retard.Mul(pitchRadius) }

// PitchRadius is the radius at which a belt or a chain drives, from its pitch
// and the sprocket's teeth: pitch·teeth/(2π). A chain's joints lie a little
// further out; what moves by a pitch a tooth is this.
func PitchRadius[R tolerance.Real[R]](pitch, teeth R) R {
	return pitch.Mul(teeth).Quo(pitch.Const(2 * math.Pi))
}

// StrandAngle is the inclination φ of the tight side to the line of centres,
// in radians: arcsin((camshaft's radius − crankshaft's)/centres).
func StrandAngle[R tolerance.Real[R]](camRadius, crankRadius, centres R) R {
	d := camRadius.Sub(crankRadius)
	return d.Atan2(centres.Mul(centres).Sub(d.Mul(d)).Sqrt())
}

// InDegrees is an angle in radians in degrees.
func InDegrees[R tolerance.Real[R]](radians R) R {
	return radians.Quo(radians.Const(math.Pi / 180))
}

// A Retard is how late a camshaft is, by its own angle and by that of the
// crankshaft, which turns twice as far. Below zero it is early: the head went
// up, by a thicker gasket.
type Retard struct {
	Cam   tolerance.Interval[units.Angle] `json:"camDegrees"`   // by the camshaft
	Crank tolerance.Interval[units.Angle] `json:"crankDegrees"` // by the crankshaft: twice as much
}

// RetardByTeeth is the retard of a camshaft lowered by so much, whose sprocket
// has so many teeth of that pitch: 360°·lowering/(teeth·pitch), exact but for
// the last quantum. It fails with an [InputError] where there are no teeth,
// the pitch isn't above zero or the lowering isn't known on both sides.
func RetardByTeeth(lowering tolerance.Bracket, teeth int, pitch units.Length) (Retard, error) {
	if _, ok := bothEnds(lowering); !ok {
		return Retard{}, &InputError{"lowering of the camshaft", lowering.String(), "known on both sides"}
	}
	if teeth < 1 || teeth > 10_000 {
		return Retard{}, &InputError{"number of teeth", strconv.Itoa(teeth), "1 to 10000"}
	}
	if pitch <= 0 || pitch > units.Metre {
		return Retard{}, &InputError{"pitch", pitch.String(), "above 0 and up to 1 m"}
	}
	turn := tolerance.Exactly(units.Turn)
	round := tolerance.Exactly(units.Angle(int64(teeth) * int64(pitch)))
	return retardOf(turn.MulDiv(quantaAs[units.Angle](lowering), round), lowering)
}

// RetardByRadius is the retard of a camshaft lowered by so much, from the
// pitch radius of its sprocket (not the radius over the teeth), rounded
// outward to 2⁻⁵⁰ of it and the quantum. Errors as for [RetardByTeeth].
func RetardByRadius(lowering, pitchRadius tolerance.Bracket) (Retard, error) {
	l, ok := bothEnds(lowering)
	if !ok {
		return Retard{}, &InputError{"lowering of the camshaft", lowering.String(), "known on both sides"}
	}
	if err := aboveZero("pitch radius", pitchRadius); err != nil {
		return Retard{}, err
	}
	r, _ := bothEnds(pitchRadius)
	least, greatest := r.hi, r.lo
	if l.lo < 0 {
		least = r.lo
	}
	if l.hi < 0 {
		greatest = r.hi
	}
	return retardOf(spanOf(
		angleOutward(float64(l.lo)/float64(least), units.Down), tolerance.Closed,
		angleOutward(float64(l.hi)/float64(greatest), units.Up), tolerance.Closed), lowering)
}

// retardOf refuses an angle out of range. A head can't come down by more than
// a few millimetres, but arithmetic can.
func retardOf(cam tolerance.Interval[units.Angle], lowering tolerance.Bracket) (Retard, error) {
	r := Retard{Cam: cam, Crank: cam.Scale(2, 1)}
	if !r.Crank.InRange() {
		return Retard{}, &InputError{"lowering of the camshaft", lowering.String(), "small against its sprocket"}
	}
	return r, nil
}

// angleOutward is an angle of so many radians, rounded away from what it may
// be: to 2⁻⁵⁰ of it, which covers what a few operations on float64 lose.
func angleOutward(radians float64, r units.Rounding) units.Angle {
	slack := math.Abs(radians) / (1 << 50)
	if r == units.Down {
		slack = -slack
	}
	a, err := units.AngleFromRadians(radians + slack)
	if err != nil {
		return units.OutOfRange[units.Angle]()
	}
	if r == units.Down {
		return a - units.Microarcsecond // AngleFromRadians rounds to nearest
	}
	return a + units.Microarcsecond
}
