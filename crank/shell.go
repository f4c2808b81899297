package crank

import "github.com/tenthou/tenthou/tolerance"

// ShellNip is the nip (crush) of one half shell: how far it stands above the joint
// face of its half housing, pressed home and flush at the other end:
//
//	half periphery − π·housing/2
//
// where the periphery is that of the shell's back and housing the housing bore.
func ShellNip[N tolerance.Number[N]](halfPeriphery, housing N) N {
	return halfPeriphery.Sub(housing.ScalePi(1, 2))
}

// HalfPeriphery is the length of a half shell's back that has a nip in a housing:
// the inverse of [ShellNip].
func HalfPeriphery[N tolerance.Number[N]](nip, housing N) N {
	return nip.Add(housing.ScalePi(1, 2))
}

// NipGap is the gap at a cap with both shells in, one bolt tight and the other
// slack: the nip of both halves together.
//
// The tight side is closed, so all that the two backs are longer than the housing
// bore has to go into the open side, which stands apart by that much: gap = upper
// half periphery + lower half periphery − π·housing. A blade in the gap close to
// the bore reads it; further out the cap, tilted about its closed side, stands
// further off.
func NipGap[N tolerance.Number[N]](upper, lower N) N { return upper.Add(lower) }

// NipOfGap is the nip of one half shell by the gap and the nip of the other half:
// the inverse of [NipGap]. Without that half measured, each is half of the gap only
// if they are alike.
func NipOfGap[N tolerance.Number[N]](gap, other N) N { return gap.Sub(other) }

// NipInterference is the interference of a pair of shells in its housing, on the
// diameter, by the gap of [NipGap]:
//
//	gap × housing ÷ (π × housing) = gap ÷ π
//
// since a ring whose back is longer by the gap has a diameter greater by gap/π. The
// housing's size drops out but for the rounding; give it exactly.
func NipInterference[N tolerance.Number[N]](gap, housing N) N {
	return gap.MulDiv(housing, housing.ScalePi(1, 1))
}

// NipGapOf is the gap of a pair of shells that have an interference in their
// housing, on the diameter: π × interference, the inverse of [NipInterference].
func NipGapOf[N tolerance.Number[N]](interference N) N { return interference.ScalePi(1, 1) }

// FreeSpread is how much wider a half shell is across its open ends, free, than the
// housing that it goes in. It holds the shell in its place until the cap is on;
// some manuals give about 0.025 in.
func FreeSpread[N tolerance.Number[N]](free, housing N) N { return free.Sub(housing) }

// FreeWidth is the width across the open ends of a half shell of a free spread: the
// inverse of [FreeSpread].
func FreeWidth[N tolerance.Number[N]](spread, housing N) N { return spread.Add(housing) }

// WallByBall is the wall of a shell from the reading over a ball in its hollow and
// the ball: flat anvils can't follow the curve, and would read too thick.
func WallByBall[N tolerance.Number[N]](reading, ball N) N { return reading.Sub(ball) }

// BallReading is what a micrometer reads over a ball and a wall: the inverse of
// [WallByBall].
func BallReading[N tolerance.Number[N]](wall, ball N) N { return wall.Add(ball) }

// WallVariation is the greatest less the least of the wall of one half, at places
// along it and round it. Many shells are made thinner toward their ends, so
// compare like places.
func WallVariation[N tolerance.Number[N]](wall N, more ...N) N { return wall.Spread(more...) }
