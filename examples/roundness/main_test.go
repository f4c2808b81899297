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
		{"working", recipe.Answered, []string{"-working"}},
		{"picture", recipe.Answered, []string{"-picture"}},
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

// lobed is a section of n readings with lobes of one order, in micrometres.
func lobed(order int, amplitude float64, n int) string {
	var s []string
	for i := range n {
		s = append(s, fmt.Sprintf("%.6f", amplitude*math.Cos(2*math.Pi*float64(order*i)/float64(n))))
	}
	return `{"schema": 1, "part": "x", "surface": "hole", "nominal": "43 mm", "unit": "µm", "deviations": "` + strings.Join(s, " ") + `",
		"roundness": {"wear": "max 0.010 mm"}, "outOfRound": {"wear": "max 0.010 mm"}}`
}

// Derived by hand: A·cos(kφ) has RONt 2A; its diameters differ by 4A for even
// k and not at all for odd k. The limit of 0.010 mm says otherwise by each.
func TestLobes(t *testing.T) {
	out, errs, exit := call(lobed(2, 4, 36))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "0.0080")
	require.Contains(t, out, "0.0160")
	require.Contains(t, flat(out), "The largest plug that goes into this section measures 85.9920 mm, as far as its readings tell.", "2 · (43 − 0.004)")
	require.Contains(t, flat(out), "zone) 0.0080 mm, wear limit max 0.0100 mm: within the wear limit")
	require.Contains(t, flat(out), "too large: past the wear limit", "by the trade")
	require.Contains(t, out, "Most of it is order 2 (oval).")

	out, errs, exit = call(lobed(3, 6, 36))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "zone) 0.0120 mm, wear limit max 0.0100 mm: too large: past the wear limit")
	require.Contains(t, flat(out), "doesn't show odd lobes")

	out, _, _ = call(strings.Replace(lobed(2, 4, 36), `"part"`, `"error": "1 µm", "part"`, 1))
	require.Contains(t, flat(out), "[0.0060 mm, 0.0100 mm]", "the two circles move by the error each")

	out, _, exit = call(lobed(3, 6, 35))
	require.Equal(t, recipe.Answered, exit)
	require.Contains(t, out, "By the trade: form: ", "an odd number of readings has no diameters")
	_, _, exit = call(lobed(3, 6, 35), "-working")
	require.Equal(t, recipe.Refused, exit)
	out, _, _ = call(lobed(1, 3000, 36))
	require.Contains(t, flat(out), "centre it better")
}

// The picture is well-formed, is described in words, and can do without a
// limit.
func TestPicture(t *testing.T) {
	for in, limit := range map[string]bool{string(demo): true, strings.Replace(string(demo), `"roundness": {"wear": "max 0.010 mm"},`, "", 1): false} {
		out, errs, exit := call(in, "-picture")
		require.Equal(t, recipe.Answered, exit, errs)
		d := xml.NewDecoder(strings.NewReader(out))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else {
				require.NoError(t, err)
			}
		}
		require.Contains(t, out, "times exaggerated")
		require.Equal(t, limit, strings.Contains(out, `class="limit"`))
	}
	require.Equal(t, 1.0, exaggeration(1e9))
	require.Equal(t, 500000.0, exaggeration(0), "never more than this")
	require.Equal(t, 2000.0, exaggeration(0.005)) // 0.005 · 2000 is 10 mm, and 5000 would be 25
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	list := good[strings.Index(good, `"deviations": "`)+15:]
	list = list[:strings.Index(list, `"`)]
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown surface", `"hole"`, `"side"`, "a hole or a shaft"},
		{"unknown unit", `"µm"`, `"mil"`, "unit"},
		{"negative error", `"0.3 µm"`, `"-0.3 µm"`, "0 mm or more"},
		{"great error", `"0.3 µm"`, `"86 in"`, "below the radius"},
		{"few readings", list, "1 2 3", "3 readings"},
		{"many readings", list, strings.Repeat("1 ", 4000), "4000 readings"},
		{"not a number", list, "NaN " + list, "reading 1"},
		{"no radius", `"43.000 mm"`, `"0 mm"`, "radius"},
		{"reversed limits", `"max 0.010 mm"`, `"0.02–0.01 mm"`, "roundness"},
		{"new past worn", `{"wear": "max 0.010 mm"}`, `{"new": "max 1 mm", "wear": "max 0.010 mm"}`, "reaches past the wear limit"},
		{"unknown field", `"nominal"`, `"normal"`, "normal"},
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
	// A shaft is judged as well, and a true circle has no lobes to speak of.
	out, errs, exit := call(strings.NewReplacer(`"hole"`, `"shaft"`, list, strings.Repeat("1 ", 36)).Replace(good))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, flat(out), "[0.0000 mm, 0.0006 mm]")
	require.Contains(t, flat(out), "The smallest ring that goes over this section measures 86.0020 mm")
	_, errs, exit = call(good, "-picture", "-working")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "one at a time")
}
