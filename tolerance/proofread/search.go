package proofread

import (
	"cmp"
	"slices"

	"github.com/tenthou/tenthou/units"
)

// mostSlips is how many explanations are given at most.
const mostSlips = 4

// search looks for what may have gone wrong with two figures of one size.
type search[Q units.Quantity] struct {
	pair    PairOf[Q]
	printed PairOf[Q] // what stands there, where a figure of pair was calculated
	at      [2]shown  // a fraction and a design figure are exact: step 0
	figs    [2]figure[Q]
	digits  [2]bool // whether the figure is a decimal
	design  Side    // known to be right
	suspect Side    // likelier to be wrong, for reasons outside this pair
	found   []candidate[Q]
}

type candidate[Q units.Quantity] struct {
	SlipOf[Q]
	off        uint64 // how far what it undoes is from the other figure
	suspicions int    // what else speaks against it
	trust      int    // roundness of the figure that it would leave as it is
}

func newSearch[Q units.Quantity](p PairOf[Q], design, suspect Side) *search[Q] {
	s := &search[Q]{pair: p, printed: p, design: design, suspect: suspect}
	for _, side := range []Side{First, Second} {
		w, i := p.side(side), side.index()
		s.at[i] = show(w)
		if w.Denominator != 0 || side == design {
			s.at[i].step = 0
		}
		s.figs[i], s.digits[i] = figureOf(w)
	}
	return s
}

// slips tries every kind and gives the likeliest explanations in order.
func (s *search[Q]) slips() []SlipOf[Q] {
	for _, side := range []Side{First, Second} {
		if side == s.design {
			continue
		}
		s.rounding(side)
		s.fraction(side)
		s.factor(side)
		s.unitMixed(side)
		s.temperature(side)
		if s.digits[side.index()] {
			s.sign(side)
			s.decimalPlace(side)
			s.digitSlips(side)
			s.twoDigits(side)
		}
	}
	if len(s.found) == 0 {
		for _, side := range []Side{First, Second} {
			if side != s.design {
				s.add(SlipOf[Q]{Kind: WrongNumber, In: side, Rank: rankWrongNumber}, 0)
			}
		}
	}
	return s.sorted()
}

// add keeps a candidate, unless one in the same figure does the same as well:
// of one kind the nearer is kept, of one outcome the simpler.
func (s *search[Q]) add(slip SlipOf[Q], off uint64) {
	c := candidate[Q]{SlipOf: slip, off: off}
	for i := range s.found {
		o := &s.found[i]
		if o.In != c.In {
			continue
		}
		sameKind := o.Kind == c.Kind && o.Rank == c.Rank
		sameOutcome := c.Undone != (units.Written[Q]{}) && o.Undone.Value == c.Undone.Value && o.Undone.Unit == c.Undone.Unit
		switch {
		case sameKind && c.off < o.off, sameOutcome && c.Rank < o.Rank:
			*o = c
			return
		case sameKind, sameOutcome:
			return
		}
	}
	s.found = append(s.found, c)
}

func (s *search[Q]) sorted() []SlipOf[Q] {
	for i := range s.found {
		c := &s.found[i]
		c.Printed = s.pair.side(c.In)
		c.Correct = s.correct(c.SlipOf)
		fixed := c.Undone
		if fixed == (units.Written[Q]{}) || c.Kind == WrongUnit {
			fixed = c.Correct
		}
		left := s.printed.side(c.In.other())
		c.suspicions = unlikely(fixed) + unlikely(left)
		if s.suspect == c.In.other() {
			c.suspicions += 4
		}
		c.trust = trust(left)
	}
	return ordered(s.found)
}

// ordered sorts the candidates, the likeliest first, and keeps the best.
func ordered[Q units.Quantity](found []candidate[Q]) []SlipOf[Q] {
	slices.SortStableFunc(found, func(a, b candidate[Q]) int {
		return cmp.Or(cmp.Compare(a.Rank, b.Rank), cmp.Compare(a.suspicions, b.suspicions),
			cmp.Compare(a.trust, b.trust), cmp.Compare(b.In, a.In), cmp.Compare(a.off, b.off))
	})
	var out []SlipOf[Q]
	for _, c := range found[:min(len(found), mostSlips)] {
		out = append(out, c.SlipOf)
	}
	return out
}

// trust is how round a figure is, a fraction being as round as can be.
func trust[Q units.Quantity](w units.Written[Q]) int {
	f, ok := figureOf(w)
	if !ok {
		return 0
	}
	return roundness(f.m)
}

// unlikely counts what a workshop doesn't measure: finer steps than a
// ten-thousandth of an inch or a thousandth of a millimetre, and sizes of more
// than a metre. Common practice.
func unlikely[Q units.Quantity](w units.Written[Q]) (n int) {
	if _, is := any(w.Value).(units.Length); !is {
		return 0
	}
	if step := units.Length(w.Step()); step < units.Micrometre {
		n++
	}
	if units.Length(w.Value).Abs() > units.Metre {
		n++
	}
	return n
}

// correct is what the other figure asks for, as it would have been printed.
func (s *search[Q]) correct(slip SlipOf[Q]) units.Written[Q] {
	w, other := slip.Printed, s.pair.side(slip.In.other())
	if w.Denominator != 0 {
		if f, ok := nearestFraction(other, w); ok {
			return f
		}
	}
	places := int(w.Places)
	switch slip.Kind {
	case UnitsExchanged:
		return slip.Undone
	case WrongUnit, StepsMixed, TemperatureConverted, WrongNumber:
		places = matching(other, w)
	case DecimalPlace:
		places = max(int(slip.Undone.Places), workshop(w.Unit, places))
	default:
		places = max(places, int(slip.Undone.Places))
	}
	if w.Denominator != 0 {
		places = matching(other, w)
	}
	return decimalOf(other.Value, w.Unit, places)
}

// workshop is so many places, or fewer where they are finer than a workshop
// measures.
func workshop[Q units.Quantity](u units.Unit[Q], places int) int {
	for places > 0 && unlikely(units.Written[Q]{Unit: u, Places: uint8(places)}) > 0 {
		places--
	}
	return places
}

// decimalOf is q as a decimal of a unit, rounded to nearest, ties to even.
func decimalOf[Q units.Quantity](q Q, u units.Unit[Q], places int) units.Written[Q] {
	places = min(places, u.Places())
	v, _ := units.Round(q, u, places, units.NearestEven)
	return units.Written[Q]{Value: v, Unit: u, Places: uint8(places)}
}

// matching is the least number of places in w's unit that shows no coarser
// steps than the other figure does, as far as a workshop measures.
func matching[Q units.Quantity](other, w units.Written[Q]) int {
	if other.Denominator != 0 {
		return int(w.Places)
	}
	want, p := other.Step(), 0
	for p < w.Unit.Places() && (units.Written[Q]{Unit: w.Unit, Places: uint8(p)}).Step() > want {
		p++
	}
	return workshop(w.Unit, p)
}
