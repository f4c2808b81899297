package assign_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/assign"
)

func TestSolver_allocatesOnce(t *testing.T) {
	cost := random(64, 1<<40)
	var s assign.Solver
	dst := make([]int, 0, 64)
	run := func() {
		_, _, err := s.LeastSum(dst, 64, 64, cost)
		require.NoError(t, err)
		_, _, err = s.LeastGreatest(dst, 64, 64, cost)
		require.NoError(t, err)
	}
	run()
	require.Zero(t, testing.AllocsPerRun(10, run))
}

func random(n int, span int64) []int64 {
	r := rand.New(rand.NewPCG(64, 3))
	cost := make([]int64, n*n)
	for i := range cost {
		cost[i] = r.Int64N(span)
	}
	return cost
}

func BenchmarkSolver(b *testing.B) {
	for _, c := range []struct {
		name string
		cost []int64
	}{
		{"random", random(64, 1<<40)},
		{"ties", random(64, 8)},
		{"sizes", bySize(64)},
		{"products", products(64)}, // which makes every path long
	} {
		var s assign.Solver
		dst := make([]int, 0, 64)
		b.Run("lib=assign/op=leastsum64"+c.name, func(b *testing.B) {
			for b.Loop() {
				if _, _, err := s.LeastSum(dst, 64, 64, c.cost); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run("lib=assign/op=leastgreatest64"+c.name, func(b *testing.B) {
			for b.Loop() {
				if _, _, err := s.LeastGreatest(dst, 64, 64, c.cost); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	six := random(6, 1000)
	b.Run("lib=everyway/op=leastsum6", func(b *testing.B) {
		for b.Loop() {
			everyWay(6, 6, six, false)
		}
	})
	b.Run("lib=assign/op=leastsum6", func(b *testing.B) {
		var s assign.Solver
		dst := make([]int, 0, 6)
		for b.Loop() {
			if _, _, err := s.LeastSum(dst, 6, 6, six); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func products(n int64) (cost []int64) {
	for i := range n {
		for j := range n {
			cost = append(cost, (i+1)*(j+1))
		}
	}
	return cost
}

// bySize is the table of holes and shafts: how far each clearance is from one
// that is wanted.
func bySize(n int) []int64 {
	r := rand.New(rand.NewPCG(64, 4))
	hole, shaft := make([]int64, n), make([]int64, n)
	for i := range n {
		hole[i], shaft[i] = 40_000_000+r.Int64N(20_000_000), r.Int64N(20_000_000)
	}
	cost := make([]int64, 0, n*n)
	for _, h := range hole {
		for _, s := range shaft {
			cost = append(cost, max(h-s-40_000_000, 40_000_000-h+s))
		}
	}
	return cost
}
