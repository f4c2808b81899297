// Package recipetest tests recipes by calling them in the test's own process.
//
// A golden file holds what a recipe prints, for its layout only: the numbers in
// it are checked elsewhere, against sources outside this module. Beside it, under
// the same name with .errs after it, lies what the recipe writes to errs. A file
// that isn't there stands for nothing printed.
//
// go test -update writes the files anew; read the difference before it is kept.
// The flag is this package's, so a test that imports it has none of that name.
package recipetest

import (
	"bytes"
	"errors"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/tenthou/tenthou/internal/recipe"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Golden runs a recipe twice, and fails the test unless both runs end with the
// exit code and print what the golden files hold.
func Golden(t testing.TB, run recipe.Func, args []string, stdin string, wantExit int, golden string) {
	t.Helper()
	exit, out, errs := call(run, args, stdin)
	if exit != wantExit {
		t.Errorf("%s: exit code %d, want %d; errs: %s", strings.Join(args, " "), exit, wantExit, errs)
	}
	if _, again, errsAgain := call(run, args, stdin); !bytes.Equal(out, again) || !bytes.Equal(errs, errsAgain) {
		t.Errorf("%s: a second run prints something else", strings.Join(args, " "))
	}
	if len(out)+len(errs) == 0 {
		t.Errorf("%s: nothing is printed", strings.Join(args, " "))
	}
	compare(t, golden, out)
	compare(t, golden+".errs", errs)
}

// Usage fails the test unless -h gives help on out and exit code 0, and both a
// flag that doesn't exist and a word that belongs to no flag (where the recipe
// takes words, give their number) give one line on errs and exit code 1.
func Usage(t testing.TB, run recipe.Func, words int) {
	t.Helper()
	exit, out, errs := call(run, []string{"-h"}, "")
	if exit != recipe.Answered || !bytes.Contains(out, []byte("\nUse: ")) || len(errs) > 0 {
		t.Errorf("-h: exit code %d, want %d and help on out; out: %s; errs: %s", exit, recipe.Answered, out, errs)
	}
	const unknown = "-no-such-flag"
	for _, args := range [][]string{{unknown}, slices.Repeat([]string{"no-such-word"}, words+1)} {
		exit, out, errs = call(run, args, "")
		named := bytes.Contains(errs, []byte(args[len(args)-1]))
		if exit != recipe.Refused || len(out) > 0 || !named || bytes.Count(errs, []byte("\n")) != 1 {
			t.Errorf("%s: exit code %d, want %d and one line on errs that names it; out: %s; errs: %s",
				strings.Join(args, " "), exit, recipe.Refused, out, errs)
		}
	}
}

func call(run recipe.Func, args []string, stdin string) (exit int, out, errs []byte) {
	var o, e bytes.Buffer
	exit = run(args, strings.NewReader(stdin), &o, &e)
	return exit, o.Bytes(), e.Bytes()
}

// compare holds what was printed against a golden file, or writes it.
func compare(t testing.TB, path string, got []byte) {
	t.Helper()
	if *update {
		if err := write(path, got); err != nil {
			t.Errorf("%v", err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%v", err)
		return
	}
	want = bytes.ReplaceAll(want, []byte("\r\n"), []byte("\n")) // as a checkout may write it
	if bytes.Equal(got, want) {
		return
	}
	gotLines, wantLines := bytes.SplitAfter(got, []byte("\n")), bytes.SplitAfter(want, []byte("\n"))
	n := 0
	for n < len(gotLines) && n < len(wantLines) && bytes.Equal(gotLines[n], wantLines[n]) {
		n++
	}
	t.Errorf("%s:%d: differs\n got: %s\nwant: %s\n(go test -update writes it anew)", path, n+1, line(gotLines, n), line(wantLines, n))
}

func line(lines [][]byte, n int) []byte {
	if n >= len(lines) || len(lines[n]) == 0 {
		return []byte("(the end)")
	}
	return bytes.TrimSuffix(lines[n], []byte("\n"))
}

// write writes a golden file; for nothing printed there is none.
func write(path string, data []byte) error {
	if len(data) == 0 {
		if err := os.Remove(path); !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, data, 0o644)
}
