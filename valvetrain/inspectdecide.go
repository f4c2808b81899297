package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// decide makes the decisions in the order of the bench, and what follows from
// them.
func (c *inspectRun) decide() {
	c.out.Decisions = make([]inspection.Decision, 0, len(c.cams)+len(c.driven)+6*len(c.shelf))
	c.decideCams()
	c.decideDrive()
	valves := make([]inspection.Decision, 0, len(c.shelf))
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			valves = c.decideGuideAndValve(k, &c.shelf[i], valves)
		}
	})
	c.out.Decisions = append(c.out.Decisions, valves...)
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			c.decideSeat(k, &c.shelf[i])
		}
	})
	c.each(c.decideSprings)
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			p := &c.shelf[i]
			c.decideFit(&p.follower, &p.followerIs, k.limits.Follower, "cam follower", "renew the follower, with a sound lobe under it", "an oversize follower or a sleeved bore, as the manual allows")
			c.decideFit(&p.rocker, &p.rockerIs, k.limits.Rocker, "rocker", "renew the shaft, and judge the bush again on it", "renew the bush and ream it to its shaft, oil holes in line")
		}
	})
	c.decideGaps()
	c.order()
	c.caution()
}

func (c *inspectRun) decided(d inspection.Decision) { c.out.Decisions = append(c.out.Decisions, d) }

// decideGuideAndValve decides on both together: what puts the guide right may
// take another valve, and a worn stem hides what the guide has.
func (c *inspectRun) decideGuideAndValve(k *inspectKind, p *inspectPlace, valves []inspection.Decision) []inspection.Decision {
	l, g := k.limits.Valve, k.limits.Guide
	if g != nil && l != nil && !p.guide.silent() && !p.valve.silent() && p.guide.clean(&g.Care) && p.valve.clean(&l.Care) {
		c.out.Decisions = c.pass(c.out.Decisions, &p.guide, inspection.StepGuides, "valve guide")
		return c.pass(valves, &p.valve, inspection.StepValves, "valve")
	}
	valve := c.valveBySize(k, p)
	if g != nil && !p.guide.silent() {
		guide := p.guide.verdict(inspection.StepGuides, "valve guide")
		if p.valve.suspectStem && p.clear != nil && p.guide.suspect == "" {
			p.guide.suspect, p.guide.slips = p.valve.suspect, append(p.guide.slips, p.valve.slips...)
		}
		c.guideBySize(k, p, &guide, valve.d.Action >= inspection.Replace)
		d := guide.settled(&g.Care)
		if d.Action != guide.d.Action {
			p.way, p.newStem = nil, false
		}
		p.guide.action, p.guide.decided = d.Action, true
		if p.newStem {
			valve.to(inspection.Replace, "standard stem", "a valve with a new stem puts the clearance in its guide right: "+inspectBecause(p.clear))
		}
		if p.way != nil && p.way.Way == OversizeStem {
			valve.to(inspection.Replace, p.way.Name, "its guide is reamed for "+p.way.Name)
		}
		c.decided(d)
		c.predictGuide(k, p)
	}
	forced := valve.d.Action >= inspection.Replace && (p.newStem || p.way != nil && p.way.Way == OversizeStem)
	if l != nil && (!p.valve.silent() || forced) {
		d := valve.settled(&l.Care)
		if d.Action >= inspection.Replace && d.Size == "" && p.way != nil && p.way.Way == OversizeStem {
			d.Size = p.way.Name
		}
		if l.Sodium && d.Action >= inspection.ReconditionSame {
			note := "its stem is filled with sodium: never cut, drill or grind into it"
			if d.Action < inspection.Replace {
				note = "reface it only as its maker says for a valve filled with sodium, and never into the hollow"
			}
			d.Because = inspectJoin(d.Because, note)
		}
		if d.Action == inspection.ReconditionSame && p.margin != nil {
			d.Settle = inspectJoin(d.Settle, "measure its margin again once it is refaced")
		}
		p.valve.action, p.valve.decided = d.Action, true
		if d.Action == inspection.ReconditionSame && !p.marginAfter.IsZero() {
			c.predict(inspection.StepValves, p.valve.where, &k.margin, p.marginAfter)
		}
		valves = append(valves, d)
	}
	return valves
}

// valveBySize is what becomes of a valve by its sizes and its face.
func (c *inspectRun) valveBySize(k *inspectKind, p *inspectPlace) inspectVerdict {
	v := p.valve.verdict(inspection.StepValves, "valve")
	l := k.limits.Valve
	if l == nil {
		return v
	}
	for _, f := range [...]*tolerance.Finding{p.stem, p.taper, p.stemRun, p.margin, p.length} {
		v.past(f, inspection.Replace, false, "")
	}
	if inspectBad(p.tip) {
		c.tipBySize(l, p, &v)
	}
	v.past(p.faceRun, inspection.ReconditionSame, true, "reface it, and grind no more than cleans it up")
	pitted := p.valve.cond.Pitted == inspection.Yes || p.valve.cond.Scored == inspection.Yes
	if (v.d.Action == inspection.ReconditionSame || pitted) && p.faceRun != nil && p.margin != nil && l.FaceAngle != (SeatAngle{}) {
		// To clean up all round, a cut takes the run-out square to the face.
		cut := seatScaled(p.faceRun.Greatest, 1/l.FaceAngle.cos())
		after := ValveMarginAfter(p.margin.Least, cut)
		if !pitted { // how deep pits go, no run-out tells
			p.marginAfter = after
		}
		if p.margin.Spec.Stand(after) >= tolerance.OutsideNewBand {
			v.to(inspection.Replace, "", "a reface would leave a margin of "+after.String()+", too thin by "+k.margin.print)
		}
	}
	return v
}

// tipBySize grinds a worn tip true where the maker allows as much.
func (c *inspectRun) tipBySize(l *LimitsValve, p *inspectPlace, v *inspectVerdict) {
	note := "grind the tip true, no more than the maker allows, and set the clearance anew"
	if l.TipMost > 0 {
		off := tolerance.Exactly(units0)
		if r := c.r.Valves[p.valve.index].TipOff; r.Taken && inspectSound(r.Value) {
			off = r.Value
		}
		left := ValveTipLeft(tolerance.Exactly(l.TipMost), off).Sub(p.tip.Greatest)
		if hi, end := left.Upper(); end != tolerance.Absent && hi < 0 {
			v.past(p.tip, inspection.Replace, true, "grinding it true would take more than "+l.TipMost.String()+" off the tip")
			return
		}
	}
	v.past(p.tip, inspection.ReconditionSame, true, note)
}

// decideSeat cuts a seat that its own readings ask to be cut, and one whose guide
// is worked: a seat is cut from its guide.
func (c *inspectRun) decideSeat(k *inspectKind, p *inspectPlace) {
	l := k.limits.Seat
	if l == nil || p.seat.silent() {
		return
	}
	if p.seat.clean(&l.Care) && p.guide.action <= inspection.ReUse && p.valve.action <= inspection.ReUse {
		c.out.Decisions = c.pass(c.out.Decisions, &p.seat, inspection.StepSeats, "valve seat")
		return
	}
	v := p.seat.verdict(inspection.StepSeats, "valve seat")
	v.past(p.depth, inspection.Replace, false, "renew the insert, or fit one: cutting lets the valve sink farther")
	v.past(p.tipHeight, inspection.Replace, false, "the valve has sunk: renew the insert, or fit one")
	v.past(p.runOut, inspection.ReconditionSame, true, "cut it from its guide, the guide being in order")
	v.past(p.width, inspection.ReconditionSame, true, "bring it to its width by cutters from above and below")
	if p.guide.decided && p.guide.action >= inspection.ReconditionSame {
		v.to(inspection.ReconditionSame, "", "its guide is worked: a seat is cut from its guide, after it")
	}
	if p.guide.decided && p.guide.action == inspection.MeasureAgain && v.d.Action == inspection.ReconditionSame {
		v.wait = "decide on its guide first: the seat is cut from it"
	}
	worked := v.d.Action == inspection.ReconditionSame || p.seat.cond.Pitted == inspection.Yes || p.seat.cond.Scored == inspection.Yes
	if worked && l.Cut != nil && !p.outer.IsZero() && !p.inner.IsZero() {
		c.planSeat(k, p, &v)
	}
	d := v.settled(&l.Care)
	p.seat.action, p.seat.decided = d.Action, true
	if d.Action <= inspection.CleanAndReUse && p.valve.decided && p.valve.action >= inspection.ReconditionSame {
		d.Settle = inspectJoin(d.Settle, "prove the contact of the worked valve on it with blue, all round")
	}
	if d.Action == inspection.ReconditionSame {
		d.Size = inspectJoin(d.Size, p.cuts)
		c.predictSeat(k, p)
	}
	c.decided(d)
}

// planSeat works out the three cuts of a seat.
func (c *inspectRun) planSeat(k *inspectKind, p *inspectPlace, v *inspectVerdict) {
	cut := k.limits.Seat.Cut
	plan := SeatPlan{Seat: Seat{cut.Angle, p.outer, p.inner}, Above: cut.Above, Below: cut.Below, Throat: cut.Throat, Outer: cut.Outer, Width: cut.Width, CleanUp: cut.CleanUp}
	if r := p.runOut; inspectBad(r) {
		// A cut along the stem cleans up all round where it takes the run-out.
		_, hi := inputEnds(seatScaled(r.Greatest, 1/cut.Angle.cos()))
		plan.CleanUp = max(plan.CleanUp, hi)
	}
	cuts, err := plan.Plan()
	if err != nil {
		v.to(inspection.Replace, "", "no cut brings this seat to its edges: "+err.Error())
		return
	}
	p.reface = cuts.Reface
	p.cuts = "cut the seat " + cuts.Reface.String() + " along the stem, then from above " + cuts.Above.Text(inMillimetres, 3) + " and from below " + cuts.Below.Text(inMillimetres, 3)
	if p.depth != nil {
		after := p.depth.Greatest.Add(tolerance.Exactly(cuts.Reface))
		if p.depth.Spec.Stand(after) >= tolerance.OutsideNewBand {
			v.to(inspection.Replace, "", "once cut, the valve's head would stand at "+after.String()+", past "+k.depth.print)
		}
	}
}

func (c *inspectRun) decideFit(s *inspectState, f *inspectFitFound, l *LimitsFit, part, size, bore string) {
	if l == nil || s.silent() {
		return
	}
	if s.clean(&l.Care) {
		c.out.Decisions = c.pass(c.out.Decisions, s, inspection.StepFollowers, part)
		return
	}
	v := s.verdict(inspection.StepFollowers, part)
	v.past(f.size, inspection.Replace, false, size)
	v.past(f.bore, inspection.Repair, false, bore)
	v.past(f.clear, inspection.Replace, false, "renew what is worn of the two")
	d := v.settled(&l.Care)
	s.action, s.decided = d.Action, true
	c.decided(d)
}

// predictSeat is the seat once it is cut.
func (c *inspectRun) predictSeat(k *inspectKind, p *inspectPlace) {
	if p.cuts == "" {
		return
	}
	if k.width.asked {
		c.predict(inspection.StepSeats, p.seat.where, &k.width, tolerance.Exactly(k.limits.Seat.Cut.Width))
	}
	if p.depth != nil {
		c.predict(inspection.StepSeats, p.seat.where, &k.depth, inspectSpan(p.depth.Least, p.depth.Greatest.Add(tolerance.Exactly(p.reface))))
	}
}
