package vectors_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

func TestLoad(t *testing.T) {
	f := vectors.Load(t, "published/fractions64.txt")
	require.Equal(t, "testdata/published/fractions64.txt", f.Path)
	require.Len(t, f.Rows, 64)

	// From deeper down, and from a nested module within this one.
	deep := filepath.Join(t.TempDir(), "main", "examples", "nested")
	require.NoError(t, os.MkdirAll(deep, 0o755))
	root := filepath.Join(deep, "..", "..")
	require.NoError(t, os.WriteFile(filepath.Join(deep, "go.mod"), []byte("module github.com/tenthou/tenthou/examples/nested\n"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(root, "go.mod"), []byte("module github.com/tenthou/tenthou\r\n\r\ngo 1.26\r\n"), 0o644))
	require.NoError(t, os.MkdirAll(filepath.Join(root, "testdata", "demo"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(root, "testdata", "demo", "x.txt"), []byte(header+"# count: 1\ncolumns: a\n7\n"), 0o644))
	t.Chdir(deep)
	require.Equal(t, []string{"7"}, vectors.Load(t, "demo/x.txt").Rows[0].Cells)
}

func TestLoad_refuses(t *testing.T) {
	load := func(name string) (w *witness) {
		w = &witness{TB: t}
		defer func() { require.Equal(t, stopped{}, recover()) }()
		vectors.Load(w, name)
		return w
	}
	require.Contains(t, load("published/none.txt").fatal, "testdata/published/none.txt")

	folder := t.TempDir()
	t.Chdir(folder)
	require.Equal(t, "vectors: no go.mod above the working directory says module github.com/tenthou/tenthou", load("demo/x.txt").fatal)
	require.NoError(t, os.Mkdir("go.mod", 0o755))
	require.Contains(t, load("demo/x.txt").fatal, "go.mod")
}
