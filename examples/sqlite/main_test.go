package main

import (
	"bytes"
	"database/sql"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
	"github.com/tenthou/tenthou/units"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/default.golden")
	recipetest.Golden(t, run, []string{"-limit", ".003 in"}, "", recipe.Answered, "testdata/inch.golden")
	recipetest.Usage(t, run, 0)
}

// What went in comes out, to the last picometre, from a file opened again.
func TestKept(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.db")
	var out, errs bytes.Buffer
	require.Equal(t, recipe.Answered, run([]string{"-database", path}, nil, &out, &errs), errs.String())
	db, err := sql.Open("sqlite", path)
	require.NoError(t, err)
	defer db.Close()
	for _, r := range demo {
		var size units.Length
		require.NoError(t, db.QueryRowContext(t.Context(), `SELECT size FROM bore WHERE cylinder = ? AND place = ?`, r.cylinder, r.place).Scan(&size))
		require.Equal(t, r.size, size)
	}
	require.Equal(t, recipe.Refused, run([]string{"-database", path}, nil, &bytes.Buffer{}, &errs), "the table is there already")
	var n int
	require.NoError(t, db.QueryRowContext(t.Context(), `SELECT count(*) FROM bore`).Scan(&n))
	require.Equal(t, len(demo), n, "a refused run leaves the table as it was")

	var size units.Length
	require.Error(t, db.QueryRowContext(t.Context(), `SELECT 1.5`).Scan(&size), "a real number is no whole number of picometres")
	require.Error(t, db.QueryRowContext(t.Context(), `SELECT NULL`).Scan(&size), "nothing is not 0 mm")
}

func TestBadInput(t *testing.T) {
	var out, errs bytes.Buffer
	require.Equal(t, recipe.Refused, run([]string{"-limit", "0.05"}, nil, &out, &errs))
	require.Contains(t, errs.String(), "no unit")
	require.Equal(t, recipe.Refused, run([]string{"-database", filepath.Join(t.TempDir(), "no", "such", "place.db")}, nil, &out, &errs))
	require.Empty(t, out.String())
}
