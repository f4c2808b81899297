package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 78

// table is the page for the bench.
func table(e engine, set feeler.Set, rows []row) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Ring side clearance: %s\nBlades: %v\n\n", e.Engine, set)
	var page strings.Builder
	w := tabwriter.NewWriter(&page, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "\t\t\tclearance, mm\t\tclearance, in\t\t\t\npiston\tring\tplace\tat least\tless than\tat least\tless than\tlimits\tstanding\n")
	for _, r := range rows {
		for i, s := range r.readings {
			lead := "\t\t"
			if i == 0 {
				lead = fmt.Sprintf("%d\t%s\t", r.read.Piston, r.read.Ring)
			}
			fmt.Fprintf(w, "%s%s\t%s\t%s\t%s\t%s", lead, s.Where, lower(s.Bracket, mm), upper(s.Bracket, mm), lower(s.Bracket, inch), upper(s.Bracket, inch))
			if i == 0 {
				fmt.Fprintf(w, "\t%s\t%v", limits(r.ring), r.report.Finding.Standing)
			} else {
				fmt.Fprint(w, "\t\t")
			}
			fmt.Fprintln(w)
		}
	}
	w.Flush()
	for line := range strings.Lines(page.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	b.WriteString("\nWhat to do next\n")
	open, unlimited := 0, 0
	for _, r := range rows {
		b.WriteString(recipe.Wrap(r.part.Where+": "+r.report.Next, width, "  ", "    "))
		for _, s := range r.readings {
			for _, t := range s.Forced {
				b.WriteString(recipe.Wrap(s.Where+": "+t.Blade+" was forced and counts as refused; never force a blade", width, "    ", "    "))
			}
		}
		if r.report.WearKnown && r.report.Finding.Standing > tolerance.Usable {
			fmt.Fprintf(&b, "    of the wear, %s is the groove's\n", share(r.report.Wear.LeastPercent, r.report.Wear.GreatestPercent))
		}
		switch {
		case r.part.Limits.IsZero():
			unlimited++
		case r.report.Finding.Standing == tolerance.CantTell:
			open++
		}
	}
	if open > 0 {
		fmt.Fprintf(&b, "\n%d of %d grooves can't be told yet. That is not a pass: measure as said above\nbefore the piston goes back.\n", open, len(rows))
	}
	if unlimited > 0 {
		fmt.Fprintf(&b, "\n%d of %d grooves have no limit to be judged against.\n", unlimited, len(rows))
	}
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on the readings and limits given.\n")
	return b.String()
}

// The two columns: an inch gauge is marked .0025.
var (
	mm   = units.Style[units.Length]{Unit: units.InMillimetres, Places: 4, Bare: true}
	inch = units.Style[units.Length]{Unit: units.InInches, Places: 4, Bare: true, Point: true}
)

// lower and upper write the ends of a bracket, rounded outward.
func lower(i tolerance.Bracket, s units.Style[units.Length]) string {
	lo, _ := i.Lower() // a gap has one: 0 where no blade went in
	s.Rounding = units.Down
	text, _ := lo.Append(nil, s)
	return string(text)
}

func upper(i tolerance.Bracket, s units.Style[units.Length]) string {
	hi, end := i.Upper()
	if end == tolerance.Absent {
		return "none refused"
	}
	s.Rounding = units.Up
	text, _ := hi.Append(nil, s)
	return string(text)
}

// limits are as the manual prints them.
func limits(r ring) string {
	var s []string
	if !r.Limits.New.IsZero() {
		s = append(s, r.Limits.New.String())
	}
	if !r.Limits.Wear.IsZero() {
		s = append(s, "wear: "+r.Limits.Wear.String())
	}
	if len(s) == 0 {
		return "none given"
	}
	return strings.Join(s, ", ")
}

func share(least, greatest int) string {
	if least == greatest {
		return fmt.Sprintf("%d %%", least)
	}
	return fmt.Sprintf("%d to %d %%", least, greatest)
}
