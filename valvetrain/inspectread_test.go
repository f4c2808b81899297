package valvetrain_test

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"

	. "github.com/tenthou/tenthou/valvetrain"
)

func TestInspect_badDocuments(t *testing.T) {
	limits, err := os.ReadFile("testdata/inspect/limits.json")
	require.NoError(t, err)
	readings, err := os.ReadFile("testdata/inspect/readings.json")
	require.NoError(t, err)
	for name, c := range map[string]struct {
		readings bool
		old, new string // what is changed
		want     []string
	}{
		"unknown field":            {false, `"oneWay": true`, `"oneways": true`, []string{"doc.json:17: inlet.valve.oneways: unknown field"}},
		"no unit":                  {false, `min 5.94 mm`, `min 5.94`, []string{"doc.json:18: inlet.valve.stem.wear"}},
		"wrong schema":             {false, `"schema": 1`, `"schema": 7`, []string{"doc.json:2: schema"}},
		"no cylinders":             {false, `"cylinders": 4`, `"cylinders": 0`, []string{"doc.json:3: cylinders", "from 1 to 24"}},
		"too many valves":          {false, `"cylinders": 4`, `"cylinders": 24`, []string{"doc.json:3: cylinders", "from 0 to 64"}},
		"limits that contradict":   {false, `"wear": "min 5.94 mm"`, `"wear": "min 5.99 mm"`, []string{"doc.json:18: inlet.valve.stem"}},
		"a level without a name":   {false, `"spring end", "middle"`, `"", "middle"`, []string{"exhaust.guide.levels[0]"}},
		"a level twice":            {false, `"spring end", "middle"`, `"middle", "middle"`, []string{"exhaust.guide.levels[1]"}},
		"a way that is none":       {false, `"way": "oversize stem"`, `"way": "keep"`, []string{"exhaust.guide.stock[0].way"}},
		"a stem of no stock":       {false, `"stem": "[6.055 mm, 6.070 mm]", `, ``, []string{"exhaust.guide.stock[0]"}},
		"a shim series that isn't": {false, `"step": "0.05 mm"`, `"step": "0.03 mm"`, []string{"shims.series", "even from"}},
		"a clearance of one side":  {false, `"new": "0.15–0.25 mm", "newAlso": ".006–.010 in"`, `"new": "max 0.25 mm"`, []string{"inlet.clearance.limit"}},
		"a blade that isn't":       {false, `["0.10 mm"`, `["0.10"`, []string{"blades[0]"}},
		"one camshaft twice":       {false, `"name": "exhaust camshaft"`, `"name": "inlet camshaft"`, []string{"camshafts[1].name"}},
		"a negative error":         {false, `"dialError": "0.005 mm",`, `"dialError": "-0.005 mm",`, []string{"inlet.guide.dialError"}},

		"truncated":          {true, "", "", []string{"doc.json:"}},
		"duplicate key":      {true, `"mark": "inlet 1"`, `"place": "inlet 1"`, []string{"valves[0].place"}},
		"not a number":       {true, `"engine": "demo, strip-down"`, `"engine": NaN`, []string{"doc.json:3:"}},
		"reading not a text": {true, `"reading": "152.7 mm"`, `"reading": 152.7`, []string{"drive[0].reading"}},
		"reading without":    {true, `"reading": "152.7 mm"`, `"reading": "152.7"`, []string{"drive[0].reading"}},
		"negative size":      {true, `"reading": "152.7 mm"`, `"reading": "-152.7 mm"`, []string{"drive[0].reading", "at least 0 mm"}},
		"half a reading":     {true, `"reading": "152.7 mm"`, `"reading": "[152 mm, ∞)"`, []string{"drive[0].reading", "with a least and a greatest"}},
		"two of one place":   {true, `"place": "inlet 2", "rocking"`, `"place": "inlet 1", "rocking"`, []string{"guides[1].place", "listed once"}},
		"no such place":      {true, `"place": "inlet 2", "rocking"`, `"place": "inlet two", "rocking"`, []string{"guides[1].place"}},
		"place nought":       {true, `"place": "inlet 2", "rocking"`, `"place": "inlet 0", "rocking"`, []string{"guides[1].place"}},
		"mixed up":           {true, `"mark": "inlet 2"`, `"mark": "exhaust 2"`, []string{"valves[1].mark", "keep their place"}},
		"a cap mixed up":     {true, `"capMark": "2"`, `"capMark": "4"`, []string{"camshafts[0].journals[1].capMark"}},
		"a blade of nothing": {true, `"blade": "0.18 mm"`, `"blade": "0 mm"`, []string{"trials[0].blade"}},
		"an unknown feel":    {true, `"feel": "drag"`, `"feel": "sticky"`, []string{"trials[0].feel"}},
	} {
		t.Run(name, func(t *testing.T) {
			data := limits
			if c.readings {
				data = readings
			}
			text := strings.Replace(string(data), c.old, c.new, 1)
			if c.old == "" {
				text = text[:len(text)/2]
			} else {
				require.NotEqual(t, string(data), text)
			}
			var err error
			if c.readings {
				_, err = ReadReadings("doc.json", []byte(text))
			} else {
				_, err = ReadLimits("doc.json", []byte(text))
			}
			require.Error(t, err)
			require.Regexp(t, `^doc\.json:\d+: `, err.Error())
			for _, want := range c.want {
				require.Contains(t, err.Error(), want)
			}
		})
	}
	_, err = ReadReadings("doc.json", []byte(`{"schema": 1, "clearances": [{"place": "inlet 1", "clearance": "0.2 mm", "trials": [{"blade": "0.2 mm", "feel": "free"}]}]}`))
	require.ErrorContains(t, err, "clearances[0].clearance")
}

// What encoding/json writes of either document is read back.
func TestInspect_roundTrip(t *testing.T) {
	l, r := readInspectDemo(t)
	data, err := json.Marshal(l)
	require.NoError(t, err)
	again, err := ReadLimits("", data)
	require.NoError(t, err)
	require.Equal(t, l, again)
	for _, r := range []Readings{r, l.Blank()} {
		data, err = json.Marshal(r)
		require.NoError(t, err)
		back, err := ReadReadings("", data)
		require.NoError(t, err)
		require.Equal(t, inspected(t, &l, &r), inspected(t, &l, &back))
	}
	for _, s := range []ClearanceSetBy{SetByOther, SetByShim, SetByScrew} {
		text, err := s.MarshalText()
		require.NoError(t, err)
		var back ClearanceSetBy
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, s, back)
	}
	require.ErrorIs(t, new(ClearanceSetBy).UnmarshalText([]byte("wedge")), ErrInput)
	for _, text := range []string{"", "inlet", "inlet ", "inlet 0", "inlet 01", "inlet x", "inlet 99999999999999999999", "3", "exhaust -1"} {
		require.ErrorIs(t, new(ValvePlace).UnmarshalText([]byte(text)), ErrInput, text)
	}
	require.Equal(t, Readings{Schema: 1}, (*Limits)(nil).Blank())
}

// Whatever a document holds: no panic, and no part is passed with a reading of
// its own missing.
func FuzzInspect(f *testing.F) {
	limits, err := os.ReadFile("testdata/inspect/limits.json")
	require.NoError(f, err)
	l, err := ReadLimits("limits.json", limits)
	require.NoError(f, err)
	readings, err := os.ReadFile("testdata/inspect/readings.json")
	require.NoError(f, err)
	f.Add(readings)
	f.Add([]byte(`{"schema": 1, "valves": [{"place": "exhaust 1", "margin": "1 mm"}], "springs": [{"place": "inlet 1", "loads": ["[0 N, 1 N]"]}]}`))
	f.Add([]byte(`{"schema": 1, "clearances": [{"place": "inlet 1", "clearance": "[0 mm, ∞)"}, {"place": "inlet 2", "clearance": "(0.1 mm, 0.2 mm)", "shim": "40 mm"}]}`))
	f.Add([]byte(`{"schema": 1, "guides": [{"place": "exhaust 1", "levels": [{"across": "9 m"}, {"across": "1 pm"}]}]}`))
	x := l.Prepare()
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := ReadReadings("fuzz.json", data)
		if err != nil {
			return
		}
		report, err := x.Inspect(&r)
		if err != nil {
			return
		}
		lists := map[string]string{"valve": "valves", "valve guide": "guides", "valve seat": "seats", "spring": "springs", "valve clearance": "clearances"}
		for _, d := range report.Decisions {
			if d.Action == inspection.MeasureAgain && d.Settle == "" {
				t.Fatalf("nothing would settle %v", d)
			}
			if d.Action != inspection.ReUse && d.Action != inspection.CleanAndReUse {
				continue
			}
			for _, m := range report.Missing {
				if strings.HasPrefix(m.Path, lists[d.Part]+"[") && strings.HasPrefix(m.Where+",", d.Where+",") {
					t.Fatalf("%v is passed with %v missing", d, m)
				}
			}
		}
	})
}

// Whatever limits hold that are read: their blank sheet is inspected without a
// panic, an error or anything decided.
func FuzzInspectLimits(f *testing.F) {
	f.Add([]byte(smallLimits)) // a long seed takes its time to be cut down
	for _, place := range []string{
		`"guide": {"levels": ["a"], "bore": {"new": "6.01–6.02 mm"}, "rocking": {"wear": "max 0.2 mm"}}`,
		`"seat": {"width": {"new": "1–2 mm"}, "cut": {"angle": "45°", "above": "15°", "below": "70°", "outer": "34 mm", "width": "1.4 mm"}}`,
		`"springs": [{"free": {"wear": "min 44 mm"}, "loads": [{"at": "36 mm", "limit": {"wear": "min 180 N"}}], "bind": {"wear": "min 1 mm"}, "lift": "9 mm"}]`,
		`"follower": {"clearance": {"wear": "max 0.1 mm"}}, "rocker": {"size": {"wear": "min 17 mm"}}`,
	} {
		f.Add([]byte(`{"schema": 1, "cylinders": 2, "exhaust": {"each": 1, ` + place + `}}`))
	}
	f.Add([]byte(`{"schema": 1, "cylinders": 1, "camshafts": [{"name": "c", "journals": 3, "inletLobes": 1, "runOut": {"wear": "max 0.03 mm"}, "inletLobe": {"lift": {"wear": "min 6 mm"}}}], "drive": [{"part": "p", "measure": "m", "limit": {"wear": "max 1 mm"}}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		l, err := ReadLimits("fuzz.json", data)
		if err != nil {
			return
		}
		blank := l.Blank()
		report, err := Inspect(&l, &blank)
		if err != nil {
			t.Fatal(err)
		}
		if len(report.Findings)+len(report.Decisions)+len(report.Orders) > 0 {
			t.Fatalf("of nothing read: %v", report)
		}
	})
}

// One inspector serves several goroutines, each with its own engine.
func TestInspector_together(t *testing.T) {
	l, r := readInspectDemo(t)
	x := l.Prepare()
	want, err := x.Inspect(&r)
	require.NoError(t, err)
	blank := l.Blank()
	done := make(chan inspection.Report)
	for range 4 {
		go func() {
			for range 20 {
				_, _ = x.Inspect(&blank)
				_, _ = x.Inspect(&Readings{})
			}
			report, _ := x.Inspect(&r)
			done <- report
		}()
	}
	for range 4 {
		require.Equal(t, want, <-done)
	}
}
