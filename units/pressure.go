package units

// A Pressure is a whole number of units of 5·10⁻¹⁵ N/in², which hold
// kilopascals (0.645 16 N/in²) to 9 places, bar to 11 and pounds-force per
// square inch to 2. Whether it is above the atmosphere or absolute is for
// the name of the reading to say.
type Pressure int64

// Pressures to multiply by a whole number.
const (
	Kilopascal Pressure = 129_032_000_000_000
	Bar        Pressure = 100 * Kilopascal
	Megapascal Pressure = 1000 * Kilopascal
	PSI        Pressure = 889_644_323_052_100 // one pound-force per square inch
)

// Untyped scales, for decimal constants.
const (
	KPA = 129_032_000_000_000
	BAR = 12_903_200_000_000_000
	MPA = 129_032_000_000_000_000
)

// The units that a Pressure is written in.
const (
	InKilopascals Unit[Pressure] = iota
	InBar
	InPSI
	InMegapascals
	InKilogramsForcePerSquareCentimetre
	InNewtonsPerSquareInch
)

var pressures = newTable(table{
	quantity: "pressure",
	goType:   "units.Pressure",
	examples: `"950 kPa", "9.5 bar" or "138 psi"`,
	units: []unit{
		{symbol: "kPa", quanta: int64(Kilopascal)},
		{symbol: "bar", quanta: int64(Bar)},
		{symbol: "psi", names: []string{"PSI", "lbf/in²", "lbf/in2", "lb/in²", "lb/in2"}, quanta: int64(PSI)},
		{symbol: "MPa", names: []string{"N/mm²", "N/mm2"}, quanta: int64(Megapascal)},
		{symbol: "kgf/cm²", names: []string{"kgf/cm2", "kg/cm²", "kg/cm2"}, quanta: 12_653_716_628_000_000},
		{symbol: "N/in²", names: []string{"N/in2"}, quanta: 200_000_000_000_000}, // has a finite decimal for every value
	},
	parseMax:  17_000 * int64(Kilopascal),
	parseText: "±17 MPa",
})
