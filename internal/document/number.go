package document

import (
	"math"
	"reflect"
	"strconv"
)

// numeral passes a number, whose first character is at hand, and reports
// whether it is written as a whole number.
func (d *decoder) numeral() (s []byte, whole bool, f *fault) {
	start := d.at
	if d.data[d.at] == '-' {
		d.at++
	}
	switch {
	case d.ahead("0"):
		d.at++
		if d.at < len(d.data) && d.data[d.at]-'0' <= 9 {
			return nil, false, d.refuse(d.at, ErrSyntax, "a number that begins with 0", "one without leading zeros")
		}
	case !d.digits():
		if d.ahead("I") || d.ahead("i") {
			return nil, false, d.notFinite(start)
		}
		return nil, false, d.noDigit("a digit after the minus sign")
	}
	whole = true
	if d.ahead(".") {
		whole = false
		d.at++
		if !d.digits() {
			return nil, false, d.noDigit("a digit after the point")
		}
	}
	if d.ahead("e") || d.ahead("E") {
		whole = false
		d.at++
		if d.ahead("+") || d.ahead("-") {
			d.at++
		}
		if !d.digits() {
			return nil, false, d.noDigit("a digit in the exponent")
		}
	}
	return d.data[start:d.at], whole, nil
}

// digits passes digits, and reports whether there was one.
func (d *decoder) digits() bool {
	start := d.at
	for d.at < len(d.data) && d.data[d.at]-'0' <= 9 {
		d.at++
	}
	return d.at > start
}

func (d *decoder) noDigit(want string) *fault {
	if d.at == len(d.data) {
		return d.truncated(want)
	}
	return d.refuse(d.at, ErrSyntax, d.character(), want)
}

// number reads a number into v.
func (d *decoder) number(p *plan, v reflect.Value) *fault {
	start := d.at
	s, whole, f := d.numeral()
	if f != nil {
		return f
	}
	outOfRange := func(want string) *fault {
		text, cut := clip(s)
		if cut {
			text += "…"
		}
		return d.refuse(start, ErrRange, text, want)
	}
	if p.op == opFloat {
		x, err := strconv.ParseFloat(string(s), p.bits)
		switch {
		case err != nil:
			return outOfRange("a number that a float of " + strconv.Itoa(p.bits) + " bits holds")
		case x == 0 && !zero(s):
			return outOfRange("0, or a number that is not lost to 0")
		}
		v.SetFloat(x)
		return nil
	}
	if !whole {
		d.at = start
		return d.wrongType(p.want)
	}
	minus := s[0] == '-'
	if minus {
		s = s[1:]
	}
	size, fits := natural(s)
	if minus {
		s = d.data[start:d.at] // for the error
	}
	if p.op == opUint {
		if minus || !fits || v.OverflowUint(size) {
			return outOfRange("a whole number from 0 to " + strconv.FormatUint(math.MaxUint64>>(64-p.bits), 10))
		}
		v.SetUint(size)
		return nil
	}
	limit := uint64(1) << (p.bits - 1) // how far down it goes; up, it is one less
	if !fits || size > limit || size == limit && !minus {
		return outOfRange("a whole number from -" + strconv.FormatUint(limit, 10) + " to " + strconv.FormatUint(limit-1, 10))
	}
	x := int64(size)
	if minus {
		x = -x // also right for the least int64, which is its own negative
	}
	v.SetInt(x)
	return nil
}

// natural gives the value of digits, and whether it fits.
func natural(s []byte) (n uint64, fits bool) {
	for _, c := range s {
		digit := uint64(c - '0')
		if n > (math.MaxUint64-digit)/10 {
			return 0, false
		}
		n = n*10 + digit
	}
	return n, true
}

// zero reports whether a numeral is written as nought.
func zero(s []byte) bool {
	for _, c := range s {
		switch {
		case c|0x20 == 'e':
			return true
		case c >= '1' && c <= '9':
			return false
		}
	}
	return true
}
