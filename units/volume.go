package units

// A Volume is a whole number of units of 10 femtolitres (10⁻¹¹ cm³), which
// hold cubic centimetres to 11 places and cubic inches (16.387 064 cm³) to 5.
type Volume int64

// Volumes to multiply by a whole number.
const (
	CubicMillimetre Volume = 100_000_000
	CubicCentimetre Volume = 1000 * CubicMillimetre
	Litre           Volume = 1000 * CubicCentimetre
	CubicInch       Volume = 1_638_706_400_000
)

// Untyped scales, for decimal constants.
const (
	CM3 = 100_000_000_000
	IN3 = 1_638_706_400_000
)

// The units that a Volume is written in.
const (
	InCubicCentimetres Unit[Volume] = iota
	InCubicInches
	InLitres
	InCubicMillimetres
)

var volumes = newTable(table{
	quantity: "volume",
	goType:   "units.Volume",
	examples: `"45.0 cm³", "0.5 L" or "30.5 in³"`,
	units: []unit{
		{symbol: "cm³", names: []string{"cm3", "cc", "ml", "mL"}, quanta: int64(CubicCentimetre)},
		{symbol: "in³", names: []string{"in3", "cu in", "cu. in.", "cubic inches"}, quanta: int64(CubicInch)},
		{symbol: "L", names: []string{"l", "litre", "litres", "dm³", "dm3"}, quanta: int64(Litre)},
		{symbol: "mm³", names: []string{"mm3"}, quanta: int64(CubicMillimetre)},
	},
	parseMax:  9000 * int64(Litre),
	parseText: "±9 000 L",
})
