package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspectVerdict is a decision in the making.
type inspectVerdict struct {
	s       *inspectState
	d       inspection.Decision
	outside string // what is outside the new-part band, where no wear limit is printed
	wait    string // what has to be done first
}

const (
	inspectPassed = "within the limits by all that was measured"
	inspectLookUp = "look up the wear limit in the engine maker's manual: none is given"
)

func (s *inspectState) verdict(step inspection.Step, part string) inspectVerdict {
	return inspectVerdict{s: s, d: inspection.Decision{Step: step, Part: part, Where: s.where, Action: inspection.ReUse, Because: inspectPassed}}
}

// silent tells a part that nobody has read or looked at.
func (s *inspectState) silent() bool { return s.taken == 0 && s.cond == inspection.Condition{} }

// marked tells a part whose condition may overrule its sizes.
func (s *inspectState) marked() bool {
	c := &s.cond
	return c.Cracked == inspection.Yes || c.Scored == inspection.Yes || c.Blued == inspection.Yes || c.Pitted == inspection.Yes
}

// clean tells a part that passes by all that was asked, with nothing to weigh.
func (s *inspectState) clean(care *inspection.Care) bool {
	return s.worst <= tolerance.Usable && s.missing == 0 && s.open == "" && len(s.slips) == 0 && !s.marked() && !care.CrackTest && !care.PressureTest
}

// pass decides on a part that is clean.
func (c *inspectRun) pass(to []inspection.Decision, s *inspectState, step inspection.Step, part string) []inspection.Decision {
	s.action, s.decided = inspection.ReUse, true
	return append(to, inspection.Decision{Step: step, Part: part, Where: s.where, Action: inspection.ReUse, Because: inspectPassed})
}

// inspectBecause is a finding in words: reading, limits, standing, and margin.
func inspectBecause[Q units.Quantity](f *tolerance.FindingOf[Q]) string {
	text := f.String()
	if f.Margin.InRange() && !f.Margin.IsZero() {
		text += " (margin " + f.Margin.String() + ")"
	}
	return text
}

// past makes the decision worse where a finding is past what is allowed: past
// its wear limit, or, where strict, outside the band alone.
func (v *inspectVerdict) past(f *tolerance.Finding, a inspection.Action, strict bool, note string) {
	if f == nil || f.Standing < tolerance.OutsideNewBand {
		return
	}
	if f.Standing == tolerance.OutsideNewBand && !strict {
		if v.outside == "" {
			v.outside = inspectBecause(f)
		}
		return
	}
	if a > v.d.Action {
		v.d.Action, v.d.Size, v.d.Because = a, "", inspectJoin(inspectBecause(f), note)
	}
}

// to makes the decision worse for another reason.
func (v *inspectVerdict) to(a inspection.Action, size, because string) {
	if a > v.d.Action {
		v.d.Action, v.d.Size, v.d.Because = a, size, because
	}
}

// settled is the decision once doubts, missing readings and the part's
// condition are looked at.
func (v *inspectVerdict) settled(care *inspection.Care) inspection.Decision {
	s, d := v.s, v.d
	d.Slips = s.slips
	would := ""
	if d.Action != inspection.ReUse {
		would = "as far as is known it would be: " + d.Action.String() + ", " + d.Because
	}
	again := func(because, settle string) {
		d.Action, d.Size = inspection.MeasureAgain, ""
		d.Because, d.Settle = inspectJoin(because, would), inspectJoin(settle, v.wait)
	}
	switch {
	case s.suspect != "":
		again("it rests on a reading that looks like a slip: "+s.suspect, "measure that place again")
	case s.doubt != "":
		again("it rests on a limit whose two columns differ, and which of them is right decides: "+s.doubt, "look the limit up in another edition of the manual")
	case d.Action >= inspection.Replace:
	case v.wait != "":
		again(v.d.Because, "")
		d.Because = v.d.Because
	case s.missing > 0 || s.open != "" || v.outside != "":
		because, settle := v.outside, ""
		if v.outside != "" {
			settle = inspectLookUp
		}
		if s.open != "" {
			because, settle = inspectJoin(because, "the readings don't tell"), inspectJoin(settle, s.open)
		}
		if s.missing > 0 {
			because = inspectJoin(because, inspectLeft(s.missing)+" still to be taken")
			settle = inspectJoin(settle, "take "+inspectFirst(s))
		}
		again(because, settle)
	}
	if len(s.slips) > 0 && d.Action != inspection.MeasureAgain && s.suspect == "" {
		d.Settle = inspectJoin(d.Settle, "a limit that it rests on looks like a slip; by either column it is the same")
	}
	if s.marked() || care.CrackTest || care.PressureTest {
		d = s.cond.Overrule(*care, d)
	}
	return d
}

func inspectLeft(n int) string {
	if n == 1 {
		return "a reading is"
	}
	return smallNumber(n) + " readings are"
}

func inspectFirst(s *inspectState) string {
	if s.missing == 1 {
		return s.first
	}
	return s.first + ", and " + smallNumber(s.missing-1) + " more"
}

// inspectJoin is two clauses, or the one there is.
func inspectJoin(a, b string) string {
	switch {
	case a == "":
		return b
	case b == "":
		return a
	}
	return a + "; " + b
}
