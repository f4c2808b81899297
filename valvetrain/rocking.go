package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// RockingClearance is the clearance of a stem in a straight guide, from rocking
// it under a dial gauge:
//
//	c = R·L/(L + 2h)
//
// R is the dial's whole travel from one extreme to the other, L the length of
// guide that the stem is engaged in, and h how far the dial's contact stands
// beyond the guide's end nearest to it, along the stem; the dial is set square
// to the stem. Where the stem's own end has gone into the guide, L is what is
// still engaged.
//
// Why: rocked over, the stem touches one side at the near end and the other at
// the far end. Its axis is then half a clearance off at both ends, to opposite
// sides, so it leans by c over L; the dial, h farther out, sees
// c/2 + (h/L)·c, and the same to the other side: R = c·(1 + 2h/L). With h at
// half of L the dial reads twice the clearance, with h at nothing the clearance.
//
//	dial →│←      ─┐
//	      │        │ h
//	    ┌─┼─┐  ────┤
//	    │ ╲ │      │ L
//	    └──╲┘  ────┘
//
// A tilted stem is broader across, by what [RockingShortfall] bounds: the
// clearance is never less than this, and never more than this plus that. The
// exact form is [RockingClearanceExact].
//
// A bell-mouthed guide is not straight: the result is then a mean of the
// clearances at its two mouths, weighted L + h to h in favour of the near one,
// and neither the greatest nor the least ([RockingMouths]). A manual's limit for
// the dial's travel is compared with R itself, at the manual's own h.
func RockingClearance[N tolerance.Number[N]](travel, engaged, beyond N) N {
	return travel.Share(engaged, beyond.Scale(2, 1))
}

// RockingTravel is the dial's travel that a clearance in a straight guide gives:
// c + c·2h/L, the inverse of [RockingClearance].
func RockingTravel[N tolerance.Number[N]](clearance, engaged, beyond N) N {
	return clearance.Add(clearance.MulDiv(beyond.Scale(2, 1), engaged))
}

// RockingShortfall is the most by which [RockingClearance] is below the true
// clearance in a straight guide, because a tilted stem is broader across:
// d·t²/2 with t = R/(L + 2h), d being the stem's diameter. At 0.1 mm of travel
// over 100 mm and a stem of 8 mm it is 4 nm.
//
// Why: the exact clearance is L·t + d·(√(1 + t²) − 1), the first term is
// [RockingClearance], and √(1 + t²) − 1 lies between 0 and t²/2.
func RockingShortfall[N tolerance.Number[N]](travel, engaged, beyond, stem N) N {
	over := engaged.Add(beyond.Scale(2, 1))
	return stem.MulDiv(travel, over).MulDiv(travel, over).Scale(1, 2)
}

// RockingSlope is the tangent of the tilt at which a stem of diameter d in a
// straight guide of bore D touches both ends, L apart:
//
//	t = (D² − d²)/(D·L + d·√(L² + D² − d²))
//
// All in one unit. Why: square to the leaning stem the bore's width at the tilt
// φ is D·cos φ − L·sin φ, and the stem fills it when that is d, which gives
// φ = arccos(d/√(D² + L²)) − arctan(L/D) and, divided by cos φ and solved for
// the tangent, the form above, which loses no digits where D is nearly d. The
// difference D − d is taken once and must be above zero.
func RockingSlope[R tolerance.Real[R]](bore, stem, engaged R) R {
	squares := bore.Sub(stem).Mul(bore.Add(stem))
	return squares.Quo(bore.Mul(engaged).Add(stem.Mul(engaged.Mul(engaged).Add(squares).Sqrt())))
}

// RockingTravelExact is the dial's travel with the tilt taken exactly:
// (L + 2h)·t with the t of [RockingSlope]. The stem's own thickness, seen
// aslant, is the same to both sides and drops out.
func RockingTravelExact[R tolerance.Real[R]](bore, stem, engaged, beyond R) R {
	return engaged.Add(beyond.Const(2).Mul(beyond)).Mul(RockingSlope(bore, stem, engaged))
}

// RockingClearanceExact is the clearance of a stem of diameter d in a straight
// guide, with the tilt taken exactly: L·t + d·(√(1 + t²) − 1), t = R/(L + 2h),
// the inverse of [RockingTravelExact].
func RockingClearanceExact[R tolerance.Real[R]](travel, stem, engaged, beyond R) R {
	t := travel.Quo(engaged.Add(beyond.Const(2).Mul(beyond)))
	squared := t.Mul(t)
	one := travel.Const(1)
	// √(1 + t²) − 1 without losing digits.
	return engaged.Mul(t).Add(stem.Mul(squared.Quo(one.Add(one.Add(squared).Sqrt()))))
}
