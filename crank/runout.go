package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// RunOut is the run-out (total indicator reading) of a journal, nose or flange
// turned once under a dial: the greatest reading less the least. Exact. It holds
// the bend, twice over, and the journal's own want of roundness.
func RunOut[N tolerance.Number[N]](reading N, more ...N) N { return reading.Spread(more...) }

// BendOfRunOut is how far a journal's centre lies off the axis that it turns
// about: half its run-out. That holds only where the journal is round; else
// take the run-out that the eccentricity alone makes ([RunOutTurn.Separate]).
func BendOfRunOut[N tolerance.Number[N]](runOut N) N { return runOut.Scale(1, 2) }

// RunOutOfBend is the run-out that a bend makes on a round journal: twice it.
func RunOutOfBend[N tolerance.Number[N]](bend N) N { return bend.Scale(2, 1) }

// SupportLine is what the line between two supports does at a place so far from
// each: the mean of the two, each weighted by the distance to the other. It
// holds for each component of a run-out, and for heights. Beyond a support,
// as at a nose, the distance to that support counts below zero.
func SupportLine[N tolerance.Number[N]](atFirst, atSecond, fromFirst, fromSecond N) N {
	return atFirst.Share(fromSecond, fromFirst).Add(atSecond.Share(fromFirst, fromSecond))
}

// RunOutComponents are the cosine and sine of the first harmonic of readings at
// equal angles round a journal, from the mark on: the components of its
// eccentricity. An ovality, and lobes of every order but those that are one more
// or one less than a multiple of the number of readings, don't touch them. None
// are given below three readings: both are out of range.
func RunOutComponents[R tolerance.Real[R]](reading R, more ...R) (cosine, sine R) {
	n := 1 + len(more)
	if n < 3 {
		none := reading.Quo(reading.Const(0))
		return none, none
	}
	cosine = reading // at the mark the cosine is 1 and the sine nothing
	for i, r := range more {
		sin, cos := equalPlace(i+1, n)
		cosine = weighed(cosine, r, cos)
		if i == 0 {
			sine = r
			if sin != 1 {
				sine = r.Mul(r.Const(sin))
			}
			continue
		}
		sine = weighed(sine, r, sin)
	}
	two, count := reading.Const(2), reading.Const(float64(n))
	return cosine.Mul(two).Quo(count), sine.Mul(two).Quo(count)
}

// weighed adds w times r to a sum.
func weighed[R tolerance.Real[R]](sum, r R, w float64) R {
	switch w {
	case 0:
		return sum
	case 1:
		return sum.Add(r)
	case -1:
		return sum.Sub(r)
	}
	return sum.Add(r.Mul(r.Const(w)))
}

// equalPlace is the sine and cosine of i/n of a turn, the halves, ones and
// noughts among them exact.
func equalPlace(i, n int) (sin, cos float64) {
	if 12*i%n == 0 {
		return twelfths[12*i/n%12], twelfths[(12*i/n+3)%12]
	}
	return math.Sincos(2 * math.Pi * float64(i) / float64(n))
}

// twelfths are the sines of the twelfths of a turn.
var twelfths = [12]float64{0, 0.5, root3 / 2, 1, root3 / 2, 0.5, 0, -0.5, -root3 / 2, -1, -root3 / 2, -0.5}

const root3 = 1.73205080756887729352744634150587236694280525381038 // square root of 3

// BendOf is how far the centre lies off the axis, by the components of its
// eccentricity.
func BendOf[R tolerance.Real[R]](cosine, sine R) R {
	return cosine.Mul(cosine).Add(sine.Mul(sine)).Sqrt()
}

// RunOutOf is the run-out that an eccentricity with these components makes on a
// round journal: twice its length.
func RunOutOf[R tolerance.Real[R]](cosine, sine R) R {
	return BendOf(cosine, sine).Mul(cosine.Const(2))
}

// HighPoint is the direction of an eccentricity's high point, in radians from
// the mark, the way the readings were counted; from −π to π.
func HighPoint[R tolerance.Real[R]](cosine, sine R) R { return sine.Atan2(cosine) }

// NeighbourRunOut is the run-out of one journal seen from another: the length of
// the difference of their two run-outs as vectors, with the angle in radians
// between their high points. On one side (0) it is the difference of the two,
// opposite (π) their sum, at right angles the root of the sum of their squares.
//
//	√((a − b)² + 4·a·b·sin²(φ/2))
func NeighbourRunOut[R tolerance.Real[R]](a, b, between R) R {
	half := between.Mul(between.Const(0.5)).Sin()
	off := a.Sub(b)
	return off.Mul(off).Add(a.Mul(b).Mul(half.Mul(half)).Mul(a.Const(4))).Sqrt()
}

// FaceRunOutAt is the run-out that a face out of square, turned under a dial at
// one radius, has at another: in proportion to the radius.
func FaceRunOutAt[N tolerance.Number[N]](runOut, radius, other N) N {
	return runOut.MulDiv(other, radius)
}

// FaceTilt is how far a face is out of square to its axis, in radians: half the
// run-out over the radius that the dial stood at, as its arctangent.
func FaceTilt[R tolerance.Real[R]](runOut, radius R) R {
	return runOut.Atan2(radius.Mul(radius.Const(2)))
}

// FaceReading is what two dials on opposite sides of a face tell of it at one
// turn: half their difference. Both see the shaft move along its axis alike, so
// that end float drops out, which one dial takes for run-out unless the shaft
// is held to one end.
func FaceReading[N tolerance.Number[N]](dial, opposite N) N { return dial.Sub(opposite).Scale(1, 2) }

// FaceShift is how far the shaft moved along its axis by the same two dials: half
// their sum.
func FaceShift[N tolerance.Number[N]](dial, opposite N) N { return dial.Add(opposite).Scale(1, 2) }
