package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
)

// ValveMarginAfter is the margin of a valve (the rim between its face and the
// flat of its head) once the face is ground by so much along the stem. Why: the
// cone moves along the stem and cuts the rim's cylinder by just as much.
func ValveMarginAfter[N tolerance.Number[N]](margin, along N) N { return margin.Sub(along) }

// ValveGrindLeft is how much may still be ground off the face, along the stem,
// before the margin is at its least: margin − least. Below zero the valve is
// past it. Square to the face it is as much times cos α ([GrindSquare]).
func ValveGrindLeft[N tolerance.Number[N]](margin, least N) N { return margin.Sub(least) }

// ValveMarginFor is the margin that a valve must have now to stand a grind along
// the stem: the inverse of [ValveGrindLeft].
func ValveMarginFor[N tolerance.Number[N]](least, along N) N { return least.Add(along) }

// ValveMarginHalf is the least margin by the rule that half of a new valve's
// must be left, which US Army TM 10-3930-671-24 gives. Manuals that print a
// least margin of their own govern.
func ValveMarginHalf[N tolerance.Number[N]](newMargin N) N { return newMargin.Scale(1, 2) }

// ValveRunOut is the run-out of a face, a head or a stem turned once under a
// dial gauge: the greatest reading less the least, all round (total indicator
// reading).
func ValveRunOut[N tolerance.Number[N]](reading N, more ...N) N { return reading.Spread(more...) }

// ValveBend is how far a stem's middle is off the line of its supports: half of
// its run-out, where the stem itself is round.
func ValveBend[N tolerance.Number[N]](runOut N) N { return runOut.Scale(1, 2) }

// ValveShortening is how much shorter a valve is than when new: what its tip has
// lost by wear and grinding, where the head's flat hasn't been touched.
func ValveShortening[N tolerance.Number[N]](newLength, length N) N { return newLength.Sub(length) }

// ValveTipLeft is what may still be ground off a valve's tip: the most that the
// maker allows in all, less what is off already. Past it the hard layer is gone.
func ValveTipLeft[N tolerance.Number[N]](most, off N) N { return most.Sub(off) }

// ValveTipWear is how deep the tip is worn, dialled from its unworn rim.
func ValveTipWear[N tolerance.Number[N]](rim, hollow N) N { return rim.Sub(hollow) }

// GrindAlong is a cut's depth along the stem from its depth square to the cone:
// n/cos α, with the angle of the cone from the plane square to the stem, in
// radians. A machine that feeds along the stem shows this depth, one that feeds
// square to the face the other; valve and installed height move by this one.
func GrindAlong[R tolerance.Real[R]](square, angle R) R { return square.Quo(angle.Cos()) }

// GrindSquare is a cut's depth square to the cone from its depth along the stem:
// the inverse of [GrindAlong].
func GrindSquare[R tolerance.Real[R]](along, angle R) R { return along.Mul(angle.Cos()) }
