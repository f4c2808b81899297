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

func TestCircle_profiles(t *testing.T) {
	global := map[form.CircleKind]int{}
	total := 0
	vectors.Load(t, "reference/form_profiles.txt").Each(t, func(t *testing.T, c vectors.Case) {
		points := profile(t, c.Text("deviations"))
		require.Len(t, points, c.Int("n"))
		total++
		fit := func(kind form.CircleKind, x, y string) form.Roundness {
			r, err := form.Circle(kind, points)
			require.NoError(t, err)
			c.Near(x, r.Centre.X)
			c.Near(y, r.Centre.Y)
			if r.Global {
				global[kind]++
			}
			return r
		}
		r := fit(form.LSCI, "lx", "ly")
		c.Near("lr", r.Radius)
		c.Near("lt", r.RONt())
		c.Near("lq", r.RONq())
		c.Near("zw", fit(form.MZCI, "zx", "zy").RONt())
		c.Near("ir", fit(form.MICI, "ix", "iy").Radius)
		c.Near("cr", fit(form.MCCI, "cx", "cy").Radius)
	})
	t.Log(total, global)
	_ = math.Pi
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
		t.Log(r.Global)
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
		t.Log(r.Global)
		c.Near("ix", r.Centre.X)
		c.Near("iy", r.Centre.Y)
		c.Near("ir", r.Radius)
	})
}
