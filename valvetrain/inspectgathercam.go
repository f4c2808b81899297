package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// inspectCamFound is what is found of one camshaft.
type inspectCamFound struct {
	state                  inspectState
	shaft, bearing         *tolerance.Finding // the worst of the journals, and of their bearings
	lobe, runOut, endFloat *tolerance.Finding // the worst of the lobes, and the shaft's own
}

func (c *inspectRun) gatherCams() {
	for i := range c.x.cams {
		m, f := &c.x.cams[i], &c.cams[i]
		s := &f.state
		var read ReadingsCamshaft
		if s.listed {
			read = c.r.Camshafts[s.index]
		}
		c.tests(s, inspection.StepCamshaft, &m.limits.Care, ".condition")
		for j := range m.limits.Journals {
			var one ReadingsJournal
			if j < len(read.Journals) {
				one = read.Journals[j]
			}
			c.gatherJournal(m, f, j, one)
		}
		if m.limits.Journals > 2 {
			f.runOut = c.one(&m.runOut, s, read.RunOut)
		}
		for k, lobes := range [2][]ReadingsLobe{read.Inlet, read.Exhaust} {
			for j := range m.lobes[k].names {
				var one ReadingsLobe
				if j < len(lobes) {
					one = lobes[j]
				}
				c.gatherLobe(&m.lobes[k], f, j, one)
			}
		}
		f.endFloat = c.one(&m.endFloat, s, read.EndFloat)
	}
}

func (c *inspectRun) gatherJournal(m *inspectCam, f *inspectCamFound, j int, read ReadingsJournal) {
	s := &f.state
	path := c.rowPath(s, m.journals[j])
	var journal, bearing tolerance.Bracket
	var okJournal, okBearing bool
	if m.journal.asked {
		if journal, okJournal = inspectTake(c, &m.journal, s, j, read.Journal); okJournal {
			f.shaft = inspectWorse(f.shaft, c.found(&m.journal, s, m.names[j], path, journal))
		}
	}
	if m.bearing.asked {
		if bearing, okBearing = inspectTake(c, &m.bearing, s, j, read.Bearing); okBearing {
			f.bearing = inspectWorse(f.bearing, c.found(&m.bearing, s, m.names[j], path, bearing))
		}
	}
	if !okJournal || !okBearing || !m.clear.asked {
		return
	}
	gap := CamJournalClearance(bearing, journal)
	if _, hi := inputEnds(gap); hi < 0 {
		c.fail(s, m.journal.subs[j].path(), &InputError{"camshaft journal", journal.String(), "below its bearing, " + bearing.String()})
		return
	}
	f.bearing = inspectWorse(f.bearing, c.found(&m.clear, s, m.names[j], path, guideNoLess(gap)))
}

func (c *inspectRun) gatherLobe(m *inspectLobes, f *inspectCamFound, j int, read ReadingsLobe) {
	s := &f.state
	path := c.rowPath(s, m.paths[j])
	var height, base tolerance.Bracket
	var okHeight, okBase bool
	if m.height.asked {
		if height, okHeight = inspectTake(c, &m.height, s, j, read.Height); okHeight {
			f.lobe = inspectWorse(f.lobe, c.found(&m.height, s, m.names[j], path, height))
		}
	}
	if m.base.asked {
		base, okBase = inspectTake(c, &m.base, s, j, read.Base)
	}
	if !okHeight || !okBase || !m.lift.asked {
		return
	}
	lift := LobeLift(height, base)
	if lo, _ := inputEnds(lift); lo <= 0 {
		c.fail(s, m.base.subs[j].path(), &InputError{"base circle of the lobe", base.String(), "below the height " + height.String()})
		return
	}
	f.lobe = inspectWorse(f.lobe, c.found(&m.lift, s, m.names[j], path, lift))
}

// rowPath is the path of a finding of a camshaft's row.
func (c *inspectRun) rowPath(s *inspectState, paths []string) string {
	if s.index < len(paths) {
		return paths[s.index]
	}
	return s.path("")
}

// inspectWorse is the worse of two findings, the first of equals.
func inspectWorse(a, b *tolerance.Finding) *tolerance.Finding {
	if b == nil || a != nil && a.Standing >= b.Standing {
		return a
	}
	return b
}

func (c *inspectRun) gatherDrive() {
	for i := range c.x.drive {
		s := &c.driven[i].state
		var read ReadingsDrive
		if s.listed {
			read = c.r.Drive[s.index]
		}
		c.driven[i].found = c.one(&c.x.drive[i], s, read.Reading)
	}
}

// inspectDriven is what is found of one measure of the drive.
type inspectDriven struct {
	state inspectState
	found *tolerance.Finding
}
