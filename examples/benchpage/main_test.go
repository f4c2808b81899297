package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/examples/benchpage/calc"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/default.golden")
	recipetest.Usage(t, run, 0)
}

// The page has every field with its label, and every id once.
func TestIndex(t *testing.T) {
	page, err := index()
	require.NoError(t, err)
	for _, c := range calc.All() {
		require.Contains(t, string(page), `id="`+c.Name+`-answer"`)
		for _, f := range c.Fields {
			require.Contains(t, string(page), `<label for="`+c.Name+`-`+f.Name+`">`)
		}
	}
	seen := map[string]bool{}
	for _, part := range strings.Split(string(page), ` id="`)[1:] {
		id, _, _ := strings.Cut(part, `"`)
		require.False(t, seen[id], id)
		seen[id] = true
	}
	require.NotContains(t, string(page), "ZgotmplZ")
	require.NotContains(t, string(page), "<?xml")
}

// A folder that is there is left alone; where the page can't be made nothing is
// left behind. The page itself is made, and opened, by the test of the browser.
func TestWrite_refuses(t *testing.T) {
	folder := t.TempDir()
	var out, errs bytes.Buffer
	require.Equal(t, recipe.Refused, run([]string{"-out", folder}, nil, &out, &errs))
	require.Contains(t, errs.String(), "is there already")
	file := filepath.Join(folder, "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	require.Equal(t, recipe.Refused, run([]string{"-out", filepath.Join(file, "page")}, nil, &out, &errs))
	t.Setenv("PATH", "")
	require.Equal(t, recipe.Refused, run([]string{"-out", filepath.Join(folder, "page")}, nil, &out, &errs))
	require.Contains(t, errs.String(), "Go tools")
	require.Empty(t, out.String())
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Len(t, left, 1)
}
