package uncertainty

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Body is a part or an instrument as far as heat matters to it.
type Body struct {
	Temperature EstimateOf[units.Temperature] // of all of it
	Expansion   Dual                          // coefficient of linear expansion, per kelvin: 11.5e-6 for steel
}

// above is how far the body is above 20 °C, in kelvins.
func (b Body) above() (Dual, bool) {
	if !b.Temperature.InRange() || !b.Expansion.InRange() {
		return Dual{}, false
	}
	d := EstimateOf[units.TemperatureDifference]{value: b.Temperature.value.Sub(units.Reference), terms: b.Temperature.terms}
	return d.Real(units.InKelvins), true
}

// LengthAtReference is the length at 20 °C (ISO 1) of a part that reads so
// much on an instrument, both being θ above 20 °C by as much as each is:
//
//	reading·(1 + αᵢ·θᵢ)/(1 + αₚ·θₚ)
//
// A warm instrument's scale has grown and reads too little; a warm part has
// grown. Where both are of one material and of one temperature it is the
// reading. Temperatures in kelvins, coefficients per kelvin.
func LengthAtReference[R tolerance.Real[R]](reading, instrumentExpansion, instrumentAbove, partExpansion, partAbove R) R {
	one := reading.Const(1)
	grown := one.Add(instrumentExpansion.Mul(instrumentAbove))
	return reading.Mul(grown).Quo(one.Add(partExpansion.Mul(partAbove)))
}

// AtReference is [LengthAtReference] with its uncertainty: what a reading
// taken at the bench is at 20 °C, and what the temperatures and coefficients
// add to its uncertainty. To say that part and instrument have soaked to one
// temperature, give both the same estimate, and what is known of their
// difference to one of them; then the doubt about the common temperature
// counts only as far as the two expand differently (GUM H.1).
//
// The value is rounded to the nearest quantum. A reading, temperature or
// coefficient out of range is an [ErrRange].
func AtReference(reading Estimate, instrument, part Body) (Estimate, error) {
	const op = "length at 20 °C"
	if !reading.InRange() {
		return Estimate{}, refuse(op, "", "reading", "", ErrRange, "a reading in range")
	}
	hot, ok := instrument.above()
	warm, ok2 := part.above()
	if !ok || !ok2 {
		return Estimate{}, refuse(op, "", "temperature or expansion", "", ErrRange, "values in range")
	}
	// In picometres, so that the value is a whole number.
	return FromReal(LengthAtReference(reading.Real(units.InPicometres), instrument.Expansion, hot, part.Expansion, warm), units.InPicometres)
}

// Warmer is a temperature by so much above t: a part that has lain beside the
// instrument is at the instrument's temperature and a small difference of
// which only its bounds are known. Out of range where either is, or where
// that is below absolute zero.
func Warmer(t EstimateOf[units.Temperature], by EstimateOf[units.TemperatureDifference]) EstimateOf[units.Temperature] {
	v := t.value.Add(by.value)
	if !v.InRange() {
		return broken[units.Temperature]()
	}
	return EstimateOf[units.Temperature]{value: v, terms: sum(&t.terms, 1, &by.terms, 1)}
}
