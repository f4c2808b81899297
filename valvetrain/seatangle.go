package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SeatAngle is the angle of a seat, a valve's face or a cutter. Two counts are
// in use, and a text that doesn't say which leaves 30° and 60° open:
//
//	      stem
//	       │
//	       │ ╲
//	port   │   ╲ ╲ from the stem
//	       │     ╲
//	       │       ╲ ) from the plane square to the stem
//	       └────────────────
//	            chamber
//
// Here it counts from the plane square to the stem, as the trade does when it
// speaks of a 30° or a 45° seat, narrowed with 15° or 30° from above and 60° or
// 75° from below: the flat chamber is 0°, the throat's straight wall 90°. The
// other two are the angle from the stem (what is missing to 90°) and the cone's
// included angle (twice that). The zero SeatAngle is no angle.
type SeatAngle struct{ square units.Angle }

// SeatAngleFromSquare is an angle by its count from the plane square to the stem.
func SeatAngleFromSquare(a units.Angle) SeatAngle { return SeatAngle{a} }

// SeatAngleFromStem is an angle by its count from the stem.
func SeatAngleFromStem(a units.Angle) SeatAngle { return SeatAngle{(units.Turn / 4).Sub(a)} }

// SeatAngleIncluded is an angle by the included angle of its cone: from the
// stem, twice. It is exact to the quantum, ties to even.
func SeatAngleIncluded(a units.Angle) SeatAngle { return SeatAngleFromStem(a.Scale(1, 2)) }

// FromSquare is the angle from the plane square to the stem.
func (a SeatAngle) FromSquare() units.Angle { return a.square }

// FromStem is the angle from the stem.
func (a SeatAngle) FromStem() units.Angle { return (units.Turn / 4).Sub(a.square) }

// Included is the included angle of the cone.
func (a SeatAngle) Included() units.Angle { return a.FromStem().Scale(2, 1) }

// Radians is the angle from the plane square to the stem, for the formulas that
// are written over [tolerance.Real].
func (a SeatAngle) Radians() float64 { return a.square.Radians() }

// String is the angle both ways.
func (a SeatAngle) String() string {
	if !a.square.InRange() {
		return "angle out of range"
	}
	return a.square.String() + " (" + a.FromStem().String() + " from the stem)"
}

// MarshalText writes the angle from the plane square to the stem.
func (a SeatAngle) MarshalText() ([]byte, error) { return a.square.MarshalText() }

// UnmarshalText reads an angle from the plane square to the stem.
func (a *SeatAngle) UnmarshalText(text []byte) error { return a.square.UnmarshalText(text) }

// InterferenceAngle is by how much the seat is steeper than the valve's face.
// Above zero, as is usual where there is one (½° to 1°), the two touch at the
// seat's outer edge, toward the chamber; below zero at its inner edge, in the
// port, where the seat chokes and burns: see [InterferenceGap].
func InterferenceAngle[N tolerance.Number[N]](seat, face N) N { return seat.Sub(face) }

// check refuses an angle that isn't between least and most, both left out.
func (a SeatAngle) check(field string, least, most units.Angle) error {
	if a.square <= least || a.square >= most {
		return &InputError{field, a.String(), "between " + least.String() + " and " + most.String() + ", from the plane square to the stem"}
	}
	return nil
}

// A seat is a cone: neither flat nor a straight bore.
func (a SeatAngle) checkCone(field string) error { return a.check(field, 0, units.Turn/4) }

// cos is the cosine of the angle from the square plane.
func (a SeatAngle) cos() float64 { return math.Cos(a.Radians()) }

// tangents is tan of the steeper less tan of the flatter angle, both from the
// square plane, as sin(steep − flat)/(cos steep·cos flat), which loses no digits
// where they are near each other. A steeper angle of 90° has no finite one.
func tangents(steep, flat SeatAngle) float64 {
	return math.Sin(steep.square.Sub(flat.square).Radians()) / (steep.cos() * flat.cos())
}

// seatScaled is a bracket times a factor above zero, rounded outward to the
// picometre; a factor is within some units in its last place.
func seatScaled(b tolerance.Bracket, factor float64) tolerance.Bracket {
	const slack = 1.0 / (1 << 49)
	lo, hi := inputEnds(b)
	x, y := float64(lo)*factor, float64(hi)*factor
	x, y = math.Floor(x-slack*math.Abs(x)), math.Ceil(y+slack*math.Abs(y))
	if !b.InRange() || !(x > -1<<60 && y < 1<<60) {
		return tolerance.Exactly(units.OutOfRange[units.Length]())
	}
	return inputSpan(units.Length(x), units.Length(y))
}
