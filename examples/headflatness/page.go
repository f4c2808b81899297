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
const width = 78

// page is the answer.
func (j judged) page(working bool) (string, error) {
	var b strings.Builder
	b.WriteString(recipe.Wrap("Flatness: "+j.Part, width, "", "  "))
	departure := j.edgePage(&b)
	if j.byGrid != nil {
		departure = j.gridPage(&b)
	}
	if j.Tunnel != nil {
		b.WriteString(recipe.Wrap("Cam tunnel: "+j.tunnelText(), width, "", "  "))
	}
	next := j.next()
	b.WriteString("\n" + recipe.Wrap("Do next: "+next, width, "", "  "))
	if err := j.skimPage(&b, departure, working); err != nil {
		return "", err
	}
	b.WriteString("\nLift a head with help or a hoist, and set it down on wood. The engine maker's\n" +
		"manual governs; this is arithmetic on the readings and limits given.\n")
	return b.String(), nil
}

func (j judged) next() string {
	if j.byGrid != nil {
		return j.byGrid.Next
	}
	return j.byEdge.Next
}

func (j judged) tunnelText() string {
	f := j.byEdge
	if j.byGrid != nil {
		f = &cylinder.FaceReport{Tunnel: j.byGrid.Tunnel}
	}
	if f.Tunnel.Measure == "" {
		return "not checked"
	}
	return fmt.Sprintf("%s, %v", f.Tunnel.Greatest.Text(units.InMillimetres, 3), f.Tunnel.Explain())
}

// of is the limit for a direction: its own, or the overall one.
func (l limits) of(d cylinder.Direction) spec {
	own := map[cylinder.Direction]spec{cylinder.Lengthwise: l.Lengthwise, cylinder.Across: l.Across, cylinder.Diagonal: l.Diagonal}[d]
	if own == (spec{}) {
		return l.Overall
	}
	return own
}

// table is lines judged.
func (j judged) table(b *strings.Builder, lines []cylinder.LineReport) {
	var page strings.Builder
	w := tabwriter.NewWriter(&page, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "\nline\tdirection\tlay\tdeparture, mm\tlimits\tstanding\n")
	for _, l := range lines {
		seat := l.Seat.String()
		if l.Seat == cylinder.SeatUnsaid {
			seat = "-"
		}
		fmt.Fprintf(w, "%s\t%v\t%s\t%s\t%v\t%v\n", l.Name, l.Direction, seat, bare(l.Departure), j.Limits.of(l.Direction), l.Finding.Standing)
	}
	w.Flush()
	for line := range strings.Lines(page.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}

// bare is a bracket in millimetres without the unit, rounded outward.
func bare(i tolerance.Bracket) string {
	return strings.ReplaceAll(i.Text(units.InMillimetres, 4), " mm", "")
}

// String is what the manual gives, as it prints it.
func (s spec) String() string {
	var t []string
	if !s.New.IsZero() {
		t = append(t, s.New.String())
	}
	if !s.Wear.IsZero() {
		t = append(t, "worn "+s.Wear.String())
	}
	if len(t) == 0 {
		return "none given"
	}
	return strings.Join(t, ", ")
}

// edgePage is what a straight-edge says, and gives the departure that a skim
// has to take.
func (j judged) edgePage(b *strings.Builder) tolerance.Bracket {
	r := j.byEdge
	if r == nil {
		return tolerance.Bracket{}
	}
	fmt.Fprintf(b, "Blades: %v\n", j.set)
	j.table(b, r.Lines)
	for i, l := range r.Local {
		b.WriteString(recipe.Wrap(fmt.Sprintf("within any %v, %v: %v", l.Over, j.Limits.Local[i].Limit, l.Finding.Standing), width, "", "  "))
	}
	for _, l := range r.Lines {
		unsettled(b, l.Name, l.Finding)
	}
	for _, l := range r.Local {
		unsettled(b, fmt.Sprintf("within any %v", l.Over), l.Finding)
	}
	b.WriteString("\n" + recipe.Wrap("What governs: "+strings.Join(r.Governs, "; "), width, "", "  "))
	departure := r.Worst
	if !r.Flatness.IsZero() {
		departure = r.Flatness
		b.WriteString(recipe.Wrap(fmt.Sprintf("From all six lines together the face departs from flat by %s at nine points, and a corner lies %s off the plane of the other three.",
			r.Flatness.Text(units.InMillimetres, 3), r.CornerOff.Text(units.InMillimetres, 3)), width, "", "  "))
	} else {
		b.WriteString(recipe.Wrap("The worst line departs from straight by "+r.Worst.Text(units.InMillimetres, 3)+". The face may depart from flat by more: a twist by twice what its diagonals show.", width, "", "  "))
	}
	for _, d := range r.Doubts {
		b.WriteString(recipe.Wrap("Mind: "+d.String()+".", width, "", "  "))
	}
	return departure
}

// unsettled says what would settle a finding that can't be told.
func unsettled(b *strings.Builder, name string, f tolerance.Finding) {
	if f.Standing == tolerance.CantTell && !f.Spec.IsZero() {
		b.WriteString(recipe.Wrap(name+": not a pass; to settle it, "+f.Settle, width, "  ? ", "    "))
	}
}

// gridPage is what heights say.
func (j judged) gridPage(b *strings.Builder) tolerance.Bracket {
	r := j.byGrid
	fmt.Fprintf(b, "By heights at %d × %d stations, each within ±%v\n", len(j.Heights.Rows), len(j.Heights.Rows[0]), j.Heights.Error)
	j.table(b, r.Lines)
	b.WriteString("\n" + recipe.Wrap(fmt.Sprintf("Flatness, the least distance of two planes that hold the face: %s, %v: %v",
		r.Flatness.Text(units.InMillimetres, 4), j.Limits.Flatness, r.Finding.Standing), width, "", "  "))
	unsettled(b, "flatness", r.Finding)
	for _, l := range r.Lines {
		unsettled(b, l.Name, l.Finding)
	}
	b.WriteString(recipe.Wrap("Set level on three corners it would stand "+r.OnCorners.Text(units.InMillimetres, 4)+" from its highest place to its lowest: set it so that the cut is least.", width, "", "  "))
	return r.Flatness
}
