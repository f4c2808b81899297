package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ContactClear is how much of a valve's face is clear of the seat on one side,
// along the face: half the difference of the two diameters over cos α, the
// face's angle being from the plane square to the stem, in radians. Toward the
// margin it is the face's outer diameter less the seat's outer one, toward the
// port the seat's inner diameter less the face's inner one. Below zero the seat
// reaches past the face. US Army TM 10-3930-671-24 asks for at least 1/64 in on
// either side.
func ContactClear[R tolerance.Real[R]](larger, smaller, angle R) R {
	return SeatWidth(larger, smaller, angle)
}

// ContactPlace is where the middle of the contact stands on the face, as the
// part of whole (100 for per cent) from the face's outer edge: 50 per cent is in
// the middle. All four are diameters, whole but for that: it is a number of the
// same kind, so that 100 mm gives per cent in mm.
func ContactPlace[N tolerance.Number[N]](whole, faceOuter, faceInner, contact N) N {
	return whole.Share(faceOuter.Sub(contact), contact.Sub(faceInner))
}

// InterferenceGap is how far a seat stands off the valve's face at the edge
// where the two don't touch, square to the face: w·sin δ, where w is the seat's
// width along its cone and δ the interference angle in radians, as a magnitude.
// Once the valve has bedded in it is gone.
func InterferenceGap[R tolerance.Real[R]](width, interference R) R {
	return width.Mul(interference.Sin())
}

// InterferenceSinkage is how far a valve with an interference angle sinks, along
// the stem, when its seat is narrowed from above: the valve hangs on the seat's
// outer edge, which moves inward by half of what the outer diameter loses, so it
// is that times tan α − tan φ, seat's angle less face's, from the plane square
// to the stem, in radians. Of equal angles narrowing doesn't move the valve.
func InterferenceSinkage[R tolerance.Real[R]](outer, narrowed, seat, face R) R {
	return FeedToOuter(outer, narrowed, seat, face)
}

// SinkageTo is how far a valve with an interference angle sinks, along the stem,
// when the edge that it hangs on moves, from this seat to one after its cuts, the
// depth of the seat's own cut apart: see [InterferenceSinkage]. It hangs on the
// outer edge where the face is the flatter, else on the inner one; below zero it
// rises. With equal angles it is nothing. It fails with an [InputError] where a
// seat can't be, the two seats' angles differ, or the face's isn't a cone's.
func (s Seat) SinkageTo(after Seat, face SeatAngle) (tolerance.Bracket, error) {
	if err := firstError(s.check, after.check, func() error { return face.checkCone("angle of the valve's face") }); err != nil {
		return tolerance.Bracket{}, err
	}
	switch {
	case after.Angle != s.Angle:
		return tolerance.Bracket{}, &InputError{"seat angle after", after.Angle.String(), "as before, " + s.Angle.String()}
	case face.square < s.Angle.square:
		return seatScaled(s.Outer.Sub(after.Outer), tangents(s.Angle, face)/2), nil
	case face.square > s.Angle.square:
		return seatScaled(after.Inner.Sub(s.Inner), tangents(face, s.Angle)/2), nil
	}
	return tolerance.Exactly(units.Length(0)), nil
}

// A ValveFace is the cone of a valve's face, as it was measured.
type ValveFace struct {
	Angle SeatAngle         `json:"angle"` // as it is ground
	Outer tolerance.Bracket `json:"outer"` // diameter of its edge at the margin
	Inner tolerance.Bracket `json:"inner"` // diameter of its edge toward the stem
}

// A SeatContact is how a seat lies on a valve's face.
type SeatContact struct {
	ClearOuter tolerance.Bracket `json:"clearOuter"` // of the face toward the margin, along it; below zero: the seat overhangs
	ClearInner tolerance.Bracket `json:"clearInner"` // of the face toward the port, along it
	Middle     tolerance.Bracket `json:"middle"`     // diameter in the middle of the contact
	// FromOuter is where the middle of the seat stands on the face: per cent of
	// the face from its outer edge; the ends are rounded outward.
	FromOuter [2]float64 `json:"fromOuter"`
	// Interference is the seat's angle less the face's.
	Interference units.Angle `json:"interference"`
	// Gap is how far the edges that don't touch stand apart by the interference
	// angle, square to the face, before the valve has bedded in.
	Gap tolerance.Bracket `json:"gap"`
}

// ContactOn finds how the seat lies on a valve's face. It fails with an
// [InputError] where a size or an angle can't be, where the two angles are more
// than 5° apart (30° and 45° have been mixed up), and where the face ends before
// it begins.
func (s Seat) ContactOn(face ValveFace) (SeatContact, error) {
	width, err := s.Width()
	if err != nil {
		return SeatContact{}, err
	}
	if err := Seat(face).check(); err != nil {
		return SeatContact{}, &InputError{"valve face", face.Angle.String() + ", " + face.Outer.String() + " to " + face.Inner.String(), "a cone wider at the margin, between 0° and 90°"}
	}
	apart := InterferenceAngle(s.Angle.square, face.Angle.square)
	if apart.Abs() > 5*units.Degree {
		return SeatContact{}, &InputError{"angle of the valve's face", face.Angle.String(), "within 5° of the seat's " + s.Angle.String()}
	}
	along := 1 / (2 * face.Angle.cos())
	c := SeatContact{Middle: s.Middle(), Interference: apart}
	c.ClearOuter = seatScaled(face.Outer.Sub(s.Outer), along)
	c.ClearInner = seatScaled(s.Inner.Sub(face.Inner), along)
	c.Gap = tolerance.Exactly(units.Length(0))
	if apart != 0 {
		c.Gap = seatScaled(width, math.Sin(apart.Abs().Radians()))
	}
	// Of the face, the place falls with the contact and rises with either edge.
	fo, fi, m := face.Outer, face.Inner, c.Middle
	place := func(fo, fi, m units.Length) float64 { return 100 * float64(fo-m) / float64(fo-fi) }
	foLo, foHi := inputEnds(fo)
	fiLo, fiHi := inputEnds(fi)
	mLo, mHi := inputEnds(m)
	if foLo <= fiHi {
		return SeatContact{}, &InputError{"valve face", fi.String() + " to " + fo.String(), "measured finely enough to have a width for certain"}
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, o := range [2]units.Length{foLo, foHi} {
		for _, i := range [2]units.Length{fiLo, fiHi} {
			for _, at := range [2]units.Length{mLo, mHi} {
				p := place(o, i, at)
				lo, hi = min(lo, p), max(hi, p)
			}
		}
	}
	const slack = 1.0 / (1 << 50)
	c.FromOuter = [2]float64{lo - math.Abs(lo)*slack, hi + math.Abs(hi)*slack}
	return c, nil
}
