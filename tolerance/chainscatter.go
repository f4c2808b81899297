package tolerance

import "math/big"

// A Scatter says how the sizes of a lot are taken to lie in their band. The
// zero value says nothing.
type Scatter uint8

// The scatters, with the standard deviation that a half-width a of the band
// makes (GUM 4.3.7 and 4.3.9).
const (
	ScatterUnstated Scatter = iota
	// NormalScatter crowds round the middle: a is so many standard deviations
	// as the link's Sigmas says.
	NormalScatter
	// RectangularScatter has every size in the band alike: a/√3.
	RectangularScatter
	// TriangularScatter falls evenly from the middle to nothing at the ends: a/√6.
	TriangularScatter
	// UShapedScatter crowds at both ends, as where parts are worked to the
	// limit: a/√2.
	UShapedScatter
)

var scatterNames = []string{"", "normal", "rectangular", "triangular", "U-shaped"}

// String is the scatter in words; an unstated one is empty.
func (s Scatter) String() string { return word(scatterNames, int(s)) }

// MarshalText writes what String gives.
func (s Scatter) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *Scatter) UnmarshalText(text []byte) error {
	return readWord("scatter", scatterNames, text, s)
}

// isSigmas tells a number of standard deviations that means something.
func isSigmas(k float64) bool { return k >= 0.001 && k <= 1000 }

// squared is the square of how many standard deviations go from the middle of
// the band to its end: exactly that of the scatters that have no Sigmas.
func (l *LinkOf[Q]) squared() float64 {
	switch l.Scatter {
	case RectangularScatter:
		return 3
	case TriangularScatter:
		return 6
	case UShapedScatter:
		return 2
	}
	return l.Sigmas * l.Sigmas
}

// squaredRat is the same, exactly.
func (l *LinkOf[Q]) squaredRat() *big.Rat {
	if l.Scatter == NormalScatter {
		return ratSquare(l.Sigmas)
	}
	return new(big.Rat).SetFloat64(l.squared())
}
