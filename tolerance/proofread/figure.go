package proofread

import (
	"math/bits"

	"github.com/tenthou/tenthou/units"
)

// maxDigits bounds the figures whose digits are tried: a figure of more can't
// be changed without leaving 64 bits.
const maxDigits = 15

var pow10 = [...]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18}

// figure is a decimal number as printed, m·10^-places of a unit.
type figure[Q units.Quantity] struct {
	unit   units.Unit[Q]
	zero   int64 // what 0 of the unit is, in quanta
	m      uint64
	minus  bool
	places int
}

// figureOf takes a printed value apart; ok is false for fractions, descending
// units and what isn't a whole number of its steps.
func figureOf[Q units.Quantity](w units.Written[Q]) (f figure[Q], ok bool) {
	f = figure[Q]{unit: w.Unit, zero: zeroOf(w.Unit), places: min(int(w.Places), w.Unit.Places())}
	if w.Denominator != 0 || w.Compound {
		return f, false
	}
	off, step := int64(w.Value)-f.zero, f.step(f.places)
	f.m, f.minus = apart(int64(w.Value), f.zero)/uint64(step), off < 0
	return f, off%step == 0 && f.m < pow10[maxDigits]
}

// step is one unit in the given place, in quanta.
func (f *figure[Q]) step(places int) int64 {
	return int64(units.Written[Q]{Unit: f.unit, Places: uint8(places)}.Step())
}

// value is m·10^-places of the figure's unit, with the figure's sign. places
// below zero stand for zeros before the point.
func (f *figure[Q]) value(m uint64, places int) (v shown, ok bool) {
	zeros := max(-places, 0)
	if places = max(places, 0); places > f.unit.Places() || zeros >= len(pow10) {
		return v, false
	}
	over, step := bits.Mul64(uint64(f.step(places)), pow10[zeros])
	hi, lo := bits.Mul64(m, step)
	const most = 1 << 61
	if over != 0 || hi != 0 || lo > most || step > most {
		return v, false
	}
	off := int64(lo)
	if f.minus {
		off = -off
	}
	v = shown{f.zero + off, int64(step)}
	return v, units.InRange(Q(v.value))
}

// written is a value as a decimal of the figure's unit.
func (f *figure[Q]) written(v int64, places int) units.Written[Q] {
	return units.Written[Q]{Value: Q(v), Unit: f.unit, Places: uint8(max(places, 0))}
}

// digits counts the digits of m, at least 1.
func digits(m uint64) (n int) {
	for n = 1; n < len(pow10) && m >= pow10[n]; n++ {
	}
	return n
}

// roundness counts the digits from the first to the last that isn't 0. The
// fewer, the rounder, and the likelier the figure that was chosen.
func roundness(m uint64) (n int) { return digits(significant(m)) }

// significant is m without the zeros at its end.
func significant(m uint64) uint64 {
	for m != 0 && m%10 == 0 {
		m /= 10
	}
	return m
}

// digit is the one at 10^i.
func digit(m uint64, i int) uint64 { return m / pow10[i] % 10 }

// differing counts the places at which two figures differ.
func differing(a, b uint64) (n int) {
	for ; a != 0 || b != 0; a, b = a/10, b/10 {
		if a%10 != b%10 {
			n++
		}
	}
	return n
}

// variant is a figure as it stood before a slip of a digit.
type variant struct {
	kind   Kind
	m      uint64
	places int
	likely bool // the more usual of its kind: neighbours exchanged, a digit doubled, a wrong digit that isn't the first
}

// variants goes through what the figure may have been before one digit went
// wrong.
func (f *figure[Q]) variants(yield func(variant)) {
	n := max(digits(f.m), f.places+1) // the 0 before the point is a digit too
	for i := range n {
		d := digit(f.m, i)
		for e := range uint64(10) {
			// A first digit is 0 only before the point, and what a 0 there stands
			// for is a digit lost: it may have been left out.
			if e != d && (e != 0 || i < n-1 || i <= f.places) && (i < f.places || f.m >= pow10[f.places]) {
				m := f.m - d*pow10[i] + e*pow10[i]
				yield(variant{DigitWrong, m, f.places, digits(m) == digits(f.m)})
			}
		}
		high, low := f.m/pow10[i+1], f.m%pow10[i]
		places := f.places
		if i < places {
			places--
		}
		doubled := high%10 == d && i+1 < n || i > 0 && digit(f.m, i-1) == d
		yield(variant{DigitAdded, high*pow10[i] + low, places, doubled})
	}
	for i := range n {
		f.exchanges(i, n, yield)
	}
	for i := range n + 1 {
		high, low := f.m/pow10[i], f.m%pow10[i]
		for e := range uint64(10) {
			m := high*pow10[i+1] + e*pow10[i] + low
			doubled := i > 0 && digit(f.m, i-1) == e || high%10 == e
			if i >= f.places {
				yield(variant{DigitLost, m, f.places, doubled})
			}
			// At the very end it would be a figure cut off.
			if i <= f.places && i > 0 {
				yield(variant{DigitLost, m, f.places + 1, doubled})
			}
		}
	}
}

// exchanges yields the figure with the digit at i exchanged with the next one
// and with the next but one.
func (f *figure[Q]) exchanges(i, n int, yield func(variant)) {
	for j := i + 1; j < n && j <= i+2; j++ {
		a, b := digit(f.m, i), digit(f.m, j)
		if a != b {
			yield(variant{DigitsTransposed, f.m - a*pow10[i] - b*pow10[j] + b*pow10[i] + a*pow10[j], f.places, j == i+1})
		}
	}
}
