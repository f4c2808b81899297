package proofread

import (
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is. A [ParseError] also wraps
// what the parser of a number said, such as [units.ErrNoUnit].
var (
	// ErrSyntax: a text is not two figures of one size.
	ErrSyntax = errors.New("not written as expected")
	// ErrForm: the two columns don't give the same limits.
	ErrForm = errors.New("the columns differ in form")
	// ErrRange: a value is out of the range of its type.
	ErrRange = units.ErrRange
	// ErrTooFew: fewer than three readings have no neighbours to be held to.
	ErrTooFew = errors.New("too few readings")
	// ErrRatio: a ratio that can't be.
	ErrRatio = errors.New("no ratio")
)

// A ParseError says what could not be read and what was expected.
type ParseError struct {
	What  string // "pair", "column", …
	Input string // the input, or its first 64 bytes
	Cut   bool   // whether Input was cut
	Kind  error  // ErrSyntax
	Want  string // what was expected, in words
	Err   error  // what a number's parser said, or nil
}

// Error says it in a line, at most 64 bytes of the input in it.
func (e *ParseError) Error() string {
	cut := ""
	if e.Cut {
		cut = "…"
	}
	s := fmt.Sprintf("proofread: %s %s%s: %v; %s", e.What, strconv.Quote(e.Input), cut, e.Kind, e.Want)
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

func parseError(what, input string, kind error, want string, cause error) error {
	text, cut := clip(input)
	return &ParseError{What: what, Input: text, Cut: cut, Kind: kind, Want: want, Err: cause}
}

// clip keeps the first 64 bytes of s, whole characters only.
func clip(s string) (text string, cut bool) {
	const most = 64
	if len(s) <= most {
		return s, false
	}
	n := most
	for n > most-utf8.UTFMax && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n], true
}

// A CheckError names what can't be checked, and why.
type CheckError struct {
	Field string // "first", "least of the second column", "reading 3", …
	Value string // as text; empty where there is none
	Kind  error  // ErrForm, ErrRange, ErrTooFew or ErrRatio
	Want  string // what was expected, in words
}

// Error says it in a line.
func (e *CheckError) Error() string {
	s := "proofread: " + e.Field
	if e.Value != "" {
		s += " " + e.Value
	}
	return fmt.Sprintf("%s: %v; %s", s, e.Kind, e.Want)
}

// Unwrap gives the kind.
func (e *CheckError) Unwrap() error { return e.Kind }

// inRange refuses a printed value that its type can't hold.
func inRange[Q units.Quantity](field string, w units.Written[Q]) error {
	if units.InRange(w.Value) {
		return nil
	}
	return &CheckError{Field: field, Value: w.String(), Kind: ErrRange, Want: "a value within the range of its type"}
}
