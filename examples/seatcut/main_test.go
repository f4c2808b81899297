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
		{"interference", recipe.Answered, []string{"-face-angle", "44.5°", "-throat", "90°", "-face-square", "0.05 mm"}},
		{"inch", recipe.Answered, []string{"-outer", "1.18 in", "-inner", "1.06 in", "-want-outer", "1.18 in", "-want-width", "1/16 in", "-clean-up", ".004 in", "-above", "15°", "-below", "75°"}},
		{"pastface", recipe.Answered, []string{"-want-outer", "35 mm"}},
		{"flatangle", recipe.Refused, []string{"-angle", "0°"}},
		{"nounit", recipe.Refused, []string{"-outer", "30"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

func call(args ...string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run(args, strings.NewReader(""), &o, &e)
	return strings.Join(strings.Fields(o.String()), " "), e.String(), exit
}

// A 45° seat narrowed by 1 along the cone from above with 15°: 0.517638 by the
// tangents (tan 45° − tan 15° = 0.732051, times cos 45°); and as much from below
// with 60°.
func TestByHand(t *testing.T) {
	out, errs, exit := call("-outer", "30 mm", "-inner", "27 mm", "-above", "15°", "-want-outer", "28.585786 mm", "-want-width", "1.12132 mm", "-clean-up", "0 mm", "-face-cut", "0 mm")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "width along the cone 2.121 mm")
	require.Contains(t, out, "from above, 15°: feed 0.518 mm")
	require.Contains(t, out, "the valve sinks by 0.000 mm")
	out, errs, exit = call("-outer", "30 mm", "-inner", "27 mm", "-want-width", "1.12132 mm", "-clean-up", "0 mm")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "from below, 60°: feed 0.518 mm")
}

// The same seat by its other counts.
func TestCounts(t *testing.T) {
	out, _, _ := call("-angle", "30°", "-above", "15°")
	stem, errs, exit := call("-count", "stem", "-angle", "60°", "-above", "75°", "-below", "30°")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Equal(t, out, stem)
	included, errs, exit := call("-count", "included", "-angle", "120°", "-above", "150°", "-below", "60°")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Equal(t, out, included)
}

func TestOtherWays(t *testing.T) {
	out, errs, exit := call("-face-angle", "45.5°")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "steeper than the seat")
	out, errs, exit = call("-want-tip", "49 mm")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "none is to be ground off")
	out, errs, exit = call("-want-width", "5 mm")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "this seat reaches past the valve's face toward the port: don't make it so")
	out, errs, exit = call("-face-outer", "30.0 mm")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "this seat may reach past the valve's face toward the margin")
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct {
		args   []string
		reason string
	}{
		{[]string{"-count", "cone"}, "not \"cone\""}, {[]string{"-angle", "90°"}, "between 0° and 90°"}, {[]string{"-angle", "45"}, "unit"},
		{[]string{"-above", "50°"}, "cutter from above"}, {[]string{"-below", "30°"}, "cutter from below"}, {[]string{"-throat", "20°"}, "throat"},
		{[]string{"-inner", "31 mm"}, "below its outer"}, {[]string{"-want-width", "-1 mm"}, "wanted width"}, {[]string{"-want-width", "30 mm"}, "leave a port"},
		{[]string{"-clean-up", "-1 mm"}, "clean-up"}, {[]string{"-face-outer", "25 mm"}, "valve face"}, {[]string{"-head", "20 mm"}, "valve head"},
		{[]string{"-face-angle", "30°"}, "within 5°"}, {[]string{"-face-square", "x"}, "-face-square"}, {[]string{"-tip", ""}, "-tip"},
		{[]string{"-clean-up", "60 mm"}, "leave a port"}, {[]string{"-face-cut", "-1 mm"}, "cut of the face"},
	} {
		for _, more := range [][]string{nil, {"-working"}} {
			out, errs, exit := call(append(c.args, more...)...)
			require.Equal(t, recipe.Refused, exit, c.args)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
		}
	}
}
