package valvetrain

import (
	"slices"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

const gapPart = "valve clearance"

// decideGaps decides on the valve clearances: which stay, which get which shim
// or turn of the screw, and which wait for valve and seat.
func (c *inspectRun) decideGaps() {
	head := ShimHead{Set: c.x.blades}
	var from []int // the head's valves, by place
	plans := false
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			p := &c.shelf[i]
			if k.limits.Clearance == nil || p.lap == nil || k.limits.Clearance.Set != SetByShim || p.worked() || p.gap.suspect != "" {
				continue
			}
			plans = plans || !p.inBand
			head.Valves = append(head.Valves, ShimValve{Where: p.gap.where, Measured: p.gapIs, Shim: p.shimIs, Wanted: k.limits.Clearance.wanted(), Ratio: k.limits.Clearance.Ratio})
			from = append(from, i)
		}
	})
	var plan ShimPlan
	if plans {
		l := c.x.limits.shims()
		head.Drawer, head.Series, head.Disturb = l.Drawer, c.x.series, l.Disturb
		var err error
		if plan, err = c.planner.Plan(&head); err != nil {
			c.err = inspection.At("clearances", err)
			return
		}
		c.shimPlan, c.shimHead = plan, head
	}
	next := 0
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			p := &c.shelf[i]
			if k.limits.Clearance == nil || p.lap == nil {
				continue
			}
			in := next < len(from) && from[next] == i
			if p.inBand && !p.worked() && !(in && plans) && p.gap.clean(&inspection.Care{}) {
				c.out.Decisions = c.pass(c.out.Decisions, &p.gap, inspection.StepTiming, gapPart)
				if in {
					next++
				}
				continue
			}
			v := p.gap.verdict(inspection.StepTiming, gapPart)
			switch {
			case p.worked():
				v.d.Because = "its valve or seat is to be worked, and the clearance with them"
				v.wait = "measure it again once they are, and choose its shim or setting then"
			case in && plans:
				c.moveShim(&plan, &head, next, p, &v)
			case p.inBand:
			case k.limits.Clearance.Set == SetByScrew:
				c.turnScrew(k, p, &v)
			case p.lap.Standing != tolerance.CantTell:
				v.to(inspection.ReconditionSame, "", "set it as the manual says: "+inspectBecause(p.lap))
			}
			if in {
				next++
			}
			d := v.settled(&inspection.Care{})
			p.gap.action, p.gap.decided = d.Action, true
			if d.Action != inspection.MeasureAgain && d.Action != inspection.ReUse && !p.gapAfter.IsZero() {
				c.predict(inspection.StepTiming, p.gap.where, &k.gap, p.gapAfter)
			}
			c.decided(d)
		}
	})
}

// wanted is the band that a clearance is set to.
func (l *LimitsClearance) wanted() tolerance.Band {
	if !l.Limit.New.IsZero() {
		return l.Limit.New.BandOf
	}
	return l.Limit.Wear.BandOf
}

// moveShim writes one valve's part of the plan into its decision.
func (c *inspectRun) moveShim(plan *ShimPlan, head *ShimHead, at int, p *inspectPlace, v *inspectVerdict) {
	move := &plan.Moves[at]
	unsure := slices.IndexFunc(plan.Undecided, func(u ShimUnsure) bool { return u.Valve == at })
	settle := ""
	if unsure >= 0 {
		settle = plan.Undecided[unsure].Settle
	}
	if unsure >= 0 {
		p.gap.open = "" // the plan says what would settle it
	}
	switch move.Action {
	case ShimStays:
	case ShimStaysOpen:
		v.d.Because, v.wait = inspectBecause(p.lap), settle
	default:
		what := strings.TrimPrefix(move.Text(head), move.Where+": ")
		v.to(inspection.ReconditionTo, what, inspectBecause(p.lap))
		v.d.Settle, p.gapAfter = settle, move.After
		if move.Now == tolerance.Within {
			v.d.Because = "in band as it is, but its shim serves another valve: " + v.d.Because
		}
	}
}

// turnScrew works out how far to turn an adjusting screw.
func (c *inspectRun) turnScrew(k *inspectKind, p *inspectPlace, v *inspectVerdict) {
	l := k.limits.Clearance
	if l.Pitch == 0 || inputBracket("", p.gapIs, 0) != nil {
		if p.lap.Standing != tolerance.CantTell {
			v.to(inspection.ReconditionSame, "", "set it by its screw: "+inspectBecause(p.lap))
		}
		return
	}
	plan, err := ScrewSetting{Where: p.gap.where, Measured: p.gapIs, Wanted: l.wanted(), Pitch: l.Pitch, Ratio: l.Ratio, Set: c.x.blades}.Plan()
	if err != nil {
		c.fail(&p.gap, ".clearance", err)
		return
	}
	way := "in"
	turn := plan.Aim
	if turn < 0 {
		way, turn = "out", -turn
	}
	v.to(inspection.ReconditionSame, "screw "+way+" by about "+turn.Text(inDegrees, 0), inspectBecause(p.lap))
	v.d.Settle = plan.Next
	p.gap.open = ""
	if plan.Ok {
		p.gapAfter = plan.After
	}
}

// bladeSet are the blades at hand, as the limits list them.
func (l *Limits) bladeSet() feeler.Set {
	set, err := l.blades()
	if err != nil {
		return feeler.Set{} // refused by Validate
	}
	return set
}

func (l *Limits) blades() (feeler.Set, error) {
	if len(l.Blades) == 0 {
		return feeler.Set{}, nil
	}
	blades := make([]feeler.Blade, len(l.Blades))
	for i, text := range l.Blades {
		b, err := feeler.ParseBlade(text)
		if err != nil {
			return feeler.Set{}, inspection.At(inspection.Index("blades", i), err)
		}
		if b.Error == 0 {
			b.Error = l.BladeError
		}
		blades[i] = b
	}
	set, err := feeler.NewSet("blades at hand", "the limits", blades...)
	return set, inspection.At("blades", err)
}

// shims are those of the limits, or none.
func (l *Limits) shims() *LimitsShims {
	if l.Shims == nil {
		return &LimitsShims{}
	}
	return l.Shims
}

// springCount is the most springs that a readings document lists.
func (l *Limits) springCount() (n int) {
	for _, p := range l.places() {
		if p != nil {
			n += p.Each * l.Cylinders * len(p.Springs)
		}
	}
	return n
}
