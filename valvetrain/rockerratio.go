package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// RockerRatio is the ratio of a rocker from two lifts: what its valve side
// travels over what its cam side travels in the meantime. Both are dialled, in
// one unit, without clearance: a valve lift that was read with clearance is less
// by it ([RockerRatioThroughClearance]).
//
// It is a mean over the travel: as the arms swing, the ratio changes by some
// per cent, so that one from small lifts needn't be the one at full lift. With
// both lifts read to 0.01 mm at 8 mm it is known to about 0.2 per cent.
func RockerRatio[R tolerance.Real[R]](valve, cam R) R { return valve.Quo(cam) }

// RockerRatioThroughClearance is the ratio where the valve's lift was read with
// the clearance set: (lift + clearance) ÷ lobe lift.
func RockerRatioThroughClearance[R tolerance.Real[R]](lift, clearance, cam R) R {
	return lift.Add(clearance).Quo(cam)
}

// RockerValveTravel is what the valve side travels through a ratio: the inverse
// of [RockerRatio].
func RockerValveTravel[R tolerance.Real[R]](ratio, cam R) R { return ratio.Mul(cam) }

// RockerCamTravel is what the cam side travels for a travel at the valve: the
// other inverse of [RockerRatio].
func RockerCamTravel[R tolerance.Real[R]](ratio, valve R) R { return valve.Quo(ratio) }

// RockerRatioOf is [RockerRatio] as an exact fraction. It fails with an
// [InputError] where a travel isn't above 0 mm and at most 10 m.
func RockerRatioOf(valve, cam units.Length) (tolerance.Ratio, error) {
	if err := firstError(func() error { return inputSize("travel at the valve", valve) }, func() error { return inputSize("travel at the cam", cam) }); err != nil {
		return tolerance.Ratio{}, err
	}
	r, err := tolerance.NewRatio(int64(valve), int64(cam))
	if err != nil { // not of two sizes above zero
		return tolerance.Ratio{}, &InputError{"travels", valve.String() + " and " + cam.String(), "two lengths with a ratio"}
	}
	return r, nil
}

// A RockerRatioBracket is what two bracketed travels say of a ratio.
type RockerRatioBracket struct {
	Least    tolerance.Ratio `json:"least"`    // least travel at the valve over the greatest at the cam
	Greatest tolerance.Ratio `json:"greatest"` // the other way round
}

// RockerRatioBetween is the bracket of the ratio from two bracketed travels,
// exactly. It fails with an [InputError] where either has no end or isn't above
// zero.
func RockerRatioBetween(valve, cam tolerance.Bracket) (RockerRatioBracket, error) {
	if err := firstError(
		func() error { return inputBracket("travel at the valve", valve, units.Picometre) },
		func() error { return inputBracket("travel at the cam", cam, units.Picometre) },
	); err != nil {
		return RockerRatioBracket{}, err
	}
	valveLo, valveHi := inputEnds(valve)
	camLo, camHi := inputEnds(cam)
	least, err := RockerRatioOf(valveLo, camHi)
	if err != nil {
		return RockerRatioBracket{}, err
	}
	greatest, err := RockerRatioOf(valveHi, camLo)
	return RockerRatioBracket{least, greatest}, err
}
