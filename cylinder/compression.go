package cylinder

import "github.com/tenthou/tenthou/tolerance"

// The formulas of the compression ratio, over [tolerance.Real]: for the
// working, and for the uncertainty. Lengths in one unit, areas in its square
// and volumes in its cube: with centimetres, cm² and cm³. [Build] puts them
// together for brackets.

// CompressionRatio is 1 + swept/clearance: the volume above the piston at
// bottom dead centre to that at top dead centre. It has no unit.
func CompressionRatio[R tolerance.Real[R]](swept, clearance R) R {
	return swept.Quo(clearance).Add(swept.Const(1))
}

// ClearanceFor is the clearance volume that gives the ratio, which is above 1:
// swept/(ratio − 1). It undoes [CompressionRatio].
func ClearanceFor[R tolerance.Real[R]](swept, ratio R) R {
	return swept.Quo(ratio.Sub(ratio.Const(1)))
}

// SweptFor is the swept volume with which a clearance volume gives the ratio:
// clearance·(ratio − 1). It undoes [CompressionRatio].
func SweptFor[R tolerance.Real[R]](clearance, ratio R) R {
	return clearance.Mul(ratio.Sub(ratio.Const(1)))
}

// ClearanceVolume is what is left above the piston at top dead centre: the
// chamber in the head, the hole in the compressed gasket, the deck (above zero
// for a piston that stops below the block face, below zero for one that stands
// above it), the crown (above zero for a dish, below for a dome) and the
// crevice over the top ring, which many leave out.
func ClearanceVolume[R tolerance.Real[R]](chamber, gasket, deck, crown, crevice R) R {
	return chamber.Add(gasket).Add(deck).Add(crown).Add(crevice)
}

// CrownByFill is the volume of a crown from a down-fill: with the piston
// brought down so that all of its crown lies below the block face, the deck
// edge being at the depth, the space is filled level with the face. A flat
// crown would have taken π/4·bore²·depth: what the fill is over that is the
// dish (above zero), and what it is short of it the dome (below zero).
//
// Seal the piston's rim with grease: what runs down to the ring is counted as
// dish.
func CrownByFill[R tolerance.Real[R]](bore, depth, fill R) R {
	return fill.Sub(SweptVolume(bore, depth))
}

// RingLandVolume is the crevice between the bore and the top land above the
// top ring: π/4·(bore² − land²)·height, land being the land's diameter.
func RingLandVolume[R tolerance.Real[R]](bore, land, height R) R {
	return SweptVolume(bore, height).Sub(SweptVolume(land, height))
}

// SkimVolume is what a skim takes off the chamber: its open area at the face
// times what is taken off. The area is that of the chamber's outline on the
// face, never the bore's. A chamber that narrows from the face upward loses
// that or a little less.
func SkimVolume[R tolerance.Real[R]](openArea, skim R) R {
	return openArea.Mul(skim)
}

// OpenArea is the open area of a chamber from its volumes before and after a
// skim. It undoes [SkimVolume].
func OpenArea[R tolerance.Real[R]](before, after, skim R) R {
	return before.Sub(after).Quo(skim)
}

// StrokeForRatio is the stroke with which the ratio comes about where the
// piston goes on stopping at the same deck height, by another rod or piston:
// clearance·(ratio − 1)/(π/4·bore²).
func StrokeForRatio[R tolerance.Real[R]](bore, clearance, ratio R) R {
	return StrokeOf(SweptFor(clearance, ratio), bore)
}

// StrokeForRatioSameRod is the stroke with which the ratio comes about where
// rod and piston stay: the crown then rises by half of what the stroke gains,
// and the clearance volume falls. With the present swept volume V and
// clearance volume C that is 2·(ratio − 1)·(C + V/2)/(ratio + 1)/(π/4·bore²).
func StrokeForRatioSameRod[R tolerance.Real[R]](bore, swept, clearance, ratio R) R {
	one := ratio.Const(1)
	room := clearance.Add(swept.Quo(swept.Const(2))) // from mid-stroke up
	return StrokeOf(room.Mul(ratio.Const(2)).Mul(ratio.Sub(one)).Quo(ratio.Add(one)), bore)
}
