package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// OutOfRound is the out-of-round (ovality) of a bore as the trade counts it:
// the greatest less the least diameter at one level. Standard roundness is a
// difference of radii, about half of it for a plain oval, and is another
// measure.
//
// What two or more directions show is the least that it can be ("at least"):
// [OvalShown] says why.
func OutOfRound[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// OvalShown is what two directions at right angles show of an oval: the
// difference of the two diameters, with its sign, where the oval's long axis
// lies at an angle to the first of them. All lengths in one unit, the angle in
// radians.
//
// The diameter of an oval of out-of-round o about a mean d, its long axis at
// angle a, is at heading t
//
//	d + o/2 × cos 2(t − a)
//
// so at 0 and at 90° it is d ± o/2 × cos 2a, and they differ by o × cos 2a:
// all of it where the oval lies along one of them, none at 45°.
func OvalShown[R tolerance.Real[R]](oval, angle R) R { return oval.Mul(angle.Add(angle).Cos()) }

// OvalFrom is the oval of which two directions at right angles show so much,
// its long axis at an angle to the first: the inverse of [OvalShown]. Out of
// range at 45°, where nothing is shown; near it what was read wrong is
// multiplied by as much.
func OvalFrom[R tolerance.Real[R]](shown, angle R) R { return shown.Quo(angle.Add(angle).Cos()) }

// LeastOvalShown is the least share of an oval's out-of-round, from 0 to 1,
// that readings in these directions show, however the oval lies: 0 for two at
// right angles, 0.75 for three at 60°, 0.71 for four at 45°. With fewer than
// two directions it is 0.
//
// By the formula of [OvalShown] the readings are the places of points on a
// circle of diameter o, at twice the headings, along the direction 2a; so what
// they show is the width of that set of points, and the least of it is square
// to a line through two of them that leaves all others on one side. Accurate to
// 1e-14; the time grows with the cube of the number of directions, of which it
// takes up to 360 and else gives 0.
func LeastOvalShown(headings ...units.Angle) float64 {
	if len(headings) < 2 || len(headings) > 360 {
		return 0
	}
	least := math.Inf(1)
	for i, a := range headings {
		for _, b := range headings[:i] {
			// The line through both points is square to the direction halfway
			// between them, which is that of the sum of the headings.
			middle := a.Radians() + b.Radians()
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, c := range headings {
				at := math.Cos(2*c.Radians()-middle) / 2
				lo, hi = min(lo, at), max(hi, at)
			}
			least = min(least, hi-lo)
		}
	}
	if least < 1e-14 {
		return 0
	}
	return least
}
