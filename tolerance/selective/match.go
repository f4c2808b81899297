package selective

import (
	"github.com/tenthou/tenthou/internal/assign"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A PartOf is one part of a batch, and what it brings to the fit.
type PartOf[Q units.Quantity] struct {
	Name string `json:"name"` // to report it by
	// Base is what of the fit is there without the mating part: a hole's
	// size, or tunnel less journal where shells are to be chosen.
	Base tolerance.Interval[Q] `json:"base"`
}

// A Part is one with a length for its base.
type Part = PartOf[units.Length]

// A PairingOf is one part and the mate that it gets.
type PairingOf[Q units.Quantity] struct {
	Part     int                   `json:"part"`     // its place in the batch, from 0
	Mate     int                   `json:"mate"`     // the place of its class in the stock, from 0
	Fit      tolerance.Interval[Q] `json:"fit"`      // base + effect × size
	Distance Q                     `json:"distance"` // from the aim, the greatest that the bracket allows
}

// A Pairing is one of lengths.
type Pairing = PairingOf[units.Length]

// A Reason says why a part gets no mate. The zero value says nothing.
type Reason uint8

// The reasons.
const (
	// FitsNowhere: with every mate in stock the fit is out of band for certain.
	FitsNowhere Reason = iota + 1
	// CantTell: with some mate the fit may be in band, but the readings don't
	// tell; with none it is for certain.
	CantTell
	// Outnumbered: with some mate the fit is in band, but each of those serves
	// another part.
	Outnumbered
)

var reasons = [...]string{"", "fits nowhere", "can't tell", "outnumbered"}

// String is the reason in words.
func (r Reason) String() string {
	if int(r) >= len(reasons) {
		r = 0
	}
	return reasons[r]
}

// MarshalText writes what String gives.
func (r Reason) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *Reason) UnmarshalText(text []byte) error {
	for i, s := range reasons {
		if s == string(text) {
			*r = Reason(i)
			return nil
		}
	}
	return refuse("reason", 0, string(text), "", ErrSyntax, `"fits nowhere", "can't tell" or "outnumbered"`)
}

// A LeftOverOf is a part that gets no mate.
type LeftOverOf[Q units.Quantity] struct {
	Part   int    `json:"part"`   // its place in the batch, from 0
	Name   string `json:"name"`   // the part's
	Reason Reason `json:"reason"` // why it gets none
	// Nearest is the mate in stock that would come nearest, whoever else has
	// it; −1 where nothing is in stock.
	Nearest int                   `json:"nearest"`
	Fit     tolerance.Interval[Q] `json:"fit"`     // with it
	Verdict tolerance.Verdict     `json:"verdict"` // on that fit
}

// A LeftOver is one of lengths.
type LeftOver = LeftOverOf[units.Length]

// A PairedOf is the answer of [Match].
type PairedOf[Q units.Quantity] struct {
	Pairs    []PairingOf[Q]  `json:"pairs"`              // in the order of the parts
	LeftOver []LeftOverOf[Q] `json:"leftOver,omitempty"` // the parts without a mate
	Unused   []int           `json:"unused"`             // of each class, how many stay in stock
	Greatest Q               `json:"greatest"`           // the greatest distance from the aim
	// Spread holds the greatest fit less the least.
	Spread tolerance.Interval[Q] `json:"spread"`
}

// Paired is the answer for lengths.
type Paired = PairedOf[units.Length]

// MostPairs is how many pairs of a part and a mate are looked at in one batch,
// a class counting as often as it is in stock, but not more often than there
// are parts.
const MostPairs = 1 << 22

// Match pairs a batch with what is in stock; see [MatcherOf.Match].
func Match[Q units.Quantity](parts []PartOf[Q], effect tolerance.Ratio, mates []ClassOf[Q], wanted WantedOf[Q]) (PairedOf[Q], error) {
	var m MatcherOf[Q]
	return m.Match(parts, effect, mates, wanted)
}

// A MatcherOf pairs one batch after another in the same memory. The zero value
// is ready. Two goroutines can't use one at the same time.
type MatcherOf[Q units.Quantity] struct {
	solver  assign.Solver
	cost    []int64
	gives   []tolerance.Interval[Q] // what each class gives to a fit: effect × size
	column  []int                   // the class of each column
	columns []int                   // the column of each part
}

// A Matcher pairs lengths.
type Matcher = MatcherOf[units.Length]

// Match gives each part a mate, so that as many fits, base + effect × size, as
// can be are in band for certain; then that the greatest distance from the aim
// is least; then that the sum of the distances is. Where several ways are as
// good, the first parts get the first mates. It is exact. A fit that may be in
// band is not made: measure again, and match again.
//
// It fails with an [InputError] where an input can't be used, a base or size
// lacks an end, or there are more than [MostPairs] pairs to look at. It takes
// about half a millisecond for 64 parts and 64 mates.
func (m *MatcherOf[Q]) Match(parts []PartOf[Q], effect tolerance.Ratio, mates []ClassOf[Q], wanted WantedOf[Q]) (PairedOf[Q], error) {
	if err := m.take(parts, effect, mates, wanted); err != nil {
		return PairedOf[Q]{}, err
	}
	p := PairedOf[Q]{Unused: make([]int, len(mates))}
	for j := range mates {
		p.Unused[j] = mates[j].Stock
	}
	for i := range parts {
		for k, j := range m.column {
			if k > 0 && m.column[k-1] == j {
				m.cost = append(m.cost, m.cost[len(m.cost)-1]) // another of the same class
				continue
			}
			c, ok := fitOf(parts[i].Base, m.gives[j], &wanted)
			if !ok {
				return PairedOf[Q]{}, refuse("part", i+1, parts[i].Name, "fit", ErrRange, "within the range of its type")
			}
			cost := int64(assign.Forbidden)
			if c.Verdict == tolerance.Within {
				cost = int64(c.Distance)
			}
			m.cost = append(m.cost, cost)
		}
	}
	if len(m.column) > 0 {
		var err error
		if m.columns, _, err = m.solver.LeastGreatest(m.columns, len(parts), len(m.column), m.cost); err != nil {
			return PairedOf[Q]{}, &InputError{What: "wanted fit", Field: "band", Kind: ErrRange, Want: "distances from the aim that can be added up", Err: err}
		}
	}
	for i := range parts {
		if len(m.columns) == 0 || m.columns[i] == assign.None {
			p.LeftOver = append(p.LeftOver, m.leftOver(i, &parts[i], mates, &wanted))
			continue
		}
		j := m.column[m.columns[i]]
		c, _ := fitOf(parts[i].Base, m.gives[j], &wanted)
		if p.Pairs == nil {
			p.Pairs = make([]PairingOf[Q], 0, len(parts))
		}
		p.Pairs = append(p.Pairs, PairingOf[Q]{i, j, c.Fit, c.Distance})
		p.Unused[j]--
		p.Greatest = max(p.Greatest, c.Distance)
	}
	p.Spread = spread(p.Pairs)
	return p, nil
}

// take checks the batch and lays out a column for each mate.
func (m *MatcherOf[Q]) take(parts []PartOf[Q], effect tolerance.Ratio, mates []ClassOf[Q], wanted WantedOf[Q]) error {
	if err := checkStock(effect, mates, wanted); err != nil {
		return err
	}
	switch {
	case len(parts) == 0:
		return refuse("parts", 0, "", "", ErrEmpty, "at least one part")
	case len(parts) > MostClasses:
		return refuse("parts", 0, "", "", ErrTooMany, "at most 10000 parts")
	}
	for i := range parts {
		if parts[i].Name == "" {
			return refuse("part", i+1, "", "name", ErrName, "a name to report it by")
		}
		if err := bounded("part", i+1, parts[i].Name, parts[i].Base); err != nil {
			return err
		}
	}
	m.column, m.columns, m.cost, m.gives = m.column[:0], m.columns[:0], m.cost[:0], m.gives[:0]
	for j := range mates {
		m.gives = append(m.gives, mates[j].Size.Scale(effect.Num, effect.Den))
		for range min(mates[j].Stock, len(parts)) {
			if (len(m.column)+1)*len(parts) > MostPairs {
				return refuse("parts", 0, "", "", ErrTooMany, "at most 4194304 pairs of a part and a mate")
			}
			m.column = append(m.column, j)
		}
	}
	return nil
}

// fitOf is the fit of one pair, as [Predict] has it, if it has a distance from
// the aim.
func fitOf[Q units.Quantity](base, gives tolerance.Interval[Q], wanted *WantedOf[Q]) (c CandidateOf[Q], ok bool) {
	c.Fit = base.Add(gives)
	c.Distance, ok = wanted.distance(c.Fit)
	c.Verdict = wanted.Band.Judge(c.Fit)
	return c, ok
}

// leftOver says why a part gets no mate.
func (m *MatcherOf[Q]) leftOver(i int, part *PartOf[Q], mates []ClassOf[Q], wanted *WantedOf[Q]) LeftOverOf[Q] {
	l := LeftOverOf[Q]{Part: i, Name: part.Name, Reason: FitsNowhere, Nearest: -1}
	var best CandidateOf[Q]
	for j := range mates {
		if mates[j].Stock == 0 {
			continue
		}
		c, _ := fitOf(part.Base, m.gives[j], wanted)
		if l.Nearest < 0 || nearer(c, best) < 0 {
			best, l.Nearest = c, j
		}
	}
	l.Fit, l.Verdict = best.Fit, best.Verdict
	switch {
	case l.Nearest < 0:
	case l.Verdict == tolerance.Within:
		l.Reason = Outnumbered
	case l.Verdict == tolerance.Undecided:
		l.Reason = CantTell
	}
	return l
}

// spread holds the greatest fit less the least.
func spread[Q units.Quantity](pairs []PairingOf[Q]) tolerance.Interval[Q] {
	if len(pairs) == 0 {
		return tolerance.Interval[Q]{}
	}
	fits := make([]tolerance.Interval[Q], len(pairs))
	for i := range pairs {
		fits[i] = pairs[i].Fit
	}
	return fits[0].Spread(fits[1:]...)
}
