package valvetrain

import (
	"errors"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// ReadLimits reads a document of limits, strictly: an unknown field, one that is
// written twice, a length without its unit, a document cut short and limits that
// can't be are errors, with the name, the line and the path of the place.
func ReadLimits(name string, data []byte) (Limits, error) {
	return readInspected[Limits](name, data, (*Limits).Validate)
}

// ReadReadings reads a document of readings, as strictly as [ReadLimits] does. A
// reading that is not there is no error, it is still to be taken; two parts of
// one place, and a marked part in another's place, are errors.
func ReadReadings(name string, data []byte) (Readings, error) {
	return readInspected[Readings](name, data, (*Readings).Validate)
}

func readInspected[D any](name string, data []byte, validate func(*D) error) (D, error) {
	var d, none D
	if _, err := document.SchemaNamed(name, data, inspectSchema); err != nil {
		return none, err
	}
	if err := document.DecodeNamed(name, data, &d); err != nil {
		return none, err
	}
	if err := validate(&d); err != nil {
		var at *inspection.PathError
		if errors.As(err, &at) {
			return none, document.At(name, data, at.Path, at.Err)
		}
		return none, document.At(name, data, "", err)
	}
	return d, nil
}
