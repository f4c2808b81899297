package recipetest

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
)

// double prints each of its input's characters twice.
func double(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("double", "What is it twice?", errs)
	upset := flags.Bool("upset", false, "complain")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	text, err := recipe.ReadInput("-", in)
	if err != nil {
		return flags.Fail(err)
	}
	for _, r := range string(text) {
		fmt.Fprintf(out, "%c%c\n", r, r)
	}
	if *upset {
		return flags.Fail(io.ErrUnexpectedEOF)
	}
	return recipe.Answered
}

func TestGolden(t *testing.T) {
	Golden(t, double, nil, "abc", recipe.Answered, "testdata/double.txt")
	Golden(t, double, []string{"-upset"}, "", recipe.Refused, "testdata/upset.txt")
	Usage(t, double, 0)
}

// A witness keeps what is said of a test.
type witness struct {
	testing.TB
	said []string
}

func (w *witness) Helper() {}
func (w *witness) Errorf(f string, args ...any) {
	w.said = append(w.said, fmt.Sprintf(f, args...))
}

func say(run func(t testing.TB)) []string {
	w := &witness{}
	run(w)
	return w.said
}

// fixed is a recipe that always prints the same.
func fixed(out, errs string, exit int) recipe.Func {
	return func(_ []string, _ io.Reader, o, e io.Writer) int {
		io.WriteString(o, out)
		io.WriteString(e, errs)
		return exit
	}
}

func TestGolden_differs(t *testing.T) {
	path := filepath.Join(t.TempDir(), "x.txt")
	require.NoError(t, os.WriteFile(path, []byte("a\r\nb\r\n"), 0o644))
	golden := func(run recipe.Func) []string {
		return say(func(t testing.TB) { Golden(t, run, []string{"-x", "y"}, "", 0, path) })
	}
	const hint = "\n(go test -update writes it anew)"
	require.Empty(t, golden(fixed("a\nb\n", "", 0)))
	require.Equal(t, []string{"-x y: exit code 1, want 0; errs: "}, golden(fixed("a\nb\n", "", 1)))
	require.Equal(t, []string{path + ":2: differs\n got: c\nwant: b" + hint}, golden(fixed("a\nc\n", "", 0)))
	require.Equal(t, []string{path + ":2: differs\n got: (the end)\nwant: b" + hint}, golden(fixed("a\n", "", 0)))
	require.Equal(t, []string{path + ":3: differs\n got: c\nwant: (the end)" + hint}, golden(fixed("a\nb\nc", "", 0)))
	require.Equal(t, []string{path + ".errs:1: differs\n got: no\nwant: (the end)" + hint}, golden(fixed("a\nb\n", "no\n", 0)))
	require.Equal(t, []string{"-x y: nothing is printed", path + ":1: differs\n got: (the end)\nwant: a" + hint}, golden(fixed("", "", 0)))

	runs := 0
	restless := func(_ []string, _ io.Reader, o, _ io.Writer) int {
		runs++
		io.WriteString(o, "a\nb\n"[:5-runs])
		return 0
	}
	require.Equal(t, []string{"-x y: a second run prints something else"}, golden(restless))

	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Mkdir(path, 0o755))
	require.Len(t, golden(fixed("a\n", "", 0)), 1, "a folder is no golden file")
}

func TestGolden_update(t *testing.T) {
	*update = true
	defer func() { *update = false }()
	folder := t.TempDir()
	path := filepath.Join(folder, "new", "x.txt")
	golden := func(run recipe.Func) []string {
		return say(func(t testing.TB) { Golden(t, run, nil, "", 0, path) })
	}
	require.Empty(t, golden(fixed("a\n", "b\n", 0)))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, "a\n", string(data))
	data, err = os.ReadFile(path + ".errs")
	require.NoError(t, err)
	require.Equal(t, "b\n", string(data))

	require.Empty(t, golden(fixed("c\n", "", 0)))
	require.NoFileExists(t, path+".errs")
	*update = false
	require.Empty(t, golden(fixed("c\n", "", 0)))

	*update = true
	path = filepath.Join(path, "within a file.txt")
	require.Len(t, golden(fixed("c\n", "d\n", 0)), 2)
	require.Len(t, golden(fixed("", "", 0)), 3)
}

func TestUsage_bad(t *testing.T) {
	usage := func(run recipe.Func) int {
		return len(say(func(t testing.TB) { Usage(t, run, 2) }))
	}
	require.Equal(t, 3, usage(fixed("", "", 0)))
	require.Equal(t, 2, usage(fixed("x: y\n\nUse: x\n", "", 0)))
	require.Equal(t, 1, usage(fixed("", "x: no -no-such-flag, no no-such-word\n", 1)))
	require.Equal(t, 3, usage(fixed("", "x: no -no-such-flag, no no-such-word\n", 2)))
	require.Equal(t, 3, usage(fixed("x", "x: no -no-such-flag, no no-such-word\n", 1)))
	require.Equal(t, 3, usage(fixed("", "x: no -no-such-flag,\nno no-such-word\n", 1)))
	require.Equal(t, 3, usage(fixed("", "x: no\n", 1)))
}
