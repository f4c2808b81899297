package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

const (
	thrustMeasure = "end float"
	thrustWhere   = "crankshaft"
)

// thrust judges the end float and chooses washers.
func (x *shaftRun) thrust() {
	p, s := &x.l.Thrust, &x.d.Thrust
	if !given(&p.EndFloat) && p.Halves == 0 {
		return
	}
	var v partVerdict
	at := shaftSpot{inspection.StepThrust, thrustWhere, "thrust", true}
	var room [4]tolerance.Bracket
	var floats []tolerance.Bracket
	if given(&p.EndFloat) {
		floats = x.readAll(room[:0], &v, &at, s.EndFloat, max(p.Places, 1), 2*x.l.Instruments.Dial, shaftAsk{"endFloat", thrustMeasure, "", "dial gauge or feeler blades", &p.EndFloat})
	}
	fit := ThrustFit{Match: p.Match.Spec(), Limits: p.EndFloat.Spec(), Wanted: p.Wanted}
	if p.Halves > 0 {
		const measure = "thickness of the thrust washers"
		fit.Front = x.readAll(nil, &v, &at, s.Front, p.Halves, x.l.Instruments.Wall, shaftAsk{"front", measure, "in front", "micrometer", nil})
		fit.Rear = x.readAll(nil, &v, &at, s.Rear, p.Halves, x.l.Instruments.Wall, shaftAsk{"rear", measure, "behind", "micrometer", nil})
	}
	var found *tolerance.Finding
	if len(floats) > 0 {
		for i := range floats {
			floats[i] = positive(floats[i])
		}
		f, err := EndFloatCheck{Where: thrustWhere, Readings: floats, Limits: fit.Limits}.Assess()
		if err != nil {
			x.fail("thrust.endFloat", err)
			return
		}
		x.keep(&v, inspection.StepThrust, "thrust.endFloat", &f, inspection.Replace)
		found = x.r.Findings[len(x.r.Findings)-1].Length
		lo, loEnd := f.Least.Lower()
		hi, hiEnd := f.Greatest.Upper()
		fit.Float, _ = tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	}
	washers := len(fit.Front) == p.Halves && len(fit.Rear) == p.Halves && p.Halves > 0
	if washers && found != nil && given(&p.Match) && p.Halves > 1 {
		sides, err := fit.Sides()
		if err != nil {
			x.fail("thrust", err)
			return
		}
		for i := range sides {
			x.keep(&v, inspection.StepThrust, [...]string{"thrust.front", "thrust.rear"}[i], &sides[i], inspection.Replace)
		}
	}
	d := x.bySize(inspection.StepThrust, "thrust washers", "", &v, x.in.slipped["thrust"])
	if x.newShaft && v.taken > 0 {
		d = anotherShaft(d)
	}
	var order []inspection.Order
	if d.Action == inspection.Replace && found != nil {
		order = x.washers(&fit, washers, found, &d)
	}
	care := inspection.Care{Scored: inspection.Replace, Pitted: inspection.Replace}
	d = x.decide(&v, &s.Condition, care, d)
	if d.Action == inspection.Replace && order == nil && v.taken > 0 {
		order = []inspection.Order{{Step: inspection.StepThrust, What: "thrust washers", Size: "of the size that is in", Count: 2 * max(p.Halves, 1), Sure: d.Settle == ""}}
	}
	if d.Action == inspection.MeasureAgain {
		return
	}
	for _, o := range order {
		o.Sure = o.Sure && !x.openShaft
		x.r.Orders = append(x.r.Orders, o)
	}
}

// anotherShaft is the decision on what was measured with a shaft that goes.
func anotherShaft(d inspection.Decision) inspection.Decision {
	d.Because = "the crankshaft is replaced: what was measured with the old one doesn't hold for it"
	d.Action, d.Size, d.Settle = inspection.MeasureAgain, "", "measure it with the other crankshaft"
	return d
}

// washers chooses washers for an end float that isn't right, or whose halves don't
// match.
func (x *shaftRun) washers(fit *ThrustFit, measured bool, found *tolerance.Finding, d *inspection.Decision) []inspection.Order {
	p := &x.l.Thrust
	if runOutRank(found.Standing) < runOutRank(tolerance.OutsideNewBand) {
		d.Size = "of the size that is in, halves of one thickness"
		return nil
	}
	if !measured {
		d.Settle = "measure the washers that are in: which ones put it right follows from them"
		return nil
	}
	if p.Table != nil {
		return x.washerTable(fit, d)
	}
	if len(p.Stock) == 0 {
		d.Settle = "list in the limits the washers that can be had"
		return nil
	}
	options, err := fit.Options(p.Stock...)
	if err != nil {
		x.fail("thrust", err)
		return nil
	}
	if len(options) == 0 || !fit.Serves(options[0]) {
		d.Action = inspection.Repair
		d.Because = clause(d.Because, "no washers that can be had bring it within the limits for certain: the thrust faces are worn")
		return []inspection.Order{}
	}
	o := &options[0]
	d.Size = o.Front + " in front, " + o.Rear + " behind"
	d.Because = clause(d.Because, "with them the float is "+o.Float.String())
	x.predict(inspection.StepThrust, "thrust.endFloat", thrustMeasure, thrustWhere, fresh(fit.Limits), o.Float)
	if o.Front == o.Rear {
		return []inspection.Order{{Step: inspection.StepThrust, What: "thrust washers", Size: o.Front, Count: 2 * p.Halves, Sure: true}}
	}
	return []inspection.Order{
		{Step: inspection.StepThrust, What: "thrust washers", Size: o.Front, Count: p.Halves, For: []string{"front"}, Sure: true},
		{Step: inspection.StepThrust, What: "thrust washers", Size: o.Rear, Count: p.Halves, For: []string{"rear"}, Sure: true},
	}
}

// washerTable chooses by the manual's own table.
func (x *shaftRun) washerTable(fit *ThrustFit, d *inspection.Decision) []inspection.Order {
	p := &x.l.Thrust
	in, err := fit.In()
	if err != nil {
		x.fail("thrust", err)
		return nil
	}
	c, err := p.Table.Choose(fit.Float, in)
	if err != nil {
		x.doubtThrust(d, err)
		return nil
	}
	if !c.Decided || len(c.Picks) != 1 {
		d.Action, d.Settle = inspection.MeasureAgain, c.Settle
		return nil
	}
	pick := &c.Picks[0]
	d.Size = pick.Step.Name
	if pick.Step.Replace {
		d.Because = clause(d.Because, "the manual's table has no washer for it")
		return []inspection.Order{}
	}
	if !pick.Float.IsZero() {
		x.predict(inspection.StepThrust, "thrust.endFloat", thrustMeasure, thrustWhere, fresh(fit.Limits), pick.Float)
	}
	return []inspection.Order{{Step: inspection.StepThrust, What: "thrust washers", Size: pick.Step.Name, Count: 2 * p.Halves, Sure: true}}
}

// doubtThrust leaves the choice open where the float and the washers don't go with
// the table.
func (x *shaftRun) doubtThrust(d *inspection.Decision, err error) {
	x.r.Slips = append(x.r.Slips, inspection.Slip{Path: "thrust", What: thrustMeasure, Text: err.Error()})
	d.Action, d.Settle, d.Slips = inspection.MeasureAgain, "measure the end float and the washers again", append(d.Slips, "thrust")
}

// checkThrust refuses more pieces than a side has.
func (l *Limits) checkThrust(s *ReadingsThrust) error {
	for _, side := range [...]struct {
		path string
		list []inspection.Reading
	}{{"thrust.front", s.Front}, {"thrust.rear", s.Rear}} {
		if n := len(side.list); n > max(l.Thrust.Halves, 0) && n > 0 {
			return inspection.At(side.path, &InputError{"thrust washers of one side", strconv.Itoa(n), "as many as the limits have: " + strconv.Itoa(l.Thrust.Halves)})
		}
		if err := lengths(side.path, side.list, above); err != nil {
			return err
		}
	}
	return lengths("thrust.endFloat", s.EndFloat, clearances)
}
