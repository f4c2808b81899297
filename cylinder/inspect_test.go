package cylinder

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspected is the demo engine, changed, inspected.
func inspected(t testing.TB, change func(l *Limits, r *Readings)) inspection.Report {
	t.Helper()
	report, _ := outcome(t, change)
	return report
}

func outcome(t testing.TB, change func(l *Limits, r *Readings)) (inspection.Report, Outcome) {
	t.Helper()
	l, r := demoLimits(t), demoReadings(t)
	change(&l, &r)
	report, out, err := l.Prepare().Outcome(&r)
	require.NoError(t, err)
	checkReport(t, &report)
	plain, err := Inspect(&l, &r)
	require.NoError(t, err)
	require.Equal(t, plain, report)
	return report, out
}

// checkReport holds what is true of every report.
func checkReport(t testing.TB, r *inspection.Report) {
	t.Helper()
	byStep := func(a, b inspection.Step) int { return int(a) - int(b) }
	require.True(t, slices.IsSortedFunc(r.Findings, func(a, b inspection.Finding) int { return byStep(a.Step, b.Step) }))
	require.True(t, slices.IsSortedFunc(r.Decisions, func(a, b inspection.Decision) int { return byStep(a.Step, b.Step) }))
	require.True(t, slices.IsSortedFunc(r.Missing, func(a, b inspection.Missing) int { return byStep(a.Step, b.Step) }))
	for _, d := range r.Decisions {
		require.NotEmpty(t, d.Because, d)
		if d.Action == inspection.MeasureAgain {
			require.NotEmpty(t, d.Settle, "%+v", d)
		}
		if d.Action > inspection.CleanAndReUse || d.Action == inspection.MeasureAgain {
			continue
		}
		// What is passed has nothing that is still to be measured.
		for _, m := range r.Missing {
			passed := m.Step == d.Step && (d.Where == "" || m.Where == d.Where || len(m.Where) > len(d.Where) && m.Where[:len(d.Where)+1] == d.Where+",")
			require.False(t, passed, "%+v is passed without %+v", d, m)
		}
	}
	for _, f := range r.Findings {
		require.NotEmpty(t, f.Path)
		require.NotEmpty(t, f.Measure())
	}
	for _, o := range r.Orders {
		require.Positive(t, o.Count)
	}
}

func decision(t testing.TB, r *inspection.Report, part, where string) inspection.Decision {
	t.Helper()
	var found []inspection.Decision
	for _, d := range r.Decisions {
		if d.Part == part && d.Where == where {
			found = append(found, d)
		}
	}
	require.Len(t, found, 1, "%s %s in %+v", part, where, r.Decisions)
	return found[0]
}

func read(t testing.TB, text string) (r inspection.Reading) {
	t.Helper()
	require.NoError(t, r.UnmarshalText([]byte(text)))
	return r
}

func printed(t testing.TB, text string) (p tolerance.Printed) {
	t.Helper()
	p, err := tolerance.ParsePrinted(text)
	require.NoError(t, err)
	return p
}

func unchanged(*Limits, *Readings) {}

func TestInspect_demo(t *testing.T) {
	r, out := outcome(t, unchanged)
	require.Empty(t, r.Slips)
	require.Empty(t, r.Missing)
	require.NoError(t, r.Complete())

	for _, c := range []struct {
		part, where string
		action      inspection.Action
	}{
		{"block", "", inspection.ReUse},
		{"block face", "", inspection.ReUse},
		{"main bearing housing", "main 3", inspection.ReUse},
		{"main bearing tunnel", "", inspection.ReUse},
		{"cylinder bore", "cylinder 1", inspection.ReconditionTo},
		{"cylinder bore", "cylinder 3", inspection.ReconditionTo},
		{"cylinder bores", "", inspection.ReconditionTo},
		{"head", "", inspection.ReconditionTo},
	} {
		require.Equal(t, c.action, decision(t, &r, c.part, c.where).Action, "%s %s", c.part, c.where)
	}
	set := decision(t, &r, "cylinder bores", "")
	require.Equal(t, "cylinder 3", set.Governs)
	require.Equal(t, "+0.50 mm: 86.5 mm nominal", set.Size)
	// The wall worn most, 0.088 mm, from a bore finished to 86.020 mm at the
	// most: 86.020 + 2·0.088 + 2·0.01 + 0.05 mm. The least: 86.020 + 2·0.082 +
	// 0.07 mm.
	require.Contains(t, set.Because, "[86.254 mm, 86.266 mm]")
	require.Contains(t, set.Because, "greatest at 10 mm down, across the crank")
	require.Contains(t, decision(t, &r, "cylinder bore", "cylinder 1").Because, "goes with cylinder 3")

	require.Equal(t, []inspection.Order{{Step: inspection.StepBores, What: "pistons with rings", Size: "+0.50 mm", Count: 3, Sure: true,
		For: []string{"cylinder 1", "cylinder 2", "cylinder 3", "cylinder 4"}}}, r.Orders, "one is in stock")

	// The greatest and the least reading, ±3 µm: ring 1, its half step 0.5,
	// gauge 1, its half step 0.5.
	require.Equal(t, bracket(t, "[86.105 mm, 86.111 mm]"), out.Bores[2].Greatest)
	require.Equal(t, bracket(t, "[86.013 mm, 86.019 mm]"), out.Bores[2].Least)
	for _, b := range out.Bores {
		require.Equal(t, bracket(t, "[86.5 mm, 86.52 mm]"), b.LeastAfter)
		require.Equal(t, units.Millimetre/2, b.OversizeAfter)
		require.Len(t, b.Levels, 6)
	}
	require.Equal(t, bracket(t, "[86.059 mm, 86.065 mm]"), out.Bores[2].Levels[0].Least)
	require.Equal(t, 10*units.Millimetre, out.Bores[2].Levels[0].Depth)
	require.Equal(t, OversizeKit, out.Oversize.Outcome)

	// Whatever a skim takes, it is enough for the worst line and the stock.
	require.Len(t, out.Skims, 1)
	require.GreaterOrEqual(t, out.Skims[0].Plan.Off, 88900*units.Micrometre/1000+20*units.Micrometre)
	require.Equal(t, inspection.StepHead, out.Skims[0].Step)
	last := r.Predicted[len(r.Predicted)-1]
	require.Equal(t, "height", last.Measure())
	require.Equal(t, bracket(t, "[132.96 mm, 132.98 mm]").Sub(tolerance.Exactly(out.Skims[0].Plan.Off)), last.Length.Least)
	require.Len(t, r.Predicted, 5)
	require.Contains(t, r.Cautions, cautionBoring)
	require.NotContains(t, r.Cautions, cautionCompression, "the engine is stripped")
}

func bracket(t testing.TB, text string) tolerance.Bracket {
	t.Helper()
	b, err := tolerance.ParseBracket(text)
	require.NoError(t, err)
	return b
}

// Measured again after the work, the bores are as they were predicted, or the
// one that isn't is named.
func TestInspect_builtAgainstPredicted(t *testing.T) {
	before := inspected(t, unchanged)
	after := inspected(t, func(l *Limits, r *Readings) {
		for i := range r.Cylinders {
			c := &r.Cylinders[i]
			c.Oversize, c.Walls = units.Millimetre/2, nil
			for k := range c.Levels {
				c.Levels[k].Along, c.Levels[k].Across = read(t, "0.508 mm"), read(t, "0.509 mm")
			}
		}
		r.Cylinders[3].Levels[2].Across = read(t, "0.531 mm")
	})
	require.Equal(t, inspection.ReUse, decision(t, &after, "cylinder bore", "cylinder 1").Action)
	require.Equal(t, inspection.CleanAndReUse, decision(t, &after, "cylinder bore", "cylinder 4").Action)
	var predicted, built []inspection.Finding
	for _, f := range before.Predicted {
		if f.Step == inspection.StepBores {
			predicted = append(predicted, f)
		}
	}
	for _, f := range after.Findings {
		if f.Step == inspection.StepBores {
			built = append(built, f)
		}
	}
	departed, agree, unmeasured := inspection.Compared(predicted, built)
	require.Empty(t, unmeasured)
	require.Equal(t, 4, agree, "bore 4 reaches into the band, and past it")
	require.Empty(t, departed)
}

func TestInspect_blank(t *testing.T) {
	l := demoLimits(t)
	blank := l.Blank()
	require.NoError(t, blank.Validate())
	r, err := Inspect(&l, &blank)
	require.NoError(t, err)
	checkReport(t, &r)
	require.Empty(t, r.Findings)
	require.Empty(t, r.Decisions)
	require.Empty(t, r.Orders)
	require.Empty(t, r.Predicted)
	count := map[inspection.Step]int{}
	paths := map[string]bool{}
	for _, m := range r.Missing {
		count[m.Step]++
		require.False(t, paths[m.Path], m.Path)
		paths[m.Path] = true
		require.NotEmpty(t, m.Where)
		require.NotEmpty(t, m.With, m.Path)
	}
	require.Equal(t, map[inspection.Step]int{
		inspection.StepBeforeStrip: 4 + 8, inspection.StepBlock: 3, inspection.StepBlockFace: 2 + 6,
		inspection.StepMainTunnel: 5*6 + 5, inspection.StepBores: 4 * 12, inspection.StepBoreFinish: 4, inspection.StepHead: 1 + 1 + 6 + 2,
	}, count)
	require.True(t, paths["cylinders[2].levels[4].across"])
	require.True(t, paths["mains[4].sizes[1][2]"])
	require.True(t, paths["heads[0].camBow"])
	require.Contains(t, r.Cautions, cautionCompression)
	require.Contains(t, r.Cautions, cautionLeakage)

	// A document of nothing at all asks for the same.
	nothing, err := Inspect(&l, &Readings{Schema: 1})
	require.NoError(t, err)
	require.Equal(t, r, nothing)
}

// What is missing is found at the paths that the list says.
func TestInspect_missing(t *testing.T) {
	r := inspected(t, func(l *Limits, r *Readings) {
		r.Cylinders[1].Levels[4].Across = inspection.Reading{}
		r.Mains[2].Sizes = r.Mains[2].Sizes[:1]
		r.Heads[0].Lines[3].Gap = inspection.Reading{}
		// Out of order, and one left out: paths go by the list.
		r.Cylinders[0], r.Cylinders[2] = r.Cylinders[2], r.Cylinders[0]
		r.Cylinders = r.Cylinders[:3]
	})
	paths := map[string]string{}
	for _, m := range r.Missing {
		paths[m.Path] = m.Where
	}
	require.Equal(t, "cylinder 2, 90 mm down, across the crank", paths["cylinders[1].levels[4].across"])
	require.Equal(t, "main 3, rear, 60° left", paths["mains[2].sizes[1][1]"])
	require.Equal(t, "cylinder 4, 10 mm down, along the crank", paths["cylinders[3].levels[0].along"])
	require.Equal(t, "head, rear end", paths["heads[0].lines[3].gap"])
	require.Len(t, paths, 1+3+12+1)

	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "cylinder bore", "cylinder 2").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main bearing tunnel", "").Action)
	require.Equal(t, "main 3", decision(t, &r, "main bearing tunnel", "").Governs)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "cylinder bore", "cylinder 4").Action)
	set := decision(t, &r, "cylinder bores", "")
	require.Equal(t, inspection.ReconditionTo, set.Action)
	require.Equal(t, "at least +0.50 mm: 86.5 mm nominal", set.Size)
	require.Contains(t, set.Settle, "measure cylinder 2, cylinder 4")
	require.False(t, r.Orders[0].Sure)
	// The third cylinder's readings stand first in the list now.
	for _, f := range r.Findings {
		if f.Step == inspection.StepBores && f.Where() == "cylinder 3" && f.Measure() == "bore size" {
			require.Equal(t, "cylinders[0].levels[0].across", f.Path)
		}
	}
	require.ErrorIs(t, r.Complete(), inspection.ErrMissing)
}
