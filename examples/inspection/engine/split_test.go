package engine

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSplit(t *testing.T) {
	for _, c := range []struct{ in, limits, rest string }{
		{`{"schema": 1, "limits": {"a": [1, "}"]}, "readings": {}}`, `{"a": [1, "}"]}`, `{"schema": 1, "readings": {}}`},
		{`{"limits":{} , "schema": 1}`, `{}`, `{ "schema": 1}`},
		{`{"schema": 1, "limits" : {"b\"": "\\"}}`, `{"b\"": "\\"}`, `{"schema": 1}`},
		{`{"limits": {}}`, `{}`, `{}`},
		{`{"readings": {"limits": {}}, "engine": "limits"}`, "", ""},
		{`{"limits": {}, "limits": {}}`, "", ""},
		{`{"limits": 3}`, "", ""},
		{`{"limits": null}`, "", ""},
		{`{"limits": {}`, "", ""},
		{`{"engine": "limits`, "", ""},
		{`{"engine": "\`, "", ""},
		{``, "", ""},
		{`]]`, "", ""},
	} {
		limits, rest, ok := split([]byte(c.in))
		require.Equal(t, c.limits != "", ok, c.in)
		require.Equal(t, c.limits, string(limits), c.in)
		if ok {
			var a, b any
			require.NoError(t, json.Unmarshal([]byte(c.rest), &a))
			require.NoError(t, json.Unmarshal(rest, &b), string(rest))
			require.Equal(t, a, b)
		}
	}
}

// Of any document, what is taken out and what is left are together what it was.
func FuzzSplit(f *testing.F) {
	f.Add([]byte(`{"schema": 1, "limits": {"a": [1, "}"]}, "readings": {}}`))
	f.Add([]byte(`{"limits":{"x":"\\\""}}`))
	f.Fuzz(func(t *testing.T, record []byte) {
		record = bytes.ReplaceAll(record, []byte("\n"), []byte(" "))
		limits, rest, ok := split(record)
		var whole map[string]json.RawMessage
		if !ok || json.Unmarshal(record, &whole) != nil {
			return
		}
		var left map[string]json.RawMessage
		if err := json.Unmarshal(rest, &left); err != nil {
			t.Fatalf("%q leaves %q: %v", record, rest, err)
		}
		if !bytes.Equal(bytes.TrimSpace(whole["limits"]), limits) {
			t.Fatalf("%q: took %q", record, limits)
		}
		delete(whole, "limits")
		if len(whole) != len(left) {
			t.Fatalf("%q leaves %q", record, rest)
		}
	})
}
