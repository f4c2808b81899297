package crank

import (
	"errors"
	"fmt"
)

// ErrInput is the kind of every [InputError], for errors.Is.
var ErrInput = errors.New("crank: a reading that can't be")

// An InputError names a reading or a size that can't be, and what was expected
// of it.
type InputError struct {
	Field string // "crankpin journal 2"
	Value string // "-1.2 mm"
	Want  string // "above 0 mm"
}

// Error says what is wrong, and what was expected.
func (e *InputError) Error() string {
	return fmt.Sprintf("crank: %s %s is not %s", e.Field, e.Value, e.Want)
}

// Unwrap gives [ErrInput].
func (e *InputError) Unwrap() error { return ErrInput }
