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
		{"working", recipe.Answered, []string{"-before", "21°", "-after", "15°", "-working"}},
		{"offset", recipe.Answered, []string{"-throw", "43 mm", "-rod", "143.5 mm", "-offset", "10 mm", "-working"}},
		{"dial", recipe.Answered, []string{"-throw", "1.5 in", "-rod", "6 in", "-fall", "0.050 in", "-before", "12.3 ±0.1°", "-after", "14.3 ±0.1°"}},
		{"unknown", recipe.Answered, []string{"-offset-unknown", "-before", "8 ±0.5°", "-after", "8 ±0.5°"}},
		{"nothrow", recipe.Refused, []string{"-offset", "1 mm"}},
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

// Contacts at 21° and 15°: the wheel is 3° out, and both should read 18°; 0.050
// in of equal fall at 1.5 and 6 in is 13.278°.
func TestPublished(t *testing.T) {
	out, _, _ := call("-before", "15°", "-after", "21°")
	require.Contains(t, out, "3.000° after its zero")
	require.Contains(t, out, "both sides read 18.00°")
	out, _, _ = call("-throw", "1.5 in", "-rod", "6 in", "-fall", "0.050 in")
	require.Contains(t, out, "13.278°")
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"-before", "19"}, "-before: "},
		{[]string{"-after", "x"}, "-after: "},
		{[]string{"-throw", "43"}, "-throw: "},
		{[]string{"-after", "200°"}, "within a half turn"},
		{[]string{"-before", "-25°"}, "half-span"},
		{[]string{"-throw", "43 mm", "-rod", "40 mm"}, "rod 40 mm"},
		{[]string{"-throw", "43 mm", "-rod", "140 mm", "-fall", "90 mm"}, "fall of the piston"},
	} {
		out, errs, exit := call(c.args...)
		require.Equal(t, recipe.Refused, exit, c.args)
		require.Contains(t, errs, c.says, c.args)
		require.Empty(t, out, c.args)
		require.Equal(t, 1, strings.Count(errs, "\n"))
	}
}
