package ratio

import "github.com/tenthou/tenthou/units"

type count int32

func refused(a, b units.Length, n int) units.Length {
	_ = a / b                                // want `a divided by b is a plain number, not a units.Length: write int64\(a / b\) for whole times, float64\(a\) / float64\(b\) for the ratio`
	_ = (a + b) / b                          // want `write int64\(\(a \+ b\) / b\) for whole times, float64\(a \+ b\) / float64\(b\)`
	_ = a / units.Millimetre                 // want `a divided by units.Millimetre is a plain number`
	_ = a / units.MM                         // want `a divided by units.MM is a plain number`
	_ = units.Inch / units.Thou              // want `plain number`
	var r units.Length = units.IN / units.MM // want `units.IN divided by units.MM is a plain number`
	_ = r
	_ = a / b * units.Thou  // want `a divided by b`
	_ = units.Length(a / b) // want `plain number`
	_ = a.Add(a / b)        // want `plain number`
	if a/b == 3 {           // want `plain number`
		a /= b // want `a divided by b is a plain number`
	}
	a /= units.MM           // want `plain number`
	_ = 5 / a               // want `5 divided by a, a plain number by a quantity, is not a units.Length`
	_ = units.Length(n) / a // want `units.Length\(n\) divided by a, a plain number by a quantity`
	_ = []any{a / b}        // want `plain number`
	_ = any(a / b)          // want `plain number`
	return a / b            // want `plain number`
}

func floats(a, b units.Length, x float64) {
	_ = float64(a / b)        // want `a / b drops its fraction before float64 sees it: write float64\(a\) / float64\(b\)`
	_ = float32((a + b) / b)  // want `write float32\(a \+ b\) / float32\(b\)`
	_ = x / float64(a/b)      // want `drops its fraction`
	_ = -float64(a / (b + b)) // want `drops its fraction`
	_ = float64((a / b))      // want `drops its fraction`
	_ = float64(a / units.MM) // want `write float64\(a\) / float64\(units.MM\)`
}

func accepted(a, b units.Length, n int, x float64) {
	_ = int64(a / b)
	_ = int(a / units.Millimetre)
	_ = count(a / b)
	_ = int64((a / b))
	_ = uint64(a / units.MM)
	_ = units.Length(int64(a/b)) * units.Thou
	_ = int64(units.Inch / units.Thou)
	_ = a % b
	_ = a % units.Thou
	_ = a % units.MM
	a %= b
	_ = a / 2
	_ = a / units.Length(n)
	_ = (a + b) / units.Length(len("ab"))
	_ = units.Inch / 4
	_ = units.Length(n) / 2
	_ = float64(a) / float64(b)
	_ = float64(a) / units.MM
	a /= 2
	a /= units.Length(n)
	x /= x
	_ = units.IN / units.THOU * units.Micrometre
}
