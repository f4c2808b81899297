package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A GuideStation is one depth of a guide's bore, measured across several ways
// with a small-hole gauge: a plug gauge hides out-of-round and bell-mouth.
type GuideStation struct {
	Where string              // "spring end", "middle", "valve end"
	Depth units.Length        // from the guide's end nearest the valve's head
	Bores []tolerance.Bracket // one for each way across, the ways in the survey's order
}

// A StemStation is one place of a stem, where it runs in the guide.
type StemStation struct {
	Where string              // "below the collet groove"
	Stems []tolerance.Bracket // diameters, one for each way across
}

// A GuideSurvey is a guide and its stem, measured at stations across several
// ways. Limits that are empty give findings that can't tell.
type GuideSurvey struct {
	Where string         // "exhaust 3"
	Ways  []string       // "along", "across" the engine
	Guide []GuideStation // at least one, the depths growing
	Stem  []StemStation  // at least one
	// Unworn is the stem where it never runs in the guide; zero where not measured.
	Unworn tolerance.Bracket

	ClearanceLimits tolerance.Spec // of the stem in the guide, on the diameter
	BoreLimits      tolerance.Spec // of the guide's bore
	StemLimits      tolerance.Spec // of the stem
	BellLimits      tolerance.Spec // of [GuideBell]
	RoundLimits     tolerance.Spec // of [GuideOutOfRound]
	TaperLimits     tolerance.Spec // of [StemTaper]
}

// A GuideReport is what a survey of guide and stem tells. A finding of zero
// value is of something that wasn't measured: bell-mouth wants three stations,
// out-of-round two ways, taper two places of the stem.
type GuideReport struct {
	Clearance  tolerance.Finding `json:"clearance"`           // least and greatest anywhere
	Worst      int               `json:"worst"`               // the station of the greatest clearance, from 0
	Bore       tolerance.Finding `json:"bore"`                // of the guide
	Stem       tolerance.Finding `json:"stem"`                // of the valve
	Bell       tolerance.Finding `json:"bell,omitzero"`       // the wider mouth over the waist
	OutOfRound tolerance.Finding `json:"outOfRound,omitzero"` // at least so much
	Taper      tolerance.Finding `json:"taper,omitzero"`      // of the stem
	StemWear   tolerance.Bracket `json:"stemWear,omitzero"`   // against the unworn part
	Stations   []RockingStation  `json:"stations"`            // the clearance at each depth, for RockingStations
	Notes      []string          `json:"notes,omitempty"`     // what the survey leaves out
	Next       string            `json:"next"`                // what to do
}

// Inspect finds clearance, bore, stem, bell-mouth, out-of-round and taper, and
// judges each against its limits.
//
// A valve turns in its guide and slides along it, so that any place of the stem
// may meet any way across: the clearance at a station lies from the least bore
// there less the greatest stem to the greatest bore less the least stem. It
// fails with an [InputError] where a reading isn't bounded or above zero, where
// for certain the whole stem is larger than the guide somewhere or a place of it
// larger than the guide everywhere, and where stations or ways don't fit
// together.
func (s GuideSurvey) Inspect() (GuideReport, error) {
	if err := s.check(); err != nil {
		return GuideReport{}, err
	}
	var bores, stems, clearances []tolerance.Bracket
	for _, st := range s.Stem {
		stems = append(stems, st.Stems...)
	}
	leastStem, greatestStem := tolerance.Extremes(stems...)
	r := GuideReport{Worst: -1}
	var most units.Length
	for i, st := range s.Guide {
		bores = append(bores, st.Bores...)
		leastBore, greatestBore := tolerance.Extremes(st.Bores...)
		tight, loose := GuideClearance(leastBore, greatestStem), GuideClearance(greatestBore, leastStem)
		if _, hi := inputEnds(loose); hi <= 0 {
			return GuideReport{}, &InputError{"stem diameter", leastStem.String(), "below the guide's bore " + greatestBore.String() + ", " + inputText(st.Where)}
		}
		clearances = append(clearances, guideNoLess(tight), guideNoLess(loose))
		lo, hi := inputEnds(loose)
		if r.Worst < 0 || hi > most {
			r.Worst, most = i, hi
		}
		tightLo, _ := inputEnds(tight)
		r.Stations = append(r.Stations, RockingStation{st.Depth, inputSpan(max(0, min(tightLo, lo)), hi)})
	}
	// A place of the stem that runs in the guide goes in somewhere.
	_, widest := tolerance.Extremes(bores...)
	if _, hi := inputEnds(GuideClearance(widest, greatestStem)); hi <= 0 {
		return GuideReport{}, &InputError{"stem diameter", greatestStem.String(), "below the guide's bore where it is widest, " + widest.String()}
	}
	var err error
	assess := func(measure string, spec tolerance.Spec, readings ...tolerance.Bracket) (f tolerance.Finding) {
		if err == nil {
			f, err = inputAssess(measure, s.Where, spec, readings...)
		}
		return f
	}
	r.Clearance = assess("stem-to-guide clearance", s.ClearanceLimits, clearances...)
	r.Bore = assess("guide bore", s.BoreLimits, bores...)
	r.Stem = assess("stem diameter", s.StemLimits, stems...)
	if bells := s.bells(); len(bells) > 0 {
		r.Bell = assess("bell-mouth of the guide", s.BellLimits, bells...)
	} else {
		r.Notes = append(r.Notes, "bell-mouth is not known: measure the guide at both mouths and between them")
	}
	if rounds := s.outOfRounds(); len(rounds) > 0 {
		r.OutOfRound = assess("out-of-round seen in the guide", s.RoundLimits, rounds...)
	} else {
		r.Notes = append(r.Notes, "out-of-round is not known: measure the guide across two ways")
	}
	if tapers := s.tapers(); len(tapers) > 0 {
		r.Taper = assess("taper of the stem", s.TaperLimits, tapers...)
	} else {
		r.Notes = append(r.Notes, "the stem's taper is not known: measure it at two places or more")
	}
	if !s.Unworn.IsZero() {
		r.StemWear = StemWear(leastStem, s.Unworn)
	}
	if err != nil {
		return GuideReport{}, err
	}
	r.Next = s.next(r)
	return r, nil
}

// guideNoLess is a clearance of a stem that goes in: no less than nothing.
func guideNoLess(c tolerance.Bracket) tolerance.Bracket {
	if lo, hi := inputEnds(c); lo < 0 {
		return inputSpan(0, max(0, hi))
	}
	return c
}

// bells are mouth less waist, each end of each way.
func (s GuideSurvey) bells() (bells []tolerance.Bracket) {
	last := len(s.Guide) - 1
	if last < 2 {
		return nil
	}
	for way := range s.Ways {
		waist := s.Guide[1].Bores[way]
		for _, st := range s.Guide[2:last] {
			waist = waist.Min(st.Bores[way])
		}
		bells = append(bells, GuideBell(s.Guide[0].Bores[way], waist), GuideBell(s.Guide[last].Bores[way], waist))
	}
	return bells
}

func (s GuideSurvey) outOfRounds() (rounds []tolerance.Bracket) {
	if len(s.Ways) < 2 {
		return nil
	}
	for _, st := range s.Guide {
		rounds = append(rounds, GuideOutOfRound(st.Bores[0], st.Bores[1:]...))
	}
	return rounds
}

func (s GuideSurvey) tapers() (tapers []tolerance.Bracket) {
	if len(s.Stem) < 2 {
		return nil
	}
	for way := range s.Stem[0].Stems {
		var along []tolerance.Bracket
		for _, st := range s.Stem[1:] {
			along = append(along, st.Stems[way])
		}
		tapers = append(tapers, StemTaper(s.Stem[0].Stems[way], along...))
	}
	return tapers
}

func (s GuideSurvey) next(r GuideReport) string {
	bad := func(f tolerance.Finding) bool { return f.Standing >= tolerance.OutsideNewBand }
	switch {
	case bad(r.Stem) || bad(r.Taper):
		return "renew the valve, then judge the guide again with the new stem: a worn stem hides what the guide has"
	case bad(r.Bore) || bad(r.Bell) || bad(r.OutOfRound) || bad(r.Clearance):
		return "recondition the guide (liner, oversize stem or new guide), then cut the seat from the new guide"
	case r.Clearance.Standing == tolerance.CantTell && r.Clearance.Settle != "":
		return r.Clearance.Settle
	}
	return "none for clearance; check the seat's run-out from this guide"
}

func (s GuideSurvey) check() error {
	switch {
	case len(s.Ways) == 0:
		return &InputError{"ways across", "none", "one or more, named"}
	case len(s.Guide) == 0:
		return &InputError{"stations of the guide", "none", "one or more"}
	case len(s.Stem) == 0:
		return &InputError{"places of the stem", "none", "one or more"}
	}
	if !s.Unworn.IsZero() {
		if err := inputBracket("unworn stem", s.Unworn, units.Picometre); err != nil {
			return err
		}
	}
	for i, st := range s.Guide {
		field := "guide, " + inputText(st.Where)
		if err := inputAllowance(field+", depth", st.Depth); err != nil {
			return err
		}
		if i > 0 && st.Depth <= s.Guide[i-1].Depth {
			return &InputError{field + ", depth", st.Depth.String(), "deeper than the station before, " + s.Guide[i-1].Depth.String()}
		}
		if len(st.Bores) != len(s.Ways) {
			return &InputError{field + ", readings", fmt.Sprint(len(st.Bores)), fmt.Sprintf("one for each of the %d ways", len(s.Ways))}
		}
		for w, b := range st.Bores {
			if err := inputBracket(field+", "+inputText(s.Ways[w]), b, units.Picometre); err != nil {
				return err
			}
		}
	}
	for _, st := range s.Stem {
		field := "stem, " + inputText(st.Where)
		if len(st.Stems) == 0 || len(st.Stems) != len(s.Stem[0].Stems) {
			return &InputError{field + ", readings", fmt.Sprint(len(st.Stems)), "as many as at the other places, and one or more"}
		}
		for _, b := range st.Stems {
			if err := inputBracket(field, b, units.Picometre); err != nil {
				return err
			}
		}
	}
	return nil
}
