package valvetrain

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ErrInput is the kind of every [InputError], for errors.Is.
var ErrInput = errors.New("valvetrain: a reading that can't be")

// An InputError names a reading or a size that can't be, and what was expected
// of it.
type InputError struct {
	Field string // what was read or set: "stem diameter"
	Value string // what it was: "-6.98 mm"; of a text at most 64 bytes are quoted
	Want  string // what it should be: "above 0 mm"
}

// Error says what is wrong, and what was expected.
func (e *InputError) Error() string {
	return fmt.Sprintf("valvetrain: %s %s is not %s", e.Field, e.Value, e.Want)
}

// Unwrap gives [ErrInput].
func (e *InputError) Unwrap() error { return ErrInput }

// inputLargest is more than any part here measures, and keeps sums of readings
// from wrapping.
const inputLargest = 10 * units.Metre

// inputSize refuses a size that no part has.
func inputSize(field string, d units.Length) error {
	if d <= 0 || d > inputLargest {
		return &InputError{field, d.String(), "above 0 mm and at most 10 m"}
	}
	return nil
}

// inputAllowance refuses what is no clearance, no wear, no cut.
func inputAllowance(field string, d units.Length) error {
	if d < 0 || d > inputLargest {
		return &InputError{field, d.String(), "0 mm or more, and at most 10 m"}
	}
	return nil
}

// inputBracket refuses a bracket whose ends are not both there, or not between
// least and 10 m.
func inputBracket(field string, i tolerance.Bracket, least units.Length) error {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	switch {
	case !i.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
		return &InputError{field, i.String(), "measured, with a least and a greatest"}
	case lo < least || hi > inputLargest:
		return &InputError{field, i.String(), "from " + least.String() + " to 10 m"}
	}
	return nil
}

// inputEnds are the ends of a bracket that has both.
func inputEnds(i tolerance.Bracket) (lo, hi units.Length) {
	lo, _ = i.Lower()
	hi, _ = i.Upper()
	return lo, hi
}

// inputSpan is the bracket from lo to hi, both included; out of range where they
// are, or are the wrong way round.
func inputSpan[Q units.Quantity](lo, hi Q) tolerance.Interval[Q] {
	i, err := tolerance.NewInterval(lo, tolerance.Closed, hi, tolerance.Closed)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[Q]())
	}
	return i
}

// inputAtMostMore is i, or up to the greatest of more above it.
func inputAtMostMore(i, more tolerance.Bracket) tolerance.Bracket {
	_, hi := inputEnds(more)
	if !more.InRange() {
		return more
	}
	return i.Add(inputSpan(0, hi))
}

// inputAngle refuses a measured angle that isn't of a cone; the zero interval is
// one that wasn't measured.
func inputAngle(field string, a tolerance.Interval[units.Angle]) error {
	if a.IsZero() {
		return nil
	}
	lo, loEnd := a.Lower()
	hi, hiEnd := a.Upper()
	if !a.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo <= 0 || hi >= units.Turn/4 {
		return &InputError{field, a.String(), "between 0° and 90°, from the plane square to the stem"}
	}
	return nil
}

// inputAssess is tolerance.Assess with this package's error.
func inputAssess[Q units.Quantity](measure, where string, spec tolerance.SpecOf[Q], readings ...tolerance.Interval[Q]) (tolerance.FindingOf[Q], error) {
	f, err := tolerance.Assess(measure, where, spec, readings...)
	if err != nil {
		return f, &InputError{"limits of the " + measure, err.Error(), "limits to judge by"}
	}
	return f, nil
}

// inputWord reads one of a type's names.
func inputWord[T ~uint8](field string, names []string, text []byte, into *T) error {
	if want, ok := words.Read(names, text, into); !ok {
		return &InputError{field, strconv.Quote(inputText(string(text))), want}
	}
	return nil
}

// firstError asks one check after another, and stops at the first error.
func firstError(checks ...func() error) error {
	for _, check := range checks {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

// inputText cuts a text of the caller's to 64 bytes, whole characters only.
func inputText(s string) string {
	const most = 64
	if len(s) <= most {
		return s
	}
	n := most
	for n > 0 && s[n]&0xC0 == 0x80 {
		n--
	}
	return s[:n] + "…"
}
