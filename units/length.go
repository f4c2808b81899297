package units

// A Length is a whole number of picometres. One inch is 25 400 000 000 of
// them and one millimetre 1 000 000 000, so a manual's millimetres (to 9
// places) and a blade's thousandths (inches to 8 places, binary fractions to
// 1/512 in) are both held exactly and compare with ==.
type Length int64

// Lengths to multiply by a whole number, as in 3*units.Thou.
const (
	Picometre  Length = 1
	Nanometre  Length = 1000 * Picometre
	Micrometre Length = 1000 * Nanometre
	Millimetre Length = 1000 * Micrometre
	Centimetre Length = 10 * Millimetre
	Metre      Length = 1000 * Millimetre

	Microinch Length = 25_400 * Picometre
	Thou      Length = 1000 * Microinch // 0.001 in
	Inch      Length = 1000 * Thou
	Foot      Length = 12 * Inch
)

// Untyped scales, for decimal constants that the compiler holds exactly or
// refuses: const limit units.Length = 0.07 * units.MM.
const (
	NM   = 1_000
	UM   = 1_000_000
	MM   = 1_000_000_000
	THOU = 25_400_000
	IN   = 25_400_000_000
)

// The units that a Length is written in.
const (
	InMillimetres Unit[Length] = iota
	InInches
	InMicrometres
	InThou
	InCentimetres
	InMetres
	InNanometres
	InPicometres
	InMicroinches
	InFeet
)

var lengths = newTable(table{
	quantity: "length",
	goType:   "units.Length",
	examples: `"0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"`,
	units: []unit{
		{symbol: "mm", names: []string{"MM", "millimetre", "millimetres", "millimeter", "millimeters"}, quanta: int64(Millimetre)},
		{symbol: "in", names: []string{`"`, "″", "”", "''", "in.", "IN", "IN.", "inch", "inches", "INCH"}, quanta: int64(Inch)},
		{symbol: "µm", names: []string{"μm", "um", "micrometre", "micrometres", "micrometer", "micrometers", "micron", "microns"}, quanta: int64(Micrometre)},
		{symbol: "thou", names: []string{"THOU"}, quanta: int64(Thou)},
		{symbol: "cm", names: []string{"CM"}, quanta: int64(Centimetre)},
		{symbol: "m", names: []string{"metre", "metres", "meter", "meters"}, quanta: int64(Metre)},
		{symbol: "nm", names: []string{"nanometre", "nanometres"}, quanta: int64(Nanometre)},
		{symbol: "pm", names: []string{"picometre", "picometres"}, quanta: int64(Picometre)},
		{symbol: "µin", names: []string{"μin", "uin", "microinch", "microinches"}, quanta: int64(Microinch)},
		{symbol: "ft", names: []string{"ft.", "foot", "feet"}, quanta: int64(Foot), sub: 1 + int(InInches)},
	},
	ambiguous: map[string]string{
		"mil":    `"mil" is a thousandth of an inch to some and a millimetre to others: write "thou" or "mm"`,
		"mils":   `"mil" is a thousandth of an inch to some and a millimetre to others: write "thou" or "mm"`,
		"tenth":  `a "tenth" is 0.0001 in to some and 0.1 mm to others: write the unit`,
		"tenths": `a "tenth" is 0.0001 in to some and 0.1 mm to others: write the unit`,
	},
	parseMax:  100 * int64(Metre),
	parseText: "±100 m",
})
