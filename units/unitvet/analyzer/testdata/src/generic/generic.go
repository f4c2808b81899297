package generic

import "github.com/tenthou/tenthou/units"

type both interface{ units.Length | units.Angle }

type nested interface {
	comparable
	units.Quantity
}

type widened interface{ units.Length | int64 }

func refused[Q units.Quantity, B both, N nested, I interface{ both }](a, b Q, c B, d N, e I) Q {
	_ = a * b     // want `a times b is a product of two quantities, not a Q`
	_ = c * c     // want `product`
	_ = d * d     // want `product`
	_ = e * e     // want `product`
	_ = a / b     // want `a divided by b is a plain number, not a Q`
	_ = a > 5     // want `5 has no unit: write 5 times a unit, or Q\(5\) if quanta are meant`
	a++           // want `a\+\+ steps by one quantum: write a \+= 1 times a unit`
	_ = 1 / 2 * a // want `1 / 2 is 0`
	return 5      // want `5 has no unit`
}

func accepted[Q units.Quantity, W widened, T ~int64, A any](a, b Q, w W, t T, n int) Q {
	_ = w * w
	_ = t * t
	_ = w > 5
	_ = 2 * a
	_ = Q(n) * a
	_ = int64(a / b)
	_ = a % b
	_ = a > 0
	return a / Q(n)
}
