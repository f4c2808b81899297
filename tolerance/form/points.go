package form

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A Point is a point of a round profile, or of a line of heights with the
// place as X and the height as Y. The unit is the caller's, the same for all.
type Point struct{ X, Y float64 }

// A Point3 is a point of a surface. For flatness X and Y are the place and Z the
// height; for cylindricity Z lies roughly along the axis. The unit is the caller's, the
// same for all.
type Point3 struct{ X, Y, Z float64 }

// A Contact is a reading that a reference element rests on.
type Contact struct {
	Index int  // among the readings given
	Outer bool // on the outer circle, upper line or upper plane
	// Weight is the reading's multiplier in the proof that no small shift
	// does better. Those of each side add up to 1.
	Weight float64
}

// contacts holds the few contacts of a result without allocating.
type contacts struct {
	n  int
	at [6]Contact
}

func (c *contacts) add(k Contact) {
	c.at[c.n] = k
	c.n++
}

// list is a copy of the contacts.
func (c *contacts) list() []Contact { return append([]Contact(nil), c.at[:c.n]...) }

// turn puts the first reading first and keeps the order round otherwise.
func (c *contacts) turn() {
	first := 0
	for i := range c.n {
		if c.at[i].Index < c.at[first].Index {
			first = i
		}
	}
	var turned [6]Contact
	for i := range c.n {
		turned[i] = c.at[(first+i)%c.n]
	}
	copy(c.at[:c.n], turned[:c.n])
}

// order sorts the contacts by a key.
func (c *contacts) order(key func(Contact) float64) {
	for i := 1; i < c.n; i++ {
		for j := i; j > 0 && key(c.at[j]) < key(c.at[j-1]); j-- {
			c.at[j], c.at[j-1] = c.at[j-1], c.at[j]
		}
	}
}

// Polar gives the points of radii measured at equally spaced angles, the first
// along X, then counter-clockwise. One allocation.
func Polar(radii []float64) []Point {
	points := make([]Point, len(radii))
	for i, r := range radii {
		sin, cos := sincos(i, len(radii))
		points[i] = Point{r * cos, r * sin}
	}
	return points
}

// PolarAt gives the points of radii measured at the angles given, from X
// counter-clockwise. It fails with [ErrShape] where there are not as many
// angles as radii and with [ErrRange] where an angle is out of range.
func PolarAt(angles []units.Angle, radii []float64) ([]Point, error) {
	if len(angles) != len(radii) {
		return nil, fault("circle", ErrShape, "as many angles as radii")
	}
	points := make([]Point, len(radii))
	for i, r := range radii {
		if !angles[i].InRange() {
			return nil, outOfRange("circle", i)
		}
		sin, cos := math.Sincos(radians(angles[i]))
		points[i] = Point{r * cos, r * sin}
	}
	return points, nil
}

// sincos is the sine and cosine of i/n of a turn, i from 0 to n−1, with the
// symmetry of the quadrants kept.
func sincos(i, n int) (sin, cos float64) {
	quadrant := 4 * i / n
	sin, cos = math.Sincos(2 * math.Pi * (float64(4*i-quadrant*n) / float64(4*n)))
	switch quadrant {
	case 1:
		return cos, 0 - sin // no negative zero
	case 2:
		return 0 - sin, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}

// turn is a whole turn.
const turn = 360 * units.Degree

// radians is an angle reduced to one turn, which is exact, then converted.
func radians(a units.Angle) float64 { return (a % turn).Radians() }

// most is the greatest coordinate whose square and sums of squares stay finite
// and exact to rounding.
const most = 1e150

// epsilon is the distance from 1 to the next greater float64.
const epsilon = 0x1p-52

func finite(v float64) bool { return math.Abs(v) <= most }

// A cloud is what a first look at the points of a profile tells.
type cloud struct {
	origin Point   // the mean point
	size   float64 // the greatest distance along X or Y from it
	noise  float64 // what rounding of the coordinates may hide
}

// look checks points and finds their middle and size.
func look(what string, points []Point, least int) (cloud, error) {
	if len(points) < least {
		return cloud{}, tooFew(what, len(points), least)
	}
	first := points[0]
	var sx, sy, far float64
	for i, p := range points {
		if !finite(p.X) || !finite(p.Y) {
			v := p.X
			if finite(v) {
				v = p.Y
			}
			return cloud{}, notFinite(what, i, v)
		}
		sx += p.X - first.X
		sy += p.Y - first.Y
		far = max(far, math.Abs(p.X), math.Abs(p.Y))
	}
	n := float64(len(points))
	c := cloud{origin: Point{first.X + sx/n, first.Y + sy/n}, noise: 4 * epsilon * far}
	for _, p := range points {
		c.size = max(c.size, math.Abs(p.X-c.origin.X), math.Abs(p.Y-c.origin.Y))
	}
	if c.size <= c.noise || c.size < 1/most {
		return cloud{}, fault(what, ErrCoincident, "points apart from each other")
	}
	return c, nil
}

// straight is the sum of the squared distances from the line that fits the
// points best, in units of the size; is reports that they lie in it, to
// rounding.
func (c cloud) straight(points []Point) (squares float64, is bool) {
	var xx, xy, yy float64
	for _, p := range points {
		x, y := (p.X-c.origin.X)/c.size, (p.Y-c.origin.Y)/c.size
		xx += x * x
		xy += x * y
		yy += y * y
	}
	// The line lies along the greatest moment.
	sin, cos := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	off := 0.0
	for _, p := range points {
		d := (p.Y-c.origin.Y)*cos - (p.X-c.origin.X)*sin
		off = max(off, math.Abs(d))
		squares += d / c.size * (d / c.size)
	}
	return squares, off <= 4*c.noise
}
