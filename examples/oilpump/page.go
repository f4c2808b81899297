package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 78

func (e engine) page() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Oil pump: %s (%v)\n\n", e.Engine, e.Kind)
	r, err := e.pump.Assess()
	if err != nil {
		return "", err
	}
	for i, j := range r.Judgements {
		b.WriteString(recipe.Wrap(e.name(i)+": "+sizes(j.Finding)+", "+limitsText(e.Checks[i].Limits)+": "+j.Finding.Standing.String(), width, "", "  "))
		if e.Checks[i].Measure == crank.PumpSide {
			b.WriteString(recipe.Wrap(e.endNote(), width, "  ", "  "))
		}
		b.WriteString(recipe.Wrap("next: "+e.next(i, j), width, "  ", "    "))
	}
	fmt.Fprintf(&b, "\nThe pump as a whole: %v\n", r.Standing)
	if r.Standing == tolerance.CantTell {
		b.WriteString("That is not a pass.\n")
	}
	if e.Spring == nil {
		return b.String(), nil
	}
	v, err := e.valve.Assess()
	if err != nil {
		return "", err
	}
	b.WriteString("\nRelief spring\n")
	b.WriteString(recipe.Wrap(v.Free.Text(units.InMillimetres, 2), width, "  ", "    "))
	b.WriteString(recipe.Wrap(v.Load.Text(units.InNewtons, 1), width, "  ", "    "))
	fmt.Fprintf(&b, "  rate %s\n", v.Rate.Text(units.InNewtonsPerMillimetre, 3))
	if !e.valve.Seat.IsZero() {
		fmt.Fprintf(&b, "  load with the valve shut %s\n", v.Installed.Text(units.InNewtons, 1))
		b.WriteString(recipe.Wrap(v.Pressure.Text(units.InBar, 2), width, "  ", "    "))
	}
	b.WriteString(recipe.Wrap(fmt.Sprintf("The spring: %v; next: %s", v.Standing, v.Next), width, "  ", "    "))
	return b.String(), nil
}

func (e engine) name(i int) string {
	c := e.Checks[i]
	if c.Where == "" {
		return c.Measure.String()
	}
	return c.Measure.String() + ", " + c.Where
}

// sizes are what was found, both columns.
func sizes(f tolerance.Finding) string {
	both := func(b tolerance.Bracket) string {
		return b.Text(units.InMillimetres, 3) + " (" + b.Text(units.InInches, 4) + ")"
	}
	if f.Least == f.Greatest {
		return both(f.Least)
	}
	return "from " + both(f.Least) + " to " + both(f.Greatest)
}

// limitsText are the limits as the manual prints them.
func limitsText(l limits) string {
	var parts []string
	if !l.New.IsZero() {
		parts = append(parts, "new "+l.New.String())
	}
	if !l.Wear.IsZero() {
		parts = append(parts, "wear "+l.Wear.String())
	}
	if len(parts) == 0 {
		return "no limit"
	}
	return strings.Join(parts, ", ")
}

// next is what to do next; where a blade would settle it, which one.
func (e engine) next(i int, j crank.PumpJudgement) string {
	c := e.Checks[i]
	if j.Finding.Standing != tolerance.CantTell || j.Finding.Spec.IsZero() || c.Measure == crank.PumpSide || len(e.stations[i]) < len(c.Stations) {
		return j.Next
	}
	f, err := feeler.Check{Measure: c.Measure.String(), Where: c.Where, Spec: j.Finding.Spec, Set: e.blades}.Assess(e.stations[i]...)
	if err != nil || f.Settle == "" {
		return j.Next
	}
	return "not a pass; to settle it, " + f.Settle
}

// endNote says what the end clearance holds beside the straight-edge's gap.
func (e engine) endNote() string {
	gasket, wear := "no gasket", "the cover's wear was not measured: lay the straight-edge across it, what it shows comes on top"
	if !e.Gasket.IsZero() {
		gasket = "a gasket of " + e.Gasket.Text(units.InMillimetres, 3)
	}
	if !e.pump.CoverWear.IsZero() {
		wear = "the cover's wear of " + e.pump.CoverWear.Text(units.InMillimetres, 3)
	}
	return "with " + gasket + ", and " + wear
}

// working writes out the end clearance at the least of its readings, and the
// opening pressure at the middles.
func (e engine) working() (string, error) {
	var b strings.Builder
	for i, c := range e.pump.Checks {
		if c.Measure != crank.PumpSide {
			continue
		}
		recess, end := c.Stations[0].Lower()
		gasket, okG := middle(e.Gasket)
		wear, okW := middle(e.pump.CoverWear)
		if end == tolerance.Absent || !okG || !okW {
			continue
		}
		t := crank.PumpEnd(working.Given("recess, at the least", "r", recess), working.Given("gasket", "g", gasket), working.Given("cover wear", "w", wear))
		s, err := working.Solve(t.Named("end clearance", "c"), units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "\n%s, %s\n\n%s", e.name(i), e.Checks[i].Stations[0].At, s.Text())
	}
	if e.Spring == nil || e.valve.Seat.IsZero() {
		return b.String(), nil
	}
	mm := func(words, symbol string, i tolerance.Bracket) working.RealTerm {
		m, _ := i.Middle()
		return working.GivenReal(words, symbol, m.Float(units.InMillimetres), "mm")
	}
	load, _ := e.valve.Load.Middle()
	free := mm("free length", "L₀", e.valve.Free)
	rate := crank.ReliefRate(working.GivenReal("load", "F", load.Float(units.InNewtons), "N"), free,
		working.GivenReal("height", "h", e.valve.Height.Float(units.InMillimetres), "mm")).Named("rate", "k", "N/mm")
	shut := crank.ReliefLoad(rate, free, mm("installed height", "H", e.valve.Installed)).Named("load with the valve shut", "F₁", "N")
	p := crank.ReliefPressureMPa(shut, mm("seat", "d", e.valve.Seat)).Named("opening pressure", "p", "MPa")
	s, err := working.SolveReal(p, working.RealStyle{Places: 3, Bare: true})
	if err != nil {
		return "", err
	}
	return b.String() + "\n" + s.Text(), nil
}

// middle is that of a bracket, nothing where it was left out.
func middle(b tolerance.Bracket) (units.Length, bool) {
	if b.IsZero() {
		return 0, true
	}
	return b.Middle()
}
