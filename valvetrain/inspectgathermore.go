package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// length is a short name for what most measures are of.
type length = units.Length

// inspectStations is the most stations that a bore or a stem is measured at.
const inspectStations = 8

// inspectSpringFound is what is found of one spring.
type inspectSpringFound struct {
	free, square, installed, bind *tolerance.Finding
	load                          *tolerance.FindingOf[units.Force] // the first that fails, or may
	height, solid                 tolerance.Bracket
	after                         tolerance.Bracket // height with shims
	shims                         []string          // under it
}

func (c *inspectRun) gatherSprings(k *inspectKind) {
	for i := k.from; i < k.to; i++ {
		p := &c.shelf[i]
		for j := range k.springs {
			c.gatherSpring(&k.springs[j], &p.springs[j], &p.coils[j])
		}
	}
}

func (c *inspectRun) gatherSpring(m *inspectSpring, s *inspectState, f *inspectSpringFound) {
	var read ReadingsSpring
	if s.listed {
		read = c.r.Springs[s.index]
	}
	c.tests(s, inspection.StepSprings, &m.limits.Care, ".condition")
	f.free = c.one(&m.free, s, read.Free)
	f.square = c.one(&m.square, s, read.Square)
	for i := range m.loads {
		var r inspection.ReadingOf[units.Force]
		if i < len(read.Loads) {
			r = read.Loads[i]
		}
		if b, ok := inspectTake(c, &m.loads[i], s, 0, r); ok {
			c.foundLoad(&m.loads[i], s, f, b)
		}
	}
	if m.installed.asked {
		if b, ok := inspectTake(c, &m.installed, s, 0, read.Installed); ok {
			f.height = b
			f.installed = c.found(&m.installed, s, s.where, inspectPathAt(&m.installed, s), b)
		}
	}
	f.solid = m.limits.Solid
	if m.solid.asked {
		f.solid, _ = inspectTake(c, &m.solid, s, 0, read.Solid)
	}
	if m.bind.asked && !f.height.IsZero() && !f.solid.IsZero() {
		margin := CoilBindMargin(f.height, tolerance.Exactly(m.limits.Lift), f.solid)
		f.bind = c.found(&m.bind, s, s.where, inspectPathAt(&m.bind, s), margin)
	}
}

func (c *inspectRun) foundLoad(m *inspectMeasure[units.Force], s *inspectState, into *inspectSpringFound, load LoadBracket) {
	if m.spec.IsZero() || c.err != nil {
		return
	}
	f, err := tolerance.Assess(m.name, s.where, m.spec, load)
	if err != nil {
		c.fail(s, m.subs[0].path(), &InputError{m.name, err.Error(), "within range"})
		return
	}
	if len(c.forces) == cap(c.forces) {
		c.forces = make([]tolerance.FindingOf[units.Force], 0, 32)
	}
	c.forces = append(c.forces, f)
	p := &c.forces[len(c.forces)-1]
	c.out.Findings = append(c.out.Findings, inspection.Finding{Step: m.step, Path: inspectPathAt(m, s), Force: p})
	inspectNote(s, m, p)
	if p.Standing >= tolerance.OutsideNewBand && into.load == nil {
		into.load = p
	}
}

// gatherFits judges followers in their bores, or rockers on their shafts.
func (c *inspectRun) gatherFits(k *inspectKind, m *inspectFit, l *LimitsFit, list []ReadingsFit, of func(*inspectPlace) (*inspectState, *inspectFitFound)) {
	if l == nil {
		return
	}
	for i := k.from; i < k.to; i++ {
		s, f := of(&c.shelf[i])
		var read ReadingsFit
		if s.listed {
			read = list[s.index]
		}
		c.tests(s, inspection.StepFollowers, &l.Care, ".condition")
		var size, bore tolerance.Bracket
		var okSize, okBore bool
		if m.size.asked {
			if size, okSize = inspectTake(c, &m.size, s, 0, read.Size); okSize {
				f.size = c.found(&m.size, s, s.where, inspectPathAt(&m.size, s), size)
			}
		}
		if m.bore.asked {
			if bore, okBore = inspectTake(c, &m.bore, s, 0, read.Bore); okBore {
				f.bore = c.found(&m.bore, s, s.where, inspectPathAt(&m.bore, s), bore)
			}
		}
		if !okSize || !okBore || !m.clear.asked {
			continue
		}
		gap := bore.Sub(size)
		if _, hi := inputEnds(gap); hi < 0 {
			c.fail(s, ".size", &InputError{m.size.name, size.String(), "below its bore, " + bore.String()})
			return
		}
		f.clear = c.found(&m.clear, s, s.where, inspectPathAt(&m.clear, s), guideNoLess(gap))
	}
}

// inspectFitFound is what is found of a part in its bore.
type inspectFitFound struct{ size, bore, clear *tolerance.Finding }

// gatherGaps takes the valve clearances, by blades or as they were read.
func (c *inspectRun) gatherGaps(k *inspectKind) {
	if k.limits.Clearance == nil {
		return
	}
	for i := k.from; i < k.to; i++ {
		p := &c.shelf[i]
		s := &p.gap
		var read ReadingsClearance
		if s.listed {
			read = c.r.Clearances[s.index]
		}
		gap, ok := c.gapOf(&k.gap, s, &read)
		if c.err != nil {
			return
		}
		if ok {
			s.taken++
			p.gapIs = gap
			p.lap = c.found(&k.gap, s, s.where, inspectPathAt(&k.gap, s), gap)
			p.inBand = k.limits.Clearance.wanted().Judge(gap) == tolerance.Within
		} else {
			c.lacking(s, k.gap.step, k.gap.name, k.gap.with, k.gap.print, k.gap.subs[0])
		}
		// The shim of a valve that is in band isn't asked for: it stays.
		if k.shim.asked && (read.Shim.Taken || !p.inBand) {
			p.shimIs, _ = inspectTake(c, &k.shim, s, 0, read.Shim)
		}
	}
}

// gapOf is a clearance as it was read. It may lack an end: every blade went in,
// or none.
func (c *inspectRun) gapOf(m *inspectMeasure[length], s *inspectState, read *ReadingsClearance) (tolerance.Bracket, bool) {
	if len(read.Trials) > 0 {
		var room [16]feeler.Trial
		trials := room[:0]
		for _, t := range read.Trials {
			trial := feeler.Trial{Thickness: t.Blade, Error: c.x.limits.BladeError, Feel: t.Feel}
			if c.x.blades.Len() > 0 {
				b, err := c.x.blades.FindLength(t.Blade)
				if err != nil {
					c.fail(s, ".trials", err)
					return tolerance.Bracket{}, true
				}
				trial.Thickness, trial.Error = b.Thickness(), b.Error
			}
			trials = append(trials, trial)
		}
		gap, err := feeler.BracketWithErrors(trials...)
		if err != nil {
			c.fail(s, ".trials", err)
			return gap, true
		}
		lo, _ := gap.Lower()
		_, end := gap.Upper()
		return gap, lo > 0 || end != tolerance.Absent // blades not tried bound nothing
	}
	if !read.Clearance.Taken {
		return tolerance.Bracket{}, false
	}
	r, _ := read.Clearance.Within(m.e)
	gap := r.Value
	lo, loEnd := gap.Lower()
	hi, _ := gap.Upper()
	switch {
	case !gap.InRange() || max(lo.Abs(), hi.Abs()) > clearanceLargest:
		c.fail(s, ".clearance", &InputError{m.name, gap.String(), "within 10 mm"})
	case lo < 0 && r.Value == read.Clearance.Value && loEnd != tolerance.Absent:
		c.fail(s, ".clearance", &InputError{m.name, gap.String(), "at least 0 mm"})
	case lo < 0:
		gap = guideNoLess(gap)
	}
	return gap, true
}
