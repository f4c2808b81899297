package tolerance

import (
	"errors"
	"strconv"
	"unicode"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrSyntax: a text is not a band, an interval or a word of this package.
	ErrSyntax = errors.New("not understood")
	// ErrOrder: the least is above the greatest, or nothing lies between.
	ErrOrder = errors.New("nothing lies between the ends")
	// ErrRange: a value left the range of its type.
	ErrRange = units.ErrRange
	// ErrAmbiguous: a text may mean two things.
	ErrAmbiguous = units.ErrAmbiguous
	// ErrSpec: a new-part band and a wear limit that contradict each other.
	ErrSpec = errors.New("limits contradict each other")
	// ErrNoLimit: nothing to judge against.
	ErrNoLimit = errors.New("no limit given")
	// ErrNoReading: nothing to judge.
	ErrNoReading = errors.New("no reading given")
)

// An OrderError names two ends that are the wrong way round.
type OrderError struct {
	What   string // "interval", "band", …
	Lo, Hi string // the two values
}

func (e *OrderError) Error() string {
	return "tolerance: " + e.What + ": nothing lies between a least of " + e.Lo + " and a greatest of " + e.Hi
}

// Unwrap gives [ErrOrder].
func (e *OrderError) Unwrap() error { return ErrOrder }

func orderError[Q units.Quantity](what string, lo, hi Q) error {
	return &OrderError{What: what, Lo: text(lo), Hi: text(hi)}
}

// A RangeError names an operation or a field whose value is out of range.
type RangeError struct {
	Op string // "interval", "encode band", "reading 2", …
}

func (e *RangeError) Error() string {
	return "tolerance: " + e.Op + ": a value is out of range: it was calculated beyond ±2^61 quanta or divided by zero"
}

// Unwrap gives [ErrRange].
func (e *RangeError) Unwrap() error { return ErrRange }

// A ParseError says what could not be read, where, and what was expected.
type ParseError struct {
	What   string // "band", "interval", …
	Input  string // the input, or its first 64 bytes
	Cut    bool   // whether Input was cut
	Offset int    // the place in the input, in bytes; 0 also where the whole is meant
	Kind   error  // ErrSyntax, ErrOrder, ErrAmbiguous, ErrRange, or of a number what package units names
	Want   string // what was expected, in words
	Err    error  // what a number's parser said, or which ends are in disorder, or nil
}

func (e *ParseError) Error() string {
	s := "tolerance: " + e.What + " " + strconv.Quote(e.Input)
	if e.Cut {
		s += "…"
	}
	if e.Offset > 0 {
		s += ", at byte " + strconv.Itoa(e.Offset)
	}
	return s + ": " + e.Kind.Error() + "; " + e.Want
}

// Unwrap gives the kind and the cause.
func (e *ParseError) Unwrap() []error {
	if e.Err == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Err}
}

func parseError(what, input string, offset int, kind error, want string, cause error) error {
	e := &ParseError{What: what, Offset: offset, Kind: kind, Want: want, Err: cause}
	e.Input = clip(input)
	e.Cut = len(e.Input) < len(input)
	return e
}

// clip keeps the first 64 bytes of s, whole characters only.
func clip(s string) string {
	const most = 64
	if len(s) <= most {
		return s
	}
	n := most
	for n > most-utf8.UTFMax && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n]
}

// place is where in the input the byte at of its text with single spaces
// stands; of the first byte it is 0, which is the whole.
func place(input string, at int) int {
	if at == 0 {
		return 0
	}
	n, begun, blank := 0, false, false
	for i, c := range input {
		if unicode.IsSpace(c) {
			blank = begun
			continue
		}
		if blank {
			n++
		}
		if n >= at {
			return i
		}
		begun, blank = true, false
		n += utf8.RuneLen(c)
	}
	return len(input)
}

// text is q written exactly.
func text[Q units.Quantity](q Q) string { return string(appendExact(make([]byte, 0, 32), q)) }

func appendExact[Q units.Quantity](dst []byte, q Q) []byte {
	exact, err := units.AppendText(dst, q)
	if err != nil {
		return append(dst, outOfRangeText...)
	}
	return exact
}

const outOfRangeText = "out of range"
