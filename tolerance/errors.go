package tolerance

import (
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrSyntax: a text is not a band, an interval or a word of this package.
	ErrSyntax = errors.New("not written as expected")
	// ErrOrder: the least is above the greatest, or nothing lies between.
	ErrOrder = errors.New("ends in the wrong order")
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
	return fmt.Sprintf("tolerance: %s: nothing lies between a least of %s and a greatest of %s", e.What, e.Lo, e.Hi)
}

// Unwrap gives [ErrOrder].
func (e *OrderError) Unwrap() error { return ErrOrder }

func orderError[Q units.Quantity](what string, lo, hi Q) error {
	return &OrderError{What: what, Lo: text(lo), Hi: text(hi)}
}

// A RangeError names an operation or a field whose value is out of range.
type RangeError struct {
	Op string
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
	Offset int    // the place in the input, in bytes
	Kind   error  // ErrSyntax, ErrOrder, ErrAmbiguous
	Want   string // what was expected, in words
	Err    error  // what a number's parser said, or nil
}

func (e *ParseError) Error() string {
	cut := ""
	if e.Cut {
		cut = "…"
	}
	s := fmt.Sprintf("tolerance: %s %s%s, at byte %d: %v", e.What, strconv.Quote(e.Input), cut, e.Offset, e.Kind)
	if e.Want != "" {
		s += "; " + e.Want
	}
	if e.Err != nil {
		s += ": " + e.Err.Error()
	}
	return s
}

// Unwrap gives the kind and the cause.
func (e *ParseError) Unwrap() []error {
	if e.Err == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Err}
}

func parseError(what, input string, offset int, kind error, want string, cause error) error {
	const most = 64
	e := &ParseError{What: what, Input: input, Offset: offset, Kind: kind, Want: want, Err: cause}
	if len(input) > most {
		n := most
		for n > most-utf8.UTFMax && !utf8.RuneStart(input[n]) {
			n--
		}
		e.Input, e.Cut = input[:n], true
	}
	return e
}

// text is q written exactly.
func text[Q units.Quantity](q Q) string { return fmt.Sprint(q) }
