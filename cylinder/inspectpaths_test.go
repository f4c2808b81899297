package cylinder

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// worn sets a bore's readings across the crank at the top, and takes away the
// walls that were dialled.
func worn(t testing.TB, r *Readings, cylinder int, across string) {
	r.Cylinders[cylinder-1].Walls = nil
	r.Cylinders[cylinder-1].Levels[0].Across = read(t, across)
}

// sound makes the third bore as the first.
func sound(r *Readings) {
	r.Cylinders[2].Walls = nil
	r.Cylinders[2].Levels = slices.Clone(r.Cylinders[0].Levels)
}

// Each way that a decision may fall, on the demo engine with one thing changed.
func TestInspect_decisions(t *testing.T) {
	const bores, tunnel = "cylinder bores", "main bearing tunnel"
	for _, c := range []struct {
		name        string
		change      func(l *Limits, r *Readings)
		part, where string
		action      inspection.Action
		says        []string // of size, because, governs and settle
	}{
		{"within the wear limit", func(_ *Limits, r *Readings) { sound(r) },
			bores, "", inspection.CleanAndReUse, []string{"within its limits"}},
		{"as new", func(_ *Limits, r *Readings) {
			for i := range r.Cylinders {
				r.Cylinders[i].Walls = nil
				for k := range r.Cylinders[i].Levels {
					r.Cylinders[i].Levels[k] = ReadingsLevel{Along: read(t, "0.010 mm"), Across: read(t, "0.011 mm")}
				}
			}
		}, bores, "", inspection.ReUse, []string{"as new"}},
		{"on the limit", func(l *Limits, r *Readings) {
			sound(r)
			worn(t, r, 2, "0.098 mm")
			l.Bores.Taper = inspection.Limit{}
			r.Cylinders[1].Levels[0].Along = read(t, "0.060 mm")
		},
			bores, "", inspection.MeasureAgain, []string{"cylinder 2", "of which ±0.0015 mm is the gauge's setting: make that good to less than"}},
		{"a taper alone", func(_ *Limits, r *Readings) {
			sound(r)
			worn(t, r, 4, "0.080 mm")
			r.Cylinders[3].Levels[0].Along = read(t, "0.040 mm")
		},
			bores, "", inspection.ReconditionTo, []string{"cylinder 4", "taper", "[0.066 mm, 0.072 mm]"}},
		{"scored", func(_ *Limits, r *Readings) { sound(r); r.Cylinders[1].Condition.Scored = inspection.Yes },
			bores, "", inspection.ReconditionSame, []string{"scored", "cylinder 2"}},
		{"cracked", func(_ *Limits, r *Readings) { r.Cylinders[0].Condition.Cracked = inspection.Yes },
			bores, "", inspection.Replace, []string{"cracked", "cylinder 1"}},
		{"cracked where the maker allows a liner", func(l *Limits, r *Readings) {
			r.Cylinders[0].Condition.Cracked, l.Bores.Care.Cracked = inspection.Yes, inspection.Repair
		}, "cylinder bore", "cylinder 1", inspection.Repair, []string{"cracked"}},
		{"and the others still bored", func(l *Limits, r *Readings) {
			r.Cylinders[0].Condition.Cracked, l.Bores.Care.Cracked = inspection.Yes, inspection.Repair
		}, "cylinder bore", "cylinder 2", inspection.ReconditionTo, []string{"goes with cylinder 3"}},
		{"not crack-tested", func(l *Limits, r *Readings) { sound(r); l.Bores.Care.CrackTest = true },
			bores, "", inspection.MeasureAgain, []string{"crack test"}},
		{"to be bored and not crack-tested", func(l *Limits, r *Readings) { l.Bores.Care.CrackTest = true },
			bores, "", inspection.MeasureAgain, []string{"crack test", "by size alone it would be: recondition to size"}},
		{"dial the worn side", func(_ *Limits, r *Readings) { r.Cylinders[2].Walls = nil },
			bores, "", inspection.MeasureAgain, []string{"+0.25 mm may do, +0.50 mm does for sure", "dial the worn side"}},
		{"no oversize is listed", func(l *Limits, _ *Readings) { l.Bores.Kits = nil },
			bores, "", inspection.ReconditionTo, []string{"list the oversizes"}},
		{"plated", func(l *Limits, _ *Readings) { l.Bores.Kits, l.Bores.Surface = nil, PlatedBore },
			"cylinder bore", "cylinder 3", inspection.Replace, []string{"too large"}},
		{"no kit suits", func(l *Limits, r *Readings) { l.Bores.Kits = l.Bores.Kits[:1] },
			bores, "", inspection.Repair, []string{"line cylinder 3; all to +0.25 mm", "no oversize cleans up every bore"}},
		{"no kit suits, no wall stands", func(l *Limits, r *Readings) {
			l.Bores.Kits, l.Bores.Liner.Outside, l.Bores.Plan.LeastWall = l.Bores.Kits[:1], 90*units.Millimetre, 3*units.Millimetre
			r.Cylinders[2].Sonic = []SonicWall{{Where: "front", Wall: bracket(t, "4 ±0.1 mm")}}
		}, bores, "", inspection.Replace, []string{"none can be lined"}},
		{"torque plate asked for", func(l *Limits, r *Readings) { sound(r); l.Bores.TorquePlate = RecordedYes },
			bores, "", inspection.MeasureAgain, []string{"torque plate"}},
		{"no wear limit on that side", func(_ *Limits, r *Readings) { sound(r); worn(t, r, 1, "-0.004 mm") },
			bores, "", inspection.MeasureAgain, []string{"too small", "look up the wear limit"}},
		{"as much as an oversize step, which may be a decimal place", func(_ *Limits, r *Readings) { worn(t, r, 1, "0.410 mm") },
			"cylinder bore", "cylinder 1", inspection.MeasureAgain, []string{"as much as an oversize step", "what it was last finished to"}},
		{"what was it finished to", func(l *Limits, r *Readings) {
			sound(r)
			l.Bores.Size.New, l.Bores.Size.NewAlso, l.Bores.Wear.Wear = printed(t, "no limit"), printed(t, "no limit"), printed(t, "max 0.1 mm")
		}, bores, "", inspection.MeasureAgain, []string{"a limit on wear is given", "below the ring travel"}},

		{"cracked block", func(_ *Limits, r *Readings) { r.Block.Condition.Cracked = inspection.Yes },
			"block", "", inspection.Replace, []string{"cracked"}},
		{"nobody looked", func(_ *Limits, r *Readings) { r.Block.Condition = inspection.Condition{} },
			"block", "", inspection.MeasureAgain, []string{"look for cracks", "crack test", "pressure test"}},
		{"block not pressure-tested", func(_ *Limits, r *Readings) { r.Block.Condition.PressureTested = inspection.No },
			"block", "", inspection.MeasureAgain, []string{"pressure test"}},

		{"caps loose", func(_ *Limits, r *Readings) { r.Caps = CapsLoose },
			tunnel, "", inspection.MeasureAgain, []string{"loose", "tighten them"}},
		{"a housing too large", func(_ *Limits, r *Readings) { r.Mains[3].Sizes[0][0] = read(t, "59.030 mm") },
			tunnel, "", inspection.ReconditionSame, []string{"main 4", "too large", "line hone to 59.01 mm", "read every crown"}},
		{"the others go with it", func(_ *Limits, r *Readings) { r.Mains[3].Sizes[0][0] = read(t, "59.030 mm") },
			"main bearing housing", "main 1", inspection.ReconditionSame, []string{"goes with main 4"}},
		{"a line out of line", func(_ *Limits, r *Readings) { r.Mains[2].Line = read(t, "[0.0762 mm, 0.0889 mm)") },
			tunnel, "", inspection.ReconditionSame, []string{"alignment", "main 3"}},
		{"no hone in the limits", func(l *Limits, r *Readings) { l.Tunnel.Hone = nil; r.Mains[3].Sizes[0][0] = read(t, "59.030 mm") },
			tunnel, "", inspection.ReconditionSame, []string{"how far it would raise the crank"}},
		{"one level alone", func(l *Limits, r *Readings) { l.Tunnel.Levels = l.Tunnel.Levels[:1]; shortMains(r) },
			tunnel, "", inspection.MeasureAgain, []string{"taper of the housing isn't known"}},

		{"a face within its limits", unchanged, "block face", "", inspection.ReUse, []string{"within its limits"}},
		{"a blade between", func(_ *Limits, r *Readings) { r.Faces[0].Lines[4].Gap = read(t, "[0.0381 mm, 0.0508 mm)") },
			"block face", "", inspection.MeasureAgain, []string{"diagonal, front left to rear right", "more than 0.05 mm"}},
		{"it rocks", func(_ *Limits, r *Readings) {
			r.Faces[0].Lines[4] = ReadingsLine{Seat: Rocks, Front: read(t, "[0.0254 mm, 0.0381 mm)"), Rear: read(t, "[0.0635 mm, 0.0762 mm)")}
		}, "block face", "", inspection.MeasureAgain, []string{"rock the straight-edge until"}},
		{"every blade entered", func(_ *Limits, r *Readings) { r.Faces[0].Lines[4].Gap = read(t, "[1 mm, ∞)") },
			"block face", "", inspection.MeasureAgain, []string{"thicker blades"}},
		{"too low for a skim", func(_ *Limits, r *Readings) {
			r.Faces[0].Lines[4].Gap = read(t, "[0.0762 mm, 0.0889 mm)")
			r.Faces[0].Heights[1] = read(t, "219.80 mm")
		}, "block face", "", inspection.Replace, []string{"too low by"}},
		{"whether low enough can't be told", func(l *Limits, r *Readings) {
			r.Faces[0].Lines[4].Gap, l.Face.HeightError = read(t, "[0.0762 mm, 0.0889 mm)"), 300*units.Micrometre
		}, "block face", "", inspection.MeasureAgain, []string{"measure its height more closely"}},
		{"height not read", func(_ *Limits, r *Readings) {
			r.Faces[0].Lines[4].Gap = read(t, "[0.0762 mm, 0.0889 mm)")
			r.Faces[0].Heights = nil
		}, "block face", "", inspection.MeasureAgain, []string{"measure its height"}},
		{"too low already", func(_ *Limits, r *Readings) { r.Faces[0].Heights[0] = read(t, "219.60 mm") },
			"block face", "", inspection.Replace, []string{"too small: past the wear limit", "front"}},
		{"no skim in the limits", func(l *Limits, r *Readings) {
			l.Face.Skim = nil
			r.Faces[0].Lines[0].Gap = read(t, "[0.0762 mm, 0.0889 mm)")
		},
			"block face", "", inspection.ReconditionTo, []string{"isn't in the limits"}},
		{"no least height", func(l *Limits, r *Readings) {
			l.Face.Height, r.Faces[0].Heights = inspection.Limit{}, nil
			r.Faces[0].Lines[0].Gap = read(t, "[0.0762 mm, 0.0889 mm)")
		}, "block face", "", inspection.ReconditionTo, []string{"skim", "how low it may be"}},
		{"so much may come off", func(l *Limits, r *Readings) {
			l.Face.Height, r.Faces[0].Heights, l.Face.Skim.MostOff = inspection.Limit{}, nil, 200*units.Micrometre
			r.Faces[0].OffBefore, r.Faces[0].Lines[0].Gap = read(t, "0.15 mm"), read(t, "[0.0762 mm, 0.0889 mm)")
		}, "block face", "", inspection.Replace, []string{"too low by"}},
		{"the seat isn't said", func(_ *Limits, r *Readings) {
			r.Faces[0].Lines[0] = ReadingsLine{Gap: read(t, "[0.0762 mm, 0.0889 mm)")}
		}, "block face", "", inspection.ReconditionTo, []string{"a twist may ask for more"}},

		{"cracked head", func(_ *Limits, r *Readings) { r.Heads[0].Condition.Cracked = inspection.Yes },
			"head", "", inspection.Replace, []string{"cracked"}},
		{"head not crack-tested", func(_ *Limits, r *Readings) { r.Heads[0].Condition.CrackTested = inspection.NotLooked },
			"head", "", inspection.MeasureAgain, []string{"crack test"}},
		{"cam tunnel not read", func(_ *Limits, r *Readings) { r.Heads[0].CamBow = inspection.Reading{} },
			"head", "", inspection.MeasureAgain, []string{"the cam tunnel first"}},
		{"cam tunnel open", func(_ *Limits, r *Readings) { r.Heads[0].CamBow = read(t, "[0.04 mm, 0.06 mm)") },
			"head", "", inspection.MeasureAgain, []string{"the cam tunnel first"}},
		{"cam tunnel bowed", func(_ *Limits, r *Readings) { r.Heads[0].CamBow = read(t, "[0.07 mm, 0.08 mm)") },
			"head", "", inspection.Repair, []string{"straighten the head"}},

		{"cross-hatch too flat", func(_ *Limits, r *Readings) {
			sound(r)
			require.NoError(t, r.Cylinders[1].CrossHatch.UnmarshalText([]byte("20°")))
		}, "bore finish", "cylinder 2", inspection.ReconditionSame, []string{"too small"}},
		{"cross-hatch on the limit", func(_ *Limits, r *Readings) {
			sound(r)
			require.NoError(t, r.Cylinders[1].CrossHatch.UnmarshalText([]byte("59°")))
		}, "bore finish", "cylinder 2", inspection.MeasureAgain, []string{"more than 60°"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := inspected(t, c.change)
			d := decision(t, &r, c.part, c.where)
			require.Equal(t, c.action, d.Action, "%+v", d)
			for _, s := range c.says {
				require.Contains(t, strings.Join([]string{d.Size, d.Because, d.Governs, d.Settle}, " | "), s)
			}
		})
	}
}

func shortMains(r *Readings) {
	for i := range r.Mains {
		r.Mains[i].Sizes = r.Mains[i].Sizes[:1]
	}
}

// What is ordered follows the decisions.
func TestInspect_orders(t *testing.T) {
	order := func(what, size string, count int, sure bool) func(t *testing.T, r inspection.Report) {
		return func(t *testing.T, r inspection.Report) {
			for _, o := range r.Orders {
				if o.What == what {
					require.Equal(t, []any{size, count, sure}, []any{o.Size, o.Count, o.Sure})
					return
				}
			}
			require.Fail(t, "not ordered", "%s in %+v", what, r.Orders)
		}
	}
	for _, c := range []struct {
		name   string
		change func(l *Limits, r *Readings)
		want   func(t *testing.T, r inspection.Report)
	}{
		{"one in stock", unchanged, order("pistons with rings", "+0.50 mm", 3, true)},
		{"the block isn't passed", func(_ *Limits, r *Readings) { r.Block.Condition.CrackTested = inspection.NotLooked }, order("pistons with rings", "+0.50 mm", 3, false)},
		{"two kits may do", func(_ *Limits, r *Readings) { r.Cylinders[2].Walls = nil }, order("pistons with rings", "+0.50 mm", 3, false)},
		{"a liner", func(l *Limits, _ *Readings) { l.Bores.Kits = l.Bores.Kits[:1] }, order("repair liners", "", 1, true)},
		{"its pistons", func(l *Limits, _ *Readings) { l.Bores.Kits = l.Bores.Kits[:1] }, order("pistons with rings", "+0.25 mm", 4, true)},
		{"cracked block", func(_ *Limits, r *Readings) { r.Block.Condition.Cracked = inspection.Yes }, order("block", "", 1, true)},
		{"cracked bore", func(_ *Limits, r *Readings) { r.Cylinders[1].Condition.Cracked = inspection.Yes }, order("block", "", 1, true)},
		{"cracked head", func(_ *Limits, r *Readings) { r.Heads[0].Condition.Cracked = inspection.Yes }, order("head", "", 1, true)},
		{"all in stock", func(l *Limits, _ *Readings) { l.Bores.Kits[1].Stock = StockOf(4) }, func(t *testing.T, r inspection.Report) { require.Empty(t, r.Orders) }},
		{"all sound", func(_ *Limits, r *Readings) { sound(r) }, func(t *testing.T, r inspection.Report) { require.Empty(t, r.Orders) }},
	} {
		t.Run(c.name, func(t *testing.T) { c.want(t, inspected(t, c.change)) })
	}
}
