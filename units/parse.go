package units

import (
	"math/bits"
	"strings"
	"unicode/utf8"
)

// inputMax is the longest input in bytes that a parser looks at.
const inputMax = 256

// noUnit says that a bare number has no default unit.
const noUnit = 0xff

var pow10 = [20]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19}

// written is how a number stood in the input.
type written struct {
	unit     uint8
	places   uint8
	den      uint16 // denominator of a fraction, 0 for a decimal
	compound bool   // several units, as 44°30′
}

// parse reads the plain ASCII forms and leaves the rest to parseAny, whose
// answers it shares (a test holds them together).
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
	name := s[i:]
	for k := range t.units {
		u := &t.units[k]
		if u.symbol != name {
			continue
		}
		if places > u.places {
			break
		}
		hi, lo := bits.Mul64(m, uint64(u.step[places]))
		if hi != 0 || lo > uint64(t.parseMax) {
			break
		}
		v := int64(lo)
		if negative {
			v = -v
		}
		v += u.zero
		if v < t.least || v > t.parseMax || v < -t.parseMax {
			break
		}
		return v, nil
	}
	return t.parseSlow(s, def)
}

func (t *table) parseSlow(s string, def uint8) (int64, error) {
	v, _, err := t.parseAny(s, def, t.parseMax)
	return v, err
}

// parseAny reads every accepted form: see the package comment.
func (t *table) parseAny(s string, def uint8, most int64) (v int64, w written, err error) {
	if len(s) > inputMax {
		return 0, w, t.fail(s, inputMax, ErrSyntax, "a quantity has at most 256 bytes")
	}
	p := scanner{t: t, s: s}
	p.spaces()
	if p.i == len(s) {
		return 0, w, t.fail(s, 0, ErrSyntax, "a number and a unit are expected, as "+t.examples)
	}
	negative := p.sign()
	var total uint64
	for part := 0; ; part++ {
		num, err := p.number()
		if err != nil {
			return 0, w, err
		}
		at := p.i
		k, err := p.unitName(def, part > 0)
		if err != nil {
			return 0, w, err
		}
		u := &t.units[k]
		quanta, err := p.scale(num, u)
		if err != nil {
			return 0, w, err
		}
		if part > 0 {
			if prev := &t.units[w.unit]; prev.sub != k+1 {
				return 0, w, t.fail(s, at, ErrSyntax, "one quantity has one unit, or descending ones as 44° 30′ 15″")
			} else if quanta >= uint64(prev.quanta) {
				return 0, w, t.fail(s, num.at, ErrSyntax, "this part is as large as one of the unit before it")
			}
			w.compound = true
		}
		if p.i < len(s) && (num.places > 0 || num.den != 0) {
			return 0, w, t.fail(s, p.i, ErrSyntax, "only the last part of a quantity may have decimals")
		}
		w.unit, w.places, w.den = uint8(k), uint8(num.places), num.den
		// Neither addend passes 2^62: scale has seen to it.
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
		return 0, w, t.fail(s, 0, ErrRange, "the range is "+t.rangeText(most))
	}
	return v, w, nil
}

func (t *table) rangeText(most int64) string {
	if most == t.parseMax {
		return t.parseText
	}
	return "±2^61 quanta"
}

// scanner walks over an input.
type scanner struct {
	t *table
	s string
	i int
}

// numeral is a number as written: m/10^places, or (m·den + num)/den.
type numeral struct {
	at     int
	m      uint64
	places int
	num    uint64
	den    uint16
	excess error // ErrTooFine or ErrRange, when it has more digits than fit
}

func (p *scanner) fail(at int, kind error, want string) error {
	return p.t.fail(p.s, at, kind, want)
}

// spaces skips blanks, no-break and thin ones among them.
func (p *scanner) spaces() {
	for p.i < len(p.s) {
		switch r, n := utf8.DecodeRuneInString(p.s[p.i:]); r {
		case ' ', '\t', '\u00a0', '\u2007', '\u2009', '\u202f':
			p.i += n
		default:
			return
		}
	}
}

func (p *scanner) sign() (negative bool) {
	switch rest := p.s[p.i:]; {
	case strings.HasPrefix(rest, "-"):
		negative = true
		p.i++
	case strings.HasPrefix(rest, "−"):
		negative = true
		p.i += len("−")
	case strings.HasPrefix(rest, "+"):
		p.i++
	default:
		return false
	}
	p.spaces()
	return negative
}

// digits reads a run of digits and gives the end of the run.
func (p *scanner) digits() (from, to int) {
	from = p.i
	for p.i < len(p.s) && p.s[p.i]-'0' <= 9 {
		p.i++
	}
	return from, p.i
}

func (p *scanner) at(c byte) bool { return p.i < len(p.s) && p.s[p.i] == c }

func (p *scanner) number() (n numeral, err error) {
	n.at = p.i
	from, to := p.digits()
	switch {
	case p.at('/') && to > from:
		return p.fraction(n, 0, from, to)
	case p.at('.') || p.at(','):
		mark := p.s[p.i]
		p.i++
		dfrom, dto := p.digits()
		if from == to && dfrom == dto {
			return n, p.fail(n.at, ErrSyntax, "a number is expected, as "+p.t.examples)
		}
		if p.at('.') || p.at(',') {
			return n, p.fail(p.i, ErrSyntax, "a number has one decimal mark and no thousands marks")
		}
		if mark == ',' && dto-dfrom == 3 && to-from >= 1 && to-from <= 3 && p.s[from] != '0' {
			return n, p.fail(dfrom-1, ErrAmbiguous, "the comma may mark decimals or thousands: write a point, or no mark")
		}
		n.collect(p.s[from:to], p.s[dfrom:dto])
		return n, nil
	case from == to:
		return n, p.fail(p.i, ErrSyntax, "a number is expected, as "+p.t.examples)
	}
	// A whole number; a fraction may follow it, after a space or a hyphen.
	after := p.i
	if p.at('-') {
		p.i++
	} else {
		p.spaces()
	}
	if p.i > after {
		ffrom, fto := p.digits()
		if fto > ffrom && p.at('/') {
			whole, ok := small(p.s[from:to])
			if !ok {
				return n, p.fail(from, ErrRange, "the whole number before a fraction has at most 9 digits")
			}
			return p.fraction(n, whole, ffrom, fto)
		}
	}
	p.i = after
	n.collect(p.s[from:to], "")
	return n, nil
}

// fraction reads the rest of a fraction whose numerator stands in [from,to).
func (p *scanner) fraction(n numeral, whole uint64, from, to int) (numeral, error) {
	mixed := from > n.at
	num, ok1 := small(p.s[from:to])
	p.i++
	dfrom, dto := p.digits()
	den, ok2 := small(p.s[dfrom:dto])
	switch {
	case dfrom == dto:
		return n, p.fail(dfrom, ErrSyntax, "a fraction has digits on both sides, as 25/64")
	case !ok1 || !ok2 || den > 1<<16-1:
		return n, p.fail(from, ErrSyntax, "a fraction's denominator is at most 65535, its numerator has at most 9 digits")
	case den == 0:
		return n, p.fail(dfrom, ErrSyntax, "a fraction's denominator is not 0")
	case mixed && num >= den:
		return n, p.fail(from, ErrSyntax, "the fraction after a whole number is less than 1")
	}
	n.m, n.num, n.den = whole, num, uint16(den)
	return n, nil
}

// small reads up to 9 digits.
func small(s string) (v uint64, ok bool) {
	if len(s) > 9 {
		return 0, false
	}
	for i := range len(s) {
		v = v*10 + uint64(s[i]-'0')
	}
	return v, true
}

// collect takes the digits before and after the decimal mark.
func (n *numeral) collect(whole, frac string) {
	n.places = len(frac)
	whole = strings.TrimLeft(whole, "0")
	kept := strings.TrimRight(frac, "0")
	if len(whole) > 16 {
		n.excess = ErrRange
		return
	}
	if len(whole)+len(kept) > 19 {
		n.excess = ErrTooFine // no unit here divides so far
		return
	}
	for _, run := range [...]string{whole, kept} {
		for i := range len(run) {
			n.m = n.m*10 + uint64(run[i]-'0')
		}
	}
	n.num = uint64(len(kept)) // kept places, for scale
}

// scale turns a number of units into quanta, exactly.
func (p *scanner) scale(n numeral, u *unit) (uint64, error) {
	finer := func() error {
		return p.fail(n.at, ErrTooFine, "the finest step is "+p.t.finest(u))
	}
	outside := func() error {
		return p.fail(n.at, ErrRange, "the range is "+p.t.parseText)
	}
	switch n.excess {
	case ErrTooFine:
		return 0, finer()
	case ErrRange:
		return 0, outside()
	}
	mul, den := n.m, uint64(1)
	if n.den != 0 {
		mul, den = n.m*uint64(n.den)+n.num, uint64(n.den)
	} else {
		den = pow10[n.num]
	}
	hi, lo := bits.Mul64(mul, uint64(u.quanta))
	if hi >= den {
		return 0, outside()
	}
	q, r := bits.Div64(hi, lo, den)
	if r != 0 {
		return 0, finer()
	}
	if q > limit {
		return 0, outside()
	}
	return q, nil
}

// finest writes the step to which every value in u is held.
func (t *table) finest(u *unit) string {
	if u.places == 0 {
		return "1 " + u.symbol
	}
	return "0." + strings.Repeat("0", u.places-1) + "1 " + u.symbol
}

// unitName reads a unit's name, up to the next digit or the end.
func (p *scanner) unitName(def uint8, follows bool) (int, error) {
	p.spaces()
	from := p.i
	to := from
	for to < len(p.s) && p.s[to]-'0' > 9 {
		to++
	}
	// A digit belongs to the name in such as cm3 and lb/in2.
	if to < len(p.s) {
		if k, kind, _ := p.t.lookup(trimSpaces(p.s[from:])); kind == nil {
			p.i = len(p.s)
			return k, nil
		}
	}
	name := trimSpaces(p.s[from:to])
	if name == "" && def != noUnit && !follows {
		p.i = to
		return int(def), nil
	}
	k, kind, want := p.t.lookup(name)
	if kind != nil {
		if !utf8.ValidString(name) {
			kind, want = ErrSyntax, "the text is not valid UTF-8"
		} else if kind == ErrUnknownUnit && !isName(name) {
			kind = ErrSyntax
		}
		return 0, p.fail(from, kind, want)
	}
	p.i = to
	return k, nil
}

// isName reports whether s may have been meant as a unit's name rather than
// as part of a number.
func isName(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	exponent := (r == 'e' || r == 'E') && (len(s) == 1 || s[1] == '+' || s[1] == '-')
	return r != '/' && r != '-' && r != '+' && r != '.' && r != ',' && !exponent
}

func trimSpaces(s string) string {
	return strings.TrimRight(s, " \t\u00a0\u2007\u2009\u202f")
}

// Parse reads a quantity as people write it. See the package comment for
// what is accepted. [ParseLength] and its fellows name the type.
func Parse[Q Quantity](s string) (Q, error) {
	v, err := tableOf[Q]().parse(s, noUnit)
	return Q(v), err
}

// ParseIn reads a quantity as [Parse] does; a number without a unit is in
// unit u.
func ParseIn[Q Quantity](s string, u Unit[Q]) (Q, error) {
	t := tableOf[Q]()
	if int(u) >= len(t.units) {
		u = 0
	}
	v, err := t.parse(s, uint8(u))
	return Q(v), err
}
