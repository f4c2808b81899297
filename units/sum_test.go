package units

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
)

func (s suite[Q, P]) sums(t *testing.T) {
	rnd, table := seeded(), s.table()
	for range 2000 {
		qs := make([]Q, rnd.IntN(40))
		total := new(big.Int)
		for i := range qs {
			qs[i] = Q(table.sample(rnd))
			if rnd.IntN(2) == 0 {
				qs[i] = Q(max(limit-rnd.Int64N(100), table.least)) // so that sums leave 64 bits
			}
			total.Add(total, big.NewInt(int64(qs[i])))
		}
		sum, err := Sum(qs...)
		switch {
		case isTemperature[Q]():
			require.ErrorIs(t, err, ErrRange)
			require.Zero(t, sum)
		case inRangeOr(total) == outOfRange:
			var e *RangeError
			require.ErrorAs(t, err, &e)
			require.ErrorIs(t, err, ErrRange)
			require.Zero(t, sum)
		default:
			require.NoError(t, err)
			require.Equal(t, total.Int64(), int64(sum))
		}
		mean, err := Mean(qs...)
		if len(qs) == 0 {
			require.ErrorIs(t, err, ErrRange)
			continue
		}
		require.NoError(t, err)
		want := rounded(new(big.Rat).SetFrac(total, big.NewInt(int64(len(qs)))), NearestEven)
		require.Equal(t, want.Int64(), int64(mean))
	}
	for _, v := range table.beyond() {
		for _, qs := range [][]Q{{Q(v)}, {0, Q(v)}, {Q(v), Q(-v)}} {
			_, err := Sum(qs...)
			require.ErrorIs(t, err, ErrRange)
			_, err = Mean(qs...)
			require.ErrorIs(t, err, ErrRange)
		}
	}
	most := make([]Q, 1000)
	for i := range most {
		most[i] = limit
	}
	mean, err := Mean(most...)
	require.NoError(t, err)
	require.Equal(t, int64(limit), int64(mean))
}

func TestSums(t *testing.T) { each(t, tester.sums) }

func TestSum_errors(t *testing.T) {
	_, err := Sum(Length(limit), Length(1))
	require.EqualError(t, err, "units: sum length: out of range; within -2305843009 mm to 2305843009 mm")
	_, err = Sum(1, OutOfRange[Length]())
	require.EqualError(t, err, "units: sum length of item 1: out of range; every item within -2305843009 mm to 2305843009 mm")
	_, err = Mean[Length]()
	require.EqualError(t, err, "units: mean length of nothing: out of range; at least one value")
	_, err = Sum(Reference)
	require.EqualError(t, err, "units: sum temperature: out of range; differences: temperatures are not added")
	_, err = Mean(make([]Length, 3, 4)...)
	require.NoError(t, err)
	require.Equal(t, Length(math.MinInt64), OutOfRange[Length]())
}
