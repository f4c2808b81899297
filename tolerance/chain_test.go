package tolerance

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/units"
)

// chainOf reads "1 2 -3/2 n 3.0 / 4 5 1 r", in whole multiples of a length.
func chainOf(t testing.TB, links string, unit units.Unit[units.Length]) (c Chain) {
	t.Helper()
	for i, text := range strings.Split(links, " / ") {
		f := strings.Fields(text)
		lo, hi := chainSize(t, f[0], unit), chainSize(t, f[1], unit)
		s, err := ParseRatio(f[2])
		require.NoError(t, err)
		l := Link{Name: "link " + strconv.Itoa(i+1), Band: MustBetween(lo, hi), Sensitivity: s}
		l.Scatter = map[string]Scatter{"n": NormalScatter, "r": RectangularScatter, "t": TriangularScatter, "u": UShapedScatter}[f[3]]
		if len(f) > 4 {
			l.Sigmas, err = strconv.ParseFloat(f[4], 64)
			require.NoError(t, err)
		}
		c.Links = append(c.Links, l)
	}
	return c
}

// chainSize reads a number of units, or any number of picometres.
func chainSize(t testing.TB, text string, unit units.Unit[units.Length]) units.Length {
	t.Helper()
	if unit == units.InPicometres {
		n, err := strconv.ParseInt(text, 10, 64)
		require.NoError(t, err)
		return units.Length(n)
	}
	l, err := units.ParseIn(text, unit)
	require.NoError(t, err)
	return l
}

// chainPair reads "12 34".
func chainPair(t *testing.T, text string) (lo, hi units.Length) {
	a, b, ok := strings.Cut(text, " ")
	require.True(t, ok)
	return chainSize(t, a, units.InPicometres), chainSize(t, b, units.InPicometres)
}

func TestChain_exact(t *testing.T) {
	vectors.Load(t, "reference/chain_exact.txt").Each(t, func(t *testing.T, v vectors.Case) {
		c := chainOf(t, v.Text("links"), units.InPicometres)
		sigmas := v.Float("sigmas")

		lo, hi := chainPair(t, v.Text("worst"))
		loEnd, hiEnd := Open, Open
		if v.Bool("least_exact") {
			loEnd = Closed
		}
		if v.Bool("greatest_exact") {
			hiEnd = Closed
		}
		worst, err := c.WorstCase()
		require.NoError(t, err)
		require.Equal(t, Bracket{lo, hi, loEnd, hiEnd}, worst)

		root, err := c.RootSumSquare(sigmas)
		require.NoError(t, err)
		lo, hi = chainPair(t, v.Text("range"))
		want := RootSumSquare{
			Sigmas: sigmas, Centre: units.Length(v.Int64("middle")), Each: units.Length(v.Int64("each")),
			Within: MustBetween(lo, hi).limits, Beyond: lo < worst.lo || hi > worst.hi,
		}
		require.Equal(t, want, root)
		exact := c.exactRoot(sigmas)
		exact.Sigmas, exact.Beyond = root.Sigmas, root.Beyond
		require.Equal(t, want, exact, "with and without the short way")

		at := v.Int("link")
		lo, hi = chainPair(t, v.Text("wanted"))
		wanted := MustBetween(lo, hi)
		room := func(column string, b Band, err error) {
			if v.Is(column, "none") {
				require.ErrorIs(t, err, ErrNoRoom, column)
				return
			}
			require.NoError(t, err, column)
			lo, hi := chainPair(t, v.Text(column))
			require.Equal(t, MustBetween(lo, hi), b, column)
		}
		b, err := c.RoomWorstCase(at, wanted)
		room("room_worst", b, err)
		b, err = c.RoomRootSumSquare(at, sigmas, wanted)
		room("room_root", b, err)
		b, err = c.RoomRootSumSquareAbout(at, units.Length(v.Int64("about")), sigmas, wanted)
		room("room_about", b, err)

		shares, err := c.VarianceShares()
		require.NoError(t, err)
		v.Near("variance_share", shares[at])
		shares, err = c.WorstCaseShares()
		require.NoError(t, err)
		v.Near("worst_share", shares[at])
	})
}

func TestChain_published(t *testing.T) {
	vectors.Load(t, "published/chain_worked.txt").Each(t, func(t *testing.T, v vectors.Case) {
		unit, err := units.ParseUnit[units.Length](v.Text("unit"))
		require.NoError(t, err)
		var c Chain
		for text := range strings.SplitSeq(v.Text("links"), " / ") {
			band, s, ok := strings.Cut(text, " × ")
			require.True(t, ok)
			r, err := ParseRatio(s)
			require.NoError(t, err)
			c.Links = append(c.Links, Link{Band: MustParseBand(band), Sensitivity: r, Scatter: NormalScatter, Sigmas: 3})
		}
		worst, err := c.WorstCase()
		require.NoError(t, err)
		root, err := c.RootSumSquare(3)
		require.NoError(t, err)
		width, _ := worst.Width()
		if v.Has("middle") {
			v.Near("middle", root.Centre.Float(unit))
		}
		if v.Has("worst") {
			v.Near("worst", (width / 2).Float(unit))
		}
		if v.Has("each") {
			v.Near("each", root.Each.Float(unit))
		}
	})
}

// A hundred links of ±1 scatter over ±10, in one way of working and the other.
func TestChain_long(t *testing.T) {
	var c Chain
	for n := 1; n <= 100; n++ {
		c.Links = append(c.Links, Link{Band: MustBetween(-units.Picometre, units.Picometre), Sensitivity: Whole(1), Scatter: NormalScatter, Sigmas: 3})
		r, err := c.RootSumSquare(3)
		require.NoError(t, err)
		require.Equal(t, units.Length(math.Ceil(math.Sqrt(float64(n)))), r.Each)
		require.Zero(t, r.Centre)
	}
}

func TestChain_montecarlo(t *testing.T) {
	vectors.Load(t, "reference/chain_montecarlo.txt").Each(t, func(t *testing.T, v vectors.Case) {
		v.Ignore("within_worst")
		c := chainOf(t, v.Text("links"), units.InMillimetres)
		root, err := c.RootSumSquare(1)
		require.NoError(t, err)
		v.Near("mean", root.Centre.Float(units.InMillimetres))
		v.Near("deviation", root.Each.Float(units.InMillimetres))
	})
}

func TestScatter_inflation(t *testing.T) {
	vectors.Load(t, "practice/chain_inflation.txt").Each(t, func(t *testing.T, v vectors.Case) {
		l := Link{Band: MustParseBand("50 ±1 mm"), Sensitivity: Whole(1)}
		require.NoError(t, l.Scatter.UnmarshalText([]byte(v.Text("scatter"))))
		if l.Scatter == NormalScatter {
			l.Sigmas = 3
		}
		root, err := Chain{Links: []Link{l}}.RootSumSquare(3)
		require.NoError(t, err)
		v.Near("factor", root.Each.Float(units.InMillimetres))
		require.Equal(t, l.Scatter != NormalScatter, root.Beyond)
	})
}

func TestChain_sharesAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		var c Chain
		for range 1 + r.IntN(9) {
			lo := units.Length(r.Int64N(1e12))
			s, err := NewRatio(r.Int64N(50)+1, -r.Int64N(50)-1)
			require.NoError(t, err)
			c.Links = append(c.Links, Link{Band: MustBetween(lo, lo+units.Length(r.Int64N(1e9)+1)), Sensitivity: s, Scatter: Scatter(2 + r.IntN(3))})
		}
		for _, of := range []func() ([]float64, error){c.WorstCaseShares, c.VarianceShares} {
			shares, err := of()
			require.NoError(t, err)
			sum := 0.0
			for _, s := range shares {
				require.Positive(t, s)
				sum += s
			}
			require.InDelta(t, 1, sum, 1e-14)
		}
	}
}
