package main

import (
	"fmt"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const width = 78

// page is the page for the bench.
func (s *shaft) page() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Run-out: %s\nSeen from %s and %s, %s\n\n", s.Engine, s.Supports[0], s.Supports[1], s.Support)
	s.shapes(&b)
	b.WriteString("\nBend, seen from the supports\n\n")
	for _, f := range s.report.Journals {
		if f.Support {
			continue
		}
		b.WriteString(recipe.Wrap(f.Where+": "+after(f.Bend)+s.highPoint(f.Relative), width, "  ", "    "))
	}
	b.WriteString("\nRun-out as read\n\n")
	for _, f := range s.report.Journals {
		if f.RunOut.Measure != "" {
			b.WriteString(recipe.Wrap(f.Where+": "+after(f.RunOut), width, "  ", "    "))
		}
	}
	s.neighbours(&b)
	if n := s.names(); len(n) > 1 {
		b.WriteString("\n" + recipe.Wrap(fmt.Sprintf("The straight line nearest to all mains: %s lies farthest off it, by %s.", n[s.report.Line.MostAt], s.report.Line.Most.Text(units.InMillimetres, 3)), width, "", "  "))
	}
	for _, n := range s.report.Notes {
		b.WriteString(recipe.Wrap(n, width, "• ", "  "))
	}
	b.WriteString("\n" + recipe.Wrap("Next: "+s.report.Next, width, "", "  "))
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on what was given.\n")
	return b.String()
}

// names are those of the mains.
func (s *shaft) names() (all []string) {
	for _, j := range s.Journals {
		if !j.Apart {
			all = append(all, j.Where)
		}
	}
	return all
}

// highPoint says where a high point is, where that can be told.
func (s *shaft) highPoint(v crank.RunOutVector) string {
	at, within := v.HighPoint()
	if within >= 90*units.Degree {
		return "; its high point can't be told"
	}
	return fmt.Sprintf("; high point at %s, give or take %s", at.Text(units.InDegrees, 0), within.Text(units.InDegrees, 0))
}

// shapes is what the readings hold.
func (s *shaft) shapes(b *strings.Builder) {
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "journal\trun-out\thalf of it\teccentricity\town shape\tovality\tlobes\n")
	for i, f := range s.report.Journals {
		if len(s.survey.Journals[i].Readings) == 0 {
			fmt.Fprintf(w, "%s\tnot read\n", f.Where)
			continue
		}
		total, _ := f.Total.Middle()
		eccentricity, _ := f.Off.Bend().Middle()
		ovality, lobes := "–", "–"
		if f.OvalityTold {
			ovality = mm(f.Ovality)
		}
		if f.Lobes > 0 {
			lobes = fmt.Sprintf("%d: %s", f.Lobes, mm(f.Lobing))
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%s\t%s\n", f.Where, mm(total), mm(crank.BendOfRunOut(total)), mm(eccentricity), mm(f.Own), ovality, lobes)
	}
	w.Flush()
	for line := range strings.Lines(table.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	b.WriteString(recipe.Wrap("mm. Own shape: the swing of the readings without the eccentricity, the dial's error in it. Ovality is of diameters, by one dial; a micrometer settles it.", width, "", ""))
}

func (s *shaft) neighbours(b *strings.Builder) {
	if len(s.report.Neighbours) == 0 {
		return
	}
	b.WriteString("\nNeighbours\n\n")
	for _, n := range s.report.Neighbours {
		fmt.Fprintf(b, "  %s and %s", n.First, n.Second)
		if !slices.Contains(s.Supports, n.First) && !slices.Contains(s.Supports, n.Second) {
			fmt.Fprintf(b, ", high points %s apart", n.Between.Text(units.InDegrees, 0))
		}
		b.WriteString("\n")
		b.WriteString(recipe.Wrap("by vectors: "+after(n.Vector), width, "    ", "      "))
		for _, t := range n.Manual {
			b.WriteString(recipe.Wrap(fmt.Sprintf("by the manual, %v: %s", t.Case, after(t.Finding)), width, "    ", "      "))
		}
		if len(n.Manual) > 1 {
			fmt.Fprintf(b, "    by the manual altogether: %v\n", n.Standing)
		}
		if n.Differ {
			b.WriteString("    The two don't agree: the manual governs.\n")
		}
	}
}

// after is a finding without the place, which stands before it.
func after(f tolerance.Finding) string {
	if f.Spec.IsZero() {
		return f.Measure + " " + f.Greatest.Text(units.InMillimetres, 3) + ", no limit given"
	}
	return strings.TrimPrefix(f.Text(units.InMillimetres, 3), f.Where+": ")
}

func mm(l units.Length) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: units.InMillimetres, Places: 4, Bare: true})
	return string(text)
}
