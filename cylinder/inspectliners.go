package cylinder

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// A linerSeen is one wet liner on its way.
type linerSeen struct {
	c      *ReadingsCylinder
	path   string
	tally  tally
	places []tolerance.Bracket
}

// linerRule: a liner that protrudes otherwise than printed isn't gripped, or
// cracks its flange, whether worn or not.
var linerRule = rule{used: inspection.ReUse, past: inspection.ReconditionTo, strict: true}

// liners judges wet liners bank by bank, and finds shims for a bank of which
// one protrudes otherwise than it may.
func (x *inspecting) liners() error {
	l := x.in.limits.Liners
	if l == nil {
		return nil
	}
	for _, bank := range x.in.banks {
		liners := make([]linerSeen, len(bank))
		known := false
		for i, number := range bank {
			s := &liners[i]
			var at int
			s.c, at = x.cylinder(number)
			s.path = x.in.paths[at] + ".liner"
			s.tally = tallyOf(inspection.StepLiners, "cylinder liner", x.in.where[number-1])
			if err := x.liner(s); err != nil {
				return err
			}
			known = known || s.tally.known()
		}
		if !known {
			continue
		}
		if err := x.linerSteps(liners); err != nil {
			return err
		}
		if err := x.decideLiners(liners); err != nil {
			return err
		}
	}
	return nil
}

// liner judges one liner by itself.
func (x *inspecting) liner(s *linerSeen) error {
	l, t := x.in.limits.Liners, &s.tally
	places := l.Places
	if places == nil {
		places = []string{""}
	}
	for i, name := range places {
		path, where := inspection.Index(s.path+".protrusion", i), t.where
		if name != "" {
			where += ", " + name
		}
		var r inspection.Reading
		if i < len(s.c.Liner.Protrusion) {
			r = s.c.Liner.Protrusion[i]
		}
		if !r.Taken {
			x.miss(t, path, x.in.protrusion.name, where, with(l.With, "depth gauge over the block face, liner clamped"), x.in.protrusion.printed)
			continue
		}
		r, err := r.Within(l.Error)
		if err != nil {
			return inspection.At(path, err)
		}
		t.taken++
		s.places = append(s.places, r.Value)
	}
	if s.places == nil {
		return nil
	}
	if _, err := x.length(t, &x.in.protrusion, t.where, s.path+".protrusion", "", s.places...); err != nil {
		return err
	}
	switch {
	case len(s.places) > 1:
		_, err := x.length(t, &x.in.variation, t.where, s.path+".protrusion", "", LinerVariation(s.places[0], s.places[1:]...))
		return err
	case x.in.variation.asked():
		t.stands("its variation isn't known: it was read at one place", "read its protrusion at several places")
	}
	return nil
}

// linerSteps judges the steps between neighbours that were both read.
func (x *inspecting) linerSteps(liners []linerSeen) error {
	rule := WetLiners{Rule: x.in.limits.Liners.StepFrom}
	for i := 1; i < len(liners); i++ {
		a, b := &liners[i-1], &liners[i]
		if a.places == nil || b.places == nil {
			continue
		}
		where := a.tally.where + " to " + b.tally.where
		step := rule.step(a.places, b.places)
		f, err := x.judge(&b.tally, &x.in.step, where, b.path+".protrusion", step)
		if err != nil {
			return err
		}
		if f == nil {
			continue
		}
		x.note(&a.tally, f.Standing, !f.Spec.New.IsZero(), f.Settle, where)
		x.note(&b.tally, f.Standing, !f.Spec.New.IsZero(), f.Settle, where)
		a.tally.slips = append(a.tally.slips, x.in.step.slips...)
	}
	return nil
}

// decideLiners decides on the liners of a bank.
func (x *inspecting) decideLiners(liners []linerSeen) error {
	l := x.in.limits.Liners
	all := make([]inspection.Decision, len(liners))
	past, whole := false, true
	bank := WetLiners{Protrusion: x.in.protrusion.spec, Step: x.in.step.spec, Variation: x.in.variation.spec, Rule: l.StepFrom}
	for i := range liners {
		s := &liners[i]
		all[i] = x.decide(&s.tally, linerRule)
		past = past || all[i].Action == inspection.ReconditionTo
		whole = whole && s.tally.missing == 0
		one := WetLiner{Where: s.tally.where, Places: s.places}
		if s.c.Liner.Shim.Taken {
			one.Shim = s.c.Liner.Shim.Value
		}
		bank.Liners = append(bank.Liners, one)
	}
	switch {
	case !past:
	case !whole || x.in.protrusion.broken || bank.Protrusion.IsZero():
		for i := range all {
			if all[i].Action == inspection.ReconditionTo {
				all[i].Settle = joined("read every liner of the bank: which shims suit follows from all of them", all[i].Settle)
			}
		}
	default:
		if err := x.shims(bank, liners, all); err != nil {
			return err
		}
	}
	x.report.Decisions = append(x.report.Decisions, all...)
	return nil
}

// shims chooses what to put under the liners of a bank.
func (x *inspecting) shims(bank WetLiners, liners []linerSeen, all []inspection.Decision) error {
	l := x.in.limits.Liners
	choice, err := bank.ChooseShims(l.Shims, l.mostShims())
	if err != nil {
		return inspection.At("cylinders", err)
	}
	if x.out != nil {
		x.out.Shims = append(x.out.Shims, choice)
	}
	if !choice.Ok {
		for i := range all {
			if all[i].Action == inspection.ReconditionTo {
				all[i].Action, all[i].Settle = inspection.Repair, choice.Next
				all[i].Because = joined(all[i].Because, choice.Blocked)
			}
		}
		return nil
	}
	counts := map[string]int{}
	for i := range all {
		pick := &choice.Picks[i]
		if all[i].Action == inspection.MeasureAgain {
			continue
		}
		name := "no shim"
		if len(pick.Shims) > 0 {
			name = "shim " + strings.Join(pick.Shims, " and ")
		}
		all[i].Size = name
		if all[i].Action < inspection.ReconditionTo {
			all[i].Action = inspection.ReconditionTo
			all[i].Because = "goes with its bank, whose steps hang together; by itself: " + all[i].Because
		}
		for _, s := range pick.Shims {
			counts[s]++
		}
		f, err := tolerance.Assess(x.in.protrusion.name, liners[i].tally.where, x.in.protrusion.spec, pick.Least, pick.Greatest)
		if err != nil {
			return inspection.At(liners[i].path, err)
		}
		x.report.Predicted = append(x.report.Predicted, inspection.Found(inspection.StepLiners, liners[i].path+".protrusion", f))
	}
	for _, s := range l.Shims { // in the order of the stock, each name once
		if n := counts[s.Name]; n > 0 {
			delete(counts, s.Name)
			x.order(inspection.Order{Step: inspection.StepLiners, What: "liner shims", Size: s.Name, Count: n, Sure: !x.open})
		}
	}
	return nil
}

// finish judges the cross-hatch of bores that keep their surface.
func (x *inspecting) finish() error {
	l := x.in.limits.Finish
	if l == nil || x.rebored {
		return nil
	}
	var all []tally
	known := false
	for i, where := range x.in.where {
		c, at := x.cylinder(i + 1)
		t := tallyOf(inspection.StepBoreFinish, "bore finish", where)
		path := x.in.paths[at] + ".crossHatch"
		if !c.CrossHatch.Taken {
			x.miss(&t, path, x.in.crossHatch.name, where, with(l.With, "protractor over a print of the bore"), x.in.crossHatch.printed)
			all = append(all, t)
			continue
		}
		r, err := c.CrossHatch.Within(l.Error)
		if err != nil {
			return inspection.At(path, err)
		}
		t.taken++
		known = true
		if err := quantity(x, &t, &x.in.crossHatch, where, path, r.Value); err != nil {
			return err
		}
		all = append(all, t)
	}
	for i := range all {
		if known {
			x.keep(x.decide(&all[i], rule{used: inspection.ReUse, past: inspection.ReconditionSame, strict: true}))
		}
	}
	return nil
}
