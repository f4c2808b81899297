package form

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A CircleKind names a reference circle of ISO 12181-1.
type CircleKind uint8

// The reference circles. The zero value names none.
const (
	LSCI CircleKind = iota + 1 // least squares circle
	MZCI                       // minimum zone circles: two about one centre
	MICI                       // maximum inscribed circle, for a hole: the plug that would go in
	MCCI                       // minimum circumscribed circle, for a shaft: the ring that would go over
)

// String is the abbreviation of ISO 12181-1.
func (k CircleKind) String() string {
	switch k {
	case LSCI:
		return "LSCI"
	case MZCI:
		return "MZCI"
	case MICI:
		return "MICI"
	case MCCI:
		return "MCCI"
	}
	return "no reference circle"
}

// A Surface says on which side the material is. In the standards a peak points
// out of the material, so that it lies outside the reference circle of a shaft
// and inside that of a hole.
type Surface bool

// The two surfaces.
const (
	Hole  Surface = false
	Shaft Surface = true
)

// String is "hole" or "shaft".
func (s Surface) String() string {
	if s == Shaft {
		return "shaft"
	}
	return "hole"
}

// Roundness is a round profile beside one reference circle, in the unit of
// its points. All deviations are differences of radii: see [Radial] for what
// the trade's difference of diameters makes of them.
type Roundness struct {
	Kind   CircleKind // of the reference circle
	Centre Point      // of the reference circle, or of both
	// Radius is that of the reference circle; with [MZCI] that of the circle
	// halfway between the two, with [MICI] Inner, with [MCCI] Outer.
	Radius float64
	// Inner and Outer are the distances of the nearest and the farthest point
	// from the centre.
	Inner, Outer float64
	// RootMeanSquare is that of the distances from the reference circle.
	RootMeanSquare float64
	// Global reports that no other centre does better: in the whole plane for
	// LSCI, MZCI and MCCI, within the profile for MICI. False means that it
	// was not proved: no small shift does better, a large one might. It is
	// never set for LSCI.
	Global   bool
	contacts contacts
}

// RONt is the peak-to-valley roundness deviation: the farthest less the
// nearest distance from the centre, a difference of radii.
func (r Roundness) RONt() float64 { return r.Outer - r.Inner }

// RONp is the peak-to-reference roundness deviation: how far the highest peak
// stands out of the reference circle. ISO 12181-1 defines it for LSCI (from
// memory); here it is given beside each circle.
func (r Roundness) RONp(s Surface) float64 {
	if s == Shaft {
		return r.Outer - r.Radius
	}
	return r.Radius - r.Inner
}

// RONv is the reference-to-valley roundness deviation: how far the deepest
// valley lies on the other side of the reference circle. RONp and RONv add up
// to RONt.
func (r Roundness) RONv(s Surface) float64 { return r.RONp(!s) }

// RONq is the root-mean-square roundness deviation, the same as
// RootMeanSquare.
func (r Roundness) RONq() float64 { return r.RootMeanSquare }

// Contacts are the points that the reference circle rests on, counter-clockwise
// round its centre from the one given first; none for LSCI. Two or three hold
// MCCI and three MICI, or two across it where others that stop it sideways gain
// nothing that float64 can tell; MZCI has two on the outer and two on the inner
// circle, in turn, so that their chords cross. More points may touch by
// accident: those named are enough to prove that no small shift does better. A
// point on both circles means a zone of no width. The list is a copy.
func (r Roundness) Contacts() []Contact { return r.contacts.list() }

// Circle fits the reference circle of a kind, which [LeastSquaresCircle],
// [MinimumZoneCircles], [MaximumInscribedCircle] and
// [MinimumCircumscribedCircle] also do by name.
func Circle(kind CircleKind, points []Point) (Roundness, error) {
	switch kind {
	case LSCI:
		return LeastSquaresCircle(points)
	case MZCI:
		return MinimumZoneCircles(points)
	case MICI:
		return MaximumInscribedCircle(points)
	case MCCI:
		return MinimumCircumscribedCircle(points)
	}
	return Roundness{}, fault("circle", ErrKind, "LSCI, MZCI, MICI or MCCI")
}

// finish fills in what follows from the centre, given from the cloud's origin.
func (r *Roundness) finish(points []Point, c cloud, at Point) {
	r.Inner, r.Outer = math.Inf(1), 0
	sum := 0.0
	for _, p := range points {
		d := c.distance(p, at)
		r.Inner, r.Outer = min(r.Inner, d), max(r.Outer, d)
		sum += d
	}
	switch r.Kind {
	case LSCI:
		r.Radius = sum / float64(len(points))
	case MZCI:
		r.Radius = r.Inner + (r.Outer-r.Inner)/2
	case MICI:
		r.Radius = r.Inner
	default:
		r.Radius = r.Outer
	}
	// Summed in units of the size, so that no square overflows or vanishes.
	squares := 0.0
	for _, p := range points {
		e := (c.distance(p, at) - r.Radius) / c.size
		squares += e * e
	}
	r.RootMeanSquare = c.size * math.Sqrt(squares/float64(len(points)))
	r.Centre = Point{c.origin.X + at.X, c.origin.Y + at.Y}
	r.contacts.order(func(k Contact) float64 {
		p := points[k.Index]
		return math.Atan2(p.Y-c.origin.Y-at.Y, p.X-c.origin.X-at.X)
	})
	r.contacts.turn()
}

// distance is that of a point from a centre given from the origin.
func (c cloud) distance(p, at Point) float64 {
	x, y := p.X-c.origin.X-at.X, p.Y-c.origin.Y-at.Y
	return math.Sqrt(x*x + y*y)
}

// Lengths gives the result in lengths, each rounded once to the nearest
// picometre; u is the unit of the points. Deviations are rounded themselves,
// not made of rounded distances. It fails with [ErrRange].
func (r Roundness) Lengths(u units.Unit[units.Length]) (RoundnessLengths, error) {
	var l [7]units.Length
	for i, v := range [...]float64{r.Centre.X, r.Centre.Y, 2 * r.Radius, r.RONt(), r.RONp(Shaft), r.RONv(Shaft), r.RONq()} {
		var err error
		if l[i], err = units.Nearest(v, u); err != nil {
			return RoundnessLengths{}, outOfRange("circle", -1)
		}
	}
	return RoundnessLengths{r.Kind, l[0], l[1], l[2], Radial(l[3]), Radial(l[4]), Radial(l[5]), Radial(l[6]), r.Global, r.contacts}, nil
}

// RoundnessLengths is a [Roundness] in lengths: a reference circle of some Kind
// and what lies off it.
type RoundnessLengths struct {
	Kind             CircleKind
	CentreX, CentreY units.Length // of the circles, from the axis of the readings
	Diameter         units.Length // of the reference circle
	RONt             Radial       // peak to valley
	Outside, Inside  Radial       // farthest beyond and farthest within the reference circle
	RONq             Radial       // root mean square
	Global           bool         // see [Roundness]
	contacts         contacts
}

// RONp is the peak-to-reference deviation; see [Roundness.RONp].
func (r RoundnessLengths) RONp(s Surface) Radial {
	if s == Shaft {
		return r.Outside
	}
	return r.Inside
}

// RONv is the reference-to-valley deviation; see [Roundness.RONv].
func (r RoundnessLengths) RONv(s Surface) Radial { return r.RONp(!s) }

// Contacts are the readings that the reference circle rests on; see
// [Roundness.Contacts].
func (r RoundnessLengths) Contacts() []Contact { return r.contacts.list() }
