package tolerance

import "github.com/tenthou/tenthou/units"

// A plainTable is what the reading of plain forms knows of one quantity.
type plainTable struct {
	most  int64 // the greatest magnitude that the parsers of package units take
	units []plainUnit
}

// A plainUnit is a usual name of a unit.
type plainUnit struct {
	name   string
	unit   uint8
	places int       // decimal places to which every value is whole quanta
	step   [19]int64 // quanta in 10^-k units, for k up to places
}

// find is the unit of a name, or nil.
func (t *plainTable) find(name string) *plainUnit {
	for k := range t.units {
		if t.units[k].name == name {
			return &t.units[k]
		}
	}
	return nil
}

func newPlain[Q units.Quantity](most Q, names ...string) *plainTable {
	t := &plainTable{most: int64(most)}
	for _, name := range names {
		u, err := units.ParseUnit[Q](name)
		if err == nil { // a test holds the names to it
			p := plainUnit{name: name, unit: uint8(u), places: u.Places()}
			for k := range p.places + 1 {
				p.step[k] = int64(units.Written[Q]{Unit: u, Places: uint8(k)}.Step())
			}
			t.units = append(t.units, p)
		}
	}
	return t
}

// The names that are usual in documents and manuals, the likelier first. "min"
// is not among those of angles: it means the least as well. Temperatures, whose
// units have zeros of their own, are left to the other parser.
var (
	plainLengths      = newPlain(100*units.Metre, "mm", "in", `"`, "µm", "μm", "um", "thou", "″", "inch", "cm", "m")
	plainAngles       = newPlain(1_000_000*units.Degree, "°", "deg", "′", "'", "″")
	plainVolumes      = newPlain(9000*units.Litre, "cm³", "cm3", "cc", "ml", "L", "in³", "in3")
	plainMasses       = newPlain(2000*units.Kilogram, "g", "kg", "oz", "lb", "mg")
	plainForces       = newPlain(10_000*units.Newton, "N", "lbf", "kgf", "kN")
	plainPressures    = newPlain(17_000*units.Kilopascal, "kPa", "bar", "psi", "MPa")
	plainSpringRates  = newPlain(400*units.NewtonPerMillimetre, "N/mm", "lbf/in", "lb/in", "kgf/mm")
	plainDifferences  = newPlain(units.TemperatureDifference(100_000*units.Kelvin), "K")
	plainTemperatures = &plainTable{}
)

func plainOf[Q units.Quantity]() *plainTable {
	switch any(Q(0)).(type) {
	case units.Length:
		return plainLengths
	case units.Angle:
		return plainAngles
	case units.Volume:
		return plainVolumes
	case units.Mass:
		return plainMasses
	case units.Force:
		return plainForces
	case units.Pressure:
		return plainPressures
	case units.SpringRate:
		return plainSpringRates
	case units.TemperatureDifference:
		return plainDifferences
	}
	return plainTemperatures
}
