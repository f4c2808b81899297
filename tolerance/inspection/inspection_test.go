package inspection_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func bracket(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func printed(s string) tolerance.Printed {
	p, err := tolerance.ParsePrinted(s)
	if err != nil {
		panic(err)
	}
	return p
}

func reading(s string) (r inspection.Reading) {
	if err := r.UnmarshalText([]byte(s)); err != nil {
		panic(err)
	}
	return r
}

func TestWorst(t *testing.T) {
	d := func(a inspection.Action, where string) inspection.Decision {
		return inspection.Decision{Action: a, Where: where}
	}
	require.Zero(t, inspection.Worst())
	for _, c := range []struct {
		want string
		of   []inspection.Decision
	}{
		{"2", []inspection.Decision{d(inspection.ReUse, "1"), d(inspection.ReconditionTo, "2"), d(inspection.ReconditionTo, "3")}},
		{"2", []inspection.Decision{d(inspection.ReUse, "1"), d(inspection.MeasureAgain, "2"), d(inspection.CleanAndReUse, "3")}},
		{"3", []inspection.Decision{d(inspection.MeasureAgain, "1"), d(inspection.ReUse, "2"), d(inspection.Replace, "3")}},
		{"1", []inspection.Decision{d(inspection.MeasureAgain, "1"), d(inspection.MeasureAgain, "2")}},
		{"1", []inspection.Decision{d(inspection.ReUse, "1"), d(inspection.ReUse, "2")}},
	} {
		require.Equal(t, c.want, inspection.Worst(c.of...).Where)
	}
}

// A part's condition makes a decision worse and never better.
func TestOverrule(t *testing.T) {
	type care = inspection.Care
	type seen = inspection.Condition
	const yes, no = inspection.Yes, inspection.No
	for _, c := range []struct {
		name string
		care care
		seen seen
		size inspection.Action
		want inspection.Action
		say  string
	}{
		{"nothing seen", care{}, seen{}, inspection.ReUse, inspection.ReUse, "by size"},
		{"cracked", care{}, seen{Cracked: yes}, inspection.ReUse, inspection.Replace, "cracked"},
		{"cracked, unmeasured", care{CrackTest: true}, seen{Cracked: yes}, inspection.MeasureAgain, inspection.Replace, "cracked"},
		{"cracked, may be repaired", care{Cracked: inspection.Repair}, seen{Cracked: yes}, inspection.Replace, inspection.Repair, "cracked"},
		{"scored", care{}, seen{Scored: yes}, inspection.ReUse, inspection.ReconditionSame, "scored"},
		{"scored shells", care{Scored: inspection.Replace}, seen{Scored: yes}, inspection.ReUse, inspection.Replace, "scored"},
		{"scored, to be ground", care{}, seen{Scored: yes}, inspection.ReconditionTo, inspection.ReconditionTo, "by size"},
		{"scored, unmeasured", care{}, seen{Scored: yes}, inspection.MeasureAgain, inspection.MeasureAgain, "scored"},
		{"blued", care{}, seen{Blued: yes}, inspection.ReconditionTo, inspection.Replace, "hardness"},
		{"blued, unmeasured", care{}, seen{Blued: yes}, inspection.MeasureAgain, inspection.Replace, "hardness"},
		{"pitted", care{}, seen{Pitted: yes, Scored: no}, inspection.CleanAndReUse, inspection.ReconditionSame, "pitted"},
		{"untested", care{CrackTest: true}, seen{}, inspection.ReconditionTo, inspection.MeasureAgain, "recondition to size"},
		{"not tested", care{PressureTest: true}, seen{PressureTested: no}, inspection.ReUse, inspection.MeasureAgain, "re-use"},
		{"tested", care{CrackTest: true, PressureTest: true}, seen{CrackTested: yes, PressureTested: yes, Cracked: no}, inspection.ReUse, inspection.ReUse, "by size"},
		{"untested, replaced", care{CrackTest: true}, seen{}, inspection.Replace, inspection.Replace, "by size"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.seen.Overrule(c.care, inspection.Decision{Action: c.size, Because: "by size", Size: "+0.50 mm", Settle: "a gauge"})
			require.Equal(t, c.want, got.Action)
			require.Contains(t, got.Because, c.say)
			if got.Action != c.size {
				require.Empty(t, got.Size)
			}
			if got.Action == inspection.MeasureAgain {
				require.NotEmpty(t, got.Settle)
			}
		})
	}
	both := seen{}.Overrule(care{CrackTest: true, PressureTest: true}, inspection.Decision{Action: inspection.ReUse})
	require.Contains(t, both.Settle, "crack test")
	require.Contains(t, both.Settle, "pressure test")
}

func TestReading(t *testing.T) {
	var doc struct {
		Across inspection.Reading                      `json:"across,omitzero"`
		Along  inspection.Reading                      `json:"along,omitzero"`
		Load   inspection.ReadingOf[units.Force]       `json:"load,omitzero"`
		Free   inspection.ReadingOf[units.Temperature] `json:"free,omitzero"`
	}
	require.NoError(t, json.Unmarshal([]byte(`{"across": "86.012 ±0.002 mm", "along": "", "load": "200 N"}`), &doc))
	require.Equal(t, "[86.01 mm, 86.014 mm]", doc.Across.String())
	require.True(t, doc.Along.IsZero())
	require.Empty(t, doc.Along.String())
	require.False(t, doc.Load.IsZero())
	text, err := json.Marshal(doc)
	require.NoError(t, err)
	require.JSONEq(t, `{"across": "[86.01 mm, 86.014 mm]", "load": "200 N"}`, string(text))
	blank, err := doc.Along.MarshalText()
	require.NoError(t, err)
	require.Empty(t, blank)

	require.Error(t, json.Unmarshal([]byte(`{"across": "86.012"}`), &doc))
	require.Equal(t, "[86.01 mm, 86.014 mm]", doc.Across.String(), "a refused text changes nothing")

	two := units.MustParseLength("0.002 mm")
	exact, err := reading("86.012 mm").Within(two)
	require.NoError(t, err)
	require.Equal(t, inspection.Read(bracket("86.012 ±0.002 mm")), exact)
	own, err := reading("86.012 ±0.01 mm").Within(two)
	require.NoError(t, err)
	require.Equal(t, reading("86.012 ±0.01 mm"), own)
	none, err := inspection.Reading{}.Within(two)
	require.NoError(t, err)
	require.Zero(t, none)
	_, err = reading("86.012 mm").Within(-two)
	require.Error(t, err)

	require.Len(t, inspection.Taken(nil, exact, none, own), 2)
}

func TestProofread(t *testing.T) {
	for _, c := range []struct {
		name  string
		limit inspection.Limit
		path  string
		say   string
	}{
		{"agrees", inspection.Limit{New: printed("0.03–0.07 mm"), NewAlso: printed(".0012–.0028 in"), Wear: printed("max 0.15 mm"), WearAlso: printed("max .006 in")}, "", ""},
		{"one column", inspection.Limit{New: printed("0.03–0.07 mm")}, "", ""},
		// TM 9-2815-255-24 and TM 9-4310-397-14 print this pair.
		{"decimal place", inspection.Limit{Wear: printed("max 0.006 in"), WearAlso: printed("max 0.015 mm")}, "limits.x.wearAlso", "decimal"},
		{"new past worn", inspection.Limit{New: printed("0.03–0.07 mm"), Wear: printed("max 0.05 mm")}, "limits.x.wear", "wear"},
		{"no first", inspection.Limit{NewAlso: printed("max 0.1 mm")}, "limits.x.newAlso", "without a first"},
		{"forms differ", inspection.Limit{New: printed("0.03–0.07 mm"), NewAlso: printed("max .0028 in")}, "limits.x.newAlso", "form"},
		{"deviations apart", inspection.Limit{New: printed("73.00 +0.03/-0.01 mm"), NewAlso: printed("2.974 +.001/-.001 in")}, "limits.x.newAlso", "no size in common"},
		{"deviations agree", inspection.Limit{New: printed("73.00 +0.03/-0.01 mm"), NewAlso: printed("2.874 +.001/-.0004 in")}, "", ""},
		{"deviations past worn", inspection.Limit{New: printed("73.00 +0.03/-0.01 mm"), Wear: printed("max 73.01 mm")}, "limits.x.wear", "wear"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.limit.Proofread(nil, "limits.x", "ring side clearance")
			if c.path == "" {
				require.Empty(t, got)
				return
			}
			require.Len(t, got, 1)
			require.Equal(t, c.path, got[0].Path)
			require.Equal(t, "ring side clearance", got[0].What)
			require.Contains(t, strings.ToLower(got[0].Text), c.say)
		})
	}
	require.True(t, inspection.Limit{}.IsZero())
	l := inspection.Limit{New: printed("0.03–0.07 mm")}
	require.False(t, l.IsZero())
	require.Equal(t, tolerance.Spec{New: printed("0.03–0.07 mm").BandOf}, l.Spec())
}

func TestProofreadReadings(t *testing.T) {
	set := []inspection.Reading{reading("86.012 mm"), reading(""), reading("86.015 mm"), reading("8.6018 mm"), reading("86.02 mm")}
	paths := []string{"a", "b", "c", "d", "e"}
	got := inspection.ProofreadReadings(nil, paths, []string{"top", "", "middle", "lower", "bottom"}, set)
	require.Len(t, got, 1)
	require.Equal(t, "d", got[0].Path)
	require.Equal(t, "lower", got[0].What)
	require.Contains(t, got[0].Text, "decimal")
	bare := inspection.ProofreadReadings(nil, nil, nil, set)
	require.Len(t, bare, 1)
	require.Empty(t, bare[0].Path)
	require.Empty(t, inspection.ProofreadReadings(nil, paths, paths, set[:3]), "two readings have no neighbours")
	far := inspection.Read(tolerance.Exactly(units.Length(1 << 62)))
	require.Empty(t, inspection.ProofreadReadings(nil, paths, paths, []inspection.Reading{far, far, far}))
}

// A finding of each quantity says what tolerance says of it.
func TestFound(t *testing.T) {
	check := func(t *testing.T, f inspection.Finding, explain, text string) {
		t.Helper()
		require.Equal(t, "load", f.Measure())
		require.Equal(t, "valve 1", f.Where())
		require.Equal(t, tolerance.CantTell, f.Standing())
		require.NotEmpty(t, f.Settle())
		require.Equal(t, explain, f.Explain())
		require.Equal(t, text, f.String())
		require.Equal(t, inspection.StepSprings, f.Step)
		require.Equal(t, "springs[0].load", f.Path)
		one, err := json.Marshal(f)
		require.NoError(t, err)
		require.Equal(t, 1, strings.Count(string(one), `"measure"`))
	}
	try(t, check, units.Force(200*units.Newton))
	try(t, check, units.SpringRate(5*units.NewtonPerMillimetre))
	try(t, check, 5*units.Gram)
	try(t, check, 5*units.Kilopascal)
	try(t, check, 5*units.Degree)
	try(t, check, 5*units.CubicCentimetre)
	try(t, check, 5*units.Millimetre)
	warm, err := tolerance.Assess("warmth", "", tolerance.SpecOf[units.Temperature]{}, tolerance.Exactly(units.Temperature(0)))
	require.NoError(t, err)
	empty := inspection.Found(inspection.StepNone, "", warm)
	require.Empty(t, empty.Measure())
	require.Empty(t, empty.Explain())
	require.Empty(t, empty.String())
}

func try[Q units.Quantity](t *testing.T, check func(*testing.T, inspection.Finding, string, string), q Q) {
	t.Helper()
	f, err := tolerance.Assess("load", "valve 1", tolerance.SpecOf[Q]{}, tolerance.Exactly(q))
	require.NoError(t, err)
	check(t, inspection.Found(inspection.StepSprings, "springs[0].load", f), f.Explain(), f.String())
}

func found(t *testing.T, step inspection.Step, measure, where, spec string, stations ...string) inspection.Finding {
	t.Helper()
	var all []tolerance.Bracket
	for _, s := range stations {
		all = append(all, bracket(s))
	}
	f, err := tolerance.Assess(measure, where, tolerance.Spec{New: tolerance.MustParseBand(spec)}, all...)
	require.NoError(t, err)
	return inspection.Found(step, "", f)
}

func TestMerge(t *testing.T) {
	a := inspection.Report{
		Findings:  []inspection.Finding{found(t, inspection.StepCrank, "taper", "main 1", "max 0.01 mm", "0.02 mm"), found(t, inspection.StepCrank, "taper", "main 2", "max 0.01 mm", "0 mm")},
		Decisions: []inspection.Decision{{Step: inspection.StepCrank}}, Missing: []inspection.Missing{{Step: inspection.StepShells, Path: "shells[0]", Measure: "wall", Where: "main 1"}},
		Orders: []inspection.Order{{Step: inspection.StepShells, What: "main shells"}}, Cautions: []string{"lift with care", "eyes"},
		Slips: []inspection.Slip{{Path: "x"}}, Predicted: []inspection.Finding{found(t, inspection.StepAssembly, "oil clearance", "main 1", "max 0.1 mm", "0.05 mm")},
	}
	b := inspection.Report{
		Findings:  []inspection.Finding{found(t, inspection.StepBores, "taper", "cylinder 1", "max 0.01 mm", "0.005 mm")},
		Decisions: []inspection.Decision{{Step: inspection.StepBores}}, Missing: []inspection.Missing{{Step: inspection.StepBores}},
		Orders: []inspection.Order{{Step: inspection.StepPistons}}, Cautions: []string{"eyes"}, Slips: []inspection.Slip{{Path: "y"}},
	}
	m := inspection.Merge(a, b)
	require.Equal(t, "cylinder 1", m.Findings[0].Where())
	require.Equal(t, "main 1", m.Findings[1].Where(), "a step keeps its own order")
	require.Equal(t, "main 2", m.Findings[2].Where())
	require.Equal(t, inspection.StepBores, m.Decisions[0].Step)
	require.Equal(t, inspection.StepPistons, m.Orders[0].Step)
	require.Equal(t, []string{"lift with care", "eyes"}, m.Cautions)
	require.Len(t, m.Slips, 2)
	require.Equal(t, [5]int{0, 2, 0, 1, 0}, m.Count())

	err := m.Complete()
	require.ErrorIs(t, err, inspection.ErrMissing)
	require.Contains(t, err.Error(), "1 more")
	require.NoError(t, (&inspection.Report{}).Complete())
	m.Missing = m.Missing[1:]
	require.EqualError(t, m.Complete(), "inspection: shells[0]: wall, main 1 was not read")
}

func TestCompared(t *testing.T) {
	p := func(where string, v ...string) inspection.Finding {
		return found(t, inspection.StepAssembly, "oil clearance", where, "max 0.1 mm", v...)
	}
	force, err := tolerance.Assess("load", "valve 1", tolerance.SpecOf[units.Force]{}, tolerance.Exactly(units.Newton))
	require.NoError(t, err)
	load := inspection.Found(inspection.StepSprings, "", force)
	departed, agree, unmeasured := inspection.Compared(
		[]inspection.Finding{p("main 1", "[0.03 mm, 0.05 mm]"), p("main 2", "[0.03 mm, 0.05 mm]"), p("main 3", "[0.03 mm, 0.05 mm]"), load},
		[]inspection.Finding{p("main 2", "0.08 ±0.002 mm", "0.09 ±0.002 mm"), p("main 1", "0.045 ±0.002 mm"), load},
	)
	require.Equal(t, 1, agree)
	require.Len(t, unmeasured, 2)
	require.Equal(t, "main 3", unmeasured[0].Where())
	require.Len(t, departed, 1)
	if d := cmp.Diff(inspection.Departure{Measure: "oil clearance", Where: "main 2", Predicted: bracket("[0.03 mm, 0.05 mm]"),
		Built: bracket("[0.078 mm, 0.092 mm]"), By: bracket("[0.028 mm, 0.062 mm]")}, departed[0], cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b })); d != "" {
		t.Error(d)
	}
}

func TestErrors(t *testing.T) {
	require.NoError(t, inspection.At("a", nil))
	inner := errors.New("no size")
	err := inspection.At("cylinders[2]", inspection.At("levels[4]", inspection.At("across", inner)))
	require.EqualError(t, err, "cylinders[2].levels[4].across: no size")
	require.ErrorIs(t, err, inner)
	require.EqualError(t, inspection.At("cylinders", inspection.At("[2]", inner)), "cylinders[2]: no size")
	require.Equal(t, "cylinders[2]", inspection.Index("cylinders", 2))

	require.NoError(t, inspection.Matched("cap", "main 2", "", "2"))
	require.NoError(t, inspection.Matched("cap", "main 2", "2", "2"))
	err = inspection.Matched("cap", "main 2", "3", "2")
	require.ErrorIs(t, err, inspection.ErrMixUp)
	require.EqualError(t, err, `inspection: the cap marked "3" stands at main 2, where "2" belongs: matched parts keep their place`)
	require.Less(t, len(inspection.Matched("cap", strings.Repeat("m", 9999), strings.Repeat("3", 9999), "2").Error()), 400)
}

func TestWords(t *testing.T) {
	var a inspection.Action
	require.NoError(t, a.UnmarshalText([]byte("recondition to size")))
	require.Equal(t, inspection.ReconditionTo, a)
	err := a.UnmarshalText([]byte(strings.Repeat("x", 500)))
	require.ErrorIs(t, err, inspection.ErrInput)
	require.Less(t, len(err.Error()), 400)
	require.Contains(t, err.Error(), `"measure again"`)
	require.Equal(t, "measure again", inspection.Action(0).String())

	steps := inspection.Steps()
	require.Len(t, steps, 31, "the order has 31 steps")
	seen := map[string]bool{}
	for _, s := range steps {
		text, err := s.MarshalText()
		require.NoError(t, err)
		require.False(t, seen[string(text)], s)
		seen[string(text)] = true
		var back inspection.Step
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	for _, s := range []inspection.State{inspection.NotLooked, inspection.No, inspection.Yes} {
		text, err := s.MarshalText()
		require.NoError(t, err)
		var back inspection.State
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	text, err := inspection.Replace.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "replace", string(text))
	require.Equal(t, "pistons, +0.50 mm (cylinder 1, cylinder 2): not yet, a decision is open",
		inspection.Order{What: "pistons", Size: "+0.50 mm", For: []string{"cylinder 1", "cylinder 2"}}.Text())
	require.Equal(t, "thrust washers", inspection.Order{What: "thrust washers", Sure: true}.Text())
}
