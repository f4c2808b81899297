package crank

import (
	"errors"
	"strconv"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// inspectSchema is the number of both documents' form.
const inspectSchema = 1

// ReadLimits reads a document of limits, which is JSON. It is strict: an unknown
// field, one given twice, a length without its unit and limits that can't be are
// errors, with the document's name, the line and the path.
func ReadLimits(name string, data []byte) (Limits, error) {
	return readInspect(name, data, (*Limits).Validate)
}

// ReadReadings reads a document of readings, as strictly as [ReadLimits]. What needs
// the limits to be checked, [Inspect] does.
func ReadReadings(name string, data []byte) (Readings, error) {
	return readInspect(name, data, (*Readings).Validate)
}

func readInspect[T any](name string, data []byte, validate func(*T) error) (T, error) {
	var into, none T
	if _, err := document.SchemaNamed(name, data, inspectSchema); err != nil {
		return none, err
	}
	if err := document.DecodeNamed(name, data, &into); err != nil {
		return none, err
	}
	if err := validate(&into); err != nil {
		return none, placed(name, data, err)
	}
	return into, nil
}

// placed gives an error with a path its document and its line.
func placed(name string, data []byte, err error) error {
	var at *inspection.PathError
	if !errors.As(err, &at) {
		return err
	}
	e := &DocumentError{Name: name, Err: at}
	if place, ok := document.Locate(data, at.Path); ok {
		e.Line = place.Line
	}
	return e
}

// A DocumentError says where in a document something that can't be stands, once its
// form is right.
type DocumentError struct {
	Name string // the document's
	Line int    // from 1; 0 where it isn't known
	Err  error  // an inspection.PathError
}

// Error begins with name and line.
func (e *DocumentError) Error() string {
	s := e.Name
	if e.Line > 0 {
		s += ":" + strconv.Itoa(e.Line)
	}
	if s != "" {
		s += ": "
	}
	return s + e.Err.Error()
}

// Unwrap gives the error at the place.
func (e *DocumentError) Unwrap() error { return e.Err }
