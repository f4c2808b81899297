package main

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	solve "github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// solution writes out the first pair, the spread and the first rod, with the
// library's own formulas called with terms.
func (s set) solution(p *page) error {
	p.title("The working, each reading taken at its middle")
	if len(s.Bores) > 0 {
		b, _ := s.Bores[0].Size.Middle()
		q, _ := s.Pistons[0].Size.Middle()
		t := tolerance.Clearance(solve.Given(s.Bores[0].Where, "D", b), solve.Given(s.Pistons[0].Where, "d", q)).Named("clearance", "c")
		if err := written(p, t, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3}); err != nil {
			return err
		}
	}
	inGrams := units.Style[units.Mass]{Unit: units.InGrams, Places: 2}
	if s.weighed() > 0 {
		var terms []solve.TermOf[units.Mass]
		for i, q := range s.Pistons {
			m, _ := q.Mass.Middle()
			terms = append(terms, solve.Given(q.Where, fmt.Sprintf("m%d", i+1), m))
		}
		if err := written(p, piston.MassSpread(terms[0], terms[1:]...).Named("spread", "s"), inGrams); err != nil {
			return err
		}
	}
	if len(s.Rods) == 0 || !s.ends(0) {
		return nil
	}
	whole, _ := s.Rods[0].Whole.Middle()
	big, _ := s.Rods[0].BigEnd.Middle()
	small, _ := s.Rods[0].SmallEnd.Middle()
	t := piston.MassEndsOff(solve.Given("whole", "w", whole), solve.Given("big end", "b", big), solve.Given("small end", "k", small))
	if err := written(p, t.Named("off, "+s.Rods[0].Where, "o"), inGrams); err != nil || s.Pads == nil {
		return err
	}
	g := func(words, symbol string, m units.Mass) solve.RealTerm {
		return solve.GivenReal(words, symbol, m.Float(units.InGrams), "g")
	}
	c := piston.MassCentre(solve.GivenReal("centres", "L", s.Pads.Centres.Float(units.InMillimetres), "mm"), g("big end", "b", big), g("small end", "k", small))
	r, err := solve.SolveReal(c.Named("balances from the big end, "+s.Rods[0].Where, "x", "mm"), solve.RealStyle{Places: 1})
	if err == nil {
		p.WriteString(r.Text())
	}
	return err
}

// ends reports whether both ends of a rod were weighed.
func (s set) ends(i int) bool { return !s.Rods[i].BigEnd.IsZero() && !s.Rods[i].SmallEnd.IsZero() }

func written[Q solve.Quantity[Q]](p *page, t solve.TermOf[Q], style units.Style[Q]) error {
	done, err := solve.Solve(t, style)
	if err == nil {
		p.WriteString(done.Text() + "\n")
	}
	return err
}
