package document_test

import (
	"encoding/json"
	"fmt"
	"net/netip"
	"reflect"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

func wideName(i int) string { return fmt.Sprintf("F%03d", i) }

// newWide gives a pointer to a struct of 150 fields.
func newWide() any {
	fields := make([]reflect.StructField, 150)
	for i := range fields {
		fields[i] = reflect.StructField{Name: wideName(i), Type: reflect.TypeFor[int]()}
	}
	return reflect.New(reflect.StructOf(fields)).Interface()
}

type onlyJSON struct{}

func (*onlyJSON) UnmarshalJSON([]byte) error { return nil }

type base struct {
	A int `json:"a"`
}

type untagged struct{ A int }

type tagged struct {
	B int `json:"A"`
}

type word string

// Go types that no document is read into are refused by name, whatever the input.
func TestDecode_badTypes(t *testing.T) {
	for _, c := range []struct {
		into any
		text string
	}{
		{nil, `found nil, want a pointer that is not nil`},
		{trial{}, `found document_test.trial, want a pointer that is not nil`},
		{(*trial)(nil), `found *document_test.trial, want a pointer that is not nil`},
		{new(any), `interface {}: cannot decode into this Go type: found a type of kind interface`},
		{new(struct{ A chan int }), `.A: cannot decode into this Go type: found a type of kind chan`},
		{new([]struct{ B []func() }), `[].B[]: cannot decode into this Go type: found a type of kind func`},
		{new(map[string]complex128), `[]: cannot decode into this Go type: found a type of kind complex128`},
		{new([]byte), `found a byte slice`},
		{new(**int), `found a pointer to a pointer`},
		{new(json.Number), `found a number kept as text`},
		{new([2]onlyJSON), `found UnmarshalJSON without UnmarshalText`},
		{new(map[int]string), `found a map whose keys are not texts`},
		{new(map[struct{ X chan int }]string), `'s key.X: cannot decode into this Go type: found a type of kind chan`},
		{new(struct {
			A int `json:"a,string"`
		}), `.A: cannot decode into this Go type: found a tag option that is not known here, "string"`},
		{new(struct {
			//lint:ignore SA5008 a name that is not plain is what is tested
			A int `json:"a\"b"`
		}), `.A: cannot decode into this Go type: found a tag with a name that is not plain, "a\"b"`},
		{new(struct{ *base }), `found an embedded pointer`},
		{new(struct {
			base `json:"named"`
		}), `found an embedded struct that has a name of its own and is not exported`},
		{new(struct {
			untagged
			tagged
		}), `found a second field named "A"`},
		{new(struct{ Bad struct{ X, Y uintptr } }), `.Bad.X: cannot decode`},
		{new(struct{ Bad *struct{ X uintptr } }), `.Bad.X: cannot decode`},
	} {
		err := document.DecodeNamed("x.json", []byte(`{`), c.into)
		require.ErrorIs(t, err, document.ErrTarget, "%T", c.into)
		require.ErrorContains(t, err, c.text, "%T", c.into)
		require.ErrorContains(t, err, "x.json: ", "%T", c.into)
	}
}

func TestDecode_embedding(t *testing.T) {
	var shadowed struct {
		base
		A string `json:"a"`
		word
		Word word `json:"Ω ring"`
	}
	require.NoError(t, document.Decode([]byte(`{"a":"x","Ω ring":"y"}`), &shadowed))
	require.Equal(t, "x", shadowed.A)
	require.Zero(t, shadowed.base.A)
	require.Equal(t, word("y"), shadowed.Word)

	// The outer field comes first here, and still wins.
	var before struct {
		A string `json:"a"`
		base
	}
	require.NoError(t, document.Decode([]byte(`{"a":"x"}`), &before))
	require.Equal(t, "x", before.A)

	// An embedded struct with a name of its own is a field like any other.
	var named struct {
		Base `json:"inside"`
	}
	require.NoError(t, document.Decode([]byte(`{"inside":{"a":3}}`), &named))
	require.Equal(t, 3, named.A)

	// An embedded text type under its own name.
	var text struct {
		N int
		Word
	}
	require.NoError(t, document.Decode([]byte(`{"N":1,"Word":"w"}`), &text))
	require.Equal(t, Word("w"), text.Word)
}

type (
	Base base
	Word string
)

// Text types of the standard library, which also has UnmarshalJSON for one.
func TestDecode_textTypes(t *testing.T) {
	type log struct {
		When time.Time             `json:"when"`
		From netip.Addr            `json:"from"`
		By   map[netip.Addr]string `json:"by"`
	}
	doc := []byte(`{"when":"2024-02-29T12:00:00Z","from":"192.0.2.1","by":{"192.0.2.2":"x"}}`)
	var got, want log
	require.NoError(t, document.Decode(doc, &got))
	require.NoError(t, json.Unmarshal(doc, &want))
	require.Equal(t, want, got)

	err := document.Decode([]byte(`{"when":"2024-02-30T12:00:00Z","from":"192.0.2.1","by":{}}`), &got)
	var parse *time.ParseError
	require.ErrorAs(t, err, &parse)
	require.ErrorIs(t, err, document.ErrValue)
	require.EqualError(t, document.Decode([]byte(`{"when":"2024-02-28T12:00:00Z","from":"192.0.2.1","by":{"x":""}}`), &got),
		`document: line 1: by.x: ParseAddr("x"): unable to parse IP`)
}

// Types that contain themselves, through each of the ways there are.
func TestDecode_recursive(t *testing.T) {
	type list []list
	var l list
	require.NoError(t, document.Decode([]byte(`[[],[[]]]`), &l))
	require.Equal(t, list{{}, {{}}}, l)

	type tree map[string]tree
	var m tree
	require.NoError(t, document.Decode([]byte(`{"a":{"b":null}}`), &m))
	require.Equal(t, tree{"a": {"b": nil}}, m)
}

// Many at once may be the first to read a type.
func TestDecode_sideBySide(t *testing.T) {
	type left struct {
		Right []struct{ Left *[]string }
	}
	var all sync.WaitGroup
	results := make([]left, 16)
	for i := range results {
		all.Go(func() {
			if err := document.Decode([]byte(`{"Right":[{"Left":["a"]}]}`), &results[i]); err != nil {
				panic(err)
			}
		})
	}
	all.Wait()
	for _, r := range results {
		require.Equal(t, []string{"a"}, *r.Right[0].Left)
	}
}
