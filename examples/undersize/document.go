package main

import (
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// shaft is the file.
type shaft struct {
	Schema int                   `json:"schema"`
	Shaft  string                `json:"shaft"`
	Gauge  instrument.Instrument `json:"gauge"`
	Groups []group               `json:"groups"`
}

// group is the mains, or the crankpins.
type group struct {
	Kind       crank.JournalKind `json:"kind"`
	Standard   tolerance.Band    `json:"standard"`
	Directions []units.Angle     `json:"directions"`
	Planes     []string          `json:"planes"`
	OutOfRound tolerance.Band    `json:"outOfRound,omitzero"` // up to which a journal may run on
	Taper      tolerance.Band    `json:"taper,omitzero"`
	RunOut     tolerance.Band    `json:"runOut,omitzero"`
	Plan       crank.GrindPlan   `json:"plan"`
	Shells     []struct {
		Name      string         `json:"name"`
		Undersize units.Length   `json:"undersize"`
		Journal   tolerance.Band `json:"journal,omitzero"`
		AsIs      tolerance.Band `json:"asIs,omitzero"`
		Pairs     *int           `json:"pairs,omitempty"`
	} `json:"shells"`
	Journals []struct {
		Where    string               `json:"where"`
		Finished tolerance.Bracket    `json:"finished"`
		Sizes    [][]reading          `json:"sizes"` // a row for each plane
		RunOut   tolerance.Bracket    `json:"runOut,omitzero"`
		Walls    []crank.JournalWall  `json:"walls,omitzero"`
		Surface  crank.JournalSurface `json:"surface,omitzero"`
		Case     tolerance.Bracket    `json:"case,omitzero"`
		Process  string               `json:"process,omitempty"`
	} `json:"journals"`

	surveys []crank.JournalSurvey
	reports []crank.JournalReport
	job     crank.UndersizeJob
	choice  crank.UndersizeChoice
}

// reading is a size as the micrometer showed it, or "" where nothing was read.
type reading crank.JournalReading

// UnmarshalText reads a size or an empty text.
func (r *reading) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*r = reading{}
		return nil
	}
	r.Taken = true
	return r.Shown.UnmarshalText(text)
}

// read reads a file and works it out. An error names the line and the field.
func read(name string, data []byte) (s shaft, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return s, err
	}
	if err = document.DecodeNamed(name, data, &s); err != nil {
		return s, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	if len(s.Groups) == 0 {
		return s, at("groups", fmt.Errorf("no journals: give the mains, the crankpins or both"))
	}
	seen := map[string]bool{}
	for g := range s.Groups {
		path := fmt.Sprintf("groups[%d]", g)
		if err := s.Groups[g].survey(s.Gauge, seen, func(i int, err error) error {
			return at(fmt.Sprintf("%s.journals[%d]", path, i), err)
		}); err != nil {
			return s, err
		}
		if s.Groups[g].choice, err = crank.ChooseUndersize(&s.Groups[g].job); err != nil {
			return s, at(path, err)
		}
	}
	return s, nil
}

// survey makes the job of a group, of the survey of each journal.
func (g *group) survey(gauge instrument.Instrument, seen map[string]bool, at func(int, error) error) error {
	g.job = crank.UndersizeJob{Kind: g.Kind, Standard: g.Standard, Plan: g.Plan,
		AsIs: crank.AsIsRule{OutOfRound: g.OutOfRound, Taper: g.Taper, RunOut: g.RunOut}}
	for _, k := range g.Shells {
		kit := crank.ShellKit{Name: k.Name, Undersize: k.Undersize, Journal: k.Journal, AsIs: k.AsIs}
		if k.Pairs != nil {
			kit.Stock = crank.PairsInStock(*k.Pairs)
		}
		g.job.Kits = append(g.job.Kits, kit)
	}
	limits := crank.JournalLimits{OutOfRound: tolerance.Spec{Wear: g.OutOfRound}, Taper: tolerance.Spec{Wear: g.Taper}}
	for i, j := range g.Journals {
		if j.Where == "" || seen[j.Where] {
			return at(i, fmt.Errorf("%q: each journal needs a name of its own", j.Where))
		}
		seen[j.Where] = true
		survey := crank.JournalSurvey{Where: j.Where, Kind: g.Kind, Headings: g.Directions, Gauge: gauge, Finished: j.Finished}
		if len(j.Sizes) != len(g.Planes) {
			return at(i, fmt.Errorf("%s: %d rows of sizes for %d planes", j.Where, len(j.Sizes), len(g.Planes)))
		}
		for p, row := range j.Sizes {
			survey.Planes = append(survey.Planes, crank.JournalPlane{Name: g.Planes[p]})
			if len(row) != len(g.Directions) {
				return at(i, fmt.Errorf("%s, %s: %d sizes for %d directions", j.Where, g.Planes[p], len(row), len(g.Directions)))
			}
			for _, r := range row {
				survey.Readings = append(survey.Readings, crank.JournalReading(r))
			}
		}
		var report crank.JournalReport
		if err := survey.Inspect(&limits, &report); err != nil {
			return at(i, err)
		}
		worn := survey.WornJournal(&report, crank.JournalTaperAlong)
		worn.RunOut, worn.Walls, worn.Surface, worn.Case, worn.Process = j.RunOut, j.Walls, j.Surface, j.Case, j.Process
		if _, err := crank.CleansUpAt(&worn, g.Kind, &g.Plan); err != nil {
			return at(i, err)
		}
		g.surveys, g.reports, g.job.Journals = append(g.surveys, survey), append(g.reports, report), append(g.job.Journals, worn)
	}
	return nil
}
