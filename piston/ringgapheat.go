package piston

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// RingGapHot is the end gap in mm of a ring that is warmer, in a bore that is
// warmer, than when the gap was measured:
//
//	gap + π·bore·borePerK·boreRise − (π·bore − gap)·ringPerK·ringRise
//
// The way round the bore grows from π·bore, the ring from what of it the gap
// leaves. Gap and bore, its mean diameter, in mm; the coefficients of linear
// expansion per kelvin; the rises in kelvins. At zero the ends touch; a result
// below zero, which no gap can have, is by how much the ring would have to be
// squeezed: it buckles or scores the bore.
//
// It holds along the ring's middle line; the edges of its face close by a few
// per cent more, so put what [RingClosingToButt] gives in the place of a
// measured gap, as [RingButting] does.
func RingGapHot[R tolerance.Real[R]](gap, bore, ringPerK, ringRise, borePerK, boreRise R) R {
	round := ringWayRound(bore)
	return gap.Add(round.Mul(borePerK).Mul(boreRise)).Sub(round.Sub(gap).Mul(ringPerK).Mul(ringRise))
}

// RingButtingRise is by how many kelvins a ring must be warmer, in a bore that
// is warmer by boreRise, than when its gap was measured, for its ends to touch:
// [RingGapHot] solved for the ring's rise where the hot gap is zero:
//
//	(gap + π·bore·borePerK·boreRise)/((π·bore − gap)·ringPerK)
func RingButtingRise[R tolerance.Real[R]](gap, bore, ringPerK, borePerK, boreRise R) R {
	round := ringWayRound(bore)
	return gap.Add(round.Mul(borePerK).Mul(boreRise)).Quo(round.Sub(gap).Mul(ringPerK))
}

// RingButtingBoreRise is by how many kelvins the bore must be warmer, at the
// least, for the ends of a ring that is warmer by ringRise not to touch:
// [RingGapHot] solved for the bore's rise where the hot gap is zero. A bore that
// stays cold while the ring heats up is the worst case.
func RingButtingBoreRise[R tolerance.Real[R]](gap, bore, ringPerK, ringRise, borePerK R) R {
	round := ringWayRound(bore)
	return round.Sub(gap).Mul(ringPerK).Mul(ringRise).Sub(gap).Quo(round.Mul(borePerK))
}

// RingGapForHeat is the cold end gap in mm that leaves a hot one:
// [RingGapHot] solved for the gap. With a hot gap of 0 it is the least gap at
// which the ends only just touch:
//
//	(hot + π·bore·(ringPerK·ringRise − borePerK·boreRise))/(1 + ringPerK·ringRise)
func RingGapForHeat[R tolerance.Real[R]](hot, bore, ringPerK, ringRise, borePerK, boreRise R) R {
	grown := ringPerK.Mul(ringRise)
	round := ringWayRound(bore)
	return hot.Add(round.Mul(grown.Sub(borePerK.Mul(boreRise)))).Quo(grown.Add(grown.Const(1)))
}

func ringWayRound[R tolerance.Real[R]](bore R) R { return bore.Const(math.Pi).Mul(bore) }
