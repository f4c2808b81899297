package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// shaftBolts are the bolts to be renewed.
type shaftBolts struct {
	count int
	where []string
}

// bolts judges the bolts of one cap or rod, and decides on them together.
func (x *shaftRun) bolts(b *shaftBearings, i, holder int, part, where string, sheets []ReadingsBolt, list string, renew *shaftBolts) {
	p := b.bolts
	if !p.asks() && !p.Yield {
		return
	}
	var worst, open inspection.Decision
	unread, renewed := false, 0
	for k := range p.count() {
		name := b.boltNames[i][k]
		sheet, at := &ReadingsBolt{}, list
		for j := range sheets {
			if sheets[j].Number == k+1 {
				sheet, at = &sheets[j], b.boltPaths[holder][j]
			}
		}
		var v partVerdict
		x.tests(inspection.StepBolts, at, name, p.Care, &sheet.Condition)
		x.bolt(p, &b.bolt, sheet, name, at, at != list, &v)
		d := x.bySize(inspection.StepBolts, part, name, &v, b.boltSlips)
		if p.Yield && !sheet.New && x.begun {
			d.Action, d.Settle = inspection.Replace, ""
			d.Because = "tightened to yield: used once, whatever its length"
		}
		d = sheet.Condition.Overrule(p.Care, d)
		if v.taken == 0 && sheet.Condition == (inspection.Condition{}) && !(p.Yield && x.begun) {
			unread = unread || v.missing > 0
			continue
		}
		if d.Action >= inspection.Replace {
			renewed++
		}
		if d.Action > inspection.CleanAndReUse || d.Action == inspection.MeasureAgain {
			d.Governs = name
		}
		switch {
		case d.Action == inspection.MeasureAgain && open.Part == "":
			open = d
		case d.Action != inspection.MeasureAgain && d.Action > worst.Action:
			worst = d
		}
	}
	switch {
	case worst.Part == "" && open.Part == "":
		return
	case worst.Action <= inspection.CleanAndReUse && open.Part != "":
		worst = open
	case worst.Action <= inspection.CleanAndReUse && unread:
		worst.Action, worst.Because, worst.Settle = inspection.MeasureAgain, "not all of them have been read", "read them all"
	}
	worst.Where = where
	x.r.Decisions = append(x.r.Decisions, worst)
	if renewed > 0 {
		renew.count += renewed
		renew.where = append(renew.where, where)
	}
}

// bolt judges one bolt.
func (x *shaftRun) bolt(p *LimitsBolts, limits *BoltCheck, sheet *ReadingsBolt, name, path string, there bool, v *partVerdict) {
	e := x.l.Instruments.Bolt
	at := shaftSpot{inspection.StepBolts, name, path, there}
	c := *limits
	c.Where, c.Used = name, !sheet.New
	if !p.asks() {
		return
	}
	var free bool
	c.Free, free = x.read(v, &at, &sheet.Free, e, shaftAsk{"free", "free length", "", "micrometer", &p.Length})
	if given(&p.Growth) {
		c.AsNew, _ = x.read(v, &at, &sheet.AsNew, e, shaftAsk{"asNew", "free length when new", "", "micrometer", &p.Growth})
	}
	if given(&p.Stretch) {
		c.Tightened, _ = x.read(v, &at, &sheet.Tightened, e, shaftAsk{"tightened", "tightened length", "", "micrometer", &p.Stretch})
	}
	if !free {
		return
	}
	if err := c.check(); err != nil {
		x.doubt(v, path, name, err)
		return
	}
	before := v.rank
	c.measures(func(measure string, spec tolerance.Spec, at tolerance.Bracket) {
		if spec.IsZero() {
			return
		}
		work := inspection.Replace
		if measure == boltStretch {
			work = inspection.MeasureAgain // loosened and tightened again
		}
		x.assess(v, inspection.StepBolts, path, measure, name, spec, work, at)
	})
	if v.rank > before && v.rank >= runOutRank(tolerance.OutsideNewBand) {
		if r, err := c.Assess(); err == nil {
			v.next = r.Next
		}
	}
}

// allBolts is the step of the bolts.
func (x *shaftRun) allBolts() {
	var mains, rods shaftBolts
	b := &x.in.shells
	if b.bolts.asks() || b.bolts.Yield {
		for i := range b.n {
			sheet, at := bearingSheet(b, x.d.MainBearings, i)
			x.bolts(b, i, at, "main cap bolts", b.names[i], sheet.Bolts, b.paths[b.n], &mains)
		}
	}
	b = &x.in.ends
	if b.bolts.asks() || b.bolts.Yield {
		for i := range b.n {
			sheet, at := x.rodSheet(i)
			x.bolts(b, i, at, "rod bolts", b.names[i], sheet.Bolts, "rods", &rods)
		}
	}
	for _, o := range [...]struct {
		what string
		b    *shaftBolts
	}{{"main cap bolts", &mains}, {"rod bolts", &rods}} {
		if o.b.count > 0 {
			x.r.Orders = append(x.r.Orders, inspection.Order{Step: inspection.StepBolts, What: o.what, Count: o.b.count, For: o.b.where, Sure: true})
		}
	}
}

// rodSheet is a rod's sheet and its place in its list; an empty one, and the number
// of rods, where it isn't in it.
func (x *shaftRun) rodSheet(i int) (*ReadingsRod, int) {
	for k := range x.d.Rods {
		if x.d.Rods[k].Number == i+1 {
			return &x.d.Rods[k], k
		}
	}
	return &ReadingsRod{}, x.in.rods.n
}
