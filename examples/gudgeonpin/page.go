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

func celsius(t units.Temperature, r units.Rounding) string {
	text, _ := t.Append(nil, units.Style[units.Temperature]{Unit: units.InCelsius, Places: 0, Rounding: r})
	return string(text)
}

// page is the page for the bench.
func (e engine) page(p printer) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Gudgeon pins: %s\nIn the small end: %v\n", e.Engine, e.Fit)
	if e.Grades != nil {
		if err := e.table(&b, p); err != nil {
			return "", err
		}
	}
	for i := range e.set {
		s := &e.set[i]
		fmt.Fprintf(&b, "\n%s\n\n", s.Where)
		var mine []piston.PinResult
		for _, r := range e.results {
			if r.Piston == i {
				mine = append(mine, r)
			}
		}
		for _, r := range mine {
			text, err := e.line(p, s, r)
			if err != nil {
				return "", err
			}
			b.WriteString(recipe.Wrap(text, width, "  ", "    "))
		}
		if err := e.grade(&b, p, s); err != nil {
			return "", err
		}
		if err := e.assemble(&b, p, s); err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "  %s: %v\n", s.Where, piston.PinWorst(mine))
	}
	b.WriteString("\n" + recipe.Wrap("Circlips fly: guard your eyes, and fit new ones. Heat in an oven or by induction, never with a flame, no hotter than the maker allows, "+
		"with dry gloves; press with the maker's tooling, behind a guard. \"Can't tell\" is not a pass; the engine maker's manual governs.", width, "", ""))
	return b.String(), nil
}

// line is one result in words.
func (e engine) line(p printer, s *piston.PinSurvey, r piston.PinResult) (string, error) {
	f, err := s.Finding(&e.judged, r)
	if err != nil {
		return "", err
	}
	f.Where = strings.TrimPrefix(strings.TrimPrefix(f.Where, s.Where), ", ")
	text := f.Text(p.unit, p.places)
	switch {
	case !r.Known:
		return fmt.Sprintf("%s: not measured, which is not a pass; %s", r.Measure, f.Settle), nil
	case !r.Limited:
		text = fmt.Sprintf("%s: %s; no limit given", r.Measure, p.bracket(r.Greatest))
		if r.Least != r.Greatest {
			text = fmt.Sprintf("%s: least %s, greatest %s; no limit given", r.Measure, p.bracket(r.Least), p.bracket(r.Greatest))
		}
	}
	switch r.Measure {
	case piston.PinMeasureBossClearance, piston.PinMeasureSmallEndClearance:
		if r.Fit() == tolerance.InterferenceFit {
			text += "; an interference: it does not go in by hand"
		}
	case piston.PinMeasureSmallEndInterference:
		if r.Fit() == tolerance.ClearanceFit {
			text += "; a clearance: the pin is loose"
		}
	case piston.PinMeasureEndFloat:
		if r.Fit() == tolerance.InterferenceFit {
			text += "; the circlips do not both go in: never force them"
		}
	}
	return text, nil
}

// table says what the grades give.
func (e engine) table(b *strings.Builder, p printer) error {
	fits, err := e.pinGrades().Fits()
	if err != nil {
		return err
	}
	b.WriteString("\nGrades\n\n")
	for _, f := range fits {
		says := "all of it as wanted"
		switch f.Verdict {
		case tolerance.Below:
			says = "some of it less than wanted"
		case tolerance.Above:
			says = "some of it more than wanted"
		case tolerance.Undecided:
			says = "some of it less and some more than wanted"
		}
		b.WriteString(recipe.Wrap(fmt.Sprintf("boss %s with pin %s: clearance %s: %s", f.Boss, f.Pin, f.Clearance.Text(p.unit, p.places), says), width, "  ", "    "))
	}
	return nil
}

// grade places a pin and its bosses, by their least and greatest sizes.
func (e engine) grade(b *strings.Builder, p printer, s *piston.PinSurvey) error {
	if e.Grades == nil || len(s.AtBosses) == 0 || len(s.Bosses) == 0 {
		return nil
	}
	boss, _ := extremes(s.Bosses)
	_, pin := extremes(s.AtBosses)
	g, err := e.pinGrades().Select(boss, pin)
	if err != nil {
		return err
	}
	text := fmt.Sprintf("grades: least boss %s, greatest pin %s: ", g.Boss, g.Pin)
	switch g.Match {
	case piston.PinMatches:
		text += "they go together"
	case piston.PinMismatch:
		text += "they do not go together; the boss wants a pin of grade " + strings.Join(g.GoWith, " or ")
		if len(g.GoWith) == 0 {
			text = strings.TrimSuffix(text, "; the boss wants a pin of grade ") + ": the boss is in no grade"
		}
	default:
		text += "can't tell, which is not a pass: measure again nearer"
	}
	b.WriteString(recipe.Wrap(text, width, "  ", "    "))
	return nil
}

func extremes(list []piston.PinSection) (least, greatest tolerance.Bracket) {
	var all []tolerance.Bracket
	for _, s := range list {
		all = append(all, s.Sizes...)
	}
	return tolerance.Extremes(all...)
}

// heat is the pin and the hole that it is put into.
func (e engine) heat(s *piston.PinSurvey) (h piston.PinHeat, ok bool) {
	holes, pins := s.Bosses, s.AtBosses
	if e.Assembly.Into == "small end" {
		holes, pins = s.SmallEnd, s.AtSmallEnd
	}
	if len(holes) == 0 || len(pins) == 0 {
		return h, false
	}
	hole, _ := extremes(holes)
	_, pin := extremes(pins)
	holeMetal, _ := e.Assembly.HoleMetal.metal()
	pinMetal, _ := e.Assembly.PinMetal.metal()
	return piston.PinHeat{Hole: hole, Pin: pin, MeasuredAt: e.Assembly.MeasuredAt, HoleMetal: holeMetal, PinMetal: pinMetal}, true
}

// assemble says how hot the hole or how cold the pin must be.
func (e engine) assemble(b *strings.Builder, p printer, s *piston.PinSurvey) error {
	a := e.Assembly
	if a == nil {
		return nil
	}
	h, ok := e.heat(s)
	if !ok {
		fmt.Fprintf(b, "  to put the pin into the %s: not measured\n", a.Into)
		return nil
	}
	gap := tolerance.Exactly(a.Gap).Text(p.unit, p.places)
	hot, err := h.HoleLeast(a.Gap, a.PinAt)
	if err != nil {
		return err
	}
	text := fmt.Sprintf("to put the pin into the %s with %s to spare: ", a.Into, gap)
	switch {
	case hot > a.Most:
		text += fmt.Sprintf("the hole would have to be at %s, which is more than the %s allowed: chill the pin too, or press", celsius(hot, units.Up), celsius(a.Most, units.NearestEven))
	case hot <= a.MeasuredAt:
		text += "no heat is needed"
	default:
		text += fmt.Sprintf("pin at %s, hole at %s or above", a.PinAt, celsius(hot, units.Up))
	}
	if cold, err := h.PinMost(a.Gap, a.HoleAt); err == nil {
		text += fmt.Sprintf("; hole at %s, pin at %s or below", a.HoleAt, celsius(cold, units.Down))
	}
	if !a.RunningAt.IsZero() {
		c, err := h.ClearanceAt(a.RunningAt, a.RunningAt)
		if err != nil {
			return err
		}
		text += fmt.Sprintf("; running, both within %s, the tightest place has a clearance of %s", a.RunningAt, p.bracket(c))
	}
	b.WriteString(recipe.Wrap(text, width, "  ", "    "))
	return nil
}
