package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/internal/assign"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// A MatchPart is a bore or a piston to be paired: its mark, and its diameter
// with the error of its measurement.
type MatchPart struct {
	Where string            `json:"where"` // "bore 2", "piston C"
	Size  tolerance.Bracket `json:"size"`  // the bore's, or the skirt's at its measuring height
}

// A MatchPair is a bore and a piston in it.
type MatchPair struct {
	Bore      int               `json:"bore"`      // its place in the list, from 0
	Piston    int               `json:"piston"`    // its place in the list, from 0
	Clearance tolerance.Bracket `json:"clearance"` // bore less piston; below zero it doesn't go in
	Verdict   tolerance.Verdict `json:"verdict"`   // on the clearance, by the wanted band
	Deviation units.Length      `json:"deviation"` // from the wanted clearance, the greatest that the bracket allows
}

// A MatchPairing is one way to pair a set.
type MatchPairing struct {
	Pairs    []MatchPair  `json:"pairs"`    // in the order of the bores; a bore may have none
	Within   int          `json:"within"`   // how many are in the band for certain
	Greatest units.Length `json:"greatest"` // the greatest deviation of all pairs
	Sum      units.Length `json:"sum"`      // of the deviations of all pairs
}

// A MatchNeed is a bore that no piston of the set is left for, and what a
// piston must measure to suit it.
type MatchNeed struct {
	Bore int `json:"bore"` // its place in the list, from 0
	// Size is what keeps the wanted band whatever the bore's bracket leaves
	// open.
	Size tolerance.Band `json:"size,omitzero"`
	// SizeKnown is false where the bore's bracket is wider than the band, so
	// that no size is sure to suit it.
	SizeKnown bool `json:"sizeKnown"`
}

// A BoreMatch is the answer of [MatchBores]. It is plain data.
type BoreMatch struct {
	// AsMarked puts the first piston in the first bore, and so on, in the band
	// or not.
	AsMarked MatchPairing `json:"asMarked"`
	// Best pairs as many bores as can be with pistons that are in the band for
	// certain. Where the pistons as marked are as good, it is that.
	Best MatchPairing `json:"best"`
	// Feasible tells that every bore gets a piston in the band for certain.
	Feasible bool `json:"feasible"`
	// Possible is how many bores at the most could have a piston in the band if
	// the sizes were known exactly: more than Best.Within where finer
	// measuring may save a piston.
	Possible int `json:"possible"`
	// Replace are the pistons that Best leaves out, the fewest that have to be
	// replaced for every bore to be in the band for certain.
	Replace []int `json:"replace,omitempty"`
	// Needs are the bores that Best leaves empty, as many.
	Needs []MatchNeed `json:"needs,omitempty"`
	Next  string      `json:"next"` // what to do next, in words
}

// A Matcher pairs one set after another in the same memory. The zero value is
// ready. Two goroutines can't use one at the same time.
type Matcher struct {
	solver    assign.Solver
	cost      []int64
	column    []int
	clearance []tolerance.Bracket
	total     []MassBracket
}

// MatchBores finds the best pairing of pistons to bores: of all ways to give
// as many bores as can be a piston whose clearance is in the wanted band for
// certain, one whose greatest deviation from the wanted clearance is least,
// and of those one whose deviations have the least sum. It is exact. A bracket
// counts with its worst end.
//
// Parts that have run together are bedded in to each other: where the pistons
// as marked are within the band, weigh what re-pairing gains against that, as
// Next says.
//
// It fails with an [InputError] where there are no parts, unlike many bores and
// pistons, two of one name, a size that isn't above zero or has one end only,
// or where the wanted clearance isn't in its band.
func MatchBores(bores, pistons []MatchPart, wanted selective.Wanted) (BoreMatch, error) {
	var m Matcher
	return m.Bores(bores, pistons, wanted)
}

// Bores is [MatchBores] in the memory of m.
func (m *Matcher) Bores(bores, pistons []MatchPart, wanted selective.Wanted) (BoreMatch, error) {
	if err := checkMatch(bores, pistons, wanted); err != nil {
		return BoreMatch{}, err
	}
	n := len(bores)
	m.cost, m.clearance = m.cost[:0], m.clearance[:0]
	for _, b := range bores {
		for _, p := range pistons {
			m.clearance = append(m.clearance, tolerance.Clearance(b.Size, p.Size))
		}
	}
	pair := func(i, j int) MatchPair {
		c := m.clearance[i*n+j]
		return MatchPair{i, j, c, wanted.Band.Judge(c), deviation(c, wanted.Aim)}
	}
	for i := range n {
		for j := range n {
			cost := int64(assign.Forbidden)
			if p := pair(i, j); p.Verdict == tolerance.Within {
				cost = int64(p.Deviation)
			}
			m.cost = append(m.cost, cost)
		}
	}
	var a assign.Answer
	var err error
	if m.column, a, err = m.solver.LeastGreatest(m.column[:0], n, n, m.cost); err != nil {
		return BoreMatch{}, matchCost(err)
	}
	r := BoreMatch{Feasible: a.Pairs == n, Possible: a.Pairs}
	asMarked := func(i int) int { return i }
	r.AsMarked = pairingOf(n, pair, asMarked)
	r.Best = pairingOf(n, pair, func(i int) int { return m.column[i] })
	if r.AsMarked.Within == n && r.AsMarked.Greatest == r.Best.Greatest && r.AsMarked.Sum == r.Best.Sum {
		r.Best = pairingOf(n, pair, asMarked)
	}
	if !r.Feasible {
		m.short(&r, bores, wanted)
		if r.Possible, err = m.possible(n, wanted.Band); err != nil {
			return BoreMatch{}, err
		}
	}
	r.Next = r.next(n)
	return r, nil
}

// deviation is the greatest distance from the aim that a bracket allows.
func deviation[Q units.Quantity](i tolerance.Interval[Q], aim Q) Q {
	lo, _ := i.Lower()
	hi, _ := i.Upper()
	return max(hi-aim, aim-lo)
}

// pairingOf gathers the pairs of a bore and its piston.
func pairingOf(n int, pair func(bore, piston int) MatchPair, pistonOf func(bore int) int) MatchPairing {
	p := MatchPairing{Pairs: make([]MatchPair, 0, n)}
	for i := range n {
		j := pistonOf(i)
		if j == assign.None {
			continue
		}
		c := pair(i, j)
		p.Pairs = append(p.Pairs, c)
		p.Greatest = max(p.Greatest, c.Deviation)
		p.Sum += c.Deviation
		if c.Verdict == tolerance.Within {
			p.Within++
		}
	}
	return p
}

// short names what is missing for a full set.
func (m *Matcher) short(r *BoreMatch, bores []MatchPart, wanted selective.Wanted) {
	used := make([]bool, len(bores))
	for i, j := range m.column {
		if j != assign.None {
			used[j] = true
			continue
		}
		need := MatchNeed{Bore: i}
		size, err := tolerance.ShaftBand(tolerance.BandFrom(bores[i].Size), wanted.Band)
		if err == nil {
			need.Size, need.SizeKnown = size, true
		}
		r.Needs = append(r.Needs, need)
	}
	for j, u := range used {
		if !u {
			r.Replace = append(r.Replace, j)
		}
	}
}

// possible is how many bores at the most could have a piston in the band.
func (m *Matcher) possible(n int, band tolerance.Band) (int, error) {
	m.cost = m.cost[:0]
	for _, c := range m.clearance {
		cost := int64(0)
		if v := band.Judge(c); v == tolerance.Below || v == tolerance.Above {
			cost = assign.Forbidden
		}
		m.cost = append(m.cost, cost)
	}
	var a assign.Answer
	var err error
	m.column, a, err = m.solver.LeastSum(m.column[:0], n, n, m.cost)
	return a.Pairs, err
}

// next says what to do.
func (r *BoreMatch) next(n int) string {
	short := n - r.Best.Within
	pistons := plural(short, "piston")
	switch {
	case short > 0 && r.Possible == n:
		return "not a pass: for " + plural(short, "bore") + " no piston is in the band for certain, but one may be; measure more closely before a piston is replaced"
	case short > 0 && r.Possible > r.Best.Within:
		return "no pairing puts every bore in the band: replace " + pistons + ", or after finer measuring perhaps only " + strconv.Itoa(n-r.Possible)
	case short > 0:
		return "no pairing puts every bore in the band: replace " + pistons + ", or bore to suit"
	case r.AsMarked.Within < n:
		return "pair anew: as marked, " + strconv.Itoa(n-r.AsMarked.Within) + " of " + strconv.Itoa(n) + " are not in the band for certain"
	case r.AsMarked.Greatest == r.Best.Greatest && r.AsMarked.Sum == r.Best.Sum:
		return "leave the pistons as marked: no pairing is better"
	}
	return "as marked all are in the band; new parts may be paired anew, parts that have run together stay together unless the engine maker says otherwise"
}

// plural is "1 piston", "2 pistons".
func plural(n int, of string) string {
	if n != 1 {
		of += "s"
	}
	return strconv.Itoa(n) + " " + of
}
