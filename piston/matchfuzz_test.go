package piston

import (
	"math/big"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// Whatever the sizes: an answer whose pairs are in the band, each piston once,
// never worse than as marked, or a typed error.
func FuzzMatchBores(f *testing.F) {
	f.Add([]byte{1, 2, 3, 4}, []byte{4, 3, 2, 1}, int64(1e6), int64(2e7), int64(5e7), int64(4e7))
	f.Add([]byte{0}, []byte{255}, int64(-1), int64(1)<<61, int64(-1)<<61, int64(0))
	f.Fuzz(func(t *testing.T, a, b []byte, unit, lo, hi, aim int64) {
		if len(a) > 12 || len(b) > 12 {
			return
		}
		parts := func(base units.Length, bytes []byte) (p []MatchPart) {
			for i, x := range bytes {
				s := units.Length(int64(x) * (unit % (1 << 40)))
				size, _ := tolerance.PlusMinus(base+s, units.Length(x%4)*units.Micrometre)
				p = append(p, MatchPart{strconv.Itoa(i), size})
			}
			return p
		}
		band, _ := tolerance.Between(units.Length(lo), units.Length(hi))
		w := selective.Wanted{Band: band, Aim: units.Length(aim)}
		r, err := MatchBores(parts(86*units.Millimetre, a), parts(85950*units.Micrometre, b), w)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		used := map[int]bool{}
		for _, p := range r.Best.Pairs {
			require.Equal(t, tolerance.Within, p.Verdict)
			require.False(t, used[p.Piston])
			used[p.Piston] = true
		}
		require.Equal(t, len(a), len(used)+len(r.Replace))
		require.GreaterOrEqual(t, r.Best.Within, r.AsMarked.Within)
		require.GreaterOrEqual(t, r.Possible, r.Best.Within)
		if r.AsMarked.Within == len(a) {
			require.LessOrEqual(t, r.Best.Greatest, r.AsMarked.Greatest)
		}
	})
}

// Whatever the masses: an answer with the exact mean, never worse than as
// marked, or a typed error.
func FuzzMatchRods(f *testing.F) {
	f.Add([]byte{1, 2, 3, 4}, []byte{4, 3, 2, 1}, int64(1e12))
	f.Add([]byte{9}, []byte{1, 1}, int64(-5))
	f.Add([]byte{255, 1}, []byte{255, 1}, int64(1)<<52)
	f.Fuzz(func(t *testing.T, a, b []byte, unit int64) {
		if len(a) > 12 || len(b) > 12 {
			return
		}
		sum := new(big.Int)
		parts := func(bytes []byte) (p []MassPart) {
			for i, x := range bytes {
				m := units.Mass(int64(x) * (unit % (1 << 53)))
				sum.Add(sum, big.NewInt(int64(m)))
				p = append(p, MassPart{strconv.Itoa(i), tolerance.Exactly(m)})
			}
			return p
		}
		r, err := MatchRods(parts(a), parts(b), tolerance.SpecOf[units.Mass]{})
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		off := new(big.Int).Mul(big.NewInt(int64(r.Mean)), big.NewInt(int64(len(a))))
		off.Sub(off, sum).Abs(off)
		require.LessOrEqual(t, off.Mul(off, big.NewInt(2)).Cmp(big.NewInt(int64(len(a)))), 0, "the mean is off by half a quantum at the most")
		require.LessOrEqual(t, r.Best.Greatest, r.AsMarked.Greatest)
		best, _ := r.Best.Spread.Upper()
		marked, _ := r.AsMarked.Spread.Upper()
		require.LessOrEqual(t, best, marked)
	})
}
