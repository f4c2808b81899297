package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SeatRecession is how far a valve has sunk into the head (valve recession,
// sinkage): the depth of its head below the head's face after, less before. US
// Army TM 10-3930-664-24 judges a seat's grind by it.
func SeatRecession[N tolerance.Number[N]](after, before N) N { return after.Sub(before) }

// RecessionByCuts is how far cutting the seat and grinding the face let a valve
// sink: the two depths, along the stem, together. Depths square to the cone are
// brought to the stem's direction first ([GrindAlong]).
func RecessionByCuts[N tolerance.Number[N]](seatCut, faceCut N) N { return seatCut.Add(faceCut) }

// TipHeightAfter is how high a valve's tip stands once it has sunk, less what is
// ground off the tip. Tip height counts from the face that the spring stands on,
// or any other that isn't machined.
func TipHeightAfter[N tolerance.Number[N]](height, recession, tipGround N) N {
	return height.Add(recession).Sub(tipGround)
}

// TipGrindFor is what to grind off a tip to bring its height to the wanted one:
// height + recession − wanted. Below zero the tip is too low already.
func TipGrindFor[N tolerance.Number[N]](height, recession, wanted N) N {
	return height.Add(recession).Sub(wanted)
}

// InstalledAfter is the spring's installed height once the valve has sunk: the
// retainer rises with the stem. Grinding the tip doesn't change it.
func InstalledAfter[N tolerance.Number[N]](installed, recession N) N {
	return installed.Add(recession)
}

// RecessionShim is the shim that keeps a valve's clearance once it has sunk and
// its tip was ground: old − recession + tip ground. It holds where the shim acts
// directly between cam and valve; through a rocker the shim or screw moves by
// this over the rocker's ratio.
func RecessionShim[N tolerance.Number[N]](shim, recession, tipGround N) N {
	return shim.Sub(recession).Add(tipGround)
}

// FaceRecessionVolume is the volume that a chamber gains when the valve's face
// is ground by so much along the stem: π/4·D²·f, D being the diameter of the
// valve's head. Lengths in one unit, the result in its cube. Why: within the
// contact the head rises by f, and the rim outside it becomes thinner by f.
func FaceRecessionVolume[R tolerance.Real[R]](head, along R) R {
	return head.Const(math.Pi / 4).Mul(head.Mul(head)).Mul(along)
}

// SeatRecessionVolume is the volume that a chamber gains when its seat is cut by
// so much along the stem, s, below a cone at the angle β that stays:
//
//	π·s·(R² + R·Δ + Δ²/3), Δ = s/(tan α − tan β)
//
// R is half of the seat's outer diameter before the cut; angles from the plane
// square to the stem, in radians, lengths in one unit, the result in its cube.
//
// Why: within R everything that closes the chamber, valve and seat, rises by s;
// beyond it the cut runs out as a triangle of height s and width Δ into the cone
// above, whose volume turned about the stem is Pappus's. It is not the valve's
// head that counts but the seat's edge: the rim outside it rises and takes its
// own room with it.
func SeatRecessionVolume[R tolerance.Real[R]](outer, along, seat, above R) R {
	radius := outer.Quo(outer.Const(2))
	run := NarrowedFromAbove(along, seat, above).Mul(seat.Cos())
	sum := radius.Mul(radius).Add(radius.Mul(run)).Add(run.Mul(run).Quo(outer.Const(3)))
	return outer.Const(math.Pi).Mul(along).Mul(sum)
}

// NarrowingVolume is the volume that a chamber gains when its seat is narrowed
// from above, from one outer diameter to a smaller, by a cutter at the angle β
// whose cone ends at a diameter in the chamber's wall:
//
//	π·a·(Δ·(r + 2Δ/3) + C² − R²), a = Δ·(tan α − tan β), Δ = R − r
//
// with half diameters R before, r after and C of the cone's end; angles from the
// plane square to the stem, in radians. Cuts from below are in the port, and
// change no chamber.
func NarrowingVolume[R tolerance.Real[R]](outer, narrowed, coneEnd, seat, above R) R {
	half := func(d R) R { return d.Quo(d.Const(2)) }
	big, small, end := half(outer), half(narrowed), half(coneEnd)
	run := big.Sub(small)
	feed := FeedToOuter(outer, narrowed, seat, above)
	sum := run.Mul(small.Add(run.Const(2).Mul(run).Quo(run.Const(3)))).Add(end.Sub(big).Mul(end.Add(big)))
	return outer.Const(math.Pi).Mul(feed).Mul(sum)
}

// A Sinkage is a valve that is sunk by cutting its seat and grinding its face.
type Sinkage struct {
	Seat    Seat              // before the cut
	Above   SeatAngle         // of the cone above the seat; zero is flat
	SeatCut tolerance.Bracket // along the stem
	FaceCut tolerance.Bracket // along the stem
	Head    tolerance.Bracket // diameter of the valve's head
}

// VolumeAdded is what a chamber gains by one valve's recession, for every size
// that the brackets allow, rounded outward; what narrowing from above adds is
// [NarrowingVolume]. It fails with an [InputError] where a size can't be.
func (r Sinkage) VolumeAdded() (tolerance.Interval[units.Volume], error) {
	err := firstError(r.Seat.check, func() error { return r.Seat.checkAbove(r.Above) },
		func() error { return inputBracket("cut of the seat", r.SeatCut, 0) },
		func() error { return inputBracket("cut of the face", r.FaceCut, 0) },
		func() error { return inputBracket("valve head", r.Head, units.Picometre) })
	if err != nil {
		return tolerance.Interval[units.Volume]{}, err
	}
	type float = tolerance.Float
	cm := func(l units.Length) float { return float(l.Float(units.InMillimetres) / 10) }
	at := func(outer, seatCut, faceCut, head units.Length) float64 {
		return float64(FaceRecessionVolume(cm(head), cm(faceCut)) +
			SeatRecessionVolume(cm(outer), cm(seatCut), float(r.Seat.Angle.Radians()), float(r.Above.Radians())))
	}
	// The volume grows with each of the four.
	oLo, oHi := inputEnds(r.Seat.Outer)
	sLo, sHi := inputEnds(r.SeatCut)
	fLo, fHi := inputEnds(r.FaceCut)
	hLo, hHi := inputEnds(r.Head)
	if hHi < oLo {
		return tolerance.Interval[units.Volume]{}, &InputError{"valve head", r.Head.String(), "at least the seat's outer diameter " + r.Seat.Outer.String()}
	}
	const slack = 1.0 / (1 << 46)
	lo, errLo := units.Nearest(at(oLo, sLo, fLo, hLo)*(1-slack), units.InCubicCentimetres)
	hi, errHi := units.Nearest(at(oHi, sHi, fHi, hHi)*(1+slack), units.InCubicCentimetres)
	if errLo != nil || errHi != nil {
		return tolerance.Interval[units.Volume]{}, &InputError{"cut of the seat", r.SeatCut.String(), "small enough for a volume within range"}
	}
	// One quantum outward covers the rounding to it.
	if hi > 0 {
		hi += units.Volume(1)
	}
	return inputSpan(max(0, lo-units.Volume(1)), hi), nil
}
