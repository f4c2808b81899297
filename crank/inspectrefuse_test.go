package crank

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// What can't be is an error with document, line and path.
func TestInspectReadRefuses(t *testing.T) {
	limits, readings := inspectText(t, "limits"), inspectText(t, "readings")
	read := func(what, text string) error {
		if what == "limits" {
			_, err := ReadLimits("x.json", []byte(text))
			return err
		}
		_, err := ReadReadings("x.json", []byte(text))
		return err
	}
	for _, c := range []struct{ what, old, new, where string }{
		{"limits", `"mains": 5, `, `"mains": 5, "maims": 1, `, "x.json:5: layout.maims: unknown field"},
		{"limits", `"schema": 1`, `"schema": 7`, "x.json:2:"},
		{"limits", `"dial": "0.002 mm"`, `"dial": "0.002"`, "x.json:11: instruments.dial"},
		{"limits", `"dial": "0.002 mm"`, `"dial": "-0.002 mm"`, "x.json:11: instruments.dial: crank: error -0.002 mm is not 0 mm or more"},
		{"limits", `"mains": 5, "crankpins": 4`, `"mains": 5, "crankpins": 3`, "x.json:4: layout: "},
		{"limits", `"supports": [1, 5]`, `"supports": [5, 1]`, "x.json:6: layout.supports"},
		{"limits", `"vBlocks": "90°"`, `"vBlocks": "9°"`, "layout.vBlocks"},
		{"limits", `"wear": "max 0.05 mm", "wearAlso": "max .0020 in"`, `"wear": "max -0.05 mm"`, "shaft.runOut"},
		{"limits", `{"new": "0.10–0.25 mm"`, `{"new": "-0.10–0.25 mm"`, "thrust.endFloat"},
		{"limits", `"journal": "59.730–59.750 mm"`, `"journal": "59.480–59.500 mm"`, "mains.shells[1]"},
		{"limits", `"name": "0.50 mm", "undersize": "0.50 mm", "journal": "59.480`, `"name": "0.25 mm", "undersize": "0.50 mm", "journal": "59.480`, "mains.shells[2]"},
		{"limits", `"stock": "0.01 mm", "leastSize": "59.20 mm"`, `"stock": "-0.01 mm"`, "mains.plan"},
		{"limits", `"span": "160 mm", `, ``, "rods: crank: span of the dials"},
		{"limits", `"kind": "rotor"`, `"kind": "gear"`, "oilPump.body"},
		{"limits", `"thickness": "[2.31 mm, 2.33 mm]"`, `"thickness": "[2.31 mm, ∞)"`, "thrust.stock[0].thickness"},
		{"limits", `"height": "35 mm", `, ``, "oilPump.relief"},
		{"readings", `"schema": 1`, `"schema": 0`, "x.json:2:"},
		{"readings", `"engine"`, `"motor"`, "x.json:3: motor: unknown field"},
		{"readings", `"59.988 mm"`, `"59.988"`, "x.json:6: mains[0].planes[0].sizes[0]"},
		{"readings", `"59.988 mm"`, `59.988`, "x.json:6: mains[0].planes[0].sizes[0]"},
		{"readings", `"59.988 mm"`, `"NaN mm"`, "x.json:6: mains[0].planes[0].sizes[0]"},
		{"readings", `"number": 2, "planes"`, `"number": 1, "planes"`, "x.json:7: mains[1].number"},
		{"readings", `"number": 2, "planes"`, `"number": 0, "planes"`, "x.json:7: mains[1].number"},
		{"readings", `"number": 2, "rodMark"`, `"number": 101, "rodMark"`, "rods[1].number"},
		{"readings", `"number": 2, "capMark"`, `"number": 1, "capMark"`, "mainBearings[1].number"},
		{"readings", `{"number": 2, "bore"`, `{"number": 1, "bore"`, "bigEnds[1].number"},
		{"readings", `"engine": "training engine 4 (invented)",`, `"engine": "a", "engine": "b",`, "x.json:3: engine: field given twice"},
		{"readings", readings[len(readings)/2:], ``, "cut short"},
	} {
		text := limits
		if c.what == "readings" {
			text = readings
		}
		err := read(c.what, changed(t, text, c.old, c.new))
		require.Error(t, err, "%s: %s", c.old, c.new)
		require.Contains(t, err.Error(), c.where)
		require.True(t, strings.HasPrefix(err.Error(), "x.json:"), err.Error())
	}
	var place *document.Error
	require.ErrorAs(t, read("readings", strings.Replace(readings, `"number": 2, "planes"`, `"number": 1, "planes"`, 1)), &place)
	require.ErrorIs(t, place, ErrInput)
}

// What only the limits tell is an error of Inspect, with its path.
func TestInspectRefuses(t *testing.T) {
	l := inspectLimits(t)
	for _, c := range []struct {
		old, new, path string
		kind           error
	}{
		{`"capMark": "2", "housing"`, `"capMark": "3", "housing"`, "mainBearings[1].capMark", inspection.ErrMixUp},
		{`"rodMark": "2", "capMark": "2"`, `"rodMark": "2", "capMark": "1"`, "rods[1].capMark", inspection.ErrMixUp},
		{`"rodMark": "2", "capMark": "2"`, `"rodMark": "1", "capMark": "1"`, "rods[1].rodMark", ErrInput},
		{`{"number": 5, "planes"`, `{"number": 6, "planes"`, "mains[4].number", ErrInput},
		{`{"number": 4, "bore"`, `{"number": 5, "bore"`, "bigEnds[3].number", ErrInput},
		{`{"number": 5, "capMark": "5"`, `{"number": 6, "capMark": "6"`, "mainBearings[4].number", ErrInput},
		{`{"number": 4, "rodMark": "4"`, `{"number": 7, "rodMark": "4"`, "rods[3].number", ErrInput},
		{`"59.988 mm"`, `"59.9885 mm"`, "mains[0].planes[0].sizes[0]", nil},
		{`"59.988 mm"`, `"-59.988 mm"`, "mains[0].planes[0].sizes[0]", ErrInput},
		{`"59.988 mm"`, `"59.988 ±0.002 mm"`, "mains[0].planes[0].sizes[0]", ErrInput},
		{`{"at": "front", "sizes": ["59.988`, `{"at": "rear", "sizes": ["59.988`, "mains[0].planes[0].at", ErrInput},
		{`["59.988 mm", "59.985 mm"]`, `["59.988 mm", "59.985 mm", "59.985 mm"]`, "mains[0].planes[0].sizes", ErrInput},
		{`"planes": [{"at": "front", "sizes": ["59.988`, `"planes": [{"sizes": []}, {"sizes": []}, {"sizes": ["59.988`, "mains[0].planes", ErrInput},
		{`"runOut": "0.030 mm"`, `"runOut": "-0.030 mm"`, "mains[2].runOut", ErrInput},
		{`"runOut": "0.030 mm"`, `"dial": ["0.030 mm"]`, "mains[2].dial", ErrInput},
		{`"runOut": "0.030 mm"`, `"fillet": "3 mm"`, "mains[2].fillet", ErrInput},
		{`"runOut": "0.030 mm"`, `"fillet": "-3 mm"`, "mains[2].fillet", ErrInput},
		{`"runOut": "0.030 mm"`, `"stroke": "-3 mm"`, "mains[2].stroke", ErrInput},
		{`"runOut": "0.030 mm"`, `"stroke": "76 mm"`, "mains[2].stroke", ErrInput},
		{`"runOut": "0.030 mm"`, `"index": "400°"`, "mains[2].index", ErrInput},
		{`"runOut": "0.030 mm"`, `"index": "0.1°"`, "mains[2].index", ErrInput},
		{`"walls": [`, `"runOut": "0.01 mm", "walls": [`, "crankpins[1].runOut", ErrInput},
		{`"flange": "0.020 mm"`, `"flange": "(-∞, 0.02 mm]"`, "shaft.flange", ErrInput},
		{`"flange": "0.020 mm"`, `"nose": "0.02 mm"`, "shaft.nose", ErrInput},
		{`"flange": "0.020 mm"`, `"mains": "0.75 mm"`, "shaft.mains", ErrInput},
		{`"bore": ["60.034 mm"]`, `"bore": ["0 mm"]`, "mainBearings[0].bore[0]", ErrInput},
		{`"bore": ["60.034 mm"]`, `"gap": "0.1 mm"`, "mainBearings[0].gap", ErrInput},
		{`"bore": ["60.034 mm"]`, `"upper": {"walls": ["2 mm"]}`, "mainBearings[0].upper.walls", ErrInput},
		{`"bore": ["60.034 mm"]`, `"lower": {"walls": ["2 mm"]}`, "mainBearings[0].lower.walls", ErrInput},
		{`"bore": ["60.034 mm"]`, `"upper": {"width": "64 mm"}`, "mainBearings[0].upper.width", ErrInput},
		{`"bore": ["60.034 mm"]`, `"lower": {"width": "64 mm"}`, "mainBearings[0].lower.width", ErrInput},
		{`"bore": ["60.034 mm"]`, `"strip": {"front": "1 mm"}`, "mainBearings[0].strip", ErrInput},
		{`"bore": ["60.034 mm"]`, `"bolts": [{"number": 1, "free": "80 mm"}]`, "mainBearings[0].bolts", ErrInput},
		{`"bore": ["60.034 mm"]`, `"bolts": [{"number": 3}]`, "mainBearings[0].bolts[0].number", ErrInput},
		{`"bore": ["50.037 mm"]`, `"housing": ["53 mm"]`, "bigEnds[0].housing", ErrInput},
		{`"bore": ["50.037 mm"]`, `"bolts": [{"number": 1}]`, "bigEnds[0].bolts", ErrInput},
		{`"twist": "0.020 mm"`, `"twist": "-0.020 mm"`, "rods[0].twist", ErrInput},
		{`"left": "-0.020 mm"`, `"left": "11 m"`, "rods[0].left", ErrInput},
		{`"side": ["[0.20 mm, 0.25 mm)"]`, `"side": ["[-0.20 mm, 0.25 mm)"]`, "rods[0].side[0]", ErrInput},
		{`{"at": "front", "sizes": ["53.009`, `{"at": "top", "sizes": ["53.009`, "rods[0].bigEnd[0].at", ErrInput},
		{`["53.009 mm", "53.005 mm"]`, `["53.009 mm", "0 mm"]`, "rods[0].bigEnd[0].sizes[1]", ErrInput},
		{`"bolts": [{"number": 1, "free": "62.108 mm"}`, `"smallEnd": [{"sizes": ["20 mm"]}], "bolts": [{"number": 1, "free": "62.108 mm"}`, "rods[0].smallEnd", ErrInput},
		{`"bolts": [{"number": 1, "free": "62.108 mm"}`, `"masses": {"bigEnd": "400 g"}, "bolts": [{"number": 1, "free": "62.108 mm"}`, "rods[0].masses", ErrInput},
		{`"bolts": [{"number": 1, "free": "62.108 mm"}`, `"masses": {"bigEnd": "0 g"}, "bolts": [{"number": 1, "free": "62.108 mm"}`, "rods[0].masses.bigEnd", ErrInput},
		{`{"number": 2, "free": "62.110 mm"}`, `{"number": 1, "free": "62.110 mm"}`, "rods[0].bolts[1].number", ErrInput},
		{`{"number": 2, "free": "62.110 mm"}`, `{"number": 2, "free": "-62.110 mm"}`, "rods[0].bolts[1].free", ErrInput},
		{`"endFloat": ["0.41 mm"]`, `"endFloat": ["-0.41 mm"]`, "thrust.endFloat[0]", ErrInput},
		{`"front": ["2.295 mm", "2.296 mm"]`, `"front": ["2.295 mm", "2.296 mm", "2.3 mm"]`, "thrust.front", ErrInput},
		{`"front": ["2.295 mm", "2.296 mm"]`, `"front": ["2.295 mm", "0 mm"]`, "thrust.front[1]", ErrInput},
		{`"tip": ["[0.08 mm, 0.10 mm)"]`, `"tip": ["[-0.08 mm, 0.10 mm)"]`, "oilPump.tip[0]", ErrInput},
		{`"tip": ["[0.08 mm, 0.10 mm)"]`, `"backlash": ["0.1 mm"]`, "oilPump.backlash", ErrInput},
		{`"tip": ["[0.08 mm, 0.10 mm)"]`, `"usedWidth": "30 mm"`, "oilPump.usedWidth", ErrInput},
		{`"load": "65 ±0.5 N"`, `"load": "-65 N"`, "oilPump.load", ErrInput},
		{`"oilPump": {`, `"balance": {"unbalance": [{"at": "0 mm", "amountGMM": 1, "errorGMM": 0}]}, "oilPump": {`, "balance.unbalance", ErrInput},
	} {
		d, err := ReadReadings("x.json", []byte(changed(t, inspectText(t, "readings"), c.old, c.new)))
		require.NoError(t, err, c.new)
		_, err = Inspect(&l, &d)
		var at *inspection.PathError
		require.ErrorAs(t, err, &at, c.new)
		require.Equal(t, c.path, at.Path, err)
		if c.kind != nil {
			require.ErrorIs(t, err, c.kind)
		}
		require.NotContains(t, err.Error(), "crank: crank:")
	}
	_, err := Inspect(&l, &Readings{})
	require.ErrorContains(t, err, "schema")
	_, err = Inspect(&Limits{}, &Readings{Schema: 1})
	require.ErrorContains(t, err, "schema")
}
