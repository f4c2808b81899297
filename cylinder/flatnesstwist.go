package cylinder

import "github.com/tenthou/tenthou/tolerance"

// What a straight-edge shows of a twist, and what it hides.
//
// A pure twist is z = T·(x/a)·(y/b) over a face that reaches from −a to a and
// from −b to b: two opposite corners are T high, the other two T low. Along an
// edge one of x and y doesn't change, so z is a straight line there, and so it
// is along every line parallel to an edge: the straight-edge lies on it
// without a gap. Along a diagonal y/b = ±x/a and z = ±T·(x/a)²: one diagonal
// is a hollow of T, on which the straight-edge rests and shows T; the other is
// a hump of T, on which it rocks and shows T to 4T. By symmetry no plane lies
// nearer to all of it than z = 0, from which it departs by T each way:
//
//	flatness (the least distance of two planes that hold the face)   2T
//	shown along edges, ends and every line parallel to them          nothing
//	shown along the diagonals                                        T, and T to 4T
//
// So without the diagonals a twist isn't seen at all, and with them half of it
// is. The two diagonals together tell: they cross in the middle of the face,
// at one height, so that their bows give how the corners lie.

// CornerOffPlane is how far one corner of a face lies off the plane through
// the other three, from how far the face bows up along each diagonal, at the
// crossing, over the straight line between its corners (below zero for a
// hollow): 2·|first − second|. A pure twist of T gives 4T.
//
// Derivation: the crossing's height is (A + C)/2 + first and also (B + D)/2 +
// second, so that A + C − B − D = 2·(second − first); and D is A + C − B on
// the plane of the others.
func CornerOffPlane[N tolerance.Number[N]](first, second N) N {
	return first.Sub(second).Abs().Scale(2, 1)
}

// Bows are how far a face bows up in the middle of each of its six lines, over
// the straight line between the line's ends: above zero for a hump, below for
// a hollow.
type Bows[N any] struct {
	Left, Right    N // lengthwise
	Front, Rear    N // across
	FirstDiagonal  N // front left to rear right
	SecondDiagonal N // front right to rear left
}

// NineHeights are the heights of a face at its corners, the middles of its
// edges and its centre, from its [Bows]: rows from front to rear, each from
// left to right, over the plane that lies best to the corners. A corner lies
// (second − first diagonal)/2 above it or below, as the derivation of
// [CornerOffPlane] gives; between two corners, one above and one below, the
// plane is half-way.
//
// Three lines through a point must agree there, so nothing is averaged: the
// centre comes out alike from both diagonals. Brackets count the diagonals'
// bows each as often as they occur, which widens the corners' heights no
// further than they are.
func NineHeights[N tolerance.Number[N]](b Bows[N]) [3][3]N {
	corner := b.SecondDiagonal.Sub(b.FirstDiagonal).Scale(1, 2)
	other := b.FirstDiagonal.Sub(b.SecondDiagonal).Scale(1, 2)
	centre := b.FirstDiagonal.Add(b.SecondDiagonal).Scale(1, 2)
	return [3][3]N{
		{corner, b.Front, other},
		{b.Left, centre, b.Right},
		{other, b.Rear, corner},
	}
}
