package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A BoreMeasure is one of the measures that a bore is judged by.
type BoreMeasure uint8

// The measures.
const (
	MeasureSize       BoreMeasure = iota // the greatest and the least of all readings
	MeasureMean                          // the mean of all readings, as some manuals judge wear
	MeasureOutOfRound                    // of the worst level
	MeasureTaper                         // by the limits' rule
	MeasureWear                          // of the greatest size, from the size last finished to
	MeasureChoke                         // mean of the last level less that of the first
	MeasureRidge                         //

	boreMeasures = iota
)

var boreMeasureNames = []string{"bore size", "mean bore size", "out-of-round", "taper", "wear", "choke", "ridge"}

// String is the measure in words.
func (m BoreMeasure) String() string { return wordOf(boreMeasureNames, m) }

// MarshalText writes what String gives.
func (m BoreMeasure) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *BoreMeasure) UnmarshalText(text []byte) error {
	return readWord("bore measure", boreMeasureNames, text, m)
}

// BoreMeasures are all measures, in order.
func BoreMeasures() []BoreMeasure {
	return []BoreMeasure{MeasureSize, MeasureMean, MeasureOutOfRound, MeasureTaper, MeasureWear, MeasureChoke, MeasureRidge}
}

// BoreLimits are the engine maker's, for bores as they are finished: at an
// oversize step the limits of size are those of that step. Any of them may be
// missing.
type BoreLimits struct {
	Size       tolerance.Spec `json:"size,omitzero"`       // the greatest and the least reading
	Mean       tolerance.Spec `json:"mean,omitzero"`       // the mean of all readings
	OutOfRound tolerance.Spec `json:"outOfRound,omitzero"` // a difference of diameters
	Taper      tolerance.Spec `json:"taper,omitzero"`      // by TaperRule
	TaperRule  TaperRule      `json:"taperRule,omitzero"`  // how the manual counts it
	TaperPer   units.Length   `json:"taperPer,omitzero"`   // for TaperPerLength: for each 100 mm, each inch
	Wear       tolerance.Spec `json:"wear,omitzero"`       // on the diameter, from the size last finished to
	// Choke is what the maker asks of the last level's mean less the first
	// one's. Where it is given, a bore smaller at its head end than the size
	// last finished to has no negative wear.
	Choke        tolerance.Spec `json:"choke,omitzero"`
	Ridge        tolerance.Spec `json:"ridge,omitzero"`        // by RidgeCounted
	RidgeCounted RidgeSide      `json:"ridgeCounted,omitzero"` // how the manual counts it
	// What the manual asks to be fitted while the bore is gauged.
	TorquePlate Recorded `json:"torquePlate,omitzero"`
	CapsTorqued Recorded `json:"capsTorqued,omitzero"` // the bearing caps
}

// Spec is what the limits ask of a measure.
func (l *BoreLimits) Spec(m BoreMeasure) tolerance.Spec {
	switch m {
	case MeasureSize:
		return l.Size
	case MeasureMean:
		return l.Mean
	case MeasureOutOfRound:
		return l.OutOfRound
	case MeasureTaper:
		return l.Taper
	case MeasureWear:
		return l.Wear
	case MeasureChoke:
		return l.Choke
	case MeasureRidge:
		return l.Ridge
	}
	return tolerance.Spec{}
}

// Validate refuses limits that contradict each other, a rule of taper per
// length without the length, and a limit on the ridge that isn't said to be
// per side or on the diameter.
func (l *BoreLimits) Validate() error {
	for m := range BoreMeasure(boreMeasures) {
		if err := l.Spec(m).Validate(); err != nil {
			return err
		}
	}
	switch {
	case l.TaperPer < 0 || l.TaperPer > largest:
		return &InputError{"taper per length", l.TaperPer.String(), "a length above 0 mm"}
	case l.TaperRule >= taperRules:
		return &InputError{"taper rule", "(unknown)", "one of the five"}
	case l.TaperRule == TaperPerLength && l.TaperPer == 0 && !l.Taper.IsZero():
		return &InputError{"taper per length", "(not given)", "a length above 0 mm, as the manual's rule says: for each 100 mm"}
	case l.RidgeCounted == RidgeNotStated && !l.Ridge.IsZero():
		return &InputError{"ridge limit", l.Ridge.Wear.String(), `said to be "per side" or "on diameter"`}
	}
	return nil
}

// measured is what the report has for a measure, as the limits count it.
func (l *BoreLimits) measured(r *BoreReport, m BoreMeasure) (least, greatest tolerance.Bracket, known bool) {
	var d *BoreSpread
	switch m {
	case MeasureSize:
		return r.Least.Size, r.Greatest.Size, true
	case MeasureMean:
		return r.Mean, r.Mean, true
	case MeasureOutOfRound:
		d = &r.OutOfRound
	case MeasureTaper:
		d = &r.Taper[min(l.TaperRule, taperRules-1)]
	case MeasureWear:
		d = &r.Wear
	case MeasureChoke:
		d = &r.Choke
	case MeasureRidge:
		if l.RidgeCounted == RidgePerSide && r.Ridge.Known {
			side := RidgeSided(r.Ridge.Value)
			return side, side, true
		}
		d = &r.Ridge
	default:
		return least, greatest, false
	}
	return d.Value, d.Value, d.Known
}

// Inspect works out the survey of one bore: sizes, out-of-round, taper by every
// rule, wear, ridge, shape, its standing by each measure, and what must be said
// beside them. The report's old content is lost, but for the memory of its
// notes, so that a report used again takes none.
//
// It fails, with an [InputError] or one of package instrument's, where there is
// nothing to work out: no reading, lists that don't match, a reading that the
// gauge can't show, a size that is a factor of 10 or 25.4 from its neighbours.
// A reading that is missing is none of these: it is noted, and nothing is made
// up for it.
func (s *BoreSurvey) Inspect(l *BoreLimits, r *BoreReport) error {
	if err := l.Validate(); err != nil {
		return err
	}
	return s.judge(l, r)
}

func (s *BoreSurvey) judge(l *BoreLimits, r *BoreReport) error {
	if err := s.inspect(r, l.TaperPer); err != nil {
		return err
	}
	for m := range BoreMeasure(boreMeasures) {
		spec := l.Spec(m)
		if spec.IsZero() {
			continue
		}
		if least, greatest, known := l.measured(r, m); known {
			r.Standing[m] = spec.StandAll(least, greatest)
		}
	}
	s.notes(r, l)
	return nil
}

// InspectBores is [BoreSurvey.Inspect] for all bores of a block. The reports are
// written over those of dst, whose memory is used again, and returned.
func InspectBores(dst []BoreReport, surveys []BoreSurvey, l *BoreLimits) ([]BoreReport, error) {
	if err := l.Validate(); err != nil {
		return dst[:0], err
	}
	if cap(dst) < len(surveys) {
		dst = append(dst[:cap(dst)], make([]BoreReport, len(surveys)-cap(dst))...)
	}
	dst = dst[:len(surveys)]
	for i := range surveys {
		if err := surveys[i].judge(l, &dst[i]); err != nil {
			return dst[:0], err
		}
	}
	return dst, nil
}

// Worst is the standing of the whole bore: the worst of its measures. Where one
// can't be told it is CantTell, unless another is past its limit already. A
// measure without a limit doesn't count; with no limit at all it is CantTell.
func (r *BoreReport) Worst(l *BoreLimits) tolerance.Standing {
	worst, open := tolerance.CantTell, false
	for m := range BoreMeasure(boreMeasures) {
		if l.Spec(m).IsZero() {
			continue
		}
		if r.Standing[m] == tolerance.CantTell {
			open = true
		}
		worst = max(worst, r.Standing[m])
	}
	for _, n := range r.Notes {
		open = open || n.Kind == SuspectReading || n.Kind == DirectionNeverRead || n.Kind == LevelNeverRead
	}
	if open && worst != tolerance.PastWearLimit {
		return tolerance.CantTell
	}
	return worst
}
