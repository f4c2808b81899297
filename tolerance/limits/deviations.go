package limits

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// none stands in the tables where the standard gives no figure.
const none = math.MinInt16

// small is the size up to which the standard withholds a, b, A, B, N above IT8
// and the grades IT14 and coarser.
const small units.Length = 1 * units.MM

// length is so many nanometres, the unit of the look-up.
func length(nm int32) units.Length { return units.Length(nm) * units.Nanometre }

// stepOf is the fine step that a nominal size lies in; a step reaches up to and
// including its end.
func stepOf(nominal units.Length) (step int, ok bool) {
	if nominal <= 0 || nominal > stepEnds[len(stepEnds)-1] {
		return 0, false
	}
	lo, hi := 0, len(stepEnds)-1
	for lo < hi {
		mid := (lo + hi) / 2
		if nominal <= stepEnds[mid] {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo, true
}

// stepStart is the size that a step begins over.
func stepStart(step int) units.Length {
	if step == 0 {
		return 0
	}
	return stepEnds[step-1]
}

// m6Step and m6Last are the fine steps over 250 up to 315 mm, in which M6 is
// −9/−41 µm where the rule gives −11/−43.
const (
	m6Step      = 19
	m6Last      = 20
	m6Deviation = -9
)

// deviations are the limit deviations of a class at a fine step, in nanometres.
// tiny is for sizes up to 1 mm. ok is false where the standard has none.
func (c Class) deviations(step int, tiny bool) (lower, upper int32, ok bool) {
	if tiny && c.withheld() {
		return 0, 0, false
	}
	width := c.grade.tolerance(step)
	if c.letter == letterJS {
		return -width / 2, width / 2, true
	}
	if c.feature == Hole {
		return c.holeDeviations(step, width)
	}
	return c.shaftDeviations(step, width)
}

// withheld: not to be used for sizes up to 1 mm.
func (c Class) withheld() bool {
	return c.letter <= letterB || c.grade >= IT14 || c.feature == Hole && c.letter == letterN && c.grade > IT8
}

func (c Class) shaftDeviations(step int, width int32) (lower, upper int32, ok bool) {
	v := shaftDeviations[step][c.letter]
	switch {
	case c.letter == letterJ:
		v = none
		if c.grade >= IT5 && c.grade <= IT8 {
			v = shaftsJ[step][[4]uint8{0, 0, 1, 2}[c.grade-IT5]]
		}
	case c.letter == letterK && (c.grade < IT4 || c.grade > IT7):
		v = 0
	}
	from := int32(v) * 1000
	if c.letter < letterJ {
		return from - width, from, v != none
	}
	return from, from + width, v != none
}

func (c Class) holeDeviations(step int, width int32) (lower, upper int32, ok bool) {
	v, last := holeDeviations[step][c.letter], IT7
	switch {
	case c.letter < letterJ:
		from := int32(v) * 1000
		return from, from + width, v != none
	case c.letter == letterJ:
		v, last = none, 0
		if c.grade >= IT6 && c.grade <= IT8 {
			v = holesJ[step][c.grade-IT6]
		}
	case c.letter <= letterN:
		last = IT8
		switch {
		case c.letter == letterK && c.grade > IT8:
			v = coarseHoles[step][0]
		case c.letter == letterN && c.grade > IT8:
			v = coarseHoles[step][1]
		case c.letter == letterM && c.grade == IT6 && (step == m6Step || step == m6Last):
			v, last = m6Deviation, 0
		}
	}
	from := int32(v) * 1000
	if c.grade <= last {
		if c.grade < IT3 {
			return 0, 0, false // no delta is tabulated
		}
		from += deltas[mainSteps[step]][c.grade-IT3]
	}
	return from - width, from, v != none
}

// At looks up the limits of the class at a nominal size, over 0 up to and
// including 500 mm. It fails with a [SizeError] for a size outside the tables
// or too small to bear the deviations, and with a [ClassError] where the
// standard has no figures for the class at that size.
func (c Class) At(nominal units.Length) (Limits, error) {
	step, ok := stepOf(nominal)
	if !ok {
		return Limits{}, &SizeError{Nominal: nominal, Class: c}
	}
	if c.IsZero() {
		return Limits{}, &ClassError{Nominal: nominal}
	}
	lower, upper, ok := c.deviations(step, nominal <= small)
	if !ok {
		return Limits{}, &ClassError{Class: c, Nominal: nominal}
	}
	if least := nominal + length(lower); least <= 0 {
		return Limits{}, &SizeError{Nominal: nominal, Class: c, Least: least}
	}
	return Limits{nominal: nominal, lower: lower, upper: upper, class: c}, nil
}
