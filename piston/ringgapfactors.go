package piston

import "github.com/tenthou/tenthou/tolerance"

// A RingGapFactor is a rule for the least end gap of a ring: so much for each
// unit of the bore's diameter, inch for inch as millimetre for millimetre.
type RingGapFactor struct {
	Use    string          `json:"use"`    // "top ring, road engine"
	Factor tolerance.Ratio `json:"factor"` // 0.004: 0.004 in per inch of bore
	Source string          `json:"source"` // where the figure is from
}

// RingGapFactors are the trade's rules of thumb for the least end gap, each
// with its source. None of them is a maker's figure, which governs: heat, load
// and the ring's own material decide.
func RingGapFactors() []RingGapFactor {
	const practice, memory = "common practice", "from memory"
	thousandths := func(n int64) tolerance.Ratio {
		r, _ := tolerance.NewRatio(n, 1000)
		return r
	}
	return []RingGapFactor{
		{"any ring, at the least", thousandths(3), practice},
		{"top ring, road engine", thousandths(4), practice},
		{"second ring, road engine", thousandths(5), memory},
		{"top ring, boosted engine", thousandths(6), memory},
	}
}

// RingGapFactorFor is the rule of that use; ok is false where the list has
// none.
func RingGapFactorFor(use string) (f RingGapFactor, ok bool) {
	for _, f := range RingGapFactors() {
		if f.Use == use {
			return f, true
		}
	}
	return RingGapFactor{}, false
}
