package tolerance

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

// The tenth of ten tolerances of 0.1 mm, where √10 of them are wanted: the
// page of the published example gives 0.1 mm each by root-sum-square.
func TestChain_publishedInverse(t *testing.T) {
	var c Chain
	for range 10 {
		c.Links = append(c.Links, Link{Band: MustParseBand("7 ±0.1 mm"), Sensitivity: Whole(1), Scatter: NormalScatter, Sigmas: 3})
	}
	b, err := c.RoomRootSumSquare(9, 3, MustParseBand("70 ±0.316227766 mm"))
	require.NoError(t, err)
	w, _ := b.limits.Width()
	require.InDelta(t, 0.2, w.Float(units.InMillimetres), 1e-7)
	_, err = c.RoomWorstCase(9, MustParseBand("70 ±0.316 mm"))
	require.EqualError(t, err, `tolerance: link 10 "": no room: the others take 1.8 mm of the 0.632 mm wanted, 1.168 mm too much`)
}

// Sizes picked from the bands close within the worst case, and its ends are
// the closing sizes of the limits; what a link may be by worst case keeps the
// closing size in the wanted band, and a step more doesn't.
func TestChain_holds(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	ends := []End{Open, Closed}
	rooms := 0
	for range 4000 {
		var c Chain
		var sizes []units.Length
		for range 1 + r.IntN(4) {
			lo, w := units.Length(r.Int64N(40)-20), units.Length(r.Int64N(9))
			b, err := NewBand(lo, ends[r.IntN(2)], lo+w, ends[r.IntN(2)])
			if err != nil {
				b = MustBetween(lo, lo+w)
			}
			c.Links = append(c.Links, Link{Band: b, Sensitivity: Whole([]int64{-2, -1, 1, 2}[r.IntN(4)])})
			sizes = append(sizes, lo+units.Length(r.Int64N(int64(w)+1)))
		}
		worst, err := c.WorstCase()
		require.NoError(t, err)
		closing, err := ClosingSize(c, sizes...)
		require.NoError(t, err)
		inside := true
		brackets := make([]Bracket, len(sizes))
		for i, s := range sizes {
			inside = inside && c.Links[i].Band.Allows(s)
			brackets[i] = c.Links[i].Band.limits
		}
		if inside {
			require.True(t, worst.Contains(closing))
		}
		same, err := ClosingSize(c, brackets...)
		require.NoError(t, err)
		require.Equal(t, worst, same, "the formula read with brackets")

		at := r.IntN(len(c.Links))
		wanted, err := NewBand(units.Length(r.Int64N(60)-30), End(r.IntN(3)), units.Length(r.Int64N(60)), End(r.IntN(3)))
		if err != nil || wanted.IsZero() {
			continue
		}
		b, err := c.RoomWorstCase(at, wanted)
		if err != nil {
			require.ErrorIs(t, err, ErrNoRoom)
			continue
		}
		rooms++
		keeps := func(i Bracket) bool {
			c := Chain{Links: append([]Link(nil), c.Links...)}
			c.Links[at].Band.limits = i
			w, err := c.WorstCase()
			require.NoError(t, err)
			return w.Within(wanted.limits)
		}
		require.True(t, keeps(b.limits), "%v in %v", b, c)
		for _, more := range chainWidened(b.limits) {
			require.False(t, keeps(more), "%v in %v", more, c)
		}
	}
	require.Greater(t, rooms, 500)
}

// chainWidened moves each end out by one quantum, to a limit that is had.
func chainWidened(i Bracket) (more []Bracket) {
	lo, hi := i, i
	lo.lo, lo.loEnd = lo.lo-units.Picometre, min(lo.loEnd, Closed)
	hi.hi += units.Picometre
	if i.loEnd != Absent {
		more = append(more, lo)
	}
	if i.hiEnd != Absent {
		more = append(more, hi)
	}
	return more
}

func TestChain_noRoom(t *testing.T) {
	c := chainOf(t, "10 11 1 r / 5 5.5 -2 r", units.InMillimetres)
	for _, q := range []struct {
		err  func() (Band, error)
		want string
	}{
		{func() (Band, error) { return c.RoomWorstCase(1, MustParseBand("0–0.9 mm")) },
			`tolerance: link 2 "link 2": no room: the others take 1 mm of the 0.9 mm wanted, 0.1 mm too much`},
		{func() (Band, error) { return c.RoomWorstCase(1, MustParseBand("min 0 mm, less than 1 mm")) },
			`tolerance: link 2 "link 2": no room: the others take all of the 1 mm wanted`},
		{func() (Band, error) { return c.RoomWorstCase(1, MustParseBand("0.000000001–1.000000001 mm")) },
			`tolerance: link 2 "link 2": no room: the others take all of the 1 mm wanted`},
		{func() (Band, error) { return c.RoomRootSumSquare(1, 3, MustParseBand("0–0.9 mm")) },
			`tolerance: link 2 "link 2": no room: the others take 1.732050808 mm of the 0.9 mm wanted, 0.832050808 mm too much`},
		{func() (Band, error) {
			return c.RoomRootSumSquareAbout(1, 5*units.Millimetre, 3, MustParseBand("max 0 mm"))
		},
			`tolerance: link 2 "link 2": no room: the others take 1.732050808 mm of the 0 mm wanted, 2.732050808 mm too much`},
		{func() (Band, error) {
			odd := chainOf(t, "10 11 1 r / 5 5.5 -1000 r", units.InMillimetres)
			return odd.RoomWorstCase(1, MustParseBand("0.000000001–1.000000002 mm"))
		}, `tolerance: link 2 "link 2": no room: the others take 1 mm of the 1.000000001 mm wanted and leave less than a quantum`},
		{func() (Band, error) {
			odd := chainOf(t, "10 10 1 r / 5 5.5 -1000 r", units.InMillimetres)
			return odd.RoomRootSumSquare(1, 3, MustParseBand("0.000000001–0.000000002 mm"))
		}, `tolerance: link 2 "link 2": no room: the others take 0 mm of the 0.000000001 mm wanted and leave less than a quantum`},
	} {
		b, err := q.err()
		require.Zero(t, b)
		require.ErrorIs(t, err, ErrNoRoom)
		require.EqualError(t, err, q.want)
	}
}

// A lot in the middle of the widest band just fits, and part of the band off
// its middle need not: the documentation's warning.
func TestChain_roomOffTheMiddle(t *testing.T) {
	c := chainOf(t, "10 10.08 1 n 3 / 5 5.1 -1 n 3", units.InMillimetres)
	wanted := MustParseBand("4.95–5.05 mm")
	b, err := c.RoomRootSumSquare(1, 3, wanted)
	require.NoError(t, err)
	require.Equal(t, MustParseBand("5.01–5.07 mm"), b, "3, 4, 5")
	put := func(b Band) Bracket {
		c.Links[1].Band = b
		r, err := c.RootSumSquare(3)
		require.NoError(t, err)
		return r.Within
	}
	require.Equal(t, wanted.limits, put(b))
	require.False(t, put(MustParseBand("5.01–5.04 mm")).Within(wanted.limits))
	about, err := c.RoomRootSumSquareAbout(1, units.MustParseLength("5.035 mm"), 3, wanted)
	require.NoError(t, err)
	require.True(t, put(about).Within(wanted.limits))
	b, err = c.RoomRootSumSquareAbout(1, units.MustParseLength("5.04 mm"), 3, MustParseBand("min 4.95 mm"))
	require.NoError(t, err)
	require.Equal(t, MustParseBand("5.01–5.07 mm"), b)
}
