package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A MassBracket is what weighing knows of a mass: the reading and the scale's
// error.
type MassBracket = tolerance.Interval[units.Mass]

// MassSpread is the greatest less the least of a set of parts: what a manual's
// limit on a set is of. Of one part alone it is zero.
func MassSpread[N tolerance.Number[N]](mass N, more ...N) N {
	return mass.Spread(more...)
}

// MassToRemove is what to take from a part to bring it to a target: mass −
// target. Below zero the part is lighter than the target, and nothing taken
// from it helps: the lightest part of a set is the target for that reason.
func MassToRemove[N tolerance.Number[N]](mass, target N) N {
	return mass.Sub(target)
}

// MassAfter is a part's mass with so much taken off. It undoes [MassToRemove].
func MassAfter[N tolerance.Number[N]](mass, removed N) N {
	return mass.Sub(removed)
}

// MassTotal is the mass of an assembly: piston, pin, clips, rings, and the
// rod's small end where what goes up and down is wanted.
func MassTotal[N tolerance.Number[N]](part N, more ...N) N {
	for _, m := range more {
		part = part.Add(m)
	}
	return part
}

// MassOfPart is what one part of an assembly weighs, from the whole and the
// others. It undoes [MassTotal].
func MassOfPart[N tolerance.Number[N]](total N, others ...N) N {
	for _, m := range others {
		total = total.Sub(m)
	}
	return total
}

// massAboveZero refuses a part's mass that isn't above zero, or has one end
// only.
func massAboveZero(kind, where string, m MassBracket) error {
	lo, loEnd := m.Lower()
	_, hiEnd := m.Upper()
	want := ""
	switch {
	case !m.InRange():
		want = "within the range of a mass"
	case loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
		want = "a reading with both ends"
	case lo <= 0 && (lo < 0 || loEnd == tolerance.Closed):
		want = "above 0 g"
	default:
		return nil
	}
	return &InputError{"mass of " + kind + " " + clipped(where), m.String(), want}
}
