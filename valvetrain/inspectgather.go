package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// stations takes a bore's or a stem's readings into room, station by station;
// ok tells that all are there.
func (c *inspectRun) stations(m *inspectMeasure[length], s *inspectState, pairs []ReadingsPair, oneWay bool, room []tolerance.Bracket) (all []tolerance.Bracket, ok bool) {
	all, ok = room[:0], true
	for i := range m.subs {
		at, along := i, false
		if !oneWay {
			at, along = i/2, i%2 == 1
		}
		var r inspection.Reading
		switch {
		case at >= len(pairs):
		case along:
			r = pairs[at].Along
		default:
			r = pairs[at].Across
		}
		b, got := inspectTake(c, m, s, i, r)
		if ok = ok && got; got {
			all = append(all, b)
		}
	}
	return all, ok
}

// stemOf is the least and the greatest of a stem's readings, before it is its
// turn; taken tells how many there are.
func (c *inspectRun) stemOf(k *inspectKind, p *inspectPlace) (ends [2]tolerance.Bracket, taken int) {
	if !k.stem.asked || !p.valve.listed {
		return ends, 0
	}
	ways := 2
	if k.limits.Valve.OneWay {
		ways = 1
	}
	for _, pair := range c.r.Valves[p.valve.index].Stem {
		for w, r := range [2]inspection.Reading{pair.Across, pair.Along} {
			if !r.Taken || w >= ways {
				continue
			}
			r, _ = r.Within(k.stem.e)
			if inputBracket("", r.Value, leastSize) != nil {
				return ends, 0 // refused when its turn comes
			}
			if taken++; taken == 1 {
				ends = [2]tolerance.Bracket{r.Value, r.Value}
				continue
			}
			ends = [2]tolerance.Bracket{ends[0].Min(r.Value), ends[1].Max(r.Value)}
		}
	}
	return ends, taken
}

func (c *inspectRun) gatherGuides(k *inspectKind) {
	g := k.limits.Guide
	if g == nil {
		return
	}
	for i := k.from; i < k.to; i++ {
		p := &c.shelf[i]
		s := &p.guide
		var read ReadingsGuide
		if s.listed {
			read = c.r.Guides[s.index]
		}
		c.tests(s, inspection.StepGuides, &g.Care, ".condition")
		p.rock = c.one(&k.rock, s, read.Rocking)
		if !k.bore.asked {
			continue
		}
		all, whole := c.stations(&k.bore, s, read.Levels, g.OneWay, c.room[:])
		if len(all) == 0 || c.err != nil {
			continue
		}
		path := inspectPathAt(&k.bore, s)
		p.bores[0], p.bores[1] = tolerance.Extremes(all...)
		open, worst := s.open, s.worst
		p.bore = c.found(&k.bore, s, s.where, path, all...)
		if k.clear.asked && k.bore.spec.Wear.IsZero() && !k.clear.spec.Wear.IsZero() {
			// Of a worn guide the clearance's wear limit decides, not the bore's band.
			p.bore, s.open, s.worst = nil, open, worst
		}
		ways := 2
		if g.OneWay {
			ways = 1
		}
		if whole && k.bell.asked {
			var bells [4]tolerance.Bracket
			n, last := 0, len(g.Levels)-1
			for w := range ways {
				waist := all[ways+w]
				for l := 2; l < last; l++ {
					waist = waist.Min(all[l*ways+w])
				}
				bells[n], bells[n+1] = GuideBell(all[w], waist), GuideBell(all[last*ways+w], waist)
				n += 2
			}
			p.bell = c.found(&k.bell, s, s.where, path, bells[:n]...)
		}
		if whole && k.round.asked {
			var rounds [inspectStations]tolerance.Bracket
			for l := range g.Levels {
				rounds[l] = GuideOutOfRound(all[2*l], all[2*l+1])
			}
			p.round = c.found(&k.round, s, s.where, path, rounds[:len(g.Levels)]...)
		}
		if !k.clear.asked {
			continue
		}
		stems, taken := c.stemOf(k, p)
		if taken < len(k.stem.subs) && s.open == "" {
			s.open = k.clear.name + ": measure its valve's stem"
		}
		if taken == 0 {
			continue
		}
		tight, loose := GuideClearance(p.bores[0], stems[1]), GuideClearance(p.bores[1], stems[0])
		if _, hi := inputEnds(loose); hi <= 0 {
			c.fail(s, ".levels", &InputError{"guide bore", p.bores[1].String(), "above the stem in it, " + stems[0].String()})
			return
		}
		p.clear = c.found(&k.clear, s, s.where, path, guideNoLess(tight), guideNoLess(loose))
	}
}

func (c *inspectRun) gatherValves(k *inspectKind) {
	v := k.limits.Valve
	if v == nil {
		return
	}
	for i := k.from; i < k.to; i++ {
		p := &c.shelf[i]
		s := &p.valve
		var read ReadingsValve
		if s.listed {
			read = c.r.Valves[s.index]
		}
		c.tests(s, inspection.StepValves, &v.Care, ".condition")
		if k.stem.asked {
			all, whole := c.stations(&k.stem, s, read.Stem, v.OneWay, c.room[:])
			if len(all) > 0 && c.err == nil {
				p.stems[0], p.stems[1] = tolerance.Extremes(all...)
				p.stem = c.found(&k.stem, s, s.where, inspectPathAt(&k.stem, s), all...)
			}
			if whole && k.taper.asked && c.err == nil {
				p.taper = c.stemTapers(k, s, all)
			}
		}
		p.stemRun = c.one(&k.stemRun, s, read.StemRun)
		p.faceRun = c.one(&k.faceRun, s, read.FaceRun)
		p.margin = c.one(&k.margin, s, read.Margin)
		p.tip = c.one(&k.tip, s, read.TipWear)
		p.length = c.one(&k.length, s, read.Length)
	}
}

// stemTapers judges the taper of a stem, each way across.
func (c *inspectRun) stemTapers(k *inspectKind, s *inspectState, all []tolerance.Bracket) *tolerance.Finding {
	ways := 2
	if k.limits.Valve.OneWay {
		ways = 1
	}
	var tapers [2]tolerance.Bracket
	var along [inspectStations]tolerance.Bracket
	for w := range ways {
		n := 0
		for i := ways + w; i < len(all); i += ways {
			along[n] = all[i]
			n++
		}
		tapers[w] = StemTaper(all[w], along[:n]...)
	}
	return c.found(&k.taper, s, s.where, inspectPathAt(&k.taper, s), tapers[:ways]...)
}

func (c *inspectRun) gatherSeats(k *inspectKind) {
	l := k.limits.Seat
	if l == nil {
		return
	}
	for i := k.from; i < k.to; i++ {
		p := &c.shelf[i]
		s := &p.seat
		var read ReadingsSeat
		if s.listed {
			read = c.r.Seats[s.index]
		}
		c.tests(s, inspection.StepSeats, &l.Care, ".condition")
		p.runOut = c.one(&k.runOut, s, read.RunOut)
		p.width = c.one(&k.width, s, read.Width)
		p.depth = c.one(&k.depth, s, read.Depth)
		p.tipHeight = c.one(&k.tipHeight, s, read.TipHeight)
		if l.Cut != nil {
			p.outer, _ = inspectTake(c, &k.outer, s, 0, read.Outer)
			p.inner, _ = inspectTake(c, &k.inner, s, 0, read.Inner)
		}
	}
}
