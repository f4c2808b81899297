package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// faceDecision is what becomes of a face: the worse of what its flatness and
// its height ask for.
func (x *inspecting) faceDecision(one *oneFace, report *FaceReport) (inspection.Decision, error) {
	high := x.decide(&one.high, rule{used: inspection.ReUse, past: inspection.Replace})
	if !one.asked() && !one.bow.asked() {
		return high, nil
	}
	flat := x.decide(&one.level, rule{used: inspection.ReUse, past: inspection.ReconditionTo, strict: true})
	switch {
	case one.bent != nil:
		flat.Action, flat.Settle = inspection.Repair, ""
		flat.Because = one.bent.String() + ": straighten the head or line-bore the cam tunnel by the maker's process, or renew the head; a skim would leave it bowed"
	case flat.Action == inspection.ReconditionTo && one.bow.asked() && one.bowed == tolerance.CantTell:
		flat.Action = inspection.MeasureAgain
		flat.Settle = joined("the cam tunnel first: a skim makes the face flat and leaves a bowed tunnel bowed", flat.Settle)
	case flat.Action == inspection.ReconditionTo:
		var err error
		if flat, err = x.skim(one, report, flat); err != nil {
			return flat, err
		}
	}
	if !one.height.asked() {
		return flat, nil
	}
	d := inspection.Worst(flat, high)
	d.Slips = append(append([]string(nil), flat.Slips...), high.Slips...)
	return d, nil
}

// skim plans the skim of a face that is past its limits.
func (x *inspecting) skim(one *oneFace, report *FaceReport, d inspection.Decision) (inspection.Decision, error) {
	again := func(settle string) (inspection.Decision, error) {
		d.Action, d.Settle = inspection.MeasureAgain, joined(settle, d.Settle)
		return d, nil
	}
	l := one.l.Skim
	if l == nil {
		d.Settle = joined(d.Settle, "what a skim takes and must leave isn't in the limits: see the engine maker's manual")
		return d, nil
	}
	departure := report.Flatness
	if departure.IsZero() {
		departure = report.Worst
	}
	if _, end := departure.Upper(); end == tolerance.Absent {
		return again("how far it departs isn't known: try thicker blades, until one doesn't enter")
	}
	plan := FaceSkim{Departure: departure, Stock: l.Stock, Step: l.Step, MostOff: l.MostOff, OffBefore: one.r.OffBefore.Value}
	least, limited := leastAllowed(one.height.spec)
	if limited {
		if one.high.missing > 0 || one.high.suspect != "" {
			return again("measure its height, which says whether it may be skimmed")
		}
		plan.LeastHeight = least
		plan.Height, _ = tolerance.Extremes(one.bracks...)
	}
	p, err := plan.Plan()
	if err != nil {
		return d, inspection.At(one.path, err)
	}
	if x.out != nil {
		x.out.Skims = append(x.out.Skims, Skim{Step: one.step, Bank: one.bank, Plan: p})
	}
	switch {
	case p.Limited && p.Verdict == tolerance.Undecided:
		return again("measure its height more closely: whether it may lose " + p.Off.String() + " can't be told")
	case p.Limited && p.Verdict != tolerance.Within:
		d.Action = inspection.Replace
		d.Because = joined(d.Because, "a skim of "+p.Off.String()+" would leave it too low by "+tolerance.Exactly(units.Length(0)).Sub(p.Left).String())
		return d, nil
	}
	d.Size = "skim " + p.Off.String() + " off"
	if !p.Height.IsZero() {
		d.Size += ", to " + p.Height.String()
		f, err := tolerance.Assess(one.height.name, one.where, one.height.spec, p.Height)
		if err != nil {
			return d, inspection.At(one.path, err)
		}
		x.report.Predicted = append(x.report.Predicted, inspection.Found(one.step, one.heights, f))
	}
	if !p.Limited {
		d.Settle = joined(d.Settle, "how low it may be isn't in the limits: see the engine maker's manual before it is cut")
	}
	if report.Flatness.IsZero() && one.l.Grid == nil {
		d.Settle = joined(d.Settle, "a twist may ask for more: only both diagonals, each said to rest or to rock, tell")
	}
	return d, nil
}

// leastAllowed is the least that limits allow.
func leastAllowed(s tolerance.Spec) (units.Length, bool) {
	for _, b := range [...]tolerance.Band{s.Wear, s.New} {
		if lo, end := b.Lower(); end != tolerance.Absent && lo > 0 {
			return lo, true
		}
	}
	return 0, false
}
