package valvetrain

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// order lists what is to be bought. A size of shim waits for every clearance
// that is open: another plan may need another shim.
func (c *inspectRun) order() {
	for i := range c.cams {
		if s := &c.cams[i].state; s.decided && s.action >= inspection.Replace {
			c.buy(inspection.StepCamshaft, "camshaft, with its followers", "", s.where)
		}
	}
	for i := range c.driven {
		if s := &c.driven[i].state; s.decided && s.action >= inspection.Replace {
			c.buy(inspection.StepTimingDrive, s.where, "", s.where)
		}
	}
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			c.orderGuide(&c.shelf[i])
		}
	})
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			c.orderValve(k, &c.shelf[i])
		}
	})
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			if s := &c.shelf[i].seat; s.decided && s.action >= inspection.Replace {
				c.buy(inspection.StepSeats, k.word()+" seat insert", "", s.where)
			}
		}
	})
	c.each(c.orderSprings)
	c.each(func(k *inspectKind) {
		for i := k.from; i < k.to; i++ {
			p := &c.shelf[i]
			if p.follower.decided && p.follower.action >= inspection.Replace {
				c.buy(inspection.StepFollowers, k.word()+" cam follower", "", p.follower.where)
			}
			if p.rocker.decided && p.rocker.action >= inspection.Replace {
				c.buy(inspection.StepFollowers, k.word()+" rocker parts", "", p.rocker.where)
			}
		}
	})
	c.orderShims()
	step := func(o inspection.Order) inspection.Step { return o.Step }
	slices.SortStableFunc(c.out.Orders, func(a, b inspection.Order) int { return int(step(a)) - int(step(b)) })
	slices.SortStableFunc(c.out.Predicted, func(a, b inspection.Finding) int { return int(a.Step) - int(b.Step) })
}

// buy adds one piece to the orders.
func (c *inspectRun) buy(step inspection.Step, what, size, whom string) {
	for i := range c.out.Orders {
		if o := &c.out.Orders[i]; o.Step == step && o.What == what && o.Size == size {
			o.Count++
			o.For = append(o.For, whom)
			return
		}
	}
	c.out.Orders = append(c.out.Orders, inspection.Order{Step: step, What: what, Size: size, Count: 1, For: []string{whom}, Sure: true})
}

func (c *inspectRun) orderGuide(p *inspectPlace) {
	switch {
	case !p.guide.decided || p.guide.action < inspection.Repair:
	case p.way == nil:
		c.buy(inspection.StepGuides, "valve guide", "", p.guide.where)
		c.out.Orders[len(c.out.Orders)-1].Sure = false // another way may serve
	case p.way.Way == GuideLiner || p.way.Way == NewGuide:
		c.buy(inspection.StepGuides, p.way.Way.String(), p.way.Name, p.guide.where)
	}
}

func (c *inspectRun) orderValve(k *inspectKind, p *inspectPlace) {
	if p.valve.decided && p.valve.action >= inspection.Replace {
		size := "standard stem"
		if p.way != nil && p.way.Way == OversizeStem {
			size = p.way.Name
		}
		c.buy(inspection.StepValves, k.word()+" valve", size, p.valve.where)
		if p.guide.decided && p.guide.action == inspection.MeasureAgain {
			o := &c.out.Orders[len(c.out.Orders)-1]
			o.Sure = false // the guide may take another stem
		}
	}
	if k.limits.Seals != "" && (p.guide.decided || p.valve.decided) {
		c.buy(inspection.StepAssembly, k.limits.Seals, "", p.valve.where)
	}
}

func (c *inspectRun) orderSprings(k *inspectKind) {
	for j := range k.springs {
		m := &k.springs[j]
		all := m.limits.AsSet && slices.ContainsFunc(c.shelf[k.from:k.to], func(p inspectPlace) bool {
			return p.springs[j].decided && p.springs[j].action >= inspection.Replace
		})
		for i := k.from; i < k.to; i++ {
			s, f := &c.shelf[i].springs[j], &c.shelf[i].coils[j]
			if all || s.decided && s.action >= inspection.Replace {
				c.buy(inspection.StepSprings, k.word()+" valve "+m.part, "", s.where)
			} else if s.decided && s.action == inspection.ReconditionTo {
				for _, name := range f.shims {
					c.buy(inspection.StepSprings, "spring shim", name, s.where)
				}
			}
		}
	}
}

func (c *inspectRun) orderShims() {
	if len(c.shimPlan.Buy) == 0 {
		return
	}
	open := slices.ContainsFunc(c.shelf, func(p inspectPlace) bool {
		return p.lap == nil && p.gap.missing > 0 || p.gap.decided && p.gap.action == inspection.MeasureAgain || p.unsettled()
	})
	for i := range c.shimPlan.Moves {
		move := &c.shimPlan.Moves[i]
		if move.Action == ShimToBuy {
			c.buy(inspection.StepTiming, "valve shim", c.shimHead.Series[move.From].Name, move.Where)
			c.out.Orders[len(c.out.Orders)-1].Sure = !open
		}
	}
}

// caution says where this work hurts people or parts.
func (c *inspectRun) caution() {
	say := func(when bool, text string) {
		if when {
			c.out.Cautions = append(c.out.Cautions, text)
		}
	}
	var springs, sodium, dust, gaps bool
	c.each(func(k *inspectKind) {
		springs = springs || len(k.springs) > 0 || k.limits.Valve != nil
		gaps = gaps || k.limits.Clearance != nil
		sodium = sodium || k.limits.Valve != nil && k.limits.Valve.Sodium
		for i := k.from; i < k.to; i++ {
			p := &c.shelf[i]
			dust = dust || p.guide.decided && p.guide.action >= inspection.ReconditionSame || p.seat.decided && p.seat.action >= inspection.ReconditionSame
		}
	})
	say(springs, "A valve spring under load, and the collets it holds, can leave the bench at the height of an eye: wear eye protection, use the compressor the maker names, and never stand in line with the spring.")
	say(sodium, "A sodium-filled valve is never cut, drilled or ground into: sodium burns in air and explodes with water. Get rid of it as its maker says.")
	say(dust, "Dust of guides and seats of beryllium alloy harms the lungs for life: find out what they are made of before they are ground or reamed.")
	say(gaps, "Secure the engine against starting, and turn it by hand alone, while clearances are tried.")
}
