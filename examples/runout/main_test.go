package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
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
		{"working", recipe.Answered, []string{"-working", "-journal", "main 3"}},
		{"picture", recipe.Answered, []string{"-svg"}},
		{"journal", recipe.Answered, []string{"-svg", "-journal", "main 3"}},
		{"nojournal", recipe.Refused, []string{"-working", "-journal", "main 9"}},
		{"whichjournal", recipe.Refused, []string{"-working"}},
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

// flat undoes the breaking of lines.
func flat(page string) string { return strings.Join(strings.Fields(page), " ") }

// bent is a round journal whose high point stands in a direction, in thou of
// run-out.
func bent(where string, at int, thou, degrees float64) string {
	var r []string
	for i := range 8 {
		r = append(r, fmt.Sprintf("%.5f", thou/2*math.Cos(2*math.Pi*float64(i)/8-degrees*math.Pi/180)))
	}
	return fmt.Sprintf(`{"where": %q, "position": "%d in", "readings": %q}`, where, at, strings.Join(r, " "))
}

func manual(journals ...string) string {
	return `{"schema": 1, "engine": "x", "support": "between centres", "supports": ["1", "4"], "unit": "thou", "error": "0 in",
		"journals": [` + strings.Join(journals, ",") + `],
		"limits": {"along": {"wear": "max 0.003 in"}, "rightSum": {"wear": "max 0.004 in"}, "rightEach": {"wear": "max 0.002 in"}}}`
}

// TM 9-2815-202-34, p. 4-157: .002 in on each of two neighbours, opposite, is a
// sum of .004 in against .003; at right angles it is .00283 by vectors, and
// passes.
func TestPublished(t *testing.T) {
	ends := func(a, b string) string { return manual(bent("1", 0, 0, 0), a, b, bent("4", 30, 0, 0)) }
	out, errs, exit := call(ends(bent("2", 10, 2, 0), bent("3", 20, 2, 180)))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "2 and 3, high points 180° apart by vectors: vector difference of run-outs [0.101 mm, 0.102 mm]")
	require.Contains(t, flat(out), "by the manual, opposite: sum of run-outs [0.101 mm, 0.102 mm], wear limit max 0.076 mm: too large: past the wear limit")
	out, errs, exit = call(ends(bent("2", 10, 1.999, 0), bent("3", 20, 1.999, 90)))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "by the manual, at right angles: run-out of each")
	require.Contains(t, flat(out), "Next: within the wear limits given")
	// .0021 on each at right angles is .00297 in, which the manual's rule refuses.
	out, _, _ = call(ends(bent("2", 10, 2.1, 0), bent("3", 20, 2.1, 90)))
	require.Contains(t, flat(out), "The two don't agree: the manual governs.")
}

// An oval of 40 µm (of diameters) on a straight journal reads 20 µm, and half of
// that is no bend.
func TestOval(t *testing.T) {
	oval := strings.Replace(bent("2", 10, 0, 0), `"readings": "`, `"readings": "`+"0.3937 0 -0.3937 0 0.3937 0 -0.3937 0\", \"back\": \"0.40", 1)
	oval = oval[:strings.Index(oval, `"back"`)] + `"back": "0.40"}`
	out, errs, exit := call(manual(bent("1", 0, 0, 0), oval, bent("3", 20, 0, 0), bent("4", 30, 0, 0)))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "2 isn't round: half its run-out is not its bend")
	require.Contains(t, out, "0.0400", "the ovality")
	require.Contains(t, flat(out), "the dial came back")
}

func TestPicture(t *testing.T) {
	uneven := strings.Replace(string(demo), `"position": "98 mm"`, `"angles": "0 30 60 90 120 150 180 210 240 270 300 331", "position": "98 mm"`, 1)
	require.NotEqual(t, string(demo), uneven)
	for _, in := range []string{
		string(demo), uneven,
		strings.Replace(string(demo), `"max 0.05 mm"`, `"max 5 mm"`, 1),
		strings.Replace(string(demo), `"bend": {"new": "max 0.02 mm", "wear": "max 0.05 mm"},`, "", 1),
	} {
		for _, args := range [][]string{{"-svg"}, {"-svg", "-journal", "main 2"}} {
			out, errs, exit := call(in, args...)
			require.Equal(t, recipe.Answered, exit, errs)
			d := xml.NewDecoder(strings.NewReader(out))
			for {
				if _, err := d.Token(); errors.Is(err, io.EOF) {
					break
				} else {
					require.NoError(t, err)
				}
			}
		}
	}
	_, errs, exit := call(uneven, "-working", "-journal", "main 2")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "equal angles")
	out, errs, exit := call(string(demo), "-working", "-journal", "main 1")
	require.Equal(t, recipe.Answered, exit, errs)
	require.NotContains(t, out, "bend =")
	require.Equal(t, 400.0, exaggeration(0.1))
}

func TestBlocks(t *testing.T) {
	good := strings.Replace(string(demo), `"support": "between centres"`, `"support": "V-blocks", "included": "90°"`, 1)
	out, errs, exit := call(good)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "V-blocks")
	i := strings.Index(good, `      "readings"`)
	unread := good[:strings.LastIndex(good[:i], ",")] + good[i+strings.Index(good[i:], "\n"):]
	out, errs, exit = call(unread)
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "main 1 wasn't read: it is taken for round")
	require.Contains(t, out, "not read")
	_, errs, exit = call(unread, "-svg", "-journal", "main 1")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "wasn't read")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	first := good[strings.Index(good, `"readings": "`)+13:]
	first = first[:strings.Index(first, `"`)]
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"engine"`, `"motor"`, "motor"},
		{"unit", `"µm"`, `"mil"`, "unit"},
		{"support", `"between centres"`, `"a bench"`, "not on \"a bench\""},
		{"one support", `"main 1", "main 5"]`, `"main 1"]`, "name two journals, not 1"},
		{"no such support", `"main 5"]`, `"main 6"]`, "the name of a journal"},
		{"one reading", first, "5", "dial readings 1 is not from 3"},
		{"not a number", first, "NaN " + first, "reading 1"},
		{"mismatched", `"position": "0 mm"`, `"angles": "0 90 180", "position": "0 mm"`, "one for each of 12 readings"},
		{"repeated", `"position": "0 mm"`, `"angles": "0 30 60 90 120 150 180 210 240 270 300 360", "position": "0 mm"`, "another place than reading 1"},
		{"bad angle", `"position": "0 mm"`, `"angles": "0 x", "position": "0 mm"`, "angle 2"},
		{"bad back", `"position": "0 mm"`, `"back": "x", "position": "0 mm"`, "back"},
		{"twice", `"main 2"`, `"main 1"`, "two journals are called"},
		{"out of place", `"position": "98 mm"`, `"position": "-98 mm"`, ": journals[1]: crank: main 2, position -98 mm"},
		{"out of order", `"196 mm"`, `"19.6 mm"`, "beyond that of the journal before it"},
		{"negative error", `"1 µm"`, `"-1 µm"`, "0 mm or more"},
		{"limits", `"max 0.02 mm"`, `"max 0.2 mm"`, "wear limit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 600)
		})
	}
}
