package valvetrain

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
)

// notes are what the survey leaves out.
func (s CamSurvey) notes(r CamReport) (notes []string) {
	if slices.ContainsFunc(r.Lobes, func(l CamLobeReport) bool { return l.Loss.Measure == "" }) {
		notes = append(notes, "the lift lost is not known of every lobe: that takes a new lobe's height and base circle, from the manual or an unworn lobe of the same kind")
	}
	if slices.ContainsFunc(s.Lobes, func(l CamLobe) bool { return len(l.Heights) == 1 }) {
		notes = append(notes, "taper is not known of every lobe: measure its height near both edges")
	}
	if slices.ContainsFunc(s.Journals, func(j CamJournal) bool { return len(j.Journals) == 1 }) {
		notes = append(notes, "out-of-round is not known of every journal: measure across two ways")
	}
	if slices.ContainsFunc(s.Journals, func(j CamJournal) bool { return len(j.Bearings) == 0 }) {
		notes = append(notes, "clearance is not known of every bearing: measure its bore with the caps torqued or the bush in place")
	}
	if len(s.Journals) > 2 && !slices.ContainsFunc(s.Journals, func(j CamJournal) bool { return !j.RunOut.IsZero() }) {
		notes = append(notes, "bend is not known: turn the shaft on its end journals under a dial gauge")
	}
	if s.EndFloat.IsZero() {
		notes = append(notes, "end float was not read")
	}
	return notes
}

// next is what to do, the shaft itself first.
func (s CamSurvey) next(r CamReport) string {
	var all []tolerance.Finding
	for i, l := range r.Lobes {
		if camBad(l.Height) || camBad(l.Lift) || camBad(l.Loss) || camBad(l.Taper) {
			return "renew or regrind the camshaft, for " + inputText(s.Lobes[i].Where) + ", and renew the followers with it: a worn follower ruins a new lobe"
		}
		all = append(all, l.Lift, l.Loss, l.Height, l.Taper)
	}
	for i, j := range r.Journals {
		where := inputText(s.Journals[i].Where)
		switch {
		case camBad(j.RunOut):
			return "straighten or renew the camshaft, for the run-out at " + where + "; first see that the journal itself is round, which the dial reads too"
		case camBad(j.Journal) || camBad(j.OutOfRound):
			return "renew or regrind the camshaft, for " + where
		case camBad(j.Bearing) || camBad(j.Clearance):
			return "renew the bearing or have its housing restored, at " + where
		}
		all = append(all, j.Journal, j.Clearance, j.RunOut, j.OutOfRound, j.Bearing)
	}
	if camBad(r.EndFloat) {
		return "renew the thrust plate, or shim it, to bring the end float into its band"
	}
	return camNext("none by these limits; look for pitting and scuffing, which no size shows", append(all, r.EndFloat)...)
}
