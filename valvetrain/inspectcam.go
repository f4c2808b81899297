package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// findCams gives the camshafts and the measures of the drive that are listed
// their places.
func (c *inspectRun) findCams() error {
	for i := range c.r.Camshafts {
		read, at := &c.r.Camshafts[i], -1
		for j := range c.x.cams {
			if c.x.cams[j].limits.Name == read.Name {
				at = j
			}
		}
		path := func() string { return inspection.Index("camshafts", i) }
		if at < 0 {
			return inspection.At(path()+".name", &InputError{"camshaft", strconv.Quote(inputText(read.Name)), "one of those that the limits name"})
		}
		s, m := &c.cams[at].state, c.x.cams[at].limits
		if s.listed {
			return inspection.At(path()+".name", &InputError{"camshaft", strconv.Quote(inputText(read.Name)), "listed once"})
		}
		s.listed, s.index, s.cond = true, i, read.Condition
		for _, row := range [...]struct {
			field   string
			n, most int
		}{{"journals", len(read.Journals), m.Journals}, {"inletLobes", len(read.Inlet), m.InletLobes}, {"exhaustLobes", len(read.Exhaust), m.ExhaustLobes}} {
			if row.n > row.most {
				return inspection.At(path()+"."+row.field, &InputError{"readings", strconv.Itoa(row.n), "at most the " + strconv.Itoa(row.most) + " that the limits ask for"})
			}
		}
		for j := range read.Journals {
			if read.Journals[j].CapMark == "" {
				continue
			}
			if err := inspection.Matched("cap", "journal "+strconv.Itoa(j+1), inputText(read.Journals[j].CapMark), strconv.Itoa(j+1)); err != nil {
				return inspection.At(path()+"."+inspection.Index("journals", j)+".capMark", err)
			}
		}
	}
	for i := range c.r.Drive {
		read, at := &c.r.Drive[i], -1
		for j := range c.x.limits.Drive {
			if d := &c.x.limits.Drive[j]; d.Part == read.Part && d.Measure == read.Measure {
				at = j
			}
		}
		path := func() string { return inspection.Index("drive", i) }
		if at < 0 {
			return inspection.At(path()+".measure", &InputError{"measure of the drive", strconv.Quote(inputText(read.Part + ", " + read.Measure)), "one of those that the limits name"})
		}
		s := &c.driven[at].state
		if s.listed {
			return inspection.At(path()+".measure", &InputError{"measure of the drive", strconv.Quote(inputText(read.Measure)), "listed once"})
		}
		s.listed, s.index, s.cond = true, i, read.Condition
	}
	next := [2]int{len(c.r.Camshafts), len(c.r.Drive)}
	for i := range c.cams {
		s := &c.cams[i].state
		s.where, s.list = c.x.cams[i].limits.Name, "camshafts"
		if !s.listed {
			s.index, next[0] = next[0], next[0]+1
		}
	}
	for i := range c.driven {
		s := &c.driven[i].state
		s.where, s.list = c.x.limits.Drive[i].Part, "drive"
		if !s.listed {
			s.index, next[1] = next[1], next[1]+1
		}
	}
	return nil
}

// decideCams decides on each camshaft, and where they were measured on its
// bearings and its end float.
func (c *inspectRun) decideCams() {
	for i := range c.cams {
		f, m := &c.cams[i], &c.x.cams[i]
		s := &f.state
		if s.silent() {
			continue
		}
		v := s.verdict(inspection.StepCamshaft, "camshaft")
		v.past(f.lobe, inspection.Replace, false, "renew or regrind it, and renew the followers with it: a worn follower ruins a new lobe")
		v.past(f.shaft, inspection.Replace, false, "renew or regrind it")
		v.past(f.runOut, inspection.Repair, false, "straighten or renew it; see first that the journal itself is round, which the dial reads too")
		v.past(f.bearing, inspection.Repair, false, "renew the bearing, or have its housing restored")
		v.past(f.endFloat, inspection.ReconditionSame, true, "renew or shim the thrust plate")
		d := v.settled(&m.limits.Care)
		s.action, s.decided = d.Action, true
		c.decided(d)
	}
}

func (c *inspectRun) decideDrive() {
	for i := range c.driven {
		f, l := &c.driven[i], &c.x.limits.Drive[i]
		if f.state.silent() {
			continue
		}
		v := f.state.verdict(inspection.StepTimingDrive, l.Part)
		v.d.Where = ""
		then := l.Then
		if then == inspection.MeasureAgain {
			then = inspection.Replace
		}
		v.past(f.found, then, false, "")
		d := v.settled(&inspection.Care{})
		f.state.action, f.state.decided = d.Action, true
		c.decided(d)
	}
}
