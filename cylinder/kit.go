package cylinder

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Price is in the smallest coin of the user's currency, so that sums are
// exact. The zero value is one that was not given, which is not free.
type Price struct {
	Coins int64 `json:"coins"` // from 0 to a million million
	Given bool  `json:"given"` // false: not known
}

// PriceOf is a price that was given.
func PriceOf(coins int64) Price { return Price{coins, true} }

// mostCoins keeps sums from wrapping.
const mostCoins = 1_000_000_000_000

func (p Price) check(field string) error {
	if p.Coins < 0 || p.Coins > mostCoins || p.Coins != 0 && !p.Given {
		return &InputError{field, strconv.FormatInt(p.Coins, 10), "from 0 to a million million coins, and said to be given"}
	}
	return nil
}

// plus is p and n times q; not given unless both are, or n is 0.
func (p Price) plus(q Price, n int) Price {
	if n == 0 {
		return p
	}
	if !p.Given || !q.Given {
		return Price{}
	}
	return PriceOf(p.Coins + int64(n)*q.Coins)
}

// A Stock is how many are there. The zero value is not known.
type Stock struct {
	Pieces int  `json:"pieces"` // 0 or more
	Known  bool `json:"known"`  // false: not counted
}

// StockOf is a stock that is known.
func StockOf(pieces int) Stock { return Stock{pieces, true} }

// enough is Within where n are there, Below where they aren't.
func (s Stock) enough(n int) tolerance.Verdict {
	switch {
	case !s.Known:
		return tolerance.Undecided
	case s.Pieces >= n:
		return tolerance.Within
	}
	return tolerance.Below
}

// A PistonKit is an oversize that pistons and rings can be had in, in
// millimetres or inches.
type PistonKit struct {
	Name     string       `json:"name"`     // "+0.50", "+.020 in"
	Oversize units.Length `json:"oversize"` // over the standard bore, on the diameter; 0 for standard
	// Pistons are the skirts of its pistons as measured at 20 °C: one for each
	// bore, in their order, or any number for all. Empty where they were not
	// measured: then its size is the nominal step, and not proved.
	Pistons []tolerance.Bracket `json:"pistons,omitzero"`
	Stock   Stock               `json:"stock,omitzero"` // how many of its pistons are there
	Price   Price               `json:"price,omitzero"` // of one piston with its rings
}

// KitSize is the nominal bore for a kit: the standard bore and its oversize.
func KitSize[N tolerance.Number[N]](standard, oversize N) N { return standard.Add(oversize) }

// MetricSteps and InchSteps are the oversizes that pistons are most often made
// in: common practice. The first inch step is ten thou.
func MetricSteps() []units.Length {
	return []units.Length{units.Millimetre / 4, units.Millimetre / 2, 3 * units.Millimetre / 4, units.Millimetre}
}

// InchSteps are said with [MetricSteps].
func InchSteps() []units.Length {
	return []units.Length{10 * units.Thou, 20 * units.Thou, 30 * units.Thou, 40 * units.Thou}
}

// Ladder is a kit for each step, named by it: "+0.50 mm", "+.020 in".
func Ladder(unit units.Unit[units.Length], steps ...units.Length) []PistonKit {
	places := 2
	if unit == units.InInches {
		places = 3
	}
	kits := make([]PistonKit, len(steps))
	for i, s := range steps {
		if exact, ok := units.Places(s, unit); ok {
			places = max(places, exact)
		}
		name, _ := units.Append([]byte{'+'}, s, units.Style[units.Length]{Unit: unit, Places: places, Point: unit == units.InInches})
		kits[i] = PistonKit{Name: string(name), Oversize: s}
	}
	return kits
}

// size is what a bore is finished to with a kit: the measured piston and its
// clearance, or the nominal step where it was not measured.
func (k *PistonKit) size(bore, bores int, standard units.Length, clearance tolerance.Bracket) (size tolerance.Bracket, proved bool) {
	switch len(k.Pistons) {
	case 0:
		return tolerance.Exactly(KitSize(standard, k.Oversize)), false
	case bores:
		return BoreTarget(k.Pistons[bore], clearance), true
	}
	// Which piston goes where isn't known.
	all := k.Pistons[0]
	lo, hi := bothOf(all)
	for _, p := range k.Pistons[1:] {
		l, h := bothOf(p)
		lo, hi = min(lo, l), max(hi, h)
	}
	return BoreTarget(boreSpan(lo, hi), clearance), true
}

func (k *PistonKit) check(i int, standard units.Length) error {
	name := k.Name
	if name == "" {
		name = "kit " + strconv.Itoa(i+1)
	}
	name = clip(name)
	if k.Oversize < 0 || k.Oversize > standard/4 {
		return &InputError{name + ", oversize", k.Oversize.String(), "from 0 mm to a quarter of the standard bore"}
	}
	if k.Price.check("price") != nil {
		return k.Price.check(name + ", price")
	}
	if k.Stock.Pieces < 0 || k.Stock.Pieces > math.MaxInt32 {
		return &InputError{name + ", stock", strconv.Itoa(k.Stock.Pieces), "0 or more"}
	}
	for j, p := range k.Pistons {
		field := fmt.Sprint(name, ", piston ", j+1)
		if err := boreBracket(field, p, units.Picometre); err != nil {
			return err
		}
		// A piston is smaller than its bore by its clearance; a step away it
		// belongs to another kit.
		nominal := KitSize(standard, k.Oversize)
		if lo, hi := bothOf(p); hi > nominal || lo < nominal-nominal/100 {
			return &InputError{field, p.String(), "a skirt for this kit: below its nominal bore " + nominal.String() + " by at most a hundredth of it"}
		}
	}
	return nil
}
