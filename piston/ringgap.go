package piston

import "github.com/tenthou/tenthou/tolerance"

// RingGapChange is by how much a ring's end gap opens where the mean diameter
// of the bore is greater by boreChange: π times it; below zero, it closes. It
// is exactly rounded. The mean diameter stands for the way round the bore, as
// [RingBoreDiameter] tells, and the gap is that along the ring's middle line:
// between the edges of the ring's face it opens by a few per cent more, see
// [RingOpeningAtFace].
func RingGapChange[N tolerance.Number[N]](boreChange N) N {
	return boreChange.ScalePi(1, 1)
}

// RingGapInBore is the end gap of a ring at another place of a bore, or in
// another bore, from the gap measured where the bore's mean diameter was
// measuredIn: gap + π·(bore − measuredIn). A result of zero or less says that
// the ends butt. Rounded once.
func RingGapInBore[N tolerance.Number[N]](gap, measuredIn, bore N) N {
	return gap.Add(RingGapChange(bore.Sub(measuredIn)))
}

// The ratio piTop/piBottom is the last convergent of π's continued fraction
// whose terms an int64 holds. A fraction between it and π has a denominator
// above 8·10¹⁹; a length of x quanta divided by it rounds otherwise than one
// divided by π only if some x/(m + ½) lies between, whose denominator is less.
const (
	piTop    = 2_646_693_125_139_304_345
	piBottom = 842_468_587_426_513_207
)

// BoreForRingGap is the mean diameter of the bore in which a ring would have
// the wanted gap: measuredIn + (wanted − gap)/π. It undoes [RingGapInBore]: with
// a gap from the band of new rings, it tells for which bore a ring was made.
// Exactly rounded.
func BoreForRingGap[N tolerance.Number[N]](wanted, gap, measuredIn N) N {
	return measuredIn.Add(wanted.Sub(gap).Scale(piBottom, piTop))
}

// RingGapChangeByRule is the change of the gap by the rule of thumb of 3 for
// 1: 0.003 in for each 0.001 in of the bore's diameter (TM 5-3805-261-34,
// p. 13-46). It falls short by 4.5 % of the true change: [RingGapRuleError].
func RingGapChangeByRule[N tolerance.Number[N]](boreChange N) N {
	return boreChange.Scale(3, 1)
}

// RingGapRuleError is by how much the rule of 3 for 1 falls short of the
// change of the gap: π·boreChange − 3·boreChange. A bracket holds it, but is
// wider than need be, since the change stands in it twice.
func RingGapRuleError[N tolerance.Number[N]](boreChange N) N {
	return RingGapChange(boreChange).Sub(RingGapChangeByRule(boreChange))
}

// RingGapAfterFaceWear is the end gap of a ring whose face wore by so much in
// the radial direction, in a bore that did not: gap + 2π·wear, since the ring
// moves out by the wear. The same amount of wear of the bore's wall all round
// opens the gap by as much, as its diameter grows by twice the wear; a figure
// for the bore's diameter opens it by half of that. One is never to be taken
// for the other: whether a manual's "wear" is radial must be known.
func RingGapAfterFaceWear[N tolerance.Number[N]](gap, wear N) N {
	return gap.Add(wear.ScalePi(2, 1))
}

// RingFaceWear is the radial wear of a ring's face, from its end gap now and
// when it was new, both in one bore or ring gauge: (gap − newGap)/2π. It undoes
// [RingGapAfterFaceWear]. Exactly rounded.
func RingFaceWear[N tolerance.Number[N]](gap, newGap N) N {
	return gap.Sub(newGap).Scale(piBottom, 2*piTop)
}

// RingGapInOversize is the gap that a ring for the standard bore has in an
// oversize one: gap + π·oversize, 1.57 mm too much in a bore of +0.50 mm.
//
// The gap is the lesser fault. A ring's free shape is made so that it presses
// evenly when closed to its own bore, where its tips, which nothing bends, have
// that bore's curvature. In a larger bore the tips still curve as before, more
// than the wall, and turn away from it: the ring does not touch near its gap,
// and presses less all round. No fitting mends it: the remedy is the maker's
// oversize ring.
func RingGapInOversize[N tolerance.Number[N]](gap, oversize N) N {
	return gap.Add(RingGapChange(oversize))
}

// RingStockToFile is what must come off a ring's ends, both together, for its
// gap to become the wanted one: wanted − gap, measured and wanted in one place.
// Below zero the gap is larger already, and no filing makes it smaller.
//
// Wear eye protection; ring ends are sharp, and a ring that slips springs open.
// File square, with the ring held near its ends, from the face inward only, so
// that a coating is pressed on to the ring and not torn off it; then take the
// burrs off with a fine stone and measure again (common practice).
func RingStockToFile[N tolerance.Number[N]](wanted, gap N) N {
	return wanted.Sub(gap)
}

// RingLeastGap is the least end gap that a rule asks for in a bore: so much
// for each unit of its diameter. [RingGapFactors] has the trade's rules; the
// engine maker's figure governs.
func RingLeastGap[N tolerance.Number[N]](bore N, factor tolerance.Ratio) N {
	return bore.Scale(factor.Num, factor.Den)
}
