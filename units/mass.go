package units

// A Mass is a whole number of picograms, which hold grams to 12 places,
// ounces (28.349 523 125 g) to 3 places and eighths, pounds to 7 and grains to 4.
type Mass int64

// Masses to multiply by a whole number.
const (
	Milligram Mass = 1_000_000_000
	Gram      Mass = 1000 * Milligram
	Kilogram  Mass = 1000 * Gram
	Grain     Mass = 64_798_910_000
	Ounce     Mass = 28_349_523_125_000
	Pound     Mass = 16 * Ounce
)

// Untyped scales, for decimal constants.
const (
	GRAM  = 1_000_000_000_000
	OUNCE = 28_349_523_125_000
	POUND = 453_592_370_000_000
)

// The units that a Mass is written in.
const (
	InGrams Unit[Mass] = iota
	InKilograms
	InOunces
	InPounds
	InGrains
	InMilligrams
)

var masses = newTable(table{
	quantity: "mass",
	goType:   "units.Mass",
	examples: `"512.5 g", "1.2 kg", "1/4 oz" or "2.5 lb"`,
	units: []unit{
		{symbol: "g", names: []string{"gram", "grams"}, quanta: int64(Gram)},
		{symbol: "kg", names: []string{"kilogram", "kilograms"}, quanta: int64(Kilogram)},
		{symbol: "oz", names: []string{"oz.", "ounce", "ounces"}, quanta: int64(Ounce)},
		{symbol: "lb", names: []string{"lb.", "lbs", "lbs.", "pound", "pounds"}, quanta: int64(Pound), sub: 1 + int(InOunces)},
		{symbol: "grain", names: []string{"grains"}, quanta: int64(Grain)},
		{symbol: "mg", names: []string{"milligram", "milligrams"}, quanta: int64(Milligram)},
	},
	ambiguous: map[string]string{
		"gr":  `"gr" is a grain to some and a gram to others: write "grain" or "g"`,
		"gr.": `"gr." is a grain to some and a gram to others: write "grain" or "g"`,
	},
	parseMax:  2000 * int64(Kilogram),
	parseText: "±2 000 kg",
})
