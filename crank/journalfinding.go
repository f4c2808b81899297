package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Finding is one measure of a journal against its limits, with the place of the
// worst reading, the margin, and what would settle an undecided one: how good a
// micrometer it takes. It fails with a tolerance.AssessError where the measure is
// not known: too little was read for it. The index, an angle, is for
// [JournalSurvey.IndexFinding].
func (s *JournalSurvey) Finding(l *JournalLimits, r *JournalReport, m JournalMeasure) (tolerance.Finding, error) {
	name, where := m.String(), s.Where
	if at := s.place(r, m, l.TaperRule); at != "" {
		if where != "" {
			where += ", "
		}
		where += at
	}
	if m == JournalTaperMeasure {
		name += " (" + l.TaperRule.String() + ")"
	}
	least, greatest, known := s.measured(l, r, m)
	if !known {
		return tolerance.Assess(name, where, l.Spec(m))
	}
	f, err := tolerance.Assess(name, where, l.Spec(m), least, greatest)
	if err != nil {
		return f, err
	}
	if settle := s.settle(&f, m); settle != "" {
		f.Settle = settle
	}
	return f, nil
}

// IndexFinding is the index of a crankpin against its limits. It fails with a
// tolerance.AssessError where it was not measured.
func (s *JournalSurvey) IndexFinding(l *JournalLimits) (tolerance.FindingOf[units.Angle], error) {
	if s.Index.IsZero() {
		return tolerance.Assess(JournalIndexMeasure.String(), s.Where, l.Index)
	}
	return tolerance.Assess(JournalIndexMeasure.String(), s.Where, l.Index, s.Index)
}

// place is where a measure is the worst, in words.
func (s *JournalSurvey) place(r *JournalReport, m JournalMeasure, rule JournalTaperRule) string {
	switch m {
	case JournalSizeMeasure, JournalWearMeasure:
		return "least at " + s.Name(r.Least.At)
	case JournalOutOfRoundMeasure:
		return s.PlaneName(r.OutOfRound.At.Plane)
	case JournalTaperMeasure:
		if rule == JournalTaperAlong || rule == JournalTaperEnds {
			return s.HeadingName(r.Taper[rule].At.Heading)
		}
	}
	return ""
}

// settle says how good a micrometer would tell on which side of a limit a journal
// lies. The middle of a bracket is what was read, and half its width the error
// that it has now.
func (s *JournalSurvey) settle(f *tolerance.Finding, m JournalMeasure) string {
	if len(f.Unsettled) == 0 || f.Settle == "" || m > JournalWearMeasure {
		return ""
	}
	limit, reading := f.Unsettled[0], f.Greatest
	if !f.Greatest.Contains(limit) {
		reading = f.Least
	}
	middle, ok := reading.Middle()
	width, ok2 := reading.Width()
	if !ok || !ok2 {
		return ""
	}
	have := (width + units.Picometre) / 2
	off := middle.Sub(limit).Abs()
	if off == 0 {
		return f.Settle + "; it reads on the limit itself, so only a finer micrometer, or the manual, can tell"
	}
	text := f.Settle + ": it reads " + off.String() + " from the limit, and is known to ±" + have.String()
	need := off
	if m == JournalWearMeasure {
		lo, hi := journalEnds(s.Finished)
		from := (hi - lo + units.Picometre) / 2
		if from >= off {
			return text + ", of which ±" + from.String() + " is the size last ground to: look up what this shaft was ground to"
		}
		need -= from
	}
	if m == JournalOutOfRoundMeasure || m == JournalTaperMeasure {
		need = off / 2 // of two readings
	}
	return text + ": measure again with a micrometer good to less than ±" + max(need, units.Picometre).String() + ", setting included"
}
