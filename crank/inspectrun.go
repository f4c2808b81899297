package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A shaftRun is one inspection under way.
type shaftRun struct {
	in       *Inspector
	l        *Limits
	d        *Readings
	r        inspection.Report
	slab     []tolerance.Finding // findings are taken from here, many at once
	err      error               // the first that judging gave
	brackets []tolerance.Bracket // memory for readings
	// begun is that anything was read or seen at all: what nobody has looked at
	// gets no decision.
	begun bool

	mains, pins shaftGroup
	newShaft    bool                // another shaft goes in
	openShaft   bool                // what becomes of this one isn't decided
	newRods     [mostInspected]bool // rods that are replaced, by place
}

// A partVerdict is what the findings on one part come to.
type partVerdict struct {
	worst   int               // 1 + the finding that governs; 0 where there is none
	rank    int               // of its standing, by runOutRank
	fail    inspection.Action // the worst that what is out of limits asks for
	next    string            // what to do about it, in place of the finding's own words
	taken   int               // readings that were
	missing int               // and were not
	first   string            // of the missing ones
	slips   []string          // readings that it rests on and that look like slips
}

// arena is room for a few readings, from one piece of memory as long as it lasts.
func (x *shaftRun) arena() []tolerance.Bracket {
	const most = 8
	if len(x.brackets) < most {
		x.brackets = make([]tolerance.Bracket, 16*most)
	}
	room := x.brackets[:0:most]
	x.brackets = x.brackets[most:]
	return room
}

// finding is room for one more finding on a length, from one piece of memory as
// long as it lasts.
func (x *shaftRun) finding() *tolerance.Finding {
	if len(x.slab) == cap(x.slab) {
		x.slab = make([]tolerance.Finding, 0, max(x.in.room-len(x.r.Findings), 8))
	}
	x.slab = x.slab[:len(x.slab)+1]
	return &x.slab[len(x.slab)-1]
}

// keep puts a finding on a length into the report, for a part.
func (x *shaftRun) keep(v *partVerdict, step inspection.Step, path string, f *tolerance.Finding, work inspection.Action) {
	own := x.finding()
	*own = *f
	x.kept(v, step, path, own, work)
}

func (x *shaftRun) kept(v *partVerdict, step inspection.Step, path string, f *tolerance.Finding, work inspection.Action) {
	x.r.Findings = append(x.r.Findings, inspection.Finding{Step: step, Path: path, Length: f})
	v.note(len(x.r.Findings), f.Standing, work)
}

// keepOf is keep for other quantities.
func keepOf[Q units.Quantity](x *shaftRun, v *partVerdict, step inspection.Step, path string, f tolerance.FindingOf[Q], work inspection.Action) {
	x.r.Findings = append(x.r.Findings, inspection.Found(step, path, f))
	v.note(len(x.r.Findings), f.Standing, work)
}

func (v *partVerdict) note(finding int, s tolerance.Standing, work inspection.Action) {
	rank := runOutRank(s)
	if v.worst == 0 || rank > v.rank {
		v.worst, v.rank = finding, rank
	}
	if rank >= runOutRank(tolerance.OutsideNewBand) {
		v.fail = max(v.fail, work)
	}
}

// assess judges a length and keeps it.
func (x *shaftRun) assess(v *partVerdict, step inspection.Step, path, measure, where string, spec tolerance.Spec, work inspection.Action, stations ...tolerance.Bracket) {
	f := x.finding()
	var err error
	if *f, err = tolerance.Assess(measure, where, spec, stations...); err != nil {
		x.fail(path, err)
		return
	}
	x.kept(v, step, path, f, work)
}

// fail keeps the first error.
func (x *shaftRun) fail(path string, err error) {
	if x.err == nil {
		x.err = inspection.At(path, err)
	}
}

// doubt makes a slip of readings that contradict each other: they are listed, and
// nothing that rests on them is passed.
func (x *shaftRun) doubt(v *partVerdict, path, what string, err error) {
	x.r.Slips = append(x.r.Slips, inspection.Slip{Path: path, What: what, Text: err.Error()})
	v.slips = append(v.slips, path)
}

// miss notes a reading that wasn't taken.
func (x *shaftRun) miss(v *partVerdict, m inspection.Missing) {
	if v.missing == 0 {
		v.first = m.Measure + ", " + m.Where
	}
	v.missing++
	x.r.Missing = append(x.r.Missing, m)
}

// A shaftSpot is the part that readings are taken on.
type shaftSpot struct {
	step  inspection.Step
	where string // "main 1"
	path  string // "mains[0]"; the list where the part isn't in it
	there bool   // the part is in the document
}

// A shaftAsk is one reading that is asked for, as a bench sheet names it. Its line
// is written out only where the reading is missing.
type shaftAsk struct {
	field   string // "runOut"
	measure string // "run-out"
	place   string // on the part: "rear, 90°"
	with    string // the instrument
	limit   *inspection.Limit
}

// missing is the line for the i-th of n such readings; i is below 0 for a single one.
func (at *shaftSpot) missing(ask *shaftAsk, i, n int) inspection.Missing {
	m := inspection.Missing{Step: at.step, Path: at.path, Measure: ask.measure, Where: at.where, With: ask.with}
	if at.there {
		if m.Path != "" {
			m.Path += "."
		}
		m.Path += ask.field
		if i >= 0 {
			m.Path = inspection.Index(m.Path, i)
		}
	}
	if ask.place != "" {
		m.Where = clauseBy(m.Where, ", ", ask.place)
	}
	if n > 1 {
		m.Where = clauseBy(m.Where, ", ", "place "+strconv.Itoa(i+1))
	}
	if ask.limit != nil {
		m.Limit = printedLimit(*ask.limit)
	}
	return m
}

// readAll gathers those of a list of readings that were taken, each good to ± e,
// and notes those that weren't: so many are asked for.
func (x *shaftRun) readAll(dst []tolerance.Bracket, v *partVerdict, at *shaftSpot, list []inspection.Reading, asked int, e units.Length, ask shaftAsk) []tolerance.Bracket {
	n := max(asked, len(list))
	for i := range n {
		if i < len(list) && list[i].Taken {
			dst = append(dst, within1(list[i], e))
			v.taken++
			continue
		}
		x.miss(v, at.missing(&ask, i, n))
	}
	return dst
}

// read is one reading, or a line among the missing.
func (x *shaftRun) read(v *partVerdict, at *shaftSpot, r *inspection.Reading, e units.Length, ask shaftAsk) (tolerance.Bracket, bool) {
	if !r.Taken {
		x.miss(v, at.missing(&ask, -1, 1))
		return tolerance.Bracket{}, false
	}
	v.taken++
	return within1(*r, e), true
}

// within1 is a reading with its instrument's error; both were checked.
func within1(r inspection.Reading, e units.Length) tolerance.Bracket {
	w, err := r.Within(e)
	if err != nil {
		return r.Value
	}
	return w.Value
}

// tests notes a test that is asked for and that nobody has written down.
func (x *shaftRun) tests(step inspection.Step, path, where string, care inspection.Care, c *inspection.Condition) {
	if care.CrackTest && c.CrackTested != inspection.Yes {
		x.r.Missing = append(x.r.Missing, inspection.Missing{Step: step, Path: path + ".condition.crackTested", Measure: "crack test", Where: where, With: "dye or magnetic particles", Limit: "no crack"})
	}
	if care.PressureTest && c.PressureTested != inspection.Yes {
		x.r.Missing = append(x.r.Missing, inspection.Missing{Step: step, Path: path + ".condition.pressureTested", Measure: "pressure test", Where: where, Limit: "no leak"})
	}
}

// printedLimit is a limit in words, as printed.
func printedLimit[Q units.Quantity](l inspection.LimitOf[Q]) string {
	s := l.New.String()
	if l.New.IsZero() {
		s = ""
	}
	if !l.Wear.IsZero() {
		s = clause(s, "wear limit "+l.Wear.String())
	}
	return s
}

// given reports whether a limit is there.
func given[Q units.Quantity](l *inspection.LimitOf[Q]) bool {
	return !l.New.IsZero() || !l.Wear.IsZero()
}
