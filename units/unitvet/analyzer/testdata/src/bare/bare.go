package bare

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

const (
	five               = 5
	ten                = 2 * five
	five_              = units.Length(5)
	limit              = 0.07 * units.MM
	typed units.Length = 70 // want `70 has no unit: write 70\*units.Millimetre or whichever unit it is in, or units.Length\(70\) if quanta are meant`
	first units.Length = iota
)

var (
	global units.Length      = 70        // want `70 has no unit`
	sum    units.Length      = 35 + 35   // want `35 \+ 35 has no unit: write \(35 \+ 35\)\*units.Millimetre or .*units.Length\(35 \+ 35\)`
	neg    units.Length      = -5        // want `-5 has no unit`
	paren  units.Length      = (5)       // want `5 has no unit: write 5\*units.Millimetre or whichever unit it is in, or units.Length\(5\)`
	big    units.Length      = 1 << 20   // want `1 << 20 has no unit`
	letter units.Length      = 'a'       // want `'a' has no unit`
	whole  units.Length      = 5.0       // want `5.0 has no unit`
	most   units.Length      = max(2, 3) // want `max\(2, 3\) has no unit`
	angle  units.Angle       = 45        // want `45 has no unit: write 45\*units.Degree`
	glow   units.Luminance   = 20        // want `20 has no unit: write 20 times a unit, or units.Luminance\(20\)`
	room   units.Temperature = 20        // want `20 has no unit: write 20\*units.CELSIUS`
)

type spec struct {
	limit units.Length
	n     int
}

func clearance(l units.Length) units.Length { return l }
func all(l ...units.Length)                 {}
func read[Q units.Quantity](q Q)            {}

func refused(l units.Length, t units.Temperature, ch chan units.Length) units.Length {
	clearance(5)                          // want `5 has no unit`
	all(units.Thou, 5, 0)                 // want `5 has no unit`
	clearance(five)                       // want `five has no unit: write five\*units.Millimetre`
	clearance(ten + 1)                    // want `ten \+ 1 has no unit`
	_ = l.Add(5)                          // want `5 has no unit`
	_ = t.Add(5)                          // want `5 has no unit: write 5\*units.Kelvin`
	_ = l > 5                             // want `5 has no unit`
	_ = 5 <= l                            // want `5 has no unit`
	_ = l == 5                            // want `5 has no unit`
	_ = l + 5                             // want `5 has no unit`
	_ = 5 - l                             // want `5 has no unit`
	_ = 2*l - 5                           // want `5 has no unit`
	_ = units.Thou + 5                    // want `5 has no unit`
	_ = units.Length(3)*units.Thou + 5    // want `5 has no unit`
	l = 5                                 // want `5 has no unit`
	l += 5                                // want `5 has no unit`
	l -= five                             // want `five has no unit`
	l++                                   // want `l\+\+ steps by one quantum: write l \+= 1\*units.Millimetre or whichever`
	l--                                   // want `l-- steps by one quantum: write l -= 1\*units.Millimetre`
	_ = spec{5, 5}                        // want `5 has no unit`
	_ = spec{limit: 5, n: 5}              // want `5 has no unit`
	_ = []units.Length{1: 5}              // want `5 has no unit`
	_ = [...]units.Length{5}              // want `5 has no unit`
	_ = map[units.Length]int{5: 5}        // want `5 has no unit`
	_ = map[units.Length]int{}[5]         // want `5 has no unit`
	_ = max(l, 5)                         // want `5 has no unit`
	read[units.Length](5)                 // want `5 has no unit`
	ch <- 5                               // want `5 has no unit`
	var sum units.Length = 3*units.MM + 5 // want `5 has no unit`
	_ = sum
	switch l {
	case 5: // want `5 has no unit`
	}
	func() units.Length { return 5 }() // want `5 has no unit`
	return 5                           // want `5 has no unit`
}

func accepted(l units.Length, n int64, r units.Rounding) units.Length {
	clearance(0)
	clearance(five * units.Thou)
	clearance(limit)
	clearance(2 * units.MM)
	clearance(five_)
	clearance(units.Length(n))
	clearance(first)
	clearance(math.MaxInt64)
	_ = l > 0
	_ = l == 0.0
	_ = l < -0
	_ = l + 0
	_ = 2 * l
	_ = +l - -l
	_ = *(&l)
	_ = l ^ l
	_ = ^l
	_ = min(2, 3) * l
	_ = min(units.Length(n), 2) * l
	_ = l / 2
	_ = l % 2
	_ = l%2 == 1
	_ = l&1 == 1
	_ = l << 3
	_ = units.MM << 3
	_ = l &^ 3
	_ = units.Length(63500000)
	_ = units.Length(63500000) > 5*units.Thou
	_ = units.Length(-five)
	_ = int64(l) + 5
	_ = int64(l/units.Thou) > 5
	_ = float64(l) > 5
	_ = []int{5: 5}
	_ = spec{n: 5}
	_ = l.Text(5, 5)
	_ = l.Scale(25, 64)
	_ = units.Even == 1
	_ = n + 5*units.MM + 5
	_ = n > 5
	_ = r > 1
	l *= 2
	l /= 2
	l %= 2
	l <<= 2
	n += 5
	n++
	for i := range 5 {
		l += units.Length(i) * units.Thou
	}
	var none units.Length
	_ = none
	return 0
}
