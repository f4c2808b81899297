package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// Peak is where the curve's lift is greatest. Of equal ones it is the first; of
// a dwell at full lift, its beginning. It fails with an [InputError] of a curve
// without points.
func (c LiftCurve) Peak() (LiftPoint, error) {
	if err := c.empty(); err != nil {
		return LiftPoint{}, err
	}
	i, t, y := c.peak()
	return LiftPoint{c.angle(i, t), liftLength(y)}, nil
}

// angle is the one so many degrees into a segment.
func (c *LiftCurve) angle(i int, t float64) units.Angle {
	return c.points[i].Angle + units.Angle(math.RoundToEven(t*float64(units.Degree)))
}

// peak is the greatest lift: its segment, the degrees into it, and the lift.
func (c *LiftCurve) peak() (at int, t, y float64) {
	y = c.y[0]
	for i := range len(c.y) - 1 {
		if c.y[i+1] > y {
			at, t, y = i, c.width(i), c.y[i+1]
		}
	}
	if c.way == LiftShape { // whose greatest lift is the table's
		return at, t, y
	}
	for i := range len(c.y) - 1 {
		h := c.width(i)
		// A cubic stays within the four control points of its Bézier form.
		if c.y[i]+c.m[i]*h/3 <= y && c.y[i+1]-c.m[i+1]*h/3 <= y {
			continue
		}
		s := c.cubic(i)
		for _, r := range s.turns() {
			if v := s.at(r); r > 0 && r < h && v > y {
				at, t, y = i, r, v
			}
		}
	}
	return at, t, y
}

// turns are where a cubic's slope is zero, not-a-number where it isn't.
func (s *cubic) turns() [2]float64 {
	// m + 2b·t + 3a·t²; q has b's sign, so that nothing cancels.
	q := -(s.b + math.Copysign(math.Sqrt(s.b*s.b-3*s.a*s.m), s.b))
	return [2]float64{q / (3 * s.a), s.m / q}
}

// AnglesAt are the two angles at which the lift passes a given one, on the
// opening and on the closing flank. At lift 0 of a table that begins and ends on
// the base circle they are where the lift leaves it and comes back.
//
// It fails with an [InputError] where the curve doesn't come down to the lift on
// both sides or never reaches it, and where the table passes it more than twice:
// a flank that goes up and down holds a misread line.
func (c LiftCurve) AnglesAt(lift units.Length) (opening, closing units.Angle, err error) {
	if err := c.empty(); err != nil {
		return 0, 0, err
	}
	if lift < -inputLargest || lift > inputLargest {
		return 0, 0, &InputError{"lift", lift.String(), "within 10 m"}
	}
	level := float64(lift) / float64(units.Millimetre)
	at, t, top := c.peak()
	if level >= top {
		return 0, 0, &InputError{"lift", lift.String(), "below the greatest of the table, " + liftLength(top).String()}
	}
	last := len(c.y) - 1
	lo := at
	for lo >= 0 && c.y[lo] > level {
		lo--
	}
	hi := at + 1
	for hi <= last && c.y[hi] > level {
		hi++
	}
	if lo < 0 || hi > last {
		return 0, 0, &InputError{"lift", lift.String(), "passed on both flanks of the table, which ends at " + c.points[0].Lift.String() + " and " + c.points[last].Lift.String()}
	}
	for i, y := range c.y {
		if (i < lo || i > hi) && y > level {
			return 0, 0, &InputError{"lift at " + c.points[i].Angle.String(), c.points[i].Lift.String(), "at most " + lift.String() + " there: the curve passes that more than twice"}
		}
	}
	// The peak splits its own segment into a flank on either side.
	s := c.cubic(lo)
	end, start := s.h, 0.0
	if lo == at {
		end = t
	}
	opening = c.points[lo].Angle
	if c.y[lo] < level {
		opening = c.angle(lo, s.pass(level, 0, end))
	}
	if hi-1 == at {
		start = t
	}
	closing = c.points[hi].Angle
	if c.y[hi] < level {
		s = c.cubic(hi - 1)
		closing = c.angle(hi-1, s.pass(level, s.h, start))
	}
	return opening, closing, nil
}

// pass is where a cubic passes a level between low, where it is not above it,
// and high, where it is. Newton's steps, held within a bracket that halves.
func (s *cubic) pass(level, low, high float64) float64 {
	t := (low + high) / 2
	for range 100 {
		off := s.at(t) - level
		if off <= 0 {
			low = t
		} else {
			high = t
		}
		next := t - off/s.slope(t)
		if !(next > min(low, high) && next < max(low, high)) {
			next = (low + high) / 2
		}
		if math.Abs(next-t) < 1e-13 {
			return next
		}
		t = next
	}
	return t
}

// Duration is how long the lift is above a given one. It fails as
// [LiftCurve.AnglesAt] does.
func (c LiftCurve) Duration(lift units.Length) (units.Angle, error) {
	opening, closing, err := c.AnglesAt(lift)
	return closing - opening, err
}

// MidOpen is halfway between the two angles at a lift, and how far after it the
// greatest lift comes: 0 on a symmetric lobe. It fails as [LiftCurve.AnglesAt]
// does.
func (c LiftCurve) MidOpen(lift units.Length) (middle, peakAfter units.Angle, err error) {
	opening, closing, err := c.AnglesAt(lift)
	if err != nil {
		return 0, 0, err
	}
	middle = opening + (closing-opening).Scale(1, 2)
	at, t, _ := c.peak()
	return middle, c.angle(at, t) - middle, nil
}

// Events are the valve's events at a lift, of a curve whose angles count from
// top dead centre at overlap, above zero after it: an inlet valve's lift lies
// mostly above zero, an exhaust valve's below. It fails as [LiftCurve.AnglesAt]
// and [ValveEvents.Check] do.
func (c LiftCurve) Events(valve TimedValve, lift units.Length) (ValveEvents, error) {
	opening, closing, err := c.AnglesAt(lift)
	if err != nil {
		return ValveEvents{}, err
	}
	const half = units.Turn / 2
	e := ValveEvents{Valve: valve, At: TimingLift{lift, c.side}}
	if valve == ExhaustValve {
		e.Opens, e.Closes = -half-opening, closing
	} else {
		e.Opens, e.Closes = -opening, closing-half
	}
	if err := e.Check(); err != nil {
		return ValveEvents{}, err
	}
	return e, nil
}
