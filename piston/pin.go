package piston

import "github.com/tenthou/tenthou/tolerance"

// PinClearance is the clearance of a gudgeon pin (piston pin) in the piston's
// boss or in the rod's small end, on the diameter: hole less pin. Below zero it
// is an interference.
func PinClearance[N tolerance.Number[N]](hole, pin N) N { return hole.Sub(pin) }

// PinInterference is the interference of a pin pressed into a small end, on the
// diameter: pin less hole. Below zero it is a clearance, and the pin is loose.
func PinInterference[N tolerance.Number[N]](pin, hole N) N { return pin.Sub(hole) }

// PinHole is the hole in which a pin has a clearance: the inverse of
// [PinClearance], and with the clearance below zero of [PinInterference].
func PinHole[N tolerance.Number[N]](pin, clearance N) N { return pin.Add(clearance) }

// PinSize is the pin that has a clearance in a hole: the inverse of
// [PinClearance] for the pin.
func PinSize[N tolerance.Number[N]](hole, clearance N) N { return hole.Sub(clearance) }

// PinClearanceWorn is the clearance that wear makes of a new one: the hole's
// and the pin's both count, on the diameter.
func PinClearanceWorn[N tolerance.Number[N]](clearance, holeWear, pinWear N) N {
	return clearance.Add(holeWear).Add(pinWear)
}

// PinWear is how much a pin has lost on the diameter since new, at its most worn
// place.
func PinWear[N tolerance.Number[N]](size, newSize N) N { return newSize.Sub(size) }

// PinNewSize is the size of a pin before it lost so much: the inverse of
// [PinWear].
func PinNewSize[N tolerance.Number[N]](size, wear N) N { return size.Add(wear) }

// PinHoleWear is how much a boss or a small end has widened since new.
func PinHoleWear[N tolerance.Number[N]](size, newSize N) N { return size.Sub(newSize) }

// PinHoleNewSize is the size of a hole before it widened so much: the inverse
// of [PinHoleWear].
func PinHoleNewSize[N tolerance.Number[N]](size, wear N) N { return size.Sub(wear) }

// PinOvality (out-of-round) is the greatest less the least of the diameters
// read at one place of a pin or its hole, in different directions. It is at
// least so much: two directions miss an oval that lies between them.
func PinOvality[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// PinTaper is the greatest less the least of the diameters read at places along
// a pin or its hole, in one direction. A pin that enters a boss from either
// side but binds in the middle tells of a taper there.
func PinTaper[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// PinEndFloat is how much a floating pin can move along between its circlips:
// what lies between them less the pin's length. Below zero the circlips don't
// both go into their grooves; never force them.
func PinEndFloat[N tolerance.Number[N]](between, length N) N { return between.Sub(length) }

// PinLength is the pin that has an end float between circlips: the inverse of
// [PinEndFloat].
func PinLength[N tolerance.Number[N]](between, float N) N { return between.Sub(float) }

// PinBetween is what lies between two circlips seated against the outer walls of
// their grooves: the walls' distance less both circlips' thickness.
func PinBetween[N tolerance.Number[N]](walls, circlip1, circlip2 N) N {
	return walls.Sub(circlip1).Sub(circlip2)
}

// PinCirclip is the thickness of the second circlip that leaves so much between
// two of them: the inverse of [PinBetween].
func PinCirclip[N tolerance.Number[N]](walls, circlip1, between N) N {
	return walls.Sub(circlip1).Sub(between)
}

// PinHotClearance is what heat makes of a pin's clearance in a hole, in mm:
//
//	clearance·(1 + h) + pin·(h − s)
//
// where h and s are the growths of hole and pin, coefficient times rise. It is
// (pin + clearance)·(1 + h) − pin·(1 + s). Clearance (below zero an
// interference, of parts not yet assembled) and pin are in mm as measured, the
// coefficients per kelvin, the rises in kelvins from where both were measured.
// A pin's end float is the same with its length for pin and its float for
// clearance.
func PinHotClearance[R tolerance.Real[R]](clearance, pin, holePerK, holeRise, pinPerK, pinRise R) R {
	hole := holePerK.Mul(holeRise)
	return clearance.Add(clearance.Mul(hole)).Add(pin.Mul(hole.Sub(pinPerK.Mul(pinRise))))
}

// PinColdClearance is the clearance in mm, where both were measured, that
// becomes a wanted one when hot: the inverse of [PinHotClearance].
func PinColdClearance[R tolerance.Real[R]](hot, pin, holePerK, holeRise, pinPerK, pinRise R) R {
	hole := holePerK.Mul(holeRise)
	return hot.Sub(pin.Mul(hole.Sub(pinPerK.Mul(pinRise)))).Quo(hole.Add(hole.Const(1)))
}

// PinHoleRise is by how many kelvins a boss or small end must be warmer than it
// was measured at for a pin at its own rise to have an assembly gap:
// [PinHotClearance] solved for the hole's rise.
func PinHoleRise[R tolerance.Real[R]](gap, clearance, pin, holePerK, pinPerK, pinRise R) R {
	grown := pin.Mul(pinPerK).Mul(pinRise)
	return gap.Sub(clearance).Add(grown).Quo(pin.Add(clearance).Mul(holePerK))
}

// PinRise is by how many kelvins a pin may be warmer than it was measured at and
// still have an assembly gap in a hole at its own rise; below zero, by how many
// it must be chilled: [PinHotClearance] solved for the pin's rise.
func PinRise[R tolerance.Real[R]](gap, clearance, pin, holePerK, holeRise, pinPerK R) R {
	hole := pin.Add(clearance).Mul(holePerK).Mul(holeRise)
	return clearance.Add(hole).Sub(gap).Quo(pin.Mul(pinPerK))
}
