package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out one journal's eccentricity and its bend seen from the
// supports.
func (s *shaft) working(at int) (string, error) {
	j := s.survey.Journals[at]
	if len(j.Angles) > 0 || len(j.Readings) < 3 {
		return "", fmt.Errorf("%s: the working is written out for three readings or more at equal angles", j.Where)
	}
	given := make([]working.RealTerm, len(j.Readings))
	for i, r := range j.Readings {
		given[i] = working.GivenReal(fmt.Sprint("reading ", i+1), fmt.Sprint("r", i+1), r.Float(units.InMicrometres), "µm")
	}
	x, y := crank.RunOutComponents(given[0], given[1:]...)
	plain := func(words, symbol string, l units.Length) working.RealTerm {
		return working.GivenReal(words, symbol, l.Float(units.InMicrometres), "µm")
	}
	own := s.report.Journals[at].Off
	terms := []working.RealTerm{
		x.Named("toward the mark", "x", "µm"), y.Named("toward 90°", "y", "µm"),
		crank.RunOutOf(plain("toward the mark", "x", own.Cosine), plain("toward 90°", "y", own.Sine)).Named("run-out of the eccentricity", "R", "µm"),
	}
	var b strings.Builder
	for _, t := range terms {
		if err := writeReal(&b, t); err != nil {
			return "", err
		}
	}
	if s.report.Journals[at].Support {
		return b.String(), nil
	}
	bent := s.report.Journals[at].Relative
	for _, part := range []struct {
		words, symbol    string
		own, first, last units.Length
	}{
		{"toward the mark", "x", own.Cosine, s.report.Journals[s.survey.First].Off.Cosine, s.report.Journals[s.survey.Second].Off.Cosine},
		{"toward 90°", "y", own.Sine, s.report.Journals[s.survey.First].Off.Sine, s.report.Journals[s.survey.Second].Off.Sine},
	} {
		if err := s.writeLine(&b, at, part.words, part.symbol, part.own, part.first, part.last); err != nil {
			return "", err
		}
	}
	err := writeReal(&b, crank.BendOf(plain("seen from the supports, toward the mark", "x'", bent.Cosine), plain("seen from the supports, toward 90°", "y'", bent.Sine)).Named("bend", "B", "µm"))
	return b.String(), err
}

// writeLine takes what the supports do at a journal off one component.
func (s *shaft) writeLine(b *strings.Builder, at int, words, symbol string, own, first, last units.Length) error {
	z := s.survey.Journals[at].Position
	from, to := z-s.survey.Journals[s.survey.First].Position, s.survey.Journals[s.survey.Second].Position-z
	line := crank.SupportLine(
		working.Given(s.Supports[0]+", "+words, symbol+"₁", first), working.Given(s.Supports[1]+", "+words, symbol+"₂", last),
		working.Given("distance to "+s.Supports[0], "a", from), working.Given("distance to "+s.Supports[1], "b", to)).Named("line between the supports, "+words, symbol+"ₛ")
	t := working.Given(words, symbol, own).Sub(line).Named("seen from the supports, "+words, symbol+"'")
	solution, err := working.Solve(t, units.Style[units.Length]{Unit: units.InMillimetres, Places: 5})
	if err == nil {
		b.WriteString(solution.Text() + "\n")
	}
	return err
}

func writeReal(b *strings.Builder, t working.RealTerm) error {
	solution, err := working.SolveReal(t, working.RealStyle{Places: 2})
	if err == nil {
		b.WriteString(solution.Text() + "\n")
	}
	return err
}
