package tolerance

import (
	"math/big"
	"strconv"
)

// RoomWorstCase is what a link, counted from 0, may be for the closing size to
// keep to wanted whatever the other links are. Its own band is not asked. The
// limits are exact, or rounded inward to the quantum; every part of the band
// given will do.
//
// Where the others alone take more than is wanted it fails with a
// [NoRoomError]; where another link has no limit that is needed, or c is not
// valid, with a [ChainError].
func (c ChainOf[Q]) RoomWorstCase(link int, wanted BandOf[Q]) (BandOf[Q], error) {
	if err := c.asked(link, wanted); err != nil {
		return BandOf[Q]{}, err
	}
	var sums [2]exactSum[Q]
	ends := [2]End{Closed, Closed}
	for i := range c.Links {
		if i == link {
			continue
		}
		l := &c.Links[i]
		least, greatest := ordered(l.Band.limits, l.Sensitivity)
		for side, x := range [2]chainLimit[Q]{least, greatest} {
			if x.end == Absent && wanted.sideEnd(side) != Absent {
				return BandOf[Q]{}, c.refuse(i, "band", ErrNoLimit, "a limit on each side on which one is wanted")
			}
			sums[side].add(x.v, l.Sensitivity)
			ends[side] = min(ends[side], x.end)
		}
	}
	if sums[0].out || sums[1].out {
		return BandOf[Q]{}, c.refuse(link, "band", ErrRange, "others whose sum is within the range of its type")
	}
	s := ratOf(c.Links[link].Sensitivity)
	var x Interval[Q]
	for side, want := range [2]Q{wanted.limits.lo, wanted.limits.hi} {
		end := wanted.sideEnd(side)
		if end == Absent {
			continue
		}
		bound := ratWhole(want)
		bound.Sub(bound, sums[side].rat()).Quo(bound, s)
		if end = endFor(end, ends[side]); !bound.IsInt() {
			end = Closed // the limit rounded inward lies inside
		}
		if (side == 0) == (s.Sign() > 0) {
			x.lo, x.loEnd = chainQuanta[Q](ratCeil(bound)), end
		} else {
			x.hi, x.hiEnd = chainQuanta[Q](ratFloor(bound)), end
		}
	}
	if x.empty() && inRange(x.lo) && inRange(x.hi) {
		takes := sums[1].rat()
		takes.Sub(takes, sums[0].rat())
		return BandOf[Q]{}, c.noRoom(link, takes, wanted.width())
	}
	return c.room(link, x)
}

func (b BandOf[Q]) sideEnd(side int) End { return [2]End{b.limits.loEnd, b.limits.hiEnd}[side] }

func (b BandOf[Q]) width() *big.Rat {
	w := ratWhole(b.limits.hi)
	return w.Sub(w, ratWhole(b.limits.lo))
}

// asked refuses a question that has no answer.
func (c ChainOf[Q]) asked(link int, wanted BandOf[Q]) error {
	if err := c.Validate(); err != nil {
		return err
	}
	fail := func(field string, kind error, want string) error {
		return &ChainError{Link: -1, Field: field, Kind: kind, Want: want}
	}
	switch {
	case link < 0 || link >= len(c.Links):
		return fail("link "+strconv.Itoa(link), ErrLinks, "one of the chain's, counted from 0")
	case wanted.IsZero():
		return fail("wanted", ErrNoLimit, "a band with at least one limit")
	case !wanted.InRange():
		return fail("wanted", ErrRange, "limits within the range of their type")
	}
	return nil
}

// room hands over a band, if it can be one.
func (c ChainOf[Q]) room(link int, x Interval[Q]) (BandOf[Q], error) {
	if !inRange(x.lo) || !inRange(x.hi) {
		return BandOf[Q]{}, c.refuse(link, "band", ErrRange, "limits within the range of their type")
	}
	return BandOf[Q]{x}, nil
}

// noRoom says how much the others take too much.
func (c ChainOf[Q]) noRoom(link int, takes, wanted *big.Rat) error {
	short := new(big.Rat).Sub(takes, wanted)
	return c.noRoomError(link, ratCeil(takes), ratFloor(wanted), ratCeil(short), short.Sign() < 0)
}

// noRoomRoot says how much the others scatter more than half each way.
func (c ChainOf[Q]) noRoomRoot(link int, sigmas float64, half, variance *big.Rat) error {
	under := ratSquare(2 * sigmas)
	under.Mul(under, variance)
	_, takes := plusRoot(new(big.Rat), under)
	wanted := new(big.Rat).Add(half, half)
	down, short := plusRoot(new(big.Rat).Neg(wanted), under)
	return c.noRoomError(link, takes, ratFloor(wanted), short, down.Sign() < 0)
}

func (c ChainOf[Q]) noRoomError(link int, takes, wanted, short *big.Int, some bool) error {
	if wanted.Sign() < 0 {
		wanted = new(big.Int)
	}
	e := &NoRoomError{
		What:   "link " + strconv.Itoa(link+1) + " " + strconv.Quote(clip(c.Links[link].Name)),
		Takes:  text(chainQuanta[Q](takes)),
		Wanted: text(chainQuanta[Q](wanted)),
	}
	if !some {
		e.Short = text(chainQuanta[Q](short))
	}
	return e
}

// RoomRootSumSquare is the widest band that a link, counted from 0, may have
// for the closing size to lie in wanted within so many standard deviations, as
// [ChainOf.RootSumSquare] has it. Its own scatter and sensitivity count, its
// band is not asked. The limits are rounded inward to the quantum.
//
// The lot must lie in the middle of the band that is given: part of the band,
// off its middle, may not do. What a lot of another middle may take,
// [ChainOf.RoomRootSumSquareAbout] tells. An open limit of wanted counts as a
// closed one.
//
// It fails with a [NoRoomError] where the others alone scatter over more than
// is wanted, and with a [ChainError] where wanted has one limit only (then the
// middle can give way for ever), or as RootSumSquare does.
func (c ChainOf[Q]) RoomRootSumSquare(link int, sigmas float64, wanted BandOf[Q]) (BandOf[Q], error) {
	if err := c.askedRoot(link, sigmas, wanted); err != nil {
		return BandOf[Q]{}, err
	}
	if wanted.limits.loEnd == Absent || wanted.limits.hiEnd == Absent {
		return BandOf[Q]{}, &ChainError{Link: -1, Field: "wanted", Kind: ErrNoLimit, Want: "a limit on both sides, or the middle of the link's lot"}
	}
	others, variance := c.moments(link)
	half := wanted.width()
	half.Mul(half, big.NewRat(1, 2))
	under, err := c.left(link, sigmas, half, variance)
	if err != nil {
		return BandOf[Q]{}, err
	}
	middle := ratWhole(wanted.limits.lo)
	middle.Add(middle, half).Sub(middle, others).Quo(middle, ratOf(c.Links[link].Sensitivity))
	_, least := lessRoot(middle, under)
	greatest, _ := plusRoot(middle, under)
	if least.Cmp(greatest) > 0 { // no quantum lies between
		return BandOf[Q]{}, c.noRoomRoot(link, sigmas, half, variance)
	}
	return c.room(link, Interval[Q]{chainQuanta[Q](least), chainQuanta[Q](greatest), Closed, Closed})
}

// RoomRootSumSquareAbout is [ChainOf.RoomRootSumSquare] for a lot that lies
// about a given middle, and for wanted bands of one limit too. Wanted in its
// [NoRoomError] is what the middle leaves on its tighter side, twice, and not
// below zero.
func (c ChainOf[Q]) RoomRootSumSquareAbout(link int, middle Q, sigmas float64, wanted BandOf[Q]) (BandOf[Q], error) {
	if err := c.askedRoot(link, sigmas, wanted); err != nil {
		return BandOf[Q]{}, err
	}
	if !inRange(middle) {
		return BandOf[Q]{}, c.refuse(link, "middle", ErrRange, "within the range of its type")
	}
	closing, variance := c.moments(link)
	at := ratOf(c.Links[link].Sensitivity)
	closing.Add(closing, at.Mul(at, ratWhole(middle)))
	var half *big.Rat
	if wanted.limits.loEnd != Absent {
		half = new(big.Rat).Sub(closing, ratWhole(wanted.limits.lo))
	}
	if wanted.limits.hiEnd != Absent {
		above := new(big.Rat).Sub(ratWhole(wanted.limits.hi), closing)
		if half == nil || above.Cmp(half) < 0 {
			half = above
		}
	}
	under, err := c.left(link, sigmas, half, variance)
	if err != nil {
		return BandOf[Q]{}, err
	}
	each, _ := plusRoot(new(big.Rat), under)
	a := chainQuanta[Q](each)
	return c.room(link, Interval[Q]{checkedSub(middle, a), checkedAdd(middle, a), Closed, Closed})
}

// askedRoot refuses a question of the root-sum-square that has no answer.
func (c ChainOf[Q]) askedRoot(link int, sigmas float64, wanted BandOf[Q]) error {
	if err := c.asked(link, wanted); err != nil {
		return err
	}
	return c.scattered(link, sigmas)
}

// left is the square of the half-width that a link may have, where the closing
// size may go half each way and the others have the variance.
func (c ChainOf[Q]) left(link int, sigmas float64, half, variance *big.Rat) (*big.Rat, error) {
	l := &c.Links[link]
	all := new(big.Rat).Mul(half, half)
	all.Quo(all, ratSquare(sigmas)).Sub(all, variance)
	if half.Sign() < 0 || all.Sign() < 0 {
		return nil, c.noRoomRoot(link, sigmas, half, variance)
	}
	s := ratOf(l.Sensitivity)
	return all.Mul(all, l.squaredRat()).Quo(all, s.Mul(s, s)), nil
}
