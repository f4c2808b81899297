package units

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(strings.ReplaceAll(s, " ", ""))
	if !ok {
		panic(s)
	}
	return r
}

// The table in the package comment, computed again from the definitions of
// the units: 1 in = 25.4 mm and 1 lb = 0.453 592 37 kg (24 FR 5348, 1959),
// 1 kgf = 9.806 65 N (3rd CGPM, 1901), 1 K = 1.8 °F.
func TestTable_holds(t *testing.T) {
	const lbf = "4.448 221 615 260 5"
	mul := func(a, b string) string { return new(big.Rat).Mul(frac(a), frac(b)).RatString() }
	require.Equal(t, rat(lbf), rat(mul("0.453 592 37", "9.806 65")))
	inch3 := mul("2.54", mul("2.54", "2.54"))
	for _, c := range []struct {
		quantum string // in the first unit of the type
		unit    *unit
		name    string
		size    string // in the same
		places  int
	}{
		{"1e-9", row(InMillimetres), "mm", "1", 9},
		{"1e-9", row(InInches), "in", "25.4", 8},
		{"1e-9", row(InMicrometres), "µm", "1e-3", 6},
		{"1e-9", row(InThou), "thou", "0.0254", 5},
		{"1e-9", row(InCentimetres), "cm", "10", 10},
		{"1e-9", row(InMetres), "m", "1000", 12},
		{"1e-9", row(InNanometres), "nm", "1e-6", 3},
		{"1e-9", row(InPicometres), "pm", "1e-9", 0},
		{"1e-9", row(InMicroinches), "µin", "25.4e-6", 2},
		{"1e-9", row(InFeet), "ft", mul("25.4", "12"), 8},
		{"1/3600000000", row(InDegrees), "°", "1", 8},
		{"1/3600000000", row(InArcminutes), "′", "1/60", 7},
		{"1/3600000000", row(InArcseconds), "″", "1/3600", 6},
		{"1e-11", row(InCubicCentimetres), "cm³", "1", 11},
		{"1e-11", row(InCubicInches), "in³", inch3, 5},
		{"1e-11", row(InLitres), "L", "1000", 14},
		{"1e-11", row(InCubicMillimetres), "mm³", "1e-3", 8},
		{"1e-12", row(InGrams), "g", "1", 12},
		{"1e-12", row(InKilograms), "kg", "1000", 15},
		{"1e-12", row(InOunces), "oz", "453.59237/16", 3},
		{"1e-12", row(InPounds), "lb", "453.59237", 7},
		{"1e-12", row(InGrains), "grain", "453.59237/7000", 4},
		{"1e-12", row(InMilligrams), "mg", "1e-3", 9},
		{"5e-15", row(InNewtons), "N", "1", 14},
		{"5e-15", row(InPoundsForce), "lbf", lbf, 2},
		{"5e-15", row(InKilogramsForce), "kgf", "9.806 65", 10},
		{"5e-15", row(InKilonewtons), "kN", "1000", 17},
		// 1 N/in² is 1/645.16 N/mm², and 1 N/mm² is 1000 kPa.
		{mul("5e-15", "1000/645.16"), row(InKilopascals), "kPa", "1", 9},
		{mul("5e-15", "1000/645.16"), row(InBar), "bar", "100", 11},
		{mul("5e-15", "1000/645.16"), row(InPSI), "psi", mul(lbf, "1000/645.16"), 2},
		{mul("5e-15", "1000/645.16"), row(InMegapascals), "MPa", "1000", 12},
		{mul("5e-15", "1000/645.16"), row(InKilogramsForcePerSquareCentimetre), "kgf/cm²", "98.0665", 6},
		{mul("5e-15", "1000/645.16"), row(InNewtonsPerSquareInch), "N/in²", "1000/645.16", 14},
		{"5e-15/25.4", row(InNewtonsPerMillimetre), "N/mm", "1", 13},
		{"5e-15/25.4", row(InPoundsForcePerInch), "lbf/in", lbf + "/25.4", 2},
		{"5e-15/25.4", row(InKilogramsForcePerMillimetre), "kgf/mm", "9.806 65", 9},
		{"5e-15/25.4", row(InNewtonsPerInch), "N/in", "1/25.4", 14},
		{"1/9000000000", row(InKelvins), "K", "1", 9},
		{"1/9000000000", row(InFahrenheitDegrees), "F°", "1/1.8", 9},
		{"1/9000000000", row(InCelsius), "°C", "1", 9},
		{"1/9000000000", row(InFahrenheit), "°F", "1/1.8", 9},
		{"1/9000000000", row(InKelvin), "K", "1", 9},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.name, c.unit.symbol)
			quanta := new(big.Rat).Quo(frac(c.size), frac(c.quantum))
			require.Equal(t, quanta.RatString(), new(big.Rat).SetInt64(c.unit.quanta).RatString())
			places := 0
			for q := quanta; ; places++ {
				if q = new(big.Rat).Quo(q, rat("10")); !q.IsInt() {
					break
				}
			}
			require.Equal(t, places, c.unit.places)
			require.Equal(t, c.places, places)
		})
	}
	// Fractions: 1/512 in but not 1/1024 in; an eighth of an ounce and a thousandth of it.
	require.Zero(t, int64(Inch)%512)
	require.NotZero(t, int64(Inch)%1024)
	require.Zero(t, int64(Ounce)%8)
	require.Zero(t, int64(Ounce)%1000)
	require.Equal(t, 7000*Grain, Pound)
}

func row[Q Quantity](u Unit[Q]) *unit { return tableOf[Q]().unit(uint8(u)) }

// frac reads a/b of decimals.
func frac(s string) *big.Rat {
	if over, under, ok := strings.Cut(s, "/"); ok && strings.ContainsAny(s, ".e") {
		return new(big.Rat).Quo(rat(over), rat(under))
	}
	return rat(s)
}

// The ranges that the package comment states.
func TestTable_ranges(t *testing.T) {
	require.EqualValues(t, math.Exp2(61), int64(limit))
	for _, c := range []struct {
		got, least, most float64
	}{
		{Length(limit).Float(InMetres) / 1000, 2305, 2306},
		{Angle(limit).Float(InDegrees) / 1e6, 640, 641},
		{Volume(limit).Float(InLitres) / 1000, 23, 23.1},
		{Mass(limit).Float(InKilograms) / 1000, 2.3, 2.4},
		{Force(limit).Float(InKilonewtons), 11.5, 11.6},
		{Pressure(limit).Float(InMegapascals), 17.8, 17.9},
		{SpringRate(limit).Float(InNewtonsPerMillimetre), 453, 454},
		{TemperatureDifference(limit).Float(InKelvins) / 1e6, 256, 257},
		{Temperature(limit).Float(InCelsius) / 1e6, 256, 257},
		{AbsoluteZero.Float(InCelsius), -273.15, -273.15},
	} {
		require.True(t, c.least <= c.got && c.got <= c.most, "%v", c)
	}
	require.Greater(t, int64(math.MaxInt64)/lengths.parseMax, int64(90_000), "tens of thousands of lengths can be added with +")
	for _, s := range suites {
		require.GreaterOrEqual(t, int64(math.MaxInt64)/s.table().parseMax, int64(4), "four of any type can be")
	}
}

// What the engine takes for granted of every table.
func TestTable_inOrder(t *testing.T) {
	each(t, func(s tester, t *testing.T) {
		table := s.table()
		require.LessOrEqual(t, table.parseMax, int64(limit))
		require.Zero(t, table.units[0].zero, "the first unit counts from the quanta's zero")
		require.Equal(t, -1, table.above(0))
		require.Less(t, len(table.units), noUnit)
		names := map[string]string{}
		add := func(name, symbol string) {
			require.NotEmpty(t, name)
			require.Equal(t, trimSpaces(name), name)
			require.False(t, strings.ContainsAny(name[:1], "0123456789+-.,/"))
			require.False(t, strings.HasPrefix(name, "−"))
			require.NotContains(t, table.ambiguous, name)
			require.NotContains(t, names, name)
			names[name] = symbol
		}
		whole := false
		for i := range table.units {
			u := &table.units[i]
			add(u.symbol, u.symbol)
			for _, name := range u.names {
				add(name, u.symbol)
			}
			// No value in range has a significand that overflows, see collect.
			digits := new(big.Int).Mul(big.NewInt(limit), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(u.finite)), nil))
			digits.Quo(digits, big.NewInt(u.quanta))
			require.True(t, digits.IsUint64(), "%s", u.symbol)
			require.LessOrEqual(t, u.finite, placesMax)
			// A unit has a finite decimal for every value if it has for one quantum.
			if p := new(big.Int).Exp(big.NewInt(10), big.NewInt(placesMax), nil); p.Mod(p, big.NewInt(u.quanta)).Sign() == 0 {
				whole = true
			}
			if u.sub > 0 {
				require.Less(t, table.units[u.sub-1].quanta, u.quanta)
				require.Zero(t, u.quanta%table.units[u.sub-1].quanta)
				require.Zero(t, u.zero)
			}
		}
		require.True(t, whole, "a unit has a finite decimal for every value")
		for name := range table.ambiguous {
			_, want, kind := table.lookup(name)
			require.Equal(t, ErrAmbiguous, kind)
			require.NotEmpty(t, want)
		}
	})
}
