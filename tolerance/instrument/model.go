package instrument

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A model is the formula with what is known of each of its variables. It is
// monotone in each while the others are held: linear in the lengths, the scale's
// and the standard's expansion, and a quotient of linear functions, the divisor
// above zero, in the part's, or in a temperature that all three share. So it has
// its extremes where each variable is at one of its ends, and these are tried.
type model struct {
	shown      [2]units.Length // reading less reading of the standard
	standard   [2]units.Length
	scale      Thermal
	ofStandard Thermal
	part       Thermal
	together   bool // the three temperatures are one and the same
}

// bracket holds the size for every value of the variables.
func (m *model) bracket(name, field string) (tolerance.Bracket, error) {
	least, greatest := units.Length(math.MaxInt64), units.Length(math.MinInt64)
	for _, d := range m.shown[:distinct(m.shown)] {
		for _, s := range m.standard[:distinct(m.standard)] {
			low, high := m.correction(float64(d), float64(s))
			sum := d.Add(s)
			if !sum.InRange() || !(low > -far && high < far) {
				return tolerance.Bracket{}, refuse(name, field, "", ErrRange, "a size within the range of a length")
			}
			least = min(least, sum+units.Length(math.Floor(low)))
			greatest = max(greatest, sum+units.Length(math.Ceil(high)))
		}
	}
	b, err := tolerance.Between(least, greatest)
	if err != nil {
		return tolerance.Bracket{}, refuse(name, field, "", ErrRange, "a size within the range of a length")
	}
	return b.Interval(), nil
}

// far is beyond every correction, in picometres.
const far = 1 << 61

// distinct is how many of two ends there are to try.
func distinct[T comparable](e [2]T) int {
	if e[0] == e[1] {
		return 1
	}
	return 2
}

// correction bounds what the temperatures add to d + s.
func (m *model) correction(d, s float64) (low, high float64) {
	r := sofar{d: d, s: s, low: math.Inf(1), high: math.Inf(-1)}
	if m.together { // one temperature, three coefficients
		above, scale, standard, part := m.scale.above(), m.scale.perKelvin(), m.ofStandard.perKelvin(), m.part.perKelvin()
		for _, t := range above[:distinct(above)] {
			for _, i := range scale[:distinct(scale)] {
				for _, o := range standard[:distinct(standard)] {
					for _, p := range part[:distinct(part)] {
						r.try(i*t, o*t, p*t)
					}
				}
			}
		}
		return r.low, r.high
	}
	scale, standard, part := m.scale.expansion(), m.ofStandard.expansion(), m.part.expansion()
	for _, i := range scale[:distinct(scale)] {
		for _, o := range standard[:distinct(standard)] {
			for _, p := range part[:distinct(part)] {
				r.try(i, o, p)
			}
		}
	}
	return r.low, r.high
}

// sofar gathers the extremes of the corrections tried.
type sofar struct{ d, s, low, high float64 }

// try takes one set of expansions: (d·scale + s·standard − (d+s)·part)/(1+part).
func (r *sofar) try(scale, standard, part float64) {
	a, b, c := r.d*scale, r.s*standard, (r.d+r.s)*part
	at := (a + b - c) / (1 + part)
	// Each product and sum rounds by one part in 2^53, and the expansions come
	// with three such errors.
	slack := (math.Abs(a) + math.Abs(b) + math.Abs(c)) / (1 + part) / (1 << 48)
	r.low, r.high = min(r.low, at-slack), max(r.high, at+slack)
}

// above is the least and greatest temperature above 20 °C, in kelvins.
func (t *Thermal) above() [2]float64 {
	const kelvin = float64(units.Kelvin)
	return [2]float64{float64(t.Above-t.AboveError) / kelvin, float64(t.Above+t.AboveError) / kelvin}
}

func (t *Thermal) perKelvin() [2]float64 {
	return [2]float64{t.PerKelvin - t.PerKelvinError, t.PerKelvin + t.PerKelvinError}
}

// expansion is the least and greatest expansion.
func (t *Thermal) expansion() [2]float64 {
	a, k := t.above(), t.perKelvin()
	low, high := a[0]*k[0], a[0]*k[0]
	for _, x := range [...]float64{a[0] * k[1], a[1] * k[0], a[1] * k[1]} {
		low, high = min(low, x), max(high, x)
	}
	return [2]float64{low, high}
}
