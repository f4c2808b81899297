package units

// A SpringRate is a whole number of units of 5·10⁻¹⁵ N/in, which hold
// newtons per millimetre (25.4 N/in) to 13 places and pounds-force per inch
// to 2.
type SpringRate int64

// Spring rates to multiply by a whole number.
const (
	NewtonPerMillimetre        SpringRate = 5_080_000_000_000_000
	PoundForcePerInch          SpringRate = 889_644_323_052_100
	KilogramForcePerMillimetre SpringRate = 49_817_782_000_000_000
)

// Untyped scales, for decimal constants.
const (
	NMM   = 5_080_000_000_000_000
	LBFIN = 889_644_323_052_100
)

// The units that a SpringRate is written in.
const (
	InNewtonsPerMillimetre Unit[SpringRate] = iota
	InPoundsForcePerInch
	InKilogramsForcePerMillimetre
	InNewtonsPerInch
)

var springRates = newTable(table{
	quantity: "spring rate",
	goType:   "units.SpringRate",
	examples: `"40.5 N/mm" or "230 lbf/in"`,
	units: []unit{
		{symbol: "N/mm", quanta: int64(NewtonPerMillimetre)},
		{symbol: "lbf/in", names: []string{"lb/in"}, quanta: int64(PoundForcePerInch)},
		{symbol: "kgf/mm", names: []string{"kg/mm"}, quanta: int64(KilogramForcePerMillimetre)},
		{symbol: "N/in", quanta: 200_000_000_000_000}, // has a finite decimal for every value
	},
	parseMax:  400 * int64(NewtonPerMillimetre),
	parseText: "±400 N/mm",
})
