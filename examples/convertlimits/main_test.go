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
		{"columns", recipe.Answered, []string{"-second", "0.0012–0.0028 in", "0.03–0.07 mm"}},
		{"bore", recipe.Answered, []string{"-second", "146.0754–146.1262 mm", "5.7510–5.7530 in"}},
		{"onesided", recipe.Answered, []string{"-places", "4", "less than 0.1 mm"}},
		{"same", recipe.Answered, []string{"-to", "µm", "-places", "0", "-second", "30–70 µm", "0.03–0.07 mm"}},
		{"noplaces", recipe.Refused, []string{"max 0.10 mm"}},
		{"narrow", recipe.Refused, []string{"-places", "1", "0.01–0.02 mm"}},
		{"notlimits", recipe.Refused, []string{"0.07 mm"}},
		{"nounit", recipe.Refused, []string{"-to", "mil"}},
		{"badsecond", recipe.Refused, []string{"-second", "0.0028–0.0012 in"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 1)
}

// 11 ±0.3 mm is 0.421–0.445 in to nearest and 0.422–0.444 in inward, as the
// rule's published example has it (testdata/published/convertlimits.txt).
func TestPublishedExample(t *testing.T) {
	var out, errs bytes.Buffer
	require.Zero(t, run([]string{"11 ±0.3 mm"}, strings.NewReader(""), &out, &errs), errs.String())
	require.Contains(t, out.String(), "nearest  0.421–0.445 in")
	require.Contains(t, out.String(), "inward   0.422–0.444 in")
}
