package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What a straight-edge shows of a hump, and what it hides.
//
// On a hollow it rests at both ends and the gap under it is the hollow, H. On
// a hump it rests at one place and rocks, and what it shows depends on how it
// is held. Take the hump as a parabola of height H over the length L, and let
// the straight-edge touch it at x from the middle. It lies along the tangent
// there, and at the ends the gaps are
//
//	g₁ = 4H/L²·(L/2 + x)²,   g₂ = 4H/L²·(L/2 − x)²
//
//	        ─────────────────────           held level: H under both ends
//	            ___-------___
//	        _--               --_
//
//	      ╲  g₁ = 0
//	        ╲___
//	        _-- ╲---___                     rocked right over: 4H under one
//	       -       ╲    --__
//	                  ╲      --_  g₂ = 4H
//
// So it shows H when it is held level, x = 0, and up to 4H when it is rocked
// to one end, x = ±L/2. A ridge, straight down to both sides of a peak in the
// middle, shows H level and 2H rocked over; a flat top with its ends dropped
// off shows more than 4H.
//
// What holds for every hump, whatever its shape: its height lies between the
// two end gaps of one setting. The chord from end to end is somewhere between
// g₁ and g₂ below the edge. The hump stands over the chord nowhere by more than
// the edge does, so by no more than the greater; and where it touches the edge
// by all of that, so by no less than the lesser. Rock the edge until both end
// gaps are alike: that gap is the hump.

// HumpOfParabola is the height of a parabolic hump from the gaps under the two
// ends of a straight-edge that rocks on it, in one setting: from the formulas
// above √g₁ + √g₂ = 2√H, so that H = ((√g₁ + √g₂)/2)², whichever way it was
// rocked.
func HumpOfParabola[R tolerance.Real[R]](end1, end2 R) R {
	root := end1.Sqrt().Add(end2.Sqrt()).Quo(end1.Const(2))
	return root.Mul(root)
}

// HumpOfRidge is the height of a ridge in the middle of a straight-edge, which
// falls straight away to both sides, from the gaps under its two ends in one
// setting: their mean.
func HumpOfRidge[N tolerance.Number[N]](end1, end2 N) N { return end1.Add(end2).Scale(1, 2) }

// RockedOnParabola is the gap that a parabolic hump shows under one end of a
// straight-edge rocked to the other: four times its height.
func RockedOnParabola[N tolerance.Number[N]](hump N) N { return hump.Scale(4, 1) }

// RockedOnRidge is the gap that a ridge in the middle shows under one end of a
// straight-edge rocked to the other: twice its height.
func RockedOnRidge[N tolerance.Number[N]](hump N) N { return hump.Scale(2, 1) }

// Hump holds the height of a hump, whatever its shape, from the gaps under the
// two ends of a straight-edge that rocks on it, in one setting: it is not
// below the lesser of them nor above the greater. Where both are alike it is
// that gap.
func Hump(end1, end2 tolerance.Bracket) tolerance.Bracket {
	return hullOf(end1, end2)
}

// HumpBracket is [HumpOfParabola] for brackets: the height grows with either
// gap. It is rounded outward; a gap that isn't bounded above leaves the hump so.
// Gaps that may be below zero give a result out of range.
func HumpBracket(end1, end2 tolerance.Bracket) tolerance.Bracket {
	lo1, e1 := end1.Lower()
	lo2, e2 := end2.Lower()
	if !end1.InRange() || !end2.InRange() || e1 == tolerance.Absent || e2 == tolerance.Absent || lo1 < 0 || lo2 < 0 {
		return tolerance.Exactly(units.OutOfRange[units.Length]())
	}
	hump := func(a, b units.Length) float64 {
		return float64(HumpOfParabola(tolerance.Float(a), tolerance.Float(b)))
	}
	// Six roundings of 2⁻⁵³ and that of the conversion: 2⁻⁵⁰ covers them.
	const slack = 1.0 / (1 << 50)
	lo := units.Length(math.Floor(hump(lo1, lo2) * (1 - slack)))
	hi1, f1 := end1.Upper()
	hi2, f2 := end2.Upper()
	if f1 == tolerance.Absent || f2 == tolerance.Absent {
		return spanOf(lo, tolerance.Closed, units.Length(0), tolerance.Absent)
	}
	return spanOf(lo, tolerance.Closed, units.Length(math.Ceil(hump(hi1, hi2)*(1+slack))), tolerance.Closed)
}
