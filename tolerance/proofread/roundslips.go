package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// rounding tries careless roundings of the other figure.
func (s *search[Q]) rounding(side Side) {
	zero := s.figs[side.index()].zero
	w, other := s.pair.side(side), s.pair.side(side.other())
	x, y := show(w), s.at[side.other().index()]
	if (x.value < zero) != (y.value < zero) || w.Denominator != 0 {
		return
	}
	// Cut off, it is short by less than a step, and by half a step of the other
	// figure's at most besides.
	off := apart(x.value, y.value)
	if 2*off < 2*uint64(x.step)+uint64(y.step) {
		slip := SlipOf[Q]{Kind: CutOff, In: side, Rank: rankCutOff}
		if apart(x.value, zero) > apart(y.value, zero) {
			slip.Kind, slip.Rank = RoundedUp, rankRoundedUp
		}
		if off > apart(y.value, zero)/coarse {
			slip.Rank = rankCoarse
		}
		s.add(slip, off)
	}
	s.roundedTwice(side, w, other)
}

// coarse: careless rounding that moves a figure by more than a quarter isn't
// the first thing to think of.
const coarse = 4

var bothTies = [...]units.Rounding{units.NearestEven, units.NearestAway}

// roundedTwice tries the other figure rounded before it was converted, and
// after that by way of one or two places more. Nobody makes much of a figure
// that was rounded away: each shows at most one digit more than the one before.
func (s *search[Q]) roundedTwice(side Side, w, other units.Written[Q]) {
	x, zero := show(w), s.figs[side.index()].zero
	via := func(u units.Unit[Q], places int) {
		for _, rule := range bothTies {
			v, exact := units.Round(other.Value, u, places, rule)
			moved := apart(int64(v), int64(other.Value))
			if exact || !units.InRange(v) || moved > apart(int64(other.Value), zeroOf(u))/coarse || !rounds(int64(v), x, zero) {
				continue
			}
			s.add(SlipOf[Q]{Kind: RoundedTwice, In: side, Via: units.Written[Q]{Value: v, Unit: u, Places: uint8(places)}, Rank: rankRoundedTwice}, 0)
		}
	}
	if w.Unit != other.Unit && !other.Compound {
		places := min(int(other.Places), other.Unit.Places())
		if other.Denominator != 0 {
			places = 5
		}
		for p := places - 1; p >= 0; p-- {
			if step := (units.Written[Q]{Unit: other.Unit, Places: uint8(p)}).Step(); int64(step) > 10*x.step {
				break
			}
			via(other.Unit, p)
		}
	}
	for p := int(w.Places) + 1; p <= int(w.Places)+2 && p <= w.Unit.Places(); p++ {
		via(w.Unit, p)
	}
}
