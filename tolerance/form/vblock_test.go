package form_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

func degrees(t testing.TB, x float64) units.Angle {
	t.Helper()
	a, err := units.Nearest(x, units.InDegrees)
	require.NoError(t, err)
	return a
}

// What the geometry itself makes of lobes in a V.
func TestVBlock_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/form_vblocks.txt").All(t) {
		v := form.VBlock{Included: degrees(t, c.Float("included")), Indicator: degrees(t, c.Float("indicator"))}
		f, err := v.Factor(c.Int("lobes"))
		require.NoError(t, err)
		c.Near("factor", f)
	}
}

// The factors that standard and textbooks print.
func TestVBlock_practice(t *testing.T) {
	for c := range vectors.Load(t, "practice/form_vblock.txt").All(t) {
		n := c.Int("lobes")
		if !c.Has("included") {
			c.Ignore("indicator")
			f, err := form.TwoPointFactor(n)
			require.NoError(t, err)
			c.Near("factor", f)
			continue
		}
		v := form.VBlock{Included: degrees(t, c.Float("included")), Indicator: degrees(t, c.Float("indicator"))}
		table, err := v.Table(n, n)
		require.NoError(t, err)
		require.Len(t, table, 1)
		require.Equal(t, n, table[0].Lobes)
		c.Near("factor", table[0].VBlock)
		two, err := form.TwoPointFactor(n)
		require.NoError(t, err)
		require.Equal(t, two, table[0].TwoPoint)
	}
}

// A V of nearly 180° reads as a micrometer does, an eccentric part reads
// nothing in any V, and the rider's formula is the one of the literature.
func TestVBlock_limits(t *testing.T) {
	flat := form.VBlock{Included: 180*units.Degree - 1*uas}
	for n := range 40 {
		f, err := flat.Factor(n)
		require.NoError(t, err)
		two, err := form.TwoPointFactor(n)
		require.NoError(t, err)
		require.InDelta(t, two, f, 1e-9, n)
	}
	for deg := 1; deg < 180; deg += 7 {
		for ind := -200; ind < 400; ind += 37 {
			v := form.VBlock{Included: units.Angle(deg) * units.Degree, Indicator: units.Angle(ind) * units.Degree}
			f, err := v.Factor(1)
			require.NoError(t, err)
			require.Zero(t, f)
		}
		a := float64(deg) * math.Pi / 180
		for n := range 30 {
			rider := form.VBlock{Included: units.Angle(deg) * units.Degree, Indicator: 180 * units.Degree}
			f, err := rider.Factor(n)
			require.NoError(t, err)
			require.InDelta(t, math.Abs(1-math.Cos(float64(n)*(math.Pi/2-a/2))/math.Sin(a/2)), f, 1e-9/a)
			summit := form.VBlock{Included: units.Angle(deg) * units.Degree}
			f, err = summit.Factor(n)
			require.NoError(t, err)
			require.InDelta(t, math.Abs(1+math.Cos(float64(n)*(math.Pi/2+a/2))/math.Sin(a/2)), f, 1e-9/a)
		}
	}
}

// The swing of one harmonic is its RONt times the factor, whatever its phase.
func TestVBlock_swing(t *testing.T) {
	v := form.VBlock{Included: 72 * units.Degree, Indicator: 20 * units.Degree}
	for n := 2; n < 12; n++ {
		h := make([]form.Harmonic, n+1)
		h[0].Cos = 43_000
		h[1] = form.Harmonic{Order: 1, Cos: 50, Sin: 20} // eccentricity doesn't show
		h[n] = form.Harmonic{Order: n, Cos: 3, Sin: -4}
		swing, err := v.Swing(form.Spectrum{Harmonics: h}, 20_000)
		require.NoError(t, err)
		f, err := v.Factor(n)
		require.NoError(t, err)
		require.InDelta(t, f*10, swing, 1e-4)
	}
}

// The reading at each turn, by the geometry itself: both faces touch the part
// where its tangents are, and the indicator's flat anvil does likewise.
func TestVBlock_reading(t *testing.T) {
	const a = 1e-7 // of the radius, so that its square doesn't show
	part := form.Spectrum{Harmonics: []form.Harmonic{{Cos: 1}, {Order: 1, Cos: a}, {Order: 2, Cos: a, Sin: -2 * a}, {Order: 3, Sin: a}, {Order: 4}, {Order: 5, Cos: -a, Sin: a}}}
	touch := func(turn, direction float64) float64 {
		most := 0.0
		for k := -200; k <= 200; k++ {
			off := 1e-8 * float64(k)
			most = max(most, part.At(direction+off-turn)*math.Cos(off))
		}
		return most - 1
	}
	for _, v := range []form.VBlock{{Included: 90 * units.Degree}, {Included: 60 * units.Degree, Indicator: 30 * units.Degree}, {Included: 108 * units.Degree, Indicator: -75 * units.Degree}} {
		face, at := math.Pi/2+v.Included.Radians()/2, v.Indicator.Radians()
		for turn := 0.0; turn < 6.2; turn += 0.37 {
			left, right := touch(turn, face), touch(turn, -face)
			x, y := (right-left)/(2*math.Sin(face)), -(left+right)/(2*math.Cos(face))
			want := x*math.Sin(at) + y*math.Cos(at) + touch(turn, at)
			got, err := v.Reading(part, turn)
			require.NoError(t, err)
			require.InDelta(t, want, got, 1e-4*a, "%v %v", v, turn)
		}
	}
}

func TestVBlock_ront(t *testing.T) {
	v := form.VBlock{Included: 60 * units.Degree}
	r, err := v.RONt(30*units.Micrometre, 3)
	require.NoError(t, err)
	require.Equal(t, form.Radial(10*units.Micrometre), r)
	hidden, err := v.Hidden(12, 0.1)
	require.NoError(t, err)
	require.Equal(t, []int{2, 4, 5, 7, 8, 10, 11}, hidden)

	_, err = v.RONt(30*units.Micrometre, 5)
	require.ErrorIs(t, err, form.ErrHidden)
	require.EqualError(t, err, "form: V-block, 5 lobes: lobes that this set-up doesn't show; expected another included angle, or a spindle")
	_, err = v.RONt(30*units.Micrometre, 0)
	require.ErrorIs(t, err, form.ErrHidden)
	_, err = v.RONt(30*units.Micrometre, -1)
	require.ErrorIs(t, err, form.ErrAngles)
	_, err = v.RONt(units.OutOfRange[units.Length](), 3)
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.VBlock{Included: 178 * units.Degree}.RONt((1<<61)*pm, 3)
	require.ErrorIs(t, err, form.ErrHidden)
	_, err = form.VBlock{Included: 90 * units.Degree}.RONt((1<<61)*pm, 4) // over a factor of 0.41
	require.ErrorIs(t, err, form.ErrRange)
}

func TestVBlock_refuses(t *testing.T) {
	for _, v := range []form.VBlock{{}, {Included: -1 * uas}, {Included: 180 * units.Degree}} {
		_, err := v.Factor(3)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = v.Reading(form.Spectrum{}, 0)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = v.Table(2, 3)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = v.Hidden(5, 1)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = v.Swing(form.Spectrum{}, 5)
		require.ErrorIs(t, err, form.ErrAngles)
	}
	_, err := form.VBlock{Included: units.OutOfRange[units.Angle]()}.Factor(3)
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.VBlock{Included: 1 * uas, Indicator: units.OutOfRange[units.Angle]()}.Factor(3)
	require.ErrorIs(t, err, form.ErrRange)
	v := form.VBlock{Included: 90 * units.Degree}
	_, err = v.Reading(form.Spectrum{Harmonics: []form.Harmonic{{Cos: 1}, {}, {}, {Order: 4, Sin: 1}}}, 0)
	require.ErrorIs(t, err, form.ErrShape)
	require.ErrorContains(t, err, "order 4 at place 3")
	for _, n := range []int{-1, form.MostLobes + 1} {
		_, err = v.Factor(n)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = form.TwoPointFactor(n)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = v.Table(n, 3)
		require.ErrorIs(t, err, form.ErrAngles)
		_, err = v.Table(3, n)
		require.ErrorIs(t, err, form.ErrAngles)
	}
	_, err = v.Swing(form.Spectrum{}, 1)
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = v.Reading(form.Spectrum{Harmonics: make([]form.Harmonic, form.MostLobes+2)}, 0)
	require.ErrorIs(t, err, form.ErrAngles)
}
