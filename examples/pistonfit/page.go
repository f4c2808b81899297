package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const width = 78

// A printer writes lengths in one unit, brackets rounded outward.
type printer struct {
	unit   units.Unit[units.Length]
	places int
}

var (
	metric   = printer{units.InMillimetres, 3}
	imperial = printer{units.InInches, 4}
)

func (p printer) bracket(b tolerance.Bracket) string { return b.Text(p.unit, p.places) }

// length writes a length rounded to the side that is asked for.
func (p printer) length(l units.Length, r units.Rounding) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: p.unit, Places: p.places, Rounding: r})
	return string(text)
}

func celsius(t units.Temperature, r units.Rounding) string {
	text, _ := t.Append(nil, units.Style[units.Temperature]{Unit: units.InCelsius, Places: 0, Rounding: r})
	return string(text)
}

// page is the page for the bench.
func (e engine) page(p printer) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Piston fit: %s\n", e.Engine)
	for i := range e.set {
		s := &e.set[i]
		fmt.Fprintf(&b, "\n%s\n\n", s.Where)
		var mine []piston.SkirtResult
		for _, r := range e.results {
			if r.Piston == i {
				mine = append(mine, r)
			}
		}
		overall := fmt.Sprint(piston.SkirtWorst(mine))
		for _, r := range mine {
			f, err := s.Finding(&e.judged, r)
			if err != nil {
				return "", err
			}
			f.Where = strings.TrimPrefix(strings.TrimPrefix(f.Where, s.Where), ", ")
			if !r.Limited {
				b.WriteString(recipe.Wrap(fmt.Sprintf("%s: %s; no limit given", r.Measure, p.bracket(r.Greatest)), width, "  ", "    "))
				continue
			}
			text := f.Text(p.unit, p.places)
			if !r.Known {
				text = fmt.Sprintf("%s: not measured, which is not a pass; %s", r.Measure, f.Settle)
			}
			if r.Fit() == tolerance.InterferenceFit {
				text += "; an interference: it does not go in"
				overall = "does not go in its bore"
			} else if r.Known && r.Measure == piston.SkirtMeasureClearance && r.Fit() == tolerance.UnknownFit {
				text += "; it may touch"
			}
			b.WriteString(recipe.Wrap(text, width, "  ", "    "))
		}
		e.pulls(&b, p, i)
		if err := e.hot(&b, p, i, mine); err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "  %s: %s\n", s.Where, overall)
	}
	b.WriteString("\n" + recipe.Wrap("A skirt that is smaller than new where its turning marks still stand has collapsed, not worn. "+
		"\"Can't tell\" is not a pass; the engine maker's manual governs.", width, "", ""))
	return b.String(), nil
}

// pulls writes what each rule says of each pull.
func (e engine) pulls(b *strings.Builder, p printer, i int) {
	rules := e.rules()
	for _, pull := range e.Pistons[i].Pulls {
		readings, disagree := piston.ComparePulls(rules, pull.Trials...)
		fmt.Fprintf(b, "  strip pulled, %s:\n", pull.At)
		for _, r := range readings {
			said := "tells nothing"
			switch {
			case r.Told:
				said = p.bracket(r.Clearance)
			case r.Refused != "":
				said = "not usable: " + strings.TrimPrefix(r.Refused, "piston: ")
			}
			if r.Rule == e.PullRule && r.Told {
				said += ", judged by this rule"
				if notes := r.Notes.Texts(); len(notes) > 0 {
					said += " (" + strings.Join(notes, "; ") + ")"
				}
			}
			b.WriteString(recipe.Wrap(fmt.Sprintf("by the rule %s: %s", r.Rule, said), width, "    ", "      "))
		}
		for _, d := range disagree {
			b.WriteString(recipe.Wrap(fmt.Sprintf("the rules %s and %s disagree: go by the manual's own, or measure bore and skirt", rules[d[0]].Name, rules[d[1]].Name), width, "    ", "      "))
		}
	}
}

// skirtHeat is the piston to be heated, by its micrometer clearance.
func (e engine) skirtHeat(i int, mine []piston.SkirtResult) (h piston.SkirtHeat, ok bool) {
	for _, r := range mine {
		if r.Measure == piston.SkirtMeasureClearance && r.Known && r.Fit() != tolerance.InterferenceFit {
			least, _ := tolerance.Extremes(e.set[i].Bores...)
			bore, _ := e.Heat.BoreMetal.metal()
			skirt, _ := e.Heat.SkirtMetal.metal()
			return piston.SkirtHeat{Bore: least, Clearance: r.Least, MeasuredAt: e.Heat.MeasuredAt, BoreMetal: bore, SkirtMetal: skirt}, true
		}
	}
	return h, false
}

// hot writes what is left of the least clearance when hot.
func (e engine) hot(b *strings.Builder, p printer, i int, mine []piston.SkirtResult) error {
	if e.Heat == nil {
		return nil
	}
	h, ok := e.skirtHeat(i, mine)
	if !ok {
		b.WriteString("  hot: no clearance by micrometers to begin with\n")
		return nil
	}
	left, err := h.ClearanceAt(e.Heat.BoreAt, e.Heat.SkirtAt)
	if err != nil {
		return err
	}
	says := "it stays free"
	if hi, _ := left.Upper(); hi < 0 {
		says = "it closes up: it seizes"
	} else if lo, _ := left.Lower(); lo < 0 {
		says = "it may close up, which is not a pass"
	}
	line := fmt.Sprintf("hot, bore at %s and skirt at %s: of the least clearance %s are left: %s", e.Heat.BoreAt, e.Heat.SkirtAt, p.bracket(left), says)
	cold, err := h.ColdFor(e.Heat.Keep, e.Heat.BoreAt, e.Heat.SkirtAt)
	if err != nil {
		return err
	}
	line += fmt.Sprintf("; to keep %s it takes %s or more as measured", p.length(e.Heat.Keep, units.NearestEven), p.length(cold, units.Up))
	if most, err := h.SkirtMost(0, e.Heat.BoreAt); err == nil {
		line += fmt.Sprintf("; with the bore so, the skirt may seize above %s", celsius(most, units.Down))
	}
	if most, ok, err := h.TogetherMost(0); err == nil && ok {
		line += fmt.Sprintf("; both alike, above %s", celsius(most, units.Down))
	}
	b.WriteString(recipe.Wrap(line, width, "  ", "    "))
	return nil
}
