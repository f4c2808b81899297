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
		{"working", recipe.Answered, []string{"-working", "3 top"}},
		{"workingundecided", recipe.Answered, []string{"-working", "2 top"}},
		{"workingnoring", recipe.Answered, []string{"-working", "4 top"}},
		{"plan", recipe.Answered, []string{"-plan", "top"}},
		{"metric", recipe.Answered, []string{"-in", "testdata/metric.json"}},
		{"contradiction", recipe.Refused, []string{"-in", "testdata/contradiction.json"}},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}},
		{"nogroove", recipe.Refused, []string{"-working", "9 top"}},
		{"noring", recipe.Refused, []string{"-plan", "oil"}},
		{"nolimits", recipe.Refused, []string{"-plan", "oil", "-in", "testdata/metric.json"}},
		{"emptyname", recipe.Refused, []string{"-in", ""}},
		{"emptygroove", recipe.Refused, []string{"-working", ""}},
		{"twoquestions", recipe.Refused, []string{"-plan", "top", "-working", "1 top"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

// The three cases of common practice, on limits of 0.03 to 0.07 mm
// (testdata/practice/sideclearance.txt): .003 in enters, .0025 in enters and
// .003 in doesn't, .002 in enters and .0025 in doesn't.
func TestCommonPractice(t *testing.T) {
	for tried, standing := range map[string]string{
		".003 in drag":                    "outside the new-part band",
		".0025 in drag, .003 in refused":  "can't tell",
		".002 in drag, .0025 in refused":  "as new",
		".0025 in drag, .003 in forced":   "can't tell",
		".004 in refused, .002 in free":   "can't tell",
		".0015 in free, .0025 in refused": "as new",
	} {
		out, _, exit := call(`{"schema": 1, "engine": "x", "blades": "imperial 26",
			"rings": [{"name": "top", "limits": {"new": "0.03–0.07 mm"}}],
			"grooves": [{"piston": 1, "ring": "top", "stations": [{"at": "front", "tried": "` + tried + `"}]}]}`)
		require.Equal(t, recipe.Answered, exit)
		require.Contains(t, strings.Split(out, "\n")[5], standing, tried)
		require.Equal(t, standing == "can't tell", strings.Contains(out, "not a pass"), tried)
	}
}

func call(in string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run([]string{"-in", "-"}, strings.NewReader(in), &o, &e)
	return o.String(), e.String(), exit
}

// Bad input is answered with line, field and reason, and nothing is printed
// of the rest.
func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"not JSON", good, "blades", ":1:", ""},
		{"cut short", good, good[:200], ":6: rings[0]", "cut short"},
		{"unknown field", `"usedHeight": "1.486 ±0.002 mm"`, `"usedHeigth": "1.486 mm"`, ":14:", "usedHeight"},
		{"given twice", `"schema": 1,`, `"schema": 1, "schema": 1,`, ":2:", "twice"},
		{"other schema", `"schema": 1,`, `"schema": 2,`, ":2: schema", "schema 1"},
		{"no unit", `"new": "0.03–0.07 mm"`, `"new": "0.03–0.07"`, ":6:", "unit"},
		{"a bare number", `"usedHeight": "1.480 ±0.002 mm"`, `"usedHeight": 1.480`, ":17:", "usedHeight"},
		{"reversed limits", `"0.03–0.07 mm"`, `"0.07–0.03 mm"`, ":6:", "0.07"},
		{"new past worn", `"max 0.10 mm"`, `"max 0.05 mm"`, ":7: rings[1].limits", "wear limit"},
		{"two rings of one name", `"name": "second"`, `"name": "top"`, ":7: rings[1].name", "two rings"},
		{"a ring without a name", `"name": "second"`, `"name": ""`, ":7: rings[1].name", "needs a name"},
		{"unknown set", `imperial 26`, `imperial 99`, ":4: blades", "imperial 26, imperial 32"},
		{"unknown ring", `{"piston": 2, "ring": "top"`, `{"piston": 2, "ring": "upper"`, ":17: grooves[2].ring", "top, second"},
		{"piston nought", `{"piston": 2, "ring": "top"`, `{"piston": 0, "ring": "top"`, ":17: grooves[2].piston", "from 1"},
		{"a ring twice", `{"piston": 2, "ring": "second"`, `{"piston": 2, "ring": "top"`, "grooves[3]", "twice"},
		{"no such blade", ".0025 in drag, .003 in refused", ".25 in drag", ":18: grooves[2].stations[0].tried", "a decimal place away"},
		{"a decimal place off", ".0025 in drag, .003 in refused", "0.64 mm drag", ":18: grooves[2].stations[0].tried", ".0025 in"},
		{"unknown feel", ".0025 in drag, .003 in refused", ".0025 in snug", ":18: grooves[2].stations[0].tried", "free"},
		{"negative height", `"1.480 ±0.002 mm"`, `"-1.480 ±0.002 mm"`, ":17: grooves[2]", "above 0 mm"},
		{"not a number", `"1.480 ±0.002 mm"`, `"NaN"`, ":17:", "usedHeight"},
		{"no station", `"stations": [
      {"at": "thrust side", "tried": ".002 in free, .0025 in drag, .003 in refused"}
    ]`, `"stations": []`, "grooves[2]", "no reading"},
		{"invalid UTF-8", "training", "trai\xffning", ":3:", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.True(t, strings.HasPrefix(errs, "sideclearance: standard input"), errs)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
		})
	}
}
