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
		{"inch", recipe.Answered, []string{"-throw", "3 in", "-rod", "12 in", "-to", "30°", "-step", "1°", "-find", "0.2032 in", "-working", "19°", "-series"}},
		{"offset", recipe.Answered, []string{"-offset", "0.8 mm", "-to", "360°", "-step", "30°", "-find", "2 mm", "-working", "60°"}},
		{"near", recipe.Answered, []string{"-find", "0.1 mm", "-from", "-10°", "-to", "10°", "-step", "2.5°"}},
		{"short", recipe.Refused, []string{"-rod", "43 mm"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

func call(args ...string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run(args, nil, &o, &e)
	return o.String(), e.String(), exit
}

// TM 5-6115-593-34: 0.2032 in at 19°; and the exact values of Khurmi & Gupta's
// examples 15.3 and 15.4, which print the series'.
func TestPublished(t *testing.T) {
	out, _, _ := call("-throw", "3 in", "-rod", "12 in", "-from", "19°", "-to", "19°", "-find", "0.2032 in")
	require.Contains(t, out, "0.20326")
	require.Contains(t, out, "18.997° after")
	require.Contains(t, out, "18.997° before")
	out, _, _ = call("-throw", "300 mm", "-rod", "1 m", "-speed", "200")
	require.Contains(t, out, "6.562 m/s down at 74.53°")
	out, _, _ = call("-throw", "300 mm", "-rod", "1500 mm", "-speed", "180", "-from", "40°", "-to", "40°")
	require.Contains(t, out, " 4.20  ")
	require.Contains(t, out, " 86\n")
	// Mean speed of 9 in at 800 r/min: 1200 ft/min (Kates, p. 63), 6.096 m/s.
	out, _, _ = call("-throw", "4.5 in", "-rod", "20 in", "-speed", "800")
	require.Contains(t, out, "6.096 m/s")
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"-throw", "43"}, "-throw: "},
		{[]string{"-throw", "-43 mm"}, "throw -43 mm is not above 0 mm"},
		{[]string{"-rod", "0 mm"}, "rod 0 mm"},
		{[]string{"-rod", "45 mm", "-offset", "3 mm"}, "longer than half the stroke and the offset together, 46 mm"},
		{[]string{"-speed", "0"}, "speed 0 r/min is not above"},
		{[]string{"-speed", "NaN"}, "speed NaN"},
		{[]string{"-step", "0°"}, "-step: "},
		{[]string{"-from", "20°", "-to", "10°"}, "the lesser angle first"},
		{[]string{"-step", "0.0001°"}, "more than 1000 lines"},
		{[]string{"-from", "ten"}, "-from: "},
		{[]string{"-find", "87 mm"}, "position 87 mm is not from 0 mm to the stroke, 86 mm"},
		{[]string{"-find", "-1 mm"}, "position -1 mm"},
		{[]string{"-series", "-offset", "1 mm"}, "-series: "},
		{[]string{"-working", "1000000°"}, "-working: "},
		{[]string{"-working", "x"}, "-working: "},
	} {
		out, errs, exit := call(c.args...)
		require.Equal(t, recipe.Refused, exit, c.args)
		require.Contains(t, errs, c.says, c.args)
		require.Empty(t, out, c.args)
		require.Equal(t, 1, strings.Count(errs, "\n"))
	}
}
