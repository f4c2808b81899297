package valvetrain

import (
	"math"
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/units"
)

// A LiftWay says how a lift curve runs between the points of its table. The zero
// value keeps the table's shape.
type LiftWay uint8

// The ways. Both go through every point.
const (
	// LiftShape is the monotone piecewise cubic of Fritsch and Butland: it rises
	// where the table rises, never swings beyond it, and its greatest lift is the
	// table's. Its acceleration jumps at the points.
	LiftShape LiftWay = iota
	// LiftSpline is the cubic spline with not-a-knot ends: smooth to the
	// acceleration, its greatest lift may lie between points, and it swings where
	// the table has a corner or an error.
	LiftSpline
)

var liftWayNames = []string{"shape-preserving", "cubic spline"}

// String is the way in words.
func (w LiftWay) String() string { return words.Of(liftWayNames, w) }

// MarshalText writes what String gives.
func (w LiftWay) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// UnmarshalText reads what String gives.
func (w *LiftWay) UnmarshalText(text []byte) error {
	if want, ok := words.Read(liftWayNames, text, w); !ok {
		return &InputError{"way between points", inputText(string(text)), want}
	}
	return nil
}

// A LiftPoint is one line of a lift table.
type LiftPoint struct {
	Angle units.Angle  `json:"angle"` // of the crankshaft; degrees of the camshaft are doubled first ([CrankDegrees])
	Lift  units.Length `json:"lift"`  // as dialled; a little below zero where a base circle runs out
}

// A LiftTable is a lift curve as it was dialled, point by point. Turn the engine
// by hand with the plugs out, always the same way, so that the play of the drive
// stays on one side.
type LiftTable struct {
	Side   TimingSide  `json:"side"`         // where the lift was dialled
	Way    LiftWay     `json:"way,omitzero"` // how the curve runs between points
	Points []LiftPoint `json:"points"`       // the angles growing, none twice
}

// A LiftCurve is a lift table made ready for questions. The zero value has no
// points and refuses all of them. It is immutable and safe to share.
//
// Lifts are worked out in float64, within 10⁻⁹ mm of the curve through the
// table's points; how near the table comes to the cam is another matter: a table
// in steps of 5° of the crankshaft or less follows most lobes to 0.01 mm (from
// memory).
type LiftCurve struct {
	points []LiftPoint
	y, m   []float64 // lift in mm, slope in mm per degree
	side   TimingSide
	way    LiftWay
}

// leastLiftPoints is the least that a curve is drawn through.
const leastLiftPoints = 4

// mostLiftAngle keeps angles exact in a float64.
const mostLiftAngle = 4 * units.Turn

// Curve draws the curve through the points. It fails with an [InputError] that
// names the line where there are fewer than 4 points, angles don't grow or
// aren't within four turns, or a lift is beyond 10 m.
func (t LiftTable) Curve() (LiftCurve, error) {
	switch {
	case t.Side > AtFollower:
		return LiftCurve{}, &InputError{"side of the rocker", t.Side.String(), "the valve's or the follower's"}
	case t.Way > LiftSpline:
		return LiftCurve{}, &InputError{"way between points", t.Way.String(), "shape-preserving or a cubic spline"}
	case len(t.Points) < leastLiftPoints:
		return LiftCurve{}, &InputError{"lift table", "of " + strconv.Itoa(len(t.Points)) + " points", "of 4 or more"}
	}
	for i, p := range t.Points {
		if p.Angle < -mostLiftAngle || p.Angle > mostLiftAngle {
			return LiftCurve{}, &InputError{"angle of point " + strconv.Itoa(i+1), p.Angle.String(), "within four turns"}
		}
		if p.Lift < -inputLargest || p.Lift > inputLargest {
			return LiftCurve{}, &InputError{"lift of point " + strconv.Itoa(i+1), p.Lift.String(), "within 10 m"}
		}
		if i > 0 && p.Angle <= t.Points[i-1].Angle {
			return LiftCurve{}, &InputError{"angle of point " + strconv.Itoa(i+1), p.Angle.String(), "beyond that of the point before, " + t.Points[i-1].Angle.String()}
		}
	}
	c := LiftCurve{points: slices.Clone(t.Points), side: t.Side, way: t.Way}
	c.fit()
	return c, nil
}

// fit works out lifts and slopes from the points.
func (c *LiftCurve) fit() {
	n := len(c.points)
	room := make([]float64, 2*n)
	c.y, c.m = room[:n:n], room[n:]
	for i, p := range c.points {
		c.y[i] = float64(p.Lift) / float64(units.Millimetre)
	}
	if c.way == LiftSpline {
		c.splineSlopes()
	} else {
		c.shapeSlopes()
	}
}

// perDegree makes degrees of quanta.
const perDegree = 1 / float64(units.Degree)

// width is that of segment i in degrees.
func (c *LiftCurve) width(i int) float64 {
	return float64(c.points[i+1].Angle-c.points[i].Angle) * perDegree
}

// wide is the width of segment i in degrees, and the slope of its chord.
func (c *LiftCurve) wide(i int) (h, chord float64) {
	h = c.width(i)
	return h, (c.y[i+1] - c.y[i]) / h
}

// shapeSlopes are those of F. N. Fritsch and J. Butland, "A method for
// constructing local monotone piecewise cubic interpolants", SIAM J. Sci. Stat.
// Comput. 5 (1984): a weighted harmonic mean of the chords, zero at a turn.
func (c *LiftCurve) shapeSlopes() {
	last := len(c.y) - 1
	h0, d0 := c.wide(0)
	h1, d1 := c.wide(1)
	c.m[0] = shapeEnd(h0, h1, d0, d1)
	for i := 1; i < last; i++ {
		h1, d1 = c.wide(i)
		if d0*d1 > 0 {
			w0, w1 := 2*h1+h0, h1+2*h0
			c.m[i] = (w0 + w1) * d0 * d1 / (w0*d1 + w1*d0)
		}
		if i == last-1 {
			c.m[last] = shapeEnd(h1, h0, d1, d0)
		}
		h0, d0 = h1, d1
	}
}

// shapeEnd is the slope at an end, from the widths and chords of the two
// segments next to it: a parabola's, held back where it would swing.
func shapeEnd(h0, h1, d0, d1 float64) float64 {
	m := ((2*h0+h1)*d0 - h0*d1) / (h0 + h1)
	switch {
	case m*d0 <= 0:
		return 0
	case d0*d1 <= 0 && math.Abs(m) > 3*math.Abs(d0):
		return 3 * d0
	}
	return m
}

// splineSlopes solves for the slopes at which the second derivative is the same
// on both sides of each point, and the third at the second and the last but one.
func (c *LiftCurve) splineSlopes() {
	last := len(c.y) - 1
	over := make([]float64, last+1) // above the diagonal, after elimination
	h0, d0 := c.wide(0)
	h1, d1 := c.wide(1)
	both := h0 + h1
	over[0] = both / h1
	c.m[0] = ((h0+2*both)*h1*d0 + h0*h0*d1) / both / h1
	for i := 1; i < last; i++ {
		h1, d1 = c.wide(i)
		pivot := 2*(h0+h1) - h1*over[i-1]
		over[i] = h0 / pivot
		c.m[i] = (3*(h1*d0+h0*d1) - h1*c.m[i-1]) / pivot
		if i == last-1 {
			both = h0 + h1
			right := (h1*h1*d0 + (2*both+h1)*h0*d1) / both
			c.m[last] = (right - both*c.m[i]) / (h0 - both*over[i])
		}
		h0, d0 = h1, d1
	}
	for i := last - 1; i >= 0; i-- {
		c.m[i] -= over[i] * c.m[i+1]
	}
}

// cubic is segment i as a polynomial in the degrees after its first point:
// y + m·t + b·t² + a·t³ over a width h.
type cubic struct{ h, y, m, b, a float64 }

func (c *LiftCurve) cubic(i int) cubic {
	h := c.width(i)
	per := 1 / h
	y0, m0, m1 := c.y[i], c.m[i], c.m[i+1]
	chord := (c.y[i+1] - y0) * per
	return cubic{h, y0, m0, (3*chord - 2*m0 - m1) * per, (m0 + m1 - 2*chord) * per * per}
}

func (s *cubic) at(t float64) float64    { return s.y + t*(s.m+t*(s.b+t*s.a)) }
func (s *cubic) slope(t float64) float64 { return s.m + t*(2*s.b+t*3*s.a) }

// empty refuses a curve without points.
func (c *LiftCurve) empty() error {
	if len(c.points) == 0 {
		return &InputError{"lift curve", "without points", "drawn by LiftTable.Curve"}
	}
	return nil
}

// Side is where the lift is measured.
func (c LiftCurve) Side() TimingSide { return c.side }

// Way is how the curve runs between its points.
func (c LiftCurve) Way() LiftWay { return c.way }

// Span is the first and the last angle of the table; both 0 of a curve without
// points.
func (c LiftCurve) Span() (first, last units.Angle) {
	if len(c.points) == 0 {
		return 0, 0
	}
	return c.points[0].Angle, c.points[len(c.points)-1].Angle
}

// Points are the curve's points, as a copy.
func (c LiftCurve) Points() []LiftPoint { return slices.Clone(c.points) }

// segment is the one that holds an angle of the table.
func (c *LiftCurve) segment(a units.Angle) int {
	i, found := slices.BinarySearchFunc(c.points, a, func(p LiftPoint, a units.Angle) int { return p.Angle.Compare(a) })
	if !found {
		i--
	}
	return min(i, len(c.points)-2)
}

// Lift is the lift at an angle of the table, to the nearest picometre or two. It
// fails with an [InputError] outside the table: what isn't dialled isn't known.
func (c LiftCurve) Lift(angle units.Angle) (units.Length, error) {
	if err := c.empty(); err != nil {
		return 0, err
	}
	if first, last := c.Span(); angle < first || angle > last {
		return 0, &InputError{"angle", angle.String(), "within the table, " + first.String() + " to " + last.String()}
	}
	i := c.segment(angle)
	s := c.cubic(i)
	return liftLength(s.at(float64(angle-c.points[i].Angle) * perDegree)), nil
}

func liftLength(mm float64) units.Length {
	l, err := units.Nearest(mm, units.InMillimetres)
	if err != nil {
		return units.OutOfRange[units.Length]()
	}
	return l
}
