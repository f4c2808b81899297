package cylinder

import "github.com/tenthou/tenthou/tolerance"

// BoreWear is how much a bore has worn on its diameter: the size measured less
// the size that it was last finished to, at that place. A bore finished to
// +0.50 mm and worn by 0.06 mm is not worn by 0.56 mm, and one that was choked
// counts at each level from the size given it there.
func BoreWear[N tolerance.Number[N]](size, finished N) N { return size.Sub(finished) }

// SizeWorn is the size of a bore that was finished to a size and wore by so
// much on its diameter: the inverse of [BoreWear].
func SizeWorn[N tolerance.Number[N]](finished, wear N) N { return finished.Add(wear) }

// WearOppositeWall is the wear of one wall of a bore, from the diameter
// measured through it, the diameter last finished to, and the wear of the wall
// opposite: a diameter shows the sum of the two.
func WearOppositeWall[N tolerance.Number[N]](size, finished, opposite N) N {
	return size.Sub(finished).Sub(opposite)
}
