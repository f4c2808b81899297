package piston

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// What a document may ask for at the most.
const (
	mostPistons = 64
	mostRings   = 8  // on one piston
	mostPlaces  = 16 // heights, places, sections, directions, kits
	mostName    = 64 // bytes of a name
)

// badAt is an input error with its path.
func badAt(path, field, value, want string) error {
	return inspection.At(path, &InputError{clipWords(field), value, want})
}

// Validate refuses limits that can't be. Its errors are [inspection.PathError]s.
// What looks like a slip is none: it is listed in the report, before what rests
// on it.
func (l *Limits) Validate() error {
	if l.Schema != inspectSchema {
		return badAt("schema", "schema", strconv.Itoa(l.Schema), strconv.Itoa(inspectSchema))
	}
	if l.Pistons < 1 || l.Pistons > mostPistons {
		return badAt("pistons", "pistons", strconv.Itoa(l.Pistons), "from 1 to 64")
	}
	if len(l.Arrow) > mostName {
		return badAt("arrow", "arrow", clip([]byte(l.Arrow)), "64 bytes at the most")
	}
	if err := l.checkKits(); err != nil {
		return err
	}
	if _, err := l.bladeSet(); err != nil {
		return err
	}
	if l.Skirt != nil {
		if err := l.Skirt.check(); err != nil {
			return inspection.At("skirt", err)
		}
	}
	if len(l.Rings) > mostRings {
		return badAt("rings", "rings", strconv.Itoa(len(l.Rings)), "8 on a piston at the most")
	}
	if err := named("rings", len(l.Rings), func(i int) string { return l.Rings[i].Name }, ".name"); err != nil {
		return err
	}
	for i := range l.Rings {
		if err := l.Rings[i].check(); err != nil {
			return inspection.At(inspection.Index("rings", i), err)
		}
	}
	if l.Pins != nil {
		if err := l.Pins.check(); err != nil {
			return inspection.At("pins", err)
		}
	}
	if m := l.Mass; m != nil {
		if err := limitWithin("mass.spread", m.Spread, 0, units.Mass(mostMass)); err != nil {
			return err
		}
		if m.Error < 0 || m.Error > mostMass || m.MostOff < 0 || m.MostOff > mostMass {
			return badAt("mass", "error or the most to take off", m.Error.String()+", "+m.MostOff.String(), "0 g or more")
		}
	}
	if l.Protrusion != nil {
		return inspection.At("protrusion", l.Protrusion.check())
	}
	return nil
}

const mostMass = 1000 * units.Kilogram

func (l *Limits) checkKits() error {
	if l.Standard != 0 || len(l.Kits) > 0 {
		if l.Standard <= 0 || l.Standard > ringMost {
			return badAt("standardBore", "standard bore", l.Standard.String(), "above 0 mm and at most 10 m")
		}
	}
	if len(l.Kits) > mostPlaces {
		return badAt("kits", "kits", strconv.Itoa(len(l.Kits)), "16 at the most")
	}
	if err := named("kits", len(l.Kits), func(i int) string { return l.Kits[i].Name }, ".name"); err != nil {
		return err
	}
	for i, k := range l.Kits {
		path := inspection.Index("kits", i)
		if k.Oversize < 0 || k.Oversize > l.Standard/10 {
			return badAt(path+".oversize", "oversize", k.Oversize.String(), "0 mm or more, and a small part of the bore")
		}
		if err := sizeBand(path+".skirt", "skirt", k.Skirt); err != nil {
			return err
		}
	}
	return nil
}

// bladeSet is the set of blades that the limits name; the zero set where they
// name none.
func (l *Limits) bladeSet() (feeler.Set, error) {
	if len(l.OwnBlades) > 0 {
		set, err := feeler.NewSet("own blades", "the limits", l.OwnBlades...)
		return set, inspection.At("ownBlades", err)
	}
	if l.Blades == "" {
		return feeler.Set{}, nil
	}
	var names strings.Builder
	for _, set := range feeler.StandardSets() {
		if set.Name() == l.Blades {
			return set, nil
		}
		names.WriteString(", " + set.Name())
	}
	return feeler.Set{}, badAt("blades", "blades", clip([]byte(l.Blades)), "one of"+names.String()[1:]+", or ownBlades")
}

// named refuses a list of which two have one name, or one has none.
func named(list string, n int, name func(int) string, field string) error {
	for i := range n {
		if len(name(i)) == 0 || len(name(i)) > mostName {
			return badAt(inspection.Index(list, i)+field, "name", clip([]byte(name(i))), "a name of 1 to 64 bytes")
		}
		for j := range i {
			if name(j) == name(i) {
				return badAt(inspection.Index(list, i)+field, "name", clip([]byte(name(i))), "another than that of "+inspection.Index(list, j))
			}
		}
	}
	return nil
}

// places refuses a list of places that can't be.
func places(list string, names []string) error {
	if len(names) > mostPlaces {
		return badAt(list, "places", strconv.Itoa(len(names)), "16 at the most")
	}
	return named(list, len(names), func(i int) string { return names[i] }, "")
}

// limitWithin refuses a limit beyond what can be.
func limitWithin[Q units.Quantity](path string, l inspection.LimitOf[Q], least, most Q) error {
	for _, p := range [...]struct {
		field string
		band  tolerance.PrintedOf[Q]
	}{{"new", l.New}, {"newAlso", l.NewAlso}, {"wear", l.Wear}, {"wearAlso", l.WearAlso}} {
		lo, loEnd := p.band.Lower()
		hi, hiEnd := p.band.Upper()
		if !p.band.InRange() || loEnd != tolerance.Absent && (lo < least || lo > most) || hiEnd != tolerance.Absent && (hi < least || hi > most) {
			return badAt(path+"."+p.field, "limit", p.band.String(), "within what can be measured")
		}
	}
	return nil
}

// sizeBand refuses a band of sizes that isn't from one above zero to another;
// the zero band is none.
func sizeBand(path, field string, b tolerance.Band) error {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	if !b.IsZero() && (!b.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo <= 0 || hi > ringMost) {
		return badAt(path, field, b.String(), "from a least above 0 mm to a greatest")
	}
	return nil
}

func notNegativeAt(path string, x units.Length) error {
	if x < 0 || x > ringMost {
		return badAt(path, path, x.String(), "0 mm or more, and at most 10 m")
	}
	return nil
}

func (l *LimitsSkirt) check() error {
	if len(l.Heights) == 0 || len(l.Heights) > mostPlaces {
		return badAt("heights", "heights", strconv.Itoa(len(l.Heights)), "from 1 to 16")
	}
	found := false
	for i, h := range l.Heights {
		if h < -ringMost || h > ringMost || i > 0 && h <= l.Heights[i-1] {
			return badAt(inspection.Index("heights", i), "height", h.String(), "above the one before it: from the skirt's lower edge up")
		}
		found = found || h == l.MeasuringHeight
	}
	if !found {
		return badAt("measuringHeight", "measuring height", l.MeasuringHeight.String(), "one of the heights")
	}
	if len(l.New) != 0 && len(l.New) != len(l.Heights) {
		return badAt("new", "sizes when new", strconv.Itoa(len(l.New)), "one for each height, or none")
	}
	for i, b := range l.New {
		if err := sizeBand(inspection.Index("new", i), "size when new", b); err != nil {
			return err
		}
	}
	for m, limit := range l.limits() {
		least := -ringMost
		if m == int(SkirtMeasureSize) {
			least = 0
		}
		if err := limitWithin(skirtPaths[m], *limit, least, ringMost); err != nil {
			return err
		}
	}
	if l.PullRule != nil {
		if err := l.PullRule.check(); err != nil {
			return inspection.At("pullRule", err)
		}
	} else if !l.Pulled.IsZero() {
		return badAt("pullRule", "pull rule", "(none)", "the one that the limits of a pull test are meant for")
	}
	if err := places("pullAt", l.PullAt); err != nil {
		return err
	}
	return notNegativeAt("error", l.Error)
}

func (l *LimitsProtrusion) check() error {
	if len(l.Table) > 0 {
		if err := l.Table.check(); err != nil {
			return inspection.At("table", err)
		}
	}
	if len(l.Table) > mostPistons {
		return badAt("table", "rows", strconv.Itoa(len(l.Table)), "64 at the most")
	}
	for _, x := range [...]struct {
		path  string
		limit *inspection.Limit
	}{{"limit", &l.Limit}, {"tilt", &l.Tilt}, {"clearance", &l.Clearance}} {
		if err := limitWithin(x.path, *x.limit, -ringMost, ringMost); err != nil {
			return err
		}
	}
	return notNegativeAt("error", l.Error)
}
