package instrument

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The figures of the package documentation.
func TestSet_countsTheRingOnce(t *testing.T) {
	in := Instrument{Step: units.Micrometre, Error: units.Micrometre,
		Setting: Setting{Standard: 86 * units.Millimetre, Error: 2 * units.Micrometre}}
	s, err := in.Set(Thermal{}, 12*units.Micrometre, 30*units.Micrometre)
	require.NoError(t, err)
	require.Equal(t, 2, s.Len())
	require.Equal(t, length(t, "2.5 µm"), s.Common())
	require.Equal(t, length(t, "1.5 µm"), s.Individual())
	width := func(b tolerance.Bracket, err error) units.Length {
		require.NoError(t, err)
		w, ok := b.Width()
		require.True(t, ok)
		return w
	}
	top, err := s.Size(1)
	require.NoError(t, err)
	bottom, err := s.Size(0)
	require.NoError(t, err)
	require.Equal(t, 2*4*units.Micrometre, width(top.Bracket, nil))
	require.Equal(t, 2*3*units.Micrometre, width(s.Difference(1, 0)))
	require.Equal(t, 2*8*units.Micrometre, width(top.Bracket.Sub(bottom.Bracket), nil))
	require.Equal(t, length(t, "86.030 mm"), top.Size)
	spread, err := s.Spread()
	require.NoError(t, err)
	require.Equal(t, "[0.015 mm, 0.021 mm]", spread.String())
}

func TestSet_refuses(t *testing.T) {
	in := Instrument{Name: "m", Step: 10 * units.Micrometre, Range: tolerance.MustParseBand("0–25 mm")}
	for _, c := range []struct {
		readings []units.Length
		kind     error
		field    string
	}{
		{nil, ErrEmpty, "readings"},
		{make([]units.Length, MostReadings+1), ErrIndex, "readings"},
		{[]units.Length{5 * pm}, ErrStep, "reading 1"},
		{[]units.Length{0, 5 * pm}, ErrStep, "reading 2"},
		{[]units.Length{0, 0, 30 * units.Millimetre}, ErrOutside, "reading 3"},
	} {
		_, err := in.Set(Thermal{}, c.readings...)
		require.ErrorIs(t, err, c.kind)
		var e *InputError
		require.ErrorAs(t, err, &e)
		require.Equal(t, c.field, e.Field)
	}
	s, err := in.Set(Thermal{}, 0, 10*units.Micrometre)
	require.NoError(t, err)
	for _, i := range []int{-1, 2, math.MaxInt} {
		_, err = s.Size(i)
		require.ErrorIs(t, err, ErrIndex)
		_, err = s.Difference(0, i)
		require.ErrorIs(t, err, ErrIndex)
		_, err = s.Difference(i, 0)
		require.ErrorIs(t, err, ErrIndex)
	}
	// The zero Set has nothing, and says so.
	_, err = Set{}.Spread()
	require.ErrorIs(t, err, ErrEmpty)
	_, err = Set{}.Size(0)
	require.ErrorIs(t, err, ErrIndex)
	require.Zero(t, Set{}.Len())
	// Readings so far apart that their difference is out of range.
	wide, err := Instrument{Error: edge / 2}.Set(Thermal{}, edge, -edge)
	require.NoError(t, err)
	_, err = wide.Difference(0, 1)
	require.ErrorIs(t, err, ErrRange)
	_, err = wide.Spread()
	require.ErrorIs(t, err, ErrRange)
	apart, err := Instrument{}.Set(Thermal{}, edge, -edge)
	require.NoError(t, err)
	_, err = apart.Spread()
	require.ErrorIs(t, err, ErrRange)
}

// What a set holds is its own.
func TestSet_keepsItsReadings(t *testing.T) {
	readings := []units.Length{units.Millimetre, 2 * units.Millimetre}
	s, err := Instrument{}.Set(Thermal{}, readings...)
	require.NoError(t, err)
	readings[0] = 0
	got, err := s.Size(0)
	require.NoError(t, err)
	require.Equal(t, units.Millimetre, got.Size)
}

func TestGraduation(t *testing.T) {
	for _, c := range []struct {
		main   string
		divide []int
		step   string
		counts []int
		want   string
	}{
		{"0.5 mm", []int{50}, "0.01 mm", []int{44, 36}, "22.36 mm"},
		// The half-turn slip of the published list: a sleeve line too many.
		{"0.5 mm", []int{50}, "0.01 mm", []int{45, 36}, "22.86 mm"},
		{"0.5 mm", []int{50, 10}, "0.001 mm", []int{44, 36, 4}, "22.364 mm"},
		{"0.025 in", []int{25}, "0.001 in", []int{17, 22}, "0.447 in"},
		{"0.025 in", []int{25, 10}, "0.0001 in", []int{17, 22, 6}, "0.4476 in"},
		{"1 mm", []int{50}, "0.02 mm", []int{41, 13}, "41.26 mm"},
		{"0.025 in", []int{25}, "0.001 in", []int{0, 0}, "0 in"},
		{"0.01 mm", nil, "0.01 mm", []int{7}, "0.07 mm"},
	} {
		g := Graduation{length(t, c.main), c.divide}
		step, err := g.Step()
		require.NoError(t, err)
		require.Equal(t, length(t, c.step), step)
		got, err := g.Reading(c.counts...)
		require.NoError(t, err)
		require.Equal(t, length(t, c.want), got)
		back, err := g.Counts(got)
		require.NoError(t, err)
		require.Equal(t, c.counts, back)
	}
	// 0.4476 in is 11.36904 mm (published conversion rows).
	inch := Graduation{length(t, "0.025 in"), []int{25, 10}}
	got, err := inch.Reading(17, 22, 6)
	require.NoError(t, err)
	require.Equal(t, length(t, "11.36904 mm"), got)

	for _, g := range []Graduation{{}, {Main: -pm}, {Main: units.OutOfRange[units.Length]()}, {Main: units.Millimetre, Divide: []int{0}},
		{Main: units.Millimetre, Divide: []int{-5}}, {Main: units.Millimetre, Divide: []int{7}}} {
		_, err := g.Step()
		require.ErrorIs(t, err, ErrGraduation)
		_, err = g.Reading(1)
		require.ErrorIs(t, err, ErrGraduation)
		_, err = g.Counts(pm)
		require.ErrorIs(t, err, ErrGraduation)
	}
	for _, counts := range [][]int{{}, {1}, {1, 2, 3, 4}, {-1, 0, 0}, {math.MaxInt, 0, 0}, {1, 25, 0}, {1, -1, 0}, {1, 0, 10}} {
		_, err := inch.Reading(counts...)
		require.ErrorIs(t, err, ErrGraduation)
	}
	_, err = inch.Counts(-pm)
	require.ErrorIs(t, err, ErrGraduation)
	_, err = inch.Counts(101 * units.Metre)
	require.ErrorIs(t, err, ErrGraduation)
	_, err = inch.Counts(units.Micrometre)
	require.ErrorIs(t, err, ErrStep)
}

func TestFormulas(t *testing.T) {
	e := ZeroError(length(t, "25.002 mm"), length(t, "25 mm"))
	require.Equal(t, length(t, "0.002 mm"), e)
	require.Equal(t, length(t, "30.115 mm"), WithoutZeroError(length(t, "30.117 mm"), e))
	require.Equal(t, length(t, "86.012 mm"), FromSetting(length(t, "86 mm"), length(t, "0.012 mm")))
}

func TestReading_allocatesNothing(t *testing.T) {
	th := Thermal{11.5e-6, 1e-6, 3 * units.Kelvin, units.Kelvin}
	in := Instrument{Name: "m", Step: units.Micrometre, Setting: Setting{Standard: 86 * units.Millimetre, Error: 2 * units.Micrometre, Thermal: th}, Thermal: th}
	s, err := in.Set(th, 12*units.Micrometre, 30*units.Micrometre)
	require.NoError(t, err)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		_, _ = in.Reading(12*units.Micrometre, th)
		_, _ = s.Difference(0, 1)
	}))
}

// Whatever the instrument: brackets that hold the size, differences no wider
// than the sizes', or typed errors.
func FuzzSet(f *testing.F) {
	f.Add(int64(1_000_000), int64(2_000_000), int64(86_000_000_000), int64(1_000_000), int64(0), int64(12_000_000), int64(30_000_000), 11.5e-6, 1e-6, int64(27_000_000_000), int64(9_000_000_000), 23e-6, false)
	f.Add(int64(0), int64(1)<<61, int64(1)<<61, int64(0), int64(-1)<<61, int64(1)<<61, int64(0), -0.001, 0.0, int64(-2_600_000_000_000), int64(0), 0.001, true)
	f.Fuzz(func(t *testing.T, step, e, standard, standardError, on, a, b int64, k, ke float64, above, aboveError int64, partK float64, together bool) {
		th := Thermal{k, ke, units.TemperatureDifference(above), units.TemperatureDifference(aboveError)}
		part := th
		part.PerKelvin = partK
		in := Instrument{Step: units.Length(step), Error: units.Length(e), Thermal: th, Together: together,
			Setting: Setting{units.Length(standard), units.Length(standardError), units.Length(on), th}}
		s, err := in.Set(part, units.Length(a), units.Length(b))
		if err != nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			return
		}
		d, err := s.Difference(0, 1)
		if err != nil {
			require.ErrorIs(t, err, ErrRange)
			return
		}
		first, err := s.Size(0)
		if err != nil {
			require.ErrorIs(t, err, ErrRange)
			return
		}
		second, err := s.Size(1)
		if err != nil {
			require.ErrorIs(t, err, ErrRange)
			return
		}
		require.True(t, first.Bracket.Contains(first.Size))
		// Subtracting brackets holds the difference, but for the picometres that
		// each rounding gives away.
		slack, err := tolerance.PlusMinus(units.Length(0), 4+units.Length(math.Abs(float64(first.Size))+math.Abs(float64(second.Size)))>>44)
		require.NoError(t, err)
		plain := first.Bracket.Sub(second.Bracket).Add(slack)
		require.True(t, !plain.InRange() || d.Within(plain), "%v in %v", d, plain)
		_, err = s.Spread()
		if err != nil {
			require.ErrorIs(t, err, ErrRange)
		}
	})
}

func FuzzGraduation(f *testing.F) {
	f.Add(int64(500_000_000), 50, 10, int64(22_364_000_000))
	f.Add(int64(1), -1, 0, int64(-1))
	f.Fuzz(func(t *testing.T, main int64, n, m int, reading int64) {
		g := Graduation{units.Length(main), []int{n, m}}
		counts, err := g.Counts(units.Length(reading))
		if err != nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			return
		}
		back, err := g.Reading(counts...)
		require.NoError(t, err)
		require.Equal(t, units.Length(reading), back)
	})
}

func BenchmarkSet(b *testing.B) {
	th := Thermal{11.5e-6, 1e-6, 3 * units.Kelvin, units.Kelvin}
	cold := Instrument{Step: units.Micrometre, Setting: Setting{Standard: 86 * units.Millimetre, Error: 2 * units.Micrometre}}
	warm := cold
	warm.Setting.Thermal, warm.Thermal = th, th
	together := warm
	together.Together = true
	for _, c := range []struct {
		name string
		in   Instrument
		part Thermal
	}{{"cold", cold, Thermal{}}, {"warm", warm, th}, {"together", together, th}} {
		b.Run("lib=instrument/op=reading"+c.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := c.in.Reading(12*units.Micrometre, c.part); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	s, err := warm.Set(th, 12*units.Micrometre, 30*units.Micrometre, 18*units.Micrometre, 25*units.Micrometre)
	require.NoError(b, err)
	b.Run("lib=instrument/op=difference", func(b *testing.B) {
		for b.Loop() {
			if _, err := s.Difference(0, 1); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=instrument/op=spread4", func(b *testing.B) {
		for b.Loop() {
			if _, err := s.Spread(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
