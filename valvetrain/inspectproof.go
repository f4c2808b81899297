package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// proofread looks for slips among like readings, before any decision.
func (c *inspectRun) proofread() {
	for i := range c.x.cams {
		m := &c.x.cams[i]
		for _, m := range [...]*inspectMeasure[units.Length]{&m.journal, &m.bearing, &m.lobes[0].height, &m.lobes[0].base, &m.lobes[1].height, &m.lobes[1].base} {
			inspectProof(c, m)
		}
	}
	for k := range c.x.kinds {
		kind := &c.x.kinds[k]
		for _, m := range [...]*inspectMeasure[units.Length]{&kind.bore, &kind.rock, &kind.stem, &kind.margin, &kind.length, &kind.width, &kind.tipHeight, &kind.outer, &kind.inner,
			&kind.follower.size, &kind.follower.bore, &kind.rocker.size, &kind.rocker.bore, &kind.shim} {
			inspectProof(c, m)
		}
		for j := range kind.springs {
			s := &kind.springs[j]
			inspectProof(c, &s.free)
			inspectProof(c, &s.installed)
			inspectProof(c, &s.solid)
			for l := range s.loads {
				inspectProof(c, &s.loads[l])
			}
		}
	}
}

// inspectProof looks for slips in one collection.
func inspectProof[Q units.Quantity](c *inspectRun, m *inspectMeasure[Q]) {
	if !m.asked || len(m.subs) == 0 {
		return
	}
	set := inspectSetOf(c, m)
	if len(set.values) < 3 || inspectAlike(set.values) {
		return
	}
	found, err := proofread.CheckBrackets(set.values...)
	if err != nil {
		return
	}
	for _, odd := range found.Odd {
		cause := odd.Causes[0]
		if m.rough && cause.Kind != proofread.DecimalPlace && cause.Kind != proofread.WrongUnit {
			continue
		}
		s, sub := set.at[odd.Index].state, &m.subs[set.at[odd.Index].sub]
		slip := inspection.Slip{Path: s.path(sub.path()), What: s.where + ", " + m.name,
			Text: odd.Reading.String() + " against a middle of " + tolerance.Exactly(found.Middle).String() + ": " + cause.String()}
		if at := sub.where(); at != "" {
			slip.What += ", " + at
		}
		c.out.Slips = append(c.out.Slips, slip)
		s.slips = append(s.slips, slip.Path)
		if s.suspect == "" {
			s.suspect = slip.What + ", " + slip.Text
			s.suspectStem = sub.list == "stem"
		}
	}
}

// inspectAlike tells readings that lie so near together that proofreading finds
// nothing odd in them: all within a tenth of the least, or 0.05 mm if that is
// less; of other quantities within a fiftieth.
func inspectAlike[Q units.Quantity](values []tolerance.Interval[Q]) bool {
	lo, _ := values[0].Lower()
	hi, _ := values[0].Upper()
	for i := range values {
		if l, _ := values[i].Lower(); l < lo {
			lo = l
		}
		if h, _ := values[i].Upper(); h > hi {
			hi = h
		}
	}
	near := lo / 50
	if _, is := any(lo).(units.Length); is {
		near = min(lo/10, Q(50*units.Micrometre))
	}
	return hi-lo <= near
}

// inspectOther is the limit by its second columns, where it has them.
func inspectOther[Q units.Quantity](l inspection.LimitOf[Q]) tolerance.SpecOf[Q] {
	s := l.Spec()
	if !l.NewAlso.IsZero() {
		s.New = l.NewAlso.BandOf
	}
	if !l.WearAlso.IsZero() {
		s.Wear = l.WearAlso.BandOf
	}
	return s
}
