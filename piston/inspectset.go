package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// masses judges the spread of the pistons' masses.
func (x *inspecting) masses() error {
	l := x.in.limits.Mass
	if l == nil {
		return nil
	}
	t := &x.mass
	set := MassSet{Measure: "piston", Parts: make([]MassPart, 0, len(x.pistons)), Spread: x.in.mass.spec, MostOff: l.MostOff}
	for i := range x.pistons {
		p := &x.pistons[i]
		if t.took(p.doc.Mass.Taken); !p.doc.Mass.Taken {
			x.miss(t, x.in.paths[p.here].mass, "piston mass", x.in.names[i].piston, x.in.massWith, x.in.mass.name+": "+x.in.mass.printed)
			continue
		}
		m, _ := p.doc.Mass.Within(l.Error)
		set.Parts = append(set.Parts, MassPart{x.in.names[i].piston, m.Value})
	}
	if len(set.Parts) < 2 {
		return nil
	}
	x.proofreadMasses(set.Parts)
	if x.in.mass.spec.IsZero() {
		return nil
	}
	masses := make([]MassBracket, len(set.Parts))
	for i := range set.Parts {
		masses[i] = set.Parts[i].Mass
	}
	f, err := tolerance.Assess(x.in.mass.name, "the set", x.in.mass.spec, masses[0].Spread(masses[1:]...))
	if err != nil {
		return inspection.At("pistons", err)
	}
	if f.Standing != tolerance.AsNew { // what to take from which
		r, err := set.Assess()
		if err != nil {
			return inspection.At("pistons", err)
		}
		x.massNext = r.Next
	}
	x.report.Findings = append(x.report.Findings, inspection.Finding{Step: x.step, Path: "pistons", Mass: &f})
	rests(t, &x.in.mass, f.Standing, f.Least, f.Greatest)
	t.note(x.last(), f.Standing, x.massNext)
	return nil
}

// proofreadMasses enters masses that look like a slip.
func (x *inspecting) proofreadMasses(parts []MassPart) {
	lightest, heaviest := mostMass, units.Mass(0)
	for _, p := range parts {
		m, _ := p.Mass.Middle()
		lightest, heaviest = min(lightest, m), max(heaviest, m)
	}
	if heaviest-lightest <= lightest/50 { // at which package proofread takes them to agree
		return
	}
	values, places := make([]ReadingsMass, len(parts)), make([]string, len(parts))
	for i, p := range parts {
		values[i], places[i] = inspection.Read(p.Mass), p.Where
	}
	for _, s := range inspection.ProofreadReadings(nil, nil, places, values) {
		for i := range x.pistons {
			if x.in.names[i].piston == s.What {
				s.Path = x.in.paths[x.pistons[i].here].mass
			}
		}
		x.doubtful(&x.mass, s)
	}
}

// protrusions judges how far the crowns stand above the block face, and which
// head gasket goes with that.
func (x *inspecting) protrusions() error {
	l := x.in.limits.Protrusion
	if l == nil {
		return nil
	}
	t := &x.crowns
	c := GasketCheck{Table: l.Table, Tilt: x.in.tilt.spec, Clearance: x.in.head.spec, Pistons: make([]DeckPiston, 0, len(x.pistons))}
	for i := range x.pistons {
		p := &x.pistons[i]
		names, paths := &x.in.names[i], &x.in.paths[p.here]
		t.took(p.doc.First.Taken)
		t.took(p.doc.Second.Taken)
		if !p.doc.First.Taken {
			x.miss(t, paths.first, "protrusion", names.piston+", above one end of the pin's axis", x.in.crownWith, x.in.protrusion.printed)
		}
		if !p.doc.Second.Taken {
			x.miss(t, paths.piston+".second", "protrusion", names.piston+", above the other end of the pin's axis", x.in.crownWith, x.in.protrusion.printed)
		}
		if !p.doc.First.Taken || !p.doc.Second.Taken {
			continue
		}
		d := DeckPiston{names.piston, valueOf(p.doc.First, l.Error), valueOf(p.doc.Second, l.Error)}
		mean, tilt, err := d.Protrusion()
		if err != nil {
			return inspection.At(paths.first, err)
		}
		if err := x.length(t, &x.in.protrusion, names.piston, paths.first, mean, mean); err != nil {
			return err
		}
		if err := x.length(t, &x.in.tilt, names.piston, paths.first, tilt.Abs(), tilt.Abs()); err != nil {
			return err
		}
		c.Pistons = append(c.Pistons, d)
		p.crown = mean
	}
	x.proof(0, func() {
		for i := range x.pistons {
			p := &x.pistons[i]
			x.enter(inspection.Reading{Value: p.crown, Taken: !p.crown.IsZero()}, entry{t, nil, x.in.names[i].piston, x.in.paths[p.here].first, -1, -1})
		}
	})
	if len(c.Pistons) < len(x.pistons) || len(l.Table) == 0 {
		return nil // the greatest of all chooses
	}
	var err error
	if x.gasket, err = c.Choose(); err != nil {
		return inspection.At("pistons", err)
	}
	x.marked = true
	if f := x.room(); x.gasket.Row >= 0 && !x.in.head.spec.IsZero() && !l.Table[0].Thickness.IsZero() {
		*f = x.gasket.Clearance
		x.report.Findings = append(x.report.Findings, inspection.Finding{Step: x.step, Path: "pistons", Length: f})
		rests(t, &x.in.head, f.Standing, f.Least, f.Greatest)
		t.note(x.last(), f.Standing, f.Settle)
	}
	return nil
}

// changed reports whether any piston is to be renewed, so that what was
// measured of the set is not what the set will be; and whether that is open.
func (x *inspecting) changed() (renewed, open bool) {
	for i := range x.pistons {
		switch x.pistons[i].becomes {
		case inspection.Replace, inspection.Scrap:
			renewed = true
		case inspection.MeasureAgain:
			open = true
		}
	}
	return renewed, open
}

// massDecision is what becomes of the set's masses.
func (x *inspecting) massDecision() inspection.Decision {
	t := &x.mass
	d := x.bySize(t, inspection.ReUse)
	if renewed, _ := x.changed(); renewed {
		d.Action, d.Because, d.Settle = inspection.MeasureAgain, "pistons are renewed, so that the set will be another", "weigh the new set"
		return d
	}
	if t.missing == 0 && t.suspect == "" && !t.doubt && t.rank >= rankOutside {
		d.Action, d.Because, d.Settle = inspection.ReconditionSame, x.because(t), ""
		d.Size = x.massNext
	}
	return d
}

// gasketDecision is which head gasket is to be fitted.
func (x *inspecting) gasketDecision() inspection.Decision {
	t := &x.crowns
	d := x.bySize(t, inspection.Replace)
	if t.decided() && t.rank >= rankOutside {
		d.Action, d.Because = inspection.MeasureAgain, x.because(t)
		d.Settle = "find out why before it is built: block height, rods and pistons make the protrusion, and a bent rod tells its two points apart"
	}
	if len(x.in.limits.Protrusion.Table) == 0 {
		d.Part = "piston protrusion"
		if d.Action == inspection.Replace {
			d.Action = inspection.ReUse
		}
	}
	if renewed, _ := x.changed(); renewed {
		d.Action, d.Size, d.Governs = inspection.MeasureAgain, "", ""
		d.Because, d.Settle = "pistons are renewed, so that their protrusion will be another", "measure the new pistons' protrusion, at top dead centre, once they are in"
		return d
	}
	if !x.marked {
		return d
	}
	for i, name := range x.gasket.Governs {
		if i > 0 {
			d.Governs += " or "
		}
		d.Governs += name
	}
	switch g := &x.gasket; {
	case d.Action != inspection.Replace:
	case g.Row < 0:
		d.Action, d.Because, d.Settle = inspection.MeasureAgain, "the greatest protrusion is "+DeckText(g.Greatest, 3)+", of "+d.Governs, g.Needs
	case g.Contact == HeadTouches, g.Contact == HeadMayTouch:
		d.Action, d.Because, d.Settle = inspection.MeasureAgain, g.Next, "check table and readings: near contact there is no benefit of the doubt"
	default:
		d.Size = x.in.limits.Protrusion.Table[g.Row].Mark
		d.Because = "the greatest protrusion is " + DeckText(g.Greatest, 3) + ", of " + d.Governs
	}
	return d
}
