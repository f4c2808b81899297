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
		{"inch", recipe.Answered, []string{"-inch"}},
		{"working", recipe.Answered, []string{"-working", "piston 2"}},
		{"nopiston", recipe.Refused, []string{"-working", "piston 9"}},
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

// The manual's worked example (TM 9-2815-202-34, p. 6-36): 0.004 in at 6 lb is
// 0.005 in; the other manual's rule gives the same pull another answer.
func TestPublished(t *testing.T) {
	out, errs, exit := call(`{"schema": 1, "engine": "x", "measuringHeight": "0 mm", "pullRule": "6 lb",
		"limits": {"pulled": {"new": "0.0045–0.0083 in", "wear": "max 0.0120 in"}},
		"pistons": [{"where": "piston 1", "pulls": [{"at": "front", "trials": [{"strip": "0.004 in", "pull": "6 ±0.25 lbf"}]}]}]}`, "-inch")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "by the rule 6 lb: 0.0050 in, judged by this rule")
	require.Contains(t, out, "within the band for new")
	out, errs, exit = call(`{"schema": 1, "engine": "x", "measuringHeight": "0 mm",
		"pistons": [{"where": "piston 1", "bores": ["86 mm"], "pulls": [{"at": "front", "trials": [{"strip": "0.04 mm", "pull": "1 kgf"}]}]}]}`)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "by the rule 6 lb: [0.065 mm, ∞)")
	require.Contains(t, out, "by the rule 0.04 mm strip: [0.025 mm, 0.045 mm]")
	require.Contains(t, out, "disagree")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"it closes up: it seizes":       {`"skirtAt": "75 ±5 °C"`, `"skirtAt": "250 ±5 °C"`},
		"it may close up, which is not": {`"skirtAt": "75 ±5 °C"`, `"skirtAt": "85 ±20 °C"`},
		"not usable: trial 1, film oiled is": {`"film": "dry", "temperature": "21 ±1 °C"}]}]},
    {"where": "piston 2"`, `"film": "oiled", "temperature": "21 ±1 °C"}]}]},
    {"where": "piston 2"`},
		"it may touch": {`"86.012 ±0.002 mm", "86.014 ±0.002 mm"`, `"86.018 ±0.002 mm", "86.014 ±0.004 mm"`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in, want)
		if strings.Contains(want, "film") {
			in = strings.Replace(in, `"pullRule": "ours"`, `"pullRule": "6 lb"`, 1)
		}
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want)
	}
	// Without heat there is none in the working, and no line for it.
	before, _, _ := strings.Cut(good, `"heat"`)
	_, after, _ := strings.Cut(good, `"pistons"`)
	without := before + `"pistons"` + after
	out, errs, exit := call(without, "-working", "piston 1")
	require.Equal(t, recipe.Answered, exit, errs)
	require.NotContains(t, out, "hot")
	out, errs, exit = call(without)
	require.Equal(t, recipe.Answered, exit, errs)
	require.NotContains(t, out, "hot,")
	for line := range strings.SplitSeq(out, "\n") {
		require.LessOrEqual(t, len([]rune(line)), 80, line)
	}
	_, errs, exit = call(strings.Replace(good, `"boreAt": "95 ±5 °C"`, `"boreAt": "[95 °C, ∞)"`, 1), "-working", "piston 1")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "no middle")
	_, errs, exit = call(strings.Replace(good, `"measuringHeight": "18 mm"`, `"measuringHeight": "17 mm"`, 1), "-working", "piston 1")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "measuring height to work with")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"nothing to judge", good, `{"schema": 1, "engine": "x", "measuringHeight": "1 mm", "pistons": []}`, "no piston was read"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"pullRule"`, `"pulRule"`, "pulRule"},
		{"unknown rule", `"pullRule": "ours"`, `"pullRule": "theirs"`, "no rule"},
		{"no unit", `"across": "85.968 ±0.002 mm"`, `"across": "85.968 ±0.002"`, "unit"},
		{"twice", `"where": "piston 2"`, `"where": "piston 1"`, "twice"},
		{"unknown metal", `"grey iron"`, `"cheese"`, "per kelvin"},
		{"unknown metal of the skirt", `"piston alloy 4032"`, `"cheese"`, "heat.skirtMetal"},
		{"a factor", `"along": "85.722 ±0.002 mm"`, `"along": "3.375 mm"`, "another unit"},
		{"upside down", `"height": "5 mm"`, `"height": "50 mm"`, "lower edge up"},
		{"contradiction", `"strip": "0.060 mm", "pull": "31 ±1 N"`, `"strip": "0.030 mm", "pull": "31 ±1 N"`, "pistons[1].pulls[0]"},
		{"absolute zero", `"measuredAt": "20 °C"`, `"measuredAt": "-300 °C"`, "measuredAt"},
		{"expansion in millionths", `{"name": "grey iron"}`, `{"perK": 11.4}`, "millionths"},
		{"absurd heat", `"skirtAt": "75 ±5 °C"`, `"skirtAt": "7500 °C"`, "1000 °C"},
		{"absurd wish", `"keep": "0.010 mm"`, `"keep": "-10 mm"`, "hot clearance"},
		{"limits that quarrel", `"wear": {"wear": "max 0.043 mm"}`, `"wear": {"new": "max 0.1 mm", "wear": "max 0.043 mm"}`, "skirt wear limits"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "pistonfit: standard input"), errs)
		})
	}
	out, errs, exit := call(strings.Replace(good, `{"name": "grey iron"}`, `{"name": "ours", "perK": 11e-6, "perKError": 0.5e-6}`, 1))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "piston 4: does not go in its bore")
}
