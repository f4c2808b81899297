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
		{"working", recipe.Answered, []string{"-working", "cylinder 2"}},
		{"noliner", recipe.Refused, []string{"-working", "cylinder 9"}},
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

// The published press fit (Bhavikatti, example 8.8.17): 12.3047 N/mm².
func TestPublished(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "dry": {"interference": {}, "inside": "300 mm", "outside": "500 mm",
		"liner": {"modulusMPa": 200000, "poisson": 0.3}, "block": {"modulusMPa": 200000, "poisson": 0.3},
		"liners": [{"where": "ring", "bores": ["400 mm"], "outsides": ["400.2 mm"]}]}}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "12.30")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"No choice: no shim in stock suits":       {`"0.050 ±0.002 mm"}, {`, `"0.150 ±0.002 mm"}, {`},
		"no thickness suits all its places":       {`"0.030 ±0.003 mm", "0.035 ±0.003 mm"`, `"-0.030 ±0.003 mm", "0.035 ±0.003 mm"`},
		"step to cylinder 1 [0.000 mm, 0.014 mm)": {`"stepFrom": "worst"`, `"stepFrom": "mean"`},
		"the block's stress against 5 N/mm²: a":   {`"blockMaxMPa": 60`, `"blockMaxMPa": 5`},
		"liquid nitrogen":                         {`"blockAt": "60 °C"`, `"blockAt": "-40 °C"`},
	} {
		in := strings.ReplaceAll(good, change[0], change[1])
		require.NotEqual(t, good, in)
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want)
	}
	for line := range strings.SplitSeq(first(call(good)), "\n") {
		require.LessOrEqual(t, len([]rune(line)), 80, line)
	}
}

func first(out, _ string, _ int) string { return out }

// A fit that would need a very hot block says so.
func TestHot(t *testing.T) {
	out, errs, exit := call(strings.Replace(string(demo), `"gap": "0.05 mm"`, `"gap": "0.35 mm"`, 1))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "Above 180.0 °C an alloy softens")
	out, _, _ = call(string(demo))
	require.NotContains(t, out, "softens")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"nothing to judge", good, `{"schema": 1, "engine": "x"}`, "neither wet nor dry"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"stepFrom"`, `"stepsFrom"`, "stepsFrom"},
		{"unknown rule", `"worst"`, `"best"`, "worst or mean"},
		{"no unit", `"new": "0.06–0.11 mm"`, `"new": "0.06–0.11"`, "unit"},
		{"negative shim", `"0.100 ±0.002 mm"`, `"-0.100 ±0.002 mm"`, "above 0 mm"},
		{"too many shims", `"most": 1`, `"most": 9`, "from 0 to 4"},
		{"modulus in GPa", `"modulusMPa": 72000`, `"modulusMPa": 72`, "100 GPa are 100000"},
		{"ring too thin", `"outside": "112 mm"`, `"outside": "96 mm"`, "block's ring"},
		{"no places", `["0.085 ±0.003 mm", "0.090 ±0.003 mm", "0.085 ±0.003 mm"]`, `[]`, "cylinder 1"},
		{"unknown material", `"grey iron"`, `"cheese"`, "per kelvin"},
		{"twice told", `"linerAt"`, `"linerPerK": 1e-5, "linerAt"`, "not both"},
		{"absurd cold", `"blockAt": "60 °C"`, `"blockAt": "-300 °C"`, "blockAt"},
		{"out of reach", `"gap": "0.05 mm"`, `"gap": "5 mm"`, "absolute zero"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "linerfit: standard input"), errs)
		})
	}
}
