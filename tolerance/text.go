package tolerance

import "github.com/tenthou/tenthou/units"

// An interval is written [0.0635 mm, 0.0762 mm): a square bracket where the
// end belongs to it, a round one where it doesn't, ∞ where there is none. One
// value alone is written as such.

const infinity = "∞"

// AppendText appends the exact interval in the form that [ParseInterval]
// reads back.
func (i Interval[Q]) AppendText(dst []byte) ([]byte, error) {
	if !i.InRange() {
		return dst, &RangeError{Op: "encode interval"}
	}
	return i.append(dst, nil), nil
}

// MarshalText is what AppendText appends.
func (i Interval[Q]) MarshalText() ([]byte, error) { return i.AppendText(make([]byte, 0, 48)) }

// String is the exact interval.
func (i Interval[Q]) String() string {
	b, err := i.MarshalText()
	if err != nil {
		return outOfRangeText
	}
	return string(b)
}

// Text writes the interval in unit u with so many places, rounded outward, so
// that what is printed holds what was measured. One value alone is rounded to
// nearest, ties to even.
func (i Interval[Q]) Text(u units.Unit[Q], places int) string {
	if !i.InRange() {
		return outOfRangeText
	}
	f := figures[Q]{unit: u, places: places}
	return string(i.append(make([]byte, 0, 48), &f))
}

func (i Interval[Q]) append(dst []byte, f *figures[Q]) []byte {
	if i.IsExact() {
		return f.number(dst, i.lo, units.NearestEven)
	}
	switch i.loEnd {
	case Closed:
		dst = f.number(append(dst, '['), i.lo, units.Down)
	case Open:
		dst = f.number(append(dst, '('), i.lo, units.Down)
	default:
		dst = append(dst, "(−"+infinity...)
	}
	dst = append(dst, ", "...)
	switch i.hiEnd {
	case Closed:
		return append(f.number(dst, i.hi, units.Up), ']')
	case Open:
		return append(f.number(dst, i.hi, units.Up), ')')
	}
	return append(dst, infinity+")"...)
}

// UnmarshalText reads what [ParseInterval] reads, over the whole range.
func (i *Interval[Q]) UnmarshalText(text []byte) error {
	if len(text) <= plainMax {
		if v, ok := plainInterval[Q](string(text)); ok {
			*i = v
			return nil
		}
	}
	v, err := (&reader[Q]{what: "interval", input: string(text), wide: true}).interval()
	if err == nil {
		*i = v
	}
	return err
}
