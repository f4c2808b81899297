package form

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A LineKind names a reference line.
type LineKind uint8

// The reference lines; the abbreviations are those of ISO 12780-1. The zero
// value names none.
const (
	LSLI     LineKind = iota + 1 // least squares line
	MZLI                         // minimum zone lines: two parallel ones
	EndPoint                     // the line through the two end points, for which the standard has no name
)

// String is the abbreviation, or the name.
func (k LineKind) String() string {
	switch k {
	case LSLI:
		return "LSLI"
	case MZLI:
		return "MZLI"
	case EndPoint:
		return "end-point line"
	}
	return "no reference line"
}

// Straightness is a line of heights beside one reference line, in the unit of
// its points. Heights point out of the material.
//
// Deviations are taken along the heights. At right angles to the line, as the
// standards take them, they are less by the cosine of its slope: for a slope
// of 1 in 1000 by five parts in ten million.
type Straightness struct {
	Kind LineKind // of the reference line
	// Through is a point of the reference line; with [MZLI] of the one halfway
	// between the two.
	Through Point
	Slope   float64 // how the line rises along X
	// Above and Below are how far the highest and the lowest point lie off it.
	Above, Below float64
	// RootMeanSquare is that of all deviations.
	RootMeanSquare float64
	contacts       contacts
}

// STRt is the peak-to-valley straightness deviation.
func (s Straightness) STRt() float64 { return s.Above + s.Below }

// STRp is the peak-to-reference straightness deviation, the same as Above. ISO
// 12780-1 defines it for LSLI (from memory).
func (s Straightness) STRp() float64 { return s.Above }

// STRv is the reference-to-valley straightness deviation, the same as Below.
func (s Straightness) STRv() float64 { return s.Below }

// STRq is the root-mean-square straightness deviation, the same as
// RootMeanSquare.
func (s Straightness) STRq() float64 { return s.RootMeanSquare }

// Contacts are the points that the minimum zone lines rest on, in the order of
// their places: one on one line, and on the other two with the first between
// them, or one straight above the other. Outer means the upper line. None for
// the other kinds. The list is a copy.
func (s Straightness) Contacts() []Contact { return s.contacts.list() }

// Deviation is how far a point lies above the reference line; below is
// negative.
func (s Straightness) Deviation(p Point) float64 {
	return (p.Y - s.Through.Y) - s.Slope*(p.X-s.Through.X)
}

// Parallelism is how far apart two lines parallel to the reference line must
// be to hold all of another line's points: the parallelism deviation of the
// other to this one as the datum. Both are in one frame, places along X. It
// fails with [ErrTooFew] below two points and [ErrNotFinite].
func (s Straightness) Parallelism(other []Point) (float64, error) {
	if len(other) < 2 {
		return 0, tooFew("line", len(other), 2)
	}
	most, least := math.Inf(-1), math.Inf(1)
	for i, p := range other {
		d := s.Deviation(p)
		if !finite(p.X) || !finite(p.Y) || !finite(d) {
			return 0, notFinite("line", i, d)
		}
		most, least = max(most, d), min(least, d)
	}
	return most - least, nil
}

// Line fits the reference line of a kind, which [LeastSquaresLine],
// [MinimumZoneLines] and [EndPointLine] also do by name.
func Line(kind LineKind, points []Point) (Straightness, error) {
	switch kind {
	case LSLI:
		return LeastSquaresLine(points)
	case MZLI:
		return MinimumZoneLines(points)
	case EndPoint:
		return EndPointLine(points)
	}
	return Straightness{}, fault("line", ErrKind, "LSLI, MZLI or EndPoint")
}

// run is a look at a line of heights: its ends by place, and its middle.
type run struct {
	first, last int
	middle      Point
	width       float64
	sorted      bool
}

func lookAlong(points []Point) (r run, err error) {
	if len(points) < 3 {
		return r, tooFew("line", len(points), 3)
	}
	r.sorted = true
	var sx, sy float64
	for i, p := range points {
		if !finite(p.X) || !finite(p.Y) {
			v := p.X
			if finite(v) {
				v = p.Y
			}
			return r, notFinite("line", i, v)
		}
		if p.X < points[r.first].X {
			r.first = i
		}
		if p.X > points[r.last].X {
			r.last = i
		}
		r.sorted = r.sorted && (i == 0 || p.X >= points[i-1].X)
		sx += p.X - points[0].X
		sy += p.Y - points[0].Y
	}
	n := float64(len(points))
	r.middle = Point{points[0].X + sx/n, points[0].Y + sy/n}
	r.width = points[r.last].X - points[r.first].X
	if !(r.width > 1/most) {
		return r, fault("line", ErrCoincident, "points at more than one place")
	}
	return r, nil
}

// finish fills in what follows from a line through a point; the minimum zone's
// is shifted to the middle.
func (s *Straightness) finish(points []Point) {
	most, least := math.Inf(-1), math.Inf(1)
	for _, p := range points {
		d := s.Deviation(p)
		most, least = max(most, d), min(least, d)
	}
	if s.Kind == MZLI {
		half := (most - least) / 2
		s.Through.Y += least + half
		most, least = half, -half
	}
	s.Above, s.Below = max(0, most), max(0, -least)
	if scale := max(s.Above, s.Below); scale > 0 {
		squares := 0.0
		for _, p := range points {
			d := s.Deviation(p) / scale
			squares += d * d
		}
		s.RootMeanSquare = scale * math.Sqrt(squares/float64(len(points)))
	}
}

// LeastSquaresLine fits the line from which the sum of the squared deviations
// along the heights is least (LSLI). X is the place, in any order, and Y the
// height. It fails with [ErrTooFew] below three points, [ErrNotFinite], and
// [ErrCoincident] where all are at one place. It allocates nothing.
func LeastSquaresLine(points []Point) (Straightness, error) {
	r, err := lookAlong(points)
	if err != nil {
		return Straightness{}, err
	}
	var xx, xy float64
	for _, p := range points {
		x := (p.X - r.middle.X) / r.width
		xx += x * x
		xy += x * (p.Y - r.middle.Y)
	}
	s := Straightness{Kind: LSLI, Through: r.middle, Slope: xy / xx / r.width}
	s.finish(points)
	return s, nil
}

// EndPointLine takes the line through the first and the last point by place, as
// when a straight-edge is set level by its ends. Of several at one end it is the
// first given. It fails as [LeastSquaresLine] does and allocates nothing.
func EndPointLine(points []Point) (Straightness, error) {
	r, err := lookAlong(points)
	if err != nil {
		return Straightness{}, err
	}
	a, b := points[r.first], points[r.last]
	s := Straightness{Kind: EndPoint, Through: a, Slope: (b.Y - a.Y) / r.width}
	s.finish(points)
	return s, nil
}

// Lengths gives the result in lengths, each rounded once to the nearest
// picometre; u is the unit of the heights. It fails with [ErrRange].
func (s Straightness) Lengths(u units.Unit[units.Length]) (StraightnessLengths, error) {
	var l [4]units.Length
	for i, v := range [...]float64{s.STRt(), s.Above, s.Below, s.RootMeanSquare} {
		var err error
		if l[i], err = units.Nearest(v, u); err != nil {
			return StraightnessLengths{}, outOfRange("line", -1)
		}
	}
	return StraightnessLengths{s.Kind, s.Slope, l[0], l[1], l[2], l[3], s.contacts}, nil
}

// StraightnessLengths is a [Straightness] in lengths.
type StraightnessLengths struct {
	Kind     LineKind     // of the reference line
	Slope    float64      // height over place, a plain ratio
	STRt     units.Length // peak to valley
	STRp     units.Length // peak to reference
	STRv     units.Length // reference to valley
	STRq     units.Length // root mean square
	contacts contacts
}

// Contacts are the readings that the minimum zone lines rest on; see
// [Straightness.Contacts].
func (s StraightnessLengths) Contacts() []Contact { return s.contacts.list() }
