package crank

import (
	"errors"
	"slices"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// decideJournals decides on each journal of a group and on the group.
func (x *shaftRun) decideJournals(to *shaftGroup) {
	g := to.g
	if len(to.states) == 0 {
		return
	}
	var open partVerdict // what of the group is missing
	var worst inspection.Decision
	seen, stay := false, tolerance.Within
	for i := range to.states {
		s := &to.states[i]
		both := s.v
		both.merge(&s.other)
		d := x.bySize(inspection.StepCrank, g.part, g.names[i], &both, g.slips)
		var condition *inspection.Condition
		if s.sheet != nil {
			condition = &s.sheet.Condition
			x.tests(inspection.StepCrank, s.path, g.names[i], g.page.Care, condition)
			if both.taken > 0 || *condition != (inspection.Condition{}) {
				seen = true
			}
		}
		if s.v.rank >= runOutRank(tolerance.OutsideNewBand) && d.Action == inspection.ReconditionTo {
			d.Because = clause(d.Because, x.leastAt(to, i))
		}
		d = x.decide(&both, condition, g.page.Care, d)
		if both.taken > 0 || condition != nil && *condition != (inspection.Condition{}) {
			if d.Action != inspection.ReconditionTo && d.Action > worst.Action || worst.Part == "" {
				worst = d
			}
		}
		if both.missing > 0 && open.missing == 0 {
			open.first = both.first
		}
		open.missing += both.missing
		switch {
		case s.v.rank >= runOutRank(tolerance.OutsideNewBand):
			stay = tolerance.Below
		case s.v.rank == runOutRank(tolerance.CantTell) && s.v.worst > 0 && stay == tolerance.Within:
			stay = tolerance.Undecided
		}
		open.slips = append(open.slips, s.v.slips...)
	}
	if !seen {
		return
	}
	to.all = true
	d := x.group(to, stay, &open)
	// What no undersize puts right, and what was seen, may be worse.
	if worst.Action > d.Action && worst.Action > inspection.CleanAndReUse && worst.Action != inspection.ReconditionTo {
		worst.Governs, worst.Where = worst.Where, ""
		d = worst
		to.ground = false
	}
	to.decision = d
}

// merge joins what another verdict found on the same part.
func (v *partVerdict) merge(o *partVerdict) {
	if v.missing == 0 {
		v.first = o.first
	}
	if v.worst == 0 || o.worst > 0 && o.rank > v.rank {
		v.worst, v.rank = o.worst, o.rank
	}
	v.fail = max(v.fail, o.fail)
	v.taken, v.missing = v.taken+o.taken, v.missing+o.missing
	v.slips = append(v.slips, o.slips...)
}

// leastAt names the least diameter of a journal and where it was read.
func (x *shaftRun) leastAt(to *shaftGroup, i int) string {
	s := &to.states[i]
	if !s.surveyed {
		return ""
	}
	g, at := to.g, s.report.Least.At
	return "least " + s.report.Least.Size.String() + " at " + g.planes[at.Plane].Name + ", " + x.headingName(g, at.Heading)
}

// group is the decision on all journals of a group together, by their sizes.
func (x *shaftRun) group(to *shaftGroup, stay tolerance.Verdict, open *partVerdict) inspection.Decision {
	g := to.g
	d := inspection.Decision{Step: inspection.StepCrank, Part: g.part}
	switch {
	case stay == tolerance.Within && open.missing > 0:
		d.Because, d.Settle = "not all of them have been read", open.toRead()
	case stay == tolerance.Within:
		d.Action, d.Because = inspection.ReUse, "all may run on as they are"
		x.asTheyAre(to)
	case len(g.kits) == 0 || g.limits.Size.New.IsZero():
		x.worstOf(to, &d)
		d.Settle = "list in the limits the standard size and the shells that can be had: to which undersize they are ground follows from them"
	default:
		x.undersize(to, &d)
	}
	if stay != tolerance.Within && open.missing > 0 {
		d.Settle = clause(d.Settle, open.toRead())
		if d.Action == inspection.ReconditionTo || d.Action == inspection.ReUse {
			d.Because = clause(d.Because, "the journals that weren't read may ask for more")
		}
		if d.Action == inspection.ReUse {
			d.Action = inspection.MeasureAgain
		}
	}
	return doubted(d, open.slips, g.slips)
}

// asTheyAre leaves all journals as they are: shells of the size they have.
func (x *shaftRun) asTheyAre(to *shaftGroup) {
	to.to = to.current
	for i := range to.states {
		to.states[i].shells = to.current
	}
}

// worstOf names the journal that governs, and why, where none was chosen by an
// undersize.
func (x *shaftRun) worstOf(to *shaftGroup, d *inspection.Decision) {
	at := -1
	for i := range to.states {
		if v := &to.states[i].v; v.worst > 0 && (at < 0 || v.rank > to.states[at].v.rank) {
			at = i
		}
	}
	if at >= 0 {
		d.Governs, d.Because = to.g.names[at], x.because(&to.states[at].v, to.g.names[at])
		d.Settle = x.r.Findings[to.states[at].v.worst-1].Settle()
	}
}

// undersize chooses the undersize that the group is ground to.
func (x *shaftRun) undersize(to *shaftGroup, d *inspection.Decision) {
	g := to.g
	job := UndersizeJob{Kind: g.kind, Standard: g.limits.Size.New, Plan: g.page.Plan, AsIs: g.rule, Kits: g.kits}
	if kits := runningKits(to); kits != nil {
		job.Kits = kits
	}
	places := make([]int, 0, g.n)
	job.Journals = make([]WornJournal, 0, g.n)
	for i := range to.states {
		if to.states[i].surveyed {
			job.Journals, places = append(job.Journals, x.worn(to, i)), append(places, i)
		}
	}
	if len(places) == 0 {
		d.Because, d.Settle = "no diameters have been read", "read them"
		return
	}
	c, err := ChooseUndersize(&job)
	var never *GrindError
	switch {
	case errors.As(err, &never):
		x.worstOf(to, d)
		d.Action, d.Settle = usual(g.page.Beyond, inspection.Replace), ""
		d.Because = clause(d.Because, strings.TrimPrefix(err.Error(), "crank: "))
		to.gone = true
		return
	case err != nil:
		x.worstOf(to, d)
		d.Because, d.Settle = clause(d.Because, strings.TrimPrefix(err.Error(), "crank: ")), "measure it again: what was read of it doesn't go together"
		return
	}
	forced := &to.states[places[c.Forced]]
	d.Governs = g.names[places[c.Forced]]
	if forced.v.worst > 0 {
		d.Because = clause(x.because(&forced.v, d.Governs), x.leastAt(to, places[c.Forced]))
	}
	d.Settle = c.Settle
	switch c.Outcome {
	case UndersizeAsIs:
		x.thin(to, &c, places, d)
	case UndersizeGrind:
		x.grind(to, &c, places, d)
	case UndersizeNone:
		d.Action = usual(g.page.Beyond, inspection.Replace)
		d.Because = clause(d.Because, "no undersize that can be had cleans all of them up")
		to.gone = true
	case UndersizeUndecided:
		if f := forced.v.worst; f > 0 && d.Settle == "" {
			d.Settle = x.r.Findings[f-1].Settle()
		}
		if c.Stays == tolerance.Below && c.Kit >= 0 {
			d.Because = clause(d.Because, "they must be ground: "+c.Kits[c.Kit].Name+" cleans all up for sure, "+c.Kits[c.Possible].Name+" may do")
		}
		if d.Settle == "" {
			d.Settle = "measure it more closely"
		}
	}
}

// runningKits are the kits where the one that the journals were last ground to goes
// on them as they are, down to the wear limit.
func runningKits(to *shaftGroup) []ShellKit {
	g, k := to.g, to.current
	if k < 0 || !g.kits[k].AsIs.IsZero() {
		return nil
	}
	spec := to.limits.Size
	lo, loEnd := spec.New.Lower()
	hi, hiEnd := spec.New.Upper()
	if at, end := spec.Wear.Lower(); end != tolerance.Absent {
		lo, loEnd = at, end
	}
	band, err := tolerance.NewBand(lo, loEnd, hi, hiEnd)
	if err != nil {
		return nil
	}
	kits := slices.Clone(g.kits)
	kits[k].AsIs = band
	if kits[k].check(k, g.limits.Size.New) != nil {
		return nil // a wear limit so wide could be mistaken for another undersize's
	}
	if kits[k].Journal.IsZero() {
		kits[k].Journal, _ = g.kits[k].band(g.limits.Size.New) // it can be ground for as well
	}
	return kits
}

// kit is the place of a chosen kit in the page's shells.
func (g *shaftJournals) kit(chosen *ShellKit) int {
	for k := range g.kits {
		if g.kits[k].Undersize == chosen.Undersize && g.kits[k].Name == chosen.Name {
			return k
		}
	}
	return -1
}

// thin leaves the journals as they are, with shells that go on them so.
func (x *shaftRun) thin(to *shaftGroup, c *UndersizeChoice, places []int, d *inspection.Decision) {
	g := to.g
	d.Action = inspection.ReUse
	d.Because = clause(d.Because, "by the manual's rule shells of another size go on without grinding")
	var names []string
	for k, i := range places {
		s := &to.states[i]
		s.shells = g.kit(&c.Kits[c.Journals[k].AsIs])
		if s.shells != to.current && s.shells >= 0 {
			names = append(names, g.names[i]+" "+g.kits[s.shells].Name)
		}
	}
	d.Size = "shells: " + strings.Join(names, ", ")
	to.to = to.current
}

// grind grinds all journals for one kit.
func (x *shaftRun) grind(to *shaftGroup, c *UndersizeChoice, places []int, d *inspection.Decision) {
	g, kit := to.g, &c.Kits[c.Kit]
	to.ground, to.to = true, g.kit(kit)
	band, _ := kit.band(g.limits.Size.New)
	d.Action, d.Size = inspection.ReconditionTo, kit.Name+" undersize: "+band.String()
	if kit.Undersize == 0 {
		d.Size = kit.Name + ": " + band.String()
	}
	for i := range to.states {
		to.states[i].shells = to.to
		to.states[i].least, to.states[i].greatest = band.Interval(), band.Interval()
	}
	for k, i := range places {
		s, f := &to.states[i], &c.Journals[k].Fits[c.Kit]
		s.least, s.greatest = f.GrindTo, f.GrindTo
		s.caseLeft = f.CaseLeft
		if change := c.Journals[k].Clean.StrokeChange; change != 0 {
			d.Because = clause(d.Because, g.names[i]+" ground about a moved centre changes its stroke by "+change.String())
		}
	}
}
