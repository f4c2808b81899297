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

const events = `{"schema": 1, "engine": "x", "at": {"lift": "0.050 in", "side": "at the valve"}, "crankTeeth": 33,
  "inlet": {"opens": "-10°", "closes": "39°", "limits": {"opens": {"new": "-10 ±1°"}}},
  "exhaust": {"opens": "50°", "closes": "10°"}}`

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		golden string
		exit   int
		args   []string
		in     string
	}{
		{"default", recipe.Answered, nil, ""},
		{"working", recipe.Answered, []string{"-in", "-", "-working"}, events},
		{"picture", recipe.Answered, []string{"-svg"}, ""},
		{"nopicture", recipe.Refused, []string{"-in", "-", "-svg"}, events},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}, ""},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, c.in, c.exit, "testdata/"+c.golden+".golden")
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

// Published: −10° and 39° are 209° about 114.5°; 10/40/50/10 gives 20° of
// overlap and 107.5° of separation; a tooth of 33 is 10.9°.
func TestPublished(t *testing.T) {
	out, errs, _ := call(events)
	require.Empty(t, errs)
	require.Contains(t, flat(out), "duration 209.0°, centre (mid-open) 114.5° after top dead centre")
	require.Contains(t, flat(out), "one tooth of the crankshaft's gear is 10.9°")
	out, _, _ = call(strings.NewReplacer(`"-10°"`, `"10°"`, `"39°"`, `"40°"`).Replace(events))
	require.Contains(t, flat(out), "overlap 20.0°")
	require.Contains(t, flat(out), "separation of the lobes 107.5° of the camshaft")
	require.Contains(t, flat(out), "advance 2.5° of the crankshaft")
}

func TestPicture(t *testing.T) {
	for _, in := range []string{string(demo), strings.Replace(string(demo), `"1 mm"`, `"0 mm"`, 1), strings.Replace(string(demo), `"1 mm"`, `"0.1 mm"`, 1)} {
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
		require.Contains(t, out, "inlet, squares: greatest lift 8.60 mm at the valve at 108.0°")
	}
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct{ in, from, to, says string }{
		{events, `"opens": "-10°"`, `"opens": "-10"`, "standard input:2: inlet.opens: "},
		{events, `"opens": "-10°"`, `"opens": "-220°"`, "standard input:2: inlet: valvetrain: inlet duration -1°"},
		{events, `"opens": "-10°", `, ``, "inlet: opens and closes, or a table, are needed"},
		{events, `"crankTeeth": 33`, `"crankTeeth": -1`, "teeth"},
		{events, `"crankTeeth": 33`, `"rpm": -1`, "rpm: -1 r/min"},
		{events, `"at the valve"`, `"at the cam"`, "at.side"},
		{events, `"schema": 1`, `"schema": 7`, "schema"},
		{string(demo), `"ratio": "1.5"`, `"ratio": "0"`, "inlet.table.ratio: "},
		{string(demo), `"ratio": "1.5",`, ``, "inlet.table.side: "},
		{string(demo), `"unit": "mm"`, `"unit": "furlong"`, "inlet.table.unit: "},
		{string(demo), `"angles": "-40`, `"angles": "-10`, "inlet.table.angles: "},
		{string(demo), `"angles": "-40`, `"angles": "-50 -40`, "inlet.table.lifts: "},
		{string(demo), `"angles": "-40`, `"angles": "x`, "inlet.table.angles: angle 1"},
		{string(demo), `"lifts": "0.00`, `"lifts": "x`, "inlet.table.lifts: lift 1"},
		{string(demo), `"smoothing": "20°"`, `"smoothing": "200°"`, "inlet.table.smoothing: "},
		{string(demo), `"wheelError": "0.5°"`, `"wheelError": "-0.5°"`, "inlet.table.wheelError: "},
		{string(demo), `"lift": "1 mm"`, `"lift": "9 mm"`, "inlet.table: valvetrain: lift 9 mm is not below the greatest"},
		{string(demo), `"inlet": {`, `"inlet": { "opens": "1°",`, "events or a table, not both"},
	} {
		bad := strings.Replace(c.in, c.from, c.to, 1)
		require.NotEqual(t, c.in, bad, c.from)
		out, errs, exit := call(bad)
		require.Equal(t, recipe.Refused, exit, c.says)
		require.Contains(t, errs, c.says)
		require.Empty(t, out)
		require.Equal(t, 1, strings.Count(errs, "\n"))
	}
	_, _, exit := call("")
	require.Equal(t, recipe.Refused, exit)
}
