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

// By hand: (0.62 + 0.60)/2 = 0.61; 1.30 − 0.61 = 0.69.
func TestByHand(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "pistons": [{"where": "piston 1", "first": "0.62 mm", "second": "0.60 mm"}],
		"table": [{"mark": "two notches", "protrusion": "0.5–0.7 mm", "thickness": "1.30–1.40 mm"}]}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "piston 1  0.610 mm above the block face  0.020 mm")
	require.Contains(t, out, "rounded down: 0.690 mm")
	require.Contains(t, out, "fit the gasket marked two notches")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"measure piston 2 more closely":                           {`"first": "0.648 ±0.004 mm", "second": "0.656 ±0.004 mm"`, `"first": "0.632 ±0.004 mm", "second": "0.632 ±0.004 mm"`},
		"the table itself gives 0.63 mm to more than one row":     {`"first": "0.648 ±0.004 mm", "second": "0.656 ±0.004 mm"`, `"first": "0.63 mm", "second": "0.63 mm"`},
		"the table has no row for 0.735 mm":                       {`"first": "0.648 ±0.004 mm", "second": "0.656 ±0.004 mm"`, `"first": "0.735 mm", "second": "0.735 mm"`},
		"no gasket of the table is thick enough":                  {`"first": "0.648 ±0.004 mm", "second": "0.656 ±0.004 mm"`, `"first": "0.90 mm", "second": "0.90 mm"`},
		"find out why the two points of piston 3 differ":          {`"first": "0.598 ±0.004 mm"`, `"first": "0.558 ±0.004 mm"`},
		"not a pass: the gasket marked 2 holes":                   {`"min 0.65 mm"`, `"min 0.75 mm"`},
		"piston 3 doesn't agree with them":                        {`"first": "0.598 ±0.004 mm", "second": "0.602 ±0.004 mm"`, `"first": "0.55 mm", "second": "0.55 mm"`},
		"don't build: under the gasket marked 2 holes a piston t": {`"compressed"`, `"compressed"`},
	} {
		in := strings.ReplaceAll(good, change[0], change[1])
		if strings.HasPrefix(want, "don't build") {
			for _, c := range [][2]string{{"1.25–1.35", "0.25–0.35"}, {"1.35–1.45", "0.35–0.45"}, {"1.45–1.55", "0.45–0.55"}} {
				in = strings.Replace(in, c[0], c[1], 1)
			}
		}
		require.NotEqual(t, good, in)
		out, errs, exit := call(in, "-working")
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want)
		for line := range strings.SplitSeq(out, "\n") {
			require.LessOrEqual(t, len([]rune(line)), 110, line)
		}
	}
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"places"`, `"place"`, "place"},
		{"one point", `, "second": "0.604 ±0.004 mm"`, ``, "missing field"},
		{"half a point", `"second": "0.604 ±0.004 mm"`, `"second": "[0.6 mm, ∞)"`, "input:6: pistons[0]: piston: second point of piston 1"},
		{"no pistons", good[strings.Index(good, `"pistons"`):strings.Index(good, `"difference"`)], `"pistons": [], `, "not measured on every piston"},
		{"no unit", `"0.53–0.63 mm"`, `"0.53–0.63"`, "unit"},
		{"out of order", `"0.53–0.63 mm"`, `"0.93–0.99 mm"`, "input:13: table: piston: protrusion of row 2"},
		{"thinner for more", `"1.35–1.45 mm"`, `"1.15–1.25 mm"`, "takes a thicker gasket"},
		{"short rod", `"rod": "150.00 ±0.01 mm"`, `"rod": "15.00 ±0.01 mm"`, "the crank can't turn"},
		{"negative stroke", `"stroke": "96.00 ±0.01 mm"`, `"stroke": "-96.00 mm"`, "above 0 mm"},
		{"limits", `"difference": {"wear": "max 0.03 mm"}`, `"difference": {"new": "max 0.05 mm", "wear": "max 0.03 mm"}`, "difference of the two points"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "gasketgrade: standard input"), errs)
		})
	}
}
