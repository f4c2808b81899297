package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// pumpAsk is one measure of the pump that may be asked for.
type pumpAsk struct {
	measure PumpMeasure
	limit   *inspection.Limit
	list    []inspection.Reading
	path    string
	with    string
}

func (x *shaftRun) pumpAsks() [7]pumpAsk {
	p, s := &x.l.OilPump, &x.d.OilPump
	const blades, edge = "feeler blades", "straight-edge and feeler blades"
	return [...]pumpAsk{
		{PumpTip, &p.Tip, s.Tip, "oilPump.tip", blades}, {PumpBody, &p.Body, s.Body, "oilPump.body", blades},
		{PumpCover, &p.Cover, s.Cover, "oilPump.cover", edge}, {PumpSide, &p.Side, s.Side, "oilPump.side", edge},
		{PumpBacklash, &p.Backlash, s.Backlash, "oilPump.backlash", blades}, {PumpShaft, &p.Shaft, s.Shaft, "oilPump.shaft", "micrometers"},
		{PumpPlunger, &p.Plunger, s.Plunger, "oilPump.plunger", "micrometers"},
	}
}

// pumpAction is what a remedy means for the pump.
func pumpAction(r PumpRemedy) inspection.Action {
	switch r {
	case PumpReUse:
		return inspection.CleanAndReUse
	case PumpFaceBody, PumpRebush:
		return inspection.Repair
	case PumpFaceCover:
		return inspection.ReconditionSame
	case PumpRenewGears, PumpRenewValve:
		return inspection.Replace
	}
	return inspection.MeasureAgain
}

// pump judges the oil pump and the relief valve's spring.
func (x *shaftRun) pump() {
	p := &x.l.OilPump
	care := p.Care
	var v partVerdict
	pump := Pump{Kind: p.Kind, Gasket: p.Gasket, NewWidth: p.NewWidth}
	var paths [7]string
	asked := false
	for _, a := range x.pumpAsks() {
		if !given(a.limit) {
			continue
		}
		asked = true
		at := shaftSpot{inspection.StepOilPump, pumpWhere, "", true}
		if read := x.readAll(nil, &v, &at, a.list, 1, 0, shaftAsk{a.path, a.measure.String(), "", a.with, a.limit}); len(read) > 0 {
			paths[len(pump.Checks)] = a.path
			pump.Checks = append(pump.Checks, PumpCheck{Measure: a.measure, Stations: read, Limits: a.limit.Spec()})
			if a.measure == PumpCover && p.CoverWear {
				least, greatest := tolerance.Extremes(read...)
				lo, _ := least.Lower()
				hi, _ := greatest.Upper()
				pump.CoverWear = journalSpan(lo, hi)
			}
		}
	}
	if asked {
		x.tests(inspection.StepOilPump, "oilPump", pumpWhere, care, &x.d.OilPump.Condition)
	}
	if !p.NewWidth.IsZero() && given(&p.Side) {
		at := shaftSpot{inspection.StepOilPump, pumpWhere, "oilPump", true}
		pump.UsedWidth, _ = x.read(&v, &at, &x.d.OilPump.UsedWidth, 0, shaftAsk{"usedWidth", "width of the gears", "", "micrometer", nil})
	}
	if len(pump.Checks) > 0 {
		x.pumpChecks(&pump, paths[:], &v)
	}
	if asked {
		d := x.bySize(inspection.StepOilPump, pumpWhere, "", &v, x.in.slipped["oilPump"])
		if d.Action == inspection.ReUse {
			d.Action = inspection.CleanAndReUse
		}
		d = x.decide(&v, &x.d.OilPump.Condition, care, d)
		if d.Action >= inspection.Replace && (v.taken > 0 || x.d.OilPump.Condition != inspection.Condition{}) {
			x.r.Orders = append(x.r.Orders, inspection.Order{Step: inspection.StepOilPump, What: "oil pump, or its gears as a set", Count: 1, Sure: true})
		}
	}
	x.relief()
}

const pumpWhere = "oil pump"

// pumpChecks judges what was read of the pump.
func (x *shaftRun) pumpChecks(pump *Pump, paths []string, v *partVerdict) {
	r, err := pump.Assess()
	if err != nil {
		x.doubt(v, "oilPump", pumpWhere, err)
		return
	}
	worst := -1
	for i := range r.Judgements {
		j := &r.Judgements[i]
		j.Finding.Where = pumpWhere
		work := pumpAction(j.Remedy)
		before := v.rank
		x.keep(v, inspection.StepOilPump, paths[i], &j.Finding, work)
		if runOutRank(j.Finding.Standing) >= runOutRank(tolerance.OutsideNewBand) && (worst < 0 || v.rank > before) {
			worst, v.next = i, j.Next
		}
	}
}

// relief judges the relief valve's spring.
func (x *shaftRun) relief() {
	p, s := &x.l.OilPump.Relief, &x.d.OilPump
	if !given(&p.Free) && !given(&p.Load) && !given(&p.Pressure) {
		return
	}
	const where = "relief valve spring"
	var v partVerdict
	at := shaftSpot{inspection.StepOilPump, where, "oilPump", true}
	free, ok := x.read(&v, &at, &s.Free, 0, shaftAsk{"free", "free length", "", "vernier calliper", &p.Free})
	loaded := given(&p.Load) || given(&p.Pressure)
	if loaded {
		if s.Load.Taken {
			v.taken++
		} else {
			x.miss(&v, inspection.Missing{Step: inspection.StepOilPump, Path: "oilPump.load", Measure: "load at " + p.Height.String(), Where: where, With: "spring tester", Limit: printedLimit(p.Load)})
		}
	}
	switch {
	case ok && loaded && s.Load.Taken:
		spring := ReliefSpring{
			Where: where, Free: free, FreeLimits: p.Free.Spec(), Height: p.Height, Load: s.Load.Value, LoadLimits: p.Load.Spec(),
			Installed: p.Installed, Seat: p.Seat, PressureLimits: p.Pressure.Spec(),
		}
		r, err := spring.Assess()
		if err != nil {
			x.doubt(&v, "oilPump.free", where, err)
			break
		}
		if given(&p.Free) {
			x.keep(&v, inspection.StepOilPump, "oilPump.free", &r.Free, inspection.Replace)
		}
		if given(&p.Load) {
			keepOf(x, &v, inspection.StepOilPump, "oilPump.load", r.Load, inspection.Replace)
		}
		if given(&p.Pressure) {
			keepOf(x, &v, inspection.StepOilPump, "oilPump.load", r.Pressure, inspection.Replace)
		}
		if v.rank >= runOutRank(tolerance.OutsideNewBand) {
			v.next = r.Next
		}
	case ok && given(&p.Free):
		x.assess(&v, inspection.StepOilPump, "oilPump.free", "free length", where, p.Free.Spec(), inspection.Replace, free)
	}
	d := x.bySize(inspection.StepOilPump, where, "", &v, x.in.slipped["oilPump"])
	d = x.decide(&v, nil, inspection.Care{}, d)
	if d.Action >= inspection.Replace && v.taken > 0 {
		x.r.Orders = append(x.r.Orders, inspection.Order{Step: inspection.StepOilPump, What: where, Count: 1, Sure: true})
	}
}
