package feeler

import (
	"math/big"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Prior says which clearances are expected before anything is tried, in
// pieces from 0 up. Within a piece every clearance is as likely as any other;
// beyond the last none is expected. Where 60 % of grooves have at most 0.07 mm,
// 30 % up to 0.10 mm and the rest up to 0.20 mm:
//
//	Prior{{UpTo: 0.07 * units.MM, Weight: 60}, {UpTo: 0.10 * units.MM, Weight: 30}, {UpTo: 0.20 * units.MM, Weight: 10}}
type Prior []Piece

// A Piece of a [Prior] goes from the end of the one before it, or from 0.
type Piece struct {
	UpTo   units.Length `json:"upTo"`   // where it ends
	Weight int64        `json:"weight"` // of the whole piece, beside the others
}

// Uniform is the prior by which every clearance from 0 to top is as likely as
// any other.
func Uniform(top units.Length) Prior { return Prior{{UpTo: top, Weight: 1}} }

const piecesMax = 1000

func (p Prior) check() error {
	fail := func(i int, want string) error {
		return &PlanError{What: "plan", Field: "prior, piece " + strconv.Itoa(i+1), Kind: ErrPrior, Want: want}
	}
	if len(p) == 0 || len(p) > piecesMax {
		return &PlanError{What: "plan", Field: "prior", Kind: ErrPrior, Want: "1 to " + strconv.Itoa(piecesMax) + " pieces; Uniform(top) is the plainest"}
	}
	last, some := units.Length(0), false
	for i, piece := range p {
		if piece.UpTo <= last || !piece.UpTo.InRange() {
			return fail(i, "each piece ends above where it begins")
		}
		if piece.Weight < 0 {
			return fail(i, "no weight is below 0")
		}
		last, some = piece.UpTo, some || piece.Weight > 0
	}
	if !some {
		return fail(0, "one weight at least is above 0")
	}
	return nil
}

// weights are the prior's shares of cells that adjoin, as whole numbers to one
// scale; cell i goes from ends[i] to ends[i+1], the last one for ever where
// endless.
func (p Prior) weights(ends []units.Length, endless bool) []*big.Int {
	scale := big.NewInt(1)
	from := units.Length(0)
	for _, piece := range p {
		width := big.NewInt(int64(piece.UpTo - from))
		common := new(big.Int).GCD(nil, nil, scale, width)
		scale.Mul(scale, width.Quo(width, common))
		from = piece.UpTo
	}
	n := len(ends) - 1
	if endless {
		n++
	}
	weights := make([]*big.Int, n)
	for i := range weights {
		sum := new(big.Int)
		from := units.Length(0)
		for _, piece := range p {
			lo, hi := max(ends[i], from), piece.UpTo
			if i+1 < len(ends) {
				hi = min(hi, ends[i+1])
			}
			if hi > lo {
				density := new(big.Int).Quo(scale, big.NewInt(int64(piece.UpTo-from)))
				density.Mul(density, big.NewInt(piece.Weight))
				sum.Add(sum, density.Mul(density, big.NewInt(int64(hi-lo))))
			}
			from = piece.UpTo
		}
		weights[i] = sum
	}
	return weights
}

// wholeRange is where nothing has been tried: a gap is 0 at least.
func wholeRange() tolerance.Bracket {
	b, _ := Bracket()
	return b
}
