package tolerance

import "github.com/tenthou/tenthou/units"

// HoleBand is what a hole may be for every shaft of the given band to have
// the wanted clearance: from the greatest shaft and the least clearance to
// the least shaft and the greatest clearance.
//
// Where the shaft's tolerance takes all that is wanted it fails with a
// [NoRoomError], and where the shaft has no limit on a side that matters with
// a [FitError]. [ShaftBand] is the inverse; [FitBands] checks.
func HoleBand[Q units.Quantity](shaft, wanted BandOf[Q]) (BandOf[Q], error) {
	return bandFor("hole", "shaft", shaft.limits, wanted.limits, shaft.limits.neg())
}

// ShaftBand is what a shaft may be to have the wanted clearance in every hole
// of the given band: from the greatest hole less the greatest clearance to
// the least hole less the least clearance. It fails as [HoleBand] does.
func ShaftBand[Q units.Quantity](hole, wanted BandOf[Q]) (BandOf[Q], error) {
	b, err := bandFor("shaft", "hole", hole.limits, wanted.limits, hole.limits)
	if err != nil {
		return b, err
	}
	return BandOf[Q]{b.limits.neg()}, nil
}

// bandFor is what x may be for x + by to lie in wanted, by being the given
// part with the sign that it has in the clearance.
func bandFor[Q units.Quantity](what, given string, part, wanted, by Interval[Q]) (BandOf[Q], error) {
	fail := func(part string, kind error, want string) (BandOf[Q], error) {
		return BandOf[Q]{}, &FitError{Part: part, Kind: kind, Want: want}
	}
	switch {
	case part.IsZero():
		return fail(given, ErrNoLimit, "a band with at least one limit")
	case wanted.IsZero():
		return fail("wanted clearance", ErrNoLimit, "a band with at least one limit")
	case !part.InRange():
		return fail(given, ErrRange, "sizes within the range of their type")
	case !wanted.InRange() || isTemperature[Q]():
		return fail("wanted clearance", ErrRange, "a difference within the range of its type; of temperatures there is none")
	case wanted.loEnd != Absent && by.loEnd == Absent, wanted.hiEnd != Absent && by.hiEnd == Absent:
		return fail(given, ErrNoLimit, "a limit on each side on which the wanted clearance has one")
	}
	x := Interval[Q]{loEnd: endFor(wanted.loEnd, by.loEnd), hiEnd: endFor(wanted.hiEnd, by.hiEnd)}
	if x.loEnd != Absent {
		x.lo = wanted.lo - by.lo
	}
	if x.hiEnd != Absent {
		x.hi = wanted.hi - by.hi
	}
	if !inRange(x.lo) || !inRange(x.hi) {
		return fail(what, ErrRange, "sizes within the range of their type")
	}
	if x.empty() {
		takes, _ := by.Width()
		all, _ := wanted.Width()
		return BandOf[Q]{}, &NoRoomError{What: what, Takes: text(takes), Wanted: text(all), Short: text(takes - all)}
	}
	return BandOf[Q]{x}, nil
}

// endFor is the end of what may be added to an interval with the end by so
// that the sum keeps to the end wanted: the limit itself is lost only where
// the sum could stand on it and must not.
func endFor(wanted, by End) End {
	if wanted == Open && by == Open {
		return Closed
	}
	return wanted
}
