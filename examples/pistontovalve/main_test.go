package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
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
		{"picture", recipe.Answered, []string{"-svg"}},
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

// flat undoes the breaking of lines.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

// one is an engine of one valve that is 0.1 in open from 13.278° on, where a
// piston of 1.5 and 6 in is 0.050 in down.
const one = `{"schema": 1, "engine": "x", "throw": "1.5 in", "rod": "6 in", "valves": [
  {"where": "inlet", "drop": "5 mm", "inclination": "0°", "unit": "in", "angles": "-20 -10 0 13.2 13.278 30 60", "lifts": "0 0 0 0 0.1 0.1 0"}]}`

// Where the valve is open the piston is 0.050 in down: drop + 0.050 in −
// 0.100 in = 5 − 1.27 = 3.73 mm, a hair less as 13.278° is rounded down.
func TestByHand(t *testing.T) {
	out, errs, exit := call(one)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "least clearance [3.729 mm, 3.730 mm], 13.3° after top dead centre")
	straight := strings.Replace(one, `"unit"`, `"wanted": "1 mm", "flatCrown": true, "unit"`, 1)
	out, errs, exit = call(straight, "-working")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "÷ cos(ψ)")
	require.NotContains(t, out, "clearance left")
}

func TestRoom(t *testing.T) {
	for _, c := range []struct{ wanted, says string }{
		{"3 mm", "advance by at most"},
		{"4.5 mm", "must be moved by"},
		{"5 mm", "no room to move the camshaft was found"},
	} {
		out, errs, exit := call(strings.Replace(one, `"unit"`, `"wanted": "`+c.wanted+`", "unit"`, 1))
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, flat(out), c.says)
	}
	// A drop beyond the lift never meets; without a lift near dead centre it is
	// least with the valve shut.
	out, _, _ := call(strings.NewReplacer(`"drop": "5 mm"`, `"drop": "9 mm", "wanted": "1 mm"`).Replace(one))
	require.Contains(t, flat(out), "may be moved as far as it will")
	out, _, _ = call(strings.Replace(one, `"-20 -10 0 13.2 13.278 30 60"`, `"40 50 60 90 100 110 120"`, 1))
	require.Contains(t, flat(out), "with the valve shut, at top dead centre")
	out, _, _ = call(strings.Replace(one, `"drop": "5 mm"`, `"drop": "0.5 mm"`, 1))
	require.Contains(t, flat(out), "do not turn this engine by its starter")
}

func TestPicture(t *testing.T) {
	for _, in := range []string{string(demo), one, strings.Replace(one, `"drop": "5 mm"`, `"drop": "0.5 mm"`, 1)} {
		out, errs, exit := call(in, "-svg")
		require.Equal(t, recipe.Answered, exit, errs)
		d := xml.NewDecoder(strings.NewReader(out))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else {
				require.NoError(t, err)
			}
		}
		require.Contains(t, out, "Clearance along the valve")
	}
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct{ from, to, says string }{
		{`"rod": "6 in"`, `"rod": "1 in"`, "standard input:2: valves[0]: valvetrain: rod 25.4 mm"},
		{`"drop": "5 mm"`, `"drop": "5"`, "standard input:2: valves[0].drop: "},
		{`"inclination": "0°"`, `"inclination": "95°"`, "valve's angle to the bore"},
		{`"unit": "in"`, `"unit": "cubit"`, "valves[0].unit: "},
		{`"angles": "-20 -10`, `"angles": "-10 -20`, "valves[0].angles: valvetrain: angle of point 2"},
		{`"angles": "-20`, `"angles": "x`, "valves[0].angles: angle 1"},
		{`"lifts": "0 0`, `"lifts": "0 x`, "valves[0].lifts: lift 2"},
		{`"lifts": "0 0`, `"lifts": "0`, "6 lifts to 7 angles"},
		{`"lifts": "0 0 0`, `"lifts": "0.1 0.1 0.1`, "begins and ends with the valve shut"},
		{`"where": "inlet"`, `"where": ""`, "valves[0].where: "},
		{`"unit"`, `"pocket": {"diameter": "37 mm", "head": "33 mm", "beside": "3 mm"}, "unit"`, "valves[0].pocket: the head doesn't go in"},
		{`"schema": 1`, `"schema": 3`, "schema"},
	} {
		bad := strings.Replace(one, c.from, c.to, 1)
		require.NotEqual(t, one, bad, c.from)
		out, errs, exit := call(bad)
		require.Equal(t, recipe.Refused, exit, c.says)
		require.Contains(t, errs, c.says)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(errs, "\n"))
	}
	_, errs, exit := call(`{"schema": 1, "engine": "x", "throw": "1 in", "rod": "6 in", "valves": []}`)
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "there is no valve in the file")
}
