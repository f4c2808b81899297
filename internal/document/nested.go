package document

import (
	"reflect"
	"strconv"
)

// object reads an object into a struct.
func (d *decoder) object(p *plan, v reflect.Value) *fault {
	open := d.at
	var few [2]uint64
	seen := few[:]
	if len(p.fields) > 64*len(few) {
		seen = make([]uint64, (len(p.fields)+63)/64)
	}
	required := 0
	next := 0 // the field expected next: documents mostly keep the struct's order
	for first := true; ; first = false {
		more, f := d.more(first, '}', "a field's name in quotes")
		if f != nil {
			return f
		}
		if !more {
			break
		}
		at := d.at
		i, f := d.field(p.object, next)
		if f != nil {
			return f
		}
		field := &p.fields[i]
		if seen[i/64]&(1<<(i%64)) != 0 {
			return d.refuse(at, ErrDuplicate, quote(field.name), "").in(step(field.name))
		}
		seen[i/64] |= 1 << (i % 64)
		if field.required {
			required++
		}
		next = i + 1
		if f := d.colon(); f != nil {
			return f.in(step(field.name))
		}
		if f := d.value(field.plan, field.of(v)); f != nil {
			return f.in(step(field.name))
		}
	}
	if required == p.required {
		return nil
	}
	return d.missing(p.object, seen, open)
}

// missing names the first field that is required and not there.
func (d *decoder) missing(o *object, seen []uint64, open int) *fault {
	i := 0
	for !o.fields[i].required || seen[i/64]&(1<<(i%64)) != 0 {
		i++
	}
	return d.refuse(open, ErrMissing, "", o.fields[i].plan.want).in(step(o.fields[i].name))
}

// field passes a field's name and gives its place in the struct.
func (d *decoder) field(o *object, next int) (int, *fault) {
	for i := next; i < len(o.fields) && i < next+4; i++ { // some may be left out
		if d.ahead(o.fields[i].quoted) {
			d.at += len(o.fields[i].quoted)
			return i, nil
		}
	}
	at := d.at
	name, f := d.str()
	if f != nil {
		return 0, f
	}
	i, known := o.byName[string(name)]
	if !known {
		return 0, d.unknown(o, name, at)
	}
	return i, nil
}

// more passes what stands before the next entry of an object or list: its
// bracket if this is the first entry, otherwise a comma. It reports whether
// there is an entry, and passes the closing bracket if there is none.
func (d *decoder) more(first bool, closing byte, want string) (bool, *fault) {
	if !first {
		d.space()
		switch {
		case d.at == len(d.data):
			return false, d.truncated("a comma or " + string(closing))
		case d.data[d.at] == closing:
			d.at++
			return false, nil
		case d.data[d.at] != ',':
			return false, d.refuse(d.at, ErrSyntax, d.character(), "a comma or "+string(closing))
		}
	}
	d.at++
	d.space()
	switch {
	case d.at == len(d.data):
		return false, d.truncated(want)
	case d.data[d.at] == closing:
		if !first {
			return false, d.refuse(d.at, ErrSyntax, d.character()+" after a comma", want)
		}
		d.at++
		return false, nil
	case closing == '}' && d.data[d.at] != '"':
		return false, d.refuse(d.at, ErrSyntax, d.character(), want+d.hint())
	}
	return true, nil
}

// colon passes the colon after a name, with the blanks around it.
func (d *decoder) colon() *fault {
	if !d.ahead(":") {
		d.space()
		switch {
		case d.at == len(d.data):
			return d.truncated("a colon")
		case d.data[d.at] != ':':
			return d.refuse(d.at, ErrSyntax, d.character(), "a colon")
		}
	}
	d.at++
	d.space()
	return nil
}

const wantValue = "a value"

// slice reads a list of any length.
func (d *decoder) slice(p *plan, v reflect.Value) *fault {
	n := 0
	for ; ; n++ {
		more, f := d.more(n == 0, ']', wantValue)
		if f != nil {
			return f.inElement(n)
		}
		if !more {
			break
		}
		if n == v.Cap() {
			grow := d.elements(p.elem)
			if grow < n || grow == 0 {
				grow = max(4, n)
			}
			if f := d.spend(int64(grow) * p.cost); f != nil {
				return f.inElement(n)
			}
			v.Grow(grow)
		}
		v.SetLen(n + 1)
		if f := d.value(p.elem, v.Index(n)); f != nil {
			return f.inElement(n)
		}
	}
	if n == 0 {
		v.Set(p.empty)
	}
	return nil
}

// array reads a list of exactly the array's length.
func (d *decoder) array(p *plan, v reflect.Value) *fault {
	open := d.at
	n := 0
	for ; ; n++ {
		more, f := d.more(n == 0, ']', wantValue)
		if f != nil {
			return f.inElement(n)
		}
		if !more {
			break
		}
		if n == v.Len() {
			return d.refuse(d.at, ErrCount, "one more", p.want).inElement(n)
		}
		if f := d.value(p.elem, v.Index(n)); f != nil {
			return f.inElement(n)
		}
	}
	if n < v.Len() {
		return d.refuse(open, ErrCount, strconv.Itoa(n), p.want)
	}
	return nil
}

// mapping reads an object into a map.
func (d *decoder) mapping(p *plan, v reflect.Value) *fault {
	m := reflect.MakeMap(p.typ)
	key := reflect.New(p.key.typ).Elem()
	var entry reflect.Value
	for first := true; ; first = false {
		more, f := d.more(first, '}', "a name in quotes")
		if f != nil {
			return f
		}
		if !more {
			break
		}
		at := d.at
		name, f := d.str()
		if f != nil {
			return f
		}
		way := string(name)
		key.SetZero()
		if p.key.op == opString {
			key.SetString(way)
		} else if err := asText(key).UnmarshalText(name); err != nil {
			f := d.refuse(at, ErrValue, quote(way), "").in(step(way))
			f.Cause = err
			return f
		}
		if m.MapIndex(key).IsValid() {
			return d.refuse(at, ErrDuplicate, quote(way), "").in(step(way))
		}
		if f := d.colon(); f != nil {
			return f.in(step(way))
		}
		if f := d.spend(p.cost); f != nil {
			return f.in(step(way))
		}
		if first {
			entry = reflect.New(p.elem.typ).Elem()
		} else {
			entry.SetZero()
		}
		if f := d.value(p.elem, entry); f != nil {
			return f.in(step(way))
		}
		m.SetMapIndex(key, entry)
	}
	v.Set(m)
	return nil
}
