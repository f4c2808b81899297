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

// sections reads a case of form_cylinders.txt.
func sections(t testing.TB, c vectors.Case) form.Sections {
	t.Helper()
	levels, around := c.Int("levels"), c.Int("around")
	d := floats(t, c.Text("deviations"))
	require.Len(t, d, levels*around)
	var s form.Sections
	for k := range levels {
		s.Levels = append(s.Levels, (120*units.Millimetre).Scale(int64(k), int64(levels-1)))
		p := form.Profile{Nominal: 43 * units.Millimetre}
		for _, v := range d[k*around : (k+1)*around] {
			p.Deviations = append(p.Deviations, units.Length(v)*units.Nanometre)
		}
		s.Profiles = append(s.Profiles, p)
	}
	return s
}

// bores are the cases of form_cylinders.txt.
func bores(t testing.TB) (all []form.Sections) {
	for c := range vectors.Load(t, "reference/form_cylinders.txt").All(t) {
		c.Ignore("radius", "t", "q", "zone")
		all = append(all, sections(t, c))
	}
	return all
}

func TestCylinder_reference(t *testing.T) {
	vectors.Load(t, "reference/form_cylinders.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := sections(t, c)
		l, err := s.Cylindricity(form.LSCY)
		require.NoError(t, err)
		um := units.InMicrometres
		c.Near("radius", l.Diameter.Float(um)/2)
		c.Near("t", l.CYLt.Length().Float(um))
		c.Near("q", l.CYLq.Length().Float(um))
		require.Empty(t, l.Contacts())
		z, err := s.Cylindricity(form.MZCY)
		require.NoError(t, err)
		c.Near("zone", z.CYLt.Length().Float(um))
		require.InDelta(t, float64(z.Outside), float64(z.Inside), 1)
		require.Len(t, z.Contacts(), 6)
		weight := map[bool]float64{}
		for _, k := range z.Contacts() {
			weight[k.Outer] += k.Weight
		}
		require.InDelta(t, 1, weight[true], 1e-9)
		require.InDelta(t, 1, weight[false], 1e-9)
	})
}

// tube is a bore of radius r about an axis that leans, with rough walls.
func tube(rng *rand.Rand, r float64) []form.Point3 {
	var points []form.Point3
	for k := range 4 {
		for i := range 15 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 15)
			d := r + 0.01*rng.NormFloat64()
			points = append(points, form.Point3{X: d * cos, Y: d * sin, Z: 30 * float64(k)})
		}
	}
	return points
}

// Turning, tilting, shifting and scaling a bore changes nothing of its form.
func TestCylinder_invariance(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 10))
	for range 50 {
		points := tube(rng, 43)
		other := make([]form.Point3, len(points))
		turn, tilt := 2*math.Pi*rng.Float64(), 0.05*rng.Float64()
		st, ct := math.Sincos(turn)
		sa, ca := math.Sincos(tilt)
		for i, p := range points {
			x, y := ct*p.X-st*p.Y, st*p.X+ct*p.Y
			x, z := ca*x+sa*p.Z, ca*p.Z-sa*x
			other[len(points)-1-i] = form.Point3{X: 2 * (x + 500), Y: 2 * (y - 100), Z: 2 * (z + 1000)}
		}
		for _, kind := range []form.CylinderKind{form.LSCY, form.MZCY} {
			a, err := form.Cylinder(kind, points)
			require.NoError(t, err)
			b, err := form.Cylinder(kind, other)
			require.NoError(t, err)
			tiny := 1e-10
			if kind == form.MZCY {
				tiny = 1e-9 // it may rest in a flat valley
			}
			require.InDelta(t, 2*a.CYLt(), b.CYLt(), tiny)
			require.InDelta(t, 2*a.CYLp(form.Hole), b.CYLp(form.Hole), tiny)
			require.InDelta(t, 2*a.CYLv(form.Hole), b.CYLp(form.Shaft), tiny)
			require.InDelta(t, math.Tan(tilt), b.SlopeX, 1e-3)
			if kind == form.LSCY {
				require.InDelta(t, 2*a.Radius, b.Radius, tiny)
				require.InDelta(t, 2*a.CYLq(), b.CYLq(), tiny)
			}
		}
		l, err := form.LeastSquaresCylinder(points)
		require.NoError(t, err)
		z, err := form.MinimumZoneCylinders(points)
		require.NoError(t, err)
		require.LessOrEqual(t, z.CYLt(), l.CYLt())
		require.Greater(t, z.CYLq(), 0.0)
		require.NotEmpty(t, z.Contacts())
	}
}

// A true cylinder that leans has no zone, and its axis and radius come out.
func TestCylinder_exact(t *testing.T) {
	sa, ca := math.Sincos(0.1)
	var points []form.Point3
	for i := range 40 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 8)
		x, y, z := 5*cos, 5*sin, 3*float64(i/8)
		points = append(points, form.Point3{X: ca*x + sa*z + 1, Y: y - 2, Z: ca*z - sa*x})
	}
	for _, kind := range []form.CylinderKind{form.LSCY, form.MZCY} {
		c, err := form.Cylinder(kind, points)
		require.NoError(t, err)
		require.InDelta(t, 0, c.CYLt(), 1e-14)
		require.InDelta(t, 5, c.Radius, 1e-14)
		require.InDelta(t, math.Tan(0.1), c.SlopeX, 1e-14)
		require.InDelta(t, 0, c.SlopeY, 1e-14)
	}
}

func TestCylinder_refuses(t *testing.T) {
	ring := func(z ...float64) (p []form.Point3) {
		for _, z := range z {
			for i := range 8 {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / 8)
				p = append(p, form.Point3{X: 5 * cos, Y: 5 * sin, Z: z})
			}
		}
		return p
	}
	for _, kind := range []form.CylinderKind{form.LSCY, form.MZCY} {
		_, err := form.Cylinder(kind, ring(1)[:4])
		require.ErrorIs(t, err, form.ErrTooFew)
		_, err = form.Cylinder(kind, ring(1))
		require.ErrorIs(t, err, form.ErrCollinear)
		_, err = form.Cylinder(kind, make([]form.Point3, 9))
		require.ErrorIs(t, err, form.ErrCoincident)
		_, err = form.Cylinder(kind, append(ring(1, 2), form.Point3{Z: math.NaN()}))
		require.ErrorIs(t, err, form.ErrNotFinite)
		// A flat wall, and one line of a wall.
		var wall, line []form.Point3
		for i := range 20 {
			wall = append(wall, form.Point3{X: float64(i % 5), Z: float64(i / 5)})
			line = append(line, form.Point3{X: 1e-9 * float64(i), Z: float64(i)})
		}
		_, err = form.Cylinder(kind, wall)
		require.ErrorIs(t, err, form.ErrCollinear)
		_, err = form.Cylinder(kind, line)
		require.ErrorIs(t, err, form.ErrCollinear)
	}
	_, err := form.Cylinder(0, ring(1, 2))
	require.ErrorIs(t, err, form.ErrKind)
	require.Equal(t, "LSCY MZCY no reference cylinder", form.LSCY.String()+" "+form.MZCY.String()+" "+form.CylinderKind(7).String())
	c, err := form.Cylinder(form.LSCY, ring(1, 2))
	require.NoError(t, err)
	_, err = c.Lengths(units.InMetres)
	require.NoError(t, err)
	c.Radius = 1e30
	_, err = c.Lengths(units.InMetres)
	require.ErrorIs(t, err, form.ErrRange)

	p := form.Profile{Nominal: 1000 * pm, Deviations: make([]units.Length, 6)}
	_, err = form.Sections{Levels: make([]units.Length, 1)}.Cylindricity(form.MZCY)
	require.ErrorIs(t, err, form.ErrShape)
	_, err = form.Sections{Levels: []units.Length{units.OutOfRange[units.Length]()}, Profiles: []form.Profile{p}}.Cylindricity(form.MZCY)
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.Sections{Levels: []units.Length{1 * pm}, Profiles: []form.Profile{{Deviations: p.Deviations}}}.Cylindricity(form.MZCY)
	require.ErrorIs(t, err, form.ErrRadius)
	_, err = form.Sections{}.Cylindricity(form.MZCY)
	require.ErrorIs(t, err, form.ErrTooFew)
}
