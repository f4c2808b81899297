package cylinder

import "github.com/tenthou/tenthou/tolerance"

// LeastSizeOnAxis is the least size that a worn bore can be finished to about
// its original axis:
//
//	finished + 2·wear + 2·cut + hone
//
// finished is the diameter that it was last finished to, wear the greatest wear
// of any wall, from the original axis and so on the radius; cut is the least to
// be cut from every wall, per side, hone the stock left for honing, on the
// diameter.
//
// The bored wall must lie beyond the worn one by cut at least everywhere, so
// the bored radius is finished/2 + wear + cut at the least, and honing takes
// hone more off the diameter.
func LeastSizeOnAxis[N tolerance.Number[N]](finished, wear, cut, hone N) N {
	return finished.Add(wear.Add(cut).Scale(2, 1)).Add(hone)
}

// LeastSizeMoved is the least size that a bore worn on two opposite walls can be
// finished to with the boring bar moved to the middle between them:
//
//	finished + wear1 + wear2 + 2·cut + hone
//
// It is less than that of [LeastSizeOnAxis] by the difference of the two. What
// the bar is moved by, [BoreShift] gives; the block, the piston and the rod then
// stand off their old line by as much, so the engine maker's manual has a say.
//
// The worn walls lie at −(finished/2 + wear2) and finished/2 + wear1, so the
// least circle over both has finished + wear1 + wear2 for a diameter, its centre
// in their middle.
func LeastSizeMoved[N tolerance.Number[N]](finished, wear1, wear2, cut, hone N) N {
	return finished.Add(wear1).Add(wear2).Add(cut.Scale(2, 1)).Add(hone)
}

// BoreShift is how far the bar moves from the original axis toward the wall
// worn by wear1, between two opposite walls: (wear1 − wear2)/2.
func BoreShift[N tolerance.Number[N]](wear1, wear2 N) N { return wear1.Sub(wear2).Scale(1, 2) }

// LeastSizeByDiameters bounds the least size from diameters alone, which don't
// tell which wall is worn. least is what it takes at the least, finished + e +
// 2·cut + hone, and greatest what it takes at the most, with e once more, where
// e = diameter − finished is the excess of the greatest diameter.
//
// Any circle over the two walls that a diameter was read between is as wide as
// that diameter, which gives the least; it is enough where both walls are worn
// alike, or the bar is moved and no other wall is in its way. Of the two walls'
// wear, neither of which is below zero, none is more than their sum e, which
// gives the most on the original axis; and a moved bar needs no more than
// that, since it may stay there.
func LeastSizeByDiameters[N tolerance.Number[N]](finished, diameter, cut, hone N) (least, greatest N) {
	excess := diameter.Sub(finished)
	least = diameter.Add(cut.Scale(2, 1)).Add(hone)
	return least, least.Add(excess)
}

// WallCut is how much finishing to a size takes from a wall that wore by so
// much on the radius, with the bar moved toward it by shift (away from it: below
// zero):
//
//	(size − finished)/2 + shift − wear
//
// Below zero, or less than the least cut, that wall does not clean up.
func WallCut[N tolerance.Number[N]](size, finished, shift, wear N) N {
	return size.Sub(finished).Scale(1, 2).Add(shift).Sub(wear)
}

// SizeForWallCut is the size at which so much is taken from a wall: the inverse
// of [WallCut].
func SizeForWallCut[N tolerance.Number[N]](cut, finished, shift, wear N) N {
	return finished.Add(cut.Sub(shift).Add(wear).Scale(2, 1))
}
