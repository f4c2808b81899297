package cylinder

import (
	"errors"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// inspectSchema is the schema number of both documents.
const inspectSchema = 1

// ReadLimits reads a document of limits, strictly: an unknown field, one that
// is written twice, a length without its unit, a document cut short and limits
// that can't be are errors, with the name, the line and the path of the place:
//
//	engine.json:12: bores.standard: …
func ReadLimits(name string, data []byte) (Limits, error) {
	return readDocument[Limits](name, data, (*Limits).Validate)
}

// ReadReadings reads a document of readings, as strictly as [ReadLimits] does.
// A reading that is not there is no error, it is still to be taken; two parts
// of one number are one.
func ReadReadings(name string, data []byte) (Readings, error) {
	return readDocument[Readings](name, data, (*Readings).Validate)
}

func readDocument[D any](name string, data []byte, validate func(*D) error) (d D, err error) {
	if _, err = document.SchemaNamed(name, data, inspectSchema); err != nil {
		return d, err
	}
	if err = document.DecodeNamed(name, data, &d); err != nil {
		return d, err
	}
	if err = validate(&d); err != nil {
		var none D
		var at *inspection.PathError
		if errors.As(err, &at) {
			return none, document.At(name, data, at.Path, at.Err)
		}
		return none, document.At(name, data, "", err)
	}
	return d, nil
}
