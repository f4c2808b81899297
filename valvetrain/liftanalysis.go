package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A LiftExtreme is a greatest velocity or acceleration and where it is.
type LiftExtreme struct {
	Angle units.Angle `json:"angle"` // of the crankshaft
	// Value is in millimetres per degree of the crankshaft, or per its square.
	Value float64 `json:"value"`
}

// A LiftAnalysis is what a lift curve tells as a whole. Velocities are in
// millimetres per degree of the crankshaft, accelerations in millimetres per
// degree squared: [FollowerSpeed] and [FollowerAcceleration] take them to a
// speed of the engine.
type LiftAnalysis struct {
	Peak      LiftPoint   `json:"peak"`          // greatest lift
	AreaMMDeg float64     `json:"area_mm_deg"`   // between the curve and zero lift, where it is above
	Opening   LiftExtreme `json:"opening"`       // greatest velocity upward
	Closing   LiftExtreme `json:"closing"`       // greatest downward, below zero
	Upward    LiftExtreme `json:"upward"`        // greatest acceleration upward, on the flanks
	Downward  LiftExtreme `json:"downward"`      // greatest downward, over the nose, which the spring provides; below zero
	Smoothing units.Angle `json:"smoothing"`     // half-width of the fits; 0 for the curve itself
	Fitted    int         `json:"fitted"`        // points that velocities are of: those with a whole window about them; 0 without smoothing
	Side      TimingSide  `json:"side"`          // where the lift is measured
	Way       LiftWay     `json:"way,omitempty"` // how the curve runs between points
}

// Analyse finds greatest lift, area, velocities and accelerations.
//
// A dial's steps and the wheel's errors are small in the lift and large in its
// second difference: at 1° steps an error of 0.005 mm is one of 0.01 mm/deg² or
// more, as large as the acceleration of a lobe. So velocity and acceleration are
// those of a smoothing: at each point the parabola that fits all points within
// half a width either side best (least squares), which on even steps is the
// filter of Savitzky and Golay. Points nearer to an end of the table than that
// are left out; let the table reach that far beyond the lift. The wider the
// smoothing, the more it takes off the peaks: state it with the result. Zero
// gives those of the interpolated curve itself, points and between. Peak and
// area are of the curve itself in either case.
//
// It fails with an [InputError] where the smoothing is below zero, leaves no
// point with a whole window or a window with fewer than 3 points.
func (c LiftCurve) Analyse(smoothing units.Angle) (LiftAnalysis, error) {
	if err := c.empty(); err != nil {
		return LiftAnalysis{}, err
	}
	if smoothing < 0 || smoothing > mostLiftAngle {
		return LiftAnalysis{}, &InputError{"half-width of smoothing", smoothing.String(), "0° or more, and within the table"}
	}
	i, t, y := c.peak()
	a := LiftAnalysis{Peak: LiftPoint{c.angle(i, t), liftLength(y)}, AreaMMDeg: c.areaAbove(0), Smoothing: smoothing, Side: c.side, Way: c.way}
	if smoothing == 0 {
		c.extremes(&a)
		return a, nil
	}
	return a, c.smoothed(&a)
}

// AreaAbove is the area between the curve and a lift, where the curve is above
// it, in millimetres times degrees of the crankshaft. It compares lobes of one
// engine; what flows is for a bench to say. It fails with an [InputError] of a
// curve without points or a lift beyond 10 m.
func (c LiftCurve) AreaAbove(lift units.Length) (float64, error) {
	if err := c.empty(); err != nil {
		return 0, err
	}
	if lift < -inputLargest || lift > inputLargest {
		return 0, &InputError{"lift", lift.String(), "within 10 m"}
	}
	return c.areaAbove(float64(lift) / float64(units.Millimetre)), nil
}

func (c *LiftCurve) areaAbove(level float64) (area float64) {
	for i := range len(c.y) - 1 {
		h := c.width(i)
		y0, y1 := c.y[i]-level, c.y[i+1]-level
		// The control points of the Bézier form, between which the cubic stays.
		c0, c1 := y0+c.m[i]*h/3, y1-c.m[i+1]*h/3
		switch {
		case y0 >= 0 && y1 >= 0 && c0 >= 0 && c1 >= 0:
			area += h * (y0 + c0 + c1 + y1) / 4
		case y0 > 0 || y1 > 0 || c0 > 0 || c1 > 0:
			s := c.cubic(i)
			s.y -= level
			area += s.areaAboveZero()
		}
	}
	return area
}

// areaAboveZero cuts a cubic at its turns into monotone stretches, and those at
// zero.
func (s *cubic) areaAboveZero() (area float64) {
	from := 0.0
	turns := s.turns()
	if turns[0] > turns[1] {
		turns[0], turns[1] = turns[1], turns[0]
	}
	for _, to := range [3]float64{turns[0], turns[1], s.h} {
		if !(to > from && to <= s.h) {
			continue
		}
		lo, hi := from, to
		switch up, down := s.at(to) > 0, s.at(from) > 0; {
		case up && !down:
			lo = s.pass(0, from, to)
		case down && !up:
			hi = s.pass(0, to, from)
		case !up:
			hi = lo
		}
		area += s.integral(hi) - s.integral(lo)
		from = to
	}
	return area
}

func (s *cubic) integral(t float64) float64 {
	return t * (s.y + t*(s.m/2+t*(s.b/3+t*s.a/4)))
}

// extremes are those of the curve itself. Within a segment velocity is a
// parabola and acceleration a straight line.
func (c *LiftCurve) extremes(a *LiftAnalysis) {
	up, down := math.Inf(-1), math.Inf(1)
	faster, slower := math.Inf(-1), math.Inf(1)
	for i := range len(c.y) - 1 {
		s := c.cubic(i)
		m1, a0 := c.m[i+1], 2*s.b
		a1 := a0 + 6*s.a*s.h
		top, bottom, topAt, bottomAt := s.m, m1, 0.0, s.h
		if m1 > s.m {
			top, bottom, topAt, bottomAt = m1, s.m, s.h, 0
		}
		if a0*a1 < 0 {
			at := s.h * a0 / (a0 - a1)
			if v := s.slope(at); a0 > 0 {
				top, topAt = v, at
			} else {
				bottom, bottomAt = v, at
			}
		}
		if top > up {
			up, a.Opening = top, LiftExtreme{c.angle(i, topAt), top}
		}
		if bottom < down {
			down, a.Closing = bottom, LiftExtreme{c.angle(i, bottomAt), bottom}
		}
		most, mostAt, least, leastAt := a0, 0.0, a1, s.h
		if a1 > a0 {
			most, mostAt, least, leastAt = a1, s.h, a0, 0
		}
		if most > faster {
			faster, a.Upward = most, LiftExtreme{c.angle(i, mostAt), most}
		}
		if least < slower {
			slower, a.Downward = least, LiftExtreme{c.angle(i, leastAt), least}
		}
	}
}

// FollowerSpeed is a velocity in metres per second from one in millimetres per
// degree of the crankshaft, and the crankshaft's revolutions per minute: times
// 6 degrees a second for each, and a thousandth.
func FollowerSpeed[R tolerance.Real[R]](perDegree, rpm R) R {
	return perDegree.Mul(rpm).Mul(rpm.Const(6)).Quo(rpm.Const(1000))
}

// FollowerAcceleration is an acceleration in metres per second squared from one
// in millimetres per degree of the crankshaft squared, and its revolutions per
// minute.
func FollowerAcceleration[R tolerance.Real[R]](perDegree2, rpm R) R {
	degrees := rpm.Mul(rpm.Const(6))
	return perDegree2.Mul(degrees).Mul(degrees).Quo(rpm.Const(1000))
}

// FollowerSpeedPerDegree undoes [FollowerSpeed]: millimetres per degree from
// metres per second.
func FollowerSpeedPerDegree[R tolerance.Real[R]](speed, rpm R) R {
	return speed.Mul(rpm.Const(1000)).Quo(rpm.Mul(rpm.Const(6)))
}

// FollowerAccelerationPerDegree2 undoes [FollowerAcceleration]: millimetres per
// degree squared from metres per second squared.
func FollowerAccelerationPerDegree2[R tolerance.Real[R]](acceleration, rpm R) R {
	degrees := rpm.Mul(rpm.Const(6))
	return acceleration.Mul(rpm.Const(1000)).Quo(degrees).Quo(degrees)
}
