package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const width = 78

func mm(b tolerance.Bracket) string       { return b.Text(units.InMillimetres, 3) }
func grams(b piston.MassBracket) string   { return b.Text(units.InGrams, 2) }
func (p *page) say(text string)           { p.WriteString(recipe.Wrap(text, width, "", "  ")) }
func (p *page) title(text string)         { p.WriteString("\n" + text + "\n\n") }
func (p *page) table(rows func(t *table)) { t := newTable(); rows(t); p.WriteString(t.text()) }

// page is the page for the bench.
type page struct{ strings.Builder }

func (s set) page(withWorking bool) (string, error) {
	p := &page{}
	p.say("Matched set: " + s.Engine)
	for _, step := range []struct {
		due   bool
		path  string // of what it reads
		write func(*page) error
	}{
		{len(s.Bores) > 0, "bores", s.bores},
		{s.weighed() > 0, "pistons", s.pistons},
		{len(s.Rods) > 0, "rods", s.rods},
		{len(s.Rods) > 0 && s.weighed() > 0, "rods", s.together},
		{withWorking, "pistons", s.solution},
	} {
		if !step.due {
			continue
		}
		if err := step.write(p); err != nil {
			return "", &placed{step.path, err}
		}
	}
	p.WriteString("\n" + recipe.Wrap("Taking metal off weakens a part: only where the engine maker allows it, at the places meant for it. The engine maker's manual governs; this is arithmetic on what was given.", width, "", ""))
	return p.String(), nil
}

// bores pairs pistons with bores.
func (s set) bores(p *page) error {
	w, err := s.wanted()
	if err != nil {
		return err
	}
	r, err := piston.MatchBores(s.Bores, s.skirts(), w)
	if err != nil {
		return err
	}
	p.title(fmt.Sprintf("Pistons in bores: clearance wanted %v, nearest to %v", w.Band, w.Aim))
	p.table(func(t *table) {
		t.row("", "as marked", "", "best", "")
		for i, b := range s.Bores {
			marked := r.AsMarked.Pairs[i]
			clearance := mm(marked.Clearance)
			if marked.Verdict != tolerance.Within {
				clearance += " " + marked.Verdict.String()
			}
			t.row(b.Where, s.Pistons[marked.Piston].Where, append([]string{clearance}, s.best(r, i)...)...)
		}
		t.row("greatest deviation", "", r.AsMarked.Greatest.Text(units.InMillimetres, 3), "", r.Best.Greatest.Text(units.InMillimetres, 3))
		t.row("sum of deviations", "", r.AsMarked.Sum.Text(units.InMillimetres, 3), "", r.Best.Sum.Text(units.InMillimetres, 3))
	})
	p.WriteString("\n")
	for _, n := range r.Needs {
		need := "its size is read too loosely to say which piston would suit; measure it again"
		if n.SizeKnown {
			need = "suited by a piston of " + n.Size.Text(units.InMillimetres, 3)
		}
		p.say(s.Bores[n.Bore].Where + ": " + need)
	}
	p.say("Next: " + r.Next)
	return nil
}

// best is the piston, and its clearance, that the best pairing gives to a bore.
func (s set) best(r piston.BoreMatch, bore int) []string {
	for _, pair := range r.Best.Pairs {
		if pair.Bore == bore {
			return []string{s.Pistons[pair.Piston].Where, mm(pair.Clearance)}
		}
	}
	return []string{"none"}
}

// masses judges one set and says what comes off.
func (p *page) masses(m piston.MassSet) (piston.MassReport, error) {
	r, err := m.Assess()
	if err != nil {
		return r, err
	}
	p.table(func(t *table) {
		t.row("", "mass", "to equal the lightest", "the least to take off")
		for i, c := range r.Cuts {
			least := "not known"
			if c.LeastKnown {
				least = off(c.Least)
				if c.Allowed == tolerance.Above {
					least += ", more than is allowed"
				}
			}
			t.row(c.Where, grams(m.Parts[i].Mass), grams(c.ToLightest), least)
		}
	})
	p.WriteString("\n")
	p.say(r.Finding.Text(units.InGrams, 2))
	p.say("Next: " + r.Next)
	return r, nil
}

// off is a mass to take off, rounded up: what is taken then is enough.
func off(m units.Mass) string {
	text, _ := m.Append(nil, units.Style[units.Mass]{Unit: units.InGrams, Places: 2, Rounding: units.Up})
	return string(text)
}

func (s set) pistons(p *page) error {
	p.title("Mass of the pistons")
	_, err := p.masses(piston.MassSet{Measure: "piston", Parts: s.masses(), Spread: spread(s.PistonSpread), MostOff: s.PistonMostOff})
	return err
}

// rods judges big ends and small ends apart.
func (s set) rods(p *page) error {
	_, big, small, err := s.rodMasses()
	if err != nil {
		return err
	}
	p.title("Rods: ends together less the whole, which the scales' errors must explain")
	p.table(func(t *table) {
		for _, rod := range s.Rods {
			ends, _ := rod.Ends()
			check := "one end was weighed: nothing checks it"
			if ends.Checked {
				check = grams(ends.Off)
			}
			t.row(rod.Where, check)
		}
	})
	p.title("Big ends")
	b, err := p.masses(piston.MassSet{Measure: "big end", Parts: big, Spread: spread(s.BigEndSpread), MostOff: s.RodMostOff})
	if err != nil {
		return err
	}
	p.title("Small ends")
	m, err := p.masses(piston.MassSet{Measure: "small end", Parts: small, Spread: spread(s.SmallEndSpread), MostOff: s.RodMostOff})
	if err != nil || s.Pads == nil {
		return err
	}
	p.title("What to take off the pads for both ends to equal the lightest, g")
	p.table(func(t *table) {
		t.row("", "big pad", "small pad")
		for i, rod := range s.Rods {
			x, y := s.pads(middle(b.Cuts[i].ToLightest), middle(m.Cuts[i].ToLightest))
			t.row(rod.Where, fmt.Sprintf("%.2f", x), fmt.Sprintf("%.2f", y))
		}
	})
	return nil
}

func (s set) pads(big, small float64) (x, y tolerance.Float) {
	at := func(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }
	return piston.MassPads(tolerance.Float(big), tolerance.Float(small), at(s.Pads.Centres), at(s.Pads.Big), at(s.Pads.Small))
}

func middle(b piston.MassBracket) float64 {
	m, _ := b.Middle()
	return m.Float(units.InGrams)
}

// together pairs pistons with rods.
func (s set) together(p *page) error {
	whole, _, _, err := s.rodMasses()
	if err != nil {
		return err
	}
	r, err := piston.MatchRods(s.masses(), whole, spread(s.TotalSpread))
	if err != nil {
		return err
	}
	p.title("Pistons on rods, mass together")
	p.table(func(t *table) {
		t.row("", "as marked", "", "best", "")
		for i, q := range s.Pistons {
			marked, best := r.AsMarked.Pairs[i], r.Best.Pairs[i]
			t.row(q.Where, s.Rods[marked.Rod].Where, grams(marked.Total), s.Rods[best.Rod].Where, grams(best.Total))
		}
		t.row("spread", "", grams(r.AsMarked.Spread), "", grams(r.Best.Spread))
	})
	p.WriteString("\n")
	p.say(r.Finding.Text(units.InGrams, 2))
	p.say("Next: " + r.Next)
	return nil
}

// table lines columns up.
type table struct {
	b strings.Builder
	w *tabwriter.Writer
}

func newTable() *table {
	t := &table{}
	t.w = tabwriter.NewWriter(&t.b, 0, 0, 2, ' ', 0)
	return t
}

func (t *table) row(first, second string, rest ...string) {
	fmt.Fprintln(t.w, "  "+strings.Join(append([]string{first, second}, rest...), "\t")+"\t")
}

func (t *table) text() string {
	t.w.Flush()
	var b strings.Builder
	for line := range strings.Lines(t.b.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return b.String()
}
