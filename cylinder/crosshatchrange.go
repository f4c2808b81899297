package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A HoneRange is a hone's setting as far as it is known: the rate of a hone
// that is stroked by hand, or a spindle whose speed drops under load. Each pair
// is the least and the greatest.
type HoneRange struct {
	Bore       tolerance.Bracket // diameter
	Travel     tolerance.Bracket // of the hone, end to end
	SpindleRPM [2]float64        // turns per minute
	Rate       [2]StrokeRate     // in strokes or in cycles
}

// Included holds the included angle of every setting in the range, rounded
// outward: it grows with travel and rate, and falls with bore and spindle
// speed. It fails with an [InputError] as [Hone.CrossHatch] does, and where a
// pair is the wrong way round.
func (h HoneRange) Included() (tolerance.Interval[units.Angle], error) {
	var none tolerance.Interval[units.Angle]
	if err := aboveZero("bore", h.Bore); err != nil {
		return none, err
	}
	if err := aboveZero("travel of the hone", h.Travel); err != nil {
		return none, err
	}
	bore, _ := bothEnds(h.Bore)
	travel, _ := bothEnds(h.Travel)
	flattest := Hone{Bore: bore.hi, SpindleRPM: h.SpindleRPM[1], Travel: travel.lo, Rate: h.Rate[0]}
	steepest := Hone{Bore: bore.lo, SpindleRPM: h.SpindleRPM[0], Travel: travel.hi, Rate: h.Rate[1]}
	for _, s := range []Hone{flattest, steepest} {
		if err := s.check(true, true, true); err != nil {
			return none, err
		}
	}
	if h.SpindleRPM[0] > h.SpindleRPM[1] {
		return none, &InputError{"spindle speed", "from a greater to a lesser", "from the least to the greatest"}
	}
	if h.Rate[0].strokes > h.Rate[1].strokes {
		return none, &InputError{"stroke rate", "from a greater to a lesser", "from the least to the greatest"}
	}
	return spanOf(
		angleOutward(flattest.included(), units.Down), tolerance.Closed,
		angleOutward(steepest.included(), units.Up), tolerance.Closed), nil
}
