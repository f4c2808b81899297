package selective

import (
	"slices"
	"strings"

	"github.com/tenthou/tenthou/units"
)

// A Combination is a row of a [MatingTable]: the grades of two parts, and the
// class that goes with them.
type Combination struct {
	First  string `json:"first"`  // the first part's grade
	Second string `json:"second"` // the second part's
	Class  string `json:"class"`  // the class that goes with them
}

// A MatingTable says which class goes with which two grades, as the grades of
// tunnel and journal select the colour of a shell. It is the user's data.
type MatingTable []Combination

// MostCombinations is how many rows a mating table may have.
const MostCombinations = 10_000

// Validate refuses, with an [InputError], an empty table, a row without a name
// and two rows for the same grades.
func (t MatingTable) Validate() error {
	switch {
	case len(t) == 0:
		return refuse("mating table", 0, "", "", ErrEmpty, "at least one row")
	case len(t) > MostCombinations:
		return refuse("mating table", 0, "", "", ErrTooMany, "at most 10000 rows")
	}
	seen := make(map[[2]string]int, len(t))
	for i, c := range t {
		key := [2]string{c.First, c.Second}
		switch before, ok := seen[key]; {
		case c.First == "" || c.Second == "" || c.Class == "":
			return refuse("mating table, row", i+1, "", "", ErrName, "two grades and a class")
		case ok:
			return refuse("mating table, row", i+1, c.First+" + "+c.Second, "", ErrDuplicate, "one row for the two grades, which row "+itoa(before+1)+" has too")
		}
		seen[key] = i
	}
	return nil
}

// A Selection is what a mating table says of two parts.
type Selection struct {
	// Classes are all classes that may be meant, each once: one for certain,
	// several where a part's grade is open.
	Classes []string `json:"classes"`
	// Missing are pairs of grades that may be meant and that the table has no
	// row for.
	Missing [][2]string `json:"missing,omitempty"`
	// Ungraded tells that a part may be in no grade at all.
	Ungraded bool `json:"ungraded,omitzero"`
}

// Class is the one class that is meant for certain; ok is false where several
// may be, or none.
func (s Selection) Class() (name string, ok bool) {
	if len(s.Classes) != 1 || len(s.Missing) > 0 || s.Ungraded {
		return "", false
	}
	return s.Classes[0], true
}

// Select gives the classes that go with two parts, placed by their tables of
// grades ([GradesOf.Place]). It fails where the table is not valid, and where a
// place holds nothing.
func Select[P, R units.Quantity](t MatingTable, first PlaceOf[P], second PlaceOf[R]) (Selection, error) {
	var s Selection
	if err := t.Validate(); err != nil {
		return s, err
	}
	for i, none := range [...]bool{len(first.Grades)+len(first.Outside) == 0, len(second.Grades)+len(second.Outside) == 0} {
		if none {
			return s, refuse("place", i+1, "", "", ErrNoReading, "what Place gives")
		}
	}
	s.Ungraded = len(first.Outside)+len(second.Outside) > 0
	for _, a := range first.Grades {
		for _, b := range second.Grades {
			i := slices.IndexFunc(t, func(c Combination) bool { return c.First == a && c.Second == b })
			if i < 0 {
				s.Missing = append(s.Missing, [2]string{a, b})
			} else if class := t[i].Class; !slices.Contains(s.Classes, class) {
				s.Classes = append(s.Classes, class)
			}
		}
	}
	return s, nil
}

// ParseMatingTable reads a mating table, one row a line: two grades with a plus
// sign between them, a colon and the class. Empty lines don't count, nor do
// lines that begin with #. The errors are [InputError]s with the line or row.
//
//	# tunnel + journal: shell
//	1 + A: red
//	1 + B: blue
func ParseMatingTable(text string) (MatingTable, error) {
	var t MatingTable
	for n, line := range strings.Split(text, "\n") {
		grades, class, ok, err := row(n+1, line)
		if err != nil {
			return nil, err
		}
		if !ok {
			continue
		}
		first, second, ok := strings.Cut(grades, "+")
		if !ok || class == "" {
			return nil, &InputError{What: "table, line", At: n + 1, Name: clip(line), Kind: ErrSyntax, Want: `two grades and a class, as "1 + A: red"`}
		}
		if len(t) > MostCombinations {
			break // which Validate refuses
		}
		t = append(t, Combination{strings.TrimSpace(first), strings.TrimSpace(second), class})
	}
	return t, t.Validate()
}
