package document

import (
	"errors"
	"strings"
)

// At places an error that only the values of a decoded document can tell, such
// as two cylinders with one number: it gives the path's line and column. Where
// nothing stands at the path, as where something is missing, they are those of
// the nearest value around it. It is nil where err is; an error that is an
// *Error already is left as it is.
func At(name string, data []byte, path string, err error) error {
	if err == nil {
		return nil
	}
	if placed := (*Error)(nil); errors.As(err, &placed) {
		return err
	}
	e := &Error{Name: name, Line: 1, Column: 1, Path: path, Cause: err}
	for around := path; ; {
		if at, ok := Locate(data, around); ok {
			e.Line, e.Column = at.Line, at.Column
			return e
		}
		if around == "" {
			return e
		}
		around = around[:max(strings.LastIndexAny(around, ".["), 0)]
	}
}
