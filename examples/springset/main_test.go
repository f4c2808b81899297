package main

import (
	"bytes"
	"os"
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
		{"working", recipe.Answered, []string{"-working", "exhaust 1"}},
		{"manual", recipe.Answered, []string{"-in", "testdata/manual.json"}},
		{"novalve", recipe.Refused, []string{"-working", "exhaust 9"}},
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

// A spring of a manual (TM 9-6115-464-34, table 1-1): its middle loads, 77 and
// 171.5 lbf, give a rate of 230.5 lbf/in, which is 40.366 N/mm.
func TestManual(t *testing.T) {
	out, errs, exit := call(manual(t), "-working", "valve")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "40.36") // 94.5 lbf over 0.41 in: 40.364 N/mm
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"count the coils again":                  {`"total": "6.25"`, `"total": "5"`},
		"no shims in stock":                      {`"installed": "38.9 ±0.05 mm"`, `"installed": "39.9 ±0.05 mm"`},
		"the spring stands too low for any shim": {`"installed": "38.1 ±0.05 mm"`, `"installed": "37.1 ±0.05 mm"`},
		"don't run it":                           {`"solid": "21.0 ±0.1 mm"`, `"solid": "24.1 ±0.1 mm"`},
		"no shim makes good":                     {`"255 ±4 N"`, `"205 ±4 N"`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in, want)
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want)
	}
	out, _, _ := call(good)
	for line := range strings.SplitSeq(out, "\n") {
		require.LessOrEqual(t, len([]rune(line)), 80, line)
	}
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"spreadAt"`, `"spread"`, "spread"},
		{"coil bind", `"lift": "10.5 ±0.1 mm"`, `"lift": "16 mm"`, "coil-bound"},
		{"lift above all", `"lift": "10.5 ±0.1 mm"`, `"lift": "40 mm"`, "height"},
		{"two of one name", `"where": "exhaust 1"`, `"where": "inlet 1"`, "a name of its own"},
		{"inner missing", `"inner": {"loads": [{"height": "35 mm", "load": "120 ±3 N"}, {"height": "24.5 mm", "load": "300 ±4 N"}]}`, `"inner": null`, "an inner spring is read"},
		{"no most", `"most": 2,`, ``, "most"},
		{"five shims", `"most": 2,`, `"most": 5,`, "from 1 to 4"},
		{"negative wire", `"4.20 ±0.02 mm"`, `"-4.20 mm"`, "wire"},
		{"modulus in GPa", `79300`, `79.3`, "79.3 GPa are 79300"},
		{"unknown ends", `"squared and ground"`, `"pigtail"`, "pigtail"},
		{"conical past its readings", `"form": "cylindrical",
    "ends"`, `"form": "conical",
    "solid": "20 mm",
    "ends"`, "between the readings"},
		{"load falls", `"load": "662 ±6 N"`, `"load": "162 ±6 N"`, "above that at"},
		{"load without unit", `"load": "662 ±6 N"`, `"load": "662"`, "unit"},
		{"looser than free", `"free": "45.3 ±0.1 mm"`, `"free": "37 mm"`, "would be loose"},
		{"spread at no height", `"spreadAt": "38 mm"`, `"spreadAt": "-38 mm"`, "height"},
		{"limits contradict", `"wear": "min 230 N"`, `"wear": "min 260 N"`, "limits of the seat load"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "springset: standard input"), errs)
		})
	}
	before, _, _ := strings.Cut(good, `"valves"`)
	_, errs, exit := call(before + `"valves": []}`)
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "no valve")
}

func manual(t *testing.T) string {
	data, err := os.ReadFile("testdata/manual.json")
	require.NoError(t, err)
	return string(data)
}
