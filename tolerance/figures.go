package tolerance

import (
	"bytes"

	"github.com/tenthou/tenthou/units"
)

// figures prints readings and limits in one unit to so many places, readings
// rounded outward and limits inward, so that what is printed neither contradicts
// a verdict nor allows more than the limits do. A nil *figures prints exact
// values.
type figures[Q units.Quantity] struct {
	unit   units.Unit[Q]
	places int
	limits [4]figure[Q] // of a band for new parts and of a wear limit
	n      int          // how many of limits there are
}

// A figure is a value and the way it is rounded.
type figure[Q units.Quantity] struct {
	v Q
	r units.Rounding
}

// limit adds the limits of a band. One that bounds from both sides is rounded
// to nearest.
func (f *figures[Q]) limit(b BandOf[Q]) {
	if lo, end := b.Lower(); end != Absent {
		f.add(figure[Q]{lo, units.Up})
	}
	if hi, end := b.Upper(); end != Absent {
		f.add(figure[Q]{hi, units.Down})
	}
}

func (f *figures[Q]) add(l figure[Q]) {
	for i := range f.n {
		if other := &f.limits[i]; other.v == l.v {
			if other.r != l.r {
				other.r = units.NearestEven
			}
			return
		}
	}
	f.limits[f.n] = l
	f.n++
}

// rounding is that of v: as a limit if it stands on one, else r.
func (f *figures[Q]) rounding(v Q, r units.Rounding) units.Rounding {
	for _, l := range f.limits[:f.n] {
		if l.v == v {
			return l.r
		}
	}
	return r
}

// number appends v.
func (f *figures[Q]) number(dst []byte, v Q, r units.Rounding) []byte {
	if f == nil {
		return appendExact(dst, v)
	}
	dst, _ = units.Append(dst, v, units.Style[Q]{Unit: f.unit, Places: f.places, Rounding: f.rounding(v, r)})
	return dst
}

func (f *figures[Q]) bare(dst []byte, v figure[Q]) []byte {
	dst, _ = units.Append(dst, v.v, units.Style[Q]{Unit: f.unit, Places: f.places, Rounding: v.r, Bare: true})
	return dst
}

// widen raises the places until the limits, and the ends of two readings
// against them, are printed in their true order. 18 places show every quantum
// in every unit.
func (f *figures[Q]) widen(readings ...Interval[Q]) {
	var room [4]figure[Q]
	ends := room[:0]
	for _, i := range readings {
		down, up := units.Down, units.Up
		if i.IsExact() {
			down, up = units.NearestEven, units.NearestEven
		}
		if i.loEnd != Absent {
			ends = append(ends, figure[Q]{i.lo, down})
		}
		if i.hiEnd != Absent {
			ends = append(ends, figure[Q]{i.hi, up})
		}
	}
	for !f.faithful(ends) && f.places < 18 {
		if f.places++; f.places <= 0 { // all places that it takes were not enough
			f.places = f.unit.Places()
		}
	}
}

func (f *figures[Q]) faithful(ends []figure[Q]) bool {
	for i, l := range f.limits[:f.n] {
		var room [48]byte
		printed := f.bare(room[:0], l)
		if !f.inOrder(ends, l.v, printed) || !f.inOrder(f.limits[:i], l.v, printed) {
			return false
		}
	}
	return true
}

// inOrder reports whether the others stand to v in print as they do in truth.
func (f *figures[Q]) inOrder(others []figure[Q], v Q, printed []byte) bool {
	for _, other := range others {
		if other.v == v {
			continue // printed alike
		}
		var room [48]byte
		if c := compareDecimals(f.bare(room[:0], other), printed); c == 0 || c > 0 != (other.v > v) {
			return false
		}
	}
	return true
}

// compareDecimals compares two decimals as package units prints them.
func compareDecimals(a, b []byte) int {
	a, negA := bytes.CutPrefix(a, []byte("-"))
	b, negB := bytes.CutPrefix(b, []byte("-"))
	switch {
	case negA && negB:
		a, b = b, a
	case negA:
		return -1
	case negB:
		return 1
	}
	wholeA, fracA, _ := bytes.Cut(a, []byte("."))
	wholeB, fracB, _ := bytes.Cut(b, []byte("."))
	if len(wholeA) != len(wholeB) {
		return len(wholeA) - len(wholeB)
	}
	if c := bytes.Compare(wholeA, wholeB); c != 0 {
		return c
	}
	return bytes.Compare(bytes.TrimRight(fracA, "0"), bytes.TrimRight(fracB, "0"))
}
