package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func skirtSet() []SkirtSurvey {
	set := make([]SkirtSurvey, 8)
	for i := range set {
		set[i] = skirtSurvey()
	}
	return set
}

func TestInspectSkirts_allocatesNothing(t *testing.T) {
	set, l := skirtSet(), skirtLimits()
	dst, err := InspectSkirts(nil, set, &l)
	require.NoError(t, err)
	require.Len(t, dst, 56)
	require.Equal(t, 7, dst[55].Piston)
	require.Zero(t, testing.AllocsPerRun(100, func() { dst, _ = InspectSkirts(dst[:0], set, &l) }))
}

func BenchmarkInspectSkirts(b *testing.B) {
	b.Run("lib=tenthou/op=eight", func(b *testing.B) {
		b.ReportAllocs()
		set, l := skirtSet(), skirtLimits()
		var dst []SkirtResult
		for b.Loop() {
			var err error
			if dst, err = InspectSkirts(dst[:0], set, &l); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=clearance", func(b *testing.B) {
		b.ReportAllocs()
		x, y := mm("86"), mm("85.95")
		for b.Loop() {
			sink = SkirtClearance(x, y)
		}
	})
	b.Run("lib=tenthou/op=hot", func(b *testing.B) {
		b.ReportAllocs()
		h, at, of := skirtHeat(), skirtDegrees(90), skirtDegrees(150)
		for b.Loop() {
			sinkBracket, _ = h.ClearanceAt(at, of)
		}
	})
}

func FuzzSkirtSurvey(f *testing.F) {
	f.Add(int64(5e9), int64(18e9), int64(85_950_000_000), int64(85_720_000_000), int64(85_960_000_000), int64(86_010_000_000), int64(5e7))
	f.Add(int64(-1), int64(1<<62), int64(0), int64(-1<<63), int64(1), int64(1<<61), int64(-3))
	f.Fuzz(func(t *testing.T, h1, h2, across, along, fresh, bore, pulled int64) {
		x := func(v int64) tolerance.Bracket { return tolerance.Exactly(units.Length(v)) }
		s := SkirtSurvey{MeasuringHeight: units.Length(h2), Stations: []SkirtStation{{Height: units.Length(h1), Across: x(across)}, {Height: units.Length(h2), Across: x(across), Along: x(along), New: x(fresh)}},
			Bores: []tolerance.Bracket{x(bore)}, Pulled: []tolerance.Bracket{x(pulled)}}
		l := skirtLimits()
		got, err := s.Inspect(nil, &l)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			require.NotEmpty(t, err.Error())
			return
		}
		require.Len(t, got, 7)
		for _, r := range got {
			f, err := s.Finding(&l, r)
			require.NoError(t, err)
			require.Equal(t, r.Standing, f.Standing)
		}
	})
}
