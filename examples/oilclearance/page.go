package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 100

// A printer writes lengths for one kind of bench.
type printer struct {
	unit   units.Unit[units.Length]
	places int
}

var (
	metric   = printer{units.InMillimetres, 3}
	imperial = printer{units.InInches, 4}
)

// size is a length in its unit.
func (p printer) size(l units.Length) string { return l.Text(p.unit, p.places) }

// span is a bracket in its unit: rounded outward, and an end that isn't there left
// open.
func (p printer) span(i tolerance.Bracket) string {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	write := func(l units.Length, r units.Rounding) string {
		text, _ := l.Append(nil, units.Style[units.Length]{Unit: p.unit, Places: p.places, Rounding: r, Bare: true})
		return string(text)
	}
	switch {
	case loEnd == tolerance.Absent:
		return "not known"
	case hiEnd == tolerance.Absent:
		return "over " + write(lo, units.Down)
	}
	if a, b := write(lo, units.Down), write(hi, units.Up); a != b {
		return a + " to " + b
	}
	return write(lo, units.NearestEven)
}

// table writes rows under each other.
func table(b *strings.Builder, rows [][]string) {
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	for _, row := range rows {
		fmt.Fprintln(w, "  "+strings.Join(row, "\t"))
	}
	w.Flush()
	for line := range strings.Lines(text.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}

// page is the page for the bench.
func (e *engine) page(p printer) string {
	var b strings.Builder
	limits := []string{}
	if !e.Clearance.New.IsZero() {
		limits = append(limits, "new "+e.Clearance.New.Text(p.unit, p.places))
	}
	if !e.Clearance.Wear.IsZero() {
		limits = append(limits, "wear limit "+e.Clearance.Wear.Text(p.unit, p.places))
	}
	if len(limits) == 0 {
		limits = append(limits, "none given")
	}
	fmt.Fprintf(&b, "Oil clearance (%s): %s\nLimits: %s\n\n", p.unit.Symbol(), e.Engine, strings.Join(limits, "; "))
	rows := [][]string{{"bearing", "least", "greatest", "standing", "how", "rule of thumb"}}
	for i, r := range e.reports {
		rows = append(rows, []string{e.Bearings[i].Where, p.span(r.Least), p.span(r.Greatest), r.Finding.Standing.String(), r.Method.String(), p.span(r.Thumb)})
	}
	table(&b, rows)
	b.WriteString("\n")
	for i, r := range e.reports {
		b.WriteString(recipe.Wrap(e.Bearings[i].Where+": "+r.Next+".", width, "", "  "))
	}
	b.WriteString(recipe.Wrap("The rule of thumb is common practice, and no limit.", width, "", ""))
	e.writeStrips(&b, p)
	e.writeShells(&b, p)
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on the readings and limits given.\n")
	return b.String()
}

func (e *engine) writeStrips(b *strings.Builder, p printer) {
	if len(e.strips) == 0 {
		return
	}
	b.WriteString("\nBy gauging strip; where it is widest the bearing is tightest:\n\n")
	rows := [][]string{{"bearing", "front", "middle", "rear", "standing", "taper", "standing", "the journal is"}}
	for i, r := range e.strips {
		middle := "not read"
		if !r.Middle.IsZero() {
			middle = p.span(r.Middle)
		}
		rows = append(rows, []string{e.Strips.Read[i].Where, p.span(r.Front), middle, p.span(r.Rear), r.Finding.Standing.String(), p.span(r.Taper), r.TaperFinding.Standing.String(), r.Shape.String()})
	}
	table(b, rows)
	b.WriteString("\n")
	for i, r := range e.strips {
		if r.Finding.Settle != "" {
			b.WriteString(recipe.Wrap(e.Strips.Read[i].Where+": "+r.Finding.Settle+".", width, "", "  "))
		}
	}
}

func (e *engine) writeShells(b *strings.Builder, p printer) {
	if e.Shells == nil {
		return
	}
	how := "one class to a bearing"
	if e.Shells.Mixed {
		how = "halves of two classes where that comes nearer"
	}
	b.WriteString("\n" + recipe.Wrap(fmt.Sprintf("Shells from stock, for %s and best %s at the tightest place, before nip; %s:", e.Shells.Wanted.Text(p.unit, p.places), p.size(e.job.Wanted.Aim), how), width, "", "") + "\n")
	rows := [][]string{{"bearing", "upper half", "lower half", "clearance", ""}}
	for i, k := range e.choice.Picks {
		does := map[tolerance.Verdict]string{tolerance.Within: "does", tolerance.Undecided: "can't tell", tolerance.Below: "too tight", tolerance.Above: "too wide"}[k.Verdict]
		rows = append(rows, []string{e.Bearings[i].Where, e.job.Classes[k.Upper].Name, e.job.Classes[k.Lower].Name, p.span(k.Clearance), does})
	}
	table(b, rows)
	n := len(e.choice.Picks)
	fmt.Fprintf(b, "\n%d of %d are in what is wanted for certain; none is further from the best than %s.\n", e.choice.InBand, n, p.size(e.choice.Greatest))
	if e.choice.InBand < n {
		b.WriteString(recipe.Wrap("What isn't in it for certain is not a pass: measure more closely, find other shells, or grind.", width, "", ""))
	}
}
