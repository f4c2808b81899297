package piston

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func TestDeckByHand(t *testing.T) {
	vectors.Load(t, "practice/piston_deck.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l := func(col string) units.Length { return units.MustParseLength(c.Text(col)) }
		block, stroke, rod, height, below := l("block"), l("stroke"), l("rod"), l("compression"), l("below")
		require.Equal(t, below, DeckBelow(block, stroke, rod, height))
		require.Equal(t, -below, DeckAbove(block, stroke, rod, height))
		require.Equal(t, block, DeckBlockHeight(below, stroke, rod, height))
		require.Equal(t, height, DeckCompressionHeight(below, block, stroke, rod))
		require.Equal(t, rod, DeckRod(below, block, stroke, height))
		require.Equal(t, stroke, DeckStroke(below, block, rod, height))
		p, err := DeckStack{exactly(block), exactly(stroke), exactly(rod), exactly(height)}.Protrusion()
		require.NoError(t, err)
		require.Equal(t, exactly(-below), p)
	})
}

func exactly(l units.Length) tolerance.Bracket { return tolerance.Exactly(l) }

// Every inverse undoes its formula, to the quantum that halving leaves open.
func TestDeckInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 1))
	for range 2000 {
		draw := func() units.Length { return units.Length(r.Int64N(3e11)) }
		block, stroke, rod, height := draw(), draw(), draw(), draw()
		below := DeckBelow(block, stroke, rod, height)
		require.Equal(t, -below, DeckAbove(block, stroke, rod, height))
		require.Equal(t, block, DeckBlockHeight(below, stroke, rod, height))
		require.Equal(t, height, DeckCompressionHeight(below, block, stroke, rod))
		require.Equal(t, rod, DeckRod(below, block, stroke, height))
		require.LessOrEqual(t, (DeckStroke(below, block, rod, height) - stroke).Abs(), units.Picometre)
		require.Equal(t, rod, DeckRodCentres(DeckRodBetween(rod, block, height), block, height))
		p := DeckProtrusion(block, rod)
		require.LessOrEqual(t, (DeckPoint(p, block) - rod).Abs(), units.Picometre)
		require.Equal(t, DeckTilt(block, rod), -DeckTilt(rod, block))
	}
	for _, bad := range []units.Length{DeckBelow(units.OutOfRange[units.Length](), 1, 1, 1), DeckStroke(units.OutOfRange[units.Length](), 1, 1, 1), DeckOutOfSquare(1, 0, units.Length(1))} {
		require.False(t, bad.InRange())
	}
	require.Equal(t, mm("140"), DeckRodCentres(mm("102"), mm("54"), mm("22"))) // by hand: 102 + 27 + 11
}

func TestDeckByHighPrecision(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "reference/piston_deck.txt").Each(t, func(t *testing.T, c vectors.Case) {
		a, b, d := f(c.Float("a")), f(c.Float("b")), f(c.Float("c"))
		switch kind := c.Choice("kind", "offset", "shift", "rock", "pads"); kind {
		case "offset":
			drop := DeckOffsetDrop(a, b, d)
			c.Near("answer", float64(drop))
			require.InEpsilon(t, float64(a), float64(DeckOffsetFor(drop, b, d)), 1e-14)
		case "shift":
			c.Near("answer", float64(DeckRockShift(a, b, d)))
		case "rock":
			rock := DeckRock(a, b, d)
			c.Near("answer", float64(rock))
			require.InEpsilon(t, float64(a), float64(DeckSpan(b, d, rock)), 1e-14)
		case "pads":
			big, small := MassPads(a, b, d, f(c.Float("d")), f(c.Float("e")))
			c.Near("answer", float64(big))
			c.Near("second", float64(small))
			x, y := MassEndsCut(big, small, d, f(c.Float("d")), f(c.Float("e")))
			require.InDelta(t, float64(a), float64(x), 1e-12)
			require.InDelta(t, float64(b), float64(y), 1e-12)
			return
		}
		c.Ignore("d", "e", "second")
	})
	require.False(t, DeckOffsetDrop(f(300), 140, 43).InRange(), "the crank can't turn")
	require.False(t, DeckRock(f(120), 80, 60).InRange(), "wider than the skirt's diagonal")
}

// The brackets hold every stack that their ends allow; the chain says the same
// as the formula.
func TestDeckStack(t *testing.T) {
	d := DeckStack{at("245.00 ±0.02 mm"), at("96.00 ±0.01 mm"), at("150.00 ±0.01 mm"), at("47.65 ±0.005 mm")}
	p, err := d.Protrusion()
	require.NoError(t, err)
	require.Equal(t, at("[0.61 mm, 0.69 mm]"), p) // by hand: 0.65 ± (0.02 + 0.005 + 0.01 + 0.005)
	worst, err := d.Chain(tolerance.RectangularScatter, 0).WorstCase()
	require.NoError(t, err)
	require.Equal(t, p, worst)
	rss, err := d.Chain(tolerance.NormalScatter, 3).RootSumSquare(3)
	require.NoError(t, err)
	// √(20² + 5² + 10² + 5²) µm = 23.4520788 µm, by bc.
	lo, _ := rss.Within.Lower()
	require.InDelta(t, 0.65-0.0234520788, lo.Float(units.InMillimetres), 1e-9)

	for _, c := range []struct {
		change func(*DeckStack)
		want   string
	}{
		{func(d *DeckStack) { d.BlockHeight = tolerance.Bracket{} }, "block height"},
		{func(d *DeckStack) { d.Stroke = at("0 mm") }, "stroke 0 mm is not above 0 mm"},
		{func(d *DeckStack) { d.Rod = at("48.00 mm") }, "rod 48 mm is not longer than half the stroke, [47.995 mm, 48.005 mm]"},
		{func(d *DeckStack) { d.CompressionHeight = at("-1 mm") }, "compression height -1 mm is not above 0 mm"},
		{func(d *DeckStack) { d.CompressionHeight = exactly(1 << 61); d.Rod = exactly(1 << 61) }, "within the range"},
	} {
		bad := d
		c.change(&bad)
		_, err := bad.Protrusion()
		if c.want == "rod 48 mm is not longer than half the stroke, [47.995 mm, 48.005 mm]" {
			require.NoError(t, err, "it may be longer, if only just")
			continue
		}
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.want)
	}
	d.Rod = at("47.9 mm")
	_, err = d.Protrusion()
	require.ErrorContains(t, err, "the crank can't turn")
}

func TestDeckSide(t *testing.T) {
	for text, want := range map[string]struct {
		side DeckSide
		text string
	}{
		"0.62 mm":              {DeckSideAbove, "0.62 mm above the block face"},
		"[0.611 mm, 0.619 mm]": {DeckSideAbove, "[0.61 mm, 0.62 mm] above the block face"},
		"-0.3 mm":              {DeckSideBelow, "0.30 mm below the block face"},
		"0 mm":                 {DeckSideLevelWith, "level with the block face"},
		"[-0.02 mm, 0.011 mm]": {DeckSideUnknown, "from 0.02 mm below to 0.02 mm above the block face"},
		"(0 mm, 0.01 mm]":      {DeckSideAbove, "(0.00 mm, 0.01 mm] above the block face"},
		"[-0.01 mm, 0 mm)":     {DeckSideBelow, "(0.00 mm, 0.01 mm] below the block face"},
		"[-0.01 mm, ∞)":        {DeckSideUnknown, "[-0.01 mm, ∞), not told from the block face"},
	} {
		require.Equal(t, want.side, DeckSideOf(at(text)), text)
		require.Equal(t, want.text, DeckText(at(text), 2))
	}
	require.Equal(t, DeckSideUnknown, DeckSideOf(exactly(units.OutOfRange[units.Length]())))
	require.NotEmpty(t, DeckText(exactly(units.OutOfRange[units.Length]()), 2))
	for side := range DeckSide(5) {
		b, err := json.Marshal(side)
		require.NoError(t, err)
		var back DeckSide
		require.NoError(t, json.Unmarshal(b, &back))
		require.Equal(t, side%4, back)
	}
	require.ErrorIs(t, new(DeckSide).UnmarshalText([]byte("under")), ErrInput)
}

// The published square: 0.05 mm over 100 mm.
func TestDeckOutOfSquarePublished(t *testing.T) {
	vectors.Load(t, "published/piston_sets.txt").Each(t, func(t *testing.T, c vectors.Case) {
		if c.Is("kind", "mass") {
			limit := tolerance.SpecOf[units.Mass]{Wear: tolerance.AtMost(units.MustParseMass(c.Text("limit")))}
			for col, want := range map[string]tolerance.Standing{"within": tolerance.Usable, "outside": tolerance.PastWearLimit} {
				light := 500 * units.Gram
				s := MassSet{Measure: "piston", Spread: limit, Parts: []MassPart{{"1", tolerance.Exactly(light)}, {"2", tolerance.Exactly(light + units.MustParseMass(c.Text(col)))}}}
				r, err := s.Assess()
				require.NoError(t, err)
				require.Equal(t, want, r.Finding.Standing)
			}
			c.Ignore("over", "apart")
			return
		}
		l := func(col string) units.Length { return units.MustParseLength(c.Text(col)) }
		require.Equal(t, l("within"), DeckTiltAllowed(l("limit"), l("apart"), l("over")))
		require.LessOrEqual(t, DeckOutOfSquare(-l("within"), l("apart"), l("over")), l("limit"))
		require.Greater(t, DeckOutOfSquare(l("outside"), l("apart"), l("over")), l("limit"))
	})
}

// The reason for the two points on the pin's axis, in figures: rocked either
// way, they hardly move where a point on the thrust side moves a thousandfold.
func TestDeckRockingHardlyMovesTheAxis(t *testing.T) {
	rock := DeckRock(tolerance.Float(86.05), 86.00, 60)
	onAxis, thrust := DeckRockShift(45, 0, rock), DeckRockShift(45, 40, rock)
	require.Less(t, max(float64(onAxis), -float64(onAxis)), 0.0001)
	require.Greater(t, float64(thrust), 0.03)
}

func TestDeckReadings(t *testing.T) {
	p, err := DeckStack{at("245 mm"), at("96 mm"), at("150 mm"), at("47.65 mm")}.Protrusion()
	require.NoError(t, err)
	require.Equal(t, at("0.65 mm"), p)
	g := func(words, symbol, size string) working.Term { return working.Given(words, symbol, mm(size)) }
	s, err := working.Solve(DeckAbove(g("block height", "H", "245"), g("stroke", "S", "96"), g("rod", "L", "150"), g("compression height", "c", "47.65")).Named("protrusion", "p"),
		units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "0.65 mm")
	require.Contains(t, s.Text(), "compression height")

	e := func(name, size string) uncertainty.Estimate {
		u, err := uncertainty.Normal(name, mm(size), 10*units.Micrometre)
		require.NoError(t, err)
		return u
	}
	_, u := DeckAbove(e("block", "245"), e("stroke", "96"), e("rod", "150"), e("compression", "47.65")).Float(units.InMillimetres)
	require.InDelta(t, 0.0180277564, u, 1e-9) // 10 µm · √(1 + 1 + 1 + 1/4), by bc
	_, u = DeckProtrusion(e("first", "0.6"), e("second", "0.6")).Float(units.InMillimetres)
	require.InDelta(t, 0.00707106781, u, 1e-9) // 10 µm ÷ √2

	r, err := working.SolveReal(DeckOffsetDrop(working.GivenReal("offset", "e", 1, "mm"), working.GivenReal("rod", "L", 142, "mm"), working.GivenReal("throw", "r", 48, "mm")).Named("drop", "h", "mm"), working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, r.Text(), "0.0026")
	d, err := uncertainty.NewDual("offset", 1, "mm", uncertainty.NormalShape, 0.1)
	require.NoError(t, err)
	drop := DeckOffsetDrop(d, uncertainty.ExactlyReal(142), uncertainty.ExactlyReal(48))
	require.InEpsilon(t, 0.1/190, drop.StandardUncertainty(), 1e-4) // dh/de = e/√((L+r)² − e²)
}

func TestDeckPiston(t *testing.T) {
	mean, tilt, err := DeckPiston{"piston 1", at("0.62 ±0.005 mm"), at("0.60 ±0.005 mm")}.Protrusion()
	require.NoError(t, err)
	require.Equal(t, at("0.61 ±0.005 mm"), mean)
	require.Equal(t, at("0.02 ±0.01 mm"), tilt)
	for _, c := range []DeckPiston{
		{"piston 1", at("0.62 mm"), tolerance.Bracket{}},
		{"piston 1", tolerance.Bracket{}, at("0.62 mm")},
		{strings.Repeat("é", 80), at("[0.6 mm, ∞)"), at("0.62 mm")},
		{"piston 1", exactly(units.OutOfRange[units.Length]()), at("0.62 mm")},
		{"piston 1", exactly(1 << 61), exactly(-1 << 61)},
	} {
		_, _, err := c.Protrusion()
		require.ErrorIs(t, err, ErrInput)
		require.Less(t, len(err.Error()), 300)
	}
}

func TestDeckAllocatesNothing(t *testing.T) {
	a, b := at("245 ±0.01 mm"), at("96 ±0.01 mm")
	require.Zero(t, testing.AllocsPerRun(100, func() { sinkBracket = DeckAbove(a, b, b, b) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { sink = DeckBelow(mm245, 1, 2, 3) }))
}

var mm245 = 245 * units.Millimetre
