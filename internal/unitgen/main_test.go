package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

const folder = "../../units"

// The files in package units are what the template makes today.
func TestRender_upToDate(t *testing.T) {
	for _, k := range kinds {
		name, want, err := Render(k)
		require.NoError(t, err)
		got, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		require.Equal(t, string(want), string(got), "%s: run go generate ./units", name)
	}
}

// Every quantity of the package is generated for, and no file is left over.
func TestRender_all(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(folder, "*_methods.go"))
	require.NoError(t, err)
	require.Len(t, files, len(kinds))
	source, err := os.ReadFile(filepath.Join(folder, "unit.go"))
	require.NoError(t, err)
	list := regexp.MustCompile(`(?s)type Quantity interface \{\n(.*?)\n\}`).FindSubmatch(source)
	require.NotNil(t, list)
	types := regexp.MustCompile(`\w+`).FindAllString(string(list[1]), -1)
	require.Len(t, types, len(kinds))
	for _, k := range kinds {
		require.Contains(t, types, k.Type)
	}
}

func TestWrite(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, write(dir))
	made, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Len(t, made, len(kinds))
	require.Error(t, write(filepath.Join(dir, "none")))
}

func TestRender_slips(t *testing.T) {
	_, _, err := Render(Kind{Type: "not a name"})
	require.ErrorContains(t, err, "unitgen: not a name: ")
}
