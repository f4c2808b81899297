package assign_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/assign"
)

func TestSolver_refuses(t *testing.T) {
	var s assign.Solver
	for _, c := range []struct {
		rows, cols int
		cost       []int64
		kind       error
		text       string
	}{
		{0, 3, nil, assign.ErrEmpty, "assign: 0 rows and 3 columns: nothing to pair; at least one of each"},
		{3, 0, nil, assign.ErrEmpty, "assign: 3 rows and 0 columns: nothing to pair; at least one of each"},
		{-1, -1, []int64{1}, assign.ErrEmpty, "assign: -1 rows and -1 columns: nothing to pair; at least one of each"},
		{2, 2, []int64{1, 2, 3}, assign.ErrSize, "assign: 3 costs for 2 rows and 2 columns: not a cost for every pair"},
		{math.MaxInt, math.MaxInt, []int64{1}, assign.ErrSize, ""},
		{2, 3, make([]int64, 4), assign.ErrSize, ""},
		{2, 2, []int64{0, 0, 1 << 58, 0}, assign.ErrCost, "assign: row 1, column 0: cost 288230376151711744: cost out of range; 2 pairs of that cost must stay below 2^59 together, or the pair be Forbidden"},
		{1, 2, []int64{0, math.MinInt64}, assign.ErrCost, ""},
		{1, 1, []int64{x - 1}, assign.ErrCost, ""},
	} {
		for _, solve := range []func([]int, int, int, []int64) ([]int, assign.Answer, error){s.LeastSum, s.LeastGreatest} {
			got, a, err := solve([]int{7}, c.rows, c.cols, c.cost)
			require.ErrorIs(t, err, c.kind)
			require.Equal(t, []int{7}, got, "what was there stays")
			require.Zero(t, a)
			if c.text != "" {
				require.EqualError(t, err, c.text)
			}
		}
	}
	require.NotEmpty(t, (&assign.InputError{Kind: assign.ErrCost}).Error(), "whatever it holds")
}

// A Solver that has solved a greater problem, or failed, solves the next.
func TestSolver_reuse(t *testing.T) {
	var s assign.Solver
	big := make([]int64, 900)
	for i := range big {
		big[i] = int64(i * i % 31)
	}
	_, _, err := s.LeastGreatest(nil, 30, 30, big)
	require.NoError(t, err)
	_, _, err = s.LeastSum(nil, 2, 2, big)
	require.Error(t, err)
	got, a, err := s.LeastSum([]int{9}, 2, 2, []int64{1, 2, 2, 4})
	require.NoError(t, err)
	require.Equal(t, []int{9, 1, 0}, got)
	require.Equal(t, assign.Answer{Pairs: 2, Sum: 4, Greatest: 2}, a)
}
