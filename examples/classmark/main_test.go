package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/exam"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/default.golden")
	recipetest.Golden(t, run, []string{"-within", "0.1 mm"}, "", recipe.Answered, "testdata/within.golden")
	recipetest.Golden(t, run, []string{"-key", "testdata/nowhere.json"}, "", recipe.Refused, "testdata/nokey.golden")
	recipetest.Usage(t, run, 0)
}

// What each of the slips is called, of answers whose slip is known.
func TestSlips(t *testing.T) {
	var out, errs bytes.Buffer
	require.Equal(t, recipe.Answered, run(nil, nil, &out, &errs))
	page := out.String()
	one := page[strings.Index(page, "student 1"):strings.Index(page, "student 2")]
	require.Equal(t, "student 1: 10 of 10\n\n", one)
	for _, says := range []string{"1.3 mm", "decimal point", "3.302 mm", "25.4", "no answer", "unit"} {
		require.Contains(t, page, says)
	}
}

func TestBadInput(t *testing.T) {
	good := string(demoClass)
	for _, c := range []struct {
		name, in string
		args     []string
		say      string
	}{
		{"empty", "", nil, "the list is empty"},
		{"short row", good + "student 5,1 mm\n", nil, "line 5"},
		{"open quote", `"student`, nil, "line 1"},
		{"tolerance", good, []string{"-within", "-1 mm"}, "below zero"},
		{"class for key", good, []string{"-key", "class.csv"}, "class.csv:1"},
		{"no unit", good, []string{"-within", "0.1"}, "no unit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errs bytes.Buffer
			require.Equal(t, recipe.Refused, run(append([]string{"-in", "-"}, c.args...), strings.NewReader(c.in), &out, &errs))
			require.Empty(t, out.String())
			require.Contains(t, errs.String(), c.say)
		})
	}
	absurd := strings.Repeat("9", 5000) + " mm"
	page, err := mark("x", []byte("student 1,"+absurd+",-,NaN mm,1e9 mm,=1\n"), mustKey(t), 0)
	require.NoError(t, err)
	require.Less(t, len(page), 2500)
	require.Contains(t, page, "0 of 10")
}

func mustKey(t *testing.T) exam.Key {
	t.Helper()
	k, err := exam.Read("key.json", demoKey)
	require.NoError(t, err)
	return k
}
