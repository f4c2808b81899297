package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Finding is one measure of a bore against its limits, with the place of the
// worst reading, the margin, and what would settle an undecided one: how good a
// gauge it takes, or that the setting ring is what stands in the way. It fails
// with a tolerance.AssessError where the measure is not known: too little was
// read for it.
func (s *BoreSurvey) Finding(l *BoreLimits, r *BoreReport, m BoreMeasure) (tolerance.Finding, error) {
	name, where := m.String(), s.Where
	if at := s.place(r, m, l.TaperRule); at != "" {
		if where != "" {
			where += ", "
		}
		where += at
	}
	if m == MeasureTaper {
		name += " (" + l.TaperRule.String()
		if l.TaperRule == TaperPerLength {
			name += ", " + l.TaperPer.String()
		}
		name += ")"
	}
	if m == MeasureRidge {
		name += " (" + l.RidgeCounted.String() + ")"
	}
	least, greatest, known := l.measured(r, m)
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

// place is where a measure is the worst, in words.
func (s *BoreSurvey) place(r *BoreReport, m BoreMeasure, rule TaperRule) string {
	switch m {
	case MeasureSize, MeasureWear:
		return "greatest at " + s.Name(r.Greatest.At)
	case MeasureOutOfRound:
		return s.LevelName(r.OutOfRound.At.Level)
	case MeasureTaper:
		if rule == TaperAlong || rule == TaperTopToBottom || rule == TaperPerLength {
			return s.HeadingName(r.Taper[rule].At.Heading)
		}
	}
	return ""
}

// settle says how good a gauge would tell on which side of a limit a bore
// lies. Of the readings the ends are known; their middle is what was read, and
// half their width the error that they have now.
func (s *BoreSurvey) settle(f *tolerance.Finding, m BoreMeasure) string {
	if len(f.Unsettled) == 0 || f.Settle == "" || m == MeasureRidge {
		return ""
	}
	limit := f.Unsettled[0]
	reading := f.Greatest
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
		return f.Settle + "; it reads on the limit itself, so only a finer gauge, or the manual, can tell"
	}
	text := f.Settle + ": it reads " + off.String() + " from the limit, and is known to ±" + have.String()
	// Of a size the gauge's setting is a part of that error, and of a wear the
	// size that it counts from; what is left is the reading's own.
	from := units.Length(0)
	if m == MeasureWear && !s.Unworn.Taken {
		lo, hi := bothOf(s.Finished)
		if from = (hi - lo + units.Picometre) / 2; from >= off {
			return text + ", of which ±" + from.String() + " is the size last finished to: gauge the bore below the ring travel, and count from there"
		}
	}
	difference := m == MeasureOutOfRound || m == MeasureTaper || m == MeasureChoke || m == MeasureWear && s.Unworn.Taken
	if common := s.Gauge.Setting.Error + (s.Gauge.Step+units.Picometre)/2; !difference && common > 0 && have-common < off {
		return text + ", of which ±" + common.String() + " is the gauge's setting: make that good to less than ±" + (off - have + common).String()
	}
	need := off - from
	if difference {
		need = off / 2 // of two readings
	}
	return text + ": read again with a gauge good to less than ±" + max(need, units.Picometre).String()
}
