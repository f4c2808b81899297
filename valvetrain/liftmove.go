package valvetrain

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Advanced is the curve with the camshaft turned ahead by so many degrees of the
// crankshaft, below zero to retard it: every lift comes that much earlier. It
// fails with an [InputError] where the table would leave four turns.
func (c LiftCurve) Advanced(by units.Angle) (LiftCurve, error) {
	if err := c.empty(); err != nil {
		return LiftCurve{}, err
	}
	first, last := c.Span()
	if first, last = first.Sub(by), last.Sub(by); first < -mostLiftAngle || last > mostLiftAngle {
		return LiftCurve{}, &InputError{"advance", by.String(), "small enough for the table to stay within four turns"}
	}
	c.points = slices.Clone(c.points)
	for i := range c.points {
		c.points[i].Angle -= by
	}
	return c, nil
}

// AtValve is the valve's curve of a follower's: each lift times the rocker ratio
// less the clearance ([ValveLift]). Where it is below zero the clearance isn't
// taken up and the valve is shut. A constant ratio is a mean: see [RockerRatio].
// It fails with an [InputError] where the curve is a valve's already, the ratio
// isn't above zero, or the clearance is below zero.
func (c LiftCurve) AtValve(ratio tolerance.Ratio, clearance units.Length) (LiftCurve, error) {
	if err := c.empty(); err != nil {
		return LiftCurve{}, err
	}
	switch {
	case c.side != AtFollower:
		return LiftCurve{}, &InputError{"lift curve", c.side.String(), "at the follower, to be carried to the valve"}
	case !ratio.Valid() || ratio.Sign() <= 0:
		return LiftCurve{}, &InputError{"rocker ratio", ratio.String(), "above 0"}
	}
	if err := inputAllowance("valve clearance", clearance); err != nil {
		return LiftCurve{}, err
	}
	t := LiftTable{Side: AtValve, Way: c.way, Points: make([]LiftPoint, len(c.points))}
	for i, p := range c.points {
		t.Points[i] = LiftPoint{p.Angle, ValveLift(p.Lift, clearance, ratio)}
	}
	return t.Curve()
}
