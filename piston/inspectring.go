package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// ringsOf judges a piston's rings with their grooves and end gaps, and lists
// what is missing.
func (x *inspecting) ringsOf(i int) error {
	for k := range x.in.rings {
		ring := x.doc(i, k)
		if err := x.sideOf(i, k, ring); err != nil {
			return err
		}
		if err := x.backOf(i, k, ring); err != nil {
			return err
		}
		if err := x.gapOf(i, k, ring); err != nil {
			return err
		}
	}
	return nil
}

// sideOf judges a ring's side clearance.
func (x *inspecting) sideOf(i, k int, ring *ReadingsRing) error {
	in, p, s := x.in, &x.pistons[i], x.ring(i, k)
	l, m := &in.limits.Rings[k], &in.rings[k].side
	where, paths := in.names[i].rings[k], &in.paths[p.here].rings[k]
	if !m.asked() {
		return nil
	}
	s.took(ring.Height.Taken)
	if ring.Height.Taken {
		s.height = valueOf(ring.Height, l.Error)
	} else if l.UsedHeight || l.ByMicrometer {
		x.miss(&s.tally, paths.height, "used ring's height", where, "outside micrometer", heightPrinted(l))
	}
	x.brackets = x.brackets[:0]
	for j := range l.sides() {
		var side ReadingsSide
		if j < len(ring.Side) {
			side = ring.Side[j]
		}
		c, ok, err := x.clearance(k, s, &side)
		path := func() string { return inspection.Index(paths.side, j) }
		if err != nil {
			return inspection.At(path(), err)
		}
		s.took(ok || side.Width.Taken)
		if ok {
			x.brackets = append(x.brackets, c)
			continue
		}
		at := where
		if j < len(l.SideAt) {
			at += ", " + l.SideAt[j]
		}
		if side.Width.Taken {
			continue // the height is missing, and listed
		}
		if l.ByMicrometer {
			x.miss(&s.tally, path()+".width", "groove width", at, with(l.SideWith, "gauge blocks or groove micrometer"), in.rings[k].widthLimit)
		} else {
			x.miss(&s.tally, path()+".tried", m.name, at, with(l.SideWith, "feeler blades"), m.printed)
		}
		p.piston.lacks(m.name, at) // its groove isn't judged yet
	}
	stations := x.brackets
	if len(stations) == 0 {
		return nil
	}
	s.side[0], s.side[1] = tolerance.Extremes(stations...)
	f, err := x.judge(&s.tally, m, where, paths.side, s.side[0], s.side[1])
	if f == nil {
		return err
	}
	s.fits[0] = x.last() + 1
	if len(f.Unsettled) > 0 && f.Settle != "" {
		f.Settle += ": try a blade of " + f.Unsettled[0].String() + ", or measure groove and ring by micrometer"
	}
	if f.Standing < tolerance.OutsideNewBand {
		s.note(x.last(), f.Standing, f.Settle)
		if f.Standing == tolerance.CantTell {
			p.piston.note(x.last(), f.Standing, f.Settle)
		}
		return nil
	}
	return x.worn(i, k, stations, f)
}

func heightPrinted(l *LimitsRing) string {
	if l.NewHeight.IsZero() {
		return ""
	}
	return "new " + l.NewHeight.String()
}

// clearance is what was read at one place; ok is false where that isn't known
// yet.
func (x *inspecting) clearance(k int, s *ringState, side *ReadingsSide) (c tolerance.Bracket, ok bool, err error) {
	if side.Width.Taken {
		if s.height.IsZero() {
			return c, false, nil
		}
		c = SideClearance(valueOf(side.Width, x.in.limits.Rings[k].Error), s.height)
		return c, true, nil
	}
	return x.byBlades(side.Tried, side.Clearance, x.in.limits.Rings[k].Error)
}

// worn says what becomes of ring and groove whose clearance is past its limits.
func (x *inspecting) worn(i, k int, stations []tolerance.Bracket, f *tolerance.Finding) error {
	in, p, s := x.in, &x.pistons[i], x.ring(i, k)
	l := &in.limits.Rings[k]
	g := Groove{Where: f.Where, Ring: l.Kind, Stations: stations, Limits: f.Spec, UsedHeight: s.height, NewHeight: l.NewHeight, NewWidth: l.NewWidth}
	r, err := g.Report(*f)
	if err != nil {
		return x.unlike(&s.tally, in.paths[p.here].rings[k].side, f.Where, err)
	}
	manual := f.Standing == tolerance.OutsideNewBand
	switch {
	case r.Remedy == FitNewRing && !manual:
		s.renew = append(s.renew, f.String()+"; "+r.Next)
	case r.Remedy == RenewGroove && !manual:
		s.renew = append(s.renew, f.String()+"; "+r.Next)
		s.groove = x.grooveOf(i, k, f)
	default:
		s.stands(f.String(), r.Next)
		if r.Remedy != CheckFit {
			s.groove = groove{why: f.String(), next: r.Next}
		}
	}
	return nil
}

// A groove is what is to become of a worn one; with neither renew nor a width,
// what would tell.
type groove struct {
	why                        string // the reading that forces it; empty where nothing does
	renew                      bool   // the piston
	where, width, spacer, next string
}

// grooveOf chooses the spacer for a worn groove, or asks for another piston.
func (x *inspecting) grooveOf(i, k int, f *tolerance.Finding) groove {
	in, s := x.in, x.ring(i, k)
	l := &in.limits.Rings[k]
	out := groove{why: f.String(), where: f.Where, renew: true}
	if len(l.Spacers) == 0 || s.height.IsZero() {
		return out
	}
	g := GrooveRecut{Where: f.Where, Width: GrooveWidth(s.side[1], s.height), Cut: l.Cut, RingHeight: l.NewHeight, Clearance: l.Side.New.BandOf, LeastLand: l.LeastLand, Spacers: l.Spacers}
	if land := x.doc(i, k).Land; land.Taken {
		g.Land = valueOf(land, l.Error)
	}
	c, err := ChooseSpacer(g)
	switch {
	case err != nil: // a groove without end, by blades that all entered
	case c.Chosen >= 0:
		fit := &c.Fits[c.Chosen]
		out.renew, out.width, out.spacer = false, fit.Width.String(), fit.Name
	case fitsMaybe(&c):
		out.renew, out.next = false, c.Next
	default:
		out.why += "; " + c.Next
	}
	return out
}

// grooves enters what becomes of a piston's grooves, once it is known which
// readings look like a slip.
func (x *inspecting) grooves(i int) {
	p := &x.pistons[i]
	for k := range x.in.rings {
		s := x.ring(i, k)
		switch g := &s.groove; {
		case !s.decided() && x.in.rings[k].side.asked():
			p.piston.stands("whether its grooves are worn isn't known: "+s.where+" rests on what looks like a slip", "settle that first")
		case g.why == "":
		case g.renew:
			p.renew = append(p.renew, g.why)
		case g.width != "":
			p.recut = append(p.recut, *g)
		default:
			p.piston.stands(g.why, g.next)
		}
	}
}

// fitsMaybe reports whether a spacer may do, once more is measured.
func fitsMaybe(c *SpacerChoice) bool {
	for i := range c.Fits {
		if f := &c.Fits[i]; f.Possible && f.CleansUp != tolerance.Below && f.LandLeft != tolerance.Below {
			return true
		}
	}
	return false
}

// backOf judges the room behind a ring.
func (x *inspecting) backOf(i, k int, ring *ReadingsRing) error {
	in, p, s := x.in, &x.pistons[i], x.ring(i, k)
	m := &in.rings[k].back
	if !m.asked() {
		return nil
	}
	where, path, e := in.names[i].rings[k], in.paths[p.here].rings[k].back, in.limits.Rings[k].Error
	s.took(ring.Depth.Taken)
	s.took(ring.Thickness.Taken)
	if !ring.Depth.Taken {
		x.miss(&s.tally, path, "groove depth", where, "depth gauge", m.name+": "+m.printed)
	}
	if !ring.Thickness.Taken {
		x.miss(&s.tally, path[:len(path)-len("grooveDepth")]+"thickness", "ring thickness, radial", where, "outside micrometer", m.name+": "+m.printed)
	}
	if !ring.Depth.Taken || !ring.Thickness.Taken {
		return nil
	}
	c, err := MeasureRingBack(valueOf(ring.Depth, e), valueOf(ring.Thickness, e))
	if err != nil {
		return x.unlike(&s.tally, path, where, err)
	}
	return x.length(&s.tally, m, where, path, c, c)
}
