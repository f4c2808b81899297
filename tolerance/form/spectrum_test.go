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

func TestHarmonics_reference(t *testing.T) {
	vectors.Load(t, "reference/form_harmonics.txt").Each(t, func(t *testing.T, c vectors.Case) {
		radii := floats(t, c.Text("deviations"))
		for i := range radii {
			radii[i] += 43e6
		}
		require.Len(t, radii, c.Int("n"))
		amplitudes, crests := floats(t, c.Text("amplitudes")), floats(t, c.Text("crests"))
		var s form.Spectrum
		var err error
		if c.Has("angles") {
			c.Ignore("rms")
			require.Equal(t, "-", c.Row.Cells[2])
			var angles []units.Angle
			for _, a := range floats(t, c.Text("angles")) {
				angles = append(angles, units.Angle(a)*6*units.Arcminute)
			}
			s, err = form.HarmonicsAt(angles, radii, len(amplitudes)-1)
			require.Zero(t, s.Readings)
		} else {
			s, err = form.Harmonics(radii)
			c.Near("rms", s.RootMeanSquare())
		}
		require.NoError(t, err)
		require.Len(t, s.Harmonics, len(amplitudes))
		for k, h := range s.Harmonics {
			require.Equal(t, k, h.Order)
			require.Equal(t, h, s.Order(k))
			require.InDelta(t, amplitudes[k], h.Amplitude(), 1.1e-5, k)
			got, want := h.Crest(), crests[k]*math.Pi/180
			require.GreaterOrEqual(t, got, 0.0)
			if k > 0 {
				// A whole lobe on is the same crest. The angle is as good as the
				// amplitude is large.
				period := 2 * math.Pi / float64(k)
				require.Less(t, got, period)
				off := math.Abs(math.Remainder(got-want, period))
				require.LessOrEqual(t, off*h.Amplitude(), 1e-5+1e-8*h.Amplitude(), k)
			}
		}
	})
}

// The spectrum gives the readings back, and Parseval's sum is theirs.
func TestSpectrum_round(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for n := 3; n < 130; n++ {
		radii := make([]float64, n)
		mean := 0.0
		for i := range radii {
			radii[i] = 43 + 0.01*rng.NormFloat64()
			mean += radii[i] / float64(n)
		}
		s, err := form.Harmonics(radii)
		require.NoError(t, err)
		require.InDelta(t, mean, s.Mean(), 1e-13)
		back := s.Radii(n)
		squares := 0.0
		for i, r := range radii {
			require.InDelta(t, r, back[i], 2e-14*43, "%d of %d", i, n)
			require.InDelta(t, r, s.At(2*math.Pi*float64(i)/float64(n)), 1e-12)
			squares += (r - mean) * (r - mean) / float64(n)
		}
		require.InDelta(t, math.Sqrt(squares), s.RootMeanSquare(), 1e-14)
	}
}

// An oval by hand: the trade's out-of-round is twice its RONt, and four times
// its amplitude; both circles and readings agree.
func TestHarmonic_oval(t *testing.T) {
	const n, e = 360, 5_000_000.0 // 5 µm
	p := form.Profile{Nominal: 43 * units.Millimetre}
	for i := range n {
		d := e * math.Cos(2*(2*math.Pi*float64(i)/n)-1)
		p.Deviations = append(p.Deviations, units.Length(math.Round(d)))
	}
	radii, err := p.Radii(units.InPicometres)
	require.NoError(t, err)
	s, err := form.Harmonics(radii)
	require.NoError(t, err)
	h := s.Ovality()
	require.InDelta(t, e, h.Amplitude(), 0.2)
	require.InDelta(t, 2*e, h.RONt(), 0.4)
	require.InDelta(t, 4*e, h.OutOfRound(), 0.8)
	require.InDelta(t, 0.5, h.Crest(), 1e-7)
	require.InDelta(t, 0.5, h.CrestAngle().Radians(), 1e-7)
	require.Equal(t, h, s.Largest(1, 50))
	require.Less(t, s.Eccentricity().Amplitude(), 0.1)

	r, err := p.Roundness(form.MZCI)
	require.NoError(t, err)
	oor, err := p.OutOfRound()
	require.NoError(t, err)
	// No reading stands on the crest itself: half a degree off at most.
	require.InDelta(t, 2*e, float64(r.RONt), 2*e*2e-4)
	require.InDelta(t, 4*e, float64(oor), 4*e*2e-4)
	require.InDelta(t, float64(r.RONt.OutOfRoundIfEven()), float64(oor), 4*e*2e-4)
	require.True(t, oor.RONtAtLeast().Contains(r.RONt.Length()+10*pm))
}

// Three lobes: a micrometer sees nothing, the standard all.
func TestHarmonic_threeLobes(t *testing.T) {
	p := form.Profile{Nominal: 43 * units.Millimetre}
	for i := range 360 {
		p.Deviations = append(p.Deviations, units.Length(math.Round(5e6*math.Cos(2*math.Pi*float64(i)/120))))
	}
	oor, err := p.OutOfRound()
	require.NoError(t, err)
	require.LessOrEqual(t, oor, form.Diametral(2))
	r, err := p.Roundness(form.MZCI)
	require.NoError(t, err)
	require.InDelta(t, 10e6, float64(r.RONt), 10)
	require.Zero(t, form.Harmonic{Order: 3, Cos: 7}.OutOfRound())
	require.Equal(t, 14.0, form.Harmonic{Order: 3, Cos: 7}.RONt())
	require.Zero(t, form.Harmonic{Order: 1, Cos: 7}.RONt())
	require.Zero(t, form.Harmonic{Order: 0, Cos: 7}.OutOfRound())
	require.Zero(t, form.Harmonic{Cos: 7, Sin: 1}.Crest())
	require.Zero(t, form.Harmonic{Order: 2, Cos: 7, Sin: -1e-300}.Crest())
}

func TestSpectrum_edges(t *testing.T) {
	s := form.Spectrum{Harmonics: []form.Harmonic{{Cos: 10}, {Order: 1, Cos: 1}, {Order: 2, Sin: 3}}}
	require.Equal(t, form.Harmonic{Order: 5}, s.Order(5))
	require.Equal(t, form.Harmonic{}, s.Order(-1))
	require.Equal(t, 2, s.Largest(1, 99).Order)
	require.Equal(t, 1, s.Largest(1, 1).Order)
	require.Equal(t, form.Harmonic{Order: 7}, s.Largest(7, 9))
	require.Equal(t, []form.Harmonic{{Cos: 10}, {Order: 1}, {Order: 2, Sin: 3}}, s.Between(2, 5).Harmonics)
	require.Equal(t, form.Harmonic{Order: 1, Cos: 1}, s.Eccentricity(), "the copy is one")
	require.Empty(t, s.Radii(-1))
	require.Zero(t, form.Spectrum{}.RootMeanSquare())
	require.Zero(t, form.Spectrum{}.Mean())
	require.InDelta(t, math.Sqrt(5), s.RootMeanSquare(), 1e-15)
}

func TestHarmonics_refuses(t *testing.T) {
	_, err := form.Harmonics([]float64{1, 2})
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = form.Harmonics([]float64{1, 2, math.NaN()})
	require.ErrorIs(t, err, form.ErrNotFinite)
	require.EqualError(t, err, "form: harmonics, reading 3, NaN: not a number to reckon with; expected finite values of at most 1e150")
	a := []units.Angle{0, 90 * units.Degree, 180 * units.Degree, 270 * units.Degree, 45 * units.Degree}
	r := []float64{1, 2, 3, 4, 5}
	_, err = form.HarmonicsAt(a[:4], r, 1)
	require.ErrorIs(t, err, form.ErrShape)
	_, err = form.HarmonicsAt(a, r, -1)
	require.ErrorIs(t, err, form.ErrAngles)
	_, err = form.HarmonicsAt(a, r, 1001)
	require.ErrorIs(t, err, form.ErrAngles)
	_, err = form.HarmonicsAt(a, r, 3)
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = form.HarmonicsAt(nil, nil, 0)
	require.ErrorIs(t, err, form.ErrTooFew)
	s, err := form.HarmonicsAt(a, r, 2)
	require.NoError(t, err)
	require.Len(t, s.Harmonics, 3)
	a[4] = 360 * units.Degree // the first again: two directions across and no more
	_, err = form.HarmonicsAt(a, r, 2)
	require.ErrorIs(t, err, form.ErrAngles)
	a[4] = units.OutOfRange[units.Angle]()
	_, err = form.HarmonicsAt(a, r, 1)
	require.ErrorIs(t, err, form.ErrRange)
	a[4], r[4] = 45*units.Degree, math.Inf(1)
	_, err = form.HarmonicsAt(a, r, 1)
	require.ErrorIs(t, err, form.ErrNotFinite)
}
