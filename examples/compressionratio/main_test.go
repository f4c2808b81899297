package main

import (
	"bytes"
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
		{"working", recipe.Answered, []string{"-dish", "3 cm³", "-working"}},
		{"errors", recipe.Answered, []string{"-chamber", "45 ±0.2 cm³", "-deck", "0.30 ±0.02 mm below", "-dish", "3 cm³", "-bore", "86.02 ±0.01 mm"}},
		{"wanted", recipe.Answered, []string{"-dish", "3 cm³", "-wanted", "10.5:1", "-area", "5200"}},
		{"lower", recipe.Answered, []string{"-wanted", "9"}},
		{"machined", recipe.Answered, []string{"-rebore", "86.5 mm", "-skim", "0.25 mm", "-blockskim", "0.10 mm", "-area", "5200", "-teeth", "40", "-pitch", "9.525 mm"}},
		{"overhang", recipe.Answered, []string{"-rebore", "88 mm"}},
		{"downfill", recipe.Answered, []string{"-filldepth", "10 mm", "-fill", "53.1 cm³", "-landdiameter", "85.4 mm", "-landheight", "6 mm", "-working"}},
		{"squish", recipe.Answered, []string{"-deck", "0.06 mm above", "-pistons", "0.04 mm below; 0.06 mm above; 0.05 mm above", "-squish", "1.00–1.30 mm"}},
		{"squishopen", recipe.Answered, []string{"-pistons", "0.19 ±0.02 mm above; level", "-squish", "1.00–1.30 mm"}},
		{"inch", recipe.Answered, []string{"-bore", "3 in", "-stroke", "4 in", "-chamber", "4 in³", "-gasketbore", "3 1/16 in", "-gasket", ".040 in", "-deck", ".010 in below", "-cylinders", "2"}},
		{"contact", recipe.Refused, []string{"-dome", "60 cm³"}},
		{"nodeck", recipe.Refused, []string{"-deck", "0.30 mm"}},
		{"ratioone", recipe.Refused, []string{"-wanted", "1"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

// What can't be is refused in one line that names the flag or the size.
func TestBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"-bore", "86"}, "-bore: "},
		{[]string{"-bore", "0 mm"}, "bore 0 mm is not above 0"},
		{[]string{"-bore", "-86 mm"}, "above 0"},
		{[]string{"-bore", ""}, "bore (not given)"},
		{[]string{"-chamber", "45 mm"}, "-chamber: "},
		{[]string{"-chamber", "-45 cm³"}, "chamber volume -45 cm³"},
		{[]string{"-deck", "NaN"}, "-deck: "},
		{[]string{"-area", "NaN", "-skim", "0.1 mm"}, "open area NaN"},
		{[]string{"-skim", "0.1 mm"}, "give -area too"},
		{[]string{"-rebore", "80 mm"}, "-rebore: \"80 mm\": a rebore is larger than the bore, 86 mm"},
		{[]string{"-area", "5000", "-skim", "90 mm"}, "less than the chamber's volume"},
		{[]string{"-blockskim", "-1 mm"}, "skim -1 mm"},
		{[]string{"-rebore", "0 mm"}, "-rebore: \"0 mm\": a rebore is larger"},
		{[]string{"-cylinders", "0"}, "number of cylinders 0"},
		{[]string{"-teeth", "40"}, "-teeth and -pitch together"},
		{[]string{"-blockskim", "0.1 mm", "-teeth", "-4", "-pitch", "9.525 mm"}, "number of teeth -4"},
		{[]string{"-squish", "1.0–1.3 mm"}, "-pistons"},
		{[]string{"-pistons", "level;;level"}, "deck of piston 2 not measured"},
		{[]string{"-pistons", "1.3 mm above"}, "do not turn the engine"},
		{[]string{"-blockskim", "3 mm", "-dome", "40 cm³"}, "the piston hits the head"},
		{[]string{"-wanted", "ten"}, "-wanted: "},
		{[]string{"-dish", "3 cm³", "-fill", "50 cm³"}, "either of the two"},
	} {
		var out, errs bytes.Buffer
		require.Equal(t, recipe.Refused, run(c.args, nil, &out, &errs), c.args)
		require.Contains(t, errs.String(), c.says, c.args)
		require.Empty(t, out.String(), c.args)
		require.Equal(t, 1, bytes.Count(errs.Bytes(), []byte("\n")))
	}
}
