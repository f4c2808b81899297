package valvetrain_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"

	. "github.com/tenthou/tenthou/valvetrain"
)

// soundWhole is an engine of testdata/inspect/whole.json, read in full, with
// nothing wrong.
func soundWhole(t *testing.T) (Limits, Readings) {
	t.Helper()
	data, err := os.ReadFile("testdata/inspect/whole.json")
	require.NoError(t, err)
	l, err := ReadLimits("whole.json", data)
	require.NoError(t, err)
	r := l.Blank()
	for i := range r.Guides {
		g, v, s := &r.Guides[i], &r.Valves[i], &r.Seats[i]
		for j := range 3 {
			g.Levels[j] = ReadingsPair{taken("8.010 mm"), taken("8.012 mm")}
			v.Stem[j] = ReadingsPair{taken("7.970 mm"), taken("7.971 mm")}
		}
		g.Rocking = taken("0.10 mm")
		v.Margin, v.FaceRun, v.StemRun, v.TipWear, v.Length = taken("1.2 mm"), taken("0.02 mm"), taken("0.01 mm"), taken("0.02 mm"), taken("100 mm")
		s.Width, s.RunOut, s.Depth, s.TipHeight = taken("1.4 mm"), taken("0.02 mm"), taken("0.8 mm"), taken("40 mm")
		s.Outer, s.Inner = taken("34.0 mm"), taken("32.0 mm")
		r.Followers[i].Size, r.Followers[i].Bore = taken("27.97 mm"), taken("28.01 mm")
		r.Rockers[i].Size, r.Rockers[i].Bore = taken("17.98 mm"), taken("18.01 mm")
	}
	for i := range r.Springs {
		s := &r.Springs[i]
		s.Free, s.Installed = taken("45 mm"), taken("36 mm")
		if s.Name == "inner" {
			s.Installed = taken("34 mm")
			continue
		}
		s.Square, s.Solid = taken("0.5 mm"), taken("25 mm")
		s.Loads = []inspection.ReadingOf[units.Force]{inspection.Read(tolerance.Exactly(210 * units.Newton)), inspection.Read(tolerance.Exactly(500 * units.Newton))}
	}
	for i := range r.Clearances {
		r.Clearances[i].Clearance = taken("0.20 mm")
	}
	r.Clearances[3].Clearance = taken("[0.26 mm, 0.30 mm)")
	c := &r.Camshafts[0]
	c.Journals[0] = ReadingsJournal{taken("25.97 mm"), taken("26.00 mm"), "1"}
	c.Journals[1] = ReadingsJournal{taken("25.98 mm"), taken("26.01 mm"), ""}
	c.EndFloat = taken("0.1 mm")
	c.Inlet[0], c.Exhaust[0] = ReadingsLobe{taken("36.3 mm"), taken("30 mm")}, ReadingsLobe{taken("36.2 mm"), taken("30 mm")}
	r.Drive[0].Reading = taken("8 mm")
	return l, r
}

func TestInspect_sound(t *testing.T) {
	l, r := soundWhole(t)
	report := inspected(t, &l, &r)
	require.Empty(t, report.Missing)
	require.Empty(t, report.Slips)
	require.Empty(t, report.Orders)
	for _, d := range report.Decisions {
		require.Equal(t, inspection.ReUse, d.Action, "%v", d)
	}
	// A camshaft and a tensioner; of each of three inlet valves guide, valve, seat,
	// two springs, follower, rocker and clearance; one more clearance.
	require.Len(t, report.Decisions, 2+3*8+1)
	require.Len(t, report.Cautions, 2)
}

// Each way that a decision can go: sizes and limits side by side by hand.
func TestInspect_paths(t *testing.T) {
	all := func(g *ReadingsGuide, across string) {
		for i := range g.Levels {
			g.Levels[i] = ReadingsPair{taken(across), taken(across)}
		}
	}
	for name, c := range map[string]struct {
		edit        func(*Limits, *Readings)
		part, where string
		action      inspection.Action
		size        string
		has         []string // in because or settle
	}{
		// 8.09 less a new stem's 7.975 is past 0.10; 8.50 clears it by more than 0.05,
		// and leaves (13 − 8.51)/2 of wall; the liner's 8.000 to 8.006 less 7.970 fits.
		"guide lined": {func(_ *Limits, r *Readings) { all(&r.Guides[0], "8.09 mm") }, "valve guide", "inlet 1", inspection.Repair, "bronze liner", []string{"past the wear limit"}},
		"no wall left for a liner": {func(l *Limits, r *Readings) {
			all(&r.Guides[0], "8.09 mm")
			l.Inlet.Guide.LeastWall = 3 * units.Millimetre
		}, "valve guide", "inlet 1", inspection.Replace, "service guide", nil},
		"nothing in stock": {func(l *Limits, r *Readings) { all(&r.Guides[0], "8.09 mm"); l.Inlet.Guide.Stock = nil }, "valve guide", "inlet 1", inspection.Replace, "", []string{"nothing is given of what is in stock"}},
		"nothing in stock serves": {func(l *Limits, r *Readings) {
			all(&r.Guides[0], "8.09 mm")
			l.Inlet.Guide.Stock = l.Inlet.Guide.Stock[:1]
			l.Inlet.Guide.LeastWall = 3 * units.Millimetre
		},
			"valve guide", "inlet 1", inspection.Replace, "", []string{"none in stock serves"}},
		"stock that only may serve": {func(l *Limits, r *Readings) {
			all(&r.Guides[0], "8.09 mm")
			l.Inlet.Guide.Stock = l.Inlet.Guide.Stock[1:]
			l.Inlet.Guide.Stock[0].Finished = taken("[8.00 mm, 8.03 mm]").Value
		}, "valve guide", "inlet 1", inspection.MeasureAgain, "", []string{"none serves for certain"}},
		"guide bell-mouthed": {func(_ *Limits, r *Readings) { r.Guides[0].Levels[0].Across = taken("8.05 mm") }, "valve guide", "inlet 1", inspection.Repair, "bronze liner", []string{"bell-mouth"}},
		"guide out of round": {func(_ *Limits, r *Readings) { r.Guides[0].Levels[1].Along = taken("8.045 mm") }, "valve guide", "inlet 1", inspection.Repair, "bronze liner", []string{"out-of-round"}},
		"worn and half read": {func(_ *Limits, r *Readings) {
			all(&r.Guides[0], "8.09 mm")
			r.Guides[0].Levels[2].Along = inspection.Reading{}
		}, "valve guide", "inlet 1", inspection.MeasureAgain, "", []string{"take guide bore, valve end, along"}},
		"a stem not read":     {func(_ *Limits, r *Readings) { r.Valves[0].Stem[1].Along = inspection.Reading{} }, "valve guide", "inlet 1", inspection.MeasureAgain, "", []string{"measure its valve's stem"}},
		"rocks, by its bores": {func(_ *Limits, r *Readings) { r.Guides[0].Rocking = taken("0.4 mm") }, "valve guide", "inlet 1", inspection.Repair, "bronze liner", []string{"travel of the dial"}},
		"rocks, bores unread": {func(_ *Limits, r *Readings) { r.Guides[0].Rocking, r.Guides[0].Levels = taken("0.4 mm"), nil }, "valve guide", "inlet 1", inspection.Replace, "service guide", []string{"its stem is sound"}},
		"rocks, stem unread": {func(_ *Limits, r *Readings) {
			r.Guides[0].Rocking, r.Guides[0].Levels, r.Valves[0].Stem = taken("0.4 mm"), nil, nil
		}, "valve guide", "inlet 1", inspection.MeasureAgain, "", []string{"measure the stem and the guide's bore apart"}},
		"rocks, no new guide": {func(l *Limits, r *Readings) {
			r.Guides[0].Rocking, r.Guides[0].Levels = taken("0.4 mm"), nil
			l.Inlet.Guide.Stock = l.Inlet.Guide.Stock[:1]
		}, "valve guide", "inlet 1", inspection.Replace, "", []string{"a liner or a larger stem"}},
		"stem worn":       {func(_ *Limits, r *Readings) { r.Valves[0].Stem[1].Across = taken("7.935 mm") }, "valve", "inlet 1", inspection.Replace, "", []string{"stem diameter"}},
		"stem tapered":    {func(_ *Limits, r *Readings) { r.Valves[0].Stem[2].Across = taken("7.945 mm") }, "valve", "inlet 1", inspection.Replace, "", []string{"taper of the stem"}},
		"stem bent":       {func(_ *Limits, r *Readings) { r.Valves[0].StemRun = taken("0.06 mm") }, "valve", "inlet 1", inspection.Replace, "", []string{"run-out of the stem"}},
		"too short":       {func(_ *Limits, r *Readings) { r.Valves[0].Length = taken("98.5 mm") }, "valve", "inlet 1", inspection.Replace, "", []string{"length"}},
		"tip ground true": {func(_ *Limits, r *Readings) { r.Valves[0].TipWear = taken("0.2 mm") }, "valve", "inlet 1", inspection.ReconditionSame, "", []string{"grind the tip true"}},
		"tip ground before": {func(_ *Limits, r *Readings) {
			r.Valves[0].TipWear, r.Valves[0].TipOff = taken("0.2 mm"), taken("0.4 mm")
		}, "valve", "inlet 1", inspection.Replace, "", []string{"more than 0.5 mm off the tip"}},
		"refaced": {func(_ *Limits, r *Readings) { r.Valves[0].FaceRun = taken("0.07 mm") }, "valve", "inlet 1", inspection.ReconditionSame, "", []string{"reface it", "measure its margin again"}},
		"too thin to reface": {func(_ *Limits, r *Readings) {
			r.Valves[0].FaceRun, r.Valves[0].Margin = taken("0.07 mm"), taken("0.85 mm")
		}, "valve", "inlet 1", inspection.Replace, "", []string{"a reface would leave a margin"}},
		"refaced, unread": {func(_ *Limits, r *Readings) {
			r.Valves[0].FaceRun, r.Valves[0].Length = taken("0.07 mm"), inspection.Reading{}
		}, "valve", "inlet 1", inspection.MeasureAgain, "", []string{"as far as is known it would be: recondition at the same size", "take length"}},
		"worn, unread": {func(_ *Limits, r *Readings) {
			r.Valves[0].StemRun, r.Valves[0].Length = taken("0.07 mm"), inspection.Reading{}
		}, "valve", "inlet 1", inspection.Replace, "", nil},

		// 45° seat, 15° cutter, clean-up 0.05 mm along the stem.
		"seat cut":          {func(_ *Limits, r *Readings) { r.Seats[0].Width = taken("2.0 mm") }, "valve seat", "inlet 1", inspection.ReconditionSame, "cut the seat", []string{"seat width"}},
		"seat cut for run":  {func(_ *Limits, r *Readings) { r.Seats[0].RunOut = taken("0.10 mm") }, "valve seat", "inlet 1", inspection.ReconditionSame, "cut the seat", []string{"run-out of the seat"}},
		"seat sunk":         {func(_ *Limits, r *Readings) { r.Seats[0].Depth = taken("1.6 mm") }, "valve seat", "inlet 1", inspection.Replace, "", []string{"renew the insert"}},
		"seat sunk by tip":  {func(_ *Limits, r *Readings) { r.Seats[0].TipHeight = taken("42 mm") }, "valve seat", "inlet 1", inspection.Replace, "", []string{"the valve has sunk"}},
		"seat sinks by cut": {func(_ *Limits, r *Readings) { r.Seats[0].Width, r.Seats[0].Depth = taken("2.0 mm"), taken("1.48 mm") }, "valve seat", "inlet 1", inspection.Replace, "", []string{"once cut"}},
		"seat beyond cuts": {func(l *Limits, r *Readings) {
			r.Seats[0].Width = taken("2.0 mm")
			l.Inlet.Seat.Cut.Throat = SeatAngleFromSquare(90 * units.Degree)
			r.Seats[0].Inner = taken("33 mm")
		}, "valve seat", "inlet 1", inspection.Replace, "", []string{"no cut brings this seat"}},
		"seat waits": {func(_ *Limits, r *Readings) {
			r.Seats[0].Width = taken("2.0 mm")
			r.Guides[0].Rocking = inspection.Reading{}
		}, "valve seat", "inlet 1", inspection.MeasureAgain, "", []string{"decide on its guide first"}},

		"load off, no wear limit": {func(_ *Limits, r *Readings) {
			r.Springs[0].Loads[0] = inspection.Read(tolerance.Exactly(190 * units.Newton))
		}, "outer spring", "inlet 1", inspection.MeasureAgain, "", []string{"none is given"}},
		"load past": {func(_ *Limits, r *Readings) {
			r.Springs[0].Loads[1] = inspection.Read(tolerance.Exactly(470 * units.Newton))
		}, "outer spring", "inlet 1", inspection.Replace, "", []string{"no shim makes good"}},
		"set of springs":      {func(_ *Limits, r *Readings) { r.Springs[2].Free = taken("43.5 mm") }, "set of inlet valve outer springs", "", inspection.Replace, "", []string{"as a set"}},
		"too tall, shimmed":   {func(_ *Limits, r *Readings) { r.Springs[0].Installed = taken("37.2 mm") }, "outer spring", "inlet 1", inspection.ReconditionTo, "1 mm under it", []string{"installed height"}},
		"too tall, two shims": {func(_ *Limits, r *Readings) { r.Springs[0].Installed = taken("37.9 mm") }, "outer spring", "inlet 1", inspection.ReconditionTo, "1 mm and 1 mm under it", nil},
		"too tall for shims":  {func(_ *Limits, r *Readings) { r.Springs[0].Installed = taken("40 mm") }, "outer spring", "inlet 1", inspection.MeasureAgain, "", []string{"no shims in stock"}},
		"too low":             {func(_ *Limits, r *Readings) { r.Springs[0].Installed = taken("35.2 mm") }, "outer spring", "inlet 1", inspection.MeasureAgain, "", []string{"too low for any shim"}},
		"inner too tall":      {func(_ *Limits, r *Readings) { r.Springs[1].Installed = taken("35.4 mm") }, "inner spring", "inlet 1", inspection.MeasureAgain, "", []string{"no shims in stock"}},
		"shim would bind": {func(_ *Limits, r *Readings) {
			r.Springs[0].Installed, r.Springs[0].Solid = taken("37.2 mm"), taken("26.5 mm")
		}, "outer spring", "inlet 1", inspection.Replace, "", []string{"shims would leave a margin to coil bind of 0.7 mm"}},
		"binds": {func(_ *Limits, r *Readings) { r.Springs[0].Solid = taken("26.8 mm") }, "outer spring", "inlet 1", inspection.Replace, "", []string{"don't run it"}},
		"height waits for seat": {func(_ *Limits, r *Readings) {
			r.Springs[0].Installed, r.Seats[0].Width = taken("37.2 mm"), taken("2 mm")
		}, "outer spring", "inlet 1", inspection.MeasureAgain, "", []string{"once valve and seat are worked"}},

		"follower worn": {func(_ *Limits, r *Readings) { r.Followers[0].Size = taken("27.92 mm") }, "cam follower", "inlet 1", inspection.Replace, "", []string{"sound lobe"}},
		"follower bore": {func(_ *Limits, r *Readings) {
			r.Followers[0].Size, r.Followers[0].Bore = taken("28 mm"), taken("28.06 mm")
		}, "cam follower", "inlet 1", inspection.Repair, "", []string{"oversize follower"}},
		"rocker loose":     {func(_ *Limits, r *Readings) { r.Rockers[0].Bore = taken("18.10 mm") }, "rocker", "inlet 1", inspection.Replace, "", []string{"rocker-to-shaft clearance"}},
		"screw turned in":  {func(_ *Limits, r *Readings) { r.Clearances[0].Clearance = taken("[0.28 mm, 0.30 mm)") }, "valve clearance", "inlet 1", inspection.ReconditionSame, "screw in by about 22°", []string{"lock nut"}},
		"screw turned out": {func(_ *Limits, r *Readings) { r.Clearances[0].Clearance = taken("[0.10 mm, 0.12 mm)") }, "valve clearance", "inlet 1", inspection.ReconditionSame, "screw out by about 22°", nil},
		"screw, no pitch": {func(l *Limits, r *Readings) {
			r.Clearances[0].Clearance = taken("[0.28 mm, 0.30 mm)")
			l.Inlet.Clearance.Pitch = 0
		}, "valve clearance", "inlet 1", inspection.ReconditionSame, "", []string{"set it by its screw"}},
		"screw, no pitch, open": {func(l *Limits, r *Readings) {
			r.Clearances[0].Clearance = taken("[0.24 mm, 0.30 mm)")
			l.Inlet.Clearance.Pitch = 0
		}, "valve clearance", "inlet 1", inspection.MeasureAgain, "", []string{"0.25 mm"}},
		"set as manual says": {func(_ *Limits, r *Readings) { r.Clearances[3].Clearance = taken("[0.38 mm, 0.40 mm)") }, "valve clearance", "exhaust 1", inspection.ReconditionSame, "", []string{"set it as the manual says"}},
		"every blade in": {func(_ *Limits, r *Readings) {
			r.Clearances[3] = ReadingsClearance{Place: r.Clearances[3].Place, Trials: []ReadingsTrial{{300 * units.Micrometre, feeler.Free}}}
		}, "valve clearance", "exhaust 1", inspection.MeasureAgain, "", []string{"more than 0.35 mm"}},
		"shim a decimal off": {func(l *Limits, r *Readings) {
			l.Inlet.Clearance.Set, l.Inlet.Clearance.Ratio = SetByShim, tolerance.Ratio{}
			for i, s := range []string{"2.50 mm", "25.2 mm", "2.54 mm"} {
				r.Clearances[i].Clearance, r.Clearances[i].Shim = taken("[0.30 mm, 0.32 mm)"), taken(s)
			}
		}, "valve clearance", "inlet 2", inspection.MeasureAgain, "", []string{"shim in place", "decimal place"}},
		"shims, none to be had": {func(l *Limits, r *Readings) {
			l.Inlet.Clearance.Set, l.Inlet.Clearance.Ratio = SetByShim, tolerance.Ratio{}
			r.Clearances[0].Clearance, r.Clearances[0].Shim = taken("[0.30 mm, 0.32 mm)"), taken("2.50 mm")
		}, "valve clearance", "inlet 1", inspection.MeasureAgain, "", []string{"no sizes to buy are given"}},
		"clearance too small to be": {func(_ *Limits, r *Readings) { r.Clearances[0].Clearance = taken("0.005 mm") }, "valve clearance", "inlet 1", inspection.ReconditionSame, "screw out by about 46°", nil},
		"no clearance":              {func(_ *Limits, r *Readings) { r.Clearances[0].Clearance = taken("0 mm") }, "valve clearance", "inlet 1", inspection.ReconditionSame, "screw out by about 47°", nil},

		"cam bearing":   {func(_ *Limits, r *Readings) { r.Camshafts[0].Journals[1].Bearing = taken("26.06 mm") }, "camshaft", "camshaft", inspection.Repair, "", []string{"camshaft bearing"}},
		"cam clearance": {func(_ *Limits, r *Readings) { r.Camshafts[0].Journals[1].Journal = taken("25.88 mm") }, "camshaft", "camshaft", inspection.Repair, "", []string{"clearance"}},
		"lobe lift":     {func(_ *Limits, r *Readings) { r.Camshafts[0].Exhaust[0].Height = taken("35.9 mm") }, "camshaft", "camshaft", inspection.Replace, "", []string{"exhaust lobe 1: lobe lift"}},
		"end float":     {func(_ *Limits, r *Readings) { r.Camshafts[0].EndFloat = taken("0.3 mm") }, "camshaft", "camshaft", inspection.ReconditionSame, "", []string{"thrust plate"}},
		"tensioner":     {func(_ *Limits, r *Readings) { r.Drive[0].Reading = taken("13 mm") }, "tensioner", "", inspection.Repair, "", []string{"plunger out"}},
		"lobe unread":   {func(_ *Limits, r *Readings) { r.Camshafts[0].Inlet[0].Base = inspection.Reading{} }, "camshaft", "camshaft", inspection.MeasureAgain, "", []string{"take base circle of the lobe, inlet lobe 1"}},
	} {
		t.Run(name, func(t *testing.T) {
			l, r := soundWhole(t)
			c.edit(&l, &r)
			d := decisionOn(t, inspected(t, &l, &r), c.part, c.where)
			require.Equal(t, c.action, d.Action, "%s; %s", d.Because, d.Settle)
			require.Contains(t, d.Size, c.size)
			if c.size == "" {
				require.Empty(t, d.Size)
			}
			for _, has := range c.has {
				require.Contains(t, d.Because+"|"+d.Settle, has)
			}
		})
	}
}

// What is ordered goes by name and size.
func TestInspect_orders(t *testing.T) {
	l, r := soundWhole(t)
	l.Inlet.Seals = "8 mm stem seal"
	for i := range 3 {
		r.Guides[0].Levels[i] = ReadingsPair{taken("8.09 mm"), taken("8.09 mm")}
	}
	l.Inlet.Guide.Stock = l.Inlet.Guide.Stock[:1]
	r.Seats[1].Depth = taken("1.6 mm")
	r.Springs[2].Free = taken("43.5 mm")
	r.Springs[0].Installed = taken("36 mm")
	r.Followers[0].Size = taken("27.92 mm")
	r.Rockers[0].Bore = taken("18.10 mm")
	r.Drive[0].Condition.Cracked = inspection.No
	l.Drive[0].Then = inspection.Replace
	r.Drive[0].Reading = taken("13 mm")
	r.Guides[2].Condition.Cracked = inspection.Yes
	report := inspected(t, &l, &r)
	var got []string
	for _, o := range report.Orders {
		got = append(got, o.Text())
	}
	require.Equal(t, []string{
		"tensioner (tensioner)",
		"guide liner, bronze liner (inlet 1)",
		"valve guide (inlet 3): not yet, a decision is open",
		"inlet seat insert (inlet 2)",
		"inlet valve outer spring (inlet 1, inlet 2, inlet 3)",
		"inlet cam follower (inlet 1)",
		"inlet rocker parts (inlet 1)",
		"8 mm stem seal (inlet 1, inlet 2, inlet 3)",
	}, got)
	// The set is governed by the spring that failed.
	require.Equal(t, "inlet 2", decisionOn(t, report, "set of inlet valve outer springs", "").Governs)
	// A shimmed spring's shims are ordered, and its height foretold.
	l, r = soundWhole(t)
	r.Springs[0].Installed = taken("37.2 mm")
	report = inspected(t, &l, &r)
	require.Equal(t, "spring shim, 1 mm (inlet 1)", report.Orders[0].Text())
	require.Equal(t, "36.2 mm", report.Predicted[0].Length.Least.String())
	// And a seat that is cut: its width as wanted, its depth with the cut.
	l, r = soundWhole(t)
	r.Seats[0].Width = taken("2.0 mm")
	report = inspected(t, &l, &r)
	require.Equal(t, "seat width", report.Predicted[0].Measure())
	require.Equal(t, "1.4 mm", report.Predicted[0].Length.Least.String())
	require.Equal(t, "[0.8 mm, 0.85 mm]", report.Predicted[1].Length.Least.String())
}
