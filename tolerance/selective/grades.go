package selective

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A GradeOf is one row of a table of grades.
type GradeOf[Q units.Quantity] struct {
	Name string              `json:"name"` // as it is stamped on the part
	Band tolerance.BandOf[Q] `json:"band"` // the sizes of this grade
}

// GradesOf is a table of grades, in any order.
type GradesOf[Q units.Quantity] []GradeOf[Q]

// Grades is a table of grades of a length.
type Grades = GradesOf[units.Length]

// A Grade is one grade of a length.
type Grade = GradeOf[units.Length]

// MostGrades is how many grades a table may have.
const MostGrades = 1000

// A FaultKind says what is odd between two grades.
type FaultKind uint8

// The faults of a table. None keeps it from being used.
const (
	// Gap: sizes between two grades belong to neither.
	Gap FaultKind = iota + 1
	// SharedLimit: one size, the limit between two grades, belongs to both.
	SharedLimit
	// Overlap: more than one size belongs to both grades.
	Overlap
)

var faultNames = [...]string{"", "gap", "shared limit", "overlap"}

// String is the fault in words.
func (k FaultKind) String() string {
	if int(k) >= len(faultNames) {
		k = 0
	}
	return faultNames[k]
}

// MarshalText writes what String gives.
func (k FaultKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *FaultKind) UnmarshalText(text []byte) error {
	i := slices.Index(faultNames[1:], string(text)) + 1
	if i == 0 {
		return refuse("fault", 0, string(text), "", ErrSyntax, `"gap", "shared limit" or "overlap"`)
	}
	*k = FaultKind(i)
	return nil
}

// A FaultOf is where a table of grades is not a clean division.
type FaultOf[Q units.Quantity] struct {
	Kind   FaultKind             `json:"kind"`   // gap, shared limit or overlap
	First  string                `json:"first"`  // the grade of smaller sizes
	Second string                `json:"second"` // the other one
	Where  tolerance.Interval[Q] `json:"where"`  // the sizes in question
}

// A Fault is one of lengths.
type Fault = FaultOf[units.Length]

// Validate names each gap, shared limit and overlap of the table, from the
// smallest sizes up; whether that matters is for the user to judge. It fails
// with an [InputError] where the table can't be used at all: it is empty, a
// grade has no name, the name of another, or no band.
func (g GradesOf[Q]) Validate() ([]FaultOf[Q], error) {
	if err := g.check(); err != nil {
		return nil, err
	}
	sorted := slices.Clone(g)
	slices.SortStableFunc(sorted, func(a, b GradeOf[Q]) int {
		if c := compareLower(a.Band, b.Band); c != 0 {
			return c
		}
		return compareUpper(a.Band, b.Band)
	})
	var faults []FaultOf[Q]
	reach := 0 // the grade that reaches highest so far
	for i := 1; i < len(sorted); i++ {
		hi, hiEnd := sorted[reach].Band.Upper()
		lo, loEnd := sorted[i].Band.Lower()
		if hiEnd != tolerance.Absent && loEnd != tolerance.Absent {
			if between, err := tolerance.NewInterval(hi, other(hiEnd), lo, other(loEnd)); err == nil {
				faults = append(faults, FaultOf[Q]{Gap, sorted[reach].Name, sorted[i].Name, between})
			}
		}
		if compareUpper(sorted[i].Band, sorted[reach].Band) > 0 {
			reach = i
		}
		for j := range i {
			if both, ok := sorted[j].Band.Interval().Intersect(sorted[i].Band.Interval()); ok {
				kind := Overlap
				if both.IsExact() {
					kind = SharedLimit
				}
				faults = append(faults, FaultOf[Q]{kind, sorted[j].Name, sorted[i].Name, both})
			}
		}
	}
	return faults, nil
}

// other is the end that a neighbour has who takes what is left.
func other(e tolerance.End) tolerance.End {
	if e == tolerance.Open {
		return tolerance.Closed
	}
	return tolerance.Open
}

// compareLower compares where two bands begin: an absent end comes first, and
// of two at one value the one that includes it.
func compareLower[Q units.Quantity](a, b tolerance.BandOf[Q]) int {
	x, xEnd := a.Lower()
	y, yEnd := b.Lower()
	if xEnd == tolerance.Absent || yEnd == tolerance.Absent {
		return sign(xEnd != tolerance.Absent, yEnd != tolerance.Absent)
	}
	if x != y {
		return sign(x > y, x < y)
	}
	return sign(xEnd == tolerance.Open, yEnd == tolerance.Open)
}

// compareUpper compares where two bands end.
func compareUpper[Q units.Quantity](a, b tolerance.BandOf[Q]) int {
	x, xEnd := a.Upper()
	y, yEnd := b.Upper()
	if xEnd == tolerance.Absent || yEnd == tolerance.Absent {
		return sign(xEnd == tolerance.Absent, yEnd == tolerance.Absent)
	}
	if x != y {
		return sign(x > y, x < y)
	}
	return sign(xEnd == tolerance.Closed, yEnd == tolerance.Closed)
}

func sign(more, less bool) int {
	switch {
	case more == less:
		return 0
	case more:
		return 1
	}
	return -1
}

// check refuses a table that can't be used.
func (g GradesOf[Q]) check() error {
	switch {
	case len(g) == 0:
		return refuse("grades", 0, "", "", ErrEmpty, "at least one grade")
	case len(g) > MostGrades:
		return refuse("grades", 0, "", "", ErrTooMany, "at most 1000 grades")
	}
	for i := range g {
		switch band := g[i].Band; {
		case g[i].Name == "":
			return refuse("grade", i+1, "", "name", ErrName, "a name to report it by")
		case band.IsZero():
			return refuse("grade", i+1, g[i].Name, "band", ErrNoLimit, "a band with at least one limit")
		case !band.InRange():
			return refuse("grade", i+1, g[i].Name, "band", ErrRange, "limits within the range of their type")
		}
		for j := range i {
			if g[j].Name == g[i].Name {
				return refuse("grade", i+1, g[i].Name, "name", ErrDuplicate, "another name than that of grade "+itoa(j+1))
			}
		}
	}
	return nil
}
