package form

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A Harmonic is one term of a round profile: Order lobes with the radius
// Cos·cos(Order·θ) + Sin·sin(Order·θ) about the mean. Order 1 is eccentricity,
// 2 ovality, 3 and more are lobes; in the standards the order counts
// undulations per revolution.
type Harmonic struct {
	Order    int
	Cos, Sin float64
}

// Amplitude is how far the crests stand above the mean radius.
func (h Harmonic) Amplitude() float64 { return math.Hypot(h.Cos, h.Sin) }

// Crest is the direction of the first crest, in radians counter-clockwise from
// the first reading, from 0 to less than 2π/Order. The others follow at 2π/Order.
// For order 0, and where there is no amplitude, it is 0.
func (h Harmonic) Crest() float64 {
	if h.Order < 1 {
		return 0
	}
	a := math.Atan2(h.Sin, h.Cos)
	if a < 0 {
		a += 2 * math.Pi
	}
	if a >= 2*math.Pi {
		a = 0
	}
	return a / float64(h.Order)
}

// CrestAngle is [Harmonic.Crest] as an angle, rounded to the nearest quantum.
func (h Harmonic) CrestAngle() units.Angle {
	a, _ := units.AngleFromRadians(h.Crest()) // at most a turn
	return a
}

// At is the harmonic's part of the radius in a direction, in radians.
func (h Harmonic) At(radians float64) float64 {
	sin, cos := math.Sincos(float64(h.Order) * radians)
	return h.Cos*cos + h.Sin*sin
}

// RONt is the roundness deviation of a part with this harmonic alone: twice
// the amplitude, a difference of radii. Eccentricity is none.
func (h Harmonic) RONt() float64 {
	if h.Order < 2 {
		return 0
	}
	return 2 * h.Amplitude()
}

// OutOfRound is the greatest less the least diameter of a part with this
// harmonic alone: four times the amplitude where the order is even, nothing
// where it is odd. See [Radial.OutOfRoundIfEven].
func (h Harmonic) OutOfRound() float64 {
	if h.Order%2 != 0 {
		return 0
	}
	return 2 * h.RONt()
}
