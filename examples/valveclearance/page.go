package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

const width = 78

// mm writes a bracket, rounded outward.
func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 3) }

// page is the page for the bench.
func (b bench) page() string {
	var out strings.Builder
	fmt.Fprintf(&out, "Valve clearance: %s\n", b.Engine)
	fmt.Fprintf(&out, "Blades: %v\n", b.head.Set)
	for _, k := range b.kinds() {
		fmt.Fprintf(&out, "Wanted, %s: %v\n", k, b.Wanted[k])
	}
	out.WriteString("\n")
	out.WriteString(b.table())
	p := b.plan
	fmt.Fprintf(&out, "\nIn band after this plan: %d of %d.\n", p.InBand, len(p.Moves))
	b.changes(&out)
	b.stock(&out)
	if len(p.Undecided) > 0 {
		out.WriteString("\nCan't tell (not a pass):\n")
		for _, u := range p.Undecided {
			note := u.Settle
			if u.Fitted {
				note += "; if not, fit what the plan says"
			}
			out.WriteString(recipe.Wrap(u.Where+": "+u.Doubt.String()+"; "+note, width, "  ", "    "))
		}
	}
	b.prove(&out)
	out.WriteString("\n" + recipe.Wrap("Measure at the temperature the manual says, cold or hot, with the cam on its base circle. Turn the engine by hand with the plugs out; with a camshaft out, keep the pistons clear of the valves. Oil each shim, turn the engine twice, and measure again. The engine maker's manual governs.", width, "", ""))
	return out.String()
}

// table is the head as measured, and as it will be.
func (b bench) table() string {
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "valve\tclearance, mm\tnow\tshim\tclearance then, mm\tthen")
	for i, m := range b.plan.Moves {
		v := b.head.Valves[i]
		shim, after := "stays", "as it is"
		switch m.Action {
		case valvetrain.ShimStaysOpen:
			shim = "stays, not settled"
		case valvetrain.ShimFromValve, valvetrain.ShimFromDrawer, valvetrain.ShimToBuy:
			after = bare(m.After)
			shim = strings.TrimPrefix(m.Text(&b.head), m.Where+": ")
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%s\n", m.Where, bare(v.Measured), verdict(m.Now), shim, after, verdict(m.Then))
	}
	w.Flush()
	var out strings.Builder
	for line := range strings.Lines(text.String()) {
		out.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return out.String()
}

// thickness is a shim as it was measured, 2.560 ±0.002 mm.
func thickness(b tolerance.Bracket) string {
	middle, _ := b.Middle()
	width, _ := b.Width()
	if width == 0 {
		return middle.Text(units.InMillimetres, 3)
	}
	return strings.TrimSuffix(middle.Text(units.InMillimetres, 3), " mm") + " ±" + (width / 2).String()
}

// bare is a bracket without its unit.
func bare(b tolerance.Bracket) string { return strings.ReplaceAll(mm(b), " mm", "") }

func verdict(v tolerance.Verdict) string {
	switch v {
	case tolerance.Within:
		return "in band"
	case tolerance.Below:
		return "tight"
	case tolerance.Above:
		return "loose"
	}
	return "can't tell"
}

// changes lists what to move where, shims that swap in one go.
func (b bench) changes(out *strings.Builder) {
	first := true
	for i, m := range b.plan.Moves {
		if m.Action < valvetrain.ShimFromValve {
			continue
		}
		if first {
			out.WriteString("\nChange, all of these shims out before the first goes in:\n")
			first = false
		}
		text := fmt.Sprintf("%s (%s), in place of %s", m.Text(&b.head), thickness(m.Shim), thickness(b.head.Valves[i].Shim))
		if m.Now == tolerance.Within {
			text += "; in band now, disturbed so that one shim less is bought or one valve more settled"
		}
		out.WriteString(recipe.Wrap(text, width, "  ", "    "))
	}
	if first {
		out.WriteString("Nothing to change.\n")
	}
}

// stock lists what to buy, what is left over and where the series has gaps.
func (b bench) stock(out *strings.Builder) {
	out.WriteString("\nBuy: ")
	if len(b.plan.Buy) == 0 {
		out.WriteString("nothing\n")
	}
	for i, s := range b.plan.Buy {
		if i > 0 {
			out.WriteString(", ")
		}
		fmt.Fprintf(out, "%d of %s", s.Pieces, b.head.Series[s.Size].Name)
	}
	if len(b.plan.Buy) > 0 {
		out.WriteString("\n")
	}
	var left []string
	for _, l := range b.plan.Left {
		if l.Spare {
			left = append(left, b.head.Drawer[l.From].Name+" of the drawer")
		} else {
			left = append(left, "that of "+b.head.Valves[l.From].Where)
		}
	}
	if len(left) > 0 {
		out.WriteString(recipe.Wrap("Left over: "+strings.Join(left, ", "), width, "", "  "))
	}
	for _, g := range b.gaps {
		out.WriteString(recipe.Wrap("The series has a gap "+g.String()+".", width, "", "  "))
	}
}

// prove lists the blades that prove each band.
func (b bench) prove(out *strings.Builder) {
	out.WriteString("\nProve each clearance when set:\n")
	for _, k := range b.kinds() {
		p := valvetrain.ProveClearance(b.Wanted[k].BandOf, b.head.Set)
		out.WriteString(recipe.Wrap(k+": "+p.Next, width, "  ", "    "))
	}
}
