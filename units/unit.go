package units

import "strings"

// A Quantity is one of this package's types: a whole number of a quantum
// that divides both the metric and the imperial units.
type Quantity interface {
	Length | Angle | Volume | Mass | Force | Pressure | SpringRate | Temperature | TemperatureDifference
}

// A Unit names the unit that a quantity of type Q is written in. Its zero
// value is the unit of the type's own text: millimetres, degrees, cubic
// centimetres, grams, newtons, kilopascals, newtons per millimetre, degrees
// Celsius and kelvins. A value that names no unit is read as the zero value.
type Unit[Q Quantity] uint8

// Symbol is the unit's symbol as this package prints it.
func (u Unit[Q]) Symbol() string { return tableOf[Q]().unit(uint8(u)).symbol }

// String is the same as [Unit.Symbol].
func (u Unit[Q]) String() string { return u.Symbol() }

// Places is the number of decimal places to which every value in this unit
// is a whole number of quanta: 9 for millimetres, 8 for inches.
func (u Unit[Q]) Places() int { return tableOf[Q]().unit(uint8(u)).places }

// MarshalText writes the unit's symbol.
func (u Unit[Q]) MarshalText() ([]byte, error) { return []byte(u.Symbol()), nil }

// UnmarshalText reads any name of the unit that the parsers accept.
func (u *Unit[Q]) UnmarshalText(text []byte) error {
	v, err := ParseUnit[Q](string(text))
	if err != nil {
		return err
	}
	*u = v
	return nil
}

// ParseUnit reads the name of a unit, in any spelling that the parsers of
// quantities accept.
func ParseUnit[Q Quantity](name string) (Unit[Q], error) {
	t := tableOf[Q]()
	i, want, kind := t.lookup(name)
	if kind != nil {
		return 0, t.fail(name, 0, kind, want)
	}
	return Unit[Q](i), nil
}

// unit is one row of a table of units.
type unit struct {
	symbol string   // as printed
	names  []string // further spellings that are read
	tight  bool     // printed without a space before it, as 30°
	quanta int64    // quanta in one unit
	zero   int64    // quanta at this unit's zero (degrees Fahrenheit)
	sub    int      // 1 + index of the unit that may follow, as minutes follow degrees
	// The rest is set by newTable.
	places int       // decimal places to which every value is whole quanta
	finite int       // the most places that a finite decimal in it has
	step   [19]int64 // quanta in 10^-k units, for k up to places
}

// table is what the engine knows of one quantity.
type table struct {
	quantity  string
	goType    string
	examples  string            // how to write one, for messages
	units     []unit            // units[0] is the unit of the text form
	ambiguous map[string]string // names refused, with the reason
	parseMax  int64             // greatest magnitude that Parse takes, in quanta
	parseText string            // the same in words
	least     int64             // least value in range, in quanta
}

const (
	// limit is the greatest magnitude that is in range: twice its double
	// still fits an int64, so sums of in-range values can't wrap.
	limit = 1 << 61
	// outOfRange is what an operation gives that leaves the range.
	outOfRange = -1 << 63
)

func newTable(t table) *table {
	if t.least == 0 {
		t.least = -limit
	}
	for i := range t.units {
		u := &t.units[i]
		u.step[0] = u.quanta
		for u.places+1 < len(u.step) && u.step[u.places]%10 == 0 {
			u.step[u.places+1] = u.step[u.places] / 10
			u.places++
		}
		u.finite = min(max(power(u.quanta, 2), power(u.quanta, 5)), placesMax)
	}
	return &t
}

// power is how often p divides v.
func power(v, p int64) (n int) {
	for ; v%p == 0; v /= p {
		n++
	}
	return n
}

// index is i, or 0 where there is no such unit.
func (t *table) index(i uint8) uint8 {
	if int(i) >= len(t.units) {
		return 0
	}
	return i
}

func (t *table) unit(i uint8) *unit { return &t.units[t.index(i)] }

// lookup finds a unit by any of its names, or says why there is none.
func (t *table) lookup(name string) (i int, want string, kind error) {
	if i := t.find(name, noUnit); i >= 0 {
		return i, "", nil
	}
	if why, ok := t.ambiguous[name]; ok {
		return 0, why, ErrAmbiguous
	}
	kind = ErrUnknownUnit
	if name == "" {
		kind = ErrNoUnit
	}
	return 0, "write it as " + t.examples, kind
}

func (t *table) fail(input string, offset int, kind error, want string) error {
	text, cut := clip(input)
	return &ParseError{Quantity: t.quantity, Input: text, Cut: cut, Offset: offset, Kind: kind, Want: want}
}

// finest writes the step whose multiples are all whole quanta.
func (t *table) finest(u *unit) string {
	if u.places == 0 {
		return "1 " + u.symbol
	}
	return "0." + strings.Repeat("0", u.places-1) + "1 " + u.symbol
}

// rangeText says in words which values are accepted.
func (t *table) rangeText(most int64) string {
	if most == t.parseMax {
		return t.parseText
	}
	text, _ := t.append(nil, max(-most, t.least), 0, 0, Up, 0)
	text, _ = t.append(append(text, " to "...), most, 0, 0, Down, 0)
	return string(text)
}

func (t *table) inRange(v int64) bool { return t.least <= v && v <= limit }

func tableOf[Q Quantity]() *table {
	switch any(Q(0)).(type) {
	case Angle:
		return angles
	case Volume:
		return volumes
	case Mass:
		return masses
	case Force:
		return forces
	case Pressure:
		return pressures
	case SpringRate:
		return springRates
	case Temperature:
		return temperatures
	case TemperatureDifference:
		return temperatureDifferences
	default:
		return lengths
	}
}
