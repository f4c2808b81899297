package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

const width = 78

// page is the page for the bench.
func (s *set) page() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Connecting rods: %s\n", s.Engine)
	for i, j := range s.judged {
		fmt.Fprintf(&b, "\n%s\n", s.Rods[i].Where)
		if j.rod != nil {
			s.findings(&b, j.rod.Findings...)
		}
		if j.bigEnd != nil {
			s.findings(&b, j.bigEnd.Size)
			s.findings(&b, j.bigEnd.Ovality...)
			s.findings(&b, j.bigEnd.Taper...)
			for _, m := range j.bigEnd.Missing {
				fmt.Fprintf(&b, "  big end, %s: not read\n", m)
			}
		}
		for _, r := range j.bolts {
			s.findings(&b, r.Findings...)
		}
		s.next(&b, i, j)
	}
	b.WriteString("\nNever file a cap. The engine maker's manual governs; this is arithmetic on\nwhat was given.\n")
	return b.String()
}

// findings writes one line each; where no limit is given, the reading alone.
func (s *set) findings(b *strings.Builder, list ...tolerance.Finding) {
	for _, f := range list {
		where, rest := f.Where, strings.TrimPrefix(f.Text(s.unit, s.places), f.Where+": ")
		if f.Spec.IsZero() {
			rest = f.Measure + " " + f.Greatest.Text(s.unit, s.places)
		}
		if _, part, of := strings.Cut(where, ", "); of {
			rest = part + ": " + rest
		}
		b.WriteString(recipe.Wrap(rest, width, "  ", "    "))
	}
}

// next is what to do with a rod.
func (s *set) next(b *strings.Builder, i int, j judged) {
	if j.rod != nil {
		b.WriteString(recipe.Wrap("rod: "+j.rod.Next, width, "  → ", "    "))
	}
	if e := j.bigEnd; e != nil && e.WorstAt != "" {
		text := "within its limits"
		switch e.Worst {
		case tolerance.OutsideNewBand, tolerance.PastWearLimit:
			text = "out of limits in " + e.WorstAt + ": resize it only where the manual allows, or replace the rod"
			if s.CrackedCap {
				text = "out of limits in " + e.WorstAt + ", and the joint of a cracked cap isn't cut: replace the rod"
			}
		case tolerance.CantTell:
			text = "can't be told yet, which is not a pass: " + e.WorstAt
		}
		b.WriteString(recipe.Wrap("big end: "+text, width, "  → ", "    "))
	}
	for k, r := range j.bolts {
		b.WriteString(recipe.Wrap(s.Rods[i].Bolts[k].Where+": "+r.Next, width, "  → ", "    "))
	}
}

// working writes out one rod, from the middle of each reading.
func (s *set) working(name string) (string, error) {
	at := -1
	for i, r := range s.Rods {
		if r.Where == name {
			at = i
		}
	}
	if at < 0 {
		return "", fmt.Errorf("no rod is called %.64q", name)
	}
	var b strings.Builder
	var failed error
	solve := func(t working.Term) {
		solution, err := working.Solve(t, units.Style[units.Length]{Unit: s.unit, Places: s.places + 1})
		if err != nil && failed == nil {
			failed = err
		}
		b.WriteString(solution.Text() + "\n")
	}
	given := func(words, symbol string, x tolerance.Bracket) working.Term {
		middle, ok := x.Middle()
		if !ok && failed == nil {
			failed = fmt.Errorf("%s: every blade went in: nothing to work with", words)
		}
		return working.Given(words, symbol, middle)
	}
	c := s.judged[at].check
	per := c.Limits.Per
	if per == 0 {
		per = 100 * units.Millimetre
	}
	over := working.Given("span of the limit", "p", per)
	if !c.Right.IsZero() {
		right, left := given("right dial", "R", c.Right), given("left dial", "L", c.Left)
		solve(crank.RodLength(right, left).Named("length over the master", "l"))
		bend := crank.RodBend(right, left).Named("bend", "b")
		if c.Span > 0 {
			bend = crank.RodPer(bend, working.Given("span of the dials", "d", c.Span), over).Named("bend over "+per.String(), "b'")
		}
		solve(bend)
	}
	if !c.Twist.IsZero() && c.TwistSpan > 0 {
		solve(crank.RodPer(given("twist", "t", c.Twist), working.Given("span of the twist", "d", c.TwistSpan), over).Named("twist over "+per.String(), "t'"))
	}
	if len(c.Widths) > 0 {
		var widths []working.Term
		for i, w := range c.Widths {
			widths = append(widths, given(fmt.Sprint("width of rod ", i+1), fmt.Sprint("w", i+1), w))
		}
		solve(crank.RodSideClearance(given("crankpin", "c", c.Crankpin), widths[0], widths[1:]...).Named("side clearance", "s"))
	}
	for _, x := range s.Rods[at].Bolts {
		if !x.Tightened.IsZero() {
			solve(crank.BoltStretch(given(x.Where+", free", "f", x.Free), given(x.Where+", tightened", "t", x.Tightened)).Named("stretch of "+x.Where, "δ"))
		}
	}
	return b.String(), failed
}
