package selective

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance"
)

// The kinds of an [InputError], for errors.Is.
var (
	// ErrEmpty is a table, a stock or a batch with nothing in it.
	ErrEmpty = errors.New("nothing given")
	// ErrTooMany is more than is worked out at once.
	ErrTooMany = errors.New("too many")
	// ErrName is a grade or class without a name.
	ErrName = errors.New("no name")
	// ErrDuplicate is a name or a combination that stands in a table twice.
	ErrDuplicate = errors.New("given twice")
	// ErrNoLimit is a band that asks nothing.
	ErrNoLimit = tolerance.ErrNoLimit
	// ErrNoReading is a size of which nothing is known.
	ErrNoReading = tolerance.ErrNoReading
	// ErrOpen is a size with one end only, from which no distance can be told.
	ErrOpen = errors.New("an end is missing")
	// ErrRange is a value out of range.
	ErrRange = tolerance.ErrRange
	// ErrAim is an aim that the wanted band doesn't allow.
	ErrAim = errors.New("aim outside the wanted band")
	// ErrStock is a stock below zero.
	ErrStock = errors.New("not a stock")
	// ErrEffect is an effect that is missing or zero.
	ErrEffect = errors.New("no effect")
	// ErrSyntax is a text that is not a table.
	ErrSyntax = errors.New("not written as expected")
)

// An InputError names what can't be used, and what was expected.
type InputError struct {
	What  string // "grades", "mating table", "classes", "parts", "wanted fit", …
	At    int    // which of them, counted from 1; a line of a text; 0 where the whole is meant
	Name  string // its name, at most 64 bytes of it
	Field string // "band", "name", "stock", …; empty where the whole is meant
	Kind  error  // ErrRange or another of the Err values
	Want  string // what was expected, in words
	Err   error  // what a parser said, or nil
}

func (e *InputError) Error() string {
	var s strings.Builder
	s.WriteString("selective: " + e.What)
	if e.At > 0 {
		s.WriteString(" " + strconv.Itoa(e.At))
	}
	if e.Name != "" {
		s.WriteString(" " + strconv.Quote(e.Name))
	}
	if e.Field != "" {
		s.WriteString(", " + e.Field)
	}
	if e.Kind != nil {
		s.WriteString(": " + e.Kind.Error())
	}
	if e.Want != "" {
		s.WriteString("; " + e.Want)
	}
	if e.Err != nil {
		s.WriteString(": " + e.Err.Error())
	}
	return s.String()
}

// Unwrap gives the kind and the cause.
func (e *InputError) Unwrap() []error {
	if e.Err == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Err}
}

func refuse(what string, at int, name, field string, kind error, want string) error {
	return &InputError{What: what, At: at, Name: clip(name), Field: field, Kind: kind, Want: want}
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
