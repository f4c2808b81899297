package main

import (
	"errors"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

const width = 78

// page is the page for the bench.
func (e *engine) page() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "End float: %s, %s\n\n", e.Engine, e.Bearing)
	f, err := e.check().Assess()
	if err != nil {
		return "", err
	}
	b.WriteString(recipe.Wrap(f.Text(e.unit, e.places), width, "", "  "))
	if e.Washers != nil {
		if err := e.washersPage(&b); err != nil {
			return "", err
		}
	}
	b.WriteString("\nTurn the shaft by hand once the caps are tightened: it must not be pinched.\n" +
		"The engine maker's manual governs; this is arithmetic on what was given.\n")
	return b.String(), nil
}

func (e *engine) washersPage(b *strings.Builder) error {
	f := e.fit()
	sides, err := f.Sides()
	if err != nil {
		return err
	}
	in, err := f.In()
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "\nWashers in, both sides together: %s\n", in.Text(e.unit, e.places))
	for _, s := range sides {
		b.WriteString(recipe.Wrap(s.Text(e.unit, e.places), width, "  ", "    "))
	}
	if e.Table != nil {
		c, err := e.Table.Choose(f.Float, in)
		if err != nil {
			return err
		}
		e.tablePage(b, c)
	}
	if len(e.Stock) > 0 {
		options, err := f.Options(e.Stock...)
		if err != nil {
			return err
		}
		e.stockPage(b, f, options)
	}
	return nil
}

func (e *engine) tablePage(b *strings.Builder, c crank.ThrustChoice) {
	b.WriteString("\n" + recipe.Wrap("By the table of "+e.Table.Source, width, "", "  ") + "\n")
	b.WriteString(recipe.Wrap("float over standard washers "+c.Float.Text(e.unit, e.places), width, "  ", "    "))
	for _, p := range c.Picks {
		text := p.Step.Name + ", for " + p.Step.Float.Text(e.unit, e.places)
		if !p.Float.IsZero() {
			text += "; new ones leave " + p.Float.Text(e.unit, e.places)
		}
		b.WriteString(recipe.Wrap(text, width, "  → ", "    "))
	}
	switch {
	case c.Decided:
	case c.Gap:
		b.WriteString(recipe.Wrap("The table leaves out some or all of this float, and names none of these for it: measure the new washers and take those whose float is within the limits, or ask the engine maker.", width, "  ", "  "))
	default:
		b.WriteString(recipe.Wrap("The reading doesn't tell these apart: measure the float and the washers more finely.", width, "  ", "  "))
	}
	if c.Pinched {
		b.WriteString(recipe.Wrap("Over standard washers the shaft may be pinched: find out why the washers that are in are so thick.", width, "  ", "  "))
	}
}

func (e *engine) stockPage(b *strings.Builder, f crank.ThrustFit, options []crank.ThrustOption) {
	b.WriteString("\nFrom stock\n\n")
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "in front\tbehind\tfloat\tstanding\tshaft moves forward\n")
	for _, o := range options {
		fmt.Fprintf(w, "%s\t%s\t%s\t%v\t%s\n", o.Front, o.Rear, o.Float.Text(e.unit, e.places), o.Stand.Standing, o.Shift.Text(e.unit, e.places))
	}
	w.Flush()
	for line := range strings.Lines(table.String()) {
		b.WriteString("  " + strings.TrimRight(line, " \n") + "\n")
	}
	switch {
	case len(options) == 0:
		b.WriteString("  There aren't pieces enough for both sides.\n")
	case f.Serves(options[0]) && options[0].Front != options[0].Rear:
		b.WriteString(recipe.Wrap("The first serves, both halves of a side of one size; it moves the shaft along, so see whether the manual allows unlike sides.", width, "\n  ", "  "))
	case f.Serves(options[0]):
		b.WriteString(recipe.Wrap("Take the first: both halves of a side of one size.", width, "\n  ", "  "))
	default:
		b.WriteString(recipe.Wrap("None of these is within the limits for certain.", width, "\n  ", "  "))
	}
}

// working writes out the float and what the washers come to, from the middle of
// each reading.
func (e *engine) working() (string, error) {
	var b strings.Builder
	style := units.Style[units.Length]{Unit: e.unit, Places: e.places}
	solve := func(t working.Term) error {
		s, err := working.Solve(t, style)
		if err == nil {
			b.WriteString(s.Text() + "\n")
		}
		return err
	}
	float, ok := e.float().Middle()
	if !ok {
		return "", errors.New("every blade went in: no end float to work with")
	}
	if len(e.Dial) > 0 {
		forward, _ := e.Dial[0].Forward.Middle()
		back, _ := e.Dial[0].Back.Middle()
		if err := solve(crank.EndFloat(working.Given("dial, shaft forward", "f", forward), working.Given("dial, shaft back", "b", back)).Named("end float", "E")); err != nil {
			return "", err
		}
	}
	if e.Washers == nil {
		return b.String(), nil
	}
	side := func(words, symbol string, halves []tolerance.Bracket) working.Term {
		thickness, _ := crank.ThrustSide(halves[0], halves[1:]...).Middle()
		return working.Given(words, symbol, thickness)
	}
	in := crank.ThrustTotal(side("washer in front", "t₁", e.Washers.Front), side("washer behind", "t₂", e.Washers.Rear)).Named("washers in", "W")
	given := working.Given("end float", "E", float)
	last := in
	if e.Table != nil {
		last = crank.EndFloatWith(given, in, working.Given("standard washers, both sides", "W₀", e.Table.Total)).Named("float over standard washers", "E₀")
	}
	if err := solve(last); err != nil {
		return "", err
	}
	if e.Wanted != 0 {
		if err := solve(crank.ThrustTotalFor(given, in, working.Given("wanted float", "w", e.Wanted)).Named("washers, both sides together", "W₁")); err != nil {
			return "", err
		}
	}
	return b.String(), nil
}
