package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

const pi = math.Pi

// Speed is how fast the piston goes down at a crank angle in radians after top
// dead centre, for each radian of the crank: the derivative of
// [Slider.Position], below zero while the piston rises. Times the crank's
// speed in radians per second (π/30 times its revolutions per minute) it is
// the piston's. In millimetres:
//
//	v = throw·sin θ + reach·throw·cos θ/√(rod² − reach²),  reach = throw·sin θ + offset
//
// with θ from upright.
func (s Slider[R]) Speed(angle R) R { return s.Curve().Speed(angle) }

// Speed is [Slider.Speed].
func (c SliderCurve[R]) Speed(angle R) R {
	across, along := c.crankpin(angle)
	reach := across.Add(c.offset)
	return across.Add(reach.Mul(along).Quo(legOf(c.rod, reach)))
}

// Acceleration is the piston's acceleration downward at a crank angle in
// radians after top dead centre, for a crank that turns evenly by one radian
// per second: the second derivative of [Slider.Position]. Times the square of
// the crank's speed in radians per second it is the piston's. With p =
// √(rod² − reach²):
//
//	a = throw·cos θ + (throw·cos θ)²·rod²/p³ − reach·throw·sin θ/p
//
// At top dead centre without offset it is throw·(1 + throw/rod), at bottom
// −throw·(1 − throw/rod).
func (s Slider[R]) Acceleration(angle R) R { return s.Curve().Acceleration(angle) }

// Acceleration is [Slider.Acceleration].
func (c SliderCurve[R]) Acceleration(angle R) R {
	across, along := c.crankpin(angle)
	reach := across.Add(c.offset)
	up := legOf(c.rod, reach)
	turn := along.Mul(c.rod).Quo(up)
	return along.Add(turn.Mul(turn).Sub(reach.Mul(across)).Quo(up))
}

// SeriesPosition is the two-term series of handbooks for [PistonPosition]:
// throw·(1 − cos θ) + throw²·sin²θ/(2·rod). It is exact at both dead centres
// and too small between them: at 90° with a rod of twice the stroke by 0.1 %
// of the stroke, with one of 1.5 strokes by 0.2 %. It is here to find what a
// printed number was worked with.
func SeriesPosition[R tolerance.Real[R]](throw, rod, angle R) R {
	across := throw.Mul(angle.Sin())
	lean := across.Mul(across).Quo(rod.Const(2).Mul(rod))
	return throw.Sub(throw.Mul(angle.Cos())).Add(lean)
}

// SeriesSpeed is the two-term series of handbooks for [Slider.Speed] without
// offset: throw·(sin θ + throw·sin 2θ/(2·rod)).
func SeriesSpeed[R tolerance.Real[R]](throw, rod, angle R) R {
	twice := angle.Mul(angle.Const(2))
	return throw.Mul(angle.Sin().Add(throw.Mul(twice.Sin()).Quo(rod.Const(2).Mul(rod))))
}

// SeriesAcceleration is the two-term series of handbooks for
// [Slider.Acceleration] without offset: throw·(cos θ + throw·cos 2θ/rod).
func SeriesAcceleration[R tolerance.Real[R]](throw, rod, angle R) R {
	twice := angle.Mul(angle.Const(2))
	return throw.Mul(angle.Cos().Add(throw.Mul(twice.Cos()).Quo(rod)))
}

// MeanPistonSpeed is the mean speed of a piston in metres per second, from its
// stroke in millimetres and the crankshaft's revolutions per minute: two
// strokes a turn, 2·stroke/1000·rpm/60. What is usual depends on the engine;
// common practice is below 20 m/s for a road engine.
func MeanPistonSpeed[R tolerance.Real[R]](strokeMM, rpm R) R {
	return strokeMM.Mul(rpm).Quo(rpm.Const(30_000))
}

// RPMForMeanSpeed is the crankshaft's revolutions per minute at which a stroke
// in millimetres has a mean piston speed in metres per second. It undoes
// [MeanPistonSpeed].
func RPMForMeanSpeed[R tolerance.Real[R]](speedMPS, strokeMM R) R {
	return speedMPS.Mul(speedMPS.Const(30_000)).Quo(strokeMM)
}

// StrokeForMeanSpeed is the stroke in millimetres that has a mean piston speed
// in metres per second at the crankshaft's revolutions per minute. It undoes
// [MeanPistonSpeed].
func StrokeForMeanSpeed[R tolerance.Real[R]](speedMPS, rpm R) R {
	return speedMPS.Mul(speedMPS.Const(30_000)).Quo(rpm)
}
