package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func TestInspect_slip(t *testing.T) {
	out := inspected(t, func(_ *Limits, r *Readings) { r.Pistons[2].Skirt[1].Across = reading("8.5964 mm") })
	require.Len(t, out.Slips, 1)
	require.Equal(t, "pistons[2].skirt[1].across", out.Slips[0].Path)
	require.Contains(t, out.Slips[0].Text, "a decimal place")
	d := decision(t, &out, "pistons", "piston 3")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Equal(t, []string{"pistons[2].skirt[1].across"}, d.Slips)
	require.Equal(t, inspection.CleanAndReUse, decision(t, &out, "pistons", "piston 2").Action)
	for _, f := range out.Findings { // nothing is judged by it
		require.NotEqual(t, "piston 3, 18 mm up the skirt", f.Where())
	}
	// Two pistons alone: what a new one measures tells.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pistons, r.Pistons, r.Bores = 2, r.Pistons[:2], r.Bores[:2]
		r.Pistons[0].Skirt[2].Across = reading("859.48 mm")
		r.Pistons[1].Pin.Bosses[0][1] = reading("2.20075 mm")
	})
	require.Len(t, out.Slips, 2)
	require.Equal(t, "pistons[1].pin.bosses[0][1]", out.Slips[1].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "pistons", "piston 1").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "pistons", "piston 2").Action)
	// And without a new one's size their own spread.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pistons, r.Pistons, r.Bores = 1, r.Pistons[:1], r.Bores[:1]
		l.Skirt.New, l.Skirt.Size, l.Kits, l.Standard = nil, inspection.Limit{}, nil, 0
		r.Pistons[0].Skirt[1].Across = reading("859.68 mm")
		l.Pins.NewPin, l.Pins.NewBoss, l.Pins.NewSmallEnd = tolerance.Band{}, tolerance.Band{}, tolerance.Band{}
		r.Pistons[0].Pin.AtBosses[0][1] = reading("219.9 mm")
		l.Mass = nil
		r.Pistons[0].Mass = ReadingsMass{}
	})
	require.Len(t, out.Slips, 2)
	require.Equal(t, "pistons[0].pin.atBosses[0][1]", out.Slips[0].Path)
	require.Equal(t, "pistons[0].skirt", out.Slips[1].Path)
	// A mass, a ring's height, a gap and a protrusion.
	out = inspected(t, func(_ *Limits, r *Readings) {
		r.Pistons[1].Mass = inspection.Read(massAt(t, "41.4 g"))
		r.Pistons[0].Rings[0].Height = reading("14.84 mm")
		r.Pistons[3].Rings[1].Bottom.Gap = reading("4.3 ±0.02 mm")
		r.Pistons[2].First, r.Pistons[2].Second = reading("6.00 mm"), reading("6.04 mm")
	})
	var paths []string
	for _, s := range out.Slips {
		paths = append(paths, s.Path)
	}
	require.Equal(t, []string{"pistons[1].mass", "pistons[0].rings[0].usedHeight", "pistons[3].rings[1].endGapBottom", "pistons[2].first"}, paths)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "piston masses", "").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", "piston 1, top ring").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", "piston 4, second ring").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "head gasket", "").Action)
}

func massAt(t testing.TB, s string) MassBracket {
	t.Helper()
	m, err := tolerance.ParseInterval[units.Mass](s)
	require.NoError(t, err)
	return m
}

// A slip leaves open what hangs on it, in every part that does.
func TestInspect_slipSpreads(t *testing.T) {
	out := inspected(t, func(_ *Limits, r *Readings) { every(r.Pistons[2].Pin.Bosses, "2.2007 mm") })
	require.Len(t, out.Slips, 4)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "pistons", "piston 3").Action)
	d := decision(t, &out, "gudgeon pins", "piston 3")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Equal(t, "pin clearance in the bosses can't be told", d.Because)
	require.Equal(t, inspection.ReUse, decision(t, &out, "small ends", "rod 3").Action)

	// All that was read of a pin is unlike what a new one measures.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pistons, r.Pistons, r.Bores, l.Mass = 1, r.Pistons[:1], r.Bores[:1], nil
		r.Pistons[0].Mass = ReadingsMass{}
		l.Pins.NewPin, l.Pins.NewBoss = tolerance.Band{}, tolerance.Band{}
		every(r.Pistons[0].Pin.Bosses, "2.2007 mm")
	})
	require.Equal(t, "pistons[0].pin", out.Slips[0].Path)
	for _, part := range []string{"pistons", "gudgeon pins"} {
		require.Equal(t, inspection.MeasureAgain, decision(t, &out, part, "piston 1").Action)
	}
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "small ends", "rod 1").Action)

	// No piston is thrown away for a groove that a slip makes worn.
	out = inspected(t, func(_ *Limits, r *Readings) { loose(t, r, ".006 in drag, .007 in refused", "14.88 mm") })
	d = decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "piston 1, top ring rests on what looks like a slip")
}

// Limits that look like a slip: what hangs on which column is right is open,
// and what doesn't says so.
func TestInspect_limitSlip(t *testing.T) {
	out := inspected(t, func(l *Limits, _ *Readings) { l.Skirt.Clearance.WearAlso = printed(t, "max .047 in") })
	require.Equal(t, "limits.skirt.clearance.wearAlso", out.Slips[0].Path)
	d := decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.CleanAndReUse, d.Action)
	require.Equal(t, []string{"limits.skirt.clearance.wearAlso"}, d.Slips)
	require.Contains(t, d.Settle, "the same by either column")

	out = inspected(t, func(l *Limits, _ *Readings) { l.Skirt.Clearance.NewAlso = printed(t, ".016–.026 in") })
	d = decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "another edition")

	out = inspected(t, func(l *Limits, _ *Readings) { l.Rings[0].Side.Wear = printed(t, "max 0.015 mm") })
	require.Equal(t, "limits.rings[0].sideClearance.wear", out.Slips[0].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", "piston 2, top ring").Action)
	// A column without the one that governs, and limits that were not printed.
	out = inspected(t, func(l *Limits, _ *Readings) {
		l.Rings[0].Side.New, l.Rings[0].Side.NewAlso = tolerance.Printed{}, l.Rings[0].Side.New
		l.Rings[1].Side = inspection.Limit{New: tolerance.Printed{BandOf: band("0.02–0.06 mm")}, Wear: tolerance.Printed{BandOf: band("max 0.01 mm")}}
	})
	require.Equal(t, "limits.rings[0].sideClearance.newAlso", out.Slips[0].Path)
	require.Equal(t, "limits.rings[1].sideClearance.wear", out.Slips[1].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", "piston 2, top ring").Action)
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "rings", "piston 2, second ring").Action)
	in := func() *Inspector {
		l, _ := demo(t)
		l.Rings[0].Side.Wear = printed(t, "max 0.015 mm")
		return l.Prepare()
	}()
	require.Len(t, in.Slips(), 1)
}
