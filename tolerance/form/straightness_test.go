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

func TestLine_reference(t *testing.T) {
	vectors.Load(t, "reference/form_lines.txt").Each(t, func(t *testing.T, c vectors.Case) {
		points := plane(t, c.Text("points"))
		for i := range points {
			points[i].X *= 1000 // µm to nm
		}
		s, err := form.LeastSquaresLine(points)
		require.NoError(t, err)
		c.Near("t", s.STRt())
		c.Near("p", s.STRp())
		c.Near("v", s.STRv())
		c.Near("q", s.STRq())
		z, err := form.MinimumZoneLines(points)
		require.NoError(t, err)
		c.Near("zone", z.STRt())
		require.LessOrEqual(t, z.STRt(), s.STRt()*(1+1e-12))
		proveLine(t, points, z)
		e, err := form.EndPointLine(points)
		require.NoError(t, err)
		c.Near("above", e.Above)
		c.Near("below", e.Below)
	})
}

// lineScale is the size of the terms that a deviation is the difference of.
func lineScale(points []form.Point, s form.Straightness) float64 {
	scale := 1.0
	for _, p := range points {
		scale = max(scale, math.Abs(p.Y), math.Abs(s.Slope*p.X))
	}
	return scale
}

// proveLine holds the contacts to what they claim: they touch the two lines,
// and their weighted places coincide, so that no line does better.
func proveLine(t *testing.T, points []form.Point, s form.Straightness) {
	t.Helper()
	var weight, place [2]float64
	tiny := 1e-12 * lineScale(points, s)
	for _, k := range s.Contacts() {
		side, want := 0, -s.Below
		if k.Outer {
			side, want = 1, s.Above
		}
		require.InDelta(t, want, s.Deviation(points[k.Index]), tiny)
		require.Positive(t, k.Weight)
		weight[side] += k.Weight
		place[side] += k.Weight * points[k.Index].X
	}
	require.InDelta(t, 1, weight[0], 1e-12)
	require.InDelta(t, 1, weight[1], 1e-12)
	require.InDelta(t, place[0], place[1], 1e-9*(math.Abs(place[0])+1))
}

func TestEndPointLine_published(t *testing.T) {
	second := units.ARCSEC
	tilts := func(s string) (a []units.Angle) {
		for _, f := range floats(t, s) {
			v, err := units.Nearest(f, units.InArcseconds)
			require.NoError(t, err)
			a = append(a, v)
		}
		return a
	}
	// Deviations from the end-point line in seconds of arc times 4 in.
	const step units.Length = 4 * units.IN
	deviations := func(readings string) (form.Straightness, []float64) {
		h, err := form.HeightsFromTilts(step, tilts(readings))
		require.NoError(t, err)
		points := make([]form.Point, len(h))
		unit := float64(step) * math.Tan(units.Angle(second).Radians())
		for i, z := range h {
			points[i] = form.Point{X: float64(i), Y: float64(z) / unit}
		}
		s, err := form.EndPointLine(points)
		require.NoError(t, err)
		d := make([]float64, len(points))
		for i, p := range points {
			d[i] = s.Deviation(p)
		}
		return s, d
	}
	vectors.Load(t, "published/form_straightness.txt").Each(t, func(t *testing.T, c vectors.Case) {
		_, got := deviations(c.Text("readings"))
		for i, want := range floats(t, c.Text("deviations")) {
			require.InDelta(t, want+3.6, got[i], 0.05+1e-6, i) // printed to 0.1
		}
	})
	most := 0.0
	vectors.Load(t, "published/form_moody.txt").Each(t, func(t *testing.T, c vectors.Case) {
		_, got := deviations(c.Text("readings"))
		heights := floats(t, c.Text("heights"))
		require.Len(t, got, len(heights))
		last := len(heights) - 1
		for i, h := range heights {
			chord := heights[0] + (heights[last]-heights[0])*float64(i)/float64(last)
			// Heights were summed from rounded corrections and rounded again.
			require.InDelta(t, h-chord, got[i], 0.11, i)
			most = max(most, h)
		}
	})
	h, err := form.HeightsFromTilts(step, []units.Angle{units.Angle(math.Round(most * float64(second)))})
	require.NoError(t, err)
	require.Equal(t, "178.4 µin", h[1].Text(units.InMicroinches, 1))
}

// Reversing a line, sliding it, tilting it, turning it upside down and another
// scale change what they should and nothing else.
func TestLine_invariance(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 200 {
		n := 3 + rng.IntN(30)
		points := make([]form.Point, n)
		for i := range points {
			points[i] = form.Point{X: float64(rng.IntN(40)), Y: math.Round(rng.NormFloat64() * 50)}
		}
		points[0].X, points[1].X = 0, 40
		for _, kind := range []form.LineKind{form.LSLI, form.MZLI} {
			base, err := form.Line(kind, points)
			require.NoError(t, err)
			other := slices.Clone(points)
			for i, p := range points {
				other[n-1-i] = form.Point{X: 700 - 3*p.X, Y: 12 - 2*(p.Y+0.5*p.X)}
			}
			got, err := form.Line(kind, other)
			require.NoError(t, err)
			require.InDelta(t, 2*base.STRt(), got.STRt(), 1e-9)
			require.InDelta(t, 2*base.STRp(), got.STRv(), 1e-9)
			require.InDelta(t, 2*base.STRq(), got.STRq(), 1e-9)
			if kind == form.LSLI {
				require.InDelta(t, (2*base.Slope+1)/3, got.Slope, 1e-12)
			}
		}
		z, err := form.MinimumZoneLines(points)
		require.NoError(t, err)
		for _, kind := range []form.LineKind{form.LSLI, form.EndPoint} {
			s, err := form.Line(kind, points)
			require.NoError(t, err)
			require.LessOrEqual(t, z.STRt(), s.STRt()+1e-12)
		}
		proveLine(t, points, z)
	}
}

// Two exact lines by hand: a bow of 4 over its chord, and a step.
func TestMinimumZoneLines_hand(t *testing.T) {
	s, err := form.MinimumZoneLines([]form.Point{{X: 0}, {X: 1, Y: 3}, {X: 2, Y: 4}, {X: 3, Y: 3}, {X: 4}})
	require.NoError(t, err)
	require.Equal(t, 4.0, s.STRt())
	require.Zero(t, s.Slope)
	require.Equal(t, form.Point{Y: 2}, s.Through)
	require.Equal(t, []form.Contact{{Index: 0, Weight: 0.5}, {Index: 2, Outer: true, Weight: 1}, {Index: 4, Weight: 0.5}}, s.Contacts())

	// One above the other: two contacts, and a slope that touches both bounds.
	s, err = form.MinimumZoneLines([]form.Point{{X: 0}, {X: 1, Y: 2}, {X: 1, Y: -2}, {X: 2}})
	require.NoError(t, err)
	require.Equal(t, 4.0, s.STRt())
	require.Equal(t, []form.Contact{{Index: 1, Outer: true, Weight: 1}, {Index: 2, Weight: 1}}, s.Contacts())

	// The same at an end.
	s, err = form.MinimumZoneLines([]form.Point{{X: 0, Y: 5}, {X: 0}, {X: 1, Y: 2}, {X: 2, Y: 3}})
	require.NoError(t, err)
	require.Equal(t, 5.0, s.STRt())

	// A line without deviation.
	s, err = form.MinimumZoneLines([]form.Point{{X: 3, Y: 3}, {X: 1, Y: 1}, {X: 2, Y: 2}})
	require.NoError(t, err)
	require.Zero(t, s.STRt())
	require.Equal(t, 1.0, s.Slope)
}

func TestLine_refuses(t *testing.T) {
	for _, kind := range []form.LineKind{form.LSLI, form.MZLI, form.EndPoint} {
		_, err := form.Line(kind, []form.Point{{X: 1}, {X: 2}})
		require.ErrorIs(t, err, form.ErrTooFew)
		_, err = form.Line(kind, []form.Point{{X: 1}, {X: 1, Y: 2}, {X: 1, Y: 3}})
		require.ErrorIs(t, err, form.ErrCoincident)
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e151} {
			_, err = form.Line(kind, []form.Point{{X: 1}, {X: 2, Y: bad}, {X: 3}})
			require.ErrorIs(t, err, form.ErrNotFinite)
			_, err = form.Line(kind, []form.Point{{X: 1}, {X: bad}, {X: 3}})
			require.ErrorIs(t, err, form.ErrNotFinite)
		}
	}
	_, err := form.Line(0, []form.Point{{X: 1}, {X: 2}, {X: 3}})
	require.ErrorIs(t, err, form.ErrKind)
	require.EqualError(t, err, "form: line: unknown reference element; expected LSLI, MZLI or EndPoint")
	require.Equal(t, "LSLI MZLI end-point line no reference line",
		form.LSLI.String()+" "+form.MZLI.String()+" "+form.EndPoint.String()+" "+form.LineKind(9).String())

	s, err := form.LeastSquaresLine([]form.Point{{X: 1}, {X: 2, Y: 1e30}, {X: 3}})
	require.NoError(t, err)
	_, err = s.Lengths(units.InMillimetres)
	require.ErrorIs(t, err, form.ErrRange)
	_, err = s.Parallelism(nil)
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = s.Parallelism([]form.Point{{}, {Y: math.NaN()}})
	require.ErrorIs(t, err, form.ErrNotFinite)
}

func TestHeights(t *testing.T) {
	um := units.Micrometre
	h := form.Heights{Step: 50 * units.Millimetre, Heights: []units.Length{0, 3 * um, 4 * um, 3 * um, 0}}
	s, err := h.Straightness(form.MZLI)
	require.NoError(t, err)
	require.Equal(t, 4*um, s.STRt)
	require.Equal(t, 2*um, s.STRp)
	require.Equal(t, 2*um, s.STRv)
	require.Len(t, s.Contacts(), 3)
	h.Places = []units.Length{400 * pm, 300 * pm, 200 * pm, 100 * pm, 0}
	s, err = h.Straightness(form.EndPoint)
	require.NoError(t, err)
	require.Equal(t, 4*um, s.STRp)
	require.Zero(t, s.STRv)

	h.Places = h.Places[1:]
	_, err = h.Straightness(form.MZLI)
	require.ErrorIs(t, err, form.ErrShape)
	h.Places = nil
	h.Step = 0
	_, err = h.Straightness(form.MZLI)
	require.ErrorIs(t, err, form.ErrCoincident)
	h.Step = units.OutOfRange[units.Length]()
	_, err = h.Straightness(form.MZLI)
	require.ErrorIs(t, err, form.ErrRange)
	h.Step, h.Heights[2] = um, units.OutOfRange[units.Length]()
	_, err = h.Straightness(form.MZLI)
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.Heights{Heights: make([]units.Length, 600), Step: um}.Straightness(0)
	require.ErrorIs(t, err, form.ErrKind)
}

func TestHeightsFromTilts_refuses(t *testing.T) {
	_, err := form.HeightsFromTilts(1*pm, nil)
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = form.HeightsFromTilts(units.OutOfRange[units.Length](), make([]units.Angle, 1))
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.HeightsFromTilts(1*pm, []units.Angle{0, units.OutOfRange[units.Angle]()})
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.HeightsFromTilts(1*pm, []units.Angle{0, -45 * units.Degree})
	require.ErrorIs(t, err, form.ErrAngles)
	_, err = form.HeightsFromTilts((1<<61)*pm, []units.Angle{44 * units.Degree, 44 * units.Degree})
	require.ErrorIs(t, err, form.ErrRange)
}
