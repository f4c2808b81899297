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

// page is the page for the bench.
func (e engine) page() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Valve guides and stems: %s\n", e.Engine)
	for _, v := range e.Valves {
		fmt.Fprintf(&b, "\n%s\n\n", v.Where)
		if err := e.write(&b, v); err != nil {
			return "", fmt.Errorf("%s: %w", v.Where, err)
		}
	}
	b.WriteString("\n" + recipe.Wrap("Springs and collets can leave the bench at the height of an eye: wear eye protection. Find out what guides and seats are made of before reaming or grinding: dust of beryllium alloy harms the lungs for life. The engine maker's manual governs; this is arithmetic on what was given.", width, "", ""))
	return b.String(), nil
}

func (e engine) write(b *strings.Builder, v valve) error {
	say := func(format string, args ...any) {
		b.WriteString(recipe.Wrap(fmt.Sprintf(format, args...), width, "  ", "    "))
	}
	s, measured := e.survey(v)
	var report valvetrain.GuideReport
	if measured {
		var err error
		if report, err = s.Inspect(); err != nil {
			return err
		}
		for _, f := range []tolerance.Finding{report.Clearance, report.Bore, report.Stem, report.Bell, report.OutOfRound, report.Taper} {
			if f.Measure != "" && !f.Spec.IsZero() {
				say("%s", tail(f))
			}
		}
		if !report.StemWear.IsZero() {
			say("the stem has lost %s to wear", mm(report.StemWear))
		}
		for _, n := range report.Notes {
			say("%s", n)
		}
	}
	if v.Rocked != nil {
		if err := e.rockedPage(say, v, report); err != nil {
			return err
		}
	}
	if measured {
		say("Next: %s", report.Next)
		if e.Repair != nil {
			return e.Repair.write(say, s)
		}
	}
	return nil
}

// tail is a finding's line without its place, which stands above.
func tail(f tolerance.Finding) string {
	f.Where = ""
	return strings.TrimPrefix(f.Text(units.InMillimetres, 3), ": ")
}

// rockedPage says what rocking shows, and whether it agrees with the diameters.
func (e engine) rockedPage(say func(string, ...any), v valve, report valvetrain.GuideReport) error {
	r, err := e.rocking(v).Inspect()
	if err != nil {
		return err
	}
	if !r.Travel.Spec.IsZero() {
		say("%s (the limit is for the travel itself)", tail(r.Travel))
	}
	say("by rocking: clearance %s if the guide is straight; else a mean of its mouths, the near one at most %s, the far one %s",
		mm(r.Mean), top(r.Near), top(r.Far))
	if len(report.Stations) < 2 {
		say("Next: %s", r.Next)
		return nil
	}
	beyond, ok := v.Rocked.Beyond.Middle()
	if !ok {
		return nil
	}
	expected, err := valvetrain.RockingStations(beyond, report.Stations...)
	if err != nil {
		return err
	}
	agree := "the two agree"
	if _, both := expected.Intersect(v.Rocked.Travel); !both {
		agree = "they disagree: one of the readings has slipped, or the dial stood elsewhere"
	}
	say("by the diameters the dial should travel %s; it did %s: %s", mm(expected), mm(v.Rocked.Travel), agree)
	return nil
}

func top(b tolerance.Bracket) string {
	hi, end := b.Upper()
	if end == tolerance.Absent {
		return "of any size, for the dial stood at the guide's very end"
	}
	text, _ := hi.Append(nil, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3, Rounding: units.Up})
	return string(text)
}

// write says which repair serves.
func (r repair) write(say func(string, ...any), s valvetrain.GuideSurvey) error {
	c, err := valvetrain.ChooseGuideRepair(r.need(s), r.options())
	if err != nil {
		return err
	}
	for i, t := range c.Trials {
		why := "serves"
		if t.Why != "" {
			why = t.Why
		} else if i == c.Chosen {
			why = "serves, with the least work"
		}
		say("%s: clearance %s: %s", t.Option.Name, mm(t.Clearance), why)
	}
	say("Repair: %s", c.Next)
	return nil
}

// working writes out one valve's clearance by rocking, or at its worst place.
func (e engine) working(which string) (string, error) {
	var b strings.Builder
	style := units.Style[units.Length]{Unit: units.InMillimetres, Places: 4}
	for _, v := range e.Valves {
		if v.Where != which {
			continue
		}
		if s, ok := e.survey(v); ok {
			r, err := s.Inspect()
			if err != nil {
				return "", err
			}
			least, _ := tolerance.Extremes(e.Repair.orEmpty().need(s).Stem)
			_, wide := tolerance.Extremes(s.Guide[r.Worst].Bores...)
			stem, _ := least.Lower()
			bore, _ := wide.Upper()
			t := valvetrain.GuideClearance(working.Given("greatest bore, "+s.Guide[r.Worst].Where, "D", bore), working.Given("least stem", "d", stem)).Named("greatest clearance", "c")
			if err := solve(&b, which+", by diameters", t, style); err != nil {
				return "", err
			}
		}
		if v.Rocked != nil {
			R, _ := v.Rocked.Travel.Middle()
			L, _ := v.Rocked.Engaged.Middle()
			h, _ := v.Rocked.Beyond.Middle()
			t := valvetrain.RockingClearance(working.Given("travel of the dial", "R", R), working.Given("engaged length", "L", L), working.Given("dial beyond the guide", "h", h)).
				Named("clearance of a straight guide", "c")
			if err := solve(&b, which+", by rocking", t, style); err != nil {
				return "", err
			}
		}
	}
	if b.Len() == 0 {
		return "", fmt.Errorf("no valve is called %.64q", which)
	}
	return strings.TrimRight(b.String(), "\n") + "\n", nil
}

func (r *repair) orEmpty() repair {
	if r == nil {
		return repair{}
	}
	return *r
}

func solve(b *strings.Builder, title string, t working.Term, style units.Style[units.Length]) error {
	s, err := working.Solve(t, style)
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "%s\n\n%s\n", title, s.Text())
	return nil
}
