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
		{"disturb", recipe.Answered, []string{"-disturb"}},
		{"working", recipe.Answered, []string{"-working", "inlet 1b"}},
		{"workingopen", recipe.Answered, []string{"-working", "inlet 3a"}},
		{"workingtight", recipe.Answered, []string{"-working", "inlet 2b"}},
		{"workingstays", recipe.Answered, []string{"-working", "exhaust 2a"}},
		{"finger", recipe.Answered, []string{"-in", "testdata/finger.json"}},
		{"fingerworking", recipe.Answered, []string{"-in", "testdata/finger.json", "-working", "exhaust 1"}},
		{"novalve", recipe.Refused, []string{"-working", "inlet 9"}},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}},
		{"emptyvalve", recipe.Refused, []string{"-working", ""}},
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

// The rule by common practice (testdata/practice/valvetrain_shims.txt): old 2.55,
// measured about 0.32, wanted 0.25, sizes by 0.05: 2.60 is nearest, and gives 0.27.
func TestCommonPractice(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "ownBlades": ["0.315 mm", "0.325 mm"], "wanted": {"any": "0.20–0.30 mm"},
		"valves": [{"where": "one", "kind": "any", "tried": "0.315 mm drag, 0.325 mm refused", "shim": "2.55 mm"}],
		"series": [{"from": "2.40 mm", "to": "2.80 mm", "step": "0.05 mm"}]}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "Buy: 1 of 2.6 mm")
	require.Contains(t, out, "[0.265, 0.275)")
}

// Every line fits the page, and every valve out of band after the plan is among
// those that can't be told.
func TestPage(t *testing.T) {
	out, _, _ := call(string(demo))
	for line := range strings.SplitSeq(out, "\n") {
		require.LessOrEqual(t, len([]rune(line)), 100, line)
	}
	cant := out[strings.Index(out, "Can't tell"):]
	for line := range strings.SplitSeq(out, "\n") {
		if strings.Contains(line, "not settled") {
			require.Contains(t, cant, strings.Fields(line)[0]+" "+strings.Fields(line)[1]+":")
		}
	}
	none, errs, exit := call(`{"schema": 1, "engine": "x", "blades": "metric 20", "wanted": {"any": "0.20–0.30 mm"},
		"valves": [{"where": "one", "kind": "any", "tried": "0.20 mm drag, 0.30 mm refused"}]}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, none, "Nothing to change")
	require.Contains(t, none, "Buy: nothing")
	require.NotContains(t, none, "Can't tell")
	single, errs, exit := call(`{"schema": 1, "engine": "x", "blades": "metric 20", "wanted": {"any": "0.20–0.30 mm"},
		"valves": [{"where": "one", "kind": "any", "tried": "0.35 mm drag, 0.40 mm refused", "shim": "2.5 mm"}],
		"series": [{"from": "2.62 mm", "to": "2.62 mm"}, {"from": "2.63 mm", "to": "2.64 mm", "step": "0.01 mm"}, {"from": "2.7 mm", "to": "2.7 mm"}]}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, single, "Buy: 1 of 2.62 mm")
	require.Contains(t, single, "a gap between 2.64 mm and 2.7 mm, where 5 sizes would stand")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"cut short", good, good[:400], "cut short"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"drawer"`, `"draw"`, "draw"},
		{"no unit", `"inlet": "0.15–0.25 mm"`, `"inlet": "0.15–0.25"`, "unit"},
		{"one-sided band", `"inlet": "0.15–0.25 mm"`, `"inlet": "max 0.25 mm"`, "inlet 1a: wanted clearance"},
		{"unknown set", `"metric 20"`, `"metric 99"`, ":4: blades"},
		{"two sets", `"blades": "metric 20",`, `"blades": "metric 20", "ownBlades": ["0.20 mm"],`, "not both"},
		{"unknown kind", `"kind": "exhaust", "tried": "0.30 mm drag`, `"kind": "outlet", "tried": "0.30 mm drag`, ":9: valves[2].kind"},
		{"a valve twice", `"where": "inlet 1b"`, `"where": "inlet 1a"`, ":8: valves[1].where"},
		{"no such blade", `0.25 mm refused"},`, `0.27 mm refused"},`, "valves[0].tried"},
		{"contradiction", `"0.15 mm free, 0.20 mm drag, 0.25 mm refused"`, `"0.15 mm refused, 0.20 mm drag"`, "valves[0].tried"},
		{"negative shim", `"2.660 ±0.002 mm"`, `"-2.660 ±0.002 mm"`, "inlet 1b: shim"},
		{"shim in inches", `"2.660 ±0.002 mm"`, `"2.660 in"`, "at most 50 mm"},
		{"uneven series", `"step": "0.05 mm"`, `"step": "0.04 mm"`, "series[0]"},
		{"series backwards", `"from": "2.40 mm"`, `"from": "2.90 mm"`, "series[0]"},
		{"a size twice", `"series": [`, `"series": [{"from": "2.5 mm", "to": "2.5 mm"}, `, "only once"},
		{"absurd ratio", `"engine"`, `"ratio": "1000", "engine"`, "ratio of blade to shim"},
		{"no valves", good, `{"schema": 1, "engine": "x", "blades": "metric 20", "wanted": {}, "valves": []}`, "valves of the head"},
		{"not a number", `"2.660 ±0.002 mm"`, `"NaN"`, "valves[1].shim"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "valveclearance: standard input"), errs)
		})
	}
}
