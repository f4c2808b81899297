// Package calc holds the small calculators of the bench page: texts in, texts
// and a picture out, so that they are tested without a browser and the page has
// no arithmetic of its own.
package calc

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Field is one thing to fill in.
type Field struct {
	Name    string   `json:"name"`
	Label   string   `json:"label"`
	Hint    string   `json:"hint"`
	Value   string   `json:"value"`             // the invented example
	Choices []string `json:"choices,omitempty"` // where it is one of these
}

// A Calculator answers one question.
type Calculator struct {
	Name     string  `json:"name"` // letters only: it is an id
	Title    string  `json:"title"`
	Question string  `json:"question"`
	Caution  string  `json:"caution"`
	Fields   []Field `json:"fields"`
	work     func(*form) (Answer, error)
}

// An Answer is what a calculator says. Of a refused field it has the name and
// the reason, and nothing else.
type Answer struct {
	Says    string   `json:"says"`              // the verdict, in a line
	Lines   []string `json:"lines,omitempty"`   // what it rests on
	Picture string   `json:"picture,omitempty"` // SVG
	Field   string   `json:"field,omitempty"`   // that was refused
	Error   string   `json:"error,omitempty"`   // why
}

// All are the calculators, in the order of the page.
func All() []Calculator { return []Calculator{blades(), ringGap(), oversize(), shim()} }

// Work answers with what the fields hold; one that is missing holds its
// example.
func (c Calculator) Work(values map[string]string) Answer {
	f := &form{values: map[string]string{}}
	for _, field := range c.Fields {
		v, ok := values[field.Name]
		if !ok {
			v = field.Value
		}
		f.values[field.Name] = v
	}
	a, err := c.work(f)
	if f.err != nil {
		err = f.err
	}
	if err != nil {
		refused := Answer{Error: err.Error()}
		if one := (*fieldError)(nil); errors.As(err, &one) {
			refused.Field = one.field
		}
		return refused
	}
	return a
}

// WorkNamed is Work of the calculator with that name.
func WorkNamed(name string, values map[string]string) Answer {
	for _, c := range All() {
		if c.Name == name {
			return c.Work(values)
		}
	}
	return Answer{Error: fmt.Sprintf("no calculator is called %.64q", name)}
}

// A fieldError says which field was refused.
type fieldError struct {
	field string
	err   error
}

func (e *fieldError) Error() string { return e.err.Error() }
func (e *fieldError) Unwrap() error { return e.err }

// A form reads fields; after the first that is refused it reads nothing.
type form struct {
	values map[string]string
	err    error
}

func (f *form) refuse(field string, err error) {
	if f.err == nil {
		f.err = &fieldError{field, err}
	}
}

func (f *form) text(field string) string { return f.values[field] }

// read reads a field; an empty one is refused.
func read[T any](f *form, field string, parse func(string) (T, error)) (v T) {
	text := f.values[field]
	v, err := parse(text)
	if err != nil {
		f.refuse(field, err)
	}
	return v
}

// maybe reads a field that may be left empty.
func maybe[T any](f *form, field string, parse func(string) (T, error)) (v T) {
	if f.values[field] == "" {
		return v
	}
	return read(f, field, parse)
}

func (f *form) length(field string) units.Length { return read(f, field, units.ParseLength) }

// size is a length above nought.
func (f *form) size(field string) units.Length {
	l := f.length(field)
	if f.err == nil && l <= 0 {
		f.refuse(field, fmt.Errorf("%v is not above 0 mm", l))
	}
	return l
}

func (f *form) bracket(field string) tolerance.Bracket {
	return read(f, field, tolerance.ParseBracket)
}
