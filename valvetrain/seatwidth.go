package valvetrain

import (
	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SeatWidth is the width of a seat along its cone, from its outer and inner
// diameter: (outer − inner)/(2·cos α). The angle is from the plane square to the
// stem, in radians ([SeatAngle.Radians]); diameters and width are in one unit. A
// scale laid flat across the seat shows the width times cos α.
func SeatWidth[R tolerance.Real[R]](outer, inner, angle R) R {
	return outer.Sub(inner).Quo(outer.Const(2).Mul(angle.Cos()))
}

// SeatOuter is the outer diameter of a seat from its inner one and its width
// along the cone: inner + 2w·cos α.
func SeatOuter[R tolerance.Real[R]](inner, width, angle R) R {
	return inner.Add(inner.Const(2).Mul(width).Mul(angle.Cos()))
}

// SeatInner is the inner diameter of a seat from its outer one and its width
// along the cone: outer − 2w·cos α.
func SeatInner[R tolerance.Real[R]](outer, width, angle R) R {
	return outer.Sub(outer.Const(2).Mul(width).Mul(angle.Cos()))
}

// SeatMiddle is the diameter in the middle of a seat's width: halfway between
// the inner and the outer.
func SeatMiddle[N tolerance.Number[N]](outer, inner N) N { return outer.Add(inner).Scale(1, 2) }

// SeatWidthLimit is how wide a seat may become by wear: 115 per cent of its
// width when new, which US Army TM 10-3930-647-14&P gives for want of better.
func SeatWidthLimit[N tolerance.Number[N]](newWidth N) N { return newWidth.Scale(115, 100) }

// SeatRunOut is the run-out of a seat, by a dial carried round on a pilot in the
// guide: the greatest reading less the least. The pilot's own clearance in a
// worn guide is in it: guides come first.
func SeatRunOut[N tolerance.Number[N]](reading N, more ...N) N { return reading.Spread(more...) }

// SeatInterference is the interference of a seat insert in its counterbore, on
// the diameter: the insert's outside less the counterbore.
func SeatInterference[N tolerance.Number[N]](insert, counterbore N) N {
	return insert.Sub(counterbore)
}

// CounterboreFor is the counterbore in which a seat insert has an interference.
func CounterboreFor[N tolerance.Number[N]](insert, interference N) N {
	return insert.Sub(interference)
}

// InsertFor is the outside diameter with which a seat insert has an interference
// in its counterbore.
func InsertFor[N tolerance.Number[N]](counterbore, interference N) N {
	return counterbore.Add(interference)
}

// SeatDialDirection is how a dial's stylus stands on a seat. The zero value is
// DialSquareToSeat.
type SeatDialDirection uint8

// The directions.
const (
	// DialSquareToSeat stands square to the seat's cone.
	DialSquareToSeat SeatDialDirection = iota
	// DialSquareToStem points away from the stem, level.
	DialSquareToStem
	// DialAlongStem points along the stem.
	DialAlongStem
)

var seatDialNames = []string{"square to the seat", "square to the stem", "along the stem"}

// String is the direction in words.
func (d SeatDialDirection) String() string { return words.Of(seatDialNames, d) }

// MarshalText writes what String gives.
func (d SeatDialDirection) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (d *SeatDialDirection) UnmarshalText(text []byte) error {
	return inputWord("direction of the dial", seatDialNames, text, d)
}

// SeatEccentricity is how far the seat's axis lies from the guide's, from its
// run-out and the dial's direction: half the run-out, divided by sin α where the
// stylus stands square to the seat, by 1 where it stands square to the stem, by
// tan α where it points along the stem. The angle is from the plane square to
// the stem, in radians.
//
// Why: a cone shifted sideways by e has moved, toward a stylus square to it, by
// the part of e in that direction, e·sin α on one side and −e·sin α on the other.
// A seat that is tilted and not shifted reads too, and a seat that isn't round:
// what is found is what alone would explain the run-out.
func SeatEccentricity[R tolerance.Real[R]](runOut, angle R, dial SeatDialDirection) R {
	half := runOut.Quo(runOut.Const(2))
	switch dial {
	case DialSquareToStem:
		return half
	case DialAlongStem:
		return half.Mul(angle.Cos()).Quo(angle.Sin())
	}
	return half.Quo(angle.Sin())
}

// SeatRunOutFor is the run-out that a shifted seat shows: the inverse of
// [SeatEccentricity].
func SeatRunOutFor[R tolerance.Real[R]](eccentricity, angle R, dial SeatDialDirection) R {
	both := eccentricity.Const(2).Mul(eccentricity)
	switch dial {
	case DialSquareToStem:
		return both
	case DialAlongStem:
		return both.Mul(angle.Sin()).Quo(angle.Cos())
	}
	return both.Mul(angle.Sin())
}

// A Seat is the cone that a valve closes on, as it was measured.
type Seat struct {
	Angle SeatAngle         `json:"angle"` // as it is ground
	Outer tolerance.Bracket `json:"outer"` // diameter of its edge toward the chamber
	Inner tolerance.Bracket `json:"inner"` // diameter of its edge toward the port
}

// SeatOfWidth is the seat with an outer diameter and a width along the cone. It
// fails as [Seat.Width] does, and with an [InputError] where the width is below
// zero or takes all of the diameter.
func SeatOfWidth(angle SeatAngle, outer, width tolerance.Bracket) (Seat, error) {
	if err := angle.checkCone("seat angle"); err != nil {
		return Seat{}, err
	}
	if err := inputBracket("outer diameter", outer, units.Picometre); err != nil {
		return Seat{}, err
	}
	if err := inputBracket("seat width", width, 0); err != nil {
		return Seat{}, err
	}
	s := Seat{angle, outer, outer.Sub(seatScaled(width, 2*angle.cos()))}
	if lo, _ := inputEnds(s.Inner); lo <= 0 {
		return Seat{}, &InputError{"seat width", width.String(), "narrow enough to leave a port in " + outer.String()}
	}
	return s, nil
}

// Width is the seat's width along its cone, rounded outward to the picometre. It
// fails with an [InputError] where the angle isn't between 0° and 90°, a
// diameter isn't above zero and bounded, or the inner diameter is the larger for
// certain.
func (s Seat) Width() (tolerance.Bracket, error) {
	if err := s.check(); err != nil {
		return tolerance.Bracket{}, err
	}
	w := seatScaled(s.Outer.Sub(s.Inner), 1/(2*s.Angle.cos()))
	if lo, hi := inputEnds(w); lo < 0 {
		w = inputSpan(0, hi)
	}
	return w, nil
}

// Middle is the diameter in the middle of the seat's width.
func (s Seat) Middle() tolerance.Bracket { return SeatMiddle(s.Outer, s.Inner) }

func (s Seat) check() error {
	if err := s.Angle.checkCone("seat angle"); err != nil {
		return err
	}
	if err := inputBracket("outer diameter of the seat", s.Outer, units.Picometre); err != nil {
		return err
	}
	if err := inputBracket("inner diameter of the seat", s.Inner, units.Picometre); err != nil {
		return err
	}
	lo, _ := inputEnds(s.Inner)
	if _, hi := inputEnds(s.Outer); hi < lo {
		return &InputError{"inner diameter of the seat", s.Inner.String(), "below its outer diameter " + s.Outer.String()}
	}
	return nil
}
