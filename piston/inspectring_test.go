package piston

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func tried(t testing.TB, s string) Tried {
	t.Helper()
	var tr Tried
	require.NoError(t, tr.UnmarshalText([]byte(s)))
	return tr
}

// sideOf gives a ring of piston 1 a clearance on both sides.
func loose(t testing.TB, r *Readings, blades, height string) {
	t.Helper()
	ring := &r.Pistons[0].Rings[0]
	ring.Side[0].Tried, ring.Side[1].Tried = tried(t, blades), tried(t, blades)
	ring.Height = reading(height)
}

func TestInspect_groove(t *testing.T) {
	const top = "piston 1, top ring"
	// The ring is worn: a new one of 1.478–1.490 mm takes up what it lost.
	out := inspected(t, func(_ *Limits, r *Readings) {
		loose(t, r, "", "1.38 mm")
		for k := range r.Pistons[0].Rings[0].Side {
			r.Pistons[0].Rings[0].Side[k].Clearance = reading("0.160 mm")
		}
	})
	d := decision(t, &out, "rings", top)
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "the ring is worn: a new ring brings the clearance back")
	require.Equal(t, inspection.CleanAndReUse, decision(t, &out, "pistons", "piston 1").Action)
	require.Equal(t, "ring sets", out.Orders[0].What)
	f := finding(t, out.Predicted, "ring side clearance", top)
	// 0.158 + 1.378 − 1.490 and 0.162 + 1.382 − 1.478 mm.
	require.Equal(t, at("[0.046 mm, 0.066 mm]"), over(f))

	// The groove is worn, and nothing is given that could save it.
	out = inspected(t, func(_ *Limits, r *Readings) { loose(t, r, ".006 in drag, .007 in refused", "1.488 mm") })
	d = decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "top ring: ring side clearance")

	// With a spacer it is re-cut: to 1.490 + 0.03 + 0.61 and 1.478 + 0.07 + 0.59 mm.
	spacers := func(l *Limits) {
		l.Rings[0].Spacers = []Spacer{{"0.6 mm", band("0.59–0.61 mm")}}
		l.Rings[0].Cut = mm("0.10")
		l.Rings[0].LeastLand = mm("2.5")
		l.Rings[0].Land = inspection.Limit{Wear: printed(t, "min 2.5 mm")}
	}
	out = inspected(t, func(l *Limits, r *Readings) {
		spacers(l)
		loose(t, r, ".006 in drag, .007 in refused", "1.488 mm")
		for i := range r.Pistons {
			r.Pistons[i].Rings[0].Land = reading("4.0 mm")
		}
	})
	d = decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.ReconditionTo, d.Action)
	require.Equal(t, top+" groove to 2.13–2.138 mm, with spacer 0.6 mm on the crown's side", d.Size)
	require.Equal(t, inspection.Order{Step: inspection.StepPistons, What: "groove spacers", Size: "0.6 mm", Count: 1, For: []string{top}, Sure: true}, out.Orders[0])
	require.Equal(t, inspection.Replace, decision(t, &out, "rings", top).Action)
	require.Contains(t, out.Cautions[1], "A lathe takes the metal")
	// The land was not measured: whether the spacer does can't be told.
	out = inspected(t, func(l *Limits, r *Readings) {
		spacers(l)
		loose(t, r, ".006 in drag, .007 in refused", "1.488 mm")
	})
	d = decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "measure the land: spacer 0.6 mm may do")
	require.Equal(t, "land width", out.Missing[0].Measure)
	// A thin land has nothing to give.
	out = inspected(t, func(l *Limits, r *Readings) {
		spacers(l)
		loose(t, r, ".006 in drag, .007 in refused", "1.488 mm")
		for i := range r.Pistons {
			r.Pistons[i].Rings[0].Land = reading("2.9 mm")
		}
	})
	require.Equal(t, inspection.Replace, decision(t, &out, "pistons", "piston 1").Action)

	// Without the ring's height it can't be told whose the wear is.
	out = inspected(t, func(l *Limits, r *Readings) {
		loose(t, r, ".006 in drag, .007 in refused", "1.488 mm")
		for i := range r.Pistons {
			r.Pistons[i].Rings[0].Height = inspection.Reading{}
		}
		l.Rings[0].UsedHeight = false
	})
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "measure the used ring's height")
	require.Empty(t, out.Missing)

	// Undecided: what blade would tell.
	out = inspected(t, func(_ *Limits, r *Readings) { loose(t, r, ".005 in drag, .006 in refused", "1.484 mm") })
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "try a blade of 0.15 mm, or measure groove and ring by micrometer")

	// Outside the new-part band alone is for the maker's manual to decide.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Rings[0].Side.Wear = tolerance.Printed{}
		loose(t, r, ".006 in drag, .007 in refused", "1.38 mm")
	})
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "the engine maker's manual decides")

	// Too tight.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Rings[0].Side.Wear = printed(t, "0.02–0.15 mm")
		loose(t, r, "0.015 mm refused", "1.484 mm")
		l.Blades = ""
	})
	require.Contains(t, decision(t, &out, "rings", top).Settle, "never force it")

	// A used ring that can't be: the doubt is named, nothing is thrown away.
	out = inspected(t, func(_ *Limits, r *Readings) { loose(t, r, ".006 in drag, .007 in refused", "1.510 mm") })
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", top).Action)
}

// over is all that a finding holds.
func over(f inspection.Finding) tolerance.Bracket { return hullOf(f.Length.Least, f.Length.Greatest) }

// By micrometer, with the ring's height; and the room behind it.
func TestInspect_micrometer(t *testing.T) {
	change := func(l *Limits, r *Readings) {
		l.Rings[0].ByMicrometer, l.Rings[0].UsedHeight = true, false
		l.Rings[0].Back = inspection.Limit{New: printed(t, "min 0.20 mm")}
		for i := range r.Pistons {
			ring := &r.Pistons[i].Rings[0]
			ring.Side = []ReadingsSide{{Width: reading("1.534 mm")}, {Width: reading("1.536 mm")}}
			ring.Depth, ring.Thickness = reading("3.92 ±0.02 mm"), reading("3.50 ±0.01 mm")
		}
	}
	out := inspected(t, change)
	f := finding(t, out.Findings, "ring side clearance", "piston 1, top ring")
	require.Equal(t, at("[0.046 mm, 0.054 mm]"), f.Length.Least) // 1.534 ± 0.002 − 1.484 ± 0.002
	f = finding(t, out.Findings, "ring back clearance", "piston 1, top ring")
	require.Equal(t, at("[0.39 mm, 0.45 mm]"), f.Length.Least)
	require.Equal(t, inspection.ReUse, decision(t, &out, "rings", "piston 1, top ring").Action)

	out = inspected(t, func(l *Limits, r *Readings) {
		change(l, r)
		ring := &r.Pistons[0].Rings[0]
		ring.Height, ring.Side[1].Width = inspection.Reading{}, inspection.Reading{}
		r.Pistons[1].Rings[0].Depth = inspection.Reading{}
		r.Pistons[2].Rings[0].Thickness = reading("3.95 mm")
		r.Pistons[3].Rings[0].Depth, r.Pistons[3].Rings[0].Thickness = inspection.Reading{}, inspection.Reading{}
	})
	d := decision(t, &out, "rings", "piston 1, top ring")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "take used ring's height, piston 1, top ring, and 1 more")
	require.Equal(t, "gauge blocks or groove micrometer", out.Missing[1].With)
	require.Equal(t, "new 1.52–1.54 mm", out.Missing[1].Limit)
	require.Contains(t, decision(t, &out, "rings", "piston 2, top ring").Settle, "take groove depth")
	require.Contains(t, out.Slips[0].Text, "an interference, the ring stands proud of its land")
	require.Equal(t, "pistons[3].rings[0].thickness", out.Missing[len(out.Missing)-1].Path)
	require.Equal(t, "pistons[3].rings[0].grooveDepth", out.Missing[len(out.Missing)-2].Path)
}

func TestInspect_endGap(t *testing.T) {
	const top = "piston 1, top ring"
	gap := func(s string) func(*Limits, *Readings) {
		return func(_ *Limits, r *Readings) { r.Pistons[0].Rings[0].Bottom = ReadingsGap{Gap: reading(s)} }
	}
	out := inspected(t, gap("0.15 ±0.01 mm"))
	d := decision(t, &out, "rings", top)
	require.Equal(t, inspection.ReconditionSame, d.Action)
	require.Equal(t, "0.11 mm to 0.188 mm filed off the ends", d.Size) // 0.25 − 0.14, and 0.45 − 0.16 − π·0.031·86.032/82.532
	require.Contains(t, d.Because, "from the face inward")
	require.Contains(t, out.Cautions[1], "File ring ends")
	for _, f := range out.Predicted {
		require.False(t, f.Measure() == "ring end gap" && f.Where() == top)
	}

	// Filing waits for what is missing.
	out = inspected(t, func(l *Limits, r *Readings) {
		gap("0.15 ±0.01 mm")(l, r)
		r.Pistons[0].Rings[0].Height = inspection.Reading{}
	})
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "from the face inward")

	out = inspected(t, gap("1.05 ±0.02 mm"))
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "too large at top of travel")

	out = inspected(t, func(l *Limits, r *Readings) {
		l.Rings[0].Gap.Wear = tolerance.Printed{}
		gap("1.05 ±0.02 mm")(l, r)
	})
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", top).Action)

	// No one ring suits both ends of a bore so tapered.
	out = inspected(t, func(_ *Limits, r *Readings) { r.Bores[0].Top = reading("86.30 ±0.003 mm") })
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "no one ring suits both")
	require.Contains(t, d.Settle, "decide on the bore first")

	// Read by blades at both ends, without the bores.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Blades, l.OwnBlades = "", nil
		r.Bores = nil
		l.Skirt.Clearance = inspection.Limit{}
		for k := range l.Rings {
			l.Rings[k].GapAt = []string{"top", "bottom"}
		}
		for i := range r.Pistons {
			for k := range r.Pistons[i].Rings {
				r.Pistons[i].Rings[k].Bottom = ReadingsGap{Tried: tried(t, "0.35 mm drag, 0.40 mm refused")}
				r.Pistons[i].Rings[k].Top = ReadingsGap{Tried: tried(t, "0.40 mm drag, 0.45 mm refused"), Gap: reading("0.41 ±0.03 mm")}
			}
		}
	})
	f := finding(t, out.Findings, "ring end gap", top)
	require.Equal(t, at("[0.35 mm, 0.40 mm)"), f.Length.Least)
	require.Equal(t, at("[0.40 mm, 0.44 mm]"), f.Length.Greatest)
	require.Equal(t, inspection.ReUse, decision(t, &out, "rings", top).Action)
	require.Empty(t, out.Missing)

	// Read at the top alone, without the bores: where it is smallest isn't known.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Skirt.Clearance = inspection.Limit{}
		r.Bores = nil
		l.Rings[0].GapAt = []string{"top"}
		for i := range r.Pistons {
			ring := &r.Pistons[i].Rings[0]
			ring.Top, ring.Bottom = ring.Bottom, ReadingsGap{}
		}
	})
	d = decision(t, &out, "rings", top)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Equal(t, "the end gap where the bore is smallest isn't known", d.Because)
	require.Equal(t, "pistons[0].rings[0].endGapTop", finding(t, out.Findings, "ring end gap", top).Path)

	// Two readings that contradict each other by the bores.
	out = inspected(t, func(_ *Limits, r *Readings) { r.Pistons[0].Rings[0].Top = ReadingsGap{Gap: reading("0.90 ±0.01 mm")} })
	require.Contains(t, out.Slips[0].Text, "set the ring square and read both and the bore again")
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", top).Action)

	// Undecided.
	out = inspected(t, gap("0.70 ±0.05 mm"))
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", top).Action)

	// A limit that contradicts itself judges nothing.
	out = inspected(t, func(l *Limits, _ *Readings) { l.Rings[0].Gap.Wear = printed(t, "max 0.08 mm") })
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", top).Action)

	// New rings whatever the used ones measure.
	out = inspected(t, func(l *Limits, _ *Readings) { l.NewRings = true })
	require.Equal(t, alike(inspection.Replace, 12), actions(&out, "rings"))
	require.Equal(t, 4, out.Orders[0].Count)
}

// Blades count as they are marked, or as the set has them.
func TestInspect_blades(t *testing.T) {
	l, r := demo(t)
	loose(t, &r, "0.038 mm drag, 0.051 mm refused", "1.484 mm") // the second marks of .0015 and .002 in
	out, err := Inspect(&l, &r)
	require.NoError(t, err)
	require.Equal(t, at("[0.0381 mm, 0.0508 mm)"), over(finding(t, out.Findings, "ring side clearance", "piston 1, top ring")))

	l, r = demo(t)
	l.OwnBlades = []feeler.Blade{feeler.MustBlade(".0015 in"), feeler.MustBlade(".002 in"), feeler.MustBlade(".0025 in"), feeler.MustBlade(".0035 in")}
	l.OwnBlades[1].Error = 2 * units.Micrometre
	loose(t, &r, ".0015 in + .002 in drag, .002 in free", "1.484 mm")
	r.Pistons[0].Rings[0].Side[0].Tried = Tried{{Thickness: mm("0.05"), Feel: feeler.Free}, {Thickness: mm("0.06"), Feel: feeler.Refused}}
	out, err = Inspect(&l, &r)
	require.NoError(t, err)
	f := finding(t, out.Findings, "ring side clearance", "piston 1, top ring")
	require.Equal(t, at("[0.05 mm, 0.06 mm)"), f.Length.Least)

	for name, c := range map[string]struct {
		blades string
		kind   error
		path   string
	}{
		"no such blade": {".0035 in drag", feeler.ErrNoBlade, "pistons[0].rings[0].sideClearance[0]"},
		"contradiction": {".003 in free, .002 in refused", feeler.ErrContradiction, "pistons[0].rings[0].sideClearance[0]"},
	} {
		l, r = demo(t)
		loose(t, &r, c.blades, "1.484 mm")
		_, err = Inspect(&l, &r)
		require.ErrorIs(t, err, c.kind, name)
		var at *inspection.PathError
		require.ErrorAs(t, err, &at)
		require.Equal(t, c.path, at.Path)
	}
	l, r = demo(t)
	r.Pistons[0].Rings[0].Bottom.Tried = tried(t, ".024 in drag")
	_, err = Inspect(&l, &r)
	require.ErrorIs(t, err, ErrInput)
	require.ErrorContains(t, err, "what the blades say too")
	l.Blades = ""
	r.Pistons[0].Rings[0].Bottom = ReadingsGap{Tried: tried(t, ".024 in free, .020 in refused")}
	_, err = Inspect(&l, &r)
	require.ErrorIs(t, err, feeler.ErrContradiction)
}

func TestTried(t *testing.T) {
	for _, s := range []string{"", ".002 in free, .0025 in drag, .003 in forced", ".025 in + .003 in refused", "0,05 mm not tried, .004 in refused"} {
		got := tried(t, s)
		text, err := got.MarshalText()
		require.NoError(t, err)
		require.Equal(t, s, string(text))
	}
	text, err := Tried{{Thickness: mm("0.05"), Feel: feeler.Drag}}.MarshalText()
	require.NoError(t, err)
	require.Equal(t, "0.05 mm drag", string(text))
	for s, want := range map[string]string{
		"drag":                  "a blade and how it went in",
		".002 in":               "a blade and how it went in",
		".002 in tight":         "a blade and how it went in",
		".002 drag":             "no unit",
		"-0.05 mm drag":         "above 0 mm",
		"30 mm drag":            "at most 25 mm",
		".002 in free.003 drag": "unknown unit",
	} {
		var tr Tried
		require.ErrorContains(t, tr.UnmarshalText([]byte(s)), want, s)
		require.Nil(t, tr)
	}
	var tr Tried
	var long strings.Builder
	for range mostTried + 1 {
		long.WriteString(".002 in free, ")
	}
	require.ErrorContains(t, tr.UnmarshalText([]byte(long.String())), "64 at the most")
}
