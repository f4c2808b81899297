package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// surface reads a case of form_planes.txt, in nm.
func surface(t testing.TB, c vectors.Case) []form.Point3 {
	t.Helper()
	h := floats(t, c.Text("heights"))
	points := make([]form.Point3, c.Int("n"))
	if !c.Has("columns") {
		c.Ignore("stepx", "stepy")
		require.Len(t, h, 3*len(points))
		for i := range points {
			points[i] = form.Point3{X: h[3*i] * 1000, Y: h[3*i+1] * 1000, Z: h[3*i+2]}
		}
		return points
	}
	require.Len(t, h, len(points))
	for i, z := range h {
		columns := c.Int("columns")
		points[i] = form.Point3{X: float64(i%columns) * c.Float("stepx"), Y: float64(i/columns) * c.Float("stepy"), Z: z}
	}
	return points
}

func TestPlane_reference(t *testing.T) {
	vectors.Load(t, "reference/form_planes.txt").Each(t, func(t *testing.T, c vectors.Case) {
		points := surface(t, c)
		f, err := form.LeastSquaresPlane(points)
		require.NoError(t, err)
		c.Near("t", f.FLTt())
		c.Near("p", f.FLTp())
		c.Near("v", f.FLTv())
		c.Near("q", f.FLTq())
		z, err := form.MinimumZonePlanes(points)
		require.NoError(t, err)
		c.Near("zone", z.FLTt())
		provePlane(t, points, z)
	})
}

// planeScale is the size of the terms that a deviation is the difference of.
func planeScale(points []form.Point3, f form.Flatness) float64 {
	scale := 1.0
	for _, p := range points {
		scale = max(scale, math.Abs(p.Z), math.Abs(f.SlopeX*p.X), math.Abs(f.SlopeY*p.Y))
	}
	return scale
}

// provePlane holds the contacts to what they claim: they touch the two planes,
// and their weighted places coincide, so that no plane does better.
func provePlane(t *testing.T, points []form.Point3, f form.Flatness) {
	t.Helper()
	var weight, x, y [2]float64
	size, tiny := 1.0, 1e-11*planeScale(points, f)
	for _, k := range f.Contacts() {
		side, want := 0, -f.Below
		if k.Outer {
			side, want = 1, f.Above
		}
		p := points[k.Index]
		size = max(size, math.Abs(p.X), math.Abs(p.Y))
		require.InDelta(t, want, f.Deviation(p), tiny)
		require.Positive(t, k.Weight)
		weight[side] += k.Weight
		x[side] += k.Weight * p.X
		y[side] += k.Weight * p.Y
	}
	for side := range 2 {
		require.InDelta(t, 1, weight[side], 1e-9)
	}
	require.InDelta(t, x[0], x[1], 1e-9*size)
	require.InDelta(t, y[0], y[1], 1e-9*size)
}

func TestPlane_invariance(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	for range 200 {
		n := 4 + rng.IntN(40)
		points, other := make([]form.Point3, n), make([]form.Point3, n)
		for i := range points {
			p := form.Point3{X: float64(rng.IntN(12)), Y: float64(rng.IntN(7)), Z: math.Round(10 * rng.NormFloat64())}
			if i < 3 {
				p.X, p.Y = float64(i), float64(i*i)
			}
			points[i] = p
			// Turned by a quarter, slid, scaled, tilted and upside down.
			other[n-1-i] = form.Point3{X: 1000 - 5*p.Y, Y: 5 * p.X, Z: 3 - 2*(p.Z+0.25*p.X-0.5*p.Y)}
		}
		for _, kind := range []form.PlaneKind{form.LSPL, form.MZPL} {
			f, err := form.Plane(kind, points)
			require.NoError(t, err)
			g, err := form.Plane(kind, other)
			require.NoError(t, err)
			require.InDelta(t, 2*f.FLTt(), g.FLTt(), 1e-9)
			require.InDelta(t, 2*f.FLTp(), g.FLTv(), 1e-9)
			if kind == form.LSPL {
				require.InDelta(t, 2*f.FLTq(), g.FLTq(), 1e-9)
			} else {
				provePlane(t, points, f)
				provePlane(t, other, g)
			}
		}
		z, err := form.MinimumZonePlanes(points)
		require.NoError(t, err)
		for _, kind := range []form.PlaneKind{form.LSPL, form.ThreePoints} {
			f, err := form.Plane(kind, points)
			require.NoError(t, err)
			require.LessOrEqual(t, z.FLTt(), f.FLTt()+1e-9)
		}
	}
}

// By hand: a twist, whose corners go up and down in turn, a cone, and a plane.
func TestMinimumZonePlanes_hand(t *testing.T) {
	twist := []form.Point3{{X: -1, Y: -1, Z: 3}, {X: 1, Y: -1, Z: -3}, {X: -1, Y: 1, Z: -3}, {X: 1, Y: 1, Z: 3}}
	f, err := form.MinimumZonePlanes(twist)
	require.NoError(t, err)
	require.InDelta(t, 6, f.FLTt(), 1e-15)
	require.Len(t, f.Contacts(), 4)
	for _, k := range f.Contacts() {
		require.InDelta(t, 0.5, k.Weight, 1e-15)
		require.Equal(t, twist[k.Index].Z > 0, k.Outer)
	}

	cone := []form.Point3{{X: 0, Y: 0, Z: 7}, {X: 3, Y: 0, Z: 1}, {X: -2, Y: 2, Z: 1}, {X: -2, Y: -2, Z: 1}}
	f, err = form.MinimumZonePlanes(cone)
	require.NoError(t, err)
	require.InDelta(t, 6, f.FLTt(), 1e-14)
	require.Len(t, f.Contacts(), 4)
	require.True(t, f.Contacts()[0].Outer)

	flat := []form.Point3{{X: 0, Y: 0, Z: 1e6}, {X: 3, Y: 0, Z: 1e6}, {X: 0, Y: 2, Z: 1e6}, {X: 3, Y: 2, Z: 1e6}}
	f, err = form.MinimumZonePlanes(flat)
	require.NoError(t, err)
	require.Zero(t, f.FLTt())
	require.Zero(t, f.FLTq())

	// Two readings at one place, one above the other, settle it alone.
	stack := []form.Point3{{Z: 5}, {}, {X: 1, Z: 1}, {Y: 1, Z: 2}, {X: -1, Z: 3}, {Y: -1, Z: 4}}
	f, err = form.MinimumZonePlanes(stack)
	require.NoError(t, err)
	require.InDelta(t, 5, f.FLTt(), 1e-14)
	require.Len(t, f.Contacts(), 2)
	provePlane(t, stack, f)
}

func TestPlane_refuses(t *testing.T) {
	for _, kind := range []form.PlaneKind{form.LSPL, form.MZPL, form.ThreePoints} {
		_, err := form.Plane(kind, []form.Point3{{X: 1}, {Y: 2}})
		require.ErrorIs(t, err, form.ErrTooFew)
		_, err = form.Plane(kind, []form.Point3{{X: 1, Y: 2, Z: 3}, {X: 1, Y: 2, Z: 4}, {X: 1, Y: 2}})
		require.ErrorIs(t, err, form.ErrCoincident)
		_, err = form.Plane(kind, []form.Point3{{X: 0.1, Y: 0.7}, {X: 0.2, Y: 0.8, Z: 4}, {X: 0.7, Y: 1.3}})
		require.ErrorIs(t, err, form.ErrCollinear)
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e151} {
			for _, p := range []form.Point3{{X: bad}, {Y: bad}, {Z: bad}} {
				_, err = form.Plane(kind, []form.Point3{{X: 1}, {Y: 1}, p})
				require.ErrorIs(t, err, form.ErrNotFinite)
			}
		}
	}
	corners := []form.Point3{{X: 1}, {Y: 1}, {}}
	_, err := form.Plane(0, corners)
	require.ErrorIs(t, err, form.ErrKind)
	for _, i := range []int{-1, 3} {
		_, err = form.ThreePointPlane(corners, 0, 1, i)
		require.ErrorIs(t, err, form.ErrShape)
	}
	_, err = form.ThreePointPlane(corners, 0, 1, 1)
	require.ErrorIs(t, err, form.ErrCollinear)
	require.Equal(t, "LSPL MZPL plane through three points no reference plane",
		form.LSPL.String()+" "+form.MZPL.String()+" "+form.ThreePoints.String()+" "+form.PlaneKind(0).String())

	f, err := form.LeastSquaresPlane([]form.Point3{{X: 1, Z: 1e20}, {Y: 1}, {}, {X: 1, Y: 1}})
	require.NoError(t, err)
	_, err = f.Lengths(units.InMillimetres)
	require.ErrorIs(t, err, form.ErrRange)
	_, err = f.Parallelism(corners[:2])
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = f.Parallelism([]form.Point3{{}, {}, {X: math.NaN()}})
	require.ErrorIs(t, err, form.ErrNotFinite)
}

func TestGrid(t *testing.T) {
	um := units.Micrometre
	g := form.Grid{StepX: 50 * units.Millimetre, StepY: 40 * units.Millimetre, Columns: 3, Heights: []units.Length{
		0, 2 * um, 0,
		3 * um, 5 * um, 3 * um,
	}}
	f, err := g.Flatness(form.ThreePoints)
	require.NoError(t, err)
	require.Equal(t, 2*um, f.FLTp)
	require.Zero(t, f.FLTv)
	require.Equal(t, 3e-6/40e-3, f.SlopeY)
	f, err = g.Flatness(form.MZPL)
	require.NoError(t, err)
	require.Equal(t, 2*um, f.FLTt)
	require.NotEmpty(t, f.Contacts())
	f, err = g.Flatness(form.LSPL)
	require.NoError(t, err)
	require.Equal(t, 2*um, f.FLTt)
	require.Empty(t, f.Contacts())
	_, err = g.Flatness(0)
	require.ErrorIs(t, err, form.ErrKind)
	points, err := g.Points()
	require.NoError(t, err)
	require.Equal(t, form.Point3{X: 100e9, Y: 40e9, Z: 3e6}, points[5])

	for _, columns := range []int{0, -3, 4} {
		bad := g
		bad.Columns = columns
		_, err = bad.Flatness(form.MZPL)
		require.ErrorIs(t, err, form.ErrShape)
	}
	bad := g
	bad.StepX = 0
	_, err = bad.Points()
	require.ErrorIs(t, err, form.ErrShape)
	bad.StepX = (1<<62 + 1) * pm
	_, err = bad.Points()
	require.ErrorIs(t, err, form.ErrRange)
	bad = g
	bad.Columns = 6
	_, err = bad.Flatness(form.MZPL)
	require.ErrorIs(t, err, form.ErrCollinear)
	bad.Columns, bad.Heights = 1, []units.Length{0, units.OutOfRange[units.Length](), 0}
	_, err = bad.Flatness(form.MZPL)
	require.ErrorIs(t, err, form.ErrRange)
	bad.Heights = nil
	_, err = bad.Flatness(form.MZPL)
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = bad.Flatness(form.ThreePoints)
	require.ErrorIs(t, err, form.ErrTooFew)
}
