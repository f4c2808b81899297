package tolerance

import (
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

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
	return i.append(dst, func(dst []byte, q Q, _ units.Rounding) []byte {
		dst, _ = units.AppendText(dst, q)
		return dst
	}), nil
}

// MarshalText is what AppendText appends.
func (i Interval[Q]) MarshalText() ([]byte, error) { return i.AppendText(make([]byte, 0, 48)) }

// String is the exact interval.
func (i Interval[Q]) String() string {
	b, err := i.MarshalText()
	if err != nil {
		return "out of range"
	}
	return string(b)
}

// Text writes the interval in unit u with so many places, rounded outward, so
// that what is printed holds what was measured.
func (i Interval[Q]) Text(u units.Unit[Q], places int) string {
	if !i.InRange() {
		return "out of range"
	}
	return string(i.append(make([]byte, 0, 48), func(dst []byte, q Q, r units.Rounding) []byte {
		dst, _ = units.Append(dst, q, units.Style[Q]{Unit: u, Places: places, Rounding: r})
		return dst
	}))
}

func (i Interval[Q]) append(dst []byte, number func([]byte, Q, units.Rounding) []byte) []byte {
	if i.IsExact() {
		return number(dst, i.lo, units.NearestEven)
	}
	switch i.loEnd {
	case Closed:
		dst = number(append(dst, '['), i.lo, units.Down)
	case Open:
		dst = number(append(dst, '('), i.lo, units.Down)
	default:
		dst = append(dst, "(−"+infinity...)
	}
	dst = append(dst, ", "...)
	switch i.hiEnd {
	case Closed:
		return append(number(dst, i.hi, units.Up), ']')
	case Open:
		return append(number(dst, i.hi, units.Up), ')')
	}
	return append(dst, infinity+")"...)
}

// UnmarshalText reads what [ParseInterval] reads.
func (i *Interval[Q]) UnmarshalText(text []byte) error {
	v, err := ParseInterval[Q](string(text))
	if err == nil {
		*i = v
	}
	return err
}

// ParseBracket is [ParseInterval] for lengths.
func ParseBracket(s string) (Bracket, error) { return ParseInterval[units.Length](s) }

const intervalForms = `write it as "0.07 mm", "73.02 ±0.005 mm", "[0.0635 mm, 0.0762 mm)" or "[0.5 mm, ∞)"`

// ParseInterval reads one value, a reading with its error (73.02 ±0.005 mm),
// or an interval in brackets as [Interval] prints it. The errors are
// [ParseError]s.
func ParseInterval[Q units.Quantity](s string) (Interval[Q], error) {
	var none Interval[Q]
	fail := func(kind error, cause error) (Interval[Q], error) {
		return none, parseError("interval", s, 0, kind, intervalForms, cause)
	}
	if len(s) > 256 || !utf8.ValidString(s) {
		return fail(ErrSyntax, nil)
	}
	t := plainSpaces(s)
	r := bandReader[Q]{input: s}
	for _, mark := range []string{"±", "+/-", "+/−"} {
		if a, b, ok := strings.Cut(t, mark); ok {
			p, err := r.symmetric(a, b)
			if err != nil {
				return fail(ErrSyntax, err)
			}
			return p.limits, nil
		}
	}
	if t == "" || t[0] != '[' && t[0] != '(' {
		q, err := units.Parse[Q](t)
		if err != nil {
			return fail(ErrSyntax, err)
		}
		return Exactly(q), nil
	}
	loEnd, hiEnd := Closed, Closed
	if t[0] == '(' {
		loEnd = Open
	}
	last := t[len(t)-1]
	if last == ')' {
		hiEnd = Open
	}
	lo, hi, ok := strings.Cut(t[1:len(t)-1], ", ")
	if !ok {
		lo, hi, ok = strings.Cut(t[1:len(t)-1], ";")
	}
	if !ok || len(t) < 2 || last != ')' && last != ']' {
		return fail(ErrSyntax, nil)
	}
	lo, hi = strings.TrimSpace(lo), strings.TrimSpace(hi)
	var a, b Q
	var err error
	noLo := lo == "−"+infinity || lo == "-"+infinity
	noHi := hi == infinity || hi == "+"+infinity
	if noLo && loEnd == Closed || noHi && hiEnd == Closed {
		return fail(ErrSyntax, nil)
	}
	if noLo {
		loEnd = Absent
	} else if a, err = units.Parse[Q](lo); err != nil {
		return fail(ErrSyntax, err)
	}
	if noHi {
		hiEnd = Absent
	} else if b, err = units.Parse[Q](hi); err != nil {
		return fail(ErrSyntax, err)
	}
	i, err := NewInterval(a, loEnd, b, hiEnd)
	if err != nil {
		return fail(ErrOrder, err)
	}
	return i, nil
}

// AppendText appends the exact band in a form that [ParseBandOf] reads back.
func (b BandOf[Q]) AppendText(dst []byte) ([]byte, error) {
	if !b.InRange() {
		return dst, &RangeError{Op: "encode band"}
	}
	return b.append(dst, func(dst []byte, q Q, _ units.Rounding) []byte {
		dst, _ = units.AppendText(dst, q)
		return dst
	}), nil
}

// MarshalText is what AppendText appends.
func (b BandOf[Q]) MarshalText() ([]byte, error) { return b.AppendText(make([]byte, 0, 48)) }

// UnmarshalText reads what [ParseBandOf] reads.
func (b *BandOf[Q]) UnmarshalText(text []byte) error {
	v, err := ParseBandOf[Q](string(text))
	if err == nil {
		*b = v
	}
	return err
}

// String is the exact band: 0.03 mm–0.07 mm is written 0.03–0.07 mm.
func (b BandOf[Q]) String() string {
	t, err := b.MarshalText()
	if err != nil {
		return "out of range"
	}
	return string(t)
}

// Text writes the band in unit u with so many places, rounded inward, so that
// what is printed allows nothing that the band doesn't. Where rounding would
// leave nothing between the ends, it takes as many places more as it needs.
func (b BandOf[Q]) Text(u units.Unit[Q], places int) string {
	if !b.InRange() {
		return "out of range"
	}
	l := b.limits
	for l.loEnd != Absent && l.hiEnd != Absent && places >= 0 && places < 18 {
		lo, _ := units.Round(l.lo, u, places, units.Up)
		hi, _ := units.Round(l.hi, u, places, units.Down)
		if lo < hi || l.lo == l.hi {
			break
		}
		places++
	}
	return string(b.append(make([]byte, 0, 48), func(dst []byte, q Q, r units.Rounding) []byte {
		dst, _ = units.Append(dst, q, units.Style[Q]{Unit: u, Places: places, Rounding: r})
		return dst
	}))
}

func (b BandOf[Q]) append(dst []byte, number func([]byte, Q, units.Rounding) []byte) []byte {
	l := b.limits
	switch {
	case b.IsZero():
		return append(dst, noLimit...)
	case l.loEnd == Closed && l.hiEnd == Closed:
		start := len(dst)
		dst = number(dst, l.lo, units.Up)
		mid := len(dst)
		dst = number(append(dst, "–"...), l.hi, units.Down)
		// The unit need not stand twice.
		first, second := string(dst[start:mid]), string(dst[mid+len("–"):])
		if u := unitPart(first); u != "" && u == unitPart(second) {
			dst = append(append(append(dst[:start], strings.TrimSuffix(first, u)...), "–"...), second...)
		}
		return dst
	}
	switch l.loEnd {
	case Closed:
		dst = number(append(dst, "min "...), l.lo, units.Up)
	case Open:
		dst = number(append(dst, "more than "...), l.lo, units.Up)
	}
	if l.loEnd != Absent && l.hiEnd != Absent {
		dst = append(dst, ", "...)
	}
	switch l.hiEnd {
	case Closed:
		dst = number(append(dst, "max "...), l.hi, units.Down)
	case Open:
		dst = number(append(dst, "less than "...), l.hi, units.Down)
	}
	return dst
}

// unitPart is the " mm" of "0.03 mm", or nothing where the text is not one
// number and one unit.
func unitPart(s string) string {
	number, unit, ok := strings.Cut(s, " ")
	if !ok || strings.Trim(number, "-.0123456789") != "" || strings.ContainsAny(unit, " ") {
		return ""
	}
	return " " + unit
}
