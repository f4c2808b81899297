package form

import (
	"github.com/tenthou/tenthou/units"
)

// A CylinderKind names a reference cylinder.
type CylinderKind uint8

// The reference cylinders; the abbreviations are those of ISO 12180-1. The
// zero value names none.
const (
	LSCY CylinderKind = iota + 1 // least squares cylinder
	MZCY                         // minimum zone cylinders: two about one axis
)

// String is the abbreviation of ISO 12180-1.
func (k CylinderKind) String() string {
	switch k {
	case LSCY:
		return "LSCY"
	case MZCY:
		return "MZCY"
	}
	return "no reference cylinder"
}

// Cylindricity is a bore or a shaft beside one reference cylinder, in the unit
// of its points. It holds all errors of form together: round at every level,
// straight along the wall, and of one size.
type Cylindricity struct {
	Kind    CylinderKind // of the reference cylinder
	Through Point3       // where the axis goes through the middle of the readings
	// SlopeX and SlopeY are how the axis leans: at the height z above Through
	// it stands at Through.X + SlopeX·z, Through.Y + SlopeY·z.
	SlopeX, SlopeY float64
	Radius         float64 // of the reference cylinder; with [MZCY] halfway between the two
	Inner, Outer   float64 // distances of the nearest and the farthest point from the axis
	RootMeanSquare float64 // of the distances from the reference cylinder
	contacts       contacts
}

// CYLt is the peak-to-valley cylindricity deviation: the farthest less the
// nearest distance from the axis, a difference of radii.
func (c Cylindricity) CYLt() float64 { return c.Outer - c.Inner }

// CYLp is the peak-to-reference cylindricity deviation; see [Roundness.RONp].
func (c Cylindricity) CYLp(s Surface) float64 {
	if s == Shaft {
		return c.Outer - c.Radius
	}
	return c.Radius - c.Inner
}

// CYLv is the reference-to-valley cylindricity deviation.
func (c Cylindricity) CYLv(s Surface) float64 { return c.CYLp(!s) }

// CYLq is the root-mean-square cylindricity deviation, the same as
// RootMeanSquare.
func (c Cylindricity) CYLq() float64 { return c.RootMeanSquare }

// Contacts are the points that the minimum zone cylinders rest on, up to six,
// in the order of the readings; none for LSCY. Those of each cylinder bear
// weights that add up to 1. The list is a copy.
func (c Cylindricity) Contacts() []Contact { return c.contacts.list() }

// Cylinder fits the reference cylinder of a kind, which
// [LeastSquaresCylinder] and [MinimumZoneCylinders] also do by name.
func Cylinder(kind CylinderKind, points []Point3) (Cylindricity, error) {
	switch kind {
	case LSCY:
		return LeastSquaresCylinder(points)
	case MZCY:
		return MinimumZoneCylinders(points)
	}
	return Cylindricity{}, fault("cylinder", ErrKind, "LSCY or MZCY")
}

// LeastSquaresCylinder fits the cylinder from which the sum of the squared
// distances is least (LSCY), for points of a bore or shaft whose axis lies
// along Z to within some degrees: from readings at several levels, all round.
//
// It fails with [ErrTooFew] below five points, [ErrNotFinite],
// [ErrCoincident], and [ErrCollinear] where the points don't fix an axis: all
// at one level, or on too little of the wall. It allocates its working space.
func LeastSquaresCylinder(points []Point3) (Cylindricity, error) {
	w, axis, err := leastSquaresCylinder(points)
	if err != nil {
		return Cylindricity{}, err
	}
	return w.result(LSCY, axis, &basis{}), nil
}

// MinimumZoneCylinders finds the two cylinders about one axis that hold all
// points between them, with the least difference of radii (MZCY). That least
// difference is the cylindricity that a tolerance by ISO 1101 limits. It works
// as [MinimumZoneCircles] does with two more unknowns, the slopes of the axis,
// from the least squares axis and from eight others about it. At the result no
// small shift or tilt does better; that no other does is not proved. In the forty
// bores of the tests no optimiser found a narrower one. The width is good to
// some 1e-11 of the size.
//
// It fails as [LeastSquaresCylinder] does. It allocates its working space.
func MinimumZoneCylinders(points []Point3) (Cylindricity, error) {
	w, axis, err := leastSquaresCylinder(points)
	if err != nil {
		return Cylindricity{}, err
	}
	best, basis, zone, ok := w.settle(axis)
	if !ok {
		return Cylindricity{}, noAxis()
	}
	// The zone has hollows of its own beside curved valleys: look from about.
	for d := range best {
		for _, way := range [...]float64{zone, -zone} {
			from := axis
			from[d] += way
			if at, b, width, ok := w.settle(from); ok && width < zone-w.noise {
				best, basis, zone = at, b, width
			}
		}
	}
	return w.result(MZCY, best, &basis), nil
}

func noAxis() error {
	return fault("cylinder", ErrCollinear, "points round the wall at two levels or more, the axis along Z")
}

// Lengths gives the result in lengths, each rounded once to the nearest
// picometre; u is the unit of the points. It fails with [ErrRange].
func (c Cylindricity) Lengths(u units.Unit[units.Length]) (CylindricityLengths, error) {
	var l [5]units.Length
	for i, v := range [...]float64{2 * c.Radius, c.CYLt(), c.CYLp(Shaft), c.CYLv(Shaft), c.CYLq()} {
		var err error
		if l[i], err = units.Nearest(v, u); err != nil {
			return CylindricityLengths{}, outOfRange("cylinder", -1)
		}
	}
	return CylindricityLengths{c.Kind, l[0], c.SlopeX, c.SlopeY, Radial(l[1]), Radial(l[2]), Radial(l[3]), Radial(l[4]), c.contacts}, nil
}

// CylindricityLengths is a [Cylindricity] in lengths.
type CylindricityLengths struct {
	Kind            CylinderKind // of the reference cylinder
	Diameter        units.Length // of the reference cylinder
	SlopeX, SlopeY  float64      // of the axis, plain ratios
	CYLt            Radial       // peak to valley
	Outside, Inside Radial       // farthest beyond and farthest within the reference cylinder
	CYLq            Radial       // root mean square
	contacts        contacts
}

// Contacts are the readings that the minimum zone cylinders rest on; see
// [Cylindricity.Contacts].
func (c CylindricityLengths) Contacts() []Contact { return c.contacts.list() }
