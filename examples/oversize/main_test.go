package main

import (
	"bytes"
	"regexp"
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
		{"moved", recipe.Answered, []string{"-bar", "moved to the worn bore"}},
		{"working", recipe.Answered, []string{"-working", "2"}},
		{"workingdiameter", recipe.Answered, []string{"-working", "1"}},
		{"diameters", recipe.Answered, []string{"-inch", "-in", "testdata/diameters.json"}},
		{"liner", recipe.Answered, []string{"-in", "testdata/liner.json"}},
		{"linerworking", recipe.Answered, []string{"-in", "testdata/liner.json", "-working", "2"}},
		{"nocylinder", recipe.Refused, []string{"-working", "9"}},
		{"nobar", recipe.Refused, []string{"-bar", "somewhere"}},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

func call(in string, args ...string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run(append([]string{"-in", "-"}, args...), strings.NewReader(in), &o, &e)
	return o.String(), e.String(), exit
}

// The case of common practice: 86 mm worn by 0.10 on the thrust side only, with
// 0.01 per side and 0.06 to hone: 86.28 on the original axis, 86.18 moved.
func TestCommonPractice(t *testing.T) {
	in := `{"schema": 1, "engine": "x", "standard": "86 mm", "cut": "0.01 mm", "honing": "0.06 mm",
		"kits": [{"name": "+0.25", "oversize": "0.25 mm"}, {"name": "+0.50", "oversize": "0.50 mm"}],
		"bores": [{"cylinder": 1, "finished": "86 mm", "walls": [{"where": "thrust", "heading": "90°", "wear": "0.10 mm"}, {"where": "other", "heading": "270°", "wear": "0 mm"}]}]}`
	out, _, exit := call(in, "-bar", "original axis")
	require.Equal(t, recipe.Answered, exit)
	require.Contains(t, out, "86.280    86.280")
	require.Contains(t, out, "One size for the block: +0.50.")
	out, _, _ = call(in, "-bar", "moved to the worn bore")
	require.Contains(t, out, "86.180    86.180")
	require.Contains(t, out, "One size for the block: +0.25.")
}

// One wall dialled of a bore whose bar is moved: the one opposite is asked for.
func TestOneWall(t *testing.T) {
	in := regexp.MustCompile(`(?s)"greatest": "86.098[^,]*,|,\s*\{"where": "top, other side"[^}]*\}`).ReplaceAllString(string(demo), "")
	out, errs, exit := call(in, "-bar", "moved to the worn bore")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "cylinder 2: dial the wall opposite the most worn one too")
	for _, number := range []string{"0", "-2", "two", strings.Repeat("9", 4000)} {
		_, errs, exit = call(in, "-working", number)
		require.Equal(t, recipe.Refused, exit)
		require.Contains(t, errs, "the file has no cylinder")
		require.Less(t, len(errs), 200)
	}
}

// Bad input is answered with line, field and reason, and nothing is printed of
// the rest.
func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 3`, ":2:", "1"},
		{"unknown field", `"honing"`, `"hone"`, ":7:", "hone"},
		{"no unit", `"0.06 mm"`, `"0.06"`, ":7:", "unit"},
		{"plated", `"surface": "plain iron"`, `"surface": "plated"`, ":20: bores[0]", "not rebored without the maker's own process"},
		{"surface", `"plain iron"`, `"iron"`, ":20:", "bare alloy"},
		{"price", `"41.50"`, `"41.5"`, ":12:", "two places"},
		{"currency", `"28.00"`, `"£28.00"`, ":17:", "without a currency"},
		{"no kits", good[strings.Index(good, `"kits"`):strings.Index(good, `"boring"`)], `"kits": [], `, "standard input: ", "at least one kit"},
		{"twice", `{"cylinder": 2`, `{"cylinder": 1`, "bores[1]", "twice"},
		{"nought", `{"cylinder": 1`, `{"cylinder": 0`, "bores[0].cylinder", "from 1"},
		{"wall", `"4.1 ±0.1 mm"`, `"-4.1 mm"`, "bores[1]", "a thickness above 0 mm"},
		{"inches", `"86.046 ±0.004 mm"`, `"3.3876 mm"`, "bores[0]", "near the size last finished to"},
		{"unexplained", `"0.098 ±0.003 mm"`, `"0.020 ±0.003 mm"`, "bores[1]", "dial the place"},
		{"another kit's piston", `"86.456 ±0.002 mm"`, `"87.456 ±0.002 mm"`, "standard input: ", "a skirt for this kit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.True(t, strings.HasPrefix(errs, "oversize: standard input"), errs)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
		})
	}
}
