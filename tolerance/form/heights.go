package form

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// Heights is a line of heights in lengths, measured against a straight-edge,
// a level or any other datum that is straight.
type Heights struct {
	// Step is the distance between neighbouring stations. It is used where
	// Places is empty.
	Step units.Length
	// Places are the distances of the stations along the line, as many as
	// heights, in any order.
	Places  []units.Length
	Heights []units.Length // out of the material
}

// Straightness is the line beside a reference line. Figures are rounded once
// to the nearest picometre. It fails with [ErrTooFew] below three stations,
// [ErrShape] where there are not as many places as heights, [ErrCoincident],
// [ErrRange] and [ErrKind]. It allocates nothing for up to 512 stations in
// order.
func (h Heights) Straightness(kind LineKind) (StraightnessLengths, error) {
	n := len(h.Heights)
	if len(h.Places) != 0 && len(h.Places) != n {
		return StraightnessLengths{}, fault("line", ErrShape, "as many places as heights")
	}
	var space [inPlace]Point
	points := space[:]
	if n > len(points) {
		points = make([]Point, n)
	}
	points = points[:n]
	for i, z := range h.Heights {
		x := float64(h.Step) * float64(i)
		where := h.Step
		if len(h.Places) != 0 {
			where = h.Places[i]
			x = float64(where)
		}
		if !z.InRange() || !where.InRange() {
			return StraightnessLengths{}, outOfRange("line", i)
		}
		points[i] = Point{x, float64(z)}
	}
	s, err := Line(kind, points)
	if err != nil {
		return StraightnessLengths{}, err
	}
	return s.Lengths(units.InPicometres)
}

// A Grid is a face of heights in lengths, measured against a datum that is
// plane, at stations in rows and columns.
type Grid struct {
	StepX, StepY units.Length   // between neighbouring columns, and rows
	Columns      int            // stations in a row
	Heights      []units.Length // row by row, out of the material
}

// Points are the grid's points in picometres, the first station at the origin,
// rows along X. It fails with [ErrShape] where the last row isn't full or a
// step is not above 0, and with [ErrRange].
func (g Grid) Points() ([]Point3, error) { return g.points(nil) }

func (g Grid) points(space []Point3) ([]Point3, error) {
	n := len(g.Heights)
	switch {
	case g.Columns < 1 || n%g.Columns != 0:
		return nil, fault("plane", ErrShape, "full rows of one station or more")
	case g.StepX <= 0 || g.StepY <= 0:
		return nil, fault("plane", ErrShape, "steps above 0")
	case !g.StepX.InRange() || !g.StepY.InRange():
		return nil, outOfRange("plane", -1)
	}
	if n > len(space) {
		space = make([]Point3, n)
	}
	for i, z := range g.Heights {
		if !z.InRange() {
			return nil, outOfRange("plane", i)
		}
		space[i] = Point3{float64(g.StepX) * float64(i%g.Columns), float64(g.StepY) * float64(i/g.Columns), float64(z)}
	}
	return space[:n], nil
}

// Flatness is the face beside a reference plane; [ThreePoints] takes the first
// and the last station of the first row and the first of the last. Figures are
// rounded once to the nearest picometre. It fails as [Grid.Points] does, and
// with [ErrTooFew], [ErrCollinear] for a single row or column, and [ErrKind].
// It allocates nothing for up to 512 stations.
func (g Grid) Flatness(kind PlaneKind) (FlatnessLengths, error) {
	var space [inPlace]Point3
	points, err := g.points(space[:])
	if err != nil {
		return FlatnessLengths{}, err
	}
	var f Flatness
	if kind == ThreePoints {
		f, err = ThreePointPlane(points, 0, g.Columns-1, len(points)-g.Columns)
	} else {
		f, err = Plane(kind, points)
	}
	if err != nil {
		return FlatnessLengths{}, err
	}
	return f.Lengths(units.InPicometres)
}

// HeightsFromTilts sums the tilts of a level or an autocollimator mirror,
// stepped along a line by the distance of its feet, into heights: the first
// station is 0, and each step adds step·tan(tilt). Positive tilts rise. The
// heights, one more than tilts, are rounded to the nearest picometre each, so
// that roundings don't add up.
//
// The tilts may count from any zero: a constant tilts the whole line, which
// straightness doesn't see. It fails with [ErrTooFew] without a tilt, with
// [ErrAngles] for tilts of 45° or more, and with [ErrRange]. It allocates the
// result.
func HeightsFromTilts(step units.Length, tilts []units.Angle) ([]units.Length, error) {
	if len(tilts) == 0 {
		return nil, tooFew("line", 0, 1)
	}
	if !step.InRange() {
		return nil, outOfRange("line", -1)
	}
	heights := make([]units.Length, len(tilts)+1)
	sum := 0.0
	for i, a := range tilts {
		switch {
		case !a.InRange():
			return nil, outOfRange("line", i)
		case a.Abs() >= 45*units.Degree:
			return nil, &Error{What: "line", Index: i, Value: a.String(), Kind: ErrAngles, Want: "tilts of less than 45°"}
		}
		sum += float64(step) * math.Tan(a.Radians())
		var err error
		if heights[i+1], err = units.Nearest(sum, units.InPicometres); err != nil {
			return nil, outOfRange("line", i)
		}
	}
	return heights, nil
}
