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
		{"working", recipe.Answered, []string{"-working"}},
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

func answered(t *testing.T, in string, args ...string) string {
	out, errs, exit := call(in, args...)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Empty(t, errs)
	return strings.Join(strings.Fields(out), " ")
}

// By hand: bores 86.00 and 86.01 with pistons 85.97 and 85.96 crossed over are
// both at 0.04; 500 + 705 and 505 + 700 are both 1205.
func TestByHand(t *testing.T) {
	out := answered(t, `{"schema": 1, "engine": "x", "clearance": {"band": "0.03–0.05 mm"},
		"bores": [{"where": "bore 1", "size": "86.00 mm"}, {"where": "bore 2", "size": "86.01 mm"}],
		"pistons": [{"where": "piston 1", "size": "85.97 mm", "mass": "500 g"}, {"where": "piston 2", "size": "85.96 mm", "mass": "505 g"}],
		"rods": [{"where": "rod 1", "whole": "700 g", "bigEnd": "500 g"}, {"where": "rod 2", "whole": "705 g", "bigEnd": "502 g"}]}`)
	require.Contains(t, out, "bore 1 piston 1 0.030 mm piston 2 0.040 mm")
	require.Contains(t, out, "sum of deviations 0.020 mm 0.000 mm")
	require.Contains(t, out, "piston 1 rod 1 1200.00 g rod 2 1205.00 g")
	require.Contains(t, out, "spread 10.00 g 0.00 g")
	require.Contains(t, out, "rod 1 one end was weighed: nothing checks it")
	require.Contains(t, out, "rod 2 203.00 g 3.00 g not known") // 705 − 502, against 200
}

func TestParts(t *testing.T) {
	require.Contains(t, answered(t, `{"schema": 1, "engine": "x", "rods": [], "pistonSpread": "max 2 g",
		"pistons": [{"where": "1", "mass": "410 g"}, {"where": "2", "mass": "414 g"}]}`, "-working"), "2 414.00 g 4.00 g 2.00 g")
	out := answered(t, `{"schema": 1, "engine": "x", "bigEndSpread": "max 1 g", "rodMostOff": "1 g", "pistons": [{"where": "1"}],
		"rods": [{"where": "rod 1", "whole": "600 g", "bigEnd": "430 g", "smallEnd": "170 g"}, {"where": "rod 2", "whole": "610 g", "bigEnd": "438 g", "smallEnd": "172 g"}]}`, "-working")
	require.Contains(t, out, "rod 2 438.00 g 8.00 g 7.00 g, more than is allowed")
	require.NotContains(t, out, "Pistons on rods")
	require.Contains(t, answered(t, `{"schema": 1, "engine": "x", "pistons": [{"where": "1"}],
		"rods": [{"where": "rod 1", "whole": "600 g", "smallEnd": "170 g"}, {"where": "rod 2", "whole": "610 g", "bigEnd": "438 g"}]}`, "-working"), "rod 1 430.00 g")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"suited by a piston of":                           {`"86.014 ±0.001 mm"`, `"86.214 ±0.001 mm"`},
		"its size is read too loosely to say":             {`"86.014 ±0.001 mm"`, `"86.214 ±0.020 mm"`},
		"bore 1 piston 1 [0.015 mm, 0.055 mm] undecided":  {`"86.006 ±0.001 mm"`, `"86.006 ±0.019 mm"`},
		"more would have to come off than is allowed":     {`"pistonMostOff": "3 g"`, `"pistonMostOff": "1 g"`},
		"ask the engine maker whether and where":          {`"pistonMostOff": "3 g"`, `"pistonMostOff": "0 g"`},
		"no limit is given for the totals":                {`"totalSpread": "max 3 g"`, `"totalSpread": "no limit"`},
		"the totals are not within their limit":           {`"totalSpread": "max 3 g"`, `"totalSpread": "max 0.1 g"`},
		"clearance wanted 0.03–0.05 mm, nearest to 0.035": {`"aim": "0.040 mm"`, `"aim": "0.035 mm"`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in)
		require.Contains(t, answered(t, in), want)
	}
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	between := func(from, to string) string { return good[strings.Index(good, from):strings.Index(good, to)] }
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"totalSpread"`, `"totalsSpread"`, "totalsSpread"},
		{"no pistons", between(`"pistons"`, `"pistonSpread"`), `"pistons": [], `, "input:11: pistons: there are no pistons"},
		{"nothing else", good, `{"schema": 1, "engine": "x", "pistons": [{"where": "1"}]}`, "neither bores, masses nor rods"},
		{"no clearance", between(`"clearance"`, `"bores"`), ``, "bores: bores without the clearance"},
		{"half a band", `"band": "0.030–0.050 mm", "aim": "0.040 mm"`, `"band": "max 0.05 mm"`, "input:4: clearance:"},
		{"aim outside", `"aim": "0.040 mm"`, `"aim": "0.060 mm"`, "in its band"},
		{"unlike many", `    {"where": "bore 1", "size": "86.006 ±0.001 mm"},`, ``, "input:5: bores: piston: list of pistons of 4 is not as long as that of the bores, 3"},
		{"some weighed", `, "mass": "412.4 ±0.1 g"`, ``, "3 of 4 have a mass"},
		{"no skirt", `"size": "85.971 ±0.001 mm", `, ``, "piston piston 1"},
		{"mass of zero", `"412.4 ±0.1 g"`, `"0 g"`, "input:11: pistons: piston: mass of part piston 1 0 g is not above 0 g"},
		{"negative mass", `"412.4 ±0.1 g"`, `"-412.4 g"`, "above 0 g"},
		{"a length for a mass", `"412.4 ±0.1 g"`, `"412.4 mm"`, "mass"},
		{"ends not the whole", `"170.3 ±0.2 g"`, `"175.3 ±0.2 g"`, "input:20: rods[0]: piston: ends of rod 1"},
		{"pads behind", `"big": "38 mm"`, `"big": "-38 mm"`, "pads: the centres"},
		{"one rod", between(`    {"where": "rod 1"`, `  ],
  "bigEndSpread"`), `    {"where": "rod 1", "whole": "601.2 g", "bigEnd": "431.0 g"}
`, "of one part"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "matchedset: standard input"), errs)
		})
	}
}
