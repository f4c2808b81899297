package uncertainty

import (
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrUncertainty is a negative uncertainty, half-width, step or guard band.
	ErrUncertainty = errors.New("negative uncertainty")
	// ErrNotFinite is a value that is not-a-number or infinite.
	ErrNotFinite = errors.New("not a finite number")
	// ErrFreedom is degrees of freedom of zero or less, or too few for what is asked.
	ErrFreedom = errors.New("too few degrees of freedom")
	// ErrTooFew is fewer readings than the calculation needs.
	ErrTooFew = errors.New("too few readings")
	// ErrEmpty is a budget, a model or a sample without anything in it.
	ErrEmpty = errors.New("nothing given")
	// ErrProbability is a probability that is not between 0 and 1.
	ErrProbability = errors.New("not a probability between 0 and 1")
	// ErrFactor is a coverage factor, ratio or other factor that is not above zero.
	ErrFactor = errors.New("not a factor above zero")
	// ErrCorrelation is a table of correlations that no quantities can have.
	ErrCorrelation = errors.New("impossible correlations")
	// ErrUnbalanced is a table of readings with a cell of another size than the rest.
	ErrUnbalanced = errors.New("unbalanced table")
	// ErrNoZone is a band too narrow for the uncertainty: no reading proves conformity.
	ErrNoZone = errors.New("no reading could prove it")
	// ErrBlocks is a range of blocks that ends before it begins, or is too long.
	ErrBlocks = errors.New("not a range of blocks")
	// ErrNoLimit is a band that asks nothing.
	ErrNoLimit = errors.New("no limit given")
	// ErrSyntax is a word that this package doesn't know.
	ErrSyntax = errors.New("not written as expected")
	// ErrRange is a value that left the range of its type.
	ErrRange = units.ErrRange
)

// An InputError names what was given to a function, what it held, and what
// was expected. Its kind is one of the Err values of this package.
type InputError struct {
	Op    string // what was asked for: "rectangular", "coverage", …
	Name  string // the source's name, cut to 64 bytes; empty where there is none
	Field string // the argument: "half-width", "degrees of freedom", …
	Value string // what it held, cut to 64 bytes
	Kind  error  // ErrUncertainty, ErrFreedom, …
	Want  string // what was expected, in words
}

func (e *InputError) Error() string {
	s := "uncertainty: " + e.Op
	if e.Name != "" {
		s += " " + strconv.Quote(e.Name)
	}
	s += ": " + e.Field
	if e.Value != "" {
		s += " " + e.Value
	}
	s += fmt.Sprintf(": %v", e.Kind)
	if e.Want != "" {
		s += "; " + e.Want
	}
	return s
}

// Unwrap gives the kind.
func (e *InputError) Unwrap() error { return e.Kind }

func refuse(op, name, field string, value any, kind error, want string) error {
	return &InputError{Op: op, Name: clip(name), Field: field, Value: clip(fmt.Sprint(value)), Kind: kind, Want: want}
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
	return s[:n] + "…"
}
