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
	return p.asksDials() || p.asksTwist() || !p.Side.IsZero() || p.BigEnd.asks() || p.SmallEnd.asks()
}

func (p *LimitsRods) asksDials() bool {
	return !p.Length.IsZero() || !p.Bend.IsZero() || !p.BendPer.IsZero() || !p.Centres.IsZero()
}

func (p *LimitsRods) asksTwist() bool { return !p.Twist.IsZero() || !p.TwistPer.IsZero() }

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
		if bend.IsZero() {
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
		if twist.IsZero() {
			twist = &p.TwistPer
		}
		var ok bool
		c.Twist, ok = x.read(v, &at, &sheet.Twist, 2*x.l.Instruments.Dial, shaftAsk{"twist", "twist", "", "alignment fixture", twist})
		if ok {
			c.Twist = positive(c.Twist)
		}
		any = any || ok
	}
	if !p.Side.IsZero() {
		var room [4]tolerance.Bracket
		c.Side = x.readAll(room[:0], v, &at, sheet.Side, 1, 0, shaftAsk{"side", "side clearance", "", "feeler blades", &p.Side})
		any = any || len(c.Side) > 0
	}
	if !any {
		return
	}
	r, err := c.Assess()
	if err != nil {
		x.doubt(v, path, g.names[i], err)
		return
	}
	bent := inspection.Replace
	if p.Straighten && !p.CrackedCap {
		bent = inspection.Repair
	}
	for k := range r.Findings {
		f := &r.Findings[k]
		if f.Spec.IsZero() {
			continue
		}
		work := inspection.Replace
		if f.Measure != "side clearance" && f.Measure != "length over the master" && f.Measure != "distance between centres" {
			work = bent
		}
		x.keep(v, inspection.StepRods, path, f, work)
	}
	if runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand) {
		v.next = r.Next
	}
}

// eyes judges both eyes of a rod.
func (x *shaftRun) eyes(i int, sheet *ReadingsRod, place int, v *partVerdict) {
	g, p := &x.in.rods, &x.l.Rods
	path, there := g.paths[place], place < g.n
	for k, eye := range [...]struct {
		page   *LimitsEye
		bore   *RodBore
		planes []ReadingsPlane
		field  string
		paths  []string
	}{{&p.BigEnd, &g.bigEnd, sheet.BigEnd, "bigEnd", g.endPaths}, {&p.SmallEnd, &g.smallEnd, sheet.SmallEnd, "smallEnd", g.pinPaths}} {
		if !eye.page.asks() {
			continue
		}
		b := *eye.bore
		b.Where = g.ends[k][i]
		taken := 0
		b.Sizes, taken = x.eye(&b, eye.planes, path, eye.field, there, &eye.page.Size, v)
		if taken < 2 {
			continue
		}
		eyePath := eye.paths[place]
		r, err := b.Assess()
		if err != nil {
			x.doubt(v, eyePath, b.Where, err)
			continue
		}
		work := usual(eye.page.Work, inspection.Replace)
		before := v.rank
		if !b.Size.IsZero() {
			x.keep(v, inspection.StepRods, eyePath, &r.Size, work)
		}
		for _, list := range [...][]tolerance.Finding{r.Ovality, r.Taper} {
			for n := range list {
				if !list[n].Spec.IsZero() {
					x.keep(v, inspection.StepRods, eyePath, &list[n], work)
				}
			}
		}
		if v.rank > before && v.rank >= runOutRank(tolerance.OutsideNewBand) {
			v.next = "never file a cap or a rod to close a bore up"
		}
	}
}

// eye are the diameters of an eye; the zero Bracket where none was read.
func (x *shaftRun) eye(b *RodBore, planes []ReadingsPlane, path, field string, there bool, limit *inspection.Limit, v *partVerdict) (sizes [][]tolerance.Bracket, taken int) {
	wide := len(b.Directions)
	all := make([]tolerance.Bracket, len(b.Planes)*wide)
	sizes = make([][]tolerance.Bracket, len(b.Planes))
	for p := range b.Planes {
		sizes[p] = all[p*wide : (p+1)*wide]
		for k := range b.Directions {
			if p < len(planes) && k < len(planes[p].Sizes) && planes[p].Sizes[k].Taken {
				sizes[p][k] = within1(planes[p].Sizes[k], x.l.Instruments.Bore)
				v.taken++
				taken++
				continue
			}
			at := shaftSpot{inspection.StepRods, b.Where, path, there}
			ask := shaftAsk{field, "diameter", b.Planes[p] + ", " + b.Directions[k], "bore gauge", limit}
			if p < len(planes) {
				ask.field = inspection.Index(inspection.Index(field, p)+".sizes", k)
			}
			x.miss(v, at.missing(&ask, -1, 1))
		}
	}
	return sizes, taken
}

// bigEndBores are the housing bores of a rod's shells, as gauged.
func (x *shaftRun) bigEndBores(i int) []tolerance.Bracket {
	sheet, _ := x.rodSheet(i)
	var all []tolerance.Bracket
	for p := range sheet.BigEnd {
		for _, r := range sheet.BigEnd[p].Sizes {
			if r.Taken {
				all = append(all, within1(r, x.l.Instruments.Bore))
			}
		}
	}
	return all
}

// mainHousings are the housing bores of a main, where they were given.
func (x *shaftRun) mainHousings(i int) []tolerance.Bracket {
	sheet, _ := bearingSheet(&x.in.shells, x.d.MainBearings, i)
	var all []tolerance.Bracket
	for _, r := range sheet.Housing {
		if r.Taken {
			all = append(all, within1(r, x.l.Instruments.Bore))
		}
	}
	return all
}
