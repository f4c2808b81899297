package limits

// The preferred fits of ANSI B4.2-1978 (R2004), from the loosest to the
// tightest.
var (
	preferredHoleBasis  = [...]string{"H11/c11", "H9/d9", "H8/f7", "H7/g6", "H7/h6", "H7/k6", "H7/n6", "H7/p6", "H7/s6", "H7/u6"}
	preferredShaftBasis = [...]string{"C11/h11", "D9/h9", "F8/h7", "G7/h6", "H7/h6", "K7/h6", "N7/h6", "P7/h6", "S7/h6", "U7/h6"}
)

// Preferred gives the ten preferred fits of ANSI B4.2-1978, from the loosest
// to the tightest, for which reamers, gauges and stock are easiest to come by:
// five clearance fits, two transition fits and three interference fits. With
// [Hole] they are on the hole basis, in which every hole is an H and the shaft
// is varied, with [Shaft] on the shaft basis, in which every shaft is an h (a
// bought pin, a ground bar) and the hole is varied. Of neither there are none.
// Up to 3 mm H7/p6 is a transition fit.
func Preferred(basis Feature) []Pair {
	codes := preferredHoleBasis[:]
	switch basis {
	case Hole:
	case Shaft:
		codes = preferredShaftBasis[:]
	default:
		return nil
	}
	pairs := make([]Pair, len(codes))
	for i, code := range codes {
		pairs[i] = MustParsePair(code)
	}
	return pairs
}
