package tolerance

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

func TestFit_refuses(t *testing.T) {
	some, none, bad := MustParseBand("10–11 mm"), Band{}, BandFrom(broken[units.Length]())
	far := BandFrom(Exactly(units.Length(1 << 61)))
	near := BandFrom(Exactly(units.Length(-1 << 61)))
	fit := func(hole, shaft Band) error { _, err := FitBands(hole, shaft); return err }
	sizes := func(hole, shaft Band) error { _, err := FitSizes(hole.limits, shaft.limits); return err }
	hole := func(shaft, wanted Band) error { _, err := HoleBand(shaft, wanted); return err }
	shaft := func(hole, wanted Band) error { _, err := ShaftBand(hole, wanted); return err }
	for _, c := range []struct {
		err  error
		kind error
		part string
	}{
		{fit(none, some), ErrNoLimit, "hole"},
		{fit(some, none), ErrNoLimit, "shaft"},
		{fit(some, bad), ErrRange, "shaft"},
		{fit(far, near), ErrRange, "clearance"},
		{sizes(none, some), ErrNoReading, "hole"},
		{sizes(bad, some), ErrRange, "hole"},
		{hole(none, some), ErrNoLimit, "shaft"},
		{hole(some, none), ErrNoLimit, "wanted clearance"},
		{hole(bad, some), ErrRange, "shaft"},
		{hole(some, bad), ErrRange, "wanted clearance"},
		{hole(far, far), ErrRange, "hole"},
		{hole(MustParseBand("min 9 mm"), MustParseBand("min 0 mm")), ErrNoLimit, "shaft"},
		{shaft(MustParseBand("min 9 mm"), MustParseBand("max 1 mm")), ErrNoLimit, "hole"},
		{shaft(none, some), ErrNoLimit, "hole"},
	} {
		require.ErrorIs(t, c.err, c.kind)
		var e *FitError
		require.ErrorAs(t, c.err, &e)
		require.Equal(t, c.part, e.Part)
		require.NotEmpty(t, e.Error())
	}
	warm := MustBetween(20*units.Temperature(units.Kelvin), 30*units.Temperature(units.Kelvin))
	_, err := FitBands(warm, warm)
	require.ErrorIs(t, err, ErrRange)
	_, err = HoleBand(warm, warm)
	require.ErrorIs(t, err, ErrRange)
}

func TestHoleBand_noRoom(t *testing.T) {
	_, err := HoleBand(MustParseBand("29.98–30.00 mm"), MustParseBand("0.010–0.025 mm"))
	require.ErrorIs(t, err, ErrNoRoom)
	require.EqualError(t, err, "tolerance: hole: no room: the others take 0.02 mm of the 0.015 mm wanted, 0.005 mm too much")
	// As wide as what is wanted leaves one hole, unless a limit is left out.
	b, err := HoleBand(MustParseBand("29.98–30.00 mm"), MustParseBand("0.010–0.030 mm"))
	require.NoError(t, err)
	require.Equal(t, BandFrom(Exactly(units.MustParseLength("30.01 mm"))), b)
	_, err = HoleBand(MustParseBand("29.98–30.00 mm"), MustParseBand("min 0.010 mm, less than 0.030 mm"))
	require.EqualError(t, err, "tolerance: hole: no room: the others take all of the 0.02 mm wanted")
	_, err = ShaftBand(MustParseBand("29.98–30.00 mm"), MustParseBand("0.010–0.025 mm"))
	require.EqualError(t, err, "tolerance: shaft: no room: the others take 0.02 mm of the 0.015 mm wanted, 0.005 mm too much")
}

// fitRandomBand has ends of every kind, among few values, so that they meet.
func fitRandomBand(r *rand.Rand) Band {
	for {
		b, err := NewBand(units.Length(r.IntN(9)), End(r.IntN(3)), units.Length(r.IntN(9)), End(r.IntN(3)))
		if err == nil && !b.IsZero() {
			return b
		}
	}
}

// What the inverse gives fits for certain, and anything more doesn't.
func TestHoleBand_certainAndWhole(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	gave := 0
	for range 20000 {
		part, wanted := fitRandomBand(r), fitRandomBand(r)
		hole, err := HoleBand(part, wanted)
		if err != nil {
			continue
		}
		gave++
		fits := func(hole Interval[units.Length]) bool { return Clearance(hole, part.limits).Within(wanted.limits) }
		require.True(t, fits(hole.limits), "%v in %v for %v", part, hole, wanted)
		for _, more := range fitWidened(hole.limits) {
			require.False(t, fits(more), "%v in %v for %v", part, more, wanted)
		}
		shaft, err := ShaftBand(part, wanted)
		if err != nil {
			continue
		}
		require.True(t, Clearance(part.limits, shaft.limits).Within(wanted.limits))
		for _, more := range fitWidened(shaft.limits) {
			require.False(t, Clearance(part.limits, more).Within(wanted.limits))
		}
	}
	require.Greater(t, gave, 2000)
}

// fitWidened moves each end out by as little as can be.
func fitWidened(i Bracket) (more []Bracket) {
	lo, hi := i, i
	switch i.loEnd {
	case Open:
		lo.loEnd = Closed
	case Closed:
		lo.loEnd, lo.lo = Open, lo.lo-units.Picometre
	}
	switch i.hiEnd {
	case Open:
		hi.hiEnd = Closed
	case Closed:
		hi.hiEnd, hi.hi = Open, hi.hi+units.Picometre
	}
	for _, m := range []Bracket{lo, hi} {
		if m != i {
			more = append(more, m)
		}
	}
	return more
}
