package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	solve "github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out one journal, each input at the end of its bracket that leaves
// the least. The formulas are the library's own, called with terms.
func (s *shaft) working(where string, p printer) (string, error) {
	var g *group
	which := -1
	for k := range s.Groups {
		for i := range s.Groups[k].surveys {
			if s.Groups[k].surveys[i].Where == where {
				g, which = &s.Groups[k], i
			}
		}
	}
	if g == nil {
		return "", fmt.Errorf("there is no journal %q", where)
	}
	j, c := &g.job.Journals[which], &g.choice.Journals[which].Clean
	var b strings.Builder
	fmt.Fprintf(&b, "%s, at the least that its readings allow; %s\n", upper(where), g.Plan.Centring)
	write := func(title string, t solve.Term) error {
		done, err := solve.Solve(t, units.Style[units.Length]{Unit: p.unit, Places: p.places})
		if err == nil {
			fmt.Fprintf(&b, "\n%s\n\n%s", title, done.Text())
		}
		return err
	}
	least := func(i tolerance.Bracket) units.Length { l, _ := i.Lower(); return l }
	most := func(i tolerance.Bracket) units.Length { l, _ := i.Upper(); return l }
	stock := solve.Given("stock per side", "s", g.Plan.Stock)
	diameter := solve.Given("least diameter", "d", least(j.Least))
	type step struct {
		title string
		term  solve.Term
	}
	var steps []step
	if c.ByDiameters {
		lo, hi := crank.CleanSizeByDiameters(solve.Given("size last ground to", "f", most(j.Finished)), diameter, stock)
		steps = append(steps, step{"All of the wear on one side:", lo.Named("clean size", "D")}, step{"Both sides worn alike:", hi.Named("clean size", "D")})
	}
	if !j.RunOut.IsZero() {
		steps = append(steps, step{"With the bend that is left:", crank.CleanSizeBent(diameter, solve.Given("run-out", "r", most(j.RunOut)), stock).Named("clean size", "D")})
	}
	if c.Governs >= 0 {
		finished, wear := solve.Given("size last ground to", "f", least(j.Finished)), solve.Given("wear of the governing side", "w", most(j.Walls[c.Governs].Wear))
		steps = append(steps, step{"On the original throw:", crank.CleanSize(finished, wear, stock).Named("clean size", "D")})
	}
	if k := max(g.choice.Kit, g.choice.Possible); k >= 0 && g.choice.Nominal[k] {
		low, _ := g.Standard.Lower()
		steps = append(steps, step{"The journal for " + g.choice.Kits[k].Name + ", whose sizes are not printed here, begins at:",
			crank.UndersizeOf(solve.Given("least standard size", "S", low), solve.Given("undersize", "u", g.choice.Kits[k].Undersize)).Named("least size", "L")})
	}
	for _, x := range steps {
		if err := write(x.title, x.term); err != nil {
			return "", err
		}
	}
	fmt.Fprintf(&b, "\nBy all that was measured it cleans up at %s %s.\n", p.span(c.Size), p.unit.Symbol())
	if c.StrokeChange != 0 {
		fmt.Fprintf(&b, "The centre moves outward by %s, so the stroke changes by %s.\n", p.size(c.Centre.Out), p.size(c.StrokeChange))
	}
	return b.String(), nil
}
