package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// LobeLift is the lift of a cam's lobe: its height less its base circle.
//
//	   ╭─╮  ┬
//	  ╱   ╲ │
//	 ╱     ╲│ height, from nose to heel
//	│   +   │
//	 ╲     ╱│
//	  ╰───╯ ┴
//	├───────┤ base circle, a diameter
//
// Why: with the base circle's radius r and the nose at R from the shaft's axis
// the height is R + r, the lift R − r, and the base circle's diameter 2r.
//
// The height is the greatest size across the lobe, from nose to heel; the base
// circle is measured square to that, where both anvils are on it. They are as
// long as the lobe opens over less than 180° of the camshaft, 360° of the
// crankshaft; of a longer one the size there holds some flank, and the lift
// comes out too small: dial the lift on the shaft in its bearings. "Lift" of
// 37 mm is a height that a data page has mixed up.
func LobeLift[N tolerance.Number[N]](height, base N) N { return height.Sub(base) }

// LobeHeight is the height of a lobe with a base circle and a lift.
func LobeHeight[N tolerance.Number[N]](base, lift N) N { return base.Add(lift) }

// LobeBase is the base circle's diameter of a lobe with a height and a lift.
func LobeBase[N tolerance.Number[N]](height, lift N) N { return height.Sub(lift) }

// LobeHeightWear is how much lower a lobe is than a new one, nose and heel
// together.
func LobeHeightWear[N tolerance.Number[N]](newHeight, height N) N { return newHeight.Sub(height) }

// LobeBaseWear is how much smaller the base circle is than a new one's, on the
// diameter. A reground cam has a smaller base circle on purpose: its followers
// stand nearer, and valve clearance, shims or pushrods must make that good.
func LobeBaseWear[N tolerance.Number[N]](newBase, base N) N { return newBase.Sub(base) }

// LobeLiftLoss is how much less a lobe lifts than a new one. It is the wear of
// the height less that of the base circle: a base circle worn alike all round
// hides in the height alone, which is why both are measured.
func LobeLiftLoss[N tolerance.Number[N]](newLift, lift N) N { return newLift.Sub(lift) }

// LobeTaper is the greatest less the least height of a lobe across its width.
// Many lobes are ground with a slight taper on purpose, to turn the follower:
// the manual says how much.
func LobeTaper[N tolerance.Number[N]](height N, more ...N) N { return height.Spread(more...) }

// ValveLift is what a valve lifts: lobe lift times the rocker ratio, less the
// clearance, measured at the valve. Clearance is lost motion and always takes
// from the lift; added instead, the answer is off by twice the clearance. With a
// hydraulic adjuster or for the safe side of a clearance to the piston the
// clearance is 0. Where cam and valve act directly the ratio is 1.
//
// A ratio that is none gives a value out of range.
func ValveLift[N tolerance.Number[N]](lobe, clearance N, ratio tolerance.Ratio) N {
	return lobe.Scale(ratio.Num, ratio.Den).Sub(clearance)
}

// ValveLiftByTravels is [ValveLift] with the rocker's ratio as two travels or
// two arms, each a length with what is known of it: lobe × valve side ÷ cam
// side, less the clearance at the valve.
func ValveLiftByTravels[N tolerance.Number[N]](lobe, clearance, valveSide, camSide N) N {
	return lobe.MulDiv(valveSide, camSide).Sub(clearance)
}

// ValveLiftCamSide is what a valve lifts where the clearance is measured on the
// cam's side of the rocker: (lobe lift − clearance) × ratio.
func ValveLiftCamSide[N tolerance.Number[N]](lobe, clearance N, ratio tolerance.Ratio) N {
	return lobe.Sub(clearance).Scale(ratio.Num, ratio.Den)
}

// LobeLiftFor is the lobe lift that gives a valve its lift through a ratio and a
// clearance at the valve: (lift + clearance) ÷ ratio.
func LobeLiftFor[N tolerance.Number[N]](lift, clearance N, ratio tolerance.Ratio) N {
	return lift.Add(clearance).Scale(ratio.Den, ratio.Num)
}

// LobeLiftForCamSide is the lobe lift that gives a valve its lift where the
// clearance is measured on the cam's side of the rocker: lift ÷ ratio +
// clearance.
func LobeLiftForCamSide[N tolerance.Number[N]](lift, clearance N, ratio tolerance.Ratio) N {
	return lift.Scale(ratio.Den, ratio.Num).Add(clearance)
}

// ClearanceFromLifts is the clearance at the valve that a lobe lift, a ratio and
// the valve's lift leave: lobe × ratio − lift.
func ClearanceFromLifts[N tolerance.Number[N]](lobe, lift N, ratio tolerance.Ratio) N {
	return lobe.Scale(ratio.Num, ratio.Den).Sub(lift)
}
