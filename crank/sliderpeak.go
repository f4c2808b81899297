package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Peaks are where the piston goes fastest: down, and up. That is where its
// acceleration is zero, near where throw and rod stand at right angles, and in
// most engines 73° to 80° from top dead centre. Without offset sin²θ there is
// the root u of u³ − n²u² − n⁴u + n⁴ = 0 with n = rod/throw; the two-term
// series of handbooks is 0.4° out for a rod of 1.67 strokes. It is found by
// bisection, as near as float64 tells the angles apart. It fails with an [InputError] as
// [SliderCrank.At] does.
func (s SliderCrank) Peaks(rpm float64) (down, up PistonMotion, err error) {
	if err := s.Check(); err != nil {
		return down, up, err
	}
	if err := sliderSpeed("speed", rpm); err != nil {
		return down, up, err
	}
	f := s.Float()
	c, stroke := f.Curve(), f.Stroke()
	bottom := float64(f.BottomAngle())
	at := func(from, to float64) PistonMotion {
		return motionAt(c, sliderAngle(tolerance.Float(zeroAcceleration(c, from, to))), stroke, rpm)
	}
	down = at(0, bottom)
	up = at(bottom, 2*math.Pi)
	return down, up, nil
}

// zeroAcceleration is the angle between two dead centres at which the
// acceleration changes its sign. It does so once: at a dead centre it points
// away from it.
func zeroAcceleration(c SliderCurve[tolerance.Float], from, to float64) float64 {
	first := c.Acceleration(tolerance.Float(from)) > 0
	for {
		middle := from + (to-from)/2
		if middle <= from || middle >= to {
			return middle
		}
		if (c.Acceleration(tolerance.Float(middle)) > 0) == first {
			from = middle
		} else {
			to = middle
		}
	}
}

// MeanSpeedMPS is the mean speed of the piston in metres per second at the
// crankshaft's revolutions per minute: two strokes a turn.
func (s SliderCrank) MeanSpeedMPS(rpm float64) (float64, error) {
	stroke, err := s.Stroke()
	if err != nil {
		return 0, err
	}
	if err := sliderSpeed("speed", rpm); err != nil {
		return 0, err
	}
	return float64(MeanPistonSpeed(tolerance.Float(stroke.Float(units.InMillimetres)), tolerance.Float(rpm))), nil
}
