package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// A PressedRing is one of the two rings of a pressed joint: the liner, whose
// other face is its bore, or the block round it, whose other face is its
// outside. Diameters in mm, the modulus of elasticity in N/mm² (MPa; 1 GPa is
// 1000), Poisson's ratio a plain number.
//
// A block is no ring. Where its bores stand close, take the diameter of the
// metal that is left round the bore where it is thinnest: a thinner ring gives
// less pressure and more stress in the block, a thicker one more pressure and
// more stress in the liner.
type PressedRing[R tolerance.Real[R]] struct {
	Other   R // diameter of the face that is not the joint: 0 for a solid shaft
	Modulus R // of elasticity, N/mm²: above 0
	Poisson R
}

// LinerSpread is (D² + d²)/(D² − d²) of a ring between the diameters d and D,
// the factor by which its wall multiplies the contact pressure into hoop
// stress at the joint. It has no unit; 1 for a solid shaft or an endless wall.
func LinerSpread[R tolerance.Real[R]](outer, inner R) R {
	o, i := outer.Mul(outer), inner.Mul(inner)
	return o.Add(i).Quo(o.Sub(i))
}

// LinerCompliance is how much interference, in mm on the diameter for each mm
// of joint, one N/mm² of contact pressure takes up, in mm²/N:
//
//	(Kb + νb)/Eb + (Kl − νl)/El
//
// with K from [LinerSpread]. It follows from Lamé's u = A·r + B/r in each ring
// without load along the axis (plane stress), with the two bores' walls free
// and the joint's radial stress the same in both.
func LinerCompliance[R tolerance.Real[R]](joint R, liner, block PressedRing[R]) R {
	outer := LinerSpread(block.Other, joint).Add(block.Poisson).Quo(block.Modulus)
	inner := LinerSpread(joint, liner.Other).Sub(liner.Poisson).Quo(liner.Modulus)
	return outer.Add(inner)
}

// LinerPressure is the contact pressure in N/mm² of a liner pressed into a
// block with an interference, both diameters in mm: interference over joint
// diameter over [LinerCompliance]. Where both are of one material Poisson's
// ratios cancel, and it is the published E·δ/(D·(Kb + Kl)).
func LinerPressure[R tolerance.Real[R]](interference, joint R, liner, block PressedRing[R]) R {
	return interference.Quo(joint).Quo(LinerCompliance(joint, liner, block))
}

// LinerInterferenceFor is the interference in mm on the diameter that gives a
// contact pressure in N/mm²: the inverse of [LinerPressure].
func LinerInterferenceFor[R tolerance.Real[R]](pressure, joint R, liner, block PressedRing[R]) R {
	return pressure.Mul(LinerCompliance(joint, liner, block)).Mul(joint)
}

// BlockHoopStress is the hoop stress in the block at the joint in N/mm², its
// greatest; tension is above zero.
func BlockHoopStress[R tolerance.Real[R]](pressure, joint, outside R) R {
	return pressure.Mul(LinerSpread(outside, joint))
}

// BlockOutsideStress is the hoop stress at the outside of the block's wall in
// N/mm²: tension, and less than at the joint by the contact pressure.
func BlockOutsideStress[R tolerance.Real[R]](pressure, joint, outside R) R {
	return BlockHoopStress(pressure, joint, outside).Sub(pressure)
}

// LinerHoopStress is the hoop stress in the liner at the joint in N/mm²;
// below zero, since it is compression.
func LinerHoopStress[R tolerance.Real[R]](pressure, joint, bore R) R {
	return pressure.Const(0).Sub(pressure.Mul(LinerSpread(joint, bore)))
}

// LinerBoreStress is the hoop stress at the liner's bore in N/mm², its
// greatest compression, below zero: −p·2D²/(D² − d²).
func LinerBoreStress[R tolerance.Real[R]](pressure, joint, bore R) R {
	return LinerHoopStress(pressure, joint, bore).Sub(pressure)
}

// LinerBoreClosing is how much smaller a liner's bore becomes when it is
// pressed in, in mm on the diameter: its hoop strain there, times the bore. So
// much less than the free bore it measures before honing.
func LinerBoreClosing[R tolerance.Real[R]](pressure, joint R, liner PressedRing[R]) R {
	return pressure.Const(0).Sub(LinerBoreStress(pressure, joint, liner.Other)).Quo(liner.Modulus).Mul(liner.Other)
}

// LinerPressForce is the force in N that presses a liner home along its whole
// length, diameter and length in mm: friction · π · D · L · pressure. It grows
// from nothing as the liner goes in; the start of the stroke needs the least.
// Friction is the user's, and varies a lot with oil and surface: take it for
// an estimate that chooses the press, not for a check of the fit.
func LinerPressForce[R tolerance.Real[R]](friction, joint, length, pressure R) R {
	return friction.Mul(friction.Const(math.Pi)).Mul(joint).Mul(length).Mul(pressure)
}

// LinerPressureFromForce is the contact pressure in N/mm² that a press force
// in N tells of: the inverse of [LinerPressForce].
func LinerPressureFromForce[R tolerance.Real[R]](force, friction, joint, length R) R {
	return force.Quo(LinerPressForce(friction, joint, length, force.Const(1)))
}

// LinerFriction is the coefficient of friction that a press force in N tells
// of, at a contact pressure that is known.
func LinerFriction[R tolerance.Real[R]](force, joint, length, pressure R) R {
	return force.Quo(LinerPressForce(force.Const(1), joint, length, pressure))
}

// LinerInterferenceWarm is what is left of an interference, in mm, where liner
// and block are warmer by some kelvins than when they were measured: the
// coefficients of expansion are per kelvin (11.4 millionths are 11.4e-6). An
// alloy block loses its grip on an iron liner as it warms, and where this
// falls to zero the liner is loose.
func LinerInterferenceWarm[R tolerance.Real[R]](interference, joint, linerPerK, linerRise, blockPerK, blockRise R) R {
	return interference.Add(joint.Mul(linerPerK.Mul(linerRise).Sub(blockPerK.Mul(blockRise))))
}
