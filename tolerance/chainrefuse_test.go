package tolerance

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

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
	huge := with(func(l *Link) { l.Band = MustBetween(units.Length(1<<61-1), units.Length(1<<61)) })
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
		{root(with(func(l *Link) {
			l.Band, l.Scatter, l.Sigmas = MustBetween(units.Length(0), units.Length(1<<60)), NormalScatter, 0.01
		}), 3), ErrRange, "closing size"},
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
