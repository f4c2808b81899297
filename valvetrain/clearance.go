package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
)

// ShimForClearance is the shim that brings the valve clearance (lash) to the
// wanted one where the shim fills the gap itself, over or under a bucket, or as
// the bucket's own thickness:
//
//	new shim = old shim + measured clearance − wanted clearance
//
// Why: with the cam on its base circle, shim and clearance together fill one and
// the same room, so what the one gains the other loses.
//
// The old shim is as measured by micrometer, not as marked: a shim worn by
// 0.03 mm puts the next one out by as much. Where a rocker or a finger stands
// between shim and blade see [ShimThroughRocker].
func ShimForClearance[N tolerance.Number[N]](old, measured, wanted N) N {
	return old.Add(measured).Sub(wanted)
}

// ClearanceWithShim is the clearance that another shim would give, directly over
// or under a bucket: measured + old − shim. Below zero the valve is held open.
// The inverse of [ShimForClearance].
func ClearanceWithShim[N tolerance.Number[N]](measured, old, shim N) N {
	return measured.Add(old).Sub(shim)
}

// ShimThatWas is the shim under which a clearance was measured, from the one
// fitted since and the clearance that it gave: shim + now − before. It finds a
// shim that went out of the shop unmeasured.
func ShimThatWas[N tolerance.Number[N]](shim, now, before N) N {
	return shim.Add(now).Sub(before)
}

// ShimThroughRocker is [ShimForClearance] where shim and blade stand on
// different arms of a rocker or finger:
//
//	new shim = old shim + (measured − wanted)/ratio
//
// The ratio is how far the place of the blade moves for each unit at the shim,
// above 0: the arm of the blade over the arm of the shim, both from the pivot.
// With a cap or shim on the stem and the blade there too it is 1; with the blade
// at the cam it is 1 over the rocker ratio. A ratio that isn't above 0 gives a
// result out of range.
func ShimThroughRocker[N tolerance.Number[N]](old, measured, wanted N, ratio tolerance.Ratio) N {
	return old.Add(measured.Sub(wanted).Scale(clearanceOver(ratio)))
}

// ClearanceThroughRocker is the clearance that another shim would give through a
// rocker: measured + (old − shim) × ratio, the inverse of [ShimThroughRocker].
func ClearanceThroughRocker[N tolerance.Number[N]](measured, old, shim N, ratio tolerance.Ratio) N {
	return measured.Add(old.Sub(shim).Scale(clearanceTimes(ratio)))
}

// RockerMove is how far one arm of a rocker moves when another is moved, the
// arms being measured from the pivot to the contacts: move × to/from. It stands
// in for a ratio where the arms are readings with errors of their own. Exact
// while the arms lie square to their movement; over a valve clearance the
// difference is far below what a blade tells.
func RockerMove[N tolerance.Number[N]](move, from, to N) N {
	return move.MulDiv(to, from)
}

// PivotRatio is the ratio for a screw or nut that moves the rocker's pivot
// itself, as that of a stud does, with the blade at the valve: 1 + rocker ratio,
// the rocker ratio being the valve's arm over the pushrod's.
//
// Why: the pushrod's end stands still, and the rocker turns about it. The pivot
// is one arm away from it, the valve's end both, (a + b)/a = 1 + b/a. So a turn
// of such a nut closes two and a half times its pitch at a ratio of 1.5.
//
// With the valve standing still and the movement taken at the pushrod, as for a
// plunger's travel, give the ratio the other way round: 1 + a/b. It fails with
// an [InputError] where the ratio isn't above 0, or is out of range.
func PivotRatio(rocker tolerance.Ratio) (tolerance.Ratio, error) {
	if err := clearanceRatio("rocker ratio", rocker); err != nil {
		return tolerance.Ratio{}, err
	}
	r, err := tolerance.NewRatio(rocker.Num+rocker.Den, rocker.Den)
	if err != nil {
		return r, &InputError{"rocker ratio", rocker.String(), "a ratio"} // not reached: the denominator isn't 0
	}
	return r, nil
}

// clearanceTimes is the ratio to scale by, and clearanceOver the one to divide
// by; what is no ratio above 0 becomes a division by zero.
func clearanceTimes(r tolerance.Ratio) (num, den int64) {
	if r.Sign() <= 0 {
		return 1, 0
	}
	return r.Num, r.Den
}

func clearanceOver(r tolerance.Ratio) (num, den int64) {
	if r.Sign() <= 0 {
		return 1, 0
	}
	return r.Den, r.Num
}

// ratioParts is the most that a ratio's numerator and denominator may be, which
// keeps products with lengths in range.
const ratioParts = 1_000_000

// clearanceRatio refuses what is no ratio of two arms.
func clearanceRatio(field string, r tolerance.Ratio) error {
	if r.Sign() <= 0 || r.Den <= 0 || r.Num > ratioParts || r.Den > ratioParts || r.Num > 100*r.Den || r.Den > 100*r.Num {
		return &InputError{field, r.String(), "a ratio from 0.01 to 100, of whole numbers up to 1000000"}
	}
	return nil
}

// ratioOrOne is a ratio, or 1 where none is given.
func ratioOrOne(r tolerance.Ratio) tolerance.Ratio {
	if r == (tolerance.Ratio{}) {
		return tolerance.Whole(1)
	}
	return r
}

// clearanceBand refuses a wanted clearance that can't be aimed at.
func clearanceBand(b tolerance.Band) error {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	if !b.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo <= 0 || hi > clearanceLargest {
		return &InputError{"wanted clearance", b.String(), "a band with a least above 0 mm and a greatest up to 10 mm"}
	}
	return nil
}
