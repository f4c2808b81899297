package uncertainty

import "math"

// MeanDeviation is the arithmetic mean and the experimental standard
// deviation (with n − 1) of plain numbers, by two passes with compensated
// sums. What is lost is what the float64 numbers had lost already: a reading
// of 1 000 000.1 holds no more than 16 digits, so readings that differ in the
// 8th give a deviation of 9. Lengths lose nothing in a [SeriesOf].
//
// Fewer than two readings are an [ErrTooFew], one that isn't finite an
// [ErrNotFinite].
func MeanDeviation(readings ...float64) (mean, deviation float64, err error) {
	const op = "repeated readings"
	n := len(readings)
	if n < 2 {
		return 0, 0, refuse(op, "", "readings", n, ErrTooFew, "at least 2")
	}
	var about, errors, squares neumaier
	for i, x := range readings {
		if x-x != 0 {
			return 0, 0, refuse(op, "", "reading", i+1, ErrNotFinite, "a finite number")
		}
		about.add(x - readings[0])
	}
	shift := about.sum() / float64(n)
	for _, x := range readings {
		d := x - readings[0] - shift
		errors.add(d)
		squares.add(d * d)
	}
	// The second term takes back what the rounded mean put in.
	rest := errors.sum()
	mean = readings[0] + (shift + rest/float64(n))
	deviation = math.Sqrt(max(0, squares.sum()-rest*rest/float64(n)) / float64(n-1))
	if s := mean + deviation; s-s != 0 {
		return 0, 0, refuse(op, "", "readings", "", ErrNotFinite, "numbers whose squares a float64 holds")
	}
	return mean, deviation, nil
}

// neumaier is a compensated sum (Neumaier 1974).
type neumaier struct{ total, lost float64 }

func (s *neumaier) add(x float64) {
	t := s.total + x
	if math.Abs(s.total) >= math.Abs(x) {
		s.lost += (s.total - t) + x
	} else {
		s.lost += (x - t) + s.total
	}
	s.total = t
}

func (s *neumaier) sum() float64 { return s.total + s.lost }

// RepeatabilityReal is [Repeatability] for plain numbers in the unit named.
func RepeatabilityReal(name, unit string, readings ...float64) (Dual, error) {
	mean, deviation, err := MeanDeviation(readings...)
	if err != nil {
		return Dual{}, err
	}
	n := float64(len(readings))
	return NewDual(name, mean, unit, NormalShape, deviation/math.Sqrt(n), Freedom(n-1))
}
