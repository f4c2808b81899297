package feeler

import (
	"math/big"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Tree is a plan of trials: which blade to try, and what then. A tree that
// has nothing to try says what is known: its bracket's standing, which where
// it can't tell no blade of the set can better. It is plain data.
type Tree struct {
	Bracket  tolerance.Bracket  `json:"bracket"`           // what is known here
	Standing tolerance.Standing `json:"standing"`          // and what it means
	Chance   *big.Rat           `json:"chance"`            // of coming here, by the prior
	Blade    Blade              `json:"blade,omitzero"`    // what to try
	Refused  *Tree              `json:"refused,omitempty"` // the plan where the blade does not go in
	Entered  *Tree              `json:"entered,omitempty"` // the plan where it does
}

// Plan finds the order of trials that settles a gap's standing against the
// limits with the fewest trials, on the average over the prior: of all trees of
// trials with blades of the set it is one with the least expected number. At
// each step of those that do equally well the thinnest blade is tried first. A
// branch ends where the standing is known or no blade lies inside the bracket;
// so of a gap that can't be told it finds out as much as the blades allow, above
// all which limit it is at.
//
// It fails with a [PlanError] for a set without blades, limits that ask nothing
// or contradict each other, and a prior that is none.
func Plan(set Set, spec tolerance.Spec, prior Prior) (*Tree, error) {
	return PlanFrom(set, spec, prior, wholeRange())
}

// PlanFrom is [Plan] for a gap of which something is known already, as the
// bracket of earlier trials. The prior is taken as far as it lies in the
// bracket, and must give it some weight.
func PlanFrom(set Set, spec tolerance.Spec, prior Prior, known tolerance.Bracket) (*Tree, error) {
	if set.Len() == 0 {
		return nil, &PlanError{What: "plan", Field: "set", Kind: ErrEmpty, Want: "a blade to try"}
	}
	if err := checkSpec("plan", spec); err != nil {
		return nil, err
	}
	if err := prior.check(); err != nil {
		return nil, err
	}
	known, ok := known.Intersect(wholeRange())
	if !ok {
		return nil, &PlanError{What: "plan", Field: "bracket", Kind: tolerance.ErrRange, Want: "clearances of 0 and more"}
	}
	p := newPlanner(set, spec, prior, known)
	if p.mass(0, p.cells-1).Sign() == 0 {
		return nil, &PlanError{What: "plan", Field: "prior", Kind: ErrPrior, Want: "some weight in " + known.String()}
	}
	p.solve()
	return p.tree(0, p.cells-1), nil
}

func checkSpec(what string, spec tolerance.Spec) error {
	if spec.IsZero() {
		return &PlanError{What: what, Field: "limits", Kind: tolerance.ErrNoLimit, Want: "give a band for new parts or a wear limit"}
	}
	if err := spec.Validate(); err != nil {
		return &PlanError{What: what, Field: "limits", Kind: err}
	}
	return nil
}

// planner solves the plan on the cells between blades: cell i lies between
// blade i−1 and blade i of those inside the bracket. A tree of trials on the
// cells from i to j tries a blade between two of them and goes on with those on
// one side, so it is a binary search tree whose leaves are runs of cells, and
// the least cost of each run of cells follows from those of shorter ones:
//
//	cost(i, j) = 0 where the run's standing is known, or it is one cell
//	           = mass(i, j) + min over k of cost(i, k−1) + cost(k, j)
type planner struct {
	spec   tolerance.Spec
	known  tolerance.Bracket
	blades []Blade // inside the bracket, one of each thickness
	cells  int
	sums   []*big.Int // sums[i] is the mass of the first i cells
	cost   []*big.Int // nil where nothing need be tried
	try    []int      // the k of the least cost; 0 where none
	none   *big.Int   // 0
}

func newPlanner(set Set, spec tolerance.Spec, prior Prior, known tolerance.Bracket) *planner {
	p := &planner{spec: spec, known: known, blades: set.Inside(known), none: new(big.Int)}
	p.cells = len(p.blades) + 1
	lo, _ := known.Lower()
	ends := []units.Length{lo}
	for _, b := range p.blades {
		ends = append(ends, b.Thickness())
	}
	hi, end := known.Upper()
	if end != tolerance.Absent {
		ends = append(ends, hi)
	}
	p.sums = []*big.Int{new(big.Int)}
	for i, w := range prior.weights(ends, end == tolerance.Absent) {
		p.sums = append(p.sums, new(big.Int).Add(p.sums[i], w))
	}
	p.cost, p.try = make([]*big.Int, p.cells*p.cells), make([]int, p.cells*p.cells)
	return p
}

// bracket is that of the cells from i to j.
func (p *planner) bracket(i, j int) tolerance.Bracket {
	lo, loEnd := p.known.Lower()
	hi, hiEnd := p.known.Upper()
	if i > 0 {
		lo, loEnd = p.blades[i-1].Thickness(), tolerance.Closed
	}
	if j+1 < p.cells {
		hi, hiEnd = p.blades[j].Thickness(), tolerance.Open
	}
	b, _ := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	return b
}

func (p *planner) mass(i, j int) *big.Int { return new(big.Int).Sub(p.sums[j+1], p.sums[i]) }

func (p *planner) solve() {
	sum := new(big.Int)
	for width := 2; width <= p.cells; width++ {
		for i := 0; i+width <= p.cells; i++ {
			j := i + width - 1
			if p.spec.Stand(p.bracket(i, j)) != tolerance.CantTell {
				continue
			}
			var least *big.Int
			at := i*p.cells + j
			for k := i + 1; k <= j; k++ {
				sum.Add(p.costOf(i, k-1), p.costOf(k, j))
				if least == nil {
					least = new(big.Int).Set(sum)
					p.try[at] = k
				} else if sum.Cmp(least) < 0 {
					least.Set(sum)
					p.try[at] = k
				}
			}
			p.cost[at] = least.Add(least, p.mass(i, j))
		}
	}
}

func (p *planner) costOf(i, j int) *big.Int {
	if c := p.cost[i*p.cells+j]; c != nil {
		return c
	}
	return p.none
}

func (p *planner) tree(i, j int) *Tree {
	b := p.bracket(i, j)
	t := &Tree{Bracket: b, Standing: p.spec.Stand(b), Chance: new(big.Rat).SetFrac(p.mass(i, j), p.sums[p.cells])}
	if k := p.try[i*p.cells+j]; k > 0 {
		t.Blade = p.blades[k-1]
		t.Refused, t.Entered = p.tree(i, k-1), p.tree(k, j)
	}
	return t
}
