package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 100

// A printer writes lengths for one kind of bench.
type printer struct {
	unit   units.Unit[units.Length]
	places int
}

var (
	metric   = printer{units.InMillimetres, 3}
	imperial = printer{units.InInches, 4}
)

// size is a length in its unit.
func (p printer) size(l units.Length) string { return l.Text(p.unit, p.places) }

// span is a bracket in its unit, rounded outward.
func (p printer) span(i tolerance.Bracket) string {
	if i.IsZero() {
		return "not known"
	}
	lo, _ := i.Lower()
	hi, _ := i.Upper()
	write := func(l units.Length, r units.Rounding) string {
		text, _ := l.Append(nil, units.Style[units.Length]{Unit: p.unit, Places: p.places, Rounding: r, Bare: true})
		return string(text)
	}
	if a, b := write(lo, units.Down), write(hi, units.Up); a != b {
		return a + " to " + b
	}
	return write(lo, units.NearestEven)
}

// page is the page for the bench.
func (s *shaft) page(p printer) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Undersize: %s\n", s.Shaft)
	for i := range s.Groups {
		s.Groups[i].write(&b, p)
	}
	b.WriteString("\n" + recipe.Wrap("A shell's wall grows by half its undersize. Before and after grinding test the shaft for cracks, restore the fillets, and prove each clearance at assembly. The engine maker's manual governs; this is arithmetic on the readings and limits given.", width, "", ""))
	return b.String()
}

func (g *group) write(b *strings.Builder, p printer) {
	title := "Mains"
	if g.Kind == crank.Crankpin {
		title = "Crankpins"
	}
	fmt.Fprintf(b, "\n%s (%s): standard %s, %s; at least %s ground off every side\n\n", title, p.unit.Symbol(), g.Standard.Text(p.unit, p.places), g.Plan.Centring, p.size(g.Plan.Stock))
	c := &g.choice
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "  journal\tleast\tout-of-round\ttaper\tshape\tcleans up at")
	for _, k := range c.Kits {
		fmt.Fprint(w, "\t", k.Name)
	}
	fmt.Fprintln(w)
	for i := range c.Journals {
		r, one := &g.reports[i], &c.Journals[i]
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\t%s\t%s", one.Where, p.span(r.Least.Size), p.span(r.OutOfRound.Value), p.span(r.Taper[crank.JournalTaperAlong].Value), r.Shape, p.span(one.Clean.Size))
		for k := range one.Fits {
			fmt.Fprint(w, "\t", verdict(&one.Fits[k]))
		}
		fmt.Fprintln(w)
	}
	w.Flush()
	for line := range strings.Lines(text.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	b.WriteString("\n" + recipe.Wrap(g.answer(p), width, "", ""))
	if c.Settle != "" {
		b.WriteString(recipe.Wrap("Do next: "+c.Settle+".", width, "", "  "))
	}
	for i := range g.surveys {
		for _, n := range g.reports[i].Notes {
			b.WriteString(recipe.Wrap(g.surveys[i].Where+": "+n.Text(&g.surveys[i])+".", width, "", "  "))
		}
		if g.job.Journals[i].Surface == crank.JournalSurfaceNotStated {
			b.WriteString(recipe.Wrap(g.surveys[i].Where+": its surface is not stated; a nitrided or built-up journal is not ground as others are.", width, "", "  "))
		}
		if d := c.Journals[i].Clean.StrokeChange; d != 0 && c.Outcome != crank.UndersizeAsIs {
			b.WriteString(recipe.Wrap(fmt.Sprintf("%s: ground about the moved centre, its stroke changes by %s, twice the shift along the throw.", g.surveys[i].Where, p.size(d)), width, "", "  "))
		}
	}
}

// verdict is how a journal does with a kit, in a word or two.
func verdict(f *crank.UndersizeFit) string {
	switch {
	case f.AsIs == tolerance.Within:
		return "as it is"
	case f.Ground == tolerance.Within:
		return "grind"
	case f.AsIs == tolerance.Undecided || f.Ground == tolerance.Undecided:
		return "can't tell"
	case f.Spare.IsZero():
		return "no"
	case f.CleansUp == tolerance.Below:
		return "too large"
	case f.Allowed == tolerance.Below:
		return "below the least"
	}
	return "case too thin"
}

// answer is the outcome in a sentence.
func (g *group) answer(p printer) string {
	c := &g.choice
	forced := c.Journals[c.Forced].Where
	short := ""
	if c.AsIsShort >= 0 {
		short = " They could run on, but there are too few pairs of " + c.Kits[c.AsIsShort].Name + "."
	}
	switch c.Outcome {
	case crank.UndersizeAsIs:
		return "No grinding. " + g.shells()
	case crank.UndersizeGrind:
		return fmt.Sprintf("Grind all to %s, for the shells of %s. %s forces it.%s", g.grindTo(p), c.Kits[c.Kit].Name, upper(forced), short)
	case crank.UndersizeNone:
		return fmt.Sprintf("No shells in stock suit: %s does not clean up. Weld and grind, by someone who does that, or replace the shaft.", forced)
	}
	answer := "Can't tell, which is not a pass:"
	if c.Stays == tolerance.Undecided {
		answer += " they may run on as they are;"
	}
	switch {
	case c.Kit >= 0 && c.Possible != c.Kit:
		answer += fmt.Sprintf(" %s may do, and %s will.", c.Kits[c.Possible].Name, c.Kits[c.Kit].Name)
	case c.Kit >= 0:
		answer += fmt.Sprintf(" else %s.", c.Kits[c.Kit].Name)
	case c.Possible >= 0:
		answer += fmt.Sprintf(" %s may do, or none.", c.Kits[c.Possible].Name)
	default:
		answer += " else none."
	}
	return answer + " " + upper(forced) + " is in doubt."
}

// grindTo is the size that all journals can be ground to: what they have in common,
// printed inward so that it is in each.
func (g *group) grindTo(p printer) string {
	c := &g.choice
	common := c.Journals[0].Fits[c.Kit].GrindTo
	for i := range c.Journals {
		both, ok := common.Intersect(c.Journals[i].Fits[c.Kit].GrindTo)
		if !ok {
			return "each within the printed band"
		}
		common = both
	}
	return tolerance.BandFrom(common).Text(p.unit, p.places)
}

// shells names what goes on each journal as it is.
func (g *group) shells() string {
	var s []string
	for i := range g.choice.Journals {
		one := &g.choice.Journals[i]
		s = append(s, one.Where+" "+g.choice.Kits[one.AsIs].Name)
	}
	return "Shells: " + strings.Join(s, ", ") + "; check each oil clearance at the greatest diameter."
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
