package tolerance

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

func TestFit_allocatesNothing(t *testing.T) {
	hole, shaft, wanted := MustParseBand("30.000–30.020 mm"), MustParseBand("29.982–29.995 mm"), MustParseBand("0.005–0.040 mm")
	require.Zero(t, testing.AllocsPerRun(100, func() {
		f, _ := FitBands(hole, shaft)
		_, _ = f.Kind(), f.Judge(wanted)
		_, _ = HoleBand(shaft, wanted)
	}))
}

// Whatever the ends: no panic, and an inverse that fits for certain.
func FuzzFit(f *testing.F) {
	f.Add(int64(30_000_000_000), int64(30_020_000_000), int64(29_982_000_000), int64(29_995_000_000), uint8(0xaa))
	f.Add(int64(-1<<63), int64(1<<62), int64(1<<61), int64(-1<<61), uint8(0x9))
	f.Fuzz(func(t *testing.T, a, b, c, d int64, ends uint8) {
		first, err := NewBand(units.Length(a), End(ends&3), units.Length(b), End(ends>>2&3))
		if err != nil {
			return
		}
		second, err := NewBand(units.Length(c), End(ends>>4&3), units.Length(d), End(ends>>6))
		if err != nil {
			return
		}
		if fit, err := FitBands(first, second); err == nil {
			require.NotEmpty(t, fit.String())
			if v := fit.Judge(second); v == Within {
				below, above, ok := fit.Outside(second)
				require.True(t, ok && below == 0 && above == 0)
			}
		}
		if hole, err := HoleBand(first, second); err == nil {
			fit, err := FitBands(hole, first)
			if err == nil {
				require.Equal(t, Within, fit.Judge(second))
			}
		}
		if shaft, err := ShaftBand(first, second); err == nil {
			fit, err := FitBands(first, shaft)
			if err == nil {
				require.Equal(t, Within, fit.Judge(second))
			}
		}
	})
}

func BenchmarkFit(b *testing.B) {
	hole, shaft, wanted := MustParseBand("30.000–30.020 mm"), MustParseBand("29.982–29.995 mm"), MustParseBand("0.005–0.040 mm")
	b.Run("lib=tolerance/op=fit", func(b *testing.B) {
		for b.Loop() {
			f, err := FitBands(hole, shaft)
			if err != nil || f.Kind() != ClearanceFit || f.Judge(wanted) != Within {
				b.Fatal(f, err)
			}
		}
	})
	b.Run("lib=tolerance/op=holeband", func(b *testing.B) {
		for b.Loop() {
			if _, err := HoleBand(shaft, wanted); err != nil {
				b.Fatal(err)
			}
		}
	})
}
