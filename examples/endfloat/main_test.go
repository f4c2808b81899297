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
	return flat(o.String()), e.String(), exit
}

// flat undoes the breaking of lines.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

// published is the table of TM 5-4210-233-14&P-2, p. 6-152, as a file has it.
const published = `"table": {"source": "TM 5-4210-233-14&P-2", "total": "0.244 in", "steps": [
	{"name": "standard", "float": "less than 0.016 in", "oversize": "0 in"},
	{"name": ".005 in oversize", "float": "0.017–0.026 in", "oversize": ".005 in"},
	{"name": ".010 in oversize", "float": "0.027–0.036 in", "oversize": ".010 in"},
	{"name": "replace the crankshaft", "float": "more than 0.036 in", "oversize": "0 in", "replace": true}]}`

// The published table: .0265 in over standard washers is in its second gap; .020
// less (.244 − .235) is .011, for standard ones.
func TestPublished(t *testing.T) {
	file := func(forward, washer string) string {
		return `{"schema": 1, "engine": "x", "bearing": "main 4", "unit": "in", "dial": [{"forward": "` + forward + `", "back": "0 in"}],
			"limits": {"wear": "max 0.018 in"}, "washers": {"front": ["` + washer + `"], "rear": [".122 in"]}, ` + published + `}`
	}
	out, errs, exit := call(file(".0265 in", ".122 in"))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "→ .005 in oversize")
	require.Contains(t, out, "→ .010 in oversize")
	require.Contains(t, out, "leaves out some or all")
	require.NotContains(t, out, "→ standard")
	out, _, _ = call(file(".020 in", ".113 in"))
	require.Contains(t, out, "float over standard washers 0.0110 in → standard")
	require.NotContains(t, out, "leaves out")
	out, _, _ = call(file(".001 in", ".113 in"))
	require.Contains(t, out, "may be pinched")
	out, _, _ = call(file(".036 ±.001 in", ".122 in"))
	require.Contains(t, out, "doesn't tell these apart")
	out, errs, _ = call(file(".020 in", ".113 in"), "-working")
	require.Contains(t, out, "= 0.0110 in", errs)
}

func TestBlades(t *testing.T) {
	file := `{"schema": 1, "engine": "x", "bearing": "main 3", "blades": "metric 20", "tried": ["0.30 mm drag, 0.35 mm refused", "0.35 mm free, 0.40 mm refused"],
		"limits": {"wear": "max 0.30 mm"}}`
	out, errs, exit := call(file)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "past the wear limit")
	_, errs, exit = call(strings.Replace(file, "0.40 mm refused", "0.30 mm refused", 1))
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "tried[1]")
	_, errs, exit = call(strings.Replace(file, `metric 20`, `metric 21`, 1))
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "no set is called")
	_, errs, exit = call(strings.ReplaceAll(strings.ReplaceAll(file, ", 0.35 mm refused", ""), ", 0.40 mm refused", ""), "-working")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "every blade went in")
	out, errs, exit = call(file, "-working")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Empty(t, out)
}

func TestStock(t *testing.T) {
	good := string(demo)
	out, _, _ := call(strings.Replace(good, `"pieces": 8`, `"pieces": 1`, 1))
	require.Contains(t, out, "None of these is within the limits for certain")
	out, _, _ = call(strings.NewReplacer(`"pieces": 8`, `"pieces": 1`, `"pieces": 4`, `"pieces": 1`).Replace(good))
	require.Contains(t, out, "aren't pieces enough")
	out, _, _ = call(strings.Replace(good, `"2.424 ±0.004 mm"`, `"2.384 ±0.004 mm"`, 1))
	require.Contains(t, out, "Take the first") // 0.342 + 4.565 − 4.768 is 0.139
	out, _, _ = call(good)
	require.Contains(t, out, "see whether the manual allows unlike sides")
	out, errs, exit := call(good[:strings.Index(good, `"table"`)]+good[strings.Index(good, `"stock"`):], "-working")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "washers in = washer in front + washer behind")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"bearing"`, `"baring"`, "baring"},
		{"unit", `"bearing"`, `"unit": "mil", "bearing"`, "not \"mil\""},
		{"both ways", `"bearing"`, `"tried": ["0.3 mm drag"], "bearing"`, "either by dial or by blades"},
		{"no unit", `"0.120 ±0.003 mm"`, `"0.120"`, "dial[0].back"},
		{"absurd", `"0.462 ±0.003 mm"`, `"12 m"`, "at most 10 m"},
		{"negative washer", `"2.285 ±0.002 mm"`, `"-2.285 mm"`, "thrust washer in front"},
		{"reversed limits", `"max 0.30 mm"`, `"max 0.10 mm"`, "wear limit"},
		{"table out of order", `"max 0.24 mm"`, `"max 0.34 mm"`, ": table: crank: thrust washer table, step 2 0.3–0.46 mm is not above the step before it"},
		{"undersize", `"oversize": "0.125 mm"`, `"oversize": "-0.125 mm"`, ":15: table: crank: thrust washer table, step 2, oversize -0.125 mm is not 0 mm or more"},
		{"no pieces", `"pieces": 8`, `"pieces": -8`, "0 or more"},
		{"no washers", good[strings.Index(good, `"washers"`):strings.Index(good, `"table"`)], "", "needs the washers that are in"},
		{"three halves", `"rear": [`, `"rear": ["2 mm", `, "two halves"},
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
