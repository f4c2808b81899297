package units

import (
	"database/sql/driver"
	"fmt"
	"strconv"
	"unicode/utf8"
)

func (t *table) refuse(op string, v int64) error {
	return &RangeError{Quantity: t.quantity, Op: op, Value: strconv.FormatInt(v, 10) + " quanta", Kind: ErrRange, Want: "within " + t.rangeText(limit)}
}

// appendText writes the exact text form, which unmarshal reads back.
func (t *table) appendText(dst []byte, v int64) ([]byte, error) {
	if !t.inRange(v) {
		return dst, t.refuse("encode", v)
	}
	return t.exact(dst, v, 0), nil
}

// exact writes v exactly, in the first unit that has a finite decimal for it.
func (t *table) exact(dst []byte, v int64, flags int) []byte {
	out, exact := t.append(dst, v, 0, AllPlaces, NearestEven, flags)
	if exact || !t.inRange(v) {
		return out
	}
	return t.exactElsewhere(out[:len(dst)], v, flags)
}

// exactElsewhere is exact for what the first unit has no finite decimal for.
// Every table has a unit that does (a test holds it to that). Where it is a
// part of a unit that is not above v, both are written: 44° 30′ 15.5″.
func (t *table) exactElsewhere(dst []byte, v int64, flags int) []byte {
	k, places, finite := 0, 0, false
	for !finite && k < len(t.units)-1 {
		k++
		places, finite = t.places(v, uint8(k))
	}
	up := t.above(k)
	if up < 0 || magnitude(v) < uint64(t.units[up].quanta) {
		dst, _ = t.append(dst, v, uint8(k), AllPlaces, NearestEven, flags)
		return dst
	}
	if flags&signed != 0 && v > 0 {
		dst = append(dst, '+')
	}
	dst, _ = t.appendChain(dst, v, written{unit: uint8(k), places: uint8(places)})
	return dst
}

// unmarshal reads what people write, over the whole range.
func (t *table) unmarshal(text []byte) (int64, error) {
	v, _, err := t.parseAny(capped(text), noUnit, limit)
	return v, err
}

// capped is a text, or as much of it as shows the parser that it is too long.
func capped(text []byte) string { return string(text[:min(len(text), inputMax+1)]) }

// scan reads a database's quantum count or text.
func (t *table) scan(src any) (int64, error) {
	switch src := src.(type) {
	case int64:
		if !t.inRange(src) {
			return 0, t.refuse("scan", src)
		}
		return src, nil
	case string:
		v, _, err := t.parseAny(src, noUnit, limit)
		return v, err
	case []byte:
		return t.unmarshal(src)
	}
	return 0, &RangeError{Quantity: t.quantity, Op: "scan", Value: typeName(src), Kind: ErrSyntax,
		Want: "a whole number of quanta or text; for NULL use sql.Null"}
}

func typeName(v any) string {
	name, _ := clip(fmt.Sprintf("%T", v))
	return name
}

func (t *table) value(v int64) (driver.Value, error) {
	if !t.inRange(v) {
		return nil, t.refuse("encode", v)
	}
	return v, nil
}

// format serves fmt: %v and %s write the exact text, or with a precision the
// text rounded to so many places; %q quotes it; %d is the quantum count.
func (t *table) format(s fmt.State, verb rune, v int64) {
	var out []byte
	switch verb {
	case 'v', 's', 'q':
		if verb == 'v' && s.Flag('#') {
			out = append(append(append(out, t.goType...), '('), strconv.FormatInt(v, 10)...)
			out = append(out, ')')
			break
		}
		flags := 0
		if s.Flag('+') {
			flags = signed
		}
		if places, given := s.Precision(); given {
			out, _ = t.append(out, v, 0, places, NearestEven, flags)
		} else {
			out = t.exact(out, v, flags)
		}
		if verb == 'q' {
			out = strconv.AppendQuote(nil, string(out))
		}
	case 'd':
		if s.Flag('+') && v >= 0 {
			out = append(out, '+')
		}
		out = strconv.AppendInt(out, v, 10)
	default:
		out = append(out, "%!"...)
		out = utf8.AppendRune(out, verb)
		out = append(append(append(out, '('), t.goType...), '=')
		out = append(t.exact(out, v, 0), ')')
	}
	width, _ := s.Width()
	pad := width - utf8.RuneCount(out)
	if !s.Flag('-') {
		writePad(s, pad)
	}
	_, _ = s.Write(out)
	if s.Flag('-') {
		writePad(s, pad)
	}
}

func writePad(s fmt.State, n int) {
	for ; n > 0; n-- {
		_, _ = s.Write([]byte{' '})
	}
}
