package instrument

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Thermal is the temperature of one body and how it expands, each with its
// error. The zero value is at 20 °C: nothing to correct.
type Thermal struct {
	PerKelvin      float64                     `json:"perKelvin,omitzero"`      // coefficient of linear expansion, 1/K: 11.5e-6 for steel
	PerKelvinError float64                     `json:"perKelvinError,omitzero"` // ±
	Above          units.TemperatureDifference `json:"above,omitzero"`          // how much above 20 °C
	AboveError     units.TemperatureDifference `json:"aboveError,omitzero"`     // ±
}

// At is a body at a temperature, known to ± so much, that expands by a
// coefficient per kelvin, known to ± so much.
func At(t units.Temperature, tError units.TemperatureDifference, perKelvin, perKelvinError float64) Thermal {
	return Thermal{perKelvin, perKelvinError, t.Sub(units.Reference), tError}
}

// The limits of what is taken, errors included: beyond them a coefficient was
// written without its 10⁻⁶, or a temperature in another unit.
const (
	mostPerKelvin = 0.001
	mostAbove     = 900 * units.Kelvin
	leastAbove    = -293 * units.Kelvin
)

func (t *Thermal) check(name, body string) error {
	number := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	most := math.Abs(t.PerKelvin) + t.PerKelvinError
	switch {
	case !(t.PerKelvinError >= 0):
		return refuse(name, body+", error of the coefficient", number(t.PerKelvinError), ErrNegative, "0 or more for each kelvin")
	case !(most <= mostPerKelvin):
		return refuse(name, body+", coefficient", number(t.PerKelvin), ErrExpansion, "within ±0.001 for each kelvin, its error included; steel has 11.5e-6")
	case t.AboveError < 0:
		return refuse(name, body+", error of the temperature", t.AboveError.String(), ErrNegative, "0 K or more")
	case !t.Above.InRange() || !t.AboveError.InRange() || t.Above-t.AboveError < leastAbove || t.Above+t.AboveError > mostAbove:
		return refuse(name, body+", temperature above 20 °C", t.Above.String(), ErrTemperature, "from −293 K to 900 K, its error included")
	}
	return nil
}

// SizeAt is what a body of the given size at 20 °C measures at its temperature.
// It fails with an [InputError] where the size is out of range, or a coefficient
// or temperature is none to measure with.
func (t Thermal) SizeAt(reference units.Length) (tolerance.Bracket, error) {
	return t.single(reference, Thermal{}, t)
}

// ReferenceSize is the size at 20 °C of a body that measures so much at its
// temperature, the inverse of [Thermal.SizeAt]: the standard that was measured
// is at 20 °C, the part is not. It fails as SizeAt does.
func (t Thermal) ReferenceSize(size units.Length) (tolerance.Bracket, error) {
	return t.single(size, t, Thermal{})
}

func (t Thermal) single(size units.Length, part, standard Thermal) (tolerance.Bracket, error) {
	if !size.InRange() {
		return tolerance.Bracket{}, refuse("", "size", size.String(), ErrRange, "within the range of a length")
	}
	if err := t.check("", "body"); err != nil {
		return tolerance.Bracket{}, err
	}
	m := model{standard: [2]units.Length{size, size}, part: part, ofStandard: standard}
	return m.bracket("", "size")
}
