package working

import "github.com/tenthou/tenthou/units"

// Solve writes out how t was calculated, every number in the unit of the
// style. The answer has the places of the style; what is exact keeps the
// places that it needs, and what is rounded and used further gets as many
// more as it takes for each line to re-compute.
//
// Of the style, Unit, Places (0 to 18, or [units.AllPlaces]) and Point serve
// all numbers, Sign serves the results, and Bare leaves the unit out of the
// substitutions, never out of a result. Numbers are rounded to nearest, ties
// to even, as the values themselves are; another rule is an error.
//
// The errors are of type [*Error]: [ErrStyle], [ErrRange] for a term out of
// range, [ErrTooLong], and [ErrRounded] where a result was rounded to the
// quantum and then multiplied up so far that no line in this unit would be
// true.
func Solve[Q Quantity[Q]](t TermOf[Q], s units.Style[Q]) (Solution, error) {
	r, err := newRuler(s)
	if err != nil {
		return Solution{}, err
	}
	return solve(t.node(), r)
}

func solve(root *node, r *ruler) (Solution, error) {
	if root.leaf() { // nothing is calculated: a line that says how much it is
		line := operation(opSame, root.value, root)
		line.unit = root.unit
		root = line
	}
	p, err := newPlan(root, r)
	if err != nil {
		return Solution{}, err
	}
	if err := p.settle(); err != nil {
		return Solution{}, err
	}
	return p.solution(), nil
}

func (p *plan) solution() (s Solution) {
	for _, it := range p.order {
		if it.step != nil {
			s.Steps = append(s.Steps, p.write(it.step))
		} else if it.node.named() {
			s.Inputs = append(s.Inputs, Input{Words: it.words, Symbol: it.symbol, Number: p.show(it, inNumbers), Exact: it.fixed, Held: p.ruler.exactly(it.node)})
		}
	}
	return s
}

func (p *plan) write(s *step) Step {
	n := s.node
	st := Step{Name: s.words, Symbol: s.symbol, Places: s.places, NumbersExact: true}
	for _, l := range s.leaves {
		st.NumbersExact = st.NumbersExact && l.fixed
	}
	st.Words, st.Symbols, st.Numbers = p.formula(n, inWords), p.formula(n, inSymbols), p.formula(n, inNumbers)
	st.Result = p.ruler.number(n, s.places, p.ruler.results)
	finite, ok := p.ruler.finite(n)
	st.Exact = s.exact && ok && finite <= s.places
	return st
}
