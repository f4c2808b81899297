package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Valve is what is measured on one valve out of the head. What wasn't measured
// is left at zero, and has no finding.
type Valve struct {
	Where     string                          // "inlet 2"
	Margin    []tolerance.Bracket             // at several places round the rim
	HeadRun   []tolerance.Bracket             // dial readings on the face, square to it, the stem in V-blocks
	StemRun   []tolerance.Bracket             // dial readings at the stem's middle
	TipWear   tolerance.Bracket               // of the tip, below its rim
	TipOff    tolerance.Bracket               // ground off the tip before; zero for none
	Length    tolerance.Bracket               // over all
	FaceAngle tolerance.Interval[units.Angle] // from the plane square to the stem
	// Sodium says that the stem is hollow and filled with sodium.
	Sodium bool

	MarginLimits  tolerance.Spec                // the least margin
	HeadRunLimits tolerance.Spec                // of the face's run-out
	StemRunLimits tolerance.Spec                // of the stem's run-out
	TipLimits     tolerance.Spec                // of the tip's wear
	LengthLimits  tolerance.Spec                // of the length
	AngleLimits   tolerance.SpecOf[units.Angle] // of the face's angle
	// TipMost is the most that may ever be ground off the tip; 0 where the maker
	// doesn't say.
	TipMost units.Length
}

// A ValveReport is what the readings tell of a valve. A finding of zero value
// is of something that wasn't measured.
type ValveReport struct {
	Margin    tolerance.Finding                `json:"margin,omitzero"`    // least and greatest round the rim
	HeadRun   tolerance.Finding                `json:"headRun,omitzero"`   // of the face
	StemRun   tolerance.Finding                `json:"stemRun,omitzero"`   // of the stem
	TipWear   tolerance.Finding                `json:"tipWear,omitzero"`   // of the tip
	Length    tolerance.Finding                `json:"length,omitzero"`    // over all
	FaceAngle tolerance.FindingOf[units.Angle] `json:"faceAngle,omitzero"` // of the face
	// GrindLeft is what the margin still allows to be ground off the face, along
	// the stem; zero value where margin or limit weren't given.
	GrindLeft tolerance.Bracket `json:"grindLeft,omitzero"`
	// TipLeft is what may still come off the tip, by TipMost.
	TipLeft tolerance.Bracket `json:"tipLeft,omitzero"`
	Bend    tolerance.Bracket `json:"bend,omitzero"` // half of the stem's run-out
	// TipGrind says whether grinding the tip true would keep to TipMost: Undecided
	// where that can't be told or no most was given.
	TipGrind tolerance.Verdict `json:"tipGrind,omitzero"`
	Next     string            `json:"next"` // what to do
}

// Worst is the worst standing of all that was measured and has limits; CantTell
// where anything that was measured can't be told.
func (r ValveReport) Worst() tolerance.Standing {
	worst, any := tolerance.CantTell, false
	for _, s := range []struct {
		measure  string
		standing tolerance.Standing
		limited  bool
	}{
		{r.Margin.Measure, r.Margin.Standing, !r.Margin.Spec.IsZero()}, {r.HeadRun.Measure, r.HeadRun.Standing, !r.HeadRun.Spec.IsZero()},
		{r.StemRun.Measure, r.StemRun.Standing, !r.StemRun.Spec.IsZero()}, {r.TipWear.Measure, r.TipWear.Standing, !r.TipWear.Spec.IsZero()},
		{r.Length.Measure, r.Length.Standing, !r.Length.Spec.IsZero()}, {r.FaceAngle.Measure, r.FaceAngle.Standing, !r.FaceAngle.Spec.IsZero()},
	} {
		if s.measure == "" || !s.limited {
			continue
		}
		switch {
		case !any:
			worst = s.standing
		case s.standing >= tolerance.OutsideNewBand:
			worst = max(worst, s.standing)
		case worst < tolerance.OutsideNewBand && s.standing == tolerance.CantTell:
			worst = tolerance.CantTell
		case worst != tolerance.CantTell:
			worst = max(worst, s.standing)
		}
		any = true
	}
	return worst
}

// Inspect judges what was measured, and says what margin and tip still allow. It
// fails with an [InputError] where a size can't be or nothing was measured.
//
// A valve whose stem is filled with sodium is never cut, drilled or ground into:
// sodium burns in air and explodes with water. One that is cracked or worn
// through is handled, and got rid of, as its maker says.
func (v Valve) Inspect() (ValveReport, error) {
	if err := v.check(); err != nil {
		return ValveReport{}, err
	}
	var r ValveReport
	var err error
	assess := func(into *tolerance.Finding, measure string, spec tolerance.Spec, readings ...tolerance.Bracket) {
		if err == nil && len(readings) > 0 && !readings[0].IsZero() {
			*into, err = inputAssess(measure, v.Where, spec, readings...)
		}
	}
	assess(&r.Margin, "valve margin", v.MarginLimits, v.Margin...)
	if len(v.HeadRun) > 1 {
		assess(&r.HeadRun, "run-out of the valve's face", v.HeadRunLimits, ValveRunOut(v.HeadRun[0], v.HeadRun[1:]...))
	}
	if len(v.StemRun) > 1 {
		run := ValveRunOut(v.StemRun[0], v.StemRun[1:]...)
		assess(&r.StemRun, "run-out of the stem", v.StemRunLimits, run)
		r.Bend = ValveBend(run)
	}
	assess(&r.TipWear, "wear of the valve's tip", v.TipLimits, v.TipWear)
	assess(&r.Length, "length of the valve", v.LengthLimits, v.Length)
	if err == nil && !v.FaceAngle.IsZero() {
		r.FaceAngle, err = inputAssess("angle of the valve's face", v.Where, v.AngleLimits, v.FaceAngle)
	}
	if err != nil {
		return ValveReport{}, err
	}
	if least, ok := v.leastMargin(); ok && len(v.Margin) > 0 {
		m, _ := tolerance.Extremes(v.Margin...)
		r.GrindLeft = ValveGrindLeft(m, tolerance.Exactly(least))
	}
	if v.TipMost > 0 {
		off := v.TipOff
		if off.IsZero() {
			off = tolerance.Exactly(units.Length(0))
		}
		r.TipLeft = ValveTipLeft(tolerance.Exactly(v.TipMost), off)
		if !v.TipWear.IsZero() {
			r.TipGrind = tolerance.AtLeast(units.Length(0)).Judge(r.TipLeft.Sub(v.TipWear))
		}
	}
	r.Next = v.next(r)
	return r, nil
}

// leastMargin is the lower limit: the wear limit's, else the new-part band's.
func (v Valve) leastMargin() (units.Length, bool) {
	for _, b := range []tolerance.Band{v.MarginLimits.Wear, v.MarginLimits.New} {
		if lo, end := b.Lower(); end != tolerance.Absent {
			return lo, true
		}
	}
	return 0, false
}

func (v Valve) next(r ValveReport) string {
	bad := func(f tolerance.Finding) bool { return f.Standing >= tolerance.OutsideNewBand }
	switch {
	case bad(r.Margin), bad(r.StemRun), bad(r.Length), r.TipGrind == tolerance.Below:
		if v.Sodium {
			return "renew the valve; it is filled with sodium: never cut, drill or grind into it, and get rid of it as its maker says"
		}
		return "renew the valve"
	case bad(r.HeadRun), r.FaceAngle.Standing >= tolerance.OutsideNewBand:
		if v.Sodium {
			return "reface it only as its maker says for a valve filled with sodium, and never into the hollow; then measure the margin again"
		}
		return "reface the valve, then measure its margin again"
	case bad(r.TipWear):
		return "grind the tip true, no more than the maker allows, and set the clearance anew"
	}
	for _, f := range []tolerance.Finding{r.Margin, r.HeadRun, r.StemRun, r.TipWear, r.Length} {
		if f.Measure != "" && !f.Spec.IsZero() && f.Standing == tolerance.CantTell && f.Settle != "" {
			return f.Measure + ": " + f.Settle
		}
	}
	return "none by these readings; look for cracks, burns and pitting as well"
}

func (v Valve) check() error {
	for _, x := range []struct {
		field string
		least units.Length
		all   []tolerance.Bracket
	}{
		{"valve margin", 0, v.Margin}, {"dial reading on the face", -inputLargest, v.HeadRun}, {"dial reading on the stem", -inputLargest, v.StemRun},
	} {
		for _, b := range x.all {
			if err := inputBracket(x.field, b, x.least); err != nil {
				return err
			}
		}
	}
	for _, x := range []struct {
		field string
		b     tolerance.Bracket
		least units.Length
	}{{"wear of the tip", v.TipWear, 0}, {"ground off the tip", v.TipOff, 0}, {"length of the valve", v.Length, units.Picometre}} {
		if !x.b.IsZero() {
			if err := inputBracket(x.field, x.b, x.least); err != nil {
				return err
			}
		}
	}
	if len(v.HeadRun) == 1 || len(v.StemRun) == 1 {
		return &InputError{"dial readings", "1", "two or more, round one turn"}
	}
	if len(v.Margin)+len(v.HeadRun)+len(v.StemRun) == 0 && v.TipWear.IsZero() && v.Length.IsZero() && v.FaceAngle.IsZero() {
		return &InputError{"readings of the valve", "none", "one or more"}
	}
	if err := inputAngle("angle of the face", v.FaceAngle); err != nil {
		return err
	}
	return inputAllowance("most off the tip", v.TipMost)
}
