package form

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Diameters are the diameters of one bore or journal, measured across two
// points at several levels in several directions.
//
// What they show: size, even lobes as far as the directions find them, taper,
// barrel and bell-mouth. What they can't: odd lobes, of which every diameter is
// the same, and an axis that bends or a section that sits off it, since a
// diameter says nothing of where its middle lies.
type Diameters struct {
	// Levels are the distances of the levels along the axis; needed for slopes
	// alone.
	Levels []units.Length
	// Readings[level][direction]; every level has the same directions.
	Readings [][]units.Length
}

// Shown is what two-point diameters say of a bore's form.
type Shown struct {
	OutOfRound []Diametral // at each level: greatest less least
	Taper      []Diametral // in each direction: greatest less least along the axis
	// Overall is the greatest less the least of all diameters.
	Overall Diametral
	// RONt is, at each level, what the standard roundness is at least: half the
	// out-of-round, with no upper end.
	RONt []tolerance.Bracket
	// CYLt is what the standard cylindricity is at least: half of Overall. In a
	// zone from r to r+w about any axis every distance across lies from 2r to
	// 2r+2w.
	CYLt tolerance.Bracket
}

// Shown works out what the diameters say. All of it is exact, and halves are
// rounded down. It fails with [ErrTooFew] without a level or a direction,
// [ErrShape] where levels differ in their directions, and [ErrRange].
func (d Diameters) Shown() (Shown, error) {
	if err := d.check(); err != nil {
		return Shown{}, err
	}
	var s Shown
	first := d.Readings[0]
	most, least := first[0], first[0]
	for _, level := range d.Readings {
		out := Diametral(OutOfRound(level[0], level[1:]...))
		s.OutOfRound = append(s.OutOfRound, out)
		s.RONt = append(s.RONt, out.RONtAtLeast())
		for _, r := range level {
			most, least = most.Max(r), least.Min(r)
		}
	}
	for k, top := range first {
		most, least := top, top
		for _, level := range d.Readings {
			most, least = most.Max(level[k]), least.Min(level[k])
		}
		s.Taper = append(s.Taper, Diametral(most.Sub(least)))
	}
	s.Overall = Diametral(most.Sub(least))
	s.CYLt = s.Overall.RONtAtLeast()
	return s, nil
}

// Slopes are, in each direction, the change of the diameter along the axis per
// unit of length, by the least squares line through its levels: positive where
// it grows with the distance, and twice the slope of each wall to the axis. It
// fails as [Diameters.Shown] does, with [ErrShape] where there are not as many
// levels as rows, and with [ErrTooFew] below three levels. For two, the
// quotient of the differences is all there is.
func (d Diameters) Slopes() ([]float64, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	if len(d.Levels) != len(d.Readings) {
		return nil, fault("diameters", ErrShape, "as many levels as rows of readings")
	}
	slopes := make([]float64, len(d.Readings[0]))
	points := make([]Point, len(d.Readings))
	for k := range slopes {
		for i, level := range d.Readings {
			if !d.Levels[i].InRange() {
				return nil, outOfRange("diameters", i)
			}
			points[i] = Point{float64(d.Levels[i]), float64(level[k])}
		}
		line, err := LeastSquaresLine(points)
		if err != nil {
			return nil, err
		}
		slopes[k] = line.Slope
	}
	return slopes, nil
}

func (d Diameters) check() error {
	if len(d.Readings) == 0 || len(d.Readings[0]) == 0 {
		return tooFew("diameters", 0, 1)
	}
	for i, level := range d.Readings {
		if len(level) != len(d.Readings[0]) {
			return &Error{What: "diameters", Index: i, Kind: ErrShape, Want: "the same directions at every level"}
		}
		for _, r := range level {
			if !r.InRange() {
				return outOfRange("diameters", i)
			}
		}
	}
	return nil
}

// CylindricityFromDiameters is what diameters at any levels and directions say
// of the standard cylindricity: at least half their greatest less their least,
// and no more than that. The diameters are brackets, so that a gauge's error
// lowers what is proved. The bracket is out of range where a diameter is.
func CylindricityFromDiameters(diameter tolerance.Bracket, more ...tolerance.Bracket) tolerance.Bracket {
	return atLeastHalf(diameter.Spread(more...))
}

// RoundnessFromDiameters is what diameters at one level say of the standard
// roundness RONt: at least half their greatest less their least, and no more
// than that. See [CylindricityFromDiameters].
func RoundnessFromDiameters(diameter tolerance.Bracket, more ...tolerance.Bracket) tolerance.Bracket {
	return atLeastHalf(diameter.Spread(more...))
}

// Sections are round profiles of one bore or shaft at several levels, about
// one axis of measurement, as an instrument with a column gives them.
type Sections struct {
	Levels   []units.Length // along the axis, as many as profiles
	Profiles []Profile      // all with their first reading in one direction
}

// Cylindricity is the bore or shaft beside a reference cylinder. Figures are
// rounded once to the nearest picometre. It fails with [ErrShape] where there
// are not as many levels as profiles, [ErrRange], [ErrRadius], [ErrKind], and
// as the function of the cylinder's kind does.
func (s Sections) Cylindricity(kind CylinderKind) (CylindricityLengths, error) {
	if len(s.Levels) != len(s.Profiles) {
		return CylindricityLengths{}, fault("cylinder", ErrShape, "as many levels as profiles")
	}
	var points []Point3
	for i, p := range s.Profiles {
		if !s.Levels[i].InRange() {
			return CylindricityLengths{}, outOfRange("cylinder", i)
		}
		var space [inPlace]Point
		section, err := p.points(space[:])
		if err != nil {
			return CylindricityLengths{}, err
		}
		for _, q := range section {
			points = append(points, Point3{q.X, q.Y, float64(s.Levels[i])})
		}
	}
	c, err := Cylinder(kind, points)
	if err != nil {
		return CylindricityLengths{}, err
	}
	return c.Lengths(units.InPicometres)
}
