package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// orderBores lists what the bores' work takes.
func (x *inspecting) orderBores(all []inspection.Decision, set *inspection.Decision, w *boringWork) {
	order := func(what, size string, have int, sure bool, pick func(i int) bool) {
		o := inspection.Order{Step: inspection.StepBores, What: what, Size: size, Sure: sure && !x.open}
		for i := range all {
			if pick(i) {
				o.For = append(o.For, x.in.where[i])
			}
		}
		if o.Count = len(o.For) - have; o.Count > 0 {
			x.order(o)
		}
	}
	sure := w.sure && (set.Action == inspection.ReconditionTo || set.Action == inspection.Repair) && len(set.Slips) == 0
	if k := w.kitOr(); k >= 0 && set.Action < inspection.Replace {
		kit := &w.choice.Kits[k]
		have := 0
		if kit.Stock.Known {
			have = kit.Stock.Pieces
		}
		order("pistons with rings", kit.Name, have, sure, func(int) bool { return true })
	}
	if w.lined != nil {
		order("repair liners", "", 0, sure, func(i int) bool { return w.lined[i] })
	}
	if x.in.limits.Liners != nil {
		order(whatLiners, "", 0, true, func(i int) bool { return all[i].Action == inspection.Replace })
	} else {
		x.condemn(set)
	}
}

// kitOr is the kit that is settled, or the one that does for sure once it is.
func (w *boringWork) kitOr() int {
	if w.kit >= 0 || w.choice.Kits == nil {
		return w.kit
	}
	if w.choice.Kit >= 0 {
		return w.choice.Kit
	}
	return w.choice.Possible
}

// afterBores predicts what each bore will be.
func (x *inspecting) afterBores(bores []boreSeen, all []inspection.Decision, w *boringWork) error {
	l, ready := x.in.limits.Bores, x.in.bores
	size := &ready.measures[MeasureSize]
	for i := range bores {
		b := &bores[i]
		after := b.after(l, ready.measures[MeasureSize].spec, all[i].Action, w, i)
		changed := all[i].Action >= inspection.ReconditionTo
		if changed && !after[0].IsZero() && !size.spec.New.IsZero() {
			spec := tolerance.Spec{New: moved(size.spec, oversizeAfter(w, l, all[i].Action, b.c.Oversize)).New}
			f, err := tolerance.Assess(size.name, b.tally.where, spec, after[:]...)
			if err != nil {
				return inspection.At(x.in.paths[b.index], err)
			}
			x.report.Predicted = append(x.report.Predicted, inspection.Found(inspection.StepBores, x.in.paths[b.index], f))
		}
		if x.out == nil {
			continue
		}
		o := BoreOutcome{Cylinder: i + 1, Action: all[i].Action, Oversize: b.c.Oversize,
			LeastAfter: after[0], GreatestAfter: after[1], OversizeAfter: oversizeAfter(w, l, all[i].Action, b.c.Oversize)}
		if b.read && b.tally.suspect == "" {
			o.Least, o.Greatest, o.Levels = b.report.Least.Size, b.report.Greatest.Size, b.levels(x)
		}
		if changed && w.kit >= 0 && w.jobs[i] >= 0 {
			o.Finish = x.finishSize(w, w.jobs[i])
		}
		x.out.Bores = append(x.out.Bores, o)
	}
	return nil
}

// oversizeAfter is the oversize of the piston that a bore will have.
func oversizeAfter(w *boringWork, l *LimitsBores, a inspection.Action, now units.Length) units.Length {
	switch {
	case a == inspection.ReconditionTo || a == inspection.Repair:
		if w.kit >= 0 {
			return w.choice.Kits[w.kit].Oversize
		}
	case a >= inspection.Replace:
		return 0 // a new liner, or a new block
	}
	return now
}

// after is the least and the greatest that a bore will be; zero Brackets where
// that isn't known.
func (b *boreSeen) after(l *LimitsBores, size tolerance.Spec, a inspection.Action, w *boringWork, i int) (ends [2]tolerance.Bracket) {
	one := func(x tolerance.Bracket) [2]tolerance.Bracket { return [2]tolerance.Bracket{x, x} }
	fresh := func(oversize units.Length) [2]tolerance.Bracket {
		band := moved(size, oversize).New.Interval()
		_, loEnd := band.Lower()
		_, hiEnd := band.Upper()
		if loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
			return one(tolerance.Exactly(KitSize(l.Standard, oversize)))
		}
		return one(band)
	}
	switch a {
	case inspection.ReUse, inspection.CleanAndReUse:
		return [2]tolerance.Bracket{b.report.Least.Size, b.report.Greatest.Size}
	case inspection.ReconditionTo, inspection.Repair:
		if w.kit < 0 {
			return ends
		}
		if k := w.jobs[i]; k >= 0 {
			if fit := &w.choice.Bores[k].Fits[w.kit]; fit.Proved {
				return one(fit.Size)
			}
		}
		return fresh(w.choice.Kits[w.kit].Oversize)
	case inspection.Replace, inspection.Scrap:
		return fresh(0)
	}
	return ends // polished or honed at the same size it grows by what isn't known yet
}

// levels are what was read of a bore level by level, at 20 °C.
func (b *boreSeen) levels(x *inspecting) []LevelOutcome {
	s := x.in.bores.survey
	s.Block = x.r.Block.Thermal
	var g boreGauge
	ready := false
	list := make([]LevelOutcome, len(s.Levels))
	for i := range s.Levels {
		list[i].Name, list[i].Depth = s.LevelName(i), s.Levels[i].Depth
		if i >= len(b.c.Levels) {
			continue
		}
		for j := range s.Headings {
			r := b.c.Levels[i].at(j)
			if !r.Taken {
				continue
			}
			q, _ := r.Value.Lower()
			var err error
			if !ready {
				if g, err = s.gauge(q); err != nil {
					return nil
				}
				ready = true
			}
			size, err := g.size(q, q)
			if err != nil {
				return nil
			}
			if list[i].Least.IsZero() {
				list[i].Least, list[i].Greatest = size, size
			}
			list[i].Least, list[i].Greatest = list[i].Least.Min(size), list[i].Greatest.Max(size)
		}
	}
	return list
}

// finishSize is what a bore is bored and honed to for its own piston, where
// each bore's was measured.
func (x *inspecting) finishSize(w *boringWork, k int) FinishSize {
	l := x.in.limits.Bores
	kit := &w.choice.Kits[w.kit]
	if len(kit.Pistons) != len(w.choice.Bores) {
		return FinishSize{}
	}
	clearance, ok := l.Clearance.Middle()
	if !ok {
		return FinishSize{}
	}
	sizes, err := FinishSizes(FinishPlan{Skirts: kit.Pistons[k : k+1], Clearance: clearance, Honing: l.Plan.Honing, Block: x.r.Block.Thermal})
	if err != nil {
		return FinishSize{}
	}
	return sizes[0]
}
