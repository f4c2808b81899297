package form

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/mat"

	"github.com/tenthou/tenthou/units"
)

// A Spectrum is the harmonic content of a round profile: the mean radius and
// the harmonics by order, in the unit of the radii.
type Spectrum struct {
	// Harmonics by order: Harmonics[0] holds the mean radius as Cos,
	// Harmonics[1] the eccentricity, and so on without a gap.
	Harmonics []Harmonic
	// Readings is the number of equally spaced readings that it was made of,
	// 0 for a fit at other angles.
	Readings int
}

// Harmonics takes radii at equally spaced angles apart into harmonics, up to
// half as many as there are readings: more, the readings don't tell from
// fewer. Nothing is lost: [Spectrum.Radii] gives the readings back.
//
// Radii from a spindle off centre by e show, beside the eccentricity, an
// ovality of e²/4r; centre them with [LeastSquaresCircle] first where that
// matters.
//
// It is the discrete Fourier transform, by gonum's. The error is some 1e-16 of
// the radius. It fails with [ErrTooFew] below three readings and
// [ErrNotFinite]. It allocates the result and the transform's working space.
func Harmonics(radii []float64) (Spectrum, error) {
	n := len(radii)
	if n < 3 {
		return Spectrum{}, tooFew("harmonics", n, 3)
	}
	for i, r := range radii {
		if !finite(r) {
			return Spectrum{}, notFinite("harmonics", i, r)
		}
	}
	// From the first radius, so that it doesn't drown the small ones.
	base := radii[0]
	sequence := make([]float64, n)
	for i, r := range radii {
		sequence[i] = r - base
	}
	c := fourier.NewFFT(n).Coefficients(nil, sequence)
	s := Spectrum{Harmonics: make([]Harmonic, len(c)), Readings: n}
	for k, z := range c {
		scale := 2 / float64(n)
		if k == 0 || 2*k == n {
			scale = 1 / float64(n)
		}
		s.Harmonics[k] = Harmonic{k, real(z) * scale, -imag(z)*scale + 0} // + 0: no negative zero
	}
	s.Harmonics[0] = Harmonic{Cos: base + s.Harmonics[0].Cos}
	return s, nil
}

// HarmonicsAt fits the mean and the harmonics up to an order to radii at any
// angles, by least squares.
//
// It fails with [ErrTooFew] below 2·highest+1 readings, [ErrShape] where there
// are not as many angles as radii, [ErrNotFinite], [ErrRange] and [ErrAngles]
// where the angles don't tell the harmonics apart: two directions don't tell
// an oval from a size. Orders go up to 1000.
func HarmonicsAt(angles []units.Angle, radii []float64, highest int) (Spectrum, error) {
	const mostOrders = 1000
	n := len(radii)
	switch {
	case len(angles) != n:
		return Spectrum{}, fault("harmonics", ErrShape, "as many angles as radii")
	case highest < 0 || highest > mostOrders:
		return Spectrum{}, &Error{What: "harmonics", Index: -1, Value: "order " + strconv.Itoa(highest), Kind: ErrAngles, Want: "an order from 0 to 1000"}
	case n < 2*highest+1:
		return Spectrum{}, tooFew("harmonics", n, 2*highest+1)
	}
	columns := 2*highest + 1
	a, r := mat.NewDense(n, columns, nil), mat.NewVecDense(n, nil)
	for i, v := range radii {
		switch {
		case !finite(v):
			return Spectrum{}, notFinite("harmonics", i, v)
		case !angles[i].InRange():
			return Spectrum{}, outOfRange("harmonics", i)
		}
		r.SetVec(i, v-radii[0])
		a.Set(i, 0, 1)
		for k := 1; k <= highest; k++ {
			// The multiple is reduced to one turn exactly.
			sin, cos := math.Sincos(radians(angles[i] % turn * units.Angle(k)))
			a.Set(i, 2*k-1, cos)
			a.Set(i, 2*k, sin)
		}
	}
	var qr mat.QR
	qr.Factorize(a)
	if c := qr.Cond(); !(c < 1e10) {
		return Spectrum{}, fault("harmonics", ErrAngles, "angles that tell the harmonics apart")
	}
	x := mat.NewVecDense(columns, nil)
	if err := qr.SolveVecTo(x, false, r); err != nil {
		return Spectrum{}, fault("harmonics", ErrAngles, "angles that tell the harmonics apart")
	}
	s := Spectrum{Harmonics: make([]Harmonic, highest+1)}
	s.Harmonics[0].Cos = radii[0] + x.AtVec(0)
	for k := 1; k <= highest; k++ {
		s.Harmonics[k] = Harmonic{k, x.AtVec(2*k - 1), x.AtVec(2 * k)}
	}
	return s, nil
}

// Order is the harmonic of an order; one of no amplitude where the spectrum
// doesn't reach so far.
func (s Spectrum) Order(k int) Harmonic {
	if k < 0 || k >= len(s.Harmonics) {
		return Harmonic{Order: max(k, 0)}
	}
	return s.Harmonics[k]
}

// Mean is the mean radius.
func (s Spectrum) Mean() float64 { return s.Order(0).Cos }

// Eccentricity is the harmonic of order 1: the amplitude is how far the centre
// lies off the axis of the readings, the crest in which direction. It is no
// part of roundness.
func (s Spectrum) Eccentricity() Harmonic { return s.Order(1) }

// Ovality is the harmonic of order 2. Its [Harmonic.OutOfRound] is the
// difference of the long and the short diameter.
func (s Spectrum) Ovality() Harmonic { return s.Order(2) }

// Largest is the harmonic of the greatest amplitude from one order to another,
// both included; of equals the lowest.
func (s Spectrum) Largest(from, to int) Harmonic {
	best := s.Order(from)
	for k := max(from, 0); k <= min(to, len(s.Harmonics)-1); k++ {
		if s.Harmonics[k].Amplitude() > best.Amplitude() {
			best = s.Harmonics[k]
		}
	}
	return best
}

// Between is the spectrum with the orders from one to another alone, and the
// mean: 2 to 15 leaves out eccentricity and roughness. It allocates a copy.
func (s Spectrum) Between(from, to int) Spectrum {
	out := Spectrum{Harmonics: append([]Harmonic(nil), s.Harmonics...), Readings: s.Readings}
	for k := 1; k < len(out.Harmonics); k++ {
		if k < from || k > to {
			out.Harmonics[k] = Harmonic{Order: k}
		}
	}
	return out
}

// At is the radius in a direction, in radians counter-clockwise from the first
// reading.
func (s Spectrum) At(radians float64) float64 {
	r := 0.0
	for k := len(s.Harmonics) - 1; k >= 0; k-- { // the small ones first
		r += s.Harmonics[k].At(radians)
	}
	return r
}

// Radii are the radii in n directions, equally spaced from the first reading.
func (s Spectrum) Radii(n int) []float64 {
	radii := make([]float64, max(n, 0))
	for i := range radii {
		for k := len(s.Harmonics) - 1; k >= 0; k-- {
			// The multiple of the angle is reduced to one turn exactly.
			sin, cos := sincos(int(int64(i)*int64(k)%int64(n)), n)
			radii[i] += s.Harmonics[k].Cos*cos + s.Harmonics[k].Sin*sin
		}
	}
	return radii
}

// RootMeanSquare is that of the readings about their mean, by Parseval's
// theorem: each harmonic gives half the square of its amplitude, and the one of
// half as many lobes as readings, which stand on its crests and troughs alone,
// the whole.
func (s Spectrum) RootMeanSquare() float64 {
	sum := 0.0
	for k := len(s.Harmonics) - 1; k >= 1; k-- {
		a := s.Harmonics[k].Amplitude()
		if 2*k == s.Readings {
			a *= math.Sqrt2
		}
		sum = math.Hypot(sum, a/math.Sqrt2)
	}
	return sum
}
