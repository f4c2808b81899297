package tolerance

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
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
		for _, text := range strings.Split(v.Text("links"), " / ") {
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

// The tenth of ten tolerances of 0.1 mm, where √10 of them are wanted: the
// page of the published example gives 0.1 mm each by root-sum-square.
func TestChain_publishedInverse(t *testing.T) {
	var c Chain
	for range 10 {
		c.Links = append(c.Links, Link{Band: MustParseBand("7 ±0.1 mm"), Sensitivity: Whole(1), Scatter: NormalScatter, Sigmas: 3})
	}
	b, err := c.RoomRootSumSquare(9, 3, MustParseBand("70 ±0.316227766 mm"))
	require.NoError(t, err)
	w, _ := b.limits.Width()
	require.InDelta(t, 0.2, w.Float(units.InMillimetres), 1e-7)
	_, err = c.RoomWorstCase(9, MustParseBand("70 ±0.316 mm"))
	require.EqualError(t, err, `tolerance: link 10 "": no room: the others take 1.8 mm of the 0.632 mm wanted, 1.168 mm too much`)
}

// A hundred links of ±1 scatter over ±10, in one way of working and the other.
func TestChain_long(t *testing.T) {
	var c Chain
	for n := 1; n <= 100; n++ {
		c.Links = append(c.Links, Link{Band: MustBetween(units.Length(-1), 1), Sensitivity: Whole(1), Scatter: NormalScatter, Sigmas: 3})
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

// Sizes picked from the bands close within the worst case, and its ends are
// the closing sizes of the limits; what a link may be by worst case keeps the
// closing size in the wanted band, and a step more doesn't.
func TestChain_holds(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	ends := []End{Open, Closed}
	rooms := 0
	for range 4000 {
		var c Chain
		var sizes []units.Length
		for range 1 + r.IntN(4) {
			lo, w := units.Length(r.Int64N(40)-20), units.Length(r.Int64N(9))
			b, err := NewBand(lo, ends[r.IntN(2)], lo+w, ends[r.IntN(2)])
			if err != nil {
				b = MustBetween(lo, lo+w)
			}
			c.Links = append(c.Links, Link{Band: b, Sensitivity: Whole([]int64{-2, -1, 1, 2}[r.IntN(4)])})
			sizes = append(sizes, lo+units.Length(r.Int64N(int64(w)+1)))
		}
		worst, err := c.WorstCase()
		require.NoError(t, err)
		closing, err := ClosingSize(c, sizes...)
		require.NoError(t, err)
		inside := true
		brackets := make([]Bracket, len(sizes))
		for i, s := range sizes {
			inside = inside && c.Links[i].Band.Allows(s)
			brackets[i] = c.Links[i].Band.limits
		}
		if inside {
			require.True(t, worst.Contains(closing))
		}
		same, err := ClosingSize(c, brackets...)
		require.NoError(t, err)
		require.Equal(t, worst, same, "the formula read with brackets")

		at := r.IntN(len(c.Links))
		wanted, err := NewBand(units.Length(r.Int64N(60)-30), End(r.IntN(3)), units.Length(r.Int64N(60)), End(r.IntN(3)))
		if err != nil || wanted.IsZero() {
			continue
		}
		b, err := c.RoomWorstCase(at, wanted)
		if err != nil {
			require.ErrorIs(t, err, ErrNoRoom)
			continue
		}
		rooms++
		keeps := func(i Bracket) bool {
			c := Chain{Links: append([]Link(nil), c.Links...)}
			c.Links[at].Band.limits = i
			w, err := c.WorstCase()
			require.NoError(t, err)
			return w.Within(wanted.limits)
		}
		require.True(t, keeps(b.limits), "%v in %v", b, c)
		for _, more := range chainWidened(b.limits) {
			require.False(t, keeps(more), "%v in %v", more, c)
		}
	}
	require.Greater(t, rooms, 500)
}

// chainWidened moves each end out by one quantum, to a limit that is had.
func chainWidened(i Bracket) (more []Bracket) {
	lo, hi := i, i
	lo.lo, lo.loEnd = lo.lo-1, min(lo.loEnd, Closed)
	hi.hi++
	if i.loEnd != Absent {
		more = append(more, lo)
	}
	if i.hiEnd != Absent {
		more = append(more, hi)
	}
	return more
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

func TestChain_json(t *testing.T) {
	const text = `{"links":[
		{"name":"block","band":"210 ±0.05 mm","sensitivity":"1","scatter":"normal","sigmas":3},
		{"name":"rod","band":"140.02–140.08 mm","sensitivity":"-3/2","scatter":"U-shaped"},
		{"name":"shim","band":"max 1 mm","sensitivity":"-0.125"}]}`
	var c Chain
	require.NoError(t, json.Unmarshal([]byte(text), &c))
	want := Chain{Links: []Link{
		{Name: "block", Band: MustParseBand("209.95–210.05 mm"), Sensitivity: Whole(1), Scatter: NormalScatter, Sigmas: 3},
		{Name: "rod", Band: MustParseBand("140.02–140.08 mm"), Sensitivity: Ratio{-3, 2}, Scatter: UShapedScatter},
		{Name: "shim", Band: MustParseBand("max 1 mm"), Sensitivity: Ratio{-1, 8}},
	}}
	require.Empty(t, cmp.Diff(want, c, cmp.Comparer(func(a, b Band) bool { return a == b })))
	b, err := json.Marshal(c)
	require.NoError(t, err)
	var back Chain
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, c, back)
	require.Error(t, json.Unmarshal([]byte(`{"links":[{"sensitivity":"up"}]}`), &c))
	require.Error(t, json.Unmarshal([]byte(`{"links":[{"scatter":"wild"}]}`), &c))
	_, err = json.Marshal(Chain{Links: []Link{{}}})
	require.Error(t, err, "a link without its sensitivity is not written")
	require.Equal(t, "normal", NormalScatter.String())
}

func TestChain_refuses(t *testing.T) {
	good := Link{Name: "rod", Band: MustParseBand("10–11 mm"), Sensitivity: Whole(1), Scatter: RectangularScatter}
	with := func(change func(*Link)) Chain {
		l := good
		change(&l)
		return Chain{Links: []Link{good, l}}
	}
	valid := Chain{Links: []Link{good, good}}
	open := with(func(l *Link) { l.Band = MustParseBand("max 10 mm") })
	wanted := MustParseBand("20–30 mm")
	worst := func(c Chain) error { _, err := c.WorstCase(); return err }
	root := func(c Chain, k float64) error { _, err := c.RootSumSquare(k); return err }
	room := func(c Chain, link int, w Band) error { _, err := c.RoomWorstCase(link, w); return err }
	roomRoot := func(c Chain, link int, k float64, w Band) error {
		_, err := c.RoomRootSumSquare(link, k, w)
		return err
	}
	about := func(c Chain, m units.Length, w Band) error {
		_, err := c.RoomRootSumSquareAbout(1, m, 3, w)
		return err
	}
	shares := func(c Chain) error { _, err := c.WorstCaseShares(); return err }
	variances := func(c Chain) error { _, err := c.VarianceShares(); return err }
	sizes := func(c Chain, n int) error { _, err := ClosingSize(c, make([]units.Length, n)...); return err }
	bad := BandFrom(broken[units.Length]())
	huge := with(func(l *Link) { l.Band = MustBetween(units.Length(1<<61-1), 1<<61) })
	for i, c := range []struct {
		err   error
		kind  error
		field string
	}{
		{worst(Chain{}), ErrLinks, "links"},
		{worst(Chain{Links: make([]Link, MostLinks+1)}), ErrLinks, "links"},
		{worst(with(func(l *Link) { l.Sensitivity = Ratio{} })), ErrSensitivity, "sensitivity"},
		{worst(with(func(l *Link) { l.Sensitivity = Ratio{0, 1} })), ErrSensitivity, "sensitivity"},
		{worst(with(func(l *Link) { l.Sensitivity = Ratio{1, 0} })), ErrSensitivity, "sensitivity"},
		{worst(with(func(l *Link) { l.Band = bad })), ErrRange, "band"},
		{worst(with(func(l *Link) { l.Scatter = 9 })), ErrScatter, "scatter"},
		{worst(with(func(l *Link) { l.Scatter = NormalScatter })), ErrScatter, "sigmas"},
		{worst(with(func(l *Link) { l.Scatter, l.Sigmas = NormalScatter, math.NaN() })), ErrScatter, "sigmas"},
		{worst(with(func(l *Link) { l.Scatter, l.Sigmas = NormalScatter, math.Inf(1) })), ErrScatter, "sigmas"},
		{worst(with(func(l *Link) { l.Scatter, l.Sigmas = NormalScatter, -3 })), ErrScatter, "sigmas"},
		{worst(with(func(l *Link) { l.Sigmas = 3 })), ErrScatter, "sigmas"},
		{worst(huge), ErrRange, "closing size"},
		{worst(with(func(l *Link) { l.Sensitivity = Ratio{math.MaxInt64, 1} })), ErrRange, "closing size"},
		{root(Chain{}, 3), ErrLinks, "links"},
		{root(valid, 0), ErrScatter, "sigmas of the closing size"},
		{root(valid, math.NaN()), ErrScatter, "sigmas of the closing size"},
		{root(with(func(l *Link) { l.Scatter = 0 }), 3), ErrScatter, "scatter"},
		{root(open, 3), ErrNoLimit, "band"},
		{root(huge, 3), ErrRange, "closing size"},
		{root(with(func(l *Link) { l.Band, l.Scatter, l.Sigmas = MustBetween(units.Length(0), 1<<60), NormalScatter, 0.01 }), 3), ErrRange, "closing size"},
		{room(Chain{}, 0, wanted), ErrLinks, "links"},
		{room(valid, -1, wanted), ErrLinks, "link -1"},
		{room(valid, 2, wanted), ErrLinks, "link 2"},
		{room(valid, 0, Band{}), ErrNoLimit, "wanted"},
		{room(valid, 0, bad), ErrRange, "wanted"},
		{room(open, 0, wanted), ErrNoLimit, "band"},
		{room(with(func(l *Link) { l.Sensitivity = Ratio{math.MaxInt64, 1} }), 0, wanted), ErrRange, "band"},
		{room(with(func(l *Link) { l.Sensitivity = Ratio{1, math.MaxInt64} }), 1, MustParseBand("min 30 mm")), ErrRange, "band"},
		{roomRoot(Chain{}, 1, 3, wanted), ErrLinks, "links"},
		{roomRoot(valid, 1, 3, MustParseBand("max 30 mm")), ErrNoLimit, "wanted"},
		{roomRoot(valid, 1, -1, wanted), ErrScatter, "sigmas of the closing size"},
		{roomRoot(with(func(l *Link) { l.Scatter = 0 }), 1, 3, wanted), ErrScatter, "scatter"},
		{roomRoot(open, 0, 3, wanted), ErrNoLimit, "band"},
		{roomRoot(with(func(l *Link) { l.Sensitivity = Ratio{1, math.MaxInt64} }), 1, 3, wanted), ErrRange, "band"},
		{about(Chain{}, 0, wanted), ErrLinks, "links"},
		{about(valid, units.OutOfRange[units.Length](), wanted), ErrRange, "middle"},
		{about(with(func(l *Link) { l.Sensitivity = Ratio{1, math.MaxInt64} }), 0, MustParseBand("max 30 mm")), ErrRange, "band"},
		{shares(Chain{}), ErrLinks, "links"},
		{shares(open), ErrNoLimit, "band"},
		{shares(Chain{Links: []Link{{Band: MustParseBand("1–1 mm"), Sensitivity: Whole(1)}}}), ErrNoTolerance, "bands"},
		{variances(Chain{}), ErrLinks, "links"},
		{variances(with(func(l *Link) { l.Scatter = 0 })), ErrScatter, "scatter"},
		{sizes(Chain{}, 1), ErrLinks, "links"},
		{sizes(valid, 1), ErrLinks, "sizes"},
		{sizes(valid, 3), ErrLinks, "sizes"},
	} {
		require.ErrorIs(t, c.err, c.kind, "case %d", i)
		var e *ChainError
		require.ErrorAs(t, c.err, &e)
		require.Equal(t, c.field, e.Field, "case %d", i)
		require.NotEmpty(t, e.Error())
	}
	require.EqualError(t, worst(with(func(l *Link) { l.Sensitivity = Ratio{} })),
		`tolerance: chain: link 2 "rod": sensitivity: no sensitivity; +1, −1 or another ratio, other than zero`)
	// Temperatures have no sums.
	warm := ChainOf[units.Temperature]{Links: []LinkOf[units.Temperature]{{Sensitivity: Whole(1)}}}
	_, err := warm.WorstCase()
	require.ErrorIs(t, err, ErrRange)
}

func TestChain_noRoom(t *testing.T) {
	c := chainOf(t, "10 11 1 r / 5 5.5 -2 r", units.InMillimetres)
	for _, q := range []struct {
		err  func() (Band, error)
		want string
	}{
		{func() (Band, error) { return c.RoomWorstCase(1, MustParseBand("0–0.9 mm")) },
			`tolerance: link 2 "link 2": no room: the others take 1 mm of the 0.9 mm wanted, 0.1 mm too much`},
		{func() (Band, error) { return c.RoomWorstCase(1, MustParseBand("min 0 mm, less than 1 mm")) },
			`tolerance: link 2 "link 2": no room: the others take all of the 1 mm wanted`},
		{func() (Band, error) { return c.RoomWorstCase(1, MustParseBand("0.000000001–1.000000001 mm")) },
			`tolerance: link 2 "link 2": no room: the others take all of the 1 mm wanted`},
		{func() (Band, error) { return c.RoomRootSumSquare(1, 3, MustParseBand("0–0.9 mm")) },
			`tolerance: link 2 "link 2": no room: the others take 1.732050808 mm of the 0.9 mm wanted, 0.832050808 mm too much`},
		{func() (Band, error) {
			return c.RoomRootSumSquareAbout(1, 5*units.Millimetre, 3, MustParseBand("max 0 mm"))
		},
			`tolerance: link 2 "link 2": no room: the others take 1.732050808 mm of the 0 mm wanted, 2.732050808 mm too much`},
		{func() (Band, error) {
			odd := chainOf(t, "10 11 1 r / 5 5.5 -1000 r", units.InMillimetres)
			return odd.RoomWorstCase(1, MustParseBand("0.000000001–1.000000002 mm"))
		}, `tolerance: link 2 "link 2": no room: the others take 1 mm of the 1.000000001 mm wanted and leave less than a quantum`},
		{func() (Band, error) {
			odd := chainOf(t, "10 10 1 r / 5 5.5 -1000 r", units.InMillimetres)
			return odd.RoomRootSumSquare(1, 3, MustParseBand("0.000000001–0.000000002 mm"))
		}, `tolerance: link 2 "link 2": no room: the others take 0 mm of the 0.000000001 mm wanted and leave less than a quantum`},
	} {
		b, err := q.err()
		require.Zero(t, b)
		require.ErrorIs(t, err, ErrNoRoom)
		require.EqualError(t, err, q.want)
	}
}

// A lot in the middle of the widest band just fits, and part of the band off
// its middle need not: the documentation's warning.
func TestChain_roomOffTheMiddle(t *testing.T) {
	c := chainOf(t, "10 10.08 1 n 3 / 5 5.1 -1 n 3", units.InMillimetres)
	wanted := MustParseBand("4.95–5.05 mm")
	b, err := c.RoomRootSumSquare(1, 3, wanted)
	require.NoError(t, err)
	require.Equal(t, MustParseBand("5.01–5.07 mm"), b, "3, 4, 5")
	put := func(b Band) Bracket {
		c.Links[1].Band = b
		r, err := c.RootSumSquare(3)
		require.NoError(t, err)
		return r.Within
	}
	require.Equal(t, wanted.limits, put(b))
	require.False(t, put(MustParseBand("5.01–5.04 mm")).Within(wanted.limits))
	about, err := c.RoomRootSumSquareAbout(1, units.MustParseLength("5.035 mm"), 3, wanted)
	require.NoError(t, err)
	require.True(t, put(about).Within(wanted.limits))
	b, err = c.RoomRootSumSquareAbout(1, units.MustParseLength("5.04 mm"), 3, MustParseBand("min 4.95 mm"))
	require.NoError(t, err)
	require.Equal(t, MustParseBand("5.01–5.07 mm"), b)
}

func TestChain_allocatesNothing(t *testing.T) {
	c := chainOf(t, "210 210.1 1 n 3 / 40 40.02 -1 n 3 / 140 140.06 -1 r / 30 30.04 -1 t", units.InMillimetres)
	sizes := []units.Length{210 * units.Millimetre, 40 * units.Millimetre, 140 * units.Millimetre, 30 * units.Millimetre}
	require.Zero(t, testing.AllocsPerRun(100, func() {
		_, _ = c.WorstCase()
		_, _ = c.RootSumSquare(3)
		_, _ = ClosingSize(c, sizes...)
	}))
}

// Whatever the chain: answers or typed errors, and the worst case holds what
// the limits close to.
func FuzzChain(f *testing.F) {
	f.Add(int64(1), int64(9), int64(-3), int64(2), int64(-5), int64(70), int64(7), int64(5), uint8(1), 3.0, 3.0)
	f.Add(int64(-1<<61), int64(1<<61), int64(math.MaxInt64), int64(math.MaxInt64), int64(-1<<61), int64(1<<60), int64(-math.MaxInt64), int64(3), uint8(2), 0.001, 1000.0)
	f.Fuzz(func(t *testing.T, a, b, num, den, a2, b2, num2, den2 int64, scatter uint8, sigmas, k float64) {
		band := func(a, b int64) Band {
			x, err := Between(units.Length(min(a, b)), units.Length(max(a, b)))
			if err != nil {
				x = MustParseBand("1–2 mm")
			}
			return x
		}
		c := Chain{Links: []Link{
			{Band: band(a, b), Sensitivity: Ratio{num, den}, Scatter: Scatter(scatter), Sigmas: sigmas},
			{Band: band(a2, b2), Sensitivity: Ratio{num2, den2}, Scatter: RectangularScatter},
		}}
		worst, err := c.WorstCase()
		if err != nil {
			var e *ChainError
			require.ErrorAs(t, err, &e)
			return
		}
		var ends [2][]Bracket
		for i := range c.Links {
			l := c.Links[i].Band.limits
			ends[0], ends[1] = append(ends[0], Exactly(l.lo)), append(ends[1], Exactly(l.hi))
		}
		for _, e := range ends {
			at, err := ClosingSize(c, e...)
			require.NoError(t, err)
			// The formula rounds for each link, the worst case once.
			if at.InRange() {
				lo, hi := worst.lo-2, worst.hi+2
				require.True(t, at.lo >= lo && at.hi <= hi, "%v in %v", at, worst)
			}
		}
		if r, err := c.RootSumSquare(k); err == nil {
			require.LessOrEqual(t, r.Within.lo, r.Centre)
			require.GreaterOrEqual(t, r.Within.hi, r.Centre)
			require.GreaterOrEqual(t, r.Each, units.Length(0))
		}
		if x, err := c.RoomWorstCase(0, c.Links[1].Band); err == nil {
			c.Links[0].Band = x
			w, err := c.WorstCase()
			require.NoError(t, err)
			require.True(t, w.Within(c.Links[1].Band.limits))
		}
		_, _ = c.RoomRootSumSquare(0, k, c.Links[1].Band)
		_, _ = c.VarianceShares()
	})
}

func BenchmarkChain(b *testing.B) {
	c := chainOf(b, "210 210.1 1 n 3 / 40 40.02 -1 n 3 / 140 140.06 -1 r / 30 30.04 -1 t / 1 1.02 1 u", units.InMillimetres)
	wanted := MustParseBand("0.8–1.2 mm")
	b.Run("lib=tolerance/op=worstcase5", func(b *testing.B) {
		for b.Loop() {
			if _, err := c.WorstCase(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tolerance/op=rootsumsquare5", func(b *testing.B) {
		for b.Loop() {
			if _, err := c.RootSumSquare(3); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=mathbig/op=rootsumsquare5", func(b *testing.B) {
		for b.Loop() {
			c.exactRoot(3)
		}
	})
	b.Run("lib=tolerance/op=roomrootsumsquare5", func(b *testing.B) {
		for b.Loop() {
			if _, err := c.RoomRootSumSquare(2, 3, wanted); err != nil {
				b.Fatal(err)
			}
		}
	})
}
