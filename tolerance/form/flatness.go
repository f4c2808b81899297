package form

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A PlaneKind names a reference plane.
type PlaneKind uint8

// The reference planes; the abbreviations are those of ISO 12781-1. The zero
// value names none.
const (
	LSPL PlaneKind = iota + 1 // least squares plane
	MZPL                      // minimum zone planes: two parallel ones
	// ThreePoints is the plane through three of the points, as when a face is
	// set to zero at three corners. The standard has no name for it.
	ThreePoints
)

// String is the abbreviation, or the name.
func (k PlaneKind) String() string {
	switch k {
	case LSPL:
		return "LSPL"
	case MZPL:
		return "MZPL"
	case ThreePoints:
		return "plane through three points"
	}
	return "no reference plane"
}

// Flatness is a face of heights beside one reference plane, in the unit of its
// points. Heights point out of the material. Deviations are taken along the
// heights; see [Straightness] for what that means on a slope.
type Flatness struct {
	Kind PlaneKind // of the reference plane
	// Through is a point of the reference plane; with [MZPL] of the one halfway
	// between the two.
	Through        Point3
	SlopeX, SlopeY float64 // how the plane rises along X and Y
	// Above and Below are how far the highest and the lowest point lie off it.
	Above, Below float64
	// RootMeanSquare is that of all deviations.
	RootMeanSquare float64
	contacts       contacts
}

// FLTt is the peak-to-valley flatness deviation.
func (f Flatness) FLTt() float64 { return f.Above + f.Below }

// FLTp is the peak-to-reference flatness deviation, the same as Above. ISO
// 12781-1 defines it for LSPL (from memory).
func (f Flatness) FLTp() float64 { return f.Above }

// FLTv is the reference-to-valley flatness deviation, the same as Below.
func (f Flatness) FLTv() float64 { return f.Below }

// FLTq is the root-mean-square flatness deviation, the same as RootMeanSquare.
func (f Flatness) FLTq() float64 { return f.RootMeanSquare }

// Contacts are the points that the minimum zone planes rest on, in the order
// of the readings: three on one and one on the other, which lies over their
// triangle, or two and two, whose lines cross; fewer where fewer are enough, as
// two that stand one above the other. Outer means the upper plane. None for the
// other kinds. The list is a copy.
func (f Flatness) Contacts() []Contact { return f.contacts.list() }

// Deviation is how far a point lies above the reference plane; below is
// negative.
func (f Flatness) Deviation(p Point3) float64 {
	return (p.Z - f.Through.Z) - f.SlopeX*(p.X-f.Through.X) - f.SlopeY*(p.Y-f.Through.Y)
}

// Parallelism is how far apart two planes parallel to the reference plane must
// be to hold all points of another face: the parallelism deviation of the
// other to this one as the datum. Both are in one frame. It fails with
// [ErrTooFew] below three points and [ErrNotFinite].
func (f Flatness) Parallelism(other []Point3) (float64, error) {
	if len(other) < 3 {
		return 0, tooFew("plane", len(other), 3)
	}
	most, least := math.Inf(-1), math.Inf(1)
	for i, p := range other {
		d := f.Deviation(p)
		if bad, is := p.bad(); is || !finite(d) {
			return 0, notFinite("plane", i, bad)
		}
		most, least = max(most, d), min(least, d)
	}
	return most - least, nil
}

// bad is the coordinate that is not to be reckoned with, if one is.
func (p Point3) bad() (v float64, is bool) {
	for _, v := range [...]float64{p.X, p.Y, p.Z} {
		if !finite(v) {
			return v, true
		}
	}
	return 0, false
}

// A field is a look at the points of a face or a bore: their mean point, how far
// they reach along X and Y, and what rounding may hide of that.
type field struct {
	middle Point3
	size   float64
	noise  float64
}

func lookOver(what string, points []Point3, least int) (f field, err error) {
	if len(points) < least {
		return f, tooFew(what, len(points), least)
	}
	first := points[0]
	far := 0.0
	var s Point3
	for i, p := range points {
		if v, bad := p.bad(); bad {
			return f, notFinite(what, i, v)
		}
		s = Point3{s.X + (p.X - first.X), s.Y + (p.Y - first.Y), s.Z + (p.Z - first.Z)}
		far = max(far, math.Abs(p.X), math.Abs(p.Y))
	}
	n := float64(len(points))
	f.middle = Point3{first.X + s.X/n, first.Y + s.Y/n, first.Z + s.Z/n}
	for _, p := range points {
		f.size = max(f.size, math.Abs(p.X-f.middle.X), math.Abs(p.Y-f.middle.Y))
	}
	f.noise = 4 * epsilon * far
	if f.size <= f.noise || f.size < 1/most {
		return f, fault(what, ErrCoincident, "points at more than one place")
	}
	return f, nil
}

// finish fills in what follows from a plane through a point; the minimum
// zone's is shifted to the middle.
func (f *Flatness) finish(points []Point3) {
	most, least := math.Inf(-1), math.Inf(1)
	for _, p := range points {
		d := f.Deviation(p)
		most, least = max(most, d), min(least, d)
	}
	if f.Kind == MZPL {
		half := (most - least) / 2
		f.Through.Z += least + half
		most, least = half, -half
	}
	f.Above, f.Below = max(0, most), max(0, -least)
	if scale := max(f.Above, f.Below); scale > 0 {
		squares := 0.0
		for _, p := range points {
			d := f.Deviation(p) / scale
			squares += d * d
		}
		f.RootMeanSquare = scale * math.Sqrt(squares/float64(len(points)))
	}
}

// Lengths gives the result in lengths, each rounded once to the nearest
// picometre; u is the unit of the heights. It fails with [ErrRange].
func (f Flatness) Lengths(u units.Unit[units.Length]) (FlatnessLengths, error) {
	var l [4]units.Length
	for i, v := range [...]float64{f.FLTt(), f.Above, f.Below, f.RootMeanSquare} {
		var err error
		if l[i], err = units.Nearest(v, u); err != nil {
			return FlatnessLengths{}, outOfRange("plane", -1)
		}
	}
	return FlatnessLengths{f.Kind, f.SlopeX, f.SlopeY, l[0], l[1], l[2], l[3], f.contacts}, nil
}

// FlatnessLengths is a [Flatness] in lengths.
type FlatnessLengths struct {
	Kind           PlaneKind    // of the reference plane
	SlopeX, SlopeY float64      // height over place, plain ratios
	FLTt           units.Length // peak to valley
	FLTp           units.Length // peak to reference
	FLTv           units.Length // reference to valley
	FLTq           units.Length // root mean square
	contacts       contacts
}

// Contacts are the readings that the minimum zone planes rest on; see
// [Flatness.Contacts].
func (f FlatnessLengths) Contacts() []Contact { return f.contacts.list() }
