package wearrate

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance"
)

// The kinds of an [InputError], for errors.Is.
var (
	// ErrEmpty is a profile without rules.
	ErrEmpty = errors.New("no rules")
	// ErrName is a profile or rule without a name, or a name given twice.
	ErrName = errors.New("no name of its own")
	// ErrUnknown is a profile or an item that isn't there.
	ErrUnknown = errors.New("not known")
	// ErrRule is a rule that says nothing, or two things.
	ErrRule = errors.New("not a rule")
	// ErrSize is a size that a part can't have.
	ErrSize = errors.New("not a part's size")
	// ErrNoLimit is a band for new parts without the limit that a rule counts from.
	ErrNoLimit = tolerance.ErrNoLimit
	// ErrRange is a value out of range.
	ErrRange = tolerance.ErrRange
	// ErrDocument is a document that is not a profile.
	ErrDocument = errors.New("not a profile")
)

// An InputError names what can't be used, and what was expected.
type InputError struct {
	Item  string // the rule's item or the profile's name, at most 64 bytes of it
	Field string // "rate", "size", "new-part band", …
	Value string // what it held; empty where there was nothing
	Kind  error  // ErrRange or another of the Err values
	Want  string // what was expected, in words
	Err   error  // the cause, or nil
}

func (e *InputError) Error() string {
	var s strings.Builder
	s.WriteString("wearrate: ")
	if e.Item != "" {
		s.WriteString(strconv.Quote(e.Item) + ", ")
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

func refuse(item, field, value string, kind error, want string) error {
	return &InputError{Item: clip(item), Field: field, Value: clip(value), Kind: kind, Want: want}
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
