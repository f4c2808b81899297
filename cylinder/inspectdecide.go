package cylinder

import (
	"slices"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// A rule says what becomes of a part by its standing.
type rule struct {
	used inspection.Action // within the wear limit, but not as new
	past inspection.Action // past what is allowed
	// strict: outside the new-part band, with no wear limit on that side, is
	// past what is allowed. Elsewhere the maker's manual has to say.
	strict bool
}

// The ranks of linerRank.
const (
	rankNone    = -1
	rankAsNew   = 0
	rankUsable  = 1
	rankOpen    = 2
	rankOutside = 3
	rankPast    = 4
)

// decide is what becomes of a part by what was measured of it.
func (x *inspecting) decide(t *tally, r rule) inspection.Decision {
	d := inspection.Decision{Step: t.step, Part: t.part, Where: t.where, Slips: t.slips}
	failed := t.rank == rankPast || r.strict && t.rank == rankOutside
	switch {
	case t.suspect != "":
		d.Because = "it rests on a reading that looks like a slip: " + t.suspect
		d.Settle = "measure that place again"
	case t.doubt:
		d.Because = "it rests on a limit whose printed columns differ, and which of them is right decides"
		d.Settle = "look up the limit in another edition of the manual"
	case failed && len(t.against) == 0:
		d.Action, d.Because = r.past, x.because(t)
	default:
		x.pass(t, r, failed, &d)
	}
	if len(t.slips) > 0 && d.Action != inspection.MeasureAgain {
		d.Settle = joined(d.Settle, "a limit that it rests on looks like a slip; the standing is the same by either column")
	}
	return d
}

// pass decides on a part that isn't past its limits for sure.
func (x *inspecting) pass(t *tally, r rule, failed bool, d *inspection.Decision) {
	var because, settle []string
	if failed || t.rank == rankOutside || t.rank == rankOpen {
		because = append(because, x.because(t))
	}
	if t.rank == rankOutside && !r.strict {
		settle = append(settle, "look up the wear limit in the engine maker's manual: none is given")
	}
	because, settle = append(because, t.against...), append(settle, t.settle...)
	if t.missing > 0 {
		because = append(because, readingsLeft(t.missing)+" still to be taken")
		settle = append(settle, "take "+firstLeft(t))
	}
	settle = append(settle, t.open...)
	switch {
	case len(because) > 0 || len(settle) > 0:
		d.Because, d.Settle = strings.Join(because, "; "), strings.Join(settle, "; ")
	case t.fresh && !t.used:
		d.Action, d.Because = inspection.ReUse, "as new, as far as limits for new parts are given"
	case t.rank == rankUsable:
		d.Action, d.Because = r.used, "within its limits"
	default:
		d.Because = "no limit is given that it can be judged by"
		d.Settle = "look up the limits in the engine maker's manual"
	}
}

func readingsLeft(n int) string {
	if n == 1 {
		return "a reading is"
	}
	return strconv.Itoa(n) + " readings are"
}

func firstLeft(t *tally) string {
	if t.missing == 1 {
		return t.first
	}
	return t.first + ", and " + strconv.Itoa(t.missing-1) + " more"
}

// because is the worst finding in words: reading, limits, standing and margin.
func (x *inspecting) because(t *tally) string {
	f := &x.report.Findings[t.worst]
	text := f.String()
	if t.at != "" {
		text += ", " + t.at
	}
	if l := f.Length; l != nil && !l.Margin.IsZero() && l.Margin.InRange() {
		text += " (margin " + l.Margin.String() + ")"
	}
	return text
}

// joined is two clauses, or the one there is.
func joined(a, b string) string {
	switch {
	case a == "":
		return b
	case b == "":
		return a
	}
	return a + "; " + b
}

// tests lists the tests that are asked of a part and not written down.
func (x *inspecting) tests(t *tally, care *inspection.Care, c *inspection.Condition, path, where string) {
	add := func(asked bool, done inspection.State, field, what, with string) {
		if asked && done != inspection.Yes {
			x.report.Missing = append(x.report.Missing, inspection.Missing{Step: t.step, Path: path + ".condition." + field, Measure: what, Where: where, With: with})
		}
	}
	add(care.CrackTest, c.CrackTested, "crackTested", "crack test", "dye or magnetic particles")
	add(care.PressureTest, c.PressureTested, "pressureTested", "pressure test", "plates and water, or air under water")
}

// keep enters a decision and says whether it settles something.
func (x *inspecting) keep(d inspection.Decision) { x.report.Decisions = append(x.report.Decisions, d) }

// setDecision is the decision for a whole set, with the part that decided, and
// with the slips that any of them rests on.
func setDecision(set string, decisions ...inspection.Decision) inspection.Decision {
	d := inspection.Worst(decisions...)
	d.Governs, d.Part, d.Where, d.Slips = d.Where, set, "", nil
	if d.Action <= inspection.CleanAndReUse && d.Action != inspection.MeasureAgain {
		d.Governs = ""
	}
	for i := range decisions {
		for _, s := range decisions[i].Slips {
			if !slices.Contains(d.Slips, s) {
				d.Slips = append(d.Slips, s)
			}
		}
	}
	return d
}

// follow makes parts go with their set that by themselves would be re-used, or
// worked less: what is bored or honed, is so all through.
func follow(parts []inspection.Decision, action inspection.Action, set *inspection.Decision) {
	for i := range parts {
		p := &parts[i]
		if p.Action == inspection.MeasureAgain || p.Action >= action {
			continue
		}
		p.Because = "goes with " + set.Governs + ", which governs; by itself: " + p.Action.String() + ", " + p.Because
		p.Action, p.Size = action, set.Size
	}
}
