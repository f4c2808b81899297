package crank

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// forced is the journal that rules out the next lesser undersize: the one with the
// least to spare at it or, where there is no lesser one, the smallest of those that
// can't stay as they are. Where it isn't known whether all can stay, it is the
// first that this hangs on.
func (c *UndersizeChoice) forced() int {
	if c.Outcome == UndersizeAsIs {
		return c.leastSpare(func(i int) units.Length { return units.Length(-c.Journals[i].AsIs) })
	}
	if c.Stays == tolerance.Undecided {
		for i := range c.Journals {
			if c.Journals[i].Stays == tolerance.Undecided {
				return i
			}
		}
	}
	at := c.Kit
	if at < 0 {
		at = c.Possible
	}
	if at < 0 {
		at = len(c.Kits)
	}
	for k := at - 1; k >= 0; k-- {
		if !c.groundFor(k) || !c.InStock[k] {
			continue
		}
		return c.leastSpare(func(i int) units.Length { lo, _ := journalEnds(c.Journals[i].Fits[k].Spare); return lo })
	}
	return c.leastSpare(func(i int) units.Length {
		lo, _ := journalEnds(c.Journals[i].Clean.Size)
		if c.Journals[i].Stays == tolerance.Within && c.AsIsShort < 0 {
			return lo.Add(journalLargest) // behind those that can't stay
		}
		return lo
	})
}

// groundFor reports whether a kit is one that journals are ground for.
func (c *UndersizeChoice) groundFor(k int) bool {
	return !c.Journals[0].Fits[k].Spare.IsZero()
}

// leastSpare is the first journal of which a figure is the least.
func (c *UndersizeChoice) leastSpare(of func(i int) units.Length) int {
	at := 0
	for i := range c.Journals {
		if of(i) < of(at) {
			at = i
		}
	}
	return at
}

// settle names what would tell the possible answer from the sure one, and what is
// to be looked up before grinding.
func (j *UndersizeJob) settle(c *UndersizeChoice) string {
	switch c.Outcome {
	case UndersizeGrind:
		if c.Nominal[c.Kit] {
			return "before grinding, look up the journal sizes printed for the shells of " + c.Kits[c.Kit].Name + ": the standard sizes less the undersize stand in for them"
		}
		return ""
	case UndersizeAsIs, UndersizeNone:
		return ""
	}
	var asked []string
	for i := range c.Journals {
		if what := j.settleOne(c, i); what != nil {
			asked = append(asked, c.Journals[i].Where+": "+strings.Join(what, ", and "))
		}
	}
	return strings.Join(asked, "; ")
}

func (j *UndersizeJob) settleOne(c *UndersizeChoice, i int) (what []string) {
	one, w := &c.Journals[i], &j.Journals[i]
	if c.Stays == tolerance.Undecided && one.Stays == tolerance.Undecided {
		switch rule := j.mayStay(w); {
		case rule == tolerance.Undecided:
			what = append(what, "measure out-of-round, taper and run-out more closely, or for the first time: whether it may run on hangs on them")
		default:
			what = append(what, "measure its least diameter more closely: it is "+w.Least.String()+" by now, on both sides of what a shell goes on")
		}
	}
	if c.Possible < 0 {
		return what
	}
	switch f := &one.Fits[c.Possible]; {
	case f.CleansUp == tolerance.Undecided && one.Clean.Settle != "":
		what = append(what, one.Clean.Settle)
	case f.CleansUp == tolerance.Undecided:
		what = append(what, "measure diameter, walls or run-out more closely: for "+c.Kits[c.Possible].Name+" its clean size has from "+f.Spare.String()+" to spare")
	case f.Allowed == tolerance.Undecided:
		what = append(what, "measure it more closely: the least size allowed lies within what is known")
	case f.CaseStands == tolerance.Undecided:
		what = append(what, "find how deep its hardened case is")
	}
	return what
}
