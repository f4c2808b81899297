package units

// A Force is a whole number of units of 5·10⁻¹⁵ N, which hold newtons to 14
// places, kilograms-force (9.806 65 N) to 10 and pounds-force
// (4.448 221 615 260 5 N) to 2.
type Force int64

// Forces to multiply by a whole number.
const (
	Newton        Force = 200_000_000_000_000
	KilogramForce Force = 1_961_330_000_000_000
	PoundForce    Force = 889_644_323_052_100
)

// Untyped scales, for decimal constants.
const (
	NEWTON = 200_000_000_000_000
	KGF    = 1_961_330_000_000_000
	LBF    = 889_644_323_052_100
)

// The units that a Force is written in.
const (
	InNewtons Unit[Force] = iota
	InPoundsForce
	InKilogramsForce
	InKilonewtons
)

var forces = newTable(table{
	quantity: "force",
	goType:   "units.Force",
	examples: `"320 N", "72 lbf" or "32.5 kgf"`,
	units: []unit{
		{symbol: "N", names: []string{"newton", "newtons"}, quanta: int64(Newton)},
		{symbol: "lbf", quanta: int64(PoundForce)},
		{symbol: "kgf", names: []string{"kp"}, quanta: int64(KilogramForce)},
		{symbol: "kN", quanta: 1000 * int64(Newton)},
	},
	ambiguous: map[string]string{
		"lb":  `"lb" is a mass: for a load write "lbf"`,
		"lbs": `"lbs" is a mass: for a load write "lbf"`,
		"kg":  `"kg" is a mass: for a load write "kgf"`,
		"g":   `"g" is a mass: for a load write "N"`,
	},
	parseMax:  10_000 * int64(Newton),
	parseText: "±10 kN",
})
