package crank

import "github.com/tenthou/tenthou/tolerance"

// The distance between the webs of a throw, as a gauge set opposite the crankpin
// shows it while the shaft turns, is m + V·cos θ + H·sin θ to first order, with θ
// from top dead centre: the webs open and close as the axis is bent in the
// vertical and in the horizontal plane. An opening counts above zero, which is
// the other way round from a plain dial's plunger.

// WebVertical is the vertical deflection of a throw: the reading at top dead
// centre less that at bottom dead centre, 2·V. With the gauge opposite the
// crankpin it is above zero where the axis sags there, so that the bearings at
// the throw's two ends lie below their neighbours, and below zero where it
// arches.
func WebVertical[N tolerance.Number[N]](top, bottom N) N { return top.Sub(bottom) }

// WebHorizontal is the horizontal deflection: the reading with the crankpin to
// port less that with it to starboard, 2·H, left and right as one stands.
func WebHorizontal[N tolerance.Number[N]](port, starboard N) N { return port.Sub(starboard) }

// WebBottom is the reading at the bottom where the rod is in the way, as manuals
// take it: the mean of the two just before and after. It is short of the true
// one, see [WebVerticalAt].
func WebBottom[N tolerance.Number[N]](before, after N) N { return before.Add(after).Scale(1, 2) }

// WebVerticalAt is the vertical deflection from the top and two readings at an
// angle from the bottom on both sides, in radians:
//
//	2·V = (top − (before + after)/2) · 2/(1 + cos δ)
//
// Without the factor, as the mean alone gives it, it comes out too small: by
// 6.7 % at 30°.
func WebVerticalAt[R tolerance.Real[R]](top, before, after, angle R) R {
	mean := before.Add(after).Mul(top.Const(0.5))
	return top.Sub(mean).Mul(top.Const(2)).Quo(angle.Cos().Add(top.Const(1)))
}

// WebClosure is how far four readings disagree: the mean over a turn is that of
// top and bottom as well as that of port and starboard, so that top and bottom
// less port and starboard is nothing but for errors.
func WebClosure[N tolerance.Number[N]](top, port, bottom, starboard N) N {
	return top.Add(bottom).Sub(port.Add(starboard))
}

// WebSwing is the greatest difference over a whole turn, from the vertical and
// the horizontal deflection: the root of the sum of their squares. The readings
// at four positions show less of it where the bend lies askew.
func WebSwing[R tolerance.Real[R]](vertical, horizontal R) R {
	return vertical.Mul(vertical).Add(horizontal.Mul(horizontal)).Sqrt()
}
