package crank

import "github.com/tenthou/tenthou/tolerance"

// DrillPlugGainG is what a plug of heavy metal (tungsten alloy) adds to a
// counterweight, in grams: its volume at its density less that of the steel
// that was drilled out for it, π/4·diameter²·length·(plug − steel)/1000, from
// millimetres and g/cm³. Counted at the plug's own density alone it would be
// nearly twice as much. In a hole that was there before and empty, the steel's
// density is 0.
//
// Plugs go in parallel to the shaft, so that the counterweight holds them
// against the force that would throw them out; a plug set radially has only
// its fit and its lock, and one that comes out goes through the crankcase.
// They are pressed in, and locked as their maker says.
func DrillPlugGainG[R tolerance.Real[R]](diameter, length, plugGPerCM3, steelGPerCM3 R) R {
	volume := diameter.Const(pi / 4).Mul(diameter.Mul(diameter)).Mul(length)
	return volume.Mul(plugGPerCM3.Sub(steelGPerCM3)).Quo(diameter.Const(1000))
}

// DrillPlugGMM is the unbalance in g·mm that a plug parallel to the shaft adds
// on the side of its hole, at a radius from the shaft's axis.
func DrillPlugGMM[R tolerance.Real[R]](diameter, length, radius, plugGPerCM3, steelGPerCM3 R) R {
	return DrillPlugGainG(diameter, length, plugGPerCM3, steelGPerCM3).Mul(radius)
}

// DrillPlugLength is the length of plug that adds an unbalance in g·mm. It
// undoes [DrillPlugGMM].
func DrillPlugLength[R tolerance.Real[R]](unbalanceGMM, diameter, radius, plugGPerCM3, steelGPerCM3 R) R {
	per := DrillPlugGMM(diameter, diameter.Const(1), radius, plugGPerCM3, steelGPerCM3)
	return unbalanceGMM.Quo(per)
}

// DrillPlugDiameter is the diameter of a plug of a length that adds an
// unbalance in g·mm. It undoes [DrillPlugGMM].
func DrillPlugDiameter[R tolerance.Real[R]](unbalanceGMM, length, radius, plugGPerCM3, steelGPerCM3 R) R {
	per := DrillPlugGMM(length.Const(1), length, radius, plugGPerCM3, steelGPerCM3)
	return unbalanceGMM.Quo(per).Sqrt()
}
