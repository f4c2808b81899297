package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// PistonToValve is the clearance between an open valve and the pocket in the
// piston's crown that is cut parallel to its head, along the valve's axis:
//
//	c = c₀ + x·cos ψ − lift
//
// c₀ is the drop: what the valve can be pushed open at top dead centre from its
// seat until it touches the piston. x is the piston's fall at the crank angle
// ([PistonFall]), along the bore, ψ the angle in radians between the valve's
// axis and the bore's, and the lift that at the valve. Lengths in one unit.
//
// Why: square to the pocket's floor the piston's way down the bore counts with
// the cosine of the angle between the two, while the valve moves along its axis
// in full. Left out, the cosine makes the clearance too large, on the unsafe
// side: of 3 mm of fall at 20°, by 0.18 mm.
//
// A crown that is flat, square to the bore, falls away from the valve by more,
// x/cos ψ: see [PistonToValveFlat]. This form is then on the safe side.
func PistonToValve[R tolerance.Real[R]](drop, fall, lift, angle R) R {
	return drop.Add(fall.Mul(angle.Cos())).Sub(lift)
}

// PistonToValveFlat is the clearance between an open valve and a crown without a
// pocket, flat and square to the bore, along the valve's axis: c₀ + x/cos ψ −
// lift. The edge of the head that hangs lowest comes nearest; on its line
// parallel to the valve's axis a crown that sinks by x recedes by x/cos ψ.
func PistonToValveFlat[R tolerance.Real[R]](drop, fall, lift, angle R) R {
	return drop.Add(fall.Quo(angle.Cos())).Sub(lift)
}

// PistonValveDrop is the drop at top dead centre that leaves a clearance at a
// fall and a lift: the inverse of [PistonToValve]. The difference to the drop
// that is there is how much deeper, along the valve's axis, a pocket must be.
func PistonValveDrop[R tolerance.Real[R]](clearance, fall, lift, angle R) R {
	return clearance.Sub(fall.Mul(angle.Cos())).Add(lift)
}

// PistonValveLift is the lift that leaves a clearance at a fall: the other
// inverse of [PistonToValve].
func PistonValveLift[R tolerance.Real[R]](clearance, drop, fall, angle R) R {
	return drop.Add(fall.Mul(angle.Cos())).Sub(clearance)
}

// PocketClearance is the radial clearance of a valve's head in the round of its
// pocket, at top dead centre: half of what the pocket's diameter exceeds the
// head's, less what the pocket's middle stands beside the valve's axis.
func PocketClearance[N tolerance.Number[N]](pocket, head, beside N) N {
	return pocket.Sub(head).Scale(1, 2).Sub(beside.Abs())
}

// PocketFor is the diameter of a pocket that leaves a head a radial clearance:
// the inverse of [PocketClearance].
func PocketFor[N tolerance.Number[N]](head, clearance, beside N) N {
	return clearance.Add(beside.Abs()).Scale(2, 1).Add(head)
}

// PocketShift is how far a pocket moves sideways to the valve's axis while the
// piston falls: x·sin ψ, with ψ in radians. On that side the radial clearance
// is less by it while the head is still in the pocket.
func PocketShift[R tolerance.Real[R]](fall, angle R) R { return fall.Mul(angle.Sin()) }
