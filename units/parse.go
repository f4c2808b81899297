package units

import (
	"math/bits"
	"slices"
)

// inputMax is the longest input in bytes that a parser looks at.
const inputMax = 256

// noUnit says that a bare number has no default unit.
const noUnit = 0xff

var pow10 = [20]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19}

// Parse reads a quantity as people write it, to the exact quantum. See the
// package comment for what is accepted. [ParseLength] and its fellows name
// the type. The errors are [ParseError]s.
func Parse[Q Quantity](s string) (Q, error) {
	v, err := tableOf[Q]().parse(s, noUnit)
	return Q(v), err
}

// ParseIn reads a quantity as [Parse] does; a number without a unit is in
// unit u.
func ParseIn[Q Quantity](s string, u Unit[Q]) (Q, error) {
	t := tableOf[Q]()
	v, err := t.parse(s, t.index(uint8(u)))
	return Q(v), err
}

// parse reads plain decimals and leaves the rest to parseAny, whose answers
// it shares (a test holds them together).
func (t *table) parse(s string, def uint8) (int64, error) {
	i, n := 0, len(s)
	if n > inputMax {
		return t.parseSlow(s, def)
	}
	negative := n > 0 && s[0] == '-'
	if negative {
		i = 1
	}
	var m uint64
	start := i
	for ; i < n; i++ {
		d := s[i] - '0'
		if d > 9 {
			break
		}
		m = m*10 + uint64(d)
	}
	digits, places := i-start, 0
	if i < n && s[i] == '.' {
		i++
		point := i
		for ; i < n; i++ {
			d := s[i] - '0'
			if d > 9 {
				break
			}
			m = m*10 + uint64(d)
		}
		places = i - point
		digits += places
	}
	if digits == 0 || digits > 18 {
		return t.parseSlow(s, def)
	}
	if i < n && s[i] == ' ' {
		i++
	}
	k := t.find(s[i:], def)
	if k < 0 {
		return t.parseSlow(s, def)
	}
	u := &t.units[k]
	if places > u.places {
		return t.parseSlow(s, def)
	}
	hi, lo := bits.Mul64(m, uint64(u.step[places]))
	if hi != 0 || lo > uint64(t.parseMax) {
		return t.parseSlow(s, def)
	}
	v := int64(lo)
	if negative {
		v = -v
	}
	v += u.zero
	if v < t.least || v > t.parseMax || v < -t.parseMax {
		return t.parseSlow(s, def)
	}
	return v, nil
}

// find is the unit of a name, symbols first, or -1. Names that are refused
// as ambiguous are no unit's names (a test holds the tables to that).
func (t *table) find(name string, def uint8) int {
	if name == "" {
		if def == noUnit {
			return -1
		}
		return int(def)
	}
	for k := range t.units {
		if t.units[k].symbol == name {
			return k
		}
	}
	for k := range t.units {
		if slices.Contains(t.units[k].names, name) {
			return k
		}
	}
	return -1
}

func (t *table) parseSlow(s string, def uint8) (int64, error) {
	v, _, err := t.parseAny(s, def, t.parseMax)
	return v, err
}

// parseAny reads every accepted form, and says what is wrong with the rest.
// The range is ±most quanta.
func (t *table) parseAny(s string, def uint8, most int64) (v int64, w written, err error) {
	if len(s) > inputMax {
		return 0, w, t.fail(s, inputMax, ErrSyntax, "a quantity has at most 256 bytes")
	}
	p := scanner{t: t, s: s, most: most}
	p.spaces()
	start := p.i
	if p.i == len(s) {
		return 0, w, p.fail(0, ErrSyntax, "a number and a unit are expected, as "+t.examples)
	}
	negative := p.sign()
	var total uint64 // at most twice the limit: each part is less than one of the unit before it
	for part := 0; ; part++ {
		quanta, form, err := p.part(def, part, w.unit)
		if err != nil {
			return 0, w, err
		}
		w = form
		total += quanta
		if p.i == len(s) {
			break
		}
	}
	v = int64(total)
	if negative {
		v = -v
	}
	v += t.units[w.unit].zero
	if v > most || v < -most || v < t.least {
		return 0, w, p.fail(start, ErrRange, "the range is "+t.rangeText(most))
	}
	return v, w, nil
}

// part reads one number and its unit, and what of it is in quanta. prev is
// the unit of the part before it.
func (p *scanner) part(def uint8, part int, prev uint8) (quanta uint64, w written, err error) {
	num, err := p.number()
	if err != nil {
		return 0, w, err
	}
	k, err := p.unitName(def, part > 0)
	if err != nil {
		return 0, w, err
	}
	u := &p.t.units[k]
	if quanta, err = p.scale(num, u); err != nil {
		return 0, w, err
	}
	if part > 0 {
		if above := &p.t.units[prev]; above.sub != k+1 {
			return 0, w, p.fail(num.at, ErrSyntax, "one quantity has one unit, or descending ones as 44° 30′ 15″")
		} else if quanta >= uint64(above.quanta) {
			return 0, w, p.fail(num.at, ErrSyntax, "this part is as large as one of the unit before it")
		}
	}
	if p.i < len(p.s) && (num.places > 0 || num.den != 0) {
		return 0, w, p.fail(p.i, ErrSyntax, "only the last part of a quantity may have decimals")
	}
	w = written{unit: uint8(k), places: uint8(min(num.places, placesMax)), den: num.den, compound: part > 0}
	switch n := num.m*uint64(num.den) + num.num; {
	case w.den == 0:
	case n%uint64(w.den) == 0: // as 16/16 in
		w.den = 0
	case u.quanta%int64(w.den) != 0: // as 6/9 ft: a ninth of a foot is no whole quanta
		w.den /= uint16(gcd(n, uint64(w.den)))
	}
	return quanta, w, nil
}

func gcd(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
