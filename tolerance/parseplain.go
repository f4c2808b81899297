package tolerance

import (
	"math/bits"
	"strings"
)

// plain reads the forms that most documents are full of, in one pass and
// without memory:
//
//	86.012 mm   86.012 ±0.002 mm   [0.0635 mm, 0.0762 mm)   [0.5 mm, ∞)
//	0.03–0.07 mm   max 0.10 mm   2.5 ±0.02 mm   73.00 +0.03/-0.01 mm
//
// in single blanks, with plain decimals and usual names of units. The rest,
// errors among it, is left to [reader], whose answers these are: a fuzz target
// holds the two together.
type plain struct {
	t *plainTable
	s string
	i int // what comes next
}

// A plainNumber is a number as written; unit is nil where it has none.
type plainNumber struct {
	m        uint64
	places   int
	negative bool
	unit     *plainUnit
}

// A plainEnd is one end of what was read, with the unit and the places that it
// was written with.
type plainEnd struct {
	at           int64
	end          End
	unit, places uint8
}

// skip passes the mark if it comes next.
func (p *plain) skip(mark string) bool {
	if !strings.HasPrefix(p.s[p.i:], mark) {
		return false
	}
	p.i += len(mark)
	return true
}

func (p *plain) blank() bool {
	if p.i == len(p.s) || p.s[p.i] != ' ' {
		return false
	}
	p.i++
	return true
}

func (p *plain) done() bool { return p.i == len(p.s) }

// digit reports whether a number's digits or its point come next.
func (p *plain) digit() bool {
	return p.i < len(p.s) && (p.s[p.i]-'0' <= 9 || p.s[p.i] == '.')
}

// number passes a decimal and its unit, which may be missing.
func (p *plain) number() (n plainNumber, ok bool) {
	s, i := p.s, p.i
	if i < len(s) && s[i] == '-' {
		n.negative = true
		i++
	}
	start := i
	for ; i < len(s) && s[i]-'0' <= 9; i++ {
		n.m = n.m*10 + uint64(s[i]-'0')
	}
	digits := i - start
	if i < len(s) && s[i] == '.' {
		i++
		point := i
		for ; i < len(s) && s[i]-'0' <= 9; i++ {
			n.m = n.m*10 + uint64(s[i]-'0')
		}
		n.places = i - point
		digits += n.places
	}
	p.i = i
	return n, digits > 0 && digits <= 18 && p.unit(&n)
}

// unit passes the unit's name, with a blank before it or without. ok is false
// where what follows is neither a name nor what may follow a bare number.
func (p *plain) unit(n *plainNumber) (ok bool) {
	from := p.i
	if from < len(p.s) && p.s[from] == ' ' {
		from++
	}
	to := from
	for to < len(p.s) && !p.ends(to) {
		to++
	}
	name := p.s[from:to]
	if name == "" || name == "to" || name[0]-'0' <= 9 {
		return true
	}
	n.unit = p.t.find(name)
	p.i = to
	return n.unit != nil
}

// ends reports whether a unit's name ends before s[i].
func (p *plain) ends(i int) bool {
	switch p.s[i] {
	case ' ', ',', ')', ']', '+', '-':
		return true
	case '/': // of lbf/in, or between two deviations
		return i+1 < len(p.s) && p.s[i+1] < 'A'
	case "±"[0]:
		return strings.HasPrefix(p.s[i:], "±")
	case "–"[0]:
		return strings.HasPrefix(p.s[i:], "–")
	}
	return false
}

// value is a number in quanta, by the unit given.
func (p *plain) value(n plainNumber, u *plainUnit) (q int64, ok bool) {
	if u == nil || n.places > u.places {
		return 0, false
	}
	hi, lo := bits.Mul64(n.m, uint64(u.step[n.places]))
	if hi != 0 || lo > uint64(p.t.most) {
		return 0, false
	}
	if n.negative {
		return -int64(lo), true
	}
	return int64(lo), true
}

func (p *plain) end(n plainNumber, end End) (e plainEnd, ok bool) {
	q, ok := p.value(n, n.unit)
	if !ok {
		return e, false
	}
	return plainEnd{q, end, n.unit.unit, uint8(n.places)}, true
}

// pair makes the two ends of two numbers, of which one may lack its unit.
func (p *plain) pair(a plainNumber, aEnd End, b plainNumber, bEnd End) (lo, hi plainEnd, ok bool) {
	if a.unit == nil {
		a.unit = b.unit
	} else if b.unit == nil {
		b.unit = a.unit
	}
	lo, okA := p.end(a, aEnd)
	hi, okB := p.end(b, bEnd)
	ordered := lo.at < hi.at || lo.at == hi.at && aEnd == Closed && bEnd == Closed
	return lo, hi, okA && okB && ordered
}

// around gives the ends of a size with two deviations, which were calculated.
func (p *plain) around(size, down, up int64) (lo, hi plainEnd, ok bool) {
	lo, hi = plainEnd{at: size + down, end: Closed}, plainEnd{at: size + up, end: Closed}
	return lo, hi, -p.t.most <= lo.at && hi.at <= p.t.most
}

// symmetric goes on after a size, from a ±.
func (p *plain) symmetric(size plainNumber) (lo, hi plainEnd, ok bool) {
	p.blank()
	dev, ok := p.number()
	if !ok || !p.done() || dev.negative {
		return lo, hi, false
	}
	if size.unit == nil {
		size.unit = dev.unit
	} else if dev.unit == nil {
		dev.unit = size.unit
	}
	s, okS := p.value(size, size.unit)
	d, okD := p.value(dev, dev.unit)
	if !okS || !okD {
		return lo, hi, false
	}
	return p.around(s, -d, d)
}
