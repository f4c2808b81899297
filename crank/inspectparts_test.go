package crank

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Shells by their walls, nip, spread and gauging strip.
func TestInspectShells(t *testing.T) {
	const layout = `"layout": {"mains": 1, "planes": ["middle"], "mainDirections": ["0°"]}, "mains": {"size": {"new": "59.98–60.00 mm"}}, `
	const main = `"mains": [{"number": 1, "planes": [{"sizes": ["59.99 mm"]}]}], `
	walls := layout + `"mainBearings": {"method": "by the shells' walls, before nip", "oilClearance": {"new": "0.030–0.060 mm"}, "wall": {"new": "1.980–1.990 mm"}, "variation": {"new": "max 0.005 mm"}, "housing": {"new": "64.000–64.015 mm"}, "spread": {"new": "min 0.3 mm"}, "gap": {"new": "0.05–0.12 mm"}, "places": 1}`
	good := main + `"mainBearings": [{"number": 1, "housing": ["64.004 mm"], "upper": {"walls": ["1.984 mm", "1.983 mm"], "width": "64.6 mm"}, "lower": {"walls": ["1.985 mm", "1.984 mm"], "width": "64.7 mm"}, "gap": "[0.06 mm, 0.08 mm)"}]`
	r := inspectedDocs(t, walls, good)
	require.Empty(t, r.Missing)
	require.Equal(t, inspection.ReUse, decision(t, &r, "main bearing shells", "").Action)
	// 64.004 less 1.984 and 1.985 less 59.99 at the least; two walls, two variations,
	// two spreads and the gap beside it, and the journal.
	require.Len(t, r.Findings, 1+1+2+2+2+1)
	for _, f := range r.Findings {
		if f.Measure() == "oil clearance" {
			require.Equal(t, journalAt("0.045 mm"), f.Length.Least)
			require.Equal(t, journalAt("0.047 mm"), f.Length.Greatest)
		}
	}
	for _, c := range []struct {
		old, new string
		action   inspection.Action
		because  string
	}{
		{`"1.984 mm", "1.983 mm"`, `"1.960 mm", "1.961 mm"`, inspection.Replace, "too wide"},
		{`"1.984 mm", "1.983 mm"`, `"1.9899 mm", "1.989 mm"`, inspection.ReUse, ""},
		{`"64.004 mm"`, `"63.980 mm"`, inspection.MeasureAgain, "too tight"},
		{`"1.984 mm", "1.983 mm"`, `"1.989 mm", "1.981 mm"`, inspection.Replace, "variation of the wall"},
		{`"gap": "[0.06 mm, 0.08 mm)"`, `"gap": "[0.15 mm, 0.2 mm)"`, inspection.Replace, "too much nip"},
		{`"gap": "[0.06 mm, 0.08 mm)"`, `"gap": "[0.01 mm, 0.02 mm)"`, inspection.Replace, "too little nip"},
		{`, "gap": "[0.06 mm, 0.08 mm)"`, ``, inspection.MeasureAgain, "not all of it"},
		{`"width": "64.7 mm"`, `"width": "64.0 mm"`, inspection.Replace, "lower: a shell that doesn't spring"},
		{`"housing": ["64.004 mm"], `, ``, inspection.MeasureAgain, "not all of it"},
		{`"housing": ["64.004 mm"]`, `"housing": ["64.004 mm"], "bore": ["60.040 mm"]`, inspection.ReUse, ""},
		{`"64.004 mm"`, `"60.0 mm"`, inspection.MeasureAgain, "slips"},
		{`"width": "64.7 mm"`, `"width": "64.7 mm", "walls": ["-2 mm"]`, 0, ""},
	} {
		if strings.Contains(c.new, "-2 mm") {
			continue
		}
		r := inspectedDocs(t, walls, changed(t, good, c.old, c.new))
		d := decision(t, &r, "main bearing shells", "main 1")
		require.Equal(t, c.action, d.Action, "%s: %+v", c.new, d)
		require.Contains(t, d.Because, c.because)
	}
	// A wall that is out is not said to be open because another measure is.
	r = inspectedDocs(t, walls, changed(t, good, `"1.984 mm", "1.983 mm"`, `"1.975 ±0.001 mm", "1.975 ±0.001 mm"`, `"gap": "[0.06 mm, 0.08 mm)"`, `"gap": "[0.10 mm, 0.15 mm)"`))
	require.Contains(t, decision(t, &r, "main bearing shells", "main 1").Because, "outside the limits: other shells")
	require.NotContains(t, decision(t, &r, "main bearing shells", "main 1").Because, "can't be told yet")
	// Without a housing that is measured or printed the spread can't be told.
	r = inspectedDocs(t, layout+`"mainBearings": {"spread": {"new": "min 0.3 mm"}}`, main+`"mainBearings": [{"number": 1, "upper": {"width": "64.6 mm"}, "lower": {"width": "64.7 mm"}}]`)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main bearing shells", "main 1").Action)
	require.Equal(t, "mainBearings[0].housing[0]", r.Missing[0].Path)
	// A clearance that two walls leave open asks for the bore.
	r = inspectedDocs(t, `"instruments": {"wall": "0.005 mm"}, `+walls, good)
	require.Contains(t, decision(t, &r, "main bearing shells", "main 1").Settle, "find out")
	r = inspectedDocs(t, strings.Replace(walls, `"wall": {"new": "1.980–1.990 mm"}, "variation": {"new": "max 0.005 mm"}, `, ``, 1), changed(t, good, `"1.984 mm", "1.983 mm"`, `"1.978 ±0.004 mm"`, `"1.985 mm", "1.984 mm"`, `"1.978 mm"`))
	require.Contains(t, decision(t, &r, "main bearing shells", "main 1").Settle, "tighten the cap on its shells and measure the bore")
	// Shells of an undersize are thicker by half of it.
	r = inspectedDocs(t, strings.Replace(walls, `"mains": {"size": {"new": "59.98–60.00 mm"}}`, `"mains": {"size": {"new": "59.98–60.00 mm"}, "shells": [{"name": "0.50 mm", "undersize": "0.50 mm"}]}`, 1),
		changed(t, strings.ReplaceAll(good, `"1.98`, `"2.23`), `"mains": [`, `"shaft": {"mains": "0.50 mm"}, "mains": [`, `"59.99 mm"`, `"59.49 mm"`))
	require.Equal(t, inspection.ReUse, decision(t, &r, "main bearing shells", "").Action)

	strip := layout + `"mainBearings": {"method": "by gauging strip", "oilClearance": {"new": "0.020–0.080 mm"}, "stripTaper": {"new": "max 0.030 mm"}, "strip": [
		{"width": "1.0 mm", "clearance": "0.076 mm"}, {"width": "1.5 mm", "clearance": "0.051 mm"}, {"width": "2.0 mm", "clearance": "0.038 mm"}, {"width": "3.0 mm", "clearance": "0.025 mm"}]}`
	laid := main + `"mainBearings": [{"number": 1, "strip": {"front": "1.5 mm", "middle": "1.5 mm", "rear": "2.0 mm"}}]`
	r = inspectedDocs(t, strip, laid)
	require.Equal(t, inspection.ReUse, decision(t, &r, "main bearing shells", "").Action)
	r = inspectedDocs(t, strip, changed(t, laid, `"rear": "2.0 mm"`, `"rear": "2.0 mm", "turned": true`))
	require.Contains(t, decision(t, &r, "main bearing shells", "").Settle, "lay a new strip")
	r = inspectedDocs(t, strip, changed(t, laid, `, "rear": "2.0 mm"`, ``))
	require.Equal(t, "mainBearings[0].strip.rear", r.Missing[0].Path)
	r = inspectedDocs(t, strip, changed(t, laid, `"rear": "2.0 mm"`, `"rear": "0.9 mm"`))
	require.NotEqual(t, inspection.ReUse, decision(t, &r, "main bearing shells", "").Action)
	// Renewed whatever they measure.
	r = inspectedDocs(t, strings.Replace(strip, `"method"`, `"renew": true, "method"`, 1), laid)
	require.Contains(t, decision(t, &r, "main bearing shells", "").Because, "whatever they measure")
	// Big ends by walls, whose housings are gauged with the rods.
	ends := `"layout": {"crankpins": 1, "rods": 1, "planes": ["middle"], "pinDirections": ["0°"]}, "crankpins": {"size": {"new": "49.98–50.00 mm"}}, "bigEnds": {"method": "by the shells' walls, before nip", "oilClearance": {"new": "0.030–0.060 mm"}}`
	r = inspectedDocs(t, ends, pinAt("49.99 mm")+`, "bigEnds": [{"number": 1, "upper": {"walls": ["1.48 mm"]}, "lower": {"walls": ["1.48 mm"]}}]`)
	require.Equal(t, "rods", r.Missing[0].Path)
	require.Equal(t, "rod 1, big end", r.Missing[0].Where)
	r = inspectedDocs(t, ends, pinAt("49.99 mm")+`, "rods": [{"number": 1, "bigEnd": [{"sizes": ["52.995 mm"]}]}], "bigEnds": [{"number": 1, "upper": {"walls": ["1.48 mm"]}, "lower": {"walls": ["1.48 mm"]}}]`)
	require.Equal(t, inspection.ReUse, decision(t, &r, "big-end shells", "").Action)
	r = inspectedDocs(t, ends+`, "rods": {"bigEnd": {"size": {"new": "52.99–53.00 mm"}}}`, pinAt("49.99 mm")+`, "bigEnds": [{"number": 1, "upper": {"walls": ["1.48 mm"]}, "lower": {"walls": ["1.48 mm"]}}]`)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "big-end shells", "").Action)
}

func TestInspectBoltsAndRods(t *testing.T) {
	yield := `"layout": {"mains": 1, "rods": 1}, "mainBolts": {"yield": true}, "rodBolts": {"stretch": {"new": "0.12–0.16 mm"}, "growth": {"wear": "max 0.03 mm"}}`
	l, err := ReadLimits("x", []byte(`{"schema": 1, `+yield+`}`))
	require.NoError(t, err)
	blank := l.Blank()
	r, err := Inspect(&l, &blank)
	require.NoError(t, err)
	require.Empty(t, r.Decisions)
	require.Len(t, r.Missing, 6)
	bolts := `"rods": [{"number": 1, "bolts": [{"number": 1, "asNew": "62.10 mm", "free": "62.11 mm", "tightened": "62.25 mm"}, {"number": 2, "asNew": "62.10 mm", "free": "62.11 mm", "tightened": "62.25 mm"}]}]`
	r = inspectedDocs(t, yield, bolts)
	d := decision(t, &r, "main cap bolts", "main 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "used once")
	require.Equal(t, inspection.ReUse, decision(t, &r, "rod bolts", "rod 1").Action)
	require.Equal(t, 2, r.Orders[0].Count)
	require.Contains(t, r.Cautions, "Bolts that were tightened to yield are used once.")
	// New ones are not used yet; a stretch that is out is tightened again; one that is
	// shorter tightened than free is a slip.
	r = inspectedDocs(t, yield, bolts+`, "mainBearings": [{"number": 1, "bolts": [{"number": 1, "new": true}, {"number": 2, "new": true}]}]`)
	require.Empty(t, r.Orders)
	r = inspectedDocs(t, yield, changed(t, bolts, `"62.25 mm"`, `"62.30 mm"`))
	d = decision(t, &r, "rod bolts", "rod 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "loosen the bolt")
	r = inspectedDocs(t, yield, changed(t, bolts, `"62.25 mm"`, `"62.05 mm"`))
	require.Equal(t, "rods[0].bolts[0]", r.Slips[0].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "rod bolts", "rod 1").Action)

	rods := `"layout": {"rods": 1, "crankpins": 1}, "rods": {"straighten": true, "bend": {"new": "max 0.05 mm"}, "twist": {"new": "max 0.10 mm"}, "centres": {"new": "133.05–133.15 mm"}, "master": "133.100 mm", "stroke": "76 mm",
		"bigEnd": {"ovality": {"new": "max 0.010 mm"}, "work": "recondition at the same size"}, "smallEnd": {"size": {"new": "20.000–20.010 mm"}, "taper": {"new": "max 0.005 mm"}, "work": "repair"}, "planes": ["front", "rear"], "directions": ["in line", "across"]}`
	rod := `"rods": [{"number": 1, "right": "0.01 mm", "left": "0.00 mm", "twist": "0.02 mm", "bigEnd": [{"sizes": ["53.00 mm", "53.00 mm"]}, {"sizes": ["53.00 mm", "53.00 mm"]}], "smallEnd": [{"sizes": ["20.005 mm", "20.005 mm"]}, {"sizes": ["20.005 mm", "20.004 mm"]}]}]`
	r = inspectedDocs(t, rods, rod)
	require.Equal(t, inspection.ReUse, decision(t, &r, "connecting rod", "rod 1").Action)
	for _, c := range []struct {
		old, new string
		action   inspection.Action
	}{
		{`"right": "0.01 mm"`, `"right": "0.09 mm"`, inspection.Repair},
		{`"twist": "0.02 mm"`, `"twist": "0.2 mm"`, inspection.Repair},
		{`"right": "0.01 mm", "left": "0.00 mm"`, `"right": "0.31 mm", "left": "0.30 mm"`, inspection.Replace},
		{`["53.00 mm", "53.00 mm"]`, `["53.02 mm", "53.00 mm"]`, inspection.ReconditionSame},
		{`["20.005 mm", "20.004 mm"]`, `["20.005 mm", "20.014 mm"]`, inspection.Repair},
		{`"twist": "0.02 mm", `, ``, inspection.MeasureAgain},
		{`"right": "0.01 mm", "left": "0.00 mm"`, `"right": "-97 mm", "left": "-97 mm"`, inspection.MeasureAgain},
	} {
		r := inspectedDocs(t, rods, changed(t, rod, c.old, c.new))
		require.Equal(t, c.action, decision(t, &r, "connecting rod", "rod 1").Action, c.new)
	}
	// A cracked cap's rod isn't straightened.
	r = inspectedDocs(t, strings.Replace(rods, `"straighten": true`, `"straighten": true, "crackedCap": true`, 1), changed(t, rod, `"right": "0.01 mm"`, `"right": "0.09 mm"`))
	require.Equal(t, inspection.Replace, decision(t, &r, "connecting rod", "rod 1").Action)
	// Not a rod in the document: its lines stand at the list.
	r = inspectedDocs(t, rods, `"engine": "x"`)
	require.Equal(t, "rods", r.Missing[0].Path)
	require.Len(t, r.Missing, 3+8)
}

func TestInspectThrust(t *testing.T) {
	limits := `"layout": {"mains": 3}, "thrust": {"main": 2, "endFloat": {"new": "0.10–0.25 mm", "wear": "max 0.35 mm"}, "halves": 1, "stock": [{"name": "standard", "thickness": "2.32 mm"}, {"name": "+0.1", "thickness": "2.42 mm"}]}`
	at := func(float string) string {
		return `"thrust": {"endFloat": ["` + float + `"], "front": ["2.30 mm"], "rear": ["2.30 mm"]}`
	}
	for _, c := range []struct {
		float  string
		action inspection.Action
		size   string
	}{
		{"0.20 mm", inspection.ReUse, ""}, {"0.30 mm", inspection.ReUse, ""},
		// 0.40 + 4.60: less 4.84 is 0.16, less 4.74 is 0.26, less 4.64 is 0.36.
		{"0.40 mm", inspection.Replace, "+0.1 in front, +0.1 behind"},
		{"0.34 ±0.02 mm", inspection.MeasureAgain, ""}, {"0.60 mm", inspection.Repair, ""},
		// 0.32 past, and 0.41 + 4.6 less 4.74 is 0.27.
		{"0.38 mm", inspection.Replace, "standard in front, +0.1 behind"},
	} {
		r := inspectedDocs(t, strings.Replace(limits, `"halves": 1`, `"wanted": "0.20 mm", "halves": 1`, 1), at(c.float))
		d := decision(t, &r, "thrust washers", "")
		if c.float == "0.38 mm" {
			// 0.14 with both oversize, 0.24 with one: 0.04 from 0.20 against 0.06.
			require.Contains(t, []string{"standard in front, +0.1 behind", "+0.1 in front, standard behind"}, d.Size)
			require.Len(t, r.Orders, 2)
			continue
		}
		require.Equal(t, c.action, d.Action, "%s: %+v", c.float, d)
		require.Equal(t, c.size, d.Size)
	}
	// No washers listed, or not measured: which ones isn't told.
	r := inspectedDocs(t, `"layout": {"mains": 3}, "thrust": {"endFloat": {"new": "0.10–0.25 mm"}, "halves": 1}`, at("0.40 mm"))
	require.Contains(t, decision(t, &r, "thrust washers", "").Settle, "list in the limits")
	require.False(t, r.Orders[0].Sure)
	r = inspectedDocs(t, `"layout": {"mains": 3}, "thrust": {"endFloat": {"new": "0.10–0.25 mm"}}`, `"thrust": {"endFloat": ["0.40 mm"]}`)
	require.Contains(t, decision(t, &r, "thrust washers", "").Settle, "measure the washers")
	// Halves that don't match.
	two := `"layout": {"mains": 3}, "thrust": {"endFloat": {"new": "0.10–0.25 mm"}, "halves": 2, "match": {"new": "max 0.01 mm"}}`
	r = inspectedDocs(t, two, `"thrust": {"endFloat": ["0.20 mm"], "front": ["2.30 mm", "2.32 mm"], "rear": ["2.30 mm", "2.30 mm"]}`)
	d := decision(t, &r, "thrust washers", "")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Size, "halves of one thickness")
	require.Equal(t, 4, r.Orders[0].Count)

	// The published four-step table, US Army TM 5-4210-233-14&P-2, p. 6-152: .020 in asks
	// for .005, .0165 lies in its gap, .040 asks for another shaft.
	table := `"layout": {"mains": 3}, "thrust": {"endFloat": {"wear": "max .016 in"}, "halves": 1, "table": {"source": "TM 5-4210-233-14&P-2", "total": ".244 in", "steps": [
		{"name": "standard", "float": "less than .016 in", "oversize": "0 in", "thickness": ".119–.122 in"},
		{"name": ".005", "float": ".017–.026 in", "oversize": ".005 in", "thickness": ".124–.127 in"},
		{"name": ".010", "float": ".027–.036 in", "oversize": ".010 in", "thickness": ".129–.132 in"},
		{"name": "replace the crankshaft", "float": "more than .036 in", "oversize": "0 in", "replace": true}]}}`
	over := func(float string) string {
		return `"thrust": {"endFloat": ["` + float + `"], "front": [".122 in"], "rear": [".122 in"]}`
	}
	r = inspectedDocs(t, table, over(".020 in"))
	d = decision(t, &r, "thrust washers", "")
	require.Equal(t, ".005", d.Size)
	require.Equal(t, "thrust washers, .005", r.Orders[0].Text())
	// .020 + .244 less twice .124–.127.
	require.Equal(t, journalAt("[0.01 in, 0.016 in]"), predicted(t, &r, "end float", "crankshaft").Least)
	r = inspectedDocs(t, table, over(".0165 in"))
	d = decision(t, &r, "thrust washers", "")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "standard or .005")
	require.Empty(t, r.Orders)
	r = inspectedDocs(t, table, over(".040 in"))
	require.Contains(t, decision(t, &r, "thrust washers", "").Because, "no washer for it")
	require.Empty(t, r.Orders)
}

func TestInspectBalance(t *testing.T) {
	limits := `"layout": {"crankpins": 1, "rods": 2, "rodPins": [1, 1]}, "balance": {"bigEnds": {"new": "max 2 g"}, "smallEnds": {"new": "max 2 g"}, "rods": {"new": "max 3 g"}, "bobweight": {"new": "1598–1602 g"}, "factor": "1/2", "oil": "4 g",
		"rotor": {"mass": "20 kg", "rpm": 6000, "gradeMMPS": 6.3, "bearingA": "0 mm", "bearingB": "400 mm", "massCentre": "200 mm"}}`
	// Rotating 2 × (450 + 40) + 4 = 984; reciprocating 2 × (180 + 350 + 60 + 26) = 1232:
	// 984 + 616 = 1600.
	rod := func(n, big string) string {
		return `{"number": ` + n + `, "masses": {"bigEnd": "` + big + `", "smallEnd": "180 g", "shells": "40 g", "piston": "350 g", "pin": "60 g", "rings": "26 g"}}`
	}
	// 1000 × 6.3 × 20 ÷ (6000π/30) is 200.5 g·mm, half in each plane.
	spun := `"balance": {"unbalance": [{"at": "0 mm", "amountGMM": 50, "errorGMM": 5}, {"at": "400 mm", "amountGMM": 60, "errorGMM": 5, "angle": "90°"}]}`
	good := `"rods": [` + rod("1", "450 g") + `, ` + rod("2", "450 g") + `], ` + spun
	r := inspectedDocs(t, limits, good)
	require.Equal(t, inspection.ReUse, decision(t, &r, "masses of the rods", "").Action)
	require.Equal(t, inspection.ReUse, decision(t, &r, "balance of the crankshaft", "").Action)
	require.Len(t, r.Findings, 4)
	last := r.Findings[3]
	require.Equal(t, "bobweight", last.Measure())
	require.Equal(t, tolerance.Exactly(1600*units.Gram), last.Mass.Least)
	r = inspectedDocs(t, limits, changed(t, good, `"450 g"`, `"455 g"`, `"amountGMM": 60`, `"amountGMM": 160`))
	d := decision(t, &r, "masses of the rods", "")
	require.Equal(t, inspection.ReconditionSame, d.Action)
	require.Contains(t, d.Because, "heavy ones")
	require.Equal(t, inspection.ReconditionSame, decision(t, &r, "balance of the crankshaft", "").Action)
	require.Contains(t, strings.Join(r.Cautions, " "), "parallel to the shaft")
	r = inspectedDocs(t, limits, changed(t, good, `"amountGMM": 60`, `"amountGMM": 100`))
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "balance of the crankshaft", "").Action)
	// One rod isn't weighed: no spread, no bobweight; no unbalance read.
	r = inspectedDocs(t, limits, `"rods": [`+rod("1", "450 g")+`]`)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "masses of the rods", "").Action)
	require.Equal(t, "rods", r.Missing[0].Path)
	require.Equal(t, "balance.unbalance", r.Missing[len(r.Missing)-1].Path)
	r = inspectedDocs(t, limits, `"rods": [`+rod("1", "450 g")+`, {"number": 2, "masses": {"bigEnd": "450 g"}}]`)
	require.Equal(t, "rods[1].masses.smallEnd", r.Missing[0].Path)
	l, err := ReadLimits("x", []byte(`{"schema": 1, `+limits+`}`))
	require.NoError(t, err)
	_, err = Inspect(&l, &Readings{Schema: 1, Balance: ReadingsBalance{Unbalance: []UnbalanceReading{{AmountGMM: -1}}}})
	require.ErrorContains(t, err, "balance.unbalance")
}

func TestInspectPump(t *testing.T) {
	limits := `"layout": {}, "oilPump": {"kind": "gear", "tip": {"new": "max 0.10 mm", "wear": "max 0.20 mm"}, "side": {"new": "0.02–0.08 mm", "wear": "max 0.12 mm"}, "backlash": {"new": "0.1–0.3 mm"}, "cover": {"wear": "max 0.05 mm"},
		"shaft": {"new": "max 0.06 mm"}, "plunger": {"new": "max 0.05 mm"}, "coverWear": true, "newWidth": "30.00–30.02 mm", "care": {"crackTest": true},
		"relief": {"free": {"new": "46–48 mm"}, "height": "35 mm", "load": {"new": "60–70 N"}, "installed": "40 mm", "seat": "12 mm", "pressure": {"new": "250–450 kPa"}}}`
	good := `"oilPump": {"condition": {"crackTested": "yes"}, "tip": ["0.08 mm"], "side": ["0.05 mm"], "backlash": ["0.2 mm"], "cover": ["0.01 mm"], "shaft": ["0.03 mm"], "plunger": ["0.02 mm"], "usedWidth": "29.98 mm", "free": "47 mm", "load": "65 N"}`
	r := inspectedDocs(t, limits, good)
	require.Empty(t, r.Missing)
	require.Equal(t, inspection.CleanAndReUse, decision(t, &r, "oil pump", "").Action)
	// 65 N over 12 mm is 5.4167 N/mm; at 40 mm 37.92 N on a seat of 113.1 mm²: 335 kPa.
	require.Equal(t, inspection.ReUse, decision(t, &r, "relief valve spring", "").Action)
	require.Len(t, r.Findings, 9)
	for _, c := range []struct {
		old, new, part string
		action         inspection.Action
	}{
		{`"tip": ["0.08 mm"]`, `"tip": ["0.3 mm"]`, "oil pump", inspection.Replace},
		{`"tip": ["0.08 mm"]`, `"tip": ["[0.15 mm, 0.25 mm)"]`, "oil pump", inspection.MeasureAgain},
		{`"side": ["0.05 mm"]`, `"side": ["0.005 mm"]`, "oil pump", inspection.MeasureAgain},
		{`"side": ["0.05 mm"]`, `"side": ["-0.05 mm"]`, "oil pump", inspection.MeasureAgain},
		{`"cover": ["0.01 mm"]`, `"cover": ["0.06 mm"]`, "oil pump", inspection.ReconditionSame},
		{`"shaft": ["0.03 mm"]`, `"shaft": ["0.1 mm"]`, "oil pump", inspection.Repair},
		// 0.13 and the cover's 0.01, less what new gears of 30.00–30.02 are wider: 0.10–0.12 is
		// past 0.08, and of gears worn to 29.92 0.04–0.06 isn't.
		{`"side": ["0.05 mm"]`, `"side": ["0.13 mm"]`, "oil pump", inspection.Repair},
		{`"side": ["0.05 mm"], "backlash": ["0.2 mm"], "cover": ["0.01 mm"], "shaft": ["0.03 mm"], "plunger": ["0.02 mm"], "usedWidth": "29.98 mm"`,
			`"side": ["0.13 mm"], "backlash": ["0.2 mm"], "cover": ["0.01 mm"], "shaft": ["0.03 mm"], "plunger": ["0.02 mm"], "usedWidth": "29.92 mm"`, "oil pump", inspection.Replace},
		{`"side": ["0.05 mm"]`, `"side": ["0.40 mm"]`, "oil pump", inspection.Repair},
		{`"crackTested": "yes"`, `"crackTested": "no"`, "oil pump", inspection.MeasureAgain},
		{`"free": "47 mm"`, `"free": "45 mm"`, "relief valve spring", inspection.Replace},
		{`"free": "47 mm"`, `"free": "34 mm"`, "relief valve spring", inspection.MeasureAgain},
		{`"load": "65 N"`, `"load": "40 N"`, "relief valve spring", inspection.Replace},
	} {
		r := inspectedDocs(t, limits, changed(t, good, c.old, c.new))
		require.Equal(t, c.action, decision(t, &r, c.part, "").Action, c.new)
	}
	// A free length alone.
	r = inspectedDocs(t, `"layout": {}, "oilPump": {"relief": {"free": {"new": "46–48 mm"}}}`, `"oilPump": {"free": "45 mm"}`)
	require.Equal(t, inspection.Replace, decision(t, &r, "relief valve spring", "").Action)
	require.Equal(t, "relief valve spring", r.Orders[0].What)
}
