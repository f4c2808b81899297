package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspectRun is one engine under inspection.
type inspectRun struct {
	x   *Inspector
	r   *Readings
	out inspection.Report
	err error // the first

	lengths []tolerance.Finding
	forces  []tolerance.FindingOf[units.Force]
	sets    []inspectSet[units.Length] // like readings, for proofreading
	loads   []inspectSet[units.Force]
	shelf   []inspectPlace // by place, the inlet valves first
	cams    []inspectCamFound
	driven  []inspectDriven
	room    [32]tolerance.Bracket // of one part's readings

	planner  ShimPlanner
	shimPlan ShimPlan
	shimHead ShimHead
}

// inspectPlace is what is found of all that belongs to one valve.
type inspectPlace struct {
	guide, valve, seat, follower, rocker, gap inspectState
	springs                                   []inspectState
	coils                                     []inspectSpringFound

	bores, stems                                       [2]tolerance.Bracket // least and greatest
	clear, bore, bell, round, rock                     *tolerance.Finding   // of the guide
	stem, taper, margin, faceRun, stemRun, tip, length *tolerance.Finding   // of the valve
	width, runOut, depth, tipHeight                    *tolerance.Finding   // of the seat
	lap                                                *tolerance.Finding   // the clearance
	followerIs, rockerIs                               inspectFitFound
	gapIs, shimIs, outer, inner                        tolerance.Bracket
	way                                                *LimitsGuideWay // that puts the guide right
	inBand                                             bool            // its clearance, for certain
	newStem                                            bool            // a new valve alone puts the clearance right
	cuts                                               string          // of the seat, in words
	reface                                             units.Length    // what the seat loses along the stem

	clearAfter, marginAfter, gapAfter tolerance.Bracket // after the work
}

// inspectState is what is known of one part while its readings are gone through.
type inspectState struct {
	where       string
	list        string // of the readings document
	index       int    // in it; where it would stand if it isn't listed
	taken       int    // readings
	missing     int
	first       string // the first that is missing
	open        string // the first that limits don't tell, and what would settle it
	slips       []string
	worst       tolerance.Standing // of its findings
	suspect     string             // the first reading that looks like a slip
	doubt       string             // the first limit that looks like one, where its columns decide otherwise
	suspectStem bool
	cond        inspection.Condition
	listed      bool
	decided     bool              // a decision was made on it
	action      inspection.Action // and which
}

// inspectSet is like readings of many parts.
type inspectSet[Q units.Quantity] struct {
	values []tolerance.Interval[Q]
	at     []inspectFrom
}

// inspectFrom is where a reading of a set comes from.
type inspectFrom struct {
	state *inspectState
	sub   int
}

func (s *inspectState) path(sub string) string { return inspection.Index(s.list, s.index) + sub }

// fail keeps the first error, with its path.
func (c *inspectRun) fail(s *inspectState, sub string, err error) {
	if c.err == nil {
		c.err = inspection.At(s.path(sub), err)
	}
}

// inspectTake takes one reading: it gives it its instrument's error, refuses what
// can't be, notes it as missing where it wasn't taken, and lays it to its like.
func inspectTake[Q units.Quantity](c *inspectRun, m *inspectMeasure[Q], s *inspectState, sub int, r inspection.ReadingOf[Q]) (tolerance.Interval[Q], bool) {
	if !r.Taken {
		c.lacking(s, m.step, m.name, m.with, m.print, m.subs[sub])
		return tolerance.Interval[Q]{}, false
	}
	if m.e != 0 {
		r, _ = r.Within(m.e) // out of range, it is refused below
	}
	lo, loEnd := r.Value.Lower()
	_, hiEnd := r.Value.Upper()
	if !r.Value.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		c.fail(s, m.subs[sub].path(), &InputError{m.name, r.Value.String(), "measured, with a least and a greatest"})
		return r.Value, false
	}
	if lo < m.least {
		c.fail(s, m.subs[sub].path(), &InputError{m.name, r.Value.String(), "at least " + tolerance.Exactly(m.least).String()})
		return r.Value, false
	}
	s.taken++
	set := inspectSetOf(c, m)
	set.values, set.at = append(set.values, r.Value), append(set.at, inspectFrom{s, sub})
	return r.Value, true
}

// inspectSetOf is the collection of a measure's like readings.
func inspectSetOf[Q units.Quantity](c *inspectRun, m *inspectMeasure[Q]) *inspectSet[Q] {
	if _, is := any(m).(*inspectMeasure[units.Length]); is {
		return any(&c.sets[m.set]).(*inspectSet[Q])
	}
	return any(&c.loads[m.set]).(*inspectSet[Q])
}

// lacking notes a reading that is still to be taken.
func (c *inspectRun) lacking(s *inspectState, step inspection.Step, measure, with, limit string, sub inspectSub) {
	where, at := s.where, sub.where()
	if at != "" {
		where += ", " + at
	}
	if s.missing++; s.first == "" {
		s.first = measure
		if at != "" {
			s.first += ", " + at
		}
	}
	c.out.Missing = append(c.out.Missing, inspection.Missing{Step: step, Path: s.path(sub.path()), Measure: measure, Where: where, With: with, Limit: limit})
}

// tests notes the tests that the limits ask for and nobody has made.
func (c *inspectRun) tests(s *inspectState, step inspection.Step, care *inspection.Care, sub string) {
	if care.CrackTest && s.cond.CrackTested != inspection.Yes && s.cond.Cracked != inspection.Yes {
		c.lackingTest(s, step, "crack test", sub+".crackTested")
	}
	if care.PressureTest && s.cond.PressureTested != inspection.Yes && s.cond.Cracked != inspection.Yes {
		c.lackingTest(s, step, "pressure test", sub+".pressureTested")
	}
}

func (c *inspectRun) lackingTest(s *inspectState, step inspection.Step, test, sub string) {
	c.out.Missing = append(c.out.Missing, inspection.Missing{Step: step, Path: s.path(sub), Measure: test, Where: s.where, Limit: "made, and no crack found"})
}

// found judges a measure of one part; nil where there is nothing to judge by.
func (c *inspectRun) found(m *inspectMeasure[units.Length], s *inspectState, where, path string, readings ...tolerance.Bracket) *tolerance.Finding {
	if !m.asked || len(readings) == 0 || m.spec.IsZero() || c.err != nil {
		return nil
	}
	f, err := tolerance.Assess(m.name, where, m.spec, readings...)
	if err != nil {
		c.fail(s, "", &InputError{m.name, err.Error(), "within range"})
		return nil
	}
	if len(c.lengths) == cap(c.lengths) {
		c.lengths = make([]tolerance.Finding, 0, 64) // what is handed out stays where it is
	}
	c.lengths = append(c.lengths, f)
	p := &c.lengths[len(c.lengths)-1]
	c.out.Findings = append(c.out.Findings, inspection.Finding{Step: m.step, Path: path, Length: p})
	inspectNote(s, m, p)
	return p
}

// inspectNote keeps what a finding leaves open, and the slips of its limits.
func inspectNote[Q units.Quantity](s *inspectState, m *inspectMeasure[Q], f *tolerance.FindingOf[Q]) {
	s.worst = max(s.worst, f.Standing)
	if f.Standing == tolerance.CantTell && s.open == "" {
		s.open = m.name + ": " + f.Settle
	}
	if len(m.slips) == 0 {
		return
	}
	s.slips = append(s.slips, m.slips...)
	if other := m.other.StandAll(f.Least, f.Greatest); s.doubt == "" && (other >= tolerance.OutsideNewBand) != (f.Standing >= tolerance.OutsideNewBand) {
		s.doubt = m.name + ", " + m.print
	}
}

// inspectPathAt is a finding's path, by its part's place in the list.
func inspectPathAt[Q units.Quantity](m *inspectMeasure[Q], s *inspectState) string {
	if s.index < len(m.paths) {
		return m.paths[s.index]
	}
	return s.list + "[" + strconv.Itoa(s.index) + "]"
}

// one takes the single reading of a measure and judges it.
func (c *inspectRun) one(m *inspectMeasure[units.Length], s *inspectState, r inspection.Reading) *tolerance.Finding {
	if !m.asked {
		return nil
	}
	if b, ok := inspectTake(c, m, s, 0, r); ok {
		return c.found(m, s, s.where, inspectPathAt(m, s), b)
	}
	return nil
}

// inspectBad reports whether a finding is outside what its limits allow.
func inspectBad(f *tolerance.Finding) bool { return f != nil && f.Standing >= tolerance.OutsideNewBand }
