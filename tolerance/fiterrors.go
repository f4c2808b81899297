package tolerance

import "errors"

// ErrNoRoom is the kind of a [NoRoomError]: tolerances that are given already take more than is wanted.
var ErrNoRoom = errors.New("no room")

// A FitError names what is wrong with a hole, a shaft or their fit.
type FitError struct {
	Part string // "hole", "shaft", "clearance", "wanted clearance"
	Kind error  // ErrNoLimit, ErrNoReading or ErrRange
	Want string // what was expected, in words
}

func (e *FitError) Error() string {
	return "tolerance: fit: " + e.Part + ": " + e.Kind.Error() + "; " + e.Want
}

// Unwrap gives the kind.
func (e *FitError) Unwrap() error { return e.Kind }

// A NoRoomError says that no band whatever would do, and by how much: what is
// given spreads over Takes, and only Wanted is allowed. All three are widths.
type NoRoomError struct {
	What   string // what was asked for: "hole", "shaft", or a link
	Takes  string
	Wanted string
	Short  string // Takes less Wanted, rounded up to the quantum; empty where it is less than a quantum that is left
}

func (e *NoRoomError) Error() string {
	s := "tolerance: " + e.What + ": no room: the others take "
	switch {
	case e.Short == "":
		return s + e.Takes + " of the " + e.Wanted + " wanted and leave less than a quantum"
	case e.Takes == e.Wanted:
		return s + "all of the " + e.Wanted + " wanted"
	}
	return s + e.Takes + " of the " + e.Wanted + " wanted, " + e.Short + " too much"
}

// Unwrap gives [ErrNoRoom].
func (e *NoRoomError) Unwrap() error { return ErrNoRoom }
