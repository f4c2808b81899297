package piston

import "github.com/tenthou/tenthou/tolerance"

// DeckBelow is how far a piston's crown stops below the block face at top dead
// centre:
//
//	    ═══ block face ═══════════════  ┐
//	      deck                          │
//	    ┌───────────┐ crown  ┐          │
//	    │           │ compression       │
//	    │    (o)    │ height ┘ pin      │ block
//	    └─────│─────┘                   │ height
//	          │ rod, centre to centre   │
//	         ( ) crankpin               │
//	          │ half the stroke         │
//	          + crank's axis            ┘
//
//	block height − stroke/2 − rod − compression height
//
// The block height is that of the face above the crank's axis, the rod's
// length is from centre to centre, the stroke is twice the crank's throw. A
// result below zero is a crown that stands above the face: [DeckAbove] is the
// same with the other sign. Halving an odd number of picometres rounds by half
// a picometre; all else is exact.
//
// It holds where the pin travels through the crank's axis. With a pin or a
// cylinder set off it the crown stops lower by [DeckOffsetDrop], a few
// micrometres.
func DeckBelow[N tolerance.Number[N]](blockHeight, stroke, rod, compressionHeight N) N {
	return blockHeight.Sub(stroke.Scale(1, 2)).Sub(rod).Sub(compressionHeight)
}

// DeckAbove is how far a piston's crown stands above the block face at top
// dead centre, the piston protrusion: compression height + rod + half the
// stroke − block height. Below zero it stops short of the face; see
// [DeckBelow], which is the same with the other sign.
func DeckAbove[N tolerance.Number[N]](blockHeight, stroke, rod, compressionHeight N) N {
	return compressionHeight.Add(rod).Add(stroke.Scale(1, 2)).Sub(blockHeight)
}

// DeckBlockHeight is the block height with which the crown stops so far below
// the face: what to mill a block to. It undoes [DeckBelow] to a picometre.
func DeckBlockHeight[N tolerance.Number[N]](below, stroke, rod, compressionHeight N) N {
	return compressionHeight.Add(rod).Add(stroke.Scale(1, 2)).Add(below)
}

// DeckCompressionHeight is a piston's compression height (pin's axis to the
// flat of the crown) from where its crown stops below the face, or the one to
// order for a wanted deck. It undoes [DeckBelow] exactly.
func DeckCompressionHeight[N tolerance.Number[N]](below, blockHeight, stroke, rod N) N {
	return blockHeight.Sub(stroke.Scale(1, 2)).Sub(rod).Sub(below)
}

// DeckRod is the rod's length, centre to centre, from where the crown stops
// below the face. It undoes [DeckBelow] exactly.
func DeckRod[N tolerance.Number[N]](below, blockHeight, stroke, compressionHeight N) N {
	return blockHeight.Sub(stroke.Scale(1, 2)).Sub(compressionHeight).Sub(below)
}

// DeckStroke is the stroke, twice the crank's throw, from where the crown
// stops below the face: 2·(block height − rod − compression height − below). It
// undoes [DeckBelow] to a picometre.
func DeckStroke[N tolerance.Number[N]](below, blockHeight, rod, compressionHeight N) N {
	return blockHeight.Sub(rod).Sub(compressionHeight).Sub(below).Scale(2, 1)
}

// DeckRodCentres is a rod's length, centre to centre, from the distance
// between the nearest walls of its two bores and the bores' diameters:
// between + (big + small)/2. Where the distance over the furthest walls was
// taken as well, half the sum of the two is the same and needs no diameters.
func DeckRodCentres[N tolerance.Number[N]](between, bigBore, smallBore N) N {
	return between.Add(bigBore.Add(smallBore).Scale(1, 2))
}

// DeckRodBetween is the distance between the nearest walls of a rod's two
// bores, for a rod of so many centres. It undoes [DeckRodCentres].
func DeckRodBetween[N tolerance.Number[N]](centres, bigBore, smallBore N) N {
	return centres.Sub(bigBore.Add(smallBore).Scale(1, 2))
}

// DeckOffsetDrop is how much lower than [DeckBelow] has it the crown stops at
// top dead centre where the pin's path passes the crank's axis at a distance,
// the gudgeon pin's offset in the piston or the cylinder's from the crank:
//
//	(rod + throw) − √((rod + throw)² − offset²)
//
// All are in one unit, and so is the result; the throw is half the stroke. At
// 1 mm in 190 mm it is 2.6 µm. It is worked out as offset² over the sum of
// the two, so that no digits cancel: the relative error is below 10⁻¹⁵. Where
// the offset is longer than rod and throw the crank can't turn, and the result
// is not-a-number.
func DeckOffsetDrop[R tolerance.Real[R]](offset, rod, throw R) R {
	reach := rod.Add(throw)
	height := reach.Sub(offset).Mul(reach.Add(offset)).Sqrt()
	return offset.Mul(offset).Quo(reach.Add(height))
}

// DeckOffsetFor is the offset with which the crown stops so much lower:
// √(drop·(2·(rod + throw) − drop)). It undoes [DeckOffsetDrop].
func DeckOffsetFor[R tolerance.Real[R]](drop, rod, throw R) R {
	reach := rod.Add(throw)
	return drop.Mul(reach.Add(reach).Sub(drop)).Sqrt()
}
