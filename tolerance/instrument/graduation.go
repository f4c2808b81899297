package instrument

import (
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// A Graduation is how a scale is divided: the length of a main division, and
// into how many parts the next scale divides it, and the next one that.
//
//	metric micrometer          {0.5 mm, [50]}       0.01 mm
//	the same with a vernier    {0.5 mm, [50, 10]}   0.001 mm
//	inch micrometer            {0.025 in, [25]}     0.001 in
//	the same with a vernier    {0.025 in, [25, 10]} 0.0001 in
//	metric vernier calliper    {1 mm, [50]}         0.02 mm
type Graduation struct {
	Main   units.Length `json:"main"`             // the length of a main division
	Divide []int        `json:"divide,omitempty"` // into how many parts each further scale divides it
}

// Step is the finest step, the instrument's resolution. It fails with an
// [InputError] where a division is not above zero or not a whole number of
// picometres.
func (g Graduation) Step() (units.Length, error) {
	step := g.Main
	if !step.InRange() || step <= 0 {
		return 0, refuse("", "main division", step.String(), ErrGraduation, "above 0 mm")
	}
	for i, n := range g.Divide {
		if n <= 0 || step%units.Length(n) != 0 {
			return 0, refuse("", "scale "+strconv.Itoa(i+2), strconv.Itoa(n), ErrGraduation, "a number of parts, above 0, that makes "+step.String()+" whole picometres")
		}
		step /= units.Length(n)
	}
	return step, nil
}

// Reading is what the scales show: so many main divisions, so many of the next
// scale's, and so on; a count for each scale. It fails with an [InputError] where
// the counts are not those of the scales: a thimble of 50 lines shows 0 to 49.
func (g Graduation) Reading(counts ...int) (units.Length, error) {
	if _, err := g.Step(); err != nil {
		return 0, err
	}
	if len(counts) != len(g.Divide)+1 {
		return 0, refuse("", "counts", strconv.Itoa(len(counts)), ErrGraduation, "one for each of "+strconv.Itoa(len(g.Divide)+1)+" scales")
	}
	if counts[0] < 0 || int64(counts[0]) > int64(100*units.Metre/g.Main) {
		return 0, refuse("", "main divisions", strconv.Itoa(counts[0]), ErrGraduation, "from 0 to 100 m of them")
	}
	sum, step := units.Length(counts[0])*g.Main, g.Main
	for i, n := range g.Divide {
		step /= units.Length(n)
		if c := counts[i+1]; c < 0 || c >= n {
			return 0, refuse("", "count of scale "+strconv.Itoa(i+2), strconv.Itoa(c), ErrGraduation, "from 0 to "+strconv.Itoa(n-1))
		}
		sum += units.Length(counts[i+1]) * step
	}
	return sum, nil
}

// Counts is what the scales show at a reading, the inverse of
// [Graduation.Reading]. It fails with an [InputError] where the reading is below
// zero, beyond 100 m or between two steps.
func (g Graduation) Counts(reading units.Length) ([]int, error) {
	step, err := g.Step()
	switch {
	case err != nil:
		return nil, err
	case reading < 0 || reading > 100*units.Metre:
		return nil, refuse("", "reading", reading.String(), ErrGraduation, "from 0 mm to 100 m")
	case reading%step != 0:
		return nil, refuse("", "reading", reading.String(), ErrStep, "a whole number of steps of "+step.String())
	case int64(int(reading/g.Main)) != int64(reading/g.Main):
		return nil, refuse("", "main divisions", strconv.FormatInt(int64(reading/g.Main), 10), ErrGraduation, "no more than an int holds")
	}
	counts := []int{int(reading / g.Main)}
	rest, step := reading%g.Main, g.Main
	for _, n := range g.Divide {
		step /= units.Length(n)
		counts = append(counts, int(rest/step))
		rest %= step
	}
	return counts, nil
}
