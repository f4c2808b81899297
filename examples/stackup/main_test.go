package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		golden string
		exit   int
		args   []string
	}{
		{"default", recipe.Answered, nil},
		{"nosimulation", recipe.Answered, []string{"-trials", "0", "-sigmas", "2"}},
		{"trials", recipe.Refused, []string{"-trials", "-1"}},
		{"sigmas", recipe.Refused, []string{"-sigmas", "0"}},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

func call(in string, args ...string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run(append([]string{"-in", "-"}, args...), strings.NewReader(in), &o, &e)
	return o.String(), e.String(), exit
}

// By hand: 208.00 − 43.00 − 133.00 − 32.15 + 1.20 = 1.05, and 0.05 + 0.03 +
// 0.05 + 0.03 + 0.04 = 0.20 each way.
func TestWorstCaseByHand(t *testing.T) {
	out, _, exit := call(string(demo), "-trials", "0")
	require.Zero(t, exit)
	require.Contains(t, out, "worst case         [0.850 mm, 1.250 mm]")
}

// A measured size goes in as its bracket, and takes its part of the doubt away.
func TestMeasuredSize(t *testing.T) {
	in := strings.Replace(string(demo), "208.00 ±0.05 mm", "208.010 ±0.002 mm", 1)
	out, errs, exit := call(in, "-trials", "0")
	require.Zero(t, exit, errs)
	require.Contains(t, out, "worst case         [0.908 mm, 1.212 mm]")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"schema", `"schema": 1`, `"schema": 9`, "schema", "schema 1"},
		{"no links", good[strings.Index(good, `"links"`):], `"links": []}`, "", "link"},
		{"no sensitivity", `"sensitivity": "1", `, ``, ":6:", "sensitivity"},
		{"sensitivity nought", `"sensitivity": "1"`, `"sensitivity": "0"`, "", "sensitivity"},
		{"no unit", "208.00 ±0.05 mm", "208.00 ±0.05", ":6:", "unit"},
		{"one-sided", "208.00 ±0.05 mm", "max 208.00 mm", "", "block height"},
		{"unknown scatter", `"rectangular"`, `"square"`, ":9:", "scatter"},
		{"reversed", "0.85–1.20 mm", "1.20–0.85 mm", ":4:", "nothing lies between"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit, out)
			require.Empty(t, out)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
		})
	}
}
