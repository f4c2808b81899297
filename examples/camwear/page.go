package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

const width = 78

// mm writes a bracket rounded outward.
func mm(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 3) }

// tail is a finding's line without its place, which stands above.
func tail(f tolerance.Finding) string {
	f.Where = ""
	return strings.TrimPrefix(f.Text(units.InMillimetres, 3), ": ")
}

func (s *shaft) page() string {
	var b strings.Builder
	say := func(format string, args ...any) {
		b.WriteString(recipe.Wrap(fmt.Sprintf(format, args...), width, "  ", "    "))
	}
	judge := func(all ...tolerance.Finding) {
		for _, f := range all {
			if f.Measure != "" && !f.Spec.IsZero() {
				say("%s", tail(f))
			}
		}
	}
	fmt.Fprintf(&b, "Camshaft: %s\n", s.Engine)
	for i, l := range s.report.Lobes {
		fmt.Fprintf(&b, "\n%s\n\n", s.Lobes[i].Where)
		say("lobe lift %s to %s at its edges", mm(l.Lift.Least), mm(l.Lift.Greatest))
		clearance := tolerance.Exactly(s.Clearance)
		say("at the valve, times %s less %s of clearance: at least %s", s.Ratio, s.Clearance, mm(valvetrain.ValveLift(l.Lift.Least, clearance, s.Ratio)))
		judge(l.Height, l.Lift, l.Loss, l.Taper)
		if !l.Wear.IsZero() && !l.BaseWear.IsZero() {
			say("of it the height has lost %s, the base circle %s", mm(l.Wear), mm(l.BaseWear))
		}
	}
	for i, j := range s.report.Journals {
		fmt.Fprintf(&b, "\n%s\n\n", s.Journals[i].Where)
		judge(j.Journal, j.OutOfRound, j.Bearing, j.Clearance, j.RunOut)
		if !j.Bend.IsZero() {
			say("bend, half of the run-out if the journal is round: %s", mm(j.Bend))
		}
	}
	b.WriteString("\n")
	if s.report.EndFloat.Measure != "" {
		b.WriteString(recipe.Wrap(tail(s.report.EndFloat), width, "", "  "))
	}
	if s.report.LowLobe >= 0 {
		b.WriteString(recipe.Wrap("Lost most lift, or may have: "+s.Lobes[s.report.LowLobe].Where, width, "", "  "))
	}
	for _, n := range s.report.Notes {
		b.WriteString(recipe.Wrap("Note: "+n, width, "", "  "))
	}
	b.WriteString(recipe.Wrap("Next: "+s.report.Next, width, "", "  "))
	b.WriteString("\n" + recipe.Wrap("Valve springs push on the camshaft: slacken its caps evenly. The engine maker's manual governs; this is arithmetic on what was given.", width, "", ""))
	return b.String()
}

// working writes out one lobe, at its lowest place, with the middles of the
// readings.
func (s *shaft) working(name string) (string, error) {
	for _, l := range s.survey.Lobes {
		if l.Where != name {
			continue
		}
		at := 0
		middle := func(b tolerance.Bracket) units.Length { m, _ := b.Middle(); return m }
		for i, h := range l.Heights {
			if middle(h) < middle(l.Heights[at]) {
				at = i
			}
		}
		base := l.Bases[min(at, len(l.Bases)-1)]
		lift := valvetrain.LobeLift(working.Given("lobe height", "H", middle(l.Heights[at])), working.Given("base circle", "D", middle(base))).Named("lobe lift", "s")
		terms := []working.Term{valvetrain.ValveLift(lift, working.Given("valve clearance", "c", s.Clearance), s.Ratio).Named("valve lift", "L")}
		if !l.NewHeight.IsZero() && !l.NewBase.IsZero() {
			fresh := valvetrain.LobeLift(working.Given("new height", "H₀", middle(l.NewHeight)), working.Given("new base circle", "D₀", middle(l.NewBase))).Named("new lobe lift", "s₀")
			terms = append(terms, valvetrain.LobeLiftLoss(fresh, lift).Named("lift lost", "Δs"))
		}
		var b strings.Builder
		for _, t := range terms {
			solution, err := working.Solve(t, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
			if err != nil {
				return "", err
			}
			b.WriteString("\n" + solution.Text())
		}
		return b.String(), nil
	}
	return "", fmt.Errorf("no lobe is called %.64q", name)
}
