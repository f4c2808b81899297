package engine

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

func demo(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("../engine.json")
	require.NoError(t, err)
	return data
}

func inspect(t testing.TB, data []byte) Result {
	t.Helper()
	d, err := Read("engine.json", data)
	require.NoError(t, err)
	r, err := d.Limits.Prepare().Inspect(&d)
	require.NoError(t, err)
	return r
}

func decision(t testing.TB, r *Result, part, where string) inspection.Decision {
	t.Helper()
	for _, d := range r.Decisions {
		if d.Part == part && d.Where == where {
			return d
		}
	}
	t.Fatalf("no decision on %s %s", part, where)
	return inspection.Decision{}
}

// The invented engine holds a slip of each kind, a reading that is missing, and
// honest wear; what it comes to follows by hand from its limits.
func TestDemo(t *testing.T) {
	r := inspect(t, demo(t))
	paths := map[string]bool{}
	for _, s := range r.Slips {
		paths[s.Path] = true
	}
	require.Equal(t, map[string]bool{"limits.piston.rings[0].sideClearance.wearAlso": true, "readings.valvetrain.springs[10].free": true}, paths)
	require.Len(t, r.Missing, 1)
	require.Equal(t, "readings.valvetrain.valves[5].margin", r.Missing[0].Path)
	require.ErrorIs(t, r.Complete(), inspection.ErrMissing)

	bores := decision(t, &r, "cylinder bores", "")
	require.Equal(t, inspection.ReconditionTo, bores.Action)
	require.Contains(t, bores.Size, "+0.50 mm")
	require.Equal(t, "cylinder 2", bores.Governs)
	mains := decision(t, &r, "main journals", "")
	require.Equal(t, inspection.ReconditionTo, mains.Action)
	require.Contains(t, mains.Size, ".010 in")
	require.Equal(t, "main 3", mains.Governs)
	require.Equal(t, inspection.Replace, decision(t, &r, "pistons", "piston 1").Action, "a bored block asks for other pistons")
	require.Equal(t, inspection.Replace, decision(t, &r, "valve", "exhaust 2").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "valve", "inlet 6").Action, "what wasn't read isn't passed")
	spring := decision(t, &r, "spring", "exhaust 3")
	require.Equal(t, inspection.MeasureAgain, spring.Action, "nothing rests on a slip")
	require.Equal(t, []string{"readings.valvetrain.springs[10].free"}, spring.Slips)
	require.NotZero(t, r.Count()[tolerance.CantTell])

	last := inspection.StepNone
	for _, f := range r.Findings {
		require.GreaterOrEqual(t, f.Step, last, "findings are in bench order")
		last = f.Step
		_, ok := document.Locate(demo(t), f.Path)
		if !ok { // blades that were tried stand in the reading's place
			_, ok = document.Locate(demo(t), f.Path[:strings.LastIndexByte(f.Path, '.')])
		}
		require.True(t, ok, "%s is not in the document", f.Path)
	}
}

// An inspector keeps nothing of what it inspected.
func TestAgain(t *testing.T) {
	d, err := Read("engine.json", demo(t))
	require.NoError(t, err)
	in := d.Limits.Prepare()
	first, err := in.Inspect(&d)
	require.NoError(t, err)
	text, err := json.Marshal(first)
	require.NoError(t, err)
	for range 3 {
		again, err := in.Inspect(&d)
		require.NoError(t, err)
		same, err := json.Marshal(again)
		require.NoError(t, err)
		require.JSONEq(t, string(text), string(same))
	}
}

// From no readings at all comes the bench sheet, and nothing is decided.
func TestBlank(t *testing.T) {
	d, err := Read("engine.json", demo(t))
	require.NoError(t, err)
	empty := d.Limits.Blank(d.Engine)
	in := d.Limits.Prepare()
	r, err := in.Inspect(&empty)
	require.NoError(t, err)
	require.Empty(t, r.Findings)
	require.Greater(t, len(r.Missing), 350)
	require.Less(t, len(r.Missing), 700)
	for _, d := range r.Decisions {
		require.Equal(t, inspection.MeasureAgain, d.Action, d)
	}
	for i := range r.Missing[1:] {
		require.LessOrEqual(t, r.Missing[i].Step, r.Missing[i+1].Step)
	}
	text, err := Skeleton(&empty, r.Missing)
	require.NoError(t, err)
	again, err := Read("skeleton", text)
	require.NoError(t, err, "the skeleton is a document")
	same, err := in.Inspect(&again)
	require.NoError(t, err)
	require.Equal(t, r.Missing, same.Missing)
	for _, m := range r.Missing {
		_, ok := document.Locate(text, m.Path)
		require.True(t, ok, "the skeleton has no place for %s", m.Path)
	}

	nothing, err := in.Inspect(&Document{Schema: 1, Limits: d.Limits})
	require.NoError(t, err, "a document without any part's readings is as empty")
	require.Greater(t, len(nothing.Missing), 350)
}

// What is measured after the work is held to what was predicted before it.
func TestBuilt(t *testing.T) {
	var raw map[string]any
	require.NoError(t, json.Unmarshal(demo(t), &raw))
	bore := func(size string) map[string]any {
		level := map[string]any{"along": size, "across": size}
		return map[string]any{"oversize": "0.50 mm", "levels": []any{level, level, level, level, level}}
	}
	one, two := bore("86.508 mm"), bore("86.544 mm")
	one["cylinder"], two["cylinder"] = 1, 2
	raw["built"] = map[string]any{"cylinder": map[string]any{"schema": 1, "cylinders": []any{one, two}}}
	data, err := json.Marshal(raw)
	require.NoError(t, err)
	r := inspect(t, data)
	require.Equal(t, 1, r.Agreed)
	require.Len(t, r.Departed, 1)
	require.Equal(t, "cylinder 2", r.Departed[0].Where)
	require.NotEmpty(t, r.Unmeasured)
	require.NotEmpty(t, r.Findings, "the readings of before stay")
}

// An engine may bring some of its parts alone.
func TestParts(t *testing.T) {
	for _, part := range []string{"cylinder", "piston", "crank", "valvetrain"} {
		var raw map[string]map[string]json.RawMessage
		var whole map[string]json.RawMessage
		require.NoError(t, json.Unmarshal(demo(t), &whole))
		raw = map[string]map[string]json.RawMessage{}
		for _, side := range []string{"limits", "readings"} {
			var m map[string]json.RawMessage
			require.NoError(t, json.Unmarshal(whole[side], &m))
			raw[side] = map[string]json.RawMessage{part: m[part]}
			whole[side], _ = json.Marshal(raw[side])
		}
		data, err := json.Marshal(whole)
		require.NoError(t, err)
		r := inspect(t, data)
		require.NotEmpty(t, r.Findings, part)
	}
}

// What can't be is refused with its line and its path in the whole document.
func TestRefused(t *testing.T) {
	good := string(demo(t))
	for _, c := range []struct{ name, old, new, path string }{
		{"two cylinders with one number", `"cylinder": 3,`, `"cylinder": 2,`, "readings.cylinder.cylinders[2]"},
		{"cap on another housing", `{"main": 2, "cap": "2"`, `{"main": 2, "cap": "3"`, "readings.cylinder.mains[1]"},
		{"piston in another bore", `"mark": "2",`, `"mark": "4",`, "readings.piston.pistons[1]"},
		{"piston the wrong way round", `"mark": "3",
     "arrow": "front"`, `"mark": "3",
     "arrow": "rear"`, "readings.piston.pistons[2]"},
		{"rod with another's cap", `"rodMark": "2",
     "capMark": "2"`, `"rodMark": "2",
     "capMark": "1"`, "readings.crank.rods[1]"},
		{"valve in another guide", `"mark": "inlet 3"`, `"mark": "inlet 4"`, "readings.valvetrain.valves[2]"},
		{"negative size", `"endFloat": ["0.285 mm"]`, `"endFloat": ["-0.285 mm"]`, "readings.crank.thrust"},
		{"limits", `"mains": 5`, `"mains": -5`, "limits.cylinder"},
	} {
		t.Run(c.name, func(t *testing.T) {
			bad := []byte(strings.Replace(good, c.old, c.new, 1))
			require.False(t, bytes.Equal(bad, demo(t)))
			d, err := Read("engine.json", bad)
			if err == nil {
				_, err = d.Limits.Prepare().Inspect(&d)
				err = Locate("engine.json", bad, err)
			}
			require.Error(t, err)
			require.Contains(t, err.Error(), c.path)
			require.Regexp(t, `^engine\.json:\d+: `, err.Error())
		})
	}
}

func BenchmarkEngine(b *testing.B) {
	data := demo(b)
	d, err := Read("engine.json", data)
	require.NoError(b, err)
	in := d.Limits.Prepare()
	tally := NewTally()
	var line []byte
	for _, op := range []struct {
		name string
		run  func()
	}{
		{"read", func() { _, _ = Read("engine.json", data) }},
		{"prepare", func() { _ = d.Limits.Prepare() }},
		{"inspect", func() { _, _ = in.Inspect(&d) }},
		{"line", func() { line, _ = tally.Line(line[:0], data, nil) }},
	} {
		b.Run("lib=tenthou/op="+op.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				op.run()
			}
		})
	}
	b.Run("lib=tenthou/op=cylinder", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _, _ = in.cylinder.Outcome(d.Readings.Cylinder)
		}
	})
	b.Run("lib=tenthou/op=piston", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = in.piston.Inspect(d.Readings.Piston)
		}
	})
	b.Run("lib=tenthou/op=crank", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = in.crank.Inspect(d.Readings.Crank)
		}
	})
	b.Run("lib=tenthou/op=valvetrain", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = in.valvetrain.Inspect(d.Readings.Valvetrain)
		}
	})
}
