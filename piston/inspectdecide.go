package piston

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// bySize is what becomes of a part by what was measured of it, where nothing
// asks for a new one: what passes, with which action, or what is open.
func (x *inspecting) bySize(t *tally, pass inspection.Action) inspection.Decision {
	d := inspection.Decision{Step: t.step, Part: t.part, Where: t.where, Slips: t.slips}
	switch {
	case t.suspect != "":
		d.Because, d.Settle = "it rests on a reading that looks like a slip: "+t.suspect, "measure that place again"
		return d
	case t.doubt:
		d.Because = "it rests on a limit whose printed columns differ, and which of them is right decides"
		d.Settle = "look up the limit in another edition of the manual"
		return d
	case t.rank == rankPast:
		d.Action, d.Because = inspection.Replace, x.because(t)
		x.named(&d)
		return d
	}
	var because, settle []string
	if t.rank == rankOutside || t.rank == rankOpen {
		because = append(because, x.because(t))
	}
	if t.rank == rankOutside {
		settle = append(settle, "look up the wear limit in the engine maker's manual: none is given")
	}
	because, settle = append(because, t.against...), append(settle, t.settle...)
	if t.missing > 0 {
		because = append(because, readingsLeft(t.missing)+" still to be taken")
		settle = append(settle, "take "+firstLeft(t))
	}
	settle = append(settle, t.open...)
	switch {
	case len(because) > 0 || len(settle) > 0:
		d.Because, d.Settle = strings.Join(because, "; "), strings.Join(settle, "; ")
	case t.rank == rankAsNew:
		d.Action, d.Because = pass, "as new by all that was measured"
	case t.rank == rankUsable:
		d.Action, d.Because = pass, "within its limits"
	default:
		d.Because = "no limit is given that it can be judged by"
		d.Settle = "look up the limits in the engine maker's manual"
	}
	x.named(&d)
	return d
}

// named says so where a decision rests on a limit that looks like a slip,
// though it is the same by either column.
func (x *inspecting) named(d *inspection.Decision) {
	if len(d.Slips) == 0 || d.Action == inspection.MeasureAgain {
		return
	}
	d.Settle = join(d.Settle, "a limit that it rests on looks like a slip; the standing is the same by either column")
}

// join is two clauses, or the one there is.
func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

func readingsLeft(n int) string {
	if n == 1 {
		return "a reading is"
	}
	return strconv.Itoa(n) + " readings are"
}

func firstLeft(t *tally) string {
	if t.missing == 1 {
		return t.first
	}
	return t.first + ", and " + strconv.Itoa(t.missing-1) + " more"
}

// because is the worst finding in words: where, reading, limits, standing and
// margin.
func (x *inspecting) because(t *tally) string {
	f := &x.report.Findings[t.worst]
	text := f.String()
	if l := f.Length; l != nil && !l.Margin.IsZero() && l.Margin.InRange() {
		text += " (margin " + l.Margin.String() + ")"
	}
	return text
}

// decided reports whether what was measured can decide: no slip, no doubt of a
// limit under it.
func (t *tally) decided() bool { return t.suspect == "" && !t.doubt }

// decisions decides on every part, in the order of the bench.
func (x *inspecting) decisions() {
	for i := range x.pistons {
		p := &x.pistons[i]
		x.grooves(i)
		if p.piston.taken > 0 || p.kit != nil || seen(&p.doc.Condition) {
			x.keep(x.pistonDecision(i), &p.becomes)
		}
	}
	var action inspection.Action
	if x.mass.taken > 0 {
		x.keep(x.massDecision(), &action)
	}
	for i := range x.pistons {
		p := &x.pistons[i]
		if p.pin.taken > 0 || x.in.limits.Pins != nil && seen(&p.doc.Pin.Condition) {
			x.keep(x.pinDecision(i), &p.pinBecomes)
		}
	}
	for i := range x.pistons {
		if p := &x.pistons[i]; p.rod.taken > 0 {
			x.keep(x.rodDecision(i), &p.rodBecomes)
		}
	}
	for i := range x.pistons {
		for k := range x.in.rings {
			if s := x.ring(i, k); s.taken > 0 || x.pistons[i].becomes == inspection.Replace {
				x.keep(x.ringDecision(i, k), &s.becomes)
			}
		}
	}
	if x.crowns.taken > 0 {
		x.keep(x.gasketDecision(), &action)
	}
}

// seen reports whether anything is written of a part's condition.
func seen(c *inspection.Condition) bool { return *c != inspection.Condition{} }

func (x *inspecting) keep(d inspection.Decision, becomes *inspection.Action) {
	*becomes = d.Action
	x.report.Decisions = append(x.report.Decisions, d)
}

func (x *inspecting) pistonDecision(i int) inspection.Decision {
	p := &x.pistons[i]
	d := x.bySize(&p.piston, inspection.CleanAndReUse)
	switch {
	case p.kit != nil:
		d.Action, d.Because, d.Settle = inspection.Replace, "its bore is to be finished for "+p.kit.Name, ""
		d.Size = p.kit.Name
		if !p.kit.Skirt.IsZero() {
			d.Size += ": skirt " + p.kit.Skirt.String()
		}
		if p.bore.Undecided {
			d.Action, d.Settle = inspection.MeasureAgain, "what becomes of the bore is still open"
		}
	case !p.piston.decided() || d.Action == inspection.Replace:
	case len(p.renew) > 0:
		d.Action, d.Because, d.Settle = inspection.Replace, strings.Join(p.renew, "; "), ""
	case d.Action != inspection.MeasureAgain && len(p.recut) > 0:
		d.Action, d.Because = inspection.ReconditionTo, ""
		for k, r := range p.recut {
			if k > 0 {
				d.Size, d.Because = d.Size+"; ", d.Because+"; "
			}
			d.Size += r.where + " groove to " + r.width + ", with spacer " + r.spacer + " on the crown's side"
			d.Because += r.why
		}
	}
	if p.kit == nil && p.bore.Undecided && d.Action != inspection.MeasureAgain && d.Action != inspection.Replace {
		d.Settle = join(d.Settle, "what becomes of its bore is still open, and an oversize asks for a new piston")
	}
	return p.doc.Condition.Overrule(x.in.limits.Care, d)
}

func (x *inspecting) pinDecision(i int) inspection.Decision {
	p := &x.pistons[i]
	d := x.bySize(&p.pin, inspection.ReUse)
	switch {
	case p.becomes == inspection.Replace && x.in.limits.Pins.WithPistons:
		d.Action, d.Because, d.Settle = inspection.Replace, "the new piston comes with its pin", ""
	case !p.pin.decided() || d.Action == inspection.Replace:
	case len(p.renewPin) > 0:
		d.Action, d.Because, d.Settle = inspection.Replace, strings.Join(p.renewPin, "; "), ""
	}
	return p.doc.Pin.Condition.Overrule(x.in.limits.Pins.Care, d)
}

func (x *inspecting) rodDecision(i int) inspection.Decision {
	p := &x.pistons[i]
	d := x.bySize(&p.rod, inspection.ReUse)
	renew := inspection.Replace
	if x.in.limits.Pins.Bush {
		renew = inspection.Repair
	}
	switch {
	case !p.rod.decided():
	case d.Action == inspection.Replace:
		d.Action = renew
	case len(p.renewRod) > 0:
		d.Action, d.Because, d.Settle = renew, strings.Join(p.renewRod, "; "), ""
	}
	if d.Action == inspection.Repair {
		d.Size = "a new bush"
		if b := x.in.limits.Pins.NewSmallEnd; !b.IsZero() {
			d.Size += ", bored to " + b.String()
		}
	}
	return d
}

func (x *inspecting) ringDecision(i, k int) inspection.Decision {
	p, s := &x.pistons[i], x.ring(i, k)
	d := x.bySize(&s.tally, inspection.ReUse)
	replace := func(because string) {
		d.Action, d.Because, d.Settle = inspection.Replace, because, ""
	}
	switch {
	case p.becomes == inspection.Replace:
		replace("the new piston comes with its rings")
	case x.in.limits.NewRings:
		replace("the limits ask for new rings, whatever the used ones measure")
	case !s.decided() || d.Action == inspection.Replace:
	case len(s.renew) > 0:
		replace(strings.Join(s.renew, "; "))
	case s.file != "" && d.Action != inspection.MeasureAgain, s.file != "" && s.rank == rankNone && len(s.against)+s.missing == 0:
		d.Action, d.Size, d.Because, d.Settle = inspection.ReconditionSame, s.file+" filed off the ends", s.filing, ""
	case s.file != "":
		d.Because += "; " + s.filing
	}
	return d
}
