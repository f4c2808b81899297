package units

import "math"

// An Angle is a whole number of microarcseconds, which divide the degree to
// 8 decimal places and the second of arc to 6.
type Angle int64

// Angles to multiply by a whole number, as in 45*units.Degree.
const (
	Microarcsecond Angle = 1
	Arcsecond      Angle = 1_000_000 * Microarcsecond
	Arcminute      Angle = 60 * Arcsecond
	Degree         Angle = 60 * Arcminute
	Turn           Angle = 360 * Degree
)

// Untyped scales, for decimal constants: const seat units.Angle = 44.5 * units.DEG.
const (
	ARCSEC = 1_000_000
	ARCMIN = 60_000_000
	DEG    = 3_600_000_000
)

// The units that an Angle is written in.
const (
	InDegrees Unit[Angle] = iota
	InArcminutes
	InArcseconds
)

var angles = newTable(table{
	quantity: "angle",
	goType:   "units.Angle",
	examples: `"44.5°", "44° 30′", "12 arcmin" or "9.2 arcsec"`,
	units: []unit{
		{symbol: "°", names: []string{"deg", "degree", "degrees", "º"}, tight: true, quanta: int64(Degree), sub: 1 + int(InArcminutes)},
		{symbol: "′", names: []string{"'", "’", "arcmin", "min"}, tight: true, quanta: int64(Arcminute), sub: 1 + int(InArcseconds)},
		{symbol: "″", names: []string{`"`, "”", "''", "arcsec", "sec"}, tight: true, quanta: int64(Arcsecond)},
	},
	ambiguous: map[string]string{
		"mil":  `"mil" as an angle has several sizes: write degrees`,
		"mils": `"mil" as an angle has several sizes: write degrees`,
	},
	parseMax:  1_000_000 * int64(Degree),
	parseText: "±1 000 000°",
})

// Radians is the angle in radians. Its relative error is below 2^-52 (two
// units in the last place at most) for angles to 2.5 million degrees, and
// below 1.5·2^-52 beyond. Out of range it is not-a-number.
func (a Angle) Radians() float64 {
	if !a.InRange() {
		return math.NaN()
	}
	return float64(a) * (math.Pi / (180 * DEG))
}

// AngleFromRadians is x radians to the nearest quantum, as nearly as a
// float64 can say it: its relative error is below 2^-52, and half a quantum
// is added. Not-a-number, infinities and values out of range are a
// [RangeError].
func AngleFromRadians(x float64) (Angle, error) {
	return Nearest(x*(180/math.Pi), InDegrees)
}

// TextDMS writes the angle in degrees, minutes and seconds, the seconds to
// the given number of places (0 to 6), rounded to nearest, ties to even:
// 44.5° is 44°30′00″ to no places.
func (a Angle) TextDMS(places int) string {
	if !a.InRange() {
		return a.String()
	}
	second := &angles.units[InArcseconds]
	places = min(max(places, 0), second.places)
	whole, frac, _ := split(magnitude(int64(a)), second, places, NearestEven, a < 0)
	dst := make([]byte, 0, 32)
	if a < 0 && whole|frac != 0 {
		dst = append(dst, '-')
	}
	dst = append(appendWhole(dst, whole/3600), "°"...)
	minutes, seconds := whole/60%60, whole%60
	dst = append(append(dst, digitPairs[2*minutes:2*minutes+2]...), "′"...)
	if seconds < 10 {
		dst = append(dst, '0')
	}
	dst = appendNumber(dst, seconds, frac, places, false)
	return string(append(dst, "″"...))
}
