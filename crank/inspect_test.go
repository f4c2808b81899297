package crank

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// The documents are invented; expected numbers are worked by hand beside them.
func inspectText(t testing.TB, name string) string {
	data, err := os.ReadFile("testdata/inspect/" + name + ".json")
	require.NoError(t, err)
	return string(data)
}

func inspectLimits(t testing.TB) Limits {
	l, err := ReadLimits("limits.json", []byte(inspectText(t, "limits")))
	require.NoError(t, err)
	return l
}

func inspectReadings(t testing.TB) Readings {
	r, err := ReadReadings("readings.json", []byte(inspectText(t, "readings")))
	require.NoError(t, err)
	return r
}

// changed is a text with pieces of it exchanged, each of which must be there.
func changed(t testing.TB, text string, pairs ...string) string {
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, text, pairs[i])
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

// inspected is what comes of the demo documents with pieces of both exchanged.
func inspected(t testing.TB, limits, readings []string) inspection.Report {
	l, err := ReadLimits("limits.json", []byte(changed(t, inspectText(t, "limits"), limits...)))
	require.NoError(t, err)
	d, err := ReadReadings("readings.json", []byte(changed(t, inspectText(t, "readings"), readings...)))
	require.NoError(t, err)
	r, err := Inspect(&l, &d)
	require.NoError(t, err)
	inBenchOrder(t, &r)
	return r
}

func inBenchOrder(t testing.TB, r *inspection.Report) {
	t.Helper()
	step := func(a, b inspection.Step) int { return int(a) - int(b) }
	require.True(t, slices.IsSortedFunc(r.Findings, func(a, b inspection.Finding) int { return step(a.Step, b.Step) }))
	require.True(t, slices.IsSortedFunc(r.Decisions, func(a, b inspection.Decision) int { return step(a.Step, b.Step) }))
	require.True(t, slices.IsSortedFunc(r.Missing, func(a, b inspection.Missing) int { return step(a.Step, b.Step) }))
	require.True(t, slices.IsSortedFunc(r.Orders, func(a, b inspection.Order) int { return step(a.Step, b.Step) }))
	require.True(t, slices.IsSortedFunc(r.Predicted, func(a, b inspection.Finding) int { return step(a.Step, b.Step) }))
	for _, d := range r.Decisions {
		require.NotEmpty(t, d.Because, "%+v", d)
		if d.Action == inspection.MeasureAgain {
			require.NotEmpty(t, d.Settle, "%+v", d)
		}
	}
}

// decision is the one on a part; there must be one.
func decision(t testing.TB, r *inspection.Report, part, where string) inspection.Decision {
	t.Helper()
	for _, d := range r.Decisions {
		if d.Part == part && d.Where == where {
			return d
		}
	}
	require.Fail(t, "no decision", "%s, %s", part, where)
	return inspection.Decision{}
}

func predicted(t testing.TB, r *inspection.Report, measure, where string) *tolerance.Finding {
	t.Helper()
	for _, f := range r.Predicted {
		if f.Measure() == measure && f.Where() == where {
			return f.Length
		}
	}
	require.Fail(t, "not predicted", "%s, %s", measure, where)
	return nil
}

// The whole demo engine: one journal forces the crankpins' undersize, the mains run
// on, a rod is bent, a bolt has grown, a clearance can't be told.
func TestInspectEngine(t *testing.T) {
	r := inspected(t, nil, nil)
	require.Empty(t, r.Slips)
	require.Empty(t, r.Missing)
	require.Len(t, r.Findings, 84)
	for _, c := range []struct {
		part, where string
		action      inspection.Action
		size        string
		because     string
	}{
		{"rod bolts", "rod 1", inspection.ReUse, "", "wear limits"},
		{"rod bolts", "rod 2", inspection.Replace, "", "free length [62.158 mm, 62.164 mm]"},
		{"connecting rod", "rod 1", inspection.ReUse, "", "as new"},
		// The dials' 0.060 + 0.045 over 160 mm is 0.065625 over 100.
		{"connecting rod", "rod 3", inspection.Replace, "", "bend over 100 mm [0.063125 mm, 0.068125 mm]"},
		{"connecting rod", "rod 4", inspection.MeasureAgain, "", "side clearance [0.35 mm, 0.45 mm)"},
		{"main journals", "", inspection.ReUse, "", "run on"},
		{"main journals", "main 3", inspection.ReUse, "", "within the wear limits"},
		{"crankpins", "crankpin 2", inspection.ReconditionTo, "", "least [49.8565 mm, 49.8615 mm] at rear, in line with the throw"},
		// 49.98 to 50 less twice 0.126 to 0.13 less twice 0.01 is 49.70 to 49.728: less
		// than the least for 0.25 mm.
		{"crankpins", "", inspection.ReconditionTo, "0.50 mm undersize: 49.48–49.5 mm", "past the wear limit"},
		{"crankshaft", "", inspection.ReconditionTo, "0.50 mm undersize: 49.48–49.5 mm", "the crankpins decide"},
		{"main bearing shells", "", inspection.ReUse, "", ""},
		{"big-end shells", "rod 2", inspection.Replace, "", "too wide"},
		{"big-end shells", "", inspection.Replace, "0.50 mm", "ground"},
		{"thrust washers", "", inspection.Replace, "0.10 mm oversize in front, 0.10 mm oversize behind", "end float"},
		{"oil pump", "", inspection.CleanAndReUse, "", "as new"},
		{"relief valve spring", "", inspection.ReUse, "", "as new"},
	} {
		d := decision(t, &r, c.part, c.where)
		require.Equal(t, c.action, d.Action, "%+v", d)
		require.Equal(t, c.size, d.Size, "%+v", d)
		require.Contains(t, d.Because, c.because)
	}
	require.Equal(t, "crankpin 2", decision(t, &r, "crankpins", "").Governs)
	require.Equal(t, "rod 2, bolt 1", decision(t, &r, "rod bolts", "rod 2").Governs)

	var orders []string
	for _, o := range r.Orders {
		require.True(t, o.Sure)
		orders = append(orders, o.Text())
	}
	require.Equal(t, []string{
		"rod bolts (rod 2)", "connecting rods with caps (rod 3)", "pairs of big-end shells, 0.50 mm (rod 1, rod 2, rod 3, rod 4)",
		"thrust washers, 0.10 mm oversize",
	}, orders)
	require.Equal(t, 4, r.Orders[2].Count)
	require.Equal(t, 4, r.Orders[3].Count)

	// 53.003–53.011 less twice 1.730–1.735 less 49.48–49.50; rod 3 is a new one.
	f := predicted(t, &r, "oil clearance", "rod 1")
	require.Equal(t, journalAt("[0.033 mm, 0.067 mm]"), f.Least)
	require.Equal(t, journalAt("[0.037 mm, 0.071 mm]"), f.Greatest)
	require.Equal(t, tolerance.CantTell, f.Standing, "undecided is no pass")
	require.Equal(t, journalAt("[0.03 mm, 0.075 mm]"), predicted(t, &r, "oil clearance", "rod 3").Least)
	// 0.41 ±0.004, washers of 2.296 and 2.281 ±0.001 out, two of 2.41–2.43 in.
	require.Equal(t, journalAt("[0.121 mm, 0.173 mm]"), predicted(t, &r, "end float", "crankshaft").Least)
	require.Equal(t, journalAt("[49.48 mm, 49.5 mm]"), predicted(t, &r, "journal size", "crankpin 4").Least)
	require.Contains(t, strings.Join(r.Cautions, " "), "restore the fillets")
}

// What was built stands beside what was predicted, by measure and place.
func TestInspectBuilt(t *testing.T) {
	r := inspected(t, nil, nil)
	built := inspected(t, nil, []string{
		`"flange": "0.020 mm"}`, `"flange": "0.020 mm", "crankpins": "0.50 mm"}`,
		`["49.976 mm", "49.982 mm"]`, `["49.488 mm", "49.487 mm"]`, `["49.975 mm", "49.981 mm"]`, `["49.489 mm", "49.488 mm"]`,
		`["49.868 mm", "49.978 mm"]`, `["49.470 mm", "49.470 mm"]`, `["49.859 mm", "49.979 mm"]`, `["49.471 mm", "49.470 mm"]`,
		`["49.972 mm", "49.982 mm"]`, `["49.488 mm", "49.487 mm"]`, `["49.974 mm", "49.983 mm"]`, `["49.489 mm", "49.488 mm"]`,
		`["49.970 mm", "49.981 mm"]`, `["49.488 mm", "49.487 mm"]`, `["49.969 mm", "49.982 mm"]`, `["49.489 mm", "49.488 mm"]`,
		`"walls": [{"where": "rear, toward the mains", "heading": "180°", "wear": "0.128 ±0.002 mm"}, {"where": "rear, away from the mains", "heading": "0°", "wear": "0.004 ±0.002 mm"}]`, `"walls": []`,
		`"bore": ["50.037 mm"]`, `"bore": ["49.537 mm"]`, `"bore": ["50.039 mm"]`, `"bore": ["49.539 mm"]`,
		`"bore": ["50.036 mm"]`, `"bore": ["49.536 mm"]`, `"bore": ["50.038 mm"]`, `"bore": ["49.538 mm"]`, `"endFloat": ["0.41 mm"]`, `"endFloat": ["0.14 mm"]`,
	})
	departed, agree, open := inspection.Compared(r.Predicted, built.Findings)
	require.Empty(t, open)
	require.Equal(t, 8, agree)
	require.Len(t, departed, 1, "crankpin 2 was ground too small")
	require.Equal(t, "crankpin 2", departed[0].Where)
	require.Contains(t, decision(t, &built, "crankpins", "crankpin 2").Because, "wear limits", "the wear limit is moved with the undersize")
	require.Equal(t, inspection.ReUse, decision(t, &built, "crankpins", "crankpin 1").Action)
}

// An empty document gives the lines of a bench sheet and nothing else, each at a
// place that the blank document has or can have.
func TestInspectBlank(t *testing.T) {
	l := inspectLimits(t)
	blank := l.Blank()
	r, err := Inspect(&l, &blank)
	require.NoError(t, err)
	require.Empty(t, r.Findings)
	require.Empty(t, r.Decisions)
	require.Empty(t, r.Orders)
	require.Empty(t, r.Predicted)
	require.Empty(t, r.Cautions)
	inBenchOrder(t, &r)
	full := inspectReadings(t)
	whole, err := Inspect(&l, &full)
	require.NoError(t, err)
	require.Empty(t, whole.Missing)
	// 8 bolts; 4 rods × (2 dials, twist, side, 4 diameters); a crack test; 5 + 4
	// journals × 4; 3 run-outs and a flange; 5 + 4 bores; float and 4 washers; 3 of the
	// pump and 2 of its spring.
	require.Len(t, r.Missing, 8+4*8+1+9*4+4+9+5+5)
	first := r.Missing[0]
	require.Equal(t, inspection.Missing{Step: inspection.StepBolts, Path: "rods[0].bolts[0].free", Measure: "free length", Where: "rod 1, bolt 1", With: "micrometer", Limit: "wear limit max 62.15 mm"}, first)
	require.Contains(t, r.Missing, inspection.Missing{Step: inspection.StepCrank, Path: "mains[1].planes[1].sizes[0]", Measure: "diameter", Where: "main 2, rear, 0°", With: "micrometer 50–75 mm", Limit: "59.980–60.000 mm; wear limit min 59.950 mm"})
	require.ErrorIs(t, r.Complete(), inspection.ErrMissing)
	seen := map[string]bool{}
	for _, m := range r.Missing {
		require.False(t, seen[m.Path], m.Path)
		seen[m.Path] = true
	}
	// With no lists at all the same lines come, at the lists' paths.
	none, err := Inspect(&l, &Readings{Schema: 1})
	require.NoError(t, err)
	require.Len(t, none.Missing, len(r.Missing))
	require.Empty(t, none.Decisions)
}

// A reading that isn't there leaves its part open, and the set; nothing is made up.
func TestInspectHalfFilled(t *testing.T) {
	for _, c := range []struct{ old, new, part, where, path string }{
		{`["59.974 mm", "59.969 mm"]`, `["59.974 mm", ""]`, "main journals", "main 4", "mains[3].planes[0].sizes[1]"},
		{`{"at": "rear", "sizes": ["59.975 mm", "59.970 mm"]}`, ``, "main journals", "main 4", "mains[3].planes[0]"},
		{`"bore": ["60.035 mm"]`, `"bore": [""]`, "main bearing shells", "", "mainBearings[3].bore[0]"},
		{`, "runOut": "0.030 mm"`, ``, "main journals", "main 3", "mains[2].runOut"},
		{`"endFloat": ["0.41 mm"]`, `"endFloat": [""]`, "thrust washers", "", "thrust.endFloat[0]"},
		{`"rear": ["2.280 mm", "2.281 mm"]`, `"rear": ["2.280 mm"]`, "thrust washers", "", "thrust.rear[1]"},
		{`"right": "0.010 mm", "left": "-0.020 mm"`, `"right": "0.010 mm"`, "connecting rod", "rod 1", "rods[0].left"},
		{`"bigEnd": [{"at": "front", "sizes": ["53.009 mm", "53.005 mm"]}`, `"bigEnd": [{"at": "front", "sizes": ["53.009 mm", ""]}`, "connecting rod", "rod 1", "rods[0].bigEnd[0].sizes[1]"},
		{`"free": "47.0 mm", `, ``, "relief valve spring", "", "oilPump.free"},
		{`, "load": "65 ±0.5 N"`, ``, "relief valve spring", "", "oilPump.load"},
		{`"side": ["[0.05 mm, 0.06 mm)"]`, `"side": []`, "oil pump", "", "oilPump.side"},
		{`{"number": 2, "free": "62.110 mm"}`, `{"number": 2}`, "rod bolts", "rod 1", "rods[0].bolts[1].free"},
		{`, "flange": "0.020 mm"`, ``, "crankshaft", "", "shaft.flange"},
	} {
		new := c.new
		if c.new == "" && strings.HasPrefix(c.old, "{") {
			new = `{"at": "rear", "sizes": []}`
		}
		r := inspected(t, nil, []string{c.old, new})
		require.NotEmpty(t, r.Missing, c.path)
		require.True(t, slices.ContainsFunc(r.Missing, func(m inspection.Missing) bool {
			return strings.HasPrefix(m.Path, strings.TrimSuffix(c.path, "planes[0]"))
		}), "%s: %+v", c.path, r.Missing)
		d := decision(t, &r, c.part, c.where)
		if c.part == "crankshaft" || c.path == "thrust.rear[1]" {
			require.NotEqual(t, inspection.ReUse, d.Action)
			require.NotEqual(t, inspection.CleanAndReUse, d.Action)
			require.NotEmpty(t, d.Settle, "%+v", d)
			continue
		}
		require.Equal(t, inspection.MeasureAgain, d.Action, "%s: %+v", c.path, d)
	}
	// A journal that isn't in the document: the set isn't passed.
	l, d := inspectLimits(t), inspectReadings(t)
	d.Mains = d.Mains[:4]
	r, err := Inspect(&l, &d)
	require.NoError(t, err)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main journals", "").Action)
	require.Equal(t, "mains", r.Missing[0].Path)
	// Nor is the shaft, where no crankpin was read.
	d = inspectReadings(t)
	d.Crankpins = nil
	r, err = Inspect(&l, &d)
	require.NoError(t, err)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "crankshaft", "").Action)
}

// Condition overrules size.
func TestInspectCondition(t *testing.T) {
	// Cracked: whatever it measures, and new shells of the standard size with it.
	r := inspected(t, nil, []string{`"cracked": "no"`, `"cracked": "yes"`})
	for _, part := range []string{"crankshaft", "main journals", "crankpins"} {
		d := decision(t, &r, part, "")
		require.Equal(t, inspection.Replace, d.Action, part)
		require.Contains(t, d.Because, "cracked")
	}
	require.Equal(t, inspection.Replace, decision(t, &r, "main bearing shells", "").Action)
	var text []string
	for _, o := range r.Orders {
		text = append(text, o.Text())
	}
	require.Contains(t, text, "crankshaft")
	require.Contains(t, text, "pairs of main bearing shells, standard (main 1, main 2, main 3, main 4, main 5)")
	require.Contains(t, text, "pairs of big-end shells, standard (rod 1, rod 2, rod 3, rod 4)")
	d0 := decision(t, &r, "thrust washers", "")
	require.Equal(t, inspection.MeasureAgain, d0.Action, "the float is the old shaft's")
	require.Contains(t, d0.Settle, "the other crankshaft")
	require.NotContains(t, strings.Join(text, "\n"), "thrust washers")
	// Standard journals, 59.98–60, in the housings measured: 64.004 − 3.97 − 60.
	require.Equal(t, journalAt("[0.034 mm, 0.068 mm]"), predicted(t, &r, "oil clearance", "main 1").Least)

	// Not crack-tested: not passed and not machined, and the shells aren't bought yet.
	r = inspected(t, nil, []string{`"crackTested": "yes"`, `"crackTested": ""`})
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "crankshaft", "").Action)
	pins := decision(t, &r, "crankpins", "")
	require.Equal(t, inspection.MeasureAgain, pins.Action)
	require.Contains(t, pins.Because, "by size: 0.50 mm undersize")
	require.Contains(t, pins.Settle, "crack test")
	require.Equal(t, "shaft.condition.crackTested", r.Missing[0].Path)
	shells := slices.IndexFunc(r.Orders, func(o inspection.Order) bool { return strings.Contains(o.What, "big-end") })
	require.False(t, r.Orders[shells].Sure)
	require.False(t, r.Orders[len(r.Orders)-1].Sure, "nor the thrust washers")

	// A scored journal is worked though its size would do; a blued one replaces the shaft.
	r = inspected(t, nil, []string{`{"number": 3, "planes": [{"at": "front", "sizes": ["59.966`, `{"number": 3, "condition": {"scored": "yes"}, "planes": [{"at": "front", "sizes": ["59.966`})
	require.Equal(t, inspection.ReconditionSame, decision(t, &r, "main journals", "main 3").Action)
	d := decision(t, &r, "main journals", "")
	require.Equal(t, inspection.ReconditionSame, d.Action)
	require.Equal(t, "main 3", d.Governs)
	r = inspected(t, nil, []string{`{"number": 3, "planes": [{"at": "front", "sizes": ["59.966`, `{"number": 3, "condition": {"blued": "yes"}, "planes": [{"at": "front", "sizes": ["59.966`})
	require.Equal(t, inspection.Replace, decision(t, &r, "main journals", "").Action)
	require.Equal(t, inspection.Replace, decision(t, &r, "crankshaft", "").Action)

	// Scored shells are renewed, scored thrust washers too, and a cracked rod.
	r = inspected(t, nil, []string{
		`"capMark": "3", "housing"`, `"capMark": "3", "condition": {"scored": "yes"}, "housing"`,
		`"thrust": {"endFloat": ["0.41 mm"]`, `"thrust": {"condition": {"scored": "yes"}, "endFloat": ["0.20 mm"]`,
		`{"number": 1, "rodMark"`, `{"number": 1, "condition": {"cracked": "yes"}, "rodMark"`,
	})
	d = decision(t, &r, "main bearing shells", "")
	require.Equal(t, inspection.Replace, d.Action)
	require.Equal(t, "main 3", d.Governs)
	require.Equal(t, "standard", d.Size)
	require.Equal(t, inspection.Replace, decision(t, &r, "thrust washers", "").Action)
	require.Equal(t, inspection.Replace, decision(t, &r, "connecting rod", "rod 1").Action)
	// New shells of the standard size leave the clearance that they leave: 64.006 less
	// 3.96–3.97 less 59.961–59.968.
	require.Equal(t, "main 3", predicted(t, &r, "oil clearance", "main 3").Where)

	// Nothing was read of a part but that it is cracked.
	l := inspectLimits(t)
	one := Readings{Schema: 1, Shaft: ReadingsShaft{Condition: inspection.Condition{Cracked: inspection.Yes}}}
	r, err := Inspect(&l, &one)
	require.NoError(t, err)
	require.Equal(t, inspection.Replace, decision(t, &r, "crankshaft", "").Action)
	require.Len(t, r.Decisions, 1)
}

// What looks like a slip comes first, is left out of what follows, and passes
// nothing that rests on it.
func TestInspectSlips(t *testing.T) {
	// 59.48 for 59.98 is a turn of the thimble; 5.9987 a decimal place.
	for _, c := range []struct{ slip, text string }{{"59.488 mm", "one turn"}, {"5.998 mm", "decimal place"}} {
		r := inspected(t, []string{`"step": "0.001 mm"`, `"step": "0.0001 mm"`}, []string{`"59.988 mm"`, `"` + c.slip + `"`})
		require.Len(t, r.Slips, 1)
		require.Equal(t, "mains[0].planes[0].sizes[0]", r.Slips[0].Path)
		require.Equal(t, "main 1, front, 0°", r.Slips[0].What)
		require.Contains(t, r.Slips[0].Text, c.text)
		for _, where := range []string{"main 1", ""} {
			d := decision(t, &r, "main journals", where)
			require.Equal(t, inspection.MeasureAgain, d.Action)
			require.Equal(t, []string{"mains[0].planes[0].sizes[0]"}, d.Slips)
		}
		require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main bearing shells", "main 1").Action, "its clearance rests on it")
		require.Equal(t, inspection.ReUse, decision(t, &r, "main journals", "main 2").Action)
	}
	// A limit whose columns disagree: what passes by it is looked up first.
	r := inspected(t, []string{`"wearAlso": "min 2.3602 in"`, `"wearAlso": "min 2.3062 in"`}, nil)
	require.Equal(t, "limits.mains.size.wearAlso", r.Slips[0].Path)
	d := decision(t, &r, "main journals", "")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Equal(t, []string{"limits.mains.size.wearAlso"}, d.Slips)
	require.Contains(t, d.Because, "re-use")
	// Readings that contradict each other are no error of the document.
	r = inspected(t, nil, []string{`"bore": ["60.034 mm"]`, `"bore": ["59.950 mm"]`})
	require.Equal(t, "mainBearings[0]", r.Slips[0].Path)
	require.Contains(t, r.Slips[0].Text, "interference")
	d = decision(t, &r, "main bearing shells", "main 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.NotEmpty(t, d.Slips)
	// Two sizes of one journal, of which one is in another unit.
	l := inspectLimits(t)
	odd := Readings{Schema: 1, Mains: []ReadingsJournal{{Number: 1, Planes: []ReadingsPlane{{Sizes: []inspection.Reading{
		inspection.Read(tolerance.Exactly(59988 * units.Micrometre)), inspection.Read(tolerance.Exactly(2362 * units.Micrometre))}}}}}}
	r, err := Inspect(&l, &odd)
	require.NoError(t, err)
	require.Equal(t, "mains[0].planes", r.Slips[0].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main journals", "main 1").Action)
}
