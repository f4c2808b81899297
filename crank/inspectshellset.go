package crank

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// shells judges the shells of the mains, or of the big ends, and decides on them.
func (x *shaftRun) shells(b *shaftBearings, sheets []ReadingsBearing, to *shaftGroup) {
	if !b.page.asks() {
		return
	}
	var worst, open inspection.Decision
	seen := false
	for i := range b.n {
		sheet, k := bearingSheet(b, sheets, i)
		var v partVerdict
		x.bearing(b, i, k, sheet, to, &v)
		d := x.bySize(inspection.StepShells, b.part, b.names[i], &v, b.slips)
		if d.Action == inspection.ReUse && b.page.Renew {
			d.Action, d.Because = inspection.Replace, "shells are renewed whatever they measure"
		}
		care := b.page.Care
		care.Scored, care.Pitted = usual(care.Scored, inspection.Replace), usual(care.Pitted, inspection.Replace)
		d = x.decide(&v, &sheet.Condition, care, d)
		if v.taken == 0 && sheet.Condition == (inspection.Condition{}) {
			open = d
			continue
		}
		seen = true
		if d.Action == inspection.MeasureAgain {
			open = d
		}
		if worst.Part == "" || d.Action > worst.Action {
			worst = d
		}
	}
	x.shellSet(b, to, seen, worst, open)
}

// asks reports whether anything of the shells is asked for.
func (p *LimitsBearings) asks() bool {
	return given(&p.OilClearance) || p.asksShells()
}

// asksShells reports whether walls, nip or spread are asked for.
func (p *LimitsBearings) asksShells() bool {
	return given(&p.Wall) || given(&p.Variation) || given(&p.Spread) || given(&p.Gap)
}

// bearingSheet is a bearing's sheet and its place in its list; an empty one, and the
// number of bearings, where it isn't in it.
func bearingSheet(b *shaftBearings, sheets []ReadingsBearing, i int) (*ReadingsBearing, int) {
	for k := range sheets {
		if sheets[k].Number == i+1 {
			return &sheets[k], k
		}
	}
	return &ReadingsBearing{}, b.n
}

// journalOf is the journal that a bearing carries, by place.
func (x *shaftRun) journalOf(b *shaftBearings, i int) int {
	if b == &x.in.ends {
		return x.in.rods.pin[i]
	}
	return i
}

// shellSet decides on all shells of the mains, or of the big ends: where one is
// renewed all are, and where the journals change so do they.
func (x *shaftRun) shellSet(b *shaftBearings, to *shaftGroup, seen bool, worst, open inspection.Decision) {
	d := inspection.Decision{Step: inspection.StepShells, Part: b.part}
	renew := true
	switch {
	case to.gone && to.all:
		d.Action, d.Because = inspection.Replace, "they go with the crankshaft: what takes its place has journals of its own"
	case to.ground:
		d.Action, d.Because = inspection.Replace, "the "+to.g.part+" are ground"
		d.Size = to.g.kits[to.to].Name
	case x.thinShells(b, to) && worst.Action < inspection.Replace:
		d.Action, d.Because, d.Size, renew = inspection.Replace, "shells of another size go on journals that stay as they are", to.decision.Size, false
	case !seen:
		return
	case worst.Action >= inspection.Replace:
		d.Action, d.Because, d.Governs = inspection.Replace, worst.Because, worst.Where
		d.Slips = worst.Slips
		if to.to >= 0 {
			d.Size = to.g.kits[to.to].Name
		}
	case open.Part != "":
		d.Because, d.Settle, d.Slips, d.Governs = open.Because, open.Settle, open.Slips, open.Where
	default:
		d.Action, d.Because = worst.Action, worst.Because
		if d.Action > inspection.CleanAndReUse {
			d.Governs = worst.Where
		}
	}
	if d.Action == inspection.Replace && to.all && to.decision.Action == inspection.MeasureAgain {
		d.Settle = clause(d.Settle, "their size follows once the "+to.g.part+" are decided")
	}
	x.r.Decisions = append(x.r.Decisions, d)
	to.newShells = renew && d.Action == inspection.Replace
	x.orderShells(b, to, to.newShells)
}

// thinShells reports whether a journal that stays as it is gets shells of another
// size.
func (x *shaftRun) thinShells(b *shaftBearings, to *shaftGroup) bool {
	for i := range b.n {
		if kit := to.states[x.journalOf(b, i)].shells; kit >= 0 && kit != to.current {
			return true
		}
	}
	return false
}
