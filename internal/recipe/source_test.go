package recipe

import (
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSource(t *testing.T) {
	read := func(args ...string) (string, string, error) {
		flags := Flags("endgap", "?", io.Discard)
		src := flags.Input("engine.json", []byte("demo"), "the `FILE`")
		_, done := flags.Parse(args, io.Discard)
		require.False(t, done)
		name, data, err := src.Read(strings.NewReader("piped"))
		return name, string(data), err
	}
	name, data, err := read()
	require.NoError(t, err)
	require.Equal(t, []string{"engine.json", "demo"}, []string{name, data})
	name, data, err = read("-in", "-")
	require.NoError(t, err)
	require.Equal(t, []string{"standard input", "piped"}, []string{name, data})
	_, _, err = read("-in", "")
	require.ErrorIs(t, err, ErrNoInput, "a file named by nothing is not the invented one")
	_, _, err = read("-in", "testdata/nowhere.json")
	var e *InputError
	require.ErrorAs(t, err, &e)
	require.Equal(t, "testdata/nowhere.json", e.Name)
}
