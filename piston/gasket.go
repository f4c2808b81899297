package piston

import "github.com/tenthou/tenthou/tolerance"

// GasketClearance is the clearance between a crown and the head's face at top
// dead centre: the head gasket's compressed thickness less the piston's
// protrusion above the block face. A piston that stops below the face has a
// protrusion below zero. A result of zero or less is contact.
//
// It is the cold clearance of parts at rest. At speed the rod stretches, the
// bearings' clearances are taken up and the piston rocks, so that some of it
// is used: that is what the maker's least clearance is for. Valves and the
// head's shape are not in it.
func GasketClearance[N tolerance.Number[N]](thickness, protrusion N) N {
	return thickness.Sub(protrusion)
}

// GasketThicknessFor is the compressed thickness with which a piston of such
// a protrusion has the wanted clearance. It undoes [GasketClearance] exactly.
func GasketThicknessFor[N tolerance.Number[N]](clearance, protrusion N) N {
	return clearance.Add(protrusion)
}

// GasketProtrusionFor is the protrusion that leaves the wanted clearance under
// a gasket. It undoes [GasketClearance] exactly.
func GasketProtrusionFor[N tolerance.Number[N]](clearance, thickness N) N {
	return thickness.Sub(clearance)
}
