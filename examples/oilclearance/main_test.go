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
		{"workingbore", recipe.Answered, []string{"-working", "main 3"}},
		{"pairs", recipe.Answered, []string{"-in", "testdata/pairs.json"}},
		{"inch", recipe.Answered, []string{"-inch", "-in", "testdata/inch.json"}},
		{"nobearing", recipe.Refused, []string{"-working", "main 9"}},
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

// By hand: 64.005 − 2.000 − 2.000 − 59.965 = 0.040; and one half of a .001 pair takes
// .0005: 2.6500 − 0.0780 − 0.0785 − 2.4915 = 0.0020.
func TestByHand(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "clearance": {"new": "0.030–0.050 mm"}, "bearings": [
		{"where": "main 1", "journal": ["59.965 mm"], "housing": ["64.005 mm"], "upper": ["2.000 mm"], "lower": ["2.000 mm"]}]}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "main 1   0.040  0.040     as new")
	in := `{"schema": 1, "engine": "x", "clearance": {"new": "0.001–0.0025 in"}, "bearings": [
		{"where": "main 1", "journal": ["2.4915 in"], "housing": ["2.6500 in"], "upper": ["0.0780 in"], "lower": ["0.0780 in"]}],
		"shells": {"wanted": "0.001–0.0025 in", "aim": "0.002 in", "mixed": MIXED, "classes": [{"name": "standard", "wall": "0.0780 in"}, {"name": ".001", "wall": "0.0785 in"}]}}`
	out, errs, exit = call(strings.Replace(in, "MIXED", "true", 1), "-inch")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "main 1   standard    .001        0.0020     does")
	out, _, _ = call(strings.Replace(in, "MIXED", "false", 1), "-inch")
	require.Contains(t, out, "main 1   standard    standard    0.0025     does")
}

// Bad input is answered with line, field and reason, and nothing is printed of the
// rest.
func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 3`, ":2:", "1"},
		{"unknown field", `"journal"`, `"jounral"`, ":6:", "jounral"},
		{"no unit", `"aim": "0.035 mm"`, `"aim": "0.035"`, "shells.aim", "unit"},
		{"interference", `"bore": ["60.003 ±0.002 mm"`, `"bore": ["59.903 ±0.002 mm"`, ":6: bearings[0]", "it is an interference"},
		{"larger", `"59.961 ±0.002 mm"`, `"64.961 ±0.002 mm"`, ":7: bearings[1]", "below the housing bore"},
		{"inches", `"59.941 ±0.002 mm", "59.932 ±0.002 mm"`, `"59.941 mm", "2.360 mm"`, "bearings[2]", "in another unit"},
		{"no bearings", good[strings.Index(good, `"bearings"`):strings.Index(good, `"strips"`)], `"bearings": [], `, "bearings", "at least one"},
		{"no wall", `"upper": ["2.001 ±0.001 mm"], `, ``, "bearings[1]", "upper shell's wall"},
		{"table", `"clearance": "0.076 mm"`, `"clearance": "0.036 mm"`, "strips.table", "tighter than the mark before it"},
		{"one mark", good[strings.Index(good, `      {"width": "0.9 mm"`):strings.Index(good, `      {"width": "3.0 mm"`)], ``, "strips.table", "from 2 to 1000"},
		{"no rear", `, "rear": "1.9 mm"`, ``, "strips.read[0]", "rear"},
		{"no class", good[strings.Index(good, `      {"name": "standard"`):strings.Index(good, `    ]
  }
}`)], ``, "shells", "at least one class"},
		{"few", `"uppers": 4, "lowers": 4`, `"uppers": 1, "lowers": 4`, "shells", "3 pairs is not a pair for each of 5 bearings"},
		{"aim", `"aim": "0.035 mm"`, `"aim": "0.35 mm"`, "shells", "a value that"},
		{"open", `"wanted": "0.025–0.050 mm",
    "aim": "0.035 mm"`, `"wanted": "max 0.050 mm"`, "shells", "a limit on both sides"},
		{"no housing", `, "housing": ["64.010 ±0.002 mm"]`, ``, "shells", "main 3: to choose shells its housing is needed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.True(t, strings.HasPrefix(errs, "oilclearance: standard input"), errs)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
		})
	}
}
