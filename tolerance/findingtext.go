package tolerance

import (
	"bytes"

	"github.com/tenthou/tenthou/units"
)

// String is the finding in exact values.
func (f FindingOf[Q]) String() string { return f.write(Interval[Q].String, BandOf[Q].String) }

// Text writes the finding on one line in unit u with at least so many places,
// and as many more as it takes that what is printed does not contradict the
// verdict. Brackets are rounded outward and limits inward; an end that stands
// on a limit is rounded as the limit is.
func (f FindingOf[Q]) Text(u units.Unit[Q], places int) string {
	places = f.Places(u, places)
	limits := f.limits()
	reading := func(i Interval[Q]) string {
		if !i.InRange() {
			return i.String()
		}
		return string(i.append(nil, func(dst []byte, q Q, r units.Rounding) []byte {
			return appendReading(dst, q, r, u, places, limits)
		}))
	}
	band := func(b BandOf[Q]) string { return b.Text(u, places) }
	return f.write(reading, band)
}

func appendReading[Q units.Quantity](dst []byte, q Q, r units.Rounding, u units.Unit[Q], places int, limits []bound[Q]) []byte {
	for _, l := range limits {
		if l.v == q {
			r = l.r
		}
	}
	dst, _ = units.Append(dst, q, units.Style[Q]{Unit: u, Places: places, Rounding: r})
	return dst
}

func (f FindingOf[Q]) write(reading func(Interval[Q]) string, band func(BandOf[Q]) string) string {
	s := f.Where
	if s != "" {
		s += ": "
	}
	s += f.Measure + " "
	if f.Least == f.Greatest {
		s += reading(f.Least)
	} else {
		s += "least " + reading(f.Least) + ", greatest " + reading(f.Greatest)
	}
	if !f.Spec.New.IsZero() {
		s += ", new " + band(f.Spec.New)
	}
	if !f.Spec.Wear.IsZero() {
		s += ", wear limit " + band(f.Spec.Wear)
	}
	s += ": " + f.Explain()
	if f.Settle != "" {
		s += "; would settle it: " + f.Settle
	}
	return s
}

// bound is a limit and the way it is rounded when printed.
type bound[Q units.Quantity] struct {
	v Q
	r units.Rounding
}

func (f FindingOf[Q]) limits() (ls []bound[Q]) {
	for _, b := range []BandOf[Q]{f.Spec.New, f.Spec.Wear} {
		if b.limits.loEnd != Absent {
			ls = append(ls, bound[Q]{b.limits.lo, units.Up})
		}
		if b.limits.hiEnd != Absent {
			ls = append(ls, bound[Q]{b.limits.hi, units.Down})
		}
	}
	return ls
}

// Places is the least number of decimal places, from the given one up, at
// which the readings printed in unit u stand to the printed limits as they do
// in truth.
func (f FindingOf[Q]) Places(u units.Unit[Q], places int) int {
	if places < 0 {
		return units.AllPlaces
	}
	limits := f.limits()
	var ends []bound[Q]
	for _, i := range []Interval[Q]{f.Least, f.Greatest} {
		if i.loEnd != Absent {
			ends = append(ends, bound[Q]{i.lo, units.Down})
		}
		if i.hiEnd != Absent {
			ends = append(ends, bound[Q]{i.hi, units.Up})
		}
	}
	for ; places < 18; places++ {
		if faithful(ends, limits, u, places) {
			break
		}
	}
	return places
}

func faithful[Q units.Quantity](ends, limits []bound[Q], u units.Unit[Q], places int) bool {
	for _, e := range ends {
		for _, l := range limits {
			if e.v == l.v {
				continue // printed alike
			}
			a, _ := units.Append(nil, e.v, units.Style[Q]{Unit: u, Places: places, Rounding: e.r, Bare: true})
			b, _ := units.Append(nil, l.v, units.Style[Q]{Unit: u, Places: places, Rounding: l.r, Bare: true})
			if c := compareDecimals(a, b); c == 0 || c > 0 != (e.v > l.v) {
				return false
			}
		}
	}
	return true
}

// compareDecimals compares two decimals of the same number of places.
func compareDecimals(a, b []byte) int {
	na, nb := bytes.HasPrefix(a, []byte("-")), bytes.HasPrefix(b, []byte("-"))
	switch {
	case na && nb:
		return compareDecimals(b[1:], a[1:])
	case na:
		return -1
	case nb:
		return 1
	case len(a) != len(b):
		return len(a) - len(b)
	}
	return bytes.Compare(a, b)
}
