package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// TimingDuration is how long a valve is open, in degrees of the crankshaft, from
// its two events: near + half a turn + far.
//
// Near is the event at top dead centre (an inlet valve opens before it, an
// exhaust valve closes after it) and far the one at bottom dead centre (an inlet
// valve closes after it, an exhaust valve opens before it). Both are above zero
// on that side. On the other side they are below zero, and that is legal: a
// valve that opens 10° after top dead centre has a near of −10°. Left positive,
// the duration is off by twice as much. Half is 180°, lifted into the reading by
// its Exactly.
func TimingDuration[N tolerance.Number[N]](near, far, half N) N { return near.Add(half).Add(far) }

// TimingCentre is where the middle of the opening stands: after top dead centre
// for an inlet valve, before it for an exhaust valve, in degrees of the
// crankshaft: (180° + far − near)/2, as in [TimingDuration].
//
// It is the mid-open angle, halfway between the events at the stated lift. Only
// on a symmetric lobe is it where the valve is at its greatest lift.
func TimingCentre[N tolerance.Number[N]](near, far, half N) N {
	return half.Add(far).Sub(near).Scale(1, 2)
}

// TimingNear is the event at top dead centre of a duration and a centre:
// duration/2 − centre. With [TimingFar] it undoes [TimingDuration] and
// [TimingCentre].
func TimingNear[N tolerance.Number[N]](duration, centre N) N { return duration.Scale(1, 2).Sub(centre) }

// TimingFar is the event at bottom dead centre of a duration and a centre:
// duration/2 + centre − 180°.
func TimingFar[N tolerance.Number[N]](duration, centre, half N) N {
	return duration.Scale(1, 2).Add(centre).Sub(half)
}

// TimingOverlap is how long both valves are open about top dead centre: the
// inlet's near event and the exhaust's together. Below zero both are shut for so
// long.
func TimingOverlap[N tolerance.Number[N]](inletNear, exhaustNear N) N {
	return inletNear.Add(exhaustNear)
}

// LobeSeparation is the angle between the two lobes' middles, in degrees of the
// camshaft: (inlet centre + exhaust centre)/2. The centres are in degrees of the
// crankshaft, which turns twice as far.
func LobeSeparation[N tolerance.Number[N]](inletCentre, exhaustCentre N) N {
	return inletCentre.Add(exhaustCentre).Scale(1, 2)
}

// TimingAdvance is how far a camshaft with both lobes stands ahead of where the
// two centres would be alike, in degrees of the crankshaft: (exhaust centre −
// inlet centre)/2. Below zero it is retarded.
func TimingAdvance[N tolerance.Number[N]](inletCentre, exhaustCentre N) N {
	return exhaustCentre.Sub(inletCentre).Scale(1, 2)
}

// InletCentreFor is the inlet's centre of a separation and an advance:
// separation − advance. With [ExhaustCentreFor] it undoes [LobeSeparation] and
// [TimingAdvance].
func InletCentreFor[N tolerance.Number[N]](separation, advance N) N { return separation.Sub(advance) }

// ExhaustCentreFor is the exhaust's centre of a separation and an advance:
// separation + advance.
func ExhaustCentreFor[N tolerance.Number[N]](separation, advance N) N { return separation.Add(advance) }

// CrankDegrees are the degrees that the crankshaft turns while the camshaft
// turns so many: twice as many, in a four-stroke engine.
func CrankDegrees[N tolerance.Number[N]](cam N) N { return cam.Scale(2, 1) }

// CamDegrees are the degrees that the camshaft turns while the crankshaft turns
// so many: half as many, in a four-stroke engine.
func CamDegrees[N tolerance.Number[N]](crank N) N { return crank.Scale(1, 2) }

// BladeLift is the lift, at the valve, that a check with a thin blade is made
// at: a clearance that is opened wide on purpose less the blade. The blade
// tightens when the valve side has taken up that much, before the valve opens.
func BladeLift[N tolerance.Number[N]](clearance, blade N) N { return clearance.Sub(blade) }
