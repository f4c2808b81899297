package working_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
)

// sweptVolume is π/4·b²·s.
func sweptVolume[R tolerance.Real[R]](bore, stroke R) R {
	return bore.Const(math.Pi / 4).Mul(bore).Mul(bore).Mul(stroke)
}

// A real is a formula made up at random over Real.
type real struct {
	op    int
	input int
	c     float64
	name  bool
	args  []*real
}

const (
	realInput = iota
	realConst
	realAdd
	realSub
	realMul
	realQuo
	realSqrt
	realSin
	realCos
	realAtan2
	realKinds
)

var realArity = [realKinds]int{0, 0, 2, 2, 2, 2, 1, 1, 1, 2}

func madeUpReal(r *rand.Rand, depth int) *real {
	f := &real{op: r.IntN(realKinds), input: r.IntN(4)}
	if depth == 0 {
		f.op = r.IntN(2)
	} else if f.op < realAdd && r.IntN(4) > 0 {
		f.op = realAdd + r.IntN(4)
	}
	f.c = []float64{math.Pi, math.Pi / 4, 2, 0.5, 1000, -3, 25.4}[r.IntN(7)]
	for range realArity[f.op] {
		f.args = append(f.args, madeUpReal(r, depth-1))
	}
	if f.op == realMul && r.IntN(2) == 0 {
		f.args[1] = nil // the square of the other
	}
	f.name = f.op >= realAdd && r.IntN(4) == 0
	return f
}

func readReal[R tolerance.Real[R]](f *real, in []R, named func(R) R) R {
	var a [2]R
	for i, g := range f.args {
		if a[i] = a[0]; g != nil {
			a[i] = readReal(g, in, named)
		}
	}
	var n R
	switch f.op {
	case realInput:
		return in[f.input]
	case realConst:
		return in[0].Const(f.c)
	case realAdd:
		n = a[0].Add(a[1])
	case realSub:
		n = a[0].Sub(a[1])
	case realMul:
		n = a[0].Mul(a[1])
	case realQuo:
		n = a[0].Quo(a[1])
	case realSqrt:
		n = a[0].Sqrt()
	case realSin:
		n = a[0].Sin()
	case realCos:
		n = a[0].Cos()
	case realAtan2:
		n = a[0].Atan2(a[1])
	}
	if f.name {
		return named(n)
	}
	return n
}

func TestSolveReal_everyLineRecomputes(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	solved, rounded, out, moved := 0, 0, 0, 0
	for range 6000 {
		f := madeUpReal(r, 1+r.IntN(4))
		floats, terms := make([]tolerance.Float, 4), make([]working.RealTerm, 4)
		for i := range floats {
			switch r.IntN(5) {
			case 0:
				floats[i] = tolerance.Float(r.NormFloat64())
			case 1:
				floats[i] = tolerance.Float(1.56 / 25.4)
			default:
				floats[i] = tolerance.Float(float64(r.IntN(100_000)-1000) / 1000)
			}
			terms[i] = working.GivenReal("size "+strconv.Itoa(i), "abcd"[i:i+1], float64(floats[i]), []string{"mm", "N/mm²", "°", ""}[i])
		}
		k := 0
		want := readReal(f, floats, asItIs)
		got := readReal(f, terms, func(n working.RealTerm) working.RealTerm {
			k++
			return n.Named("result "+strconv.Itoa(k), "r"+strconv.Itoa(k), "mm³")
		})
		if want.InRange() {
			require.Equal(t, float64(want), got.Value(), f)
		}
		style := working.RealStyle{Places: r.IntN(7)}
		if r.IntN(2) == 0 {
			style.Figures = 1 + r.IntN(10)
		}
		s, err := working.SolveReal(got, style)
		switch {
		case errors.Is(err, working.ErrRange):
			out++
			continue
		case errors.Is(err, working.ErrRounded):
			rounded++
			continue
		}
		require.NoError(t, err)
		solved++
		for _, st := range s.Steps {
			require.NoError(t, recompute(st, "mm³", "mm", "N/mm²", "°"), "%s\n%v", s.Text(), f)
		}
		if style.Figures == 0 && s.Steps[len(s.Steps)-1].Places != style.Places {
			moved++
		}
	}
	t.Logf("%d solutions; %d had other places than asked, %d could not be written, %d out of range", solved, moved, rounded, out)
}
