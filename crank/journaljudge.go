package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A JournalMeasure is one of the measures that a journal is judged by. The zero
// value is JournalSizeMeasure.
type JournalMeasure uint8

// The measures.
const (
	JournalSizeMeasure       JournalMeasure = iota // the greatest and the least of all readings
	JournalMeanMeasure                             // the mean of all readings
	JournalOutOfRoundMeasure                       // of the worst plane
	JournalTaperMeasure                            // by the limits' rule
	JournalWearMeasure                             // of the least size, from the size last ground to
	JournalFilletMeasure                           // radius of the fillets
	JournalThrustMeasure                           // width between the thrust faces
	JournalStrokeMeasure                           // of a crankpin
	JournalIndexMeasure                            // an angle

	journalMeasures = iota
)

var journalMeasureNames = []string{
	"journal size", "mean journal size", "out-of-round", "taper", "wear", "fillet radius", "thrust face width", "stroke", "index",
}

// String is the measure in words.
func (m JournalMeasure) String() string { return journalWord(journalMeasureNames, m) }

// MarshalText writes what String gives.
func (m JournalMeasure) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *JournalMeasure) UnmarshalText(text []byte) error {
	return journalRead("journal measure", journalMeasureNames, text, m)
}

// JournalMeasures are all measures, in order.
func JournalMeasures() []JournalMeasure {
	all := make([]JournalMeasure, journalMeasures)
	for i := range all {
		all[i] = JournalMeasure(i)
	}
	return all
}

// JournalLimits are the engine maker's, for journals at the size they were last
// ground to: at an undersize the limits of size are those of that step. Any of
// them may be missing.
type JournalLimits struct {
	Size        tolerance.Spec                `json:"size,omitzero"`        // the greatest and the least reading
	Mean        tolerance.Spec                `json:"mean,omitzero"`        // the mean of all readings
	OutOfRound  tolerance.Spec                `json:"outOfRound,omitzero"`  // a difference of diameters
	Taper       tolerance.Spec                `json:"taper,omitzero"`       // by TaperRule
	TaperRule   JournalTaperRule              `json:"taperRule,omitzero"`   // how the manual counts it
	Wear        tolerance.Spec                `json:"wear,omitzero"`        // on the diameter, from the size last ground to
	Fillet      tolerance.Spec                `json:"fillet,omitzero"`      // radius
	ThrustWidth tolerance.Spec                `json:"thrustWidth,omitzero"` // between the thrust faces
	Stroke      tolerance.Spec                `json:"stroke,omitzero"`      // of a crankpin
	Index       tolerance.SpecOf[units.Angle] `json:"index,omitzero"`       // of a crankpin, from its place
}

// Spec is what the limits ask of a measure that is a length; of the index, which
// is an angle, JournalLimits.Index holds it.
func (l *JournalLimits) Spec(m JournalMeasure) tolerance.Spec {
	if s := l.spec(m); s != nil {
		return *s
	}
	return tolerance.Spec{}
}

func (l *JournalLimits) spec(m JournalMeasure) *tolerance.Spec {
	switch m {
	case JournalSizeMeasure:
		return &l.Size
	case JournalMeanMeasure:
		return &l.Mean
	case JournalOutOfRoundMeasure:
		return &l.OutOfRound
	case JournalTaperMeasure:
		return &l.Taper
	case JournalWearMeasure:
		return &l.Wear
	case JournalFilletMeasure:
		return &l.Fillet
	case JournalThrustMeasure:
		return &l.ThrustWidth
	case JournalStrokeMeasure:
		return &l.Stroke
	}
	return nil
}

// asks reports whether the limits ask something of a measure.
func (l *JournalLimits) asks(m JournalMeasure) bool {
	if m == JournalIndexMeasure {
		return !l.Index.IsZero()
	}
	s := l.spec(m)
	return s != nil && !s.IsZero()
}

// Validate refuses limits that contradict each other, and a rule that isn't one.
func (l *JournalLimits) Validate() error {
	for m := range JournalMeasure(journalMeasures) {
		if s := l.spec(m); s != nil && !s.IsZero() {
			if err := s.Validate(); err != nil {
				return err
			}
		}
	}
	if l.TaperRule >= journalTaperRules {
		return &InputError{"taper rule", "(unknown)", "one of the four"}
	}
	return l.Index.Validate()
}

// measured is what was measured of a length, as the limits count it.
func (s *JournalSurvey) measured(l *JournalLimits, r *JournalReport, m JournalMeasure) (least, greatest tolerance.Bracket, known bool) {
	one := func(b *tolerance.Bracket) (tolerance.Bracket, tolerance.Bracket, bool) { return *b, *b, !b.IsZero() }
	spread := func(d *JournalSpread) (tolerance.Bracket, tolerance.Bracket, bool) { return d.Value, d.Value, d.Known }
	switch m {
	case JournalSizeMeasure:
		return r.Least.Size, r.Greatest.Size, true
	case JournalMeanMeasure:
		return one(&r.Mean)
	case JournalOutOfRoundMeasure:
		return spread(&r.OutOfRound)
	case JournalTaperMeasure:
		return spread(&r.Taper[min(l.TaperRule, journalTaperRules-1)])
	case JournalWearMeasure:
		return spread(&r.Wear)
	case JournalFilletMeasure:
		return one(&s.Fillet)
	case JournalThrustMeasure:
		return one(&s.ThrustWidth)
	case JournalStrokeMeasure:
		return one(&s.Stroke)
	}
	return least, greatest, false
}

// Inspect works out the survey of one journal: sizes, out-of-round, taper by every
// rule, wear, shape, its standing by each measure, and what must be said beside
// them. The report's old content is lost, but for the memory of its notes, so
// that a report used again takes none.
//
// It fails, with an [InputError] or one of package instrument's, where there is
// nothing to work out: no reading, lists that don't match, a reading that the
// gauge can't show, a size that is a factor of 10 or 25.4 from its neighbours. A
// reading that is missing is none of these: it is noted, and nothing is made up
// for it.
func (s *JournalSurvey) Inspect(l *JournalLimits, r *JournalReport) error {
	if err := l.Validate(); err != nil {
		return err
	}
	return s.judge(l, r)
}

func (s *JournalSurvey) judge(l *JournalLimits, r *JournalReport) error {
	if err := s.inspect(r); err != nil {
		return err
	}
	for m := range JournalMeasure(journalMeasures) {
		if !l.asks(m) {
			continue
		}
		if m == JournalIndexMeasure {
			if !s.Index.IsZero() {
				r.Standing[m] = l.Index.Stand(s.Index)
			}
			continue
		}
		least, greatest, known := s.measured(l, r, m)
		switch spec := l.spec(m); {
		case !known:
		case m == JournalSizeMeasure:
			r.Standing[m] = spec.StandAll(least, greatest)
		default:
			r.Standing[m] = spec.Stand(least)
		}
	}
	s.notes(r, l)
	return nil
}

// InspectJournals is [JournalSurvey.Inspect] for all journals of a shaft that share
// their limits: its mains, or its crankpins. The reports are appended to dst;
// memory that lies beyond its length is used again.
func InspectJournals(dst []JournalReport, surveys []JournalSurvey, l *JournalLimits) ([]JournalReport, error) {
	if err := l.Validate(); err != nil {
		return dst, err
	}
	n := len(dst)
	for i := range surveys {
		if len(dst) < cap(dst) {
			dst = dst[:len(dst)+1] // with the notes' memory that it had
		} else {
			dst = append(dst, JournalReport{})
		}
		if err := surveys[i].judge(l, &dst[len(dst)-1]); err != nil {
			return dst[:n], err
		}
	}
	return dst, nil
}

// Worst is the standing of the whole journal: the worst of its measures. Where one
// can't be told it is CantTell, unless another is past its limit already. A
// measure without a limit doesn't count; with no limit at all it is CantTell. A
// direction or plane that was never read, and a suspect reading, leave it open.
func (r *JournalReport) Worst(l *JournalLimits) tolerance.Standing {
	worst, open := tolerance.CantTell, false
	for m := range JournalMeasure(journalMeasures) {
		if !l.asks(m) {
			continue
		}
		open = open || r.Standing[m] == tolerance.CantTell
		worst = max(worst, r.Standing[m])
	}
	for _, n := range r.Notes {
		open = open || n.Kind == JournalReadingSuspect || n.Kind == JournalHeadingNeverRead || n.Kind == JournalPlaneNeverRead
	}
	if open && worst != tolerance.PastWearLimit {
		return tolerance.CantTell
	}
	return worst
}
