package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// FeedFromAbove is how far a flatter cutter is fed along the stem, from where it
// just touches the seat's outer edge, to narrow the seat by so much along its
// cone:
//
//	Δw·cos α·(tan α − tan β) = Δw·sin(α − β)/cos β
//
// α is the seat's angle and β the cutter's, from the plane square to the stem,
// in radians.
//
// Why: along the radius r the seat's cone rises toward the chamber as r·tan α
// and the cutter's as r·tan β + k. They cross at r = k/(tan α − tan β). A feed
// takes itself from k, so that the edge moves inward by the feed over
// tan α − tan β, and the width along the cone is that over cos α. The second
// form is the addition theorem, and loses no digits where the angles are near.
func FeedFromAbove[R tolerance.Real[R]](narrower, seat, cutter R) R {
	return narrower.Mul(seat.Sub(cutter).Sin()).Quo(cutter.Cos())
}

// NarrowedFromAbove is by how much a feed from above narrows the seat along its
// cone: the inverse of [FeedFromAbove].
func NarrowedFromAbove[R tolerance.Real[R]](feed, seat, cutter R) R {
	return feed.Mul(cutter.Cos()).Quo(seat.Sub(cutter).Sin())
}

// FeedFromBelow is how far a steeper cutter is fed along the stem, from where it
// just touches the seat's inner edge, to narrow the seat by so much along its
// cone:
//
//	Δw·cos α·(tan γ − tan α) = Δw·sin(γ − α)/cos γ
//
// α is the seat's angle and γ the cutter's, from the plane square to the stem,
// in radians. Why: the cones cross at r = −k/(tan γ − tan α), see
// [FeedFromAbove], so a feed moves the inner edge outward by itself over
// tan γ − tan α. A 75° cutter on a 45° seat takes 3.7 times the feed of a 60°
// one; at 90° no feed narrows.
func FeedFromBelow[R tolerance.Real[R]](narrower, seat, cutter R) R {
	return narrower.Mul(cutter.Sub(seat).Sin()).Quo(cutter.Cos())
}

// NarrowedFromBelow is by how much a feed from below narrows the seat along its
// cone: the inverse of [FeedFromBelow].
func NarrowedFromBelow[R tolerance.Real[R]](feed, seat, cutter R) R {
	return feed.Mul(cutter.Cos()).Quo(cutter.Sub(seat).Sin())
}

// FeedToOuter is the feed of a flatter cutter that brings the seat's outer
// diameter down to the wanted one: half the difference times tan α − tan β.
func FeedToOuter[R tolerance.Real[R]](outer, wanted, seat, cutter R) R {
	return FeedFromAbove(outer.Sub(wanted).Quo(outer.Const(2).Mul(seat.Cos())), seat, cutter)
}

// OuterAfterFeed is the seat's outer diameter after a feed from above: the
// inverse of [FeedToOuter].
func OuterAfterFeed[R tolerance.Real[R]](outer, feed, seat, cutter R) R {
	return SeatInner(outer, NarrowedFromAbove(feed, seat, cutter), seat)
}

// FeedToInner is the feed of a steeper cutter that brings the seat's inner
// diameter up to the wanted one: half the difference times tan γ − tan α.
func FeedToInner[R tolerance.Real[R]](inner, wanted, seat, cutter R) R {
	return FeedFromBelow(wanted.Sub(inner).Quo(inner.Const(2).Mul(seat.Cos())), seat, cutter)
}

// InnerAfterFeed is the seat's inner diameter after a feed from below: the
// inverse of [FeedToInner].
func InnerAfterFeed[R tolerance.Real[R]](inner, feed, seat, cutter R) R {
	return SeatOuter(inner, NarrowedFromBelow(feed, seat, cutter), seat)
}

// OuterAfterReface is the seat's outer diameter once the seat itself is cut
// deeper along the stem, between the cone above it, which stays: outer plus
// twice the depth over tan α − tan β. Cutting a seat deeper widens it.
func OuterAfterReface[R tolerance.Real[R]](outer, depth, seat, above R) R {
	return SeatOuter(outer, NarrowedFromAbove(depth, seat, above), seat)
}

// InnerAfterReface is the seat's inner diameter once the seat itself is cut
// deeper along the stem, above a throat that stays: inner less twice the depth
// over tan γ − tan α. A straight throat, 90°, keeps it as it is.
func InnerAfterReface[R tolerance.Real[R]](inner, depth, seat, throat R) R {
	return SeatInner(inner, NarrowedFromBelow(depth, seat, throat), seat)
}

// FromAbove is the seat after a cutter, flatter than it, has been fed along the
// stem from where it just touches its outer edge. It fails with an [InputError]
// where the cutter isn't from 0° to below the seat's angle, or the feed is below
// zero or takes all of the seat.
func (s Seat) FromAbove(cutter SeatAngle, feed tolerance.Bracket) (Seat, error) {
	if err := firstError(s.check, func() error { return s.checkAbove(cutter) }, func() error { return inputBracket("feed", feed, 0) }); err != nil {
		return Seat{}, err
	}
	s.Outer = s.Outer.Sub(seatScaled(feed, 2/tangents(s.Angle, cutter)))
	return s.left(feed)
}

// FromBelow is the seat after a cutter, steeper than it, has been fed along the
// stem from where it just touches its inner edge. It fails with an [InputError]
// where the cutter isn't from above the seat's angle to below 90°, or the feed
// is below zero or takes all of the seat.
func (s Seat) FromBelow(cutter SeatAngle, feed tolerance.Bracket) (Seat, error) {
	if err := firstError(s.check, func() error { return s.checkBelow("cutter from below", cutter) },
		func() error { return cutter.checkCone("cutter from below") }, func() error { return inputBracket("feed", feed, 0) }); err != nil {
		return Seat{}, err
	}
	s.Inner = s.Inner.Add(seatScaled(feed, 2/tangents(cutter, s.Angle)))
	return s.left(feed)
}

// Refaced is the seat cut deeper along the stem by so much, between the cone
// above it and the throat below it, 90° where that is a straight bore: it
// becomes wider both ways. It fails with an [InputError] where the angles don't
// grow from above to throat, or the depth is below zero.
func (s Seat) Refaced(depth tolerance.Bracket, above, throat SeatAngle) (Seat, error) {
	if err := firstError(s.check, func() error { return s.checkAbove(above) },
		func() error { return s.checkBelow("throat", throat) }, func() error { return inputBracket("depth", depth, 0) }); err != nil {
		return Seat{}, err
	}
	s.Outer = s.Outer.Add(seatScaled(depth, 2/tangents(s.Angle, above)))
	if throat.square < units.Turn/4 {
		s.Inner = s.Inner.Sub(seatScaled(depth, 2/tangents(throat, s.Angle)))
	}
	if lo, _ := inputEnds(s.Inner); lo <= 0 || !s.Outer.InRange() {
		return Seat{}, &InputError{"depth", depth.String(), "small enough to leave a port"}
	}
	return s, nil
}

// checkAbove checks a cutter that works from above: 0° is a flat one.
func (s Seat) checkAbove(cutter SeatAngle) error {
	if cutter.square < 0 || cutter.square >= s.Angle.square {
		return &InputError{"cutter from above", cutter.String(), "from 0° to below the seat's " + s.Angle.square.String() + ", from the plane square to the stem"}
	}
	return nil
}

// checkBelow checks a cutter that works from below, or a throat: 90° is a
// straight bore.
func (s Seat) checkBelow(field string, cutter SeatAngle) error {
	if cutter.square <= s.Angle.square || cutter.square > units.Turn/4 {
		return &InputError{field, cutter.String(), "above the seat's " + s.Angle.square.String() + " and at most 90°, from the plane square to the stem"}
	}
	return nil
}

// left is the seat, or an error where a feed has left nothing of it.
func (s Seat) left(feed tolerance.Bracket) (Seat, error) {
	lo, _ := inputEnds(s.Inner)
	if _, hi := inputEnds(s.Outer); hi <= lo || !s.Inner.InRange() {
		return Seat{}, &InputError{"feed", feed.String(), "small enough to leave some of the seat"}
	}
	return s, nil
}
