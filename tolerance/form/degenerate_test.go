package form_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

var kinds = []form.CircleKind{form.LSCI, form.MZCI, form.MICI, form.MCCI}

func TestLeastSquaresCircle_fivePoints(t *testing.T) {
	vectors.Load(t, "published/form_fivepoints.txt").Each(t, func(t *testing.T, c vectors.Case) {
		r, err := form.LeastSquaresCircle(plane(t, c.Text("points")))
		require.NoError(t, err)
		c.Near("x", r.Centre.X)
		c.Near("y", r.Centre.Y)
		c.Near("radius", r.Radius)
		c.Near("rss", r.RONq()*math.Sqrt(5))
	})
}

func TestCircle_refuses(t *testing.T) {
	for _, kind := range kinds {
		_, err := form.Circle(kind, []form.Point{{X: 1}, {Y: 1}})
		require.ErrorIs(t, err, form.ErrTooFew)
		_, err = form.Circle(kind, nil)
		require.ErrorIs(t, err, form.ErrTooFew)
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 2e150} {
			for _, p := range []form.Point{{X: bad}, {Y: bad}} {
				_, err = form.Circle(kind, []form.Point{{X: 1}, {Y: 1}, p})
				require.ErrorIs(t, err, form.ErrNotFinite)
				var e *form.Error
				require.ErrorAs(t, err, &e)
				require.Equal(t, 2, e.Index)
			}
		}
		for _, p := range []form.Point{{}, {X: 7, Y: -1}, {X: 1e150, Y: 1e150}, {X: 1e-160}} {
			_, err = form.Circle(kind, []form.Point{p, p, p, p})
			require.ErrorIs(t, err, form.ErrCoincident, "%v", p)
		}
		// Apart by less than coordinates of this size can tell.
		_, err = form.Circle(kind, []form.Point{{X: 1e9, Y: 0}, {X: 1e9 + 1e-7, Y: 0}, {X: 1e9, Y: 1e-7}})
		require.ErrorIs(t, err, form.ErrCoincident)
	}
	_, err := form.Circle(9, []form.Point{{X: 1}, {Y: 1}, {}})
	require.ErrorIs(t, err, form.ErrKind)
	require.EqualError(t, err, "form: circle: unknown reference element; expected LSCI, MZCI, MICI or MCCI")
	require.Equal(t, "no reference circle", form.CircleKind(0).String())
	_, err = form.LeastSquaresCircle(make([]form.Point, 2))
	require.EqualError(t, err, "form: circle, got 2: too few readings; expected at least 3")
	_, err = form.Roundness{Radius: 1e300}.Lengths(units.InMillimetres)
	require.ErrorIs(t, err, form.ErrRange)
	require.Equal(t, "form: line, 7", (&form.Error{What: "line", Index: -1, Value: "7"}).Error())
}

// Points in one line: the smallest circle has a limit, the others have none.
func TestCircle_collinear(t *testing.T) {
	for _, points := range [][]form.Point{
		{{X: 1, Y: 1}, {X: 2, Y: 2}, {X: 5, Y: 5}, {X: 3, Y: 3}},
		{{X: 0.1, Y: 0.7}, {X: 0.2, Y: 0.8}, {X: 0.7, Y: 1.3}},
		{{X: 3}, {X: 3, Y: 1}, {X: 3, Y: 1}, {X: 3, Y: 8}},
		{{X: 1e8, Y: 0}, {X: 1e8 + 1, Y: 1e-8}, {X: 1e8 + 2, Y: 0}}, // straight, to rounding
	} {
		for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI} {
			_, err := form.Circle(kind, points)
			require.ErrorIs(t, err, form.ErrCollinear, "%v %v", kind, points)
		}
		r, err := form.MinimumCircumscribedCircle(points)
		require.NoError(t, err)
		far := 0.0
		for _, p := range points {
			for _, q := range points {
				far = max(far, math.Hypot(p.X-q.X, p.Y-q.Y))
			}
		}
		require.InDelta(t, far/2, r.Radius, 1e-7*far)
		require.Len(t, r.Contacts(), 2)
	}
	// An S, which every circle fits worse than a line.
	var wave []form.Point
	for i := -20; i <= 20; i++ {
		wave = append(wave, form.Point{X: float64(i), Y: math.Pow(float64(i)/20, 3)})
	}
	for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI} {
		_, err := form.Circle(kind, wave)
		require.ErrorIs(t, err, form.ErrCollinear, kind)
	}
}

// On an arc every circle but the inscribed one has its meaning.
func TestCircle_partialArc(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 11))
	for _, arc := range []float64{5, 20, 60, 120, 170} {
		points := make([]form.Point, 25)
		for i := range points {
			sin, cos := math.Sincos(arc * math.Pi / 180 * float64(i) / 24)
			r := 43 + 1e-4*rng.NormFloat64()
			points[i] = form.Point{X: r * cos, Y: r * sin}
		}
		_, err := form.MaximumInscribedCircle(points)
		require.ErrorIs(t, err, form.ErrPartialArc)
		z, err := form.MinimumZoneCircles(points)
		require.NoError(t, err)
		require.False(t, z.Global)
		l, err := form.LeastSquaresCircle(points)
		require.NoError(t, err)
		require.LessOrEqual(t, z.RONt(), l.RONt()+1e-12)
		_, err = form.MinimumCircumscribedCircle(points)
		require.NoError(t, err)
	}
	// Right-angled and obtuse triangles, half a turn and the exact half.
	for _, points := range [][]form.Point{
		{{}, {X: 3}, {Y: 4}},
		{{}, {X: 3}, {X: 1, Y: 0.5}},
		form.Polar([]float64{1, 1, 1, 1, 1, 1, 1, 1})[:5],
	} {
		_, err := form.MaximumInscribedCircle(points)
		require.ErrorIs(t, err, form.ErrPartialArc)
	}
}

// Three points are on one circle; a rectangle's four hold the inscribed one in
// pairs across it.
func TestCircle_fewPoints(t *testing.T) {
	acute := []form.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 1.5, Y: 3}}
	for _, kind := range kinds {
		r, err := form.Circle(kind, acute)
		require.NoError(t, err)
		require.InDelta(t, 0, r.RONt(), 1e-14)
		require.InDelta(t, 2, r.Centre.X, 1e-14)
		require.InDelta(t, 0.875, r.Centre.Y, 1e-14)
		proveCircle(t, acute, r)
	}
	rectangle := []form.Point{{X: 3, Y: 2}, {X: -3, Y: 2}, {X: -3, Y: -2}, {X: 3, Y: -2}}
	for _, kind := range kinds {
		r, err := form.Circle(kind, rectangle)
		require.NoError(t, err)
		require.InDelta(t, math.Sqrt(13), r.Radius, 1e-14, kind)
		require.InDelta(t, 0, math.Hypot(r.Centre.X, r.Centre.Y), 1e-14)
	}
	r, err := form.MaximumInscribedCircle(rectangle)
	require.NoError(t, err)
	require.Len(t, r.Contacts(), 4, "two across, and two that stop it sideways")
	// Repeats change nothing.
	twice := append(slices.Clone(rectangle), rectangle...)
	for _, kind := range kinds {
		r, err := form.Circle(kind, twice)
		require.NoError(t, err)
		require.InDelta(t, math.Sqrt(13), r.Radius, 1e-14, kind)
	}
	// A point in the very centre.
	r, err = form.MinimumZoneCircles(append(slices.Clone(rectangle), form.Point{}))
	require.NoError(t, err)
	require.Greater(t, r.RONt(), 0.0)
	r, err = form.LeastSquaresCircle([]form.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}, {}})
	require.NoError(t, err)
	require.InDelta(t, 0.8, r.Radius, 1e-12)
	require.InDelta(t, 0, r.Centre.X, 1e-12)
}

// An exact oval, whose inscribed circle two readings across hold until it is
// pushed sideways.
func TestMaximumInscribedCircle_oval(t *testing.T) {
	for _, n := range []int{8, 24, 88, 360} {
		for _, e := range []float64{1, 0.1, 0.01, 0.001, 1e-5} {
			radii := make([]float64, n)
			for i := range radii {
				radii[i] = 43 + e*math.Cos(2*2*math.Pi*float64(i)/float64(n))
			}
			points := form.Polar(radii)
			r, err := form.MaximumInscribedCircle(points)
			require.NoError(t, err)
			require.GreaterOrEqual(t, r.Radius, 43-e)
			require.Contains(t, []int{2, 3, 4}, len(r.Contacts()))
			proveCircle(t, points, r)
			z, err := form.MinimumZoneCircles(points)
			require.NoError(t, err)
			require.InDelta(t, 2*e, z.RONt(), 1e-12)
			require.True(t, z.Global)
		}
	}
}

// Far from round nothing is proved, and every answer still rests on its
// contacts.
func TestCircle_far(t *testing.T) {
	for _, n := range []int{10, 12, 14, 20} {
		radii := make([]float64, n)
		for i := range radii {
			radii[i] = 10 - 6*float64(i%2)
		}
		points := form.Polar(radii)
		for _, kind := range kinds {
			r, err := form.Circle(kind, points)
			require.NoError(t, err)
			require.Equal(t, kind == form.MCCI, r.Global, kind)
			if kind != form.MZCI {
				proveCircle(t, points, r)
			}
		}
	}
	// A thin ellipse, from whose middle the inscribed circle wanders.
	var points []form.Point
	for i := range 60 {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.3) / 60)
		points = append(points, form.Point{X: 10 * cos, Y: 3 * sin})
	}
	r, err := form.MaximumInscribedCircle(points)
	require.NoError(t, err)
	proveCircle(t, points, r)
	require.InDelta(t, 3, r.Radius, 0.1)
}

func TestPolarAt_refuses(t *testing.T) {
	_, err := form.PolarAt(make([]units.Angle, 2), make([]float64, 3))
	require.ErrorIs(t, err, form.ErrShape)
	_, err = form.PolarAt([]units.Angle{units.OutOfRange[units.Angle]()}, make([]float64, 1))
	require.ErrorIs(t, err, form.ErrRange)
	require.Empty(t, form.Polar(nil))
}

// Turning, mirroring, shifting, scaling and reordering a profile change what
// they should and nothing else.
func TestCircle_invariance(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 12))
	for range 300 {
		n := 5 + rng.IntN(60)
		noise := math.Pow(10, -1-5*rng.Float64())
		radii := make([]float64, n)
		for i := range radii {
			radii[i] = 43 + noise*rng.NormFloat64()
		}
		points := form.Polar(radii)
		other := make([]form.Point, n)
		sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
		for to, from := range rng.Perm(n) {
			p := points[from]
			other[to] = form.Point{X: 3*(cos*p.X-sin*p.Y) + 1000, Y: -3*(sin*p.X+cos*p.Y) - 70}
		}
		for _, kind := range kinds {
			a, err := form.Circle(kind, points)
			require.NoError(t, err)
			b, err := form.Circle(kind, other)
			require.NoError(t, err)
			proveCircle(t, points, a)
			proveCircle(t, other, b)
			tiny := 3e-11 // the coordinates' own rounding, a few times over
			require.InDelta(t, 3*a.Radius, b.Radius, tiny)
			if kind == form.MICI {
				continue // of equals within rounding it may be another
			}
			require.InDelta(t, 3*a.RONt(), b.RONt(), tiny/min(1, 10*noise))
			require.Equal(t, a.Global, b.Global)
		}
	}
}

// The hot paths allocate nothing up to 512 points, and once above.
func TestAllocations(t *testing.T) {
	for _, n := range []int{360, 513} {
		points := bore(n)
		for _, kind := range kinds {
			want := 0.0
			if n > 512 && (kind == form.MZCI || kind == form.MICI) {
				want = 1
			}
			require.Equal(t, want, testing.AllocsPerRun(20, func() {
				if _, err := form.Circle(kind, points); err != nil {
					panic(err)
				}
			}), "%v %d", kind, n)
		}
	}
	p := worn()
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = p.Roundness(form.MZCI) }))
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = p.OutOfRound() }))
	line, face := slope(200), slab(10, 20)
	for _, kind := range []form.LineKind{form.LSLI, form.MZLI, form.EndPoint} {
		require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = form.Line(kind, line) }))
	}
	for _, kind := range []form.PlaneKind{form.LSPL, form.MZPL} {
		require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = form.Plane(kind, face) }))
	}
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = form.ThreePointPlane(face, 0, 19, 180) }))
	v := form.VBlock{Included: 90 * units.Degree}
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _ = v.Factor(5) }))
}
