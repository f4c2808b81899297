package selective

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A PlaceOf says which grades a measured size may be of.
type PlaceOf[Q units.Quantity] struct {
	Size tolerance.Interval[Q] `json:"size"` // what was measured
	// Grades are the names of all grades that hold some of the size's bracket,
	// in the order of the table.
	Grades []string `json:"grades"`
	// Outside is what of the bracket lies in no grade.
	Outside []tolerance.Interval[Q] `json:"outside,omitempty"`
	// Shared tells that a single value was measured and stands in several
	// grades: the table leaves it open, not the reading.
	Shared bool `json:"shared,omitzero"`
}

// A Place is one of a length.
type Place = PlaceOf[units.Length]

// Grade is the one grade that the size is of for certain; ok is false where it
// may be of several, or of none.
func (p PlaceOf[Q]) Grade() (name string, ok bool) {
	if len(p.Grades) != 1 || len(p.Outside) > 0 {
		return "", false
	}
	return p.Grades[0], true
}

// String says it in words: "B", "A or B", "A or in no grade", "in no grade".
func (p PlaceOf[Q]) String() string {
	s := strings.Join(p.Grades, " or ")
	switch {
	case len(p.Outside) == 0:
		return s
	case s == "":
		return "in no grade"
	}
	return s + " or in no grade"
}

// Place says which grades a size may be of, measured or exact
// ([tolerance.Exactly]). It fails with an [InputError] where the table can't be
// used, nothing is known of the size or it is out of range.
func (g GradesOf[Q]) Place(size tolerance.Interval[Q]) (PlaceOf[Q], error) {
	if err := g.check(); err != nil {
		return PlaceOf[Q]{}, err
	}
	if err := known("size", 0, "", size); err != nil {
		return PlaceOf[Q]{}, err
	}
	p := PlaceOf[Q]{Size: size, Outside: []tolerance.Interval[Q]{size}}
	for i := range g {
		if _, ok := size.Intersect(g[i].Band.Interval()); !ok {
			continue
		}
		p.Grades = append(p.Grades, g[i].Name)
		var rest []tolerance.Interval[Q]
		for _, left := range p.Outside {
			rest = append(rest, tolerance.Compare(tolerance.BandFrom(left), g[i].Band).OnlyFirst...)
		}
		p.Outside = rest
	}
	p.Shared = len(p.Grades) > 1 && size.IsExact()
	return p, nil
}

// known refuses a size of which nothing is known.
func known[Q units.Quantity](what string, at int, name string, size tolerance.Interval[Q]) error {
	switch {
	case !size.InRange():
		return refuse(what, at, name, "size", ErrRange, "within the range of its type")
	case size.IsZero():
		return refuse(what, at, name, "size", ErrNoReading, "a bracket or an exact size")
	}
	return nil
}

func itoa(n int) string { return strconv.Itoa(n) }
