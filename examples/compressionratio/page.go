package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 78

// page is the answer.
func (g given) page() (string, error) {
	var b strings.Builder
	before, err := g.build.Compression()
	if err != nil {
		return "", err
	}
	engine, err := cylinder.Displacement(g.build.Bore, g.build.Stroke, g.cylinders)
	if err != nil {
		return "", err
	}
	fmt.Fprintf(&b, "Compression ratio %s\n\n", toOne(before.Ratio))
	g.parts(&b, before, engine)
	doubts(&b, before)
	for _, part := range []func(*strings.Builder, cylinder.Compression) error{g.changes, g.squishes, g.wants, g.solution} {
		if err := part(&b, before); err != nil {
			return "", err
		}
	}
	b.WriteString("\nDisable fuel and ignition before the engine is turned. The gasket's compressed\n" +
		"thickness is its maker's to give, and the engine maker's manual governs.\n")
	return b.String(), nil
}

// toOne is a ratio as the trade writes it: 9.77:1, or 9.72:1 to 9.83:1.
func toOne(r cylinder.Ratios) string { return strings.ReplaceAll(r.String(), " to ", ":1 to ") + ":1" }

// parts are the volumes that the ratio is made of.
func (g given) parts(b *strings.Builder, c cylinder.Compression, engine cylinder.VolumeBracket) {
	var page strings.Builder
	w := tabwriter.NewWriter(&page, 0, 0, 2, ' ', 0)
	row := func(name string, v cylinder.VolumeBracket, note string) {
		fmt.Fprintf(w, "%s\t%s\t%s\n", name, around(v, units.InCubicCentimetres, 2), note)
	}
	row("swept volume", c.Swept, fmt.Sprintf("%s (%s) for %d cylinders", around(engine, units.InCubicCentimetres, 1), around(engine, units.InCubicInches, 1), g.cylinders))
	row("clearance volume", c.Clearance, "of which")
	row("  chamber", c.Chamber, "in the head")
	row("  gasket", c.Gasket, "its hole, compressed")
	row("  deck", c.Deck, g.build.Deck.String())
	row("  crown", c.Crown, crown(g.build.Crown, c.Crown))
	if g.build.Land == (cylinder.RingLand{}) {
		fmt.Fprint(w, "  ring land\tnot counted\t\n")
	} else {
		row("  ring land", c.Land, "above the top ring")
	}
	w.Flush()
	for line := range strings.Lines(page.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}

func crown(c cylinder.Crown, v cylinder.VolumeBracket) string {
	lo, _ := v.Lower()
	hi, _ := v.Upper()
	words := "flat"
	switch {
	case lo >= 0 && hi > 0:
		words = "a dish"
	case hi <= 0 && lo < 0:
		words = "a dome"
	case lo < hi:
		words = "a dish or a dome"
	}
	if !c.Fill.IsZero() {
		words += ", by down-fill"
	}
	return words
}

// around is a bracket as its middle where the rest doesn't show, else both of
// its ends.
func around[Q units.Quantity](i tolerance.Interval[Q], u units.Unit[Q], places int) string {
	lo, _ := i.Lower()
	hi, _ := i.Upper()
	s := units.Style[Q]{Unit: u, Places: places}
	low, _ := units.Append(nil, lo, s)
	high, _ := units.Append(nil, hi, s)
	if string(low) == string(high) {
		return string(low)
	}
	s.Rounding, s.Bare = units.Down, true
	low, _ = units.Append(nil, lo, s)
	s.Rounding, s.Bare = units.Up, false
	high, _ = units.Append(nil, hi, s)
	return string(low) + " to " + string(high)
}

// doubts are what to look into first.
func doubts(b *strings.Builder, c cylinder.Compression) {
	for _, d := range c.Doubts {
		b.WriteString("\n" + recipe.Wrap("Look into this first: "+d.String()+".", width, "", "  "))
	}
}

// changes are what machining does, one after the other.
func (g given) changes(b *strings.Builder, _ cylinder.Compression) error {
	after, lowered := g.build, tolerance.Exactly(units.Length(0))
	var done []string
	var err error
	if !g.rebore.IsZero() {
		if after, err = after.Rebored(g.rebore); err != nil {
			return err
		}
		done = append(done, "a rebore to "+g.rebore.String())
	}
	if !g.skim.IsZero() {
		if after, err = after.HeadSkimmed(g.skim); err != nil {
			return err
		}
		done, lowered = append(done, g.skim.String()+" off the head"), lowered.Add(g.skim)
	}
	if !g.blockSkim.IsZero() {
		if after, err = after.BlockSkimmed(g.blockSkim); err != nil {
			return err
		}
		done, lowered = append(done, g.blockSkim.String()+" off the block face"), lowered.Add(g.blockSkim)
	}
	if len(done) == 0 {
		return nil
	}
	c, err := after.Compression()
	if err != nil {
		return err
	}
	b.WriteString("\n" + recipe.Wrap("After "+strings.Join(done, " and ")+": "+toOne(c.Ratio), width, "", "  "))
	doubts(b, c)
	if g.teeth == 0 || lowered == tolerance.Exactly(units.Length(0)) {
		return nil
	}
	r, err := cylinder.RetardByTeeth(lowered, g.teeth, g.pitch)
	if err != nil {
		return err
	}
	b.WriteString(recipe.Wrap(fmt.Sprintf("The camshaft is then %s late, %s of the crankshaft, where the tight side of its drive runs straight down.",
		around(r.Cam, units.InDegrees, 2), around(r.Crank, units.InDegrees, 2)), width, "", "  "))
	return nil
}
