package valvetrain

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// decideSprings decides on all springs of one kind of valve, one by one and,
// where one that fails has all replaced, as a set.
func (c *inspectRun) decideSprings(k *inspectKind) {
	for j := range k.springs {
		from := len(c.out.Decisions)
		for i := k.from; i < k.to; i++ {
			c.decideSpring(&k.springs[j], &c.shelf[i], j)
		}
		if own := c.out.Decisions[from:]; k.springs[j].limits.AsSet && len(own) > 0 {
			set := inspection.Worst(own...)
			if set.Action >= inspection.Replace {
				set.Governs, set.Where, set.Part = set.Where, "", "set of "+k.word()+" valve "+k.springs[j].part+"s"
				set.Because = "they are renewed as a set: " + set.Because
				c.decided(set)
			}
		}
	}
}

// word is the kind in a word.
func (k *inspectKind) word() string {
	if k.exhaust {
		return "exhaust"
	}
	return "inlet"
}

func (c *inspectRun) decideSpring(m *inspectSpring, p *inspectPlace, j int) {
	s, f := &p.springs[j], &p.coils[j]
	if s.silent() {
		return
	}
	if s.clean(&m.limits.Care) {
		c.out.Decisions = c.pass(c.out.Decisions, s, inspection.StepSprings, m.part)
		return
	}
	v := s.verdict(inspection.StepSprings, m.part)
	v.past(f.free, inspection.Replace, false, "")
	v.past(f.square, inspection.Replace, false, "")
	if l := f.load; l != nil {
		if l.Standing == tolerance.PastWearLimit {
			v.to(inspection.Replace, "", inspectBecause(l)+"; no shim makes good a load of its own")
		} else if v.outside == "" {
			v.outside = inspectBecause(l)
		}
	}
	v.past(f.bind, inspection.Replace, true, "don't run it: take out shims, or take less lift or another spring, until the margin is there")
	if inspectBad(f.installed) && v.d.Action < inspection.Replace && s.suspect == "" {
		c.shimSpring(m, p, f, &v)
	}
	d := v.settled(&m.limits.Care)
	s.action, s.decided = d.Action, true
	if d.Action == inspection.ReconditionTo && !f.after.IsZero() {
		c.predict(inspection.StepSprings, s.where, &m.installed, f.after)
	}
	c.decided(d)
}

// shimSpring brings a spring's installed height into its band with shims.
func (c *inspectRun) shimSpring(m *inspectSpring, p *inspectPlace, f *inspectSpringFound, v *inspectVerdict) {
	because := inspectBecause(f.installed)
	v.to(inspection.ReconditionTo, "", because)
	if p.worked() {
		v.wait = "measure the installed height again once valve and seat are worked"
		return
	}
	band := m.limits.Installed.New.BandOf
	if band.IsZero() {
		band = m.limits.Installed.Wear.BandOf
	}
	choice, err := ChooseSpringShims(SpringShimNeed{Installed: f.height, Height: band, Most: max(1, m.limits.MostShims)}, m.limits.Shims)
	switch {
	case err != nil:
		c.fail(v.s, ".installed", err)
	case !choice.Ok || len(choice.Pieces) == 0:
		v.wait = choice.Next
		if v.wait == "" {
			v.wait = "measure the installed height more finely"
		}
	default:
		if m.bind.asked && !f.solid.IsZero() {
			margin := CoilBindMargin(choice.Height, tolerance.Exactly(m.limits.Lift), f.solid)
			if m.bind.spec.Stand(margin) >= tolerance.OutsideNewBand {
				v.to(inspection.Replace, "", because+"; shims would leave a margin to coil bind of "+margin.String()+", past "+m.bind.print)
				return
			}
		}
		names := make([]string, len(choice.Pieces))
		for i, at := range choice.Pieces {
			names[i] = m.limits.Shims[at].Name
		}
		f.after, f.shims = choice.Height, names
		v.d.Size = strings.Join(names, " and ") + " under it"
	}
}

// worked tells a place whose valve or seat is to be worked or renewed, so that
// what stands on them comes out otherwise.
func (p *inspectPlace) worked() bool {
	return p.valve.decided && p.valve.action >= inspection.ReconditionSame || p.seat.decided && p.seat.action >= inspection.ReconditionSame
}

// unsettled tells a place on whose valve or seat nobody can decide yet.
func (p *inspectPlace) unsettled() bool {
	return p.valve.decided && p.valve.action == inspection.MeasureAgain || p.seat.decided && p.seat.action == inspection.MeasureAgain
}
