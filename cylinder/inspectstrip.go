package cylinder

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

type pressureReading = inspection.ReadingOf[units.Pressure]

// strip judges the tests before the engine is stripped.
func (x *inspecting) strip() error {
	l := x.in.limits.Strip
	if l == nil {
		return nil
	}
	t := tallyOf(inspection.StepBeforeStrip, "cylinders before the strip", "")
	var dry, wet []CylinderPressure
	var leaks []CylinderLeakage
	if l.compression() {
		var err error
		if dry, wet, err = x.compression(&t, l); err != nil {
			return err
		}
	}
	if l.leakage() {
		var err error
		if leaks, err = x.leakage(&t, l); err != nil {
			return err
		}
	}
	if x.stripped && x.out == nil || !t.known() {
		return nil // what they pointed to has been looked at, or nothing was read
	}
	return x.pointers(&t, l, dry, wet, leaks)
}

// compression enters the findings of a compression test.
func (x *inspecting) compression(t *tally, l *LimitsStrip) (dry, wet []CylinderPressure, err error) {
	n := len(x.in.where)
	all := make([]tolerance.Interval[units.Pressure], 0, n)
	keep := !x.stripped || x.out != nil // for pointers
	instrument := with(l.With, "compression gauge")
	for number := 1; number <= n; number++ {
		c, at := x.cylinder(number)
		path := x.in.dryPaths[at]
		if !c.Compression.Dry.Taken {
			x.missStrip(t, path, "compression, dry", x.in.where[number-1], instrument, x.in.compression.printed)
		} else {
			p, err := c.Compression.Dry.Within(l.GaugeError)
			if err != nil {
				return nil, nil, inspection.At(path, err)
			}
			p.Value = above0(p.Value)
			t.taken++
			if all = append(all, p.Value); keep {
				dry = append(dry, CylinderPressure{number, p.Value})
			}
			if err := quantity(x, t, &x.in.compression, x.in.where[number-1], path, p.Value); err != nil {
				return nil, nil, err
			}
		}
		switch w := c.Compression.Wet; {
		case w.Taken:
			p, err := w.Within(l.GaugeError)
			if err != nil {
				return nil, nil, inspection.At(x.in.paths[at]+".compression.wet", err)
			}
			t.taken++
			wet = append(wet, CylinderPressure{number, above0(p.Value)})
		case l.Wet:
			x.missStrip(t, x.in.paths[at]+".compression.wet", "compression, wet", x.in.where[number-1], instrument, "")
		}
	}
	x.proofPressures(t, all)
	if len(all) >= 2 {
		if err := quantity(x, t, &x.in.difference, "all cylinders", "cylinders", all[0].Spread(all[1:]...)); err != nil {
			return nil, nil, err
		}
	}
	return dry, wet, nil
}

// proofPressures lists a dry reading that stands a factor from the others.
func (x *inspecting) proofPressures(t *tally, all []tolerance.Interval[units.Pressure]) {
	if least, greatest := tolerance.Extremes(all...); withinHalf(least, greatest) {
		return // no factor lies between them
	}
	set := make([]pressureReading, len(x.in.where))
	paths := make([]string, len(set))
	for i := range set {
		c, at := x.cylinder(i + 1)
		set[i], paths[i] = c.Compression.Dry, x.in.dryPaths[at]
	}
	before := len(x.report.Slips)
	x.report.Slips = inspection.ProofreadReadings(x.report.Slips, paths, x.in.where, set)
	for _, s := range x.report.Slips[before:] {
		t.slips, t.suspect = append(t.slips, s.Path), s.What+": "+s.Text
	}
}

// withinHalf reports whether the greatest is no more than half as much again as
// the least.
func withinHalf(least, greatest tolerance.Interval[units.Pressure]) bool {
	lo, _ := least.Lower()
	hi, end := greatest.Upper()
	return end != tolerance.Absent && hi <= lo+lo/2
}

// missStrip enters a reading that is still to be taken, as long as it can be.
func (x *inspecting) missStrip(t *tally, path, measure, where, with, limit string) {
	if !x.stripped {
		x.miss(t, path, measure, where, with, limit)
	}
}

// above0 is a pressure within its gauge's error, which is never below none.
func above0(p tolerance.Interval[units.Pressure]) tolerance.Interval[units.Pressure] {
	return p.Max(tolerance.Exactly(units.Pressure(0)))
}

// leakage enters the findings of a leakage test: the drop from the supply,
// against the share of the supply that may be lost.
func (x *inspecting) leakage(t *tally, l *LimitsStrip) (leaks []CylinderLeakage, err error) {
	instrument := with(l.With, "leakage tester")
	for i, where := range x.in.where {
		c, at := x.cylinder(i + 1)
		path := x.in.leaks[at]
		for _, r := range [...]struct {
			path, measure string
			r             pressureReading
		}{{".supply", "leakage test, supply", c.Leakage.Supply}, {".held", "leakage test, held", c.Leakage.Held}} {
			if !r.r.Taken {
				x.missStrip(t, path+r.path, r.measure, where, instrument, x.in.leakage.printed)
			}
		}
		if !c.Leakage.Supply.Taken || !c.Leakage.Held.Taken {
			continue
		}
		supply, err := c.Leakage.Supply.Within(l.GaugeError)
		if err != nil {
			return nil, inspection.At(path+".supply", err)
		}
		held, err := c.Leakage.Held.Within(l.GaugeError)
		if err != nil {
			return nil, inspection.At(path+".held", err)
		}
		if lo, _ := supply.Value.Lower(); lo <= 0 {
			return nil, badAt(path+".supply", "supply", supply.Value.String(), "above 0 with its error")
		}
		t.taken++
		one := CylinderLeakage{Cylinder: i + 1, Supply: supply.Value, Held: above0(held.Value), Heard: c.Leakage.Heard, Neighbour: c.Leakage.Neighbour}
		if most, end := one.Supply.Upper(); end != tolerance.Absent {
			one.Held = one.Held.Min(tolerance.Exactly(most)) // no more is held than is supplied
		}
		if !x.stripped || x.out != nil {
			leaks = append(leaks, one)
		}
		if l.Leakage == 0 {
			continue
		}
		// Of a supply that isn't known exactly the least share counts, so near
		// the limit the cylinder is on the worse side of it.
		m := x.in.leakage
		least, _ := one.Supply.Lower()
		m.spec.Wear = tolerance.AtMost(least.Scale(int64(l.Leakage), 100))
		drop := LeakageDrop(one.Supply, one.Held).Max(tolerance.Exactly(units.Pressure(0)))
		if err := quantity(x, t, &m, where, path, drop); err != nil {
			return nil, err
		}
	}
	return leaks, nil
}

// pointers say what the tests point to, and that nothing is proved by them.
func (x *inspecting) pointers(t *tally, l *LimitsStrip, dry, wet []CylinderPressure, leaks []CylinderLeakage) error {
	var because, settle []string
	add := func(list []Pointer, conditions []string) {
		for _, p := range list {
			because, settle = append(because, p.String()), append(settle, p.Next)
		}
		because = append(because, conditions...)
	}
	n := len(x.in.where)
	if len(dry) >= 2 {
		limits := CompressionLimits{Pressure: x.in.compression.spec, LowPercent: l.LowPercent, RisePercent: l.RisePercent, Difference: l.Difference.Wear.BandOf}
		if limits.Difference.IsZero() {
			limits.Difference = l.Difference.New.BandOf
		}
		report, err := CompressionTest{Cylinders: n, Dry: dry, Wet: wet, Conditions: x.r.Conditions, Limits: limits, Neighbours: x.in.neighbours()}.Assess()
		if err != nil {
			return inspection.At("cylinders", err)
		}
		add(report.Pointers, nil)
		if x.out != nil {
			x.out.Compression = &report
		}
	}
	if len(leaks) >= 2 {
		report, err := LeakageTest{Cylinders: n, Readings: leaks, Engine: x.r.Conditions.Engine, Most: l.Leakage, Difference: l.LeakageDifference}.Assess()
		if err != nil {
			return inspection.At("cylinders", err)
		}
		add(report.Pointers, report.Conditions)
		if x.out != nil {
			x.out.Leakage = &report
		}
	}
	if x.stripped {
		return nil
	}
	d := x.decide(t, rule{used: inspection.ReUse, past: inspection.MeasureAgain})
	if len(because) > 0 || d.Action == inspection.MeasureAgain {
		d.Action = inspection.MeasureAgain
		d.Because = joined(d.Because, strings.Join(because, "; "))
		d.Settle = joined(d.Settle, strings.Join(settle, "; "))
		if d.Settle == "" {
			d.Settle = "strip the engine and measure its bores, rings, valves and faces"
		}
	}
	x.keep(d)
	return nil
}

// neighbours are the cylinders side by side in their banks.
func (in *Inspector) neighbours() [][2]int {
	pairs := make([][2]int, 0, len(in.where))
	for _, bank := range in.banks {
		for i := 1; i < len(bank); i++ {
			pairs = append(pairs, [2]int{bank[i-1], bank[i]})
		}
	}
	return pairs
}

// block decides on the block by what was seen of it.
func (x *inspecting) block() error {
	l := x.in.limits.Block
	c := &x.r.Block.Condition
	if l == nil {
		return nil
	}
	t := tallyOf(inspection.StepBlock, "block", "")
	if c.Cracked == inspection.NotLooked {
		x.miss(&t, "block.condition.cracked", "cracks, by eye", "block", "a clean block and a good light", "")
	}
	x.tests(&t, &l.Care, c, "block", "block")
	if *c == (inspection.Condition{}) && !x.stripped {
		return nil
	}
	d := inspection.Decision{Step: t.step, Part: t.part, Action: inspection.ReUse, Because: "no crack was found"}
	if c.Cracked == inspection.NotLooked {
		d = inspection.Decision{Step: t.step, Part: t.part, Because: "it isn't written down that anyone looked for cracks", Settle: "look for cracks, the block clean to the metal"}
	}
	d = c.Overrule(l.Care, d)
	x.open = d.Action == inspection.MeasureAgain || d.Action >= inspection.Replace
	x.condemn(&d)
	x.keep(d)
	return nil
}

// condemn orders another block where a decision on a part of it asks for one.
func (x *inspecting) condemn(d *inspection.Decision) {
	if d.Action >= inspection.Replace && !x.condemned {
		x.condemned = true
		x.order(inspection.Order{Step: d.Step, What: "block", Count: 1, Sure: true})
	}
}

func (x *inspecting) order(o inspection.Order) { x.report.Orders = append(x.report.Orders, o) }
