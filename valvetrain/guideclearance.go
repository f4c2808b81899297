package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// GuideClearance is the clearance of a stem in its guide, on the diameter: the
// guide's bore less the stem. Below zero the stem doesn't go in.
func GuideClearance[N tolerance.Number[N]](bore, stem N) N { return bore.Sub(stem) }

// GuideBoreFor is the guide bore in which a stem has a clearance.
func GuideBoreFor[N tolerance.Number[N]](stem, clearance N) N { return stem.Add(clearance) }

// StemFor is the stem that has a clearance in a guide bore.
func StemFor[N tolerance.Number[N]](bore, clearance N) N { return bore.Sub(clearance) }

// GuideWear is how much larger a guide's bore is than when new. Where the manual
// gives no limit, package wearrate has one, and one for [StemWear].
func GuideWear[N tolerance.Number[N]](bore, newBore N) N { return bore.Sub(newBore) }

// StemWear is how much smaller a stem is than when new; the part that never
// runs in the guide still has its new size.
func StemWear[N tolerance.Number[N]](stem, unworn N) N { return unworn.Sub(stem) }

// GuideBell is how much wider a guide's mouth is than the guide between its
// mouths, both across the same way: bell-mouth. Below zero the mouth is the
// narrower, as in a guide that a reamer left bellied.
func GuideBell[N tolerance.Number[N]](mouth, waist N) N { return mouth.Sub(waist) }

// GuideOutOfRound is the greatest less the least diameter at one depth, across
// several ways. Ways that weren't measured may hide more: it is "at least".
func GuideOutOfRound[N tolerance.Number[N]](across N, ways ...N) N { return across.Spread(ways...) }

// StemTaper is the greatest less the least diameter of a stem along its length,
// all measured across one way.
func StemTaper[N tolerance.Number[N]](at N, places ...N) N { return at.Spread(places...) }

// GuideInterference is the interference of a guide in the head, on the
// diameter: the guide's outside less the bore in the head. Below zero it is
// loose. A seat insert's is [SeatInterference].
func GuideInterference[N tolerance.Number[N]](outside, headBore N) N { return outside.Sub(headBore) }

// HeadBoreFor is the bore in the head in which a guide has an interference.
func HeadBoreFor[N tolerance.Number[N]](outside, interference N) N { return outside.Sub(interference) }

// GuideOutsideFor is the outside diameter with which a guide has an
// interference in a bore of the head.
func GuideOutsideFor[N tolerance.Number[N]](headBore, interference N) N {
	return headBore.Add(interference)
}

// RetainerClearance is what is left, at full lift, between the spring retainer
// and what stands on the guide:
//
//	installed height − lift − guide's protrusion − seal's height above the guide
//
// Protrusion counts from the face that the spring stands on, where the installed
// height counts from too; a retainer that dips into the spring is measured to
// its lowest edge. At nothing or below, the retainer strikes the seal.
func RetainerClearance[N tolerance.Number[N]](installed, lift, protrusion, seal N) N {
	return installed.Sub(lift).Sub(protrusion).Sub(seal)
}

// RetainerLift is the lift at which the retainer has a clearance left: the
// inverse of [RetainerClearance].
func RetainerLift[N tolerance.Number[N]](installed, clearance, protrusion, seal N) N {
	return installed.Sub(clearance).Sub(protrusion).Sub(seal)
}

// GuideProtrusionFor is how far a guide may stand above the spring's face for
// the retainer to have a clearance at full lift: the other inverse of
// [RetainerClearance].
func GuideProtrusionFor[N tolerance.Number[N]](installed, lift, clearance, seal N) N {
	return installed.Sub(lift).Sub(clearance).Sub(seal)
}
