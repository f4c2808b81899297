package piston

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
//	engine.json:12: skirt.measuringHeight: …
func ReadLimits(name string, data []byte) (Limits, error) {
	return readDocument(name, data, (*Limits).Validate)
}

// ReadReadings reads a document of readings, as strictly as [ReadLimits] does.
// A reading that is not there is no error, it is still to be taken; two pistons
// of one number are one.
func ReadReadings(name string, data []byte) (Readings, error) {
	return readDocument(name, data, (*Readings).Validate)
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
		errors.As(err, &at) // all of them are
		return none, document.At(name, data, at.Path, at.Err)
	}
	return d, nil
}

// Blank is a document of readings for these limits with nothing read: every
// place that asks for a reading is there, and empty.
func (l *Limits) Blank() Readings {
	r := Readings{Schema: inspectSchema, Pistons: make([]ReadingsPiston, 0, max(0, l.Pistons))}
	for i := range min(l.Pistons, mostPistons) {
		p := ReadingsPiston{Piston: i + 1}
		if l.Skirt != nil {
			p.Skirt = make([]ReadingsSkirt, len(l.Skirt.Heights))
			if !l.Skirt.Pulled.IsZero() {
				p.Pulls = make([][]PullTrial, l.Skirt.pulls())
			}
		}
		for k := range l.Rings {
			ring := ReadingsRing{}
			if !l.Rings[k].Side.IsZero() {
				ring.Side = make([]ReadingsSide, l.Rings[k].sides())
			}
			p.Rings = append(p.Rings, ring)
		}
		if l.Pins != nil {
			for k, into := range [pinLists]*[][]inspection.Reading{&p.Pin.AtBosses, &p.Pin.AtSmallEnd, &p.Pin.Bosses, &p.Pin.SmallEnd} {
				for range l.Pins.list(k) {
					*into = append(*into, make([]inspection.Reading, l.Pins.directions()))
				}
			}
		}
		r.Pistons = append(r.Pistons, p)
		if skirt, travel := l.boresFor(); skirt || travel {
			b := ReadingsBore{Cylinder: i + 1}
			if skirt {
				b.Skirt = make([]inspection.Reading, boreReadings)
			}
			r.Bores = append(r.Bores, b)
		}
	}
	return r
}

// boresFor tells what of the bores the limits need: where the skirt runs, for
// its clearance, and at both ends of the rings' travel, for the end gap where
// it isn't read.
func (l *Limits) boresFor() (skirt, travel bool) {
	for k := range l.Rings {
		if top, bottom := l.Rings[k].gapsAt(); top != bottom {
			travel = true
		}
	}
	return l.Skirt != nil && !l.Skirt.Clearance.IsZero(), travel
}

// boreReadings is how many diameters a blank document has for a bore where the
// skirt runs: along and across the crankshaft.
const boreReadings = 2

// pulls is at how many places a strip is pulled.
func (l *LimitsSkirt) pulls() int { return max(1, len(l.PullAt)) }
