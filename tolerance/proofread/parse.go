package proofread

import (
	"errors"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const (
	pairForms   = `write it as "0.006 in (0.152 mm)"`
	limitForms  = `write it as "2.7528–2.7533 in (69.920–69.934 mm)", "max 0.10 mm (0.004 in)", "0.020 ±0.005 in (0.51 ±0.13 mm)" or "0.006 in (0.152 mm)"`
	columnForms = `write it as "2.7528–2.7533 in", "max 0.10 mm", "0.020 ±0.005 in" or "0.006 in"`
)

// ParsePair reads one length printed in two units. See [ParsePairOf].
func ParsePair(s string) (Pair, error) { return ParsePairOf[units.Length](s) }

// ParsePairOf reads one size printed in two units, the second in brackets:
//
//	0.006 in (0.152 mm)
//	3/32 in (2.4 mm)
//	-0.0551" (−1.40 mm)
//
// Each figure is read as package units reads it and needs its unit. The errors
// are [ParseError]s.
func ParsePairOf[Q units.Quantity](s string) (PairOf[Q], error) {
	first, second, err := cutBrackets("pair", s, pairForms)
	if err != nil {
		return PairOf[Q]{}, err
	}
	var p PairOf[Q]
	if p.First, err = units.ParseWritten[Q](first); err == nil {
		p.Second, err = units.ParseWritten[Q](second)
	}
	if err != nil {
		return PairOf[Q]{}, parseError("pair", s, ErrSyntax, pairForms, err)
	}
	return p, nil
}

// ParsePairIn is [ParsePairOf] for a table whose heads give the units: a
// figure without one is in the unit of its side, as in "90° (32.22)".
func ParsePairIn[Q units.Quantity](s string, first, second units.Unit[Q]) (PairOf[Q], error) {
	a, b, err := cutBrackets("pair", s, pairForms)
	if err != nil {
		return PairOf[Q]{}, err
	}
	var p PairOf[Q]
	if p.First, err = units.ParseWrittenIn(a, first); err == nil {
		p.Second, err = units.ParseWrittenIn(b, second)
	}
	if err != nil {
		return PairOf[Q]{}, parseError("pair", s, ErrSyntax, pairForms, err)
	}
	return p, nil
}

// cutBrackets splits "A (B)".
func cutBrackets(what, s, want string) (a, b string, err error) {
	if len(s) > 256 || !utf8.ValidString(s) {
		return "", "", parseError(what, s, ErrSyntax, "at most 256 bytes of UTF-8; "+want, nil)
	}
	t := strings.TrimSpace(s)
	a, b, ok := strings.Cut(t, "(")
	inside, ok2 := strings.CutSuffix(b, ")")
	if !ok || !ok2 || strings.ContainsAny(inside, "()") {
		return "", "", parseError(what, s, ErrSyntax, want, nil)
	}
	return strings.TrimSpace(a), strings.TrimSpace(inside), nil
}

// ParseLimits reads the limits of a length in two units. See [ParseLimitsOf].
func ParseLimits(s string) (Limits, error) { return ParseLimitsOf[units.Length](s) }

// ParseLimitsOf reads a measure as manuals print it, each column as
// [ParseColumnOf] reads it, the second in brackets:
//
//	2.7548–2.7533 in (69.920–69.632 mm)
//	max 0.10 mm (0.004 in)
//	0.020 ±0.005 in (0.51 ±0.13 mm)
//
// The errors are [ParseError]s, and a [CheckError] where the columns differ in
// form.
func ParseLimitsOf[Q units.Quantity](s string) (LimitsOf[Q], error) {
	first, second, err := cutBrackets("limits", s, limitForms)
	if err != nil {
		return LimitsOf[Q]{}, err
	}
	var l LimitsOf[Q]
	if l.First, err = ParseColumnOf[Q](first); err == nil {
		l.Second, err = ParseColumnOf[Q](second)
	}
	if err != nil {
		return LimitsOf[Q]{}, parseError("limits", s, ErrSyntax, limitForms, err)
	}
	if err := l.match(); err != nil {
		return LimitsOf[Q]{}, err
	}
	return l, nil
}

// ParseColumn reads one column's limits of a length. See [ParseColumnOf].
func ParseColumn(s string) (Column, error) { return ParseColumnOf[units.Length](s) }

// ParseColumnOf reads what one column prints of a measure: one figure, a range
// with a dash, "to" or "…", a size with one tolerance (±), or a limit on one
// side in the words that [tolerance.ParseBandOf] knows. A figure without a
// unit takes the other one's. The least may be the greater: that is for
// [CheckColumn] to say. A size with two deviations is refused, since nothing
// is printed of its limits. The errors are [ParseError]s.
func ParseColumnOf[Q units.Quantity](s string) (ColumnOf[Q], error) {
	if len(s) > 256 || !utf8.ValidString(s) {
		return ColumnOf[Q]{}, parseError("column", s, ErrSyntax, "at most 256 bytes of UTF-8; "+columnForms, nil)
	}
	t := strings.Join(strings.Fields(s), " ")
	w, err := units.ParseWritten[Q](t)
	if err == nil {
		return ColumnOf[Q]{A: w}, nil
	}
	for _, mark := range []string{"±", "+/-", "+/−"} {
		if a, b, ok := strings.Cut(t, mark); ok {
			return twoFigures[Q](s, Symmetric, a, b)
		}
	}
	if p, err := tolerance.ParsePrintedOf[Q](t); err == nil {
		if c, ok := ColumnFrom(p); ok {
			return c, nil
		}
		return ColumnOf[Q]{}, parseError("column", s, ErrSyntax, "two limits, not a size with deviations; "+columnForms, nil)
	} else if a, b, ok := cutRange(t); ok && errors.Is(err, tolerance.ErrOrder) {
		return twoFigures[Q](s, Range, a, b)
	}
	return ColumnOf[Q]{}, parseError("column", s, ErrSyntax, columnForms, err)
}

// twoFigures reads two figures of which one may lack its unit.
func twoFigures[Q units.Quantity](s string, form Form, a, b string) (ColumnOf[Q], error) {
	c := ColumnOf[Q]{Form: form}
	var err error
	if c.B, err = units.ParseWritten[Q](b); errors.Is(err, units.ErrNoUnit) {
		if c.A, err = units.ParseWritten[Q](a); err == nil {
			c.B, err = units.ParseWrittenIn(b, c.A.Unit)
		}
	} else if err == nil {
		c.A, err = units.ParseWrittenIn(a, c.B.Unit)
	}
	if err != nil {
		return ColumnOf[Q]{}, parseError("column", s, ErrSyntax, columnForms, err)
	}
	return c, nil
}

// cutRange splits at the one mark of a range: a dash, "to", dots, or a hyphen
// or minus sign after something that ends a number.
func cutRange(s string) (a, b string, ok bool) {
	for _, mark := range []string{"–", "—", " to ", "…", "..."} {
		if a, b, ok := strings.Cut(s, mark); ok {
			return a, b, true
		}
	}
	for i, c := range s {
		before := strings.TrimRight(s[:i], " ")
		if (c == '-' || c == '−') && strings.ContainsAny(before, "0123456789") && !strings.HasSuffix(before, "-") && !strings.HasSuffix(before, "−") {
			return s[:i], s[i+utf8.RuneLen(c):], true
		}
	}
	return "", "", false
}
