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
		{"working", recipe.Answered, []string{"-working"}},
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

// 20 kg, 6000 r/min, G 6.3: 200.535 g·mm; and the remembered example of
// ISO 21940-11: 28.6, 10.7 and 17.9 kg·mm.
func TestPublished(t *testing.T) {
	rotor := func(mass, rpm, grade, a, b string) string {
		return `{"schema": 1, "engine": "x", "rotor": {"mass": "` + mass + `", "rpm": ` + rpm + `, "gradeMMPS": ` + grade + `, "bearingA": "` + a + `", "bearingB": "` + b + `", "massCentre": "0 mm"}}`
	}
	out, errs, exit := call(rotor("20 kg", "6000", "6.3", "-1 m", "1 m"))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "200.5 g·mm")
	require.Contains(t, out, "10.03 µm")
	require.Contains(t, out, "undecided")
	out, _, _ = call(rotor("1800 kg", "3000", "2.5", "-1500 mm", "900 mm"))
	require.Contains(t, out, "14323.9 g·mm") // half of 28 648
	require.Contains(t, out, "5371.5")
	require.Contains(t, out, "8952.5")
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"find the heavy place first":   {`"errorGMM": 12, "angle": "38°"`, `"errorGMM": 12, "noAngle": true`},
		"within the grade":             {`"amountGMM": 1460`, `"amountGMM": 890`},
		"drill one hole":               {`"deepest": "16 mm"`, `"deepest": "40 mm"`},
		"holes this far apart":         {`"deepest": "16 mm"`, `"deepest": "4 mm"`},
		"would have to be longer than": {`"longest": "30 mm"`, `"longest": "2 mm"`},
		"say under plug with what":     {`"plug": {"diameter": "25 mm", "radius": "66 mm", "plugGPerCM3": 17, "steelGPerCM3": 7.85, "longest": "30 mm"},`, ``},
		"say under drill how":          {`"drill": {"way": "round rim", "diameter": "12.5 mm", "point": "118°", "radius": "82 mm", "deepest": "16 mm", "densityGPerCM3": 7.85},`, ``},
		"rear counterweight: nothing":  {`"amountGMM": 890`, `"amountGMM": 0`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in)
		if want == "within the grade" {
			in = strings.Replace(strings.Replace(in, `"214°"`, `"218°"`, 1), `"408 mm"`, `"52 mm"`, 1)
		}
		out, errs, exit := call(in, "-working")
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want)
	}
	for way, want := range map[string]string{"flat": "of the full diameter", "axial": "of the full diameter"} {
		out, errs, _ := call(strings.Replace(good, `"way": "round rim"`, `"way": "`+way+`"`, 1), "-working")
		require.Contains(t, out, want, errs)
	}
	out, _, exit := call(`{"schema": 1, "engine": "x", "crankpins": [{"rods": [{"bigEnd": "400 g", "smallEnd": "150 g", "piston": "350 g"}], "factor": "1/2"}]}`, "-working")
	require.Equal(t, recipe.Answered, exit)
	require.Contains(t, out, "650.0 g")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"nothing", good, `{"schema": 1, "engine": "x"}`, "neither crankpins nor a rotor"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"factor"`, `"factors"`, "factors"},
		{"factor a number", `"50 %"`, `"50"`, ":5: crankpins[0]: crank: balance factor of all four crankpins 50 is not from 0 to 1"},
		{"negative mass", `"438.2 ±0.1 g"`, `"-438.2 g"`, "big end of left rod -438.2 g is not above 0 g"},
		{"no unit", `"438.2 ±0.1 g"`, `"438.2"`, "unit"},
		{"speed zero", `"rpm": 6500`, `"rpm": 0`, "speed 0 r/min"},
		{"no mass", `"31.5 kg"`, `"0 kg"`, "rotor's mass 0 g"},
		{"one bearing", `"460 mm"`, `"0 mm"`, "bearing B 0 mm"},
		{"negative unbalance", `"amountGMM": 1460`, `"amountGMM": -1460`, "front counterweight -1460 g·mm"},
		{"density in kg/m³", `"deepest": "16 mm", "densityGPerCM3": 7.85`, `"deepest": "16 mm", "densityGPerCM3": 7850`, "density 7850 g/cm³"},
		{"through the shaft", `"deepest": "16 mm"`, `"deepest": "90 mm"`, "it would reach the shaft's axis"},
		{"light plug", `"plugGPerCM3": 17`, `"plugGPerCM3": 7`, "plug: "},
		{"unknown plane", `["rear counterweight"]`, `["middle"]`, `light[0]: no reading is called "middle"`},
		{"unknown way", `"round rim"`, `"sideways"`, "sideways"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, in)
			out, errs, exit := call(in)
			require.Equal(t, recipe.Refused, exit, out)
			require.Empty(t, out)
			require.Contains(t, errs, c.reason)
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
		})
	}
}
