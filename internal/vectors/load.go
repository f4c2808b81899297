package vectors

import (
	"errors"
	"io/fs"
	"iter"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const module = "module github.com/tenthou/tenthou"

// Load reads a file of the module's testdata folder, such as
// "published/fractions64.txt", from the test of any package, and fails the test
// if it isn't there or not in order.
func Load(t testing.TB, name string) *File {
	t.Helper()
	root, err := Root()
	if err != nil {
		t.Fatalf("vectors: %v", err)
		return nil
	}
	f, err := Read(os.DirFS(root), path.Join("testdata", name))
	if err != nil {
		t.Fatalf("vectors: %v", err)
		return nil
	}
	return f
}

// Root gives the folder of this module: the nearest one, from the working
// directory upwards, whose go.mod names it. A nested module lies within it.
func Root() (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		data, err := os.ReadFile(filepath.Join(folder, "go.mod"))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", err
		}
		first, _, _ := strings.Cut(string(data), "\n")
		if strings.TrimSpace(first) == module {
			return folder, nil
		}
		up := filepath.Dir(folder)
		if up == folder {
			return "", errors.New("no go.mod above the working directory says " + module)
		}
		folder = up
	}
}

// Each runs a subtest for each case, named by its id or its line, and logs how
// many ran. A subtest that leaves a column unread fails.
func (f *File) Each(t *testing.T, test func(t *testing.T, c Case)) {
	t.Helper()
	ran := 0
	for i, row := range f.Rows {
		name := row.ID
		if name == "" {
			name = "line " + strconv.Itoa(row.Line)
		}
		t.Run(name, func(t *testing.T) {
			ran++
			c := f.newCase(t, i)
			test(t, c)
			c.done()
		})
	}
	f.log(t, ran)
}

// All goes through the cases within one test: for fuzz seeds, benchmarks, and
// files whose thousands of cases need no names. A case that leaves a column
// unread fails the test.
func (f *File) All(t testing.TB) iter.Seq[Case] {
	return func(yield func(Case) bool) {
		t.Helper()
		ran := 0
		for i := range f.Rows {
			ran++
			c := f.newCase(t, i)
			more := yield(c)
			c.done()
			if !more {
				break
			}
		}
		f.log(t, ran)
	}
}

func (f *File) log(t testing.TB, ran int) {
	t.Helper()
	t.Logf("%s: %d of %d cases run", f.Path, ran, len(f.Rows))
}
