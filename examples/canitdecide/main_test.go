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
		{"able", recipe.Answered, []string{"-readings", "1.484 mm", "-step", "0.001 mm", "-error", "0.001 mm"}},
		{"onesided", recipe.Answered, []string{"-limits", "max 0.10 mm", "-readings", "0.095 mm", "-step", "0.001 mm"}},
		{"onthelimit", recipe.Answered, []string{"-limits", "max 0.10 mm", "-readings", "0.10 mm"}},
		{"inches", recipe.Answered, []string{"-limits", ".0012–.0028 in", "-readings", ".0021 in, .0022 in, .0021 in, .0023 in", "-step", ".0001 in", "-error", ".0001 in", "-calibration", ".00005 in"}},
		{"nolimits", recipe.Refused, []string{"-limits", "no limit"}},
		{"noreading", recipe.Refused, []string{"-readings", ""}},
		{"negative", recipe.Refused, []string{"-error", "-0.004 mm"}},
		{"nounit", recipe.Refused, []string{"-step", "0.01"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

// ISO 14253-1 with its factor of 1.65 (1.645) accepts, of 10.00 ±0.05 mm
// measured with a standard uncertainty of 0.02 mm, 9.983 to 10.017 mm
// (published check values, part A, 5.5).
func TestAcceptanceZone(t *testing.T) {
	var out, errs bytes.Buffer
	// A calibration of 0.04 mm at k = 2 is 0.02 mm; the rest is as good as nothing.
	exit := run([]string{"-limits", "10.00 ±0.05 mm", "-readings", "10.00 mm", "-step", "1 nm", "-error", "1 nm", "-calibration", "0.04 mm"}, strings.NewReader(""), &out, &errs)
	require.Zero(t, exit, errs.String())
	require.Contains(t, out.String(), "Readings of 9.9830–10.0170 mm")
}
