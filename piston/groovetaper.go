package piston

import "github.com/tenthou/tenthou/tolerance"

// AssessGrooveTaper judges how much wider a groove is at its mouth than at its
// root, from the clearances (or widths) taken at both. Several stations round
// the piston are given in one order for both: mouth[i] and root[i] are of one
// place. The sign stays: below zero the groove is narrower at its mouth, as
// where its edge was rolled over or carbon sits in it.
//
// It fails with an [InputError] where mouth and root don't come in pairs, and
// as [tolerance.Assess] does.
func AssessGrooveTaper(where string, limits tolerance.Spec, mouth, root []tolerance.Bracket) (tolerance.Finding, error) {
	if len(mouth) != len(root) {
		return tolerance.Finding{}, &InputError{"groove taper", where, "measured at mouth and root of every place alike"}
	}
	tapers := make([]tolerance.Bracket, len(mouth))
	for i := range mouth {
		tapers[i] = GrooveTaper(mouth[i], root[i])
	}
	return tolerance.Assess("groove taper", where, limits, tapers...)
}
