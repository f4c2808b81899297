package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
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
		{"working", recipe.Answered, []string{"-working", "2"}},
		{"picture", recipe.Answered, []string{"-picture", "4"}},
		{"inch", recipe.Answered, []string{"-inch", "-in", "testdata/inch.json"}},
		{"inchpicture", recipe.Answered, []string{"-inch", "-in", "testdata/inch.json", "-picture", "1"}},
		{"inchworking", recipe.Answered, []string{"-inch", "-in", "testdata/inch.json", "-working", "1"}},
		{"warm", recipe.Answered, []string{"-in", "testdata/warm.json"}},
		{"nocylinder", recipe.Refused, []string{"-working", "9"}},
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

// A picture is whole XML, with a gap where nothing was read.
func TestPicture(t *testing.T) {
	out, _, exit := call(string(demo), "-picture", "4")
	require.Equal(t, recipe.Answered, exit)
	d := xml.NewDecoder(strings.NewReader(out))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
	}
	require.Contains(t, out, "not read")
	require.Equal(t, 4, strings.Count(out, `<polyline class="measured"`), "two walls in each direction; of a single reading there is no line")
}

// A gauge of finer steps prints what it showed.
func TestFineGauge(t *testing.T) {
	in := strings.NewReplacer(`"step": "0.001 mm"`, `"step": "0.0005 mm"`, `"0.028 mm", "0.046 mm"`, `"0.0285 mm", "0.046 mm"`).Replace(string(demo))
	out, errs, exit := call(in)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "step 0.0005,")
	require.Contains(t, out, "86.0285")
}

// One cylinder at a time, and in one form.
func TestOneThing(t *testing.T) {
	for _, args := range [][]string{{"-working", "1", "-picture", "1"}, {"-working", "0"}, {"-picture", "-1"}, {"-working", "two"}} {
		out, errs, exit := call(string(demo), args...)
		require.Equal(t, recipe.Refused, exit)
		require.Empty(t, out)
		require.Regexp(t, "one at a time|the file has no cylinder", errs)
	}
}

// Bad input is answered with line, field and reason, and nothing is printed of
// the rest.
func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, line, reason string }{
		{"empty", good, "", "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, ":2:", "1"},
		{"unknown field", `"directions"`, `"direction"`, ":6:", "direction"},
		{"no unit", `"0.028 mm"`, `"0.028"`, ":17:", "unit"},
		{"a number", `"0.028 mm"`, `0.028`, ":17:", "shown"},
		{"between steps", `"0.028 mm"`, `"0.0285 mm"`, ":15: cylinders[0]", "between two steps"},
		{"another unit", `"0.028 mm"`, `"-82.613 mm"`, "cylinders[0]", "below the ridge, along the crank 3.387 mm"},
		{"two for one", `["0.028 mm", "0.046 mm"]`, `["0.028 mm"]`, ":17: cylinders[0].levels[0].shown", "1 readings for 2 directions"},
		{"levels mixed", `"35 mm"`, `"5 mm"`, "cylinders[0]", "depth of upper"},
		{"same direction", `"90°"`, `"180°"`, "cylinders[0]", "half a turn on"},
		{"twice", `{"cylinder": 2`, `{"cylinder": 1`, "cylinders[1]", "twice"},
		{"nought", `{"cylinder": 1`, `{"cylinder": 0`, "cylinders[0].cylinder", "from 1"},
		{"ridge unsaid", `"counted": "per side"`, `"counted": "not stated"`, "cylinders[0]", "per side"},
		{"rule", `greatest less least along one direction`, `greatest less least`, ":10: limits.taper.rule", "per length"},
		{"limit", `"max 0.010 mm", "wear": "max 0.050 mm"}`, `"max 0.10 mm", "wear": "max 0.050 mm"}`, ":7: limits", "reaches past the wear limit"},
		{"none", good[strings.Index(good, `"cylinders": [`):], `"cylinders": []}`, "cylinders", "no cylinder"},
		{"not UTF-8", "training", "trai\xffning", ":3:", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.True(t, strings.HasPrefix(errs, "boresurvey: standard input"), errs)
			require.Contains(t, errs, c.line)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
		})
	}
}
