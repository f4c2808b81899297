package form

import (
	"github.com/tenthou/tenthou/units"
)

// A Profile is one round section as a roundness instrument or a rotary table
// gives it: how far the radius exceeds a nominal one at equally spaced angles,
// counter-clockwise from the first, about the axis of the spindle.
//
// The nominal radius matters little and is needed all the same: seen from an
// axis off by e, a true circle of radius r looks out of round by e²/2r.
type Profile struct {
	Nominal    units.Length   // the radius that deviations count from
	Deviations []units.Length // radius less nominal
}

// radius is one radius in picometres, exact up to 9 m.
func (p Profile) radius(i int) (float64, error) {
	r := p.Nominal.Add(p.Deviations[i])
	if !r.InRange() {
		return 0, outOfRange("profile", i)
	}
	if r <= 0 {
		return 0, &Error{What: "profile", Index: i, Value: r.String(), Kind: ErrRadius, Want: "deviations from the nominal radius that leave a radius"}
	}
	return float64(r), nil
}

// points writes the profile's points in picometres into space, if it is large
// enough.
func (p Profile) points(space []Point) ([]Point, error) {
	n := len(p.Deviations)
	if n > len(space) {
		space = make([]Point, n)
	}
	for i := range n {
		r, err := p.radius(i)
		if err != nil {
			return nil, err
		}
		sin, cos := sincos(i, n)
		space[i] = Point{r * cos, r * sin}
	}
	return space[:n], nil
}

// Roundness is the profile beside a reference circle. Figures are rounded once
// to the nearest picometre; the arithmetic beneath is float64 and good to some
// ten-thousandths of that at 100 mm. It fails with [ErrTooFew] below three
// readings, [ErrRange], [ErrRadius], [ErrKind], and as the function of the
// circle's kind does. It allocates nothing for up to 512 readings.
func (p Profile) Roundness(kind CircleKind) (RoundnessLengths, error) {
	var space [inPlace]Point
	points, err := p.points(space[:])
	if err != nil {
		return RoundnessLengths{}, err
	}
	r, err := Circle(kind, points)
	if err != nil {
		return RoundnessLengths{}, err
	}
	return r.Lengths(units.InPicometres)
}

// OutOfRound is the trade's out-of-round of the profile: the greatest less the
// least diameter, each taken as a reading and the one opposite. Exact. It
// fails with [ErrTooFew] below four readings, [ErrShape] for an odd number of
// them, which has no opposites, [ErrRange] and [ErrRadius].
func (p Profile) OutOfRound() (Diametral, error) {
	n := len(p.Deviations)
	switch {
	case n < 4:
		return 0, tooFew("profile", n, 4)
	case n%2 != 0:
		return 0, fault("profile", ErrShape, "an even number of readings, so that each has one opposite")
	}
	for i := range n {
		if _, err := p.radius(i); err != nil {
			return 0, err
		}
	}
	most := p.Deviations[0].Add(p.Deviations[n/2])
	least := most
	for i := range n / 2 {
		d := p.Deviations[i].Add(p.Deviations[i+n/2])
		most, least = most.Max(d), least.Min(d)
	}
	spread := most.Sub(least)
	if !spread.InRange() {
		return 0, outOfRange("profile", -1)
	}
	return Diametral(spread), nil
}

// Radii are the radii in a unit, for [Harmonics] or [Polar]. It fails with
// [ErrRange] and [ErrRadius].
func (p Profile) Radii(u units.Unit[units.Length]) ([]float64, error) {
	radii := make([]float64, len(p.Deviations))
	for i := range radii {
		if _, err := p.radius(i); err != nil {
			return nil, err
		}
		radii[i] = p.Nominal.Add(p.Deviations[i]).Float(u)
	}
	return radii, nil
}
