package inspection

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/tenthou/tenthou/internal/words"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrInput: a value that can't be.
	ErrInput = errors.New("inspection: a value that can't be")
	// ErrMixUp: a part was found in another one's place.
	ErrMixUp = errors.New("inspection: matched parts mixed up")
	// ErrMissing: a reading that was asked for is not there.
	ErrMissing = errors.New("inspection: a reading is missing")
)

// An InputError names a value that can't be, and what was expected.
type InputError struct {
	Field string // "action"
	Value string // as given, cut at 64 bytes
	Want  string // in words
}

// Error says it in a line.
func (e *InputError) Error() string {
	return "inspection: " + e.Field + " " + e.Value + " is not " + e.Want
}

// Unwrap gives [ErrInput].
func (e *InputError) Unwrap() error { return ErrInput }

// A PathError says where in a document another error lies.
type PathError struct {
	Path string // "cylinders[2].levels[4].across"
	Err  error  // what is wrong there
}

// Error begins with the path.
func (e *PathError) Error() string { return e.Path + ": " + e.Err.Error() }

// Unwrap gives the error at the place.
func (e *PathError) Unwrap() error { return e.Err }

// At is an error with its path in a document; nil where err is. Paths join
// from the inside out.
func At(path string, err error) error {
	if err == nil {
		return nil
	}
	var inner *PathError
	if errors.As(err, &inner) && inner == err { //nolint:errorlint // only the outermost joins
		if len(inner.Path) > 0 && inner.Path[0] != '[' {
			path += "."
		}
		return &PathError{path + inner.Path, inner.Err}
	}
	return &PathError{path, err}
}

// Index is the path of the i-th element of a list.
func Index(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// A MixUpError says that a part that has its own place was found in another's:
// a cap on another housing, a rod with another rod's cap, a piston for another
// bore or the wrong way round.
type MixUpError struct {
	Part  string // "cap"
	Place string // where it was found: "main 2"
	Mark  string // the mark on it: "3"
	Want  string // the mark that belongs there: "2"
}

// Error says it in a line.
func (e *MixUpError) Error() string {
	return fmt.Sprintf("inspection: the %s marked %.64q stands at %.64s, where %.64q belongs: matched parts keep their place", e.Part, e.Mark, e.Place, e.Want)
}

// Unwrap gives [ErrMixUp].
func (e *MixUpError) Unwrap() error { return ErrMixUp }

// Matched is a MixUpError where a part's mark isn't the one that belongs to
// its place. An empty mark was not read, and is no mix-up.
func Matched(part, place, mark, want string) error {
	if mark == "" || mark == want {
		return nil
	}
	return &MixUpError{Part: part, Place: place, Mark: mark, Want: want}
}

// A MissingError names the first reading that is missing from a document that
// must be whole.
type MissingError struct {
	Missing
	More int // how many more are missing
}

// Error names the reading and its path.
func (e *MissingError) Error() string {
	s := fmt.Sprintf("inspection: %s: %s, %s was not read", e.Path, e.Measure, e.Where)
	if e.More > 0 {
		s += fmt.Sprintf(", nor %d more", e.More)
	}
	return s
}

// Unwrap gives [ErrMissing].
func (e *MissingError) Unwrap() error { return ErrMissing }

// read reads one of a type's names.
func read[T ~uint8](field string, names []string, text []byte, into *T) error {
	if want, ok := words.Read(names, text, into); !ok {
		return &InputError{field, quote(string(text)), want}
	}
	return nil
}

// quote is a text in quotes, cut at 64 bytes.
func quote(s string) string { return fmt.Sprintf("%.64q", s) }
