package instrument

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance"
)

// The kinds of an [InputError], for errors.Is.
var (
	// ErrNegative is an error or a step below zero.
	ErrNegative = errors.New("below zero")
	// ErrStep is a reading between two steps of the scale.
	ErrStep = errors.New("between two steps")
	// ErrOutside is a reading that the instrument can't show.
	ErrOutside = errors.New("outside the instrument's range")
	// ErrExpansion is a coefficient of expansion that no body has.
	ErrExpansion = errors.New("not a coefficient of expansion")
	// ErrTemperature is a temperature at which nothing is measured.
	ErrTemperature = errors.New("not a temperature to measure at")
	// ErrTogether is bodies that are said to be at one temperature and aren't.
	ErrTogether = errors.New("not at one temperature")
	// ErrEmpty is a set without readings.
	ErrEmpty = errors.New("no readings")
	// ErrIndex is a reading that the set doesn't have.
	ErrIndex = errors.New("no such reading")
	// ErrGraduation is a scale that can't be divided so, or counts that it
	// doesn't have.
	ErrGraduation = errors.New("not a graduation")
	// ErrRange is a value out of range.
	ErrRange = tolerance.ErrRange
)

// An InputError names what can't be used, and what was expected.
type InputError struct {
	Name  string // the instrument's, at most 64 bytes of it
	Field string // "step", "reading 2", "part, coefficient", …
	Value string // what it held; empty where there was nothing
	Kind  error  // ErrRange or another of the Err values
	Want  string // what was expected, in words
}

func (e *InputError) Error() string {
	var s strings.Builder
	s.WriteString("instrument: ")
	if e.Name != "" {
		s.WriteString(strconv.Quote(e.Name) + ", ")
	}
	s.WriteString(e.Field)
	if e.Value != "" {
		s.WriteString(" " + e.Value)
	}
	if e.Kind != nil {
		s.WriteString(": " + e.Kind.Error())
	}
	if e.Want != "" {
		s.WriteString("; " + e.Want)
	}
	return s.String()
}

// Unwrap gives the kind.
func (e *InputError) Unwrap() error { return e.Kind }

func refuse(name, field, value string, kind error, want string) error {
	return &InputError{Name: clip(name), Field: field, Value: value, Kind: kind, Want: want}
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
