package piston

import "github.com/tenthou/tenthou/tolerance"

// KeystoneWidth is the axial width of a keystone (tapered) groove at its gauge
// diameter, from the size over two equal gauge pins laid in it on opposite
// sides:
//
//	 land ───┐                   ┌─── land
//	          ╲     ╭─────╮     ╱       ↑ outward
//	           ╲    │  d  │    ╱
//	 D_g ┈┈┈┈┈┈┈╲┈┈┈│┈┈┈┈┈│┈┈┈╱┈┈┈┈
//	             ╲  ╰─────╯  ╱
//	              └─────────┘ root
//	             |←─── w ───→|
//
//	w = d/cos β + (D_g + d − M)·tan β
//
// A pin touches both flanks where half the groove's width, taken square to a
// flank, is the pin's radius, so its middle lies where the width is d/cos β, at
// the diameter M − d; from there the width changes by tan β for each unit of
// diameter. Along the pin the groove falls away from it, so it touches at one
// place of each flank and its length doesn't matter. A wider groove lets the
// pins in deeper: M is smaller.
//
// Lengths in one unit, the half angle in radians: 7.5° of a groove of 15°, 3°
// of one of 6°; the included angle in its place is the usual slip. The pins
// must touch both flanks, not root or edges, and stand out of the groove:
// [KeystoneContact] tells where they touch, [KeystoneGroove] checks it.
func KeystoneWidth[R tolerance.Real[R]](overPins, pin, gaugeDiameter, halfAngle R) R {
	return pin.Quo(halfAngle.Cos()).Add(gaugeDiameter.Add(pin).Sub(overPins).Mul(tangent(halfAngle)))
}

// KeystoneOverPins is the size over the pins for a groove of so much width at
// its gauge diameter: D_g + d + (d/cos β − w)/tan β. It undoes [KeystoneWidth];
// with the limits of the width it gives those over the pins, the greater width
// the smaller size.
func KeystoneOverPins[R tolerance.Real[R]](width, pin, gaugeDiameter, halfAngle R) R {
	return gaugeDiameter.Add(pin).Add(pin.Quo(halfAngle.Cos()).Sub(width).Quo(tangent(halfAngle)))
}

// KeystoneWidthAt is the axial width of a keystone groove at another diameter:
// width + (diameter − gaugeDiameter)·tan β.
func KeystoneWidthAt[R tolerance.Real[R]](width, gaugeDiameter, diameter, halfAngle R) R {
	return width.Add(diameter.Sub(gaugeDiameter).Mul(tangent(halfAngle)))
}

// KeystoneWear is by how much a keystone groove has widened, from the size
// over pins when new and now: (newOverPins − overPins)·tan β. Neither pin nor
// gauge diameter is needed for it.
func KeystoneWear[R tolerance.Real[R]](newOverPins, overPins, halfAngle R) R {
	return newOverPins.Sub(overPins).Mul(tangent(halfAngle))
}

// KeystoneContact is the diameter at which the pins touch the flanks:
// M − d − d·sin β. There the width that comes out doesn't depend on the angle,
// to first order: pins that touch near the gauge diameter forgive a groove
// whose angle is a little off.
func KeystoneContact[R tolerance.Real[R]](overPins, pin, halfAngle R) R {
	return overPins.Sub(pin).Sub(pin.Mul(halfAngle.Sin()))
}

// KeystonePinFor is the pin that touches the flanks of a groove of so much
// width right at its gauge diameter: width/cos β. See [KeystoneContact].
func KeystonePinFor[R tolerance.Real[R]](width, halfAngle R) R {
	return width.Quo(halfAngle.Cos())
}

// KeystoneHalfWidth is the width of a half-keystone groove, one flank of which
// is square to the piston's axis and the other leans by the angle α:
//
//	w = (d + d/cos α)/2 + (D_g + d − M)/2·tan α
//
// The pin's middle lies half a pin from the square flank.
func KeystoneHalfWidth[R tolerance.Real[R]](overPins, pin, gaugeDiameter, angle R) R {
	sum := pin.Add(pin.Quo(angle.Cos())).Add(gaugeDiameter.Add(pin).Sub(overPins).Mul(tangent(angle)))
	return sum.Quo(angle.Const(2))
}

// KeystoneHalfOverPins is the size over the pins for a half-keystone groove of
// so much width at its gauge diameter. It undoes [KeystoneHalfWidth].
func KeystoneHalfOverPins[R tolerance.Real[R]](width, pin, gaugeDiameter, angle R) R {
	twice := width.Mul(angle.Const(2))
	return gaugeDiameter.Add(pin).Add(pin.Add(pin.Quo(angle.Cos())).Sub(twice).Quo(tangent(angle)))
}

func tangent[R tolerance.Real[R]](angle R) R { return angle.Sin().Quo(angle.Cos()) }
