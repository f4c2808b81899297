package form

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// A VBlock is a V-block (or three-point gauge) and where its indicator points.
//
//	Indicator 0:          ↓ indicator           Indicator 180°:
//	opposite the V      ╭───╮                   in the V, between
//	(summit)           │  ·  │                  its faces (rider)
//	                ╲   ╰───╯   ╱
//	                  ╲       ╱
//	                    ╲   ╱  included angle α
//	                      V
//
// The part turns in the V. Its faces touch at ±(90° + α/2) from the direction
// opposite the V. Let the radius be R + A·cos(n(θ − ω)), with ω the turn of the
// part. To first order in A each face holds the part where its own direction
// meets the profile, so the centre is pushed up by
//
//	A·cos nω · cos n(90° + α/2) / sin(α/2)
//
// and the indicator above reads that and the crest that passes under it:
// A·cos nω·(1 + cos n(90° + α/2)/sin(α/2)). Its whole swing is so many times
// RONt = 2A as the bracket says. With the indicator at an angle to the
// bisector the push sideways, A·sin nω·sin n(90° + α/2)/cos(α/2) against its
// direction, joins in a quarter wave behind.
type VBlock struct {
	Included  units.Angle // between the faces, above 0 and below 180°
	Indicator units.Angle // from the bisector, 0 opposite the V, 180° in the V
}

// MostLobes is the greatest number of lobes that a factor is given for.
const MostLobes = 10_000

func (v VBlock) check() error {
	switch {
	case !v.Included.InRange() || !v.Indicator.InRange():
		return outOfRange("V-block", -1)
	case v.Included <= 0 || v.Included >= 180*units.Degree:
		return &Error{What: "V-block", Index: -1, Value: v.Included.String(), Kind: ErrAngles, Want: "an included angle above 0° and below 180°"}
	}
	return nil
}

func checkLobes(n int) error {
	if n < 0 || n > MostLobes {
		return &Error{What: "V-block", Index: -1, Value: strconv.Itoa(n) + " lobes", Kind: ErrAngles, Want: "0 to 10000 lobes"}
	}
	return nil
}

// Factor is how many times RONt the indicator swings for a part of so many
// lobes: 0 where the V hides them. For 1, an eccentric part, it is 0 by any
// V: the part has no axis there to be eccentric to. For 0 it is the indicator's
// change for a change of the radius.
//
// The error is below 1e-12 for up to 1000 lobes. A swing holds to first order,
// for lobes shallow enough to be convex (n²·A < R). It fails with [ErrAngles]
// and [ErrRange].
func (v VBlock) Factor(lobes int) (float64, error) {
	if err := v.check(); err != nil {
		return 0, err
	}
	if err := checkLobes(lobes); err != nil {
		return 0, err
	}
	in, out := v.waves(lobes)
	f := math.Hypot(in, out)
	if f < 1e-12 {
		f = 0 // to rounding
	}
	return f, nil
}

// waves is the indicator's answer to a lobe of amplitude 1: the part in step
// with the crest under the summit, and the part a quarter wave behind.
func (v VBlock) waves(n int) (in, out float64) {
	half := v.Included.Radians() / 2
	// Multiples are reduced to one turn exactly; that of a face's direction
	// while it is still doubled.
	twice := (180*units.Degree + v.Included) * units.Angle(n) % (2 * turn)
	sinFace, cosFace := math.Sincos(twice.Radians() / 2)
	i := v.Indicator % turn
	sin, cos := math.Sincos(i.Radians())
	sinLobes, cosLobes := math.Sincos(radians(i * units.Angle(n)))
	return cosLobes + cos*cosFace/math.Sin(half), sinLobes - sin*sinFace/math.Cos(half)
}

// TwoPointFactor is how many times RONt the difference of diameters is, as a
// micrometer or a two-point bore gauge finds it: 2 for an even number of
// lobes, 0 for an odd one, which it doesn't see at all. A V of 180° would do
// the same. It fails with [ErrAngles] for fewer than 0 or more than
// [MostLobes] lobes.
func TwoPointFactor(lobes int) (float64, error) {
	if err := checkLobes(lobes); err != nil {
		return 0, err
	}
	return float64(2 - 2*(lobes%2)), nil
}

// A LobeFactor is a line of a table of factors.
type LobeFactor struct {
	Lobes    int     // how many
	TwoPoint float64 // see [TwoPointFactor]
	VBlock   float64 // see [VBlock.Factor]
}

// Table gives the factors from one number of lobes to another, both included.
// A number with 0 in both columns is seen by neither. It fails as
// [VBlock.Factor] does.
func (v VBlock) Table(from, to int) ([]LobeFactor, error) {
	if err := checkLobes(from); err != nil {
		return nil, err
	}
	if err := checkLobes(to); err != nil {
		return nil, err
	}
	var table []LobeFactor
	for n := from; n <= to; n++ {
		f, err := v.Factor(n)
		if err != nil {
			return nil, err
		}
		two, _ := TwoPointFactor(n) // checked
		table = append(table, LobeFactor{n, two, f})
	}
	return table, nil
}

// Hidden lists the numbers of lobes, from 2 to most, whose swing is less than
// least times RONt: what a round indicator reading in this V does not rule
// out. It fails as [VBlock.Factor] does.
func (v VBlock) Hidden(most int, least float64) ([]int, error) {
	table, err := v.Table(2, most)
	if err != nil {
		return nil, err
	}
	var hidden []int
	for _, line := range table {
		if line.VBlock < least {
			hidden = append(hidden, line.Lobes)
		}
	}
	return hidden, nil
}

// RONt is the roundness deviation of a part of one known number of lobes that
// swings the indicator by so much, rounded to the nearest picometre. It is the
// reading over the factor, and as wrong as the number of lobes is: count them
// on the dial. It fails with [ErrHidden] where the factor is below 0.1, as
// [VBlock.Factor] does, and with [ErrRange].
func (v VBlock) RONt(swing units.Length, lobes int) (Radial, error) {
	f, err := v.Factor(lobes)
	if err != nil {
		return 0, err
	}
	if lobes < 2 || f < 0.1 {
		return 0, &Error{What: "V-block", Index: -1, Value: strconv.Itoa(lobes) + " lobes", Kind: ErrHidden, Want: "another included angle, or a spindle"}
	}
	if !swing.InRange() {
		return 0, outOfRange("V-block", -1)
	}
	r, err := units.Nearest(float64(swing)/f, units.InPicometres)
	if err != nil {
		return 0, outOfRange("V-block", -1)
	}
	return Radial(r), nil
}

// Reading is what the indicator shows at a turn of the part, in radians, for a
// part of these harmonics, against what it shows for one of the mean radius.
// It is in the unit of the spectrum. It fails with [ErrAngles] and [ErrRange],
// and with [ErrShape] for a spectrum with a harmonic out of its place.
func (v VBlock) Reading(part Spectrum, radians float64) (float64, error) {
	if err := v.check(); err != nil {
		return 0, err
	}
	sum := 0.0
	for k := len(part.Harmonics) - 1; k >= 2; k-- {
		if err := checkLobes(k); err != nil {
			return 0, err
		}
		h := part.Harmonics[k]
		if h.Order != k && (h.Cos != 0 || h.Sin != 0) {
			return 0, &Error{What: "V-block", Index: -1, Value: "order " + strconv.Itoa(h.Order) + " at place " + strconv.Itoa(k), Kind: ErrShape, Want: "harmonics by order, without a gap"}
		}
		in, out := v.waves(k)
		// The part turned by ω has A·cos n(θ−ω−crest): the phase in the V is nω
		// plus that of the harmonic.
		sin, cos := math.Sincos(float64(k) * radians)
		sum += in*(h.Cos*cos-h.Sin*sin) + out*(h.Sin*cos+h.Cos*sin)
	}
	return sum, nil
}

// Swing is the greatest less the least reading over n positions of the part,
// equally spaced round a turn: what the indicator would show. It fails with
// [ErrTooFew] below 2 positions and as [VBlock.Reading] does.
func (v VBlock) Swing(part Spectrum, n int) (float64, error) {
	if n < 2 {
		return 0, tooFew("V-block", n, 2)
	}
	most, least := math.Inf(-1), math.Inf(1)
	for i := range n {
		r, err := v.Reading(part, 2*math.Pi*float64(i)/float64(n))
		if err != nil {
			return 0, err
		}
		most, least = max(most, r), min(least, r)
	}
	return most - least, nil
}
