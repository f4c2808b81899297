package units

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The kinds of [ParseError] and [RangeError], for errors.Is.
var (
	ErrSyntax      = errors.New("not written as a quantity")
	ErrNoUnit      = errors.New("no unit")
	ErrUnknownUnit = errors.New("unknown unit")
	ErrAmbiguous   = errors.New("ambiguous")
	ErrTooFine     = errors.New("finer than the quantum")
	ErrRange       = errors.New("out of range")
)

// A ParseError says what a parser could not read, where, and what it
// expected. Its kind is one of the Err values of this package.
type ParseError struct {
	Quantity string // "length", "angle", …
	Input    string // the input, or its first 64 bytes
	Cut      bool   // whether Input was cut
	Offset   int    // the place in the input, in bytes
	Kind     error  // ErrSyntax, ErrNoUnit, …
	Want     string // what was expected, in words
}

func (e *ParseError) Error() string {
	cut := ""
	if e.Cut {
		cut = "…"
	}
	return fmt.Sprintf("units: %s %s%s, at byte %d: %v; %s", e.Quantity, strconv.Quote(e.Input), cut, e.Offset, e.Kind, e.Want)
}

// Unwrap gives the kind, so that errors.Is(err, units.ErrNoUnit) tells.
func (e *ParseError) Unwrap() error { return e.Kind }

// A RangeError names a value that a quantity can't hold, or an operation
// whose result left the range.
type RangeError struct {
	Quantity string // "length", "angle", …
	Op       string // what was being done: "encode", "sum", "mean", "scan", …
	Value    string // the value as text, at most 64 bytes; empty if unknown
	Kind     error  // ErrRange, ErrTooFine or ErrSyntax
	Want     string // what was expected, in words
}

func (e *RangeError) Error() string {
	value := e.Value
	if value != "" {
		value = " " + value
	}
	return fmt.Sprintf("units: %s %s%s: %v; %s", e.Op, e.Quantity, value, e.Kind, e.Want)
}

// Unwrap gives the kind.
func (e *RangeError) Unwrap() error { return e.Kind }

// quoteMax is the most of an input that an error repeats.
const quoteMax = 64

// clip keeps the first quoteMax bytes of s, whole characters only.
func clip(s string) (text string, cut bool) {
	if len(s) <= quoteMax {
		return s, false
	}
	n := quoteMax
	for n > quoteMax-utf8.UTFMax && !utf8.RuneStart(s[n]) {
		n--
	}
	return strings.Clone(s[:n]), true // or the error would hold on to all of s
}
