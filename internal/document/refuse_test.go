package document_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

// notJSON are the kinds that say that the text is no JSON at all, where
// encoding/json must say so too.
var notJSON = []error{document.ErrEmpty, document.ErrTruncated, document.ErrSyntax, document.ErrTrailing, document.ErrNotFinite}

// refusals of documents of everything, each with its whole text.
var refusals = []struct {
	doc  string
	kind error
	text string
}{
	{``, document.ErrEmpty, `1: empty document`},
	{" \r\n\t\n ", document.ErrEmpty, `3: empty document`},
	{"\uFEFF{}", document.ErrSyntax, `1: not JSON: found a byte order mark, want plain UTF-8 without one`},
	{"\xff\xfe{\x00}\x00", document.ErrEncoding, `1: not valid Unicode: found the byte 0xff, want UTF-8`},
	{`{}`, document.ErrMissing, `1: text: missing field: want a text in quotes`},
	{"\n\n{\n}", document.ErrMissing, `3: text: missing field: want a text in quotes`},
	{`{"text":""} {`, document.ErrTrailing, `1: data after the document: found '{', want the end of the document`},
	{"{\"text\":\"\"}\n\x00", document.ErrTrailing, `2: data after the document: found '\x00', want the end of the document`},
	{`{"text":""`, document.ErrTruncated, `1: document cut short: found the end of the document, want a comma or }`},
	{`{`, document.ErrTruncated, `1: document cut short: found the end of the document, want a field's name in quotes`},
	{`{"text`, document.ErrTruncated, `1: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"text"`, document.ErrTruncated, `1: text: document cut short: found the end of the document, want a colon`},
	{`{"text":`, document.ErrTruncated, `1: text: document cut short: found the end of the document, want a text in quotes`},
	{`{"int":-`, document.ErrTruncated, `1: int: document cut short: found the end of the document, want a digit after the minus sign`},
	{`{"yes":tru`, document.ErrTruncated, `1: yes: document cut short: found the end of the document, want true`},
	{`{"text":"\`, document.ErrTruncated, `1: text: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"text":"\ud83d\`, document.ErrTruncated, `1: text: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"text":"\ud83d\u`, document.ErrTruncated, `1: text: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"sizes":[`, document.ErrTruncated, `1: sizes[0]: document cut short: found the end of the document, want a value`},

	// the grammar
	{`{text:""}`, document.ErrSyntax, `1: not JSON: found 't', want a field's name in quotes`},
	{`{'text':""}`, document.ErrSyntax, `1: not JSON: found '\'', want a field's name in quotes; text stands between straight double quotation marks`},
	{`{“text”:""}`, document.ErrSyntax, `1: not JSON: found '“', want a field's name in quotes; text stands between straight double quotation marks`},
	{`{"text":'a'}`, document.ErrSyntax, `1: text: not JSON: found '\'', want a text in quotes; text stands between straight double quotation marks`},
	{"{// a note\n\"text\":\"\"}", document.ErrSyntax, `1: not JSON: found '/', want a field's name in quotes; JSON has no comments`},
	{`{"text":"",}`, document.ErrSyntax, `1: not JSON: found '}' after a comma, want a field's name in quotes`},
	{`{"text":"" "yes":true}`, document.ErrSyntax, `1: not JSON: found '"', want a comma or }`},
	{`{"text";""}`, document.ErrSyntax, `1: text: not JSON: found ';', want a colon`},
	{`{"table":[[1],[1 2]]}`, document.ErrSyntax, `1: table[1][1]: not JSON: found '2', want a comma or ]`},
	{`{"table":[[1,]]}`, document.ErrSyntax, `1: table[0][1]: not JSON: found ']' after a comma, want a value`},
	{`{"pair":[true;]}`, document.ErrSyntax, `1: pair[1]: not JSON: found ';', want a comma or ]`},
	{`{"limits":{"a" 1}}`, document.ErrSyntax, `1: limits.a: not JSON: found '1', want a colon`},
	{`{"limits":{,}}`, document.ErrSyntax, `1: limits: not JSON: found ',', want a name in quotes`},
	{`{"limits":{"a`, document.ErrTruncated, `1: limits: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"text":}`, document.ErrSyntax, `1: text: not JSON: found '}', want a text in quotes`},
	{`{"yes":True}`, document.ErrSyntax, `1: yes: not JSON: found 'T', want true or false`},
	{`{"yes":trie}`, document.ErrSyntax, `1: yes: not JSON: found 'i', want true`},
	{`{"yes":nul}`, document.ErrSyntax, `1: yes: not JSON: found '}', want null`},
	{`{"int":truE}`, document.ErrSyntax, `1: int: not JSON: found 'E', want true`},
	{`{"int":01}`, document.ErrSyntax, `1: int: not JSON: found a number that begins with 0, want one without leading zeros`},
	{`{"float":.5}`, document.ErrSyntax, `1: float: not JSON: found '.', want a number; a number begins with a digit or a minus sign`},
	{`{"float":+5}`, document.ErrSyntax, `1: float: not JSON: found '+', want a number; a number begins with a digit or a minus sign`},
	{`{"float":5.}`, document.ErrSyntax, `1: float: not JSON: found '}', want a digit after the point`},
	{`{"float":5e}`, document.ErrSyntax, `1: float: not JSON: found '}', want a digit in the exponent`},
	{`{"float":0,07}`, document.ErrSyntax, `1: not JSON: found '0', want a field's name in quotes`},
	{`{"text":-x}`, document.ErrSyntax, `1: text: not JSON: found 'x', want a digit after the minus sign`},
	{"{\"text\":\"a\nb\"}", document.ErrSyntax, `1: text: not JSON: found '\n' within a text, want its closing quotation mark, or an escape such as \n`},
	{"{\"text\":\"\\t\x01\"}", document.ErrSyntax, `1: text: not JSON: found '\x01' within a text, want its closing quotation mark, or an escape such as \n`},
	{`{"text":"C:\jobs"}`, document.ErrSyntax, `1: text: not JSON: found a backslash before 'j', want one of " \ / b f n r t u after a backslash`},
	{`{"text":"\u00g0"}`, document.ErrSyntax, `1: text: not JSON: found 'g' in a \u escape, want four digits of base 16`},
	{`{"text":"\uD83D\uDExx"}`, document.ErrSyntax, `1: text: not JSON: found 'x' in a \u escape, want four digits of base 16`},

	// Unicode
	{"{\"text\":\"caf\xe9\"}", document.ErrEncoding, `1: text: not valid Unicode: found the byte 0xe9, want UTF-8`},
	{"{\"text\":\"\\n\xc0\x80\"}", document.ErrEncoding, `1: text: not valid Unicode: found the byte 0xc0, want UTF-8`},
	{"{\"text\":\"µ\xed\xa0\x80\"}", document.ErrEncoding, `1: text: not valid Unicode: found the byte 0xed, want UTF-8`},
	{"{\"te\x8fxt\":\"\"}", document.ErrEncoding, `1: not valid Unicode: found the byte 0x8f, want UTF-8`},
	{`{"text":"\ud800"}`, document.ErrEncoding, `1: text: not valid Unicode: found half a surrogate pair`},
	{`{"text":"\udc00\ud800"}`, document.ErrEncoding, `1: text: not valid Unicode: found half a surrogate pair`},
	{`{"text":"\ud800\u0041"}`, document.ErrEncoding, `1: text: not valid Unicode: found half a surrogate pair`},
	{`{"text":"\ud800\n"}`, document.ErrEncoding, `1: text: not valid Unicode: found half a surrogate pair`},

	// names
	{`{"txet":""}`, document.ErrUnknown, `1: txet: unknown field; did you mean "text"?`},
	{`{"flaot32":1}`, document.ErrUnknown, `1: flaot32: unknown field; did you mean "float32"?`},
	{`{"bore":1}`, document.ErrUnknown, `1: bore: unknown field: found "bore"`},
	{`{"":1}`, document.ErrUnknown, `1: [""]: unknown field: found ""`},
	{`{"a b\n":1}`, document.ErrUnknown, `1: ["a b\n"]: unknown field: found "a b\n"`},
	{`{"Text":""}`, document.ErrCase, `1: Text: field name in the wrong case: found "Text", want "text"`},
	{`{"plain":1}`, document.ErrCase, `1: plain: field name in the wrong case: found "plain", want "Plain"`},
	{"{\"text\":\"a\",\n\"text\":\"b\"}", document.ErrDuplicate, `2: text: field given twice: found "text"`},
	{`{"text":"a","te\u0078t":"b"}`, document.ErrDuplicate, `1: text: field given twice: found "text"`},
	{`{"limits":{"a":"1 mm","a":"1 mm"}}`, document.ErrDuplicate, `1: limits.a: field given twice: found "a"`},
	{`{"counts":{"1 mm":[],"1.0 mm":[]}}`, document.ErrDuplicate, `1: counts["1.0 mm"]: field given twice: found "1.0 mm"`},
	{`{"text":"","next":{"text":"","next":{"yes":true}}}`, document.ErrMissing, `1: next.next.text: missing field: want a text in quotes`},
	{"{\"text\":\"\",\"trials\":[\n{\"blade\":\"1 mm\",\"enters\":true},\n{\"blade\":\"1 mm\"}]}", document.ErrMissing, `3: trials[1].enters: missing field: want true or false`},

	// types
	{`[]`, document.ErrType, `1: wrong type: found a list, want an object in braces {}`},
	{`null`, document.ErrType, `1: wrong type: found null, want an object in braces {}`},
	{`"a"`, document.ErrType, `1: wrong type: found the text "a", want an object in braces {}`},
	{`{"text":7}`, document.ErrType, `1: text: wrong type: found the number 7, want a text in quotes`},
	{`{"text":null}`, document.ErrType, `1: text: wrong type: found null, want a text in quotes`},
	{`{"yes":"true"}`, document.ErrType, `1: yes: wrong type: found the text "true", want true or false`},
	{`{"yes":1}`, document.ErrType, `1: yes: wrong type: found the number 1, want true or false`},
	{`{"int":"7"}`, document.ErrType, `1: int: wrong type: found the text "7", want a whole number`},
	{`{"int":1.0}`, document.ErrType, `1: int: wrong type: found the number 1.0, want a whole number`},
	{`{"int":1e3}`, document.ErrType, `1: int: wrong type: found the number 1e3, want a whole number`},
	{`{"uint16":0.5}`, document.ErrType, `1: uint16: wrong type: found the number 0.5, want a whole number, 0 or more`},
	{`{"float":true}`, document.ErrType, `1: float: wrong type: found true, want a number`},
	{`{"float":{"a":[[[[`, document.ErrType, `1: float: wrong type: found an object, want a number`},
	{`{"size":-0.07}`, document.ErrType, `1: size: wrong type: found the bare number -0.07, want a text in quotes, a quantity with its unit, such as "0.07 mm"`},
	{`{"maybe":7}`, document.ErrType, `1: maybe: wrong type: found the bare number 7, want a text in quotes, a quantity with its unit, such as "0.07 mm"`},
	{`{"maybe":"7`, document.ErrTruncated, `1: maybe: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"int":"7`, document.ErrTruncated, `1: int: document cut short: found the end of the document, want the closing quotation mark of a text`},
	{`{"sizes":{}}`, document.ErrType, `1: sizes: wrong type: found an object, want a list in brackets []`},
	{`{"limits":[]}`, document.ErrType, `1: limits: wrong type: found a list, want an object in braces {}`},
	{`{"limits":{"top ring":5}}`, document.ErrType, `1: limits["top ring"]: wrong type: found the bare number 5, want a text in quotes, a quantity with its unit, such as "0.07 mm"`},
	{`{"sizes":["1 mm",["2 mm"]]}`, document.ErrType, `1: sizes[1]: wrong type: found a list, want a text in quotes, a quantity with its unit, such as "0.07 mm"`},
	{`{"pair":[true]}`, document.ErrCount, `1: pair: wrong number of elements: found 1, want a list of 2 in brackets []`},
	{`{"pair":[true,true,true]}`, document.ErrCount, `1: pair[2]: wrong number of elements: found one more, want a list of 2 in brackets []`},
	{`{"pair":[true,1]}`, document.ErrType, `1: pair[1]: wrong type: found the number 1, want true or false`},
	{`{"pair":null}`, document.ErrType, `1: pair: wrong type: found null, want a list of 2 in brackets []`},

	// numbers
	{`{"float":NaN}`, document.ErrNotFinite, `1: float: not a finite number: found NaN, want a number`},
	{`{"float":nan}`, document.ErrNotFinite, `1: float: not a finite number: found nan, want a number`},
	{`{"float":Infinity}`, document.ErrNotFinite, `1: float: not a finite number: found Infinity, want a number`},
	{`{"float":-Infinity}`, document.ErrNotFinite, `1: float: not a finite number: found -Infinity, want a number`},
	{`{"int":-inf}`, document.ErrNotFinite, `1: int: not a finite number: found -inf, want a number`},
	{`{"size":inf}`, document.ErrNotFinite, `1: size: not a finite number: found inf, want a number`},
	{`{"float":1e309}`, document.ErrRange, `1: float: number out of range: found 1e309, want a number that a float of 64 bits holds`},
	{`{"float":-1e309}`, document.ErrRange, `1: float: number out of range: found -1e309, want a number that a float of 64 bits holds`},
	{`{"float32":1e39}`, document.ErrRange, `1: float32: number out of range: found 1e39, want a number that a float of 32 bits holds`},
	{`{"float":1e-400}`, document.ErrRange, `1: float: number out of range: found 1e-400, want 0, or a number that is not lost to 0`},
	{`{"int8":128}`, document.ErrRange, `1: int8: number out of range: found 128, want a whole number from -128 to 127`},
	{`{"int8":-129}`, document.ErrRange, `1: int8: number out of range: found -129, want a whole number from -128 to 127`},
	{`{"int64":9223372036854775808}`, document.ErrRange, `1: int64: number out of range: found 9223372036854775808, want a whole number from -9223372036854775808 to 9223372036854775807`},
	{`{"int64":-9223372036854775809}`, document.ErrRange, `1: int64: number out of range: found -9223372036854775809, want a whole number from -9223372036854775808 to 9223372036854775807`},
	{`{"uint16":65536}`, document.ErrRange, `1: uint16: number out of range: found 65536, want a whole number from 0 to 65535`},
	{`{"uint64":18446744073709551616}`, document.ErrRange, `1: uint64: number out of range: found 18446744073709551616, want a whole number from 0 to 18446744073709551615`},
	{`{"uint64":-1}`, document.ErrRange, `1: uint64: number out of range: found -1, want a whole number from 0 to 18446744073709551615`},
	{`{"uint64":-0}`, document.ErrRange, `1: uint64: number out of range: found -0, want a whole number from 0 to 18446744073709551615`},

	// values that their own type refuses
	{`{"size":"0.07"}`, document.ErrValue, `1: size: value refused: found "0.07": no unit`},
	{`{"sizes":["1 mm","2"]}`, document.ErrValue, `1: sizes[1]: value refused: found "2": no unit`},
	{`{"counts":{"a":[]}}`, document.ErrValue, `1: counts.a: value refused: found "a": no unit`},
}

func TestDecode_refuses(t *testing.T) {
	for _, c := range refusals {
		before := everything{Text: "before"}
		got := before
		err := document.DecodeNamed("x.json", []byte(c.doc), &got)
		require.EqualError(t, err, "x.json:"+c.text, c.doc)
		require.ErrorIs(t, err, c.kind, c.doc)
		require.Empty(t, diff(before, got), c.doc)
		for _, kind := range notJSON {
			if errors.Is(err, kind) {
				require.False(t, json.Valid([]byte(c.doc)), "encoding/json takes %s", c.doc)
			}
		}
	}
}

// Every kind but the two that these documents can't give is in the table.
func TestDecode_refusesEveryKind(t *testing.T) {
	for _, kind := range []error{document.ErrEmpty, document.ErrTruncated, document.ErrSyntax, document.ErrTrailing,
		document.ErrEncoding, document.ErrUnknown, document.ErrCase, document.ErrDuplicate, document.ErrMissing, document.ErrType,
		document.ErrCount, document.ErrRange, document.ErrNotFinite, document.ErrValue} {
		found := false
		for _, c := range refusals {
			found = found || c.kind == kind
		}
		require.True(t, found, "%v", kind)
	}
}

func TestError_place(t *testing.T) {
	var e everything
	err := document.DecodeNamed("job.json", []byte("{\"text\": \"é\",\r\n \"sizes\": [\"1 mm\", \"µ\", 5]}"), &e)
	var refused *document.Error
	require.ErrorAs(t, err, &refused)
	require.Equal(t, document.Error{Name: "job.json", Line: 2, Column: 20, Path: "sizes[1]",
		Kind: document.ErrValue, Found: `"µ"`, Cause: errNoUnit}, *refused)
	require.ErrorIs(t, err, errNoUnit)
	require.ErrorIs(t, err, document.ErrValue)
	require.NotErrorIs(t, err, document.ErrType)
}

func TestError_text(t *testing.T) {
	require.Equal(t, "document: refused", (&document.Error{}).Error())
	require.Equal(t, "document: line 3: a: refused: want b", (&document.Error{Line: 3, Path: "a", Want: "b"}).Error())
	require.NotErrorIs(t, &document.Error{}, nil)
	cause := errors.New(`"5" has no unit`)
	require.Equal(t, `document: "5" has no unit`, (&document.Error{Kind: document.ErrValue, Found: `"5"`, Cause: cause}).Error())
}

// However long what is found, an error stays readable.
func TestError_short(t *testing.T) {
	long := strings.Repeat("é", 50_000)
	for _, doc := range []string{
		`{"` + long + `":1}`,
		`{"int":"x` + long + `"}`,
		`{"size":"` + long + `"}`,
		`{"yes":` + strings.Repeat("7", 50_000) + `}`,
		`{"int":` + strings.Repeat("7", 50_000) + `}`,
		`{"float":1` + strings.Repeat("0", 50_000) + `}`,
		`{"limits":{"` + long + `":{}}}`,
		`{"limits":{"` + long + `":"1 mm","` + long + `":"1 mm"}}`,
		`{"float":-I` + strings.Repeat("n", 50_000) + `}`,
	} {
		var e everything
		err := document.Decode([]byte(doc), &e)
		require.Error(t, err)
		require.LessOrEqual(t, len(err.Error()), 2*64+200, err.Error())
		require.True(t, utf8.ValidString(err.Error()))
		require.NotErrorIs(t, err, document.ErrSyntax)
	}
}
