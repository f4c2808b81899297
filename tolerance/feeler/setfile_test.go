package feeler_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

const ownSet = `
name: my own # 1
source: marks, two blades by micrometer

# thinnest first is usual
.0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm   # worn
.0015 in / 0.038 mm
0.10 mm ± 0.003 mm
`

func TestParseSet(t *testing.T) {
	set, err := feeler.ParseSet(ownSet)
	require.NoError(t, err)
	require.Equal(t, "my own # 1", set.Name())
	require.Equal(t, "name: my own # 1\nsource: marks, two blades by micrometer\n.0015 in / 0.038 mm\n"+
		".0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm\n0.10 mm ± 0.003 mm\n", set.Text())
	for _, s := range append(feeler.StandardSets(), set) {
		again, err := feeler.ParseSet(strings.ReplaceAll(s.Text(), "\n", "\r\n"))
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(s, again))
		data, err := json.Marshal(s)
		require.NoError(t, err)
		var fromJSON feeler.Set
		require.NoError(t, json.Unmarshal(data, &fromJSON))
		require.Empty(t, cmp.Diff(s, fromJSON))
	}
}

func TestParseSetRefuses(t *testing.T) {
	for _, c := range []struct {
		in, field string
		line      int
		kind      error
	}{
		{"", "blades", 0, feeler.ErrEmpty},
		{"# nothing\n\n", "blades", 0, feeler.ErrEmpty},
		{"0.1 mm\n\n0.2\n", "mark 1", 3, units.ErrNoUnit},
		{"0.1 mm\n.006 in / 0.015 mm", "mark 2", 2, feeler.ErrMarks},
		{"0.1 mm = 0.09", "measured thickness", 1, units.ErrNoUnit},
		{"0.1 mm ± 3", "error", 1, units.ErrNoUnit},
		{"name: a\nname: b\n0.1 mm", "name", 2, feeler.ErrSyntax},
		{"source: a\nsource:\n0.1 mm", "source", 2, feeler.ErrSyntax},
		{"source: \x07\n0.1 mm", "source", 1, feeler.ErrSyntax},
		{"0.1 mm\xff", "", 0, feeler.ErrSize},
		{strings.Repeat("0.1 mm\n", 257), "blades", 257, feeler.ErrSize},
		{strings.Repeat("0.1 mm\n", 10<<20/7), "", 0, feeler.ErrSize},
	} {
		_, err := feeler.ParseSet(c.in)
		var e *feeler.InputError
		require.ErrorAs(t, err, &e, "%.80q", c.in)
		require.ErrorIs(t, err, c.kind, "%v", err)
		require.Equal(t, c.field, e.Field, "%v", err)
		require.Equal(t, c.line, e.Line, "%v", err)
		require.Equal(t, "set", e.What)
	}
	_, err := feeler.ParseSet(".0025 in / 0.064 mm\n0.064 mm")
	require.ErrorIs(t, err, feeler.ErrDuplicate)
	_, err = feeler.ParseSet("0.1 mm\n0.64\n")
	require.EqualError(t, err, `feeler: set, line 2, mark 1 "0.64": not written as expected; a size with its unit: units: length "0.64", at byte 4: no unit; write it as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"`)
}

func TestParseSetJSONRefuses(t *testing.T) {
	for _, c := range []struct {
		in, path string
		kind     error
	}{
		{``, "", document.ErrEmpty},
		{`{"blades":["0.1 mm"]}`, "schema", document.ErrMissing},
		{`{"schema":2,"blades":["0.1 mm"]}`, "schema", document.ErrSchema},
		{`{"schema":1}`, "blades", document.ErrMissing},
		{`{"schema":1,"blades":["0.1 mm"],"color":"red"}`, "color", document.ErrUnknown},
		{`{"schema":1,"blades":[0.1]}`, "blades[0]", document.ErrType},
		{`{"schema":1,"blades":["0.1 mm","0.2"]}`, "blades[1]", units.ErrNoUnit},
		{`{"schema":1,"blades":["0.1 mm","0.1 mm"]`, "", document.ErrTruncated},
		{`{"schema":1,"blades":["0.1 mm"],"name":"a` + "\xff" + `"}`, "name", document.ErrEncoding},
	} {
		_, err := feeler.ParseSetJSON("kit.json", []byte(c.in))
		var e *document.Error
		require.ErrorAs(t, err, &e, c.in)
		require.ErrorIs(t, err, c.kind, "%v", err)
		require.Contains(t, e.Path, c.path, "%v", err)
		require.True(t, strings.HasPrefix(err.Error(), "kit.json"), "%v", err)
		var set feeler.Set
		require.Error(t, set.UnmarshalJSON([]byte(c.in)))
		require.Zero(t, set.Len())
	}
	_, err := feeler.ParseSetJSON("", []byte(`{"schema":1,"blades":[]}`))
	require.ErrorIs(t, err, feeler.ErrEmpty)
	_, err = feeler.ParseSetJSON("kit.json", []byte("{\"schema\":1,\n\"blades\":[]}"))
	require.ErrorIs(t, err, feeler.ErrEmpty)
	require.EqualError(t, err, "kit.json:2: blades: feeler: set, blades: no blades; at least one")
	_, err = feeler.ParseSetJSON("kit.json", []byte("{\"schema\":1,\n\"blades\":[\"0.1 mm\"],\n\"name\":\"a#\\u0007b\"}"))
	require.ErrorContains(t, err, "kit.json:3: name: feeler: set")
	_, err = feeler.ParseSetJSON("", []byte(`{"schema":1,"blades":[".0025 in / 0.064 mm","0.064 mm"]}`))
	require.ErrorIs(t, err, feeler.ErrDuplicate)
}
