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

// mm writes a bracket rounded outward.
func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 3) }

// page is the page for the bench.
func (e engine) page() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Cylinder liners: %s\n", e.Engine)
	if e.Wet != nil {
		if err := e.Wet.write(&b); err != nil {
			return "", err
		}
	}
	if e.Dry != nil {
		if err := e.Dry.write(&b); err != nil {
			return "", err
		}
	}
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on what was given.\n")
	return b.String(), nil
}

func (w wet) write(b *strings.Builder) error {
	bank := w.bank()
	r, err := bank.Assess()
	if err != nil {
		return err
	}
	b.WriteString("\nWet liners\n\n")
	findings(b, r.Protrusions)
	findings(b, r.Variations)
	findings(b, r.Steps)
	if len(w.Shims) == 0 && w.Most == 0 {
		return nil
	}
	c, err := bank.ChooseShims(w.stock(), w.Most)
	if err != nil {
		return err
	}
	b.WriteString("\nShims\n\n")
	for i, l := range bank.Liners {
		need := "no thickness suits all its places"
		if n, ok := c.Needed[i].Intersect(tolerance.AtLeast(units.Length(0)).Interval()); ok && !c.Needed[i].IsZero() {
			need = "suited by a thickness in " + mm(n)
		}
		fmt.Fprintf(b, "  %s: %s\n", l.Where, need)
	}
	if !c.Ok {
		b.WriteString("\n" + recipe.Wrap("No choice: "+c.Blocked+"; "+c.Next, width, "", ""))
		return nil
	}
	b.WriteString("\n" + recipe.Wrap("Fit: "+c.String(), width, "", "  "))
	for i, p := range c.Picks {
		b.WriteString(recipe.Wrap(fmt.Sprintf("%s then protrudes %s at the least, %s at the greatest", p.Where, mm(p.Least), mm(p.Greatest)), width, "  ", "    "))
		if i > 0 {
			fmt.Fprintf(b, "    step to %s %s\n", c.Picks[i-1].Where, mm(c.Steps[i-1]))
		}
	}
	b.WriteString(recipe.Wrap("Then: "+c.Next, width, "", "  "))
	return nil
}

func findings(b *strings.Builder, list []tolerance.Finding) {
	for _, f := range list {
		b.WriteString(recipe.Wrap(f.Text(units.InMillimetres, 3), width, "  ", "    "))
	}
}

func (d dry) write(b *strings.Builder) error {
	b.WriteString("\nDry liners\n")
	for i := range d.Liners {
		r, err := d.liner(i).Assess()
		if err != nil {
			return err
		}
		b.WriteString("\n")
		findings(b, []tolerance.Finding{r.Finding})
		var table strings.Builder
		w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', tabwriter.AlignRight)
		fmt.Fprint(w, "\tat the least\tat the greatest\t\n")
		row := func(name, format string, least, greatest float64) {
			fmt.Fprintf(w, "%s\t"+format+"\t"+format+"\t\n", name, least, greatest)
		}
		row("contact pressure, N/mm²", "%.2f", r.Least.PressureMPa, r.Greatest.PressureMPa)
		row("hoop stress of the block at the joint, N/mm²", "%.1f", r.Least.BlockMPa, r.Greatest.BlockMPa)
		row("hoop stress at the liner's bore, N/mm²", "%.1f", r.Least.BoreMPa, r.Greatest.BoreMPa)
		row("bore closes by, mm", "%.3f", r.Least.BoreClosing.Float(units.InMillimetres), r.Greatest.BoreClosing.Float(units.InMillimetres))
		if d.Friction > 0 && d.Length > 0 {
			row("press force, kN", "%.1f", r.Least.ForceN/1000, r.Greatest.ForceN/1000)
		}
		w.Flush()
		for line := range strings.Lines(table.String()) {
			b.WriteString("  " + strings.TrimRight(line, " \n") + "\n")
		}
		if d.BlockMaxMPa > 0 {
			fmt.Fprintf(b, "  the block's stress against %g N/mm²: %v\n", d.BlockMaxMPa, r.Stress)
		}
		if d.DropIn != nil {
			if err := d.drop(b, i); err != nil {
				return err
			}
		}
		b.WriteString(recipe.Wrap("Next: "+r.Next, width, "  ", "    "))
	}
	b.WriteString("\n" + recipe.Wrap("Heat in an oven, never with a flame, no hotter than the maker allows, and wear gloves. Dry ice and liquid nitrogen displace the air and burn by cold: an open draught, face shield, insulated gloves. Press behind a guard.", width, "", ""))
	return nil
}

// mostOven is the heat from which on the page warns.
const mostOven = 180 * units.CELSIUS

// drop says how to get one liner in without a press.
func (d dry) drop(b *strings.Builder, i int) error {
	fit := d.fit(i)
	block, err := fit.BlockAt(d.DropIn.LinerAt)
	if err != nil {
		return err
	}
	liner, err := fit.LinerAt(d.DropIn.BlockAt)
	if err != nil {
		return err
	}
	hot := ""
	if block > mostOven {
		hot = "Above " + ceil(mostOven, units.Up) + " an alloy softens and a block may warp (common practice; its maker's figure governs): heat it less, and chill the liner as well."
	}
	b.WriteString(recipe.Wrap(fmt.Sprintf("To drop in with %v to spare: with the liner at %v, heat the block to %s or above; or, with the block at %v, chill the liner to %s or below: %v",
		d.DropIn.Gap, d.DropIn.LinerAt, ceil(block, units.Up), d.DropIn.BlockAt, ceil(liner, units.Down), cylinder.CoolantFor(liner, d.DropIn.MeasuredAt)), width, "  ", "    "))
	if hot != "" {
		b.WriteString(recipe.Wrap(hot, width, "    ", "    "))
	}
	return nil
}

func ceil(t units.Temperature, r units.Rounding) string {
	text, _ := t.Append(nil, units.Style[units.Temperature]{Unit: units.InCelsius, Places: 1, Rounding: r})
	return string(text)
}

// working writes out one dry liner's pressure, or one wet liner's shim, with
// the library's own formulas called with terms.
func (e engine) working(which string) (string, error) {
	var b strings.Builder
	style := units.Style[units.Length]{Unit: units.InMillimetres, Places: 4}
	if e.Wet != nil {
		band := e.Wet.Protrusion.New.BandOf
		middle, ok := band.Interval().Middle()
		for _, l := range e.Wet.bank().Liners {
			p, okP := l.Places[0].Middle()
			shim, _ := l.Shim.Middle()
			if l.Where != which || !ok || !okP {
				continue
			}
			t := cylinder.ShimForProtrusion(working.Given("protrusion at the first place", "p", p), working.Given("shim now", "s", shim), working.Given("middle of the band", "w", middle))
			s, err := working.Solve(t.Named("shim for the middle of the band", "s₂"), style)
			if err != nil {
				return "", err
			}
			fmt.Fprintf(&b, "%s, wet\n\n%s\n", which, s.Text())
		}
	}
	for i := 0; e.Dry != nil && i < len(e.Dry.Liners); i++ {
		l := e.Dry.liner(i)
		bl, _ := tolerance.Extremes(l.Bores...)
		_, og := tolerance.Extremes(l.Liners...)
		bore, _ := bl.Lower()
		outside, end := og.Upper()
		if l.Where != which || end == tolerance.Absent {
			continue
		}
		t := cylinder.LinerInterference(working.Given("greatest liner", "D₁", outside), working.Given("least bore", "D", bore)).Named("interference", "δ")
		s, err := working.Solve(t, style)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "%s, dry, at the greatest interference\n\n%s\n", which, s.Text())
		g := working.GivenReal
		f := func(l units.Length) float64 { return l.Float(units.InMillimetres) }
		p := cylinder.LinerPressure(g("interference", "δ", f(outside-bore), "mm"), g("joint", "D", f(bore), "mm"),
			cylinder.PressedRing[working.RealTerm]{Other: g("liner bore", "d", f(l.Inside), "mm"), Modulus: g("liner modulus", "E₁", l.Liner.ModulusMPa, "N/mm²"), Poisson: g("liner Poisson's ratio", "ν₁", l.Liner.Poisson, "")},
			cylinder.PressedRing[working.RealTerm]{Other: g("outside of the block's ring", "B", f(l.Outside), "mm"), Modulus: g("block modulus", "E₂", l.Block.ModulusMPa, "N/mm²"), Poisson: g("block Poisson's ratio", "ν₂", l.Block.Poisson, "")})
		r, err := working.SolveReal(p.Named("contact pressure", "p", "N/mm²"), working.RealStyle{Places: 2, Bare: true})
		if err != nil {
			return "", err
		}
		b.WriteString(r.Text())
	}
	if b.Len() == 0 {
		return "", fmt.Errorf("no liner with a working is called %.64q", which)
	}
	return strings.TrimRight(b.String(), "\n") + "\n", nil
}
