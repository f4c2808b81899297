package piston

import "github.com/tenthou/tenthou/tolerance"

// KeystoneClearance is the axial clearance of a keystone ring in its groove:
//
//	width + (face − 2·inset − gaugeDiameter)·tan β − ringWidth
//
// width is the groove's at its gauge diameter; ringWidth the ring's, taken at
// the distance inset, in the radial direction, from its face; face is the
// diameter at which the face stands: the land's for a ring held flush, the
// bore's for one at work. A keystone ring has no side clearance of its own: it
// gains clearance as it moves out and loses it as it moves in, by which it
// keeps its groove free of carbon. Lengths in one unit, half the included angle
// in radians.
func KeystoneClearance[R tolerance.Real[R]](width, gaugeDiameter, ringWidth, inset, face, halfAngle R) R {
	out := face.Sub(inset.Mul(inset.Const(2))).Sub(gaugeDiameter)
	return width.Add(out.Mul(tangent(halfAngle))).Sub(ringWidth)
}

// KeystoneRingWidth is the width at its gauge place of the ring that would
// have an axial clearance in a groove. It undoes [KeystoneClearance].
func KeystoneRingWidth[R tolerance.Real[R]](clearance, width, gaugeDiameter, inset, face, halfAngle R) R {
	out := face.Sub(inset.Mul(inset.Const(2))).Sub(gaugeDiameter)
	return width.Add(out.Mul(tangent(halfAngle))).Sub(clearance)
}

// KeystoneRunning is the axial clearance of a ring at work, its face on the
// bore, from that with its face held flush with the land:
// flush + (bore − land)·tan β, diameters both.
func KeystoneRunning[R tolerance.Real[R]](flush, bore, land, halfAngle R) R {
	return flush.Add(bore.Sub(land).Mul(tangent(halfAngle)))
}

// KeystoneFlush is the axial clearance with the ring held flush with the land,
// from that at work. It undoes [KeystoneRunning].
func KeystoneFlush[R tolerance.Real[R]](running, bore, land, halfAngle R) R {
	return running.Sub(bore.Sub(land).Mul(tangent(halfAngle)))
}

// KeystoneNormal is a clearance taken square to the flanks, as a blade between
// ring and groove takes it, from the axial one: axial·cos β.
func KeystoneNormal[R tolerance.Real[R]](axial, halfAngle R) R { return axial.Mul(halfAngle.Cos()) }

// KeystoneAxial is the axial clearance from the one that a blade takes, square
// to the flanks: normal/cos β. It undoes [KeystoneNormal].
func KeystoneAxial[R tolerance.Real[R]](normal, halfAngle R) R { return normal.Quo(halfAngle.Cos()) }

// KeystoneSink is how far a ring's face can be pushed below the land, in the
// radial direction, until its flanks jam, from its axial clearance held flush:
// flush/(2·tan β), where the groove is deep enough. Below zero it stands proud
// of the land by as much when it jams.
func KeystoneSink[R tolerance.Real[R]](flush, halfAngle R) R {
	return flush.Quo(tangent(halfAngle).Mul(flush.Const(2)))
}

// KeystoneClearanceBySink is the axial clearance held flush, from how far the
// ring's face can be pushed below the land: 2·sink·tan β. It undoes
// [KeystoneSink], and needs but a depth gauge.
func KeystoneClearanceBySink[R tolerance.Real[R]](sink, halfAngle R) R {
	return sink.Mul(sink.Const(2)).Mul(tangent(halfAngle))
}
