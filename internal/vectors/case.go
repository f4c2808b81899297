package vectors

import (
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// A Case is a row in the hands of a test. Its methods fail the test, with the
// file and line, where a column isn't there or doesn't hold what is asked for.
type Case struct {
	Row
	file *File
	t    testing.TB
	read []bool // which columns the test has asked for; shared by copies
}

// newCase hands a row to a test, which must then ask for each of its columns.
func (f *File) newCase(t testing.TB, row int) Case {
	c := Case{Row: f.Rows[row], file: f, t: t, read: make([]bool, len(f.Columns))}
	for i, name := range f.Columns {
		c.read[i] = name == "id" || name == "source"
	}
	return c
}

// Where gives the case's place, file:line.
func (c Case) Where() string { return c.file.Path + ":" + strconv.Itoa(c.Line) }

func (c Case) fatal(col, problem string) {
	c.t.Helper()
	c.t.Fatalf("%s: column %s: %s", c.Where(), col, problem)
}

// cell marks a column as read and gives what it holds.
func (c Case) cell(col string) string {
	c.t.Helper()
	i := slices.Index(c.file.Columns, col)
	if i < 0 {
		c.fatal(col, "unknown; the file has "+strings.Join(c.file.Columns, "; "))
		return ""
	}
	c.read[i] = true
	return c.Cells[i]
}

// Has reports whether the column holds a value, not a dash.
func (c Case) Has(col string) bool {
	c.t.Helper()
	return c.cell(col) != "-"
}

// Text gives the column's text. A dash is none: ask [Case.Has] first where one
// may stand.
func (c Case) Text(col string) string {
	c.t.Helper()
	text := c.cell(col)
	if text == "-" {
		c.fatal(col, "no value")
	}
	return text
}

// Is reports whether the column holds exactly the text. Where a column holds one
// of a few words, [Case.Choice] also catches a word that is none of them.
func (c Case) Is(col, text string) bool {
	c.t.Helper()
	return c.cell(col) == text
}

// Choice gives the column's text, which must be one of the words.
func (c Case) Choice(col string, words ...string) string {
	c.t.Helper()
	text := c.Text(col)
	if !slices.Contains(words, text) {
		c.fatal(col, quote(text)+" is none of "+strings.Join(words, ", "))
	}
	return text
}

// Bool reads yes or no.
func (c Case) Bool(col string) bool {
	c.t.Helper()
	return c.Choice(col, "yes", "no") == "yes"
}

// Int64 reads a whole number.
func (c Case) Int64(col string) int64 {
	c.t.Helper()
	text := c.Text(col)
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil || strings.HasPrefix(text, "+") {
		c.fatal(col, quote(text)+" is not a whole number of 64 bits")
	}
	return n
}

// Int reads a whole number that an int holds.
func (c Case) Int(col string) int {
	c.t.Helper()
	n := c.Int64(col)
	if int64(int(n)) != n {
		c.fatal(col, strconv.FormatInt(n, 10)+" is more than an int holds")
	}
	return int(n)
}

// Float reads a decimal number, 0.07 or -1.5e-9.
func (c Case) Float(col string) float64 {
	c.t.Helper()
	text := c.Text(col)
	x, err := strconv.ParseFloat(text, 64)
	if _, _, ok := printed(text); !ok || err != nil {
		c.fatal(col, quote(text)+" is not a decimal number")
	}
	return x
}

// Near fails the test, which goes on, unless got agrees with the column: to the
// printed digit, or within the tolerance that the column states (see the
// package's documentation).
func (c Case) Near(col string, got float64) {
	c.t.Helper()
	text := c.Text(col)
	want, tolerance, ok := expected(text)
	switch {
	case !ok:
		c.fatal(col, quote(text)+" is not a decimal number, alone or with its ± tolerance")
	case math.IsNaN(got) || math.IsInf(got, 0):
		c.t.Errorf("%s: column %s: got %v, want %s", c.Where(), col, got, text)
	default:
		off := new(big.Rat).SetFloat64(got)
		off.Sub(off, want).Abs(off)
		if off.Cmp(tolerance) > 0 {
			miss, _ := off.Float64()
			limit, _ := tolerance.Float64()
			c.t.Errorf("%s: column %s: got %v, want %s: off by %.3g, at most %.3g", c.Where(), col, got, text, miss, limit)
		}
	}
}

// Ignore says that this test has no use for the columns.
func (c Case) Ignore(cols ...string) {
	c.t.Helper()
	for _, col := range cols {
		c.cell(col)
	}
}

// done fails the test if it left a column unread.
func (c Case) done() {
	c.t.Helper()
	for i, name := range c.file.Columns {
		if !c.read[i] {
			c.t.Errorf("%s: column %s: the test has not read it", c.Where(), name)
		}
	}
}
