package selective

import (
	"strings"
	"unicode"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ParseGrades is [ParseGradesOf] for lengths.
func ParseGrades(text string) (Grades, error) { return ParseGradesOf[units.Length](text) }

// ParseGradesOf reads a table of grades, one a line: a name, a colon and a band
// as [tolerance.ParseBandOf] reads it. Empty lines don't count, nor do lines
// that begin with #. The errors are [InputError]s with the line.
//
//	# bore grades
//	A: 86.000–86.010 mm
//	B: more than 86.010 mm, max 86.020 mm
func ParseGradesOf[Q units.Quantity](text string) (GradesOf[Q], error) {
	var g GradesOf[Q]
	var lines []int
	for n, line := range strings.Split(text, "\n") {
		name, rest, ok, err := row(n+1, line)
		if err != nil {
			return nil, err
		}
		if !ok {
			continue
		}
		band, err := tolerance.ParseBandOf[Q](rest)
		if err != nil {
			return nil, &InputError{What: "grades, line", At: n + 1, Name: clip(name), Field: "band", Kind: ErrSyntax, Err: err}
		}
		if len(g) == MostGrades {
			return nil, refuse("grades", 0, "", "", ErrTooMany, "at most 1000 grades")
		}
		g, lines = append(g, GradeOf[Q]{name, band}), append(lines, n+1)
	}
	if err := g.check(); err != nil {
		if e, ok := err.(*InputError); ok && e.At > 0 {
			e.What, e.At = "grades, line", lines[e.At-1]
		}
		return nil, err
	}
	return g, nil
}

// row splits a line at its colon; ok is false for one that doesn't count.
func row(n int, line string) (name, rest string, ok bool, err error) {
	line = strings.TrimSpace(strings.ReplaceAll(line, "\t", " "))
	if line == "" || line[0] == '#' {
		return "", "", false, nil
	}
	name, rest, ok = strings.Cut(line, ":")
	name, rest = strings.TrimSpace(name), strings.TrimSpace(rest)
	if !ok || name == "" || strings.ContainsFunc(line, unicode.IsControl) {
		return "", "", false, &InputError{What: "table, line", At: n, Name: clip(line), Kind: ErrSyntax, Want: `a name, a colon and what it means, as "A: 86.000–86.010 mm"`}
	}
	return name, rest, true, nil
}

// Table writes the table as [ParseGradesOf] reads it, in exact values. It fails
// with an [InputError] where the table can't be used or a name can't be written:
// it has a colon or a line break, begins with #, or has blanks around it.
func (g GradesOf[Q]) Table() (string, error) {
	if err := g.check(); err != nil {
		return "", err
	}
	var s strings.Builder
	for i := range g {
		name := g[i].Name
		if name[0] == '#' || name != strings.TrimSpace(name) || strings.Contains(name, ":") || strings.ContainsFunc(name, unicode.IsControl) {
			return "", refuse("grade", i+1, name, "name", ErrSyntax, "a name of one line without a colon, that doesn't begin with # or a blank")
		}
		s.WriteString(name + ": " + g[i].Band.String() + "\n")
	}
	return s.String(), nil
}
