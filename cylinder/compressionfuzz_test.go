package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Whatever the sizes, a build is answered or refused by name.
func FuzzCompression(f *testing.F) {
	f.Add("86 mm", "86 mm", "45 cm³", "87.5 mm", "1.2 mm", "0.3 mm below", "3 cm³", "0 cm³", 5000.0, int64(21), int64(2))
	f.Add("3 ±0.01 in", "4 in", "0 cm³", "1 mm", "[0 mm, 1 mm]", "level", "0 cm³", "90 cm³", -1.0, int64(1), int64(0))
	f.Fuzz(func(t *testing.T, bore, stroke, chamber, gbore, gasket, deck, dish, dome string, area float64, num, den int64) {
		b := Build{OpenAreaMM2: area}
		var err error
		for text, into := range map[string]*tolerance.Bracket{bore: &b.Bore, stroke: &b.Stroke, gbore: &b.Gasket.Bore, gasket: &b.Gasket.Thickness} {
			if *into, err = tolerance.ParseBracket(text); err != nil {
				return
			}
		}
		for text, into := range map[string]*VolumeBracket{chamber: &b.Chamber, dish: &b.Crown.Dish, dome: &b.Crown.Dome} {
			if *into, err = tolerance.ParseInterval[units.Volume](text); err != nil {
				return
			}
		}
		if b.Deck, err = ParseDeck(deck); err != nil {
			return
		}
		ratio := tolerance.Ratio{Num: num, Den: den}
		named := func(err error) {
			if err != nil {
				require.ErrorIs(t, err, ErrInput)
			}
		}
		c, err := b.Compression()
		named(err)
		if err == nil {
			require.Greater(t, c.Ratio.Greatest, 1.0)
			require.LessOrEqual(t, c.Ratio.Least, c.Ratio.Greatest)
		}
		_, err = b.GasketFor(ratio)
		named(err)
		_, err = b.ChamberFor(ratio)
		named(err)
		_, err = b.DeckFor(ratio)
		named(err)
		_, err = b.HeadSkimFor(ratio)
		named(err)
		_, err = b.BlockSkimFor(ratio)
		named(err)
		_, err = b.StrokeFor(ratio)
		named(err)
		_, _, err = b.StrokeForSameRod(ratio)
		named(err)
	})
}
