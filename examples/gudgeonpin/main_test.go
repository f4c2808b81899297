package main

import (
	"bytes"
	"os"
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
		{"inch", recipe.Answered, []string{"-inch"}},
		{"working", recipe.Answered, []string{"-working", "piston 1"}},
		{"pressed", recipe.Answered, []string{"-in", "testdata/pressed.json"}},
		{"pressedworking", recipe.Answered, []string{"-in", "testdata/pressed.json", "-working", "piston 1"}},
		{"nopiston", recipe.Refused, []string{"-working", "piston 9"}},
		{"noname", recipe.Refused, []string{"-working", ""}},
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
	return strings.Join(strings.Fields(o.String()), " "), e.String(), exit
}

// A pin in its bush by the published limits (TM 5-3805-261-34): new 0.0003 to
// 0.0013 in, at most 0.002 in; and the published interference of an insert (TM
// 5-6115-400-35), 0.0020 to 0.0040 in, as that of a pressed pin.
func TestPublished(t *testing.T) {
	bush := `{"schema": 1, "engine": "x", "fit": "floating", "limits": {"smallEndClearance": {"new": "0.0003–0.0013 in", "wear": "max 0.002 in"}},
		"pistons": [{"where": "piston 1", "atSmallEnd": [{"where": "middle", "sizes": ["1.0000 in"]}], "smallEnd": [{"where": "middle", "sizes": ["SIZE"]}]}]}`
	for size, want := range map[string]string{"1.0013 in": "piston 1: as new", "1.0020 in": "piston 1: usable", "1.0021 in": "piston 1: past the wear limit"} {
		out, errs, exit := call(strings.Replace(bush, "SIZE", size, 1), "-inch")
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want)
	}
	out, errs, exit := call(`{"schema": 1, "engine": "x", "fit": "pressed", "limits": {"smallEndInterference": {"new": "0.0020–0.0040 in"}},
		"pistons": [{"where": "piston 1", "atSmallEnd": [{"where": "middle", "sizes": ["[1.6445 in, 1.6455 in]"]}], "smallEnd": [{"where": "middle", "sizes": ["[1.6415 in, 1.6425 in]"]}]}]}`, "-inch")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "[0.0020 in, 0.0040 in]")
	require.Contains(t, out, "piston 1: as new")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	pressed, err := os.ReadFile("testdata/pressed.json")
	require.NoError(t, err)
	for want, in := range map[string]string{
		"which is more than the 40 °C allowed: chill the pin too": strings.Replace(good, `"most": "120 °C"`, `"most": "40 °C"`, 1),
		"no heat is needed":                               strings.Replace(good, `"gap": "0.020 mm"`, `"gap": "0 mm"`, 1),
		"some of it less than wanted":                     strings.Replace(good, `"wanted": "0.005–0.011 mm"`, `"wanted": "0.006–0.011 mm"`, 1),
		"some of it more than wanted":                     strings.Replace(good, `"wanted": "0.005–0.011 mm"`, `"wanted": "0.005–0.010 mm"`, 1),
		"some of it less and some more than wanted":       strings.Replace(good, `"wanted": "0.005–0.011 mm"`, `"wanted": "0.007–0.010 mm"`, 1),
		"the boss is in no grade":                         strings.Replace(good, `"sizes": ["22.0040 ±0.0005 mm"]`, `"sizes": ["22.0140 ±0.0005 mm"]`, 1),
		"an interference: it does not go in by hand":      strings.Replace(good, `"sizes": ["22.0040 ±0.0005 mm"]`, `"sizes": ["21.9900 ±0.0005 mm"]`, 1),
		"to put the pin into the small end: not measured": strings.Replace(good, `"into": "bosses"`, `"into": "small end"`, 1),
		"a clearance: the pin is loose":                   strings.Replace(string(pressed), "21.978", "22.030", 1),
		"boss white with pin black: clearance min 0.002 mm, less than 0.008 mm: some of it less": strings.Replace(good, `"wanted": "0.005–0.011 mm"`, `"pairs": [{"boss": "white", "pin": "black"}], "wanted": "0.005–0.011 mm"`, 1),
		"pin interference in the small end least [0.022 mm, 0.026 mm], gr":                       strings.Replace(string(pressed), `"sizes": ["21.978 ±0.001 mm"]`, `"sizes": ["21.978 ±0.001 mm", "21.976 ±0.001 mm"]`, 1),
	} {
		out, errs, exit := call(in)
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want)
	}
	var o, e bytes.Buffer
	require.Equal(t, recipe.Answered, run(nil, strings.NewReader(""), &o, &e))
	for line := range strings.SplitSeq(o.String(), "\n") {
		require.LessOrEqual(t, len([]rune(line)), 80, line)
	}
	_, errs, exit := call(strings.Replace(good, `"21.9960 ±0.0005 mm"`, `"[21.9960 mm, ∞)"`, 1), "-working", "piston 1")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "no middle")
	before, _, _ := strings.Cut(good, `"assembly"`)
	_, after, _ := strings.Cut(good, `"pistons"`)
	without := before + `"pistons"` + after
	out, errs, exit := call(without, "-working", "piston 3")
	require.Equal(t, recipe.Answered, exit, errs)
	require.NotContains(t, out, "rise")
	out, errs, exit = call(strings.Replace(good, `"into": "bosses"`, `"into": "small end"`, 1), "-working", "piston 3")
	require.Equal(t, recipe.Answered, exit, errs)
	require.NotContains(t, out, "rise")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"nothing to judge", good, `{"schema": 1, "engine": "x", "fit": "floating", "pistons": []}`, "no pin was read"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"taper"`, `"tapper"`, "tapper"},
		{"unknown fit", `"floating"`, `"swimming"`, "fit"},
		{"no unit", `"length": "70.00 ±0.01 mm"`, `"length": "70.00 ±0.01"`, "unit"},
		{"twice", `"where": "piston 2"`, `"where": "piston 1"`, "twice"},
		{"unknown metal", `"carbon steel"`, `"cheese"`, "assembly.pinMetal"},
		{"unknown hole", `"into": "bosses"`, `"into": "crankcase"`, "assembly.into"},
		{"another unit", `"21.980 ±0.001 mm"`, `"2.198 mm"`, "another unit"},
		{"directions", `"sizes": ["22.0035 ±0.0005 mm", "22.0040 ±0.0005 mm"]}],`, `"sizes": ["22.0035 ±0.0005 mm"]}],`, "as many as at the first section"},
		{"absolute zero", `"measuredAt": "20 °C"`, `"measuredAt": "-300 °C"`, "measuredAt"},
		{"expansion in millionths", `{"name": "carbon steel"}`, `{"perK": 11.7}`, "millionths"},
		{"absurd heat", `"runningAt": "150 ±20 °C"`, `"runningAt": "1500 °C"`, "1000 °C"},
		{"absurd cold", `"pinAt": "20 °C"`, `"pinAt": "-400 °C"`, "pinAt"},
		{"absurd gap", `"gap": "0.020 mm"`, `"gap": "20 mm"`, "assembly gap"},
		{"no grades", `"pins": [{"name": "white", "band": "21.994–21.997 mm"}, {"name": "black", "band": "more than 21.997 mm, max 22.000 mm"}]`, `"pins": []`, "grades"},
		{"limits that quarrel", `"wear": {"wear": "max 0.001 in"}`, `"wear": {"new": "max 0.1 mm", "wear": "max 0.001 in"}`, "pin wear limits"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.True(t, strings.HasPrefix(errs, "gudgeonpin: standard input"), errs)
		})
	}
}
