package piston

import (
	"encoding/json"
	"os"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func demoFile(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("testdata/demo/" + name)
	require.NoError(t, err)
	return data
}

func demo(t testing.TB) (Limits, Readings) {
	t.Helper()
	l, err := ReadLimits("limits.json", demoFile(t, "limits.json"))
	require.NoError(t, err)
	r, err := ReadReadings("readings.json", demoFile(t, "readings.json"))
	require.NoError(t, err)
	return l, r
}

// inspected is the report on the demo engine after a change.
func inspected(t testing.TB, change func(*Limits, *Readings)) inspection.Report {
	t.Helper()
	l, r := demo(t)
	if change != nil {
		change(&l, &r)
	}
	out, err := Inspect(&l, &r)
	require.NoError(t, err)
	sound(t, &out)
	return out
}

// sound holds what is true of every report.
func sound(t testing.TB, out *inspection.Report) {
	t.Helper()
	sorted := func(name string, n int, step func(int) inspection.Step) {
		for i := 1; i < n; i++ {
			require.LessOrEqual(t, step(i-1), step(i), name)
		}
	}
	sorted("findings", len(out.Findings), func(i int) inspection.Step { return out.Findings[i].Step })
	sorted("decisions", len(out.Decisions), func(i int) inspection.Step { return out.Decisions[i].Step })
	sorted("missing", len(out.Missing), func(i int) inspection.Step { return out.Missing[i].Step })
	sorted("orders", len(out.Orders), func(i int) inspection.Step { return out.Orders[i].Step })
	sorted("predicted", len(out.Predicted), func(i int) inspection.Step { return out.Predicted[i].Step })
	for _, d := range out.Decisions {
		require.NotEmpty(t, d.Because, "%+v", d)
		if d.Action == inspection.MeasureAgain {
			require.NotEmpty(t, d.Settle, "%+v", d)
		}
	}
	for _, f := range out.Findings {
		require.NotEmpty(t, f.Measure())
		require.NotEmpty(t, f.Path)
	}
}

// decision is the one on a part.
func decision(t testing.TB, out *inspection.Report, part, where string) inspection.Decision {
	t.Helper()
	for _, d := range out.Decisions {
		if d.Part == part && d.Where == where {
			return d
		}
	}
	t.Fatalf("no decision on %s %s", part, where)
	return inspection.Decision{}
}

func finding(t testing.TB, list []inspection.Finding, measure, where string) inspection.Finding {
	t.Helper()
	for _, f := range list {
		if f.Measure() == measure && f.Where() == where {
			return f
		}
	}
	t.Fatalf("no finding on %s %s", measure, where)
	return inspection.Finding{}
}

func reading(s string) inspection.Reading { return inspection.Read(at(s)) }

func printed(t testing.TB, s string) tolerance.Printed {
	t.Helper()
	p, err := tolerance.ParsePrinted(s)
	require.NoError(t, err)
	return p
}

func actions(out *inspection.Report, part string) (all []inspection.Action) {
	for _, d := range out.Decisions {
		if d.Part == part {
			all = append(all, d.Action)
		}
	}
	return all
}

func alike(a inspection.Action, n int) []inspection.Action {
	return slices.Repeat([]inspection.Action{a}, n)
}

func TestInspect_good(t *testing.T) {
	out := inspected(t, nil)
	require.Empty(t, out.Slips)
	require.Empty(t, out.Missing)
	require.Equal(t, alike(inspection.CleanAndReUse, 4), actions(&out, "pistons"))
	require.Equal(t, alike(inspection.ReUse, 4), actions(&out, "gudgeon pins"))
	require.Equal(t, alike(inspection.ReUse, 4), actions(&out, "small ends"))
	require.Equal(t, alike(inspection.ReUse, 12), actions(&out, "rings"))
	require.Equal(t, alike(inspection.ReUse, 1), actions(&out, "piston masses"))
	gasket := decision(t, &out, "head gasket", "")
	require.Equal(t, inspection.Replace, gasket.Action)
	require.Equal(t, "2 holes", gasket.Size)
	require.Equal(t, "piston 2", gasket.Governs)
	require.Equal(t, []inspection.Order{{Step: inspection.StepAssembly, What: "head gasket", Size: "2 holes", Count: 1, For: []string{"the head"}, Sure: true}}, out.Orders)
	// By hand: 86.015 ± 0.002 less 85.963 ± 0.002 mm.
	f := finding(t, out.Findings, "piston clearance", "piston 1, 18 mm up the skirt")
	require.Equal(t, at("[0.048 mm, 0.056 mm]"), f.Length.Least)
	require.Equal(t, at("[0.053 mm, 0.061 mm]"), f.Length.Greatest)
	require.Equal(t, "pistons[0].skirt[1].across", f.Path)
	// All stays, so that what will be is what was read.
	departed, agree, unmeasured := inspection.Compared(out.Predicted, out.Findings)
	require.Empty(t, departed)
	require.Empty(t, unmeasured)
	require.Equal(t, len(out.Predicted), agree)
	require.Len(t, out.Cautions, 3)
	require.NoError(t, out.Complete())
}

// An empty document is the list of all readings, and nothing else.
func TestInspect_blank(t *testing.T) {
	l, whole := demo(t)
	blank := l.Blank()
	out, err := Inspect(&l, &blank)
	require.NoError(t, err)
	sound(t, &out)
	missing := out.Missing
	out.Missing = nil
	require.Empty(t, cmp.Diff(inspection.Report{Decisions: []inspection.Decision{}, Findings: []inspection.Finding{}, Predicted: []inspection.Finding{}}, out))
	// Of each cylinder 4 of its bore, and of each piston a crack test, 4 of its
	// skirt, its mass, 14 and 2 of its pin, 2 × 4 and 1 of its rings, 2 above
	// its crown.
	require.Equal(t, 4*(4+1+4+1+16+9+2), len(missing)) //nolint:testifylint // the list is long
	require.Equal(t, inspection.Missing{
		Step: inspection.StepPistons, Path: "pistons[0].skirt[0].across", Measure: "skirt",
		Where: "piston 1, 5 mm up the skirt, across the thrust faces", With: "outside micrometer", Limit: "new 85.968–85.98 mm",
	}, missing[4*4+1])
	seen := map[string]bool{}
	for _, m := range missing {
		require.False(t, seen[m.Path], m.Path)
		seen[m.Path] = true
		require.NotEmpty(t, m.With)
	}
	// What the whole document has stands at these paths.
	data, err := json.Marshal(blank)
	require.NoError(t, err)
	again, err := ReadReadings("blank.json", data)
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(blank, again, compareBrackets))
	whole.Bores = nil // measured elsewhere: then they aren't listed
	whole.Pistons = whole.Pistons[:0]
	out, err = Inspect(&l, &whole)
	require.NoError(t, err)
	require.Equal(t, len(missing)-4*4, len(out.Missing)) //nolint:testifylint // the list is long
	require.Error(t, out.Complete())
}

var compareBrackets = cmp.AllowUnexported(tolerance.Bracket{}, tolerance.Interval[units.Mass]{})

func TestInspect_worn(t *testing.T) {
	out := inspected(t, func(_ *Limits, r *Readings) { r.Pistons[0].Skirt[1].Across = reading("85.920 mm") })
	d := decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "skirt size [85.918 mm, 85.922 mm]")
	require.Contains(t, d.Because, "margin [-0.012 mm, -0.008 mm]")
	require.Equal(t, inspection.Replace, decision(t, &out, "rings", "piston 1, top ring").Action)
	require.Equal(t, "the new piston comes with its pin", decision(t, &out, "gudgeon pins", "piston 1").Because)
	require.Equal(t, "weigh the new set", decision(t, &out, "piston masses", "").Settle)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "head gasket", "").Action)
	require.Equal(t, []inspection.Order{{Step: inspection.StepPistons, What: "pistons with rings", Size: "the size that is fitted", Count: 1, For: []string{"piston 1"}, Sure: true}}, out.Orders)
	// A new one in the same bore: 86.015 ± 0.002 less 85.960–85.972 mm.
	f := finding(t, out.Predicted, "piston clearance", "piston 1, 18 mm up the skirt")
	require.Equal(t, at("[0.041 mm, 0.057 mm]"), f.Length.Least)
	// And its rings: 0.25–0.40 mm in 86 mm, where the bore is 86.007 mm at the least.
	f = finding(t, out.Predicted, "ring end gap", "piston 1, top ring")
	lo, _ := f.Length.Least.Lower()
	require.InDelta(t, 0.25+0.007*3.14159*(86-7)/(86-3.5), lo.Float(units.InMillimetres), 1e-4)
	f = finding(t, out.Predicted, "ring side clearance", "piston 1, top ring")
	require.Equal(t, at("[0.030 mm, 0.062 mm]"), f.Length.Least)
}

// Bores bored for a kit ask for its pistons, whatever the old ones measure.
func TestInspect_oversize(t *testing.T) {
	bored := func(_ *Limits, r *Readings) {
		for i := range r.Bores {
			r.Bores[i].Oversize, r.Bores[i].Finish = "+0.50 mm", reading("[86.505 mm, 86.515 mm]")
		}
	}
	out := inspected(t, bored)
	require.Equal(t, alike(inspection.Replace, 4), actions(&out, "pistons"))
	d := decision(t, &out, "pistons", "piston 3")
	require.Equal(t, "+0.50 mm: skirt 86.46–86.472 mm", d.Size)
	require.Equal(t, "its bore is to be finished for +0.50 mm", d.Because)
	require.Equal(t, []inspection.Order{{
		Step: inspection.StepPistons, What: "pistons with rings", Size: "+0.50 mm", Count: 4,
		For: []string{"piston 1", "piston 2", "piston 3", "piston 4"}, Sure: true,
	}}, out.Orders)
	f := finding(t, out.Predicted, "piston clearance", "piston 2, 18 mm up the skirt")
	require.Equal(t, at("[0.033 mm, 0.055 mm]"), f.Length.Least)
	f = finding(t, out.Predicted, "ring end gap", "piston 2, second ring")
	lo, _ := f.Length.Least.Lower()
	hi, _ := f.Length.Greatest.Upper()
	require.InDelta(t, 0.30+0.005*3.14159*0.96, lo.Float(units.InMillimetres), 2e-3)
	require.InDelta(t, 0.45+0.015*3.14159*1.04, hi.Float(units.InMillimetres), 2e-3)

	out = inspected(t, func(l *Limits, r *Readings) {
		bored(l, r)
		for i := range r.Bores {
			r.Bores[i].Undecided, r.Bores[i].Finish = i == 2, inspection.Reading{}
		}
	})
	d = decision(t, &out, "pistons", "piston 3")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Equal(t, "what becomes of the bore is still open", d.Settle)
	require.False(t, out.Orders[0].Sure)
	require.Equal(t, 3, out.Orders[0].Count)
	for _, f := range out.Predicted { // what the bores will measure isn't known
		require.NotEqual(t, "piston clearance", f.Measure())
		require.NotEqual(t, "ring end gap", f.Measure())
	}

	out = inspected(t, func(_ *Limits, r *Readings) { r.Bores[0].Undecided = true })
	require.Contains(t, decision(t, &out, "pistons", "piston 1").Settle, "still open")
}

func TestInspect_condition(t *testing.T) {
	out := inspected(t, func(_ *Limits, r *Readings) {
		r.Pistons[0].Condition.Cracked = inspection.Yes
		r.Pistons[1].Condition.CrackTested = inspection.NotLooked
		r.Pistons[2].Condition.Scored = inspection.Yes
		r.Pistons[3].Pin.Condition.Blued = inspection.Yes
	})
	d := decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "cracked")
	d = decision(t, &out, "pistons", "piston 2")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "a crack test")
	require.Equal(t, "pistons[1].condition.crackTested", out.Missing[0].Path)
	require.Equal(t, inspection.ReconditionSame, decision(t, &out, "pistons", "piston 3").Action)
	require.Equal(t, inspection.Replace, decision(t, &out, "gudgeon pins", "piston 4").Action)
	require.Equal(t, "gudgeon pins", out.Orders[len(out.Orders)-1].What)
	require.False(t, out.Orders[0].Sure, "piston 2 is open")
}

// A half-filled document: findings for what is there, and no pass for the rest.
func TestInspect_halfFilled(t *testing.T) {
	out := inspected(t, func(_ *Limits, r *Readings) {
		r.Pistons = slices.Delete(r.Pistons, 1, 2)
		p := &r.Pistons[1] // piston 3
		p.Skirt = p.Skirt[:1]
		p.Pin.SmallEnd[1][0] = inspection.Reading{}
		p.Rings = p.Rings[:1]
		p.Rings[0].Bottom = ReadingsGap{}
		p.Second = inspection.Reading{}
		r.Bores = slices.Delete(r.Bores, 3, 4)
		r.Bores[2].Top = inspection.Reading{}
	})
	d := decision(t, &out, "pistons", "piston 3")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "take skirt, piston 3, 18 mm up the skirt, across the thrust faces, and 4 more")
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "gudgeon pins", "piston 3").Action, "its fit in the small end isn't known")
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "small ends", "rod 3").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", "piston 3, top ring").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "piston masses", "").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "head gasket", "").Action)
	d = decision(t, &out, "pistons", "piston 4")
	require.Equal(t, "the bore of cylinder 4 isn't known", d.Because)
	require.Equal(t, "measure the bore where the skirt runs", d.Settle)
	d = decision(t, &out, "rings", "piston 4, top ring")
	require.Equal(t, "the end gap where the bore is worn the most isn't known", d.Because)
	require.Equal(t, inspection.CleanAndReUse, decision(t, &out, "pistons", "piston 1").Action)
	for _, x := range out.Decisions {
		require.NotContains(t, x.Where, "piston 2")
	}
	require.Equal(t, "pistons[3].condition.crackTested", out.Missing[slices.IndexFunc(out.Missing, func(m inspection.Missing) bool { return m.Where == "piston 2" })].Path, "behind those that are there")
	// One direction read at one section alone: the other counts for all.
	out = inspected(t, func(_ *Limits, r *Readings) { r.Pistons[0].Pin.Bosses[1][1] = inspection.Reading{} })
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "gudgeon pins", "piston 1").Action)
	f := finding(t, out.Findings, "pin clearance in the bosses", "piston 1")
	require.NotZero(t, f.Length.Least)
}

func TestInspect_mixUp(t *testing.T) {
	for path, change := range map[string]func(*Readings){
		"pistons[1].mark":     func(r *Readings) { r.Pistons[1].Mark = "3" },
		"pistons[2].arrow":    func(r *Readings) { r.Pistons[2].Arrow = "rear" },
		"pistons[3].pin.mark": func(r *Readings) { r.Pistons[3].Pin.Mark = "1" },
	} {
		l, r := demo(t)
		change(&r)
		_, err := Inspect(&l, &r)
		require.ErrorIs(t, err, inspection.ErrMixUp)
		var at *inspection.PathError
		require.ErrorAs(t, err, &at)
		require.Equal(t, path, at.Path)
	}
	l, r := demo(t)
	for i := range r.Pistons { // marks that weren't read are no mix-up
		r.Pistons[i].Mark, r.Pistons[i].Arrow, r.Pistons[i].Pin.Mark = "", "", ""
	}
	_, err := Inspect(&l, &r)
	require.NoError(t, err)
}

func TestInspect_manyOrders(t *testing.T) {
	// Paths go by the place in the document, names by the number.
	l, r := demo(t)
	slices.Reverse(r.Pistons)
	out, err := Inspect(&l, &r)
	require.NoError(t, err)
	f := finding(t, out.Findings, "piston clearance", "piston 1, 18 mm up the skirt")
	require.Equal(t, "pistons[3].skirt[1].across", f.Path)
	forward, _ := Inspect(first(demo(t)))
	require.Len(t, out.Findings, len(forward.Findings))
	for i := range out.Findings {
		require.Equal(t, forward.Findings[i].String(), out.Findings[i].String())
	}
}

var compareAll = cmp.Options{compareBrackets, cmp.AllowUnexported(tolerance.Band{}, tolerance.BandOf[units.Mass]{})}

func first(l Limits, r Readings) (*Limits, *Readings) { return &l, &r }

func BenchmarkInspect(b *testing.B) {
	l, r := demo(b)
	in := l.Prepare()
	b.Run("lib=tenthou/op=fourpistons", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := in.Inspect(&r); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=prepare", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sinkInspector = l.Prepare()
		}
	})
}

var sinkInspector *Inspector
