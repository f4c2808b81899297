package calc

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What the calculators say is what the library says: the verdicts here are
// worked out by hand.
func TestWork(t *testing.T) {
	for _, c := range []struct {
		name   string
		values map[string]string
		says   string
		line   string
	}{
		// 2.5 thou is 0.0635 mm and 3 thou 0.0762 mm: 0.07 lies between.
		{"blades", nil, "can't tell, which is not a pass", "[0.0635 mm, 0.0762 mm)"},
		{"blades", map[string]string{"tried": ".0015 in free, .0025 in refused"}, "within the band for new parts", "[0.0381 mm, 0.0635 mm)"},
		{"blades", map[string]string{"tried": ".003 in forced, .0015 in free"}, "can't tell, which is not a pass", "force counts as refused"},
		{"blades", map[string]string{"tried": ".003 in free"}, "too large: outside the new-part band; no wear limit given", ""},
		// π × 0.05 mm is 0.157080 mm.
		{"ringgap", map[string]string{"gap": "0.25 mm", "there": "86 mm", "here": "86.05 mm"}, "too large: outside the new-part band; no wear limit given", "0.4071"},
		{"ringgap", map[string]string{"gap": "0.1 mm", "there": "86 mm", "here": "85.96 mm", "new": ""}, "can't tell: no limit given", "may meet"},
		// 86 + 0.10 + 0.02 + 0.06 is 86.18 by diameters at the least, 86.28 at the most.
		{"oversize", map[string]string{"greatest": "86.10 mm"}, "can't tell, which is not a pass: +0.25 mm may do, +0.5 mm is sure to", "[86.1800 mm, 86.2800 mm]"},
		{"oversize", map[string]string{"greatest": "86.02 mm"}, "+0.25 mm cleans it up", ""},
		{"oversize", map[string]string{"finished": "3.5 in", "greatest": "3.503 in", "cut": ".0005 in", "hone": ".002 in", "steps": "inch steps"}, "+0.254 mm cleans it up", ""},
		{"oversize", map[string]string{"greatest": "88 mm"}, "none of these steps cleans it up: think of a liner", ""},
		{"oversize", map[string]string{"greatest": "86.7 mm"}, "can't tell, which is not a pass: +1 mm may do, and no step is sure to", ""},
		// 2.55 + 0.32 − 0.25 is 2.62: of 0.05 mm steps 2.60 leaves 0.27 (published README, B 5).
		{"shim", map[string]string{"measured": "0.32 mm", "old": "2.55 mm", "error": "0 mm"}, "fit 2.6 mm", "would be in 0.2700 mm then"},
		{"shim", map[string]string{"measured": "0.15 mm", "old": "2.55 mm", "error": "0 mm"}, "fit 2.45 mm", ""},
		{"shim", map[string]string{"measured": "[0.22 mm, 0.24 mm)"}, "in band as it is: leave the shim", ""},
		{"shim", map[string]string{"measured": "[0.10 mm, 0.24 mm)"}, "can't tell, which is not a pass: no shim is sure to bring it into the band", ""},
	} {
		a := WorkNamed(c.name, c.values)
		require.Empty(t, a.Error, c)
		require.Equal(t, c.says, a.Says, c)
		require.Contains(t, strings.Join(a.Lines, "\n"), c.line, c)
		require.Contains(t, a.Picture, `<svg class="drawn"`, c)
	}
}

// A field that can't be used is named, and nothing else is said.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ name, field, value, say string }{
		{"blades", "set", "imperial 99", "imperial 26"},
		{"blades", "tried", ".0026 in free", ".0026"},
		{"blades", "tried", ".003 in free, .002 in refused", ".003"},
		{"blades", "new", "0.03–0.07", "no unit"},
		{"blades", "new", "0.07–0.03 mm", ""},
		{"blades", "wear", "NaN", ""},
		{"ringgap", "gap", "-1 mm", "above 0 mm"},
		{"ringgap", "there", "0 mm", "above 0 mm"},
		{"ringgap", "here", "86", "no unit"},
		{"oversize", "finished", "-86 mm", "above 0 mm"},
		{"oversize", "greatest", "85.9 mm", "less than"},
		{"oversize", "greatest", "860.95 mm", "another unit"},
		{"oversize", "cut", "-0.01 mm", "below"},
		{"oversize", "hone", "1/0 in", ""},
		{"oversize", "steps", "cubits", "inch steps"},
		{"shim", "measured", "-1 mm", ""},
		{"shim", "wanted", "max 0.3 mm", ""},
		{"shim", "wanted", "0.2–0.3", "no unit"},
		{"shim", "old", "0 mm", ""},
		{"shim", "step", "0.07 mm", ""},
		{"shim", "from", "0 mm", "above 0 mm"},
		{"shim", "error", "x", ""},
	} {
		a := WorkNamed(c.name, map[string]string{c.field: c.value})
		require.Equal(t, c.field, a.Field, c)
		require.Contains(t, a.Error, c.say, c)
		require.Empty(t, a.Says)
		require.Empty(t, a.Picture)
		require.Less(t, len(a.Error), 400)
	}
	require.Contains(t, WorkNamed(strings.Repeat("x", 9999), nil).Error, "no calculator")
}

func FuzzWork(f *testing.F) {
	for _, c := range All() {
		values := map[string]string{}
		for _, field := range c.Fields {
			values[field.Name] = field.Value
		}
		text, _ := json.Marshal(values)
		f.Add(c.Name, string(text))
	}
	f.Fuzz(func(t *testing.T, name, text string) {
		values := map[string]string{}
		if json.Unmarshal([]byte(text), &values) != nil {
			return
		}
		a := WorkNamed(name, values)
		if (a.Error == "") == (a.Says == "") {
			t.Errorf("%q: says %q, error %q", values, a.Says, a.Error)
		}
	})
}
