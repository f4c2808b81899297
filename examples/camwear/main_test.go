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
		{"working", recipe.Answered, []string{"-working", "inlet 2"}},
		{"nolobe", recipe.Refused, []string{"-working", "inlet 9"}},
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

// flat undoes the breaking of lines.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

// TM 9-2815-202-34: run-out to 0.002 in, bearing clearance used to 0.009 in.
func TestPublished(t *testing.T) {
	manual := func(runOut, bearing string) string {
		return `{"schema": 1, "engine": "x", "ratio": "1", "clearance": "0 in", "kinds": {}, "lobes": [],
			"journals": [{"where": "2", "journals": ["2 in"], "bearings": ["` + bearing + `"], "runOut": "` + runOut + `"}],
			"limits": {"clearance": {"new": "0.0025-0.005 in", "wear": "max 0.009 in"}, "runOut": {"wear": "max 0.002 in"}}}`
	}
	out, errs, _ := call(manual("0.002 in", "2.009 in"))
	require.Empty(t, errs)
	require.Contains(t, flat(out), "Next: none by these limits")
	out, _, _ = call(manual("0.0021 in", "2.009 in"))
	require.Contains(t, flat(out), "Next: straighten or renew the camshaft")
	out, _, _ = call(manual("0.002 in", "2.0091 in"))
	require.Contains(t, flat(out), "Next: renew the bearing")
	// 0.002 in is a bend of 0.001 in, 0.0254 mm.
	require.Contains(t, flat(out), "bend, half of the run-out if the journal is round: 0.025 mm")
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct{ from, to, says string }{
		{`"ratio": "1"`, `"ratio": "0"`, "standard input:4: ratio: "},
		{`"clearance": "0.25 mm"`, `"clearance": "-1 mm"`, "standard input:5: clearance: "},
		{`"clearance": "0.25 mm"`, `"clearance": 0.25`, "standard input:5: clearance: wrong type"},
		{`"kind": "inlet", "heights": ["44.58`, `"kind": "exhaust", "heights": ["44.58`, `lobes[0].kind: no kind is called "exhaust"`},
		{`"where": "inlet 2"`, `"where": "inlet 1"`, "lobes[1].where: each lobe has a name of its own"},
		{`["44.46 ±0.005 mm", "44.48 ±0.005 mm"]`, `[]`, "lobes[2]: "},
		{`["35.99 ±0.005 mm"]`, `["45.99 ±0.005 mm"]`, "lobes[0]: valvetrain: base circle"},
		{`["29.012 ±0.003 mm"]`, `["28 mm"]`, "journals[1]: "},
		{`"endFloat": "0.14 ±0.01 mm"`, `"endFloat": "-1 mm"`, "end float"},
		{`"schema": 1`, `"schema": 2`, "schema"},
		{`"taper"`, `"tapper"`, "unknown field"},
	} {
		bad := strings.Replace(string(demo), c.from, c.to, 1)
		require.NotEqual(t, string(demo), bad, c.from)
		out, errs, exit := call(bad)
		require.Equal(t, recipe.Refused, exit, c.says)
		require.Contains(t, errs, c.says)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(errs, "\n"))
	}
	_, _, exit := call("")
	require.Equal(t, recipe.Refused, exit)
	_, _, exit = call(strings.Repeat("[", 1000))
	require.Equal(t, recipe.Refused, exit)
}

func TestLeaner(t *testing.T) {
	lean := strings.NewReplacer(`"newBase": "36.00 mm",`, "", `"endFloat": "0.14 ±0.01 mm",`, "").Replace(string(demo))
	out, errs, exit := call(lean, "-working", "inlet 2")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "Note: the lift lost is not known of every lobe")
	require.Contains(t, flat(out), "Note: end float was not read")
	require.NotContains(t, out, "lift lost =")
}
