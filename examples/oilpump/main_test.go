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

// TM 10-3930-638-24&P: gears to body at most .008 in; spring 18 to 19 lb at
// 1.44 in from 2.125 in.
func TestPublished(t *testing.T) {
	one := func(tried string) string {
		return `{"schema": 1, "engine": "x", "blades": "imperial 26", "kind": "gear", "checks": [{"measure": "tip clearance", "limits": {"wear": "max .008 in"}, "stations": [{"at": "body", "tried": "` + tried + `"}]}],
			"spring": {"free": "2.125 in", "height": "1.44 in", "load": "17.5 lbf", "loadLimits": {"new": "18–19 lbf"}}}`
	}
	for tried, want := range map[string]string{
		".007 in drag, .008 in refused": "as a whole: usable",
		".008 in drag, .009 in refused": "as a whole: can't tell",
		".009 in drag, .010 in refused": "as a whole: past the wear limit",
	} {
		out, errs, exit := call(one(tried), "-working")
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, out, want)
		require.Contains(t, out, "renew the spring")
	}
}

func TestOtherWays(t *testing.T) {
	good := string(demo)
	for want, change := range map[string][2]string{
		"the cover's wear was not measured": {`"coverWear": [".0015 in refused"],`, ``},
		"with no gasket":                    {`"gasket": "0.08 ±0.01 mm",`, ``},
		"measure the gears' width":          {`"usedWidth": "29.92 ±0.005 mm",`, ``},
		"(crescent)":                        {`"kind": "gear"`, `"kind": "crescent"`},
		"no limit":                          {`{"new": ".013–.028 in"}`, `{}`},
		"-0.0":                              {`"tried": ".005 in drag, .006 in refused"`, `"tried": ".005 in drag, .006 in refused", "proud": true`},
		".0065":                             {`"blades": "imperial 26"`, `"ownBlades": [".0015 in", ".002 in", ".0025 in", ".004 in", ".005 in", ".006 in", ".0065 in", ".007 in", ".008 in", ".009 in", ".015 in", ".018 in", ".020 in"]`},
	} {
		in := strings.Replace(good, change[0], change[1], 1)
		require.NotEqual(t, good, in)
		switch want {
		case "-0.0":
			in, want = strings.Replace(in, `"0.08 ±0.01 mm"`, `"0.13 ±0.01 mm"`, 1), "from ["
		case ".0065":
			in, want = strings.Replace(in, `.006 in drag, .007 in refused`, `.006 in drag, .0065 in refused`, 1), "0.0"
		}
		out, errs, exit := call(in, "-working")
		require.Equal(t, recipe.Answered, exit, errs)
		require.Contains(t, strings.Join(strings.Fields(out), " "), want)
	}
	out, errs, exit := call(`{"schema": 1, "engine": "x", "kind": "rotor", "checks": [{"measure": "body clearance", "limits": {"new": "0.07–0.15 mm"}, "stations": [{"at": "body", "read": "0.12 mm"}]}]}`, "-working")
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "as a whole: as new")
}

func TestBadInput(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, old, new, reason string }{
		{"empty", good, "", "empty"},
		{"other schema", `"schema": 1`, `"schema": 2`, "found 2, want 1"},
		{"unknown field", `"gasket"`, `"gaskets"`, "gaskets"},
		{"unknown kind", `"kind": "gear"`, `"kind": "vane"`, `"vane"`},
		{"unknown measure", `"backlash"`, `"slackness"`, `"slackness"`},
		{"unknown blades", `"imperial 26"`, `"imperial 27"`, `:4: blades: no set is called "imperial 27"`},
		{"no such blade", `.004 in free`, `.0041 in free`, "checks[0].stations[0]"},
		{"contradiction", `.002 in drag, .0025 in refused`, `.0025 in drag, .002 in refused`, "checks[0].stations[1]"},
		{"neither", `"read": "0.075 ±0.006 mm"`, `"proud": false`, "either what was tried or what was read"},
		{"proud tips", `"tried": ".008 in drag, .009 in refused"`, `"tried": ".008 in drag, .009 in refused", "proud": true`, "only gears under a straight-edge"},
		{"rotor with backlash", `"kind": "gear"`, `"kind": "rotor"`, "backlash is not one that a rotor pump has"},
		{"no stations", `[{"at": "four places", "tried": ".015 in free, .018 in drag, .020 in refused"}]`, `[]`, "backlash of no place"},
		{"no unit", `"new": ".013–.028 in"`, `"new": ".013–.028"`, "unit"},
		{"negative gasket", `"0.08 ±0.01 mm"`, `"-0.08 mm"`, "gasket -0.08 mm"},
		{"worn cover", `".0015 in refused"`, `".0015 in stuck"`, "coverWear"},
		{"tall height", `"height": "36.6 mm"`, `"height": "56.6 mm"`, "spring: crank: height 56.6 mm"},
		{"half a valve", `"seat": "14.00 ±0.02 mm", `, ``, "both the installed height and the seat's diameter"},
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
