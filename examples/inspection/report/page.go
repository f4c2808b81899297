package report

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"slices"

	"github.com/tenthou/tenthou/internal/picture"
	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

//go:embed page.html
var pageHTML string

//go:embed page.css
var pageCSS string

var page = template.Must(template.New("page").Parse(pageHTML))

// part is a section as the page has it.
type part struct {
	ID, Title, Lead, None string
	Head                  []string
	Rows                  [][]string
	List                  []string
	Numbered, Empty       bool
}

// card is one picture.
type card struct {
	Title, Standing, Mark string
	AsNew                 bool
	Picture               template.HTML
}

// HTML is the report as one page that needs nothing else: it prints on A4 and
// Letter and reads on a phone.
func (r *Report) HTML() ([]byte, error) {
	view := struct {
		Title, NotAPass, Governs string
		Style                    template.CSS
		Parts                    []part
		Cards, Drawings          []card
		AsNew                    int // of the cards
	}{Title: "Inspection: " + r.Engine, NotAPass: notAPass, Governs: governs, Style: template.CSS(pageCSS + svg.InlineStyle())}
	for _, s := range r.sections() {
		view.Parts = append(view.Parts, part{s.id, s.title, s.lead, s.none, s.head, s.rows, s.list, s.id == "work", r.empty(s)})
	}
	view.AsNew = r.Count()[tolerance.AsNew]
	for i, d := range r.Drawings {
		view.Drawings = append(view.Drawings, card{Title: d.Title, Picture: template.HTML(d.Draw(fmt.Sprintf("part%d", i)))})
	}
	worst := slices.Clone(r.Findings)
	slices.SortStableFunc(worst, func(a, b inspection.Finding) int { return rank[a.Standing()] - rank[b.Standing()] })
	for i, f := range worst {
		view.Cards = append(view.Cards, card{Title: of(f.Measure(), f.Where()), Standing: f.Standing().String(), Mark: marks[f.Standing()], AsNew: f.Standing() == tolerance.AsNew,
			Picture: template.HTML(r.draw(f, fmt.Sprintf("finding%d", i)))}) // our own pictures, their texts escaped
	}
	var b bytes.Buffer
	err := page.Execute(&b, view)
	return b.Bytes(), err
}

// marks are signs that stand beside the words, for a glance over a page: they
// mean nothing that the words don't say.
var marks = [...]string{tolerance.CantTell: "?", tolerance.AsNew: "=", tolerance.Usable: "~", tolerance.OutsideNewBand: "!", tolerance.PastWearLimit: "✗"}

// draw is the finding's picture.
func (r *Report) draw(f inspection.Finding, id string) []byte {
	switch {
	case f.Length != nil:
		unit, places := r.unit()
		return picture.Finding(f.Length, unit, places).Inline(id)
	case f.Force != nil:
		return picture.Finding(f.Force, units.InNewtons, 0).Inline(id)
	case f.Rate != nil:
		return picture.Finding(f.Rate, units.InNewtonsPerMillimetre, 1).Inline(id)
	case f.Mass != nil:
		return picture.Finding(f.Mass, units.InGrams, 1).Inline(id)
	case f.Pressure != nil:
		return picture.Finding(f.Pressure, units.InKilopascals, 0).Inline(id)
	case f.Angle != nil:
		return picture.Finding(f.Angle, units.InDegrees, 1).Inline(id)
	case f.Volume != nil:
		return picture.Finding(f.Volume, units.InCubicCentimetres, 1).Inline(id)
	}
	return nil
}
