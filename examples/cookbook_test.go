// Package examples_test holds the cookbook as a whole to what every recipe must
// have. Each recipe's own test runs it and compares what it prints.
package examples_test

import (
	"flag"
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/cookbook"
	// Its flag -update serves here too.
	_ "github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestCookbook(t *testing.T) {
	folder := os.DirFS(".")
	recipes, err := cookbook.Recipes(folder)
	require.NoError(t, err)
	functions, err := cookbook.Functions(os.DirFS(".."))
	require.NoError(t, err)
	index := cookbook.Index(recipes, functions)
	if flag.Lookup("update").Value.String() == "true" {
		require.NoError(t, os.WriteFile("README.md", []byte(index), 0o644))
	}
	have, err := os.ReadFile("README.md")
	require.NoError(t, err)
	require.Equal(t, index, string(have), "go test ./examples -update makes the index anew")

	for _, r := range recipes {
		require.LessOrEqual(t, r.Lines, 155, "%s: main.go teaches one thing", r.Name)
		golden, err := fs.Glob(folder, r.Name+"/testdata/*.golden")
		require.NoError(t, err)
		require.NotEmpty(t, golden, "%s has no golden output", r.Name)
		test, err := fs.ReadFile(folder, r.Name+"/main_test.go")
		require.NoError(t, err)
		for _, runs := range []string{"recipetest.Golden(", "recipetest.Usage("} {
			require.Contains(t, string(test), runs, r.Name)
		}
		require.NotContains(t, string(test), "t.Skip", r.Name)
	}
	for _, r := range recipes {
		for pkg, names := range r.Uses {
			require.NotEmpty(t, names, pkg)
		}
		require.NotEmpty(t, strings.TrimSpace(r.Question))
	}
}
