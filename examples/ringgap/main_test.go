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
		{"working", recipe.Answered, []string{"-working", "2 top"}},
		{"workingtwo", recipe.Answered, []string{"-working", "2 second"}},
		{"oneplace", recipe.Answered, []string{"-inch", "-in", "testdata/oneplace.json"}},
		{"oneplaceworking", recipe.Answered, []string{"-inch", "-in", "testdata/oneplace.json", "-working", "1 top"}},
		{"noring", recipe.Refused, []string{"-working", "9 top"}},
		{"noname", recipe.Refused, []string{"-working", ""}},
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

const small = `{"schema": 1, "engine": "x", "nominal": "100 mm",
	"rings": [{"name": "top", "limits": {"new": "0.30–0.60 mm"}, "metal": "ductile iron 80-55-06"}],
	"heat": {"boreMetal": "ductile iron 80-55-06", "measuredAt": "20 °C", "boreAt": "20 °C", "ringAt": "170 °C"},
	"cylinders": [{"cylinder": 1, "stations": [{"at": "top", "bores": ["BORE"]}, {"at": "bottom", "bores": ["100 mm"]}],
		"gaps": [{"ring": "top", "at": "bottom", "gap": "GAP"}]}]}`

func smallWith(bore, gap string) string {
	return strings.NewReplacer("BORE", bore, "GAP", gap).Replace(small)
}

// Published and derived figures, in and out: a bore 0.25 mm larger opens the
// gap by 0.7854 mm; a ring 150 K hotter than its bore closes it by
// π·100·10.6e-6·150 = 0.4995 mm, by hand, on its middle line, and 5 % more at its
// face where its thickness isn't known.
func TestFigures(t *testing.T) {
	out, errs, exit := call(smallWith("100.25 mm", "0.40 mm"), "-working", "1 top")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "≈ 1.185 mm")
	require.Contains(t, out, "= 0.750 mm", "3 for 1")
	require.Contains(t, out, "≈ 0.035 mm", "and its error")

	out, _, _ = call(smallWith("100.05 mm", "0.50 mm"))
	require.Contains(t, out, "-0.026", "0.50 − 0.4995·100/95")
	require.Contains(t, out, "may butt")
	out, _, _ = call(smallWith("100.05 mm", "0.53 mm"))
	require.NotContains(t, out, "may butt")
	out, _, _ = call(smallWith("100.05 mm", "0.25 mm"), "-inch")
	require.Contains(t, out, "off the ends in all", "and in inches, inward:")
	require.Contains(t, out, "(0.0020–0.00")
}

// Every remedy is reached, and what can't be told is told.
func TestOtherWays(t *testing.T) {
	for gap, want := range map[string]string{
		"0.25 mm":     "file 0.05 mm to 0.18",
		"0.40 mm":     "serves",
		"[1 mm, ∞)":   "renew ring or bore",
		"[0.2 mm, ∞)": "find out",
	} {
		out, errs, exit := call(smallWith("100.05 mm", gap))
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want, gap)
	}
	out, errs, exit := call(smallWith("100.05 mm", "[0.2 mm, ∞)"), "-working", "1 top")
	require.Equal(t, recipe.Refused, exit)
	require.Empty(t, out)
	require.Contains(t, errs, "known on one side only")
	for line := range strings.SplitSeq(first(call(string(demo))), "\n") {
		require.LessOrEqual(t, len([]rune(line)), width, line)
	}
}

func first(out, _ string, _ int) string { return out }

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, ":2:", "want 1"},
		{"unknown field", `"thickness"`, `"thicknes"`, ":7:", "thicknes"},
		{"no unit", `"0.25–0.45 mm"`, `"0.25–0.45"`, ":7:", "unit"},
		{"no such set", `"metric 20"`, `"metric 21"`, ":5:", "metric 13"},
		{"no set", `"blades": "metric 20",`, ``, "cylinders[0].gaps[0]", "which set"},
		{"no such blade", `0.35 mm drag`, `0.36 mm drag`, "cylinders[0].gaps[0]", "0.36"},
		{"contrary trials", `"0.35 mm drag, 0.40 mm refused"`, `"0.45 mm drag, 0.40 mm refused"`, "cylinders[0].gaps[0]", "0.4"},
		{"twice told", `"gap": "0.42 ±0.02 mm"`, `"gap": "0.42 mm", "tried": "0.40 mm drag"`, "cylinders[0].gaps[1]", "not both"},
		{"not told", `, "gap": "0.42 ±0.02 mm"`, ``, "cylinders[0].gaps[1]", "give the gap"},
		{"read twice", `{"ring": "second", "at": "bottom of travel", "gap"`, `{"ring": "top", "at": "bottom of travel", "gap"`, "cylinders[0].gaps[1]", "already"},
		{"no such place", `"at": "bottom of travel", "gap": "0.42`, `"at": "the bottom", "gap": "0.42`, "cylinders[0].gaps[1].at", "no station"},
		{"no such ring", `{"ring": "second", "at": "bottom of travel", "gap"`, `{"ring": "third", "at": "bottom of travel", "gap"`, "cylinders[0].gaps[1].ring", "no ring"},
		{"negative gap", `"0.42 ±0.02 mm"`, `"-0.42 mm"`, "cylinders[0]", "interference"},
		{"gap longer than the ring", `"0.42 ±0.02 mm"`, `"280 mm"`, "cylinders[0]", "shorter than the way round"},
		{"inches for millimetres", `"86.012 ±0.003 mm"`, `"3.3863 mm"`, "cylinders[0].stations[0].bores[0]", "near the standard bore"},
		{"no bore", `"86 mm"`, `"0 mm"`, ":4: nominal", "above 0"},
		{"cylinder 0", `"cylinder": 1`, `"cylinder": 0`, "cylinders[0].cylinder", "from 1"},
		{"cylinder twice", `"cylinder": 2`, `"cylinder": 1`, "cylinders[1].cylinder", "once"},
		{"no cylinders", good[strings.Index(good, `"cylinders"`):], `"cylinders": []}`, "cylinders", "none"},
		{"no stations", `"stations": [
      {"at": "top of travel",    "bores": ["86.012 ±0.003 mm", "86.006 ±0.003 mm"]},
      {"at": "bottom of travel", "bores": ["86.004 ±0.003 mm", "86.002 ±0.003 mm"]}
    ]`, `"stations": []`, "cylinders[0].stations", "none"},
		{"place without bore", `"bores": ["86.012 ±0.003 mm", "86.006 ±0.003 mm"]`, `"bores": []`, "cylinders[0].stations[0]", "one diameter"},
		{"ring twice", `"name": "second"`, `"name": "top"`, "rings[1].name", "twice"},
		{"ring without name", `"name": "second"`, `"name": ""`, "rings[1].name", "needs a name"},
		{"unknown metal", `"metal": "grey iron"`, `"metal": "cheese"`, "rings[1].metal", "cheese"},
		{"unknown use", `"top ring, road engine"`, `"racing"`, "rings[0].use", "racing"},
		{"two rules", `"use"`, `"factor": "0.004", "use"`, "rings[0].use", "not both"},
		{"no source", `"use": "top ring, road engine"`, `"factor": "0.004"`, "rings[0].factor", "source"},
		{"absurd factor", `"use": "top ring, road engine"`, `"factor": "4", "source": "x"`, "rings[0].factor", "0.004"},
		{"below absolute zero", `"boreAt": "110 °C"`, `"boreAt": "-300 °C"`, ":10: heat.boreAt", "-273.15 °C"},
		{"far too hot", `"[170 °C, 190 °C]"`, `"[170 °C, 1900 °C]"`, ":10: heat", "1000 °C"},
		{"unknown bore metal", `"boreMetal": "grey iron"`, `"boreMetal": "wood"`, ":10: heat", "wood"},
		{"readings that contradict", `"0.60 mm drag, 0.65 mm refused"`, `"0.30 mm drag, 0.35 mm refused"`, "cylinders[1]", "set the ring square"},
		{"limits that contradict", `"max 0.80 mm"`, `"max 0.10 mm"`, "cylinders[0]", "limit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.True(t, strings.HasPrefix(errs, "ringgap: standard input"), errs)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
		})
	}
	_, errs, exit := call(strings.Replace(smallWith("100 mm", "0.4 mm"), `{"ring": "top", "at": "bottom", "gap": "0.4 mm"}`, "", 1))
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "cylinders[0].gaps: no ring was read")
}
