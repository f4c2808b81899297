package feeler

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/internal/document"
)

const setTextMax = 64 << 10 // bytes

// ParseSet reads a set from text, one blade a line as [ParseBlade] reads it:
//
//	name: my own gauge
//	source: marks, two blades by micrometer
//	# thinnest first is usual, but any order will do
//	.0015 in / 0.038 mm
//	.0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm   # worn
//	0.10 mm ± 0.003 mm
//
// Name and source are optional and given once. A # begins a remark, but not in
// a name or a source. The errors name the line and the field; they are
// [InputError]s, and [DuplicateError]s for one mark on two thicknesses.
func ParseSet(text string) (Set, error) {
	if len(text) > setTextMax || !utf8.ValidString(text) {
		return Set{}, inputError("set", "", text, ErrSize, "at most "+strconv.Itoa(setTextMax)+" bytes of UTF-8", nil)
	}
	r := setReader{}
	n := 0
	for line := range strings.Lines(text) {
		n++
		if err := r.line(strings.TrimSpace(line)); err != nil {
			err.Line = n
			return Set{}, err
		}
	}
	return NewSet(r.name.text, r.source.text, r.blades...)
}

type setReader struct {
	name, source entry
	blades       []Blade
}

// entry is a line that a set has once.
type entry struct {
	text  string
	given bool
}

func (r *setReader) line(s string) *InputError {
	if rest, ok := strings.CutPrefix(s, "name:"); ok {
		return r.name.set("name", rest)
	}
	if rest, ok := strings.CutPrefix(s, "source:"); ok {
		return r.source.set("source", rest)
	}
	s, _, _ = strings.Cut(s, "#")
	if s = strings.TrimSpace(s); s == "" {
		return nil
	}
	if len(r.blades) == MaxBlades {
		return inputError("set", "blades", "", ErrSize, "at most "+strconv.Itoa(MaxBlades), nil)
	}
	b, err := ParseBlade(s)
	if err != nil {
		e := err.(*InputError) // as ParseBlade promises
		e.What = "set"
		return e
	}
	r.blades = append(r.blades, b)
	return nil
}

func (e *entry) set(field, s string) *InputError {
	s = strings.TrimSpace(s)
	if e.given {
		return inputError("set", field, s, ErrSyntax, "it is given once", nil)
	}
	e.text, e.given = s, true
	return checkName(field, s)
}

// Text is the set as [ParseSet] reads it.
func (s Set) Text() string {
	d := s.data()
	var b strings.Builder
	if d.name != "" {
		b.WriteString("name: " + d.name + "\n")
	}
	if d.source != "" {
		b.WriteString("source: " + d.source + "\n")
	}
	for _, blade := range d.blades {
		b.WriteString(blade.String() + "\n")
	}
	return b.String()
}

// setDocument is a set in JSON.
type setDocument struct {
	Schema int     `json:"schema"`
	Name   string  `json:"name,omitempty"`
	Source string  `json:"source,omitempty"`
	Blades []Blade `json:"blades"`
}

const setSchema = 1

// ParseSetJSON reads a set from a JSON document, strictly:
//
//	{
//	  "schema": 1,
//	  "name": "my own gauge",
//	  "source": "marks, one blade by micrometer",
//	  "blades": [".0015 in / 0.038 mm", ".0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm"]
//	}
//
// Name and source are optional. The file's name, which may be empty, begins
// the text of the errors, which give the line and the field.
func ParseSetJSON(file string, data []byte) (Set, error) {
	if _, err := document.SchemaNamed(file, data, setSchema); err != nil {
		return Set{}, err
	}
	var d setDocument
	if err := document.DecodeNamed(file, data, &d); err != nil {
		return Set{}, err
	}
	set, err := NewSet(d.Name, d.Source, d.Blades...)
	if err != nil && file != "" { // a slip of the whole document: its fields are sound
		path := "blades"
		if e := (*InputError)(nil); errors.As(err, &e) && (e.Field == "name" || e.Field == "source") {
			path = e.Field
		}
		where, _ := document.Locate(data, path)
		err = fmt.Errorf("%s:%d: %s: %w", file, where.Line, path, err)
	}
	return set, err
}
