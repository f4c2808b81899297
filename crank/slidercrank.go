package crank

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SliderCrank is the crank, rod and piston of one cylinder: [Slider] with
// units, checked. Its lengths are exact; those it gives are worked out in
// float64 and within 2 pm for engines of up to a metre of throw and rod,
// angles within 10⁻⁶ of an arcsecond away from the dead centres.
//
// Turn an engine with its ignition and fuel disabled, by hand, and keep clear
// of what moves.
type SliderCrank struct {
	Throw units.Length `json:"throw"` // from the crankshaft's axis to the crankpin's
	Rod   units.Length `json:"rod"`   // between the centres of its eyes
	// Offset is that of the gudgeon pin's line from the crankshaft's axis, pin
	// and cylinder offset together: above zero on the thrust side (where the
	// crankpin rises), below zero on the other.
	Offset units.Length `json:"offset,omitzero"`
}

// A PistonMotion is where a piston is and how it moves. The zero value is at
// rest at top dead centre.
type PistonMotion struct {
	Angle            units.Angle  `json:"angle"`              // of the crank after top dead centre
	Position         units.Length `json:"position"`           // below top dead centre
	SpeedMPS         float64      `json:"speed_m_s"`          // downward, below zero while it rises
	AccelerationMPS2 float64      `json:"acceleration_m_s2"`  // downward; above zero the piston presses the rod, but for gas
	Fraction         float64      `json:"fraction_of_stroke"` // the position as a part of the stroke, from 0 to 1
}

// sliderLargest is more than any rod measures.
const sliderLargest = 10 * units.Metre

// sliderText quotes a number.
func sliderText(x float64, unit string) string {
	s := strconv.FormatFloat(x, 'g', -1, 64)
	if unit != "" {
		s += " " + unit
	}
	return s
}

// Check refuses a throw or rod that is none, and a rod with which the crank
// can't go round: not longer than throw and offset together. Its error is an
// [InputError].
func (s SliderCrank) Check() error {
	for _, l := range []struct {
		field string
		size  units.Length
	}{{"throw", s.Throw}, {"rod", s.Rod}} {
		if l.size <= 0 || l.size > sliderLargest {
			return &InputError{l.field, l.size.String(), "above 0 mm and at most 10 m"}
		}
	}
	if s.Offset < -sliderLargest || s.Offset > sliderLargest {
		return &InputError{"offset", s.Offset.String(), "within 10 m"}
	}
	if reach := s.Throw.Add(s.Offset.Abs()); s.Rod <= reach {
		return &InputError{"rod", s.Rod.String(), "longer than half the stroke and the offset together, " + reach.String() + ", so that the crank goes round"}
	}
	return nil
}

// Float is the slider in millimetres, for the formulas.
func (s SliderCrank) Float() Slider[tolerance.Float] {
	mm := func(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }
	return Slider[tolerance.Float]{Throw: mm(s.Throw), Rod: mm(s.Rod), Offset: mm(s.Offset)}
}

func sliderLength(x tolerance.Float) units.Length {
	l, err := units.Nearest(float64(x), units.InMillimetres)
	if err != nil {
		return units.OutOfRange[units.Length]()
	}
	return l
}

func sliderAngle(x tolerance.Float) units.Angle {
	a, err := units.AngleFromRadians(float64(x))
	if err != nil {
		return units.OutOfRange[units.Angle]()
	}
	return a
}

// Stroke is how far the piston travels: exactly twice the throw without
// offset, more with one (see [Slider.Stroke]).
func (s SliderCrank) Stroke() (units.Length, error) {
	if err := s.Check(); err != nil {
		return 0, err
	}
	if s.Offset == 0 {
		return SliderStroke(s.Throw), nil
	}
	return sliderLength(s.Float().Stroke()), nil
}

// DeadCentres are where the throw stands at top dead centre, after upright, and
// how far the crank turns from there to bottom dead centre.
func (s SliderCrank) DeadCentres() (top, bottom units.Angle, err error) {
	if err := s.Check(); err != nil {
		return 0, 0, err
	}
	f := s.Float()
	return sliderAngle(f.TopAngle()), sliderAngle(f.BottomAngle()), nil
}

// At is where the piston is and how it moves at a crank angle after top dead
// centre, with the crankshaft turning evenly at so many revolutions per minute,
// which must be above zero. It fails with an [InputError].
func (s SliderCrank) At(angle units.Angle, rpm float64) (PistonMotion, error) {
	if err := s.Check(); err != nil {
		return PistonMotion{}, err
	}
	if err := sliderSpeed("speed", rpm); err != nil {
		return PistonMotion{}, err
	}
	if !angle.InRange() {
		return PistonMotion{}, &InputError{"crank angle", angle.String(), "within range"}
	}
	f := s.Float()
	return motionAt(f.Curve(), angle, f.Stroke(), rpm), nil
}

// motionAt is At of what was checked.
func motionAt(c SliderCurve[tolerance.Float], angle units.Angle, stroke tolerance.Float, rpm float64) PistonMotion {
	// Whole turns are taken off exactly.
	a := tolerance.Float((angle % units.Turn).Radians())
	omega := rpm * math.Pi / 30
	x := min(max(c.Position(a), 0), stroke)
	return PistonMotion{
		Angle:            angle,
		Position:         sliderLength(x),
		SpeedMPS:         float64(c.Speed(a)) * omega / 1000,
		AccelerationMPS2: float64(c.Acceleration(a)) * omega * omega / 1000,
		Fraction:         float64(x / stroke),
	}
}

// mostRPM is more than any crankshaft turns.
const mostRPM = 1_000_000

// sliderSpeed refuses a speed of rotation that is none.
func sliderSpeed(field string, rpm float64) error {
	if !(rpm > 0 && rpm <= mostRPM) {
		return &InputError{field, sliderText(rpm, "r/min"), "above 0 r/min and at most a million"}
	}
	return nil
}

// PositionAt is how far the piston is below top dead centre at a crank angle
// after it.
func (s SliderCrank) PositionAt(angle units.Angle) (units.Length, error) {
	m, err := s.At(angle, 1)
	return m.Position, err
}

// AnglesFor are the two crank angles of a position below top dead centre: after
// top dead centre on the way down, and before it on the way up, both above zero
// and up to bottom dead centre. Without offset they are alike. Near the dead
// centres the crank turns far for little, so that an angle found from a dial
// gauge is best found well away from them. It fails with an [InputError] for a
// position that the piston doesn't reach.
func (s SliderCrank) AnglesFor(position units.Length) (after, before units.Angle, err error) {
	stroke, err := s.Stroke()
	if err != nil {
		return 0, 0, err
	}
	if position < 0 || position > stroke {
		return 0, 0, &InputError{"position", position.String(), "from 0 mm to the stroke, " + stroke.String()}
	}
	f := s.Float()
	x := min(tolerance.Float(position.Float(units.InMillimetres)), f.Stroke())
	return sliderAngle(f.AngleAfterTop(x)), sliderAngle(f.AngleBeforeTop(x)), nil
}

// StopError is how far after top dead centre the midpoint lies between the two
// crank angles at which the piston meets a positive stop, or a dial gauge
// reads alike, a distance below top dead centre: zero without offset. It is
// taken off the midpoint.
func (s SliderCrank) StopError(position units.Length) (units.Angle, error) {
	after, before, err := s.AnglesFor(position)
	if err != nil {
		return 0, err
	}
	return after.Sub(before).Scale(1, 2), nil
}

// String is the slider in words.
func (s SliderCrank) String() string {
	return fmt.Sprintf("throw %v, rod %v, offset %v", s.Throw, s.Rod, s.Offset)
}
