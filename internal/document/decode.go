package document

import "reflect"

// What one document may cost.
const (
	MaxSize   = 64 << 20  // bytes of input
	MaxDepth  = 64        // objects and lists within each other
	MaxMemory = 512 << 20 // bytes of slice elements, map entries and pointed-to values
)

// Decode reads one JSON document into the value that into points to. The value
// is replaced as a whole, or left untouched on an error, which is an [*Error].
func Decode(data []byte, into any) error { return DecodeNamed("", data, into) }

// DecodeNamed is [Decode] for a document with a name, usually its file's, that
// begins the text of errors: "engine.json:12: grooves[2].width: missing field".
func DecodeNamed(name string, data []byte, into any) error {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		found := "nil"
		if target.IsValid() {
			found = target.Type().String()
		}
		return &Error{Name: name, Kind: ErrTarget, Found: found, Want: "a pointer that is not nil"}
	}
	p, refused := planFor(target.Type().Elem())
	if refused != nil {
		named := *refused
		named.Name = name
		return &named
	}
	if err := sizeError(name, data); err != nil {
		return err
	}
	d := decoder{data: data}
	fresh := reflect.New(p.typ).Elem()
	if f := d.document(p, fresh); f != nil {
		return f.report(name, data)
	}
	target.Elem().Set(fresh)
	return nil
}

func sizeError(name string, data []byte) error {
	if len(data) <= MaxSize {
		return nil
	}
	return &Error{Name: name, Kind: ErrSize,
		Found: bytes(len(data)), Want: "at most " + bytes(MaxSize)}
}

// A decoder walks the input once.
type decoder struct {
	data    []byte
	at      int
	depth   int
	spent   int64  // bytes of MaxMemory
	scratch []byte // a text with its escapes undone
}

// document reads the one value of the input and nothing after it.
func (d *decoder) document(p *plan, v reflect.Value) *fault {
	if f := d.begin(); f != nil {
		return f
	}
	if f := d.value(p, v); f != nil {
		return f
	}
	d.space()
	if d.at < len(d.data) {
		return d.refuse(d.at, ErrTrailing, d.character(), "the end of the document")
	}
	return nil
}

// begin stops at the first character of the document.
func (d *decoder) begin() *fault {
	if len(d.data) >= 3 && string(d.data[:3]) == "\uFEFF" {
		return d.refuse(0, ErrSyntax, "a byte order mark", "plain UTF-8 without one")
	}
	d.space()
	if d.at == len(d.data) {
		return d.refuse(d.at, ErrEmpty, "", "")
	}
	return nil
}

// value reads the value at hand, from its first character, by its plan.
func (d *decoder) value(p *plan, v reflect.Value) *fault {
	if d.at >= len(d.data) {
		return d.truncated(p.want)
	}
	c := d.data[d.at]
	switch p.op {
	case opText:
		if c == '"' {
			return d.text(p, v)
		}
	case opString:
		if c == '"' {
			s, f := d.str()
			if f == nil {
				v.SetString(string(s))
			}
			return f
		}
	case opInt, opUint, opFloat:
		if c == '-' || c-'0' <= 9 {
			return d.number(p, v)
		}
	case opStruct, opMap:
		if c == '{' {
			return d.nested(p, v)
		}
	case opSlice, opArray:
		if c == '[' {
			return d.nested(p, v)
		}
	case opBool:
		if c == 't' || c == 'f' {
			f := d.literal(c)
			if f == nil {
				v.SetBool(c == 't')
			}
			return f
		}
	case opPointer:
		if c == 'n' {
			break
		}
		if f := d.spend(p.cost); f != nil {
			return f
		}
		v.Set(reflect.New(p.elem.typ))
		return d.value(p.elem, v.Elem())
	}
	if c == 'n' && p.nilable && d.ahead("null") {
		d.at += len("null") // v is still the zero value
		return nil
	}
	return d.wrongType(p.want)
}

// nested reads an object or a list, whose bracket is at hand.
func (d *decoder) nested(p *plan, v reflect.Value) (f *fault) {
	if f = d.deeper(); f != nil {
		return f
	}
	switch p.op {
	case opStruct:
		f = d.object(p, v)
	case opMap:
		f = d.mapping(p, v)
	case opSlice:
		f = d.slice(p, v)
	case opArray:
		f = d.array(p, v)
	}
	d.depth--
	return f
}

func (d *decoder) deeper() *fault {
	if d.depth == MaxDepth {
		return d.refuse(d.at, ErrDepth, "", "at most 64 levels")
	}
	d.depth++
	return nil
}

// text gives a quoted text to the type's own UnmarshalText.
func (d *decoder) text(p *plan, v reflect.Value) *fault {
	at := d.at
	s, f := d.str()
	if f != nil {
		return f
	}
	if err := asText(v).UnmarshalText(s); err != nil {
		f := d.refuse(at, ErrValue, quote(s), "")
		f.Cause = err
		return f
	}
	return nil
}

// spend books memory before it is allocated.
func (d *decoder) spend(more int64) *fault {
	d.spent += more
	if d.spent > MaxMemory {
		return d.refuse(d.at, ErrSize, "", "at most "+bytes(MaxMemory)+" of decoded values")
	}
	return nil
}
