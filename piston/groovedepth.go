package piston

import "github.com/tenthou/tenthou/tolerance"

// GrooveDepth is the radial depth of a ring groove below the land, from the
// diameters of land and root: (land − root)/2. Halving an odd number of quanta
// rounds by half of one.
func GrooveDepth[N tolerance.Number[N]](land, root N) N {
	return land.Sub(root).Scale(1, 2)
}

// GrooveRoot is the diameter of a groove's root for a radial depth below the
// land. It undoes [GrooveDepth] to a quantum.
func GrooveRoot[N tolerance.Number[N]](land, depth N) N {
	return land.Sub(depth.Scale(2, 1))
}

// RingBackClearance is the radial room behind a ring whose face stands flush
// with the land: groove depth less the ring's radial thickness. It is the
// least that the ring can have, where the land touches the bore. Below zero it
// is an interference: the ring stands proud of the land when pushed home, and
// the piston doesn't go into a bore that fits it.
func RingBackClearance[N tolerance.Number[N]](depth, thickness N) N {
	return depth.Sub(thickness)
}

// RingThicknessFor is the radial thickness of a ring that leaves a back
// clearance in a groove. It undoes [RingBackClearance].
func RingThicknessFor[N tolerance.Number[N]](depth, clearance N) N {
	return depth.Sub(clearance)
}

// RingBackRunning is the radial room behind a ring at work, its face on the
// bore and the piston in the middle of it: (bore − root)/2 − thickness. It
// exceeds the one held flush by the land's clearance to one side. Rounds by
// half a quantum where bore − root is odd.
func RingBackRunning[N tolerance.Number[N]](bore, root, thickness N) N {
	return GrooveDepth(bore, root).Sub(thickness)
}

// MeasureRingBack is [RingBackClearance] from readings, checked: depth and
// thickness must be above zero. Where nothing but interference is left it fails
// with an [InputError] that says so: the ring is too thick for the groove, or
// carbon fills its root.
func MeasureRingBack(depth, thickness tolerance.Bracket) (tolerance.Bracket, error) {
	if err := size("groove depth", depth); err != nil {
		return tolerance.Bracket{}, err
	}
	if err := size("ring thickness", thickness); err != nil {
		return tolerance.Bracket{}, err
	}
	c := RingBackClearance(depth, thickness)
	if hi, end := c.Upper(); end != tolerance.Absent && hi < 0 {
		return tolerance.Bracket{}, &InputError{"back clearance", c.String(), "0 mm or more: an interference, the ring stands proud of its land; clean the root, or it is the wrong ring"}
	}
	return c, nil
}

// AssessRingBack judges the back clearance at one or more places round the
// piston, depth[i] and thickness[i] being of one place. It fails with an
// [InputError] where they don't come in pairs or can't be, and as
// [tolerance.Assess] does. A clearance that may be below zero is told by the
// finding's least.
func AssessRingBack(where string, limits tolerance.Spec, depth, thickness []tolerance.Bracket) (tolerance.Finding, error) {
	if len(depth) != len(thickness) {
		return tolerance.Finding{}, &InputError{"back clearance", clip([]byte(where)), "measured with groove depth and ring thickness at every place alike"}
	}
	rooms := make([]tolerance.Bracket, len(depth))
	for i := range depth {
		var err error
		if rooms[i], err = MeasureRingBack(depth[i], thickness[i]); err != nil {
			return tolerance.Finding{}, err
		}
	}
	return tolerance.Assess("ring back clearance", where, limits, rooms...)
}
