package main

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/default.golden")
	recipetest.Golden(t, run, []string{"-in", "testdata/nowhere.csv"}, "", recipe.Refused, "testdata/nofile.golden")
	recipetest.Usage(t, run, 0)
}

// What the recipe writes it reads again, and its remarks come back as they were.
func TestAgain(t *testing.T) {
	first, err := judge("readings.csv", demo)
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(first)).ReadAll()
	require.NoError(t, err)
	require.Equal(t, "'=SUM(A1:A9)", rows[3][5])
	require.Equal(t, "'-2+3 is not a reading", rows[5][5])
	require.Equal(t, "-0.012 mm", rows[5][2])
	require.Equal(t, "=SUM(A1:A9)", plain(rows[3][5]))

	var cut bytes.Buffer
	w := csv.NewWriter(&cut)
	for _, r := range rows {
		require.NoError(t, w.Write(r[:6]))
	}
	w.Flush()
	second, err := judge("again", cut.Bytes())
	require.NoError(t, err)
	require.Equal(t, string(first), string(second))
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, in, say string }{
		{"empty", "", "empty"},
		{"no column", strings.Replace(good, "reading,", "read,", 1), `:1: there is no column headed "reading"`},
		{"column twice", strings.Replace(good, "remarks", "wear", 1), `"wear" is there twice`},
		{"no unit", strings.Replace(good, "2.3612 ±.0001 in", "2.3612", 1), ":4: reading:"},
		{"limits", strings.Replace(good, "2.3614–2.3622 in", "2.3622–2.3614 in", 1), ":4: new:"},
		{"wear limit", strings.Replace(good, "min 2.3602 in", "about 2.36 in", 1), ":4: wear:"},
		{"limits contradict", strings.Replace(good, "min 2.3602 in", "min 2.3702 in", 1), ":4:"},
		{"short row", good + "end float,crankshaft\n", "line 7"},
		{"open quote", good + `"end`, "line 7"},
		{"bad heading", `"measure`, "line 1"},
		{"absurd", strings.Replace(good, "2.3612 ±.0001 in", "99999999 in", 1), ":4: reading:"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errs bytes.Buffer
			require.Equal(t, recipe.Refused, run([]string{"-in", "-"}, strings.NewReader(c.in), &out, &errs))
			require.Empty(t, out.String())
			require.Contains(t, errs.String(), c.say)
			require.Contains(t, errs.String(), "standard input")
			require.Equal(t, 1, strings.Count(errs.String(), "\n"))
		})
	}
	bom, err := judge("x", append([]byte("\ufeff"), demo...))
	require.NoError(t, err)
	plain, err := judge("x", demo)
	require.NoError(t, err)
	require.Equal(t, plain, bom)
	require.Equal(t, recipe.Refused, run(nil, nil, full{}, &bytes.Buffer{}))
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, bytes.ErrTooLarge }
