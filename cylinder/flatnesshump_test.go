package cylinder

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func mmCells(t *testing.T, cell string) (lengths []units.Length) {
	for f := range strings.FieldsSeq(cell) {
		lengths = append(lengths, units.MustParseLength(f+" mm"))
	}
	return lengths
}

// The judge lays a line on the profile and finds the least distance of two
// parallel lines that hold it, by linear programming. Departures are printed
// to six places, and the judge's profile has points every hundredth of it.
func TestHumpReference(t *testing.T) {
	vectors.Load(t, "reference/cylinder_flatness_edges.txt").Each(t, func(t *testing.T, c vectors.Case) {
		if c.Choice("kind", "hump", "face") == "face" {
			c.Ignore("shape", "readings", "departure", "corner")
			return
		}
		c.Ignore("corner")
		g := mmCells(t, c.Text("readings"))
		departure := c.Float("departure")
		// Whatever the shape: between the lesser and the greater.
		h := Hump(tolerance.Exactly(g[0]), tolerance.Exactly(g[1]))
		lo, _ := h.Lower()
		hi, _ := h.Upper()
		require.LessOrEqual(t, lo.Float(units.InMillimetres), departure+1e-4)
		require.GreaterOrEqual(t, hi.Float(units.InMillimetres), departure-1e-6)
		switch c.Choice("shape", "parabola", "ridge", "quartic", "lopsided") {
		case "parabola":
			// Six printed places, and the edge's slope is a finite difference.
			p := HumpBracket(tolerance.Exactly(g[0]), tolerance.Exactly(g[1]))
			m, _ := p.Middle()
			require.InDelta(t, departure, m.Float(units.InMillimetres), 2e-6)
			lo, _ := p.Lower()
			hi, _ := p.Upper()
			require.LessOrEqual(t, hi-lo, units.Length(4))
			// One end's gap is never less than nothing nor more than 4H.
			require.LessOrEqual(t, max(g[0], g[1]).Float(units.InMillimetres), 4*departure+1e-6)
		case "ridge":
			require.InDelta(t, departure, HumpOfRidge(g[0], g[1]).Float(units.InMillimetres), 2e-6)
			require.LessOrEqual(t, max(g[0], g[1]).Float(units.InMillimetres), 2*departure+1e-6)
		}
	})
}

// The nine heights and what follows of them, against the judge's planes.
func TestFaceReference(t *testing.T) {
	twists := 0
	for c := range vectors.Load(t, "reference/cylinder_flatness_edges.txt").All(t) {
		if c.Choice("kind", "hump", "face") == "hump" {
			c.Ignore("shape", "readings", "departure", "corner")
			continue
		}
		b := mmCells(t, c.Text("readings"))
		bows := Bows[units.Length]{Left: b[0], Right: b[1], Front: b[2], Rear: b[3], FirstDiagonal: b[4], SecondDiagonal: b[5]}
		require.InDelta(t, c.Float("corner"), CornerOffPlane(b[4], b[5]).Float(units.InMillimetres), 1e-12)
		h := NineHeights(bows)
		// The heights have the bows that they were made from.
		bow := func(a, m, z units.Length) units.Length { return m - (a+z)/2 }
		require.Equal(t, bows, Bows[units.Length]{
			Left: bow(h[0][0], h[1][0], h[2][0]), Right: bow(h[0][2], h[1][2], h[2][2]),
			Front: bow(h[0][0], h[0][1], h[0][2]), Rear: bow(h[2][0], h[2][1], h[2][2]),
			FirstDiagonal: bow(h[0][0], h[1][1], h[2][2]), SecondDiagonal: bow(h[0][2], h[1][1], h[2][0]),
		})

		// As a face measured by straight-edge.
		f := Face{Where: "head", Lines: SixLines()}
		for i, l := range b {
			f.Lines[i].Seat = Rests
			f.Lines[i].Gaps = []Gap{{Gap: tolerance.Exactly(l.Abs())}}
			if l > 0 {
				f.Lines[i].Seat, f.Lines[i].Gaps = Rocks, nil
				f.Lines[i].Ends = [2]tolerance.Bracket{tolerance.Exactly(l), tolerance.Exactly(l)}
			}
		}
		r, err := f.Assess()
		require.NoError(t, err)
		require.Equal(t, tolerance.Exactly(CornerOffPlane(b[4], b[5])), r.CornerOff)
		lo, _ := r.Flatness.Lower()
		hi, _ := r.Flatness.Upper()
		flat := c.Float("departure")
		require.LessOrEqual(t, lo.Float(units.InMillimetres), flat+1e-6)
		require.GreaterOrEqual(t, hi.Float(units.InMillimetres), flat-1e-6)
		if c.Choice("shape", "twist", "random") == "twist" {
			twists++
			// A twist of T = 0.05: nothing along the edges, T on each diagonal,
			// and a flatness of exactly 2T.
			require.Equal(t, parsedLength(t, "0.05 mm"), r.Worst)
			require.Equal(t, parsedLength(t, "0.1 mm"), r.Flatness)
			require.Equal(t, parsedLength(t, "0.2 mm"), r.CornerOff)
		}
	}
	require.Equal(t, 1, twists)
}

func TestHumpByHand(t *testing.T) {
	// Level: H and H. Right over: nothing and 4H. In between: ((1+3)/2)² = 4.
	for _, c := range [][3]float64{{1, 1, 1}, {0, 4, 1}, {1, 9, 4}} {
		require.InDelta(t, c[2], float64(HumpOfParabola(tolerance.Float(c[0]), tolerance.Float(c[1]))), 1e-15)
	}
	require.Equal(t, 4*units.Micrometre, RockedOnParabola(units.Micrometre))
	require.Equal(t, 2*units.Micrometre, RockedOnRidge(units.Micrometre))

	b := HumpBracket(parsedLength(t, "[0 mm, 0.04 mm)"), parsedLength(t, "[0.16 mm, 0.2 mm)"))
	lo, _ := b.Lower()
	require.InDelta(t, 0.04, lo.Float(units.InMillimetres), 1e-9)
	require.True(t, HumpBracket(parsedLength(t, "0.1 mm"), parsedLength(t, "[0.1 mm, ∞)")).Contains(units.Metre))
	require.False(t, HumpBracket(parsedLength(t, "-0.1 mm"), parsedLength(t, "0.1 mm")).InRange())
	require.False(t, HumpBracket(tolerance.Bracket{}, parsedLength(t, "0.1 mm")).InRange())
}
