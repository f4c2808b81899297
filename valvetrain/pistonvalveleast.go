package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// An approach is one case of valve and piston: the clearance at each angle of
// the lift curve, in millimetres.
type approach struct {
	curve *LiftCurve
	fall  fallCurve
	drop  float64
	k     float64 // what a fall counts along the valve's axis
	more  float64 // added to the lift
	slack float64 // how far, in degrees, the crank may stand nearer to dead centre; below zero, farther
	shift float64 // the camshaft's advance in degrees
}

// near is a place of least clearance.
type near struct {
	clearance float64
	segment   int     // of the lift curve; −1 where the valve is shut at dead centre
	t         float64 // degrees into it
	fall      float64 // of the piston there
	lift      float64 // there
}

// fallAt is the fall at so many degrees of the lift curve, and its place.
func (a *approach) fallAt(degrees float64) float64 {
	d := math.Remainder(degrees-a.shift, 360)
	if a.slack < 0 {
		before, _ := a.fall.at((d + a.slack) * (math.Pi / 180))
		after, _ := a.fall.at((d - a.slack) * (math.Pi / 180))
		return max(before, after)
	}
	if a.slack > 0 {
		d = math.Copysign(max(0, math.Abs(d)-a.slack), d)
	}
	x, _ := a.fall.at(d * (math.Pi / 180))
	return x
}

// leastWithin is how near to the true least, in millimetres, the search comes.
const leastWithin = 1e-10

// least finds the place of least clearance over the whole curve, by halving
// segments and leaving out those that can't hold it.
//
// In a segment the clearance's second derivative is at most that of the fall and
// what the lift's is below zero. So bounded by M it nowhere lies more than
// M·h²/8 below the lesser of the clearances at the ends of a stretch h: no dip
// between two points of the table goes unseen.
func (a *approach) least() near {
	best := near{clearance: a.drop, segment: -1}
	c := a.curve
	bend := a.k * a.fall.bend * (math.Pi / 180) * (math.Pi / 180)
	degrees := float64(c.points[0].Angle) / float64(units.Degree)
	left := a.drop + a.k*a.fallAt(degrees) - c.y[0] - a.more
	for i := range len(c.y) - 1 {
		end := float64(c.points[i+1].Angle) / float64(units.Degree)
		right := a.drop + a.k*a.fallAt(end) - c.y[i+1] - a.more
		s := c.cubic(i)
		m := max(0, bend+max(0, -2*s.b, -(2*s.b+6*s.a*s.h)))
		if right < best.clearance {
			best = near{clearance: right, segment: i, t: s.h}
		}
		if left < best.clearance {
			best = near{clearance: left, segment: i, t: 0}
		}
		a.halve(&best, i, &s, degrees, m, 0, s.h, left, right)
		degrees, left = end, right
	}
	if best.segment >= 0 {
		s := c.cubic(best.segment)
		best.lift = s.at(best.t) + a.more
		best.fall = a.fallAt(float64(c.points[best.segment].Angle)/float64(units.Degree) + best.t)
	}
	return best
}

func (a *approach) halve(best *near, i int, s *cubic, start, m, from, to, left, right float64) {
	h := to - from
	if min(left, right)-m*h*h/8 >= best.clearance-leastWithin || h < 1e-9 {
		return
	}
	t := from + h/2
	middle := a.drop + a.k*a.fallAt(start+t) - s.at(t) - a.more
	if middle < best.clearance {
		*best = near{clearance: middle, segment: i, t: t}
	}
	a.halve(best, i, s, start, m, from, t, left, middle)
	a.halve(best, i, s, start, m, t, to, middle, right)
}
