package document_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

func TestSchema(t *testing.T) {
	for _, doc := range []string{
		`{"schema":2}`,
		` { "schema" : 2`, // the rest is for Decode to judge
		`{"\u0073chema":2}`,
		`{"a":[{"schema":7},[],null,true,false,-1.5e3,"]"],"b":{},"c":{"x":"\"","y":[1,2]},"schema":2}`,
	} {
		n, err := document.Schema([]byte(doc), 1, 2)
		require.NoError(t, err, doc)
		require.Equal(t, 2, n, doc)
	}
}

func TestSchema_refuses(t *testing.T) {
	for _, c := range []struct {
		doc  string
		kind error
		text string
	}{
		{``, document.ErrEmpty, `1: empty document`},
		{`7`, document.ErrType, `1: wrong type: found the number 7, want an object in braces {}`},
		{`[]`, document.ErrType, `1: wrong type: found a list, want an object in braces {}`},
		{`{}`, document.ErrMissing, `1: schema: missing field: want 1 or 2`},
		{"\n{\"Schema\":1}", document.ErrMissing, `2: schema: missing field: want 1 or 2`},
		{`{"schema":"1"}`, document.ErrType, `1: schema: wrong type: found the text "1", want a whole number`},
		{`{"schema":1.0}`, document.ErrType, `1: schema: wrong type: found the number 1.0, want a whole number`},
		{`{"schema":99999999999999999999}`, document.ErrRange, `1: schema: number out of range: found 99999999999999999999, want a whole number from -9223372036854775808 to 9223372036854775807`},
		{`{"schema":3}`, document.ErrSchema, `1: schema: unknown schema number: found 3, want 1 or 2`},
		{`{"schema":`, document.ErrTruncated, `1: schema: document cut short: found the end of the document, want a whole number`},
		{`{"a":`, document.ErrTruncated, `1: document cut short: found the end of the document, want a value`},
		{`{"a`, document.ErrTruncated, `1: document cut short: found the end of the document, want the closing quotation mark of a text`},
		{`{"a"}`, document.ErrSyntax, `1: not JSON: found '}', want a colon`},
		{`{"a":x}`, document.ErrSyntax, `1: not JSON: found 'x', want a value`},
		{`{"a":NaN}`, document.ErrNotFinite, `1: not a finite number: found NaN, want a number`},
		{`{"a":[1 2]}`, document.ErrSyntax, `1: not JSON: found '2', want a comma or ]`},
		{`{"a":[x]}`, document.ErrSyntax, `1: not JSON: found 'x', want a value`},
		{`{"a":{"b`, document.ErrTruncated, `1: document cut short: found the end of the document, want the closing quotation mark of a text`},
		{`{"a":{"b"}}`, document.ErrSyntax, `1: not JSON: found '}', want a colon`},
		{`{"a":1 "schema":1}`, document.ErrSyntax, `1: not JSON: found '"', want a comma or }`},
	} {
		_, err := document.SchemaNamed("x.json", []byte(c.doc), 1, 2)
		require.EqualError(t, err, "x.json:"+c.text, c.doc)
		require.ErrorIs(t, err, c.kind, c.doc)
	}
	_, err := document.Schema([]byte(`{"schema":3}`))
	require.EqualError(t, err, "document: line 1: schema: unknown schema number: found 3, want a number that this release knows (none)")
}
