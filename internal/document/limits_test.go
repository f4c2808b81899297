package document_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

type node struct {
	Far *node `json:"far"`
}

type nest []nest

func TestDecode_depth(t *testing.T) {
	var n nest
	require.NoError(t, document.Decode([]byte(strings.Repeat("[", 64)+strings.Repeat("]", 64)), &n))
	err := document.Decode([]byte(strings.Repeat("[", 65)+strings.Repeat("]", 65)), &n)
	require.ErrorIs(t, err, document.ErrDepth)
	require.EqualError(t, err, "document: line 1: "+strings.Repeat("[0]", 64)+": nested too deeply: want at most 64 levels")

	// The limit is on depth, not on the number of lists.
	require.NoError(t, document.Decode([]byte("["+strings.Repeat("[[]],", 1000)+"[]]"), &n))

	endless := []byte(strings.Repeat("[", 1<<20))
	require.ErrorIs(t, document.Decode(endless, &n), document.ErrDepth)
	_, err = document.Schema(append([]byte(`{"a":`), endless...), 1)
	require.ErrorIs(t, err, document.ErrDepth)
	endless = []byte(strings.Repeat(`{"far":`, 1<<20))
	var deep node
	require.ErrorIs(t, document.Decode(endless, &deep), document.ErrDepth)
}

// Too large an input is refused before a byte of it is read.
func TestDecode_size(t *testing.T) {
	line := bytes.Repeat([]byte("7"), 100<<20)
	var n int
	err := document.DecodeNamed("huge.json", line, &n)
	require.ErrorIs(t, err, document.ErrSize)
	require.EqualError(t, err, "huge.json: document too large: found 104857600 bytes, want at most 67108864 bytes")
	_, err = document.SchemaNamed("huge.json", line, 1)
	require.ErrorIs(t, err, document.ErrSize)

	require.ErrorIs(t, document.Decode(line[:document.MaxSize], &n), document.ErrRange)
	require.ErrorIs(t, document.Decode(line[:document.MaxSize+1], &n), document.ErrSize)
	blanks := bytes.Repeat([]byte(" "), document.MaxSize)
	require.ErrorIs(t, document.Decode(blanks, &n), document.ErrEmpty)
	copy(blanks[document.MaxSize-1:], "7")
	require.NoError(t, document.Decode(blanks, &n))
	require.Equal(t, 7, n)
}

// A small input can't ask for much memory: here two characters would cost 56 MB.
func TestDecode_memory(t *testing.T) {
	type heavy struct {
		Bulk [7 << 20]int64 `json:"bulk,omitzero"`
	}
	for _, c := range []struct {
		into any
		doc  string
		path string
	}{
		{new([]*heavy), `[{},{},{},{},{},{},{},{},{},{},{}]`, "[9]: "},
		{new([][5]heavy), `[[`, "[0]: "},
		{new(struct{ Far *[10]heavy }), `{"Far":[]}`, "Far: "},
		{new(map[string][10]heavy), `{"a":[`, "a: "},
	} {
		err := document.Decode([]byte(c.doc), c.into)
		require.ErrorIs(t, err, document.ErrSize)
		require.EqualError(t, err, "document: line 1: "+c.path+
			"document too large: want at most 536870912 bytes of decoded values")
	}
}

// Lists and maps of ordinary length stay far from the limit.
func TestDecode_plenty(t *testing.T) {
	var sizes []size
	require.NoError(t, document.Decode([]byte(`[`+strings.Repeat(`"1.5 mm",`, 200_000)+`"2 mm"]`), &sizes))
	require.Len(t, sizes, 200_001)
	require.Equal(t, size(2000), sizes[200_000])
	require.Equal(t, size(1500), sizes[199_999])
}
