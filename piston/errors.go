package piston

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ErrInput is the kind of every [InputError], for errors.Is.
var ErrInput = errors.New("piston: a reading that can't be")

// An InputError names a reading that can't be, and what was expected of it.
type InputError struct {
	Field string // "ring height"
	Value string // "1.52 mm"
	Want  string // "below groove width 1.5 mm"
}

func (e *InputError) Error() string {
	return fmt.Sprintf("piston: %s %s is not %s", e.Field, e.Value, e.Want)
}

// Unwrap gives [ErrInput].
func (e *InputError) Unwrap() error { return ErrInput }

// size refuses a size that is not above zero.
func size(field string, i tolerance.Bracket) error {
	if !i.InRange() {
		return &InputError{field, i.String(), "within the range of a length"}
	}
	if lo, end := i.Lower(); end == tolerance.Absent || lo < 0 || lo == 0 && end == tolerance.Closed {
		return &InputError{field, i.String(), "above 0 mm"}
	}
	return nil
}

// MeasureSideClearance is [SideClearance] from micrometer readings, checked:
// neither size may be zero or less, and the groove must be wider than the
// ring. The brackets hold each instrument's error.
func MeasureSideClearance(grooveWidth, ringHeight tolerance.Bracket) (tolerance.Bracket, error) {
	if err := size("groove width", grooveWidth); err != nil {
		return tolerance.Bracket{}, err
	}
	if err := size("ring height", ringHeight); err != nil {
		return tolerance.Bracket{}, err
	}
	c := SideClearance(grooveWidth, ringHeight)
	if hi, end := c.Upper(); end != tolerance.Absent && hi <= 0 {
		return tolerance.Bracket{}, &InputError{"ring height", ringHeight.String(), "below groove width " + grooveWidth.String()}
	}
	// A ring that goes in has a clearance of nothing at the least.
	if lo, end := c.Lower(); end != tolerance.Absent && lo < 0 {
		hi, hiEnd := c.Upper()
		c, _ = tolerance.NewInterval(units.Length(0), tolerance.Closed, hi, hiEnd)
	}
	return c, nil
}
