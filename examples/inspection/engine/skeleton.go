package engine

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// Skeleton is the document that what is written on the bench sheet is typed
// into: every reading that is missing has its place, empty. Encoding the
// document alone leaves out what is empty.
func Skeleton(d *Document, missing []inspection.Missing) ([]byte, error) {
	text, err := d.JSON()
	if err != nil {
		return nil, err
	}
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.UseNumber()
	root, err := readNode(decoder)
	if err != nil {
		return nil, err
	}
	for _, m := range missing {
		root.place(m.Path)
	}
	var flat bytes.Buffer
	root.write(&flat)
	var b bytes.Buffer
	if err := json.Indent(&b, flat.Bytes(), "", "  "); err != nil {
		return nil, err
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}

// A node is a piece of JSON whose fields keep their order.
type node struct {
	names  []string // of an object's fields
	fields map[string]*node
	items  []*node
	isList bool
	plain  any
}

func readNode(d *json.Decoder) (*node, error) {
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch t {
	case json.Delim('{'):
		n := &node{fields: map[string]*node{}}
		for d.More() {
			name, err := d.Token()
			if err != nil {
				return nil, err
			}
			text, _ := name.(string)
			if n.fields[text], err = readNode(d); err != nil {
				return nil, err
			}
			n.names = append(n.names, text)
		}
		_, err = d.Token()
		return n, err
	case json.Delim('['):
		n := &node{isList: true}
		for d.More() {
			item, err := readNode(d)
			if err != nil {
				return nil, err
			}
			n.items = append(n.items, item)
		}
		_, err = d.Token()
		return n, err
	}
	if _, bad := t.(json.Delim); bad {
		return nil, io.ErrUnexpectedEOF
	}
	return &node{plain: t}, nil
}

// place makes the path, with an empty text at its end.
func (n *node) place(path string) {
	for part := range strings.SplitSeq(path, ".") {
		name, indexes, _ := strings.Cut(part, "[")
		if n.fields == nil {
			n.fields, n.plain = map[string]*node{}, nil
		}
		next := n.fields[name]
		if next == nil {
			next = &node{plain: ""}
			n.fields[name] = next
			n.names = append(n.names, name)
		}
		n = next
		for index := range strings.SplitSeq(strings.TrimSuffix(indexes, "]"), "][") {
			i, err := strconv.Atoi(index)
			if err != nil {
				break // no index
			}
			n.isList, n.plain = true, nil
			for len(n.items) <= i {
				n.items = append(n.items, &node{plain: ""})
			}
			n = n.items[i]
		}
	}
}

func (n *node) write(b *bytes.Buffer) {
	switch {
	case n.isList:
		b.WriteByte('[')
		for i, item := range n.items {
			if i > 0 {
				b.WriteByte(',')
			}
			item.write(b)
		}
		b.WriteByte(']')
	case n.fields != nil:
		b.WriteByte('{')
		for i, name := range n.names {
			if i > 0 {
				b.WriteByte(',')
			}
			text(b, name)
			b.WriteByte(':')
			n.fields[name].write(b)
		}
		b.WriteByte('}')
	default:
		text(b, n.plain)
	}
}

func text(b *bytes.Buffer, v any) {
	e := json.NewEncoder(b)
	e.SetEscapeHTML(false)
	_ = e.Encode(v) // strings, numbers and bools of a document that was read
	b.Truncate(b.Len() - 1)
}
