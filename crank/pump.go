package crank

import "github.com/tenthou/tenthou/tolerance"

// PumpRadial is the clearance of a gear's tooth tips, or of an outer rotor, in
// its pocket, with the gear in the middle: half of what the pocket is larger.
// A blade in at one side reads from nothing to twice as much, since the gear
// leans: see [PumpRadialBySides].
func PumpRadial[N tolerance.Number[N]](pocket, gear N) N { return pocket.Sub(gear).Scale(1, 2) }

// PumpPocket is the diameter of a pocket with a radial clearance. It undoes
// [PumpRadial].
func PumpPocket[N tolerance.Number[N]](radial, gear N) N { return gear.Add(radial.Scale(2, 1)) }

// PumpGear is the diameter of the gear or rotor with a radial clearance in a
// pocket. It undoes [PumpRadial].
func PumpGear[N tolerance.Number[N]](pocket, radial N) N { return pocket.Sub(radial.Scale(2, 1)) }

// PumpRadialBySides is the radial clearance with the gear in the middle, from
// what blades read on opposite sides: their mean, in which the gear's leaning
// cancels. A blade of the same thickness on either side centres the gear, and
// reads it at once (TM 5-6115-400-35).
func PumpRadialBySides[N tolerance.Number[N]](one, opposite N) N {
	return one.Add(opposite).Scale(1, 2)
}

// PumpRecess is how far gears or rotors lie below the face of the body: the
// pocket's depth less their width. Below zero they stand proud. A straight-edge
// across the body and blades on the gears read it; where they stand proud, the
// blade goes between straight-edge and body.
func PumpRecess[N tolerance.Number[N]](depth, width N) N { return depth.Sub(width) }

// PumpDepth is the pocket's depth with a recess. It undoes [PumpRecess].
func PumpDepth[N tolerance.Number[N]](recess, width N) N { return recess.Add(width) }

// PumpWidth is the width of the gear or rotor with a recess. It undoes
// [PumpRecess].
func PumpWidth[N tolerance.Number[N]](depth, recess N) N { return depth.Sub(recess) }

// PumpEnd is the end clearance (side clearance) with the cover on: the recess
// below the body's face, the compressed gasket, and the depth that the gears
// have worn into the cover.
func PumpEnd[N tolerance.Number[N]](recess, gasket, coverWear N) N {
	return recess.Add(gasket).Add(coverWear)
}

// PumpGasket is the compressed thickness of the gasket with which the end
// clearance is a wanted one; below zero none is thin enough. It undoes
// [PumpEnd].
func PumpGasket[N tolerance.Number[N]](end, recess, coverWear N) N {
	return end.Sub(recess).Sub(coverWear)
}

// PumpFaceCut is what to take off the body's face to bring an end clearance
// down to a wanted one; below zero the clearance is too small as it is. Where
// the manual doesn't allow it the pump is renewed.
func PumpFaceCut[N tolerance.Number[N]](end, wanted N) N { return end.Sub(wanted) }

// PumpEndWithGears is the end clearance with other gears in the same body:
// clearance + used width − new width.
func PumpEndWithGears[N tolerance.Number[N]](end, usedWidth, newWidth N) N {
	return end.Add(usedWidth).Sub(newWidth)
}

// PumpFit is the clearance of the pump's shaft in its bush, or of the relief
// valve's plunger in its bore: hole less shaft.
func PumpFit[N tolerance.Number[N]](hole, shaft N) N { return tolerance.Clearance(hole, shaft) }
