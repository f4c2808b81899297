package limits

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// inputMax is the longest input in bytes that a parser looks at.
const inputMax = 256

const (
	wantClass  = `a class is a fundamental deviation and a grade, as "H7" or "js6"`
	wantLimits = `write a size and a class, as "25 H7", "⌀25 H7" or "1 in H7"`
	wantFit    = `write a size, the hole's class, "/" and the shaft's, as "50 H7/g6"`
	wantPair   = `write the hole's class, "/" and the shaft's, as "H7/g6"`
)

// Parse reads a fit, "50 H7/g6", and looks its limits up. The size is read as
// [ParseLimits] reads it; blanks may stand around the stroke. The errors are
// [ParseError]s for the text, of kind [ErrPair] where hole and shaft are
// exchanged, and those of [Class.At].
func Parse(s string) (Fit, error) {
	r := reader{"fit", wantFit, s}
	lo, hi, err := r.trim()
	if err != nil {
		return Fit{}, err
	}
	pair, at, err := r.pair(lo, hi)
	if err != nil {
		return Fit{}, err
	}
	nominal, err := r.size(lo, at)
	if err != nil {
		return Fit{}, err
	}
	return pair.At(nominal)
}

// MustParse is [Parse] for constants and tables; it panics on an error.
func MustParse(s string) Fit { return must(Parse(s)) }

// ParsePair reads the classes of a fit without its size: "H7/g6".
func ParsePair(s string) (Pair, error) {
	r := reader{"pair", wantPair, s}
	lo, hi, err := r.trim()
	if err != nil {
		return Pair{}, err
	}
	pair, at, err := r.pair(lo, hi)
	if err == nil && at != lo {
		return Pair{}, r.fail(lo, ErrSyntax, nil)
	}
	return pair, err
}

// MustParsePair is [ParsePair] for constants and tables; it panics on an error.
func MustParsePair(s string) Pair { return must(ParsePair(s)) }

// ParseLimits reads a size with its class and looks its limits up:
//
//	25 H7           a size without a unit is in millimetres
//	25H7   ⌀25 H7   the blank may be left out, a diameter sign (⌀, Ø or ø) put before
//	25,4 mm H7      a unit, as package units reads it, stands apart from the class
//	1 in H7         an inch size is looked up by the millimetres it is, here 25.4
//	63/64 in H7     a fraction must have its unit
//
// The standard's own steps are in millimetres; of an inch size this package
// says what the standard gives for just that size. The errors are
// [ParseError]s for the text, and those of [Class.At].
func ParseLimits(s string) (Limits, error) {
	r := reader{"limits", wantLimits, s}
	lo, hi, err := r.trim()
	if err != nil {
		return Limits{}, err
	}
	class, at, err := r.class(lo, hi)
	if err != nil {
		return Limits{}, err
	}
	nominal, err := r.size(lo, at)
	if err != nil {
		return Limits{}, err
	}
	return class.At(nominal)
}

// MustParseLimits is [ParseLimits] for constants and tables; it panics on an
// error.
func MustParseLimits(s string) Limits { return must(ParseLimits(s)) }

// ParseBand reads what [ParseLimits] reads and gives the sizes allowed: of
// "25 H7", 25 to 25.021 mm.
func ParseBand(s string) (tolerance.Band, error) {
	l, err := ParseLimits(s)
	return l.Band(), err
}

// MustParseBand is [ParseBand] for constants and tables; it panics on an error.
func MustParseBand(s string) tolerance.Band { return must(ParseBand(s)) }

// ParseClass reads a class: "H7", "js6", "ZC11".
func ParseClass(s string) (Class, error) {
	r := reader{"class", wantClass, s}
	lo, hi, err := r.trim()
	if err != nil {
		return Class{}, err
	}
	class, at, err := r.class(lo, hi)
	if err == nil && at != lo {
		return Class{}, r.fail(lo, ErrSyntax, nil)
	}
	return class, err
}

// MustParseClass is [ParseClass] for constants and tables; it panics on an
// error.
func MustParseClass(s string) Class { return must(ParseClass(s)) }

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A reader takes a text apart from its end: the class is the last run of
// letters and digits, the size whatever stands before. Places are those in s.
type reader struct{ what, want, s string }

func (r *reader) fail(at int, kind, cause error) error {
	return parseError(r.what, r.s, at, kind, r.want, cause)
}

// trim gives the text without the blanks around it.
func (r *reader) trim() (lo, hi int, err error) {
	if len(r.s) > inputMax || !utf8.ValidString(r.s) {
		return 0, 0, parseError(r.what, r.s, 0, ErrSyntax, "at most 256 bytes of UTF-8; "+r.want, nil)
	}
	lo, hi = r.blanks(0, len(r.s))
	if lo == hi {
		return 0, 0, r.fail(lo, ErrSyntax, nil)
	}
	return lo, hi, nil
}

// blanks moves two places inward over blanks.
func (r *reader) blanks(lo, hi int) (int, int) {
	s := strings.TrimLeftFunc(r.s[lo:hi], unicode.IsSpace)
	lo = hi - len(s)
	return lo, lo + len(strings.TrimRightFunc(s, unicode.IsSpace))
}

// pair reads the two classes at the end of a text and tells where they begin.
func (r *reader) pair(lo, hi int) (p Pair, at int, err error) {
	stroke := strings.LastIndexByte(r.s[lo:hi], '/')
	if stroke < 0 {
		return Pair{}, 0, r.fail(lo, ErrSyntax, nil)
	}
	stroke += lo
	first, end := r.blanks(stroke+1, hi)
	second, at, err := r.class(first, end)
	if err != nil {
		return Pair{}, 0, err
	}
	if at != first {
		return Pair{}, 0, r.fail(first, ErrSyntax, nil)
	}
	_, end = r.blanks(lo, stroke)
	p.Shaft = second
	p.Hole, at, err = r.class(lo, end)
	switch {
	case err != nil:
		return Pair{}, 0, err
	case p.Hole.feature != Hole || p.Shaft.feature != Shaft:
		return Pair{}, 0, parseError(r.what, r.s, at, ErrPair, (&OrderError{First: p.Hole, Second: p.Shaft}).want(), nil)
	}
	return p, at, nil
}

// class reads the class at the end of a text and tells where it begins.
func (r *reader) class(lo, hi int) (c Class, at int, err error) {
	digits := hi
	for digits > lo && r.s[digits-1]-'0' <= 9 {
		digits--
	}
	at = digits
	for at > lo && (r.s[at-1]|0x20)-'a' <= 'z'-'a' {
		at--
	}
	deviation, number := r.s[at:digits], r.s[digits:hi]
	f, l := letterOf(deviation)
	switch g := gradeOf(number); {
	case deviation == "" || f == 0 && number == "":
		return Class{}, 0, r.fail(at, ErrSyntax, nil)
	case f == 0:
		return Class{}, 0, parseError(r.what, r.s, at, ErrDeviation, wantDeviation(deviation), nil)
	case g == 0:
		return Class{}, 0, parseError(r.what, r.s, digits, ErrGrade, "after "+deviation+" a number from 01, 0, 1 to 18 is expected", nil)
	default:
		return Class{f, l, g}, at, nil
	}
}

// size reads a nominal size; without a unit it is in millimetres.
func (r *reader) size(lo, hi int) (units.Length, error) {
	lo, hi = r.blanks(lo, hi)
	for _, sign := range [...]string{"⌀", "Ø", "ø"} {
		if rest, ok := strings.CutPrefix(r.s[lo:hi], sign); ok {
			lo, hi = r.blanks(hi-len(rest), hi)
			break
		}
	}
	text := r.s[lo:hi]
	switch {
	case text == "":
		return 0, r.fail(lo, ErrSyntax, nil)
	case text[len(text)-1] == '/':
		return 0, parseError(r.what, r.s, hi-1, ErrSyntax, "this is a fit; "+r.want, nil)
	case strings.ContainsAny(text, "/⁄") && text[len(text)-1]-'0' <= 9:
		return 0, parseError(r.what, r.s, lo, ErrAmbiguous, "a fraction must have its unit, as 63/64 in", nil)
	}
	size, err := units.ParseIn(text, units.InMillimetres)
	if err != nil {
		return 0, r.fail(lo, ErrSyntax, err)
	}
	return size, nil
}
