package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// A boresReady is the limits of the bores made ready.
type boresReady struct {
	limits   BoreLimits
	survey   BoreSurvey // without readings
	measures [boreMeasures]measured[units.Length]
	stations []string   // "top, across the crank"
	levels   [][]string // "cylinders[2].levels[0]", by the place in the list
	places   [][]string // "cylinders[2].levels[0].across"
	offset   units.Length
	from, to units.Length // what the gauge shows of any bore of this engine
}

func (in *Inspector) readyBores() {
	l := in.limits.Bores
	b := &boresReady{limits: l.boreLimits(), survey: l.survey()}
	b.offset = l.Gauge.Setting.Standard - l.Gauge.Setting.Reading
	fifth := l.Standard / 5
	b.from, b.to = l.Standard-fifth-b.offset, l.Standard+fifth-b.offset
	for m := range BoreMeasure(boreMeasures) {
		name := m.String()
		switch {
		case m == MeasureTaper && l.TaperRule == TaperPerLength:
			name += " (" + l.TaperRule.String() + ", " + l.TaperPer.String() + ")"
		case m == MeasureTaper:
			name += " (" + l.TaperRule.String() + ")"
		case m == MeasureRidge:
			name += " (" + l.RidgeCounted.String() + ")"
		}
		b.measures[m] = ready(in, l.printed(m), "bores."+boreMeasurePaths[m], name)
		*b.limits.spec(m) = b.measures[m].spec // without one that contradicts itself
		if b.measures[m].asked() {
			in.lengths += len(in.where)
		}
	}
	for i := range b.survey.Levels {
		for j := range b.survey.Headings {
			b.stations = append(b.stations, b.survey.Name(Station{i, j}))
		}
	}
	for i := range in.paths {
		var levels, places []string
		for k := range b.survey.Levels {
			levels = append(levels, inspection.Index(in.paths[i]+".levels", k))
			for j := range b.survey.Headings {
				places = append(places, levels[k]+"."+levelPath(j))
			}
		}
		b.levels, b.places = append(b.levels, levels), append(b.places, places)
	}
	in.bores = b
}

// A boreSeen is one bore on its way.
type boreSeen struct {
	c      *ReadingsCylinder
	index  int
	tally  tally
	report BoreReport
	read   bool        // the report holds something
	limits *BoreLimits // at its oversize
	from   tolerance.Bracket
}

// allBores judges every bore, decides on each, and on the oversize for all.
func (x *inspecting) allBores() error {
	l, ready := x.in.limits.Bores, x.in.bores
	if l == nil {
		return nil
	}
	bores := make([]boreSeen, len(x.in.where))
	survey := ready.survey
	if survey.Block = x.r.Block.Thermal; survey.Block != (instrument.Thermal{}) {
		if _, err := survey.Block.SizeAt(l.Standard); err != nil {
			return inspection.At("block.thermal", err)
		}
	}
	survey.Readings = make([]BoreReading, len(ready.stations))
	known := false
	for i := range bores {
		b := &bores[i]
		b.c, b.index = x.cylinder(i + 1)
		b.tally = tallyOf(inspection.StepBores, "cylinder bore", x.in.where[i])
		if err := x.bore(b, &survey); err != nil {
			return err
		}
		x.tests(&b.tally, &l.Care, &b.c.Condition, x.in.paths[b.index], x.in.where[i])
		known = known || b.tally.known() || b.c.Condition != (inspection.Condition{})
	}
	if known {
		if err := x.decideBores(bores); err != nil {
			return err
		}
	}
	return nil
}

// bore surveys one bore and enters its findings.
func (x *inspecting) bore(b *boreSeen, s *BoreSurvey) error {
	ready, c := x.in.bores, b.c
	number := b.tally.where
	places := ready.places[b.index]
	if err := x.boreReadings(b, s, places); err != nil {
		return err
	}
	instrument := with(s.Gauge.Name, "bore gauge")
	for i := range s.Readings {
		if !s.Readings[i].Taken {
			x.miss(&b.tally, places[i], "bore", number+", "+ready.stations[i], instrument, ready.measures[MeasureSize].printed)
		}
	}
	l := x.in.limits.Bores
	base := x.in.paths[b.index]
	if l.Unworn && !c.Unworn.Taken {
		x.miss(&b.tally, base+".unworn", "bore below the ring travel", number, instrument, "")
	}
	if ready.measures[MeasureRidge].asked() && !c.Ridge.Taken {
		x.miss(&b.tally, base+".ridge", ready.measures[MeasureRidge].name, number, "depth gauge or straight-edge", ready.measures[MeasureRidge].printed)
	}
	if err := x.unworn(b, s); err != nil || b.tally.taken == 0 || b.tally.suspect != "" {
		return err
	}
	if b.limits = &ready.limits; c.Oversize != 0 {
		at := ready.limits
		at.Size, at.Mean = moved(at.Size, c.Oversize), moved(at.Mean, c.Oversize)
		b.limits = &at
	}
	s.Where, s.Finished = number, b.finished(l)
	s.Ridge = Ridge{}
	if c.Ridge.Taken {
		s.Ridge = Ridge{Height: c.Ridge.Value, Counted: l.RidgeCounted}
	}
	s.TorquePlate, s.CapsTorqued = x.r.TorquePlate, x.r.CapsTorqued
	if err := s.judge(b.limits, &b.report); err != nil {
		return inspection.At(base, err)
	}
	b.read, b.from = true, s.Finished
	if s.Unworn.Taken {
		g, err := s.gauge(s.Unworn.Shown)
		if err == nil {
			b.from, err = g.size(s.Unworn.Shown, s.Unworn.Shown)
		}
		if err != nil {
			return inspection.At(base+".unworn", err)
		}
	}
	x.boreNotes(b, s)
	return x.boreFindings(b, s)
}

// boreReadings puts the readings of a bore into the survey. A reading that no
// bore of this engine can have is a slip, and the bore isn't judged by it.
func (x *inspecting) boreReadings(b *boreSeen, s *BoreSurvey, places []string) error {
	ready := x.in.bores
	n := len(s.Headings)
	for i := range s.Levels {
		for j := range n {
			k := i*n + j
			s.Readings[k] = BoreReading{}
			if i >= len(b.c.Levels) {
				continue
			}
			r := b.c.Levels[i].at(j)
			if !r.Taken {
				continue
			}
			q, _ := r.Value.Lower()
			if q <= ready.from || q >= ready.to {
				if q+ready.offset <= 0 {
					return badAt(places[k], "bore", (q + ready.offset).String(), "above 0 mm")
				}
				text, _ := oddSize(tolerance.Exactly(q+ready.offset), x.in.limits.Bores.Standard)
				x.slip(&b.tally, inspection.Slip{Path: places[k], What: b.tally.where + ", " + ready.stations[k], Text: text})
			} else if err := s.check(k, q); err != nil {
				return inspection.At(places[k], err)
			}
			s.Readings[k] = ReadBore(q)
			b.tally.taken++
		}
	}
	return nil
}

// unworn puts the reading below the ring travel into the survey.
func (x *inspecting) unworn(b *boreSeen, s *BoreSurvey) error {
	s.Unworn = BoreReading{}
	u := b.c.Unworn
	if !u.Taken {
		return nil
	}
	path := x.in.paths[b.index] + ".unworn"
	q, _ := u.Value.Lower()
	if ready := x.in.bores; q <= ready.from || q >= ready.to {
		text, _ := oddSize(tolerance.Exactly(q+ready.offset), x.in.limits.Bores.Standard)
		x.slip(&b.tally, inspection.Slip{Path: path, What: b.tally.where + ", below the ring travel", Text: text})
		return nil
	}
	if err := s.check(0, q); err != nil {
		return inspection.At(path, err)
	}
	s.Unworn = ReadBore(q)
	return nil
}

// finished is the size that wear counts from: as given, or anywhere within the
// limits for new parts at its oversize.
func (b *boreSeen) finished(l *LimitsBores) tolerance.Bracket {
	if b.c.Finished.Taken {
		return b.c.Finished.Value
	}
	fresh := b.limits.Size.New.Interval()
	_, loEnd := fresh.Lower()
	_, hiEnd := fresh.Upper()
	if loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		return tolerance.Bracket{}
	}
	return fresh
}

// moved are limits of size at another oversize.
func moved(s tolerance.Spec, by units.Length) tolerance.Spec {
	for _, band := range [...]*tolerance.Band{&s.New, &s.Wear} {
		if !band.IsZero() {
			*band = tolerance.BandFrom(band.Interval().Add(tolerance.Exactly(by)))
		}
	}
	return s
}
