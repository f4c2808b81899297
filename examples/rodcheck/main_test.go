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
		{"working", recipe.Answered, []string{"-working", "rod 1"}},
		{"norod", recipe.Refused, []string{"-working", "rod 9"}},
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
	return flat(o.String()), e.String(), exit
}

// flat undoes the breaking of lines.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

// TM 9-2815-226-34-1: +.001 and −.002 in are .0005 in short of the master, which
// may be .002, and bent by .003 in, which may be .0015 with a bush and .004
// without. FAA-H-8083-32: .006 in over 6 in is .001 in in an inch.
func TestPublished(t *testing.T) {
	file := func(bend string) string {
		return `{"schema": 1, "engine": "x", "unit": "in", "directions": [], "planes": [], "crackedCap": false, "boltsYield": false,
			"fixture": {"twistSpan": "6 in"},
			"limits": {"per": "1 in", "length": {"new": "-0.001 ±0.001 in"}, "bend": {"new": "` + bend + `"}, "twistPer": {"new": "max 0.001 in"}},
			"rods": [{"where": "rod 1", "right": ".001 in", "left": "-.002 in", "twist": ".006 in"}]}`
	}
	out, errs, exit := call(file("max 0.0015 in"))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "length over the master -0.0005 in")
	require.Contains(t, out, "bend 0.0030 in, new max 0.0015 in: too large")
	require.Contains(t, out, "twist over 25.4 mm 0.0010 in, new max 0.0010 in: within the band")
	require.Contains(t, out, "rod: bend is out of limits")
	out, _, _ = call(file("max 0.004 in"))
	require.Contains(t, out, "rod: within the limits given")
	out, errs, _ = call(file("max 0.004 in"), "-working", "rod 1")
	require.Contains(t, out, "= −0.00050 in", errs)
	require.Contains(t, out, "= 0.00100 in")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"the joint of a cracked cap isn't cut":                   {`"crackedCap": false`, `"crackedCap": true`},
		"used once, whatever its length":                         {`"boltsYield": false`, `"boltsYield": true`},
		"big end: can't be told yet":                             {`["51.609 ±0.001 mm"`, `["51.614 ±0.002 mm"`},
		"side clearance 0.200 mm":                                {`"side": ["0.20 mm drag, 0.25 mm refused"]`, `"side": ["0.20 mm"]`},
		"length over the master [-0.007 mm, -0.003 mm] distance": {`"length": {"new": "0.00 ±0.05 mm"},`, ""},
		"big end, front, 60° left: not read":                     {`"51.605 ±0.001 mm"`, `"-"`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in)
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want)
	}
	widths := strings.Replace(good, `"side": ["0.20 mm drag, 0.25 mm refused"]`, `"widths": ["22.0 mm", "21.9 mm"]`, 1)
	widths = strings.Replace(widths, `"crackedCap"`, `"crankpin": "44.1 mm", "crackedCap"`, 1)
	out, errs, exit := call(widths, "-working", "rod 1")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "side clearance = crankpin")
	require.Contains(t, out, "0.2000 mm")
	_, errs, exit = call(strings.Replace(good, "0.05 mm drag, 0.10 mm refused", "0.05 mm drag", 1), "-working", "rod 1")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "every blade went in")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"planes"`, `"plains"`, "plains"},
		{"unit", `"blades"`, `"unit": "mil", "blades"`, "not \"mil\""},
		{"no rods", good[strings.Index(good, `"rods": [`):], `"rods": []}`, "no rods"},
		{"short rod", `"stroke": "76 mm"`, `"stroke": "300 mm"`, "above half the stroke of 300 mm"},
		{"one dial", `"left": "-0.020 ±0.002 mm",`, "", "rods[0]: crank: rod 1, dials one of the two"},
		{"blades contradict", "0.05 mm drag, 0.10 mm refused", "0.10 mm drag, 0.05 mm refused", "rods[0]: twist"},
		{"no such set", `"metric 20"`, `"metric 21"`, "no set of blades"},
		{"no set", `"blades": "metric 20",`, "", "twist"},
		{"bad side", "0.20 mm drag, 0.25 mm refused", "thin", "side"},
		{"columns", `["in line", "60° left", "60° right"]`, `["in line", "60° left"]`, "one for each of 2 directions"},
		{"bolt shorter", `"62.245 ±0.003 mm"`, `"61 mm"`, "at least the free length"},
		{"nothing read", `{
      "where": "rod 1",`, `{"where": "rod 0"}, {
      "where": "rod 1",`, "nothing was read of \"rod 0\""},
		{"limits", `"max 0.03 mm", "wear"`, `"max 0.3 mm", "wear"`, "wear limit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 600)
		})
	}
}
