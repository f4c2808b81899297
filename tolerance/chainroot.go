package tolerance

import (
	"math"
	"math/big"

	"github.com/tenthou/tenthou/units"
)

// A RootSumSquareOf is where a chain's closing size lies for lots that
// scatter as the links say, each part picked at random.
type RootSumSquareOf[Q units.Quantity] struct {
	Sigmas float64 `json:"sigmas"` // how many standard deviations the interval goes each way
	// Centre is the closing size of the middles of all bands, to the nearest
	// quantum, ties to even. Where bands lie to one side of their nominal
	// sizes it is not the closing size of the nominals.
	Centre Q           `json:"centre"`
	Each   Q           `json:"each"`   // Sigmas standard deviations, rounded up to the quantum
	Within Interval[Q] `json:"within"` // Centre ± Each before either is rounded, then rounded outward
	// Beyond tells that Within reaches past the worst case, which then holds:
	// no closing size lies outside that. It happens where Sigmas is high and
	// links have bounds.
	Beyond bool `json:"beyond,omitzero"`
}

// A RootSumSquare is one of lengths.
type RootSumSquare = RootSumSquareOf[units.Length]

// RootSumSquare gives the closing size within so many standard deviations:
// the middles of the bands add up, and the squares of what each link
// contributes. With 3 for all Sigmas it is the root of the sum of the squared
// tolerances, and 99.73 % of closing sizes lie in it if all scatters are
// normal, and nearly so if many links of like tolerance are not.
//
// It is exact, then rounded outward once. It fails with a [ChainError] where c
// is not valid, a link has no scatter or lacks a limit, sigmas is not from
// 0.001 to 1000, or the result is out of range.
func (c ChainOf[Q]) RootSumSquare(sigmas float64) (RootSumSquareOf[Q], error) {
	var none RootSumSquareOf[Q]
	if err := c.scattered(-1, sigmas); err != nil {
		return none, err
	}
	worst, err := c.WorstCase()
	if err != nil {
		return none, err
	}
	r, ok := c.quickRoot(sigmas)
	if !ok {
		r = c.exactRoot(sigmas)
	}
	if !inRange(r.Each) || !inRange(r.Within.lo) || !inRange(r.Within.hi) {
		return none, &ChainError{Link: -1, Field: "closing size", Kind: ErrRange, Want: "within the range of its type"}
	}
	r.Sigmas = sigmas
	r.Beyond = r.Within.lo < worst.lo || r.Within.hi > worst.hi
	return r, nil
}

// scattered refuses what the root-sum-square can't be told from; the link but
// needs no band.
func (c ChainOf[Q]) scattered(but int, sigmas float64) error {
	if err := c.Validate(); err != nil {
		return err
	}
	if !isSigmas(sigmas) {
		return &ChainError{Link: -1, Field: "sigmas of the closing size", Kind: ErrScatter, Want: "from 0.001 to 1000"}
	}
	for i := range c.Links {
		l := &c.Links[i]
		if l.Scatter == ScatterUnstated {
			return c.refuse(i, "scatter", ErrScatter, "normal with its sigmas, rectangular, triangular or U-shaped")
		}
		if i != but && (l.Band.limits.loEnd == Absent || l.Band.limits.hiEnd == Absent) {
			return c.refuse(i, "band", ErrNoLimit, "a limit on both sides")
		}
	}
	return nil
}

// quickRoot works in whole numbers and float64 where the sensitivities are
// small whole numbers and the sizes below 280 m, unless what float64 can't
// tell would matter.
func (c ChainOf[Q]) quickRoot(sigmas float64) (r RootSumSquareOf[Q], ok bool) {
	const most, few = 1 << 48, 1 << 6
	if len(c.Links) > few {
		return r, false
	}
	var twice int64      // the centre, below 2^61
	var variance float64 // of twice the closing size, in squared quanta
	for i := range c.Links {
		l := &c.Links[i]
		lo, hi, s := int64(l.Band.limits.lo), int64(l.Band.limits.hi), l.Sensitivity
		if s.Den != 1 || s.Num > few || s.Num < -few || max(lo, hi) > most || min(lo, hi) < -most {
			return r, false
		}
		twice += s.Num * (lo + hi)
		a := float64(s.Num * (hi - lo))
		variance += float64(a*a) / l.squared()
	}
	each := sigmas * math.Sqrt(variance)
	// Each step rounds by at most one part in 2^53, and there are no more than
	// three for each link and five for all.
	slack := each * float64(3*len(c.Links)+5) / (1 << 53)
	up := math.Ceil(each + slack)
	if !(up < most) || up != math.Ceil(each-slack) {
		return r, false
	}
	half := func(n int64) Q { return Q(n >> 1) } // rounded down
	n := int64(up)
	r.Each = half(n + 1)
	r.Within = Interval[Q]{half(twice - n), half(twice + n + 1), Closed, Closed}
	r.Centre = half(twice)
	r.Centre += Q(twice&1) * (r.Centre & 1) // a half over goes to the even one
	return r, true
}

// exactRoot works in fractions of any size.
func (c ChainOf[Q]) exactRoot(sigmas float64) RootSumSquareOf[Q] {
	middle, variance := c.moments(-1)
	squareOfEach := ratSquare(sigmas)
	squareOfEach.Mul(squareOfEach, variance)
	_, each := plusRoot(new(big.Rat), squareOfEach)
	least, _ := lessRoot(middle, squareOfEach)
	_, greatest := plusRoot(middle, squareOfEach)
	return RootSumSquareOf[Q]{
		Centre: chainQuanta[Q](ratEven(middle)),
		Each:   chainQuanta[Q](each),
		Within: Interval[Q]{chainQuanta[Q](least), chainQuanta[Q](greatest), Closed, Closed},
	}
}

// moments are the closing size of the middles of the bands, and its variance,
// both exactly and without the link but.
func (c ChainOf[Q]) moments(but int) (middle, variance *big.Rat) {
	middle, variance = new(big.Rat), new(big.Rat)
	for i := range c.Links {
		if i == but {
			continue
		}
		l := &c.Links[i]
		lo, hi := ratWhole(l.Band.limits.lo), ratWhole(l.Band.limits.hi)
		half := ratOf(l.Sensitivity)
		half.Mul(half, big.NewRat(1, 2))
		m := new(big.Rat).Add(lo, hi)
		middle.Add(middle, m.Mul(m, half))
		w := hi.Sub(hi, lo)
		w.Mul(w, half)
		w.Mul(w, w).Quo(w, l.squaredRat())
		variance.Add(variance, w)
	}
	return middle, variance
}
