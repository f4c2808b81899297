package document

import (
	"reflect"
	"strings"
	"unicode"
)

// An object is how a struct's fields are named and found.
type object struct {
	fields   []field
	byName   map[string]int
	required int
}

type field struct {
	name     string
	quoted   string // the name as it stands in a document, with its quotes
	index    []int  // the way to it, through embedded structs
	required bool
	plan     *plan
}

// object plans a struct.
func (b builder) object(t reflect.Type, where string) (*object, *Error) {
	o := &object{byName: map[string]int{}}
	if err := b.collect(o, t, where, nil); err != nil {
		return nil, err
	}
	for i := range o.fields {
		if o.fields[i].required {
			o.required++
		}
	}
	return o, nil
}

// collect adds the fields of t, which is embedded at the given index.
func (b builder) collect(o *object, t reflect.Type, where string, index []int) *Error {
	for i := range t.NumField() {
		sf := t.Field(i)
		tag := sf.Tag.Get("json")
		if tag == "-" || !sf.IsExported() && !sf.Anonymous {
			continue
		}
		place := where + "." + sf.Name
		refuse := func(why string) *Error {
			return &Error{Kind: ErrTarget, Path: place, Found: why}
		}
		name, options, _ := strings.Cut(tag, ",")
		way := append(append([]int(nil), index...), i)
		if sf.Anonymous && name == "" {
			switch {
			case sf.Type.Kind() == reflect.Struct:
				if err := b.collect(o, sf.Type, place, way); err != nil {
					return err
				}
				continue
			case sf.Type.Kind() == reflect.Pointer:
				return refuse("an embedded pointer")
			}
		}
		if !sf.IsExported() {
			if sf.Type.Kind() == reflect.Struct {
				return refuse("an embedded struct that has a name of its own and is not exported")
			}
			continue
		}
		f := field{name: name, index: way, required: sf.Type.Kind() != reflect.Pointer}
		if name == "" {
			f.name = sf.Name
		} else if !plainName(name) {
			return refuse("a tag with a name that is not plain, " + quote(name))
		}
		for option := range strings.SplitSeq(options, ",") {
			switch option {
			case "omitempty", "omitzero":
				f.required = false
			case "":
			default:
				return refuse("a tag option that is not known here, " + quote(option))
			}
		}
		f.quoted = `"` + f.name + `"`
		var err *Error
		if f.plan, err = b.plan(sf.Type, place); err != nil {
			return err
		}
		if err := o.add(f, refuse); err != nil {
			return err
		}
	}
	return nil
}

// add enters a field; of two with one name, the less deeply embedded one counts.
func (o *object) add(f field, refuse func(string) *Error) *Error {
	i, taken := o.byName[f.name]
	switch {
	case !taken:
		o.byName[f.name] = len(o.fields)
		o.fields = append(o.fields, f)
	case len(f.index) < len(o.fields[i].index):
		o.fields[i] = f
	case len(f.index) == len(o.fields[i].index):
		return refuse("a second field named " + quote(f.name))
	}
	return nil
}

// plainName reports whether a tag's name stands in a document without escapes,
// by the rule of encoding/json.
func plainName(name string) bool {
	for _, r := range name {
		if !strings.ContainsRune("!#$%&()*+-./:;<=>?@[]^_{|}~ ", r) && !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			return false
		}
	}
	return true
}

// of gives the field's place in its struct.
func (f *field) of(v reflect.Value) reflect.Value {
	for _, i := range f.index {
		v = v.Field(i)
	}
	return v
}
