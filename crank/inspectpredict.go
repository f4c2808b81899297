package crank

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// fresh are the limits for new parts, which work is predicted against; the wear
// limit where those are all there is.
func fresh(s tolerance.Spec) tolerance.Spec {
	if s.New.IsZero() {
		return s
	}
	return tolerance.Spec{New: s.New, NewMating: s.NewMating}
}

// predict puts what a measure will be into the report.
func (x *shaftRun) predict(step inspection.Step, path, measure, where string, spec tolerance.Spec, stations ...tolerance.Bracket) {
	var none partVerdict
	n := len(x.r.Findings)
	x.assess(&none, step, path, measure, where, spec, inspection.MeasureAgain, stations...)
	if len(x.r.Findings) > n {
		if x.r.Predicted == nil {
			x.r.Predicted = make([]inspection.Finding, 0, x.in.shells.n+x.in.ends.n+x.mains.g.n+x.pins.g.n+1)
		}
		x.r.Predicted = append(x.r.Predicted, x.r.Findings[n])
		x.r.Findings = x.r.Findings[:n]
	}
}

// predictJournals is what the journals of a group will measure, and what will be
// left of their case.
func (x *shaftRun) predictJournals(to *shaftGroup) {
	if !to.ground {
		return
	}
	g := to.g
	band, _ := g.kits[to.to].band(g.limits.Size.New)
	for i := range to.states {
		s := &to.states[i]
		x.predict(inspection.StepCrank, s.path, JournalSizeMeasure.String(), g.names[i], tolerance.Spec{New: band}, s.least, s.greatest)
		if least := g.page.Plan.LeastCase; !s.caseLeft.IsZero() && least > 0 {
			x.predict(inspection.StepCrank, s.path, "hardened case left", g.names[i], tolerance.Spec{New: tolerance.AtLeast(least)}, s.caseLeft)
		}
	}
}

// predictOil is what the oil clearances will be with new shells.
func (x *shaftRun) predictOil(b *shaftBearings, to *shaftGroup) {
	p := b.page
	if !given(&p.OilClearance) || !to.all {
		return
	}
	for i := range b.n {
		j := x.journalOf(b, i)
		kit := to.states[j].shells
		if !to.newShells && kit == to.current {
			continue // nothing changes
		}
		if to.gone {
			kit = to.standard()
		}
		least, greatest, known := to.sizes(j)
		if kit < 0 || !known {
			continue
		}
		wall, ok := x.wall(b, to, kit)
		bores := x.housings(x.arena(), b, i)
		if (len(bores) == 0 || b == &x.in.ends && x.newRods[i]) && !b.housing.IsZero() {
			bores = []tolerance.Bracket{b.housing.Interval()} // of a new one
		}
		if !ok || len(bores) == 0 || !bounded(least) || !bounded(greatest) {
			continue
		}
		narrow, wide := tolerance.Extremes(bores...)
		lo, hi := OilClearance(narrow, wall, greatest), OilClearance(wide, wall, least)
		x.predict(inspection.StepAssembly, b.paths[b.n], oilMeasure, b.names[i], fresh(b.oil), lo, hi)
	}
}

func bounded(b tolerance.Bracket) bool {
	_, lo := b.Lower()
	_, hi := b.Upper()
	return lo != tolerance.Absent && hi != tolerance.Absent
}

// standard is the kit of the standard size; −1 where it isn't listed.
func (to *shaftGroup) standard() int {
	return slices.IndexFunc(to.g.kits, func(k ShellKit) bool { return k.Undersize == 0 })
}

// wall is that of one new half of a kit: as printed, or the standard one and half
// the undersize.
func (x *shaftRun) wall(b *shaftBearings, to *shaftGroup, kit int) (tolerance.Bracket, bool) {
	page := &to.g.page.Shells[kit]
	if !page.Wall.IsZero() {
		return page.Wall.Interval(), bounded(page.Wall.Interval())
	}
	if standard := b.page.Wall.New; !standard.IsZero() && bounded(standard.Interval()) {
		return UndersizeWall(standard.Interval(), tolerance.Exactly(page.Undersize)), true
	}
	return tolerance.Bracket{}, false
}

// orderShells orders shells by undersize, a pair for each bearing.
func (x *shaftRun) orderShells(b *shaftBearings, to *shaftGroup, renew bool) {
	if !to.all {
		return
	}
	sure := to.decision.Action != inspection.MeasureAgain
	for k := range to.g.kits {
		var where []string
		for i := range b.n {
			kit := to.states[x.journalOf(b, i)].shells
			if to.gone {
				kit = to.standard()
			}
			if kit == k && (renew || kit != to.current) {
				where = append(where, b.names[i])
			}
		}
		if len(where) > 0 {
			x.r.Orders = append(x.r.Orders, inspection.Order{Step: inspection.StepShells, What: "pairs of " + b.part, Size: to.g.kits[k].Name, Count: len(where), For: where, Sure: sure})
		}
	}
}
