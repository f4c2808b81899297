package product

import "github.com/tenthou/tenthou/units"

type piston struct{ bore, stroke units.Length }

func length() units.Length { return units.Thou }

func refused(a, b units.Length, t units.Angle, p *piston, list []units.Length) {
	_ = a * b                     // want `a times b is a product of two quantities, not a units.Length: make one factor a plain number, as in 3\*x or units.Length\(n\)\*x, or multiply as float64`
	_ = a * units.Millimetre      // want `a times units.Millimetre is a product of two quantities`
	_ = units.Thou * a            // want `units.Thou times a is a product`
	_ = a * units.MM              // want `a times units.MM is a product`
	_ = units.Thou * units.MM     // want `units.Thou times units.MM is a product`
	_ = p.bore * p.stroke         // want `p.bore times p.stroke is a product`
	_ = list[0] * list[1]         // want `product`
	_ = length() * length()       // want `product`
	_ = (a + b) * (a - b)         // want `\(a \+ b\) times \(a - b\) is a product`
	_ = -a * b                    // want `product`
	_ = 2 * a * b                 // want `2 \* a times b is a product`
	_ = (2 * a) * (b / 2)         // want `product`
	_ = t * units.Degree          // want `t times units.Degree is a product of two quantities, not a units.Angle`
	_ = a.Abs() * b               // want `product`
	_ = min(a, b) * b             // want `product`
	_ = a * (b << 1)              // want `product`
	_ = a % b * b                 // want `product`
	a *= b                        // want `a times b is a product`
	a *= units.Millimetre         // want `product`
	a *= b + b                    // want `a times \(b \+ b\) is a product`
	_ = (a * b) * units.Length(3) // want `a times b is a product`
}

// A conversion does not make a plain number of a length, nor a length of a number.
func converted(a, b units.Length, t units.Angle, n int) {
	_ = units.Length(int64(a)) * b          // want `product`
	_ = units.Length(float64(a)*1.5) * b    // want `product`
	_ = units.Length(t) * a                 // want `product`
	_ = units.Length(int64(n)*units.MM) * a // want `product`
	_ = units.Length(n) * a
	_ = units.Length(float64(n)*1.5) * a
	_ = units.Length(int64(a/b)) * a
	_ = units.Length(float64(a)/float64(b)*100) * a
	_ = units.Length(63500000) * a
	_ = units.Length(len("ab")) * a
}

const (
	count                = 3
	half                 = 0.5 * units.MM
	limit                = count * units.MM
	squared units.Length = limit * 2 * half / 1_000_000_000_000 // want `product`
)

func constants(a units.Length) {
	_ = a * limit // want `a times limit is a product`
	_ = a * count
	_ = count * units.Thou
	var square units.Length = 1 * units.DEG * units.DEG / 1_000_000_000_000 // want `1 \* units.DEG times units.DEG is a product of two quantities, not a units.Length`
	_ = square
}

func accepted(a, b units.Length, n int, x float64) {
	_ = 2 * a
	_ = a * 2
	_ = -1 * a
	_ = 'a' * a
	_ = 3 * units.Thou
	_ = 2 * 3 * units.Thou
	_ = units.Thou * (1 << 4)
	_ = units.Length(n) * units.Thou
	_ = units.Thou * units.Length(n)
	_ = units.Length(n) * 2 * units.Thou
	_ = units.Length(n+1) * units.Thou
	_ = (units.Length(n) + 1) * units.Thou
	_ = units.Length(n) * units.MM
	_ = units.Length(n) * units.Length(n+1) * units.Thou
	_ = a % 2 * b
	_ = 0.07 * units.MM
	_ = float64(a) * float64(b)
	_ = float64(a) / units.MM * float64(b) / units.MM
	_ = float64(a) * float64(b) / (units.MM * units.MM)
	_ = int64(a) * int64(b) / int64(a+b)
	_ = a.Scale(25, 64)
	a *= 2
	a *= units.Length(n)
	n *= n
	x *= x
	p := &a
	_ = 2 * *p
}

type bore units.Length // a user's own type is not the package's

func own(a, b bore) bore { return a * b }
