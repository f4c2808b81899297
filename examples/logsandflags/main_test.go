package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/default.golden")
	recipetest.Golden(t, run, []string{"-read", "59.97 mm", "-error", "5 µm", "-where", "main 1"}, "", recipe.Answered, "testdata/metric.golden")
	recipetest.Usage(t, run, 0)
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		say  string
	}{
		{[]string{"-read", "2.3612"}, "no unit"},
		{[]string{"-read", "NaN"}, "-read"},
		{[]string{"-error", "-0.001 in"}, "-error: -0.0254 mm is below zero"},
		{[]string{"-limits", "2.3622–2.3602 in"}, "-limits"},
		{[]string{"-temperature", "-300 °C"}, "-temperature"},
	} {
		var out, errs bytes.Buffer
		require.Equal(t, recipe.Refused, run(c.args, nil, &out, &errs), c.args)
		require.Empty(t, out.String())
		require.Contains(t, errs.String(), c.say)
	}
}
