package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 100

// page is the page for the bench.
func page(e engine, rows []row, p printer) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Bore survey: %s\n", e.Engine)
	fmt.Fprintf(&b, "Gauge: %s, step %s, error ±%s", e.Gauge.Name, p.size(e.Gauge.Step), p.size(e.Gauge.Error))
	if s := e.Gauge.Setting; s.Standard != 0 {
		fmt.Fprintf(&b, ", set on %s ±%s", p.size(s.Standard), p.size(s.Error))
	}
	fmt.Fprintf(&b, " (%s)\n", p.unit.Symbol())
	open := 0
	for _, r := range rows {
		worst := r.report.Worst(&r.limits)
		fmt.Fprintf(&b, "\nCylinder %d: %v\n\n", r.number, worst)
		if worst == tolerance.CantTell {
			open++
		}
		if err := r.sizes(&b, p); err != nil {
			return "", err
		}
		b.WriteString("\n")
		if err := r.measures(&b, e.Limits, p); err != nil {
			return "", err
		}
		for _, n := range r.report.Notes {
			b.WriteString(recipe.Wrap(n.Text(&r.survey), width, "  ! ", "    "))
		}
	}
	rule := "Taper is " + rows[0].limits.TaperRule.String()
	if rows[0].limits.TaperRule == cylinder.TaperPerLength {
		rule += ": for each " + p.size(rows[0].limits.TaperPer) + " " + p.unit.Symbol()
	}
	fmt.Fprintf(&b, "\n%s. A ridge is counted %v.\n", rule, counted(rows[0].limits.RidgeCounted))
	b.WriteString(recipe.Wrap(seen(e.Directions), width, "", ""))
	if open > 0 {
		fmt.Fprintf(&b, "\n%d of %d cylinders can't be told yet. That is not a pass.\n", open, len(rows))
	}
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on the readings and limits given.\n")
	return b.String(), nil
}

// seen says what the directions can't show.
func seen(headings []units.Angle) string {
	if share := cylinder.LeastOvalShown(headings...); share > 0 {
		return fmt.Sprintf("Out-of-round is at least so much: these %d directions, where all were read, show no less than %.0f %% of an oval, however it lies.", len(headings), 100*share)
	}
	if len(headings) < 2 {
		return "One direction shows no out-of-round."
	}
	return "Out-of-round is at least so much: two directions see an oval by the cosine of twice its angle to them, and miss one halfway between."
}

// counted is how a ridge is, where no limit says otherwise on the diameter.
func counted(r cylinder.RidgeSide) cylinder.RidgeSide {
	if r == cylinder.RidgeNotStated {
		return cylinder.RidgeOnDiameter
	}
	return r
}

// sizes is the table of what was read, as sizes.
func (r row) sizes(b *strings.Builder, p printer) error {
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "  ", p.unit.Symbol())
	for j := range r.survey.Headings {
		fmt.Fprint(w, "\t", r.survey.HeadingName(j))
	}
	fmt.Fprintln(w)
	for i := range r.survey.Levels {
		fmt.Fprint(w, "  ", r.survey.LevelName(i))
		for j := range r.survey.Headings {
			at := r.survey.At(cylinder.Station{Level: i, Heading: j})
			if !at.Taken {
				fmt.Fprint(w, "\tnot read")
				continue
			}
			c, err := r.survey.Gauge.Reading(at.Shown, r.survey.Block)
			if err != nil {
				return err
			}
			fmt.Fprint(w, "\t", p.size(c.Size))
		}
		fmt.Fprintln(w)
	}
	w.Flush()
	trimmed(b, text.String())
	return nil
}

// measures is the table of what follows, with its standing.
func (r row) measures(b *strings.Builder, l limits, p printer) error {
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  %s\tat least\tat most\tnew\tworn\tstanding\n", p.unit.Symbol())
	line := func(name string, value tolerance.Bracket, fresh, worn, standing string) {
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\t%s\t%s\n", name, p.end(value, false), p.end(value, true), fresh, worn, standing)
	}
	fresh, worn := l.printed(cylinder.MeasureSize)
	line("greatest, "+r.survey.Name(r.report.Greatest.At), r.report.Greatest.Size, fresh, worn, r.standing(cylinder.MeasureSize))
	line("least, "+r.survey.Name(r.report.Least.At), r.report.Least.Size, "", "", "")
	var settle []string
	for _, m := range cylinder.BoreMeasures() {
		f, err := r.survey.Finding(&r.limits, &r.report, m)
		spec := r.limits.Spec(m)
		switch {
		case m == cylinder.MeasureSize:
		case spec.IsZero() && (err != nil || m == cylinder.MeasureChoke):
			continue
		case err != nil: // asked, and not read
			fresh, worn := l.printed(m)
			fmt.Fprintf(w, "  %v\tnot read\t\t%s\t%s\t%v\n", m, fresh, worn, tolerance.CantTell)
			continue
		default:
			name := m.String()
			if _, where, ok := strings.Cut(f.Where, ", "); ok && m != cylinder.MeasureWear {
				name += ", " + where
			}
			fresh, worn := l.printed(m)
			line(name, f.Least, fresh, worn, r.standing(m))
		}
		if f.Standing == tolerance.CantTell && !spec.IsZero() {
			settle = append(settle, m.String()+": "+f.Settle)
		}
	}
	fmt.Fprintf(w, "  shape\t%v\n", r.report.Shape)
	w.Flush()
	trimmed(b, text.String())
	for _, s := range settle {
		b.WriteString(recipe.Wrap(s, width, "  ? ", "    "))
	}
	return nil
}

func (r row) standing(m cylinder.BoreMeasure) string {
	if r.limits.Spec(m).IsZero() {
		return ""
	}
	return r.report.Standing[m].String()
}

func trimmed(b *strings.Builder, text string) {
	for line := range strings.Lines(text) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}
