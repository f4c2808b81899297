package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SkirtResult is one measure of one piston's skirt and how it stands.
type SkirtResult struct {
	Piston  int          `json:"piston"`  // its place in the set, from 0
	Measure SkirtMeasure `json:"measure"` // what was measured
	Station int          `json:"station"` // the place of its station in the survey; -1 where it has none
	// Known tells whether enough was read. Where it wasn't, and a limit was
	// given, the result stands with nothing in it: what was not measured is
	// not a pass.
	Known    bool               `json:"known"`
	Limited  bool               `json:"limited"`  // whether a limit was given for it
	Least    tolerance.Bracket  `json:"least"`    // of all places; for a clearance, least bore less greatest skirt
	Greatest tolerance.Bracket  `json:"greatest"` // of all places
	Standing tolerance.Standing `json:"standing"` // by the limits
}

// Fit tells whether a clearance is one. A least clearance that may be below
// zero, by what the readings leave open, is not a clearance fit: it is
// UnknownFit, which is not a pass, until the readings are closer.
func (r SkirtResult) Fit() tolerance.FitKind {
	if r.Measure != SkirtMeasureClearance && r.Measure != SkirtMeasurePulled || !r.Known {
		return tolerance.UnknownFit
	}
	return fitKind(r.Least)
}

// fitKind tells of the least clearance of two parts that were measured.
func fitKind(least tolerance.Bracket) tolerance.FitKind {
	if lo, end := least.Lower(); end != tolerance.Absent && lo >= 0 {
		return tolerance.ClearanceFit
	}
	if hi, end := least.Upper(); end != tolerance.Absent && hi < 0 {
		return tolerance.InterferenceFit
	}
	return tolerance.UnknownFit
}

// Inspect works out one skirt and appends a result for each measure that was
// read or has a limit, in the order of the bench. It takes no memory but dst's.
//
// It fails with an [InputError] where there is nothing to work out, a size
// can't be, or sizes are of no one skirt. A piston larger than its bore is none
// of these: it is a clearance below zero, an interference.
func (s *SkirtSurvey) Inspect(dst []SkirtResult, l *SkirtLimits) ([]SkirtResult, error) {
	if err := l.Validate(); err != nil {
		return dst, err
	}
	specs := l.specs()
	return s.judge(dst, &specs, 0)
}

// InspectSkirts is [SkirtSurvey.Inspect] for a set of pistons, one after the
// other. On an error dst is returned as it was.
func InspectSkirts(dst []SkirtResult, surveys []SkirtSurvey, l *SkirtLimits) ([]SkirtResult, error) {
	if err := l.Validate(); err != nil {
		return dst, err
	}
	if len(surveys) == 0 {
		return dst, &InputError{"pistons", "(none)", "one or more"}
	}
	whole, specs := len(dst), l.specs()
	for i := range surveys {
		var err error
		if dst, err = surveys[i].judge(dst, &specs, i); err != nil {
			return dst[:whole], err
		}
	}
	return dst, nil
}

// SkirtWorst is the worst standing of several results. Where one with a limit
// can't be told it is CantTell, unless another is past its limit already;
// without any limit it is CantTell.
func SkirtWorst(results []SkirtResult) tolerance.Standing {
	var w worst
	for i := range results {
		if r := &results[i]; r.Limited {
			w.add(r.Standing)
		}
	}
	return w.standing()
}

func (s *SkirtSurvey) judge(dst []SkirtResult, specs *[skirtMeasures]*tolerance.Spec, piston int) ([]SkirtResult, error) {
	if err := s.validate(); err != nil {
		return dst, err
	}
	whole := len(dst)
	for m := range SkirtMeasure(skirtMeasures) {
		dst = append(dst, SkirtResult{Piston: piston, Measure: m, Station: -1})
		r, spec := &dst[len(dst)-1], specs[m]
		if err := s.measure(r); err != nil {
			return dst[:whole], err
		}
		if r.Limited = !spec.IsZero(); !r.Limited && !r.Known {
			dst = dst[:len(dst)-1]
			continue
		}
		if r.Limited && r.Known {
			r.Standing = stand(spec, r.Least, r.Greatest)
		}
	}
	return dst, nil
}

// measuring is the station at the measuring height; nil where none is.
func (s *SkirtSurvey) measuring() (st *SkirtStation, at int) {
	for i := range s.Stations {
		if s.Stations[i].Height == s.MeasuringHeight && !s.Stations[i].Across.IsZero() {
			return &s.Stations[i], i
		}
	}
	return nil, -1
}

// measure fills in what was read of one measure.
func (s *SkirtSurvey) measure(r *SkirtResult) (err error) {
	one := func(x tolerance.Bracket) { r.Least, r.Greatest, r.Known = x, x, true }
	st, at := s.measuring()
	switch r.Measure {
	case SkirtMeasureTaper:
		low, high := -1, -1
		for i := range s.Stations {
			if s.Stations[i].Across.IsZero() {
				continue
			}
			if low < 0 {
				low = i
			}
			high = i
		}
		if high > low {
			r.Station = low
			one(SkirtTaper(s.Stations[low].Across, s.Stations[high].Across))
		}
		return nil
	case SkirtMeasureCollapse:
		for i := range s.Stations {
			if c := &s.Stations[i]; !c.Across.IsZero() && !c.New.IsZero() {
				r.Station = i
				one(SkirtCollapse(c.Across, c.New))
				return nil
			}
		}
		return nil
	case SkirtMeasurePulled:
		if len(s.Pulled) > 0 {
			r.Least, r.Greatest = tolerance.Extremes(s.Pulled...)
			r.Known = true
		}
		return nil
	}
	if st == nil {
		return nil
	}
	r.Station = at
	switch r.Measure {
	case SkirtMeasureSize:
		one(st.Across)
	case SkirtMeasureOvality:
		if !st.Along.IsZero() {
			one(SkirtOvality(st.Across, st.Along))
		}
	case SkirtMeasureWear:
		if !st.New.IsZero() {
			one(SkirtWear(st.Across, st.New))
		}
	case SkirtMeasureClearance:
		if len(s.Bores) > 0 {
			skirt := [1]tolerance.Bracket{st.Across}
			r.Least, r.Greatest, err = SkirtExtremes(s.Bores, skirt[:])
			if err != nil {
				return s.named(err)
			}
			r.Known = true
		}
	}
	return nil
}

// named puts the piston's name before the field of an error.
func (s *SkirtSurvey) named(err error) error {
	if e, ok := err.(*InputError); ok {
		e.Field = s.field(e.Field)
	}
	return err
}

// Finding is one result as a finding, with its place, its margin, and what would
// settle one that can't be told. The limits must be those that it was judged
// by.
func (s *SkirtSurvey) Finding(l *SkirtLimits, r SkirtResult) (tolerance.Finding, error) {
	where, name := s.Where, r.Measure.String()
	switch {
	case r.Measure == SkirtMeasurePulled && s.PullRule != "":
		name += " (" + clipWords(s.PullRule) + ")"
	case r.Station >= 0 && r.Station < len(s.Stations):
		if where != "" {
			where += ", "
		}
		where += s.Stations[r.Station].Height.String() + " up the skirt"
	}
	f, err := tolerance.Assess(name, where, l.Spec(r.Measure), r.Least, r.Greatest)
	switch {
	case err != nil:
		return f, err
	case !r.Known:
		f.Settle = s.missing(r.Measure)
	case r.Measure == SkirtMeasurePulled:
		if f.Settle != "" && len(f.Unsettled) > 0 {
			f.Settle += ": pull a strip nearer to it, or measure bore and skirt"
		}
	default:
		settleBy(&f)
	}
	return f, nil
}

// missing says what to measure for a measure that is not known.
func (s *SkirtSurvey) missing(m SkirtMeasure) string {
	height := s.MeasuringHeight.String()
	if st, _ := s.measuring(); st == nil && m != SkirtMeasureTaper && m != SkirtMeasureCollapse && m != SkirtMeasurePulled {
		return "measure the skirt across the thrust faces at the measuring height, " + height + " up"
	}
	switch m {
	case SkirtMeasureOvality:
		return "measure the skirt along the gudgeon pin too, " + height + " up"
	case SkirtMeasureTaper:
		return "one reading tells no taper: measure across the thrust faces at another height"
	case SkirtMeasureWear:
		return "look up the size when new, " + height + " up"
	case SkirtMeasureCollapse:
		return "measure near the lower edge, and look up the size when new at the same height"
	case SkirtMeasureClearance:
		return "measure the bore where the skirt runs"
	case SkirtMeasurePulled:
		return "pull a feeler strip by a rule that is named"
	}
	return ""
}

// settleBy adds how near the reading lies to the limit that it doesn't settle,
// and so how good it must be.
func settleBy(f *tolerance.Finding) {
	if len(f.Unsettled) == 0 || f.Settle == "" {
		return
	}
	limit := f.Unsettled[0]
	reading := f.Greatest
	if !reading.Contains(limit) {
		reading = f.Least
	}
	middle, ok := reading.Middle()
	width, ok2 := reading.Width()
	if !ok || !ok2 {
		return
	}
	off := middle.Sub(limit).Abs()
	if off == 0 {
		f.Settle += "; it reads on the limit itself, so only a finer instrument, or the manual, can tell"
		return
	}
	f.Settle += ": it reads " + off.String() + " from the limit and is known to ±" + ((width + units.Picometre) / 2).String() +
		"; measure again, to less than ±" + off.String() + " with all readings in it together"
}
