package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A PistonValveRoom is how far a camshaft may be moved before a valve comes
// nearer to its piston than wanted.
type PistonValveRoom struct {
	Move CamMove `json:"move"` // the way that brings them together
	// Left is how far it may be moved that way, in degrees of the crankshaft,
	// rounded down; below zero, how far it must be moved back.
	Left units.Angle `json:"left"`
	// Free says that they never come too near: Left is then what brings the
	// greatest lift to dead centre.
	Free bool `json:"free"`
}

// mostBack is the most that a camshaft is moved back in the search.
const mostBack = 90 * units.Degree

// Room is how far the camshaft may be advanced (for a curve whose greatest lift
// comes after top dead centre, an inlet valve's) or retarded (an exhaust
// valve's) until the least clearance, everything on the dangerous side, is no
// more than wanted.
//
// It takes a curve that rises to one greatest lift and falls: then the clearance
// shrinks all the way until that stands at dead centre. It fails as
// [PistonValve.Inspect] does, where more is wanted than there is with the valve
// shut, and where moving back by 90° doesn't do.
func (p PistonValve) Room(wanted units.Length) (PistonValveRoom, error) {
	if err := p.check(); err != nil {
		return PistonValveRoom{}, err
	}
	low, _ := p.cases()
	if wanted < -inputLargest || liftLength(low.drop)-p.Allowance-2*units.Picometre <= wanted {
		return PistonValveRoom{}, &InputError{"wanted clearance", wanted.String(), "below what there is with the valve shut at dead centre, " + (liftLength(low.drop) - p.Allowance).String()}
	}
	if p.atEnd(low.least()) {
		return PistonValveRoom{}, p.endError()
	}
	i, t, _ := p.Curve.peak()
	peak := math.Remainder(float64(p.Curve.angle(i, t))/float64(units.Degree), 360)
	r := PistonValveRoom{}
	sign := 1.0
	if peak < 0 {
		r.Move, sign = RetardCam, -1
	}
	bad := func(moved float64) bool {
		low.shift = sign * moved
		return liftLength(low.least().clearance)-2*units.Picometre-p.Allowance < wanted
	}
	// An advance turns the crank angle of each lift back: see fallAt.
	good, tooFar := -mostBack.Float(units.InDegrees), math.Abs(peak)
	if !bad(tooFar) {
		r.Free, r.Left = true, roomAngle(tooFar)
		return r, nil
	}
	if bad(good) {
		return PistonValveRoom{}, &InputError{"wanted clearance", wanted.String(), "reached with the camshaft moved back by 90° or less"}
	}
	for tooFar-good > 1e-8 {
		if middle := (good + tooFar) / 2; bad(middle) {
			tooFar = middle
		} else {
			good = middle
		}
	}
	r.Left = roomAngle(good)
	return r, nil
}

// roomAngle rounds degrees down, to a ten-thousandth of an arcsecond.
func roomAngle(degrees float64) units.Angle {
	const step = 100 * units.Microarcsecond
	return units.Angle(math.Floor(degrees*float64(units.Degree)/float64(step))) * step
}

// ClearanceAt is the clearance at one crank angle of the table, everything on
// the dangerous side and rounded down, the allowance taken off: for a curve of
// it. A valve that is shut counts with no lift. It fails as
// [PistonValve.Inspect] does, and outside the table.
func (p PistonValve) ClearanceAt(angle units.Angle) (units.Length, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	lift, err := p.Curve.Lift(angle)
	if err != nil {
		return 0, err
	}
	low, _ := p.cases()
	open := max(0, lift.Float(units.InMillimetres)+low.more)
	return liftLength(low.drop+low.k*low.fallAt(angle.Float(units.InDegrees))-open) - 3*units.Picometre - p.Allowance, nil
}
