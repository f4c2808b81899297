package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A CamLobe is one lobe, measured at one or more places across its width.
type CamLobe struct {
	Where   string              // "exhaust 2"
	Heights []tolerance.Bracket // from nose to heel
	// Bases is the base circle's diameter, square to the height: one for each
	// height, at the same place, or one for all.
	Bases []tolerance.Bracket
	// NewHeight and NewBase are those of a new lobe of this kind; zero where they
	// aren't known.
	NewHeight tolerance.Bracket
	NewBase   tolerance.Bracket // base circle's diameter when new; zero where it isn't known

	HeightLimits tolerance.Spec // of the height
	LiftLimits   tolerance.Spec // of [LobeLift]
	LossLimits   tolerance.Spec // of [LobeLiftLoss]
	TaperLimits  tolerance.Spec // of [LobeTaper]
}

// A CamJournal is one journal of a camshaft and its bearing, measured across one
// way or more.
type CamJournal struct {
	Where    string              // "journal 2"
	Journals []tolerance.Bracket // of the journal
	Bearings []tolerance.Bracket // of its bearing's bore; none where not measured
	RunOut   tolerance.Bracket   // by dial gauge, the shaft on its end journals; zero where not read

	JournalLimits   tolerance.Spec // of the journal
	RoundLimits     tolerance.Spec // of the greatest less the least diameter
	BearingLimits   tolerance.Spec // of the bearing's bore
	ClearanceLimits tolerance.Spec // of the clearance, on the diameter
	RunOutLimits    tolerance.Spec // of the run-out itself, not of the bend
}

// A CamSurvey is a camshaft, measured. Limits that are empty give findings that
// can't tell.
type CamSurvey struct {
	Where    string            // "inlet camshaft"
	Lobes    []CamLobe         // those that were measured
	Journals []CamJournal      // those that were measured
	EndFloat tolerance.Bracket // by blade or dial gauge; zero where not read

	EndFloatLimits tolerance.Spec // of the end float
}

// A CamLobeReport is what one lobe tells. A finding of zero value is of what
// wasn't measured.
type CamLobeReport struct {
	Height   tolerance.Finding `json:"height"`            // nose to heel
	Lift     tolerance.Finding `json:"lift"`              // height less base circle
	Loss     tolerance.Finding `json:"loss,omitzero"`     // of lift, against new
	Taper    tolerance.Finding `json:"taper,omitzero"`    // across the width
	Wear     tolerance.Bracket `json:"wear,omitzero"`     // of the height, at the worst place
	BaseWear tolerance.Bracket `json:"baseWear,omitzero"` // of the base circle, at the worst place
}

// A CamJournalReport is what one journal tells. A finding of zero value is of
// what wasn't measured.
type CamJournalReport struct {
	Journal    tolerance.Finding `json:"journal"`             // its diameter
	OutOfRound tolerance.Finding `json:"outOfRound,omitzero"` // at least so much
	Bearing    tolerance.Finding `json:"bearing,omitzero"`    // its bore
	Clearance  tolerance.Finding `json:"clearance,omitzero"`  // least and greatest anywhere
	RunOut     tolerance.Finding `json:"runOut,omitzero"`     // as read
	Bend       tolerance.Bracket `json:"bend,omitzero"`       // half of the run-out
}

// A CamReport is what a camshaft tells.
type CamReport struct {
	Lobes    []CamLobeReport    `json:"lobes"`             // in the survey's order
	Journals []CamJournalReport `json:"journals"`          // in the survey's order
	EndFloat tolerance.Finding  `json:"endFloat,omitzero"` // as read
	LowLobe  int                `json:"lowLobe"`           // the lobe that has lost most, or may have; −1 where none is known to
	Notes    []string           `json:"notes,omitempty"`   // what the survey leaves out
	Next     string             `json:"next"`              // what to do
}

// Inspect judges lobes, journals and end float. The lift of a lobe is taken at
// each place that it was measured at; the least is judged against the lower
// limit. It fails with an [InputError] where a size isn't measured, a base
// circle isn't below its height for certain, or a journal is larger than its
// bearing for certain.
func (s CamSurvey) Inspect() (CamReport, error) {
	if len(s.Lobes)+len(s.Journals) == 0 && s.EndFloat.IsZero() {
		return CamReport{}, &InputError{"camshaft", "without readings", "lobes, journals or an end float"}
	}
	r := CamReport{LowLobe: -1}
	var most units.Length
	for i, l := range s.Lobes {
		lobe, err := l.inspect()
		if err != nil {
			return CamReport{}, err
		}
		r.Lobes = append(r.Lobes, lobe)
		if lobe.Loss.Measure == "" {
			continue
		}
		if _, hi := inputEnds(lobe.Loss.Greatest); hi > most {
			r.LowLobe, most = i, hi
		}
	}
	for _, j := range s.Journals {
		journal, err := j.inspect()
		if err != nil {
			return CamReport{}, err
		}
		r.Journals = append(r.Journals, journal)
	}
	if !s.EndFloat.IsZero() {
		if err := inputBracket("end float", s.EndFloat, 0); err != nil {
			return CamReport{}, err
		}
		var err error
		if r.EndFloat, err = inputAssess("end float of the camshaft", s.Where, s.EndFloatLimits, s.EndFloat); err != nil {
			return CamReport{}, err
		}
	}
	r.Notes, r.Next = s.notes(r), s.next(r)
	return r, nil
}

func (l CamLobe) inspect() (r CamLobeReport, err error) {
	where := inputText(l.Where)
	if err = firstError(
		func() error { return camSizes("lobe height, "+where, l.Heights) },
		func() error { return camSizes("base circle, "+where, l.Bases) },
	); err != nil {
		return r, err
	}
	if n := len(l.Bases); n != 1 && n != len(l.Heights) {
		return r, &InputError{"base circle, " + where, fmt.Sprint(n, " readings"), fmt.Sprint("read once for all, or at each of the ", len(l.Heights), " places of the height")}
	}
	var lifts, losses []tolerance.Bracket
	newLift := LobeLift(l.NewHeight, l.NewBase)
	known := !l.NewHeight.IsZero() && !l.NewBase.IsZero()
	for _, n := range []struct {
		field string
		b     tolerance.Bracket
	}{{"new lobe height, " + where, l.NewHeight}, {"new base circle, " + where, l.NewBase}} {
		if !n.b.IsZero() {
			if err = inputBracket(n.field, n.b, units.Picometre); err != nil {
				return r, err
			}
		}
	}
	if lo, _ := inputEnds(newLift); known && lo <= 0 {
		return r, &InputError{"new base circle, " + where, l.NewBase.String(), "below the new height " + l.NewHeight.String()}
	}
	for i, h := range l.Heights {
		base := l.Bases[min(i, len(l.Bases)-1)]
		lift := LobeLift(h, base)
		if lo, _ := inputEnds(lift); lo <= 0 {
			return r, &InputError{"base circle, " + where, base.String(), "below the height " + h.String()}
		}
		lifts = append(lifts, lift)
		if known {
			losses = append(losses, LobeLiftLoss(newLift, lift))
		}
	}
	leastHeight, _ := tolerance.Extremes(l.Heights...)
	leastBase, _ := tolerance.Extremes(l.Bases...)
	if !l.NewHeight.IsZero() {
		r.Wear = LobeHeightWear(l.NewHeight, leastHeight)
	}
	if !l.NewBase.IsZero() {
		r.BaseWear = LobeBaseWear(l.NewBase, leastBase)
	}
	if r.Height, err = inputAssess("lobe height", l.Where, l.HeightLimits, l.Heights...); err != nil {
		return CamLobeReport{}, err
	}
	if r.Lift, err = inputAssess("lobe lift", l.Where, l.LiftLimits, lifts...); err != nil {
		return CamLobeReport{}, err
	}
	if known {
		if r.Loss, err = inputAssess("lift lost by wear", l.Where, l.LossLimits, losses...); err != nil {
			return CamLobeReport{}, err
		}
	}
	if len(l.Heights) > 1 {
		if r.Taper, err = inputAssess("taper of the lobe", l.Where, l.TaperLimits, LobeTaper(l.Heights[0], l.Heights[1:]...)); err != nil {
			return CamLobeReport{}, err
		}
	}
	return r, nil
}

func (j CamJournal) inspect() (r CamJournalReport, err error) {
	where := inputText(j.Where)
	if len(j.Bearings) > 0 {
		p, err := camPair{j.Where, "camshaft journal", "camshaft bearing", "camshaft bearing clearance",
			j.Journals, j.Bearings, j.JournalLimits, j.BearingLimits, j.ClearanceLimits}.inspect()
		if err != nil {
			return r, err
		}
		r.Journal, r.Bearing, r.Clearance = p.Shaft, p.Bore, p.Clearance
	} else {
		if err = camSizes("camshaft journal, "+where, j.Journals); err != nil {
			return r, err
		}
		if r.Journal, err = inputAssess("camshaft journal", j.Where, j.JournalLimits, j.Journals...); err != nil {
			return CamJournalReport{}, err
		}
	}
	if len(j.Journals) > 1 {
		round := j.Journals[0].Spread(j.Journals[1:]...)
		if r.OutOfRound, err = inputAssess("out-of-round seen on the journal", j.Where, j.RoundLimits, round); err != nil {
			return CamJournalReport{}, err
		}
	}
	if !j.RunOut.IsZero() {
		if err = inputBracket("run-out, "+where, j.RunOut, 0); err != nil {
			return CamJournalReport{}, err
		}
		if r.RunOut, err = inputAssess("run-out of the journal", j.Where, j.RunOutLimits, j.RunOut); err != nil {
			return CamJournalReport{}, err
		}
		r.Bend = CamBend(j.RunOut)
	}
	return r, nil
}
