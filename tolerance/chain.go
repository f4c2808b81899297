package tolerance

import "github.com/tenthou/tenthou/units"

// A LinkOf is one size in a chain: what it may be, and by how much the
// closing size changes with it.
type LinkOf[Q units.Quantity] struct {
	Name string `json:"name"` // what the size is of: "rod centres"
	// Band is what the size may be. A size that was measured goes in as
	// BandFrom(bracket).
	Band BandOf[Q] `json:"band"`
	// Sensitivity is what the closing size gains for each unit that this one
	// gains: +1 where it adds, −1 where it takes, 3/2 through a rocker of that
	// ratio, −2 for the wall of a shell. There is no default: a sign that was
	// forgotten would turn the answer round.
	Sensitivity Ratio `json:"sensitivity"`
	// Scatter is how sizes are taken to lie in the band. Only the
	// root-sum-square and simulation need it.
	Scatter Scatter `json:"scatter,omitzero"`
	// Sigmas is, for a normal scatter alone, how many standard deviations go
	// from the middle of the band to either end: 3 where 99.7 % of the parts
	// are in it.
	Sigmas float64 `json:"sigmas,omitzero"`
}

// A Link is a length in a chain.
type Link = LinkOf[units.Length]

// A ChainOf is a dimension chain: sizes that follow one another and leave a
// closing size, such as deck clearance = block height − (throw + rod + pin
// height). It is plain data; as JSON
//
//	{"links": [{"name": "block", "band": "210 ±0.05 mm", "sensitivity": "1"}, …]}
//
// The worst case is exact and certain. The root-sum-square assumes that each
// part is picked at random from its own lot and that the lots lie in the
// middle of their bands: it is for many engines, not for the one on the stand.
type ChainOf[Q units.Quantity] struct {
	Links []LinkOf[Q] `json:"links"` // in the order in which they follow one another
}

// A Chain is a chain of lengths.
type Chain = ChainOf[units.Length]

// MostLinks is how many links a chain may have.
const MostLinks = 1000

// Validate refuses, with a [ChainError], a chain without links or with more
// than [MostLinks], a link without a sensitivity or with one of zero, a
// scatter that isn't known, a normal scatter whose Sigmas is not from 0.001 to
// 1000, and a band out of range.
func (c ChainOf[Q]) Validate() error {
	if len(c.Links) == 0 {
		return &ChainError{Link: -1, Field: "links", Kind: ErrLinks, Want: "at least one"}
	}
	if len(c.Links) > MostLinks {
		return &ChainError{Link: -1, Field: "links", Kind: ErrLinks, Want: "at most 1000"}
	}
	for i := range c.Links {
		l := &c.Links[i]
		switch {
		case l.Sensitivity.Sign() == 0:
			return c.refuse(i, "sensitivity", ErrSensitivity, "+1, −1 or another ratio, other than zero")
		case !l.Band.InRange() || isTemperature[Q]():
			return c.refuse(i, "band", ErrRange, "limits within the range of their type, which has sums")
		case l.Scatter > UShapedScatter:
			return c.refuse(i, "scatter", ErrScatter, "normal, rectangular, triangular or U-shaped")
		case l.Scatter == NormalScatter && !isSigmas(l.Sigmas):
			return c.refuse(i, "sigmas", ErrScatter, "from 0.001 to 1000: how many standard deviations go from the middle of the band to its end")
		case l.Scatter != NormalScatter && l.Sigmas != 0:
			return c.refuse(i, "sigmas", ErrScatter, "none: only a normal scatter has it")
		}
	}
	return nil
}

// ClosingSize is the chain's formula: the sum of sizes, one for each link, each
// times its sensitivity. It is generic, so that sizes may be quantities,
// brackets, estimates or working terms; c gives the sensitivities alone.
// Whole sensitivities are exact; another rounds once for its link, to the
// nearest quantum (brackets outward). [ChainOf.WorstCase] rounds once for all.
//
// It fails with a [ChainError] where c is not valid or the counts differ.
func ClosingSize[N Number[N], Q units.Quantity](c ChainOf[Q], sizes ...N) (size N, err error) {
	if err := c.Validate(); err != nil {
		return size, err
	}
	if len(sizes) != len(c.Links) {
		return size, &ChainError{Link: -1, Field: "sizes", Kind: ErrLinks, Want: "one for each link"}
	}
	// What adds comes first, so that a written-out solution begins with it.
	first := 0
	for i := range c.Links {
		if c.Links[i].Sensitivity.Sign() > 0 {
			first = i
			break
		}
	}
	size = times(sizes[first], c.Links[first].Sensitivity)
	for i, s := range sizes {
		if i == first {
			continue
		}
		r := c.Links[i].Sensitivity
		r = reduced(r.Num, r.Den)
		if r.Num < 0 {
			r.Num = -r.Num
			size = size.Sub(times(s, r))
		} else {
			size = size.Add(times(s, r))
		}
	}
	return size, nil
}

// times leaves alone what is multiplied by 1.
func times[N Number[N]](size N, r Ratio) N {
	if r.Num == r.Den {
		return size
	}
	return size.Scale(r.Num, r.Den)
}

// WorstCase holds the closing size for every choice of sizes from the bands,
// exactly; where sensitivities are fractions the ends are rounded outward
// once, to the quantum. It needs no scatter. It fails where c is not valid and
// with a [ChainError] of kind ErrRange where the result is out of range.
func (c ChainOf[Q]) WorstCase() (Interval[Q], error) {
	if err := c.Validate(); err != nil {
		return Interval[Q]{}, err
	}
	var lower, upper exactSum[Q]
	lo, hi := Closed, Closed
	for i := range c.Links {
		l := &c.Links[i]
		a, b := ordered(l.Band.limits, l.Sensitivity)
		lower.add(a.v, l.Sensitivity)
		upper.add(b.v, l.Sensitivity)
		lo, hi = min(lo, a.end), min(hi, b.end)
	}
	least, exactLo := lower.round(units.Down)
	greatest, exactHi := upper.round(units.Up)
	if !exactLo {
		lo = min(lo, Open) // what rounding moved outward is not reached
	}
	if !exactHi {
		hi = min(hi, Open)
	}
	r := interval(least, lo, greatest, hi)
	if !r.InRange() {
		return Interval[Q]{}, &ChainError{Link: -1, Field: "closing size", Kind: ErrRange, Want: "within the range of its type"}
	}
	return r, nil
}

// chainLimit is one limit of a link's band.
type chainLimit[Q units.Quantity] struct {
	v   Q
	end End
}

// ordered gives the limits that make the closing size least and greatest.
func ordered[Q units.Quantity](i Interval[Q], s Ratio) (least, greatest chainLimit[Q]) {
	least, greatest = chainLimit[Q]{i.lo, i.loEnd}, chainLimit[Q]{i.hi, i.hiEnd}
	if s.Sign() < 0 {
		return greatest, least
	}
	return least, greatest
}
