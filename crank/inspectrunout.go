package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// straightness judges the run-out of the mains and what follows from it, for the
// mains and for the shaft as a whole.
func (x *shaftRun) straightness(shaft *partVerdict) {
	p := &x.l.Shaft
	if p.asksMains() {
		if x.l.Layout.DialPlaces == 0 {
			x.swings()
		} else {
			x.dialled(shaft)
		}
		x.supportRunOut()
	}
	for _, one := range [...]struct {
		limit              *inspection.Limit
		reading            *inspection.Reading
		where, field, path string
	}{
		{&p.Nose, &x.d.Shaft.Nose, "nose", "nose", "shaft.nose"},
		{&p.Flange, &x.d.Shaft.Flange, "flange, rim", "flange", "shaft.flange"},
		{&p.FlangeFace, &x.d.Shaft.FlangeFace, "flange, face", "flangeFace", "shaft.flangeFace"},
	} {
		if !given(one.limit) {
			continue
		}
		at := shaftSpot{inspection.StepCrank, one.where, "shaft", true}
		if b, ok := x.read(shaft, &at, one.reading, 2*x.l.Instruments.Dial, shaftAsk{one.field, "run-out", "", "dial gauge", one.limit}); ok {
			x.assess(shaft, inspection.StepCrank, one.path, "run-out", one.where, one.limit.Spec(), inspection.Repair, positive(b))
		}
	}
}

// asksMains reports whether the page asks for the mains to be dialled.
func (p *LimitsShaft) asksMains() bool {
	return given(&p.RunOut) || p.asksBend()
}

// asksBend reports whether it asks for more than the dial's whole swing.
func (p *LimitsShaft) asksBend() bool {
	n := &p.Neighbours
	return given(&p.Bend) || given(&n.Along) || given(&n.RightSum) || given(&n.RightEach)
}

// dial reports whether a main is dialled: on V-blocks the supports aren't.
func (g *shaftJournals) dial(i int) bool {
	return !g.onBlocks || i != g.supports[0] && i != g.supports[1]
}

// swings judges run-outs that were read as the dial's whole swing.
func (x *shaftRun) swings() {
	g := x.mains.g
	for i := range x.mains.states {
		if !g.dial(i) {
			continue
		}
		s := &x.mains.states[i]
		at := shaftSpot{inspection.StepCrank, g.names[i], s.path, s.sheet != nil}
		reading := &inspection.Reading{}
		if s.sheet != nil {
			reading = &s.sheet.RunOut
		}
		if b, ok := x.read(&s.v, &at, reading, 2*x.l.Instruments.Dial, shaftAsk{"runOut", "run-out", "", "dial gauge", &x.l.Shaft.RunOut}); ok {
			s.runOut = positive(b)
			x.assess(&s.v, inspection.StepCrank, g.runOutPaths[s.index], "run-out", g.names[i], g.runOut, inspection.ReconditionTo, s.runOut)
		}
	}
}

// positive is a bracket of what isn't below zero.
func positive(b tolerance.Bracket) tolerance.Bracket {
	return b.Max(tolerance.Exactly(units.Length(0)))
}

// dialled judges mains that were dialled place by place: run-out, and where all
// were read bend and neighbours, seen from the supports.
func (x *shaftRun) dialled(shaft *partVerdict) {
	g, l := x.mains.g, &x.l.Layout
	p := &x.l.Shaft
	survey := RunOutSurvey{
		Journals: make([]RunOutJournal, g.n), First: g.supports[0], Second: g.supports[1], Error: x.l.Instruments.Dial,
		RunOut: g.runOut, Bend: p.Bend.Spec(), Nitrided: p.Surface == JournalNitrided,
		Neighbours: NeighbourLimits{Along: p.Neighbours.Along.Spec(), RightSum: p.Neighbours.RightSum.Spec(), RightEach: p.Neighbours.RightEach.Spec()},
	}
	if g.onBlocks {
		survey.Support, survey.Included = OnBlocks, l.VBlocks
	}
	whole := true
	for i := range x.mains.states {
		s, j := &x.mains.states[i], &survey.Journals[i]
		j.Where = g.names[i]
		if i < len(l.Positions) {
			j.Position = l.Positions[i]
		}
		if !g.dial(i) {
			continue
		}
		for k := range l.DialPlaces {
			if s.sheet != nil && k < len(s.sheet.Dial) && s.sheet.Dial[k].Taken {
				shown, _ := s.sheet.Dial[k].Value.Lower()
				j.Readings = append(j.Readings, shown)
				s.v.taken++
				continue
			}
			at := shaftSpot{inspection.StepCrank, g.names[i], s.path, s.sheet != nil}
			x.miss(&s.v, at.missing(&shaftAsk{"dial", "dial reading", "", "dial gauge", &p.RunOut}, k, l.DialPlaces))
		}
		if len(j.Readings) < l.DialPlaces {
			whole, j.Readings = false, nil
		}
	}
	if whole && g.n >= 3 && len(l.Positions) > 0 {
		x.bent(&survey, shaft)
		return
	}
	for i := range survey.Journals {
		if r := survey.Journals[i].Readings; len(r) > 0 {
			total := RunOut(r[0], r[1:]...)
			x.runOutFound(i, positive(journalSpan(total-2*survey.Error, total+2*survey.Error)))
		}
	}
	if p.asksBend() && x.begun {
		shaft.open("bend")
	}
}

func (x *shaftRun) runOutFound(i int, total tolerance.Bracket) {
	s, g := &x.mains.states[i], x.mains.g
	s.runOut = total
	if !g.runOut.IsZero() {
		x.assess(&s.v, inspection.StepCrank, s.path+".dial", "run-out", g.names[i], g.runOut, inspection.ReconditionTo, total)
	}
}

// bent judges a shaft whose mains were all dialled.
func (x *shaftRun) bent(survey *RunOutSurvey, shaft *partVerdict) {
	r, err := survey.Inspect()
	if err != nil {
		x.fail(x.mains.g.paths[x.mains.g.n], err)
		return
	}
	for i := range r.Journals {
		f := &r.Journals[i]
		if len(survey.Journals[i].Readings) > 0 {
			x.runOutFound(i, f.Total)
		}
		if s := &x.mains.states[i]; !f.Support && !survey.Bend.IsZero() {
			x.keep(&s.v, inspection.StepCrank, s.path+".dial", &f.Bend, inspection.ReconditionTo)
		}
	}
	for i := range r.Neighbours {
		n := &r.Neighbours[i]
		for k := range n.Manual {
			f := n.Manual[k].Finding
			if f.Spec.IsZero() {
				continue
			}
			f.Standing = n.Standing // where two cases may be meant, theirs together
			x.keep(shaft, inspection.StepCrank, "mains", &f, inspection.Repair)
		}
	}
}

// supportRunOut gives the mains that the shaft lies on what run-out they may have:
// their own shape's, at most their out-of-round.
func (x *shaftRun) supportRunOut() {
	g := x.mains.g
	if !g.onBlocks {
		return
	}
	for _, i := range g.supports {
		s := &x.mains.states[i]
		hi := units.Length(0)
		if s.report.OutOfRound.Known {
			_, hi = journalEnds(s.report.OutOfRound.Value)
		}
		s.runOut = journalSpan(0, hi)
	}
}
