package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// remedy follows from the standing, and past the limits from what is worn.
func (p Pump) remedy(m PumpMeasure, j *PumpJudgement) {
	f := j.Finding
	if m == PumpSide && !p.UsedWidth.IsZero() && !p.NewWidth.IsZero() {
		j.WithNewGears = PumpEndWithGears(f.Greatest, p.UsedWidth, p.NewWidth.Interval())
	}
	switch f.Standing {
	case tolerance.AsNew, tolerance.Usable:
		j.Remedy, j.Next = PumpReUse, PumpReUse.String()
		return
	case tolerance.CantTell:
		if f.Spec.IsZero() {
			j.Remedy, j.Next = PumpAskManual, "no limit is given: the engine maker's manual has it"
			return
		}
		j.Remedy, j.Next = PumpMeasureAgain, "not a pass; to settle it, "+f.Settle
		return
	}
	tight := f.New.Least == tolerance.Below || f.Wear.Least == tolerance.Below
	wide := f.New.Greatest == tolerance.Above || f.Wear.Greatest == tolerance.Above
	if tight && !wide {
		j.Remedy, j.Next = PumpFreeUp, PumpFreeUp.String()+"; a pump that is too tight scores or seizes"
		return
	}
	lead := ""
	if f.Standing == tolerance.OutsideNewBand {
		lead = "no wear limit is given, so the engine maker's manual decides whether it may run; "
	}
	j.Remedy, j.Next = p.past(m, j)
	j.Next = lead + j.Next
}

// past is the remedy for a clearance that is certainly too great.
func (p Pump) past(m PumpMeasure, j *PumpJudgement) (PumpRemedy, string) {
	switch m {
	case PumpCover:
		return PumpFaceCover, PumpFaceCover.String()
	case PumpShaft:
		return PumpRebush, PumpRebush.String() + "; a shaft that leans wears tips and body too"
	case PumpPlunger:
		return PumpRenewValve, PumpRenewValve.String() + "; a worn plunger sticks, and the oil pressure with it"
	case PumpSide:
		return p.pastEnd(j)
	}
	return PumpRenewGears, PumpRenewGears.String() + "; where the clearance is still past its limit with new ones, the body is worn: renew the pump"
}

// pastEnd tells worn gears from a worn body.
func (p Pump) pastEnd(j *PumpJudgement) (PumpRemedy, string) {
	if j.WithNewGears.IsZero() {
		return PumpMeasureAgain, "measure the gears' width, and look up that of new ones: whether gears or body are worn follows from it; and lay the straight-edge across the cover"
	}
	allowed := j.Finding.Spec.New
	if allowed.IsZero() {
		allowed = j.Finding.Spec.Wear
	}
	switch allowed.Judge(j.WithNewGears) {
	case tolerance.Within:
		return PumpRenewGears, PumpRenewGears.String() + ": new ones bring the end clearance back"
	case tolerance.Above:
		next := PumpFaceBody.String() + ": with new gears the end clearance would still be too great"
		if most, end := allowed.Upper(); end != tolerance.Absent {
			cut := PumpFaceCut(j.WithNewGears, tolerance.Exactly(most))
			next += ", so " + cut.Text(units.InMillimetres, 3) + " at the least must come off with them"
		}
		return PumpFaceBody, next
	case tolerance.Below:
		return PumpMeasureAgain, "with new gears the cover would bind: check that the widths are of this pump, and measure again"
	}
	return PumpMeasureAgain, "whether new gears bring the end clearance back can't be told from these readings: measure " + p.loosest(j) + " more finely"
}

// loosest is what is known the least closely of what the end clearance with new
// gears is made of.
func (p Pump) loosest(j *PumpJudgement) string {
	most, name := units.Length(-1), ""
	try := func(what string, b tolerance.Bracket) units.Length {
		w, ok := b.Width()
		if b.IsZero() {
			return 0
		}
		if !ok {
			w = sliderLargest
		}
		if w > most {
			most, name = w, what
		}
		return w
	}
	rest := try("the cover's wear", p.CoverWear) + try("the gasket", p.Gasket)
	try("the used gears", p.UsedWidth)
	try("the new gears", p.NewWidth.Interval())
	if w, ok := j.Finding.Greatest.Width(); !ok || w-rest > most {
		name = "the gap under the straight-edge"
	}
	return name
}
