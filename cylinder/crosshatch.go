package cylinder

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// CrossHatchRadians is the included angle of a honed bore's cross-hatch in
// radians, as it opens to the side, about the way round the bore:
//
//	2·atan(axial speed/surface speed), axial = travel·strokes, surface = π·bore·spindle
//
// with the hone's spindle in turns per minute, its travel (the length of its
// stroke, which isn't the engine's) in the unit of the bore, and its strokes
// per minute, each one way: two to a cycle. One over the other only the ratio
// counts. It holds where the hone moves evenly; one stroked by a crank moves
// π/2 times as fast in the middle of its stroke as on average and not at all
// at its ends, so that the marks lie flatter towards the ends of the bore.
func CrossHatchRadians[R tolerance.Real[R]](bore, spindle, travel, strokes R) R {
	half := travel.Mul(strokes).Atan2(bore.Const(math.Pi).Mul(bore).Mul(spindle))
	return half.Mul(half.Const(2))
}

// HoneStrokes is the rate of strokes per minute, each one way, for the
// included angle in radians: π·bore·spindle·tan(angle/2)/travel. It undoes
// [CrossHatchRadians].
func HoneStrokes[R tolerance.Real[R]](angle, bore, spindle, travel R) R {
	return bore.Const(math.Pi).Mul(bore).Mul(spindle).Mul(tanHalf(angle)).Quo(travel)
}

// HoneSpindle is the spindle's turns per minute for the included angle in
// radians: travel·strokes/(π·bore·tan(angle/2)). It undoes
// [CrossHatchRadians].
func HoneSpindle[R tolerance.Real[R]](angle, bore, travel, strokes R) R {
	return travel.Mul(strokes).Quo(bore.Const(math.Pi).Mul(bore).Mul(tanHalf(angle)))
}

// HoneTravel is the travel of the hone for the included angle in radians. It
// undoes [CrossHatchRadians].
func HoneTravel[R tolerance.Real[R]](angle, bore, spindle, strokes R) R {
	return bore.Const(math.Pi).Mul(bore).Mul(spindle).Mul(tanHalf(angle)).Quo(strokes)
}

func tanHalf[R tolerance.Real[R]](angle R) R {
	half := angle.Quo(angle.Const(2))
	return half.Sin().Quo(half.Cos())
}

// A StrokeRate is how often a hone strokes, in strokes or in cycles, of which
// each has two strokes: out and back. Taken one for the other the angle is out
// by nearly a factor of two, so the rate says which.
type StrokeRate struct{ strokes float64 }

// StrokesPerMinute is a rate counted in strokes, each one way.
func StrokesPerMinute(n float64) StrokeRate { return StrokeRate{n} }

// CyclesPerMinute is a rate counted in cycles, out and back.
func CyclesPerMinute(n float64) StrokeRate { return StrokeRate{2 * n} }

// Strokes is the rate in strokes per minute, each one way.
func (r StrokeRate) Strokes() float64 { return r.strokes }

// Cycles is the rate in cycles per minute, out and back.
func (r StrokeRate) Cycles() float64 { return r.strokes / 2 }

// String is the rate both ways: "80 strokes (40 cycles) per minute".
func (r StrokeRate) String() string {
	f := func(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
	return f(r.Strokes()) + " strokes (" + f(r.Cycles()) + " cycles) per minute"
}

// A Hone is how a hone is set: to what bore, at what speed, and how it
// strokes.
type Hone struct {
	Bore       units.Length // diameter
	SpindleRPM float64      // turns per minute
	Travel     units.Length // of the hone, end to end: what it overruns counts, the length of its stones doesn't
	Rate       StrokeRate   // in strokes or in cycles
}

// CrossHatch is the angle that the setting cuts, to the nearest quantum of an
// angle. It fails with an [InputError] where a size, a speed or a rate is
// missing, below zero or not a number.
func (h Hone) CrossHatch() (CrossHatch, error) {
	if err := h.check(true, true, true); err != nil {
		return CrossHatch{}, err
	}
	a, err := units.AngleFromRadians(h.included())
	return CrossHatch{a}, err
}

// included is the included angle in radians, between 0 and π.
func (h Hone) included() float64 {
	return float64(CrossHatchRadians(inMM(h.Bore), tolerance.Float(h.SpindleRPM), inMM(h.Travel), tolerance.Float(h.Rate.strokes)))
}

// RateFor is the rate of strokes with which the setting cuts the angle. The
// setting's own rate isn't used. It fails as [Hone.CrossHatch] does, and with
// an InputError for an angle that isn't between 0° and 180°.
func (h Hone) RateFor(c CrossHatch) (StrokeRate, error) {
	if err := h.checkAngle(c, true, true, false); err != nil {
		return StrokeRate{}, err
	}
	return StrokeRate{float64(HoneStrokes(inRadians(c), inMM(h.Bore), tolerance.Float(h.SpindleRPM), inMM(h.Travel)))}, nil
}

// SpindleFor is the spindle's turns per minute with which the setting cuts the
// angle. The setting's own speed isn't used. Errors as for [Hone.RateFor].
func (h Hone) SpindleFor(c CrossHatch) (rpm float64, err error) {
	if err := h.checkAngle(c, false, true, true); err != nil {
		return 0, err
	}
	return float64(HoneSpindle(inRadians(c), inMM(h.Bore), inMM(h.Travel), tolerance.Float(h.Rate.strokes))), nil
}

// TravelFor is the travel with which the setting cuts the angle, to the
// nearest picometre as nearly as float64 can say it. The setting's own travel
// isn't used. Errors as for [Hone.RateFor].
func (h Hone) TravelFor(c CrossHatch) (units.Length, error) {
	if err := h.checkAngle(c, true, false, true); err != nil {
		return 0, err
	}
	l, err := units.Nearest(float64(HoneTravel(inRadians(c), inMM(h.Bore), tolerance.Float(h.SpindleRPM), tolerance.Float(h.Rate.strokes))), units.InMillimetres)
	if err != nil {
		return 0, &InputError{"cross-hatch", c.String(), "one that a travel within range can give"}
	}
	return l, nil
}

func (h Hone) check(spindle, travel, rate bool) error {
	sizes := func(field string, l units.Length) error { return aboveZero(field, tolerance.Exactly(l)) }
	if err := sizes("bore", h.Bore); err != nil {
		return err
	}
	if travel {
		if err := sizes("travel of the hone", h.Travel); err != nil {
			return err
		}
	}
	if spindle && !usableSpeed(h.SpindleRPM) {
		return &InputError{"spindle speed", strconv.FormatFloat(h.SpindleRPM, 'g', -1, 64) + " r/min", "above 0 and up to a million"}
	}
	if rate && !usableSpeed(h.Rate.strokes) {
		return &InputError{"stroke rate", h.Rate.String(), "above 0 and up to a million"}
	}
	return nil
}

func (h Hone) checkAngle(c CrossHatch, spindle, travel, rate bool) error {
	if c.included <= 0 || c.included >= units.Turn/2 {
		return &InputError{"cross-hatch", c.String(), "between 0° and 180°"}
	}
	return h.check(spindle, travel, rate)
}

// usableSpeed is a speed: not NaN, not infinite, and one that isn't a slip.
func usableSpeed(x float64) bool { return x > 0 && x <= 1e6 }

func inMM(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }

func inRadians(c CrossHatch) tolerance.Float { return tolerance.Float(c.included.Radians()) }
