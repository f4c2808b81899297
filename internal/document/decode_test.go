package document_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

// everything holds one of each kind of field that is read.
type everything struct {
	outer
	Text    string             `json:"text"`
	Yes     bool               `json:"yes,omitempty"`
	Int     int                `json:"int,omitempty"`
	Int8    int8               `json:"int8,omitempty"`
	Int64   int64              `json:"int64,omitempty"`
	Uint16  uint16             `json:"uint16,omitempty"`
	Uint64  uint64             `json:"uint64,omitempty"`
	Float   float64            `json:"float,omitempty"`
	Float32 float32            `json:"float32,omitempty"`
	Size    size               `json:"size,omitzero"`
	Maybe   *size              `json:"maybe"`
	Sizes   []size             `json:"sizes,omitempty"`
	Table   [][]float64        `json:"table,omitempty"`
	Pair    [2]bool            `json:"pair,omitzero"`
	Limits  map[string]size    `json:"limits,omitempty"`
	Counts  map[size][]int     `json:"counts,omitempty"`
	Inside  map[grade]*trial   `json:"inside,omitempty"`
	Next    *everything        `json:"next"`
	Trials  []*trial           `json:"trials,omitempty"`
	Levels  *[]map[string]bool `json:"levels"`
	Plain   float64            `json:",omitempty"`
	//lint:ignore SA5008 a field that is really named "-" is what is tested
	Dash   int      `json:"-,omitempty"`
	Hidden chan int `json:"-"`
	//lint:ignore U1000 that a field which is not exported is passed over is what is tested
	secret func()
}

type grade string

type outer struct {
	inner
	Shadow string `json:"shadow,omitempty"`
	Outer  int    `json:"outer,omitempty"`
}

type inner struct {
	Shadow int    `json:"shadow,omitempty"`
	Inner  string `json:"inner,omitempty"`
}

// judged are documents of everything; encoding/json is the judge.
var judged = []string{
	`{"text":""}`,
	` { "text" : "a" , "yes" : true } ` + "\n",
	"\t{\r\n\"yes\":false,\"text\":\"0,07 mm\"}",
	`{"text":"é µ \u00b5 \uD83D\uDE00 \" \\ \/ \b\f\n\r\t \u0000 \uFFFD \u2028"}`,
	`{"text":"","int":-0,"float":-0,"float32":-0.0}`,
	`{"text":"","int":9223372036854775807,"int64":-9223372036854775808,"uint64":18446744073709551615}`,
	`{"text":"","int8":127,"uint16":65535}`,
	`{"text":"","int8":-128,"uint16":0}`,
	`{"text":"","float":1e308,"float32":3.4028234e38}`,
	`{"text":"","float":1.7976931348623157e308}`,
	`{"text":"","float":5e-324}`,
	`{"text":"","float":0e999}`,
	`{"text":"","float":0.000E-7}`,
	`{"text":"","float":12345678901234567890123}`,
	`{"text":"","float":-12.5E+1}`,
	`{"text":"","size":"-0.025 mm","maybe":"1.5 mm"}`,
	`{"text":"","size":"\u0031.5 mm","sizes":["1 mm","\u0032 mm","3 mm","4 mm","5 mm","6 mm"]}`,
	`{"text":"","maybe":null,"sizes":null,"limits":null,"next":null,"levels":null}`,
	`{"text":"","sizes":[],"table":[],"limits":{},"levels":[]}`,
	`{"text":"","table":[[],[1],[1,2],null,[1,2,3,4,5,6,7,8,9]]}`,
	`{"text":"","pair":[true,false]}`,
	`{"text":"","limits":{"top ring":"0.07 mm","":"0 mm","a\tb":"1 mm"}}`,
	`{"text":"","counts":{"1 mm":[1],"2 mm":null},"inside":{"A":{"blade":"1 mm","enters":true},"B":null}}`,
	`{"text":"","trials":[null,{"blade":"1 mm","enters":true,"pull_n":2}]}`,
	`{"text":"","levels":[{"a":true},{"b":false}]}`,
	`{"text":"","next":{"text":"x","next":{"text":"y"}}}`,
	`{"text":"","shadow":"outer","outer":3,"inner":"i","Plain":2.5,"-":4}`,
	`{"-":4,"Plain":2.5,"inner":"i","outer":3,"shadow":"outer","text":"last"}`,
}

func TestDecode_agrees(t *testing.T) {
	for _, doc := range judged {
		var got, want everything
		require.NoError(t, json.Unmarshal([]byte(doc), &want), "the judge refuses %s", doc)
		require.NoError(t, document.Decode([]byte(doc), &got), doc)
		require.Empty(t, diff(want, got), doc)
	}
}

func diff(want, got everything) string {
	return cmp.Diff(want, got, cmp.AllowUnexported(everything{}, outer{}, inner{}),
		cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".secret" }, cmp.Ignore()))
}

func TestDecode_engine(t *testing.T) {
	want := invented()
	var got engine
	data := written(want)
	require.Greater(t, len(data), 29_000)
	require.NoError(t, document.Decode(data, &got))
	require.Empty(t, cmp.Diff(want, got, cmp.AllowUnexported(groove{})))
}

// What encoding/json writes is read back, nil and empty alike.
func TestDecode_roundtrip(t *testing.T) {
	one := size(1000)
	for _, want := range []everything{
		{},
		{Text: "\x00\u2028<&>\"\\", Float: math.SmallestNonzeroFloat64, Float32: math.MaxFloat32},
		{Maybe: &one, Sizes: []size{1, -2}, Levels: &[]map[string]bool{nil, {}, {"x": true}}},
		{Table: [][]float64{nil, {}, {math.MaxFloat64, -1e-7}}, Counts: map[size][]int{5: nil, -5: {}}},
		{Inside: map[grade]*trial{"": nil, "A": {Blade: 1}}, Trials: []*trial{nil, {Enters: true}}},
		{Next: &everything{Next: &everything{Pair: [2]bool{true, false}}}},
		{outer: outer{Shadow: "s", Outer: 1, inner: inner{Inner: "i"}}},
	} {
		data, err := json.Marshal(want)
		require.NoError(t, err)
		var got everything
		require.NoError(t, document.Decode(data, &got), "%s", data)
		require.Empty(t, diff(want, got), "%s", data)
	}
}

func TestDecode_anyTarget(t *testing.T) {
	var n int
	require.NoError(t, document.Decode([]byte(" 7\n"), &n))
	require.Equal(t, 7, n)

	var s size
	require.NoError(t, document.Decode([]byte(`"0.5 mm"`), &s))
	require.Equal(t, size(500), s)

	var p *[]string
	require.NoError(t, document.Decode([]byte(`["a","b"]`), &p))
	require.Equal(t, &[]string{"a", "b"}, p)
	require.NoError(t, document.Decode([]byte(`null`), &p))
	require.Nil(t, p)
}

func TestDecode_replacesAll(t *testing.T) {
	trials := []trial{{Blade: 1, Pull: 5}, {Blade: 2}}
	require.NoError(t, document.Decode([]byte(`[{"blade":"3 mm","enters":true}]`), &trials))
	require.Equal(t, []trial{{Blade: 3000, Enters: true}}, trials)
}

// An error in the last character of a document leaves nothing of it behind.
func TestDecode_untouched(t *testing.T) {
	data := written(invented())
	before := engine{Job: "before", Tools: map[string]size{"kept": 1}}
	for _, cut := range []int{1, 2, 3, 100, len(data) / 2, len(data) - 1} {
		got := before
		require.ErrorIs(t, document.Decode(data[:len(data)-cut], &got), document.ErrTruncated)
		require.Empty(t, cmp.Diff(before, got, cmp.AllowUnexported(groove{})))
	}
}

// Cutting a document anywhere is noticed as just that.
func TestDecode_everyCut(t *testing.T) {
	data := written(engine{Schema: 1, Job: "é<", Tools: map[string]size{"a": -1}, Cylinders: invented().Cylinders[:1],
		Grooves: invented().Grooves[:1], Journals: invented().Journals[:1]})
	for n := range len(data) {
		var e engine
		err := document.Decode(data[:n], &e)
		require.Error(t, err, "%q", data[:n])
		want := document.ErrTruncated
		if n == 0 {
			want = document.ErrEmpty
		}
		require.ErrorIs(t, err, want, "%q", data[:n])
	}
}

// A struct with more fields than two words of marks.
func TestDecode_manyFields(t *testing.T) {
	var doc strings.Builder
	doc.WriteString(`{`)
	for i := range 150 {
		if i > 0 {
			doc.WriteString(",")
		}
		doc.WriteString(`"` + wideName(i) + `":` + `1`)
	}
	target := newWide()
	require.NoError(t, document.Decode([]byte(doc.String()+`}`), target))
	require.ErrorIs(t, document.Decode([]byte(doc.String()+`,"`+wideName(149)+`":1}`), target), document.ErrDuplicate)
	require.ErrorIs(t, document.Decode([]byte(`{"`+wideName(149)+`":1}`), target), document.ErrMissing)
}

func TestDecode_allocations(t *testing.T) {
	doc := []byte(`{"blade": "0.070 mm", "enters": true, "pull_n": 2.5}`)
	var into trial
	got := testing.AllocsPerRun(200, func() {
		if err := document.Decode(doc, &into); err != nil {
			panic(err)
		}
	})
	require.LessOrEqual(t, got, 1.0, "the fresh value, and nothing else")
}
