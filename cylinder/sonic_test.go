package cylinder

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Walls: what a shift takes from each, by hand; and a bar that breaks through.
func TestWallsLeft(t *testing.T) {
	b := WornBore{Finished: 86 * units.Millimetre, Sonic: []SonicWall{
		{Where: "thrust", Heading: thrust, Wall: boreAt("4.00 mm"), Wear: boreAt("0.10 mm")},
		{Where: "other", Heading: other, Wall: boreAt("3.50 mm"), Wear: boreAt("0 mm")},
		{Where: "front", Heading: 0, Wall: boreAt("5.0 ±0.1 mm")},
		{Where: "corner", Heading: 45 * units.Degree, Wall: boreAt("5 mm"), Wear: boreAt("0 mm")},
	}}
	left, err := WallsLeft(&b, BoreCentre{Y: boreLen("0.05 mm")}, boreAt("86.18 mm"))
	require.NoError(t, err)
	require.Equal(t, WallLeft{"thrust", boreAt("0.04 mm"), boreAt("3.96 mm")}, left[0])
	require.Equal(t, WallLeft{"other", boreAt("0.04 mm"), boreAt("3.46 mm")}, left[1])
	require.Equal(t, boreLen("0.04 mm"), WallCut(boreLen("86.18 mm"), b.Finished, boreLen("0.05 mm"), boreLen("0.10 mm")))
	// Square to the shift the sag is 0.05²/86 = 29 nm.
	lo, hi := bothOf(left[2].Cut)
	require.InDelta(t, 0.09-0.05*0.05/2/43.09, hi.Float(units.InMillimetres), 2e-9)
	require.LessOrEqual(t, hi-lo, units.Length(1))
	// At 45°: 0.09 + 0.05/√2 less half the sag.
	lo, _ = bothOf(left[3].Cut)
	require.InDelta(t, 0.09+0.05/1.4142135623730951-0.05*0.05/4/43.09, lo.Float(units.InMillimetres), 3e-9)

	// On the original axis every heading is exact.
	left, err = WallsLeft(&b, BoreCentre{}, boreAt("86.18 mm"))
	require.NoError(t, err)
	require.Equal(t, boreAt("0.09 mm"), left[3].Cut)
	require.Equal(t, boreAt("0 mm"), left[0].Cut, "worn beyond the new bore already")

	size, where, ok, err := LargestByWall(&b, BoreCentre{}, 3*units.Millimetre)
	require.NoError(t, err)
	require.True(t, ok)
	require.Equal(t, "other", where)
	require.Equal(t, boreLen("87 mm"), size)
	size, where, _, err = LargestByWall(&b, BoreCentre{Y: boreLen("0.3 mm")}, 3*units.Millimetre)
	require.NoError(t, err)
	require.Equal(t, "thrust", where, "4 + 0.10 − 3 − 0.3 = 0.8 per side, and 0.8 at the other")
	require.Equal(t, boreLen("87.6 mm"), size)
	_, _, ok, err = LargestByWall(&WornBore{Finished: 1}, BoreCentre{}, 0)
	require.NoError(t, err)
	require.False(t, ok)

	bad := b
	bad.Finished = 0
	for _, f := range []func() error{
		func() error { _, err := WallsLeft(&bad, BoreCentre{}, boreAt("86 mm")); return err },
		func() error { _, err := WallsLeft(&b, BoreCentre{}, boreAt("0 mm")); return err },
		func() error { _, err := WallsLeft(&b, BoreCentre{X: boreLen("30 mm")}, boreAt("86 mm")); return err },
		func() error { _, _, _, err := LargestByWall(&bad, BoreCentre{}, 0); return err },
		func() error { _, _, _, err := LargestByWall(&b, BoreCentre{}, -1); return err },
	} {
		require.ErrorIs(t, f(), ErrInput)
	}
	bad = b
	bad.Sonic = []SonicWall{{}}
	_, _, _, err = LargestByWall(&bad, BoreCentre{}, 0)
	require.ErrorIs(t, err, ErrInput)
	_, err = WallsLeft(&bad, BoreCentre{}, boreAt("86 mm"))
	require.ErrorIs(t, err, ErrInput)

	// The largest size by the wall leaves just that wall, at any centre.
	r := rand.New(rand.NewPCG(15, 1))
	for range 300 {
		b := WornBore{Finished: 86 * units.Millimetre}
		for range 1 + r.IntN(6) {
			b.Sonic = append(b.Sonic, SonicWall{Heading: units.Angle(r.IntN(72)) * 5 * units.Degree,
				Wall: tolerance.Exactly(units.Length(3e9 + r.Int64N(3e9))), Wear: tolerance.Exactly(units.Length(r.Int64N(2e8)))})
		}
		c := BoreCentre{units.Length(r.Int64N(2e8) - 1e8), units.Length(r.Int64N(2e8) - 1e8)}
		least := 2 * units.Millimetre
		size, _, _, err := LargestByWall(&b, c, least)
		require.NoError(t, err)
		left, err := WallsLeft(&b, c, tolerance.Exactly(size))
		require.NoError(t, err)
		thinnest := units.Length(1 << 60)
		for _, w := range left {
			lo, _ := bothOf(w.Left)
			thinnest = min(thinnest, lo)
		}
		require.InDelta(t, float64(least), float64(thinnest), 3)
	}
}

func TestChooseOversize_walls(t *testing.T) {
	j := block("0.10 mm")
	j.Plan.LeastWall = 3 * units.Millimetre
	j.Bores[0].Sonic = []SonicWall{{Where: "front", Heading: 0, Wall: boreAt("3.20 mm"), Wear: boreAt("0 mm")}}
	c := choose(t, j)
	require.Equal(t, OversizeLiner, c.Outcome, "+0.50 leaves 2.95")
	require.Equal(t, tolerance.Below, c.Bores[0].Fits[1].WallStands)
	require.Equal(t, boreAt("2.95 mm"), c.Bores[0].Fits[1].Wall)
	require.Equal(t, "front", c.Bores[0].Fits[1].WallAt)
	j.Plan.Centring = MovedToBore
	c = choose(t, j)
	require.Equal(t, "+0.25 mm", c.Kits[c.Kit].Name)

	// More oversize than wall: bored through.
	j.Plan.LeastWall = 0
	j.Bores[0].Sonic[0].Wall = boreAt("0.12 mm")
	require.Equal(t, OversizeLiner, choose(t, j).Outcome)

	// The wall's own doubt.
	j.Plan.LeastWall = 3 * units.Millimetre
	j.Bores[0].Sonic[0].Wall = boreAt("3.12 ±0.05 mm")
	c = choose(t, j)
	require.Equal(t, OversizeUndecided, c.Outcome)
	require.Contains(t, c.Settle, "read its walls more closely")
	// A moved bar of which the place isn't known.
	j.Bores[0].Sonic[0].Wall = boreAt("5 mm")
	j.Bores[0].Walls, j.Bores[0].Greatest = nil, boreAt("86.01 mm")
	require.Contains(t, choose(t, j).Settle, "dial where the bar stands")

	// The maker's largest bore.
	j = block("0.10 mm")
	j.Plan.LargestBore = boreLen("86.30 mm")
	c = choose(t, j)
	require.Equal(t, OversizeLiner, c.Outcome)
	require.Len(t, c.Options, 1, "nothing larger may be bored at all")
	j.Plan.LargestBore = boreLen("86.50 mm")
	require.Equal(t, OversizeKit, choose(t, j).Outcome)
	j.Clearance = boreAt("0.05 mm")
	j.Kits[1].Pistons = []tolerance.Bracket{boreAt("86.45 ±0.002 mm")}
	c = choose(t, j)
	require.Equal(t, OversizeUndecided, c.Outcome)
	require.Contains(t, c.Settle, "the largest bore allowed lies within what is known")

	// Walls too thin for a liner.
	j = block("0.10 mm", "0.60 mm")
	j.Liner.Outside = boreLen("90 mm")
	j.Plan.LeastWall = 2 * units.Millimetre
	j.Bores[1].Sonic = []SonicWall{{Where: "front", Heading: 0, Wall: boreAt("3.5 mm"), Wear: boreAt("0 mm")}}
	require.Equal(t, tolerance.Below, choose(t, j).Options[0].LinersStand)
	j.Bores[1].Sonic[0].Wall = boreAt("4.5 mm")
	require.Equal(t, tolerance.Within, choose(t, j).Options[0].LinersStand)
}
