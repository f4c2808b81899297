package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

type massInterval = tolerance.Interval[units.Mass]

// massField is one mass of a rod's.
type massField struct {
	name, measure string
	of            func(*ReadingsMasses) *inspection.ReadingOf[units.Mass]
}

var massFields = []massField{
	{"bigEnd", "mass of the big end", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.BigEnd }},
	{"smallEnd", "mass of the small end", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.SmallEnd }},
	{"shells", "mass of the shells", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.Shells }},
	{"piston", "mass of the piston", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.Piston }},
	{"pin", "mass of the gudgeon pin", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.Pin }},
	{"rings", "mass of the rings", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.Rings }},
	{"locks", "mass of the locks", func(m *ReadingsMasses) *inspection.ReadingOf[units.Mass] { return &m.Locks }},
}

// asked is how many of the masses are asked for, in the order of massFields: the
// ends for a spread, all of them but the locks, which not all pins have, for a
// bobweight.
func (p *LimitsBalance) asked() int {
	switch {
	case given(&p.Bobweight):
		return len(massFields) - 1
	case given(&p.BigEnds) || given(&p.SmallEnds) || given(&p.Rods):
		return 2
	}
	return 0
}

// balance judges masses and unbalance.
func (x *shaftRun) balance() {
	p := &x.l.Balance
	if n := p.asked(); n > 0 {
		x.masses(n)
	}
	if p.Rotor != nil {
		x.unbalance()
	}
}

// masses judges how the rods' masses differ, and the bobweights.
func (x *shaftRun) masses(asked int) {
	p, g := &x.l.Balance, &x.in.rods
	var v partVerdict
	whole := make([]*ReadingsMasses, g.n) // nil where one wasn't weighed
	for i := range g.n {
		sheet, place := x.rodSheet(i)
		all := true
		for k := range asked {
			if massFields[k].of(&sheet.Masses).Taken {
				v.taken++
				continue
			}
			all = false
			m := inspection.Missing{Step: inspection.StepBalance, Path: "rods", Measure: massFields[k].measure, Where: g.names[i], With: "scales"}
			if place < g.n {
				m.Path = g.paths[place] + ".masses." + massFields[k].name
			}
			x.miss(&v, m)
		}
		if all {
			whole[i] = &sheet.Masses
		}
	}
	for _, s := range [...]struct {
		limit   *inspection.LimitOf[units.Mass]
		measure string
		of      func(*ReadingsMasses) massInterval
	}{
		{&p.BigEnds, "difference of the big ends' masses", func(m *ReadingsMasses) massInterval { return m.BigEnd.Value }},
		{&p.SmallEnds, "difference of the small ends' masses", func(m *ReadingsMasses) massInterval { return m.SmallEnd.Value }},
		{&p.Rods, "difference of the rods' masses", func(m *ReadingsMasses) massInterval { return m.BigEnd.Value.Add(m.SmallEnd.Value) }},
	} {
		if !given(s.limit) {
			continue
		}
		var list []massInterval
		for _, m := range whole {
			if m != nil {
				list = append(list, s.of(m))
			}
		}
		if len(list) < 2 {
			continue
		}
		f, err := tolerance.Assess(s.measure, "", s.limit.Spec(), list[0].Spread(list[1:]...))
		if err != nil {
			x.fail("rods", err)
			return
		}
		keepOf(x, &v, inspection.StepBalance, "rods", f, inspection.ReconditionSame)
	}
	if given(&p.Bobweight) {
		x.bobweights(whole, &v)
	}
	d := x.bySize(inspection.StepBalance, "masses of the rods", "", &v, x.in.slipped["balance"])
	if d.Action == inspection.ReconditionSame {
		d.Because = clause(d.Because, "take metal off the heavy ones, where the maker allows, or balance the shaft for them")
	}
	x.decide(&v, nil, inspection.Care{}, d)
}

// bobweights judges what hangs on each crankpin against what the manual prints.
func (x *shaftRun) bobweights(whole []*ReadingsMasses, v *partVerdict) {
	p := &x.l.Balance
	for pin := range x.in.pins.n {
		on := BobweightPin{Where: x.in.pins.names[pin], Oil: p.Oil, Factor: p.Factor}
		all := true
		for i, at := range x.in.rods.pin {
			if at != pin {
				continue
			}
			m := whole[i]
			if m == nil {
				all = false
				break
			}
			on.Rods = append(on.Rods, BobweightRod{
				Where: x.in.rods.names[i], BigEnd: m.BigEnd.Value, Shells: m.Shells.Value, SmallEnd: m.SmallEnd.Value,
				Piston: m.Piston.Value, Pin: m.Pin.Value, Rings: m.Rings.Value, Locks: m.Locks.Value,
			})
		}
		if !all || len(on.Rods) == 0 {
			continue
		}
		b, err := on.Bobweight()
		if err != nil {
			x.doubt(v, "rods", on.Where, err)
			continue
		}
		f, err := tolerance.Assess("bobweight", on.Where, p.Bobweight.Spec(), b.Bobweight)
		if err != nil {
			x.fail("rods", err)
			return
		}
		keepOf(x, v, inspection.StepBalance, "rods", f, inspection.ReconditionSame)
	}
}

// unbalance judges what the balancing machine showed.
func (x *shaftRun) unbalance() {
	rotor := *x.l.Balance.Rotor
	rotor.Readings = x.d.Balance.Unbalance
	d := inspection.Decision{Step: inspection.StepBalance, Part: "balance of the crankshaft"}
	if len(rotor.Readings) == 0 {
		x.r.Missing = append(x.r.Missing, inspection.Missing{Step: inspection.StepBalance, Path: "balance.unbalance", Measure: "unbalance", Where: "crankshaft, in two planes", With: "balancing machine"})
		return
	}
	r, err := rotor.Assess()
	if err != nil {
		x.fail("balance.unbalance", err)
		return
	}
	d.Because = r.Next
	switch r.Verdict {
	case tolerance.Within:
		d.Action = inspection.ReUse
	case tolerance.Above:
		d.Action = inspection.ReconditionSame
	default:
		d.Because, d.Settle = "the machine's readings don't tell", r.Next
	}
	if x.newShaft {
		d = anotherShaft(d)
	}
	x.r.Decisions = append(x.r.Decisions, d)
}
