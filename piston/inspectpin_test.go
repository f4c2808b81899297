package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// every sets all readings of a list of piston 1.
func every(list [][]inspection.Reading, s string) {
	for k := range list {
		for j := range list[k] {
			list[k][j] = reading(s)
		}
	}
}

func TestInspect_pin(t *testing.T) {
	// The pin is worn, by its own limit.
	out := inspected(t, func(_ *Limits, r *Readings) { every(r.Pistons[0].Pin.AtSmallEnd, "21.960 mm") })
	d := decision(t, &out, "gudgeon pins", "piston 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "pin wear")
	require.Equal(t, inspection.Order{Step: inspection.StepPins, What: "gudgeon pins", Count: 1, For: []string{"piston 1"}, Sure: true}, out.Orders[0])
	require.Equal(t, inspection.CleanAndReUse, decision(t, &out, "pistons", "piston 1").Action)
	// A new pin of 21.994–22.000 in the bosses of 22.0065 ± 0.001 mm at the least.
	f := finding(t, out.Predicted, "pin clearance in the bosses", "piston 1")
	require.Equal(t, at("[0.0055 mm, 0.0135 mm]"), f.Length.Least)

	// A fit past its limit: by what a new pin would have, the pin's doing …
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pins.Wear = inspection.Limit{}
		every(r.Pistons[0].Pin.AtBosses, "21.972 mm")
	})
	d = decision(t, &out, "gudgeon pins", "piston 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "a new pin would have")
	// … or the bosses' …
	out = inspected(t, func(_ *Limits, r *Readings) { every(r.Pistons[0].Pin.Bosses, "22.034 mm") })
	d = decision(t, &out, "pistons", "piston 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "the bosses are worn")
	// … or the small end's.
	out = inspected(t, func(_ *Limits, r *Readings) { every(r.Pistons[0].Pin.SmallEnd, "22.055 mm") })
	d = decision(t, &out, "small ends", "rod 1")
	require.Equal(t, inspection.Repair, d.Action)
	require.Equal(t, "a new bush, bored to 22.012–22.018 mm", d.Size)
	require.Equal(t, "small end bushes", out.Orders[0].What)
	f = finding(t, out.Predicted, "pin clearance in the small end", "piston 1")
	require.Equal(t, at("[0.0155 mm, 0.0235 mm]"), f.Length.Least) // 22.012–22.018 less 21.9955 ± 0.001
	require.Contains(t, out.Cautions[len(out.Cautions)-2], "bush")

	// What a new pin would have can't be told, or isn't known.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pins.Wear = inspection.Limit{}
		every(r.Pistons[0].Pin.Bosses, "22.027 mm")
		every(r.Pistons[0].Pin.AtBosses, "21.990 mm")
	})
	require.Contains(t, decision(t, &out, "gudgeon pins", "piston 1").Settle, "measure a new pin")
	require.Contains(t, decision(t, &out, "pistons", "piston 1").Settle, "measure a new pin")
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pins.Wear, l.Pins.NewPin = inspection.Limit{}, tolerance.Band{}
		every(r.Pistons[0].Pin.Bosses, "22.034 mm")
	})
	require.Contains(t, decision(t, &out, "gudgeon pins", "piston 1").Settle, "look up what a new pin measures")
	require.Contains(t, decision(t, &out, "pistons", "piston 1").Settle, "look up what a new pin measures")

	// Without a wear limit the manual decides.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pins.BossClearance.Wear = tolerance.Printed{}
		every(r.Pistons[0].Pin.Bosses, "22.034 mm")
		every(r.Pistons[1].Pin.AtBosses, "21.975 mm")
	})
	require.Contains(t, decision(t, &out, "pistons", "piston 1").Settle, "look up the wear limit")
	require.Contains(t, decision(t, &out, "gudgeon pins", "piston 2").Settle, "look up the wear limit")

	// End float that isn't there, and an ovality that can't be told.
	out = inspected(t, func(_ *Limits, r *Readings) {
		r.Pistons[0].Pin.Between = reading("70.05 ±0.02 mm")
		r.Pistons[1].Pin.SmallEnd[0][1] = reading("22.019 mm")
		r.Pistons[2].Pin.AtSmallEnd[0][0] = reading("21.9875 mm")
	})
	require.Contains(t, decision(t, &out, "gudgeon pins", "piston 1").Settle, "never force a circlip in")
	d = decision(t, &out, "gudgeon pins", "piston 3")
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "pin at the small end, middle: pin ovality")
	f = finding(t, out.Findings, "pin ovality", "piston 3, pin at the small end, middle")
	require.Equal(t, tolerance.CantTell, f.Standing())

	// One direction alone tells no ovality.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Pins.Directions = nil
		l.Pins.SmallEndOvality = inspection.Limit{Wear: printed(t, "max 0.008 mm")}
		for i := range r.Pistons {
			for k := range pinLists {
				for j, s := range r.Pistons[i].Pin.list(k) {
					r.Pistons[i].Pin.list(k)[j] = s[:1]
				}
			}
		}
	})
	require.Contains(t, decision(t, &out, "gudgeon pins", "piston 1").Settle, "one reading tells no ovality")
	require.Contains(t, decision(t, &out, "small ends", "rod 1").Settle, "one reading tells no ovality")
}

// A pressed pin: interference in the small end, which has no bush.
func TestInspect_pressedPin(t *testing.T) {
	pressed := func(l *Limits, r *Readings, hole string) {
		l.Pins.Fit, l.Pins.Bush = PinPressed, false
		l.Pins.SmallEndClearance, l.Pins.EndFloat = inspection.Limit{}, inspection.Limit{}
		l.Pins.SmallEndInterference = inspection.Limit{New: printed(t, "0.015–0.045 mm"), Wear: printed(t, "min 0.012 mm")}
		l.Pins.NewSmallEnd = band("21.960–21.975 mm")
		for i := range r.Pistons {
			r.Pistons[i].Pin.Between, r.Pistons[i].Pin.Length = inspection.Reading{}, inspection.Reading{}
			every(r.Pistons[i].Pin.SmallEnd, "21.968 mm")
		}
		every(r.Pistons[0].Pin.SmallEnd, hole)
	}
	out := inspected(t, func(l *Limits, r *Readings) { pressed(l, r, "21.968 mm") })
	require.Equal(t, inspection.ReUse, decision(t, &out, "small ends", "rod 1").Action)
	f := finding(t, out.Predicted, "pin interference in the small end", "piston 1")
	require.Equal(t, at("[0.0245 mm, 0.0285 mm]"), f.Length.Least) // 21.9945 ± 0.001 less 21.968 ± 0.001
	require.Contains(t, out.Cautions[1], "Pressed pins")

	out = inspected(t, func(l *Limits, r *Readings) { pressed(l, r, "21.992 mm") })
	d := decision(t, &out, "small ends", "rod 1")
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "the small end is worn")
	require.Equal(t, "connecting rods", out.Orders[0].What)
	out = inspected(t, func(l *Limits, r *Readings) {
		pressed(l, r, "21.968 mm")
		l.Pins.SmallEndOvality = inspection.Limit{Wear: printed(t, "max 0.005 mm")}
		r.Pistons[0].Pin.SmallEnd[0][0] = reading("21.982 mm")
	})
	require.Equal(t, inspection.Replace, decision(t, &out, "small ends", "rod 1").Action)
	l, r := demo(t)
	pressed(&l, &r, "21.968 mm")
	blank := l.Blank()
	out, err := Inspect(&l, &blank)
	require.NoError(t, err)
	for _, m := range out.Missing {
		if m.Measure == "small end" {
			require.Equal(t, "new 21.96–21.975 mm; pin interference in the small end: new 0.015–0.045 mm; wear limit min 0.012 mm", m.Limit)
		}
	}
}

func TestInspect_skirtClearance(t *testing.T) {
	const where = "piston 1"
	bore := func(s string) func(*Limits, *Readings) {
		return func(_ *Limits, r *Readings) { r.Bores[0].Skirt = []inspection.Reading{reading(s)} }
	}
	// Loose, and a new piston would be too: the bore is worn.
	out := inspected(t, bore("86.110 ±0.002 mm"))
	d := decision(t, &out, "pistons", where)
	require.Equal(t, inspection.MeasureAgain, d.Action)
	require.Contains(t, d.Because, "the bore is worn")
	// A new one brings it back.
	out = inspected(t, func(l *Limits, r *Readings) {
		l.Skirt.Size = inspection.Limit{}
		for k := range r.Pistons[0].Skirt {
			r.Pistons[0].Skirt[k].Across = reading([]string{"85.900 mm", "85.880 mm", "85.870 mm"}[k])
		}
		r.Pistons[0].Skirt[1].Along = reading("85.640 mm")
		l.Skirt.Collapse = inspection.Limit{}
	})
	d = decision(t, &out, "pistons", where)
	require.Equal(t, inspection.Replace, d.Action)
	require.Contains(t, d.Because, "a new piston would have [0.041 mm, 0.062 mm] in that bore")
	// It may.
	out = inspected(t, bore("86.076 ±0.002 mm"))
	require.Equal(t, inspection.CleanAndReUse, decision(t, &out, "pistons", where).Action)
	out = inspected(t, bore("86.088 ±0.002 mm"))
	require.Contains(t, decision(t, &out, "pistons", where).Settle, "measure a new piston")
	// Without limits and sizes that tell.
	out = inspected(t, func(l *Limits, r *Readings) {
		bore("86.110 ±0.002 mm")(l, r)
		l.Skirt.New, l.Skirt.Collapse = nil, inspection.Limit{}
	})
	require.Contains(t, decision(t, &out, "pistons", where).Settle, "look up what a new skirt measures")
	out = inspected(t, func(l *Limits, r *Readings) {
		bore("86.035 ±0.001 mm")(l, r)
		l.Skirt.Clearance.Wear, l.Skirt.Clearance.WearAlso = tolerance.Printed{}, tolerance.Printed{}
		l.Skirt.New[1] = band("85.974–85.976 mm")
		l.Skirt.Collapse = inspection.Limit{}
	})
	require.Contains(t, decision(t, &out, "pistons", where).Settle, "look up the wear limit")
	// An interference.
	out = inspected(t, bore("85.930 ±0.002 mm"))
	require.Contains(t, decision(t, &out, "pistons", where).Because, "doesn't go in its bore")
	// Bores of another engine.
	out = inspected(t, bore("46.013 mm"))
	require.Contains(t, out.Slips[0].Text, "in another unit, or a digit slipped")
	// A wear that can't be told.
	out = inspected(t, func(l *Limits, _ *Readings) {
		l.Skirt.Wear = inspection.Limit{Wear: printed(t, "max 0.04 mm")}
		l.Skirt.New = nil
	})
	require.Contains(t, decision(t, &out, "pistons", where).Settle, "look up the size when new")
	// Outside a band without a wear limit.
	out = inspected(t, func(_ *Limits, r *Readings) { r.Pistons[0].Skirt[1].Along = reading("85.600 mm") })
	require.Contains(t, decision(t, &out, "pistons", where).Settle, "look up the wear limit in the engine maker's manual")
}

// By a pull test too, whose rule goes with the answer.
func TestInspect_pull(t *testing.T) {
	rule := PublishedPullRules()[0]
	force := func(s string) tolerance.Interval[units.Force] {
		f, err := tolerance.ParseInterval[units.Force](s)
		require.NoError(t, err)
		return f
	}
	change := func(l *Limits, r *Readings) {
		l.Skirt.PullRule, l.Skirt.PullAt = &rule, []string{"front", "rear"}
		l.Skirt.Pulled = inspection.Limit{New: printed(t, "0.0015–0.0045 in"), Wear: printed(t, "max 0.008 in")}
		for i := range r.Pistons {
			pull := []PullTrial{{Strip: at("0.002 in"), Pull: force("6 ±0.25 lbf")}}
			r.Pistons[i].Pulls = [][]PullTrial{pull, pull}
		}
	}
	out := inspected(t, change)
	f := finding(t, out.Findings, "piston clearance by pull test (6 lb)", "piston 1")
	require.Equal(t, at("0.003 in"), f.Length.Least)
	require.Equal(t, "pistons[0].pulls", f.Path)
	out = inspected(t, func(l *Limits, r *Readings) {
		change(l, r)
		r.Pistons[0].Pulls[1] = nil
		r.Pistons[1].Pulls[0][0].Pull = force("5.5 ±3 lbf")
		r.Pistons[2].Pulls[0] = []PullTrial{{Strip: at("0.0035 in"), Pull: force("6.5 ±0.25 lbf")}}
	})
	require.Contains(t, decision(t, &out, "pistons", "piston 1").Settle, "take piston clearance by pull test (6 lb), piston 1, rear")
	require.Contains(t, decision(t, &out, "pistons", "piston 2").Because, "a pull of the strip tells nothing")
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "pistons", "piston 3").Action)
	require.Contains(t, finding(t, out.Findings, "piston clearance by pull test (6 lb)", "piston 3").Settle(), "pull a strip nearer to it")
	l, r := demo(t)
	change(&l, &r)
	r.Pistons[0].Pulls[0][0].Strip = at("0 mm")
	_, err := Inspect(&l, &r)
	require.ErrorIs(t, err, ErrInput)
	// Nothing but pulls.
	out = inspected(t, func(l *Limits, r *Readings) {
		change(l, r)
		for i := range r.Pistons {
			r.Pistons[i].Skirt = nil
		}
	})
	require.Equal(t, inspection.MeasureAgain, decision(t, &out, "pistons", "piston 1").Action)
}
