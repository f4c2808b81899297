package main

import (
	"testing"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		golden string
		exit   int
		args   []string
		in     string
	}{
		{"default", recipe.Answered, nil, ""},
		{"all", recipe.Answered, []string{"-all"}, ""},
		// Pairs printed in government manuals: testdata/published/slips_government_manuals.txt.
		{"manuals", recipe.Answered, []string{"-in", "-"}, "a  0.006 in (0.015 mm)\nb  0.001 in (0.05 mm)\nc  2.754 in (6.9 mm)\nd  3/32 in (3.2 mm)\n"},
		{"empty", recipe.Answered, []string{"-in", "-"}, ""},
		{"nofigures", recipe.Refused, []string{"-in", "-"}, "# a remark\n\nmain journal 63.487 mm\n"},
		{"nounit", recipe.Refused, []string{"-in", "-"}, "main journal  63.487–63.500 (2.4995–2.5000 in)\n"},
		{"tworeadings", recipe.Refused, []string{"-in", "-"}, "readings, bore 1  86.02 mm, 86.03 mm\n"},
		{"badworn", recipe.Refused, []string{"-in", "-"}, "end float  0.05–0.18 mm (0.002–0.007 in); worn 0.2\n"},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.txt"}, ""},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, c.in, c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}
