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
		{"working", recipe.Answered, []string{"-working", "exhaust 1"}},
		{"novalve", recipe.Refused, []string{"-working", "exhaust 9"}},
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

// The published rocking example: R = 0.09 over L = 50 with h = 20 is c = 0.05.
func TestPublished(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "ways": [], "limits": {}, "valves": [
		{"where": "a", "rocked": {"travel": "0.09 mm", "engaged": "50 mm", "beyond": "20 mm", "stem": "8 mm"}}]}`, "-working", "a")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "0.0500 mm")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"they disagree":                      {`"travel": "0.22 ±0.01 mm"`, `"travel": "0.42 ±0.01 mm"`},
		"stood at the guide's very end":      {`"travel": "0.16 ±0.01 mm", "engaged": "44 ±0.5 mm", "beyond": "24 ±0.5 mm"`, `"travel": "0.09 ±0.01 mm", "engaged": "44 ±0.5 mm", "beyond": "0 mm"`},
		"the stem's taper is not known":      {"{\"where\": \"upper\", \"diameters\": [\"7.958 ±0.001 mm\"]},", ""},
		"none in stock serves":               {`"leastCut": "0.02 mm"`, `"leastCut": "0.9 mm"`},
		"the reamer doesn't clean up":        {`"leastCut": "0.02 mm"`, `"leastCut": "0.05 mm"`},
		"the limit is for the travel itself": {`"max 0.20 mm"`, `"max 0.30 mm"`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in, want)
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want)
	}
	out, _, _ := call(good)
	for line := range strings.SplitSeq(out, "\n") {
		require.LessOrEqual(t, len([]rune(line)), 80, line)
	}
	// No repair asked for, and a working of diameters without one.
	before, _, _ := strings.Cut(good, `"repair"`)
	j := strings.Index(good, `"valves"`)
	out, errs, exit := call(before+good[j:], "-working", "inlet 1")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "by diameters")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"nothing to judge", good, `{"schema": 1, "engine": "x", "ways": [], "limits": {}, "valves": []}`, "no valve"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"leastMouth"`, `"leastMouths"`, "leastMouths"},
		{"two of one name", `"exhaust 2"`, `"exhaust 1"`, "a name of its own"},
		{"neither", `"rocked": {"travel": "0.16 ±0.01 mm", "engaged": "44 ±0.5 mm", "beyond": "24 ±0.5 mm", "stem": "7.958 ±0.001 mm"}`, `"unworn": "7.9 mm"`, "neither measured nor rocked"},
		{"no unit", `"max 0.20 mm"`, `"max 0.20"`, "unit"},
		{"unknown way", `"new stem", "stem"`, `"weld", "stem"`, "weld"},
		{"stem above guide", `"7.965 ±0.001 mm"`, `"9.965 ±0.001 mm"`, "stem diameter [9.964 mm, 9.966 mm] is not below the guide's bore"},
		{"both above", `"diameters": ["7.965 ±0.001 mm"]},
        {"where": "lower", "diameters": ["7.962 ±0.001 mm"]}`, `"diameters": ["9.965 ±0.001 mm"]}`, "below the guide's bore"},
		{"negative travel", `"0.16 ±0.01 mm"`, `"-0.16 ±0.01 mm"`, "travel of the dial"},
		{"absurd travel", `"0.16 ±0.01 mm"`, `"160 mm"`, "travel of the dial"},
		{"one way only", `["8.012 ±0.002 mm", "8.014 ±0.002 mm"]`, `["8.012 ±0.002 mm"]`, "one for each of the 2 ways"},
		{"stem without guide", `"guide": [
        {"where": "valve end", "depth": "2 mm", "bores": ["8.038`, `"guides": [
        {"where": "valve end", "depth": "2 mm", "bores": ["8.038`, "guides"},
		{"bad option", `"opened": "[8.100 mm, 8.112 mm]"`, `"finished": "[8.100 mm, 8.112 mm]"`, "opened bore"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "guidewear: standard input"), errs)
		})
	}
}
