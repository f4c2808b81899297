package valvetrain

import "github.com/tenthou/tenthou/tolerance"

// SpringRateOfLoads is the rate of a spring from its loads at two heights: the
// difference of the loads over that of the heights, (F₂ − F₁)/(h₁ − h₂). In N and
// mm it is in N/mm, in lbf and in in lbf/in. Of a spring of even rate any two
// heights give the same; of a conical or progressive one it is the mean between
// the two, and no more.
func SpringRateOfLoads[R tolerance.Real[R]](load1, height1, load2, height2 R) R {
	return load2.Sub(load1).Quo(height1.Sub(height2))
}

// SpringLoadAt is the load of a spring of even rate at a height: k·(L₀ − h),
// with its free length L₀.
func SpringLoadAt[R tolerance.Real[R]](rate, free, height R) R {
	return rate.Mul(free.Sub(height))
}

// SpringHeightFor is the height at which a spring of even rate has a load:
// L₀ − F/k, the inverse of [SpringLoadAt].
func SpringHeightFor[R tolerance.Real[R]](rate, free, load R) R {
	return free.Sub(load.Quo(rate))
}

// SpringFreeFor is the free length of a spring of even rate, from its load at a
// height: h + F/k. Where the measured one differs, the spring isn't of even
// rate, or a reading has slipped.
func SpringFreeFor[R tolerance.Real[R]](rate, load, height R) R {
	return height.Add(load.Quo(rate))
}

// SpringLoadBetween is the load at a height from the loads at two others, taken
// as a straight line: F₁ + (F₂ − F₁)·(h₁ − h)/(h₁ − h₂). Between the two it
// serves any spring nearly; beyond them one of even rate alone.
func SpringLoadBetween[R tolerance.Real[R]](load1, height1, load2, height2, height R) R {
	return load1.Add(load2.Sub(load1).Mul(height1.Sub(height)).Quo(height1.Sub(height2)))
}

// SpringOpenHeight is a spring's height with its valve fully open: installed
// height less lift.
func SpringOpenHeight[N tolerance.Number[N]](installed, lift N) N { return installed.Sub(lift) }

// CoilBindMargin is how much a spring may still close, with its valve fully
// open, before its coils touch: installed height − lift − solid height. At
// nothing or below it binds, and something breaks.
func CoilBindMargin[N tolerance.Number[N]](installed, lift, solid N) N {
	return installed.Sub(lift).Sub(solid)
}

// LiftToMargin is the lift that leaves a margin to coil bind: the inverse of
// [CoilBindMargin].
func LiftToMargin[N tolerance.Number[N]](installed, margin, solid N) N {
	return installed.Sub(margin).Sub(solid)
}

// InnerHeight is the height that an inner spring stands at where the outer one
// stands at outer: less the step of its seat, above zero where the inner spring
// stands higher or its retainer reaches lower, both together.
func InnerHeight[N tolerance.Number[N]](outer, step N) N { return outer.Sub(step) }

// SpringShortening is how much shorter a spring is than a new one.
func SpringShortening[N tolerance.Number[N]](newFree, free N) N { return newFree.Sub(free) }

// SpringFreeLimit is the least free length by the rule that a spring more than 3
// per cent shorter than new is renewed: 97 per cent of the new length (NAVEDTRA
// 14076). Free length alone doesn't prove a spring: its loads do.
func SpringFreeLimit[N tolerance.Number[N]](newFree N) N { return newFree.Scale(97, 100) }

// SpringLean is the angle by which a spring leans, in radians, from how far its
// top stands off a square that touches its foot: arctan(off/length).
func SpringLean[R tolerance.Real[R]](off, length R) R { return off.Atan2(length) }

// SpringOffSquare is how far a spring's top stands off a square where it leans
// by an angle in radians: the inverse of [SpringLean].
func SpringOffSquare[R tolerance.Real[R]](lean, length R) R {
	return length.Mul(lean.Sin()).Quo(lean.Cos())
}
