package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// StopCorrection is where true top dead centre stands on the wheel when a
// positive stop met the piston so many degrees before and after the wheel's
// zero: (after − before)/2, beyond the zero in the direction in which the wheel
// counts as the engine turns, below zero short of it. Turn wheel or pointer by
// that, until both sides read [StopHalfSpan].
//
// Why: the piston is at one height at both contacts, and without an offset its
// height is the same so many degrees before and after dead centre, whatever rod
// and stroke. With an offset it isn't quite: see [StopSkew]. Contacts at 15°
// before and 21° after zero: dead centre is at 3° after zero on the wheel.
func StopCorrection[N tolerance.Number[N]](before, after N) N { return after.Sub(before).Scale(1, 2) }

// StopHalfSpan is what the wheel shows on either side once it is right:
// (before + after)/2.
func StopHalfSpan[N tolerance.Number[N]](before, after N) N { return before.Add(after).Scale(1, 2) }

// StopBefore is what the wheel shows before its zero at a half-span and a
// correction: the inverse of [StopHalfSpan] and [StopCorrection].
func StopBefore[N tolerance.Number[N]](halfSpan, correction N) N { return halfSpan.Sub(correction) }

// StopAfter is what the wheel shows after its zero at a half-span and a
// correction.
func StopAfter[N tolerance.Number[N]](halfSpan, correction N) N { return halfSpan.Add(correction) }

// PistonFall is how far a piston is below top dead centre at a crank angle in
// radians from it, for a gudgeon pin that travels in line with the crankshaft,
// from throw r (half the stroke) and rod l between centres, all in one unit:
//
//	x = 2r·sin²(θ/2) + r²·sin²θ/(l + √(l² − r²·sin²θ))
//
// That is r + l − r·cos θ − √(l² − r²·sin²θ), written so that nothing cancels
// near dead centre. Out of range where the rod can't reach.
func PistonFall[R tolerance.Real[R]](throw, rod, angle R) R {
	half := angle.Quo(angle.Const(2)).Sin()
	across := throw.Mul(angle.Sin())
	square := across.Mul(across)
	root := rod.Sub(across).Mul(rod.Add(across)).Sqrt()
	return throw.Const(2).Mul(throw).Mul(half).Mul(half).Add(square.Quo(rod.Add(root)))
}

// FallAngle is the crank angle in radians from top dead centre at which a piston
// is so far below it, the inverse of [PistonFall], from 0 to π:
//
//	tan(θ/2) = √(x·(2l − x)/((2r − x)·(2r + 2l − x)))
//
// Why: r, l and the gudgeon pin's distance r + l − x from the crankshaft make a
// triangle, and that is the half-angle rule of its angle at the crankshaft. At
// equal falls by a dial gauge it is what the wheel should show on both sides.
func FallAngle[R tolerance.Real[R]](throw, rod, fall R) R {
	two := fall.Const(2)
	stroke, long := two.Mul(throw), two.Mul(rod)
	above := fall.Mul(long.Sub(fall)).Sqrt()
	below := stroke.Sub(fall).Mul(stroke.Add(long).Sub(fall)).Sqrt()
	return two.Mul(above.Atan2(below))
}

// StopSkew is how far true top dead centre lies after the middle of the two
// contacts, in radians of the crankshaft, where the gudgeon pin's line is offset
// from the crankshaft's axis: e above zero to the thrust side, where the
// crankpin rises, pin and cylinder offset together. s is half the angle between
// the contacts, in radians; throw r, rod l and offset in one unit.
//
//	arctan(e/y) − arctan(e/H), y = √(p² − e²), H = √((r + l)² − e²)
//	p = r·cos s + √(l² − r²·sin² s)
//
// Why: at the contacts the gudgeon pin is at one place, p from the crankshaft's
// axis, and the crank's two positions lie symmetrically about the direction to
// it; at dead centre the crank points at the pin. Those two directions differ
// because the pin's place, e beside the axis, has come down from H to y. It is
// about e·x/H², x being the pin's way down: for 0.8 mm of offset, a rod of
// 143.5 mm and a contact 3 mm down, four thousandths of a degree, of no
// account for a piston with an offset pin; for a cylinder that stands 10 mm
// beside the crankshaft it is 0.05°, and grows with the span.
//
// [StopPinDistance] and [StopSkewOf] are its two steps.
func StopSkew[R tolerance.Real[R]](throw, rod, offset, halfSpan R) R {
	return StopSkewOf(StopPinDistance(throw, rod, halfSpan), throw.Add(rod), offset)
}

// StopPinDistance is how far the gudgeon pin's axis is from the crankshaft's at
// the contacts, from half the angle between them in radians: p of [StopSkew].
func StopPinDistance[R tolerance.Real[R]](throw, rod, halfSpan R) R {
	across := throw.Mul(halfSpan.Sin())
	return throw.Mul(halfSpan.Cos()).Add(rod.Sub(across).Mul(rod.Add(across)).Sqrt())
}

// StopSkewOf is the skew in radians of the gudgeon pin's distance from the
// crankshaft's axis at the contacts and at top dead centre, throw + rod:
// arctan(e·(H − y)/(y·H + e²)), see [StopSkew].
func StopSkewOf[R tolerance.Real[R]](contact, dead, offset R) R {
	y := contact.Mul(contact).Sub(offset.Mul(offset)).Sqrt()
	top := dead.Mul(dead).Sub(offset.Mul(offset)).Sqrt()
	return offset.Mul(top.Sub(y)).Atan2(y.Mul(top).Add(offset.Mul(offset)))
}
