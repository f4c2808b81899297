package units

// A Temperature is a whole number of ninths of a nanokelvin, counted from
// 0 °C. Both degrees Celsius and degrees Fahrenheit are held to 9 places.
// Two temperatures are not added: their difference is a
// [TemperatureDifference], which may be added to a Temperature.
type Temperature int64

// A TemperatureDifference is a whole number of ninths of a nanokelvin. One
// kelvin is 9 000 000 000 of them, one degree Fahrenheit 5 000 000 000.
type TemperatureDifference int64

// Temperature differences to multiply by a whole number.
const (
	Kelvin           TemperatureDifference = 9_000_000_000
	FahrenheitDegree TemperatureDifference = 5_000_000_000
)

// Untyped scales, for decimal constants: const rise units.TemperatureDifference = 0.5 * units.KELVIN,
// and a Temperature in degrees Celsius in the same way.
const (
	KELVIN  = 9_000_000_000
	CELSIUS = 9_000_000_000
)

// Temperatures that measuring refers to.
const (
	AbsoluteZero Temperature = -273.15 * CELSIUS
	// Reference is 20 °C, the temperature that lengths refer to (ISO 1).
	Reference Temperature = 20 * CELSIUS
)

// The units that a Temperature is written in.
const (
	InCelsius Unit[Temperature] = iota
	InFahrenheit
	InKelvin
)

// The units that a TemperatureDifference is written in.
const (
	InKelvins Unit[TemperatureDifference] = iota
	InFahrenheitDegrees
)

var temperatures = newTable(table{
	quantity: "temperature",
	goType:   "units.Temperature",
	examples: `"20 °C" or "68 °F"`,
	units: []unit{
		{symbol: "°C", names: []string{"C", "ºC", "℃", "degC", "deg C", "celsius"}, quanta: int64(Kelvin)},
		{symbol: "°F", names: []string{"F", "ºF", "℉", "degF", "deg F", "fahrenheit"}, quanta: int64(FahrenheitDegree), zero: -160_000_000_000},
		{symbol: "K", names: []string{"kelvin", "kelvins"}, quanta: int64(Kelvin), zero: int64(AbsoluteZero)},
	},
	ambiguous: map[string]string{
		"°":   `degrees of what? write "°C" or "°F"`,
		"deg": `degrees of what? write "°C" or "°F"`,
	},
	parseMax:  100_000 * int64(Kelvin),
	parseText: "-273.15 °C to 100 000 °C",
	least:     int64(AbsoluteZero),
})

var temperatureDifferences = newTable(table{
	quantity: "temperature difference",
	goType:   "units.TemperatureDifference",
	examples: `"60 K" or "100 F°"`,
	units: []unit{
		{symbol: "K", names: []string{"kelvin", "kelvins", "C°", "°C"}, quanta: int64(Kelvin)},
		{symbol: "F°", names: []string{"°F"}, quanta: int64(FahrenheitDegree)},
	},
	parseMax:  100_000 * int64(Kelvin),
	parseText: "±100 000 K",
})

// Add is the temperature d above t, exactly; out of range where either is,
// or where that is below absolute zero.
func (t Temperature) Add(d TemperatureDifference) Temperature {
	if !t.InRange() {
		return outOfRange
	}
	if sum := Temperature(addChecked(int64(t), int64(d))); sum.InRange() {
		return sum
	}
	return outOfRange
}

// Sub is how much t is above s, exactly; out of range where either is.
func (t Temperature) Sub(s Temperature) TemperatureDifference {
	if !t.InRange() || !s.InRange() {
		return outOfRange
	}
	return TemperatureDifference(int64(t) - int64(s))
}
