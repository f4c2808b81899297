package document

import (
	"unicode/utf16"
	"unicode/utf8"
)

// space passes blanks and line ends.
func (d *decoder) space() {
	for d.at < len(d.data) {
		switch d.data[d.at] {
		case ' ', '\n', '\t', '\r':
			d.at++
		default:
			return
		}
	}
}

// ahead reports whether the input goes on with s.
func (d *decoder) ahead(s string) bool {
	return len(d.data)-d.at >= len(s) && string(d.data[d.at:d.at+len(s)]) == s
}

// literal passes true, false or null, whose first letter is at hand.
func (d *decoder) literal(first byte) *fault {
	word := "null"
	switch first {
	case 't':
		word = "true"
	case 'f':
		word = "false"
	}
	for i := range len(word) {
		switch {
		case d.at+i == len(d.data):
			d.at += i
			return d.truncated(word)
		case d.data[d.at+i] != word[i]:
			d.at += i
			return d.refuse(d.at, ErrSyntax, d.character(), word)
		}
	}
	d.at += len(word)
	return nil
}

// str passes a quoted text, whose first quotation mark is at hand, and gives it
// with its escapes undone. The bytes are valid until the next call.
func (d *decoder) str() ([]byte, *fault) {
	open := d.at
	start := d.at + 1
	var high byte
	for i, c := range d.data[start:] {
		switch {
		case c == '"':
			d.at = start + i + 1
			s := d.data[start : start+i : start+i]
			if high >= utf8.RuneSelf {
				return s, d.checkUTF8(s, start)
			}
			return s, nil
		case c == '\\':
			return d.escaped(open, start+i)
		case c < ' ':
			return nil, d.control(start + i)
		}
		high |= c
	}
	return nil, d.unclosed()
}

// escaped goes on with a text from its first backslash.
func (d *decoder) escaped(open, at int) ([]byte, *fault) {
	b := append(d.scratch[:0], d.data[open+1:at]...)
	for at < len(d.data) {
		c := d.data[at]
		switch {
		case c == '"':
			d.at, d.scratch = at+1, b
			return b, d.checkUTF8(d.data[open+1:at], open+1)
		case c < ' ':
			return nil, d.control(at)
		case c != '\\':
			b = append(b, c)
			at++
			continue
		}
		if at+1 == len(d.data) {
			break
		}
		switch c := d.data[at+1]; c {
		case '"', '\\', '/':
			b = append(b, c)
		case 'b':
			b = append(b, '\b')
		case 'f':
			b = append(b, '\f')
		case 'n':
			b = append(b, '\n')
		case 'r':
			b = append(b, '\r')
		case 't':
			b = append(b, '\t')
		case 'u':
			r, next, f := d.unicode(at)
			if f != nil {
				return nil, f
			}
			b, at = utf8.AppendRune(b, r), next
			continue
		default:
			d.at = at + 1
			return nil, d.refuse(at, ErrSyntax, `a backslash before `+d.character(),
				`one of " \ / b f n r t u after a backslash`)
		}
		at += 2
	}
	return nil, d.unclosed()
}

// unicode reads \uXXXX, or two of them that are a surrogate pair, at the offset.
func (d *decoder) unicode(at int) (r rune, next int, f *fault) {
	r, f = d.hex4(at)
	if f != nil || !utf16.IsSurrogate(r) {
		return r, at + 6, f
	}
	const half = "half a surrogate pair"
	if r >= 0xDC00 { // the second half comes first
		return 0, 0, d.refuse(at, ErrEncoding, half, "")
	}
	for i, c := range []byte(`\u`) {
		switch {
		case at+6+i == len(d.data):
			return 0, 0, d.unclosed()
		case d.data[at+6+i] != c:
			return 0, 0, d.refuse(at, ErrEncoding, half, "")
		}
	}
	low, f := d.hex4(at + 6)
	if f != nil {
		return 0, 0, f
	}
	if r = utf16.DecodeRune(r, low); r == utf8.RuneError {
		return 0, 0, d.refuse(at, ErrEncoding, half, "")
	}
	return r, at + 12, nil
}

// hex4 reads the four digits of \uXXXX at the offset.
func (d *decoder) hex4(at int) (r rune, f *fault) {
	for i := at + 2; i < at+6; i++ {
		if i >= len(d.data) {
			return 0, d.unclosed()
		}
		c := d.data[i]
		switch {
		case c-'0' <= 9:
			c -= '0'
		case c|0x20 >= 'a' && c|0x20 <= 'f':
			c = c | 0x20 - 'a' + 10
		default:
			d.at = i
			return 0, d.refuse(at, ErrSyntax, d.character()+` in a \u escape`, "four digits of base 16")
		}
		r = r<<4 | rune(c)
	}
	return r, nil
}

// checkUTF8 refuses a text that is not valid UTF-8 and points at its first bad byte.
func (d *decoder) checkUTF8(s []byte, start int) *fault {
	if utf8.Valid(s) {
		return nil
	}
	for at := 0; ; {
		r, size := utf8.DecodeRune(s[at:])
		if r == utf8.RuneError && size <= 1 {
			d.at = start + at
			return d.refuse(d.at, ErrEncoding, d.character(), "UTF-8")
		}
		at += size
	}
}

func (d *decoder) control(at int) *fault {
	d.at = at
	return d.refuse(at, ErrSyntax, d.character()+" within a text", `its closing quotation mark, or an escape such as \n`)
}

func (d *decoder) unclosed() *fault {
	d.at = len(d.data)
	return d.truncated("the closing quotation mark of a text")
}
