package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// crankshaft is the step of the shaft itself: journals, straightness, and what
// becomes of it.
func (x *shaftRun) crankshaft() {
	l, d := x.l, x.d
	var shaft partVerdict
	x.tests(inspection.StepCrank, "shaft", "crankshaft", l.Shaft.Care, &d.Shaft.Condition)
	x.journals(&x.in.mains, d.Mains, d.Shaft.Mains, &x.mains)
	x.journals(&x.in.pins, d.Crankpins, d.Shaft.Crankpins, &x.pins)
	x.straightness(&shaft)
	x.decideJournals(&x.mains)
	x.decideJournals(&x.pins)
	x.decideShaft(&shaft)
}

// decideShaft decides on the mains and the crankpins, once the shaft's condition is
// looked at, and on the shaft.
func (x *shaftRun) decideShaft(v *partVerdict) {
	condition, care := &x.d.Shaft.Condition, x.l.Shaft.Care
	nitrided := x.l.Shaft.Surface == JournalNitrided
	if v.fail == inspection.Repair {
		v.next = "straighten, true up or replace it by the engine maker's manual, and test it for cracks afterwards"
		if nitrided {
			v.fail, v.next = inspection.Replace, "a nitrided shaft isn't straightened: its skin cracks"
		}
	}
	d := x.bySize(inspection.StepCrank, "crankshaft", "", v, x.in.slipped["shaft"])
	all := [3]inspection.Decision{d}
	n := 0
	if v.worst > 0 || v.missing > 0 {
		n = 1
	}
	seen := v.taken > 0 || *condition != (inspection.Condition{})
	for _, to := range [...]*shaftGroup{&x.mains, &x.pins} {
		if !to.all {
			continue
		}
		seen = true
		all[n] = to.decision
		n++
		set := to.decision
		if set.Size != "" && (condition.Cracked == inspection.Yes || care.CrackTest && condition.CrackTested != inspection.Yes) {
			set.Because = clause(set.Because, "by size: "+set.Size)
		}
		set = condition.Overrule(care, set)
		x.r.Decisions = append(x.r.Decisions, set)
		to.decision = set
	}
	if !seen {
		return
	}
	if n > 0 {
		d = inspection.Worst(all[:n]...)
	}
	if x.unread() && d.Action <= inspection.CleanAndReUse && d.Action != inspection.MeasureAgain {
		d = inspection.Decision{Because: "not all journals have been read", Settle: "read those that are missing"}
	}
	if d.Part != "crankshaft" && d.Part != "" {
		d.Because = "the " + d.Part + " decide: " + d.Because
	}
	if v.missing > 0 && d.Part != "crankshaft" {
		d.Settle = clause(d.Settle, v.toRead())
	}
	d.Step, d.Part, d.Where = inspection.StepCrank, "crankshaft", ""
	if d.Action == inspection.ReUse {
		d.Action = inspection.CleanAndReUse
		d.Because = "nothing that was read asks for more; clean its oil ways, plugs out"
	}
	d = condition.Overrule(care, d)
	x.r.Decisions = append(x.r.Decisions, d)
	x.newShaft, x.openShaft = d.Action >= inspection.Replace, d.Action == inspection.MeasureAgain
	if x.newShaft {
		x.mains.gone, x.pins.gone = true, true
	}
}

// unread reports that a group is asked for and nothing of it was read.
func (x *shaftRun) unread() bool {
	return !x.mains.all && x.mains.g.n > 0 && x.mains.g.asked || !x.pins.all && x.pins.g.n > 0 && x.pins.g.asked
}

// sizes are what a journal may measure once the work is done; known is false where
// that isn't told yet.
func (to *shaftGroup) sizes(i int) (least, greatest tolerance.Bracket, known bool) {
	if to.gone {
		if size := to.g.limits.Size.New; !size.IsZero() {
			return size.Interval(), size.Interval(), true
		}
		return least, greatest, false
	}
	s := &to.states[i]
	return s.least, s.greatest, !s.least.IsZero()
}
