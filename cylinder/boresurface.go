package cylinder

import "errors"

// BoreSurface is what a bore's wall is made of, as far as it may be bored. The
// zero value is SurfaceNotStated.
type BoreSurface uint8

// The surfaces.
const (
	SurfaceNotStated BoreSurface = iota
	PlainIron                    // iron or steel, of the block or of a liner: bored and honed
	PlatedBore                   // chromium or nickel with silicon carbide
	CoatedBore                   // sprayed
	BareAlloy                    // silicon aluminium without a liner
)

var surfaceNames = []string{"not stated", "plain iron", "plated", "coated", "bare alloy"}

// String is the surface in words.
func (s BoreSurface) String() string { return wordOf(surfaceNames, s) }

// MarshalText writes what String gives.
func (s BoreSurface) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *BoreSurface) UnmarshalText(text []byte) error {
	return readWord("bore surface", surfaceNames, text, s)
}

// ErrProcess is the kind of a [ProcessError], for errors.Is.
var ErrProcess = errors.New("cylinder: a bore that isn't rebored")

// A ProcessError refuses a bore whose surface is not one that is bored and
// honed as iron is, unless the maker's process for it is named.
type ProcessError struct {
	Where   string      // the bore
	Surface BoreSurface // what its wall is made of
}

// Error says what is wrong, and what was expected.
func (e *ProcessError) Error() string {
	where := e.Where
	if where != "" {
		where += ": "
	}
	return "cylinder: " + where + "a " + e.Surface.String() + " bore is not rebored without the maker's own process for it, which is not given"
}

// Unwrap gives [ErrProcess].
func (e *ProcessError) Unwrap() error { return ErrProcess }
