package document

import (
	"encoding"
	"encoding/json"
	"reflect"
	"strconv"
	"sync"
)

// An op is how a Go type is read.
type op uint8

const (
	opText op = iota // through UnmarshalText
	opString
	opBool
	opInt
	opUint
	opFloat
	opStruct
	opSlice
	opArray
	opMap
	opPointer
)

// A plan is how one Go type is read, worked out once for the type.
type plan struct {
	op      op
	nilable bool // null is read as nil
	flat    bool // a struct whose fields hold neither objects nor lists
	bits    int  // of a number
	typ     reflect.Type
	elem    *plan // of a slice, array, map or pointer
	key     *plan // of a map: opString or opText
	cost    int64 // memory for one element, entry or pointed-to value
	want    string
	empty   reflect.Value // a slice without elements
	*object               // of a struct
}

var (
	textType   = reflect.TypeFor[encoding.TextUnmarshaler]()
	jsonType   = reflect.TypeFor[json.Unmarshaler]()
	numberType = reflect.TypeFor[json.Number]()
)

const (
	wantText   = `a text in quotes, a quantity with its unit, such as "0.07 mm"`
	wantString = "a text in quotes"
	wantObject = "an object in braces {}"
)

// asText is the value's UnmarshalText; the plan has checked that it has one.
func asText(v reflect.Value) encoding.TextUnmarshaler {
	return v.Addr().Interface().(encoding.TextUnmarshaler)
}

var plans sync.Map // reflect.Type to *plan; only finished plans are entered

// planFor gives the type's plan, or says why the type can't be read.
func planFor(t reflect.Type) (*plan, *Error) {
	if p, ok := plans.Load(t); ok {
		return p.(*plan), nil
	}
	b := builder{}
	p, err := b.plan(t, t.String())
	if err != nil {
		return nil, err
	}
	for t, p := range b {
		plans.LoadOrStore(t, p)
	}
	return p, nil
}

// A builder holds the plans of one type and all it consists of, unfinished ones
// included, so that a type may contain itself.
type builder map[reflect.Type]*plan

func (b builder) plan(t reflect.Type, where string) (*plan, *Error) {
	if p, ok := b[t]; ok {
		return p, nil
	}
	p := &plan{typ: t}
	b[t] = p
	refuse := func(why string) (*plan, *Error) {
		return nil, &Error{Kind: ErrTarget, Path: where, Found: why}
	}
	if reflect.PointerTo(t).Implements(textType) {
		p.op, p.want = opText, wantText
		return p, nil
	}
	if reflect.PointerTo(t).Implements(jsonType) {
		return refuse("UnmarshalJSON without UnmarshalText")
	}
	if t == numberType {
		return refuse("a number kept as text")
	}
	switch t.Kind() {
	case reflect.String:
		p.op, p.want = opString, wantString
	case reflect.Bool:
		p.op, p.want = opBool, "true or false"
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		p.op, p.want, p.bits = opInt, "a whole number", t.Bits()
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		p.op, p.want, p.bits = opUint, "a whole number, 0 or more", t.Bits()
	case reflect.Float32, reflect.Float64:
		p.op, p.want, p.bits = opFloat, "a number", t.Bits()
	case reflect.Struct:
		p.op, p.want = opStruct, wantObject
		var err *Error
		if p.object, err = b.object(t, where); err == nil {
			p.flat = p.object.flat()
		}
		return p, err
	case reflect.Slice:
		p.op, p.nilable, p.want = opSlice, true, "a list in brackets []"
		p.empty = reflect.MakeSlice(t, 0, 0)
		if e := t.Elem(); e.Kind() == reflect.Uint8 && !reflect.PointerTo(e).Implements(textType) {
			return refuse("a byte slice")
		}
		return p, b.elements(p, where+"[]")
	case reflect.Array:
		p.op, p.want = opArray, "a list of "+strconv.Itoa(t.Len())+" in brackets []"
		return p, b.elements(p, where+"[]")
	case reflect.Map:
		p.op, p.nilable, p.want = opMap, true, wantObject
		key, err := b.plan(t.Key(), where+"'s key")
		if err != nil {
			return nil, err
		}
		if key.op != opString && key.op != opText {
			return refuse("a map whose keys are not texts")
		}
		p.key = key
		if err := b.elements(p, where+"[]"); err != nil {
			return nil, err
		}
		const overhead = 16 // a map's own, per entry
		p.cost += int64(t.Key().Size()) + overhead
	case reflect.Pointer:
		if t.Elem().Kind() == reflect.Pointer {
			return refuse("a pointer to a pointer")
		}
		p.op, p.nilable = opPointer, true
		if err := b.elements(p, where); err != nil {
			return nil, err
		}
		p.want = p.elem.want
	default:
		return refuse("a type of kind " + t.Kind().String())
	}
	return p, nil
}

// elements plans what a slice, array, map or pointer holds.
func (b builder) elements(p *plan, where string) (err *Error) {
	p.cost = max(1, int64(p.typ.Elem().Size()))
	p.elem, err = b.plan(p.typ.Elem(), where)
	return err
}
