package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// tunnelRule: a housing that is outside what is printed for it doesn't hold its
// shell, worn or not.
var tunnelRule = rule{used: inspection.ReUse, past: inspection.ReconditionSame, strict: true}

// decideTunnel decides on each housing, and on the tunnel, which the worst of
// them governs: a line hone goes through all.
func (x *inspecting) decideTunnel(housings []housingSeen, line *tally) error {
	l := x.in.limits.Tunnel
	all := make([]inspection.Decision, 0, len(housings)+1)
	for i := range housings {
		h := &housings[i]
		all = append(all, h.m.Condition.Overrule(l.Care, x.decide(&h.tally, tunnelRule)))
	}
	set := all
	if l.Line != nil {
		set = append(set, x.decide(line, tunnelRule))
	}
	d := setDecision("main bearing tunnel", set...)
	if d.Action == inspection.ReconditionSame {
		var err error
		if d, err = x.lineHone(housings, d); err != nil {
			return err
		}
	}
	x.cut = x.cut || d.Action == inspection.ReconditionSame
	if d.Action == inspection.ReconditionSame || d.Action == inspection.Repair {
		follow(all, d.Action, &d)
	}
	x.condemn(&d)
	x.report.Decisions = append(x.report.Decisions, all...)
	x.keep(d)
	return nil
}

// lineHone says what the line hone does that the tunnel needs.
func (x *inspecting) lineHone(housings []housingSeen, d inspection.Decision) (inspection.Decision, error) {
	l, ready := x.in.limits.Tunnel.Hone, x.in.tunnel
	if l == nil {
		d.Settle = joined(d.Settle, "see what a line hone would leave, and how far it would raise the crank, before it is cut")
		return d, nil
	}
	t := tallyOf(inspection.StepMainTunnel, d.Part, "")
	hone := LineHone{Finish: l.Finish, LeastCut: l.LeastCut, Rise: l.Rise}
	n := len(x.in.limits.Tunnel.Directions)
	for i := range housings {
		h := &housings[i]
		path := inspection.Index("mains", h.index) + ".crown"
		if !h.m.Crown.Taken {
			x.miss(&t, path, "height of the crown", ready.where[i], "depth gauge under the block face", "")
			continue
		}
		var sizes []tolerance.Bracket
		for _, row := range h.m.Sizes {
			for k, s := range row {
				if s.Taken && (k == ready.vertical || ready.vertical < 0 && k < n) {
					s, err := s.Within(x.in.limits.Tunnel.Error)
					if err != nil {
						return d, inspection.At(path, err)
					}
					sizes = append(sizes, s.Value)
				}
			}
		}
		if h.tally.missing > 0 || h.tally.suspect != "" || len(sizes) == 0 {
			t.missing++ // its size isn't known
			continue
		}
		hone.Housings = append(hone.Housings, HonedHousing{Where: ready.where[i], Crown: h.m.Crown.Value, Size: wholeOf(sizes)})
	}
	d.Size = "line hone to " + l.Finish.String()
	if t.missing > 0 {
		d.Settle = joined(d.Settle, "read every crown's height and every housing: what the hone takes and how far it raises the crank follow from them")
		return d, nil
	}
	report, err := hone.Assess()
	if err != nil {
		return d, inspection.At("mains", err)
	}
	if x.out != nil {
		x.out.LineHone = &report
	}
	d.Because += "; the least hone is asked for by " + report.Forced + " and raises the crank by up to " + report.Rise.String()
	if !l.Rise.IsZero() && report.Allowed != tolerance.Within {
		d.Action, d.Settle = inspection.Repair, joined(d.Settle, report.Next)
		d.Because += ", which isn't sure to be within what is allowed, " + l.Rise.String()
	}
	return d, nil
}

// wholeOf holds all of several brackets.
func wholeOf(list []tolerance.Bracket) tolerance.Bracket {
	all := list[0]
	for _, b := range list[1:] {
		all = hullOf(all, b)
	}
	return all
}
