package tolerance

import "github.com/tenthou/tenthou/units"

// plainMax is the longest text in bytes that is tried as a plain form.
const plainMax = 64

// plainInterval reads an interval in a plain form.
func plainInterval[Q units.Quantity](s string) (i Interval[Q], ok bool) {
	if len(s) > plainMax {
		return i, false
	}
	p := plain{t: plainOf[Q](), s: s}
	lo, hi, ok := p.interval()
	if !ok {
		return i, false
	}
	return Interval[Q]{Q(lo.at), Q(hi.at), lo.end, hi.end}, true
}

// plainBand reads a band in a plain form.
func plainBand[Q units.Quantity](s string) (b PrintedOf[Q], ok bool) {
	if len(s) > plainMax {
		return b, false
	}
	p := plain{t: plainOf[Q](), s: s}
	lo, hi, calculated, ok := p.band()
	if !ok {
		return b, false
	}
	b.limits = Interval[Q]{Q(lo.at), Q(hi.at), lo.end, hi.end}
	if calculated {
		return b, true
	}
	if lo.end != Absent {
		b.Least = units.Written[Q]{Value: Q(lo.at), Unit: units.Unit[Q](lo.unit), Places: lo.places}
	}
	if hi.end != Absent {
		b.Greatest = units.Written[Q]{Value: Q(hi.at), Unit: units.Unit[Q](hi.unit), Places: hi.places}
	}
	return b, true
}

func (p *plain) interval() (lo, hi plainEnd, ok bool) {
	switch {
	case p.skip("["):
		return p.bracket(Closed)
	case p.skip("("):
		return p.bracket(Open)
	}
	n, ok := p.number()
	if !ok {
		return lo, hi, false
	}
	if p.done() {
		lo, ok = p.end(n, Closed)
		return lo, lo, ok
	}
	p.blank()
	if !p.skip("±") {
		return lo, hi, false
	}
	return p.symmetric(n)
}

// bracket goes on after the opening bracket.
func (p *plain) bracket(loEnd End) (lo, hi plainEnd, ok bool) {
	var a, b plainNumber
	noLo := loEnd == Open && p.skip("−"+infinity)
	if !noLo {
		if a, ok = p.number(); !ok {
			return lo, hi, false
		}
	}
	if !p.skip(", ") {
		return lo, hi, false
	}
	noHi := p.skip(infinity)
	if !noHi {
		if b, ok = p.number(); !ok {
			return lo, hi, false
		}
	}
	hiEnd := Open
	if !p.skip(")") {
		if hiEnd = Closed; noHi || !p.skip("]") {
			return lo, hi, false
		}
	}
	ok = p.done()
	switch {
	case !ok || noLo && noHi:
	case noLo:
		hi, ok = p.end(b, hiEnd)
	case noHi:
		lo, ok = p.end(a, loEnd)
	default:
		return p.pair(a, loEnd, b, hiEnd)
	}
	return lo, hi, ok
}

// plainWords are those that stand before one limit, with the blank.
var plainWords = [...]struct {
	word string
	to   side
}{{"max ", most}, {"min ", least}, {"less than ", less}, {"more than ", more}}

// band reads a band; calculated tells that its ends are not printed.
func (p *plain) band() (lo, hi plainEnd, calculated, ok bool) {
	if !p.done() && p.s[0]|0x20 >= 'a' {
		for _, w := range plainWords {
			if p.skip(w.word) {
				lo, hi, ok = p.oneSided(w.to)
				return lo, hi, false, ok
			}
		}
		return lo, hi, false, false
	}
	a, ok := p.number()
	if !ok {
		return lo, hi, false, false
	}
	blank := p.blank()
	switch {
	case p.skip("–"):
		p.blank()
	case p.skip("to "):
		if !blank {
			return lo, hi, false, false
		}
	case p.skip("±"):
		lo, hi, ok = p.symmetric(a)
		return lo, hi, true, ok
	case !blank && p.skip("-"), blank && p.skip("- "):
	case blank && p.skip("max"):
		hi, ok = p.end(a, Closed)
		return lo, hi, false, ok && p.done()
	case blank && p.skip("min"):
		lo, ok = p.end(a, Closed)
		return lo, hi, false, ok && p.done()
	default:
		lo, hi, ok = p.deviations(a, blank)
		return lo, hi, true, ok
	}
	b, ok := p.number()
	if !ok || !p.done() {
		return lo, hi, false, false
	}
	lo, hi, ok = p.pair(a, Closed, b, Closed)
	return lo, hi, false, ok
}

// oneSided goes on after the words of one limit.
func (p *plain) oneSided(to side) (lo, hi plainEnd, ok bool) {
	n, ok := p.number()
	if !ok || !p.done() {
		return lo, hi, false
	}
	if to.upper() {
		hi, ok = p.end(n, to.end())
	} else {
		lo, ok = p.end(n, to.end())
	}
	return lo, hi, ok
}

// deviations goes on after a size, and maybe a blank, with two deviations. All
// have one unit, which stands by one of them or by more.
func (p *plain) deviations(size plainNumber, blank bool) (lo, hi plainEnd, ok bool) {
	var d [2]plainNumber
	for i := range d {
		signed := p.skip("+")
		negative := !signed && blank && p.skip("-")
		if !p.digit() {
			return lo, hi, false
		}
		if d[i], ok = p.number(); !ok || !signed && !negative && (d[i].m != 0 || !blank) {
			return lo, hi, false
		}
		d[i].negative = negative
		if i == 0 && !p.skip("/") && !p.blank() {
			return lo, hi, false
		}
		blank = true // a slash serves
	}
	var u *plainUnit
	for _, n := range [...]plainNumber{size, d[0], d[1]} {
		if u == nil {
			u = n.unit
		} else if n.unit != nil && n.unit.unit != u.unit {
			return lo, hi, false
		}
	}
	s, okS := p.value(size, u)
	x, okX := p.value(d[0], u)
	y, okY := p.value(d[1], u)
	if !p.done() || !okS || !okX || !okY {
		return lo, hi, false
	}
	return p.around(s, min(x, y), max(x, y))
}
