package fixes

import "github.com/tenthou/tenthou/units"

const drill units.Length = 25 / 64 * units.IN // want `25 / 64 is 0`

var (
	half    = 1 / 2 * units.Inch         // want `1 / 2 is 0`
	eighth  = 3 / 8 * units.Inch         // want `3 / 8 is 0`
	negated = -(5 / 8 * units.Inch)      // want `5 / 8 is 0`
	third   = 1 / 3 * units.Inch         // want `1 / 3 is 0`
	hex     = 0x19 / 64 * units.IN       // want `0x19 / 64 is 0`
	untyped = 1/2*units.IN + 10*units.MM // want `1 / 2 is 0`
	finer   = 1/2*units.Inch + 1         // want `1 / 2 is 0` `1 has no unit`

	offset units.Length = 1/2*units.IN + 10*units.MM   // want `1 / 2 is 0`
	parens units.Length = (1/2)*(units.IN) + 0         // want `1 / 2 is 0`
	shifts units.Length = 1/2*(units.IN<<1) + (0 << 1) // want `1 / 2 is 0`
	comply units.Length = 1/2*units.IN + ^1            // want `1 / 2 is 0` `\^1 has no unit`
	uneven units.Length = 1 / 3 * units.IN             // want `1 / 3 is 0`
)

func ratios(a, b units.Length, x float64) {
	_ = float64(a / b)          // want `drops its fraction`
	_ = float64((a + b) / b)    // want `drops its fraction`
	_ = x / float64(a/b)        // want `drops its fraction`
	_ = float64((a / (b + b)))  // want `drops its fraction`
	_ = float64(a / units.Thou) // want `drops its fraction`
}
