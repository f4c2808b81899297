package document_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

// stricter are the kinds for which encoding/json may take what is refused here.
var stricter = []error{document.ErrUnknown, document.ErrCase, document.ErrDuplicate, document.ErrMissing, document.ErrType,
	document.ErrCount, document.ErrRange, document.ErrEncoding, document.ErrValue, document.ErrDepth, document.ErrSize}

// What is accepted encoding/json accepts too, with an equal result; what is
// refused as no JSON encoding/json refuses as well; what is refused leaves no trace.
func FuzzDecode(f *testing.F) {
	for _, doc := range judged {
		f.Add([]byte(doc))
	}
	for _, c := range refusals {
		f.Add([]byte(c.doc))
	}
	f.Fuzz(func(t *testing.T, doc []byte) {
		var got, want everything
		err := document.Decode(doc, &got)
		if err == nil {
			require.NoError(t, json.Unmarshal(doc, &want))
			require.Empty(t, diff(want, got))
			again, err := json.Marshal(got)
			require.NoError(t, err)
			var back everything
			require.NoError(t, document.Decode(again, &back), "%s", again)
			return
		}
		require.Empty(t, diff(everything{}, got))
		var refused *document.Error
		require.True(t, errors.As(err, &refused))
		require.GreaterOrEqual(t, refused.Line, 1)
		require.GreaterOrEqual(t, refused.Column, 1)
		if slices.Contains(notJSON, refused.Kind) {
			require.False(t, json.Valid(doc), err)
		} else {
			require.Contains(t, stricter, refused.Kind)
		}
	})
}

// The number is the one that encoding/json's tokens show.
func FuzzSchema(f *testing.F) {
	f.Add([]byte(`{"a":[1,{"b":"c"}],"schema":2}`))
	f.Add([]byte(`{"schema":3}`))
	f.Add([]byte(`{"\u0073chema":1,"schema":2}`))
	f.Fuzz(func(t *testing.T, doc []byte) {
		n, err := document.Schema(doc, 1, 2)
		if err != nil {
			require.Zero(t, n)
			return
		}
		judge := json.NewDecoder(bytes.NewReader(doc))
		judge.UseNumber()
		_, err = judge.Token()
		require.NoError(t, err)
		for {
			name, err := judge.Token()
			require.NoError(t, err)
			if name == "schema" {
				break
			}
			var other json.RawMessage
			require.NoError(t, judge.Decode(&other))
		}
		if number, err := judge.Token(); err == nil { // an error is of what follows the number
			require.Equal(t, json.Number(strconv.Itoa(n)), number)
		}
	})
}
