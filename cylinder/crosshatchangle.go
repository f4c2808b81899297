package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A CrossHatch is the angle of a honed bore's marks. Four angles are called by
// that name, and a text that doesn't say which leaves a factor of two open, or
// what is missing to 180°:
//
//	        axis
//	    ╲    │    ╱
//	     ╲   │   ╱        included: between the marks, as they open to the side
//	      ╲  │  ╱         about the axis: between them as they open up, 180° − included
//	───────╳─────── way   half: from a mark to the way round, included/2
//	      ╱  │  ╲   round from the axis: from a mark to the axis, 90° − half
//	     ╱   │   ╲
//
// So it is made by naming one of them, and gives each by its name. Marks at
// 45° to the axis are 90° included either way. The zero CrossHatch is no
// angle.
type CrossHatch struct{ included units.Angle }

// IncludedAngle is a cross-hatch by the angle between its marks about the way
// round the bore.
func IncludedAngle(a units.Angle) CrossHatch { return CrossHatch{a} }

// HalfAngle is a cross-hatch by the angle from a mark to the way round.
func HalfAngle(a units.Angle) CrossHatch { return CrossHatch{a.Scale(2, 1)} }

// AngleAboutAxis is a cross-hatch by the angle between its marks about the
// bore's axis.
func AngleAboutAxis(a units.Angle) CrossHatch { return CrossHatch{(units.Turn / 2).Sub(a)} }

// AngleFromAxis is a cross-hatch by the angle from a mark to the bore's axis.
func AngleFromAxis(a units.Angle) CrossHatch { return AngleAboutAxis(a.Scale(2, 1)) }

// Included is the angle between the marks about the way round.
func (c CrossHatch) Included() units.Angle { return c.included }

// Half is the angle from a mark to the way round: half of the included one,
// to the nearest quantum.
func (c CrossHatch) Half() units.Angle { return c.included.Scale(1, 2) }

// AboutAxis is the angle between the marks about the axis: what the included
// one lacks to 180°.
func (c CrossHatch) AboutAxis() units.Angle { return AngleAboutAxis(c.included).included }

// FromAxis is the angle from a mark to the axis: what the half one lacks to
// 90°, to the nearest quantum.
func (c CrossHatch) FromAxis() units.Angle { return c.AboutAxis().Scale(1, 2) }

// String is the angle all four ways, to a hundredth of a degree.
func (c CrossHatch) String() string {
	if !c.included.InRange() {
		return "cross-hatch out of range"
	}
	t := func(a units.Angle) string { return a.Text(units.InDegrees, 2) }
	return t(c.Included()) + " included (" + t(c.Half()) + " from the way round; about the axis " + t(c.AboutAxis()) + ", " + t(c.FromAxis()) + " from it)"
}

// Judge judges the included angle against limits that are for it. Limits that
// a manual gives for another of the four are first brought to it: see
// [CrossHatch] for how.
func (c CrossHatch) Judge(included tolerance.BandOf[units.Angle]) tolerance.Verdict {
	return included.Judge(tolerance.Exactly(c.included))
}
