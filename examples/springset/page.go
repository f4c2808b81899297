package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

const width = 78

// mm writes a bracket rounded outward.
func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 2) }

type say func(format string, args ...any)

// page is the page for the bench.
func (e engine) page() (string, error) {
	var b strings.Builder
	write := func(format string, args ...any) {
		b.WriteString(recipe.Wrap(fmt.Sprintf(format, args...), width, "  ", "    "))
	}
	fmt.Fprintf(&b, "Valve springs: %s\n", e.Engine)
	for i, v := range e.Valves {
		fmt.Fprintf(&b, "\n%s\n\n", v.Where)
		if err := e.valve(write, i); err != nil {
			return "", fmt.Errorf("%s: %w", v.Where, err)
		}
	}
	if !e.SpreadAt.IsZero() {
		if err := e.spread(write, &b); err != nil {
			return "", err
		}
	}
	b.WriteString("\n" + recipe.Wrap("A spring under load, and its collets, can leave the bench at the height of an eye: wear eye protection, and never stand in line with it. The engine maker's manual governs; this is arithmetic on what was given.", width, "", ""))
	return b.String(), nil
}

func (e engine) valve(write say, i int) error {
	installed := e.Valves[i].Installed
	if !e.Height.IsZero() {
		c, err := e.shims(i)
		if err != nil {
			return err
		}
		switch {
		case !c.Ok:
			write("installed height %s: %s; judged as it stands", mm(installed), c.Next)
		case len(c.Pieces) == 0:
			write("installed height %s: in its band without shims", mm(installed))
		default:
			var names []string
			for _, p := range c.Pieces {
				names = append(names, e.Shims[p].Name)
			}
			write("installed height %s: lay under it %s, for %s; judged with them", mm(installed), strings.Join(names, " and "), mm(c.Height))
			installed = c.Height
		}
	}
	n := e.nest(i, installed)
	if e.Inner == nil {
		r, err := n.Outer.Inspect()
		if err != nil {
			return err
		}
		spring(write, "", r)
		return nil
	}
	r, err := n.Inspect()
	if err != nil {
		return err
	}
	spring(write, "outer: ", r.Outer)
	spring(write, "inner: ", r.Inner)
	for _, f := range []tolerance.FindingOf[units.Force]{r.SeatLoad, r.OpenLoad} {
		force(write, "", f)
	}
	return nil
}

// spring writes what was found of one spring.
func spring(write say, which string, r valvetrain.SpringReport) {
	for _, f := range []tolerance.Finding{r.Free, r.Square} {
		length(write, which, f)
	}
	for _, f := range r.Readings {
		if !f.Spec.IsZero() {
			force(write, which, f)
		}
	}
	if !r.Rate.IsZero() {
		text := "rate " + r.Rate.Text(units.InNewtonsPerMillimetre, 1)
		if !r.RateByCoil.IsZero() {
			text += "; by wire and coils " + r.RateByCoil.Text(units.InNewtonsPerMillimetre, 1)
			if off := apart(r.Rate, r.RateByCoil); off > 10 {
				text += fmt.Sprintf(": they are %.0f %% apart, so count the coils again, and see whether the wire is what it is taken for", off)
			}
		}
		write("%s%s", which, text)
	}
	force(write, which, r.SeatLoad)
	force(write, which, r.OpenLoad)
	length(write, which, r.Bind)
	for _, n := range r.Notes {
		write("%s%s", which, n)
	}
	write("%sNext: %s", which, r.Next)
}

// apart is by how many per cent the middles differ.
func apart(a, b valvetrain.RateBracket) float64 {
	x, _ := a.Middle()
	y, _ := b.Middle()
	return 100 * math.Abs(x.Float(units.InNewtonsPerMillimetre)/y.Float(units.InNewtonsPerMillimetre)-1)
}

func length(write say, which string, f tolerance.Finding) {
	if f.Measure != "" {
		f.Where = ""
		write("%s%s", which, strings.TrimPrefix(f.Text(units.InMillimetres, 2), ": "))
	}
}

func force(write say, which string, f tolerance.FindingOf[units.Force]) {
	if f.Measure != "" {
		f.Where = ""
		write("%s%s", which, strings.TrimPrefix(f.Text(units.InNewtons, 0), ": "))
	}
}

// spread compares the outer springs of the set at one height.
func (e engine) spread(write say, b *strings.Builder) error {
	var set []valvetrain.Spring
	for _, v := range e.Valves {
		set = append(set, e.Outer.spring(v.Where, v.Outer))
	}
	s, err := valvetrain.SpringSetSpread(set, e.SpreadAt)
	if err != nil {
		return fmt.Errorf("the set: %w", err)
	}
	b.WriteString("\nThe set of outer springs\n\n")
	write("at %s the loads differ by %s: weakest %s, strongest %s", mm(e.SpreadAt), s.Load.Text(units.InNewtons, 0), set[s.Weakest].Where, set[s.Strongest].Where)
	if !s.Free.IsZero() {
		write("the free lengths differ by %s", mm(s.Free))
	}
	return nil
}

// working writes out one valve's outer spring: rate, open load and margin.
func (e engine) working(which string) (string, error) {
	for i, v := range e.Valves {
		if v.Where != which {
			continue
		}
		r := v.Outer.Loads
		if len(r) < 2 {
			return "", fmt.Errorf("%s: its loads were not read at two heights", which)
		}
		n := e.nest(i, v.Installed)
		report, err := n.Outer.Inspect()
		if err != nil {
			return "", fmt.Errorf("%s: %w", which, err)
		}
		g := working.GivenReal
		millimetres := func(b tolerance.Bracket) float64 {
			m, _ := b.Middle()
			return m.Float(units.InMillimetres)
		}
		newtons := func(l valvetrain.LoadBracket) float64 {
			m, _ := l.Middle()
			return m.Float(units.InNewtons)
		}
		f1, h1 := g("one load", "F₁", newtons(r[0].Load), "N"), g("its height", "h₁", millimetres(r[0].Height), "mm")
		f2, h2 := g("another load", "F₂", newtons(r[1].Load), "N"), g("its height", "h₂", millimetres(r[1].Height), "mm")
		var b strings.Builder
		fmt.Fprintf(&b, "%s, outer spring, as it stands without shims\n\n", which)
		open := g("open height", "h", millimetres(report.OpenHeight), "mm")
		for _, t := range []working.RealTerm{
			valvetrain.SpringRateOfLoads(f1, h1, f2, h2).Named("rate", "k", "N/mm"),
			valvetrain.SpringLoadBetween(f1, h1, f2, h2, open).Named("load at full lift", "F", "N"),
		} {
			s, err := working.SolveReal(t, working.RealStyle{Places: 2, Bare: true})
			if err != nil {
				return "", err
			}
			b.WriteString(s.Text() + "\n")
		}
		if solid, ok := report.Solid.Middle(); ok {
			installed, _ := v.Installed.Middle()
			lift, _ := e.Lift.Middle()
			m := valvetrain.CoilBindMargin(working.Given("installed height", "h", installed), working.Given("lift", "l", lift), working.Given("solid height", "s", solid))
			s, err := working.Solve(m.Named("margin to coil bind", "m"), units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
			if err != nil {
				return "", err
			}
			b.WriteString(s.Text())
		}
		return strings.TrimRight(b.String(), "\n") + "\n", nil
	}
	return "", fmt.Errorf("no valve is called %.64q", which)
}
