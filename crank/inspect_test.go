package crank

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

func inspectLimits(t testing.TB) Limits {
	data, err := os.ReadFile("testdata/inspect/limits.json")
	require.NoError(t, err)
	l, err := ReadLimits("limits.json", data)
	require.NoError(t, err)
	return l
}

func inspectReadings(t testing.TB) Readings {
	data, err := os.ReadFile("testdata/inspect/readings.json")
	require.NoError(t, err)
	r, err := ReadReadings("readings.json", data)
	require.NoError(t, err)
	return r
}

func BenchmarkInspect(b *testing.B) {
	l, d := inspectLimits(b), inspectReadings(b)
	in := l.Prepare()
	b.Run("lib=tenthou/op=inspect", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := in.Inspect(&d); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=prepare", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			l.Prepare()
		}
	})
}
