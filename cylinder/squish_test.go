package cylinder

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
)

func squishCheck(t *testing.T, gasket string, decks ...string) SquishCheck {
	t.Helper()
	c := SquishCheck{Gasket: parsedLength(t, gasket), Limits: tolerance.Spec{New: tolerance.MustParseBand("0.90–1.20 mm")}}
	for i, d := range decks {
		deck, err := ParseDeck(d)
		require.NoError(t, err)
		c.Pistons = append(c.Pistons, PistonDeck{fmt.Sprintf("piston %d", i+1), deck})
	}
	return c
}

// By hand: squish = deck below + gasket. The highest piston has the least.
func TestSquish(t *testing.T) {
	r, err := squishCheck(t, "1.00 mm", "0.05 mm below", "0.04 mm above", "0.02 mm below").Assess()
	require.NoError(t, err)
	require.Equal(t, []tolerance.Bracket{parsedLength(t, "1.05 mm"), parsedLength(t, "0.96 mm"), parsedLength(t, "1.02 mm")}, r.Squish)
	require.Equal(t, []string{"piston 2"}, r.Highest)
	require.Equal(t, tolerance.AsNew, r.Finding.Standing)
	require.Equal(t, parsedLength(t, "0.96 mm"), r.Finding.Least)

	// One piston out, all out: the other three don't help.
	r, err = squishCheck(t, "1.00 mm", "0.05 mm below", "0.15 mm above").Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.OutsideNewBand, r.Finding.Standing)
	require.Equal(t, tolerance.Below, r.Finding.New.Least)

	// Which is the highest can't be told: both are named.
	r, err = squishCheck(t, "1.00 mm", "0.05 ±0.02 mm above", "0.04 ±0.02 mm above", "0.3 mm below").Assess()
	require.NoError(t, err)
	require.Equal(t, []string{"piston 1", "piston 2"}, r.Highest)
	require.Equal(t, "piston 1 or piston 2", r.Finding.Where)
}

func TestSquishRefuses(t *testing.T) {
	_, err := squishCheck(t, "0 mm", "level").Assess()
	require.ErrorIs(t, err, ErrInput)
	c := squishCheck(t, "1 mm", "level")
	c.Pistons[0].Deck = Deck{}
	_, err = c.Assess()
	require.ErrorContains(t, err, "deck of piston 1 not measured")
	_, err = squishCheck(t, "1 mm").Assess()
	require.ErrorIs(t, err, tolerance.ErrNoReading)
	_, err = squishCheck(t, "1 mm", "1 mm above").Assess()
	require.ErrorIs(t, err, ErrContact)
	require.ErrorContains(t, err, "squish of piston 1 0.000 mm is not above 0: the piston hits the head")
	_, err = squishCheck(t, "1 mm", "0.99 ±0.02 mm above").Assess()
	require.ErrorContains(t, err, "may hit the head")
}

func TestChooseGasket(t *testing.T) {
	c := squishCheck(t, "1 mm", "0.10 mm above", "0.02 mm above")
	offered := []tolerance.Bracket{parsedLength(t, "1.20 mm"), parsedLength(t, "0.10 mm"), parsedLength(t, "1.00 mm"), parsedLength(t, "1.10 mm"), parsedLength(t, "1.00 ±0.02 mm")}
	i, r, err := c.Choose(offered...)
	require.NoError(t, err)
	require.Equal(t, 2, i) // 1.00 − 0.10 = 0.90, on the limit and within it; the one of ±0.02 can't be told
	require.Equal(t, parsedLength(t, "0.90 mm"), r.Finding.Least)

	i, _, err = c.Choose(parsedLength(t, "1.40 mm"))
	require.NoError(t, err)
	require.Equal(t, -1, i)
	_, _, err = c.Choose(parsedLength(t, "-1 mm"))
	require.ErrorIs(t, err, ErrInput)

	// A wear limit alone is enough where it is all there is.
	c.Limits = tolerance.Spec{Wear: tolerance.MustParseBand("min 0.8 mm")}
	i, _, err = c.Choose(offered...)
	require.NoError(t, err)
	require.Equal(t, 4, i) // 0.98 at its least, the thinnest that leaves 0.8 for certain
}
