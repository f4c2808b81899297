package selective

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Predict is the fit that a mating part makes: base + effect × size. It is
// generic, so that sizes may be quantities, brackets, estimates or working
// terms. The effect must be a ratio; a fraction rounds once.
func Predict[N tolerance.Number[N]](base, size N, effect tolerance.Ratio) N {
	return base.Add(size.Scale(effect.Num, effect.Den))
}

// SizeFor is the size with which a mating part makes a fit: (fit − base) ÷
// effect, the inverse of [Predict]. The effect must be a ratio other than zero.
func SizeFor[N tolerance.Number[N]](base, fit N, effect tolerance.Ratio) N {
	return fit.Sub(base).Scale(effect.Den, effect.Num)
}

// A ClassOf is a size in stock: a shell of one colour, a shim, or one piston
// with its own number.
type ClassOf[Q units.Quantity] struct {
	Name string `json:"name"` // to report it by
	// Size is what it measures, or the band of its class: band.Interval().
	Size tolerance.Interval[Q] `json:"size"`
	// Stock is how many there are. Of none there is nothing to choose, so it
	// has to be given.
	Stock int `json:"stock"`
}

// A Class is one with a length for its size.
type Class = ClassOf[units.Length]

// A WantedOf is the fit that is wanted: the band that is allowed, and the value
// in it that would be best.
type WantedOf[Q units.Quantity] struct {
	Band tolerance.BandOf[Q] `json:"band"` // what is allowed
	Aim  Q                   `json:"aim"`  // the best, in the band
}

// A Wanted is a wanted clearance.
type Wanted = WantedOf[units.Length]

// Middle wants a band and aims at its middle, to the nearest quantum. It fails
// where the band has one limit or none, or is out of range.
func Middle[Q units.Quantity](band tolerance.BandOf[Q]) (WantedOf[Q], error) {
	aim, ok := band.Interval().Middle()
	if !ok {
		return WantedOf[Q]{}, refuse("wanted fit", 0, "", "band", ErrNoLimit, "a limit on both sides, or an aim")
	}
	w := WantedOf[Q]{band, aim}
	return w, w.check()
}

func (w WantedOf[Q]) check() error {
	switch {
	case w.Band.IsZero():
		return refuse("wanted fit", 0, "", "band", ErrNoLimit, "a band with at least one limit")
	case !w.Band.InRange():
		return refuse("wanted fit", 0, "", "band", ErrRange, "limits within the range of their type")
	case !w.Band.Allows(w.Aim):
		return refuse("wanted fit", 0, "", "aim", ErrAim, "a value that "+clip(w.Band.String())+" allows")
	}
	return nil
}

// distance is how far a fit can be from the aim at most; ok is false where an
// end is missing.
func (w *WantedOf[Q]) distance(fit tolerance.Interval[Q]) (d Q, ok bool) {
	lo, loEnd := fit.Lower()
	hi, hiEnd := fit.Upper()
	if loEnd == tolerance.Absent || hiEnd == tolerance.Absent || !fit.InRange() {
		return 0, false
	}
	return max(hi-w.Aim, w.Aim-lo), true // both at most 2^62
}

// A CandidateOf is what one class would make of the fit.
type CandidateOf[Q units.Quantity] struct {
	Class    int                   `json:"class"`    // its place in the stock, from 0
	Name     string                `json:"name"`     // the class's
	Fit      tolerance.Interval[Q] `json:"fit"`      // base + effect × size
	Verdict  tolerance.Verdict     `json:"verdict"`  // on the fit, by the wanted band
	Distance Q                     `json:"distance"` // from the aim, the greatest that the bracket allows
	InStock  bool                  `json:"inStock"`  // whether there is one
}

// A Candidate is one of lengths.
type Candidate = CandidateOf[units.Length]

// rank puts what is in band for certain first, then what may be.
func rank(v tolerance.Verdict) int {
	switch v {
	case tolerance.Within:
		return 0
	case tolerance.Undecided:
		return 1
	}
	return 2
}

// nearer compares two candidates by what decides between them.
func nearer[Q units.Quantity](a, b CandidateOf[Q]) int {
	if c := rank(a.Verdict) - rank(b.Verdict); c != 0 {
		return c
	}
	return sign(a.Distance > b.Distance, a.Distance < b.Distance)
}

// A ChoiceOf is the answer of [Choose].
type ChoiceOf[Q units.Quantity] struct {
	// Candidates are all classes, the nearest to the wanted fit first, those
	// out of stock among them.
	Candidates []CandidateOf[Q] `json:"candidates"`
	// Chosen is the place in Candidates of the nearest that is in stock, or
	// −1. Its verdict may well be that it doesn't do.
	Chosen int `json:"chosen"`
	// Equal is how many others in stock come just as near: a choice between
	// them is not the arithmetic's.
	Equal int `json:"equal,omitzero"`
}

// A Choice is one of lengths.
type Choice = ChoiceOf[units.Length]

// Best is the candidate chosen; ok is false where nothing is in stock.
func (c ChoiceOf[Q]) Best() (best CandidateOf[Q], ok bool) {
	if c.Chosen < 0 || c.Chosen >= len(c.Candidates) {
		return best, false
	}
	return c.Candidates[c.Chosen], true
}

// Choose finds the class in stock whose fit, base + effect × size, comes nearest
// to the wanted one; the package documentation says what nearest means. It gives
// every class's fit and verdict, so that a user sees what was passed over. It
// fails with an [InputError] where an input can't be used, or a size or base
// lacks an end, since then no distance can be told.
func Choose[Q units.Quantity](base tolerance.Interval[Q], effect tolerance.Ratio, classes []ClassOf[Q], wanted WantedOf[Q]) (ChoiceOf[Q], error) {
	none := ChoiceOf[Q]{Chosen: -1}
	if err := checkStock(effect, classes, wanted); err != nil {
		return none, err
	}
	if err := bounded("base", 0, "", base); err != nil {
		return none, err
	}
	c := ChoiceOf[Q]{Candidates: make([]CandidateOf[Q], len(classes)), Chosen: -1}
	for i, class := range classes {
		fit := Predict(base, class.Size, effect)
		d, ok := wanted.distance(fit)
		if !ok {
			return none, refuse("class", i+1, class.Name, "fit", ErrRange, "within the range of its type")
		}
		c.Candidates[i] = CandidateOf[Q]{i, class.Name, fit, wanted.Band.Judge(fit), d, class.Stock > 0}
	}
	slices.SortStableFunc(c.Candidates, func(a, b CandidateOf[Q]) int {
		if n := nearer(a, b); n != 0 {
			return n
		}
		x, _ := a.Fit.Upper()
		y, _ := b.Fit.Upper()
		return sign(x < y, x > y) // the greater clearance first
	})
	for i, x := range c.Candidates {
		switch {
		case !x.InStock:
		case c.Chosen < 0:
			c.Chosen = i
		case nearer(c.Candidates[c.Chosen], x) == 0:
			c.Equal++
		}
	}
	return c, nil
}

// MostClasses is how many classes or parts may be given at once.
const MostClasses = 10_000

func checkStock[Q units.Quantity](effect tolerance.Ratio, classes []ClassOf[Q], wanted WantedOf[Q]) error {
	if err := wanted.check(); err != nil {
		return err
	}
	switch {
	case effect.Sign() == 0:
		return refuse("effect", 0, "", "", ErrEffect, "−1 where the mating part takes its size from the fit, −2 for both walls of a shell, or another ratio, other than zero")
	case len(classes) == 0:
		return refuse("classes", 0, "", "", ErrEmpty, "at least one class")
	case len(classes) > MostClasses:
		return refuse("classes", 0, "", "", ErrTooMany, "at most 10000 classes")
	}
	for i := range classes {
		c := &classes[i]
		if c.Name == "" {
			return refuse("class", i+1, "", "name", ErrName, "a name to report it by")
		}
		if c.Stock < 0 {
			return refuse("class", i+1, c.Name, "stock", ErrStock, "how many there are, 0 or more")
		}
		if err := bounded("class", i+1, c.Name, c.Size); err != nil {
			return err
		}
	}
	return nil
}

// bounded refuses a size without both ends.
func bounded[Q units.Quantity](what string, at int, name string, size tolerance.Interval[Q]) error {
	if err := known(what, at, name, size); err != nil {
		return err
	}
	if _, ok := size.Width(); !ok {
		return refuse(what, at, name, "size", ErrOpen, "a bracket with both ends")
	}
	return nil
}
