package piston

import "github.com/tenthou/tenthou/tolerance"

// RingBoreDiameter is the mean diameter of a bore that is not round, for the
// end gap of a ring in it: the mean of diameters read in directions that stand
// evenly round half a turn (two at right angles, four 45° apart).
//
// The way round a bore without hollows is π times the mean of its diameters in
// all directions, exactly (Cauchy's theorem on the perimeter of convex
// curves), whatever its shape: an even number of lobes shows in the diameters,
// an odd one changes neither diameter nor perimeter. The mean of n directions
// stands for that of all but for lobes that are a multiple of 2n. Two
// directions serve an oval; for a wall worn on one side see
// [RingGapOneSided]. Rounded once.
func RingBoreDiameter[N tolerance.Number[N]](first N, more ...N) N {
	sum := first
	for _, d := range more {
		sum = sum.Add(d)
	}
	return sum.Scale(1, int64(1+len(more)))
}

// RingOvalExcess is what the way round an oval bore exceeds π times the mean
// of its greatest and least diameter by, for a wall that stands at R + a·cos 2φ:
// (π/2)·(greatest − least)²/(greatest + least), to the second order in a/R; an
// ellipse's is a quarter of it. For 0.1 mm out-of-round in 86 mm it is 0.09 µm,
// which is why the gap's formulas leave it out. Rounds twice, to 2 quanta.
func RingOvalExcess[N tolerance.Number[N]](greatest, least N) N {
	d := greatest.Sub(least)
	return d.MulDiv(d, greatest.Add(least)).ScalePi(1, 2)
}

// RingGapOneSided is the end gap of a ring where the bore's wall has worn by
// wear, in the radial direction, on one side only: gap + 2·wear, from the gap
// in the round bore. The worn half is taken to be the round one moved over, so
// that the wear is greatest in the middle and falls off as the cosine; the way
// round grows by twice the wear, exactly.
//
// The mean of the two diameters along and across it gives π/2·wear, 0.43 of
// the wear too little: read more directions, or use this. Exact.
func RingGapOneSided[N tolerance.Number[N]](gap, wear N) N {
	return gap.Add(wear.Scale(2, 1))
}

// RingGapWornArc is the end gap of a ring where a part of the bore's wall, as
// long as arc on the wall, has worn by meanWear on average in the radial
// direction: gap + 2·meanWear·arc/bore, from the gap in the round bore. It
// holds to the first order in the wear, and where the ring follows the wall: it
// bridges a narrow hollow, which then opens the gap less. Rounded once.
func RingGapWornArc[N tolerance.Number[N]](gap, meanWear, arc, bore N) N {
	return gap.Add(meanWear.Scale(2, 1).MulDiv(arc, bore))
}

// RingTiltError is by how much the end gap reads too large where the ring
// stands in the bore out of square, one side higher than the other by rise:
// π·rise²/(4·bore), to the second order. Push the ring down with the crown of
// a piston without rings, so that it stands square. Rounds twice, to 2 quanta.
func RingTiltError[N tolerance.Number[N]](bore, rise N) N {
	return rise.MulDiv(rise, bore).ScalePi(1, 4)
}

// RingOpeningAtFace is by how much a ring's gap opens between the edges of its
// face where it opens by opening along its middle line:
// opening·bore/(bore − thickness), thickness being the ring's radial one.
//
// A ring bends about its middle line, which keeps its length. So it is there
// that the gap changes by π times the bore's change; and as the ring unbends,
// its ends turn, the face's edges opening and closing more than the middle, by
// about 4 % for usual rings, and the back's edges less. Where a gap closes,
// by heat or in a smaller bore, it is the face's edges that touch first. From
// one bore to another, bore being the one that the ring comes to, it is good to
// gap·thickness·change/bore², some hundredths of a micrometre. Rounded once.
func RingOpeningAtFace[N tolerance.Number[N]](opening, bore, thickness N) N {
	return opening.MulDiv(bore, bore.Sub(thickness))
}

// RingOpeningAtBack is by how much the gap opens between the edges of the
// ring's back where it opens by opening along its middle line:
// opening·(bore − 2·thickness)/(bore − thickness). A blade between the ends
// reads the narrower side. Rounded once.
func RingOpeningAtBack[N tolerance.Number[N]](opening, bore, thickness N) N {
	return opening.MulDiv(bore.Sub(thickness.Scale(2, 1)), bore.Sub(thickness))
}

// RingClosingToButt is by how much a ring's middle line may close before the
// edges of its face touch: gap·(bore − thickness)/bore. It undoes
// [RingOpeningAtFace]. Rounded once.
func RingClosingToButt[N tolerance.Number[N]](gap, bore, thickness N) N {
	return gap.MulDiv(bore.Sub(thickness), bore)
}
