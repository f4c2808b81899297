package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance/instrument"
	solve "github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out how the figures of one cylinder were calculated. The
// formulas are the library's own, called with terms.
func working(r row, p printer) (string, error) {
	var b strings.Builder
	s, report := &r.survey, &r.report
	fmt.Fprintf(&b, "Cylinder %d, at 20 °C, the gauge taken at its word\n", r.number)
	write := func(title string, t solve.Term) error {
		done, err := solve.Solve(t, units.Style[units.Length]{Unit: p.unit, Places: p.places})
		if err == nil {
			fmt.Fprintf(&b, "\n%s\n\n%s", title, done.Text())
		}
		return err
	}
	ring := solve.Given("setting", "s", instrument.WithoutZeroError(s.Gauge.Setting.Standard, s.Gauge.Setting.Reading))
	shown := func(at cylinder.Station, name string) solve.Term { return solve.Given(name, "d", s.At(at).Shown) }
	greatest := instrument.FromSetting(ring, shown(report.Greatest.At, "shown")).Named("greatest size", "D")
	if err := write("Greatest size, "+s.Name(report.Greatest.At)+":", greatest); err != nil {
		return "", err
	}
	if report.OutOfRound.Known {
		var terms []solve.Term
		for j := range s.Headings {
			if at := (cylinder.Station{Level: report.OutOfRound.At.Level, Heading: j}); s.At(at).Taken {
				terms = append(terms, shown(at, s.HeadingName(j)))
			}
		}
		if err := write("Out-of-round "+s.LevelName(report.OutOfRound.At.Level)+", at least; the setting drops out:", cylinder.OutOfRound(terms[0], terms[1:]...).Named("out-of-round", "o")); err != nil {
			return "", err
		}
	}
	if along := report.Taper[cylinder.TaperAlong]; along.Known {
		var terms []solve.Term
		for i := range s.Levels {
			if at := (cylinder.Station{Level: i, Heading: along.At.Heading}); s.At(at).Taken {
				terms = append(terms, shown(at, s.LevelName(i)))
			}
		}
		if err := write("Taper "+s.HeadingName(along.At.Heading)+"; the setting drops out:", cylinder.Taper(terms[0], terms[1:]...).Named("taper", "t")); err != nil {
			return "", err
		}
	}
	if finished, _ := s.Finished.Lower(); report.Wear.Known {
		from := solve.Given("least size last finished to", "f", finished)
		if s.Unworn.Taken {
			from = instrument.FromSetting(ring, solve.Given("shown below the ring travel", "u", s.Unworn.Shown)).Named("unworn size", "f")
		}
		if err := write("Wear, from the size that it was last finished to:", cylinder.BoreWear(greatest, from).Named("wear", "w")); err != nil {
			return "", err
		}
	}
	return b.String(), nil
}
