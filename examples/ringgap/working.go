package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	solve "github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out one ring, at the middle of its readings. The formulas are
// the library's own, called with terms.
func working(e engine, rows []row, name string, p printer) (string, error) {
	var r *row
	for i := range rows {
		if rows[i].name == name {
			r = &rows[i]
		}
	}
	if r == nil {
		return "", fmt.Errorf("no ring %.64q was read: such as %q", name, rows[0].name)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Cylinder %d, %s ring, by the middle of each reading; the page has the brackets\n", r.cylinder, r.ring.Name)
	write := func(title string, t solve.Term) error {
		done, err := solve.Solve(t, units.Style[units.Length]{Unit: p.unit, Places: p.places})
		if err == nil {
			fmt.Fprintf(&b, "\n%s\n\n%s", title, done.Text())
		}
		return err
	}
	from := -1
	for i, s := range r.gap.Stations {
		if !s.Gap.IsZero() && from < 0 {
			from = i
		}
	}
	read, ok := r.gap.Stations[from].Gap.Middle()
	if !ok {
		return "", fmt.Errorf("ring %s: its gap is known on one side only, %s", name, r.gap.Stations[from].Gap)
	}
	means := make([]solve.Term, len(r.gap.Stations))
	for i, s := range r.gap.Stations {
		means[i] = e.mean(r.cylinder, i).Named("bore at "+s.Place, string(rune('A'+i%26)))
	}
	gap := solve.Given("gap at "+r.gap.Stations[from].Place, "s", read)
	least := gap
	for i, s := range r.gap.Stations {
		if i == from {
			continue
		}
		here, _ := r.gap.Stations[from].Bore.Middle()
		to, _ := s.Bore.Middle()
		change := solve.Given("bore's change", "Δ", to-here)
		there := piston.RingGapInBore(gap, means[from], means[i]).Named("gap at "+s.Place, "S")
		if err := write("The gap at "+s.Place+":", there); err != nil {
			return "", err
		}
		if err := write("By the rule of thumb of 3 for 1 it would change by", piston.RingGapChangeByRule(change).Named("change", "c")); err != nil {
			return "", err
		}
		if err := write("which falls short by", piston.RingGapRuleError(change).Named("error of the rule", "e")); err != nil {
			return "", err
		}
		if i == r.report.Least {
			least = there
		}
	}
	if lo, end := r.gap.Limits.New.Lower(); r.report.Remedy == piston.RingFile && end != tolerance.Absent {
		if err := write("To bring the least gap to its limit, file off", piston.RingStockToFile(solve.Given("least gap allowed", "m", lo), least).Named("stock", "f")); err != nil {
			return "", err
		}
	}
	return b.String() + r.heatWorking(e), nil
}

// mean is the mean diameter at a station, as a term.
func (e engine) mean(number, station int) solve.Term {
	var terms []solve.Term
	for _, c := range e.Cylinders {
		if c.Cylinder != number {
			continue
		}
		for j, d := range c.Stations[station].Bores {
			v, _ := d.Middle()
			terms = append(terms, solve.Given(fmt.Sprintf("diameter %d at %s", j+1, c.Stations[station].At), fmt.Sprintf("%c%d", 'a'+station%26, j+1), v))
		}
	}
	if len(terms) == 1 {
		return terms[0]
	}
	return piston.RingBoreDiameter(terms[0], terms[1:]...)
}

// heatWorking writes out the ring's rise at which its ends touch.
func (r *row) heatWorking(e engine) string {
	if r.hot == nil {
		return ""
	}
	bore, _ := r.hot.Bore.Middle()
	gap, ok := r.hot.Gap.Middle()
	lo, _ := e.Heat.BoreAt.Lower()
	if !ok {
		return ""
	}
	g, thick := solve.GivenReal, r.hot.Thickness
	if thick == 0 {
		thick = bore.Scale(1, 20)
	}
	mm := func(l units.Length) float64 { return l.Float(units.InMillimetres) }
	closing := piston.RingClosingToButt(gap, bore, thick)
	rise := piston.RingButtingRise(g("gap on the middle line", "g", mm(closing), "mm"), g("bore", "D", mm(bore), "mm"), g("ring's expansion", "α", r.hot.RingMetal.PerK, "/K"),
		g("bore's expansion", "γ", r.hot.BoreMetal.PerK, "/K"), g("bore's rise", "b", lo.Sub(e.Heat.MeasuredAt).Float(units.InKelvins), "K")).Named("ring's rise", "r", "K")
	done, err := solve.SolveReal(rise, solve.RealStyle{Places: 1})
	if err != nil {
		return ""
	}
	return fmt.Sprintf("\nThe edges of the face touch first: of a gap of %s, the middle line has %s to close,\nwhich it does when the ring is warmer than it was measured by\n\n%s", gap.Text(units.InMillimetres, 4), closing.Text(units.InMillimetres, 4), done.Text())
}
