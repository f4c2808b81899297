package cylinder

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// holds fails unless the bracket is a few quanta wide and holds the expected
// value, to half a unit of the judge's last digit.
func holds[Q units.Quantity](t *testing.T, want float64, i tolerance.Interval[Q], scale float64, what string) {
	t.Helper()
	lo, _ := i.Lower()
	hi, _ := i.Upper()
	require.True(t, i.InRange(), what)
	require.LessOrEqual(t, int64(hi-lo), int64(20), what)
	require.InDelta(t, want*scale, float64(lo), 20, what)
	require.LessOrEqual(t, float64(lo), want*scale+0.5, what)
	require.GreaterOrEqual(t, float64(hi), want*scale-0.5, what)
}

// Each answer against a root finder's on the forward formula; and the build
// with the answer in it has the wanted ratio, to what a picometre moves it:
// 8000 mm² by 10⁻⁹ mm in a clearance volume of 25 cm³ are 3.2 parts in 10¹⁰.
func TestInverseReference(t *testing.T) {
	const pm, fL10 = 1e9, 1e11
	vectors.Load(t, "reference/cylinder_displacement_inverse.txt").Each(t, func(t *testing.T, c vectors.Case) {
		b := Build{
			Bore: parsedLength(t, c.Text("bore")+" mm"), Stroke: parsedLength(t, c.Text("stroke")+" mm"), Chamber: parsedVolume(t, c.Text("chamber")+" cm³"),
			Gasket: Gasket{parsedLength(t, c.Text("gbore")+" mm"), parsedLength(t, c.Text("gasket")+" mm")}, Deck: DeckBelow(parsedLength(t, c.Text("deck")+" mm")),
			OpenAreaMM2: c.Float("area"),
		}
		if crown := parsedVolume(t, c.Text("crown")+" cm³"); cc(crown) < 0 {
			b.Crown.Dome = tolerance.Exactly(units.Volume(0)).Sub(crown)
		} else {
			b.Crown.Dish = crown
		}
		wanted, err := tolerance.ParseRatio(c.Text("wanted"))
		require.NoError(t, err)
		undone := func(b Build, what string) {
			t.Helper()
			r, err := b.Compression()
			require.NoError(t, err, what)
			require.InEpsilon(t, wanted.Float(), r.Ratio.Middle(), 3.2e-10, what)
		}
		middle := func(i tolerance.Bracket) tolerance.Bracket {
			m, _ := i.Middle()
			return tolerance.Exactly(m)
		}

		gasket, err := b.GasketFor(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_gasket"), gasket, pm, "gasket")
		after := b
		after.Gasket.Thickness = middle(gasket)
		undone(after, "gasket")

		chamber, err := b.ChamberFor(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_chamber"), chamber, fL10, "chamber")
		after = b
		after.Chamber = chamber
		undone(after, "chamber")

		deck, err := b.DeckFor(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_deck"), deck.Below(), pm, "deck")
		after = b
		after.Deck = DeckBelow(middle(deck.Below()))
		undone(after, "deck")

		off, err := b.HeadSkimFor(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_headskim"), off, pm, "head skim")
		after, err = b.HeadSkimmed(middle(off))
		require.NoError(t, err)
		undone(after, "head skim")

		off, err = b.BlockSkimFor(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_blockskim"), off, pm, "block skim")
		after, err = b.BlockSkimmed(middle(off))
		require.NoError(t, err)
		undone(after, "block skim")

		stroke, err := b.StrokeFor(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_stroke"), stroke, pm, "stroke")
		after = b
		after.Stroke = middle(stroke)
		undone(after, "stroke")

		stroke, deck, err = b.StrokeForSameRod(wanted)
		require.NoError(t, err)
		holds(t, c.Float("to_strokesamerod"), stroke, pm, "stroke with the same rod")
		after = b
		after.Stroke, after.Deck = middle(stroke), DeckBelow(middle(deck.Below()))
		undone(after, "stroke with the same rod")

		// The two strokes over Real, for the working.
		comp, err := b.Compression()
		require.NoError(t, err)
		bore, w := inMM(mustMiddle(b.Bore))/10, tolerance.Float(wanted.Float())
		require.InEpsilon(t, c.Float("to_stroke")/10, float64(StrokeForRatio(bore, tolerance.Float(cc(comp.Clearance)), w)), 1e-12)
		require.InEpsilon(t, c.Float("to_strokesamerod")/10, float64(StrokeForRatioSameRod(bore, tolerance.Float(cc(comp.Swept)), tolerance.Float(cc(comp.Clearance)), w)), 1e-12)
	})
}

func mustMiddle(i tolerance.Bracket) units.Length {
	m, _ := i.Middle()
	return m
}

// With bores that aren't exact the answer holds those of every bore.
func TestInverseHoldsEveryBore(t *testing.T) {
	loose := handBuild(t)
	loose.Bore, loose.OpenAreaMM2 = parsedLength(t, "86 ±0.05 mm"), 5000
	wanted := tolerance.Ratio{Num: 21, Den: 2}
	wide, err := loose.GasketFor(wanted)
	require.NoError(t, err)
	skim, err := loose.HeadSkimFor(wanted)
	require.NoError(t, err)
	for _, bore := range []string{"85.95 mm", "86 mm", "86.05 mm"} {
		b := loose
		b.Bore = parsedLength(t, bore)
		one, err := b.GasketFor(wanted)
		require.NoError(t, err)
		require.True(t, one.Within(wide), bore)
		one, err = b.HeadSkimFor(wanted)
		require.NoError(t, err)
		require.True(t, one.Within(skim), bore)
	}
}

func TestInverseRefuses(t *testing.T) {
	b := handBuild(t)
	b.OpenAreaMM2 = 5000
	ratio := func(num, den int64) tolerance.Ratio { return tolerance.Ratio{Num: num, Den: den} }
	for _, r := range []tolerance.Ratio{{}, ratio(1, 1), ratio(1, 2), ratio(-9, 1), ratio(9, 0), ratio(1<<63-1, 1)} {
		for _, err := range []error{
			second(b.GasketFor(r)), second(b.ChamberFor(r)), second(b.DeckFor(r)), second(b.HeadSkimFor(r)), second(b.BlockSkimFor(r)), second(b.StrokeFor(r)), third(b.StrokeForSameRod(r)),
		} {
			require.ErrorIs(t, err, ErrInput)
			require.ErrorContains(t, err, "above 1")
		}
	}
	// A denominator below zero is the same ratio.
	g, err := b.GasketFor(ratio(-21, -2))
	require.NoError(t, err)
	same, err := b.GasketFor(ratio(21, 2))
	require.NoError(t, err)
	require.Equal(t, same, g)

	require.ErrorContains(t, second(b.GasketFor(ratio(40, 1))), "leaves room for a gasket")
	require.ErrorContains(t, second(b.ChamberFor(ratio(100, 1))), "leaves the chamber a volume")
	require.ErrorContains(t, second(b.HeadSkimFor(ratio(8, 1))), "a skim only raises it")
	require.ErrorContains(t, second(b.BlockSkimFor(ratio(8, 1))), "a skim only raises it")
	require.ErrorContains(t, second(b.HeadSkimFor(ratio(1000, 1))), "less than the chamber's volume")
	bad := b
	bad.OpenAreaMM2 = 0
	require.ErrorContains(t, second(bad.HeadSkimFor(ratio(21, 2))), "not the bore's")
	bad = b
	bad.Bore = tolerance.Bracket{}
	require.ErrorContains(t, second(bad.GasketFor(ratio(21, 2))), "bore")
	require.ErrorContains(t, second(bad.BlockSkimFor(ratio(21, 2))), "bore")
	require.ErrorContains(t, second(bad.HeadSkimFor(ratio(21, 2))), "bore")
	require.ErrorContains(t, third(bad.StrokeForSameRod(ratio(21, 2))), "bore")
	bad = b
	bad.Bore, bad.Stroke = parsedLength(t, "90 m"), parsedLength(t, "90 m")
	require.ErrorContains(t, second(bad.GasketFor(ratio(21, 2))), "within range")
}

func second[A any](_ A, err error) error        { return err }
func third[A, B any](_ A, _ B, err error) error { return err }

// By hand: 0.20 mm off an open area of 5000 mm² is 1.000 cm³.
func TestChanges(t *testing.T) {
	b := handBuild(t)
	b.OpenAreaMM2 = 5000
	after, err := b.HeadSkimmed(parsedLength(t, "0.20 mm"))
	require.NoError(t, err)
	require.Equal(t, parsedVolume(t, "44 cm³"), after.Chamber)
	require.Equal(t, 1.0, float64(SkimVolume(tolerance.Float(50), 0.02)))
	require.InDelta(t, 50, float64(OpenArea(tolerance.Float(45), 44, 0.02)), 1e-12)

	after, err = b.BlockSkimmed(parsedLength(t, "0.40 mm"))
	require.NoError(t, err)
	require.Equal(t, "0.1 mm above", after.Deck.String())

	after, err = b.Rebored(parsedLength(t, "87.8 mm"))
	require.NoError(t, err)
	c, err := after.Compression()
	require.NoError(t, err)
	require.Equal(t, []Doubt{GasketOverhangs}, c.Doubts)
	require.Greater(t, c.Ratio.Least, 9.78)

	require.Error(t, second(b.Rebored(parsedLength(t, "0 mm"))))
	require.ErrorContains(t, second(b.HeadSkimmed(tolerance.Bracket{})), "skim (not given)")
	require.ErrorContains(t, second(b.HeadSkimmed(parsedLength(t, "-0.1 mm"))), "0 or more")
	require.ErrorContains(t, second(b.HeadSkimmed(parsedLength(t, "10 mm"))), "less than the chamber's volume")
	require.ErrorContains(t, second(b.BlockSkimmed(parsedLength(t, "[0.1 mm, ∞)"))), "known on both sides")
	require.ErrorContains(t, second(Build{}.BlockSkimmed(parsedLength(t, "0.1 mm"))), "deck")
	require.ErrorContains(t, second(Build{OpenAreaMM2: 1e30}.HeadSkimmed(parsedLength(t, "0.1 mm"))), "open area")
}
