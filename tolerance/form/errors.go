package form

import (
	"errors"
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrTooFew: fewer readings than the form has freedoms.
	ErrTooFew = errors.New("too few readings")
	// ErrCoincident: all points are one, to rounding.
	ErrCoincident = errors.New("all points are one")
	// ErrCollinear: the points lie in one line, or bend so little that a line
	// fits them as well as any circle or plane does.
	ErrCollinear = errors.New("points in one line")
	// ErrPartialArc: the points don't surround any centre, so that a circle
	// inside them can grow without end.
	ErrPartialArc = errors.New("a partial arc has no greatest inscribed circle")
	// ErrNotFinite: not-a-number, an infinity, or more than can be squared.
	ErrNotFinite = errors.New("not a number to reckon with")
	// ErrRadius: a radius of nothing or less.
	ErrRadius = errors.New("not a radius")
	// ErrRange: a length is out of range.
	ErrRange = units.ErrRange
	// ErrKind: an unknown reference element, or none.
	ErrKind = errors.New("unknown reference element")
	// ErrShape: lists that belong together differ in length, a grid isn't full,
	// or a spectrum has a gap.
	ErrShape = errors.New("readings don't match their places")
	// ErrAngles: angles that a V-block can't have, or that don't tell the
	// harmonics asked for from each other.
	ErrAngles = errors.New("angles don't serve")
	// ErrHidden: the set-up doesn't show this number of lobes.
	ErrHidden = errors.New("lobes that this set-up doesn't show")
)

// An Error says what is wrong with readings, and with which of them.
type Error struct {
	What  string // "circle", "line", "plane", "cylinder", "profile", "harmonics", "V-block", …
	Index int    // the reading or place, from 0; −1 where the whole is meant
	Value string // the value, at most 64 bytes; may be empty
	Kind  error  // ErrTooFew, ErrCollinear, …
	Want  string // what was expected, in words
}

// Error reads form: what, which reading, its value: what is wrong; what was
// expected.
func (e *Error) Error() string {
	s := "form: " + e.What
	if e.Index >= 0 {
		s += ", reading " + strconv.Itoa(e.Index+1)
	}
	if e.Value != "" {
		s += ", " + e.Value
	}
	if e.Kind != nil {
		s += ": " + e.Kind.Error()
	}
	if e.Want != "" {
		s += "; expected " + e.Want
	}
	return s
}

// Unwrap gives the kind.
func (e *Error) Unwrap() error { return e.Kind }

// fault is an error of the whole set.
func fault(what string, kind error, want string) error {
	return &Error{What: what, Index: -1, Kind: kind, Want: want}
}

func tooFew(what string, got, want int) error {
	return &Error{What: what, Index: -1, Value: "got " + strconv.Itoa(got), Kind: ErrTooFew, Want: "at least " + strconv.Itoa(want)}
}

func notFinite(what string, index int, v float64) error {
	return &Error{What: what, Index: index, Value: strconv.FormatFloat(v, 'g', -1, 64), Kind: ErrNotFinite,
		Want: "finite values of at most 1e150"}
}

func outOfRange(what string, index int) error {
	return &Error{What: what, Index: index, Kind: ErrRange, Want: "lengths that were not calculated beyond the range"}
}
