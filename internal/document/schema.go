package document

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Schema reads the number that the document's top-level field "schema" holds,
// and checks that it is one of those wanted, so that a reader can choose the Go
// type for the rest. It stops at that field; what follows is left to [Decode],
// which wants a field for it in its Go type too.
func Schema(data []byte, want ...int) (int, error) { return SchemaNamed("", data, want...) }

// SchemaNamed is [Schema] for a document with a name.
func SchemaNamed(name string, data []byte, want ...int) (int, error) {
	if err := sizeError(name, data); err != nil {
		return 0, err
	}
	d := decoder{data: data}
	n, f := d.schema(want)
	if f != nil {
		return 0, f.report(name, data)
	}
	return n, nil
}

const schemaStep = ".schema"

var schemaPlan = plan{op: opInt, bits: strconv.IntSize, want: "a whole number"}

func (d *decoder) schema(known []int) (int, *fault) {
	if f := d.begin(); f != nil {
		return 0, f
	}
	if d.data[d.at] != '{' {
		return 0, d.wrongType(wantObject)
	}
	d.depth++
	open := d.at
	for first := true; ; first = false {
		more, f := d.more(first, '}', "a field's name in quotes")
		if f != nil {
			return 0, f
		}
		if !more {
			return 0, d.refuse(open, ErrMissing, "", numbers(known)).in(schemaStep)
		}
		name, f := d.str()
		if f != nil {
			return 0, f
		}
		here := string(name) == "schema"
		if f := d.colon(); f != nil {
			return 0, f
		}
		if !here {
			if f := d.skip(); f != nil {
				return 0, f
			}
			continue
		}
		at := d.at
		var n int
		if f := d.value(&schemaPlan, reflect.ValueOf(&n).Elem()); f != nil {
			return 0, f.in(schemaStep)
		}
		if !slices.Contains(known, n) {
			return 0, d.refuse(at, ErrSchema, strconv.Itoa(n), numbers(known)).in(schemaStep)
		}
		return n, nil
	}
}

// skip passes a value of any type.
func (d *decoder) skip() *fault {
	if d.at == len(d.data) {
		return d.truncated(wantValue)
	}
	switch c := d.data[d.at]; {
	case c == '{' || c == '[':
		return d.skipNested(c)
	case c == '"':
		_, f := d.str()
		return f
	case c == '-' || c-'0' <= 9:
		_, _, f := d.numeral()
		return f
	case c == 't' || c == 'f' || d.ahead("nu"):
		return d.literal(c)
	}
	return d.wrongType(wantValue)
}

func (d *decoder) skipNested(opening byte) *fault {
	if f := d.deeper(); f != nil {
		return f
	}
	closing := opening + 2 // so ASCII has them
	for first := true; ; first = false {
		more, f := d.more(first, closing, wantValue)
		if f != nil {
			return f
		}
		if !more {
			d.depth--
			return nil
		}
		if closing == '}' {
			if _, f := d.str(); f != nil {
				return f
			}
			if f := d.colon(); f != nil {
				return f
			}
		}
		if f := d.skip(); f != nil {
			return f
		}
	}
}

// numbers lists schema numbers in words.
func numbers(known []int) string {
	if len(known) == 0 {
		return "a number that this release knows (none)"
	}
	words := make([]string, len(known))
	for i, n := range known {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, " or ")
}
