package working

import "math/big"

// guardMax is the most decimal places that a number gets so that its line
// re-computes.
const guardMax = 100

// settle chooses the places of every number so that each line gives, from the
// numbers that it prints, the result that it prints. The answer gets the
// places asked for; where no working re-computes with them, one or two more,
// or more lines, or fewer places.
func (p *plan) settle() error {
	last := p.steps[len(p.steps)-1]
	asked := p.ruler.asked(last.node, last.exact)
	for {
		stuck := p.fit(asked)
		for more := 1; stuck != nil && more <= 2 && asked+more <= p.ruler.most(p.root); more++ {
			if p.fit(asked+more) == nil {
				return nil
			}
		}
		if stuck == nil {
			return nil
		}
		if !p.split(stuck) {
			break
		}
		if err := p.layout(); err != nil {
			return err
		}
	}
	for fewer := asked - 1; fewer >= 0; fewer-- {
		if p.fit(fewer) == nil {
			return nil
		}
	}
	return &Error{Op: "solve", Field: clip(p.root.label()), Kind: ErrRounded, Want: p.ruler.advice()}
}

// fit gives the answer so many places and all other numbers what that takes.
// It returns the line that doesn't re-compute with any, or nil.
func (p *plan) fit(places int) (stuck *step) {
	last := p.steps[len(p.steps)-1]
	for _, it := range p.order {
		if it != last.item && !p.start(it, places) {
			return it.step
		}
	}
	if last.places = places; !p.allows(last, places) {
		return last
	}
	// More places for an operand of one line are more for every line that has
	// it, and the line that calculates it: those before are still to come, those
	// behind are gone through once more.
	for again := true; again; {
		again = false
		for k := len(p.steps) - 1; k >= 0; k-- {
			s := p.steps[k]
			for !p.recomputes(s) {
				if !p.refine(s) && (s == last || s.fixed || !p.raise(s.item)) {
					return s
				}
				again = true
			}
		}
	}
	return nil
}

// start gives an item the fewest places that it may have.
func (p *plan) start(it *item, asked int) bool {
	r := p.ruler
	if it.fixed {
		finite, _ := r.finite(it.node)
		it.places = r.padded(finite, asked)
		return true
	}
	it.places = r.start(it.node, asked)
	if it.step == nil || p.allows(it.step, it.places) || p.raise(it) {
		return true
	}
	for it.places--; it.places >= 0; it.places-- {
		if p.allows(it.step, it.places) {
			return true
		}
	}
	return false
}

// allows reports whether the line of s, from the sizes themselves, gives its
// result to so many places.
func (p *plan) allows(s *step, places int) bool {
	return s.whole || s.line != nil && p.ruler.scaledRat(s.line, places).Cmp(p.ruler.scaled(s.node, places)) == 0
}

// raise gives an item that isn't exact more places, the next that it may have.
func (p *plan) raise(it *item) bool {
	if it.step == nil || it.step.whole {
		if it.places >= guardMax {
			return false
		}
		it.places++
		return true
	}
	for places := it.places + 1; places <= p.ruler.most(it.node)+1; places++ {
		if p.allows(it.step, places) {
			it.places = places
			return true
		}
	}
	return false
}

// refine gives the numbers in a line more places. It tells whether any got
// some.
func (p *plan) refine(s *step) (refined bool) {
	for _, it := range s.leaves {
		if !it.fixed && p.raise(it) {
			refined = true
		}
	}
	return refined
}

// recomputes reports whether the line, worked out exactly from its numbers as
// printed and rounded to the places of its result, gives the result as
// printed.
func (p *plan) recomputes(s *step) bool {
	printed := evaluator{leaf: func(n *node) *big.Rat {
		if it := p.items[n]; it != nil {
			return p.ruler.shows(it)
		}
		return nil
	}}
	v := printed.calculate(s.node)
	if v == nil {
		return false
	}
	scaled := nearest(new(big.Int).Mul(v.Num(), power10(s.places)), v.Denom())
	return scaled.Cmp(p.ruler.scaled(s.node, s.places)) == 0
}
