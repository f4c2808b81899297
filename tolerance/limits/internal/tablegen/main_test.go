package main

import (
	"errors"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

func published(t *testing.T) func(string) (*vectors.File, error) {
	root, err := vectors.Root()
	require.NoError(t, err)
	return func(name string) (*vectors.File, error) {
		return vectors.Read(os.DirFS(root), "testdata/published/"+name)
	}
}

func TestTablesAreCurrent(t *testing.T) {
	want, err := generate(published(t))
	require.NoError(t, err)
	got, err := os.ReadFile("../../tables.go")
	require.NoError(t, err)
	require.Equal(t, string(want), string(got), "run go generate ./tolerance/limits")
}

func TestRefusesWhatItCantRead(t *testing.T) {
	open := published(t)
	_, err := generate(func(name string) (*vectors.File, error) { return nil, os.ErrNotExist })
	require.ErrorIs(t, err, os.ErrNotExist)

	broken := func(spoil func(f *vectors.File)) error {
		_, err := generate(func(name string) (*vectors.File, error) {
			f, err := open(name)
			if err == nil && name == "iso286_shafts.txt" {
				spoil(f)
			}
			return f, err
		})
		return err
	}
	require.ErrorContains(t, broken(func(f *vectors.File) { f.Rows[3].Cells[2] = "many" }), `a: "many"`)
	require.ErrorContains(t, broken(func(f *vectors.File) { f.Rows[3].Cells[2] = "0.5" }), `a: "0.5"`, "a table in whole micrometres")
	require.ErrorContains(t, broken(func(f *vectors.File) { f.Columns[2] = "aa" }), "no column a")
	require.False(t, errors.Is(broken(func(*vectors.File) {}), os.ErrNotExist))
}
