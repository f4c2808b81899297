package document

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

func (d *decoder) refuse(at int, kind error, found, want string) *fault {
	if kind == ErrSyntax && at < len(d.data) {
		if r, size := utf8.DecodeRune(d.data[at:]); r == utf8.RuneError && size == 1 {
			kind, want = ErrEncoding, "UTF-8"
		}
	}
	return &fault{Error: Error{Kind: kind, Found: found, Want: want}, at: at}
}

func (d *decoder) truncated(want string) *fault {
	return d.refuse(len(d.data), ErrTruncated, "the end of the document", want)
}

func (d *decoder) notFinite(at int) *fault {
	word := d.data[at:min(len(d.data), at+len("-Infinity"))]
	end := 0
	for end < len(word) && (word[end] == '-' || word[end]|0x20 >= 'a' && word[end]|0x20 <= 'z') {
		end++
	}
	return d.refuse(at, ErrNotFinite, string(word[:end]), "a number")
}

// wrongType says what stands where something else is wanted: a value of
// another type, or nothing that is JSON.
func (d *decoder) wrongType(want string) *fault {
	at := d.at
	found := ""
	switch c := d.data[at]; {
	case c == '{':
		found = "an object"
	case c == '[':
		found = "a list"
	case c == '"':
		s, f := d.str()
		if f != nil {
			return f
		}
		found = "the text " + quote(s)
	case c == '-' || c-'0' <= 9:
		s, _, f := d.numeral()
		if f != nil {
			return f
		}
		text, cut := clip(s)
		if cut {
			text += "…"
		}
		found = "the number " + text
		if want == wantText {
			found = "the bare number " + text
		}
	case c == 't' || c == 'f' || d.ahead("nu"):
		if f := d.literal(c); f != nil {
			return f
		}
		found = string(d.data[at:d.at])
	case c|0x20 == 'n' && (d.ahead("NaN") || d.ahead("nan")) || c|0x20 == 'i' && (d.ahead("Inf") || d.ahead("inf")):
		return d.notFinite(at)
	default:
		return d.refuse(at, ErrSyntax, d.character(), want+d.hint())
	}
	return d.refuse(at, ErrType, found, want)
}

// character names the character at hand.
func (d *decoder) character() string {
	r, size := utf8.DecodeRune(d.data[d.at:])
	switch {
	case size == 0:
		return "the end of the document"
	case r == utf8.RuneError && size == 1:
		return "the byte 0x" + strconv.FormatUint(uint64(d.data[d.at])|0x100, 16)[1:]
	}
	return strconv.QuoteRune(r)
}

// hint helps with the slips of writing JSON by hand, at the character at hand.
func (d *decoder) hint() string {
	r, _ := utf8.DecodeRune(d.data[d.at:])
	switch {
	case strings.ContainsRune("'`‘’“”„«»", r):
		return `; text stands between straight double quotation marks`
	case r == '/' || r == '#':
		return "; JSON has no comments"
	case r == '.' || r == '+':
		return "; a number begins with a digit or a minus sign"
	}
	return ""
}

// unknown refuses a name that the struct doesn't have, and offers the nearest.
func (d *decoder) unknown(o *object, name []byte, at int) *fault {
	way, _ := clip(name)
	for _, f := range o.fields {
		if strings.EqualFold(f.name, way) {
			return d.refuse(at, ErrCase, quote(name), quote(f.name)).in(step(way))
		}
	}
	near := ""
	if best := nearest(way, o); best != "" {
		near = "did you mean " + quote(best) + "?"
	}
	return d.refuse(at, ErrUnknown, quote(name), near).in(step(way))
}

// nearest gives the known name that takes the fewest slips of the pen to turn
// into the given one, if these are no more than a third of its letters.
func nearest(name string, o *object) string {
	best, least := "", len(name)+1
	for _, f := range o.fields {
		n := slips([]rune(strings.ToLower(name)), []rune(strings.ToLower(f.name)))
		if n < least && 3*n <= len(f.name)+2 {
			best, least = f.name, n
		}
	}
	return best
}

// slips counts the letters to add, drop or change, and the neighbours to swap,
// that lead from a to b.
func slips(a, b []rune) int {
	before := make([]int, len(b)+1) // two letters of a ago
	last := make([]int, len(b)+1)
	this := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		this[0] = i + 1
		for j := range b {
			change := last[j]
			if a[i] != b[j] {
				change++
			}
			this[j+1] = min(change, last[j+1]+1, this[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				this[j+1] = min(this[j+1], before[j-1]+1)
			}
		}
		before, last, this = last, this, before
	}
	return last[len(b)]
}

func bytes(n int) string { return strconv.Itoa(n) + " bytes" }
