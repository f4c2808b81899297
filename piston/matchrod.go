package piston

import (
	"slices"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/internal/assign"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RodPair is a piston and the rod that it goes on.
type RodPair struct {
	Piston int         `json:"piston"` // its place in the list, from 0
	Rod    int         `json:"rod"`    // its place in the list, from 0
	Total  MassBracket `json:"total"`  // of the two
}

// A RodPairing is one way to put a set of pistons on a set of rods.
type RodPairing struct {
	Pairs    []RodPair   `json:"pairs"`    // in the order of the pistons
	Spread   MassBracket `json:"spread"`   // the greatest total less the least
	Greatest units.Mass  `json:"greatest"` // the greatest deviation from the mean total
	Sum      units.Mass  `json:"sum"`      // of the deviations
}

// A RodMatch is the answer of [MatchRods]. It is plain data.
type RodMatch struct {
	Mean     units.Mass `json:"mean"`     // of the totals, the same in every pairing, to the nearest picogram
	AsMarked RodPairing `json:"asMarked"` // the first piston on the first rod, and so on
	// Best is the pairing with the least greatest deviation from the mean
	// total. Where the pistons as marked are as good, it is that.
	Best RodPairing `json:"best"`
	// Finding judges the spread of the best totals against the limit.
	Finding tolerance.FindingOf[units.Mass] `json:"finding"`
	Next    string                          `json:"next"` // what to do next, in words
}

// MatchRods finds the pairing of pistons to rods whose totals are most nearly
// equal: the one whose greatest deviation from the mean total is least, of
// those the one that deviates least on the other side of the mean too, and of
// those the one whose deviations have the least sum. It is exact. A bracket
// counts with its worst end.
//
// Where all pistons were weighed with one error, and all rods with one, no
// pairing whatever has a smaller spread: the heaviest piston on the lightest
// rod, and so on down, has both the least greatest total and the greatest
// least one (crossing two pairs of it back can't bring the greater total
// down, nor the less one up), and with these the least spread and the least
// deviation from any value.
//
// Give pistons with pins, clips and rings, and of the rods what is to count:
// the whole, or the small end where what goes up and down should be equal. It
// fails with an [InputError] where there are no parts, unlike many pistons and
// rods, two of one name, or a mass that isn't above zero or has one end only,
// and as [tolerance.Assess] does.
func MatchRods(pistons, rods []MassPart, spread tolerance.SpecOf[units.Mass]) (RodMatch, error) {
	var m Matcher
	return m.Rods(pistons, rods, spread)
}

// Rods is [MatchRods] in the memory of m.
func (m *Matcher) Rods(pistons, rods []MassPart, spread tolerance.SpecOf[units.Mass]) (RodMatch, error) {
	if err := checkCounts("piston", len(pistons), "rod", len(rods)); err != nil {
		return RodMatch{}, err
	}
	if err := checkMasses("piston", pistons); err != nil {
		return RodMatch{}, err
	}
	if err := checkMasses("rod", rods); err != nil {
		return RodMatch{}, err
	}
	n := len(pistons)
	m.total = m.total[:0]
	for _, p := range pistons {
		for _, r := range rods {
			m.total = append(m.total, MassTotal(p.Mass, r.Mass))
		}
	}
	r := RodMatch{Mean: meanTotal(pistons, rods)}
	if err := m.equalTotals(n, r.Mean); err != nil {
		return RodMatch{}, err
	}
	r.Best = m.rodPairing(n, r.Mean, func(i int) int { return m.column[i] })
	r.AsMarked = m.rodPairing(n, r.Mean, func(i int) int { return i })
	if r.AsMarked.Greatest == r.Best.Greatest && r.AsMarked.Spread == r.Best.Spread && r.AsMarked.Sum == r.Best.Sum {
		r.Best = r.AsMarked
	}
	var err error
	if r.Finding, err = tolerance.Assess("spread of piston and rod together", "the set", spread, r.Best.Spread); err != nil {
		return RodMatch{}, err
	}
	r.Next = r.next(pistons, rods)
	return r, nil
}

func checkMasses(kind string, parts []MassPart) error {
	for i := range parts {
		p := &parts[i]
		if err := massAboveZero(kind, p.Where, p.Mass); err != nil {
			return err
		}
		if hi, _ := p.Mass.Upper(); hi > matchMassMost {
			return &InputError{"mass of " + kind + " " + clipped(p.Where), p.Mass.String(), "below " + matchMassMost.String()}
		}
		for j := range i {
			if parts[j].Where == p.Where {
				return &InputError{kind, clip([]byte(p.Where)), "named once"}
			}
		}
	}
	return nil
}

// matchMassMost keeps the total of two in range.
const matchMassMost = 1000 * units.Kilogram

// meanTotal is the mean of the middles of all totals, the same in every
// pairing, to the nearest quantum.
func meanTotal(pistons, rods []MassPart) units.Mass {
	n := 2 * int64(len(pistons)) // ends, for two of each part
	var whole, rest int64        // sums of the quotients and of the remainders, in quanta
	for _, parts := range [][]MassPart{pistons, rods} {
		for i := range parts {
			lo, _ := parts[i].Mass.Lower()
			hi, _ := parts[i].Mass.Upper()
			whole += int64(lo)/n + int64(hi)/n
			rest += int64(lo)%n + int64(hi)%n
		}
	}
	return units.Mass(whole) + units.Mass(rest).Scale(1, n)
}

// equalTotals leaves in m.column the best pairing. First the least greatest
// deviation g; every pairing that keeps to it reaches g on one side, so that
// the totals lie within g and the least that the other side can have, one side
// or the other; then the least sum within both.
func (m *Matcher) equalTotals(n int, mean units.Mass) error {
	above := func(t MassBracket) int64 { hi, _ := t.Upper(); return int64(hi - mean) }
	below := func(t MassBracket) int64 { lo, _ := t.Lower(); return int64(mean - lo) }
	worst := func(t MassBracket) int64 { return max(above(t), below(t)) }
	g, err := m.bottleneck(n, worst, func(MassBracket) bool { return true })
	if err != nil {
		return err
	}
	kept := func(t MassBracket) bool { return worst(t) <= g.Greatest }
	low, _ := m.bottleneck(n, below, kept)
	high, _ := m.bottleneck(n, above, kept)
	// The side that can be kept in most is; of both alike, the less sum.
	var best assign.Answer
	var column []int
	for _, side := range []struct {
		least int64
		reach func(MassBracket) int64
	}{{low.Greatest, below}, {high.Greatest, above}} {
		if side.least > min(low.Greatest, high.Greatest) {
			continue
		}
		a, _ := m.leastSum(n, worst, func(t MassBracket) bool { return kept(t) && side.reach(t) <= side.least })
		if column == nil || a.Sum < best.Sum {
			best, column = a, append(column[:0], m.column...)
		}
	}
	m.column = append(m.column[:0], column...)
	return nil
}

// costs fills in a cost for each total that may be.
func (m *Matcher) costs(cost func(MassBracket) int64, may func(MassBracket) bool) {
	m.cost = m.cost[:0]
	for _, t := range m.total {
		c := int64(assign.Forbidden)
		if may(t) {
			c = cost(t)
		}
		m.cost = append(m.cost, c)
	}
}

func (m *Matcher) bottleneck(n int, cost func(MassBracket) int64, may func(MassBracket) bool) (a assign.Answer, err error) {
	m.costs(cost, may)
	m.column, a, err = m.solver.LeastGreatest(m.column[:0], n, n, m.cost)
	return a, matchCost(err)
}

func (m *Matcher) leastSum(n int, cost func(MassBracket) int64, may func(MassBracket) bool) (a assign.Answer, err error) {
	m.costs(cost, may)
	m.column, a, err = m.solver.LeastSum(m.column[:0], n, n, m.cost)
	return a, matchCost(err)
}

// matchCost says what too great a cost means here.
func matchCost(err error) error {
	if err == nil {
		return nil
	}
	return &InputError{"set", "of so unlike parts", "one whose deviations can be added up"}
}

// rodPairing gathers the pairs of a piston and its rod.
func (m *Matcher) rodPairing(n int, mean units.Mass, rodOf func(piston int) int) RodPairing {
	p := RodPairing{Pairs: make([]RodPair, n)}
	totals := make([]MassBracket, n)
	for i := range n {
		j := rodOf(i)
		t := m.total[i*n+j]
		totals[i] = t
		p.Pairs[i] = RodPair{i, j, t}
		d := deviation(t, mean)
		p.Greatest = max(p.Greatest, d)
		p.Sum += d
	}
	p.Spread = MassSpread(totals[0], totals[1:]...)
	return p
}

// next says what to do.
func (r *RodMatch) next(pistons, rods []MassPart) string {
	if !slices.ContainsFunc(r.Best.Pairs, func(p RodPair) bool { return p.Piston != p.Rod }) {
		return "leave the pistons on their rods: no pairing is more nearly equal" + r.judged()
	}
	var b strings.Builder
	b.WriteString("put ")
	moves := 0
	for _, p := range r.Best.Pairs {
		if p.Piston == p.Rod {
			continue
		}
		if moves > 0 {
			b.WriteString(", ")
		}
		if moves++; moves > matchMoves {
			b.WriteString("and so on")
			break
		}
		b.WriteString(clipped(pistons[p.Piston].Where))
		b.WriteString(" on ")
		b.WriteString(clipped(rods[p.Rod].Where))
	}
	b.WriteString(r.judged())
	b.WriteString("; a rod that has run stays on its own crankpin, with its own cap, so that then the piston moves")
	return b.String()
}

// matchMoves is how many pairs are named in a sentence.
const matchMoves = 32

// judged is what the limit says of the best totals.
func (r *RodMatch) judged() string {
	switch {
	case r.Finding.Spec.IsZero():
		return "; no limit is given for the totals"
	case passes(r.Finding.Standing):
		return "; the totals are within their limit"
	}
	return "; the totals are not within their limit for certain (" + strconv.Quote(r.Finding.Standing.String()) + "), so that metal must come off or a part be replaced"
}
