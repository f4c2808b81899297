package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
)

// A ClearanceProof is the two blades that prove a clearance to be in its band:
// one that must go in and a thicker one that must not.
type ClearanceProof struct {
	Enters  feeler.Blade      `json:"enters,omitzero"`  // must go in
	Refused feeler.Blade      `json:"refused,omitzero"` // must not go in
	Proved  tolerance.Bracket `json:"proved,omitzero"`  // what the pair proves, blade errors allowed for
	Ok      bool              `json:"ok"`               // whether the set has such a pair
	Next    string            `json:"next"`             // what to do with them
}

// ProveClearance finds in a set the pair of blades that proves as much of a
// wanted clearance as can be: the thinnest blade that is not below the band, and
// the thickest that is not above it. A pair proves "at least the one, less than
// the other"; so for a band of .011 to .013 in the .011 in blade must go in and
// the .013 in one must not, as US Army instructions have it (TM 5-3820-233-12/1).
// Errors of the blades are allowed for. Without such a pair, or with a band that
// lacks an end, Ok is false.
func ProveClearance(wanted tolerance.Band, set feeler.Set) ClearanceProof {
	lo, loEnd := wanted.Lower()
	hi, hiEnd := wanted.Upper()
	if loEnd == tolerance.Absent || hiEnd == tolerance.Absent || !wanted.InRange() {
		return ClearanceProof{Next: "the manual's band has to have a least and a greatest"}
	}
	var p ClearanceProof
	for _, b := range set.Blades() {
		if t := b.Thickness() - b.Error; p.Enters == (feeler.Blade{}) && (t > lo || t == lo && loEnd == tolerance.Closed) {
			p.Enters = b
		}
		if b.Thickness()+b.Error <= hi {
			p.Refused = b
		}
	}
	from, to := p.Enters.Thickness()-p.Enters.Error, p.Refused.Thickness()+p.Refused.Error
	if p.Enters == (feeler.Blade{}) || p.Refused.Thickness() <= p.Enters.Thickness() {
		return ClearanceProof{Next: "the set has no two blades in " + wanted.String() + ": get blades of its two ends, or lay two together"}
	}
	p.Proved, _ = tolerance.HalfOpen(from, to)
	p.Ok = true
	p.Next = p.Enters.MarkText() + " must go in, " + p.Refused.MarkText() + " must not"
	return p
}
