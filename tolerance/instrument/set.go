package instrument

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Set is readings of one part, or of parts at one temperature, taken with one
// instrument in one setting. What is off in all of them alike, such as the size
// of a setting ring, counts once in a size and not at all in a difference.
type Set struct {
	in       Instrument
	part     Thermal
	readings []units.Length
}

// MostReadings is how many readings a set may have.
const MostReadings = 100_000

// Set takes readings of parts at one temperature. It fails with an [InputError]
// as [Instrument.Reading] does, naming the reading, and where there are none or
// more than [MostReadings].
func (in Instrument) Set(part Thermal, readings ...units.Length) (Set, error) {
	switch {
	case len(readings) == 0:
		return Set{}, refuse(in.Name, "readings", "", ErrEmpty, "at least one")
	case len(readings) > MostReadings:
		return Set{}, refuse(in.Name, "readings", "", ErrIndex, "at most 100000")
	}
	s := Set{in: in, part: part, readings: append([]units.Length(nil), readings...)}
	for i, x := range readings {
		if i == 0 {
			if err := in.take("reading 1", x, &part); err != nil {
				return Set{}, err
			}
		} else if err := in.shows("reading "+strconv.Itoa(i+1), x); err != nil {
			return Set{}, err
		}
	}
	return s, nil
}

// Len is how many readings there are.
func (s Set) Len() int { return len(s.readings) }

// at refuses a reading that the set doesn't have.
func (s *Set) at(i int) error {
	if i < 0 || i >= len(s.readings) {
		return refuse(s.in.Name, "reading", strconv.Itoa(i), ErrIndex, "one of the set's "+strconv.Itoa(len(s.readings))+", counted from 0")
	}
	return nil
}

// Common is how much may be off, either way, in all readings alike: the error of
// the standard, and half a step for reading it.
func (s Set) Common() units.Length { return s.in.common() }

// Individual is how much may be off, either way, in each reading by itself: the
// permissible error, and half a step.
func (s Set) Individual() units.Length { return s.in.individual() }

// Size is reading i, counted from 0, corrected: its bracket has both the common
// and the individual part.
func (s Set) Size(i int) (Corrected, error) {
	if err := s.at(i); err != nil {
		return Corrected{}, err
	}
	return s.in.correct("reading "+strconv.Itoa(i+1), s.readings[i], &s.part)
}

// Difference holds size i less size j, counted from 0: a taper, from readings at
// two ends. What is common to both drops out, so its bracket is narrower than
// that of the two sizes subtracted. Of a reading and itself it is 0.
func (s Set) Difference(i, j int) (tolerance.Bracket, error) {
	for _, k := range [...]int{i, j} {
		if err := s.at(k); err != nil {
			return tolerance.Bracket{}, err
		}
	}
	off := s.in.individual()
	if i == j {
		off = 0
	}
	return s.scaled(around(s.readings[i].Sub(s.readings[j]), off.Add(off)), "difference")
}

// Spread holds the greatest size less the least: an out-of-round, from readings
// all round. What is common drops out.
func (s Set) Spread() (tolerance.Bracket, error) {
	if len(s.readings) == 0 {
		return tolerance.Bracket{}, refuse(s.in.Name, "readings", "", ErrEmpty, "at least one")
	}
	off := s.in.individual()
	brackets := make([]tolerance.Bracket, len(s.readings))
	for i, x := range s.readings {
		b, err := tolerance.PlusMinus(x, off)
		if err != nil {
			return tolerance.Bracket{}, refuse(s.in.Name, "reading "+strconv.Itoa(i+1), x.String(), ErrRange, "within the range of a length")
		}
		brackets[i] = b
	}
	all := brackets[0].Spread(brackets[1:]...)
	lo, _ := all.Lower()
	hi, _ := all.Upper()
	return s.scaled([2]units.Length{lo, hi}, "spread")
}

// scaled brings a difference on the scale to 20 °C: the standard has no part in
// it.
func (s *Set) scaled(shown [2]units.Length, field string) (tolerance.Bracket, error) {
	m := s.in.model(&s.part)
	m.shown = shown
	m.ofStandard = Thermal{Above: m.scale.Above, AboveError: m.scale.AboveError}
	return m.bracket(s.in.Name, field)
}
