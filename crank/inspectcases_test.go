package crank

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// inspectedDocs inspects two documents that are written here.
func inspectedDocs(t testing.TB, limits, readings string) inspection.Report {
	t.Helper()
	l, err := ReadLimits("limits.json", []byte(`{"schema": 1, `+limits+`}`))
	require.NoError(t, err)
	d, err := ReadReadings("readings.json", []byte(`{"schema": 1, `+readings+`}`))
	require.NoError(t, err)
	r, err := Inspect(&l, &d)
	require.NoError(t, err)
	inBenchOrder(t, &r)
	return r
}

// onePin is a crankpin of 50 mm with what is given of its limits and its sizes.
func onePin(t testing.TB, limits, readings string) inspection.Report {
	return inspectedDocs(t, `"layout": {"crankpins": 1, "planes": ["middle"], "pinDirections": ["0°"]}, `+limits, readings)
}

const pinSize = `"size": {"new": "49.980–50.000 mm", "wear": "min 49.950 mm"}`

func pinAt(size string) string {
	return `"crankpins": [{"number": 1, "planes": [{"sizes": ["` + size + `"]}]}]`
}

func TestInspectUndersize(t *testing.T) {
	shells := `"shells": [{"name": "standard", "undersize": "0 mm"}, {"name": "0.25 mm", "undersize": "0.25 mm", "journal": "49.735–49.750 mm"}]`
	for _, c := range []struct {
		name, limits, shaft, size string
		action                    inspection.Action
		decided, because, settle  string
	}{
		{"as it is", `"crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.960 mm", inspection.ReUse, "", "run on", ""},
		// 49.98–50 less e = 0.04–0.06 once or twice: 49.86–49.96, above 49.735.
		{"ground", `"crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.940 mm", inspection.ReconditionTo, "0.25 mm undersize: 49.735–49.75 mm", "too small", ""},
		// Diameters alone: 49.98–50 less 0.13–0.15, once or twice, is 49.68–49.87.
		{"which side", `"crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.850 mm", inspection.MeasureAgain, "", "too small", "dial the worn side"},
		{"none does", `"crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.600 mm", inspection.Replace, "", "no undersize", ""},
		{"weld", `"crankpins": {` + pinSize + `, ` + shells + `, "beyond": "repair"}`, ``, "49.600 mm", inspection.Repair, "", "no undersize", ""},
		{"no shells listed", `"crankpins": {` + pinSize + `}`, ``, "49.600 mm", inspection.MeasureAgain, "", "too small", "list in the limits"},
		{"nitrided", `"shaft": {"surface": "nitrided"}, "crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.940 mm", inspection.Replace, "", "not ground without the maker's own process", ""},
		{"nitrided, with a process", `"shaft": {"surface": "nitrided", "process": "sheet 4"}, "crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.940 mm", inspection.ReconditionTo, "0.25 mm undersize: 49.735–49.75 mm", "", ""},
		// A pin at its first undersize: 49.72 is below 49.735, above 49.70.
		{"undersize before", `"crankpins": {` + pinSize + `, ` + shells + `}`, `"shaft": {"crankpins": "0.25 mm"}, `, "49.720 mm", inspection.ReUse, "", "run on", ""},
		{"undersize before, worn out", `"crankpins": {` + pinSize + `, ` + shells + `}`, `"shaft": {"crankpins": "0.25 mm"}, `, "49.690 mm", inspection.Replace, "", "no undersize", ""},
		{"on the limit", `"instruments": {"crankpins": {"name": "m", "step": "0.01 mm"}}, "crankpins": {` + pinSize + `, ` + shells + `}`, ``, "49.950 mm", inspection.MeasureAgain, "", "can't tell", "measure"},
		{"a band that isn't printed", `"crankpins": {` + pinSize + `, "shells": [{"name": "half", "undersize": "0.5 mm"}]}`, ``, "49.940 mm", inspection.ReconditionTo, "half undersize: 49.48–49.5 mm", "", "look up the journal sizes"},
		{"case too thin", `"crankpins": {` + pinSize + `, ` + shells + `, "case": "[0.1 mm, 0.12 mm]", "plan": {"stock": "0 mm", "leastCase": "0.2 mm"}}`, ``, "49.940 mm", inspection.Replace, "", "no undersize", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := onePin(t, c.limits, c.shaft+pinAt(c.size))
			d := decision(t, &r, "crankpins", "")
			require.Equal(t, c.action, d.Action, "%+v", d)
			require.Equal(t, c.decided, d.Size)
			require.Contains(t, d.Because, c.because)
			require.Contains(t, d.Settle, c.settle)
			if c.action == inspection.Replace {
				require.Equal(t, inspection.Replace, decision(t, &r, "crankshaft", "").Action)
			}
		})
	}
	// What is left of the case: 0.8–1.0 less half of 49.98–50 less 49.75.
	r := onePin(t, `"crankpins": {`+pinSize+`, `+shells+`, "case": "[0.8 mm, 1 mm]", "plan": {"stock": "0 mm", "leastCase": "0.5 mm"}}`, pinAt("49.940 mm"))
	require.Equal(t, journalAt("[0.675 mm, 0.885 mm]"), predicted(t, &r, "hardened case left", "crankpin 1").Least)
	// Thin shells go on without grinding, and only where they are needed.
	r = inspectedDocs(t, `"layout": {"crankpins": 2, "rods": 2, "planes": ["middle"], "pinDirections": ["0°"]},
		"crankpins": {"size": {"new": "2.748–2.749 in"}, "shells": [{"name": "standard", "undersize": "0 in"}, {"name": ".002", "undersize": ".002 in", "asIs": "min 2.746 in, less than 2.748 in"}]},
		"bigEnds": {"oilClearance": {"new": ".001–.003 in"}, "wall": {"new": ".0600–.0602 in"}, "housing": {"new": "2.8700–2.8705 in"}, "method": "by the bore with the shells in place"}`,
		`"crankpins": [{"number": 1, "planes": [{"sizes": ["2.7485 in"]}]}, {"number": 2, "planes": [{"sizes": ["2.7475 in"]}]}]`)
	d := decision(t, &r, "crankpins", "")
	require.Equal(t, inspection.ReUse, d.Action)
	require.Equal(t, "shells: crankpin 2 .002", d.Size)
	require.Equal(t, "pairs of big-end shells, .002 (rod 2)", r.Orders[0].Text())
	// 2.8700–2.8705 less twice .0610–.0612 less 2.7475.
	require.Equal(t, journalAt("[0.0001 in, 0.001 in]"), predicted(t, &r, "oil clearance", "rod 2").Least)
	require.Len(t, r.Predicted, 1)
	// Centres moved: what that does to the stroke is said.
	r = onePin(t, `"crankpins": {`+pinSize+`, `+shells+`, "plan": {"centring": "moved to the worn journal", "stock": "0 mm"}}`,
		`"crankpins": [{"number": 1, "planes": [{"sizes": ["49.840 mm"]}], "walls": [{"where": "in", "heading": "180°", "wear": "0.15 mm"}, {"where": "out", "heading": "0°", "wear": "0 mm"}]}]`)
	require.Contains(t, decision(t, &r, "crankpins", "").Because, "stroke by 0.15 mm")
}

// Fillet, stroke, index: what grinding the size doesn't put right.
func TestInspectBeside(t *testing.T) {
	limits := `"crankpins": {"fillet": {"new": "3.0–3.5 mm"}, "stroke": {"new": "76.00 ±0.05 mm"}, "index": {"new": "-0.1–0.1°"}, ` + pinSize + `}`
	good := `"crankpins": [{"number": 1, "planes": [{"sizes": ["49.99 mm"]}], "fillet": "3.2 mm", "stroke": "76.01 mm", "index": "0.02°"}]`
	r := onePin(t, limits, good)
	require.Equal(t, inspection.ReUse, decision(t, &r, "crankpins", "").Action)
	require.Len(t, r.Findings, 4)
	for _, c := range []struct {
		old, new string
		action   inspection.Action
	}{
		{`"fillet": "3.2 mm"`, `"fillet": "2.5 mm"`, inspection.ReconditionSame}, {`"stroke": "76.01 mm"`, `"stroke": "76.2 mm"`, inspection.Replace},
		{`"index": "0.02°"`, `"index": "0.4°"`, inspection.Replace}, {`, "index": "0.02°"`, ``, inspection.MeasureAgain},
		{`, "fillet": "3.2 mm"`, ``, inspection.MeasureAgain}, {`, "stroke": "76.01 mm"`, ``, inspection.MeasureAgain},
	} {
		r := onePin(t, limits, changed(t, good, c.old, c.new))
		require.Equal(t, c.action, decision(t, &r, "crankpins", "").Action, c.new)
		require.Equal(t, c.action, decision(t, &r, "crankpins", "crankpin 1").Action, c.new)
	}
	// Without diameters they are judged all the same.
	r = onePin(t, `"crankpins": {"index": {"new": "-0.1–0.1°"}}`, `"crankpins": [{"number": 1, "index": "0.4°"}]`)
	require.Equal(t, inspection.Replace, decision(t, &r, "crankpins", "").Action)
	r = onePin(t, `"crankpins": {"stroke": {"new": "76.00 ±0.05 mm"}, "fillet": {"new": "3.0–3.5 mm"}}`, `"crankpins": [{"number": 1, "stroke": "76.2 mm", "fillet": "3.1 mm"}]`)
	require.Equal(t, inspection.Replace, decision(t, &r, "crankpins", "").Action)
	require.Len(t, r.Findings, 2)
}

// bentShaft is five mains dialled at 8 places on V-blocks under the ends; main 3 is
// bent by half of a run-out of twice 0.04 mm.
const bentLayout = `"layout": {"mains": 5, "planes": ["middle"], "mainDirections": ["0°"], "positions": ["0 mm", "100 mm", "200 mm", "300 mm", "400 mm"], "vBlocks": "90°", "dialPlaces": 8}`

func dialOf(swing string) string {
	all := map[string]string{
		"0":    `"0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm"`,
		"0.04": `"0.04 mm", "0.0283 mm", "0 mm", "-0.0283 mm", "-0.04 mm", "-0.0283 mm", "0 mm", "0.0283 mm"`,
		"0.01": `"0.01 mm", "0.0071 mm", "0 mm", "-0.0071 mm", "-0.01 mm", "-0.0071 mm", "0 mm", "0.0071 mm"`,
	}
	return all[swing]
}

func mainsWith(dials ...string) string {
	var b strings.Builder
	for i, d := range dials {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(`{"number": ` + string(rune('1'+i)) + `, "planes": [{"sizes": ["59.99 mm"]}]`)
		if d != "" {
			b.WriteString(`, "dial": [` + d + `]`)
		}
		b.WriteString("}")
	}
	return `"mains": [` + b.String() + `]`
}

func TestInspectBend(t *testing.T) {
	limits := bentLayout + `, "shaft": {"runOut": {"new": "max 0.05 mm"}, "bend": {"new": "max 0.02 mm"}, "neighbours": {"along": {"new": "max 0.05 mm"}, "rightEach": {"new": "max 0.05 mm"}}},
		"mains": {"size": {"new": "59.98–60.00 mm"}, "shells": [{"name": "standard", "undersize": "0 mm"}, {"name": "0.25 mm", "undersize": "0.25 mm", "journal": "59.73–59.75 mm"}]}`
	straight := mainsWith("", dialOf("0.01"), dialOf("0.01"), dialOf("0.01"), "")
	r := inspectedDocs(t, limits, straight)
	require.Equal(t, inspection.ReUse, decision(t, &r, "main journals", "").Action)
	require.Equal(t, inspection.CleanAndReUse, decision(t, &r, "crankshaft", "").Action)
	// Sizes of 5, run-outs and bends of 3, neighbours of 4 pairs.
	require.Len(t, r.Findings, 5+3+3+4)

	// A bend of 0.04: beyond its limit; grinding about the old axis takes it off. 59.98–60
	// less 0.08 and the diameters cleans up at 59.75.
	bent := mainsWith("", dialOf("0.01"), dialOf("0.04"), dialOf("0.01"), "")
	r = inspectedDocs(t, limits, bent)
	d := decision(t, &r, "main journals", "main 3")
	require.Equal(t, inspection.ReconditionTo, d.Action)
	require.Contains(t, d.Because, "run-out")
	require.Equal(t, "0.25 mm undersize: 59.73–59.75 mm", decision(t, &r, "main journals", "").Size)
	require.Equal(t, inspection.Repair, decision(t, &r, "crankshaft", "").Action, "the neighbours' rule is broken too: 0.08 less 0.02")
	require.Contains(t, decision(t, &r, "crankshaft", "").Because, "test it for cracks")
	r = inspectedDocs(t, strings.Replace(limits, `"shaft": {`, `"shaft": {"surface": "nitrided", `, 1), bent)
	require.Equal(t, inspection.Replace, decision(t, &r, "main journals", "").Action)
	require.Equal(t, inspection.Replace, decision(t, &r, "crankshaft", "").Action)

	// A main that wasn't dialled at every place: run-outs of the others, no bend.
	r = inspectedDocs(t, limits, mainsWith("", dialOf("0.01"), strings.Replace(dialOf("0.01"), `"0.01 mm"`, `""`, 1), dialOf("0.01"), ""))
	require.Len(t, r.Missing, 1)
	require.Equal(t, "mains[2].dial[0]", r.Missing[0].Path)
	require.Equal(t, "main 3, place 1", r.Missing[0].Where)
	require.Len(t, r.Findings, 5+2)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main journals", "").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "crankshaft", "").Action)

	// Between centres all are dialled; the dial's whole swing on blocks leaves the ends out.
	between := strings.Replace(limits, `, "vBlocks": "90°"`, ``, 1)
	r = inspectedDocs(t, between, mainsWith(dialOf("0"), dialOf("0.01"), dialOf("0.01"), dialOf("0.01"), dialOf("0")))
	require.Equal(t, inspection.ReUse, decision(t, &r, "main journals", "").Action)
	require.Empty(t, r.Missing)
	l, err := ReadLimits("x", []byte(`{"schema": 1, `+limits+`}`))
	require.NoError(t, err)
	blank := l.Blank()
	require.Len(t, blank.Mains[0].Dial, 8)
	for _, bad := range []string{`["0.01 ±0.001 mm"]`, `["11 m"]`, `["0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm", "0 mm"]`} {
		d, err := ReadReadings("x", []byte(`{"schema": 1, "mains": [{"number": 2, "dial": `+bad+`}]}`))
		require.NoError(t, err)
		_, err = Inspect(&l, &d)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, "mains[0].dial")
	}
}
