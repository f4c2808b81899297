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
		{"unchecked", recipe.Answered, []string{"-in", "testdata/unchecked.json"}},
		{"block", recipe.Answered, []string{"-in", "testdata/block.json"}},
		{"low", recipe.Answered, []string{"-in", "testdata/low.json", "-working"}},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

func call(in string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run([]string{"-in", "-"}, strings.NewReader(in), &o, &e)
	return o.String(), e.String(), exit
}

// The camshaft's tunnel comes before the face, and what it says decides.
func TestTunnelComesFirst(t *testing.T) {
	good := string(demo)
	for tried, next := range map[string]string{
		`"tried": ".0015 in refused", `: "skim the face",
		``:                              "check the cam tunnel first",
		`"tried": ".0015 in drag, .002 in drag, .0025 in refused", `: "straighten the head",
		`"tried": ".0015 in drag, .0025 in refused", `:               "the cam tunnel first, which can't be told yet",
	} {
		out, errs, exit := call(strings.Replace(good, `"tried": ".0015 in refused", "limit"`, tried+`"limit"`, 1))
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), next)
	}
}

// Bad input is answered with line, field and reason, and nothing is printed of
// the rest.
func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"cut short", good, good[:300], ":", "cut short"},
		{"other schema", `"schema": 1,`, `"schema": 2,`, ":2: schema", "found 2, want 1"},
		{"unknown field", `"stock"`, `"stok"`, ":28", "stok"},
		{"unknown set", "imperial 26", "imperial 99", ":4: blades", "imperial 26, imperial 32"},
		{"no lines", good[strings.Index(good, `  "lines"`):strings.Index(good, `  "camTunnel"`)], "", "standard input", "either lines"},
		{"unknown direction", `"direction": "across"`, `"direction": "crosswise"`, "lines[2].direction", "lengthwise"},
		{"unknown seat", `"straightEdge": "rests"`, `"straightEdge": "sits"`, "lines[0].straightEdge", "rocks"},
		{"no such blade", ".0025 in drag, .003 in refused", ".25 in drag", "lines[0].gaps[0].tried", "a decimal place away"},
		{"contradiction", ".004 in free, .005 in drag", ".004 in refused, .005 in drag", "lines[4].gaps[0].tried", "contradict"},
		{"three ends", `".0015 in drag, .002 in refused", ".0015 in drag, .002 in refused"`, `".0015 in drag", ".0015 in drag", ".0015 in drag"`, "lines[5].ends", "2 ends"},
		{"bad end", `".0015 in drag, .002 in refused", ".0015 in drag, .002 in refused"`, `".0015 in drag", "x"`, "lines[5].ends[1]", ""},
		{"tunnel", `"camTunnel": {"tried": ".0015 in refused"`, `"camTunnel": {"tried": "none"`, "camTunnel.tried", ""},
		{"no unit", `"stock": "0.03 mm"`, `"stock": "0.03"`, "skim.stock", "unit"},
		{"negative stock", `"stock": "0.03 mm"`, `"stock": "-0.03 mm"`, "", "stock -0.03 mm"},
		{"reversed limits", `"diagonal": {"wear": "max 0.10 mm"}`, `"diagonal": {"new": "max 0.2 mm", "wear": "max 0.10 mm"}`, "", "wear limit"},
		{"no deck", `"deck": "0.30 mm below"`, `"deck": "0.30 mm"`, "engine.deck", "below"},
		{"bore zero", `"bore": "86 mm"`, `"bore": "0 mm"`, "", "bore 0 mm"},
		{"no height", `"height": "120.40 ±0.02 mm", `, ``, "", "height (not given)"},
		{"area too great", `"openAreaMM2": 5200`, `"openAreaMM2": 520000`, "", "less than the chamber's volume"},
		{"negative teeth", `"camTeeth": 40`, `"camTeeth": -40`, "", "number of teeth -40"},
	} {
		require.Contains(t, good, c.old, c.name)
		out, errs, exit := call(strings.Replace(good, c.old, c.new, 1))
		require.Equal(t, recipe.Refused, exit, c.name)
		require.Empty(t, out, c.name)
		require.Equal(t, 1, strings.Count(errs, "\n"), "%s: %s", c.name, errs)
		require.Contains(t, errs, c.line, c.name)
		require.Contains(t, errs, c.reason, c.name)
	}
	// Rows of different length, and heights that make no face.
	_, errs, exit := call(`{"schema": 1, "part": "x", "limits": {}, "heights": {"stepLengthwise": "1 mm", "stepAcross": "1 mm", "error": "0 mm", "rows": [["0 mm", "0 mm"], ["0 mm"]]}}`)
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "heights.rows[1]: 1 heights, where the first row has 2")
	_, errs, exit = call(`{"schema": 1, "part": "x", "limits": {}, "heights": {"stepLengthwise": "1 mm", "stepAcross": "1 mm", "error": "0 mm", "rows": []}}`)
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "form: plane")
}
