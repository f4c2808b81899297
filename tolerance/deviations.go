package tolerance

import (
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// A size with deviations: 2.5 ±0.02 mm, 73.00 +0.03/-0.01 mm.

func cutSymmetric(p part) (size, dev part, ok bool) {
	for _, mark := range []string{"±", "+/-", "+/−", "+-", "+−"} {
		if size, dev, ok := p.cut(mark); ok {
			return size, dev, true
		}
	}
	return p, p, false
}

// cutDeviations finds a size and two deviations from it. Each begins with a
// sign or is zero; a blank stands before the first unless that has a plus
// sign, a slash or a blank before the second.
func cutDeviations(p part) (size, a, b part, ok bool) {
	for i := range p.s {
		first := p.from(i)
		if i == 0 || !endsNumber(p.s[:i]) || p.s[i-1] != ' ' && first.s[0] != '+' || !startsDeviation(first.s) {
			continue
		}
		for k, c := range first.s {
			// A slash inside a fraction has a digit after it and no sign.
			second := part{strings.TrimLeft(first.s[k:], "/ "), 0}
			second.at = first.at + len(first.s) - len(second.s)
			if (c == '/' || c == ' ') && startsDeviation(second.s) && strings.ContainsAny(first.s[:k], "0123456789") {
				return p.to(i), first.to(k), second, true
			}
		}
	}
	return p, p, p, false
}

// startsDeviation reports whether s begins with a sign and a number, or with
// a number that is zero.
func startsDeviation(s string) bool {
	_, number, signed := cutSign(s)
	digits := len(number) - len(strings.TrimLeft(number, "0123456789.,"))
	return digits > 0 && (signed || strings.Trim(number[:digits], "0.,") == "")
}

// cutSign takes a leading sign.
func cutSign(s string) (negative bool, rest string, signed bool) {
	c, n := utf8.DecodeRuneInString(s)
	switch c {
	case '+', '-', '−':
		return c != '+', strings.TrimLeft(s[n:], " "), true
	}
	return false, s, false
}

// symmetric reads a size and one deviation, for both ways.
func (r *reader[Q]) symmetric(size, dev part) (none Interval[Q], err error) {
	dev = dev.trim()
	if _, _, signed := cutSign(dev.s); signed {
		return none, r.fail(dev, ErrSyntax, "what follows ± has no sign", nil)
	}
	s, d, err := r.pair(size, dev)
	if err != nil {
		return none, err
	}
	by := deviation(false, d)
	return r.around(checkedSub(s.Value, by), checkedAdd(s.Value, by))
}

// deviations reads a size and two signed deviations.
func (r *reader[Q]) deviations(size, a, b part) (none Interval[Q], err error) {
	var negative [2]bool
	var number [2]part
	for i, d := range [2]part{a.trim(), b.trim()} {
		var rest string
		negative[i], rest, _ = cutSign(d.s)
		number[i] = d.from(len(d.s) - len(rest))
	}
	s, errS := r.number(size, nil)
	x, y, err := r.pair(number[0], number[1])
	switch {
	case errS == nil && err != nil && !s.Compound: // the unit may stand by the size alone
		if x, err = r.number(number[0], &s.Unit); err == nil {
			y, err = r.number(number[1], &s.Unit)
		}
	case errS != nil && err == nil && x.Unit == y.Unit && !x.Compound && !y.Compound: // or by the deviations
		s, errS = r.number(size, &x.Unit)
	case errS == nil && err == nil && x.Unit != s.Unit: // "73 mm +30 µm/-0.01" has two to choose from
		_, err = r.number(number[1], nil)
	}
	if errS != nil {
		return none, errS
	}
	if err != nil {
		return none, err
	}
	d1, d2 := deviation(negative[0], x), deviation(negative[1], y)
	return r.around(checkedAdd(s.Value, min(d1, d2)), checkedAdd(s.Value, max(d1, d2)))
}

// deviation is a difference as written: 2 °F counts from 0 °F.
func deviation[Q units.Quantity](negative bool, w units.Written[Q]) Q {
	d := w.Value
	if isTemperature[Q]() {
		zero, _ := units.ParseIn("0", w.Unit)
		d -= zero
	}
	if negative {
		return -d
	}
	return d
}

// around is the interval from lo to hi, which were calculated.
func (r *reader[Q]) around(lo, hi Q) (Interval[Q], error) {
	i, err := NewInterval(lo, Closed, hi, Closed)
	if err != nil {
		return i, r.order(err)
	}
	for _, q := range [2]Q{lo, hi} {
		// What this package writes, it reads.
		if _, err := units.Parse[Q](text(q)); err != nil && !r.wide {
			return Interval[Q]{}, r.order(err)
		}
	}
	return i, nil
}
