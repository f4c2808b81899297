package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// SweepReach is how far from the rocker's pivot, square to the valve's axis, the
// contact on the valve's tip stands: √(a² − y²). The arm a goes from the pivot to
// the roller's centre, or to the centre of curvature of a plain pad; y is how far
// that centre stands above the pivot, along the valve's axis. All in one unit.
//
// Why: the tip is flat and square to the valve, so it touches a round roller or
// pad straight below its centre, and the centre goes round the pivot at a.
func SweepReach[R tolerance.Real[R]](arm, height R) R {
	return arm.Sub(height).Mul(arm.Add(height)).Sqrt()
}

// Sweep is how wide a band the contact wipes over the valve's tip in one lift,
// when the rocker stands square to the valve at mid-lift:
//
//	s = a − √(a² − h²/4)
//
// with the arm a of [SweepReach] and the valve's lift h, in one unit, h below 2a.
// It is about h²/(8a): 0.5 mm at a lift of 12 mm and an arm of 36 mm.
//
// Why square at mid-lift is best: the centre rises from −h/2 to h/2 about the
// pivot's height, the contact is farthest out in the middle and nearest at both
// ends alike. Set off by m, one end comes nearer by more than the other goes out,
// and beyond m = h/2 the contact wipes one way only, and farther: [SweepWidth].
func Sweep[R tolerance.Real[R]](arm, lift R) R {
	half := lift.Quo(lift.Const(2))
	// (h²/4)/(a + √(a² − h²/4)) is the same, without losing digits.
	return half.Mul(half).Quo(arm.Add(SweepReach(arm, half)))
}

// SweepLift is the lift at which a rocker square at mid-lift wipes a band of this
// width: 2·√(2as − s²), the inverse of [Sweep] in the lift.
func SweepLift[R tolerance.Real[R]](arm, sweep R) R {
	two := arm.Const(2)
	return two.Mul(sweep.Mul(two.Mul(arm).Sub(sweep)).Sqrt())
}

// SweepArm is the arm with which a rocker square at mid-lift wipes a band of this
// width: s/2 + h²/(8s), the inverse of [Sweep] in the arm.
func SweepArm[R tolerance.Real[R]](lift, sweep R) R {
	two, eight := lift.Const(2), lift.Const(8)
	return sweep.Quo(two).Add(lift.Mul(lift).Quo(eight.Mul(sweep)))
}

// SweepMidHeight is how far the roller's or pad's centre stands above the pivot at
// mid-lift, along the valve's axis: the height with the valve shut less half the
// lift. Zero is square at mid-lift; above zero the pivot is to be raised by so
// much, below zero lowered, by packing under the rocker's stand or, with a pivot
// on a stud, by the pushrod ([PushrodForPivot]).
func SweepMidHeight[N tolerance.Number[N]](shut, lift N) N {
	return shut.Sub(lift.Scale(1, 2))
}

// SweepShutHeight is the height with the valve shut that gives one at mid-lift: the
// inverse of [SweepMidHeight]. With 0 it is half the lift.
func SweepShutHeight[N tolerance.Number[N]](mid, lift N) N {
	return mid.Add(lift.Scale(1, 2))
}

// SweepFrom is how far the contact moves between two heights of the centre above
// the pivot, towards the pivot where it is above zero: reach at the first less
// reach at the second. The heights may lie on both sides of the pivot; the contact
// is farther out between them then.
//
//	√(a² − y₁²) − √(a² − y₂²) = (y₂² − y₁²)/(√(a² − y₁²) + √(a² − y₂²))
func SweepFrom[R tolerance.Real[R]](arm, first, second R) R {
	return second.Sub(first).Mul(second.Add(first)).Quo(SweepReach(arm, first).Add(SweepReach(arm, second)))
}
