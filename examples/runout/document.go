package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// paper is the file.
type paper struct {
	Schema   int          `json:"schema"`
	Engine   string       `json:"engine"`
	Support  string       `json:"support"`           // "between centres" or "V-blocks"
	Included units.Angle  `json:"included,omitzero"` // of the V-blocks
	Supports []string     `json:"supports"`          // the two journals that the rest are seen from
	Unit     string       `json:"unit"`              // of the readings: "µm", "mm", "thou"
	Error    units.Length `json:"error"`             // of each reading
	Nitrided bool         `json:"nitrided,omitempty"`
	Journals []journal    `json:"journals"` // in order along the shaft
	Limits   limits       `json:"limits,omitzero"`
}

type journal struct {
	Where    string       `json:"where"`
	Position units.Length `json:"position"`           // from any place
	Readings string       `json:"readings,omitempty"` // numbers between blanks
	Angles   string       `json:"angles,omitempty"`   // degrees between blanks; equal if left out
	Back     string       `json:"back,omitempty"`     // the dial back at the first place
	Apart    bool         `json:"apart,omitempty"`    // a nose or a flange: no neighbour
	RunOut   spec         `json:"runOut,omitzero"`    // its own limits
}

type limits struct {
	RunOut    spec `json:"runOut,omitzero"`    // as read
	Bend      spec `json:"bend,omitzero"`      // half of what the eccentricity makes
	Along     spec `json:"along,omitzero"`     // sum and difference of neighbours
	RightSum  spec `json:"rightSum,omitzero"`  // at right angles
	RightEach spec `json:"rightEach,omitzero"` // at right angles
}

type spec struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (s spec) spec() tolerance.Spec { return tolerance.Spec{New: s.New.BandOf, Wear: s.Wear.BandOf} }

// shaft is a shaft that was read and judged.
type shaft struct {
	paper
	survey crank.RunOutSurvey
	report crank.RunOutReport
}

func read(name string, data []byte) (s shaft, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return s, err
	}
	if err = document.DecodeNamed(name, data, &s.paper); err != nil {
		return s, err
	}
	if path, err := s.build(); err != nil {
		where, _ := document.Locate(data, path)
		return s, fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	if s.report, err = s.survey.Inspect(); err != nil {
		return s, document.At(name, data, s.blame(err), err)
	}
	return s, nil
}

// blame is the path of what a survey was refused for.
func (s *shaft) blame(err error) string {
	var wrong *crank.InputError
	if !errors.As(err, &wrong) {
		return "limits"
	}
	for i, j := range s.Journals {
		if strings.HasPrefix(wrong.Field, j.Where+", ") {
			return fmt.Sprintf("journals[%d]", i)
		}
	}
	for _, field := range []string{"included", "error", "supports"} {
		if strings.HasPrefix(wrong.Field, field) {
			return field
		}
	}
	return "journals"
}

// find is the place of a journal, −1 where there is none.
func (s *shaft) find(name string) int {
	for i, j := range s.Journals {
		if j.Where == name {
			return i
		}
	}
	return -1
}

// build makes the survey of the file. An error comes with its path.
func (s *shaft) build() (path string, err error) {
	unit, err := units.ParseUnit[units.Length](s.Unit)
	if err != nil {
		return "unit", err
	}
	l := s.Limits
	s.survey = crank.RunOutSurvey{
		Included: s.Included, Error: s.Error, Nitrided: s.Nitrided, RunOut: l.RunOut.spec(), Bend: l.Bend.spec(),
		Neighbours: crank.NeighbourLimits{Along: l.Along.spec(), RightSum: l.RightSum.spec(), RightEach: l.RightEach.spec()},
	}
	switch s.Support {
	case "between centres":
	case "V-blocks":
		s.survey.Support = crank.OnBlocks
	default:
		return "support", fmt.Errorf("a shaft turns between centres or on V-blocks, not on %.64q", s.Support)
	}
	if len(s.Supports) != 2 {
		return "supports", fmt.Errorf("name two journals, not %d", len(s.Supports))
	}
	if s.survey.First, s.survey.Second = s.find(s.Supports[0]), s.find(s.Supports[1]); s.survey.First < 0 || s.survey.Second < 0 {
		return "supports", errors.New("each must be the name of a journal")
	}
	for i, j := range s.Journals {
		path := fmt.Sprintf("journals[%d]", i)
		if s.find(j.Where) != i {
			return path + ".where", fmt.Errorf("two journals are called %.64q", j.Where)
		}
		turn := crank.RunOutTurn{Where: j.Where, Position: j.Position}
		if turn.Readings, err = lengths(j.Readings, unit); err != nil {
			return path + ".readings", err
		}
		for k, f := range strings.Fields(j.Angles) {
			a, err := units.ParseIn(f, units.InDegrees)
			if err != nil {
				return path + ".angles", fmt.Errorf("angle %d: %w", k+1, err)
			}
			turn.Angles = append(turn.Angles, a)
		}
		if j.Back != "" {
			turn.BackRead = true
			if turn.Back, err = units.ParseIn(j.Back, unit); err != nil {
				return path + ".back", err
			}
		}
		s.survey.Journals = append(s.survey.Journals, crank.RunOutJournal{RunOutTurn: turn, Apart: j.Apart, Limits: j.RunOut.spec()})
	}
	return "", nil
}

func lengths(text string, unit units.Unit[units.Length]) (all []units.Length, err error) {
	for i, f := range strings.Fields(text) {
		d, err := units.ParseIn(f, unit)
		if err != nil {
			return nil, fmt.Errorf("reading %d: %w", i+1, err)
		}
		all = append(all, d)
	}
	return all, nil
}
