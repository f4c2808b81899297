package assign_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/assign"
	"github.com/tenthou/tenthou/internal/vectors"
)

const x = assign.Forbidden

// table reads "1 2 / x 4".
func table(t *testing.T, text string) (rows, cols int, cost []int64) {
	lines := strings.Split(text, " / ")
	for _, line := range lines {
		for cell := range strings.FieldsSeq(line) {
			c := int64(x)
			if cell != "x" {
				n, err := strconv.ParseInt(cell, 10, 64)
				require.NoError(t, err)
				c = n
			}
			cost = append(cost, c)
		}
	}
	return len(lines), len(cost) / len(lines), cost
}

func columns(t *testing.T, text string) (cols []int) {
	for cell := range strings.FieldsSeq(text) {
		n := assign.None
		if cell != "x" {
			var err error
			n, err = strconv.Atoi(cell)
			require.NoError(t, err)
		}
		cols = append(cols, n)
	}
	return cols
}

// requirePairing checks that the answer is a pairing and adds up.
func requirePairing(t *testing.T, got []int, a assign.Answer, rows, cols int, cost []int64) {
	t.Helper()
	require.Len(t, got, rows)
	used := make([]bool, cols)
	var sum int64
	pairs, greatest := 0, int64(math.MinInt64)
	for i, j := range got {
		if j == assign.None {
			continue
		}
		require.False(t, used[j], "column %d twice", j)
		used[j] = true
		require.NotEqual(t, int64(x), cost[i*cols+j], "a forbidden pair")
		pairs++
		sum += cost[i*cols+j]
		greatest = max(greatest, cost[i*cols+j])
	}
	if pairs == 0 {
		greatest = 0
	}
	require.Equal(t, assign.Answer{Pairs: pairs, Sum: sum, Greatest: greatest}, a)
}

func TestSolver_asScipy(t *testing.T) {
	var s assign.Solver
	vectors.Load(t, "reference/assign_scipy.txt").Each(t, func(t *testing.T, c vectors.Case) {
		c.Choice("kind", "square", "ties", "oblong", "forbidden")
		rows, cols, cost := table(t, c.Text("costs"))

		got, a, err := s.LeastSum(nil, rows, cols, cost)
		require.NoError(t, err)
		requirePairing(t, got, a, rows, cols, cost)
		require.Equal(t, c.Int("pairs"), a.Pairs)
		require.Equal(t, c.Int64("sum"), a.Sum)
		if c.Has("columns") {
			require.Equal(t, columns(t, c.Text("columns")), got)
		}

		got, a, err = s.LeastGreatest(nil, rows, cols, cost)
		require.NoError(t, err)
		requirePairing(t, got, a, rows, cols, cost)
		require.Equal(t, c.Int("pairs"), a.Pairs)
		require.Equal(t, c.Int64("greatest"), a.Greatest)
		require.Equal(t, c.Int64("capped_sum"), a.Sum)
		if c.Has("capped_columns") {
			require.Equal(t, columns(t, c.Text("capped_columns")), got)
		}
	})
}

// A way is one way of pairing, compared by what is asked for first.
type way struct {
	cols []int
	a    assign.Answer
}

// betterThan compares ways of which v is the earlier in the order of columns.
func (w way) betterThan(v way, greatestFirst bool) bool {
	switch {
	case w.a.Pairs != v.a.Pairs:
		return w.a.Pairs > v.a.Pairs
	case greatestFirst && w.a.Greatest != v.a.Greatest:
		return w.a.Greatest < v.a.Greatest
	}
	return w.a.Sum < v.a.Sum
}

// everyWay tries all pairings, the lowest columns of the first rows first.
func everyWay(rows, cols int, cost []int64, greatestFirst bool) (best way) {
	at, used := make([]int, rows), make([]bool, cols)
	best.a.Pairs = -1
	var try func(i int, a assign.Answer)
	try = func(i int, a assign.Answer) {
		if i == rows {
			if w := (way{at, a}); w.betterThan(best, greatestFirst) {
				best = way{append([]int(nil), at...), a}
			}
			return
		}
		for j := range cols {
			c := cost[i*cols+j]
			if used[j] || c == x {
				continue
			}
			at[i], used[j] = j, true
			more := assign.Answer{Pairs: a.Pairs + 1, Sum: a.Sum + c, Greatest: c}
			if a.Pairs > 0 {
				more.Greatest = max(a.Greatest, c)
			}
			try(i+1, more)
			used[j] = false
		}
		at[i] = assign.None
		try(i+1, a)
	}
	try(0, assign.Answer{})
	return best
}

// Of every way of pairing, the answer is the best, and of the best the lowest.
func TestSolver_everyWay(t *testing.T) {
	var s assign.Solver
	r := rand.New(rand.NewPCG(64, 1))
	for n := range 6000 {
		rows, cols := 1+r.IntN(5), 1+r.IntN(5)
		if n%10 == 0 {
			rows, cols = 6, 6
		}
		span, share := int64(1)<<(r.IntN(10)), r.Float64()*1.6
		cost := make([]int64, rows*cols)
		for i := range cost {
			cost[i] = x
			if r.Float64() < share {
				cost[i] = r.Int64N(span+1) - r.Int64N(3)
			}
		}
		for _, greatestFirst := range []bool{false, true} {
			solve := s.LeastSum
			if greatestFirst {
				solve = s.LeastGreatest
			}
			got, a, err := solve(nil, rows, cols, cost)
			require.NoError(t, err)
			best := everyWay(rows, cols, cost, greatestFirst)
			require.Equal(t, best, way{got, a}, "%d × %d: %v", rows, cols, cost)
		}
	}
}

// At the ends of the allowed costs nothing wraps.
func TestSolver_greatCosts(t *testing.T) {
	var s assign.Solver
	r := rand.New(rand.NewPCG(64, 2))
	for range 500 {
		n := 1 + r.IntN(5)
		most := int64(1<<59-1) / int64(n)
		cost := make([]int64, n*n)
		for i := range cost {
			cost[i] = []int64{most, -most, most - 1, -most + 1, 0, x}[r.IntN(6)]
		}
		got, a, err := s.LeastSum(nil, n, n, cost)
		require.NoError(t, err)
		require.Equal(t, everyWay(n, n, cost, false), way{got, a})
		got, a, err = s.LeastGreatest(nil, n, n, cost)
		require.NoError(t, err)
		require.Equal(t, everyWay(n, n, cost, true), way{got, a})
	}
}

// Any table is solved or refused; on small ones every way of pairing agrees.
func FuzzSolver(f *testing.F) {
	f.Add(uint8(3), uint8(3), []byte{1, 2, 3, 4, 5, 6, 7, 8, 9}, int64(1))
	f.Add(uint8(2), uint8(4), []byte{255, 1, 255, 1, 1, 255, 1, 255}, int64(1)<<50)
	f.Add(uint8(0), uint8(0), []byte{}, int64(0))
	f.Fuzz(func(t *testing.T, rows, cols uint8, cells []byte, unit int64) {
		cost := make([]int64, len(cells))
		for i, c := range cells {
			cost[i] = x
			if c != 255 {
				cost[i] = (int64(c) - 100) * (unit % (1 << 52))
			}
		}
		var s assign.Solver
		got, a, err := s.LeastSum(nil, int(rows), int(cols), cost)
		if err != nil {
			require.Error(t, err)
			return
		}
		requirePairing(t, got, a, int(rows), int(cols), cost)
		capped, b, err := s.LeastGreatest(nil, int(rows), int(cols), cost)
		require.NoError(t, err)
		requirePairing(t, capped, b, int(rows), int(cols), cost)
		require.Equal(t, a.Pairs, b.Pairs)
		require.LessOrEqual(t, b.Greatest, a.Greatest)
		require.LessOrEqual(t, a.Sum, b.Sum)
		if rows <= 5 && cols <= 5 {
			require.Equal(t, everyWay(int(rows), int(cols), cost, false), way{got, a})
			require.Equal(t, everyWay(int(rows), int(cols), cost, true), way{capped, b})
		}
	})
}
