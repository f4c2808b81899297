package valvetrain_test

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"

	. "github.com/tenthou/tenthou/valvetrain"
)

// readInspectDemo reads the invented engine of testdata/inspect.
func readInspectDemo(t testing.TB) (Limits, Readings) {
	t.Helper()
	data, err := os.ReadFile("testdata/inspect/limits.json")
	require.NoError(t, err)
	l, err := ReadLimits("limits.json", data)
	require.NoError(t, err)
	data, err = os.ReadFile("testdata/inspect/readings.json")
	require.NoError(t, err)
	r, err := ReadReadings("readings.json", data)
	require.NoError(t, err)
	return l, r
}

// taken is a reading from its text.
func taken(s string) (r inspection.Reading) {
	if err := r.UnmarshalText([]byte(s)); err != nil {
		panic(err)
	}
	return r
}

// decisionOn finds the one decision on a part at a place.
func decisionOn(t *testing.T, r inspection.Report, part, where string) inspection.Decision {
	t.Helper()
	i := slices.IndexFunc(r.Decisions, func(d inspection.Decision) bool { return d.Part == part && d.Where == where })
	require.GreaterOrEqual(t, i, 0, "%s %s", part, where)
	return r.Decisions[i]
}

func inspected(t *testing.T, l *Limits, r *Readings) inspection.Report {
	t.Helper()
	report, err := Inspect(l, r)
	require.NoError(t, err)
	return report
}

// exhaust is a place in the demo's lists, which have the inlet valves first.
func exhaust(n int) int { return 8 + n - 1 }

func TestInspect_order(t *testing.T) {
	l, r := readInspectDemo(t)
	report := inspected(t, &l, &r)
	require.NotEmpty(t, report.Findings)
	require.True(t, slices.IsSortedFunc(report.Findings, func(a, b inspection.Finding) int { return int(a.Step) - int(b.Step) }))
	require.True(t, slices.IsSortedFunc(report.Decisions, func(a, b inspection.Decision) int { return int(a.Step) - int(b.Step) }))
	require.True(t, slices.IsSortedFunc(report.Predicted, func(a, b inspection.Finding) int { return int(a.Step) - int(b.Step) }))
	require.True(t, slices.IsSortedFunc(report.Orders, func(a, b inspection.Order) int { return int(a.Step) - int(b.Step) }))
	for _, d := range report.Decisions {
		require.NotEmpty(t, d.Because)
		if d.Action == inspection.MeasureAgain {
			require.NotEmpty(t, d.Settle, "%v", d)
		}
	}
	for _, f := range report.Findings {
		require.NotEmpty(t, f.Path)
		require.NotEmpty(t, f.Where())
	}
	// The same from limits made ready, and twice from one inspector.
	x := l.Prepare()
	for range 2 {
		again, err := x.Inspect(&r)
		require.NoError(t, err)
		require.Equal(t, report, again)
	}
}

// What the demo holds, by hand from its documents: see the readings file for the
// sizes and the limits file for what they are judged by.
func TestInspect_demo(t *testing.T) {
	l, r := readInspectDemo(t)
	report := inspected(t, &l, &r)
	for _, c := range []struct {
		part, where string
		action      inspection.Action
		size, has   string
	}{
		{"camshaft", "inlet camshaft", inspection.ReUse, "", "within the limits"},
		{"camshaft", "exhaust camshaft", inspection.Replace, "", "exhaust lobe 5"},
		{"timing chain", "", inspection.ReUse, "", ""},
		{"valve guide", "inlet 1", inspection.ReUse, "", ""},
		{"valve guide", "inlet 5", inspection.Replace, "guide, inlet", "its stem is sound, so the guide is worn"},
		{"valve guide", "exhaust 3", inspection.ReconditionTo, "+0.10 mm stem", "stem-to-guide clearance"},
		{"valve guide", "exhaust 8", inspection.ReUse, "", "with a new valve's stem"},
		{"valve", "inlet 2", inspection.ReconditionSame, "", "run-out of the valve's face"},
		{"valve", "inlet 4", inspection.MeasureAgain, "", "looks like a slip"},
		{"valve", "exhaust 1", inspection.ReconditionSame, "", "pitted"},
		{"valve", "exhaust 3", inspection.Replace, "+0.10 mm stem", "its guide is reamed"},
		{"valve", "exhaust 6", inspection.Replace, "", "valve margin"},
		{"valve", "exhaust 8", inspection.Replace, "standard stem", "a valve with a new stem"},
		{"valve seat", "inlet 5", inspection.ReconditionSame, "", "a seat is cut from its guide"},
		{"valve seat", "exhaust 4", inspection.ReconditionSame, "", "seat width"},
		{"valve seat", "exhaust 5", inspection.ReUse, "", ""},
		{"spring", "exhaust 7", inspection.Replace, "", "free length"},
		{"spring", "exhaust 5", inspection.MeasureAgain, "", "still to be taken"},
		{"spring", "inlet 6", inspection.MeasureAgain, "", "don't tell"},
		{"valve clearance", "inlet 4", inspection.ReUse, "", ""},
		{"valve clearance", "inlet 3", inspection.ReconditionTo, "2.85 mm, to buy", "too large"},
		{"valve clearance", "exhaust 2", inspection.ReconditionTo, "2.70 mm from the drawer", "too small"},
		{"valve clearance", "inlet 7", inspection.MeasureAgain, "", "too small"},
		{"valve clearance", "exhaust 1", inspection.MeasureAgain, "", "to be worked"},
	} {
		d := decisionOn(t, report, c.part, c.where)
		require.Equal(t, c.action, d.Action, "%s %s: %s", c.part, c.where, d.Because)
		require.Equal(t, c.size, d.Size, "%s %s", c.part, c.where)
		require.Contains(t, d.Because, c.has)
	}
	require.Equal(t, []string{"valves[3].stem[1].across"}, decisionOn(t, report, "valve", "inlet 4").Slips)
	require.Len(t, report.Slips, 1)
	require.Contains(t, report.Slips[0].Text, "a decimal place")
	require.Equal(t, []inspection.Missing{{Step: inspection.StepSprings, Path: "springs[12].loads[0]", Measure: "load at 36 mm", Where: "exhaust 5", With: "spring tester", Limit: "wear limit min 180 N"}}, report.Missing)
	require.Contains(t, decisionOn(t, report, "valve seat", "exhaust 6").Settle, "prove the contact")
	require.Contains(t, decisionOn(t, report, "valve", "exhaust 6").Because, "sodium")

	var orders []string
	for _, o := range report.Orders {
		orders = append(orders, o.Text())
	}
	require.Contains(t, orders, "exhaust valve, standard stem (exhaust 6, exhaust 8)")
	require.Contains(t, orders, "exhaust valve, +0.10 mm stem (exhaust 3)")
	require.Contains(t, orders, "new guide, guide, inlet (inlet 5)")
	require.Contains(t, orders, "exhaust valve spring (exhaust 7)")
	require.Contains(t, orders, "camshaft, with its followers (exhaust camshaft)")
	require.Contains(t, orders, "valve shim, 2.85 mm (inlet 3): not yet, a decision is open")
	require.Len(t, report.Cautions, 4)
}

func TestInspect_blank(t *testing.T) {
	l, full := readInspectDemo(t)
	blank := l.Blank()
	report := inspected(t, &l, &blank)
	require.Empty(t, report.Findings)
	require.Empty(t, report.Decisions)
	require.Empty(t, report.Orders)
	require.Empty(t, report.Predicted)
	// Per engine: two camshafts of 5 journals and 8 lobes, run-out and end float;
	// one chain; inlet: rocking 8, stems 16, margin, face 16, width, run-out 16,
	// springs 24, clearance and shim 16; exhaust with 24 bores in place of rocking.
	require.Len(t, report.Missing, 2*(5+8+2)+1+(8+16+16+16+24+16)+(24+16+16+16+24+16))
	require.True(t, slices.IsSortedFunc(report.Missing, func(a, b inspection.Missing) int { return int(a.Step) - int(b.Step) }))
	require.Equal(t, inspection.Missing{Step: inspection.StepCamshaft, Path: "camshafts[0].journals[0].journal", Measure: "camshaft journal", Where: "inlet camshaft, journal 1", With: "micrometer", Limit: "22.959–22.980 mm; wear limit min 22.93 mm"}, report.Missing[0])
	// Nothing listed at all is as much missing, at the same paths.
	none := Readings{Schema: 1}
	require.Empty(t, cmp.Diff(report.Missing, inspected(t, &l, &none).Missing))
	// Half of it: no part with a reading missing is passed.
	full.Valves, full.Springs = full.Valves[:5], full.Springs[:3]
	half := inspected(t, &l, &full)
	require.NotEmpty(t, half.Findings)
	for _, d := range half.Decisions {
		if d.Part == "valve guide" && strings.HasPrefix(d.Where, "exhaust") {
			require.NotEqual(t, inspection.ReUse, d.Action, "%v: its stem is not there", d)
		}
	}
}

func TestInspect_mixUps(t *testing.T) {
	for name, c := range map[string]struct {
		edit func(*Readings)
		path string
		kind error
	}{
		"a valve of another place":    {func(r *Readings) { r.Valves[2].Mark = "inlet 4" }, "valves[2].mark", inspection.ErrMixUp},
		"a cap of another journal":    {func(r *Readings) { r.Camshafts[0].Journals[1].CapMark = "3" }, "camshafts[0].journals[1].capMark", inspection.ErrMixUp},
		"two at one place":            {func(r *Readings) { r.Valves[3].Place = r.Valves[2].Place; r.Valves[3].Mark = "" }, "valves[3].place", ErrInput},
		"two springs of one name":     {func(r *Readings) { r.Springs[3].Place = r.Springs[2].Place }, "springs[3].place", ErrInput},
		"a place that isn't there":    {func(r *Readings) { r.Guides[1].Place.Number = 9 }, "guides[1].place", ErrInput},
		"a camshaft that isn't there": {func(r *Readings) { r.Camshafts[0].Name = "third" }, "camshafts[0].name", ErrInput},
		"a camshaft twice":            {func(r *Readings) { r.Camshafts[1].Name = r.Camshafts[0].Name }, "camshafts[1].name", ErrInput},
		"a spring that isn't there":   {func(r *Readings) { r.Springs[0].Name = "inner" }, "springs[0].name", ErrInput},
		"a drive that isn't there":    {func(r *Readings) { r.Drive[0].Part = "belt" }, "drive[0].measure", ErrInput},
		"a drive twice":               {func(r *Readings) { r.Drive = append(r.Drive, r.Drive[0]) }, "drive[1].measure", ErrInput},
		"more levels than asked":      {func(r *Readings) { r.Guides[exhaust(1)].Levels = make([]ReadingsPair, 4) }, "guides[8].levels", ErrInput},
		"more stations than asked":    {func(r *Readings) { r.Valves[0].Stem = make([]ReadingsPair, 3) }, "valves[0].stem", ErrInput},
		"more loads than asked":       {func(r *Readings) { r.Springs[0].Loads = append(r.Springs[0].Loads, r.Springs[0].Loads[0]) }, "springs[0].loads", ErrInput},
		"more lobes than asked":       {func(r *Readings) { r.Camshafts[0].Exhaust = make([]ReadingsLobe, 1) }, "camshafts[0].exhaustLobes", ErrInput},
		"a negative margin":           {func(r *Readings) { r.Valves[0].Margin = taken("-0.5 mm") }, "valves[0].margin", ErrInput},
		"a reading without an end":    {func(r *Readings) { r.Valves[0].Stem[0].Across = taken("[5.9 mm, ∞)") }, "valves[0].stem[0].across", ErrInput},
		"a stem larger than its guide": {func(r *Readings) {
			r.Guides[exhaust(1)].Levels[0].Across = taken("5.2 mm")
			r.Guides[exhaust(1)].Levels[1].Across = taken("5.2 mm")
			r.Guides[exhaust(1)].Levels[2].Across = taken("5.2 mm")
		},
			"guides[8].levels", ErrInput},
		"blades that contradict": {func(r *Readings) {
			r.Clearances[0].Trials = []ReadingsTrial{{200 * units.Micrometre, feeler.Drag}, {180 * units.Micrometre, feeler.Refused}}
		}, "clearances[0].trials", feeler.ErrContradiction},
		"a blade that isn't there": {func(r *Readings) { r.Clearances[0].Trials[0].Blade = 190 * units.Micrometre }, "clearances[0].trials", feeler.ErrNoBlade},
		"another schema":           {func(r *Readings) { r.Schema = 2 }, "schema", ErrInput},
	} {
		t.Run(name, func(t *testing.T) {
			l, r := readInspectDemo(t)
			c.edit(&r)
			_, err := Inspect(&l, &r)
			require.ErrorIs(t, err, c.kind)
			var at *inspection.PathError
			require.True(t, errors.As(err, &at))
			require.Equal(t, c.path, at.Path)
		})
	}
	l, _ := readInspectDemo(t)
	_, err := Inspect(&l, nil)
	require.ErrorIs(t, err, ErrInput)
	_, err = Inspect(nil, &Readings{Schema: 1})
	require.ErrorIs(t, err, ErrInput)
	_, err = new(Inspector).Inspect(&Readings{Schema: 1})
	require.NoError(t, err)
}

func TestInspect_conditions(t *testing.T) {
	l, r := readInspectDemo(t)
	l.Inlet.Valve.Care.CrackTest, l.Inlet.Guide.Care.PressureTest = true, true
	l.Exhaust.Seat.Care.Cracked = inspection.Repair
	for i := range 8 {
		r.Valves[i].Condition.CrackTested = inspection.Yes
		r.Guides[i].Condition.PressureTested = inspection.Yes
	}
	r.Valves[0].Condition.CrackTested = inspection.NotLooked
	r.Valves[4].Condition = inspection.Condition{CrackTested: inspection.Yes, Cracked: inspection.Yes}
	r.Guides[1].Condition.PressureTested = inspection.No
	r.Seats[exhaust(5)].Condition.Cracked = inspection.Yes
	r.Springs[0].Condition.Pitted = inspection.Yes
	r.Springs[1].Condition.Blued = inspection.Yes
	r.Valves[3].Condition = inspection.Condition{CrackTested: inspection.Yes, Cracked: inspection.Yes} // with a slip in its stem
	report := inspected(t, &l, &r)
	d := decisionOn(t, report, "valve", "inlet 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "crack test")
	require.Equal(t, inspection.Replace, decisionOn(t, report, "valve", "inlet 5").Action)
	require.Equal(t, inspection.Replace, decisionOn(t, report, "valve", "inlet 4").Action)
	require.Contains(t, decisionOn(t, report, "valve guide", "inlet 2").Settle, "pressure test")
	require.Equal(t, inspection.Repair, decisionOn(t, report, "valve seat", "exhaust 5").Action)
	require.Equal(t, inspection.ReconditionSame, decisionOn(t, report, "spring", "inlet 1").Action)
	require.Equal(t, inspection.Replace, decisionOn(t, report, "spring", "inlet 2").Action)
	var tests []string
	for _, m := range report.Missing {
		if strings.HasSuffix(m.Measure, "test") {
			tests = append(tests, m.Path)
		}
	}
	require.Equal(t, []string{"guides[1].condition.pressureTested", "valves[0].condition.crackTested"}, tests)
}

// A limit whose second column lost a decimal place: listed, and named by every
// decision that rests on it; doubted where the columns decide otherwise.
func TestInspect_limitSlip(t *testing.T) {
	l, r := readInspectDemo(t)
	also, err := tolerance.ParsePrinted("min .2539 in") // for .2339 in: digits, or another edition
	require.NoError(t, err)
	l.Inlet.Valve.Stem.WearAlso = also
	report := inspected(t, &l, &r)
	require.Equal(t, "limits.inlet.valve.stem.wearAlso", report.Slips[0].Path)
	d := decisionOn(t, report, "valve", "inlet 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Equal(t, []string{"limits.inlet.valve.stem.wearAlso"}, d.Slips)
	require.Contains(t, d.Settle, "another edition")

	l.Inlet.Valve.Stem.WearAlso, err = tolerance.ParsePrinted("min .0234 in")
	require.NoError(t, err)
	d = decisionOn(t, inspected(t, &l, &r), "valve", "inlet 1")
	require.Equal(t, inspection.ReUse, d.Action)
	require.NotEmpty(t, d.Slips)
	require.Contains(t, d.Settle, "by either column it is the same")
}
