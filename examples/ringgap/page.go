package main

import (
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const width = 96

// A printer writes lengths for one kind of bench.
type printer struct {
	unit   units.Unit[units.Length]
	places int
}

var (
	metric   = printer{units.InMillimetres, 3}
	imperial = printer{units.InInches, 4}
)

func (p printer) bare(l units.Length, r units.Rounding) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: p.unit, Places: p.places, Rounding: r, Bare: true})
	return string(text)
}

// span is a bracket, its ends rounded outward.
func (p printer) span(i tolerance.Bracket) string {
	lo, _ := i.Lower()
	hi, end := i.Upper()
	if end == tolerance.Absent {
		return p.bare(lo, units.Down) + " or more"
	}
	if i.IsExact() {
		return p.bare(lo, units.NearestEven)
	}
	return p.bare(lo, units.Down) + "–" + p.bare(hi, units.Up)
}

// filing is what to file off in inches, rounded inward, where they are wanted.
func (p printer) filing(r row) string {
	if p != imperial || r.report.Remedy != piston.RingFile {
		return ""
	}
	lo, _ := r.report.Filing.Sure.Lower()
	hi, end := r.report.Filing.Sure.Upper()
	if end == tolerance.Absent {
		return " (" + p.bare(lo, units.Up) + " in or more)"
	}
	return " (" + p.bare(lo, units.Up) + "–" + p.bare(hi, units.Down) + " in)"
}

// page is the page for the bench.
func page(e engine, rows []row, p printer) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Ring end gaps: %s\nStandard bore %s %s\n\n", e.Engine, p.bare(e.Nominal, units.NearestEven), p.unit.Symbol())
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  %s\tleast gap\tgreatest gap\tstanding\tdo\n", p.unit.Symbol())
	for _, r := range rows {
		f := r.report.Finding
		fmt.Fprintf(w, "  %s\t%s\t%s\t%v\t%v\n", r.name, p.span(f.Least), p.span(f.Greatest), f.Standing, r.report.Remedy)
	}
	w.Flush()
	trimmed(&b, text.String())
	if slices.ContainsFunc(rows, func(r row) bool { return r.report.Remedy != piston.RingServes }) {
		b.WriteByte('\n')
	}
	for _, r := range rows {
		if r.report.Remedy != piston.RingServes {
			b.WriteString(recipe.Wrap(r.name+": "+r.report.Next+p.filing(r)+".", width, "", "  "))
		}
		if text := madeFor(e, r, p); text != "" {
			b.WriteString(recipe.Wrap(text, width, "  ", "  "))
		}
	}
	rules(&b, e, p, rows)
	hot(&b, e, p, rows)
	b.WriteString("\n" + recipe.Wrap("\"Can't tell\" is not a pass, and the engine maker's manual governs. Ring ends are sharp and rings spring: "+
		"wear eye protection. File square and a little at a time, from the face inward, so that a coating isn't torn off; take the burrs off.", width, "", ""))
	return b.String()
}

func trimmed(b *strings.Builder, text string) {
	for line := range strings.Lines(text) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}

// madeFor tells for which bore a ring with too large a gap would be new.
func madeFor(e engine, r row, p printer) string {
	fresh, ok := r.gap.Limits.New.Interval().Middle()
	if r.report.Remedy != piston.RingOther || !ok {
		return ""
	}
	at := r.report.Least
	gap, ok := r.report.Stations[at].Gap.Middle()
	bore, ok2 := r.gap.Stations[at].Bore.Middle()
	if !ok || !ok2 {
		return ""
	}
	made := piston.BoreForRingGap(fresh, gap, bore)
	text := fmt.Sprintf("A new ring with such a gap would be one for a bore of about %s %s", p.bare(made, units.NearestEven), p.unit.Symbol())
	if (made-e.Nominal).Abs() < 100*units.Micrometre && bore-e.Nominal > 100*units.Micrometre {
		text += ", the standard one: a standard ring in an oversize bore doesn't touch the wall near its gap, and no filing or fitting mends it"
	}
	return text + "."
}

// rules holds the limits to the trade's rule of thumb.
func rules(b *strings.Builder, e engine, p printer, rows []row) {
	for i := range e.Rings {
		r := &e.Rings[i]
		if !r.Factor.Valid() {
			continue
		}
		least := piston.RingLeastGap(e.Nominal, r.Factor)
		text := fmt.Sprintf("Rule of thumb for the %s ring: %v of the bore (%s), %s %s at the least", r.Name, r.Factor, r.Source, p.bare(least, units.Up), p.unit.Symbol())
		var short []string
		for _, row := range rows {
			if row.ring == r && tolerance.AtLeast(least).Judge(row.report.Finding.Least) != tolerance.Within {
				short = append(short, fmt.Sprintf("cylinder %d", row.cylinder))
			}
		}
		if short != nil {
			text += "; not proved of " + strings.Join(short, ", ")
		}
		b.WriteString("\n" + recipe.Wrap(text+".", width, "", "  "))
	}
}

// hot lists what is left of the gaps at working heat.
func hot(b *strings.Builder, e engine, p printer, rows []row) {
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  %s\thot gap\tends may touch with the ring at\n", p.unit.Symbol())
	any, short := false, []string{}
	for _, r := range rows {
		if r.hot == nil {
			continue
		}
		any = true
		left := p.span(r.hotGap)
		if lo, _ := r.hotGap.Lower(); lo <= 0 {
			left += ", may butt"
			if need, err := r.hot.ColdFor(0, e.Heat.BoreAt, e.Heat.RingAt); err == nil {
				short = append(short, fmt.Sprintf("%s: only a cold gap above %s %s keeps its ends apart.", r.name, p.bare(need, units.Up), p.unit.Symbol()))
			}
		}
		whole, _ := units.Round(r.butts, units.InCelsius, 0, units.Down)
		fmt.Fprintf(w, "  %s\t%s\t%s\n", r.name, left, whole.Text(units.InCelsius, 0))
	}
	if !any {
		return
	}
	w.Flush()
	fmt.Fprintf(b, "\nLeft between the edges of the faces, the bore at %s and the rings at %s:\n\n", e.Heat.BoreAt, e.Heat.RingAt)
	trimmed(b, text.String())
	for _, s := range short {
		b.WriteString("\n" + recipe.Wrap(s, width, "", "  "))
	}
	fmt.Fprintf(b, "\n%s", recipe.Wrap("Gaps are rounded down and temperatures too: the dangerous side. A bore that is cooler than this, or a ring that is hotter, closes the gap further.", width, "", "  "))
}
