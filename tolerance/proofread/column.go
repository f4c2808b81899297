package proofread

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Form says how a column gives a measure.
type Form uint8

// The forms.
const (
	One       Form = iota // one figure
	Range                 // least to greatest
	Maximum               // a greatest alone
	Minimum               // a least alone
	Symmetric             // a size ± a tolerance
)

var formNames = [...]string{"one figure", "a range", "a maximum", "a minimum", "a size with its tolerance"}

// String is the form in words.
func (f Form) String() string { return word(formNames[:], f) }

// MarshalText writes what String gives.
func (f Form) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads what String gives.
func (f *Form) UnmarshalText(text []byte) error { return readWord("form", formNames[:], text, f) }

// A ColumnOf is what one column of a manual prints of a measure. Unlike a
// [tolerance.PrintedOf] it may have its least above its greatest.
type ColumnOf[Q units.Quantity] struct {
	Form Form             `json:"form"`       // one figure, a range, …
	A    units.Written[Q] `json:"a"`          // the one figure, the least of a range, the size
	B    units.Written[Q] `json:"b,omitzero"` // the greatest of a range, the tolerance after ±; else unused
}

// A Column is what one column prints of a length.
type Column = ColumnOf[units.Length]

// ColumnFrom takes over limits that package tolerance has read. ok is false
// where they weren't printed as one or two limits: for a size with deviations
// and for no limit.
func ColumnFrom[Q units.Quantity](p tolerance.PrintedOf[Q]) (c ColumnOf[Q], ok bool) {
	_, lo := p.Lower()
	_, hi := p.Upper()
	none := units.Written[Q]{}
	switch {
	case p.Least == none && p.Greatest == none:
		return c, false
	case lo == tolerance.Absent:
		return ColumnOf[Q]{Form: Maximum, A: p.Greatest}, true
	case hi == tolerance.Absent:
		return ColumnOf[Q]{Form: Minimum, A: p.Least}, true
	}
	return ColumnOf[Q]{Form: Range, A: p.Least, B: p.Greatest}, true
}

// count is how many figures the column prints, and figure the i-th of them.
func (c *ColumnOf[Q]) count() int {
	if c.Form == Range || c.Form == Symmetric {
		return 2
	}
	return 1
}

func (c *ColumnOf[Q]) figure(i int) units.Written[Q] {
	if i == 1 {
		return c.B
	}
	return c.A
}

// limit names the i-th figure.
func (c *ColumnOf[Q]) limit(i int) Limit {
	switch c.Form {
	case Range:
		return Least + Limit(i)
	case Symmetric:
		return Size + Limit(i)
	case Maximum:
		return Greatest
	case Minimum:
		return Least
	}
	return Value
}

// least and greatest are the column's limits, where it gives them; a single
// figure is both, and those of a size with its tolerance are calculated.
func (c *ColumnOf[Q]) least() (w units.Written[Q], ok bool) {
	if c.Form == Symmetric {
		return c.deviate(c.A.Value - c.B.Value)
	}
	return c.A, c.Form != Maximum
}

func (c *ColumnOf[Q]) greatest() (w units.Written[Q], ok bool) {
	switch c.Form {
	case Symmetric:
		return c.deviate(c.A.Value + c.B.Value)
	case Range:
		return c.B, true
	}
	return c.A, c.Form != Minimum
}

func (c *ColumnOf[Q]) deviate(limit Q) (w units.Written[Q], ok bool) {
	w = c.A.As(limit)
	w.Places = max(w.Places, c.B.Places)
	return w, units.InRange(w.Value)
}

func (c *ColumnOf[Q]) inRange(column string) error {
	for i := range c.count() {
		if w := c.figure(i); !units.InRange(w.Value) {
			return inRange(c.limit(i).String()+" of the "+column, w)
		}
	}
	return nil
}

// String is the column as it is printed, dashes and words made regular.
func (c ColumnOf[Q]) String() string {
	switch c.Form {
	case Range:
		return c.A.String() + " to " + c.B.String()
	case Symmetric:
		return c.A.String() + " ±" + c.B.String()
	case Maximum:
		return "max " + c.A.String()
	case Minimum:
		return "min " + c.A.String()
	}
	return c.A.String()
}

// A LimitsOf is a measure as a manual prints it in two columns, or in one with
// the other unit in brackets.
type LimitsOf[Q units.Quantity] struct {
	First  ColumnOf[Q] `json:"first"`  // as printed
	Second ColumnOf[Q] `json:"second"` // beside it, of the same form
}

// A Limits is a length as a manual prints it in two units.
type Limits = LimitsOf[units.Length]

// String is the limits as they are printed.
func (l LimitsOf[Q]) String() string { return l.First.String() + " (" + l.Second.String() + ")" }

// match gives a bare second figure the form of the first, and refuses columns
// that don't give the same limits.
func (l *LimitsOf[Q]) match() error {
	f, s := &l.First.Form, &l.Second.Form
	switch {
	case *s == One && (*f == Maximum || *f == Minimum):
		*s = *f
	case *f == One && (*s == Maximum || *s == Minimum):
		*f = *s
	}
	if *f != *s {
		return &CheckError{Field: "second column", Value: strconv.Quote(l.Second.String()), Kind: ErrForm, Want: "as the first column: " + f.String()}
	}
	return nil
}
