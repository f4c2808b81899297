package cylinder

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ErrInput is the kind of every [InputError], for errors.Is.
var ErrInput = errors.New("cylinder: a reading that can't be")

// An InputError names a reading or a size that can't be, and what was expected
// of it.
type InputError struct {
	Field string // "gasket thickness"
	Value string // "-1.2 mm"
	Want  string // "above 0 mm"
}

// Error says what is wrong, and what was expected.
func (e *InputError) Error() string {
	return fmt.Sprintf("cylinder: %s %s is not %s", e.Field, e.Value, e.Want)
}

// Unwrap gives [ErrInput].
func (e *InputError) Unwrap() error { return ErrInput }

// largest is more than any bore measures, and keeps sums of readings from
// wrapping.
const largest = 10 * units.Metre

// boreSize refuses a size that no bore has.
func boreSize(field string, d units.Length) error {
	if d <= 0 || d > largest {
		return &InputError{field, d.String(), "above 0 mm and at most 10 m"}
	}
	return nil
}

// boreAllowance refuses what is no allowance on a bore: a cut, a hone, a
// clearance.
func boreAllowance(field string, d units.Length) error {
	if d < 0 || d > largest {
		return &InputError{field, d.String(), "0 mm or more, and at most 10 m"}
	}
	return nil
}

// boreBracket refuses a bracket whose ends are not both there and within
// bounds.
func boreBracket(field string, i tolerance.Bracket, least units.Length) error {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	switch {
	case !i.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
		return &InputError{field, i.String(), "measured, with a least and a greatest"}
	case lo < least || hi > largest:
		return &InputError{field, i.String(), "from " + least.String() + " to 10 m"}
	}
	return nil
}

// clip cuts a text of the caller's to 64 bytes, whole characters only.
func clip(s string) string {
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

// wordOf names the value i; one that has no name is read as the zero value.
func wordOf[T ~uint8](names []string, i T) string {
	if int(i) >= len(names) {
		i = 0
	}
	return names[i]
}

// readWord reads what wordOf gives.
func readWord[T ~uint8](field string, names []string, text []byte, into *T) error {
	i := slices.Index(names, string(text))
	if i < 0 {
		quoted := make([]string, len(names))
		for k, n := range names {
			quoted[k] = strconv.Quote(n)
		}
		return &InputError{field, strconv.Quote(clip(string(text))), "one of " + strings.Join(quoted, ", ")}
	}
	*into = T(i)
	return nil
}
