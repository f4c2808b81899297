package working

import (
	"math/big"
	"strconv"
	"strings"
)

// An item is what a line may name: an input, a constant, or the result of an
// earlier line.
type item struct {
	node   *node
	step   *step // that calculates it; nil for inputs and constants
	words  string
	symbol string
	places int    // decimal places of its number
	fixed  bool   // the number is exact, and stays as it is
	sign   string // of a constant that lines show by a sign, as π
}

// A step is one line of the solution.
type step struct {
	*item
	leaves []*item  // what it is calculated from
	line   *big.Rat // what that gives, in quanta; nil where it is no number
	whole  bool     // and that is what the node holds
	exact  bool     // nothing was rounded to a quantum, here or before
}

// A plan is a formula taken apart into lines.
type plan struct {
	ruler *ruler
	root  *node
	parts map[*node]bool // split off, although they have no name
	items map[*node]*item
	order []*item // as they are first used
	steps []*step // in order; the last is the root's
	seen  map[*node]bool
	given map[input]*item
}

// An input is what makes two inputs the same one.
type input struct {
	words, symbol, unit string
	value               int64
}

func newPlan(root *node, r *ruler) (*plan, error) {
	p := &plan{ruler: r, root: root, parts: map[*node]bool{}}
	return p, p.layout()
}

// layout finds the lines.
func (p *plan) layout() error {
	p.items, p.seen, p.given = map[*node]*item{}, map[*node]bool{}, map[input]*item{}
	p.order, p.steps = nil, nil
	if err := p.visit(p.root); err != nil {
		return err
	}
	p.nameParts()
	p.tellApart()
	return nil
}

// visit goes through a formula, operands first.
func (p *plan) visit(n *node) error {
	if p.seen[n] {
		return nil
	}
	p.seen[n] = true
	if len(p.seen) > nodesMax {
		return &Error{Op: "solve", Field: clip(p.root.label()), Kind: ErrTooLong, Want: "at most " + strconv.Itoa(nodesMax) + " operations"}
	}
	if n.leaf() {
		p.input(n)
	}
	for _, a := range n.args {
		if err := p.visit(a); err != nil {
			return err
		}
	}
	if !p.ends(n) {
		return nil // what is out of range within a line makes its result so
	}
	if want := p.ruler.refuses(n); want != "" {
		return &Error{Op: "solve", Field: clip(n.label()), Kind: ErrRange, Want: want}
	}
	if n.leaf() {
		return nil
	}
	return p.step(n)
}

// ends reports whether a line shows n by name rather than calculates it.
func (p *plan) ends(n *node) bool {
	return n.leaf() || n.named() || n == p.root || p.parts[n]
}

func (p *plan) input(n *node) {
	key := input{n.words, n.symbol, n.unit, n.value}
	it := p.given[key]
	if it == nil {
		it = &item{node: n, words: n.words, symbol: n.symbol}
		_, it.fixed = p.ruler.finite(n)
		if it.sign, _ = p.ruler.symbol(n); it.sign != "" {
			it.fixed = true
		}
		p.given[key] = it
		p.order = append(p.order, it)
	}
	p.items[n] = it
}

func (p *plan) step(n *node) error {
	if n.size > lineMax {
		return &Error{Op: "solve", Field: clip(n.label()), Kind: ErrTooLong,
			Want: "at most " + strconv.Itoa(lineMax) + " operands and operations in a line: name the results between"}
	}
	s := &step{item: &item{node: n, words: n.words, symbol: n.symbol}}
	s.step = s
	s.exact = true
	p.gather(s, n)
	held := p.fromHeld()
	s.line = held.calculate(n)
	s.whole = s.line != nil && held.holds(n, s.line)
	s.exact = s.exact && s.whole && !held.rounded
	if s.exact {
		_, s.fixed = p.ruler.finite(n)
	}
	p.items[n] = s.item
	p.order = append(p.order, s.item)
	p.steps = append(p.steps, s)
	return nil
}

// gather finds what the line of s is calculated from.
func (p *plan) gather(s *step, n *node) {
	for _, a := range n.args {
		it := p.items[a]
		if it == nil {
			p.gather(s, a)
			continue
		}
		known := false
		for _, l := range s.leaves {
			known = known || l == it
		}
		if !known {
			s.leaves = append(s.leaves, it)
			s.exact = s.exact && (it.step == nil || it.step.exact)
		}
	}
}

// fromHeld works lines out from the sizes themselves of what they name.
func (p *plan) fromHeld() evaluator {
	return evaluator{
		leaf: func(n *node) *big.Rat {
			if p.items[n] == nil {
				return nil
			}
			return p.ruler.held(n)
		},
		holds: func(n *node, v *big.Rat) bool { return v.Cmp(p.ruler.held(n)) == 0 },
	}
}

// split gives the operations within s in which something was rounded lines of
// their own, or where there are none those within any line. It tells whether
// there were some.
func (p *plan) split(s *step) bool {
	before := len(p.parts)
	p.splitOff(s)
	for k := 0; len(p.parts) == before && k < len(p.steps); k++ {
		p.splitOff(p.steps[k])
	}
	return len(p.parts) > before
}

func (p *plan) splitOff(s *step) {
	held := p.fromHeld()
	for _, a := range s.node.args {
		if p.items[a] != nil {
			continue
		}
		if v := held.calculate(a); v == nil || !held.holds(a, v) {
			p.parts[a] = true
		}
	}
}

// nameParts names what was split off.
func (p *plan) nameParts() {
	k := 0
	for _, s := range p.steps {
		if p.parts[s.node] {
			k++
			s.words, s.symbol = "part "+strconv.Itoa(k), "p"+subscript(k)
		}
	}
}

// tellApart numbers the symbols that several items have: w₁, w₂.
func (p *plan) tellApart() {
	uses := map[string]int{}
	for _, it := range p.order {
		if it.symbol != "" {
			uses[it.symbol]++
		}
	}
	next := map[string]int{}
	for _, it := range p.order {
		symbol := it.symbol
		if uses[symbol] < 2 {
			continue
		}
		for taken := true; taken; {
			next[symbol]++
			it.symbol = symbol + subscript(next[symbol])
			_, taken = uses[it.symbol]
		}
		uses[it.symbol] = 1
	}
}

// subscript writes a number in small digits: ₁₂.
func subscript(n int) string {
	return strings.Map(func(r rune) rune { return r - '0' + '₀' }, strconv.Itoa(n))
}
