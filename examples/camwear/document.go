package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// paper is the file.
type paper struct {
	Schema    int             `json:"schema"`
	Engine    string          `json:"engine"`
	Ratio     tolerance.Ratio `json:"ratio"`     // of the rocker; 1 where the cam acts directly
	Clearance units.Length    `json:"clearance"` // at the valve
	Kinds     map[string]kind `json:"kinds"`
	Lobes     []struct {
		Where   string              `json:"where"`
		Kind    string              `json:"kind"`
		Heights []tolerance.Bracket `json:"heights"`
		Bases   []tolerance.Bracket `json:"bases"` // one for all heights, or one for each
	} `json:"lobes"`
	Journals []struct {
		Where    string              `json:"where"`
		Journals []tolerance.Bracket `json:"journals"`
		Bearings []tolerance.Bracket `json:"bearings,omitempty"`
		RunOut   tolerance.Bracket   `json:"runOut,omitzero"`
	} `json:"journals,omitempty"`
	EndFloat tolerance.Bracket `json:"endFloat,omitzero"`
	Limits   struct {
		Journal   spec `json:"journal,omitzero"`
		Round     spec `json:"round,omitzero"`
		Bearing   spec `json:"bearing,omitzero"`
		Clearance spec `json:"clearance,omitzero"`
		RunOut    spec `json:"runOut,omitzero"`
		EndFloat  spec `json:"endFloat,omitzero"`
	} `json:"limits,omitzero"`
}

// kind is what a manual says of one kind of lobe.
type kind struct {
	NewHeight tolerance.Bracket `json:"newHeight,omitzero"`
	NewBase   tolerance.Bracket `json:"newBase,omitzero"`
	Height    spec              `json:"height,omitzero"`
	Lift      spec              `json:"lift,omitzero"`
	Loss      spec              `json:"loss,omitzero"`
	Taper     spec              `json:"taper,omitzero"`
}

type spec struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (s spec) spec() tolerance.Spec { return tolerance.Spec{New: s.New.BandOf, Wear: s.Wear.BandOf} }

// shaft is a camshaft that was read and judged.
type shaft struct {
	paper
	survey valvetrain.CamSurvey
	report valvetrain.CamReport
}

func read(name string, data []byte) (s shaft, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return s, err
	}
	if err = document.DecodeNamed(name, data, &s.paper); err != nil {
		return s, err
	}
	at := func(path, what string) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %s", name, where.Line, path, what)
	}
	if s.Ratio.Sign() <= 0 {
		return s, at("ratio", "a rocker's ratio is above 0")
	}
	if s.Clearance < 0 || s.Clearance > 10*units.Millimetre {
		return s, at("clearance", "a valve's clearance is from 0 mm to 10 mm")
	}
	l := s.Limits
	s.survey = valvetrain.CamSurvey{Where: "camshaft", EndFloat: s.EndFloat, EndFloatLimits: l.EndFloat.spec()}
	seen := map[string]bool{}
	for i, x := range s.Lobes {
		k, ok := s.Kinds[x.Kind]
		switch {
		case !ok:
			return s, at(fmt.Sprintf("lobes[%d].kind", i), fmt.Sprintf("no kind is called %.64q", x.Kind))
		case x.Where == "" || seen[x.Where]:
			return s, at(fmt.Sprintf("lobes[%d].where", i), fmt.Sprintf("each lobe has a name of its own, which %.64q is not", x.Where))
		}
		seen[x.Where] = true
		lobe := valvetrain.CamLobe{Where: x.Where, Heights: x.Heights, Bases: x.Bases, NewHeight: k.NewHeight, NewBase: k.NewBase,
			HeightLimits: k.Height.spec(), LiftLimits: k.Lift.spec(), LossLimits: k.Loss.spec(), TaperLimits: k.Taper.spec()}
		// Alone, so that an error names the lobe's place in the file.
		if _, err := (valvetrain.CamSurvey{Lobes: []valvetrain.CamLobe{lobe}}).Inspect(); err != nil {
			return s, at(fmt.Sprintf("lobes[%d]", i), err.Error())
		}
		s.survey.Lobes = append(s.survey.Lobes, lobe)
	}
	for i, x := range s.Journals {
		journal := valvetrain.CamJournal{Where: x.Where, Journals: x.Journals, Bearings: x.Bearings, RunOut: x.RunOut,
			JournalLimits: l.Journal.spec(), RoundLimits: l.Round.spec(), BearingLimits: l.Bearing.spec(), ClearanceLimits: l.Clearance.spec(), RunOutLimits: l.RunOut.spec()}
		if _, err := (valvetrain.CamSurvey{Journals: []valvetrain.CamJournal{journal}}).Inspect(); err != nil {
			return s, at(fmt.Sprintf("journals[%d]", i), err.Error())
		}
		s.survey.Journals = append(s.survey.Journals, journal)
	}
	if s.report, err = s.survey.Inspect(); err != nil {
		return s, fmt.Errorf("%s: %w", name, err)
	}
	return s, nil
}
