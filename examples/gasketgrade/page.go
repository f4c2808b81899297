package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

const width = 78

// mm writes a bracket rounded outward.
func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 3) }

// page is the page for the bench.
func (e engine) page(withWorking bool) (string, error) {
	c := e.check()
	r, err := c.Choose()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	say := func(first, rest, text string) { b.WriteString(recipe.Wrap(text, width, first, rest)) }
	say("", "  ", "Head gasket: "+e.Engine)
	if e.Places != "" {
		say("", "  ", "Measured: "+e.Places)
	}
	b.WriteString("\nProtrusion above the block face, and the two points' difference, mm\n\n")
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, p := range r.Pistons {
		fmt.Fprintf(w, "  %s\t%s\t%s\n", p.Where, piston.DeckText(p.Protrusion, 3), mm(p.Tilt))
	}
	w.Flush()
	b.WriteString("\n")
	for _, p := range r.Pistons {
		if s := p.Square.Standing; !p.Square.Spec.IsZero() && s != tolerance.AsNew && s != tolerance.Usable {
			say("  ", "    ", p.Square.Text(units.InMillimetres, 3))
		}
	}
	say("", "  ", "The greatest is "+mm(r.Greatest)+", of "+strings.Join(r.Governs, " or "))
	b.WriteString("\nThe table\n\n")
	w = tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for i, row := range c.Table {
		mark := " "
		for _, j := range r.Rows {
			if j == i {
				mark = "?"
			}
		}
		if i == r.Row {
			mark = "→"
		}
		fmt.Fprintf(w, "%s %s\tprotrusion %v\t", mark, row.Mark, row.Protrusion)
		if !row.Thickness.IsZero() {
			fmt.Fprintf(w, "compressed %v", row.Thickness)
		}
		fmt.Fprintln(w, "\t")
	}
	w.Flush()
	trimmed := trimLines(b.String())
	b.Reset()
	b.WriteString(trimmed)
	for _, f := range r.Faults {
		say("  ", "    ", fmt.Sprintf("%s of %s and %s: %s", f.Kind, f.First, f.Second, f.Where))
	}
	b.WriteString("\n")
	if r.Contact != piston.HeadContactUnknown {
		say("", "  ", r.Clearance.Text(units.InMillimetres, 3))
		say("", "  ", "Left for certain, rounded down: "+r.LeastClearance(3)+", cold and at rest; "+r.Contact.String())
	}
	say("", "  ", "Next: "+r.Next)
	if err := e.expect(say, r); err != nil {
		return "", err
	}
	if withWorking {
		if err := e.solution(&b, r); err != nil {
			return "", err
		}
	}
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on what was given. Keep\nfingers off the crowns while the crank turns.\n")
	return b.String(), nil
}

func trimLines(s string) string {
	var b strings.Builder
	for line := range strings.Lines(s) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return b.String()
}

// expect compares what was measured with what the parts' sizes give.
func (e engine) expect(say func(first, rest, text string), r piston.GasketChoice) error {
	if e.Stack == nil {
		return nil
	}
	p, err := e.Stack.Protrusion()
	if err != nil {
		return err
	}
	say("\n", "  ", "By the sizes of block, crank, rod and piston: "+piston.DeckText(p, 3))
	for _, q := range r.Pistons {
		// A measured bracket that shares nothing with the expected one.
		if _, ok := q.Protrusion.Intersect(p); !ok {
			say("  ", "    ", q.Where+" doesn't agree with them: measure again, and check that its rod and piston are the right ones")
		}
	}
	return nil
}

// solution writes out the piston that chooses, with the library's own formulas
// called with terms.
func (e engine) solution(b *strings.Builder, r piston.GasketChoice) error {
	style := units.Style[units.Length]{Unit: units.InMillimetres, Places: 3}
	middle := func(words, symbol string, x tolerance.Bracket) working.Term {
		m, _ := x.Middle()
		return working.Given(words, symbol, m)
	}
	for _, p := range e.Pistons {
		if p.Where != r.Governs[0] {
			continue
		}
		protrusion := piston.DeckProtrusion(middle("first point", "a", p.First), middle("second point", "b", p.Second)).Named("protrusion", "p")
		t := protrusion
		if r.Contact != piston.HeadContactUnknown {
			least, _ := e.check().Table[r.Row].Thickness.Lower()
			t = piston.GasketClearance(working.Given("thinnest gasket", "g", least), protrusion).Named("clearance to the head", "c")
		}
		s, err := working.Solve(t, style)
		if err != nil {
			return err
		}
		fmt.Fprintf(b, "\nThe working of %s, each reading taken at its middle:\n\n%s", p.Where, s.Text())
	}
	if e.Stack == nil {
		return nil
	}
	s, err := working.Solve(piston.DeckAbove(middle("block height", "H", e.Stack.BlockHeight), middle("stroke", "S", e.Stack.Stroke),
		middle("rod", "L", e.Stack.Rod), middle("compression height", "k", e.Stack.CompressionHeight)).Named("protrusion by the sizes", "P"), style)
	if err != nil {
		return err
	}
	b.WriteString("\n" + s.Text())
	return nil
}
