package piston

import "github.com/tenthou/tenthou/tolerance"

// DeckProtrusion is a piston's protrusion from two points of its crown, one
// at each end of the line above the gudgeon pin's axis: their mean. Readings
// count above the block face; below zero is below it.
//
// Why there: with clearance in its bore a piston rocks about its pin. A point
// right above the pin's axis moves along its circle's top, that is to say
// hardly ([DeckRockShift], under 0.1 µm), where the crown's edge on the thrust
// side moves by hundredths of a millimetre. What leans along the pin's axis, a
// bent rod or a dial's foot that isn't level, lifts one point by what it
// lowers the other, and falls out of the mean; [DeckTilt] shows it.
//
// Halving an odd number of picometres rounds by half a picometre.
func DeckProtrusion[N tolerance.Number[N]](first, second N) N {
	return first.Add(second).Scale(1, 2)
}

// DeckTilt is the difference of the two points of [DeckProtrusion]: nothing
// where the piston stands square and the dial was on the pin's axis.
func DeckTilt[N tolerance.Number[N]](first, second N) N {
	return first.Sub(second)
}

// DeckPoint is what the other point must have read, from a protrusion and one
// of its points: 2·protrusion − first. It undoes [DeckProtrusion] to a
// picometre.
func DeckPoint[N tolerance.Number[N]](protrusion, first N) N {
	return protrusion.Scale(2, 1).Sub(first)
}

// DeckOutOfSquare is how far out of square a piston stands over a length,
// from the difference of two points that lie so far apart: the difference's
// magnitude × over ÷ apart. Manuals state it so, as 0.05 mm over 100 mm.
func DeckOutOfSquare[N tolerance.Number[N]](tilt, apart, over N) N {
	return tilt.Abs().MulDiv(over, apart)
}

// DeckTiltAllowed is the difference of two points so far apart that an
// allowance, stated over a length, comes to. It undoes [DeckOutOfSquare].
func DeckTiltAllowed[N tolerance.Number[N]](outOfSquare, apart, over N) N {
	return outOfSquare.MulDiv(apart, over)
}

// DeckRockShift is how far a point of the crown rises when the piston rocks
// about its pin by an angle in radians, the point being so high above the
// pin's axis and so far to one side of it:
//
//	off·sin(rock) − height·(1 − cos(rock))
//
// Right above the axis only the second part is left, which grows with the
// square of the angle: 0.08 µm at 40 mm and 0.002 rad, where 40 mm to the
// side is 80 µm. The cosine is taken through the half angle, so that no
// digits cancel. Lengths are in one unit, and so is the result.
func DeckRockShift[R tolerance.Real[R]](height, off, rock R) R {
	half := rock.Quo(rock.Const(2)).Sin()
	return off.Mul(rock.Sin()).Sub(rock.Const(2).Mul(height).Mul(half).Mul(half))
}

// DeckRock is how far a piston rocks from upright, in radians, until opposite
// ends of its skirt touch the bore: a rectangle as wide as the skirt's
// diameter and as high as its length leans in a slot as wide as the bore,
//
//	skirt·cos(rock) + length·sin(rock) = bore
//
// The smaller root, with c = bore − skirt, is 2·atan(c/(length +
// √(length² − c·(bore + skirt)))), near c/length. No digits cancel beyond
// those of the clearance itself: the relative error is below 10⁻¹⁴. A bore
// that is wider than the skirt's diagonal gives not-a-number.
func DeckRock[R tolerance.Real[R]](bore, skirt, length R) R {
	c := bore.Sub(skirt)
	root := length.Mul(length).Sub(c.Mul(bore.Add(skirt))).Sqrt()
	half := c.Atan2(length.Add(root))
	return half.Add(half)
}

// DeckSpan is the widest bore that a skirt spans leaning at an angle in
// radians. It undoes [DeckRock].
func DeckSpan[R tolerance.Real[R]](skirt, length, rock R) R {
	return skirt.Mul(rock.Cos()).Add(length.Mul(rock.Sin()))
}
