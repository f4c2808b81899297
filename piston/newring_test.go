package piston

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Expected answers worked by hand from clearance + used − new, in hundredths
// of a millimetre, no outside source: geometry.
func TestTryNewRing(t *testing.T) {
	for _, c := range []struct {
		name                          string
		clearance, used, fresh, allow string
		outcome                       Outcome
		heights                       string // "" where none is sure
		possible                      string
	}{
		// 0.08 + 1.47 − 1.49 = 0.06: back in 0.03–0.07.
		{"exact, back", "0.08 mm", "1.47 mm", "1.49–1.49 mm", "0.03–0.07 mm", RingRestores, "[1.48 mm, 1.52 mm]", "[1.48 mm, 1.52 mm]"},
		// 0.12 + 1.47 − 1.49 = 0.10: still out.
		{"exact, still out", "0.12 mm", "1.47 mm", "1.49–1.49 mm", "0.03–0.07 mm", RingStillOut, "[1.52 mm, 1.56 mm]", "[1.52 mm, 1.56 mm]"},
		// 0.04 + 1.47 − 1.49 = 0.02: too tight.
		{"exact, too tight", "0.04 mm", "1.47 mm", "1.49–1.49 mm", "0.03–0.07 mm", RingTooTight, "[1.44 mm, 1.48 mm]", "[1.44 mm, 1.48 mm]"},
		// On the limit: 0.09 + 1.47 − 1.49 = 0.07 is in "max 0.07", not in "less than 0.07".
		{"on a closed limit", "0.09 mm", "1.47 mm", "1.49–1.49 mm", "max 0.07 mm", RingRestores, "[1.49 mm, ∞)", "[1.49 mm, ∞)"},
		{"on an open limit", "0.09 mm", "1.47 mm", "1.49–1.49 mm", "less than 0.07 mm", RingStillOut, "(1.49 mm, ∞)", "(1.49 mm, ∞)"},
		// [0.08, 0.10) + 1.47 − 1.49 = [0.06, 0.08): can't tell; 1.50 to 1.52 is sure.
		{"bracket", "[0.08 mm, 0.1 mm)", "1.47 mm", "1.49–1.49 mm", "0.03–0.07 mm", RingCantTell, "[1.5 mm, 1.52 mm]", "[1.48 mm, 1.54 mm)"},
		// With "less than 0.07" the open top of the bracket keeps 1.50 sure.
		{"bracket against less than", "[0.08 mm, 0.1 mm)", "1.47 mm", "1.49–1.49 mm", "less than 0.07 mm", RingCantTell, "[1.5 mm, ∞)", "(1.48 mm, ∞)"},
		// A bracket wider than the band: no height is sure.
		{"wide bracket", "[0.08 mm, 0.2 mm)", "1.47 mm", "1.49–1.49 mm", "0.03–0.07 mm", RingCantTell, "", "[1.48 mm, 1.64 mm)"},
		// No blade refused: nothing bounds the clearance, 0.08 + 1.47 − 1.44 = 0.11 at the least.
		{"no top", "[0.08 mm, ∞)", "1.47 mm", "1.44–1.44 mm", "max 0.07 mm", RingStillOut, "", "[1.48 mm, ∞)"},
		// The new ring's own band decides: 0.08 + 1.47 − 1.46…1.49 = 0.06…0.09.
		{"band of new rings", "0.08 mm", "1.47 mm", "1.46–1.49 mm", "0.03–0.07 mm", RingCantTell, "[1.48 mm, 1.52 mm]", "[1.48 mm, 1.52 mm]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			n, err := TryNewRing([]tolerance.Bracket{at(c.clearance)}, at(c.used), band(c.fresh), band(c.allow))
			require.NoError(t, err)
			require.Equal(t, c.outcome, n.Outcome, n.Outcome.String())
			require.Equal(t, c.heights != "", n.Ok)
			if n.Ok {
				require.Equal(t, at(c.heights), n.Heights)
			}
			require.Equal(t, at(c.possible), n.Possible)
			require.Equal(t, c.outcome == RingCantTell, n.Settle != "")
		})
	}
}

func TestTryNewRingWithoutWhatItNeeds(t *testing.T) {
	c := []tolerance.Bracket{at("0.08 mm")}
	n, err := TryNewRing(c, tolerance.Bracket{}, band("1.49–1.49 mm"), band("max 0.07 mm"))
	require.NoError(t, err)
	require.Equal(t, NewRing{Settle: "measure the used ring's height"}, n)

	n, err = TryNewRing(c, at("1.47 mm"), tolerance.Band{}, band("max 0.07 mm"))
	require.NoError(t, err)
	require.Equal(t, RingCantTell, n.Outcome)
	require.Contains(t, n.Settle, "new ring's height")

	n, err = TryNewRing(c, at("1.47 mm"), band("1.49–1.49 mm"), tolerance.Band{})
	require.NoError(t, err)
	require.Contains(t, n.Settle, "manual")

	_, err = TryNewRing(nil, at("1.47 mm"), band("1.49–1.49 mm"), band("max 0.07 mm"))
	require.ErrorIs(t, err, ErrInput)
	_, err = TryNewRing(c, at("-1.47 mm"), band("1.49–1.49 mm"), band("max 0.07 mm"))
	require.EqualError(t, err, "piston: used ring height -1.47 mm is not above 0 mm")
	_, err = TryNewRing(c, at("1.47 mm"), band("max 1.49 mm"), band("max 0.07 mm"))
	require.ErrorIs(t, err, ErrInput, "a new ring's height needs a least")
	_, err = TryNewRing([]tolerance.Bracket{tolerance.Exactly(units.OutOfRange[units.Length]())}, at("1.47 mm"), band("1.49–1.49 mm"), band("max 0.07 mm"))
	require.ErrorIs(t, err, ErrInput)
}

func TestTryNewRingRoundTheGroove(t *testing.T) {
	two := []tolerance.Bracket{at("0.05 mm"), at("0.12 mm")}
	n, err := TryNewRing(two, at("1.47 mm"), band("1.50–1.50 mm"), band("0.03–0.07 mm"))
	require.NoError(t, err)
	require.Equal(t, RingUneven, n.Outcome, "0.02 in one place, 0.09 in another")
	require.Equal(t, at("0.02 mm"), n.Least)
	require.Equal(t, at("0.09 mm"), n.Greatest)
	require.False(t, n.Ok, "0.07 of difference and 0.04 of band: no ring suits both places")
	require.True(t, n.Possible.IsZero())
}

// Sure heights are those, and only those, that serve at every corner of the
// readings; possible ones serve at one corner at least. Judged by enumeration
// on a small grid, in quanta.
func TestHeightsAgainstEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	kinds := []tolerance.End{tolerance.Open, tolerance.Closed}
	for range 1500 {
		q := func(lo, n int64) units.Length { return units.Length(2 * (lo + r.Int64N(n))) } // even: half-steps are the odd ones
		interval := func(lo, n int64) (tolerance.Bracket, bool) {
			a, b := q(lo, n), q(lo, n)
			i, err := tolerance.NewInterval(min(a, b), kinds[r.IntN(2)], max(a, b), kinds[r.IntN(2)])
			return i, err == nil
		}
		c, ok1 := interval(0, 6)
		h, ok2 := interval(10, 3)
		a, ok3 := interval(1, 6)
		if !ok1 || !ok2 || !ok3 {
			continue
		}
		allowed := tolerance.BandFrom(a)
		n, err := TryNewRing([]tolerance.Bracket{c}, h, tolerance.MustBetween(units.Length(20), units.Length(20)), allowed)
		require.NoError(t, err)
		for f := range int64(60) {
			sure, possible, any := true, false, false
			// A fine grid stands for the reals: quarters of the even steps.
			for cc := int64(-4); cc < 4*16; cc++ {
				for hh := int64(4 * 18); hh < 4*28; hh++ {
					if !holds(c, cc) || !holds(h, hh) {
						continue
					}
					any = true
					in := holds(a, cc+hh-4*f)
					sure, possible = sure && in, possible || in
				}
			}
			require.True(t, any)
			require.Equal(t, sure, n.Ok && n.Heights.Contains(units.Length(f)), "c %v h %v allowed %v f %d: sure %v", c, h, allowed, f, n.Heights)
			require.Equal(t, possible, n.Possible.Contains(units.Length(f)), "c %v h %v allowed %v f %d: possible %v", c, h, allowed, f, n.Possible)
		}
	}
}

// holds reports whether q/4 lies in i.
func holds(i tolerance.Bracket, q int64) bool {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	a, b := 4*int64(lo), 4*int64(hi)
	return (q > a || q == a && loEnd == tolerance.Closed) && (q < b || q == b && hiEnd == tolerance.Closed)
}

func TestOutcomeWords(t *testing.T) {
	for o, want := range map[Outcome]string{RingCantTell: "can't tell", RingRestores: "back in band", RingStillOut: "still too large", RingTooTight: "too tight", 99: "can't tell"} {
		text, err := o.MarshalText()
		require.NoError(t, err)
		require.Equal(t, want, string(text))
	}
}
