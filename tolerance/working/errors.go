package working

import (
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrRange: a value left the range of its type, or was divided by zero.
	ErrRange = units.ErrRange
	// ErrStyle: a solution can't be written in this style.
	ErrStyle = errors.New("not a style to write a solution in")
	// ErrTooLong: a formula has too many operations to write out.
	ErrTooLong = errors.New("too long to write out")
	// ErrRounded: no line would give, from the numbers that it prints, the
	// result that it prints.
	ErrRounded = errors.New("rounding on the way shows in every line")
	// ErrAnswer: an answer is not a quantity of the kind asked for.
	ErrAnswer = errors.New("not an answer that can be read")
	// ErrName: a text names no grade or slip.
	ErrName = errors.New("not a name")
	// ErrTolerance: what an answer may be off is below zero or out of range.
	ErrTolerance = errors.New("not a tolerance")
)

// An Error says what could not be written out or marked, and why.
type Error struct {
	Op    string // "solve", "mark" or "read"
	Field string // the term, or the part of the style, in question
	Value string // its value as text, at most 64 bytes; empty if there is none
	Kind  error  // ErrRange, ErrStyle, ErrTooLong, ErrRounded, ErrAnswer, ErrName or ErrTolerance
	Want  string // what was expected, in words
	Err   error  // what a parser said, or nil
}

// Error names what was being done, to what, why it could not be, and what was
// expected.
func (e *Error) Error() string {
	s := "working: " + e.Op
	if e.Field != "" {
		s += " " + e.Field
	}
	if e.Value != "" {
		s += " " + strconv.Quote(e.Value)
	}
	s += ": " + e.Kind.Error()
	if e.Want != "" {
		s += "; " + e.Want
	}
	if e.Err != nil {
		s = fmt.Sprintf("%s: %v", s, e.Err)
	}
	return s
}

// Unwrap gives the kind and the cause.
func (e *Error) Unwrap() []error {
	if e.Err == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Err}
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
