package piston

import (
	"github.com/tenthou/tenthou/tolerance"
)

// A PinResult is one measure of one gudgeon pin and how it stands.
type PinResult struct {
	Piston  int        `json:"piston"`  // its place in the set, from 0
	Measure PinMeasure `json:"measure"` // what was measured
	Section int        `json:"section"` // of an ovality the worst section's place, in its list; else -1
	// Known tells whether enough was read. Where it wasn't, and a limit was
	// given, the result stands with nothing in it: what was not measured is
	// not a pass.
	Known    bool               `json:"known"`
	Limited  bool               `json:"limited"`  // whether a limit was given for it
	Least    tolerance.Bracket  `json:"least"`    // of all places; of a clearance, least hole less greatest pin
	Greatest tolerance.Bracket  `json:"greatest"` // of all places; of a clearance, greatest hole less least pin
	Standing tolerance.Standing `json:"standing"` // by the limits
}

// Fit tells whether pin and hole have clearance or interference; UnknownFit is
// one that the readings don't tell, or a measure that is no fit.
func (r PinResult) Fit() tolerance.FitKind {
	switch {
	case !r.Known:
		return tolerance.UnknownFit
	case r.Measure == PinMeasureBossClearance || r.Measure == PinMeasureSmallEndClearance || r.Measure == PinMeasureEndFloat:
		return fitKind(r.Least)
	case r.Measure == PinMeasureSmallEndInterference:
		if lo, end := r.Least.Lower(); end != tolerance.Absent && lo > 0 {
			return tolerance.InterferenceFit
		}
		if hi, end := r.Greatest.Upper(); end != tolerance.Absent && hi <= 0 {
			return tolerance.ClearanceFit
		}
	}
	return tolerance.UnknownFit
}

// Inspect works out one pin and appends a result for each measure that was read
// or has a limit, in the order of the bench. It takes no memory but dst's for a
// pin and for holes of up to six sections each.
//
// It fails with an [InputError] where there is nothing to work out, a size can't
// be, sizes are of no one pin, or sections were read in different numbers of
// directions. A pin larger than its hole is none of these: it is a clearance
// below zero, an interference.
func (s *PinSurvey) Inspect(dst []PinResult, l *PinLimits) ([]PinResult, error) {
	if err := l.Validate(); err != nil {
		return dst, err
	}
	specs := l.specs()
	return s.judge(dst, &specs, 0, new(pinSums))
}

// InspectPins is [PinSurvey.Inspect] for a set of pistons, one after the other.
// On an error dst is returned as it was.
func InspectPins(dst []PinResult, surveys []PinSurvey, l *PinLimits) ([]PinResult, error) {
	if err := l.Validate(); err != nil {
		return dst, err
	}
	if len(surveys) == 0 {
		return dst, &InputError{"pins", "(none)", "one or more"}
	}
	whole, specs := len(dst), l.specs()
	for i := range surveys {
		var err error
		if dst, err = surveys[i].judge(dst, &specs, i, new(pinSums)); err != nil {
			return dst[:whole], err
		}
	}
	return dst, nil
}

// PinWorst is the worst standing of several results. Where one with a limit
// can't be told it is CantTell, unless another is past its limit already;
// without any limit it is CantTell.
func PinWorst(results []PinResult) tolerance.Standing {
	var w worst
	for i := range results {
		if r := &results[i]; r.Limited {
			w.add(r.Standing)
		}
	}
	return w.standing()
}

// pinSums are the sizes of one survey.
type pinSums struct {
	least, greatest [pinLists]tolerance.Bracket
}

func (s *PinSurvey) judge(dst []PinResult, specs *[pinMeasures]*tolerance.Spec, piston int, w *pinSums) ([]PinResult, error) {
	var like tolerance.Bracket
	for i := range pinLists {
		var err error
		if w.least[i], w.greatest[i], err = s.sections(i, &like); err != nil {
			return dst, err
		}
	}
	if err := s.others(&like); err != nil {
		return dst, err
	}
	for m := range PinMeasure(pinMeasures) {
		if s.applies(m) {
			dst = append(dst, PinResult{Piston: piston, Measure: m, Section: -1})
			r, spec := &dst[len(dst)-1], specs[m]
			s.measure(r, w)
			if r.Limited = !spec.IsZero(); !r.Limited && !r.Known {
				dst = dst[:len(dst)-1]
				continue
			}
			if r.Limited && r.Known {
				r.Standing = stand(spec, r.Least, r.Greatest)
			}
		}
	}
	return dst, nil
}

// others refuses sizes other than the sections' that can't be.
func (s *PinSurvey) others(like *tolerance.Bracket) error {
	for i, b := range [5]*tolerance.Bracket{&s.NewPin, &s.NewBoss, &s.NewSmallEnd, &s.Between, &s.Length} {
		if b.IsZero() {
			continue
		}
		lo, ok := positive(*b)
		name := [5]string{"new pin", "new boss", "new small end", "between circlips", "pin length"}[i]
		if !ok {
			return size(s.field(name), *b)
		}
		if f, _ := positive(*like); i < 3 && !like.IsZero() && (lo > f+f/10 || f > lo+lo/10) {
			return &InputError{s.field(name), b.String(), "near the sizes read, " + like.String() + ": one of them is in another unit, or a digit slipped"}
		}
	}
	if like.IsZero() && (s.Between.IsZero() || s.Length.IsZero()) {
		return &InputError{s.field("readings"), "(none)", "a pin, a boss or a small end measured at one section, or the end float's two lengths"}
	}
	if !s.Between.IsZero() && !s.Length.IsZero() {
		err := skirtPair("between circlips", s.Between, "pin length", s.Length)
		if e, ok := err.(*InputError); ok {
			e.Field = s.field(e.Field)
		}
		return err
	}
	return nil
}

// applies tells whether a pin held so has a measure.
func (s *PinSurvey) applies(m PinMeasure) bool {
	switch m {
	case PinMeasureSmallEndClearance, PinMeasureEndFloat:
		return s.Fit != PinPressed
	case PinMeasureSmallEndInterference:
		return s.Fit != PinFloating
	}
	return true
}

// measure fills in what was read of one measure.
func (s *PinSurvey) measure(r *PinResult, w *pinSums) {
	set := func(least, greatest tolerance.Bracket) { r.Least, r.Greatest, r.Known = least, greatest, true }
	fit := func(pin, hole int, of func(hole, pin tolerance.Bracket) tolerance.Bracket) {
		if len(s.list(pin)) > 0 && len(s.list(hole)) > 0 {
			a, b := of(w.least[hole], w.greatest[pin]), of(w.greatest[hole], w.least[pin])
			set(a, b)
		}
	}
	wear := func(i int, fresh tolerance.Bracket) {
		if len(s.list(i)) > 0 && !fresh.IsZero() {
			set(PinHoleWear(w.least[i], fresh), PinHoleWear(w.greatest[i], fresh))
		}
	}
	switch r.Measure {
	case PinMeasureSize, PinMeasureWear:
		least, greatest := w.least[pinAtBosses], w.greatest[pinAtBosses]
		switch {
		case len(s.AtBosses)+len(s.AtSmallEnd) == 0:
			return
		case len(s.AtBosses) == 0:
			least, greatest = w.least[pinAtSmallEnd], w.greatest[pinAtSmallEnd]
		case len(s.AtSmallEnd) > 0:
			least, greatest = least.Min(w.least[pinAtSmallEnd]), greatest.Max(w.greatest[pinAtSmallEnd])
		}
		if r.Measure == PinMeasureSize {
			set(least, greatest)
		} else if !s.NewPin.IsZero() {
			set(PinWear(greatest, s.NewPin), PinWear(least, s.NewPin))
		}
	case PinMeasureOvality:
		s.ovality(r, s.AtBosses, s.AtSmallEnd)
	case PinMeasureTaper:
		s.taper(r, s.AtBosses, s.AtSmallEnd)
	case PinMeasureBossOvality:
		s.ovality(r, s.Bosses, nil)
	case PinMeasureBossTaper:
		s.taper(r, s.Bosses, nil)
	case PinMeasureBossWear:
		wear(pinBosses, s.NewBoss)
	case PinMeasureBossClearance:
		fit(pinAtBosses, pinBosses, PinClearance[tolerance.Bracket])
	case PinMeasureSmallEndOvality:
		s.ovality(r, s.SmallEnd, nil)
	case PinMeasureSmallEndTaper:
		s.taper(r, s.SmallEnd, nil)
	case PinMeasureSmallEndWear:
		wear(pinSmallEnd, s.NewSmallEnd)
	case PinMeasureSmallEndClearance:
		fit(pinAtSmallEnd, pinSmallEnd, PinClearance[tolerance.Bracket])
	case PinMeasureSmallEndInterference:
		if s.Fit == PinPressed && len(s.AtSmallEnd) > 0 && len(s.SmallEnd) > 0 {
			set(PinInterference(w.least[pinAtSmallEnd], w.greatest[pinSmallEnd]), PinInterference(w.greatest[pinAtSmallEnd], w.least[pinSmallEnd]))
		}
	case PinMeasureEndFloat:
		if !s.Between.IsZero() && !s.Length.IsZero() {
			f := PinEndFloat(s.Between, s.Length)
			set(f, f)
		}
	}
}

// ovality is the worst section's.
func (s *PinSurvey) ovality(r *PinResult, lists ...[]PinSection) {
	k := 0
	for _, list := range lists {
		for i := range list {
			if sizes := list[i].Sizes; len(sizes) > 1 {
				o := PinOvality(sizes[0], sizes[1:]...)
				hi, _ := o.Upper()
				if was, _ := r.Greatest.Upper(); !r.Known || hi > was {
					r.Section = k
				}
				if r.Known {
					o = o.Max(r.Greatest)
				}
				r.Least, r.Greatest, r.Known = o, o, true
			}
			k++
		}
	}
}

// taper is the worst direction's. Where the pin's two parts were read in
// different numbers of directions, those that both have count.
func (s *PinSurvey) taper(r *PinResult, first, second []PinSection) {
	var room [6]tolerance.Bracket // most pins have fewer sections; more take memory
	n := 0
	for _, list := range [2][]PinSection{first, second} {
		if len(list) > 0 && (n == 0 || len(list[0].Sizes) < n) {
			n = len(list[0].Sizes)
		}
	}
	for j := range n {
		sizes := room[:0]
		for _, list := range [2][]PinSection{first, second} {
			for i := range list {
				sizes = append(sizes, list[i].Sizes[j])
			}
		}
		if len(sizes) < 2 {
			return
		}
		t := sizes[0].Spread(sizes[1:]...) // PinTaper, which as a generic function would take memory
		if r.Known {
			t = t.Max(r.Greatest)
		}
		r.Least, r.Greatest, r.Known = t, t, true
	}
}
