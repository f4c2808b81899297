package piston

import "github.com/tenthou/tenthou/tolerance"

// SideClearance is the axial clearance of a ring in its groove: groove width
// less ring height (axial width), both square to the groove's faces. A
// result below zero is an interference: the ring does not go in.
func SideClearance[N tolerance.Number[N]](grooveWidth, ringHeight N) N {
	return grooveWidth.Sub(ringHeight)
}

// GrooveWidth is the width of a groove from the side clearance measured in it
// and the height of the ring that was in it then.
func GrooveWidth[N tolerance.Number[N]](clearance, ringHeight N) N {
	return clearance.Add(ringHeight)
}

// RingHeight is the height of the ring with which a groove gives a clearance.
func RingHeight[N tolerance.Number[N]](grooveWidth, clearance N) N {
	return grooveWidth.Sub(clearance)
}

// GrooveWear is how much a groove has widened since new.
func GrooveWear[N tolerance.Number[N]](width, newWidth N) N {
	return width.Sub(newWidth)
}

// GrooveWearByClearance is how much a groove has widened since new, from the
// clearance measured in it, the height of the used ring that it was measured
// with, and the groove's width when new.
func GrooveWearByClearance[N tolerance.Number[N]](clearance, usedHeight, newWidth N) N {
	return clearance.Add(usedHeight).Sub(newWidth)
}

// RingWear is how much lower a ring has become since new.
func RingWear[N tolerance.Number[N]](height, newHeight N) N {
	return newHeight.Sub(height)
}

// GrooveShare is the part of whole that the groove's wear has in the wear of
// groove and ring together; what is left is the ring's. With the growth of
// the clearance as whole it is the groove's wear again; with 100 of any unit,
// a percentage. Neither wear may be below zero.
func GrooveShare[N tolerance.Number[N]](whole, grooveWear, ringWear N) N {
	return whole.Share(grooveWear, ringWear)
}

// ClearanceWithRing is the side clearance that another ring would have in the
// same groove: clearance + used height − new height. The used ring's height
// is needed: without it, part of what was measured may be the ring's wear.
func ClearanceWithRing[N tolerance.Number[N]](clearance, usedHeight, newHeight N) N {
	return clearance.Add(usedHeight).Sub(newHeight)
}

// RingHeightFor is the ring height with which the same groove would have the
// wanted clearance: clearance + used height − wanted.
func RingHeightFor[N tolerance.Number[N]](clearance, usedHeight, wanted N) N {
	return clearance.Add(usedHeight).Sub(wanted)
}

// GrooveTaper is how much wider a groove is at its mouth than at its root: a
// worn groove opens outward, and a blade that goes in a little way reads the
// mouth. Width or clearance may be given, since the ring is the same.
func GrooveTaper[N tolerance.Number[N]](mouth, root N) N {
	return mouth.Sub(root)
}
