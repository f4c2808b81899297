package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Metal is what a part is made of, as far as heat goes: its coefficient of
// linear expansion, and how well that is known.
type Metal struct {
	Name      string  `json:"name"`               // "grey iron"
	PerK      float64 `json:"perK"`               // per kelvin: 11.4 millionths are 11.4e-6
	PerKError float64 `json:"perKError,omitzero"` // ±, per kelvin
	Source    string  `json:"source,omitempty"`   // where the figure is from
}

const (
	textbook   = "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6"
	fromMemory = "from memory"
)

// Metals are the metals that pistons, gudgeon pins, rods and bores are made of,
// each with its source. The maker's own figure governs: alloys of one name
// differ by a millionth per kelvin and more, and all of them expand more for
// each kelvin when they are hot than at room temperature.
func Metals() []Metal {
	return []Metal{
		{"grey iron", 11.4e-6, 0, fromMemory},
		{"ductile iron 60-40-18", 11.2e-6, 0, textbook},
		{"ductile iron 80-55-06", 10.6e-6, 0, textbook},
		{"carbon steel", 11.7e-6, 0, fromMemory},
		{"cast aluminium 356.0", 21.5e-6, 0, textbook},
		{"aluminium 2024", 22.9e-6, 0, textbook},
		{"aluminium 6061", 23.6e-6, 0, textbook},
		{"piston alloy 4032", 19.4e-6, 0, fromMemory},
		{"piston alloy 2618", 22.3e-6, 0, fromMemory},
		{"hypereutectic piston alloy", 18.25e-6, 0.25e-6, fromMemory},
		{"leaded tin bronze C93200", 18.0e-6, 0, textbook},
	}
}

// MetalOf is the metal of that name; ok is false where the list has none.
func MetalOf(name string) (m Metal, ok bool) {
	for _, m := range Metals() {
		if m.Name == name {
			return m, true
		}
	}
	return Metal{}, false
}

// check refuses what is no coefficient of a metal.
func (m *Metal) check(part string) error {
	if m.PerKError >= 0 && m.PerK-m.PerKError > 0 && m.PerK+m.PerKError < 1e-3 {
		return nil
	}
	return &InputError{part + " expansion", number(m.PerK) + " ±" + number(m.PerKError) + " per K",
		"above 0 and below 0.001 per K, its error included: 11.4 millionths are 11.4e-6"}
}

// number writes a plain number in as few digits as tell it.
func number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// A span is a range of plain numbers.
type span struct{ lo, hi float64 }

// hottest is more than any part of an engine is; alloys have melted long before.
const hottest = 1000 * units.CELSIUS

// rise is from at to a range of temperatures, in kelvins.
func rise(field string, t tolerance.Interval[units.Temperature], at units.Temperature) (span, error) {
	lo, loEnd := t.Lower()
	hi, hiEnd := t.Upper()
	if loEnd == tolerance.Absent || hiEnd == tolerance.Absent || !t.InRange() || lo < units.AbsoluteZero || hi > hottest {
		return span{}, &InputError{field, t.String(), "from absolute zero, −273.15 °C, to 1000 °C"}
	}
	if !at.InRange() || at < units.AbsoluteZero || at > hottest {
		return span{}, &InputError{"temperature measured at", at.String(), "from absolute zero, −273.15 °C, to 1000 °C"}
	}
	return span{lo.Sub(at).Float(units.InKelvins), hi.Sub(at).Float(units.InKelvins)}, nil
}

// growth is how much a metal grows with a rise, as a part of its length.
func (m *Metal) growth(r span) span {
	least, most := m.PerK-m.PerKError, m.PerK+m.PerKError
	return span{min(least*r.lo, most*r.lo), max(least*r.hi, most*r.hi)}
}

// riseOf is the range of rises that make a growth.
func (m *Metal) riseOf(growth float64) span {
	a, b := growth/(m.PerK+m.PerKError), growth/(m.PerK-m.PerKError)
	return span{min(a, b), max(a, b)}
}

// slack covers what float64 loses, in kelvins.
const slack = 1e-9

// after is a temperature so many kelvins on.
func after(field string, at units.Temperature, kelvins float64) (units.Temperature, error) {
	r, err := units.Nearest(kelvins, units.InKelvins)
	t := at.Add(r)
	if err != nil || !t.InRange() {
		return 0, &InputError{field, number(kelvins) + " K", "a change that stays above absolute zero and can be reached"}
	}
	return t, nil
}

// millimetres is a length for a formula over Real.
func millimetres(l units.Length) tolerance.Float {
	return tolerance.Float(l.Float(units.InMillimetres))
}

// picometres is a whole number of picometres, out of range where x is.
func picometres(x float64) units.Length {
	if !(x >= -1<<60 && x <= 1<<60) {
		return units.OutOfRange[units.Length]()
	}
	return units.Length(x)
}
