package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out how the least clearance of one piston was calculated, cold
// and hot, at the middle of each reading. The formulas are the library's own,
// called with terms.
func (e engine) working(p printer, which string) (string, error) {
	for i := range e.set {
		s := &e.set[i]
		if s.Where != which {
			continue
		}
		for _, st := range s.Stations {
			skirt, ok := st.Across.Middle()
			least, _ := tolerance.Extremes(s.Bores...)
			bore, ok2 := least.Middle()
			if ok && ok2 && st.Height == s.MeasuringHeight {
				return e.write(p, s.Where, bore, skirt)
			}
		}
		return "", fmt.Errorf("%.64q has no bore and no skirt at the measuring height to work with", which)
	}
	return "", fmt.Errorf("no piston is called %.64q", which)
}

func (e engine) write(p printer, where string, bore, skirt units.Length) (string, error) {
	var b strings.Builder
	c := piston.SkirtClearance(working.Given("least bore", "D", bore), working.Given("skirt", "d", skirt))
	s, err := working.Solve(c.Named("least clearance", "c"), units.Style[units.Length]{Unit: p.unit, Places: p.places})
	if err != nil {
		return "", err
	}
	fmt.Fprintf(&b, "%s, each reading taken at its middle\n\n%s", where, s.Text())
	if e.Heat == nil {
		return b.String(), nil
	}
	boreAt, ok := e.Heat.BoreAt.Middle()
	skirtAt, ok2 := e.Heat.SkirtAt.Middle()
	if !ok || !ok2 {
		return "", fmt.Errorf("heat: a temperature has no middle to work with")
	}
	boreMetal, _ := e.Heat.BoreMetal.metal()
	skirtMetal, _ := e.Heat.SkirtMetal.metal()
	g := working.GivenReal
	symbol := p.unit.Symbol()
	rise := func(t units.Temperature) float64 { return t.Sub(e.Heat.MeasuredAt).Float(units.InKelvins) }
	h := piston.SkirtHotClearance(g("least clearance", "c", (bore-skirt).Float(p.unit), symbol), g("least bore", "D", bore.Float(p.unit), symbol),
		g("bore's expansion", "α", boreMetal.PerK, "1/K"), g("bore's rise", "T", rise(boreAt), "K"),
		g("skirt's expansion", "β", skirtMetal.PerK, "1/K"), g("skirt's rise", "U", rise(skirtAt), "K"))
	hot, err := working.SolveReal(h.Named("hot clearance", "h", symbol), working.RealStyle{Places: p.places, Bare: true})
	if err != nil {
		return "", err
	}
	return b.String() + "\n" + hot.Text(), nil
}
