package piston

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// eightPistons is a set with all that a gasket is chosen by.
func eightPistons() GasketCheck {
	g := GasketCheck{Table: gasketTable(), Clearance: tolerance.Spec{New: band("min 0.6 mm")}, Tilt: tolerance.Spec{Wear: band("max 0.05 mm")}}
	for i := range 8 {
		g.Pistons = append(g.Pistons, deckPiston("piston "+strconv.Itoa(i+1), "0.62 ±0.005 mm", "0.63 ±0.005 mm"))
	}
	return g
}

func BenchmarkDeck(b *testing.B) {
	b.Run("lib=tenthou/op=deckabove", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sink = DeckAbove(mm245, 96*units.Millimetre, 150*units.Millimetre, 47*units.Millimetre)
		}
	})
	b.Run("lib=float64/op=deckabove", func(b *testing.B) {
		b.ReportAllocs()
		block, stroke, rod, height := 245.0, 96.0, 150.0, 47.0
		for b.Loop() {
			sinkFloat = height + rod + stroke/2 - block
		}
	})
	b.Run("lib=tenthou/op=deckbracket", func(b *testing.B) {
		b.ReportAllocs()
		h, s, l, c := at("245 ±0.02 mm"), at("96 ±0.01 mm"), at("150 ±0.01 mm"), at("47.65 ±0.005 mm")
		for b.Loop() {
			sinkBracket = DeckAbove(h, s, l, c)
		}
	})
	b.Run("lib=tenthou/op=gasket8", func(b *testing.B) {
		b.ReportAllocs()
		g := eightPistons()
		for b.Loop() {
			if _, err := g.Choose(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=masses8", func(b *testing.B) {
		b.ReportAllocs()
		s := massSet("max 4 g", "412 ±0.1 g", "415 ±0.1 g", "410 ±0.1 g", "418 ±0.1 g", "411 ±0.1 g", "412 ±0.1 g", "413 ±0.1 g", "414 ±0.1 g")
		for b.Loop() {
			if _, err := s.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func TestGasketOfEight(t *testing.T) {
	r, err := eightPistons().Choose()
	require.NoError(t, err)
	require.Equal(t, 1, r.Row)
	require.Len(t, r.Governs, 8)
}
