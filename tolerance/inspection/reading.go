package inspection

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Reading is what was measured of a length, or that it wasn't yet.
type Reading = ReadingOf[units.Length]

// A ReadingOf is what was measured of a quantity, or that it wasn't yet. In a
// document it is a text: a value (86.012 mm), one with its error
// (86.012 ±0.002 mm), an interval ([0.0635 mm, 0.0762 mm)), or nothing for what
// is still to be read. The zero ReadingOf is not taken.
type ReadingOf[Q units.Quantity] struct {
	Value tolerance.Interval[Q] // what is known of it
	Taken bool                  // whether it was read
}

// Read is a reading that was taken.
func Read[Q units.Quantity](value tolerance.Interval[Q]) ReadingOf[Q] {
	return ReadingOf[Q]{value, true}
}

// IsZero reports whether the reading was not taken.
func (r ReadingOf[Q]) IsZero() bool { return !r.Taken }

// String is the exact interval; empty where nothing was read.
func (r ReadingOf[Q]) String() string {
	if !r.Taken {
		return ""
	}
	return r.Value.String()
}

// MarshalText writes what UnmarshalText reads. It fails where the reading is
// out of range.
func (r ReadingOf[Q]) MarshalText() ([]byte, error) {
	if !r.Taken {
		return []byte{}, nil
	}
	return r.Value.MarshalText()
}

// UnmarshalText reads what [tolerance.ParseInterval] does, and an empty text
// as not taken.
func (r *ReadingOf[Q]) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*r = ReadingOf[Q]{}
		return nil
	}
	var v tolerance.Interval[Q]
	if err := v.UnmarshalText(text); err != nil {
		return err
	}
	*r = ReadingOf[Q]{v, true}
	return nil
}

// Within gives the reading its instrument's error: ±e more on each side. A
// reading that was written with an error, or as an interval, keeps its own.
func (r ReadingOf[Q]) Within(e Q) (ReadingOf[Q], error) {
	if !r.Taken || e == 0 || !r.Value.IsExact() {
		return r, nil
	}
	q, _ := r.Value.Lower()
	i, err := tolerance.PlusMinus(q, e)
	if err != nil {
		return r, err
	}
	return ReadingOf[Q]{i, true}, nil
}

// Taken are the values of those readings that were taken.
func Taken[Q units.Quantity](dst []tolerance.Interval[Q], readings ...ReadingOf[Q]) []tolerance.Interval[Q] {
	for _, r := range readings {
		if r.Taken {
			dst = append(dst, r.Value)
		}
	}
	return dst
}
