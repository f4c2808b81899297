// Package report writes what an inspection found: as text for a terminal, as
// Markdown, as JSON, and as one HTML page with pictures that prints. All of them
// say the same in the same order: what looks like a slip, what was decided and
// why, the order of work, what to buy, what it will be, what is still to be
// measured, and every finding.
package report

import (
	"fmt"
	"slices"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A Report is one engine's.
type Report struct {
	Engine string `json:"engine"` // as the documents name it
	inspection.Report
	// Departed, Agreed and Unmeasured hold what was measured after the work to
	// what was predicted before it; empty before it.
	Departed   []inspection.Departure `json:"departed,omitempty"`
	Agreed     int                    `json:"agreed,omitempty"`     // how many came out as predicted, as far as is known
	Unmeasured []inspection.Finding   `json:"unmeasured,omitempty"` // predicted, and not measured again
	// Drawings are pictures of parts, for the page: a title and SVG that
	// needs no declaration.
	Drawings []Drawing `json:"-"`
	Inch     bool      `json:"-"` // lengths in inches
}

// A Drawing is a picture of a part.
type Drawing struct {
	Title string
	Draw  func(id string) []byte
}

// What every report says.
const (
	notAPass = "Undecided is not a pass: what can't be told yet is listed under what is still to be measured, or says what would settle it."
	governs  = "The engine maker's manual governs; this is arithmetic on the readings and limits given. Work on running engines, lifting, pressure and heat is for those trained and, where the law asks for it, licensed."
)

// A section is a part of the report in any form.
type section struct {
	id    string
	title string
	lead  string // a sentence before the rest
	head  []string
	rows  [][]string
	list  []string
	none  string // what is said where there is nothing
}

func (r *Report) empty(s section) bool { return len(s.rows) == 0 && len(s.list) == 0 }

// sections are all parts, in order.
func (r *Report) sections() []section {
	all := []section{r.slips(), r.decisions(), r.work(), r.orders(), r.predicted()}
	if len(r.Departed) > 0 || r.Agreed > 0 {
		all = append(all, r.compared())
	}
	return append(all, r.missing(), r.worst(), r.findings(), r.cautions())
}

func (r *Report) slips() section {
	s := section{id: "slips", title: "What looks like a slip", lead: "Nothing was corrected. Look these up before anything that rests on them.",
		head: []string{"where", "what", "suspicion"}, none: "Nothing was flagged, which proves nothing: two figures can be wrong alike."}
	for _, x := range r.Slips {
		s.rows = append(s.rows, []string{x.Path, x.What, x.Text})
	}
	return s
}

// of is a part with its place.
func of(part, where string) string {
	if where == "" {
		return part
	}
	return part + ", " + where
}

func action(d inspection.Decision) string {
	if d.Size == "" {
		return d.Action.String()
	}
	return d.Action.String() + ": " + d.Size
}

func (r *Report) decisions() section {
	s := section{id: "decisions", title: "What was decided, and why", head: []string{"part", "decision", "because"}, none: "Nothing could be decided."}
	for _, g := range grouped(r.Decisions) {
		d := g.Decision
		because := d.Because
		if d.Governs != "" && d.Where == "" {
			because = d.Governs + " decides for all: " + because
		}
		if d.Settle != "" {
			because += ". To know more: " + d.Settle
		}
		if len(d.Slips) > 0 {
			because += ". It rests on what looks like a slip: " + strings.Join(d.Slips, ", ")
		}
		s.rows = append(s.rows, []string{of(d.Part, g.where), action(d), because})
	}
	return s
}

// A group is decisions that say the same of several parts of one kind.
type group struct {
	inspection.Decision
	where string
}

// grouped joins what is said alike of parts of one kind, so that sixteen good
// valves take one line.
func grouped(decisions []inspection.Decision) (all []group) {
next:
	for _, d := range decisions {
		for i := range all {
			g := &all[i]
			if d.Where != "" && g.where != "" && g.Part == d.Part && g.Action == d.Action && g.Size == d.Size && g.Because == d.Because &&
				g.Settle == d.Settle && slices.Equal(g.Slips, d.Slips) {
				g.where += ", " + d.Where
				continue next
			}
		}
		all = append(all, group{d, d.Where})
	}
	return all
}

// work is the decisions that somebody has to act on, in bench order.
func (r *Report) work() section {
	s := section{id: "work", title: "The order of work", none: "Nothing is to be done."}
	for _, g := range grouped(r.Decisions) {
		if g.Action != inspection.ReUse {
			s.list = append(s.list, of(g.Part, g.where)+": "+action(g.Decision))
		}
	}
	return s
}

func (r *Report) orders() section {
	s := section{id: "orders", title: "What to buy", head: []string{"count", "part", "size", "for"}, none: "Nothing."}
	for _, o := range r.Orders {
		size := o.Size
		if !o.Sure {
			size = strings.TrimSpace(size + " (not yet: a decision is open)")
		}
		s.rows = append(s.rows, []string{fmt.Sprint(o.Count), o.What, size, strings.Join(o.For, ", ")})
	}
	return s
}

func (r *Report) predicted() section {
	s := section{id: "predicted", title: "What it will be after that work", lead: "Predicted as brackets from what was measured; measure again after machining.",
		head: []string{"measure", "where", "predicted", "for new parts", "standing"}, none: "Nothing can be predicted yet."}
	for _, f := range r.Predicted {
		c := r.cells(f)
		s.rows = append(s.rows, []string{f.Measure(), f.Where(), c.read, c.fresh, f.Standing().String()})
	}
	return s
}

func (r *Report) compared() section {
	s := section{id: "compared", title: "As built against predicted", head: []string{"measure", "where", "predicted", "built", "off by"},
		lead: fmt.Sprintf("%d as predicted, as far as is known; %d otherwise; %d not measured again.", r.Agreed, len(r.Departed), len(r.Unmeasured)),
		none: "Nothing came out otherwise."}
	unit, places := r.unit()
	for _, d := range r.Departed {
		s.rows = append(s.rows, []string{d.Measure, d.Where, d.Predicted.Text(unit, places), d.Built.Text(unit, places), d.By.Text(unit, places)})
	}
	return s
}

func (r *Report) missing() section {
	s := section{id: "missing", title: "What is still to be measured", head: []string{"step", "measure", "where", "with", "limit"}, none: "Nothing: every reading asked for was taken."}
	for _, m := range r.Missing {
		s.rows = append(s.rows, []string{m.Step.String(), m.Measure, m.Where, m.With, m.Limit})
	}
	return s
}

// rank puts the worst standing first; what can't be told comes before what is
// usable.
var rank = [...]int{tolerance.PastWearLimit: 0, tolerance.OutsideNewBand: 1, tolerance.CantTell: 2, tolerance.Usable: 3, tolerance.AsNew: 4}

// worst is how many findings have each standing, and the worst of them in a
// line each.
func (r *Report) worst() section {
	s := section{id: "worst", title: "The worst first", none: "Nothing was judged."}
	n := r.Count()
	order := []tolerance.Standing{tolerance.PastWearLimit, tolerance.OutsideNewBand, tolerance.CantTell, tolerance.Usable, tolerance.AsNew}
	for _, standing := range order {
		if n[standing] == 0 {
			continue
		}
		line := fmt.Sprintf("%s: %d", standing, n[standing])
		if standing != tolerance.AsNew && standing != tolerance.Usable {
			var which []string
			for _, f := range r.Findings {
				if f.Standing() == standing && len(which) < 12 {
					which = append(which, f.Measure()+" of "+f.Where())
				}
			}
			if more := n[standing] - len(which); more > 0 {
				which = append(which, fmt.Sprintf("and %d more", more))
			}
			line += " (" + strings.Join(which, "; ") + ")"
		}
		s.list = append(s.list, line)
	}
	return s
}

func (r *Report) findings() section {
	s := section{id: "findings", title: "Every finding, in the order of the bench", lead: "Lengths in " + r.unitName() + " where no other unit is given.",
		head: []string{"measure", "where", "measured", "new parts", "wear limit", "standing"}, none: "Nothing was judged."}
	last := inspection.StepNone
	for _, f := range r.Findings {
		if f.Step != last { // a row of its own names the step
			s.rows = append(s.rows, []string{f.Step.String()})
			last = f.Step
		}
		c := r.cells(f)
		standing := f.Standing().String()
		if f.Settle() != "" {
			standing += ". To know more: " + f.Settle()
		}
		s.rows = append(s.rows, []string{f.Measure(), f.Where(), c.read, c.fresh, c.wear, standing})
	}
	return s
}

func (r *Report) cautions() section {
	return section{id: "cautions", title: "Mind", list: r.Cautions, none: "Measure cold and clean, with safe lifting and eye protection."}
}

func (r *Report) unit() (units.Unit[units.Length], int) {
	if r.Inch {
		return units.InInches, 4
	}
	return units.InMillimetres, 3
}

func (r *Report) unitName() string {
	if r.Inch {
		return "inches"
	}
	return "millimetres"
}

// cells is what a finding's readings and limits read as in a table.
type cells struct{ read, fresh, wear string }

func (r *Report) cells(f inspection.Finding) cells {
	switch {
	case f.Length != nil:
		unit, places := r.unit()
		return cellsOf(f.Length, unit, places)
	case f.Force != nil:
		return cellsOf(f.Force, units.InNewtons, 0)
	case f.Rate != nil:
		return cellsOf(f.Rate, units.InNewtonsPerMillimetre, 1)
	case f.Mass != nil:
		return cellsOf(f.Mass, units.InGrams, 1)
	case f.Pressure != nil:
		return cellsOf(f.Pressure, units.InKilopascals, 0)
	case f.Angle != nil:
		return cellsOf(f.Angle, units.InDegrees, 1)
	case f.Volume != nil:
		return cellsOf(f.Volume, units.InCubicCentimetres, 1)
	}
	return cells{}
}

func cellsOf[Q units.Quantity](f *tolerance.FindingOf[Q], unit units.Unit[Q], places int) (c cells) {
	places = f.Places(unit, places)
	c.read = f.Least.Text(unit, places)
	if f.Least != f.Greatest {
		c.read += " … " + f.Greatest.Text(unit, places)
	}
	if !f.Spec.New.IsZero() {
		c.fresh = f.Spec.New.Text(unit, places)
	}
	if !f.Spec.Wear.IsZero() {
		c.wear = f.Spec.Wear.Text(unit, places)
	}
	return c
}
