package crank

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// bySize is the decision that a part's findings alone come to.
func (x *shaftRun) bySize(step inspection.Step, part, where string, v *partVerdict, limitSlips []string) inspection.Decision {
	d := inspection.Decision{Step: step, Part: part, Where: where}
	switch {
	case v.rank >= runOutRank(tolerance.OutsideNewBand):
		d.Action, d.Because = v.fail, x.because(v, where)
		if d.Action == inspection.MeasureAgain {
			d.Settle = "find its cause and measure again"
		}
		if v.next != "" {
			d.Because += "; " + v.next
		}
	case v.worst > 0 && v.rank == runOutRank(tolerance.CantTell):
		d.Because, d.Settle = x.because(v, where), x.r.Findings[v.worst-1].Settle()
		if d.Settle == "" {
			d.Settle = "measure it more closely"
		}
	case v.missing > 0:
		d.Because, d.Settle = "not all of it has been read", v.toRead()
	case v.worst == 0:
		d.Action, d.Because = inspection.ReUse, "nothing is asked of its sizes"
	case v.rank == 0:
		d.Action, d.Because = inspection.ReUse, "all that was read is as new"
	default:
		d.Action, d.Because = inspection.ReUse, "all that was read is within the wear limits"
	}
	return doubted(d, v.slips, limitSlips)
}

// toRead names what is still to be read.
func (v *partVerdict) toRead() string {
	s := "read " + v.first
	if v.missing > 1 {
		s += ", and " + strconv.Itoa(v.missing-1) + " more"
	}
	return s
}

// doubted is a decision that rests on what looks like slips. Readings that look
// like slips are read again first; a limit that does is looked up before a part is
// passed by it.
func doubted(d inspection.Decision, readings, limits []string) inspection.Decision {
	if len(readings) == 0 && len(limits) == 0 {
		return d
	}
	d.Slips = append(append(make([]string, 0, len(readings)+len(limits)), readings...), limits...)
	switch {
	case len(readings) > 0 && d.Action != inspection.MeasureAgain:
		d.Because = "it rests on readings that look like slips; as they stand it would be: " + d.Action.String()
		d.Action, d.Size, d.Settle = inspection.MeasureAgain, "", "read again what looks like a slip"
	case len(readings) > 0:
		d.Because, d.Settle = clause(d.Because, "it rests on readings that look like slips"), clause(d.Settle, "read again what looks like a slip")
	case d.Action == inspection.ReUse || d.Action == inspection.CleanAndReUse:
		d.Because = "by limits that look like slips it would be: " + d.Action.String()
		d.Action, d.Settle = inspection.MeasureAgain, "look up the limits that look like slips in the manual"
	}
	return d
}

// because says what governs a part: the reading, the limit and the margin. The
// part's own name isn't said again.
func (x *shaftRun) because(v *partVerdict, part string) string {
	f := &x.r.Findings[v.worst-1]
	switch {
	case f.Length != nil:
		return becauseOf(part, f.Length)
	case f.Force != nil:
		return becauseOf(part, f.Force)
	case f.Mass != nil:
		return becauseOf(part, f.Mass)
	case f.Pressure != nil:
		return becauseOf(part, f.Pressure)
	case f.Angle != nil:
		return becauseOf(part, f.Angle)
	}
	return f.Explain()
}

func becauseOf[Q units.Quantity](part string, f *tolerance.FindingOf[Q]) string {
	reading := f.Greatest
	if f.New.Least == tolerance.Below || f.Wear.Least == tolerance.Below {
		reading = f.Least
	}
	s := make([]byte, 0, 192)
	if f.Where != "" && f.Where != part {
		s = append(append(s, strings.TrimPrefix(strings.TrimPrefix(f.Where, part), ", ")...), ": "...)
	}
	s = append(append(s, f.Measure...), ' ')
	s, _ = reading.AppendText(s) // in range, as all that was judged is
	if !f.Spec.New.IsZero() {
		s, _ = f.Spec.New.AppendText(append(s, ", new "...))
	}
	if !f.Spec.Wear.IsZero() {
		s, _ = f.Spec.Wear.AppendText(append(s, ", wear limit "...))
	}
	s = append(append(s, ": "...), f.Explain()...)
	if hi, end := f.Margin.Upper(); end != tolerance.Absent && hi < 0 {
		s, _ = tolerance.Exactly(Q(0)).Sub(f.Margin).AppendText(append(s, ", by "...))
	}
	return string(s)
}

// clause is two clauses, or the one there is.
func clause(a, b string) string { return clauseBy(a, "; ", b) }

func clauseBy(a, by, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + by + b
}

// usual is an action, or the usual one where none is given.
func usual(a, otherwise inspection.Action) inspection.Action {
	if a == inspection.MeasureAgain {
		return otherwise
	}
	return a
}

// decide puts a part's decision into the report, once its condition is looked at.
// A part of which nothing is known gets none.
func (x *shaftRun) decide(v *partVerdict, c *inspection.Condition, care inspection.Care, d inspection.Decision) inspection.Decision {
	if c != nil && (*c != inspection.Condition{} || care.CrackTest || care.PressureTest) {
		d = c.Overrule(care, d)
	}
	if d.Action != inspection.MeasureAgain && d.Action < inspection.Replace && v.missing > 0 {
		// A condition may have made it worse than measuring again; it is still open.
		d.Settle = clause(d.Settle, v.toRead())
	}
	if v.taken > 0 || c != nil && *c != (inspection.Condition{}) {
		x.r.Decisions = append(x.r.Decisions, d)
	}
	return d
}
