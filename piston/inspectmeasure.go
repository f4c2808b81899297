package piston

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A measured is a limit made ready: what is judged by it, how it is printed,
// and what looks like a slip in it.
type measured[Q units.Quantity] struct {
	name    string
	spec    tolerance.SpecOf[Q]
	printed string
	slips   []string // their paths
	// other is the second column, where it and the first look like a slip: a
	// standing that is the same by both doesn't hang on which is right.
	other tolerance.SpecOf[Q]
	// broken: no part can be judged by it, since it contradicts itself.
	broken bool
}

// asked reports whether there is anything to judge.
func (m *measured[Q]) asked() bool { return !m.spec.IsZero() || m.broken }

// ready makes a limit ready and lists its slips.
func ready[Q units.Quantity](in *Inspector, l inspection.LimitOf[Q], path, name string) measured[Q] {
	m := measured[Q]{name: name, spec: l.Spec(), printed: printedLimit(&l)}
	path = "limits." + path
	from := len(in.slips)
	in.slips = l.Proofread(in.slips, path, name)
	err := m.spec.Validate()
	if m.broken = err != nil || l.New.IsZero() && !l.NewAlso.IsZero() || l.Wear.IsZero() && !l.WearAlso.IsZero(); m.broken {
		if len(in.slips) == from && err != nil {
			in.slips = append(in.slips, inspection.Slip{Path: path + ".wear", What: name, Text: err.Error()})
		}
		m.spec = tolerance.SpecOf[Q]{}
	}
	for _, s := range in.slips[from:] {
		m.slips = append(m.slips, s.Path)
	}
	if m.slips != nil && !m.broken {
		m.other = m.spec
		if !l.NewAlso.IsZero() {
			m.other.New = l.NewAlso.BandOf
		}
		if !l.WearAlso.IsZero() {
			m.other.Wear = l.WearAlso.BandOf
		}
	}
	return m
}

// printedLimit is a limit in the words and figures of the manual.
func printedLimit[Q units.Quantity](l *inspection.LimitOf[Q]) string {
	text := ""
	add := func(before string, p, also *tolerance.PrintedOf[Q]) {
		if p.IsZero() {
			return
		}
		if text != "" {
			text += "; "
		}
		text += before + p.String()
		if !also.IsZero() {
			text += " (" + also.String() + ")"
		}
	}
	add("new ", &l.New, &l.NewAlso)
	add("wear limit ", &l.Wear, &l.WearAlso)
	return text
}

// The ranks of a standing, the worse the higher.
const (
	rankNone = iota
	rankAsNew
	rankUsable
	rankOpen
	rankOutside
	rankPast
)

var ranks = [...]int{tolerance.CantTell: rankOpen, tolerance.AsNew: rankAsNew, tolerance.Usable: rankUsable, tolerance.OutsideNewBand: rankOutside, tolerance.PastWearLimit: rankPast}

// A tally gathers what is known of one part.
type tally struct {
	step  inspection.Step
	part  string
	where string

	taken   int // readings that were taken, as far as they are asked for
	missing int // and that are still to be
	first   string
	rank    int      // of the worst finding
	worst   int      // its place in the report's findings
	open    []string // what would settle what is open
	slips   []string // by their paths: limits' and readings'
	suspect string   // a reading that looks like a slip
	doubt   bool     // the standing hangs on which column of a limit is right
	against []string // what else stands against a pass
	settle  []string // and what would settle that
}

func tallyOf(step inspection.Step, part, where string) tally {
	return tally{step: step, part: part, where: where}
}

// took counts a reading.
func (t *tally) took(taken bool) {
	if taken {
		t.taken++
	}
}

// note enters a finding of the report.
func (t *tally) note(at int, s tolerance.Standing, settle string) {
	if r := ranks[s]; r > t.rank {
		t.rank, t.worst = r, at
	}
	if s == tolerance.CantTell && settle != "" {
		t.open = append(t.open, settle)
	}
}

// stands enters something that stands against a pass, with what settles it.
func (t *tally) stands(against, settle string) {
	t.against = append(t.against, against)
	if settle != "" {
		t.settle = append(t.settle, settle)
	}
}

// rests enters what a limit's slips do to a standing.
func rests[Q units.Quantity](t *tally, m *measured[Q], s tolerance.Standing, least, greatest tolerance.Interval[Q]) {
	if m.slips == nil {
		return
	}
	for _, path := range m.slips {
		t.rest(path)
	}
	if m.broken || m.other.Validate() != nil || m.other.StandAll(least, greatest) != s {
		t.doubt = true
	}
}

// rest enters a slip, once.
func (t *tally) rest(path string) {
	if slices.Contains(t.slips, path) {
		return
	}
	t.slips = append(t.slips, path)
}

// judge judges the least and the greatest by a limit, and enters the finding;
// nil where there is no limit. Of a part that it counts to, the caller notes
// it.
func (x *inspecting) judge(t *tally, m *measured[units.Length], where, path string, least, greatest tolerance.Bracket) (*tolerance.Finding, error) {
	if m.spec.IsZero() {
		rests(t, m, tolerance.CantTell, least, greatest)
		return nil, nil
	}
	f := x.room()
	var err error
	if least == greatest {
		*f, err = tolerance.Assess(m.name, where, m.spec, least)
	} else {
		*f, err = tolerance.Assess(m.name, where, m.spec, least, greatest)
	}
	if err != nil {
		return nil, inspection.At(path, err)
	}
	x.report.Findings = append(x.report.Findings, inspection.Finding{Step: x.step, Path: path, Length: f})
	rests(t, m, f.Standing, least, greatest)
	return f, nil
}

// last is the place of the finding that was just entered.
func (x *inspecting) last() int { return len(x.report.Findings) - 1 }

// length is judge, and notes what comes of it.
func (x *inspecting) length(t *tally, m *measured[units.Length], where, path string, least, greatest tolerance.Bracket) error {
	f, err := x.judge(t, m, where, path, least, greatest)
	if f != nil {
		settleMore(f)
		t.note(x.last(), f.Standing, f.Settle)
	}
	return err
}

// settleMore is settleBy for what isn't passed: a part that may be used again
// needs no finer reading, though it may be as new.
func settleMore(f *tolerance.Finding) {
	if f.Standing == tolerance.CantTell {
		settleBy(f)
	}
}

// room is memory for a finding, which stays where it is.
func (x *inspecting) room() *tolerance.Finding {
	if len(x.lengths) == cap(x.lengths) {
		x.lengths = make([]tolerance.Finding, 0, 32)
	}
	x.lengths = x.lengths[:len(x.lengths)+1]
	return &x.lengths[len(x.lengths)-1]
}

// lacks counts a reading that is still to be taken.
func (t *tally) lacks(measure, where string) {
	if t.missing++; t.missing == 1 {
		t.first = measure + ", " + where
	}
}

// miss enters a reading that is still to be taken.
func (x *inspecting) miss(t *tally, path, measure, where, with, limit string) {
	t.lacks(measure, where)
	x.report.Missing = append(x.report.Missing, inspection.Missing{Step: x.step, Path: path, Measure: measure, Where: where, With: with, Limit: limit})
}

// tests lists the tests that are asked of a part and not written down.
func (x *inspecting) tests(t *tally, care *inspection.Care, c *inspection.Condition, path, where string) {
	add := func(asked bool, done inspection.State, field, what, with string) {
		if asked && done != inspection.Yes {
			x.report.Missing = append(x.report.Missing, inspection.Missing{Step: x.step, Path: path + ".condition." + field, Measure: what, Where: where, With: with})
		}
	}
	add(care.CrackTest, c.CrackTested, "crackTested", "crack test", "dye or magnetic particles")
	add(care.PressureTest, c.PressureTested, "pressureTested", "pressure test", "")
}

// valueOf gives a reading its instrument's error; it stays as it is where that
// leaves the range, and judging refuses it.
func valueOf(r inspection.Reading, e units.Length) tolerance.Bracket {
	r, _ = r.Within(e)
	return r.Value
}
