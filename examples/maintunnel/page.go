package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

const width = 78

// page is the page for the bench.
func (e engine) page() (string, error) {
	r, err := e.tunnel().Assess()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Main bearing tunnel: %s\nCaps: %v\n", e.Engine, e.Caps)
	for _, h := range r.Housings {
		governs := "no limit given"
		if h.Governs != "" {
			governs = fmt.Sprintf("%v, by %s", h.Standing, h.Governs)
		}
		fmt.Fprintf(&b, "\n%s: %s\n", h.Where, governs)
		findings(&b, h.Size)
		findings(&b, h.Ovality...)
		findings(&b, h.Taper...)
		for _, m := range h.Missing {
			fmt.Fprintf(&b, "  not read: %s\n", m)
		}
	}
	b.WriteString("\n" + recipe.Wrap("Next: "+r.Next, width, "", "  "))
	if e.Line != nil {
		if err := e.Line.write(&b); err != nil {
			return "", err
		}
	}
	if e.Hone != nil {
		if err := e.Hone.write(&b); err != nil {
			return "", err
		}
	}
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on what was given.\n")
	return b.String(), nil
}

func findings(b *strings.Builder, list ...tolerance.Finding) {
	for _, f := range list {
		b.WriteString(recipe.Wrap(f.Text(units.InMillimetres, 3), width, "  ", "    "))
	}
}

func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 3) }

func (l line) write(b *strings.Builder) error {
	t := l.tunnelLine()
	r, err := t.Assess()
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "\nThe line, by %s\n\n", l.By)
	findings(b, r.Straightness)
	fmt.Fprintf(b, "    by %s between %s and %s\n", r.Middle, r.From, r.To)
	for i, f := range r.Neighbours {
		findings(b, f)
		fmt.Fprintf(b, "    its height above their line is %s (less than 0: below)\n", mm(r.Offsets[i]))
	}
	findings(b, r.Steps...)
	if l.By == "blades" {
		b.WriteString(recipe.Wrap("The edge rests on the two highest saddles: it shows which are low, and rocks where one between them is high.", width, "  ", "  "))
	}
	return nil
}

func (h hone) write(b *strings.Builder) error {
	r, err := h.lineHone().Assess()
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "\nThe least line hone to %v\n\n", h.Finish)
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "housing\toff the crown, mm\tgrind the cap, mm\toff the cap, mm\tcentre rises, mm\n")
	for _, c := range r.Cuts {
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\n", c.Where, bare(c.BlockCut), up(c.Grind), bare(c.CapCut), bare(c.Rise))
	}
	w.Flush()
	for line := range strings.Lines(table.String()) {
		b.WriteString("  " + strings.TrimRight(line, " \n") + "\n")
	}
	fmt.Fprintf(b, "  the line is set by %s, its new centre at a height of %v\n", r.Forced, r.Line)
	if !h.Rise.IsZero() {
		fmt.Fprintf(b, "  the crank's rise against %v: %v\n", h.Rise, r.Allowed)
	}
	if h.Deck != 0 {
		deck := cylinder.DeckAfterCrankRise(tolerance.Exactly(h.Deck), r.Rise)
		b.WriteString(recipe.Wrap(fmt.Sprintf("deck at the greatest rise: %s below the block face, from %v now (less than 0: above)", mm(deck), h.Deck), width, "  ", "    "))
	}
	b.WriteString(recipe.Wrap("Next: "+r.Next, width, "  ", "    "))
	return nil
}

// bare writes the two ends, rounded outward, and up a length.
func bare(b tolerance.Bracket) string {
	lo, _ := b.Lower()
	hi, _ := b.Upper()
	if lo == hi {
		return style(lo, units.NearestEven)
	}
	return style(lo, units.Down) + " to " + style(hi, units.Up)
}

func up(l units.Length) string { return style(l, units.Up) }

func style(l units.Length, r units.Rounding) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3, Bare: true, Rounding: r})
	return string(text)
}

// working writes out the hone at one housing, in the middle of its readings,
// with the library's own formulas called with terms.
func (e engine) working(which string) (string, error) {
	if e.Hone == nil {
		return "", fmt.Errorf("there is no line hone in the file to work out")
	}
	h := e.Hone.lineHone()
	r, err := h.Assess()
	if err != nil {
		return "", err
	}
	for _, one := range h.Housings {
		if one.Where != which {
			continue
		}
		crown, _ := one.Crown.Middle()
		size, _ := one.Size.Middle()
		finish := working.Given("finish size", "D", h.Finish)
		cut := cylinder.LineHoneBlockCut(working.Given("crown's height", "h", crown), working.Given("height of the line", "y", r.Line), finish).Named("cut at the crown", "b")
		rise := cylinder.CrankRise(cut, working.Given("vertical size now", "d", size), finish).Named("rise of the centre", "s")
		s, err := working.Solve(rise, units.Style[units.Length]{Unit: units.InMillimetres, Places: 4})
		if err != nil {
			return "", err
		}
		return fmt.Sprintf("%s, in the middle of its readings\n\n%s", which, s.Text()), nil
	}
	return "", fmt.Errorf("no housing of the line hone is called %.64q", which)
}
