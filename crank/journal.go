package crank

import "github.com/tenthou/tenthou/tolerance"

// JournalOutOfRound is the out-of-round (ovality) of a journal as the trade
// counts it: the greatest less the least diameter in one plane. What two or more
// directions show is the least that it can be: an oval at 45° to both of two
// directions doesn't show at all.
func JournalOutOfRound[N tolerance.Number[N]](diameter N, more ...N) N {
	return diameter.Spread(more...)
}

// JournalTaper is the greatest less the least of the diameters of several planes:
// along one direction, of the planes' means, or of all readings, as those given.
// Readings with one setting of the micrometer share its error, which brackets
// given here count twice: [JournalSurvey.Inspect] doesn't.
func JournalTaper[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// JournalTaperSigned is the diameter at the front less that at the rear: above
// zero the journal is larger at the front.
func JournalTaperSigned[N tolerance.Number[N]](front, rear N) N { return front.Sub(rear) }

// JournalTaperPer is the taper for each length per of a journal that tapers by so
// much over the length over: taper × per ÷ over.
func JournalTaperPer[N tolerance.Number[N]](taper, over, per N) N { return taper.MulDiv(per, over) }

// JournalTaperOver is the taper over a length of a journal that tapers by so much
// for each length per: the inverse of [JournalTaperPer].
func JournalTaperOver[N tolerance.Number[N]](rate, over, per N) N { return rate.MulDiv(over, per) }

// JournalWear is how much a journal has worn on its diameter: the size that it was
// last ground to less the size measured. A journal ground to 0.25 mm undersize
// and worn by 0.03 mm is not worn by 0.28 mm.
func JournalWear[N tolerance.Number[N]](finished, size N) N { return finished.Sub(size) }

// JournalWorn is the size of a journal that was ground to a size and wore by so
// much on its diameter: the inverse of [JournalWear].
func JournalWorn[N tolerance.Number[N]](finished, wear N) N { return finished.Sub(wear) }

// JournalWearOpposite is the wear of one side of a journal, from the diameter
// measured through it, the diameter last ground to, and the wear of the side
// opposite: a diameter shows the sum of the two.
func JournalWearOpposite[N tolerance.Number[N]](finished, size, opposite N) N {
	return finished.Sub(size).Sub(opposite)
}

// StrokeByHeights is the stroke from the heights of a crankpin's top over one
// datum, the shaft turned in its mains until the pin is highest and then lowest:
// the pin's axis travels the stroke, and its own diameter drops out.
func StrokeByHeights[N tolerance.Number[N]](highest, lowest N) N { return highest.Sub(lowest) }

// HeightForStroke is how high a crankpin's top stands at its highest, from its
// lowest and the stroke: the inverse of [StrokeByHeights].
func HeightForStroke[N tolerance.Number[N]](stroke, lowest N) N { return lowest.Add(stroke) }

// IndexError is how far one crankpin stands on from its place to another, in
// radians, from the heights of the two pins' axes with the shaft turned so that
// both should be level with the axis of the mains, on one side of it: heights
// and throw in one unit.
//
// A pin of throw r stands at height r·sin φ, so the second is on by asin(h₂/r) −
// asin(h₁/r); the direction of a pin is atan2(h, √(r² − h²)). A pin whose height
// is not below its throw is out of range.
func IndexError[R tolerance.Real[R]](first, second, throw R) R {
	turned := func(h R) R { return h.Atan2(throw.Mul(throw).Sub(h.Mul(h)).Sqrt()) }
	return turned(second).Sub(turned(first))
}

// IndexHeight is the height at which the second crankpin stands where it is so far
// on from its place, in radians, and the first is level with the axis of the
// mains: throw × sin(index), the inverse of [IndexError].
func IndexHeight[R tolerance.Real[R]](index, throw R) R { return throw.Mul(index.Sin()) }
