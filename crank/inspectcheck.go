package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// Validate refuses what no reading can be, whatever the limits: a size below zero,
// two parts with one number. Its error is an [inspection.PathError].
func (r *Readings) Validate() error {
	if r.Schema != inspectSchema {
		return inspection.At("schema", &InputError{"schema", strconv.Itoa(r.Schema), "1"})
	}
	numbers := numbersOf[ReadingsJournal](func(s *ReadingsJournal) int { return s.Number })
	if err := numbers("mains", r.Mains); err != nil {
		return err
	}
	if err := numbers("crankpins", r.Crankpins); err != nil {
		return err
	}
	bearings := numbersOf[ReadingsBearing](func(s *ReadingsBearing) int { return s.Number })
	if err := bearings("mainBearings", r.MainBearings); err != nil {
		return err
	}
	if err := bearings("bigEnds", r.BigEnds); err != nil {
		return err
	}
	return numbersOf[ReadingsRod](func(s *ReadingsRod) int { return s.Number })("rods", r.Rods)
}

// numbersOf refuses lists of parts whose numbers can't be: below 1, above 100, or
// two alike.
func numbersOf[T any](number func(*T) int) func(list string, parts []T) error {
	return func(list string, parts []T) error {
		var seen [mostInspected + 1]bool
		for i := range parts {
			n := number(&parts[i])
			if n < 1 || n > mostInspected {
				return inspection.At(inspection.Index(list, i)+".number", &InputError{"number", strconv.Itoa(n), "from 1 to 100"})
			}
			if seen[n] {
				return inspection.At(inspection.Index(list, i)+".number", &InputError{"number", strconv.Itoa(n), "one that no other part has"})
			}
			seen[n] = true
		}
		return nil
	}
}

// numberTo refuses a part that the limits don't have.
func numberTo(list string, i, number, most int) error {
	if number > most {
		return inspection.At(inspection.Index(list, i)+".number", &InputError{"number", strconv.Itoa(number), "one of the " + strconv.Itoa(most) + " that the limits have"})
	}
	return nil
}

// check refuses readings that can't be, by the limits.
func (l *Limits) check(r *Readings) error {
	if err := r.Validate(); err != nil {
		return err
	}
	if err := l.checkShaft(r); err != nil {
		return err
	}
	for i := range r.MainBearings {
		if err := numberTo("mainBearings", i, r.MainBearings[i].Number, l.Layout.Mains); err != nil {
			return err
		}
		if err := r.MainBearings[i].check(&l.MainBolts); err != nil {
			return inspection.At(inspection.Index("mainBearings", i), err)
		}
	}
	for i := range r.BigEnds {
		if err := numberTo("bigEnds", i, r.BigEnds[i].Number, l.Layout.Rods); err != nil {
			return err
		}
		if err := r.BigEnds[i].check(nil); err != nil {
			return inspection.At(inspection.Index("bigEnds", i), err)
		}
	}
	for i := range r.Rods {
		if err := numberTo("rods", i, r.Rods[i].Number, l.Layout.Rods); err != nil {
			return err
		}
		if err := r.Rods[i].check(l); err != nil {
			return inspection.At(inspection.Index("rods", i), err)
		}
		for k := range i {
			if m := r.Rods[i].RodMark; m != "" && m == r.Rods[k].RodMark {
				return inspection.At(inspection.Index("rods", i)+".rodMark", &InputError{"mark of the rod", strconv.Quote(journalQuote(m)), "one that no other rod has"})
			}
		}
	}
	if err := l.checkThrust(&r.Thrust); err != nil {
		return err
	}
	if err := r.OilPump.check(); err != nil {
		return err
	}
	return l.unasked(r)
}

func (l *Limits) checkShaft(r *Readings) error {
	s := &r.Shaft
	for _, g := range [...]struct {
		path, named string
		page        *LimitsJournals
	}{{"shaft.mains", s.Mains, &l.Mains}, {"shaft.crankpins", s.Crankpins, &l.Crankpins}} {
		found := g.named == ""
		for k := range g.page.Shells {
			found = found || g.page.Shells[k].Name == g.named
		}
		if !found {
			return inspection.At(g.path, &InputError{"size last ground to", strconv.Quote(journalQuote(g.named)), "the name of one of the shells in the limits"})
		}
	}
	for _, one := range [...]struct {
		path string
		r    *inspection.Reading
	}{{"shaft.nose", &s.Nose}, {"shaft.flange", &s.Flange}, {"shaft.flangeFace", &s.FlangeFace}} {
		if err := length(one.path, one.r, bounds); err != nil {
			return err
		}
	}
	if err := l.journalSheets("mains", r.Mains, l.Layout.Mains, l.Layout.MainDirections, &l.Instruments.Mains, s.Thermal); err != nil {
		return err
	}
	return l.journalSheets("crankpins", r.Crankpins, l.Layout.Crankpins, l.Layout.PinDirections, &l.Instruments.Crankpins, s.Thermal)
}

// journalSheets refuses what can't be of journals.
func (l *Limits) journalSheets(list string, sheets []ReadingsJournal, most int, headings []units.Angle, gauge *instrument.Instrument, shaft instrument.Thermal) error {
	planes, wide := l.Layout.planes(), len(headings)
	if wide == 0 {
		wide = 2
	}
	for i := range sheets {
		s := &sheets[i]
		if err := numberTo(list, i, s.Number, most); err != nil {
			return err
		}
		err := planeSheets("planes", s.Planes, planes, wide, func(r *inspection.Reading) error { return shown(r, gauge, shaft) })
		if err == nil {
			err = length("runOut", &s.RunOut, bounds)
		}
		if err == nil {
			err = length("fillet", &s.Fillet, above)
		}
		if err == nil {
			err = length("stroke", &s.Stroke, above)
		}
		if err == nil && s.Index.Taken {
			lo, hi, ok := sliderEnds(s.Index.Value)
			if !ok || lo < -units.Turn/2 || hi > units.Turn/2 {
				err = inspection.At("index", &InputError{"index", journalQuote(s.Index.String()), "measured, within half a turn either way"})
			}
		}
		if err == nil && len(s.Dial) > 0 {
			err = l.dialSheet(s.Dial)
		}
		if err == nil && len(s.Walls) > MostJournalStations {
			err = inspection.At("walls", &InputError{"walls", strconv.Itoa(len(s.Walls)), "100 000 at most"})
		}
		if err != nil {
			return inspection.At(inspection.Index(list, i), err)
		}
	}
	return nil
}

// dialSheet refuses what no dial shows.
func (l *Limits) dialSheet(list []inspection.Reading) error {
	if len(list) > max(l.Layout.DialPlaces, 0) {
		return inspection.At("dial", &InputError{"dial readings", strconv.Itoa(len(list)), "as many as the limits have places: " + strconv.Itoa(l.Layout.DialPlaces)})
	}
	for k := range list {
		if !list[k].Taken {
			continue
		}
		at := inspection.Index("dial", k)
		if err := exact(&list[k]); err != nil {
			return inspection.At(at, err)
		}
		if shown, _ := list[k].Value.Lower(); shown.Abs() > farthest {
			return inspection.At(at, &InputError{"dial reading", shown.String(), "at most 10 m either way"})
		}
	}
	return nil
}

// exact refuses a reading that isn't one number: the instrument's error stands in
// the limits, since what is common to a set of readings drops out of differences.
func exact(r *inspection.Reading) error {
	if !r.Value.IsExact() {
		return &InputError{"reading", journalQuote(r.String()), "one number, as the instrument showed it: its error stands in the limits, under instruments"}
	}
	return nil
}

// shown refuses what a micrometer can't show of a journal.
func shown(r *inspection.Reading, gauge *instrument.Instrument, shaft instrument.Thermal) error {
	if err := exact(r); err != nil {
		return err
	}
	x, _ := r.Value.Lower()
	if x.Abs() > journalLargest {
		return &InputError{"diameter", x.String(), "within 10 m"}
	}
	if size := x + gauge.Setting.Standard - gauge.Setting.Reading; size <= 0 {
		return &InputError{"diameter", size.String(), "above 0 mm"}
	}
	if gauge.Step > 0 && x%gauge.Step != 0 || !gauge.Range.IsZero() && !gauge.Range.Allows(x) {
		_, err := gauge.Reading(x, shaft) // says which, and what was expected
		return err
	}
	return nil
}

// planeSheets refuses planes and sizes that the limits don't have.
func planeSheets(path string, sheets []ReadingsPlane, planes []string, wide int, size func(*inspection.Reading) error) error {
	if len(sheets) > len(planes) {
		return inspection.At(path, &InputError{"planes", strconv.Itoa(len(sheets)), strconv.Itoa(len(planes)) + " at most, as the limits have"})
	}
	for p := range sheets {
		s := &sheets[p]
		if s.At != "" && s.At != planes[p] {
			return inspection.At(inspection.Index(path, p)+".at", &InputError{"plane", strconv.Quote(journalQuote(s.At)), strconv.Quote(journalQuote(planes[p])) + ", whose turn it is"})
		}
		if len(s.Sizes) > wide {
			return inspection.At(inspection.Index(path, p)+".sizes", &InputError{"sizes", strconv.Itoa(len(s.Sizes)), strconv.Itoa(wide) + " at most, as the limits have directions"})
		}
		for k := range s.Sizes {
			if !s.Sizes[k].Taken {
				continue
			}
			if err := size(&s.Sizes[k]); err != nil {
				return inspection.At(inspection.Index(inspection.Index(path, p)+".sizes", k), err)
			}
		}
	}
	return nil
}

// A lengthKind says what a reading can be.
type lengthKind uint8

const (
	above      lengthKind = iota // above 0, with both ends
	bounds                       // 0 or more, with both ends
	clearances                   // 0 or more; blades may leave the upper end open
	dials                        // either way, with both ends
	gaps                         // either way; blades may leave the upper end open
)

// length refuses a reading of a length that can't be.
func length(path string, r *inspection.Reading, kind lengthKind) error {
	if !r.Taken {
		return nil
	}
	lo, loEnd := r.Value.Lower()
	hi, hiEnd := r.Value.Upper()
	open := kind == clearances || kind == gaps
	if !r.Value.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent && !open {
		return inspection.At(path, &InputError{"reading", journalQuote(r.String()), "measured, with a least and a greatest"})
	}
	least, want := units.Length(0), "0 mm or more"
	switch kind {
	case above:
		least, want = units.Picometre, "above 0 mm"
	case dials, gaps:
		least, want = -farthest, "at most 10 m either way"
	}
	if lo < least || lo > farthest || hiEnd != tolerance.Absent && hi > farthest {
		return inspection.At(path, &InputError{"reading", journalQuote(r.String()), want + ", and at most 10 m"})
	}
	return nil
}

// lengths is length for a list.
func lengths(path string, list []inspection.Reading, kind lengthKind) error {
	if len(list) > mostPlaces {
		return inspection.At(path, &InputError{"readings", strconv.Itoa(len(list)), "360 at most"})
	}
	for i := range list {
		if err := length("", &list[i], kind); err != nil {
			return inspection.At(inspection.Index(path, i), errorAt(err))
		}
	}
	return nil
}

// errorAt is what lies at a path.
func errorAt(err error) error {
	if at, ok := err.(*inspection.PathError); ok { //nolint:errorlint // made just now
		return at.Err
	}
	return err
}
