package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// Inspect judges the readings of one engine by its limits: what looks like a
// slip, findings and decisions in the order of the bench, what is still to be
// measured, what to order, and what the clearances will be after that work. Of
// many engines by the same limits, [Limits.Prepare] once is faster.
//
// A part that nobody has read or looked at yet is listed as missing and has no
// decision. A decision to machine waits until all readings of its part are
// there; one to renew doesn't. Seats are cut from guides, and clearances set on
// seats: where the one is to be worked, the other is measured again after it.
//
// It fails with an [inspection.PathError] where a limit or a reading can't be,
// two parts stand at one place, or a marked part at another's.
func Inspect(l *Limits, r *Readings) (inspection.Report, error) { return l.Prepare().Inspect(r) }

// Inspect is [Inspect] by limits made ready.
func (x *Inspector) Inspect(r *Readings) (inspection.Report, error) {
	if x.err != nil {
		return inspection.Report{}, x.err
	}
	c, _ := x.pool.Get().(*inspectRun)
	if c == nil {
		c = new(inspectRun)
	}
	defer func() {
		c.forget()
		x.pool.Put(c)
	}()
	c.x, c.r = x, r
	return c.inspect()
}

func (c *inspectRun) inspect() (inspection.Report, error) {
	x, r := c.x, c.r
	if err := c.begin(); err != nil {
		return inspection.Report{}, err
	}
	c.gatherCams()
	c.gatherDrive()
	for k := range x.kinds {
		if x.kinds[k].limits != nil {
			c.gatherGuides(&x.kinds[k])
		}
	}
	c.each(c.gatherValves)
	c.each(c.gatherSeats)
	c.each(c.gatherSprings)
	c.each(func(k *inspectKind) {
		c.gatherFits(k, &k.follower, k.limits.Follower, r.Followers, func(p *inspectPlace) (*inspectState, *inspectFitFound) { return &p.follower, &p.followerIs })
		c.gatherFits(k, &k.rocker, k.limits.Rocker, r.Rockers, func(p *inspectPlace) (*inspectState, *inspectFitFound) { return &p.rocker, &p.rockerIs })
	})
	c.each(c.gatherGaps)
	if c.err != nil {
		return inspection.Report{}, c.err
	}
	c.proofread()
	c.decide()
	if c.err != nil {
		return inspection.Report{}, c.err
	}
	return c.out, nil
}

// each goes through the kinds of valves that the limits have.
func (c *inspectRun) each(step func(*inspectKind)) {
	for k := range c.x.kinds {
		if c.x.kinds[k].limits != nil && c.err == nil {
			step(&c.x.kinds[k])
		}
	}
}

// begin checks the document's shape, and finds the place of every part.
func (c *inspectRun) begin() error {
	if c.r == nil || c.r.Schema != inspectSchema {
		return inspection.At("schema", &InputError{"schema of the readings", inspectSchemaOf(c.r), "1"})
	}
	x := c.x
	c.out.Slips = append(c.out.Slips, x.slips...)
	c.out.Findings = make([]inspection.Finding, 0, x.findings)
	if c.shelf == nil {
		c.makeRoom()
	}
	c.layOut()
	if err := c.findCams(); err != nil {
		return err
	}
	return c.findPlaces()
}
