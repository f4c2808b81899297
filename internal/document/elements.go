package document

import std "bytes"

// window is how far ahead of a list's next element its end is looked for.
const window = 16 << 10

// elements guesses how many elements of a list are still to come, the one at
// hand among them, so that as a rule a slice grows once, to its size. It is 0
// where nothing can be told at a glance: of elements that hold others.
func (d *decoder) elements(elem *plan) int {
	rest := d.data[d.at:min(len(d.data), d.at+window)]
	switch elem.op {
	case opText, opString:
		return std.Count(untilEnd(rest, '"'), []byte{'"'}) / 2
	case opBool, opInt, opUint, opFloat:
		if end := std.IndexByte(rest, ']'); end >= 0 {
			rest = rest[:end]
		}
		return std.Count(rest, []byte{','}) + 1
	case opStruct:
		if elem.flat {
			return std.Count(untilEnd(rest, '}'), []byte{'{'})
		}
	}
	return 0
}

// untilEnd is s up to the bracket that ends a list whose elements end in last;
// a bracket within a text, as in "[0.06 mm, 0.07 mm]", stands after none.
func untilEnd(s []byte, last byte) []byte {
	for from := 0; ; {
		i := std.IndexByte(s[from:], ']')
		if i < 0 {
			return s
		}
		end := from + i
		before := std.TrimRight(s[:end], " \n\r\t")
		if len(before) > 0 && before[len(before)-1] == last {
			return s[:end]
		}
		from = end + 1
	}
}

// flat reports whether no field holds an object or a list.
func (o *object) flat() bool {
	for i := range o.fields {
		p := o.fields[i].plan
		if p.op == opPointer && p.elem != nil { // nil while it is being planned
			p = p.elem
		}
		switch p.op {
		case opStruct, opSlice, opArray, opMap, opPointer:
			return false
		}
	}
	return true
}
