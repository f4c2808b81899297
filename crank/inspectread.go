package crank

import (
	"errors"

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
		var at *inspection.PathError
		if errors.As(err, &at) {
			return none, document.At(name, data, at.Path, at.Err)
		}
		return none, document.At(name, data, "", err)
	}
	return into, nil
}
