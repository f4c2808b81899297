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
		{"measured", recipe.Answered, []string{"-hole", "25.012 ±0.002 mm", "-shaft", "24.9865 mm", "-wanted", "0.01–0.04 mm", "25 H7/g6"}},
		{"undecided", recipe.Answered, []string{"-hole", "25.020 ±0.002 mm", "-shaft", "24.985 mm", "25 H7/g6"}},
		{"mating", recipe.Answered, []string{"-wanted", "0.01–0.05 mm", "25 H7"}},
		{"press", recipe.Answered, []string{"-wanted", "-0.05–-0.01 mm", "50 H7"}},
		{"nothing", recipe.Answered, []string{"-wanted", "0.01–0.011 mm", "25 H7"}},
		{"class", recipe.Answered, []string{"45 N7"}},
		{"noclass", recipe.Refused, []string{"50 Z99"}},
		{"toolarge", recipe.Refused, []string{"500.001 H7"}},
		{"exchanged", recipe.Refused, []string{"50 g6/H7"}},
		{"oneonly", recipe.Refused, []string{"-hole", "25.012 mm", "25 H7/g6"}},
		{"nounit", recipe.Refused, []string{"-hole", "25.012", "-shaft", "25 mm", "25 H7/g6"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 1)
}

// The worked fits of the published list (testdata/published/iso286_fits.txt
// holds them all): 25 H7/g6 has 0.007 to 0.041 mm, 20 H7/s6 0.014 to 0.048 mm
// of interference, 45 K7 goes from -18 to +7 µm.
func TestPublishedFits(t *testing.T) {
	for arg, want := range map[string]string{
		"25 H7/g6": "0.007 to 0.041 mm",
		"20 H7/s6": "0.014 to 0.048 mm",
		"45 K7":    "+7 µm and -18 µm",
	} {
		var out, errs bytes.Buffer
		require.Zero(t, run([]string{arg}, strings.NewReader(""), &out, &errs), errs.String())
		require.Contains(t, out.String(), want)
	}
}
