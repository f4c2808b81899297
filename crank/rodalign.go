package crank

import "github.com/tenthou/tenthou/tolerance"

// RodLength is how much longer than the master a rod is, from two dials on its
// pin, right and left, both set to zero on the master and counting up for
// longer: half their sum. Below zero it is shorter.
func RodLength[N tolerance.Number[N]](right, left N) N { return right.Add(left).Scale(1, 2) }

// RodBend is how far a rod is bent over the span of the two dials: the larger
// reading less the smaller, signs included. Bend is the pin out of parallel with
// the big end in the plane of the rod; twist is out of that plane.
func RodBend[N tolerance.Number[N]](right, left N) N { return right.Sub(left).Abs() }

// RodReadings are the dials' readings on a rod so much longer than the master,
// bent by so much, right up. It undoes [RodLength] and [RodBend].
func RodReadings[N tolerance.Number[N]](length, bend N) (right, left N) {
	half := bend.Scale(1, 2)
	return length.Add(half), length.Sub(half)
}

// RodTurned tells a rod's bend from the fixture's by turning the rod end for end
// on its arbor: the dials' difference, right less left, before and after. The
// rod's own changes its sign, the fixture's doesn't: half the difference and
// half the sum.
func RodTurned[N tolerance.Number[N]](before, after N) (rod, fixture N) {
	return before.Sub(after).Scale(1, 2), before.Add(after).Scale(1, 2)
}

// RodTwist is how far a pin is turned out of the big end's plane, from what is
// read at its two ends: their difference.
func RodTwist[N tolerance.Number[N]](one, other N) N { return one.Sub(other).Abs() }

// RodPer is a bend or a twist carried from the span that it was read over to
// another: 100 mm, an inch, the length of a bearing. The span is that of the
// readings, between dials or between blocks, not the pin's length.
func RodPer[N tolerance.Number[N]](reading, span, per N) N { return reading.MulDiv(per, span) }

// RodAngle is the angle of a bend or a twist, in radians, by its reading over a
// span in the same unit.
func RodAngle[R tolerance.Real[R]](reading, span R) R { return reading.Atan2(span) }

// RodCentres is the distance between the centres of a rod's two eyes: the gap
// between their nearest walls, and half of each bore.
func RodCentres[N tolerance.Number[N]](gap, bigEnd, smallEnd N) N {
	return gap.Add(bigEnd.Add(smallEnd).Scale(1, 2))
}

// RodGap is the gap between the nearest walls. It undoes [RodCentres].
func RodGap[N tolerance.Number[N]](centres, bigEnd, smallEnd N) N {
	return centres.Sub(bigEnd.Add(smallEnd).Scale(1, 2))
}

// RodCentresOver is the distance between the centres from a reading over two
// mandrels in the eyes, outside to outside: less half of each.
func RodCentresOver[N tolerance.Number[N]](over, bigMandrel, smallMandrel N) N {
	return over.Sub(bigMandrel.Add(smallMandrel).Scale(1, 2))
}

// RodOver is the reading over the mandrels. It undoes [RodCentresOver].
func RodOver[N tolerance.Number[N]](centres, bigMandrel, smallMandrel N) N {
	return centres.Add(bigMandrel.Add(smallMandrel).Scale(1, 2))
}

// RodSideClearance is how far rods can move along their crankpin: its width
// between the webs, less the width of the rod, or of all rods that share it.
func RodSideClearance[N tolerance.Number[N]](crankpin, rod N, more ...N) N {
	for _, m := range more {
		rod = rod.Add(m)
	}
	return crankpin.Sub(rod)
}

// RodWidths is the width of the rods on a crankpin, together, for a side
// clearance. It undoes [RodSideClearance].
func RodWidths[N tolerance.Number[N]](crankpin, clearance N) N { return crankpin.Sub(clearance) }

// RodCapShift is how far a cap stands to one side of its rod, from the steps at
// the two parting lines, each counted as how far the cap stands out from the
// rod's wall on the outside of the bore: half the difference. A cap wider than
// its rod, by half the sum on each side, is a cap of another rod.
func RodCapShift[N tolerance.Number[N]](oneSide, otherSide N) N {
	return oneSide.Sub(otherSide).Scale(1, 2)
}

// RodCapShiftByBore is the same from two diameters of the big end, taken as far
// to one side of the parting line as to the other, with their angle from it in
// radians. Let the cap's centre be shifted by s toward one parting line: to first
// order, the diameter at the angle α from that line is D − s·cos α, and mirrored
// in the rod's axis D + s·cos α. So the shift is the mirrored one less it, over
// 2·cos α. Below zero the cap is shifted the other way. An oval that lies askew
// shows the same; the steps, or a smaller angle, tell.
func RodCapShiftByBore[R tolerance.Real[R]](diameter, mirrored, angle R) R {
	return mirrored.Sub(diameter).Quo(angle.Cos().Mul(angle.Const(2)))
}
