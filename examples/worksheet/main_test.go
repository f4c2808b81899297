package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/exam"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func TestGolden(t *testing.T) {
	recipetest.Golden(t, run, nil, "", recipe.Answered, "testdata/sheet.golden")
	recipetest.Golden(t, run, []string{"-key"}, "", recipe.Answered, "testdata/key.golden")
	recipetest.Golden(t, run, []string{"-json"}, "", recipe.Answered, "testdata/json.golden")
	recipetest.Golden(t, run, []string{"-seed", "2026", "-questions", "10", "-key"}, "", recipe.Answered, "testdata/seed.golden")
	recipetest.Usage(t, run, 0)
}

func TestBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		say  string
	}{
		{[]string{"-questions", "0"}, "between 1 and 200"},
		{[]string{"-questions", "201"}, "between 1 and 200"},
		{[]string{"-seed", "-1"}, "-seed"},
		{[]string{"-key", "-json"}, "ask for one"},
	} {
		var out, errs bytes.Buffer
		require.Equal(t, recipe.Refused, run(c.args, nil, &out, &errs))
		require.Empty(t, out.String())
		require.Contains(t, errs.String(), c.say)
	}
}

// Any seed gives a sheet that can be worked, with answers above nought where
// they are sizes, and the same sheet again.
func TestSeeds(t *testing.T) {
	for seed := range uint64(300) {
		text, err := sheet(seed, len(kinds), true, false)
		require.NoError(t, err, seed)
		again, err := sheet(seed, len(kinds), true, false)
		require.NoError(t, err)
		require.Equal(t, text, again)
		require.Equal(t, len(kinds), strings.Count(text, "right within"))
		keyText, err := sheet(seed, len(kinds), false, true)
		require.NoError(t, err)
		key, err := exam.Read("key", []byte(keyText))
		require.NoError(t, err)
		names := map[string]bool{}
		for _, q := range key.Questions {
			names[q.Name] = true
			if q.Name != "taper" {
				require.Positive(t, q.Answer, "seed %d: %s", seed, q.Ask)
			}
		}
		require.Len(t, names, len(kinds), "every kind is asked before one is asked again")
	}
	// Rounded as the sheet asks, an answer is right.
	key, err := exam.Read("key", []byte(must(sheet(3, 40, false, true))))
	require.NoError(t, err)
	for _, q := range key.Questions {
		m, err := working.Mark(working.Exactly(q.Answer), q.Answer.Text(units.InMillimetres, 4), q.Within)
		require.NoError(t, err)
		require.Equal(t, working.Right, m.Grade, q.Ask)
	}
}

func must(text string, err error) string {
	if err != nil {
		panic(err)
	}
	return text
}
