package proofread_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// A pair that agrees costs no memory: a whole manual can be read through.
func TestAllocations(t *testing.T) {
	for _, text := range []string{"0.006 in (0.152 mm)", "3/32 in (2.38 mm)", "1 in (25.4 mm)"} {
		p := pair(t, text)
		require.Zero(t, testing.AllocsPerRun(100, func() {
			if r, err := proofread.CheckPair(p); err != nil || r.Flagged() {
				t.Error(r, err)
			}
		}), text)
	}
}

// Nor do limits that agree, and readings none of which is odd. A report that is
// kept takes memory once, for its results.
func TestAllocations_sets(t *testing.T) {
	results := 0.0
	if testing.CoverMode() != "" { // then calls are not taken into the caller's code
		results = 1
	}
	for _, text := range []string{"2.7528–2.7533 in (69.921–69.934 mm)", "max 0.10 mm (0.004 in)", "0.020 ±0.005 in (0.51 ±0.13 mm)", "0–.002 in (0–0.05 mm)", "0.006 in (0.152 mm)"} {
		l, err := proofread.ParseLimits(text)
		require.NoError(t, err)
		require.LessOrEqual(t, testing.AllocsPerRun(100, func() {
			if r, err := proofread.CheckLimits(l); err != nil || r.Flagged() {
				t.Error(text)
			}
		}), results, text)
	}
	newPart, err := proofread.ParseColumn("0.03–0.07 mm")
	require.NoError(t, err)
	worn, err := proofread.ParseColumn("max 0.15 mm")
	require.NoError(t, err)
	require.LessOrEqual(t, testing.AllocsPerRun(100, func() {
		if r, err := proofread.CheckWear(newPart, worn); err != nil || r.Flagged() {
			t.Error("wear", err)
		}
	}), results)
	var readings []units.Length
	var brackets []tolerance.Bracket
	for i := range 64 {
		readings = append(readings, 22360*units.Micrometre+units.Length(i%7)*units.Micrometre)
		brackets = append(brackets, tolerance.Exactly(readings[i]))
	}
	require.Zero(t, testing.AllocsPerRun(100, func() {
		if r, err := proofread.CheckReadings(readings...); err != nil || r.Flagged() {
			t.Error(r)
		}
		if r, err := proofread.CheckBrackets(brackets...); err != nil || r.Agreeing != 64 {
			t.Error(r)
		}
	}))
}

func BenchmarkCheckPair(b *testing.B) {
	read := func(text string) proofread.Pair {
		p, err := proofread.ParsePair(text)
		require.NoError(b, err)
		return p
	}
	right, wrong, unnamed := read("2.7528 in (69.921 mm)"), read("2.7548 in (69.921 mm)"), read("0.2344 in (0.3594 mm)")
	b.Run("lib=proofread/op=agree", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.CheckPair(right)
		}
	})
	b.Run("lib=float64/op=agree", func(b *testing.B) { // the comparison alone, without the basis
		in, mm := 2.7528, 69.921
		agree := false
		for b.Loop() {
			agree = math.Abs(in*25.4-mm) <= 0.5*(0.0001*25.4+0.001)
		}
		require.True(b, agree)
	})
	b.Run("lib=proofread/op=name", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.CheckPair(wrong)
		}
	})
	b.Run("lib=proofread/op=nothing-fits", func(b *testing.B) {
		for b.Loop() {
			_, _ = proofread.CheckPair(unnamed)
		}
	})
	b.Run("lib=proofread/op=parse", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.ParsePair("2.7528 in (69.921 mm)")
		}
	})
}

func BenchmarkCheckLimits(b *testing.B) {
	l, err := proofread.ParseLimits("2.7528–2.7533 in (69.921–69.934 mm)")
	require.NoError(b, err)
	worn, err := proofread.ParseColumn("max 69.98 mm")
	require.NoError(b, err)
	b.Run("lib=proofread/op=wear", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.CheckWear(l.Second, worn)
		}
	})
	b.Run("lib=proofread/op=agree", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.CheckLimits(l)
		}
	})
}

func BenchmarkCheckReadings(b *testing.B) {
	readings := make([]units.Length, 48)
	for i := range readings {
		readings[i] = 22360*units.Micrometre + units.Length(i%7)*units.Micrometre
	}
	b.Run("lib=proofread/op=48-readings", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.CheckReadings(readings...)
		}
	})
	eight := make([]tolerance.Bracket, 8)
	for i := range eight {
		eight[i] = tolerance.Exactly(readings[i])
	}
	b.Run("lib=proofread/op=8-brackets", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = proofread.CheckBrackets(eight...)
		}
	})
	readings[17] += 500 * units.Micrometre
	b.Run("lib=proofread/op=48-readings-one-odd", func(b *testing.B) {
		for b.Loop() {
			_, _ = proofread.CheckReadings(readings...)
		}
	})
}
