package piston

import "github.com/tenthou/tenthou/tolerance/inspection"

// orders lists what to buy. A size or a number that hangs on an open decision
// isn't sure.
func (x *inspecting) orders() {
	open := struct{ pistons, pins, rods, rings bool }{}
	for i := range x.pistons {
		p := &x.pistons[i]
		again := inspection.MeasureAgain
		open.pistons = open.pistons || p.becomes == again || p.bore.Undecided
		open.pins = open.pins || p.pinBecomes == again
		open.rods = open.rods || p.rodBecomes == again
		for k := range x.in.rings {
			open.rings = open.rings || x.ring(i, k).becomes == again
		}
	}
	from := len(x.report.Orders)
	add := func(step inspection.Step, what, size, whom string, sure bool) {
		for j := from; j < len(x.report.Orders); j++ {
			if o := &x.report.Orders[j]; o.What == what && o.Size == size {
				o.Count++
				o.For = append(o.For, whom)
				return
			}
		}
		x.report.Orders = append(x.report.Orders, inspection.Order{Step: step, What: what, Size: size, Count: 1, For: []string{whom}, Sure: sure})
	}
	for i := range x.pistons {
		p := &x.pistons[i]
		name := x.in.names[i].piston
		for _, r := range p.recut {
			if p.becomes == inspection.ReconditionTo {
				add(inspection.StepPistons, "groove spacers", r.spacer, r.where, !open.pistons)
			}
		}
		if p.becomes == inspection.Replace {
			size := "the size that is fitted"
			if p.kit != nil {
				size = p.kit.Name
			}
			add(inspection.StepPistons, "pistons with rings", size, name, !open.pistons)
		}
	}
	for i := range x.pistons {
		p := &x.pistons[i]
		if p.pinBecomes == inspection.Replace && !(p.becomes == inspection.Replace && x.in.limits.Pins.WithPistons) {
			add(inspection.StepPins, "gudgeon pins", "", x.in.names[i].piston, !open.pins)
		}
	}
	for i := range x.pistons {
		switch x.pistons[i].rodBecomes {
		case inspection.Repair:
			add(inspection.StepPins, "small end bushes", "", x.in.names[i].rod, !open.rods)
		case inspection.Replace:
			add(inspection.StepPins, "connecting rods", "", x.in.names[i].rod, !open.rods)
		}
	}
	for i := range x.pistons {
		p := &x.pistons[i]
		for k := range x.in.rings {
			if x.ring(i, k).becomes == inspection.Replace && p.becomes != inspection.Replace {
				size := ""
				if p.kit != nil {
					size = p.kit.Name
				}
				add(inspection.StepRings, "ring sets", size, x.in.names[i].piston, !open.rings && !open.pistons)
				break
			}
		}
	}
	if d := x.report.Decisions; len(d) > 0 && d[len(d)-1].Part == "head gasket" && d[len(d)-1].Size != "" {
		add(inspection.StepAssembly, "head gasket", d[len(d)-1].Size, "the head", !open.pistons)
	}
}

// cautions are those that go with the work at hand.
func (x *inspecting) cautions() {
	if len(x.report.Findings) == 0 {
		return
	}
	x.report.Cautions = make([]string, 0, 8)
	say := func(when bool, what string) {
		if when {
			x.report.Cautions = append(x.report.Cautions, what)
		}
	}
	filed, recut, rods := false, false, false
	for i := range x.pistons {
		recut = recut || x.pistons[i].becomes == inspection.ReconditionTo
		rods = rods || x.pistons[i].rodBecomes == inspection.Repair
		for k := range x.in.rings {
			filed = filed || x.ring(i, k).becomes == inspection.ReconditionSame
		}
	}
	l := &x.in.limits
	say(len(l.Rings) > 0, "Ring ends and the edges of worn grooves cut, and rings spring: wear gloves and eye protection, and use a ring expander. Never force a blade or a ring.")
	say(filed, "File ring ends square and a little at a time, from the face inward, so that a coating isn't torn off, and take the burrs off; where the engine maker forbids it, fit another ring.")
	say(recut, "A lathe takes the metal of a groove: hold the piston by its own centres, mind hands and sleeves, and leave grooves with an iron carrier alone.")
	say(l.Pins != nil && l.Pins.Fit != PinPressed, "Circlips fly: guard your eyes, and fit new ones, seated all round.")
	say(l.Pins != nil && l.Pins.Fit == PinPressed, "Pressed pins go in and out with the maker's tooling, behind a guard; heat evenly, never with a flame, with dry gloves.")
	say(rods, "A new small end bush is pressed in and bored in a machine that keeps both ends of the rod parallel.")
	say(x.marked, "Keep fingers off the crowns while the crank turns, and turn the engine two full turns by hand before it runs.")
	say(x.in.limits.Mass != nil && x.mass.rank >= rankOutside, "Metal comes off a piston only where the engine maker allows it: it weakens the part.")
}
