package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// pinOf judges a gudgeon pin with the holes it runs in, and lists what is
// missing.
func (x *inspecting) pinOf(i int) error {
	in, p := x.in, &x.pistons[i]
	l := in.limits.Pins
	if l == nil {
		return nil
	}
	names, paths := &in.names[i], &in.paths[p.here]
	doc := &p.doc.Pin
	x.tests(&p.pin, &l.Care, &doc.Condition, paths.pin, names.piston+", gudgeon pin")
	x.missingPin(i)
	s := &x.pin
	*s = PinSurvey{Where: names.piston, Fit: l.Fit, NewPin: l.NewPin.Interval(), NewBoss: l.NewBoss.Interval(), NewSmallEnd: l.NewSmallEnd.Interval()}
	x.sections, x.brackets = x.sections[:0], x.brackets[:0]
	s.AtBosses, s.AtSmallEnd = x.sectionsOf(i, pinAtBosses), x.sectionsOf(i, pinAtSmallEnd)
	s.Bosses, s.SmallEnd = x.sectionsOf(i, pinBosses), x.sectionsOf(i, pinSmallEnd)
	if doc.Between.Taken {
		s.Between = valueOf(doc.Between, l.Error)
	}
	if doc.Length.Taken {
		s.Length = valueOf(doc.Length, l.Error)
	}
	x.pins = x.pins[:0]
	if len(x.sections) > 0 || !s.Between.IsZero() && !s.Length.IsZero() {
		specs := in.pinLimits.specs()
		var err error
		if x.pins, err = s.judge(x.pins, &specs, i, &p.holes); err != nil {
			p.holes = pinSums{}
			if err := x.unlike(&p.pin, paths.pin, names.piston+", gudgeon pin", err); err != nil {
				return err
			}
		}
	}
	known := uint(0)
	for k := range x.pins {
		if r := &x.pins[k]; r.Known {
			known |= 1 << r.Measure
			if err := x.pinResult(i, s, r); err != nil {
				return err
			}
		}
	}
	x.unknownPin(p, s, known)
	return nil
}

// unknownPin sees to it that no part passes of which a measure isn't known that
// the limits ask for: where its readings aren't missing, they look like a slip,
// or were never asked for.
func (x *inspecting) unknownPin(p *pistonState, s *PinSurvey, known uint) {
	if p.pin.taken+p.rod.taken == 0 && p.holes == (pinSums{}) && p.pin.missing > 0 {
		return // nothing was read yet
	}
	for m := range PinMeasure(pinMeasures) {
		if known&(1<<m) != 0 || !x.in.pin[m].asked() || !s.applies(m) {
			continue
		}
		for _, t := range p.talliesOfPin(m) {
			if t != nil && t.missing == 0 && t.suspect == "" && t.taken > 0 {
				t.stands(x.in.pin[m].name+" can't be told", s.missing(m))
			}
		}
	}
}

// parties are the part that a list is of, and the one that it has a fit with,
// where that is judged.
func (p *pistonState) parties(in *Inspector, list int) (of, with *tally) {
	boss := in.pin[PinMeasureBossClearance].asked()
	small := in.pin[PinMeasureSmallEndClearance].asked() || in.pin[PinMeasureSmallEndInterference].asked()
	switch {
	case list == pinAtBosses && boss:
		return &p.pin, &p.piston
	case list == pinAtSmallEnd && small:
		return &p.pin, &p.rod
	case list == pinBosses && boss:
		return &p.piston, &p.pin
	case list == pinSmallEnd && small:
		return &p.rod, &p.pin
	case list == pinBosses:
		return &p.piston, nil
	case list == pinSmallEnd:
		return &p.rod, nil
	}
	return &p.pin, nil
}

// talliesOfPin are the parts that a measure counts to: a fit to both of its.
func (p *pistonState) talliesOfPin(m PinMeasure) [2]*tally {
	switch m {
	case PinMeasureBossOvality, PinMeasureBossTaper, PinMeasureBossWear:
		return [2]*tally{&p.piston}
	case PinMeasureSmallEndOvality, PinMeasureSmallEndTaper, PinMeasureSmallEndWear:
		return [2]*tally{&p.rod}
	case PinMeasureBossClearance:
		return [2]*tally{&p.pin, &p.piston}
	case PinMeasureSmallEndClearance, PinMeasureSmallEndInterference:
		return [2]*tally{&p.pin, &p.rod}
	}
	return [2]*tally{&p.pin}
}

// listOfPin is the list that a measure's path leads to.
func listOfPin(m PinMeasure) int {
	switch m {
	case PinMeasureBossOvality, PinMeasureBossTaper, PinMeasureBossWear, PinMeasureBossClearance:
		return pinBosses
	case PinMeasureSmallEndOvality, PinMeasureSmallEndTaper, PinMeasureSmallEndWear, PinMeasureSmallEndClearance, PinMeasureSmallEndInterference:
		return pinSmallEnd
	}
	return pinAtBosses
}

// missingPin lists what of a pin and its holes is still to be measured.
func (x *inspecting) missingPin(i int) {
	in, p := x.in, &x.pistons[i]
	l, names, paths := in.limits.Pins, &in.names[i], &in.paths[p.here]
	for list := range pinLists {
		t, other := p.parties(in, list)
		instrument := in.pinWith
		if list == pinBosses || list == pinSmallEnd {
			instrument = in.holeWith
		}
		read := p.doc.Pin.list(list)
		for k := range l.list(list) {
			for j := range l.directions() {
				if k < len(read) && j < len(read[k]) && read[k][j].Taken {
					t.taken++
					continue
				}
				where := names.sections[list][k]
				if j < len(l.Directions) {
					where += ", " + l.Directions[j]
				}
				x.miss(t, inspection.Index(inspection.Index(paths.lists[list], k), j), pinListMeasures[list], where, instrument, in.pinPrinted[list])
				if other != nil {
					other.lacks(pinListMeasures[list], where)
				}
			}
		}
	}
	p.pin.took(p.doc.Pin.Between.Taken)
	p.pin.took(p.doc.Pin.Length.Taken)
	if m := &in.pin[PinMeasureEndFloat]; m.asked() {
		if !p.doc.Pin.Between.Taken {
			x.miss(&p.pin, paths.pin+".between", "distance between the seated circlips", names.piston, "inside micrometer or calliper", m.name+": "+m.printed)
		}
		if !p.doc.Pin.Length.Taken {
			x.miss(&p.pin, paths.pin+".length", "pin length", names.piston, in.pinWith, m.name+": "+m.printed)
		}
	}
}

var pinListMeasures = [pinLists]string{"pin", "pin", "boss", "small end"}

// sectionsOf are the sections of a list that were read, in those directions
// that were read at all of them.
func (x *inspecting) sectionsOf(i, list int) []PinSection {
	l := x.in.limits.Pins
	read := x.pistons[i].doc.Pin.list(list)
	all := uint(1)<<l.directions() - 1
	for k := range read {
		if some := x.directions(read[k]); some != 0 {
			all &= some
		}
	}
	from := len(x.sections)
	for k := range read {
		if all == 0 || x.directions(read[k]) == 0 {
			continue
		}
		first := len(x.brackets)
		for j := range read[k] {
			if all&(1<<j) != 0 {
				x.brackets = append(x.brackets, valueOf(read[k][j], l.Error))
			}
		}
		x.sections = append(x.sections, PinSection{l.list(list)[k], x.brackets[first:len(x.brackets):len(x.brackets)]})
	}
	return x.sections[from:len(x.sections):len(x.sections)]
}

// directions are those in which a section was read, a bit each.
func (x *inspecting) directions(section []inspection.Reading) (read uint) {
	for j := range section {
		if x.good(&section[j]) {
			read |= 1 << j
		}
	}
	return read
}

// pinResult enters one measure of a pin.
func (x *inspecting) pinResult(i int, s *PinSurvey, r *PinResult) error {
	in, p := x.in, &x.pistons[i]
	m, tallies := &in.pin[r.Measure], p.talliesOfPin(r.Measure)
	t := tallies[0]
	where, path := in.names[i].piston, in.paths[p.here].lists[listOfPin(r.Measure)]
	if r.Section >= 0 {
		if at := s.place(*r); at != "" {
			where = x.sectionName(i, r.Measure, at)
		}
	}
	if r.Measure == PinMeasureEndFloat {
		path = in.paths[p.here].float
	}
	f, err := x.judge(t, m, where, path, r.Least, r.Greatest)
	if f == nil {
		return err
	}
	settleMore(f)
	switch r.Measure {
	case PinMeasureBossClearance:
		p.fits[1] = x.last() + 1
	case PinMeasureSmallEndClearance, PinMeasureSmallEndInterference:
		p.fits[2] = x.last() + 1
	}
	if f.Standing < tolerance.OutsideNewBand {
		for _, t := range tallies {
			if t != nil {
				t.note(x.last(), f.Standing, f.Settle)
			}
		}
		return nil
	}
	switch r.Measure {
	case PinMeasureBossClearance:
		x.pinOrHole(p, &p.piston, &p.renew, f, pinBosses, "the bosses are worn")
	case PinMeasureSmallEndClearance, PinMeasureSmallEndInterference:
		x.pinOrHole(p, &p.rod, &p.renewRod, f, pinSmallEnd, "the small end is worn")
	case PinMeasureEndFloat:
		t.stands(f.String(), "look whether pin and circlips are the right ones, and the circlips' grooves clean; never force a circlip in")
	default:
		t.note(x.last(), f.Standing, f.Settle)
	}
	return nil
}

// sectionName is a section's words, which are ready.
func (x *inspecting) sectionName(i int, m PinMeasure, at string) string {
	lists := [...]int{pinAtBosses, pinAtSmallEnd}
	switch m {
	case PinMeasureBossOvality:
		lists = [...]int{pinBosses, pinBosses}
	case PinMeasureSmallEndOvality:
		lists = [...]int{pinSmallEnd, pinSmallEnd}
	}
	for _, list := range lists {
		for k, name := range x.in.limits.Pins.list(list) {
			if name == at {
				return x.in.names[i].sections[list][k]
			}
		}
	}
	return x.in.names[i].piston
}

// pinOrHole tells whether a fit that fails is the pin's or the hole's doing: by
// what a new pin would have.
func (x *inspecting) pinOrHole(p *pistonState, hole *tally, renewHole *[]string, f *tolerance.Finding, list int, worn string) {
	pin := x.in.limits.Pins.NewPin.Interval()
	if pin.IsZero() {
		for _, t := range [...]*tally{&p.pin, hole} {
			t.stands(f.String(), "look up what a new pin measures, which tells whether the pin or the hole is worn")
		}
		return
	}
	least, greatest := PinClearance(p.holes.least[list], pin), PinClearance(p.holes.greatest[list], pin)
	if f.Measure == pinMeasureNames[PinMeasureSmallEndInterference] {
		least, greatest = PinInterference(pin, p.holes.greatest[list]), PinInterference(pin, p.holes.least[list])
	}
	would := "a new pin would have " + rangeOf(least, greatest)
	switch s := f.Spec.StandAll(least, greatest); {
	case f.Standing == tolerance.OutsideNewBand && (passes(s) || s == tolerance.CantTell):
		p.pin.stands(f.String(), "look up the wear limit in the engine maker's manual: none is given; "+would)
	case passes(s):
		p.renewPin = append(p.renewPin, f.String()+"; "+would)
	case s == tolerance.CantTell:
		p.pin.stands(f.String(), "measure a new pin: it may have "+rangeOf(least, greatest))
		hole.stands(f.String(), "measure a new pin: it may have "+rangeOf(least, greatest))
	case f.Standing == tolerance.OutsideNewBand:
		hole.stands(f.String(), "look up the wear limit in the engine maker's manual: none is given; "+would)
	default:
		*renewHole = append(*renewHole, f.String()+"; "+would+": "+worn)
	}
}
