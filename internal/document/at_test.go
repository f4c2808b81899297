package document_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
)

func TestAt(t *testing.T) {
	data := []byte("{\n  \"schema\": 1,\n  \"cylinders\": [\n    {\"cylinder\": 1},\n    {\"cylinder\": 1,\n     \"levels\": [{\"along\": \"86 mm\"}]}\n  ]\n}\n")
	twice := errors.New("cylinder 1 is there twice")
	for _, c := range []struct {
		path         string
		line, column int
	}{
		{"cylinders[1].cylinder", 5, 18},
		{"cylinders[1].levels[0].along", 6, 27},
		{"cylinders[1].levels[0].across", 6, 17}, // what is missing stands in its level
		{"cylinders[1].levels[3].across", 6, 16},
		{"cylinders[7]", 3, 16},
		{"heads[0].lines[2].gap", 1, 1},
		{"", 1, 1},
	} {
		err := document.At("engine.json", data, c.path, twice)
		var placed *document.Error
		require.ErrorAs(t, err, &placed)
		require.Equal(t, [2]int{c.line, c.column}, [2]int{placed.Line, placed.Column}, c.path)
		require.Equal(t, c.path, placed.Path)
		require.ErrorIs(t, err, twice)
		want := fmt.Sprintf("engine.json:%d: ", c.line)
		if c.path != "" {
			want += c.path + ": "
		}
		require.Equal(t, want+"cylinder 1 is there twice", err.Error())
	}
	require.NoError(t, document.At("engine.json", data, "cylinders", nil))
	// What has its place keeps it.
	first := document.At("engine.json", data, "cylinders[0]", twice)
	require.Same(t, first, document.At("other.json", data, "schema", first))
	// A document that is none has no places.
	require.Equal(t, "x:1: a.b: cylinder 1 is there twice", document.At("x", []byte("{"), "a.b", twice).Error())
	require.Equal(t, "x:1: "+strings.Repeat("[", 3)+": cylinder 1 is there twice", document.At("x", nil, "[[[", twice).Error())
}
