package form_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/form"
)

// floats reads numbers with blanks between them.
func floats(t testing.TB, s string) []float64 {
	t.Helper()
	var out []float64
	for f := range strings.FieldsSeq(s) {
		v, err := strconv.ParseFloat(f, 64)
		require.NoError(t, err)
		out = append(out, v)
	}
	return out
}

// plane reads x y x y …
func plane(t testing.TB, s string) []form.Point {
	t.Helper()
	v := floats(t, s)
	require.Zero(t, len(v)%2)
	points := make([]form.Point, len(v)/2)
	for i := range points {
		points[i] = form.Point{X: v[2*i], Y: v[2*i+1]}
	}
	return points
}

func TestLeastSquaresCircle_published(t *testing.T) {
	vectors.Load(t, "published/form_circles.txt").Each(t, func(t *testing.T, c vectors.Case) {
		points := plane(t, c.Text("points"))
		require.Len(t, points, c.Int("n"))
		r, err := form.LeastSquaresCircle(points)
		require.NoError(t, err)
		c.Near("x", r.Centre.X)
		c.Near("y", r.Centre.Y)
		c.Near("diameter", 2*r.Radius)
	})
}

// profile makes the points of deviations in nm from 43 mm, in µm.
func profile(t testing.TB, deviations string) []form.Point {
	radii := floats(t, deviations)
	for i, d := range radii {
		radii[i] = 43_000 + d/1000
	}
	return form.Polar(radii)
}

// proveCircle holds the contacts to what they claim: they touch their circle,
// and the weighted directions cancel, so that no small shift does better.
func proveCircle(t *testing.T, points []form.Point, r form.Roundness) {
	t.Helper()
	var weight, x, y [2]float64
	for _, k := range r.Contacts() {
		side, want := 0, r.Inner
		if k.Outer {
			side, want = 1, r.Outer
		}
		dx, dy := points[k.Index].X-r.Centre.X, points[k.Index].Y-r.Centre.Y
		d := math.Hypot(dx, dy)
		require.InDelta(t, want, d, 1e-12*(r.Outer+math.Abs(r.Centre.X)+math.Abs(r.Centre.Y)))
		weight[side] += k.Weight
		x[side] += k.Weight * dx / d
		y[side] += k.Weight * dy / d
	}
	switch r.Kind {
	case form.MZCI:
		require.InDelta(t, 1, weight[0], 1e-9)
		require.InDelta(t, 1, weight[1], 1e-9)
	case form.MICI:
		require.InDelta(t, 1, weight[0], 1e-9)
	case form.MCCI:
		require.InDelta(t, 1, weight[1], 1e-9)
	default:
		require.Empty(t, r.Contacts())
	}
	require.InDelta(t, x[0], x[1], 1e-8)
	require.InDelta(t, y[0], y[1], 1e-8)
	if r.Kind == form.MZCI && r.RONt() > 1e-9*r.Outer {
		// Two and two, in turn.
		k := r.Contacts()
		require.Len(t, k, 4)
		require.True(t, k[0].Outer != k[1].Outer && k[0].Outer == k[2].Outer && k[1].Outer == k[3].Outer)
	}
}

func TestCircle_profiles(t *testing.T) {
	global := map[form.CircleKind]int{}
	vectors.Load(t, "reference/form_profiles.txt").Each(t, func(t *testing.T, c vectors.Case) {
		points := profile(t, c.Text("deviations"))
		require.Len(t, points, c.Int("n"))
		fit := func(kind form.CircleKind, x, y string) form.Roundness {
			r, err := form.Circle(kind, points)
			require.NoError(t, err)
			c.Near(x, r.Centre.X)
			c.Near(y, r.Centre.Y)
			proveCircle(t, points, r)
			if r.Global {
				global[kind]++
			}
			return r
		}
		l := fit(form.LSCI, "lx", "ly")
		c.Near("lr", l.Radius)
		c.Near("lt", l.RONt())
		c.Near("lq", l.RONq())
		z, i, o := fit(form.MZCI, "zx", "zy"), fit(form.MICI, "ix", "iy"), fit(form.MCCI, "cx", "cy")
		c.Near("zw", z.RONt())
		c.Near("ir", i.Radius)
		c.Near("cr", o.Radius)
		// Nothing has a narrower zone, nothing fits better inside or outside.
		tiny := 1e-9
		for _, r := range []form.Roundness{l, i, o} {
			require.LessOrEqual(t, z.RONt(), r.RONt()+tiny)
			require.LessOrEqual(t, r.Inner, i.Inner+tiny)
			require.GreaterOrEqual(t, r.Outer, o.Outer-tiny)
			require.GreaterOrEqual(t, r.RONq(), l.RONq()-tiny)
		}
		require.LessOrEqual(t, i.Radius, l.Radius)
		require.LessOrEqual(t, l.Radius, o.Radius)
	})
	require.Equal(t, map[form.CircleKind]int{form.MZCI: 500, form.MICI: 500, form.MCCI: 500}, global)
}

// The points of the published sets by name.
func published(t testing.TB) map[string][]form.Point {
	sets := map[string][]form.Point{}
	for c := range vectors.Load(t, "published/form_circles.txt").All(t) {
		c.Ignore("n", "x", "y", "diameter")
		sets[c.ID] = plane(t, c.Text("points"))
	}
	return sets
}

func TestCircle_zones(t *testing.T) {
	sets := published(t)
	vectors.Load(t, "reference/form_zones.txt").Each(t, func(t *testing.T, c vectors.Case) {
		points := sets[c.ID]
		r, err := form.LeastSquaresCircle(points)
		require.NoError(t, err)
		c.Near("lt", r.RONt())
		c.Near("lq", r.RONq())
		r, err = form.MinimumZoneCircles(points)
		require.NoError(t, err)
		c.Near("zx", r.Centre.X)
		c.Near("zy", r.Centre.Y)
		c.Near("zw", r.RONt())
		r, err = form.MinimumCircumscribedCircle(points)
		require.NoError(t, err)
		c.Near("cx", r.Centre.X)
		c.Near("cy", r.Centre.Y)
		c.Near("cr", r.Radius)
		r, err = form.MaximumInscribedCircle(points)
		if !c.Has("ir") {
			c.Ignore("ix", "iy")
			require.ErrorIs(t, err, form.ErrPartialArc)
			return
		}
		require.NoError(t, err)
		c.Near("ix", r.Centre.X)
		c.Near("iy", r.Centre.Y)
		c.Near("ir", r.Radius)
	})
}
