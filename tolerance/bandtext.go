package tolerance

import (
	"bytes"

	"github.com/tenthou/tenthou/units"
)

// AppendText appends the exact band in a form that [ParseBandOf] reads back.
func (b BandOf[Q]) AppendText(dst []byte) ([]byte, error) {
	if !b.InRange() {
		return dst, &RangeError{Op: "encode band"}
	}
	return b.append(dst, nil), nil
}

// MarshalText is what AppendText appends.
func (b BandOf[Q]) MarshalText() ([]byte, error) { return b.AppendText(make([]byte, 0, 48)) }

// UnmarshalText reads what [ParseBandOf] reads, over the whole range.
func (b *BandOf[Q]) UnmarshalText(text []byte) error {
	if len(text) <= plainMax {
		if p, ok := plainBand[Q](string(text)); ok {
			*b = p.BandOf
			return nil
		}
	}
	var p PrintedOf[Q]
	err := p.UnmarshalText(text)
	if err == nil {
		*b = p.BandOf
	}
	return err
}

// String is the exact band: 0.03 mm–0.07 mm is written 0.03–0.07 mm.
func (b BandOf[Q]) String() string {
	t, err := b.MarshalText()
	if err != nil {
		return outOfRangeText
	}
	return string(t)
}

// Text writes the band in unit u with so many places, rounded inward, so that
// what is printed allows nothing that the band doesn't. Where rounding would
// leave nothing between the ends, it takes as many places more as it needs. A
// band of one value alone is rounded to nearest.
func (b BandOf[Q]) Text(u units.Unit[Q], places int) string {
	if !b.InRange() {
		return outOfRangeText
	}
	f := figures[Q]{unit: u, places: places}
	f.limit(b)
	f.widen()
	return string(b.append(make([]byte, 0, 48), &f))
}

func (b BandOf[Q]) append(dst []byte, f *figures[Q]) []byte {
	l := b.limits
	switch {
	case b.IsZero():
		return append(dst, noLimit...)
	case l.loEnd == Closed && l.hiEnd == Closed:
		start := len(dst)
		dst = f.number(dst, l.lo, units.Up)
		mid := len(dst)
		dst = append(dst, "–"...)
		second := len(dst)
		dst = f.number(dst, l.hi, units.Down)
		// The unit need not stand twice.
		if u := unitPart(dst[start:mid]); len(u) > 0 && bytes.Equal(u, unitPart(dst[second:])) {
			dst = append(dst[:mid-len(u)], dst[mid:]...)
		}
		return dst
	}
	switch l.loEnd {
	case Closed:
		dst = f.number(append(dst, "min "...), l.lo, units.Up)
	case Open:
		dst = f.number(append(dst, "more than "...), l.lo, units.Up)
	}
	if l.loEnd != Absent && l.hiEnd != Absent {
		dst = append(dst, ", "...)
	}
	switch l.hiEnd {
	case Closed:
		dst = f.number(append(dst, "max "...), l.hi, units.Down)
	case Open:
		dst = f.number(append(dst, "less than "...), l.hi, units.Down)
	}
	return dst
}

// unitPart is the " mm" of "0.03 mm", or nothing where the text is not one
// number and one unit.
func unitPart(s []byte) []byte {
	blank := bytes.IndexByte(s, ' ')
	if blank < 0 || len(bytes.Trim(s[:blank], "-.0123456789")) > 0 || bytes.IndexByte(s[blank+1:], ' ') >= 0 {
		return nil
	}
	return s[blank:]
}
