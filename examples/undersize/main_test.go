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
		{"working", recipe.Answered, []string{"-working", "crankpin 2"}},
		{"workingmain", recipe.Answered, []string{"-working", "main 3"}},
		{"workingdiameter", recipe.Answered, []string{"-working", "crankpin 1"}},
		{"workingnominal", recipe.Answered, []string{"-in", "testdata/inch.json", "-inch", "-working", "crankpin 1"}},
		{"moved", recipe.Answered, []string{"-in", "testdata/moved.json"}},
		{"movedworking", recipe.Answered, []string{"-in", "testdata/moved.json", "-working", "crankpin 2"}},
		{"undecided", recipe.Answered, []string{"-in", "testdata/undecided.json"}},
		{"weld", recipe.Answered, []string{"-in", "testdata/weld.json"}},
		{"inch", recipe.Answered, []string{"-inch", "-in", "testdata/inch.json"}},
		{"nojournal", recipe.Refused, []string{"-working", "main 9"}},
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

// The examples of the rule in TM 5-3805-262-34, p. 4-24: 2.7475 takes shells 0.002
// under without grinding, 2.7455 is ground to 2.738–2.739, and a shaft at 0.010
// under of 2.7375 to 2.728–2.729.
func TestManualsExamples(t *testing.T) {
	for _, c := range []struct{ journal, finished, want string }{
		{"2.7475 in", "2.748–2.749", "No grinding. Shells: crankpin 1 .002;"},
		{"2.7455 in", "2.748–2.749", "Grind all to 2.7380–2.7390 in, for the shells of .010."},
		{"2.7375 in", "2.738–2.739", "Grind all to 2.7280–2.7290 in, for the shells of .020."},
	} {
		in := `{"schema": 1, "shaft": "x", "gauge": {"name": "micrometer"}, "groups": [{"kind": "crankpin", "standard": "2.748–2.749 in",
			"directions": ["0°"], "planes": ["middle"], "plan": {"stock": "0 in"}, "shells": [{"name": "standard", "undersize": "0 in"},
			{"name": ".002", "undersize": "0.002 in", "asIs": "min 2.746 in, less than 2.748 in"}, {"name": ".010", "undersize": "0.010 in", "journal": "2.738–2.739 in"},
			{"name": ".020", "undersize": "0.020 in", "journal": "2.728–2.729 in"}],
			"journals": [{"where": "crankpin 1", "finished": "[` + strings.ReplaceAll(c.finished, "–", " in, ") + ` in]", "sizes": [["` + c.journal + `"]]}]}]}`
		out, errs, exit := call(in, "-inch")
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, c.want)
	}
}

// Bad input is answered with line, field and reason, and nothing is printed of the
// rest.
func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 3`, ":2:", "1"},
		{"unknown field", `"planes"`, `"plains"`, ":11:", "plains"},
		{"no unit", `"stock": "0.01 mm"`, `"stock": "0.01"`, ":15:", "unit"},
		{"nitrided", `"not hardened", "runOut": "0 mm"`, `"nitrided", "runOut": "0 mm"`, ":23: groups[0].journals[0]", "not ground without the maker's own process"},
		{"kind", `"kind": "crankpin"`, `"kind": "pin"`, ":36:", "main journal"},
		{"no groups", good[strings.Index(good, `"groups"`):], `"groups": []}`, ":6: groups", "no journals"},
		{"no shells", good[strings.Index(good, `{"name": "standard"`):strings.Index(good, `"journals"`)], "],\n", "groups[0]", "at least one kit"},
		{"twice", `"where": "main 2"`, `"where": "main 1"`, ":25: groups[0].journals[1]", "a name of its own"},
		{"row", `["59.976 mm", "59.968 mm"]`, `["59.976 mm"]`, "groups[0].journals[1]", "main 2, front: 1 sizes for 2 directions"},
		{"rows", `[["59.976 mm", "59.968 mm"], `, `[`, "groups[0].journals[1]", "1 rows of sizes for 2 planes"},
		{"inches", `"59.976 mm"`, `"2.361 mm"`, "groups[0].journals[1]", "main 2, front, 0°"},
		{"half a step", `"59.976 mm"`, `"59.9765 mm"`, "groups[0].journals[1]", "between two steps"},
		{"unexplained", `"0.128 ±0.002 mm"`, `"0.010 ±0.002 mm"`, "groups[1].journals[1]", "dial the place"},
		{"another kit's band", `"59.735–59.750 mm"`, `"59.485–59.500 mm"`, "groups[0]", "standard journal less the undersize"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.True(t, strings.HasPrefix(errs, "undersize: standard input"), errs)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
		})
	}
}
