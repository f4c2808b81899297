package form

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Radial is a difference of radii: roundness as the standards measure it. A
// [Diametral] is a difference of diameters: out-of-round as the trade does.
// They are two types, so that one can't be taken for the other: of an oval the
// one is half the other, and of a three-lobed part a micrometer sees none of
// it.
type Radial units.Length

// Diametral is a difference of diameters, as out-of-round and taper are in the
// trade. See [Radial].
type Diametral units.Length

// Length is the difference of radii as a plain length.
func (r Radial) Length() units.Length { return units.Length(r) }

// Length is the difference of diameters as a plain length.
func (d Diametral) Length() units.Length { return units.Length(d) }

// String is the length, said to be a difference of radii.
func (r Radial) String() string { return units.Length(r).String() + " on the radius" }

// String is the length, said to be a difference of diameters.
func (d Diametral) String() string { return units.Length(d).String() + " on the diameter" }

// OutOfRoundIfEven is the trade's out-of-round of a part that has one even
// number of lobes and this RONt: twice as much. Let the radius be
// R + A·cos(nφ). Its deviation goes from −A to A, so RONt is 2A. The radius
// opposite is R + A·cos(nφ + n·180°), the same for even n: the diameter is
// 2R + 2A·cos(nφ), and its greatest less its least 4A. For odd n the two
// cancel and every diameter is 2R.
func (r Radial) OutOfRoundIfEven() Diametral {
	return Diametral(units.Length(r).Scale(2, 1))
}

// RONtIfEven is the standard roundness of a part that has one even number of
// lobes and this out-of-round: half as much, rounded to the nearest picometre,
// ties to even.
func (d Diametral) RONtIfEven() Radial { return Radial(units.Length(d).Scale(1, 2)) }

// RONtAtLeast is what a difference of diameters at one level says of RONt
// without a word of the lobes: at least half as much, and no more than that.
// Odd lobes add to RONt and to no diameter, and directions not measured may
// hold more.
//
// Why at least: between two circles of radii r and r+w every distance between
// parallel jaws lies from 2r to 2r+2w, so two of them differ by 2w at most. A
// bore gauge off the centre by e reads short by e²/r or so.
func (d Diametral) RONtAtLeast() tolerance.Bracket {
	return atLeastHalf(tolerance.Exactly(units.Length(d)))
}

// atLeastHalf is [lower/2, ∞), rounded down; out of range where b is.
func atLeastHalf(b tolerance.Bracket) tolerance.Bracket {
	half := b.Scale(1, 2)
	lower, end := half.Lower()
	least, err := tolerance.NewInterval(lower, end, 0, tolerance.Absent)
	if err != nil || !half.InRange() {
		return half
	}
	return least
}

// OutOfRound is the trade's out-of-round: the greatest less the least of the
// diameters measured at one level. It shows lobes of even number, as far as
// the directions find them, and none of odd number. The result is a difference
// of diameters; lift a length with [Diametral] to keep that said.
func OutOfRound[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// Taper is the greatest less the least of the diameters measured in one
// direction at several levels. It shows barrel and bell-mouth as well as a
// cone, and no bend: an axis that bends leaves every diameter as it is.
func Taper[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// ParallelSides is the greatest less the least distance of two opposite walls
// along them, as diameters or widths in one direction. Where one wall is
// straight it is the parallelism of the other to it; a bend that both share
// isn't in it.
func ParallelSides[N tolerance.Number[N]](width N, more ...N) N { return width.Spread(more...) }
