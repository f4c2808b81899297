package units

import (
	"math/bits"
	"strings"
	"unicode/utf8"
)

// scanner walks over an input.
type scanner struct {
	t    *table
	s    string
	i    int
	most int64 // the greatest magnitude to accept, in quanta
}

// written is how a number stood in the input.
type written struct {
	unit     uint8
	places   uint8
	den      uint16 // denominator of a fraction, 0 for a decimal
	compound bool   // several units, as 44°30′
}

// numeral is a number as written: m/10^kept, or m + num/den.
type numeral struct {
	at     int // where it stands
	m      uint64
	places int  // decimal places written
	kept   int  // those of them that are in m: no zeros at the end
	huge   bool // more whole digits than the range of any unit has
	fine   bool // more decimals than m can hold, and than any value has (a test proves it)
	num    uint64
	den    uint16
}

func (p *scanner) fail(at int, kind error, want string) error {
	return p.t.fail(p.s, at, kind, want)
}

// isBlank tells the blanks that may stand in a text, no-break and thin ones
// among them.
func isBlank(r rune) bool {
	switch r {
	case ' ', '\t', '\u00a0', '\u2007', '\u2009', '\u202f':
		return true
	}
	return false
}

// spaces skips blanks.
func (p *scanner) spaces() {
	for p.i < len(p.s) {
		r, n := utf8.DecodeRuneInString(p.s[p.i:])
		if !isBlank(r) {
			return
		}
		p.i += n
	}
}

func trimSpaces(s string) string {
	for {
		r, n := utf8.DecodeLastRuneInString(s)
		if !isBlank(r) {
			return s
		}
		s = s[:len(s)-n]
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

// digits reads a run of digits.
func (p *scanner) digits() string {
	from := p.i
	for p.i < len(p.s) && p.s[p.i]-'0' <= 9 {
		p.i++
	}
	return p.s[from:p.i]
}

func (p *scanner) at(c byte) bool { return p.i < len(p.s) && p.s[p.i] == c }

func (p *scanner) number() (n numeral, err error) {
	n.at = p.i
	whole := p.digits()
	switch {
	case whole != "" && p.at('/'):
		return p.fraction(n, "", n.at, whole)
	case p.at('.') || p.at(','):
		return p.decimals(n, whole)
	case whole == "":
		return n, p.fail(p.i, ErrSyntax, "a number is expected, as "+p.t.examples)
	}
	// A fraction may follow, after a space or a hyphen.
	end := p.i
	hyphen := p.at('-')
	if hyphen {
		p.i++
	} else {
		p.spaces()
	}
	if from := p.i; from > end {
		if next := p.digits(); next != "" {
			if p.at('/') {
				return p.fraction(n, whole, from, next)
			} else if !hyphen {
				return n, p.fail(from, ErrSyntax, "a number has no spaces in it, and a unit after it")
			}
		}
	}
	p.i = end
	n.collect(whole, "")
	return n, nil
}

// decimals reads the rest of a number from its decimal mark on.
func (p *scanner) decimals(n numeral, whole string) (numeral, error) {
	mark := p.i
	p.i++
	frac := p.digits()
	switch {
	case whole == "" && frac == "":
		return n, p.fail(n.at, ErrSyntax, "a number is expected, as "+p.t.examples)
	case p.at('.') || p.at(','):
		return n, p.fail(p.i, ErrSyntax, "a number has one decimal mark and no thousands marks")
	case p.s[mark] == ',' && len(frac) == 3 && 1 <= len(whole) && len(whole) <= 3 && whole[0] != '0':
		return n, p.fail(mark, ErrAmbiguous, "the comma may mark decimals or thousands: write a point, or no mark")
	}
	n.collect(whole, frac)
	return n, nil
}

// fraction reads the rest of a fraction, from its stroke on. A whole number
// may stand before it.
func (p *scanner) fraction(n numeral, whole string, at int, over string) (numeral, error) {
	m, ok := small(whole, wholeDigits)
	if !ok {
		return n, p.fail(n.at, ErrRange, "the whole number before a fraction has at most 13 digits")
	}
	p.i++
	under := p.i
	num, ok1 := small(over, 9)
	den, ok2 := small(p.digits(), 9)
	switch {
	case under == p.i:
		return n, p.fail(under, ErrSyntax, "a fraction has digits on both sides, as 25/64")
	case !ok1 || !ok2 || den > 1<<16-1:
		return n, p.fail(at, ErrSyntax, "a fraction's denominator is at most 65535, its numerator has at most 9 digits")
	case den == 0:
		return n, p.fail(under, ErrSyntax, "a fraction's denominator is not 0")
	case whole != "" && num >= den:
		return n, p.fail(at, ErrSyntax, "the fraction after a whole number is less than 1")
	}
	n.m, n.num, n.den = m, num, uint16(den)
	return n, nil
}

// wholeDigits is how long the whole number before a fraction may be: times a
// denominator it still fits 64 bits.
const wholeDigits = 13

// small reads up to most digits.
func small(s string, most int) (v uint64, ok bool) {
	if len(s) > most {
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
	whole, frac = strings.TrimLeft(whole, "0"), strings.TrimRight(frac, "0")
	if n.huge = len(whole) > 19; n.huge {
		return
	}
	for i := range len(whole) {
		n.m = n.m*10 + uint64(whole[i]-'0')
	}
	for i := range len(frac) {
		hi, lo := bits.Mul64(n.m, 10)
		lo, carry := bits.Add64(lo, uint64(frac[i]-'0'), 0)
		if n.fine = hi|carry != 0 || n.kept == len(pow10)-1; n.fine {
			return
		}
		n.m = lo
		n.kept++
	}
}

// scale turns a number of units into quanta, exactly.
func (p *scanner) scale(n numeral, u *unit) (uint64, error) {
	mul, den := n.m, pow10[n.kept]
	if n.den != 0 {
		mul, den = n.m*uint64(n.den)+n.num, uint64(n.den)
	}
	hi, lo := bits.Mul64(mul, uint64(u.quanta))
	if n.huge || hi >= den {
		return 0, p.fail(n.at, ErrRange, "the range is "+p.t.rangeText(p.most))
	}
	q, rem := bits.Div64(hi, lo, den)
	if q > 2*limit {
		return 0, p.fail(n.at, ErrRange, "the range is "+p.t.rangeText(p.most))
	}
	if rem != 0 || n.fine {
		return 0, p.fail(n.at, ErrTooFine, "every multiple of "+p.t.finest(u)+" is held exactly")
	}
	return q, nil
}

// unitName reads a unit's name, up to the next digit or the end.
func (p *scanner) unitName(def uint8, follows bool) (int, error) {
	p.spaces()
	from := p.i
	to := from
	for to < len(p.s) && p.s[to]-'0' > 9 {
		to++
	}
	if to < len(p.s) { // a digit belongs to the name in such as cm3 and lb/in2
		if k := p.t.find(trimSpaces(p.s[from:]), noUnit); k >= 0 {
			p.i = len(p.s)
			return k, nil
		}
	}
	name := trimSpaces(p.s[from:to])
	p.i = to
	if name == "" && def != noUnit && !follows {
		return int(def), nil
	}
	k, want, kind := p.t.lookup(name)
	switch {
	case kind == nil:
		return k, nil
	case !utf8.ValidString(name):
		kind, want = ErrSyntax, "the text is not valid UTF-8"
	case kind == ErrUnknownUnit && !isName(name):
		kind = ErrSyntax
	}
	return 0, p.fail(from, kind, want)
}

// isName reports whether s may have been meant as a unit's name rather than
// as part of a number.
func isName(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	exponent := (r == 'e' || r == 'E') && (len(s) == 1 || s[1] == '+' || s[1] == '-')
	return r != '/' && r != '-' && r != '+' && r != '.' && r != ',' && !exponent
}
