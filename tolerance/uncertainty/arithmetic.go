package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// reach is how many standard uncertainties from a kink first order is held to
// be enough. Of a normal value three off, one in 740 lies beyond the kink:
// the mean of its magnitude is out by 0.0008 of the standard uncertainty and
// the standard deviation by 0.3 %, against 1.7 % and 3.5 % at two.
const reach = 3

// near reports whether a kink that lies so far off is within reach.
func near(distance, u float64) bool { return u > 0 && math.Abs(distance) <= reach*u }

func broken[Q units.Quantity]() EstimateOf[Q] {
	return EstimateOf[Q]{value: units.OutOfRange[Q]()}
}

// set gives e its value and reports whether it is in range. Temperatures are
// neither added nor multiplied: they are out of range.
func (e *EstimateOf[Q]) set(v Q) bool {
	if !units.InRange(v) || isTemperature[Q]() {
		*e = broken[Q]()
		return false
	}
	e.value = v
	return true
}

// both reports whether e and o are in range.
func both[Q units.Quantity](e, o *EstimateOf[Q]) bool {
	return units.InRange(e.value) && units.InRange(o.value)
}

// Add is e + o.
func (e EstimateOf[Q]) Add(o EstimateOf[Q]) (r EstimateOf[Q]) {
	if !both(&e, &o) || !r.set(e.value+o.value) {
		return broken[Q]()
	}
	r.terms.sum(&e.terms, 1, &o.terms, 1)
	return r
}

// Sub is e − o. What depends on one source in both cancels.
func (e EstimateOf[Q]) Sub(o EstimateOf[Q]) (r EstimateOf[Q]) {
	if !both(&e, &o) || !r.set(e.value-o.value) {
		return broken[Q]()
	}
	r.terms.sum(&e.terms, 1, &o.terms, -1)
	return r
}

// Abs is the magnitude of e. It has a kink at zero.
func (e EstimateOf[Q]) Abs() EstimateOf[Q] {
	if !units.InRange(e.value) || isTemperature[Q]() {
		return broken[Q]()
	}
	e.terms.kink = e.terms.kink || near(float64(e.value), e.terms.spread())
	if e.value < 0 {
		e.value = -e.value
		e.terms.flip()
	}
	return e
}

// tie reports whether e and o may be the one way round or the other.
func tie[Q units.Quantity](e, o *EstimateOf[Q]) bool {
	return near(float64(e.value)-float64(o.value), apart(&e.terms, &o.terms))
}

// Min is the lesser of e and o. It has a kink where they are equal.
func (e EstimateOf[Q]) Min(o EstimateOf[Q]) EstimateOf[Q] {
	return e.choose(&o, o.value < e.value)
}

// Max is the greater of e and o. It has a kink where they are equal.
func (e EstimateOf[Q]) Max(o EstimateOf[Q]) EstimateOf[Q] {
	return e.choose(&o, o.value > e.value)
}

func (e *EstimateOf[Q]) choose(o *EstimateOf[Q], other bool) EstimateOf[Q] {
	if !both(e, o) {
		return broken[Q]()
	}
	r := e
	if other {
		r = o
	}
	kink := e.terms.kink || o.terms.kink || tie(e, o)
	r.terms.kink = kink
	return *r
}

// Spread is the greatest less the least of e and more. It has a kink where
// another comes near the greatest or the least.
func (e EstimateOf[Q]) Spread(more ...EstimateOf[Q]) (r EstimateOf[Q]) {
	hi, lo, kink := -1, -1, e.terms.kink // places in more; −1 for e
	greatest, least := e.value, e.value
	for i := range more {
		v := more[i].value
		if !units.InRange(v) {
			return broken[Q]()
		}
		if v > greatest {
			greatest, hi = v, i
		}
		if v < least {
			least, lo = v, i
		}
		kink = kink || more[i].terms.kink
	}
	if !units.InRange(e.value) || !r.set(greatest-least) {
		return broken[Q]()
	}
	top, bottom := &e, &e
	if hi >= 0 {
		top = &more[hi]
	}
	if lo >= 0 {
		bottom = &more[lo]
	}
	kink = kink || hi >= 0 && tie(&e, top) || lo >= 0 && tie(&e, bottom)
	for i := 0; i < len(more) && !kink; i++ {
		kink = i != hi && tie(&more[i], top) || i != lo && tie(&more[i], bottom)
	}
	r.terms.sum(&top.terms, 1, &bottom.terms, -1)
	r.terms.kink = kink
	return r
}

// Scale is e·num/den, the value rounded once to the nearest quantum. A zero
// den gives an estimate out of range.
func (e EstimateOf[Q]) Scale(num, den int64) (r EstimateOf[Q]) {
	if r.set(units.ScaleRound(e.value, num, den, units.NearestEven)) {
		r.terms.take(&e.terms, float64(num)/float64(den))
	}
	return r
}

// ScalePi is e·π·num/den, the value correctly rounded to the nearest quantum.
// A zero den gives an estimate out of range.
func (e EstimateOf[Q]) ScalePi(num, den int64) (r EstimateOf[Q]) {
	if r.set(units.ScalePiRound(e.value, num, den, units.NearestEven)) {
		r.terms.take(&e.terms, math.Pi*float64(num)/float64(den))
	}
	return r
}

// MulDiv is e·mul/div, the value rounded once to the nearest quantum. A zero
// div gives an estimate out of range.
func (e EstimateOf[Q]) MulDiv(mul, div EstimateOf[Q]) (r EstimateOf[Q]) {
	if !r.set(units.MulDivRound(e.value, mul.value, div.value, units.NearestEven)) {
		return r
	}
	x, m, d := float64(e.value), float64(mul.value), float64(div.value)
	t := sum(&e.terms, m/d, &mul.terms, x/d)
	r.terms.sum(&t, 1, &div.terms, -x/d*(m/d))
	r.terms.kink = r.terms.kink || near(d, div.terms.spread()) ||
		near(x, e.terms.spread()) && near(m, mul.terms.spread())
	return r
}

// Share is e·part/(part+rest), the value rounded once to the nearest quantum.
// Where part+rest is zero it is out of range.
func (e EstimateOf[Q]) Share(part, rest EstimateOf[Q]) (r EstimateOf[Q]) {
	if !r.set(units.ShareRound(e.value, part.value, rest.value, units.NearestEven)) {
		return r
	}
	x, p, q := float64(e.value), float64(part.value), float64(rest.value)
	whole := p + q
	t := sum(&part.terms, x/whole*(q/whole), &rest.terms, -x/whole*(p/whole))
	r.terms.sum(&e.terms, p/whole, &t, 1)
	t = sum(&part.terms, 1, &rest.terms, 1)
	r.terms.kink = r.terms.kink || near(whole, t.spread()) ||
		near(x, e.terms.spread()) && near(p, part.terms.spread())
	return r
}
