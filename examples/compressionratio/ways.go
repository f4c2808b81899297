package main

import (
	"errors"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// squishes are those of all pistons.
func (g given) squishes(b *strings.Builder, _ cylinder.Compression) error {
	if len(g.squish.Pistons) == 0 {
		return nil
	}
	r, err := g.squish.Assess()
	if err != nil {
		return err
	}
	b.WriteString("\nSquish\n")
	for i, p := range g.squish.Pistons {
		fmt.Fprintf(b, "  %s, %v: %s\n", p.Where, p.Deck, around(r.Squish[i], units.InMillimetres, 3))
	}
	fmt.Fprintf(b, "  the highest governs: %s, %v\n", strings.Join(r.Highest, " or "), r.Finding.Standing)
	if r.Finding.Standing == tolerance.CantTell {
		b.WriteString(recipe.Wrap("not a pass: "+r.Finding.Settle, width, "  ", "    "))
	}
	return nil
}

// wants are the ways to another ratio, each alone.
func (g given) wants(b *strings.Builder, _ cylinder.Compression) error {
	if g.wanted == (tolerance.Ratio{}) {
		return nil
	}
	fmt.Fprintf(b, "\nFor %v:1, any one of\n", g.wanted)
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	way := func(name string, err error, value func() string) error {
		var refused *cylinder.InputError
		switch {
		case err == nil:
			fmt.Fprintf(w, "  %s\t%s\n", name, value())
		case errors.As(err, &refused) && refused.Field == "wanted ratio" && g.wanted.Float() > 1:
			fmt.Fprintf(w, "  %s\tcan't give it\n", name)
		default:
			return err
		}
		return nil
	}
	mm := func(i tolerance.Bracket) func() string {
		return func() string { return around(i, units.InMillimetres, 3) }
	}
	gasket, err := g.build.GasketFor(g.wanted)
	if err := way("a compressed gasket of", err, mm(gasket)); err != nil {
		return err
	}
	chamber, err := g.build.ChamberFor(g.wanted)
	if err := way("a chamber of", err, func() string { return around(chamber, units.InCubicCentimetres, 2) }); err != nil {
		return err
	}
	if g.build.OpenAreaMM2 > 0 {
		off, err := g.build.HeadSkimFor(g.wanted)
		if err := way("a skim of the head of", err, mm(off)); err != nil {
			return err
		}
	} else {
		fmt.Fprintf(w, "  a skim of the head:\tgive the chamber's open area with -area\n")
	}
	off, err := g.build.BlockSkimFor(g.wanted)
	if err := way("a skim of the block face of", err, mm(off)); err != nil {
		return err
	}
	stroke, err := g.build.StrokeFor(g.wanted)
	if err := way("a stroke, at the same deck, of", err, mm(stroke)); err != nil {
		return err
	}
	same, deck, err := g.build.StrokeForSameRod(g.wanted)
	if err := way("a stroke, rod and piston kept, of", err, func() string {
		return around(same, units.InMillimetres, 3) + " (the crown then " + side(deck) + ")"
	}); err != nil {
		return err
	}
	if err := w.Flush(); err != nil {
		return err
	}
	b.WriteString("Each changes the squish or the valves' room: check both before it is cut.\n")
	return nil
}

// side is a deck to three places.
func side(d cylinder.Deck) string {
	if lo, _ := d.Below().Lower(); lo < 0 {
		return around(d.Above(), units.InMillimetres, 3) + " above the block face"
	}
	return around(d.Below(), units.InMillimetres, 3) + " below the block face"
}

// solution writes out the ratio from the middles of what was given.
func (g given) solution(b *strings.Builder, c cylinder.Compression) error {
	if !g.working {
		return nil
	}
	cm := func(words, symbol string, i tolerance.Bracket) working.RealTerm {
		m, _ := i.Middle()
		return working.GivenReal(words, symbol, m.Float(units.InMillimetres)/10, "cm")
	}
	cc := func(words, symbol string, i cylinder.VolumeBracket) working.RealTerm {
		m, _ := i.Middle()
		m, _ = m.Round(units.InCubicCentimetres, 9, units.NearestEven)
		return working.GivenReal(words, symbol, m.Float(units.InCubicCentimetres), "cm³")
	}
	bore := cm("bore", "D", g.build.Bore)
	swept := cylinder.SweptVolume(bore, cm("stroke", "S", g.build.Stroke)).Named("swept volume", "Vs", "cm³")
	gasket := cylinder.SweptVolume(cm("gasket bore", "G", g.build.Gasket.Bore), cm("gasket thickness", "t", g.build.Gasket.Thickness)).Named("gasket volume", "Vg", "cm³")
	deck := cylinder.SweptVolume(bore, cm("deck below the face", "h", g.build.Deck.Below())).Named("deck volume", "Vd", "cm³")
	crown := cc("crown volume", "Vp", c.Crown)
	if !g.build.Crown.Fill.IsZero() {
		crown = cylinder.CrownByFill(bore, cm("down-fill depth", "x", g.build.Crown.FillDepth), cc("fill", "F", g.build.Crown.Fill)).Named("crown volume", "Vp", "cm³")
	}
	land := cc("ring land volume", "Vl", c.Land)
	clearance := cylinder.ClearanceVolume(cc("chamber", "Vk", c.Chamber), gasket, deck, crown, land).Named("clearance volume", "Vc", "cm³")
	s, err := working.SolveReal(cylinder.CompressionRatio(swept, clearance).Named("compression ratio", "R", ""), working.RealStyle{Places: 2})
	if err != nil {
		return err
	}
	b.WriteString("\nThe working, from what was given (the middle, where it has an error):\n\n" + s.Text())
	return nil
}
