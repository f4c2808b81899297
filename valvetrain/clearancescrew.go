package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// clearanceLargest is more than any valve clearance, and keeps products in range.
const clearanceLargest = 10 * units.Millimetre

// ScrewChange is how much clearance an adjusting screw takes up: pitch × turns ×
// ratio. The ratio is how far the place of the blade moves for each unit at the
// screw, above 0: with the screw over the pushrod and the blade at the valve it
// is the rocker ratio, with both at the valve 1, for a nut that carries the
// pivot [PivotRatio]. Turns outward are below zero.
func ScrewChange[N tolerance.Number[N]](pitch N, turns, ratio tolerance.Ratio) N {
	if !turns.Valid() {
		turns = tolerance.Ratio{Num: 1}
	}
	return pitch.Scale(turns.Num, turns.Den).Scale(clearanceTimes(ratio))
}

// ClearanceAfterScrew is the clearance once the screw has been turned inward by
// so many turns: measured − pitch × turns × ratio.
func ClearanceAfterScrew[N tolerance.Number[N]](measured, pitch N, turns, ratio tolerance.Ratio) N {
	return measured.Sub(ScrewChange(pitch, turns, ratio))
}

// ScrewTurns is how many turns change a clearance by so much: change/(pitch ×
// ratio), lengths in one unit. The inverse of [ScrewChange].
func ScrewTurns[R tolerance.Real[R]](change, pitch, ratio R) R {
	return change.Quo(pitch.Mul(ratio))
}

// ScrewPitch is the pitch of a screw of so many threads to the inch: 1 in over
// them, to the nearest picometre; 0 where there are none or more than 1000.
func ScrewPitch(threadsPerInch int) units.Length {
	if threadsPerInch < 1 || threadsPerInch > 1000 {
		return 0
	}
	return units.Inch.Scale(1, int64(threadsPerInch))
}

// ScrewAngle is the angle of turn for a change of clearance, rounded outward to
// the microarcsecond: 360° × change/(pitch × ratio). It fails with an
// [InputError] where the change has no end, or pitch or ratio can't be.
func ScrewAngle(change tolerance.Bracket, pitch units.Length, ratio tolerance.Ratio) (tolerance.Interval[units.Angle], error) {
	if err := screwThread(pitch, ratio); err != nil {
		return tolerance.Interval[units.Angle]{}, err
	}
	if err := inputBracket("change of clearance", change, -clearanceLargest); err != nil {
		return tolerance.Interval[units.Angle]{}, err
	}
	lo, loEnd := change.Lower()
	hi, hiEnd := change.Upper()
	if hi > clearanceLargest {
		return tolerance.Interval[units.Angle]{}, &InputError{"change of clearance", change.String(), "at most 10 mm"}
	}
	a, err := tolerance.NewInterval(screwAngle(lo, pitch, ratio, units.Down), loEnd, screwAngle(hi, pitch, ratio, units.Up), hiEnd)
	if err != nil {
		return tolerance.Interval[units.Angle]{}, &InputError{"change of clearance", change.String(), "small enough for the thread's pitch"}
	}
	return a, nil
}

// screwAngle is one end of it; both products stay below 2^57.
func screwAngle(change, pitch units.Length, ratio tolerance.Ratio, r units.Rounding) units.Angle {
	return units.MulDivRound(units.Turn, change.Scale(ratio.Den, 1), pitch.Scale(ratio.Num, 1), r)
}

func screwThread(pitch units.Length, ratio tolerance.Ratio) error {
	if pitch < units.Micrometre || pitch > clearanceLargest {
		return &InputError{"pitch of the screw", pitch.String(), "from 1 µm to 10 mm"}
	}
	return clearanceRatio("ratio of blade to screw", ratio)
}

// A ScrewSetting is a valve whose clearance is set by a screw.
type ScrewSetting struct {
	Where    string            // "exhaust 3"
	Measured tolerance.Bracket // clearance, with both ends; by blades
	Wanted   tolerance.Band    // clearance by the manual, both ends
	Pitch    units.Length      // of the screw's thread
	// Ratio is how far the place of the blade moves for each unit at the screw;
	// zero for 1. See [ScrewChange].
	Ratio tolerance.Ratio
	Set   feeler.Set // blades at hand; may be empty
}

// A ScrewPlan is how far to turn an adjusting screw.
type ScrewPlan struct {
	// Turn is every angle of turn that brings the whole bracket of the clearance
	// into the band; above zero is inward, which closes the clearance. Zero where
	// there is none.
	Turn  tolerance.Interval[units.Angle] `json:"turn"`
	Aim   units.Angle                     `json:"aim"`   // the middle of Turn, or what brings the middle of the bracket to that of the band
	After tolerance.Bracket               `json:"after"` // the clearance after Aim
	Ok    bool                            `json:"ok"`    // whether the whole of After is in the band
	Proof ClearanceProof                  `json:"proof"` // which blades prove it
	Next  string                          `json:"next"`  // what to do
}

// Plan works out how far to turn the screw. It starts a setting; blades end it:
// the lock nut shifts the screw, and its slack is not in the pitch. It fails with
// an [InputError] where a reading or a size can't be.
func (s ScrewSetting) Plan() (ScrewPlan, error) {
	ratio := ratioOrOne(s.Ratio)
	err := firstError(
		func() error { return inputBracket("measured clearance", s.Measured, -clearanceLargest) },
		func() error { return clearanceBand(s.Wanted) },
		func() error { return screwThread(s.Pitch, ratio) },
	)
	if err != nil {
		return ScrewPlan{}, err
	}
	lo, hi := inputEnds(s.Measured)
	if hi > clearanceLargest {
		return ScrewPlan{}, &InputError{"measured clearance", s.Measured.String(), "at most 10 mm"}
	}
	var p ScrewPlan
	least, _ := s.Wanted.Lower()
	most, _ := s.Wanted.Upper()
	// The bracket's greatest comes down to the band's, its least no farther.
	from, to := screwAngle(hi-most, s.Pitch, ratio, units.Up), screwAngle(lo-least, s.Pitch, ratio, units.Down)
	if turn, err := tolerance.NewInterval(from, screwEnd(s.Measured.Upper, s.Wanted.Upper), to, screwEnd(s.Measured.Lower, s.Wanted.Lower)); err == nil {
		p.Turn = turn
	}
	sum := (lo + hi) - (least + most)
	p.Aim = screwAngle(sum, 2*s.Pitch, ratio, units.NearestEven)
	move := units.MulDivRound(s.Pitch, p.Aim, units.Turn, units.NearestEven).Scale(ratio.Num, ratio.Den)
	p.After = s.Measured.Sub(tolerance.Exactly(move))
	p.Ok = s.Wanted.Judge(p.After) == tolerance.Within
	p.Proof = ProveClearance(s.Wanted, s.Set)
	p.Next = "turn, hold the screw while the lock nut is tightened, then prove the clearance with blades: " + p.Proof.Next
	if !p.Ok {
		p.Next = "the bracket is wider than the band can take: turn by the aim, then set by blades: " + p.Proof.Next
	}
	return p, nil
}

// screwEnd is whether a reading may come to lie on the limit itself: where the
// band takes the limit in, or the reading doesn't reach its own end.
func screwEnd(reading, limit func() (units.Length, tolerance.End)) tolerance.End {
	_, of := reading()
	if _, at := limit(); at == tolerance.Closed || of == tolerance.Open {
		return tolerance.Closed
	}
	return tolerance.Open
}
