package piston

import "github.com/tenthou/tenthou/tolerance"

// SkirtTaper is how much wider a skirt is at its lower edge than at its upper
// one, both across the thrust faces: a new skirt is wider below, where it runs
// cooler. Below zero it is narrower below, as one that collapsed.
func SkirtTaper[N tolerance.Number[N]](lower, upper N) N { return lower.Sub(upper) }

// SkirtLower is the size at the lower edge that a taper makes of the upper one:
// the inverse of [SkirtTaper].
func SkirtLower[N tolerance.Number[N]](upper, taper N) N { return upper.Add(taper) }

// SkirtOvality is the cam of a skirt at one height: how much larger it is
// across the thrust faces than along the gudgeon pin. It is on the diameter; a
// drawing may give the drop on the radius, which is half of it
// ([SkirtCamDrop]). Below zero the skirt is larger along the pin.
func SkirtOvality[N tolerance.Number[N]](across, along N) N { return across.Sub(along) }

// SkirtAlong is the size along the gudgeon pin that an ovality makes of the
// size across the thrust faces: the inverse of [SkirtOvality].
func SkirtAlong[N tolerance.Number[N]](across, ovality N) N { return across.Sub(ovality) }

// SkirtCamDrop is the ovality of a skirt counted on the radius, as a cam's
// drawing gives it: half of [SkirtOvality]. It rounds once, to the quantum.
func SkirtCamDrop[N tolerance.Number[N]](ovality N) N { return ovality.Scale(1, 2) }

// SkirtOvalityOfDrop is the ovality on the diameter of a cam whose drop is
// counted on the radius: the inverse of [SkirtCamDrop].
func SkirtOvalityOfDrop[N tolerance.Number[N]](drop N) N { return drop.Scale(2, 1) }

// SkirtWear is how much a skirt has lost on the diameter since new, across the
// thrust faces at the measuring height. A micrometer can't tell it from a
// collapse: where the turning marks still stand, nothing was worn off.
func SkirtWear[N tolerance.Number[N]](size, newSize N) N { return newSize.Sub(size) }

// SkirtCollapse is how much a skirt has closed in on the diameter since new: its
// new size at some height less its size at the same height. Against the new
// size at another height it would be the taper it was made with.
func SkirtCollapse[N tolerance.Number[N]](size, newSize N) N { return newSize.Sub(size) }

// SkirtNewSize is the size that a skirt had before it lost so much by wear or
// collapse: the inverse of [SkirtWear] and [SkirtCollapse].
func SkirtNewSize[N tolerance.Number[N]](size, loss N) N { return size.Add(loss) }
