package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// CamJournalClearance is the clearance of a camshaft's journal in its bearing,
// on the diameter. Below zero the journal doesn't go in.
func CamJournalClearance[N tolerance.Number[N]](bearing, journal N) N { return bearing.Sub(journal) }

// CamBearingFor is the bearing's bore in which a journal has a clearance.
func CamBearingFor[N tolerance.Number[N]](journal, clearance N) N { return journal.Add(clearance) }

// CamJournalFor is the journal that has a clearance in a bearing.
func CamJournalFor[N tolerance.Number[N]](bearing, clearance N) N { return bearing.Sub(clearance) }

// CamRunOut is the greatest less the least reading of a dial gauge on a middle
// journal, with the camshaft turned once on its end journals.
func CamRunOut[N tolerance.Number[N]](reading N, more ...N) N { return reading.Spread(more...) }

// CamBend is how far a camshaft's middle stands off the line of its ends: half
// of the run-out, where the journal is round. A journal's own out-of-round is in
// the reading too. Manuals limit either; compare like with like.
func CamBend[N tolerance.Number[N]](runOut N) N { return runOut.Scale(1, 2) }

// CamRunOutOf is the run-out that a bend gives, the inverse of [CamBend].
func CamRunOutOf[N tolerance.Number[N]](bend N) N { return bend.Scale(2, 1) }

// CamEndFloat is the end float of a camshaft from its parts: the space between
// its thrust faces less the plate, flange or bearing that stands in it.
// Assembled it is read directly, by blade or as the travel of a dial gauge.
func CamEndFloat[N tolerance.Number[N]](space, plate N) N { return space.Sub(plate) }

// CamThrustPlateFor is the thrust plate that leaves an end float: space −
// end float.
func CamThrustPlateFor[N tolerance.Number[N]](space, endFloat N) N { return space.Sub(endFloat) }

// CamThrustSpaceFor is the space between the thrust faces in which a plate has
// an end float: the other inverse of [CamEndFloat].
func CamThrustSpaceFor[N tolerance.Number[N]](plate, endFloat N) N { return plate.Add(endFloat) }
