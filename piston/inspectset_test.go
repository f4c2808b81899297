package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func TestInspect_masses(t *testing.T) {
	heavy := func(_ *Limits, r *Readings) { r.Pistons[1].Mass = inspection.Read(massAt(t, "419.0 g")) }
	out := inspected(t, heavy)
	d := decision(t, &out, "piston masses", "")
	require.Equal(t, inspection.ReconditionSame, d.Action)
	require.Contains(t, d.Size, "take metal from piston 2")
	require.Contains(t, d.Because, "mass spread of the pistons [7.6 g, 8 g]")
	require.Contains(t, out.Cautions[len(out.Cautions)-1], "Metal comes off a piston only")

	out = inspected(t, func(_ *Limits, r *Readings) { r.Pistons[1].Mass = inspection.Read(massAt(t, "417.2 g")) })
	d = decision(t, &out, "piston masses", "")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Settle, "a finer scale")

	// No limit: the spread can't be judged.
	out = inspected(t, func(l *Limits, _ *Readings) { l.Mass.Spread = inspection.LimitOf[units.Mass]{} })
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "piston masses", "").Action)
	// One weighed alone.
	out = inspected(t, func(_ *Limits, r *Readings) {
		for i := range 3 {
			r.Pistons[i].Mass = ReadingsMass{}
		}
	})
	d = decision(t, &out, "piston masses", "")
	require.Equal(t, "take piston mass, piston 1, and 2 more", d.Settle)
}

func TestInspect_gasket(t *testing.T) {
	crown := func(first, second string) func(*Limits, *Readings) {
		return func(_ *Limits, r *Readings) {
			r.Pistons[1].First, r.Pistons[1].Second = reading(first), reading(second)
		}
	}
	open := func(settle string, change func(*Limits, *Readings)) inspection.Decision {
		t.Helper()
		out := inspected(t, change)
		d := decision(t, &out, "head gasket", "")
		require.Equal(t, inspection.MeasureAgain, d.Action)
		require.Contains(t, d.Settle, settle)
		require.Empty(t, out.Orders)
		return d
	}
	open("may lie on either side of 0.63 mm", crown("0.628 mm", "0.630 mm"))
	open("no gasket of the table is thick enough", crown("0.760 mm", "0.764 mm"))
	open("a bent rod", crown("0.600 mm", "0.680 mm"))
	open("above the other end of the pin's axis", func(_ *Limits, r *Readings) { r.Pistons[0].Second = inspection.Reading{} })
	open("near contact there is no benefit of the doubt", func(l *Limits, _ *Readings) {
		l.Protrusion.Clearance = inspection.Limit{}
		l.Protrusion.Table[1].Thickness = band("0.60–0.70 mm")
		l.Protrusion.Table[0].Thickness = band("0.50–0.55 mm")
	})
	d := open("find out why", func(l *Limits, _ *Readings) { l.Protrusion.Clearance.New = printed(t, "min 0.95 mm") })
	require.Contains(t, d.Because, "piston-to-head clearance")
	// Two pistons that may both be the greatest.
	out := inspected(t, crown("0.608 mm", "0.624 mm"))
	require.Equal(t, "piston 2 or piston 4", decision(t, &out, "head gasket", "").Governs)
	// Without a table, by a limit.
	out = inspected(t, func(l *Limits, _ *Readings) {
		l.Protrusion.Table = nil
		l.Protrusion.Limit = inspection.Limit{New: printed(t, "0.53–0.73 mm")}
	})
	require.Equal(t, inspection.ReUse, decision(t, &out, "piston protrusion", "").Action)
	require.Equal(t, tolerance.AsNew, finding(t, out.Findings, "piston protrusion", "piston 3").Standing())
	out = inspected(t, func(l *Limits, _ *Readings) {
		l.Protrusion.Table = nil
		l.Protrusion.Limit = inspection.Limit{New: printed(t, "0.63–0.73 mm")}
	})
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "piston protrusion", "").Action)
}

// Much is not asked: nothing is made up for it.
func TestInspect_little(t *testing.T) {
	l := Limits{Schema: 1, Pistons: 1}
	r := l.Blank()
	out, err := Inspect(&l, &r)
	require.NoError(t, err)
	require.Empty(t, out.Missing)
	require.Empty(t, out.Decisions)
	l = Limits{Schema: 1, Pistons: 1, Skirt: &LimitsSkirt{Heights: []units.Length{0}}}
	r = Readings{Schema: 1, Pistons: []ReadingsPiston{{Piston: 1, Skirt: []ReadingsSkirt{{Across: reading("86 mm"), Along: reading("85.7 mm")}}}}}
	out, err = Inspect(&l, &r)
	require.NoError(t, err)
	require.Empty(t, out.Findings)
	require.Equal(t, "look up the limits in the engine maker's manual", out.Decisions[0].Settle)
	var none Limits
	_, err = Inspect(&none, &r)
	require.ErrorIs(t, err, ErrInput)
	require.Empty(t, none.Blank().Pistons)
	none.Pistons = -5
	require.Empty(t, none.Blank().Pistons)
}
