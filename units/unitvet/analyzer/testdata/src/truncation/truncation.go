package truncation

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

var (
	lost   units.Length = 25 / 64 * units.IN                  // want `25 / 64 is 0: whole constants divide to a whole number; multiply first and divide last, or write 25.0/64 with a scale such as units.MM`
	cut    units.Length = 65 / 64 * units.IN                  // want `65 / 64 is 1: whole constants divide to a whole number`
	third  units.Length = units.IN / 3                        // want `units.IN / 3 is 8466666666: whole constants divide to a whole number; write the decimal that is meant, or divide so that nothing is left over`
	half                = 1 / 2 * units.Inch                  // want `1 / 2 is 0`
	eighth              = 3 / 8 * units.Inch                  // want `3 / 8 is 0`
	mixed               = (units.Inch + units.Millimetre) / 7 // want `is 3771428571`
	signed              = -1 / 2 * units.Inch                 // want `-1 / 2 is 0`
	right               = units.Inch * (1 / 2)                // want `1 / 2 is 0`
	odd                 = 1 / 3 * units.Inch                  // want `1 / 3 is 0`
	rune_               = 'a' / 2 * units.Thou                // want `'a' / 2 is 48: .* or write 1.0\*'a'/2`
	hex                 = 0x19 / 64 * units.IN                // want `0x19 / 64 is 0: .* or write 1.0\*0x19/64`
)

const (
	untypedLength = 25 / 64 * units.IN // want `25 / 64 is 0`
	small         = 1 / (2 * units.MM) // want `1 / \(2 \* units.MM\) is 0`
	number        = 25 / 64            // no quantity here
	tenth         = units.IN / 10
)

func refused(l units.Length, n int64) {
	_ = 25 / 64 * l                          // want `25 / 64 is 0`
	_ = 7 / 2 * l                            // want `7 / 2 is 3`
	_ = l * (7 / 2)                          // want `7 / 2 is 3`
	_ = number * units.Inch                  // want `number, declared as 25 / 64, is 0: whole constants divide to a whole number`
	_ = tenth / 3 * l / units.Length(n)      // want `tenth / 3 is 846666666` `product`
	_ = units.Length(25 / 64)                // want `25 / 64 is 0`
	_ = units.Length(25 / 64 * n)            // want `25 / 64 is 0`
	_ = units.Length(7 / 2 * n)              // want `7 / 2 is 3`
	_ = units.Length(float64(25/64) * 3.0)   // want `25 / 64 is 0`
	_ = units.Length(units.Inch / 3)         // want `units.Inch / 3 is`
	_ = int64(units.Inch / 3)                // want `units.Inch / 3 is`
	_ = int64(units.Inch / units.Millimetre) // want `units.Inch / units.Millimetre is 25`
	_ = int64(25 / 64 * units.IN)            // want `25 / 64 is 0`
	_ = l > 25/64*units.IN                   // want `25 / 64 is 0`
	_ = 1 / 2 % 3 * units.IN                 // want `1 / 2 is 0`
	_ = +(1 / 2) * units.IN                  // want `1 / 2 is 0`
	_ = ^(1 / 2) * units.IN                  // want `1 / 2 is 0`
	_ = len("ab") + 1/2*units.IN             // want `1 / 2 is 0`
	_ = l > 1/2                              // want `1 / 2 is 0`
	_ = l.Add(1 / 2)                         // want `1 / 2 is 0`
	_ = float64(l) / (1 / 2 * units.MM)      // want `1 / 2 is 0`
}

func accepted(l units.Length, n int) {
	const exact units.Length = 25.0 / 64 * units.IN
	_ = exact
	_ = units.Inch / 64
	_ = 25 * units.Inch / 64
	_ = 6 / 3 * units.Inch
	_ = 25.0 / 5 * units.Inch
	_ = 6.0 / 3 * units.IN
	_ = l / 3
	_ = l / 2 * 3
	_ = 1 / 2 * n
	_ = float64(1 / 2)
	_ = number * n
	_ = units.Length(math.MaxInt64 / 2)
	_ = units.Length(7 / 2)
	_ = l.Scale(1/2, 7)
	_ = n > 1/2 && l > units.Thou
	var u units.Unit[units.Length] = 7 / 2
	_ = l.Text(u, 7/2)
}
