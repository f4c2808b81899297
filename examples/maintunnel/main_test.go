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
		{"working", recipe.Answered, []string{"-working", "main 2"}},
		{"nohousing", recipe.Refused, []string{"-working", "main 9"}},
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

// By hand: crowns at 250.00 and 250.03, finish 60, cut 0.01: the line at
// 250.03 + 0.01 − 30; at main 1 the cut is 0.04, the cap's grind 0.05.
func TestByHand(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "caps": "torqued", "levels": ["front"], "directions": ["vertical"], "size": {"new": "60.00–60.02 mm"},
		"housings": [{"where": "main 1", "sizes": [["60.00 mm"]]}],
		"hone": {"finish": "60 mm", "leastCut": "0.01 mm", "housings": [
			{"where": "main 1", "crown": "250.00 mm", "size": "60.00 mm"}, {"where": "main 2", "crown": "250.03 mm", "size": "60.00 mm"}]}}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "main 1: as new, by housing bore")
	require.Contains(t, out, "main 1   0.040              0.050              0.010            0.040")
	require.Contains(t, out, "220.04 mm")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"the caps' state is loose":        {`"torqued"`, `"loose"`},
		"the caps' state is not recorded": {`"torqued"`, `"not recorded"`},
		"rise against max 0.02 mm: above": {`"max 0.05 mm",
    "deck"`, `"max 0.02 mm",
    "deck"`},
		"The line, by heights": {`"blades"`, `"heights"`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in)
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want)
	}
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown state", `"torqued"`, `"tight"`, `"torqued", "loose"`},
		{"unknown field", `"ovality"`, `"ovalty"`, "ovalty"},
		{"no unit", `"60.010 ±0.002 mm"`, `"60.010"`, "unit"},
		{"negative size", `"60.010 ±0.002 mm"`, `"-60.010 mm"`, "above 0 mm"},
		{"a row short", `["", "60.012 ±0.002 mm", "60.013 ±0.002 mm"]`, `["60.012 mm"]`, "3, as the tunnel has"},
		{"unknown way", `"blades"`, `"laser"`, "blades or heights"},
		{"negative gap", `"[0.03 mm, 0.04 mm)"`, `"-0.03 mm"`, "0 mm or more"},
		{"out of order", `"220 mm"`, `"20 mm"`, "further along"},
		{"step without datum", `"neighbour"`, `"step": {"new": "max 0.02 mm"}, "neighbour"`, "parallel"},
		{"absurd finish", `"finish": "60.010 mm"`, `"finish": "0 mm"`, "above 0 mm"},
		{"absurd cut", `"leastCut": "0.010 mm"`, `"leastCut": "-1 mm"`, "0 mm or more"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
		})
	}
	_, errs, _ := call(good[:strings.Index(good, `,
  "hone"`)]+"}", "-working", "main 1")
	require.Contains(t, errs, "no line hone")
}
