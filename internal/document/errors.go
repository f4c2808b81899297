package document

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The kinds of refusal, for errors.Is.
var (
	ErrEmpty     = errors.New("empty document")
	ErrTruncated = errors.New("document cut short")
	ErrSyntax    = errors.New("not JSON")
	ErrTrailing  = errors.New("data after the document")
	ErrEncoding  = errors.New("not valid Unicode") // bad UTF-8, or half a surrogate pair
	ErrUnknown   = errors.New("unknown field")
	ErrCase      = errors.New("field name in the wrong case")
	ErrDuplicate = errors.New("field given twice")
	ErrMissing   = errors.New("missing field")
	ErrType      = errors.New("wrong type")
	ErrCount     = errors.New("wrong number of elements")
	ErrRange     = errors.New("number out of range")
	ErrNotFinite = errors.New("not a finite number")
	ErrValue     = errors.New("value refused") // by the type's own UnmarshalText, which is the cause
	ErrDepth     = errors.New("nested too deeply")
	ErrSize      = errors.New("document too large")
	ErrSchema    = errors.New("unknown schema number")
	ErrTarget    = errors.New("cannot decode into this Go type") // a slip of the program, not of the document
)

// An Error says what was refused, where, and what was expected instead.
type Error struct {
	Name   string // the document's name, usually its file; may be empty
	Line   int    // from 1; 0 when the input was not looked at
	Column int    // in characters, from 1
	Path   string // such as cylinders[2].levels[4].across; empty for the whole document
	Kind   error  // one of the sentinels; nil where At placed the error of what reads the values
	Found  string // in words; quotes at most 64 bytes
	Want   string // in words; for ErrUnknown the nearest known name, if any is near
	Cause  error  // the error of the type's own UnmarshalText, or At's; nil for other kinds
}

// Error gives one line: name:line: path: what is wrong.
func (e *Error) Error() string {
	var b strings.Builder
	switch {
	case e.Name != "" && e.Line > 0:
		b.WriteString(e.Name + ":" + strconv.Itoa(e.Line) + ": ")
	case e.Name != "":
		b.WriteString(e.Name + ": ")
	case e.Line > 0:
		b.WriteString("document: line " + strconv.Itoa(e.Line) + ": ")
	default:
		b.WriteString("document: ")
	}
	if e.Path != "" {
		b.WriteString(e.Path + ": ")
	}
	cause := ""
	if e.Cause != nil {
		cause = e.Cause.Error()
	}
	switch {
	case e.Kind == nil && cause != "": // At's: the cause says all
		b.WriteString(cause)
		return b.String()
	case e.Kind == nil:
		b.WriteString("refused")
	case e.Kind == ErrValue && e.Found != "" && strings.Contains(cause, e.Found):
		// The cause quotes the value itself: once is enough.
		b.WriteString(cause)
		return b.String()
	default:
		b.WriteString(e.Kind.Error())
	}
	switch {
	case e.Kind == ErrUnknown && e.Want != "":
		b.WriteString("; " + e.Want)
	case e.Found != "" && e.Want != "":
		b.WriteString(": found " + e.Found + ", want " + e.Want)
	case e.Found != "":
		b.WriteString(": found " + e.Found)
	case e.Want != "":
		b.WriteString(": want " + e.Want)
	}
	if cause != "" {
		b.WriteString(": " + cause)
	}
	return b.String()
}

// Is reports whether target is the error's kind.
func (e *Error) Is(target error) bool { return e.Kind != nil && target == e.Kind }

// Unwrap returns the cause, nil where there is none.
func (e *Error) Unwrap() error { return e.Cause }

// A fault is an error on its way up: each level it passes puts its own step
// in front of the path, and line and column are worked out at the top, so
// that a document without errors pays for neither.
type fault struct {
	Error
	at int // offset in the input
}

func (f *fault) in(step string) *fault {
	f.Path = step + f.Path
	return f
}

func (f *fault) inElement(i int) *fault { return f.in("[" + strconv.Itoa(i) + "]") }

// report places a fault in the named document.
func (f *fault) report(name string, data []byte) *Error {
	f.Name = name
	f.Path = strings.TrimPrefix(f.Path, ".")
	f.Line, f.Column = position(data, f.at)
	return &f.Error
}

// step is the path's step into a field or map entry: .name, or ["a name"] where
// the name is not a plain word.
func step(name string) string {
	if name == "" || len(name) > quoted {
		return "[" + quote(name) + "]"
	}
	for _, r := range name {
		if r != '_' && r != '-' && (r < '0' || r > '9') && (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') {
			return "[" + quote(name) + "]"
		}
	}
	return "." + name
}

// position gives line and column, in characters, of an offset.
func position(data []byte, at int) (line, column int) {
	start := 0
	line = 1
	for i, c := range data[:at] {
		if c == '\n' {
			line, start = line+1, i+1
		}
	}
	return line, utf8.RuneCount(data[start:at]) + 1
}

const quoted = 64 // bytes of input in any one quotation

// quote quotes a piece of input, cut at 64 bytes between characters.
func quote[T string | []byte](s T) string {
	text, cut := clip(s)
	q := strconv.Quote(text)
	if cut {
		q += "…"
	}
	return q
}

// clip cuts a piece of input at 64 bytes between characters.
func clip[T string | []byte](s T) (text string, cut bool) {
	if len(s) <= quoted {
		return string(s), false
	}
	end := quoted
	for end > quoted-utf8.UTFMax && !utf8.RuneStart(s[end]) {
		end--
	}
	return string(s[:end]), true
}
