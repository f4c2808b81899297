package uncertainty

import (
	"math"
	"strconv"
	"strings"
)

// A Shape says how the values of a source are spread about its middle.
type Shape uint8

// The shapes, with the standard uncertainty that a half-width a makes.
const (
	// Normal values crowd round the middle and have no bounds; the spread is
	// given as a standard deviation. With finite degrees of freedom they are
	// drawn from Student's t (JCGM 101, 6.4.9).
	NormalShape Shape = iota
	// RectangularShape is all values within ±a alike: u = a/√3.
	RectangularShape
	// TriangularShape falls evenly from the middle to nothing at ±a: u = a/√6.
	TriangularShape
	// UShape crowds at ±a, as a value that swings to and fro does: u = a/√2.
	UShape
)

var shapeNames = []string{"normal", "rectangular", "triangular", "U-shaped"}

// String is the shape in words.
func (s Shape) String() string {
	if int(s) >= len(shapeNames) {
		s = NormalShape
	}
	return shapeNames[s]
}

// MarshalText writes what String gives.
func (s Shape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *Shape) UnmarshalText(text []byte) error { return readWord("shape", shapeNames, text, s) }

// readWord reads one of the names into the value that it is the place of.
func readWord[T ~uint8](what string, names []string, text []byte, into *T) error {
	for i, n := range names {
		if n == string(text) {
			*into = T(i)
			return nil
		}
	}
	return refuse(what, "", "name", strconv.Quote(clip(string(text))), ErrSyntax, "one of: "+strings.Join(names, ", "))
}

// StandardUncertainty is the standard deviation of values spread by this
// shape over ±width (GUM 4.3.7, 4.3.9, H.1.3.4); of a normal shape width is
// the standard deviation itself.
func (s Shape) StandardUncertainty(width float64) float64 { return width / s.halfWidth() }

// halfWidth is the half-width of a shape that has a standard deviation of 1.
func (s Shape) halfWidth() float64 {
	switch s {
	case RectangularShape:
		return sqrt3
	case TriangularShape:
		return sqrt6
	case UShape:
		return math.Sqrt2
	}
	return 1
}

const (
	sqrt3 = 1.73205080756887729352744634150587236694280525381038062805580698
	sqrt6 = 2.44948974278317809819728407470589139196594748065667012843269257
)
