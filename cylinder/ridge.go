package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
)

// RidgeSide says how a ridge was measured. The zero value is not stated, and
// refused with a ridge: the two differ by a factor of two.
type RidgeSide uint8

// The two ways of counting a ridge.
const (
	RidgeNotStated  RidgeSide = iota
	RidgePerSide              // from the worn wall to the land above it, on one side
	RidgeOnDiameter           // worn diameter below it less the diameter of the land
)

var ridgeNames = []string{"not stated", "per side", "on diameter"}

// String names the way.
func (r RidgeSide) String() string { return wordOf(ridgeNames, r) }

// MarshalText writes what String gives.
func (r RidgeSide) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *RidgeSide) UnmarshalText(text []byte) error { return readWord("ridge", ridgeNames, text, r) }

// A Ridge is the step at the top of ring travel, where the wall above the top
// ring is not worn. The zero value is one that was not measured.
type Ridge struct {
	Height  tolerance.Bracket `json:"height"`  // 0 or more
	Counted RidgeSide         `json:"counted"` // per side or on the diameter
}

// OnDiameter is the ridge as a difference of diameters. A ridge measured per
// side is taken for one that is as high all round; where the wear is on one
// side it is less on the diameter. It fails, with an [InputError], where the
// ridge was not measured, is below zero, or isn't said to be one or the other.
func (r Ridge) OnDiameter() (tolerance.Bracket, error) {
	if err := boreBracket("ridge", r.Height, 0); err != nil {
		return tolerance.Bracket{}, err
	}
	switch r.Counted {
	case RidgePerSide:
		return RidgeDiametral(r.Height), nil
	case RidgeOnDiameter:
		return r.Height, nil
	}
	return tolerance.Bracket{}, &InputError{"ridge", r.Height.String() + " (not stated how)", `said to be "per side" or "on diameter"`}
}

// RidgeDiametral is a ridge on the diameter, of one that is as high all round
// per side.
func RidgeDiametral[N tolerance.Number[N]](perSide N) N { return perSide.Scale(2, 1) }

// RidgeSided is a ridge per side, of one that is as high all round: the inverse
// of [RidgeDiametral].
func RidgeSided[N tolerance.Number[N]](onDiameter N) N { return onDiameter.Scale(1, 2) }

// RidgeFromSizes is a ridge on the diameter from two sizes: the worn bore just
// below it, and the land above it that no ring reaches.
func RidgeFromSizes[N tolerance.Number[N]](worn, land N) N { return worn.Sub(land) }
