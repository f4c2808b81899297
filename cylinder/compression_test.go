package cylinder

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestCompressionRatioPublished(t *testing.T) {
	vectors.Load(t, "published/cylinder_displacement_ratios.txt").Each(t, func(t *testing.T, c vectors.Case) {
		swept, clearance := tolerance.Float(c.Float("swept")), tolerance.Float(c.Float("clearance"))
		r := CompressionRatio(swept, clearance)
		c.Near("ratio", float64(r))
		require.InEpsilon(t, float64(clearance), float64(ClearanceFor(swept, r)), 1e-13)
		require.InEpsilon(t, float64(swept), float64(SweptFor(clearance, r)), 1e-13)
	})
	// 68 × 75 mm at 8 to 1 leaves 272.376/7 (derived; by hand).
	require.InDelta(t, 38.911, float64(ClearanceFor(tolerance.Float(272.376), 8)), 0.0005)
}

// twoEnds reads "86.0 86.1" in a unit.
func twoEnds[Q units.Quantity](t testing.TB, cell, unit string) tolerance.Interval[Q] {
	lo, hi, _ := strings.Cut(cell, " ")
	if lo == hi {
		return parsed[Q](t, lo+" "+unit)
	}
	return parsed[Q](t, "["+lo+" "+unit+", "+hi+" "+unit+"]")
}

// buildOf is the build of a reference case.
func buildOf(t testing.TB, c vectors.Case) Build {
	l := func(col string) tolerance.Bracket { return twoEnds[units.Length](t, c.Text(col), "mm") }
	v := func(col string) VolumeBracket { return twoEnds[units.Volume](t, c.Text(col), "cm³") }
	b := Build{Bore: l("bore"), Stroke: l("stroke"), Chamber: v("chamber"), Gasket: Gasket{l("gbore"), l("gasket")}, Deck: DeckBelow(l("deck"))}
	switch kind := c.Choice("kind", "flat", "dish", "dome", "both", "fill", "land"); kind {
	case "fill":
		b.Crown.FillDepth, b.Crown.Fill = l("depth"), v("fill")
		c.Ignore("dish", "dome", "land", "height")
	case "land":
		b.Land = RingLand{l("land"), l("height")}
		c.Ignore("dish", "dome", "depth", "fill")
	default:
		b.Crown.Dish, b.Crown.Dome = v("dish"), v("dome")
		c.Ignore("depth", "fill", "land", "height")
	}
	return b
}

// The least and the greatest over every combination of ends, to 1 part in
// 10¹²: volumes are held to 10⁻¹¹ cm³.
func TestCompressionReference(t *testing.T) {
	vectors.Load(t, "reference/cylinder_displacement_ratio.txt").Each(t, func(t *testing.T, c vectors.Case) {
		r, err := buildOf(t, c).Compression()
		require.NoError(t, err)
		least, greatest := c.Float("least"), c.Float("greatest")
		require.InEpsilon(t, least, r.Ratio.Least, 2e-12)
		require.InEpsilon(t, greatest, r.Ratio.Greatest, 2e-12)
		// Outward: the printed fifteenth digit is half a unit off at most.
		require.LessOrEqual(t, r.Ratio.Least, least+1e-13)
		require.GreaterOrEqual(t, r.Ratio.Greatest, greatest-1e-13)
	})
}

// The chain of whole figures, by hand: swept 499.557, gasket 7.2158, deck
// 1.7426, clearance 56.9585 (derived from the geometry with bc).
func handBuild(t testing.TB) Build {
	return Build{Bore: parsedLength(t, "86 mm"), Stroke: parsedLength(t, "86 mm"), Chamber: parsedVolume(t, "45 cm³"),
		Gasket: Gasket{parsedLength(t, "87.5 mm"), parsedLength(t, "1.20 mm")}, Deck: DeckBelow(parsedLength(t, "0.30 mm")),
		Crown: Crown{Dish: parsedVolume(t, "3 cm³")}}
}

func cc(v VolumeBracket) float64 {
	m, _ := v.Middle()
	return m.Float(units.InCubicCentimetres)
}

func TestCompressionParts(t *testing.T) {
	c, err := handBuild(t).Compression()
	require.NoError(t, err)
	require.InDelta(t, 499.557, cc(c.Swept), 0.0005)
	require.InDelta(t, 7.2158, cc(c.Gasket), 0.00005)
	require.InDelta(t, 1.7426, cc(c.Deck), 0.00005)
	require.Equal(t, 3.0, cc(c.Crown))
	require.Equal(t, 0.0, cc(c.Land))
	require.InDelta(t, 56.9585, cc(c.Clearance), 0.0001)
	require.Equal(t, "9.77", c.Ratio.String())
	require.Empty(t, c.Doubts)

	// The same formulas over Real.
	f := func(x float64) tolerance.Float { return tolerance.Float(x) }
	clearance := ClearanceVolume(f(45), SweptVolume(f(8.75), f(0.12)), SweptVolume(f(8.6), f(0.03)), f(3), f(0))
	require.InDelta(t, cc(c.Clearance), float64(clearance), 1e-9)
	require.InDelta(t, c.Ratio.Middle(), float64(CompressionRatio(SweptVolume(f(8.6), f(8.6)), clearance)), 1e-12)

	// Above the face instead of below: the sign moves the ratio the other way.
	b := handBuild(t)
	b.Deck = DeckAbove(parsedLength(t, "0.30 mm"))
	c, err = b.Compression()
	require.NoError(t, err)
	require.InDelta(t, -1.7426, cc(c.Deck), 0.00005)
	require.InDelta(t, 1+499.557214/(56.958487-2*1.742641), c.Ratio.Middle(), 1e-5)

	_, err = json.Marshal(c)
	require.NoError(t, err)
}

// A down-fill says the same as the dome that it measures: 10 mm down in a
// bore of 86 mm a flat crown takes 58.088 cm³; a fill of 53.088 is a dome of 5.
func TestDownFill(t *testing.T) {
	b := handBuild(t)
	b.Crown = Crown{FillDepth: parsedLength(t, "10 mm"), Fill: parsedVolume(t, "53.088048 cm³")}
	c, err := b.Compression()
	require.NoError(t, err)
	require.InDelta(t, -5, cc(c.Crown), 1e-6)
	require.InDelta(t, -5, float64(CrownByFill(tolerance.Float(8.6), 1, 53.088048)), 1e-6)
}

// By hand: π/4·(86² − 85.4²)·6 = 484.71 mm³.
func TestRingLand(t *testing.T) {
	b := handBuild(t)
	b.Land = RingLand{parsedLength(t, "85.4 mm"), parsedLength(t, "6 mm")}
	c, err := b.Compression()
	require.NoError(t, err)
	require.InDelta(t, 0.48460, cc(c.Land), 0.0002)
	require.InDelta(t, cc(c.Land), float64(RingLandVolume(tolerance.Float(8.6), 8.54, 0.6)), 1e-9)
	require.Less(t, c.Ratio.Greatest, 9.77)
}

func TestCompressionDoubts(t *testing.T) {
	b := handBuild(t)
	b.Gasket.Bore = parsedLength(t, "85.5 mm")
	c, err := b.Compression()
	require.NoError(t, err)
	require.Equal(t, []Doubt{GasketOverhangs}, c.Doubts)

	b = handBuild(t)
	b.Deck = DeckAbove(parsedLength(t, "1.3 mm"))
	c, err = b.Compression()
	require.NoError(t, err)
	require.Equal(t, []Doubt{CrownAtHead}, c.Doubts)

	b = handBuild(t)
	b.Chamber = parsedVolume(t, "450 cm³")
	c, err = b.Compression()
	require.NoError(t, err)
	require.Equal(t, []Doubt{RatioUnusual}, c.Doubts)

	// 5200 mm² of a bore of 86 mm (5809 mm²), told right, in cm² and tenfold.
	for area, want := range map[float64][]Doubt{5200: nil, 580: {OpenAreaUnusual}, 582: nil, 52: {OpenAreaUnusual}, 52000: {OpenAreaUnusual}} {
		b = handBuild(t)
		b.OpenAreaMM2 = area
		c, err = b.Compression()
		require.NoError(t, err)
		require.Equal(t, want, c.Doubts, area)
	}

	require.Contains(t, GasketOverhangs.String(), "overhangs")
	require.Empty(t, NoDoubt.String())
	require.Empty(t, Doubt(99).String())
	text, err := CrownAtHead.MarshalText()
	require.NoError(t, err)
	require.Contains(t, string(text), "hits the head")
}

func TestCompressionContact(t *testing.T) {
	b := handBuild(t)
	b.Chamber = VolumeBracket{}
	b.Crown = Crown{Dome: parsedVolume(t, "20 cm³")}
	_, err := b.Compression()
	require.ErrorIs(t, err, ErrContact)
	require.ErrorIs(t, err, ErrInput)
	var contact *ContactError
	require.True(t, errors.As(err, &contact))
	require.True(t, contact.Certain)
	require.ErrorContains(t, err, "the piston hits the head; do not turn the engine")

	b.Crown = Crown{Dome: parsedVolume(t, "8.9 ±0.1 cm³")} // gasket and deck leave 8.96
	_, err = b.Compression()
	require.True(t, errors.As(err, &contact))
	require.False(t, contact.Certain)
	require.ErrorContains(t, err, "may hit the head")
	// With a bore that isn't exact, too.
	b.Bore = parsedLength(t, "86 ±0.01 mm")
	_, err = b.Compression()
	require.ErrorIs(t, err, ErrContact)
	// At the smaller bore it doesn't touch, at the greater it does.
	b = handBuild(t)
	b.Bore, b.Chamber = parsedLength(t, "[86 mm, 100 mm]"), VolumeBracket{}
	b.Crown, b.Deck = Crown{}, DeckAbove(parsedLength(t, "1.1 mm"))
	_, err = b.Compression()
	require.ErrorIs(t, err, ErrContact)
}

func TestCompressionRefuses(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Build)
		says  string
	}{
		{"no bore", func(b *Build) { b.Bore = tolerance.Bracket{} }, "bore (not given)"},
		{"no stroke", func(b *Build) { b.Stroke = tolerance.Bracket{} }, "stroke (not given)"},
		{"chamber below zero", func(b *Build) { b.Chamber = parsedVolume(t, "-45 cm³") }, "chamber volume -45 cm³ is not 0 or more"},
		{"gasket bore zero", func(b *Build) { b.Gasket.Bore = parsedLength(t, "0 mm") }, "gasket bore 0 mm is not above 0"},
		{"gasket thickness below zero", func(b *Build) { b.Gasket.Thickness = parsedLength(t, "-1 mm") }, "gasket thickness"},
		{"no deck", func(b *Build) { b.Deck = Deck{} }, "deck not measured is not measured, and below"},
		{"one-sided", func(b *Build) { b.Stroke = parsedLength(t, "[80 mm, ∞)") }, "known on both sides"},
		{"dish below zero", func(b *Build) { b.Crown.Dish = parsedVolume(t, "-3 cm³") }, "dish -3 cm³"},
		{"dome below zero", func(b *Build) { b.Crown.Dome = parsedVolume(t, "-3 cm³") }, "dome -3 cm³"},
		{"dish and fill", func(b *Build) { b.Crown.Fill = parsedVolume(t, "50 cm³") }, "beside a down-fill"},
		{"fill without depth", func(b *Build) { b.Crown = Crown{Fill: parsedVolume(t, "50 cm³")} }, "down-fill depth (not given)"},
		{"depth without fill", func(b *Build) { b.Crown = Crown{FillDepth: parsedLength(t, "10 mm")} }, "down-fill volume (not given)"},
		{"land wider than the bore", func(b *Build) { b.Land = RingLand{parsedLength(t, "86.1 mm"), parsedLength(t, "6 mm")} }, "below the bore 86 mm"},
		{"land without height", func(b *Build) { b.Land.Diameter = parsedLength(t, "85 mm") }, "ring land height"},
		{"land without diameter", func(b *Build) { b.Land.Height = parsedLength(t, "5 mm") }, "ring land diameter"},
		{"area not a number", func(b *Build) { b.OpenAreaMM2 = math.NaN() }, "open area NaN mm²"},
		{"area below zero", func(b *Build) { b.OpenAreaMM2 = -1 }, "open area"},
		{"out of range", func(b *Build) { b.Bore, b.Stroke = parsedLength(t, "90 m"), parsedLength(t, "90 m") }, "±23 m³"},
		{"out of range over two bores", func(b *Build) { b.Bore, b.Stroke = parsedLength(t, "[86 mm, 90 m]"), parsedLength(t, "90 m") }, "±23 m³"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := handBuild(t)
			c.spoil(&b)
			_, err := b.Compression()
			require.ErrorIs(t, err, ErrInput)
			require.ErrorContains(t, err, c.says)
		})
	}
}

func TestDeckText(t *testing.T) {
	for in, out := range map[string]string{
		"0.30 mm below": "0.3 mm below", "  .012 in above ": "0.3048 mm above", "level": "level",
		"0.05 ±0.01 mm above": "[0.04 mm, 0.06 mm] above", "[-0.02 mm, 0.03 mm] below": "[-0.02 mm, 0.03 mm] below",
		"[-0.02 mm, 0.03 mm] above": "[-0.03 mm, 0.02 mm] below", "0 mm below": "level", "[0.1 mm, ∞) above": "[0.1 mm, ∞) above",
	} {
		d, err := ParseDeck(in)
		require.NoError(t, err, in)
		require.Equal(t, out, d.String())
		text, err := d.MarshalText()
		require.NoError(t, err)
		var back Deck
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, d, back)
	}
	for _, in := range []string{"", "0.3 mm", "below", "-0.3 mm below", "-0.3 mm above", "0.3 below", "0.3 mm beneath", "(−∞, ∞) below", strings.Repeat("é", 100)} {
		_, err := ParseDeck(in)
		require.ErrorIs(t, err, ErrInput, in)
		require.Less(t, len(err.Error()), 220)
	}
	var d Deck
	require.True(t, d.IsZero())
	require.Equal(t, "not measured", d.String())
	text, err := d.MarshalText()
	require.NoError(t, err)
	require.Empty(t, text)
	d = LevelDeck()
	require.NoError(t, d.UnmarshalText(nil))
	require.True(t, d.IsZero())
	require.Error(t, d.UnmarshalText([]byte("high")))
	d = DeckBelow(tolerance.Exactly(units.OutOfRange[units.Length]()))
	_, err = d.MarshalText()
	require.ErrorIs(t, err, ErrInput)
	require.Contains(t, d.String(), "range")
	require.Equal(t, parsedLength(t, "0.1 mm"), DeckAbove(parsedLength(t, "0.1 mm")).Above())
}

func TestRatiosText(t *testing.T) {
	r := Ratios{9.7012, 9.8411}
	require.Equal(t, "9.70 to 9.85", r.String())
	require.Equal(t, "9 to 10", r.Text(-1))
	require.Equal(t, "9.7705", Ratios{9.77054921760496, 9.77054921760496}.Text(4))
	require.False(t, r.IsExact())
}

// A float with a bracket inside it: whatever sizes within the brackets are
// taken, the ratio of the exact build is within the bracketed one's ends.
func TestCompressionHoldsWhatIsInside(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 77))
	loose := handBuild(t)
	loose.Bore, loose.Stroke = parsedLength(t, "86 ±0.05 mm"), parsedLength(t, "86 ±0.1 mm")
	loose.Chamber, loose.Gasket.Thickness = parsedVolume(t, "45 ±0.4 cm³"), parsedLength(t, "1.2 ±0.05 mm")
	loose.Deck = DeckBelow(parsedLength(t, "0.30 ±0.04 mm"))
	all, err := loose.Compression()
	require.NoError(t, err)
	pick := func(i tolerance.Bracket) tolerance.Bracket {
		lo, _ := i.Lower()
		hi, _ := i.Upper()
		return tolerance.Exactly(lo + units.Length(rnd.Int64N(int64(hi-lo)+1)))
	}
	for range 500 {
		b := loose
		b.Bore, b.Stroke, b.Gasket.Thickness, b.Deck = pick(b.Bore), pick(b.Stroke), pick(b.Gasket.Thickness), DeckBelow(pick(b.Deck.Below()))
		c, err := b.Compression()
		require.NoError(t, err)
		require.LessOrEqual(t, all.Ratio.Least, c.Ratio.Least+1e-12)
		require.GreaterOrEqual(t, all.Ratio.Greatest, c.Ratio.Greatest-1e-12)
		require.True(t, c.Clearance.Within(all.Clearance))
		require.True(t, c.Swept.Within(all.Swept))
	}
}
