package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// RockingMouths is the dial's travel in a guide that has worn to a bell at its
// ends, from the clearances at the mouth near the dial and at the far one:
//
//	R = n + (h/L)·(n + f)
//
// The stem leans on the two mouths alone; how narrow the guide is between them
// doesn't matter until it stops the stem ([RockingStations] tells).
func RockingMouths[N tolerance.Number[N]](near, far, engaged, beyond N) N {
	return near.Add(near.Add(far).MulDiv(beyond, engaged))
}

// RockingMean is what [RockingClearance] makes of a bell-mouthed guide: the mean
// of the clearances at the mouths, weighted L + h for the near one and h for the
// far one. It lies between the two, so it bounds neither.
func RockingMean[N tolerance.Number[N]](near, far, engaged, beyond N) N {
	sum := engaged.Add(beyond)
	return near.Share(sum, beyond).Add(far.Share(beyond, sum))
}

// RockingNear is the clearance at the mouth near the dial, from the dial's
// travel and the clearance at the far one: (R·L − f·h)/(L + h).
func RockingNear[N tolerance.Number[N]](travel, far, engaged, beyond N) N {
	return travel.Share(engaged, beyond).Sub(far.Share(beyond, engaged))
}

// RockingFar is the clearance at the far mouth, from the dial's travel and the
// clearance at the near one: (R − n)·L/h − n. It asks for a dial that stands
// some way out: at h = 0 the far mouth doesn't show.
func RockingFar[N tolerance.Number[N]](travel, near, engaged, beyond N) N {
	return travel.Sub(near).MulDiv(engaged, beyond).Sub(near)
}

// RockingNearOfTwo is the clearance at the near mouth from the dial's travel at
// two places, h and farther out: R − (R₂ − R)·h/(h₂ − h). Two places tell the
// mouths apart where one can't.
func RockingNearOfTwo[N tolerance.Number[N]](travel, beyond, travel2, beyond2 N) N {
	return travel.Sub(travel2.Sub(travel).MulDiv(beyond, beyond2.Sub(beyond)))
}

// RockingFarOfTwo is the clearance at the far mouth from the dial's travel at
// two places: (R₂ − R)·(L + h)/(h₂ − h) − R.
func RockingFarOfTwo[N tolerance.Number[N]](travel, beyond, travel2, beyond2, engaged N) N {
	return travel2.Sub(travel).MulDiv(engaged.Add(beyond), beyond2.Sub(beyond)).Sub(travel)
}

// A RockingStation is the clearance at one place of a guide.
type RockingStation struct {
	Depth     units.Length      // from the guide's end nearest the dial, 0 or more
	Clearance tolerance.Bracket // on the diameter, 0 or more
}

// RockingStations is the dial's travel in a guide whose clearance is known at
// several depths, two at the least, the depths growing. It is the least, over
// all pairs of depths z < Z with clearances c and C, of
//
//	c + (c + C)·(h + z)/(Z − z)
//
// Why: the axis is a straight line that stays within half a clearance at each
// depth, and how far it reaches to one side beyond the guide is a linear
// programme of two unknowns. At its optimum two of the walls hold the stem, on
// opposite sides, and any pair of walls by itself gives a bound of that form; so
// the least of these bounds is reached. Two stations at the ends give
// [RockingMouths]; a waist between them that is narrow enough stops the stem
// first and shows as a smaller travel.
//
// The tilt's small breadth ([RockingShortfall]) is left out. It fails with an
// [InputError] where a clearance isn't bounded and 0 or more, where depths don't
// grow from 0 or more, or where h is below zero.
func RockingStations(beyond units.Length, stations ...RockingStation) (tolerance.Bracket, error) {
	if err := inputAllowance("dial beyond the guide", beyond); err != nil {
		return tolerance.Bracket{}, err
	}
	if len(stations) < 2 {
		return tolerance.Bracket{}, &InputError{"stations of the guide", fmt.Sprint(len(stations)), "two or more"}
	}
	for i, s := range stations {
		field := fmt.Sprint("station ", i+1)
		if err := inputAllowance(field+", depth", s.Depth); err != nil {
			return tolerance.Bracket{}, err
		}
		if i > 0 && s.Depth <= stations[i-1].Depth {
			return tolerance.Bracket{}, &InputError{field + ", depth", s.Depth.String(), "deeper than the one before, " + stations[i-1].Depth.String()}
		}
		if err := inputBracket(field+", clearance", s.Clearance, 0); err != nil {
			return tolerance.Bracket{}, err
		}
	}
	var travel tolerance.Bracket
	for i, near := range stations {
		for _, far := range stations[i+1:] {
			t := near.Clearance.Add(near.Clearance.Add(far.Clearance).
				Scale(int64(beyond+near.Depth), int64(far.Depth-near.Depth)))
			if travel.IsZero() {
				travel = t
			} else {
				travel = travel.Min(t)
			}
		}
	}
	return travel, nil
}
