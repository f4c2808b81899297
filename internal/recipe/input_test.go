package recipe_test

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
)

// endless is an input that never ends, and counts what is taken.
type endless int

func (e *endless) Read(p []byte) (int, error) {
	*e += endless(len(p))
	return len(p), nil
}

func TestReadInput(t *testing.T) {
	path := filepath.Join(t.TempDir(), "engine.json")
	require.NoError(t, os.WriteFile(path, []byte("{}\n"), 0o644))
	data, err := recipe.ReadInput(path, nil)
	require.NoError(t, err)
	require.Equal(t, "{}\n", string(data))

	data, err = recipe.ReadInput("-", strings.NewReader("[]"))
	require.NoError(t, err)
	require.Equal(t, "[]", string(data))

	data, err = recipe.ReadInput("-", bytes.NewReader(make([]byte, recipe.MaxInput)))
	require.NoError(t, err)
	require.Len(t, data, recipe.MaxInput)
}

func TestReadInput_refuses(t *testing.T) {
	folder := t.TempDir()
	broken := errors.New("broken pipe")
	for _, c := range []struct {
		path  string
		stdin io.Reader
		is    error
		text  string
	}{
		{"", nil, recipe.ErrNoInput, "input: no file named; - is the standard input"},
		{"-", nil, fs.ErrClosed, "standard input: file already closed"},
		{"-", iotest.ErrReader(broken), broken, "standard input: broken pipe"},
		{"-", new(endless), recipe.ErrTooLong, "standard input: longer than 64 MiB"},
		{filepath.Join(folder, "no.json"), nil, fs.ErrNotExist, filepath.Join(folder, "no.json") + ": no such file or directory"},
		{folder, nil, nil, folder + ": is a directory"},
	} {
		data, err := recipe.ReadInput(c.path, c.stdin)
		require.Nil(t, data)
		require.EqualError(t, err, c.text)
		if c.is != nil {
			require.ErrorIs(t, err, c.is)
		}
		var input *recipe.InputError
		require.ErrorAs(t, err, &input)
	}
	require.Equal(t, "input: refused", (&recipe.InputError{}).Error())

	var e endless
	_, err := recipe.ReadInput("-", &e)
	require.ErrorIs(t, err, recipe.ErrTooLong)
	require.LessOrEqual(t, int(e), recipe.MaxInput+1)
}

func FuzzSet_parse(f *testing.F) {
	f.Add("-gap", "0.4 mm")
	f.Add("-least", "1e9")
	f.Add("--", "-")
	f.Fuzz(func(t *testing.T, a, b string) {
		if a != "-" && !strings.HasPrefix(a, "-") || b != "-" && !strings.HasPrefix(b, "-") && !strings.HasPrefix(a, "-") {
			return // it would name a file
		}
		var out, errs bytes.Buffer
		exit := run([]string{a, b}, strings.NewReader("x"), &out, &errs)
		require.Equal(t, exit == recipe.Answered, errs.Len() == 0)
		require.Equal(t, exit == recipe.Answered, out.Len() > 0)
	})
}

func BenchmarkFlags(b *testing.B) {
	b.Run("lib=recipe/op=parse", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			run([]string{"-gap", "0.40 mm"}, nil, io.Discard, io.Discard)
		}
	})
}
