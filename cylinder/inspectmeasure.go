package cylinder

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
	m := measured[Q]{name: name, spec: l.Spec(), printed: printedLimit(l)}
	path = "limits." + path
	from := len(in.slips)
	in.slips = l.Proofread(in.slips, path, name)
	if m.broken = m.spec.Validate() != nil || l.New.IsZero() && !l.NewAlso.IsZero() || l.Wear.IsZero() && !l.WearAlso.IsZero(); m.broken {
		if len(in.slips) == from {
			in.slips = append(in.slips, inspection.Slip{Path: path + ".wear", What: name, Text: m.spec.Validate().Error()})
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
func printedLimit[Q units.Quantity](l inspection.LimitOf[Q]) string {
	text := ""
	add := func(before string, p, also tolerance.PrintedOf[Q]) {
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
	add("new ", l.New, l.NewAlso)
	add("wear limit ", l.Wear, l.WearAlso)
	return text
}

// A tally gathers what is known of one part.
type tally struct {
	step  inspection.Step
	part  string
	where string

	taken   int // readings that were taken
	missing int // and that are still to be
	first   string
	rank    int // of the worst finding, as linerRank; −1 for none
	worst   int // its place in the report's findings
	at      string
	open    []string // what would settle what is open
	slips   []string // by their paths: limits' and readings'
	suspect string   // a reading that looks like a slip
	fresh   bool     // as new by some measure
	used    bool     // not as new by some
	doubt   bool     // the standing hangs on which column of a limit is right
	against []string // what else stands against a pass: caps that were loose
	settle  []string // and what would settle that
}

func tallyOf(step inspection.Step, part, where string) tally {
	return tally{step: step, part: part, where: where, rank: -1}
}

// known reports whether anything was read.
func (t *tally) known() bool { return t.taken > 0 }

// note enters a finding that was just appended. Within a wear limit alone a
// part is neither as new nor not.
func (x *inspecting) note(t *tally, s tolerance.Standing, banded bool, settle, at string) {
	t.fresh = t.fresh || s == tolerance.AsNew
	t.used = t.used || s == tolerance.Usable && banded
	if r := linerRank(s); r > t.rank {
		t.rank, t.worst, t.at = r, len(x.report.Findings)-1, at
	}
	if s == tolerance.CantTell && settle != "" {
		t.open = append(t.open, settle)
	}
}

// rests enters what a limit's slips do to a standing.
func rests[Q units.Quantity](t *tally, m *measured[Q], s tolerance.Standing, stations []tolerance.Interval[Q]) {
	if m.slips == nil {
		return
	}
	for _, s := range m.slips {
		if !slices.Contains(t.slips, s) {
			t.slips = append(t.slips, s)
		}
	}
	if m.broken || m.other.Validate() != nil || m.other.StandAll(stations...) != s {
		t.doubt = true
	}
}

// judge judges lengths by a limit and lists the finding, which is nil where
// there is nothing to judge by.
func (x *inspecting) judge(t *tally, m *measured[units.Length], where, path string, stations ...tolerance.Bracket) (*tolerance.Finding, error) {
	if m.spec.IsZero() {
		rests(t, m, tolerance.CantTell, stations)
		return nil, nil
	}
	f := x.room()
	var err error
	if *f, err = tolerance.Assess(m.name, where, m.spec, stations...); err != nil {
		return nil, inspection.At(path, err)
	}
	x.report.Findings = append(x.report.Findings, inspection.Finding{Step: t.step, Path: path, Length: f})
	rests(t, m, f.Standing, stations)
	return f, nil
}

// length is judge, and counts the finding. at is where in the part the worst
// of it is, in words, for the decision.
func (x *inspecting) length(t *tally, m *measured[units.Length], where, path, at string, stations ...tolerance.Bracket) (*tolerance.Finding, error) {
	f, err := x.judge(t, m, where, path, stations...)
	if f == nil {
		return f, err
	}
	if len(f.Unsettled) > 0 && f.Settle != "" {
		f.Settle += ": measure again with a finer instrument"
	}
	x.note(t, f.Standing, !m.spec.New.IsZero(), f.Settle, at)
	return f, nil
}

// found lists and counts a finding that was made elsewhere by the same limit.
func (x *inspecting) found(t *tally, m *measured[units.Length], f *tolerance.Finding, path, at string) {
	rests(t, m, f.Standing, []tolerance.Bracket{f.Least, f.Greatest})
	if !m.spec.IsZero() {
		x.report.Findings = append(x.report.Findings, inspection.Finding{Step: t.step, Path: path, Length: f})
		x.note(t, f.Standing, !m.spec.New.IsZero(), f.Settle, at)
	}
}

// quantity is length for another quantity.
func quantity[Q units.Quantity](x *inspecting, t *tally, m *measured[Q], where, path string, station tolerance.Interval[Q]) error {
	if m.spec.IsZero() {
		rests(t, m, tolerance.CantTell, []tolerance.Interval[Q]{station})
		return nil
	}
	f, err := tolerance.Assess(m.name, where, m.spec, station)
	if err != nil {
		return inspection.At(path, err)
	}
	x.report.Findings = append(x.report.Findings, inspection.Found(t.step, path, f))
	rests(t, m, f.Standing, []tolerance.Interval[Q]{station})
	x.note(t, f.Standing, !m.spec.New.IsZero(), f.Settle, "")
	return nil
}

// room is memory for a finding, which stays where it is.
func (x *inspecting) room() *tolerance.Finding {
	if len(x.lengths) == cap(x.lengths) {
		x.lengths = make([]tolerance.Finding, 0, 32)
	}
	x.lengths = append(x.lengths, tolerance.Finding{})
	return &x.lengths[len(x.lengths)-1]
}

// miss enters a reading that is still to be taken.
func (x *inspecting) miss(t *tally, path, measure, where, with, limit string) {
	if t.missing++; t.missing == 1 {
		t.first = measure + ", " + where
	}
	x.report.Missing = append(x.report.Missing, inspection.Missing{Step: t.step, Path: path, Measure: measure, Where: where, With: with, Limit: limit})
}

// slip enters a reading that looks like one.
func (x *inspecting) slip(t *tally, s inspection.Slip) {
	x.report.Slips = append(x.report.Slips, s)
	t.slips = append(t.slips, s.Path)
	if t.suspect == "" {
		t.suspect = s.What + ": " + s.Text
	}
}

// stands enters something that stands against a pass, with what settles it.
func (t *tally) stands(against, settle string) {
	t.against, t.settle = append(t.against, against), append(t.settle, settle)
}
