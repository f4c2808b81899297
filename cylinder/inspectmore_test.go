package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Before the strip the tests point to what to look at; afterwards that has been
// looked at.
func TestInspect_beforeStrip(t *testing.T) {
	only := func(r *Readings) {
		*r = Readings{Schema: 1, Conditions: r.Conditions, Cylinders: r.Cylinders}
		for i := range r.Cylinders {
			c := &r.Cylinders[i]
			*c = ReadingsCylinder{Cylinder: c.Cylinder, Compression: c.Compression, Leakage: c.Leakage}
		}
	}
	r, out := outcome(t, func(_ *Limits, r *Readings) { only(r) })
	require.Len(t, r.Decisions, 1)
	d := r.Decisions[0]
	require.Equal(t, inspection.StepBeforeStrip, d.Step)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "cylinder 3: it is low and oil raises it, which points to piston rings, piston or bore")
	require.NotNil(t, out.Compression)
	require.NotNil(t, out.Leakage)
	require.True(t, out.Compression.Cylinders[2].Low())
	require.Equal(t, tolerance.Above, out.Leakage.Cylinders[2].Verdict)
	// 7.0 ±0.1 bar less 5.0 ±0.1 bar, against 20 % of 6.9 bar.
	for _, f := range r.Findings {
		if f.Path == "cylinders[2].leakage" {
			require.Equal(t, "[180 kPa, 220 kPa]", f.Pressure.Greatest.String())
			require.Equal(t, "max 138 kPa", f.Pressure.Spec.Wear.String())
			require.Equal(t, tolerance.PastWearLimit, f.Standing())
		}
	}
	require.Contains(t, r.Cautions, cautionCompression)
	require.Len(t, r.Missing, 120-12)

	// Nothing wrong, nothing to look at.
	r = inspected(t, func(l *Limits, r *Readings) {
		only(r)
		r.Cylinders[2].Compression, r.Cylinders[2].Leakage = r.Cylinders[0].Compression, r.Cylinders[0].Leakage
		l.Strip.Compression.New, l.Strip.Wet = tolerance.PrintedOf[units.Pressure]{}, false
	})
	require.Equal(t, inspection.ReUse, r.Decisions[0].Action, "%+v", r.Decisions[0])
	// A wet reading that is asked for.
	r = inspected(t, func(l *Limits, r *Readings) { only(r); l.Strip.Wet = true })
	require.Equal(t, "cylinders[0].compression.wet", r.Missing[0].Path)
	// One alone compares with nothing; a difference can still be the limit.
	r = inspected(t, func(l *Limits, r *Readings) {
		only(r)
		l.Strip.Difference.New, l.Strip.Difference.Wear = l.Strip.Difference.Wear, tolerance.PrintedOf[units.Pressure]{}
		r.Cylinders = r.Cylinders[:1]
	})
	require.Equal(t, inspection.MeasureAgain, r.Decisions[0].Action)
}

// Once the crowns are read a line hone says what it takes.
func TestInspect_lineHone(t *testing.T) {
	crowns := func(l *Limits, r *Readings) {
		r.Mains[3].Sizes[0][0] = read(t, "59.030 mm")
		for i := range r.Mains {
			r.Mains[i].Crown = read(t, "-40.000 ±0.002 mm")
		}
	}
	r, out := outcome(t, crowns)
	d := decision(t, &r, "main bearing tunnel", "")
	require.Equal(t, inspection.ReconditionSame, d.Action)
	require.NotNil(t, out.LineHone)
	require.Len(t, out.LineHone.Cuts, 5)
	require.Contains(t, d.Because, "raises the crank by up to "+out.LineHone.Rise.String())
	require.Contains(t, r.Cautions, cautionBoring)
	require.Empty(t, r.Missing)

	r, _ = outcome(t, func(l *Limits, r *Readings) { crowns(l, r); l.Tunnel.Hone.Rise = tolerance.AtMost(units.Micrometre) })
	require.Equal(t, inspection.Repair, decision(t, &r, "main bearing tunnel", "").Action)
	r, _ = outcome(t, func(l *Limits, r *Readings) {
		crowns(l, r)
		r.Mains[0].Crown = inspection.Reading{}
		l.Tunnel.Directions = []string{"along the joint", "60° left", "60° right"}
	})
	require.Len(t, r.Missing, 1)
	require.Equal(t, "mains[0].crown", r.Missing[0].Path)
	// By heights instead of blades, and three of five.
	r, _ = outcome(t, func(l *Limits, r *Readings) {
		l.Tunnel.Line.ByBlades = false
		for i, s := range []string{"20.00 mm", "20.01 mm", "", "20.01 mm", ""} {
			r.Mains[i].Line = read(t, s)
		}
	})
	require.Len(t, r.Missing, 2)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "main bearing tunnel", "").Action)
}

// Pistons that were measured prove the sizes that bores are finished to.
func TestInspect_ownPistons(t *testing.T) {
	measured := func(l *Limits) {
		l.Bores.Clearance = bracket(t, "0.045 mm")
		for _, s := range []string{"86.456 ±0.002 mm", "86.454 ±0.002 mm", "86.455 ±0.002 mm", "86.457 ±0.002 mm"} {
			l.Bores.Kits[1].Pistons = append(l.Bores.Kits[1].Pistons, bracket(t, s))
		}
	}
	_, out := outcome(t, func(l *Limits, _ *Readings) { measured(l) })
	// Skirt and clearance; 0.05 mm is left for the hone.
	require.Equal(t, bracket(t, "[86.499 mm, 86.503 mm]"), out.Bores[0].LeastAfter)
	require.Equal(t, bracket(t, "[86.498 mm, 86.502 mm]"), out.Bores[2].GreatestAfter)
	require.Equal(t, bracket(t, "[86.448 mm, 86.452 mm]"), out.Bores[2].Finish.Rough)
	// With a bore left out the others keep their own.
	_, out = outcome(t, func(l *Limits, r *Readings) { measured(l); r.Cylinders[0].Levels = nil })
	require.Equal(t, bracket(t, "[86.498 mm, 86.502 mm]"), out.Bores[2].LeastAfter)
	require.True(t, out.Bores[0].LeastAfter.IsZero())
	// Three pistons for four bores are for no certain one, nor for three.
	_, out = outcome(t, func(l *Limits, r *Readings) {
		measured(l)
		l.Bores.Kits[1].Pistons = l.Bores.Kits[1].Pistons[:3]
		r.Cylinders[0].Levels = nil
	})
	require.Equal(t, bracket(t, "[86.497 mm, 86.503 mm]"), out.Bores[2].LeastAfter)
}

// Wear and the least size count from what a bore was last finished to.
func TestInspect_finished(t *testing.T) {
	wear := func(l *Limits) { l.Bores.Wear.Wear = printed(t, "max 0.12 mm") }
	of := func(r *inspection.Report, measure, where string) tolerance.Bracket {
		for _, f := range r.Findings {
			if f.Measure() == measure && f.Where() == where {
				return f.Length.Greatest
			}
		}
		require.Fail(t, "no such finding", measure)
		return tolerance.Bracket{}
	}
	// 86.041 ±0.003 mm from anywhere in 86.000 to 86.020 mm.
	r := inspected(t, func(l *Limits, r *Readings) { wear(l) })
	require.Equal(t, bracket(t, "[0.018 mm, 0.044 mm]"), of(&r, "wear", "cylinder 1"))
	r = inspected(t, func(l *Limits, r *Readings) { wear(l); r.Cylinders[0].Finished = read(t, "86.010 mm") })
	require.Equal(t, bracket(t, "[0.028 mm, 0.034 mm]"), of(&r, "wear", "cylinder 1"))
	// From below the ring travel the ring's error drops out: ±1.5 µm twice.
	r = inspected(t, func(l *Limits, r *Readings) {
		wear(l)
		l.Bores.Unworn = true
		r.Cylinders[0].Unworn = read(t, "0.008 mm")
	})
	require.Equal(t, bracket(t, "[0.03 mm, 0.036 mm]"), of(&r, "wear", "cylinder 1"))
	require.Equal(t, "cylinders[1].unworn", r.Missing[0].Path)
	// The ridge, counted as the limits do.
	r = inspected(t, func(l *Limits, r *Readings) {
		l.Bores.Ridge.Wear, l.Bores.RidgeCounted = printed(t, "max 0.15 mm"), RidgePerSide
		r.Cylinders[0].Ridge = read(t, "[0.02 mm, 0.03 mm)")
	})
	require.Equal(t, bracket(t, "[0.02 mm, 0.03 mm)"), of(&r, "ridge (per side)", "cylinder 1"))
	require.Len(t, r.Missing, 3)
	// Further directions, a taper by length, and warm.
	r = inspected(t, func(l *Limits, r *Readings) {
		l.Bores.Angles, l.Bores.TaperRule, l.Bores.TaperPer = []units.Angle{45 * units.Degree}, TaperPerLength, 100*units.Millimetre
		for k := range r.Cylinders[0].Levels {
			r.Cylinders[0].Levels[k].Angled = []inspection.Reading{read(t, "0.020 mm")}
		}
		r.Block.Thermal.PerKelvin, r.Block.Thermal.Above = 11e-6, 5*units.Kelvin
	})
	require.Len(t, r.Missing, 3*6)
	require.Equal(t, "cylinder 2, 10 mm down, 45° to the crank", r.Missing[0].Where)
	_ = of(&r, "taper ("+TaperPerLength.String()+", 100 mm)", "cylinder 1")
}

// A head read by heights, with a short straight-edge, in a V.
func TestInspect_faces(t *testing.T) {
	grid := func(l *Limits, r *Readings, raise string) {
		l.Head.Face.Grid = &LimitsGrid{Rows: 3, Columns: 3, StepLengthwise: 200 * units.Millimetre, StepAcross: 80 * units.Millimetre, Error: units.Micrometre,
			Flatness: inspection.Limit{Wear: printed(t, "max 0.05 mm")}}
		r.Heads[0].Lines = nil
		for range 3 {
			r.Heads[0].Grid = append(r.Heads[0].Grid, []inspection.Reading{read(t, "0 mm"), read(t, "0.01 mm"), read(t, "0 mm")})
		}
		r.Heads[0].Grid[1][1] = read(t, raise)
	}
	r := inspected(t, func(l *Limits, r *Readings) { grid(l, r, "0.012 mm") })
	require.Equal(t, inspection.ReUse, decision(t, &r, "head", "").Action, "%+v", decision(t, &r, "head", ""))
	r, out := outcome(t, func(l *Limits, r *Readings) { grid(l, r, "0.120 mm") })
	require.Equal(t, inspection.ReconditionTo, decision(t, &r, "head", "").Action)
	// Flat to within 0.12 mm, ±1 µm twice, and 0.02 mm of stock, in steps of 0.01.
	require.LessOrEqual(t, out.Skims[0].Plan.Off, 150*units.Micrometre)
	r = inspected(t, func(l *Limits, r *Readings) { grid(l, r, "") })
	require.Equal(t, "heads[0].grid[1][1]", r.Missing[0].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "head", "").Action)

	// Within a short length: what the whole line shows may settle it.
	local := func(l *Limits, limit string) {
		l.Face.Local = []LimitsLocal{{150 * units.Millimetre, inspection.Limit{Wear: printed(t, limit)}}}
	}
	r = inspected(t, func(l *Limits, _ *Readings) { local(l, "max 0.04 mm") })
	require.Empty(t, r.Missing, "no gap under the long one is above 0.0381 mm")
	require.Equal(t, inspection.ReUse, decision(t, &r, "block face", "").Action)
	r = inspected(t, func(l *Limits, _ *Readings) { local(l, "max 0.03 mm") })
	require.Equal(t, "blockFaces[0].local[0]", r.Missing[0].Path)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "block face", "").Action)
	r = inspected(t, func(l *Limits, r *Readings) {
		local(l, "max 0.03 mm")
		r.Faces[0].Local = []inspection.Reading{read(t, "[0 mm, 0.0254 mm)")}
	})
	require.Equal(t, inspection.ReUse, decision(t, &r, "block face", "").Action)
	r = inspected(t, func(l *Limits, r *Readings) {
		local(l, "max 0.03 mm")
		l.Face.Local[0].Limit.New = printed(t, "max 0.20 mm") // reaches past the wear limit
	})
	require.NotEmpty(t, r.Slips)
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "block face", "").Action)

	// Lines of one's own without a diagonal don't see a twist.
	r = inspected(t, func(l *Limits, r *Readings) {
		l.Face.Lines = []LimitsLine{{"left edge", Lengthwise}, {"front end", Across}}
		r.Faces[0].Lines = r.Faces[0].Lines[:2]
	})
	require.Contains(t, decision(t, &r, "block face", "").Settle, "both diagonals")

	// Two banks have two faces and two heads.
	r = inspected(t, func(l *Limits, r *Readings) {
		l.Banks = [][]int{{1, 3}, {2, 4}}
		r.Faces[0].Bank = 2
		r.Heads[0].Condition.Cracked = inspection.Yes
	})
	require.Equal(t, inspection.ReUse, decision(t, &r, "block face", "bank 2").Action)
	require.Equal(t, inspection.Replace, decision(t, &r, "head", "bank 1").Action)
	require.Equal(t, []string{"bank 1"}, r.Orders[len(r.Orders)-1].For)
	require.Equal(t, "blockFaces[1].heights[0]", r.Missing[0].Path)
	require.Equal(t, "block face, bank 1, front", r.Missing[0].Where)

	// A height alone.
	r = inspected(t, func(l *Limits, r *Readings) {
		l.Face.Overall = inspection.Limit{}
		r.Faces[0].Lines = nil
	})
	require.Equal(t, inspection.ReUse, decision(t, &r, "block face", "").Action)
}

// Wet liners, and the shims that bring them where they belong.
func TestInspect_liners(t *testing.T) {
	wet := func(l *Limits, r *Readings, places ...string) {
		l.Bores.Kits, l.Face, r.Faces, l.Finish = nil, nil, nil, nil
		for i := range r.Cylinders {
			r.Cylinders[i].CrossHatch = inspection.ReadingOf[units.Angle]{}
		}
		sound(r)
		l.Liners = &LimitsLiners{Places: []string{"thrust side", "other side"},
			Protrusion: inspection.Limit{New: printed(t, "0.05–0.12 mm")}, Step: inspection.Limit{Wear: printed(t, "max 0.04 mm")},
			Variation: inspection.Limit{Wear: printed(t, "max 0.02 mm")}, Error: 2 * units.Micrometre,
			Shims: []StockShim{{"0.05", bracket(t, "0.05 mm")}, {"0.10", bracket(t, "0.10 mm")}}}
		for i, p := range places {
			if p != "" {
				r.Cylinders[i].Liner = ReadingsLiner{Protrusion: []inspection.Reading{read(t, p), read(t, p)}}
			}
		}
	}
	r := inspected(t, func(l *Limits, r *Readings) { wet(l, r, "0.08 mm", "0.09 mm", "0.085 mm", "0.08 mm") })
	require.Equal(t, inspection.ReUse, decision(t, &r, "cylinder liner", "cylinder 2").Action)
	require.Empty(t, r.Orders)

	r, out := outcome(t, func(l *Limits, r *Readings) { wet(l, r, "0.08 mm", "0.09 mm", "0.03 mm", "0.08 mm") })
	d := decision(t, &r, "cylinder liner", "cylinder 3")
	require.Equal(t, inspection.ReconditionTo, d.Action)
	require.Equal(t, "shim 0.05", d.Size)
	require.Contains(t, d.Because, "step between liners [0.056 mm, 0.064 mm]", "to cylinder 2, as to cylinder 4 with less")
	require.True(t, out.Shims[0].Ok)
	require.Equal(t, []inspection.Order{{Step: inspection.StepLiners, What: "liner shims", Size: "0.05", Count: 1, Sure: true}}, r.Orders)
	var found bool
	for _, f := range r.Predicted {
		if f.Step == inspection.StepLiners && f.Where() == "cylinder 3" {
			found = true
			require.Equal(t, bracket(t, "[0.078 mm, 0.082 mm]"), f.Length.Least)
		}
	}
	require.True(t, found)

	r = inspected(t, func(l *Limits, r *Readings) { wet(l, r, "0.08 mm", "0.09 mm", "0.16 mm", "0.08 mm") })
	require.Equal(t, inspection.Repair, decision(t, &r, "cylinder liner", "cylinder 3").Action, "too high for any shim")
	r = inspected(t, func(l *Limits, r *Readings) { wet(l, r, "0.08 mm", "0.09 mm", "0.03 mm", "") })
	require.Contains(t, decision(t, &r, "cylinder liner", "cylinder 3").Settle, "read every liner of the bank")
	require.Equal(t, inspection.MeasureAgain, decision(t, &r, "cylinder liner", "cylinder 4").Action)
	r = inspected(t, func(l *Limits, r *Readings) {
		wet(l, r, "0.08 mm", "0.09 mm", "0.08 mm", "0.08 mm")
		l.Liners.Places = nil
		for i := range r.Cylinders {
			r.Cylinders[i].Liner.Protrusion = r.Cylinders[i].Liner.Protrusion[:1]
		}
	})
	require.Contains(t, decision(t, &r, "cylinder liner", "cylinder 1").Settle, "at several places")

	// A worn wet liner is replaced, and its shim counts.
	r = inspected(t, func(l *Limits, r *Readings) {
		wet(l, r, "0.08 mm", "0.09 mm", "0.08 mm", "0.08 mm")
		worn(t, r, 2, "0.150 mm")
		r.Cylinders[0].Liner.Shim = read(t, "0.05 mm")
	})
	require.Equal(t, inspection.Replace, decision(t, &r, "cylinder bore", "cylinder 2").Action)
	require.Equal(t, whatLiners, r.Orders[0].What)
	require.Equal(t, []string{"cylinder 2"}, r.Orders[0].For)
	require.Contains(t, r.Cautions, cautionLiners)
}
