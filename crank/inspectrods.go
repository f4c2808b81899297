package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// rods judges the connecting rods and decides on each.
func (x *shaftRun) rods() {
	g, p := &x.in.rods, &x.l.Rods
	if !p.asks() && !p.Care.CrackTest {
		return
	}
	var renew []string
	for i := range g.n {
		sheet, k := x.rodSheet(i)
		var v partVerdict
		x.tests(inspection.StepRods, g.paths[k], g.names[i], p.Care, &sheet.Condition)
		x.rod(i, sheet, k, &v)
		x.eyes(i, sheet, k, &v)
		d := x.bySize(inspection.StepRods, "connecting rod", g.names[i], &v, g.slips)
		d = x.decide(&v, &sheet.Condition, p.Care, d)
		if d.Action >= inspection.Replace && (v.taken > 0 || sheet.Condition != inspection.Condition{}) {
			renew = append(renew, g.names[i])
			x.newRods[i] = true
		}
	}
	if len(renew) > 0 {
		x.r.Orders = append(x.r.Orders, inspection.Order{Step: inspection.StepRods, What: "connecting rods with caps", Count: len(renew), For: renew, Sure: true})
	}
}

// asks reports whether anything of the rods is measured.
func (p *LimitsRods) asks() bool {
	return p.asksDials() || p.asksTwist() || given(&p.Side) || p.BigEnd.asks() || p.SmallEnd.asks()
}

func (p *LimitsRods) asksDials() bool {
	return given(&p.Length) || given(&p.Bend) || given(&p.BendPer) || given(&p.Centres)
}

func (p *LimitsRods) asksTwist() bool { return given(&p.Twist) || given(&p.TwistPer) }

// rod judges length, bend, twist and side clearance.
func (x *shaftRun) rod(i int, sheet *ReadingsRod, place int, v *partVerdict) {
	g, p := &x.in.rods, &x.l.Rods
	path, there := g.paths[place], place < g.n
	at := shaftSpot{inspection.StepRods, g.names[i], path, there}
	c := RodCheck{Where: g.names[i], CrackedCap: p.CrackedCap, Span: p.Span, TwistSpan: p.TwistSpan, Master: p.Master, Stroke: p.Stroke, Limits: g.limits}
	any := false
	if p.asksDials() {
		var right, left bool
		bend := &p.Bend
		if !given(bend) {
			bend = &p.BendPer
		}
		c.Right, right = x.read(v, &at, &sheet.Right, x.l.Instruments.Dial, shaftAsk{"right", "right dial", "", "alignment fixture", &p.Length})
		c.Left, left = x.read(v, &at, &sheet.Left, x.l.Instruments.Dial, shaftAsk{"left", "left dial", "", "alignment fixture", bend})
		if any = right && left; !any {
			c.Right, c.Left = tolerance.Bracket{}, tolerance.Bracket{}
		}
	}
	if p.asksTwist() {
		twist := &p.Twist
		if !given(twist) {
			twist = &p.TwistPer
		}
		var ok bool
		c.Twist, ok = x.read(v, &at, &sheet.Twist, 2*x.l.Instruments.Dial, shaftAsk{"twist", "twist", "", "alignment fixture", twist})
		if ok {
			c.Twist = positive(c.Twist)
		}
		any = any || ok
	}
	if given(&p.Side) {
		var room [4]tolerance.Bracket
		c.Side = x.readAll(room[:0], v, &at, sheet.Side, 1, 0, shaftAsk{"side", "side clearance", "", "feeler blades", &p.Side})
		any = any || len(c.Side) > 0
	}
	if !any {
		return
	}
	if err := c.check(); err != nil {
		x.doubt(v, path, g.names[i], err)
		return
	}
	bent := inspection.Replace
	if p.Straighten && !p.CrackedCap {
		bent = inspection.Repair
	}
	before := v.rank
	err := c.measures(func(m rodMeasure, spec tolerance.Spec, least, greatest tolerance.Bracket) {
		if spec.IsZero() {
			return
		}
		work := bent
		if m == rodLength || m == rodCentres || m == rodSide {
			work = inspection.Replace
		}
		x.assess(v, inspection.StepRods, path, g.measures[m], g.names[i], spec, work, least, greatest)
	})
	if err != nil {
		x.doubt(v, path, g.names[i], err)
		return
	}
	if v.rank > before && v.rank >= runOutRank(tolerance.OutsideNewBand) {
		if r, err := c.Assess(); err == nil {
			v.next = r.Next
		}
	}
}

// eyes judges both eyes of a rod.
func (x *shaftRun) eyes(i int, sheet *ReadingsRod, place int, v *partVerdict) {
	if x.l.Rods.BigEnd.asks() {
		x.eye(&x.in.rods.eyes[0], i, sheet.BigEnd, place, v)
	}
	if x.l.Rods.SmallEnd.asks() {
		x.eye(&x.in.rods.eyes[1], i, sheet.SmallEnd, place, v)
	}
}

// eye judges one eye: size, ovality plane by plane and taper direction by
// direction, as [RodBore] does.
func (x *shaftRun) eye(e *shaftEye, i int, planes []ReadingsPlane, place int, v *partVerdict) {
	g := &x.in.rods
	high, wide := len(g.planes), len(g.directions)
	var room [16]tolerance.Bracket
	all := room[:0]
	for p := range high {
		for k := range wide {
			if p < len(planes) && k < len(planes[p].Sizes) && planes[p].Sizes[k].Taken {
				all = append(all, within1(planes[p].Sizes[k], x.l.Instruments.Bore))
				v.taken++
				continue
			}
			all = append(all, tolerance.Bracket{})
			at := shaftSpot{inspection.StepRods, e.names[i], g.paths[place], place < g.n}
			ask := shaftAsk{e.field, "diameter", g.planes[p] + ", " + g.directions[k], "bore gauge", &e.page.Size}
			ask.field = inspection.Index(inspection.Index(e.field, p)+".sizes", k)
			x.miss(v, at.missing(&ask, -1, 1))
		}
	}
	var line [16]tolerance.Bracket
	read := taken(line[:0], all, 0, 1, len(all))
	if len(read) < 2 {
		return
	}
	path, work, before := e.paths[place], usual(e.page.Work, inspection.Replace), v.rank
	if !e.size.IsZero() {
		x.assess(v, inspection.StepRods, path, "size", e.names[i], e.size, work, read...)
	}
	if !e.ovality.IsZero() {
		for p := range high {
			if read = taken(line[:0], all, p*wide, 1, wide); len(read) > 1 {
				x.assess(v, inspection.StepRods, path, "ovality", e.planes[i][p], e.ovality, work, RodOvality(read[0], read[1:]...))
			}
		}
	}
	if !e.taper.IsZero() {
		for k := range wide {
			if read = taken(line[:0], all, k, wide, high); len(read) > 1 {
				x.assess(v, inspection.StepRods, path, "taper", e.directions[i][k], e.taper, work, RodTaper(read[0], read[1:]...))
			}
		}
	}
	if v.rank > before && v.rank >= runOutRank(tolerance.OutsideNewBand) {
		v.next = "never file a cap or a rod to close a bore up"
	}
}

// taken are those of so many diameters, from one on by a step, that were read.
func taken(dst, all []tolerance.Bracket, from, step, count int) []tolerance.Bracket {
	for n := range count {
		if d := all[from+n*step]; !d.IsZero() {
			dst = append(dst, d)
		}
	}
	return dst
}

// bigEndBores are the housing bores of a rod's shells, as gauged.
func (x *shaftRun) bigEndBores(dst []tolerance.Bracket, i int) []tolerance.Bracket {
	sheet, _ := x.rodSheet(i)
	for p := range sheet.BigEnd {
		for _, r := range sheet.BigEnd[p].Sizes {
			if r.Taken {
				dst = append(dst, within1(r, x.l.Instruments.Bore))
			}
		}
	}
	return dst
}

// mainHousings are the housing bores of a main, where they were given.
func (x *shaftRun) mainHousings(dst []tolerance.Bracket, i int) []tolerance.Bracket {
	sheet, _ := bearingSheet(&x.in.shells, x.d.MainBearings, i)
	for _, r := range sheet.Housing {
		if r.Taken {
			dst = append(dst, within1(r, x.l.Instruments.Bore))
		}
	}
	return dst
}

// housings are the housing bores of a bearing, as gauged.
func (x *shaftRun) housings(dst []tolerance.Bracket, b *shaftBearings, i int) []tolerance.Bracket {
	if b == &x.in.ends {
		return x.bigEndBores(dst, i)
	}
	return x.mainHousings(dst, i)
}
