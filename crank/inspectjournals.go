package crank

import (
	"errors"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// A shaftGroup is the mains or the crankpins of one inspection.
type shaftGroup struct {
	g        *shaftJournals
	states   []shaftJournal
	current  int // the undersize that they were last ground to, in the page's shells; −1 where it isn't listed
	finished tolerance.Bracket
	limits   *JournalLimits

	decision inspection.Decision
	all      bool // they are decided: a decision is there
	// What becomes of them: ground to one undersize, or another shaft.
	ground, gone bool
	newShells    bool
	to           int // the undersize, in the page's shells; −1 where it isn't known
}

// A shaftJournal is one journal of one inspection.
type shaftJournal struct {
	v        partVerdict // by what grinding puts right
	other    partVerdict // stroke and index, which it doesn't
	sheet    *ReadingsJournal
	path     string
	index    int // of the sheet in its list; the number of journals where there is none
	report   JournalReport
	surveyed bool
	runOut   tolerance.Bracket // of a main; zero where it isn't known
	// After the work: the sizes it may have, and the shells that go on it (in the
	// page's shells; −1 where that isn't known).
	least, greatest tolerance.Bracket
	shells          int
	caseLeft        tolerance.Bracket
}

// journals surveys a group, and puts its findings into the report.
func (x *shaftRun) journals(g *shaftJournals, sheets []ReadingsJournal, ground string, to *shaftGroup) {
	*to = shaftGroup{g: g, current: -1, to: -1, states: make([]shaftJournal, g.n), limits: &g.limits}
	x.lastGround(to, ground)
	for i := range to.states {
		to.states[i].path, to.states[i].index, to.states[i].shells = g.paths[g.n], g.n, -1
	}
	for i := range sheets {
		s := &to.states[sheets[i].Number-1]
		s.sheet, s.path, s.index = &sheets[i], g.paths[i], i
	}
	if !g.asked && g.limits.Fillet.IsZero() && g.limits.Stroke.IsZero() && g.limits.Index.IsZero() {
		return
	}
	gauge := &x.l.Instruments.Mains
	if g.kind == Crankpin {
		gauge = &x.l.Instruments.Crankpins
	}
	readings := x.stations(to)
	x.proofJournals(to, readings, gauge)
	n := len(g.planes) * len(g.headings)
	survey := JournalSurvey{Kind: g.kind, Planes: g.planes, Headings: g.headings, Gauge: *gauge, Shaft: x.d.Shaft.Thermal, Finished: to.finished}
	for i := range to.states {
		survey.Where, survey.Readings = g.names[i], readings[i*n:(i+1)*n]
		x.journal(to, i, &survey)
	}
}

// lastGround finds the undersize that the journals were last ground to, and the
// limits that hold for it.
func (x *shaftRun) lastGround(to *shaftGroup, ground string) {
	g := to.g
	to.finished = g.limits.Size.New.Interval()
	if g.limits.Size.New.IsZero() {
		to.finished = tolerance.Bracket{}
	}
	under := units.Length(0)
	for k := range g.kits {
		if ground != "" && g.kits[k].Name == ground || ground == "" && g.kits[k].Undersize == 0 {
			to.current, under = k, g.kits[k].Undersize
			break
		}
	}
	if under == 0 || g.limits.Size.IsZero() {
		return
	}
	// At an undersize the limits of size are those of that step; a wear limit
	// printed for the standard size is moved with it.
	moved := g.limits
	band, _ := g.kits[to.current].band(g.limits.Size.New)
	moved.Size.New = band
	if !moved.Size.Wear.IsZero() {
		moved.Size.Wear = tolerance.BandFrom(UndersizeOf(moved.Size.Wear.Interval(), tolerance.Exactly(under)))
	}
	to.limits, to.finished = &moved, band.Interval()
}

// stations are the readings of all journals of a group, one after the other.
func (x *shaftRun) stations(to *shaftGroup) []JournalReading {
	g := to.g
	n := len(g.planes) * len(g.headings)
	readings := make([]JournalReading, g.n*n)
	for i := range to.states {
		s := &to.states[i]
		if s.sheet == nil {
			continue
		}
		for p := range s.sheet.Planes {
			for h, r := range s.sheet.Planes[p].Sizes {
				if r.Taken {
					shown, _ := r.Value.Lower()
					readings[i*n+p*len(g.headings)+h] = ReadJournal(shown)
				}
			}
		}
	}
	return readings
}

// proofJournals holds all diameters of a group to each other. One that looks like a
// slip is left out of the survey, and nothing that rests on it is passed.
func (x *shaftRun) proofJournals(to *shaftGroup, readings []JournalReading, gauge *instrument.Instrument) {
	g := to.g
	var least, greatest units.Length
	taken := 0
	for _, r := range readings {
		if !r.Taken {
			continue
		}
		if taken == 0 {
			least, greatest = r.Shown, r.Shown
		}
		least, greatest = min(least, r.Shown), max(greatest, r.Shown)
		taken++
	}
	if taken < 3 || greatest-least <= journalAlike {
		return
	}
	offset := gauge.Setting.Standard - gauge.Setting.Reading
	sizes, places := make([]units.Length, 0, taken), make([]int, 0, taken)
	for i, r := range readings {
		if r.Taken {
			sizes, places = append(sizes, r.Shown+offset), append(places, i)
		}
	}
	found, err := proofread.CheckReadings(sizes...)
	if err != nil {
		return // out of range: judging refuses it by name
	}
	n, wide := len(g.planes)*len(g.headings), len(g.headings)
	for _, odd := range found.Odd {
		i := places[odd.Index]
		s, at := &to.states[i/n], i%n
		path := x.stationPath(s, at/wide, at%wide)
		x.r.Slips = append(x.r.Slips, inspection.Slip{
			Path: path, What: g.planeWhere[i/n][at/wide] + ", " + x.headingName(g, at%wide),
			Text: sizes[odd.Index].String() + " against a middle of " + found.Middle.String() + ": " + odd.Causes[0].String(),
		})
		s.v.slips = append(s.v.slips, path)
		readings[i] = JournalReading{}
	}
}

func (x *shaftRun) stationPath(s *shaftJournal, plane, heading int) string {
	if s.sheet == nil || plane >= len(s.sheet.Planes) {
		return s.path
	}
	return inspection.Index(inspection.Index(s.path+".planes", plane)+".sizes", heading)
}

func (x *shaftRun) headingName(g *shaftJournals, heading int) string {
	return (&JournalSurvey{Kind: g.kind, Headings: g.headings}).HeadingName(heading)
}

// journal surveys one journal.
func (x *shaftRun) journal(to *shaftGroup, i int, survey *JournalSurvey) {
	g, s := to.g, &to.states[i]
	if g.asked {
		x.missingStations(to, i)
	}
	// The rest is single readings.
	sheet := s.sheet
	if sheet == nil {
		sheet = &ReadingsJournal{}
	}
	at := shaftSpot{inspection.StepCrank, g.names[i], s.path, s.sheet != nil}
	survey.Fillet, survey.Stroke = tolerance.Bracket{}, tolerance.Bracket{}
	survey.Index = tolerance.Interval[units.Angle]{}
	if !g.limits.Fillet.IsZero() {
		survey.Fillet, _ = x.read(&s.v, &at, &sheet.Fillet, 0, shaftAsk{"fillet", "fillet radius", "", "radius gauges", &g.page.Fillet})
	}
	if !g.limits.Stroke.IsZero() {
		survey.Stroke, _ = x.read(&s.other, &at, &sheet.Stroke, 0, shaftAsk{"stroke", "stroke", "", "height gauge", &g.page.Stroke})
	}
	if !g.limits.Index.IsZero() {
		if sheet.Index.Taken {
			survey.Index = sheet.Index.Value
			s.other.taken++
		} else {
			m := at.missing(&shaftAsk{"index", "index", "", "dividing head", nil}, -1, 1)
			m.Limit = printedLimit(g.page.Index)
			x.miss(&s.other, m)
		}
	}
	if !g.asked || !anyTaken(survey.Readings) {
		x.besideSizes(to, i, survey)
		return
	}
	if err := survey.judge(to.limits, &s.report); err != nil {
		var wrong *InputError
		if !errors.As(err, &wrong) {
			x.fail(s.path, err)
			return
		}
		x.doubt(&s.v, g.planesPaths[s.index], g.names[i], err)
		return
	}
	s.surveyed = true
	s.least, s.greatest = s.report.Least.Size, s.report.Greatest.Size
	for m := range JournalMeasure(journalMeasures) {
		if to.limits.asks(m) && m != JournalMeanMeasure {
			x.journalFinding(to, i, survey, m)
		}
	}
}

func anyTaken(readings []JournalReading) bool {
	for i := range readings {
		if readings[i].Taken {
			return true
		}
	}
	return false
}

// worn is what is known of a surveyed journal that may have to be ground.
func (x *shaftRun) worn(to *shaftGroup, i int) WornJournal {
	s := &to.states[i]
	survey := JournalSurvey{Where: to.g.names[i], Finished: to.finished}
	w := survey.WornJournal(&s.report, to.limits.TaperRule)
	w.Walls, w.RunOut, w.Case = s.sheet.Walls, s.runOut, x.caseNow(to)
	w.Surface, w.Process = x.l.Shaft.Surface, x.l.Shaft.Process
	return w
}

// caseNow is the hardened case at the size that the journals have been ground to.
func (x *shaftRun) caseNow(to *shaftGroup) tolerance.Bracket {
	c := to.g.page.Case
	if c.IsZero() || to.current < 0 {
		return c
	}
	return CaseLeft(c, tolerance.Exactly(to.g.kits[to.current].Undersize), tolerance.Exactly(units.Length(0)))
}

// journalFinding judges one measure of a journal. Its place is named so that the
// journal measured again after the work stands beside what was predicted.
func (x *shaftRun) journalFinding(to *shaftGroup, i int, survey *JournalSurvey, m JournalMeasure) {
	g, s := to.g, &to.states[i]
	if m == JournalIndexMeasure {
		x.index(to, i, survey)
		return
	}
	least, greatest, known := survey.measured(to.limits, &s.report, m)
	if !known {
		if m == JournalOutOfRoundMeasure || m == JournalTaperMeasure {
			s.v.open(m.String())
		}
		return
	}
	v, work := &s.v, inspection.ReconditionTo
	measure, where, path := m.String(), g.names[i], g.planesPaths[s.index]
	switch m {
	case JournalOutOfRoundMeasure:
		where = g.planeWhere[i][s.report.OutOfRound.At.Plane]
	case JournalTaperMeasure:
		measure = g.taperMeasure
		if r := to.limits.TaperRule; r == JournalTaperAlong || r == JournalTaperEnds {
			where = g.headingWhere[i][s.report.Taper[r].At.Heading]
		}
	case JournalFilletMeasure:
		path, work = s.path+".fillet", inspection.ReconditionSame
	case JournalStrokeMeasure:
		v, path, work = &s.other, s.path+".stroke", usual(g.page.Beyond, inspection.Replace)
	}
	f, err := tolerance.Assess(measure, where, to.limits.Spec(m), least, greatest)
	if err != nil {
		x.fail(path, err)
		return
	}
	if f.Standing == tolerance.CantTell && len(f.Unsettled) > 0 {
		if settle := survey.settle(&f, m); settle != "" {
			f.Settle = settle
		}
	}
	x.keep(v, inspection.StepCrank, path, &f, work)
}

// open is a measure that too little was read for: it isn't passed.
func (v *partVerdict) open(measure string) {
	if v.missing == 0 {
		v.first = measure + ", for which too little was read"
	}
	v.missing++
}

// besideSizes judges what needs no diameters.
func (x *shaftRun) besideSizes(to *shaftGroup, i int, survey *JournalSurvey) {
	for _, m := range [...]JournalMeasure{JournalFilletMeasure, JournalStrokeMeasure, JournalIndexMeasure} {
		if to.limits.asks(m) {
			x.journalFinding(to, i, survey, m)
		}
	}
}

// index judges the index of a crankpin.
func (x *shaftRun) index(to *shaftGroup, i int, survey *JournalSurvey) {
	g, s := to.g, &to.states[i]
	if survey.Index.IsZero() {
		return
	}
	f, err := survey.IndexFinding(to.limits)
	if err != nil {
		x.fail(s.path+".index", err)
		return
	}
	f.Where = g.names[i]
	keepOf(x, &s.other, inspection.StepCrank, s.path+".index", f, usual(g.page.Beyond, inspection.Replace))
}

// missingStations notes the diameters that weren't read.
func (x *shaftRun) missingStations(to *shaftGroup, i int) {
	g, s := to.g, &to.states[i]
	for p := range g.planes {
		for h := range g.headings {
			if s.sheet != nil && p < len(s.sheet.Planes) && h < len(s.sheet.Planes[p].Sizes) && s.sheet.Planes[p].Sizes[h].Taken {
				s.v.taken++
				continue
			}
			x.miss(&s.v, inspection.Missing{
				Step: inspection.StepCrank, Path: x.stationPath(s, p, h), Measure: "diameter",
				Where: g.planeWhere[i][p] + ", " + x.headingName(g, h), With: g.micrometer, Limit: printedLimit(g.page.Size),
			})
		}
	}
}
