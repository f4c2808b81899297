package crank

import "github.com/tenthou/tenthou/tolerance"

// CleanSize is the greatest size that a worn journal can be ground to about its
// original axis:
//
//	finished − 2·wear − 2·stock
//
// finished is the diameter that it was last ground to, wear the greatest wear of
// any side, from the original axis and so on the radius; stock is the least to be
// ground off every side.
//
// The ground surface must lie within the worn one by stock at least everywhere,
// so the ground radius is finished/2 − wear − stock at the most. A crankpin wears
// on one side, so on its original throw it loses twice what its diameters show.
func CleanSize[N tolerance.Number[N]](finished, wear, stock N) N {
	return finished.Sub(wear.Add(stock).Scale(2, 1))
}

// WearCleaned is the greatest wear of a side, on the radius, that grinding to a
// size still cleans up: the inverse of [CleanSize].
func WearCleaned[N tolerance.Number[N]](finished, size, stock N) N {
	return finished.Sub(size).Scale(1, 2).Sub(stock)
}

// CleanSizeMoved is the greatest size that a journal worn on two opposite sides
// can be ground to with its centre moved to the middle between them:
//
//	finished − wear1 − wear2 − 2·stock
//
// It is more than that of [CleanSize] by the difference of the two. What the
// centre moves by, [CentreShift] gives; on a crankpin that changes the stroke
// ([StrokeAfterShift]), and on a main the line of the shaft, so the engine maker's
// manual has a say.
//
// The worn sides lie at −(finished/2 − wear2) and finished/2 − wear1, so the
// greatest circle between them has finished − wear1 − wear2 for a diameter, its
// centre in their middle.
func CleanSizeMoved[N tolerance.Number[N]](finished, wear1, wear2, stock N) N {
	return finished.Sub(wear1).Sub(wear2).Sub(stock.Scale(2, 1))
}

// CentreShift is how far the centre moves from the original axis, away from the
// side worn by wear1 and toward the one opposite: (wear1 − wear2)/2.
func CentreShift[N tolerance.Number[N]](wear1, wear2 N) N { return wear1.Sub(wear2).Scale(1, 2) }

// StrokeAfterShift is the stroke once a crankpin's centre was moved outward, away
// from the axis of the mains, by shift (inward: below zero): stroke + 2·shift.
func StrokeAfterShift[N tolerance.Number[N]](stroke, shift N) N { return stroke.Add(shift.Scale(2, 1)) }

// ShiftOfStroke is how far outward a crankpin's centre was moved where a stroke
// became another: the inverse of [StrokeAfterShift].
func ShiftOfStroke[N tolerance.Number[N]](before, after N) N { return after.Sub(before).Scale(1, 2) }

// CleanSizeBent is the size that a main journal can be ground to at the least,
// where a bend remains after straightening:
//
//	least diameter − run-out − 2·stock
//
// runout is the whole reading of the dial (TIR) over a turn between the centres
// that it is ground on. It holds for a journal of any shape: where the surface is
// nearest to the axis, at r, the diameter is r + r′ and not below the least, and
// r′ is not above r + runout, so 2r ≥ least − runout. Where the journal is round
// it is exactly that; out-of-round, [CleanSizeBentMost] says what it may be at the
// most.
func CleanSizeBent[N tolerance.Number[N]](least, runout, stock N) N {
	return least.Sub(runout).Sub(stock.Scale(2, 1))
}

// CleanSizeBentMost is the size that a main journal can be ground to at the most,
// where a bend remains, from its least and greatest diameter and the whole reading
// of the dial: the lesser of least and greatest − runout, less 2·stock.
//
// Both radii of the least diameter are r at least, so 2r ≤ least; and the greatest
// radius, r + runout, is a diameter less a radius of at least r, so 2r ≤ greatest
// − runout. For an oval journal that is bent by nothing, whose dial reads half of
// its out-of-round, that is the whole of its least diameter.
func CleanSizeBentMost[N tolerance.Number[N]](least, greatest, runout, stock N) N {
	return least.Min(greatest.Sub(runout)).Sub(stock.Scale(2, 1))
}

// RunOutCleaned is the greatest run-out, the whole reading of the dial, that
// grinding to a size takes off a round journal: the inverse of [CleanSizeBent].
func RunOutCleaned[N tolerance.Number[N]](least, size, stock N) N {
	return least.Sub(size).Sub(stock.Scale(2, 1))
}

// CleanSizeByDiameters bounds the clean size from diameters alone, which don't
// tell which side is worn: least is what it is at the least, finished − 2e −
// 2·stock, and greatest what it is at the most, with e once, where e = finished −
// diameter is what the least diameter lost.
//
// Of the two sides' wear, neither of which is below zero, none is more than
// their sum e, which gives the least on the original axis; no circle between the
// two sides is wider than the diameter, which gives the most.
func CleanSizeByDiameters[N tolerance.Number[N]](finished, diameter, stock N) (least, greatest N) {
	greatest = diameter.Sub(stock.Scale(2, 1))
	return greatest.Sub(finished.Sub(diameter)), greatest
}

// CaseLeft is how deep the hardened case still is once a journal is ground from
// one size to another about its original axis: case − (finished − size)/2. Where
// the centre was moved by so much, subtract that too: on one side so much more
// goes.
func CaseLeft[N tolerance.Number[N]](hardened, finished, size N) N {
	return hardened.Sub(finished.Sub(size).Scale(1, 2))
}

// SizeForCase is the least size that leaves so much of the hardened case: the
// inverse of [CaseLeft].
func SizeForCase[N tolerance.Number[N]](hardened, left, finished N) N {
	return finished.Sub(hardened.Sub(left).Scale(2, 1))
}

// UndersizeOf is the nominal size of a journal for a shell's undersize: the
// standard size less it. The band printed for the shell is the better one.
func UndersizeOf[N tolerance.Number[N]](standard, undersize N) N { return standard.Sub(undersize) }

// UndersizeWall is the wall of a shell for an undersize journal: the standard wall
// and half the undersize, since there are two walls to a diameter.
func UndersizeWall[N tolerance.Number[N]](standard, undersize N) N {
	return standard.Add(undersize.Scale(1, 2))
}

// UndersizeByWall is the undersize of a shell by its wall: twice what it is
// thicker than the standard one, the inverse of [UndersizeWall].
func UndersizeByWall[N tolerance.Number[N]](standard, wall N) N {
	return wall.Sub(standard).Scale(2, 1)
}
